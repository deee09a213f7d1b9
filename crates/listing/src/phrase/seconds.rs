//! The second value of an amount: the same in another unit, in parentheses, after "or" or a stroke.

use measure::notation::{NumeralStyle, Stated};
use measure::{Agreement, Unit, dual};

use super::amounts::{Amount, Second, Shape, Spread};
use super::lex::{Token, TokenKind};
use super::values::{Value, dimensions_at, spread_at};
use crate::model::Span;

/// The second value of an amount, in parentheses or after "or" or a stroke; with the token after and its place.
pub(super) fn second_at(
    tokens: &[Token<'_>],
    at: usize,
    first: &Spread,
    unit: Unit,
) -> Option<(Second, usize, Span)> {
    let opening = tokens.get(at)?;
    if let Some(close) = closing(opening) {
        let inner = spread_at(tokens, at + 1)?;
        let second = pair(first, unit, &inner)?;
        let mut next = inner.next;
        // `(125 mils; 3 mm)` and `(165 mm or 6.5 in.)` repeat the value; `(6 mm per 305 mm)` says per what.
        while let Some(token) = tokens.get(next) {
            if token.is_sign(close) {
                return Some((second, next + 1, opening.span.join(token.span)));
            }
            // `(0.039 in., 20 gauge)`: what measures something else is an amount of its own.
            let stop = token.is_sign(',') || token.is_sign(';');
            if stop
                && spread_at(tokens, next + 1)
                    .and_then(|more| more.unit)
                    .is_some_and(|more| more.dimension() != unit.dimension())
            {
                return Some((second, next, opening.span.join(inner.span)));
            }
            let goes_on = token.is_sign(';')
                || token.is_sign(',')
                || token.is_sign('/')
                || token.is_numeric()
                || token.is_word("or")
                || token.is_word("per")
                || token.is_word("each");
            if !goes_on {
                break;
            }
            next += 1;
        }
        return None;
    }
    let joined = opening.is_word("or")
        || opening.is_sign('/')
        || opening.is_sign(';')
        || opening.is_sign('=')
        || opening.is_sign(',');
    let inner = joined.then(|| spread_at(tokens, at + 1))??;
    let second = pair(first, unit, &inner)?;
    let other_system = inner
        .unit
        .is_some_and(|second| second.system() != unit.system());
    let same = second.agreement != Agreement::InConflict;
    (other_system && same).then_some((second, inner.next, inner.span))
}

/// The second value in a table's cell, whose unit may stand in the column's heading; with the token after it.
pub(super) fn cell_second(
    tokens: &[Token<'_>],
    at: usize,
    first: &Spread,
    unit: Unit,
    heading: Option<Unit>,
) -> Option<(Second, usize)> {
    let opening = tokens.get(at)?;
    let close = closing(opening)?;
    let mut inner = spread_at(tokens, at + 1)?;
    inner.unit = inner.unit.or(heading);
    tokens
        .get(inner.next)
        .filter(|token| token.is_sign(close))?;
    Some((pair(first, unit, &inner)?, inner.next + 1))
}

pub(super) const fn closing(token: &Token<'_>) -> Option<char> {
    match token.kind {
        TokenKind::Sign('(') => Some(')'),
        TokenKind::Sign('[') => Some(']'),
        _ => None,
    }
}

/// Two statements of one amount in two units of one dimension.
pub(super) fn pair(first: &Spread, unit: Unit, second: &Spread) -> Option<Second> {
    let other = second.unit?;
    let alike = first.hi.is_some() == second.hi.is_some() && other != unit;
    if !alike || other.dimension() != unit.dimension() {
        return None;
    }
    let stated = |number, unit, spread: &Spread| Stated {
        number,
        unit,
        step: spread.step,
        style: spread.style,
        span: 0..0,
    };
    let mut agreement = dual::agreement(
        &stated(first.lo, unit, first),
        &stated(second.lo, other, second),
    )?;
    if let Some((a, b)) = first.hi.zip(second.hi) {
        agreement = agreement.max(dual::agreement(
            &stated(a, unit, first),
            &stated(b, other, second),
        )?);
    }
    Some(Second {
        lo: second.lo,
        hi: second.hi,
        unit: other,
        agreement,
    })
}

/// The second of an amount, from one value of a parenthesis that states several.
pub(super) fn second_of(amount: &Amount, value: &Value) -> Option<Second> {
    let spread = |lo, unit, step| Spread {
        lo,
        hi: None,
        unit: Some(unit),
        shape: Shape::Single,
        step,
        style: NumeralStyle::Whole,
        span: Span::default(),
        next: 0,
    };
    let other = value.unit?;
    pair(
        &spread(amount.lo, amount.unit, amount.step),
        amount.unit,
        &spread(value.number, other, value.step),
    )
}

/// `(38 by 51 mm)`: as many values as there are amounts before it, in another unit.
pub(super) fn several_seconds(
    tokens: &[Token<'_>],
    at: usize,
    unit: Unit,
    most: usize,
) -> Option<(Vec<Value>, usize, Span)> {
    let opening = tokens.get(at)?;
    let close = closing(opening)?;
    let mut values = dimensions_at(tokens, at + 1)?;
    let other = values.last()?.unit?;
    let next = values.last()?.next;
    let end = tokens.get(next).filter(|token| token.is_sign(close))?;
    if other.dimension() != unit.dimension() || other == unit || values.len() > most {
        return None;
    }
    for value in &mut values {
        value.unit = Some(other);
    }
    Some((values, next + 1, opening.span.join(end.span)))
}
