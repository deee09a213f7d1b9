//! Values, ranges and lists of values.

use measure::notation::NumeralStyle;
use measure::{Number, Unit};

use super::amounts::{Shape, Spread};
use super::lex::{Token, TokenKind};
use super::tolerances::{bracketed_tolerance, deviation_at, tolerance_after, within_of};
use crate::model::Span;

/// One number, with its unit when it stands beside it.
#[derive(Debug, Clone)]
pub(super) struct Value {
    pub(super) number: Number,
    pub(super) unit: Option<Unit>,
    pub(super) step: Number,
    pub(super) style: NumeralStyle,
    pub(super) span: Span,
    pub(super) first: usize,
    pub(super) next: usize,
}

pub(super) fn value_at(tokens: &[Token<'_>], at: usize) -> Option<Value> {
    let signed = tokens.get(at).is_some_and(|token| token.is_sign('+'))
        && tokens.get(at + 1).is_some_and(Token::is_numeric);
    if signed {
        return value_at(tokens, at + 1).map(|value| Value { first: at, ..value });
    }
    if let Some(value) = below_zero(tokens, at) {
        return Some(value);
    }
    let token = tokens.get(at)?;
    let (number, unit, step, style) = match &token.kind {
        TokenKind::Quantity(stated) => {
            (stated.number, Some(stated.unit), stated.step, stated.style)
        }
        TokenKind::Number(numeral) => (numeral.value, None, numeral.step, numeral.style),
        _ => return None,
    };
    Some(Value {
        number,
        unit,
        step,
        style,
        span: token.span,
        first: at,
        next: at + 1,
    })
}

/// `down to -10 °C`: a temperature below zero, its sign right before it and no number before that.
fn below_zero(tokens: &[Token<'_>], at: usize) -> Option<Value> {
    let sign = tokens.get(at)?;
    let minus = ['-', '−', '–'].iter().any(|minus| sign.is_sign(*minus));
    let after_number = at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .is_some_and(|before| before.is_numeric() || before.is_sign(')'));
    let next = tokens.get(at + 1).filter(|_| minus && !after_number)?;
    // `-10 to +50 °C`
    if let TokenKind::Number(numeral) = &next.kind {
        let range = tokens
            .get(at + 2)
            .is_some_and(|token| token.is_word("to") || token.is_word("and"));
        let warm = (at + 3..at + 5).any(|at| {
            tokens.get(at).is_some_and(|token| matches!(&token.kind, TokenKind::Quantity(stated) if matches!(stated.unit, Unit::Celsius | Unit::Fahrenheit)))
        });
        return (range && warm && sign.span.end() == next.span.start()).then(|| Value {
            number: -numeral.value,
            unit: None,
            step: numeral.step,
            style: numeral.style,
            span: sign.span.join(next.span),
            first: at,
            next: at + 2,
        });
    }
    let TokenKind::Quantity(stated) = &next.kind else {
        return None;
    };
    let temperature = matches!(stated.unit, Unit::Celsius | Unit::Fahrenheit);
    // `- 20 °C to + 60 °C`: beside a plus, the sign may stand apart.
    let signed = tokens.get(at + 2).is_some_and(|token| token.is_word("to"))
        && tokens.get(at + 3).is_some_and(|token| token.is_sign('+'));
    let near =
        sign.span.end() == next.span.start() || signed && sign.span.end() + 1 == next.span.start();
    (temperature && near).then(|| Value {
        number: -stated.number,
        unit: Some(stated.unit),
        step: stated.step,
        style: stated.style,
        span: sign.span.join(next.span),
        first: at,
        next: at + 2,
    })
}

/// A value, a range or a tolerance in a cell whose column gives the unit.
pub(super) fn spread_in(tokens: &[Token<'_>], at: usize, unit: Option<Unit>) -> Option<Spread> {
    // `± 20` under a heading in percent
    let Some(first) = value_at(tokens, at) else {
        return deviation_at(tokens, at);
    };
    let held = Value {
        unit: first.unit.or(unit),
        ..first
    };
    tolerance_after(tokens, &held).or_else(|| spread_at(tokens, at))
}

/// A value, a range or a tolerance.
pub(super) fn spread_at(tokens: &[Token<'_>], at: usize) -> Option<Spread> {
    if let Some(spread) = bracketed_tolerance(tokens, at).or_else(|| within_of(tokens, at)) {
        return Some(spread);
    }
    deviation_at(tokens, at).or_else(|| {
        let first = value_at(tokens, at)?;
        if let Some(spread) = from_flush(tokens, &first) {
            return Some(spread);
        }
        tolerance_after(tokens, &first)
            .or_else(|| range_after(tokens, &first))
            .or_else(|| Some(single(&first)))
    })
}

/// `flush to 1/8 in. recessed`: from nothing to so much. Without a word for the way it goes, it may be how exactly it is flush.
fn from_flush(tokens: &[Token<'_>], value: &Value) -> Option<Spread> {
    const WAYS: &[&str] = &["recessed", "recess", "low", "deep", "down"];
    let before = |back: usize, word: &str| {
        let at = value.first.checked_sub(back);
        at.and_then(|at| tokens.get(at))
            .is_some_and(|token| token.is_word(word))
    };
    let end = second_value_end(tokens, value.next).unwrap_or(value.next);
    let goes = tokens
        .get(end)
        .is_some_and(|token| WAYS.iter().any(|way| token.is_word(way)));
    (before(1, "to") && before(2, "flush") && goes && value.unit.is_some()).then(|| Spread {
        lo: Number::ZERO,
        hi: Some(value.number),
        shape: Shape::Range,
        next: end,
        ..single(value)
    })
}

fn single(value: &Value) -> Spread {
    Spread {
        lo: value.number,
        hi: None,
        unit: value.unit,
        shape: Shape::Single,
        step: value.step,
        style: value.style,
        span: value.span,
        next: value.next,
    }
}

/// The token after a parenthesis that holds one value only.
pub(super) fn second_value_end(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let opening = tokens.get(at)?;
    let closing = tokens.get(at + 2)?;
    let closed = (opening.is_sign('(') && closing.is_sign(')'))
        || (opening.is_sign('[') && closing.is_sign(']'));
    (closed && tokens.get(at + 1)?.is_numeric()).then_some(at + 3)
}

/// `107 pcf (1714 kg/m3) to 152 pcf (2435 kg/m3)`: a range whose ends each repeat themselves, as the range and the same in the other unit.
pub(super) fn range_of_pairs(tokens: &[Token<'_>], at: usize) -> Option<(Spread, Spread)> {
    let pair = |at: usize| {
        let value = value_at(tokens, at).filter(|value| value.unit.is_some())?;
        let end = second_value_end(tokens, value.next)?;
        let second = value_at(tokens, value.next + 1).filter(|second| second.unit.is_some())?;
        Some((value, second, end))
    };
    let (low, low_second, end) = pair(at)?;
    let between = opens_range(tokens, low.first);
    tokens
        .get(end)
        .filter(|token| token.is_word("to") || (between && token.is_word("and")))?;
    let (high, high_second, next) = pair(end + 1)?;
    let range = |low: &Value, high: &Value| {
        (low.unit == high.unit && low.number < high.number).then(|| Spread {
            lo: low.number,
            hi: Some(high.number),
            unit: low.unit,
            shape: Shape::Range,
            step: low.step.min(high.step),
            style: high.style,
            span: low.span.join(high.span),
            next,
        })
    };
    Some((range(&low, &high)?, range(&low_second, &high_second)?))
}

/// A range: `1/2 to 3/4 in.`, `between 5 and 38 °C`, `100-150 pcf`.
fn range_after(tokens: &[Token<'_>], first: &Value) -> Option<Spread> {
    let joint = tokens.get(first.next)?;
    let dash = joint.is_sign('-') || joint.is_sign('–') || joint.is_sign('—') || joint.is_sign('−');
    // `20 % … 45 %`
    let dash = dash || joint.is_sign('…') || (joint.is_sign('.') && joint.span.len() == 3);
    let to = joint.is_word("to") || joint.is_word("thru") || joint.is_word("through");
    let and = (joint.is_word("and") || joint.is_sign('&')) && opens_range(tokens, first.first);
    // `from 25 mm up to 200 mm`
    let up_to = joint.is_word("up")
        && tokens
            .get(first.next + 1)
            .is_some_and(|token| token.is_word("to"))
        && first
            .first
            .checked_sub(1)
            .and_then(|before| tokens.get(before))
            .is_some_and(|token| token.is_word("from") || token.is_sign(':'));
    // `with 16 % up to 25 % compression`
    let shares = first.unit == Some(Unit::Percent)
        && tokens
            .get(first.next)
            .is_some_and(|token| token.is_word("up"))
        && value_at(tokens, first.next + 2).is_some_and(|last| last.unit == first.unit);
    let up_to = up_to
        || shares
            && tokens
                .get(first.next + 1)
                .is_some_and(|token| token.is_word("to"));
    if !(dash || to || and || up_to) {
        return None;
    }
    let last = value_at(tokens, first.next + 1 + usize::from(up_to))?;
    // `joints up to 2 in. - 3 in.`: a dash set apart, or dots, part a limit from what is asked for there.
    let apart = dash && first.span.end() < joint.span.start();
    // `joints over 1 in. - 2 in. wide`
    let banded = tokens
        .get(last.next)
        .is_some_and(|token| token.is_word("wide"));
    if apart && first.unit.is_some() && !banded && is_led_to(tokens, first.first) {
        return None;
    }
    // `1 hr - 3`: a dash set apart parts a rating from a number of something else.
    let rated = first.unit == Some(Unit::Hour) && last.unit.is_none();
    if dash && rated && first.span.end() < joint.span.start() {
        return None;
    }
    // `Depth: 10 mm up to 50 mm joint width` says for which width.
    let labelled = first.first > 0 && tokens.get(first.first - 1)?.is_sign(':');
    let goes_on = tokens
        .get(last.next)
        .is_some_and(|token| token.word().is_some());
    if up_to && labelled && goes_on {
        return None;
    }
    let unit = last.unit.or(first.unit);
    let lo = match (first.unit, unit) {
        (Some(own), Some(unit)) if own != unit => {
            measure::Quantity::new(first.number, own).to(unit)?.number
        }
        _ => first.number,
    };
    let ascending =
        lo < last.number || unit.is_some_and(|unit| unit.dimension().lower_is_heavier());
    ascending.then(|| Spread {
        lo,
        hi: Some(last.number),
        unit,
        shape: Shape::Range,
        step: first.step.min(last.step),
        style: last.style,
        span: first.span.join(last.span),
        next: last.next,
    })
}

/// Whether a value stands right behind a word that makes it the end of something: `up to 2 in.`, `over 2 in.`
fn is_led_to(tokens: &[Token<'_>], first: usize) -> bool {
    const LEADING: &[&str] = &[
        "to",
        "over",
        "under",
        "above",
        "below",
        "exceeding",
        "than",
        "upto",
    ];
    let before = first.checked_sub(1).and_then(|at| tokens.get(at));
    before.is_some_and(|token| LEADING.iter().any(|word| token.is_word(word)))
}

/// Whether "between" stands before a value, or a parenthesis opens a second value of such a range.
fn opens_range(tokens: &[Token<'_>], first: usize) -> bool {
    let Some(before) = first.checked_sub(1).and_then(|before| tokens.get(before)) else {
        return false;
    };
    let in_parenthesis = before.is_sign('(') || before.is_sign('[');
    let early = tokens
        .get(first.saturating_sub(6)..first)
        .unwrap_or_default();
    // `between the limits of 140 and 150 pcf`, `within the range of 5 and 38 °C`
    let of = first.checked_sub(2).and_then(|at| tokens.get(at));
    let limits = before.is_word("of")
        && of.is_some_and(|token| {
            ["limits", "bounds", "range", "extremes"]
                .iter()
                .any(|word| token.is_word(word))
        })
        && early
            .iter()
            .any(|token| token.is_word("between") || token.is_word("within"));
    before.is_word("between")
        || limits
        || (in_parenthesis && early.iter().any(|token| token.is_word("between")))
}

/// Several values in one unit: `1-1/2 by 2 in.`, `40 x 40 x 3 mm`, `1, 1-1/2 or 2 Hr`. Two at least, and the first
/// without a unit or joined to the next by "by".
pub(super) fn dimensions_at(tokens: &[Token<'_>], at: usize) -> Option<Vec<Value>> {
    let first = value_at(tokens, at)?;
    let by = |token: &Token<'_>| token.is_word("by") || token.is_word("x") || token.is_sign('×');
    if tokens.get(first.next).is_some_and(by) {
        let mut values = vec![first];
        while let Some(last) = values.last()
            && tokens.get(last.next).is_some_and(by)
            && let Some(next) = value_at(tokens, last.next + 1)
        {
            values.push(next);
        }
        return share_unit(values);
    }
    if first.unit.is_some() {
        return None;
    }
    let mut values = vec![first];
    while let Some(last) = values.last().filter(|last| last.unit.is_none())
        && let Some(next) = listed_value(tokens, last.next)
    {
        values.push(next);
    }
    // `at least 2, and 3 hr between them` says two things.
    let [one, other] = values.as_slice() else {
        return share_unit(values);
    };
    let between = tokens.get(one.next..other.next)?;
    let parted = between.first().is_some_and(|token| token.is_sign(','))
        && between.get(1).is_some_and(|token| token.is_word("and"));
    (!parted).then(|| share_unit(values))?
}

/// The value after a comma, "or" or "and" of a list.
fn listed_value(tokens: &[Token<'_>], at: usize) -> Option<Value> {
    let joint = |at: usize| {
        tokens.get(at).is_some_and(|token| {
            token.is_sign(',') || token.is_word("or") || token.is_word("and") || token.is_sign('&')
        })
    };
    let mut next = at;
    while joint(next) && next < at + 2 {
        next += 1;
    }
    (next > at).then(|| value_at(tokens, next))?
}

/// Gives every value the unit of the last; none when the last has none or one of them has another dimension.
fn share_unit(mut values: Vec<Value>) -> Option<Vec<Value>> {
    if values.len() < 2 {
        return None;
    }
    let mut unit = values.last()?.unit?;
    // `No. 8 by 1/2 in.` keeps both units, and `2 by 2 in. by 20 ga` is 2 in. each way.
    for value in values.iter_mut().rev() {
        unit = value.unit.unwrap_or(unit);
        value.unit = Some(unit);
    }
    Some(values)
}
