//! Thicknesses of films, wet and dry: the word stands between the number and its unit, or the unit is that of the film before.

use measure::{Dimension, Unit};

use super::super::lex::{Token, TokenKind};
use super::{Amount, Shape, Spread};

/// `125 wet mils`, `125 mils wet (62 dry)`, `80 mils wet / 40 dry`: a number that "wet" or "dry" stands right behind.
pub(super) fn film_at(tokens: &[Token<'_>], at: usize, before: Option<&Amount>) -> Option<Spread> {
    let token = tokens.get(at)?;
    let TokenKind::Number(numeral) = &token.kind else {
        return None;
    };
    is_film_word(tokens.get(at + 1)?).then_some(())?;
    let spread = |unit: Unit, last: usize| {
        Some(Spread {
            lo: numeral.value,
            hi: None,
            unit: Some(unit),
            shape: Shape::Single,
            step: numeral.step,
            style: numeral.style,
            span: token.span.join(tokens.get(last.checked_sub(1)?)?.span),
            next: last,
        })
    };
    if let Some(unit) = tokens.get(at + 2).and_then(film_unit) {
        return spread(unit, at + 3);
    }
    let unit = before.and_then(|before| unit_before(tokens, at, before))?;
    spread(unit, at + 1)
}

pub(super) fn is_film_word(token: &Token<'_>) -> bool {
    token.is_word("wet") || token.is_word("dry")
}

fn film_unit(token: &Token<'_>) -> Option<Unit> {
    match token.lower {
        "mil" | "mils" => Some(Unit::Mil),
        "mm" => Some(Unit::Millimetre),
        "inch" | "inches" => Some(Unit::Inch),
        _ => None,
    }
}

/// The unit of a film before, with nothing but its own words, a stroke or a bracket between.
fn unit_before(tokens: &[Token<'_>], at: usize, before: &Amount) -> Option<Unit> {
    let length = before.unit.dimension() == Dimension::Length;
    let between = tokens.get(before.last..at)?;
    let goes_on = between.iter().all(|token| {
        is_film_word(token)
            || ['/', '(', ','].iter().any(|sign| token.is_sign(*sign))
            || ["to", "and", "or", "film", "min", "minimum"]
                .iter()
                .any(|word| token.is_word(word))
    });
    (length && goes_on && !between.is_empty()).then_some(before.unit)
}
