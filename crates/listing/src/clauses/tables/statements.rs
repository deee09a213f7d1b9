//! What a caption says of columns by their names: "Packing depth and compression are minimums; sealant depth is exact."

use super::caption::{ATTRIBUTES, caption_qualifier, suits};
use crate::model::Relation;
use crate::rules::qualifier;

/// What ends a statement.
const ENDS: &[char] = &['.', ';', ':', '(', ')'];

/// What a caption states of columns by their names, and what else it says.
pub(super) struct Stated {
    statements: Vec<Statement>,
    /// The words beside the statements.
    pub(super) rest: String,
}

impl Stated {
    /// What a caption, in small letters, states. One statement may follow another behind a comma: "depth and lap are minimums, clip spacing is maximum".
    pub(super) fn of(caption: &str) -> Self {
        let mut stated = Self {
            statements: Vec::new(),
            rest: String::new(),
        };
        for piece in caption.split(ENDS) {
            if let Some(limited) = limited_behind(piece) {
                stated.statements.extend(limited);
                continue;
            }
            let mut words = piece;
            while let Some((names, relation, behind)) = statement(words) {
                // "except the drape, which is a minimum"
                let names = names
                    .trim()
                    .trim_start_matches("except ")
                    .trim_start_matches("for ");
                let names = names.trim_end_matches(" which").trim_end_matches(',');
                if !format!(" {names} ").contains(" not ") {
                    stated.statements.push(Statement {
                        names: names.to_owned(),
                        relation,
                    });
                }
                words = behind;
            }
            if let Some(shared) = limited_together(words) {
                stated.statements.push(shared);
                continue;
            }
            // What isn't limited isn't.
            if !format!(" {words} ").contains(" not ") {
                stated.rest.push_str(words);
                stated.rest.push_str("; ");
            }
        }
        if let Some(limited) = limited_apart(&stated.rest) {
            stated.statements.extend(limited);
            stated.rest.clear();
        }
        stated
    }

    /// How the column under a heading is limited, by its name.
    pub(super) fn by_name(&self, heading: &str) -> Option<Relation> {
        let mut statements = self.statements.iter();
        statements
            .find(|statement| statement.names().any(|name| names_column(name, heading)))
            .map(|statement| statement.relation)
    }

    /// Whether a column is excepted from what is said of the others.
    pub(super) fn excepts(caption: &str, heading: &str) -> bool {
        let excepted = ["except for ", "except ", "other than "]
            .iter()
            .find_map(|word| caption.split_once(word));
        excepted.is_some_and(|(_, behind)| {
            let name = behind
                .split([',', '.', ';', ')'])
                .next()
                .unwrap_or_default();
            names_column(name, heading)
        })
    }

    /// How the words beside the statements, one sentence of them, limit the column under a heading.
    pub(super) fn beside(&self, heading: &str) -> Option<Relation> {
        let mut sentences = self.rest.split("; ");
        sentences.find_map(|sentence| caption_qualifier(sentence, heading))
    }

    /// Whether something is limited by a name that is no column's.
    pub(super) fn limits_another(&self, headings: &[String]) -> bool {
        let limits =
            |one: &&Statement| matches!(one.relation, Relation::AtLeast | Relation::AtMost);
        let mut names = self
            .statements
            .iter()
            .filter(limits)
            .flat_map(Statement::names);
        names.any(|name| {
            telling(name).next().is_some()
                && !headings.iter().any(|heading| names_column(name, heading))
        })
    }

    /// Whether every name of what is stated is that of a column.
    pub(super) fn names_only(&self, headings: &[String]) -> bool {
        let mut names = self.statements.iter().flat_map(Statement::names);
        names.all(|name| headings.iter().any(|heading| names_column(name, heading)))
    }

    /// Whether nothing is stated.
    pub(super) fn is_nothing(&self) -> bool {
        self.statements.is_empty()
    }
}

/// `names are limit`.
struct Statement {
    names: String,
    relation: Relation,
}

impl Statement {
    /// Each of its names.
    fn names(&self) -> impl Iterator<Item = &str> {
        let parts = self.names.split([',', '&']);
        let names = parts.flat_map(|part| part.split(" and "));
        // "lap of fill material": the columns are of it already.
        names.map(|name| name.split_once(" of fill").map_or(name, |(name, _)| name))
    }
}

/// The statement that words begin with: its names, its limit, and what stands behind it.
fn statement(words: &str) -> Option<(&str, Relation, &str)> {
    let (names, said) = split_at_verb(words)?;
    let (relation, behind) = limit(said, names)?;
    Some((names, relation, behind))
}

/// Names that each have their own limit behind them: "depth not less than, compression not less than".
fn limited_behind(words: &str) -> Option<Vec<Statement>> {
    const BEHIND: &[(&str, Relation)] = &[
        (" not less than", Relation::AtLeast),
        (" no less than", Relation::AtLeast),
        (" at least", Relation::AtLeast),
        (" not more than", Relation::AtMost),
        (" no more than", Relation::AtMost),
        (" not over", Relation::AtMost),
        (" at most", Relation::AtMost),
    ];
    let parts = words.split(',').flat_map(|part| part.split(" and "));
    let statements = parts.map(|part| {
        let part = part.trim();
        let (names, relation) = BEHIND
            .iter()
            .find_map(|(limit, relation)| Some((part.strip_suffix(limit)?, *relation)))?;
        let names = names.to_owned();
        telling(&names).next()?;
        Some(Statement { names, relation })
    });
    statements.collect()
}

/// Names that each have their own limit before them: "minimum packing depth and maximum movement".
fn limited_apart(rest: &str) -> Option<Vec<Statement>> {
    let parts = without_mark(rest).split([',', ';', '/', '-', '–']);
    let parts = parts.flat_map(|part| part.split(" and "));
    let mut found = Vec::new();
    for part in parts.map(str::trim) {
        let (first, names) = part.split_once(' ').unwrap_or((part, ""));
        let is_limit = |word: &str| qualifier(word).is_some();
        match qualifier(first) {
            // A number takes its own limit: "min 4 pcf".
            Some(_) if names.contains(|c: char| c.is_ascii_digit()) => {}
            Some(relation) if telling(names).next().is_some() => found.push(Statement {
                names: names.to_owned(),
                relation,
            }),
            _ if part.split_whitespace().any(is_limit) => return None,
            _ => {}
        }
    }
    (found.len() > 1).then_some(found)
}

/// Several names behind one limit, and nothing else: "minimum depth and compression", "max. gap, spacing and edge distance".
fn limited_together(words: &str) -> Option<Statement> {
    const LONGEST: usize = 3;
    let (first, names) = words.trim().split_once(' ')?;
    let relation = qualifier(first)?;
    let statement = Statement {
        names: names.to_owned(),
        relation,
    };
    let is_name = |name: &str| {
        let words: Vec<&str> = telling(name).collect();
        (1..=LONGEST).contains(&words.len())
            && words.iter().any(|word| ATTRIBUTES.contains(word))
            && words.iter().all(|word| qualifier(word).is_none())
            && suits(relation, name)
    };
    let plain = !names.contains(|c: char| c.is_ascii_digit());
    (plain && statement.names().count() > 1 && statement.names().all(is_name)).then_some(statement)
}

/// A caption without the mark that it begins with: `table a`.
pub(super) fn without_mark(caption: &str) -> &str {
    let behind = caption.trim_start().strip_prefix("table ");
    behind
        .and_then(|behind| behind.trim_start().split_once(' '))
        .map_or(caption, |(_, behind)| behind)
}

/// What stands before the first verb, and what behind it.
fn split_at_verb(words: &str) -> Option<(&str, &str)> {
    let verbs = [" are ", " is ", " being "].iter();
    let found = verbs.filter_map(|verb| Some((words.find(verb)?, verb.len())));
    let (at, len) = found.min()?;
    Some((words.get(..at)?, words.get(at + len..)?))
}

/// The limit that words begin with, and what stands behind it: nothing, or another statement. What is limited may be named again: "depths are minimum
/// depths".
fn limit<'w>(said: &'w str, names: &str) -> Option<(Relation, &'w str)> {
    const LIMITS: &[(&[&str], Relation)] = &[
        (
            &[
                "minimum values",
                "minimums",
                "minimum",
                "minima",
                "least",
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
                "most",
                "max",
            ],
            Relation::AtMost,
        ),
        (&["exactly as given", "exact"], Relation::Exactly),
        (&["nominal"], Relation::Nominal),
    ];
    let said = said.trim_start();
    let mut article = ["a ", "an ", "the "].iter();
    let said = article
        .find_map(|article| said.strip_prefix(article))
        .unwrap_or(said);
    LIMITS.iter().find_map(|(words, relation)| {
        let behind = words.iter().find_map(|word| said.strip_prefix(word))?;
        let behind = without_name(behind, names).trim();
        let mut next = [",", "and ", "while "].iter();
        let next = next.find_map(|sign| behind.strip_prefix(sign));
        let next = next.or_else(|| behind.is_empty().then_some(""))?;
        let next = next.trim_start();
        Some((*relation, next.strip_prefix("and ").unwrap_or(next)))
    })
}

/// What stands behind a limit without the name that it limits, said again.
fn without_name<'w>(behind: &'w str, names: &str) -> &'w str {
    let own = behind.trim_start();
    let (first, rest) = own.split_at(own.find([' ', ',']).unwrap_or(own.len()));
    let again = matches!(first, "ones" | "dimensions" | "figures")
        || telling(names).any(|name| name == first);
    if behind.starts_with(' ') && again {
        rest
    } else {
        behind
    }
}

/// Whether a name is a column's: each of its words stands in the heading, which may shorten it, `Compr.` for "compression".
pub(super) fn names_column(name: &str, heading: &str) -> bool {
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
                "the"
                    | "all"
                    | "values"
                    | "for"
                    | "table"
                    | "schedule"
                    | "below"
                    | "above"
                    | "given"
                    | "shown"
                    | "follows"
            )
    })
}
