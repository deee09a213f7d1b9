//! Counts and deviations that are taken over a length: `three every 20 ft`, `6 mm in 3 m`.

use measure::Unit;

use super::super::Sentence;
use crate::phrase::Amount;

/// The end of the length that a deviation is taken over, with the same in other units: `6 mm in 3 m (1/4 in. in 10 ft) max.`
pub(in crate::rules) fn stretch_of_a_slope(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let (amount, next) = (sentence.amount(index)?, sentence.amount(index + 1)?);
    let over =
        next.first == amount.last + 1 && sentence.is_any(amount.last, &["in", "over", "per"]);
    let lengths = [amount, next]
        .iter()
        .all(|amount| amount.unit.dimension() == measure::Dimension::Length);
    let longer = matches!(next.unit, Unit::Metre | Unit::Foot) && next.unit != amount.unit;
    (over && lengths && longer).then_some(next.last)
}

/// Whether a sentence speaks of what fastens or carries something, and so of how far apart that stands.
pub(super) fn names_fasteners(sentence: &Sentence<'_>) -> bool {
    const THINGS: &[&str] = &[
        "fastener", "anchor", "screw", "clip", "pin", "bolt", "weld", "hanger", "nail", "staple",
        "bracket", "tie", "rivet",
    ];
    (0..sentence.tokens.len()).any(|at| {
        THINGS
            .iter()
            .any(|thing| sentence.word(at).trim_end_matches('s') == *thing)
    })
}

pub(super) fn is_one(amount: &Amount) -> bool {
    amount.unit == Unit::Count && amount.lo == 1 && amount.hi.is_none()
}

/// The end of the stretch that a count is taken on: `three every 20 ft`.
pub(super) fn counted_stretch(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    const PARTED: &[&str] = &[
        "splice", "splices", "joint", "joints", "butt", "butts", "seam", "seams",
    ];
    let amount = sentence.amount(index)?;
    let next = sentence.amount(index + 1)?;
    let on = next.first.checked_sub(1)?;
    // Of `one every 500 mm at most` the distance is limited.
    let directly = on == amount.last
        && sentence.is_any(on, &["every", "per"])
        && !(is_one(amount) && sentence.is_word(on, "every"));
    // `ONE SPLICE PER 4 FT MAX`
    let thing = on == amount.last + 1
        && sentence.is_word(on, "per")
        && sentence.is_any(amount.last, PARTED);
    // `one fastener per 4 ft max` limits how far apart they stand.
    let fasteners =
        is_one(amount) && sentence.word(amount.last) == "per" && names_fasteners(sentence);
    let counts = amount.unit == Unit::Count
        && !fasteners
        && (directly || thing && next.unit.dimension() == measure::Dimension::Length);
    // `(2) #10 SCREWS EACH END MIN.`
    let sized =
        amount.unit == Unit::Count && next.unit == Unit::ScrewNumber && next.first == amount.last;
    (counts || sized).then_some(next.last)
}
