//! Numbers of what is added, left, varied, or taken for each measure.

use measure::{Dimension, Unit};
use vocabulary::Property;

use super::plausible::is_size;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether a number is what is added to something else or taken from it, "the thickness of the material plus 1/8 in.", "full depth less 1 in.", and
/// no length beyond it.
pub(super) fn is_added(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let added = amount
        .first
        .checked_sub(1)
        .is_some_and(|at| sentence.is_any(at, &["plus", "less", "minus"]));
    added && !property.attribute.contains("beyond")
}

/// Whether a number says how much a thing may vary, and not how large it is: "shall not vary by more than 1/8 in."
pub(super) fn is_variation(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const VARY: &[&str] = &[
        "vary",
        "varies",
        "varying",
        "deviate",
        "deviates",
        "depart",
        "departs",
        "differ",
        "differs",
        "variation",
        "deviation",
    ];
    const REACH: usize = 10;
    // "shall not vary from 4 in. by more than 1/8 in."
    let measures = |at: usize| {
        let other = sentence
            .amount_at(at)
            .and_then(|index| sentence.amount(index));
        other.is_some_and(|other| other.first == 0 || !sentence.is_word(other.first - 1, "from"))
    };
    (amount.first.saturating_sub(REACH)..amount.first)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && !measures(*at))
        .any(|at| sentence.is_any(at, VARY))
}

/// Whether a number says how near something must be, which is no length or width of it: "a pin inside the last 3 in."
pub(super) fn is_how_near(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const SIZES: &[&str] = &["length", "width", "depth", "thickness", "height"];
    let near = (amount.first.saturating_sub(3)..amount.first)
        .any(|at| sentence.is_any(at, &["within", "inside"]))
        || (amount.first.saturating_sub(5)..amount.first)
            .any(|at| sentence.is_any(at, &["bearing", "bear", "bears", "lying"]));
    near && SIZES.contains(&property.attribute.as_str())
}

/// Whether a number is another way to say the one before it, in another measure: `25 percent of the width, or 5/16 in., whichever is less`.
pub(super) fn is_alternative(sentence: &Sentence<'_>, index: usize) -> bool {
    const REACH: usize = 10;
    let before = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before));
    let Some((own, before)) = sentence.amount(index).zip(before) else {
        return false;
    };
    let offered = own.first > 0 && sentence.is_word(own.first - 1, "or");
    offered
        && own.unit.dimension() != before.unit.dimension()
        && sentence.has_any(own.last, own.last + REACH, &["whichever"])
}

/// Whether a number is no property of what it stands beside: the stretch that something is done on ("every 8 ft", "in each 20 ft"), or what is
/// added to something else ("the joint width + 60 mm").
pub(super) fn is_apart(sentence: &Sentence<'_>, first: usize) -> bool {
    let Some(before) = first.checked_sub(1) else {
        return sentence.is_sign(first, '+');
    };
    let measured = sentence
        .amounts
        .iter()
        .any(|amount| amount.first == first && amount.unit.dimension() == Dimension::Length);
    let stretch = measured && sentence.is_any(before, &["every", "each", "per"]);
    stretch || sentence.is_sign(first, '+') || sentence.is_sign(before, '+')
}

/// Whether a count is of a measure taken from things, and of none of them: "offset at least one stud space", "five bolt diameters".
pub(super) fn counts_a_measure(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const MEASURES: &[&str] = &[
        "space",
        "spaces",
        "bay",
        "bays",
        "diameter",
        "diameters",
        "width",
        "widths",
    ];
    // "two to each batt" counts what was spoken of before.
    let to_each = sentence.is_word(amount.last, "to");
    amount.unit == Unit::Count
        && (to_each || sentence.has_any(amount.last, amount.last + 2, MEASURES))
}

/// Whether a share is what is left of a thing that is squeezed, and no compression: "compressed *to* two-thirds of its free thickness".
pub(super) fn is_left(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const REACH: usize = 7;
    const BEFORE_SHARE: &[&str] = &[
        "between",
        "a",
        "an",
        "the",
        "about",
        "at",
        "no",
        "not",
        "min",
        "minimum",
        "max",
        "maximum",
        "approximately",
        "approx",
        "nominally",
        "nominal",
        "from",
        "roughly",
        "less",
        "more",
        "under",
        "below",
        "over",
        "above",
    ];
    let before = amount.first.saturating_sub(REACH)..amount.first;
    let mut before = before
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && !sentence.is_word(*at, "by"));
    let to = before.find(|at| sentence.is_any(*at, &["to", "below", "under"]));
    // "compressed to fit" is followed by no share.
    let to = to.filter(|to| to + 1 == amount.first || sentence.is_any(to + 1, BEFORE_SHARE));
    // "to the extent of 25 percent" is how far it is squeezed.
    let how_far = |to: usize| sentence.has_any(to, amount.first, &["extent", "compression"]);
    let squeezed = to.filter(|to| !how_far(*to)).is_some_and(|to| {
        (to.saturating_sub(3)..to).any(|at| {
            let word = sentence.word(at);
            word.starts_with("compress") || word.starts_with("squeez")
        })
    });
    let of_it = sentence.is_word(sentence.skip_parentheses(amount.last), "of");
    let fraction = (amount.first..amount.last).any(|at| sentence.has_word(at));
    // "compressed to 60 percent" says not of what, and is more than wool is squeezed by.
    let more_than_half = amount.lo >= 50;
    amount.unit == Unit::Percent && (fraction || of_it || more_than_half) && squeezed
}

/// Whether a count of parts is one for each stretch, and no number of them: "one per 4 ft max".
pub(super) fn is_rate(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let stretch = sentence
        .amounts
        .iter()
        .any(|other| other.first == amount.last + 1 && other.unit.dimension() == Dimension::Length);
    property.attribute == "count"
        && sentence.is_any(amount.last, &["per", "every", "each"])
        && stretch
}

/// Whether a number is so much for each measure of something, and no size of it: "a sag of 3/4 in. per inch of width".
pub(super) fn is_per_measure(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
) -> bool {
    is_size(property) && sentence.is_word(sentence.skip_parentheses(amount.last), "per")
}
