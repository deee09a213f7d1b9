use measure::{Dimension, Quantity, Unit};

use super::{Finding, Sentence, bounded_alone};

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let before = sentence.bound_before(index)?;
    let (own, previous) = (sentence.amount(index)?, sentence.amount(before)?);
    // `25 MSG min. (0.018 in.)`
    let closed = usize::from(
        sentence.is_any(previous.last, &["min", "max", "minimum", "maximum"])
            && (sentence.is_sign(previous.last + 1, '(')
                || sentence.is_sign(previous.last + 1, '[')),
    );
    let end = previous.last + closed;
    let beside = own.first == end + 1
        && (sentence.is_sign(end, '(') || sentence.is_sign(end, '[') || sentence.is_sign(end, ','));
    let pair = (previous.unit.dimension(), own.unit.dimension());
    let one_sheet = matches!(
        pair,
        (Dimension::Gauge, Dimension::Length) | (Dimension::Length, Dimension::Gauge)
    );
    // `25 ga, 24 in. o.c.`: no sheet is that thick.
    let thin = [own, previous].iter().all(|amount| {
        amount.unit.dimension() != Dimension::Length
            || Quantity::new(amount.lo, amount.unit)
                .to(Unit::Inch)
                .is_some_and(|thickness| thickness.number < 1)
    });
    // `No. 25 ga, 7/8 in. deep` goes on to the channel's depth.
    let shaped = sentence.is_any(
        sentence.skip_parentheses(own.last),
        &["deep", "wide", "long", "high", "legs", "leg", "flanges"],
    );
    if !(beside && one_sheet && thin) || shaped {
        return None;
    }
    let (finding, rule) = bounded_alone(sentence, before)?;
    (rule != "bare value").then_some(finding)
}
