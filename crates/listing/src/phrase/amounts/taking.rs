//! Values taken together with what stands beside them in a second unit.

use crate::model::Span;
use measure::{Agreement, Unit};

use super::super::lex::Token;
use super::super::seconds::{closing, second_at, second_of, several_seconds};
use super::super::values::{Value, spread_at};
use super::{Amount, Second, Shape, Spread};

/// Takes one value, range or tolerance with its second value.
pub(super) fn take_spread(
    tokens: &[Token<'_>],
    at: usize,
    spread: &Spread,
    unit: Unit,
    found: &mut Vec<Amount>,
) -> usize {
    let mut amount = Amount {
        lo: spread.lo,
        hi: spread.hi,
        unit,
        shape: spread.shape,
        step: spread.step,
        second: None,
        first: at,
        last: spread.next,
        at: spread.span,
        whole: spread.span,
    };
    // `2-1/2 in. deep (64 mm)`: a word may stand between, and stays outside the amount.
    let next_word = tokens
        .get(spread.next)
        .is_some_and(|token| token.word().is_some());
    let apart = if tokens
        .get(spread.next)
        .is_some_and(|token| token.is_word("per"))
    {
        (spread.next..spread.next + 4)
            .find(|at| {
                tokens
                    .get(*at)
                    .is_some_and(|token| closing(token).is_some())
            })
            .unwrap_or(spread.next + 1)
    } else if next_word {
        spread.next + 1
    } else {
        spread.next
    };
    let mut end_of_all = None;
    // `± 1.5 mm (± 1/16 in.)`: the bracket that says it again belongs to it.
    if spread.shape == Shape::Tolerance
        && let Some(end) = spread
            .next
            .checked_sub(1)
            .and_then(|last| tokens.get(last))
            .filter(|last| last.is_sign(')'))
    {
        amount.whole = amount.whole.join(end.span);
    }
    if let Some((next, end)) = said_again(tokens, spread, unit) {
        amount.last = next;
        amount.whole = amount.whole.join(end);
    }
    if let Some((second, next, end)) = second_at(tokens, amount.last, spread, unit) {
        amount.second = Some(second);
        amount.last = next;
        amount.whole = amount.whole.join(end);
    } else if let Some((second, next, _)) = second_at(tokens, apart, spread, unit).filter(|_| {
        next_word
            && tokens
                .get(apart)
                .is_some_and(|token| closing(token).is_some())
    }) {
        amount.second = Some(second);
        end_of_all = Some(next);
    } else if let Some((several, next, _)) =
        several_seconds(tokens, apart, unit, found.len() + 1).filter(|_| next_word)
    {
        if let Some((own, earlier)) = several.split_last() {
            amount.second = second_of(&amount, own);
            end_of_all = Some(next);
            for (past, value) in found.iter_mut().rev().zip(earlier.iter().rev()) {
                past.second = past.second.take().or_else(|| second_of(past, value));
            }
        }
    } else if let Some((several, next, end)) =
        several_seconds(tokens, spread.next, unit, found.len() + 1)
    {
        // `3 in. wide by 5 in. deep (76 by 127 mm)`: the parenthesis speaks for the amounts before, too.
        if let Some((own, earlier)) = several.split_last() {
            amount.second = second_of(&amount, own);
            amount.last = next;
            amount.whole = amount.whole.join(end);
            for (past, value) in found.iter_mut().rev().zip(earlier.iter().rev()) {
                past.second = past.second.take().or_else(|| second_of(past, value));
            }
        }
    }
    let next = end_of_all.unwrap_or(amount.last);
    found.push(amount);
    next
}

/// Takes the values of `38 by 51 mm` or `1, 2 and 3 Hr`, each an amount of its own.
pub(super) fn take_list(
    tokens: &[Token<'_>],
    at: usize,
    values: &[Value],
    found: &mut Vec<Amount>,
) -> usize {
    let Some(unit) = values.last().and_then(|value| value.unit) else {
        return at + 1;
    };
    let next = values.last().map_or(at + 1, |value| value.next);
    let seconds = several_seconds(tokens, next, unit, values.len());
    let sole = values
        .last()
        .filter(|_| seconds.is_none())
        .and_then(|last| second_of_last(tokens, last, unit));
    let end = match (&seconds, &sole) {
        (Some((_, next, _)), _) | (None, Some((_, next, _))) => *next,
        (None, None) => next,
    };
    for (index, value) in values.iter().enumerate() {
        let mut amount = Amount {
            lo: value.number,
            hi: None,
            unit: value.unit.unwrap_or(unit),
            shape: Shape::Single,
            step: value.step,
            second: None,
            first: value.first,
            last: if index + 1 == values.len() {
                end
            } else {
                value.next
            },
            at: value.span,
            whole: value.span,
        };
        if let Some((seconds, _, span)) = &seconds {
            amount.second = seconds
                .get(index)
                .and_then(|second| second_of(&amount, second));
            if index + 1 == values.len() {
                amount.whole = amount.whole.join(*span);
            }
        }
        if index + 1 == values.len()
            && let Some((second, _, span)) = &sole
        {
            amount.second = Some(second.clone());
            amount.whole = amount.whole.join(*span);
        }
        found.push(amount);
    }
    end
}

/// `No. 8 by 1/2 in. (13 mm)`: one value behind a list repeats its last, where both say the same.
fn second_of_last(tokens: &[Token<'_>], last: &Value, unit: Unit) -> Option<(Second, usize, Span)> {
    let spread = Spread {
        lo: last.number,
        hi: None,
        unit: Some(unit),
        shape: Shape::Single,
        step: last.step,
        style: last.style,
        span: last.span,
        next: last.next,
    };
    second_at(tokens, last.next, &spread, unit)
        .filter(|(second, ..)| second.agreement != Agreement::InConflict)
}

/// `one inch (1 in.)`: the same amount said again in figures; with the token after it.
fn said_again(tokens: &[Token<'_>], spread: &Spread, unit: Unit) -> Option<(usize, Span)> {
    let opening = tokens.get(spread.next)?;
    let close = closing(opening)?;
    let again = spread_at(tokens, spread.next + 1)?;
    let same = again.lo == spread.lo && again.hi == spread.hi && again.unit == Some(unit);
    let end = tokens
        .get(again.next)
        .filter(|token| same && token.is_sign(close))?;
    Some((again.next + 1, opening.span.join(end.span)))
}
