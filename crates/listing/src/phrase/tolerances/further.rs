//! Tolerances that stand a few words behind their value, or repeat themselves.

use measure::{Dimension, Unit};

use super::super::lex::Token;
use super::super::values::{Value, second_value_end};
use super::deviations;
use super::named::named_tolerance;

/// The token after a tolerance in brackets that repeats the one before it: `± 1.5 mm (± 1/16 in.)`.
pub(super) fn second_deviation_end(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    tokens.get(at).filter(|token| token.is_sign('('))?;
    let (_, _, next) = deviations(tokens, at + 1)?;
    tokens.get(next).filter(|token| token.is_sign(')'))?;
    Some(next + 1)
}

/// `1/4 in. below the floor, plus or minus 1/16 in.`, `150 mm from the column face (± 25 mm)`: where a tolerance begins that a few words
/// part from its length, and whether a parenthesis holds it.
pub(super) fn further_tolerance(tokens: &[Token<'_>], first: &Value) -> Option<(usize, bool)> {
    const REACH: usize = 8;
    // What is flat or level within a tolerance has it for itself.
    const OTHERS: &[&str] = &[
        "flat", "level", "plumb", "square", "straight", "flush", "parallel", "and", "or", "with",
        "by", "to",
    ];
    // `25% greater than the joint width, plus or minus 5%`
    let share = first.unit == Some(Unit::Percent);
    let length = share
        || first
            .unit
            .is_some_and(|unit| unit.dimension() == Dimension::Length);
    let start = second_value_end(tokens, first.next).unwrap_or(first.next);
    let end = (start..start + REACH).find(|at| {
        tokens
            .get(*at)
            .is_none_or(|token| token.word().is_none() || OTHERS.contains(&token.lower))
    })?;
    let stop = tokens.get(end).filter(|_| length && end > start)?;
    let bracketed = stop.is_sign('(');
    let parted = bracketed || stop.is_sign(',');
    // `recessed 6 mm below the floor, with a tolerance of ± 1.5 mm`
    let with = ["with", "within"]
        .iter()
        .any(|word| tokens.get(end + 1).is_some_and(|token| token.is_word(word)));
    let named = with.then(|| named_tolerance(tokens, end + 1)).flatten();
    let from = named.unwrap_or(end + 1);
    let (below, above, next) = parted.then(|| deviations(tokens, from))??;
    let alike = [&below, &above].iter().all(|side| {
        let alike = side.unit.is_none_or(|unit| {
            unit.dimension() == Dimension::Length && !share || share && unit == Unit::Percent
        });
        alike && side.number < first.number
    });
    let closed = !bracketed || tokens.get(next).is_some_and(|token| token.is_sign(')'));
    // In another unit it may be greater than the number it belongs to.
    let same = [below.unit, above.unit]
        .iter()
        .flatten()
        .all(|unit| Some(*unit) == first.unit);
    (alike && closed && same).then_some((end + 1, bracketed))
}
