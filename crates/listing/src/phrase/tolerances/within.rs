//! A value that something must be within so much of: `within 3 mm of 20 mm`, `within 10 % of 4 pcf`.
//!
//! What it would misread: a place, `within 3 in. of the edge`, which no value follows.

use measure::{Number, Unit};

use super::super::amounts::{Shape, Spread};
use super::super::lex::Token;
use super::super::values::{second_value_end, value_at};

/// The tolerance whose deviation begins at a token behind "within".
pub(in crate::phrase) fn within_of(tokens: &[Token<'_>], at: usize) -> Option<Spread> {
    at.checked_sub(1)
        .and_then(|before| tokens.get(before))
        .filter(|token| token.is_word("within"))?;
    let deviation = value_at(tokens, at)?;
    let of = second_value_end(tokens, deviation.next).unwrap_or(deviation.next);
    tokens.get(of).filter(|token| token.is_word("of"))?;
    let value = value_at(tokens, of + 1)?;
    let unit = value.unit?;
    let apart = match deviation.unit {
        Some(Unit::Percent) if unit != Unit::Percent => value
            .number
            .times(deviation.number)?
            .over(Number::whole(100))?,
        Some(own) if own != unit => return None,
        _ => deviation.number,
    };
    let opening = tokens.get(at)?;
    let closing = tokens.get(value.next.checked_sub(1)?)?;
    Some(Spread {
        lo: value.number.minus(apart)?,
        hi: Some(value.number.plus(apart)?),
        unit: Some(unit),
        shape: Shape::Tolerance,
        step: value.step.min(deviation.step),
        style: value.style,
        span: opening.span.join(closing.span),
        next: value.next,
    })
}
