//! Numbers whose own words name a measure beside the one that fits best: the size of a weld beside its length, the leg of a staple beside the runner's,
//! the distance from an end beside that from an edge, how far apart rows stand beside the things in them.
//!
//! What it would misread: a thing whose end is its edge, "screws 2 in. from the ends" where the board's edge is meant.

use measure::{Dimension, Unit};
use vocabulary::{Property, vocabulary};

use super::cues::is_bounding;
use super::{Mention, Subject, apart, weights};
use crate::phrase::Amount;
use crate::rules::{Sentence, is_spaced};

/// Whether a number's words are about a measure beside a property's.
pub(super) fn is_neighbours(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    is_leg_of_a_staple(sentence, amount, property)
        || is_size_of_a_weld(sentence, amount, property)
        || counts_the_thing_itself(amount, property, mentions)
        || is_from_the_other(sentence, amount, property)
        || is_driven_in(sentence, amount, property)
        || is_apart_in_rows(sentence, amount, property)
        || is_filled(sentence, amount, property)
        || is_from_an_end(sentence, amount, property)
        || is_set_back(sentence, amount, property)
        || is_part_of_another(property, subject, mentions)
        || is_told_by_the_next_label(sentence, amount, property, mentions)
}

/// `1/8 in. fillet welds 1 in. long`: the length of welds, behind their name.
pub(super) fn weld_length(sentence: &Sentence<'_>, amount: &Amount) -> Option<&'static Property> {
    let welds = amount.first.checked_sub(1)?;
    let long = sentence.is_word(sentence.skip_parentheses(amount.last), "long");
    let length = amount.unit.dimension() == Dimension::Length;
    (long && length && sentence.is_any(welds, &["weld", "welds"]))
        .then(|| vocabulary().property("fastener.weld_length"))?
}

/// `staples 7/16 in. crown, 1 in. leg`: a staple has legs of its own.
fn is_leg_of_a_staple(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let legs = ["leg", "legs", "crown"];
    let own = sentence.is_any(sentence.skip_parentheses(amount.last), &legs);
    own && apart::is_size(property)
        && property.component != "fastener"
        && (0..amount.first)
            .rev()
            .take_while(|at| !sentence.is_sign(*at, ';'))
            .any(|at| sentence.is_any(at, &["staple", "staples"]))
}

/// `1/8 in. fillet welds`: how thick a weld is.
fn is_size_of_a_weld(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let after = sentence.skip_parentheses(amount.last);
    let fillet = usize::from(sentence.is_any(after, &["fillet", "seam", "bead", "groove"]));
    let welds = after + fillet;
    let told_behind = sentence.amounts.iter().any(|other| {
        other.first == welds + 1 && sentence.is_word(sentence.skip_parentheses(other.last), "long")
    });
    property.attribute == "weld_length" && told_behind && sentence.is_any(welds, &["weld", "welds"])
}

/// `two clips at each end`: so many of the things, and not of what holds each.
fn counts_the_thing_itself(amount: &Amount, property: &Property, mentions: &[Mention]) -> bool {
    property.attribute.starts_with("fasteners")
        && amount.unit == Unit::Count
        && mentions.iter().any(|mention| {
            mention.first == amount.last && mention.component.name == property.component
        })
}

/// `2 in. from ends`: how far from the end, and not from the edge; and the other way round.
pub(super) fn is_from_the_other(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
) -> bool {
    const ARTICLES: &[&str] = &["the", "each", "any", "all", "both", "either"];
    let other: &[&str] = match property.attribute.as_str() {
        "edge_distance" => &["end", "ends"],
        "end_distance" => &["edge", "edges"],
        _ => return false,
    };
    let from = sentence.skip_parentheses(amount.last);
    let from = from + usize::from(sentence.is_any(from, &["min", "minimum", "max", "maximum"]));
    let article = usize::from(sentence.is_any(from + 1, ARTICLES));
    let at = from + 1 + article;
    // "from ends and edges" is from both.
    let both = sentence.is_any(at + 1, &["and", "or"])
        && sentence.is_any(at + 2, &["edge", "edges", "end", "ends"]);
    sentence.is_word(from, "from") && sentence.is_any(at, other) && !both
}

/// `2 in. leg embedded 3 in. into packing`: how deep it goes in, and no size of it.
fn is_driven_in(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const DRIVEN: &[&str] = &[
        "embed",
        "embeds",
        "embedded",
        "insert",
        "inserted",
        "penetrate",
        "penetrates",
        "penetrating",
        "sunk",
        "pushed",
        "pressed",
        "driven",
    ];
    let verb = (0..amount.first)
        .rev()
        .find(|at| !is_bounding(sentence.word(*at)));
    apart::is_size(property) && verb.is_some_and(|at| sentence.is_any(at, DRIVEN))
}

/// `rows 4 in. apart`: how far apart rows stand, and not what stands in them.
fn is_apart_in_rows(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let before = (0..amount.first)
        .rev()
        .find(|at| !is_bounding(sentence.word(*at)) && !sentence.is_word(*at, "spaced"));
    let apart = is_spaced(sentence, amount.last)
        || sentence.is_word(sentence.skip_parentheses(amount.last), "apart");
    property.attribute.ends_with("spacing")
        && !property.attribute.contains("row")
        && apart
        && before.is_some_and(|at| sentence.is_any(at, &["row", "rows", "lines"]))
}

/// `valleys filled to a depth of 3 in.`: how deep the filling is, and not what is filled.
fn is_filled(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const FILLED: &[&str] = &["deck", "floor", "wall", "concrete", "joint", "beam", "stud"];
    let depth = ["depth", "thickness", "height"].contains(&property.attribute.as_str());
    depth
        && FILLED.contains(&property.component.as_str())
        && (0..amount.first)
            .rev()
            .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
            .any(|at| {
                sentence.is_any(at, &["filled", "packed", "stuffed"])
                    && sentence.is_any(at + 1, &["to", "for", "with", "full"])
            })
}

/// `set not more than 1/8 in. behind each face`: how far back a thing stands, and no size of it.
fn is_set_back(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const REACH: usize = 6;
    let behind = sentence.skip_parentheses(amount.last);
    apart::is_size(property)
        && sentence.is_any(behind, &["behind", "back", "below", "beneath"])
        && (amount.first.saturating_sub(REACH)..amount.first)
            .any(|at| sentence.is_any(at, &["set", "held", "kept", "placed", "stopped"]))
}

/// `studs with 1-1/4 in. legs`: a part that has another's name by itself is that of what the item is about.
fn is_part_of_another(property: &Property, subject: &Subject, mentions: &[Mention]) -> bool {
    let mut own = mentions
        .iter()
        .filter(|mention| mention.component.name == property.component)
        .peekable();
    let titled = subject.titles.first().map(|(component, _)| *component);
    ["leg_length", "leg_width"].contains(&property.attribute.as_str())
        && titled.is_some_and(|titled| !titled.is_other())
        && !subject.is_about(&property.component)
        && own.peek().is_some()
        && own.all(Mention::is_weak)
}

/// `turned up 12 in. min. Sealant depth 5/8 in.`: a measure that only the label of the next number names.
fn is_told_by_the_next_label(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    mentions: &[Mention],
) -> bool {
    let attribute = [property.attribute.as_str()];
    let label = mentions
        .iter()
        .find(|mention| mention.first >= amount.last)
        .filter(|mention| weights::labels_the_next(sentence, mention));
    let own = (0..amount.first)
        .rev()
        .take_while(|at| sentence.amount_at(*at).is_none())
        .any(|at| sentence.is_any(at, &attribute));
    !own && label.is_some_and(|label| sentence.is_any(label.last, &attribute))
}

/// `fastened within 2 in. of ends`: how far from the end, and not how far apart.
fn is_from_an_end(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const ARTICLES: &[&str] = &["the", "each", "any", "all", "both", "either"];
    let of = sentence.skip_parentheses(amount.last);
    let article = usize::from(sentence.is_any(of + 1, ARTICLES));
    property.attribute.ends_with("spacing")
        && sentence.is_any(of, &["of", "from"])
        && sentence.is_any(of + 1 + article, &["end", "ends", "edge", "edges"])
}
