//! Numbers of one part beside a measure of another: the thickness of a base layer beside how far it stops short, the edge of a layer beside its
//! thickness, the flange of a runner beside its legs, so many beads on each side beside the sides.

use vocabulary::Property;

use super::{Mention, Subject};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether a number is of another part than a property's.
pub(super) fn is_another_parts(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    is_no_offset(sentence, amount, property)
        || is_at_an_edge(sentence, amount, property)
        || is_flange_beside_legs(sentence, amount, property)
        || is_leg_by_itself(sentence, amount, property)
        || is_so_many_a_side(sentence, amount, property)
        || is_plate_by_itself(property, subject, mentions)
}

/// The words from the last stop or number to a number.
fn before(sentence: &Sentence<'_>, amount: &Amount) -> core::ops::Range<usize> {
    let start = (0..amount.first)
        .rev()
        .find(|at| sentence.is_stop(*at) || sentence.amount_at(*at).is_some());
    start.map_or(0, |start| start + 1)..amount.first
}

/// `base layer 1/2 in. and face layer 5/8 in.`: how thick a layer is, where no word says that it stops short of the other.
fn is_no_offset(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const OFFSET: &[&str] = &[
        "more", "further", "farther", "short", "shorter", "below", "beyond", "back", "past",
        "lower", "offset", "under", "behind", "clear", "off", "stop", "stops", "stopped", "held",
        "from", "gap", "above", "set", "kept", "cut",
    ];
    let offset = before(sentence, amount)
        .chain(amount.last..amount.last + 10)
        .any(|at| sentence.is_any(at, OFFSET));
    property.attribute == "layer_offset" && !offset
}

/// `upper edge of face layer 1 in.`: where an edge is, and not how thick the layer.
fn is_at_an_edge(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const THICK: &[&str] = &["thick", "thk", "thickness"];
    let edge = before(sentence, amount)
        .any(|at| sentence.is_any(at, &["edge", "edges"]) && sentence.is_word(at + 1, "of"));
    // "with a thickness at the edge of 4-1/2 inches"
    let thick = before(sentence, amount)
        .chain([sentence.skip_parentheses(amount.last)])
        .any(|at| sentence.is_any(at, THICK));
    property.attribute == "thickness" && edge && !thick
}

/// `leg min 2 in., flange 1-1/4 in.`: of what has both, the one is not the other.
fn is_flange_beside_legs(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    property.attribute == "leg_length"
        && before(sentence, amount).any(|at| sentence.is_any(at, &["flange", "flanges"]))
        && (0..before(sentence, amount).start).any(|at| sentence.is_any(at, &["leg", "legs"]))
}

/// `legs no shorter than 2 in. nor longer than 3 in.`: how long a leg is, and not by how much it is longer than the joint is wide.
fn is_leg_by_itself(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let beyond = (0..amount.last + 8).any(|at| {
        sentence.is_any(
            at,
            &[
                "joint",
                "gap",
                "opening",
                "width",
                "deflection",
                "travel",
                "movement",
            ],
        )
    });
    property.attribute == "leg_beyond_joint" && !beyond
}

/// `one (1) per side`: so many things on each side, and no number of sides.
fn is_so_many_a_side(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    property.attribute == "faces"
        && sentence.is_any(
            sentence.skip_parentheses(amount.last),
            &["per", "each", "every"],
        )
}

/// `16 ga plate`: a plate is no angle's but in an item about angles.
fn is_plate_by_itself(property: &Property, subject: &Subject, mentions: &[Mention]) -> bool {
    let mut own = mentions
        .iter()
        .filter(|mention| mention.component.name == property.component)
        .peekable();
    property.component == "angle"
        && !subject.is_about("angle")
        && own.peek().is_some()
        && own.all(|mention| ["plate", "plates"].contains(&mention.words.as_str()))
}
