//! What is laid on a thing beside the thing itself: "beam flange *sprayed* 1 in. thick", "1/8 in. *thick* on the deck", "1/8 in. *wet* thickness".
//!
//! What it would misread: a thing that is itself "wrapped 2 in. thick" and meant so.

use vocabulary::Property;

use super::cues::is_bounding;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether a number is of what is laid on something, and the property of something else, or another measure of what is laid on.
pub(super) fn is_laid_on(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    is_thick_and_no_lap(sentence, amount, property)
        || is_sprayed(sentence, amount, property)
        || is_film_and_no_depth(sentence, amount, property)
}

/// `min 3/8 in. thick on the deck`: how thick it lies there, and not how far it laps.
fn is_thick_and_no_lap(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let behind = sentence.skip_parentheses(amount.last);
    let thick = sentence.is_any(behind, &["thick", "thk"])
        || sentence.is_any(behind, &["in", "wet", "dry"])
            && sentence.is_any(behind + 1, &["thickness", "thick"]);
    property.attribute.starts_with("overlap") && thick
}

/// `beam sprayed 1 in. thick`, `deck fireproofed min 3/8 in. thick`: the thickness of what is sprayed on.
fn is_sprayed(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const LAID: &[&str] = &[
        "sprayed",
        "fireproofed",
        "coated",
        "plastered",
        "wrapped",
        "insulated",
        "rendered",
    ];
    const LAYERS: &[&str] = &[
        "coating",
        "sealant",
        "fireproofing",
        "primer",
        "barrier",
        "packing",
        "tape",
    ];
    let verb = (0..amount.first)
        .rev()
        .find(|at| !is_bounding(sentence.word(*at)) && !sentence.is_any(*at, &["to", "a"]));
    property.attribute.ends_with("thickness")
        && !LAYERS.contains(&property.component.as_str())
        && verb.is_some_and(|at| sentence.is_any(at, LAID))
}

/// `1/8 in. wet thickness`: the film of what is sprayed, and no depth of what is gunned.
fn is_film_and_no_depth(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let behind = sentence.skip_parentheses(amount.last);
    property.attribute == "depth"
        && sentence.is_any(behind, &["wet", "dry"])
        && sentence.is_any(behind + 1, &["thickness", "film", "mils"])
}
