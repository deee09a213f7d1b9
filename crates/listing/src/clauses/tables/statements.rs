//! What a caption says of columns by their names: "Packing depth and compression are minimums; sealant depth is exact."

use crate::model::Relation;

/// What ends a statement.
const ENDS: &[char] = &['.', ';', ':', '(', ')'];

/// How a caption limits the column under a heading, by its name.
pub(super) fn by_name(caption: &str, heading: &str) -> Option<Relation> {
    statements(caption)
        .into_iter()
        .find(|statement| statement.names().any(|name| names_column(name, heading)))
        .map(|statement| statement.relation)
}

/// Whether a caption limits something by a name that is no column's.
pub(super) fn limits_another(caption: &str, headings: &[String]) -> bool {
    let statements = statements(caption);
    let mut names = statements.iter().flat_map(Statement::names);
    names.any(|name| {
        telling(name).next().is_some()
            && !headings.iter().any(|heading| names_column(name, heading))
    })
}

/// Whether a caption says of columns by their names how each is limited.
pub(super) fn names_columns(caption: &str) -> bool {
    !statements(caption).is_empty()
}

/// `names are limit`.
struct Statement<'c> {
    names: &'c str,
    relation: Relation,
}

impl<'c> Statement<'c> {
    /// Each of its names.
    fn names(&self) -> impl Iterator<Item = &'c str> {
        let parts = self.names.split([',', '&']);
        parts.flat_map(|part| part.split(" and "))
    }
}

/// The statements of a caption. One may follow another behind a comma: "depth and lap are minimums, clip spacing is maximum".
fn statements(caption: &str) -> Vec<Statement<'_>> {
    caption.split(ENDS).flat_map(of_piece).collect()
}

fn of_piece(piece: &str) -> Vec<Statement<'_>> {
    let mut found = Vec::new();
    let mut rest = piece;
    while let Some((names, said)) = split_at_verb(rest) {
        let Some((relation, behind)) = limit(said) else {
            break;
        };
        if !format!(" {names} ").contains(" not ") {
            found.push(Statement { names, relation });
        }
        rest = behind;
    }
    found
}

/// What stands before the first verb, and what behind it.
fn split_at_verb(words: &str) -> Option<(&str, &str)> {
    let verbs = [" are ", " is ", " being "].iter();
    let found = verbs.filter_map(|verb| Some((words.find(verb)?, verb.len())));
    let (at, len) = found.min()?;
    Some((words.get(..at)?, words.get(at + len..)?))
}

/// The limit that words begin with, and what stands behind it: nothing, or another statement.
fn limit(said: &str) -> Option<(Relation, &str)> {
    const LIMITS: &[(&[&str], Relation)] = &[
        (
            &[
                "minimum values",
                "minimums",
                "minimum",
                "minima",
                "the least",
                "min",
            ],
            Relation::AtLeast,
        ),
        (
            &[
                "maximum values",
                "maximums",
                "maximum",
                "maxima",
                "the most",
                "max",
            ],
            Relation::AtMost,
        ),
        (&["exactly as given", "exact"], Relation::Exactly),
        (&["nominal"], Relation::Nominal),
    ];
    let said = said.trim_start();
    LIMITS.iter().find_map(|(words, relation)| {
        let behind = words.iter().find_map(|word| said.strip_prefix(word))?;
        let behind = behind.trim();
        let mut next = [",", "and ", "while "].iter();
        let next = next.find_map(|sign| behind.strip_prefix(sign));
        let next = next.or_else(|| behind.is_empty().then_some(""))?;
        let next = next.trim_start();
        Some((*relation, next.strip_prefix("and ").unwrap_or(next)))
    })
}

/// Whether a name is a column's: each of its words stands in the heading, which may shorten it, `Compr.` for "compression".
fn names_column(name: &str, heading: &str) -> bool {
    const SHORTEST: usize = 4;
    let held = |word: &str| {
        heading
            .split(|c: char| !c.is_alphabetic())
            .any(|own| own == word || (own.len() >= SHORTEST && word.starts_with(own)))
    };
    let mut named = telling(name).peekable();
    named.peek().is_some() && named.all(held)
}

/// The words of a name that tell which column it is.
fn telling(name: &str) -> impl Iterator<Item = &str> {
    let words = name.split(|c: char| !c.is_alphabetic());
    words.filter(|word| {
        word.len() > 2
            && !matches!(
                *word,
                "the" | "all" | "values" | "for" | "table" | "schedule"
            )
    })
}
