//! How far an alternative reaches: the whole of what it is offered for, or only a part; and what it is confined to.
//!
//! "Alternate to Item 3A, 2 Hr rating only" stands in the place of all of Item 3A, in a joint of that rating. "Alternate to Item 3A in flutes"
//! leaves Item 3A in force everywhere else, and so does what can't be told apart from it.

use super::head::Head;
use crate::conditions::is_roman;

/// What stands after what an alternative is offered for.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Reach {
    /// Whether only a part is replaced, or it may be so.
    pub(super) in_part: bool,
    /// The configurations that the alternative belongs to.
    pub(super) configurations: Vec<String>,
    /// The stretches of the head that say what it is confined to.
    pub(super) limits: Vec<(usize, usize)>,
}

/// How what follows is said.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Said {
    /// In brackets: every remark confines.
    Bracketed,
    /// In a sentence, which goes on with the description.
    Sentence,
    /// In a title, of which the description is part: "Alternate, sprayed coating, joints not wider than 2 in.".
    Title,
}

/// What one remark says.
enum Remark {
    /// Nothing that is built: "not shown".
    Nothing,
    /// The configurations that are meant, and whether the words say more.
    Configurations(Vec<String>, bool),
    /// What the alternative is confined to.
    Limit,
    /// A place or a thing: a part only.
    Part,
    /// Other words.
    Other,
}

/// Words that lead to a place within a joint.
const PLACES: [&str; 22] = [
    "in", "within", "at", "on", "over", "under", "along", "beside", "between", "above", "below",
    "into", "near", "where", "when", "against", "around", "outside", "inside", "adjacent",
    "behind", "across",
];

/// Words of a limit to joints of some widths, or of some ratings.
const LIMITING: [&str; 78] = [
    "for",
    "in",
    "where",
    "when",
    "if",
    "only",
    "with",
    "of",
    "at",
    "the",
    "a",
    "is",
    "are",
    "does",
    "do",
    "be",
    "not",
    "no",
    "than",
    "less",
    "more",
    "or",
    "and",
    "to",
    "up",
    "from",
    "over",
    "under",
    "above",
    "below",
    "least",
    "most",
    "max",
    "min",
    "maximum",
    "minimum",
    "between",
    "nominal",
    "nom",
    "greater",
    "smaller",
    "including",
    "exceed",
    "exceeding",
    "exceeds",
    "limited",
    "joint",
    "joints",
    "width",
    "widths",
    "wide",
    "wider",
    "narrower",
    "opening",
    "openings",
    "gap",
    "gaps",
    "base",
    "head",
    "installed",
    "rating",
    "ratings",
    "rated",
    "wall",
    "walls",
    "partition",
    "partitions",
    "assembly",
    "assemblies",
    "fire",
    "hr",
    "hour",
    "hours",
    "h",
    "in.",
    "mm",
    "inch",
    "inches",
];

/// More words of such a limit: units and letters of ratings.
const UNITS: [&str; 7] = ["cm", "ft", "minutes", "min.", "ei", "f", "t"];

impl Reach {
    /// Reads the remarks between two places; in brackets all of them, else as many as are no description.
    pub(super) fn of(head: &Head, from: usize, to: usize, said: Said) -> Self {
        let mut reach = Self::default();
        for (start, end) in parts(head, from, to) {
            let words = head.part(start, end);
            let adjacent = start <= from + 1 && !head.part(from, start).contains([',', ';']);
            let article = ["a ", "an ", "the "]
                .iter()
                .any(|article| words.starts_with(article));
            if said == Said::Sentence && adjacent && article {
                break;
            }
            match remark(words) {
                Remark::Nothing => {}
                Remark::Configurations(names, says_more) => {
                    reach.configurations.extend(names);
                    if says_more {
                        reach.limits.push((start, end));
                    }
                }
                Remark::Limit => reach.limits.push((start, end)),
                Remark::Part => {
                    reach.in_part = true;
                    reach.limits.push((start, end));
                }
                Remark::Other if adjacent => {
                    reach.in_part = true;
                    reach.limits.push((start, end));
                }
                Remark::Other if said == Said::Bracketed => reach.limits.push((start, end)),
                Remark::Other if said == Said::Title => {}
                Remark::Other => break,
            }
        }
        reach
    }
}

/// The remarks between two places, parted by commas and semicolons outside brackets.
fn parts(head: &Head, from: usize, to: usize) -> Vec<(usize, usize)> {
    let words = head.part(from, to);
    let mut cuts = vec![0];
    let mut depth = 0;
    for (at, c) in words.char_indices() {
        match c {
            '(' | '[' => depth += 1,
            ')' | ']' => depth -= 1,
            ',' | ';'
                if depth == 0
                    && words
                        .get(at + 1..)
                        .is_some_and(|rest| rest.starts_with(' ')) =>
            {
                cuts.push(at);
                cuts.push(at + 1);
            }
            _ => {}
        }
    }
    cuts.push(words.len());
    cuts.chunks(2)
        .filter_map(|cut| {
            let [start, end] = cut else { return None };
            let part = words.get(*start..*end)?;
            let trimmed = part.trim_start().len();
            let start = end - trimmed;
            let end = start + part.trim().len();
            (start < end).then_some((from + start, from + end))
        })
        .collect()
}

fn remark(words: &str) -> Remark {
    let words = words.trim_end_matches(['.', '*', ' ']);
    let words = words
        .strip_prefix('(')
        .and_then(|words| words.strip_suffix(')'))
        .unwrap_or(words);
    if matches!(
        words,
        "not shown" | "not drawn" | "not illustrated" | "" | "*" | "†" | "‡"
    ) || words.starts_with("see ")
    {
        return Remark::Nothing;
    }
    if let Some((names, says_more)) = configurations(words) {
        return Remark::Configurations(names, says_more);
    }
    let first = words
        .split(' ')
        .find(|word| !matches!(*word, "only" | "or" | "and" | "but"))
        .unwrap_or_default();
    let limiting = |word: &str| {
        word.starts_with(|c: char| c.is_ascii_digit())
            || LIMITING.contains(&word)
            || UNITS.contains(&word)
    };
    let tokens = || {
        words
            .split(|c: char| !(c.is_alphanumeric() || c == '/'))
            .filter(|word| !word.is_empty())
    };
    let measures = tokens().any(|word| word.starts_with(|c: char| c.is_ascii_digit()));
    if measures && tokens().all(limiting) {
        return Remark::Limit;
    }
    if first == "not" {
        return Remark::Limit;
    }
    if PLACES.contains(&first) || words.split(' ').any(|word| word == "only") {
        return Remark::Part;
    }
    Remark::Other
}

/// Words that are followed by a configuration's letter.
const WORDS: [&str; 8] = [
    "config",
    "configs",
    "configuration",
    "configurations",
    "arrangement",
    "arrangements",
    "scheme",
    "schemes",
];

/// The configurations that words name, and whether they say more: `Configuration A only`, `in Configurations A and C`.
pub(super) fn configurations(words: &str) -> Option<(Vec<String>, bool)> {
    let tokens: Vec<&str> = words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    let at = tokens.iter().position(|word| WORDS.contains(word))?;
    let is_label = |word: &str| word.len() == 1 || is_roman(&word.to_uppercase());
    let labels = tokens.get(at + 1..)?.iter();
    let labels: Vec<&str> = labels
        .take_while(|word| is_label(word) || matches!(**word, "and" | "or"))
        .copied()
        .collect();
    let names: Vec<String> = labels
        .iter()
        .filter(|word| is_label(word))
        .map(|label| format!("Configuration {}", label.to_uppercase()))
        .collect();
    let mut others = tokens.iter().enumerate().filter(|(place, word)| {
        let own = *place >= at && *place <= at + labels.len();
        !own && !matches!(
            **word,
            "in" | "only" | "for" | "with" | "the" | "of" | "under"
        )
    });
    (!names.is_empty()).then(|| (names, others.next().is_some()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kind(words: &str) -> &'static str {
        match remark(words) {
            Remark::Nothing => "nothing",
            Remark::Configurations(_, false) => "configuration",
            Remark::Configurations(_, true) => "configuration and more",
            Remark::Limit => "limit",
            Remark::Part => "part",
            Remark::Other => "other",
        }
    }

    #[test]
    fn what_confines_an_alternate_and_what_makes_it_a_part() {
        for words in [
            "2 hr rating only",
            "1 and 2 hr walls only",
            "joints of 1 in. or less",
            "for joints 1 in. (25 mm) wide or less",
            "where the joint is not wider than 20 mm (13/16 in.)",
            "with joint widths up to 75 mm only",
            "only where the base joint is wider than 1/2 in.",
            "60 and 90 minutes only",
            "not with item 1b",
        ] {
            assert_eq!(kind(words), "limit", "{words}");
        }
        for words in [
            "in flutes only",
            "within the flutes",
            "on one side of wall",
            "at deck valleys",
            "or in the flutes of item 1b",
            "where the wall crosses a beam",
            "roofs only",
            "in joints of roofs 2 in. wide",
        ] {
            assert_eq!(kind(words), "part", "{words}");
        }
        assert_eq!(kind("configuration a only"), "configuration");
        assert_eq!(kind("in configurations a and c"), "configuration");
        assert_eq!(
            kind("configuration a under a flat slab only"),
            "configuration and more"
        );
        assert_eq!(kind("not shown"), "nothing");
        assert_eq!(kind("recessed"), "other");
    }
}
