//! The limit that a caption, or a sentence behind a table, sets for its values: "all min.", "All values are minimums."

use super::super::heading::Heading;
use super::super::statements::Stated;
use super::size::ATTRIBUTES;
use crate::clauses::limit_heads::heads;
use crate::model::Relation;
use crate::rules::qualifier;

impl Heading {
    /// "all min." limits every column that has no limit of its own; how it is meant of one that it makes no sense of, nobody knows.
    pub(super) fn take_limit_of_all(&mut self, caption: &str) {
        let Some(relation) = limit_of_all(caption) else {
            return;
        };
        if self.selects.is_some() || self.relation.is_some() {
            return;
        }
        let heading = self.words.to_lowercase();
        let own = Stated::of(caption).by_name(&heading);
        if own.is_some() {
            self.relation = own;
        } else if suits(relation, &self.words) && !Stated::excepts(caption, &heading) {
            self.relation = Some(relation);
        } else {
            self.limit_unknown = true;
        }
    }
}

/// The limit that a short caption sets for all of its table: "all min.", "(minimum values)", "all dimensions in mm, minimum".
pub(super) fn limit_of_all(caption: &str) -> Option<Relation> {
    const MOST_WORDS: usize = 16;
    const ALL: &[&str] = &["all", "values", "figures", "dimensions"];
    const UNITS: &[&str] = &["in", "mm", "inch", "inches", "millimetres", "millimeters"];
    if caption.split_whitespace().count() > MOST_WORDS {
        return None;
    }
    // "(min. values)"
    let caption = caption.replace("min. ", "min ").replace("max. ", "max ");
    let pieces: Vec<Vec<&str>> = caption
        .split([',', ';', ':', '(', ')', '.'])
        .map(|piece| {
            piece
                .split(|c: char| !c.is_alphabetic())
                .filter(|word| !word.is_empty())
                .collect()
        })
        .collect();
    let is_of_all = |words: &[&str]| words.iter().any(|word| ALL.contains(word));
    // "all min. or all max.": what another piece limits nobody knows.
    let is_limited = |words: &&Vec<&str>| words.iter().any(|word| qualifier(word).is_some());
    if pieces.iter().filter(is_limited).count() > 1 {
        return None;
    }
    let mut found = pieces.iter().enumerate().filter_map(|(at, words)| {
        let relation = heads(&words.join(" ")).or_else(|| extreme(words))?;
        // "all dimensions in mm, minimum" names no size that the limit could be of alone.
        let before = at.checked_sub(1).and_then(|before| pieces.get(before));
        let behind_all = words.len() == 1
            && before.is_some_and(|before| {
                before.first() == Some(&"all")
                    && before
                        .iter()
                        .all(|word| ALL.contains(word) || UNITS.contains(word))
            });
        (is_of_all(words) || behind_all).then_some(relation)
    });
    found.next().filter(|_| found.next().is_none())
}

/// A caption without the limit that it ends in, and the limit: "Overlap, in inches, *not less than*".
pub(super) fn without_limit(caption: &str) -> (&str, Option<Relation>) {
    const ENDINGS: &[(&str, Relation)] = &[
        (", not less than", Relation::AtLeast),
        (", not more than", Relation::AtMost),
        (", not exceeding", Relation::AtMost),
    ];
    let caption = caption.trim_end_matches([':', '.', ' ']);
    let limited = ENDINGS
        .iter()
        .find_map(|(ending, relation)| Some((caption.strip_suffix(ending)?, Some(*relation))));
    limited.unwrap_or((caption, None))
}

/// The limit that values are where they are the least or the greatest: "least values".
fn extreme(words: &[&str]) -> Option<Relation> {
    match words {
        ["least" | "lowest" | "smallest", _] => Some(Relation::AtLeast),
        ["greatest" | "largest" | "highest" | "most", _] => Some(Relation::AtMost),
        _ => None,
    }
}

/// What a column counts that a caption seldom means.
pub(super) const COUNTED: &[&str] = &["faces", "sides", "rows", "beads", "passes", "lifts"];

/// The qualifier that a caption gives a column: "Minimum packing depth", "Number of layers (minimum)". A caption that names several attributes
/// says it of one of them, nobody knows which.
pub(in crate::clauses::tables) fn caption_qualifier(
    caption: &str,
    heading: &str,
) -> Option<Relation> {
    const LONGEST: usize = 12;
    let words = || {
        caption
            .split(|c: char| !c.is_alphabetic())
            .filter(|word| !word.is_empty())
    };
    let attributes: Vec<&str> = words().filter(|word| ATTRIBUTES.contains(word)).collect();
    let short = (each_is_limited(caption) || words().count() <= LONGEST)
        && !caption.contains(" shall ")
        && !caption.contains(" applies ");
    let of_another = ATTRIBUTES
        .iter()
        .chain(COUNTED)
        .any(|attribute| heading.contains(attribute) && !attributes.contains(attribute));
    let one =
        each_is_limited(caption) || attributes.len() <= 1 || attributes == ["number", "layers"];
    // "All dimensions in mm, minimum values" names none, and means them all.
    let of_all = each_is_limited(caption) && attributes.is_empty();
    // Of "at most the minimum" nobody can say which it is; and "min 4 pcf" limits its own number.
    let free = without_numbers(caption);
    let free = free
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty());
    let mut limits = free.filter_map(qualifier);
    let limit = limits.next();
    let agreed = limits.all(|other| Some(other) == limit);
    limit
        .filter(|_| short && one && agreed && (of_all || !of_another))
        .filter(|relation| !of_all || suits(*relation, heading))
}

/// A caption without the numbers in it and the words right beside them.
fn without_numbers(caption: &str) -> String {
    let words: Vec<&str> = caption.split_whitespace().collect();
    let is_number = |at: usize| {
        let word = words.get(at);
        word.is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit()))
    };
    let kept = words
        .iter()
        .enumerate()
        .filter(|(at, _)| !is_number(*at) && !is_number(at + 1));
    kept.map(|(_, word)| *word).collect::<Vec<_>>().join(" ")
}

/// "thickness and depth are minimum values" says it of each.
pub(super) fn each_is_limited(caption: &str) -> bool {
    ["minimum values", "maximum values"]
        .iter()
        .any(|words| caption.contains(words))
}

/// What a sentence behind a table says of all its values: "All values are minimums." One that names what it is about, "All clip spacings are
/// maximums", is not about the others.
pub(in crate::clauses) fn said_of_all(sentence: &str) -> Option<Relation> {
    const GENERIC: &[&str] = &[
        "all",
        "the",
        "these",
        "values",
        "figures",
        "dimensions",
        "numbers",
        "entries",
        "given",
        "shown",
        "above",
        "stated",
        "table",
        "in",
        "of",
    ];
    let lower = sentence.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty())
        .collect();
    let verb = words
        .iter()
        .position(|word| matches!(*word, "are" | "being"))?;
    let (about, said) = (words.get(..verb)?, words.get(verb + 1..)?);
    let generic =
        about.iter().all(|word| GENERIC.contains(word)) && about.iter().any(|word| *word != "the");
    // "Values are minimum unless marked otherwise": what is marked says so itself.
    let said = match said {
        [
            limit @ ..,
            "unless",
            "otherwise",
            "marked" | "noted" | "stated" | "shown" | "indicated",
        ]
        | [
            limit @ ..,
            "unless",
            "marked" | "noted" | "stated" | "shown" | "indicated",
            "otherwise",
        ] => limit,
        said => said,
    };
    match said {
        ["minimum" | "minimums" | "minima"] | ["minimum", "values"] => Some(Relation::AtLeast),
        ["maximum" | "maximums" | "maxima"] | ["maximum", "values"] => Some(Relation::AtMost),
        ["nominal"] => Some(Relation::Nominal),
        _ => None,
    }
    .filter(|_| generic)
}

/// Whether a limit makes sense of what a heading names: a least spacing or gap, and a most depth, lap or thickness, are something else's.
pub(in crate::clauses::tables) fn suits(relation: Relation, heading: &str) -> bool {
    const APART: &[&str] = &[
        "spacing", "centres", "centers", "o.c", "gap", "pitch", "distance", "interval", "apart",
        "movement", "width",
    ];
    const LARGE: &[&str] = &[
        "depth",
        "lap",
        "overlap",
        "thickness",
        "thick",
        "density",
        "compression",
        "film",
        "wet",
        "dry",
        "embedment",
        "bond",
        "layers",
        "coats",
    ];
    let lower = heading.to_lowercase();
    let names = |words: &[&str]| words.iter().any(|word| lower.contains(word));
    match relation {
        Relation::AtLeast => !names(APART),
        Relation::AtMost => !names(LARGE),
        _ => true,
    }
}

/// Whether a caption sets a limit that no number of its own takes: "minimum values by width", and not "joints up to 4 in. max".
pub(in crate::clauses::tables) fn sets_a_limit(caption: &str) -> bool {
    let words: Vec<&str> = caption
        .split(|c: char| c.is_whitespace() || matches!(c, '(' | ')' | ',' | ';' | ':'))
        .filter(|word| !word.is_empty())
        .collect();
    let is_number = |at: usize| {
        let word = words.get(at);
        word.is_some_and(|word| word.contains(|c: char| c.is_ascii_digit()))
    };
    let limits = |word: &&str| {
        matches!(
            word.trim_end_matches('.').to_lowercase().as_str(),
            "min" | "minimum" | "minimums" | "minima" | "max" | "maximum" | "maximums" | "maxima"
        )
    };
    words.iter().enumerate().any(|(at, word)| {
        let near = at.saturating_sub(2)..=at + 2;
        limits(word) && !near.into_iter().any(is_number)
    })
}
