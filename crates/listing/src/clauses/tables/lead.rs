//! The sentence that leads to a table and says what its cells are: "Movement shall not be less than the following, in percent of nominal width:",
//! "Thickness on the beam:".
//!
//! It is meant of columns that only say for which joints or members their cells are. One that names something itself takes the limit only where the
//! sentence is of the same; else a limit of the sentence leaves its numbers in doubt, as does a sentence with a case or a second limit.

use measure::Unit;

use super::caption::ATTRIBUTES;
use super::heading::{Heading, Sense, unit_of};
use crate::model::Relation;
use crate::rules::qualifier;
use crate::sentences::sentences;

/// How sentences set a limit on what follows.
const LIMITS: &[(&str, Relation)] = &[
    ("shall not be less than", Relation::AtLeast),
    ("shall be not less than", Relation::AtLeast),
    ("shall not be under", Relation::AtLeast),
    ("shall be at least", Relation::AtLeast),
    ("must not be less than", Relation::AtLeast),
    ("must be at least", Relation::AtLeast),
    ("is not less than", Relation::AtLeast),
    ("are not less than", Relation::AtLeast),
    ("not less than", Relation::AtLeast),
    ("no less than", Relation::AtLeast),
    ("at least", Relation::AtLeast),
    ("shall not be more than", Relation::AtMost),
    ("shall not be greater than", Relation::AtMost),
    ("shall be not more than", Relation::AtMost),
    ("shall not exceed", Relation::AtMost),
    ("must not exceed", Relation::AtMost),
    ("not more than", Relation::AtMost),
    ("no more than", Relation::AtMost),
    ("not exceeding", Relation::AtMost),
    ("at most", Relation::AtMost),
];

/// What is measured, as such sentences name it.
const MEASURED: &[&str] = &[
    "compression",
    "density",
    "depth",
    "embedment",
    "extension",
    "height",
    "lap",
    "length",
    "movement",
    "overlap",
    "recess",
    "spacing",
    "thickness",
    "width",
];

/// What a leading sentence says.
pub(super) struct Lead<'s> {
    /// What is measured: "Thickness" of "Thickness on the beam".
    measured: Option<&'s str>,
    /// Whether it is measured at a place that the sentence names, of which it is no property.
    at_place: bool,
    unit: Option<Unit>,
    limit: Option<Relation>,
    /// Whether it sets a limit that can't be placed.
    limit_unknown: bool,
}

impl<'s> Lead<'s> {
    /// What words before a table say as a lead to it; none where they don't lead to it.
    pub(super) fn of(said: &'s str) -> Option<Self> {
        const MOST_WORDS: usize = 24;
        let sentence = leading(said)?;
        let words = sentence.split_whitespace().count();
        if words > MOST_WORDS || sentence.contains(|c: char| c.is_ascii_digit()) {
            return None;
        }
        let lower = sentence.to_ascii_lowercase();
        let found = LIMITS
            .iter()
            .find_map(|(words, relation)| Some((lower.find(words)?, words.len(), *relation)));
        let (about, behind) = match found {
            Some((at, len, _)) => (sentence.get(..at)?, lower.get(at + len..)?),
            None => (sentence, ""),
        };
        let about = without_verb(about.trim());
        // "Minimum thickness on the beam"
        let (first, named) = about.split_once(' ').unwrap_or((about, ""));
        let opening = limit_word(&first.to_ascii_lowercase()).filter(|_| found.is_none());
        let about = if opening.is_some() { named } else { about };
        let limit = found.map(|(_, _, relation)| relation).or(opening);
        let about_lower = about.to_ascii_lowercase();
        let others = has_limit(&about_lower) || has_limit(behind);
        let follows = found.is_none() || says_what_follows(behind);
        let placed = !others && !has_case(&lower) && follows;
        let measured = names_one_measure(&about_lower) && placed;
        let (about, at_place) = without_place(about);
        Some(Self {
            measured: measured.then_some(about),
            at_place,
            unit: unit_behind(&lower),
            limit: limit.filter(|_| measured),
            limit_unknown: !measured && found.is_some(),
        })
    }

    /// Gives a column what the sentence says of it.
    pub(super) fn speak_of(&self, heading: &mut Heading) {
        if heading.selects.is_some() || heading.requires.is_some() {
            return;
        }
        let is_case = heading.words.is_empty() && heading.rating.is_some();
        match self.measured {
            Some(measured) if is_case => {
                measured.clone_into(&mut heading.words);
                if self.at_place {
                    heading.sense = Sense::AtPlace;
                }
                heading.unit = heading.unit.or(self.unit);
                heading.relation = heading.relation.or(self.limit);
            }
            Some(measured) if self.limit.is_some() && heading.relation.is_none() => {
                let own = heading.words.to_lowercase();
                let same = names_one_measure(&own) && shares_a_measure(&own, measured);
                heading.relation = self.limit.filter(|_| same);
                heading.limit_unknown |= !same;
            }
            Some(_) => {}
            None => heading.limit_unknown |= self.limit_unknown && heading.relation.is_none(),
        }
    }
}

/// The words that lead to a table: a sentence that ends in a colon, or else what points to the table below.
fn leading(said: &str) -> Option<&str> {
    const POINTING: &[&str] = &["the table below", "the following table"];
    let said = said.trim();
    if let Some(lead) = said.strip_suffix(':') {
        return Some(lead);
    }
    let range = sentences(said).into_iter().rev().find(|range| {
        let words = said.get(range.clone()).unwrap_or_default().to_lowercase();
        POINTING.iter().any(|pointing| words.contains(pointing))
    })?;
    let sentence = said.get(range)?;
    sentence
        .split(';')
        .next()
        .map(|words| words.trim().trim_end_matches('.'))
}

/// What a sentence is about, without the verb that says where its values stand: "The thickness required on the beam *is taken from the table below*".
fn without_verb(about: &str) -> &str {
    const VERBS: &[&str] = &[
        " shall be",
        " shall",
        " must be",
        " must",
        " is taken",
        " are taken",
        " is given",
        " are given",
        " is as",
        " are as",
        " is",
        " are",
    ];
    let lower = about.to_ascii_lowercase();
    let ends = |at: usize, verb: &str| {
        lower
            .get(at + verb.len()..)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
    };
    let at = VERBS
        .iter()
        .filter_map(|verb| lower.find(verb).filter(|at| ends(*at, verb)))
        .min();
    let about = at.and_then(|at| about.get(..at)).unwrap_or(about);
    ["The ", "the "]
        .iter()
        .find_map(|article| about.strip_prefix(article))
        .unwrap_or(about)
        .trim_end_matches([',', ' '])
}

/// What is measured, without the place that it is measured at: "Thickness required *on the beam*".
fn without_place(about: &str) -> (&str, bool) {
    const PLACES: &[&str] = &[" on ", " onto ", " at ", " over ", " in ", " to "];
    let place = PLACES.iter().filter_map(|place| about.find(place)).min();
    let name = place.and_then(|at| about.get(..at)).unwrap_or(about);
    (name.trim_end_matches(" required"), place.is_some())
}

/// Whether words behind a limit only point to what follows, and may name a unit: "the following, in percent of nominal width".
fn says_what_follows(behind: &str) -> bool {
    const POINTING: &[&str] = &[
        "the following",
        "the values",
        "the value",
        "those",
        "that",
        "as follows",
    ];
    let behind = behind.trim();
    let rest = POINTING
        .iter()
        .find_map(|pointing| behind.strip_prefix(pointing))
        .unwrap_or(behind);
    let rest = [
        "given below",
        "shown below",
        "in the table below",
        "below",
        "values",
    ]
    .iter()
    .find_map(|place| rest.trim().strip_prefix(place))
    .unwrap_or(rest);
    rest.trim().is_empty() || rest.trim().starts_with(", in ") || rest.trim().starts_with("in ")
}

/// The limit that a word sets.
fn limit_word(word: &str) -> Option<Relation> {
    qualifier(word).filter(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost))
}

/// Whether words set a limit.
fn has_limit(words: &str) -> bool {
    words
        .split(|c: char| !c.is_alphabetic())
        .any(|word| limit_word(word).is_some())
        || LIMITS.iter().any(|(limit, _)| words.contains(limit))
}

/// Whether a sentence holds for some cases only, or leaves something open.
fn has_case(lower: &str) -> bool {
    const SAYING: &[&str] = &[
        "if",
        "when",
        "where",
        "unless",
        "except",
        "otherwise",
        "may",
        "for",
        "until",
        "or",
    ];
    lower
        .split(|c: char| !c.is_alphabetic())
        .any(|word| SAYING.contains(&word))
}

/// Whether words name one thing that is measured.
fn names_one_measure(lower: &str) -> bool {
    measures(lower).count() == 1
}

fn measures(lower: &str) -> impl Iterator<Item = &str> {
    lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| MEASURED.contains(word) || ATTRIBUTES.contains(word))
}

fn shares_a_measure(own: &str, other: &str) -> bool {
    let other = other.to_lowercase();
    measures(own).any(|word| measures(&other).any(|one| one == word))
}

/// The unit that a sentence states for its values: ", in percent of nominal width", ", in mm".
fn unit_behind(lower: &str) -> Option<Unit> {
    let (_, said) = lower.rsplit_once(", in ")?;
    let word = said.split([' ', ',']).next()?.trim_end_matches('.');
    unit_of(word)
}
