//! A qualifier that a list's opening carries over the values below it: "Minimum depths:", "Slab thickness at the edge not less than".

use measure::notation::quantity_at;

use crate::model::Relation;
use crate::phrase::Amount;
use crate::rules::{Sentence, qualifier};

/// What the opening of a list says of the bare values below it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Carried {
    pub(crate) relation: Relation,
    /// The words that a value may have after it and still be one of those meant: `deep` under "Minimum depths:".
    adjectives: Option<&'static [&'static str]>,
    /// Whether only labels with their values are meant, and no statement.
    listed: bool,
}

/// Attributes as lists open with them, and the words that follow their values.
const ATTRIBUTES: &[(&str, &[&str])] = &[
    ("depth", &["deep", "depth"]),
    ("thickness", &["thick", "thk", "thickness"]),
    ("width", &["wide", "width"]),
    ("length", &["long", "length"]),
    (
        "spacing",
        &["o.c", "oc", "apart", "on", "centres", "centers"],
    ),
    ("overlap", &["lap", "overlap", "on", "onto", "over"]),
    ("lap", &["lap", "overlap", "on", "onto", "over"]),
];

/// Words after a value that say what it measures.
const MEASURING: &[&str] = &[
    "deep", "thick", "thk", "wide", "long", "high", "o.c", "oc", "apart", "lap", "from", "below",
    "above", "dia", "diameter",
];

/// Openings that end in the qualifier itself.
const ENDINGS: &[(&str, Relation)] = &[
    ("not less than", Relation::AtLeast),
    ("no less than", Relation::AtLeast),
    ("at least", Relation::AtLeast),
    ("no case thinner than", Relation::AtLeast),
    ("not thinner than", Relation::AtLeast),
    ("no thinner than", Relation::AtLeast),
    ("not more than", Relation::AtMost),
    ("no more than", Relation::AtMost),
    ("at most", Relation::AtMost),
    ("not exceeding", Relation::AtMost),
];

/// What words carry over the list below them. Their last sentence ends in a colon or in the qualifier itself, and holds no number and no
/// second qualifier.
pub(crate) fn carried(words: &str) -> Option<Carried> {
    const LONGEST: usize = 14;
    let words = words.trim();
    if let Some(relation) = heads_alone(words) {
        return Some(Carried::of_any(relation));
    }
    // Most texts end in a stop, and carry nothing.
    if words.ends_with('.') {
        return None;
    }
    let last = crate::sentences::sentences(words).pop()?;
    let last = words.get(last)?.to_lowercase();
    let whole = last.trim_end_matches([':', ' ', '-']);
    // "density 4 pcf, laid to not less than the following depth" opens with its last stretch.
    let tail = whole.rsplit([',', ';']).next().unwrap_or(whole);
    let opening = if tail.contains(" the following") {
        tail
    } else {
        without_remark(whole)
    };
    let parts = || opening.split(|c: char| !c.is_alphanumeric());
    let numbered = parts()
        .skip(1)
        .any(|word| word.contains(|c: char| c.is_ascii_digit()));
    if numbered || parts().filter(|word| !word.is_empty()).count() > LONGEST {
        return None;
    }
    let ending = ENDINGS
        .iter()
        .find(|(words, _)| {
            opening.ends_with(words) || opening.contains(&format!("{words} the following"))
        })
        .map(|(_, relation)| *relation);
    let mut qualifiers = parts().filter_map(qualifier);
    let qualified = qualifiers
        .next()
        .filter(|_| last.ends_with(':') && qualifiers.next().is_none());
    let adjectives = ATTRIBUTES
        .iter()
        .find(|(attribute, _)| parts().any(|word| word.starts_with(attribute)))
        .map(|(_, adjectives)| *adjectives);
    Some(Carried {
        relation: ending.or(qualified)?,
        adjectives,
        listed: false,
    })
}

/// What opens a list without what a comma adds of other items: "Minimum depth, *all with the backing of 3.2*". A remark with a measure of its own stays.
fn without_remark(opening: &str) -> &str {
    let Some((head, remark)) = opening.split_once(", ") else {
        return opening;
    };
    let begins = |at: usize| {
        let before = remark.get(..at).unwrap_or_default();
        !before.ends_with(|c: char| c.is_alphanumeric() || c == '.')
    };
    let measures = remark
        .match_indices(|c: char| c.is_ascii_digit())
        .any(|(at, _)| begins(at) && quantity_at(remark, at).is_some());
    let limits = remark
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| qualifier(word).is_some() || word == "not");
    let refers = remark.contains(|c: char| c.is_ascii_digit());
    if refers && !measures && !limits {
        head
    } else {
        opening
    }
}

/// What an item's title says of the labels and values under it: "MAXIMUM JOINT WIDTHS", "Minimum overlaps". One of a single measure, "Minimum depth", is no
/// heading of a list.
pub(crate) fn carried_by_title(title: &str) -> Option<Carried> {
    const LISTS: &[&str] = &[
        "widths",
        "depths",
        "thicknesses",
        "overlaps",
        "laps",
        "spacings",
        "lengths",
        "heights",
        "densities",
    ];
    const LONGEST: usize = 5;
    let lower = title.trim().to_lowercase();
    let words: Vec<&str> = lower.split_whitespace().collect();
    let limits = words.first().is_some_and(|word| qualifier(word).is_some());
    let lists = words.last().is_some_and(|word| LISTS.contains(word));
    let heads = limits && lists && words.len() <= LONGEST;
    let carried = heads.then(|| carried(&format!("{lower}:")))??;
    Some(Carried {
        listed: true,
        ..carried
    })
}

/// `3. Minimum values`: a heading of limits that is all there is, behind its marker.
fn heads_alone(words: &str) -> Option<Relation> {
    let named = words.trim_start_matches(|c: char| !c.is_alphabetic());
    if let Some(relation) = super::limit_heads::bracketed(named) {
        return Some(relation);
    }
    let several = named.split_whitespace().count() > 1 || named.ends_with(':');
    (several && !named.ends_with('.')).then(|| super::limit_heads::heads(named))?
}

impl Carried {
    /// What a heading that names no measure says of whatever stands below it.
    pub(super) const fn of_any(relation: Relation) -> Self {
        Self {
            relation,
            adjectives: Some(MEASURING),
            listed: false,
        }
    }

    /// Whether only labels with their values are meant.
    pub(super) const fn is_of_a_list(self) -> bool {
        self.listed
    }

    /// Whether the heading names no measure.
    pub(super) fn is_of_any(self) -> bool {
        self.adjectives == Some(MEASURING)
    }

    /// Whether an amount is one of those meant: the words after it don't say that it measures something else.
    pub(crate) fn reaches(self, sentence: &Sentence<'_>, amount: &Amount) -> bool {
        let after = sentence.skip_parentheses(amount.last);
        // "4-1/2 in., in two pieces of 2-1/4 in." is 4-1/2 in. at least, in pieces of that size.
        let of_pieces = amount.first > 1
            && sentence.is_word(amount.first - 1, "of")
            && sentence.is_any(
                amount.first - 2,
                &["pieces", "layers", "strips", "batts", "boards", "lifts"],
            );
        if of_pieces {
            return false;
        }
        !sentence.is_any(after, MEASURING)
            || self
                .adjectives
                .is_some_and(|adjectives| sentence.is_any(after, adjectives))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn openings_that_carry() {
        for (words, expected) in [
            ("Minimum depths:", Some(Relation::AtLeast)),
            (
                "Slab thickness at the edge not less than",
                Some(Relation::AtLeast),
            ),
            ("Thickness, max.:", Some(Relation::AtMost)),
            ("Packing depths", None),
            ("Minimum depth 4 in.:", None),
            (
                "Maximum spacings, in addition to the minimum embedment:",
                None,
            ),
        ] {
            assert_eq!(
                carried(words).map(|carried| carried.relation),
                expected,
                "{words}"
            );
        }
    }
}
