//! Values, ranges and tolerances.

use measure::notation::NumeralStyle;
use measure::{Number, Unit};

use super::amounts::{Shape, Spread};
use super::lex::{Token, TokenKind};
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

fn value_at(tokens: &[Token<'_>], at: usize) -> Option<Value> {
    let signed = tokens.get(at).is_some_and(|token| token.is_sign('+'))
        && tokens.get(at + 1).is_some_and(Token::is_numeric);
    if signed {
        return value_at(tokens, at + 1).map(|value| Value { first: at, ..value });
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

/// A value, a range or a tolerance in a cell whose column gives the unit.
pub(super) fn spread_in(tokens: &[Token<'_>], at: usize, unit: Option<Unit>) -> Option<Spread> {
    let first = value_at(tokens, at)?;
    let held = Value {
        unit: first.unit.or(unit),
        ..first
    };
    tolerance_after(tokens, &held).or_else(|| spread_at(tokens, at))
}

/// A value, a range or a tolerance.
pub(super) fn spread_at(tokens: &[Token<'_>], at: usize) -> Option<Spread> {
    if let Some(spread) = bracketed_tolerance(tokens, at) {
        return Some(spread);
    }
    deviation_at(tokens, at).or_else(|| {
        let first = value_at(tokens, at)?;
        tolerance_after(tokens, &first)
            .or_else(|| range_after(tokens, &first))
            .or_else(|| Some(single(&first)))
    })
}

/// `(80 ± 8) kg/m³`: the unit stands after the bracket (ISO 80000-1, 7.1.4).
fn bracketed_tolerance(tokens: &[Token<'_>], at: usize) -> Option<Spread> {
    let opening = tokens.get(at).filter(|token| token.is_sign('('))?;
    let value = value_at(tokens, at + 1).filter(|value| value.unit.is_none())?;
    let deviation =
        value_at(tokens, plus_minus(tokens, value.next)?).filter(|value| value.unit.is_none())?;
    tokens
        .get(deviation.next)
        .filter(|token| token.is_sign(')'))?;
    let unit_token = tokens.get(deviation.next + 1)?;
    let word = unit_token.word()?;
    let (unit, end) = measure::notation::unit_at(&format!("1 {word}"), 1)?;
    (end == word.len() + 2).then_some(())?;
    Some(Spread {
        lo: value.number.minus(deviation.number)?,
        hi: Some(value.number.plus(deviation.number)?),
        unit: Some(unit),
        shape: Shape::Tolerance,
        step: value.step.min(deviation.step),
        style: value.style,
        span: opening.span.join(unit_token.span),
        next: deviation.next + 2,
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

/// `±`, `+/-`, `+-` or "plus or minus"; gives the token after.
fn plus_minus(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let is = |offset: usize, sign: char| {
        tokens
            .get(at + offset)
            .is_some_and(|token| token.is_sign(sign))
    };
    let word = |offset: usize, word: &str| {
        tokens
            .get(at + offset)
            .is_some_and(|token| token.is_word(word))
    };
    if is(0, '±') {
        Some(at + 1)
    } else if is(0, '+') && is(1, '/') && (is(2, '-') || is(2, '−') || is(2, '–')) {
        Some(at + 3)
    } else if is(0, '+') && is(1, '-') {
        Some(at + 2)
    } else if (word(0, "plus") && word(1, "or") && word(2, "minus"))
        || (word(0, "give") && word(1, "or") && word(2, "take"))
    {
        Some(at + 3)
    } else {
        None
    }
}

fn minus(tokens: &[Token<'_>], at: usize) -> bool {
    tokens.get(at).is_some_and(|token| {
        ['-', '−', '–'].iter().any(|sign| token.is_sign(*sign)) || token.is_word("minus")
    })
}

fn plus(tokens: &[Token<'_>], at: usize) -> bool {
    tokens
        .get(at)
        .is_some_and(|token| token.is_sign('+') || token.is_word("plus"))
}

/// A deviation: a value, or the word for none.
fn deviation_value(tokens: &[Token<'_>], at: usize) -> Option<Value> {
    let token = tokens.get(at)?;
    let none = ["nothing", "nil", "zero", "none"]
        .iter()
        .any(|word| token.is_word(word));
    if !none {
        return value_at(tokens, at);
    }
    Some(Value {
        number: Number::ZERO,
        unit: None,
        step: Number::ONE,
        style: NumeralStyle::Whole,
        span: token.span,
        first: at,
        next: at + 1,
    })
}

/// `+a, -b` or `-b, +a`: the two deviations, below and above.
fn two_sided(tokens: &[Token<'_>], at: usize) -> Option<(Value, Value, usize)> {
    let skip_joint = |next: usize| {
        let joint = tokens
            .get(next)
            .is_some_and(|token| token.is_sign(',') || token.is_sign('/') || token.is_word("and"));
        if joint { next + 1 } else { next }
    };
    if plus(tokens, at) {
        let above = deviation_value(tokens, at + 1)?;
        // `plus 0.125 inch (3.2 mm) and minus nothing`
        let next = skip_joint(second_value_end(tokens, above.next).unwrap_or(above.next));
        let below = minus(tokens, next).then(|| deviation_value(tokens, next + 1))??;
        let next = below.next;
        Some((below, above, next))
    } else if minus(tokens, at) {
        let below = deviation_value(tokens, at + 1)?;
        let next = skip_joint(below.next);
        let above = plus(tokens, next).then(|| deviation_value(tokens, next + 1))??;
        let next = above.next;
        Some((below, above, next))
    } else {
        None
    }
}

/// The deviations below and above, and the token after them.
fn deviations(tokens: &[Token<'_>], at: usize) -> Option<(Value, Value, usize)> {
    if let Some(next) = plus_minus(tokens, at) {
        let value = value_at(tokens, next)?;
        let next = value.next;
        return Some((value.clone(), value, next));
    }
    two_sided(tokens, at).or_else(|| from_zero(tokens, at))
}

/// `0/-5 mm`, `0/+3 mm`: the side that allows nothing comes first.
fn from_zero(tokens: &[Token<'_>], at: usize) -> Option<(Value, Value, usize)> {
    let none = value_at(tokens, at).filter(|value| value.number.is_zero())?;
    tokens.get(none.next).filter(|token| token.is_sign('/'))?;
    let side = none.next + 1;
    let other = value_at(tokens, side + 1)?;
    let next = other.next;
    if minus(tokens, side) {
        Some((other, none, next))
    } else if plus(tokens, side) {
        Some((none, other, next))
    } else {
        None
    }
}

/// The token after ", tolerance" or "(tol.", where a tolerance follows.
fn named_tolerance(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let parted = tokens
        .get(at)
        .is_some_and(|token| token.is_sign(',') || token.is_sign('('));
    let word = at + usize::from(parted);
    let named = ["tolerance", "tolerances", "tol"]
        .iter()
        .any(|name| tokens.get(word).is_some_and(|token| token.is_word(name)));
    let after = word + 1;
    let of = tokens.get(after).is_some_and(|token| token.is_word("of"));
    let after = after + usize::from(of);
    (named && deviations(tokens, after).is_some()).then_some(after)
}

/// The token after "percentage points".
fn skip_points(tokens: &[Token<'_>], at: usize) -> usize {
    let word = |at: usize, words: &[&str]| {
        tokens
            .get(at)
            .is_some_and(|token| words.iter().any(|word| token.is_word(word)))
    };
    let percentage = at + usize::from(word(at, &["percentage", "percent"]));
    if word(percentage, &["point", "points"]) {
        percentage + 1
    } else {
        at
    }
}

/// A tolerance alone: `± 6 mm`, `+ 2 mm, − 0 mm`.
fn deviation_at(tokens: &[Token<'_>], at: usize) -> Option<Spread> {
    // A number just before would make it that number's tolerance.
    if at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .is_some_and(Token::is_numeric)
    {
        return None;
    }
    let start = tokens.get(at)?.span;
    let (below, above, next) = deviations(tokens, at)?;
    let unit = below.unit.or(above.unit);
    let same_unit = above.unit.is_none_or(|above| Some(above) == unit);
    same_unit.then(|| Spread {
        lo: -below.number,
        hi: Some(above.number),
        unit,
        shape: Shape::Deviation,
        step: below.step.min(above.step),
        style: above.style,
        span: start.join(above.span).join(below.span),
        next,
    })
}

/// A tolerance after a value: `150 ± 5 pcf`, `4 in. +1/4 in., -0 in.`
fn tolerance_after(tokens: &[Token<'_>], first: &Value) -> Option<Spread> {
    const MEASURING: &[&str] = &[
        "deep", "wide", "thick", "long", "high", "wet", "dry", "overall",
    ];
    // `1/2 in., +1/8, -0`: a comma may stand between.
    let at = if tokens
        .get(first.next)
        .is_some_and(|token| token.is_sign(',') || token.is_sign('('))
        && (plus(tokens, first.next + 1) || plus_minus(tokens, first.next + 1).is_some())
    {
        first.next + 1
    } else {
        first.next
    };
    // `3 mm wet, +1/-0 mm`: a word for what is measured may stand between.
    let measured_at = second_value_end(tokens, first.next).unwrap_or(first.next);
    let measured = tokens
        .get(measured_at)
        .is_some_and(|token| MEASURING.contains(&token.lower));
    let at = if measured && first.unit.is_some() {
        let comma = tokens
            .get(measured_at + 1)
            .is_some_and(|token| token.is_sign(','));
        measured_at + 1 + usize::from(comma)
    } else {
        at
    };
    // `1-1/4 in. (32 mm) ± 1/8 in.`: the same value in a second unit may stand between.
    let at = second_value_end(tokens, at)
        .map(|end| {
            let comma = tokens.get(end).is_some_and(|token| token.is_sign(','));
            end + usize::from(comma)
        })
        .filter(|end| plus_minus(tokens, *end).is_some() || two_sided(tokens, *end).is_some())
        .unwrap_or(at);
    // `6 mm, tol. +2/-0`, `30 % (tolerance ± 5 percentage points)`
    let opened = at == first.next && tokens.get(at).is_some_and(|token| token.is_sign('('));
    let (named, opened) = named_tolerance(tokens, at).map_or((at, opened), |after| (after, opened));
    let at = named;
    let (below, above, next) = deviations(tokens, at)?;
    let mut next = skip_points(tokens, next);
    let unit = first.unit.or(above.unit).or(below.unit)?;
    let in_unit = |value: &Value| match value.unit {
        // `240 kg/m3, ± 15 %`
        Some(Unit::Percent) if unit != Unit::Percent => {
            first.number.times(value.number)?.over(Number::whole(100))
        }
        Some(own) => measure::Quantity::new(value.number, own)
            .to(unit)
            .map(|quantity| quantity.number),
        None => Some(value.number),
    };
    let opened = opened
        || at == first.next + 1
            && tokens
                .get(first.next)
                .is_some_and(|token| token.is_sign('('));
    if opened {
        tokens.get(next).filter(|token| token.is_sign(')'))?;
        next += 1;
    }
    Some(Spread {
        lo: first.number.minus(in_unit(&below)?)?,
        hi: Some(first.number.plus(in_unit(&above)?)?),
        unit: Some(unit),
        shape: Shape::Tolerance,
        step: first.step.min(below.step).min(above.step),
        style: first.style,
        span: first.span.join(above.span).join(below.span),
        next,
    })
}

/// The token after a parenthesis that holds one value only.
fn second_value_end(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let opens = tokens.get(at)?.is_sign('(');
    let closes = tokens.get(at + 2)?.is_sign(')');
    (opens && closes && tokens.get(at + 1)?.is_numeric()).then_some(at + 3)
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
    tokens.get(end).filter(|token| token.is_word("to"))?;
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
            .is_some_and(|token| token.is_word("from"));
    if !(dash || to || and || up_to) {
        return None;
    }
    let last = value_at(tokens, first.next + 1 + usize::from(up_to))?;
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

/// Whether "between" stands before a value, or a parenthesis opens a second value of such a range.
fn opens_range(tokens: &[Token<'_>], first: usize) -> bool {
    let Some(before) = first.checked_sub(1).and_then(|before| tokens.get(before)) else {
        return false;
    };
    let in_parenthesis = before.is_sign('(') || before.is_sign('[');
    let early = tokens
        .get(first.saturating_sub(6)..first)
        .unwrap_or_default();
    before.is_word("between")
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
    share_unit(values)
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
    let unit = values.last()?.unit?;
    for value in &mut values {
        // `No. 8 by 1/2 in.` keeps both units.
        value.unit = value.unit.or(Some(unit));
    }
    Some(values)
}
