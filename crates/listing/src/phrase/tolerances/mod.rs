//! Tolerances: `150 ± 5 pcf`, `4 in. +1/4 in., -0 in.`, `6 mm, tol. +2/-0`, and deviations alone.

mod further;
mod named;
mod within;

use measure::notation::NumeralStyle;
use measure::{Number, Unit};

use self::further::{further_tolerance, second_deviation_end};
use self::named::{named_tolerance, skip_points, unsigned};
use super::amounts::{Shape, Spread};
use super::lex::Token;
use super::values::{Value, second_value_end, value_at};
pub(super) use within::within_of;

/// `(80 ± 8) kg/m³`: the unit stands after the bracket (ISO 80000-1, 7.1.4).
pub(super) fn bracketed_tolerance(tokens: &[Token<'_>], at: usize) -> Option<Spread> {
    let opening = tokens.get(at).filter(|token| token.is_sign('('))?;
    let value = value_at(tokens, at + 1).filter(|value| value.unit.is_none())?;
    let deviation =
        value_at(tokens, plus_minus(tokens, value.next)?).filter(|value| value.unit.is_none())?;
    tokens
        .get(deviation.next)
        .filter(|token| token.is_sign(')'))?;
    let unit_token = tokens.get(deviation.next + 1)?;
    let unit = if unit_token.is_sign('%') {
        Unit::Percent
    } else {
        let word = unit_token.word()?;
        let (unit, end) = measure::notation::unit_at(&format!("1 {word}"), 1)?;
        (end == word.len() + 2).then_some(unit)?
    };
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

/// `±`, `+/-`, `+-`, "plus or minus" or "more or less"; gives the token after.
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
        || (word(0, "more") && word(1, "or") && word(2, "less"))
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

/// A deviation: a value, a number in words, or the word for none.
fn deviation_value(tokens: &[Token<'_>], at: usize) -> Option<Value> {
    let token = tokens.get(at)?;
    let none = ["nothing", "nil", "zero", "none"]
        .iter()
        .any(|word| token.is_word(word));
    // `give or take three`
    let worded = token.count.map(Number::whole);
    let number = match (none, worded) {
        (true, _) => Number::ZERO,
        (false, Some(number)) => number,
        (false, None) => return value_at(tokens, at),
    };
    Some(Value {
        number,
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
        let joint = tokens.get(next).is_some_and(|token| {
            token.is_sign(',') || token.is_sign('/') || token.is_word("and") || token.is_word("or")
        });
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
        let value = deviation_value(tokens, next)?;
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

/// `2 mm either way`, `1/8 in. in either direction`
fn either_way(tokens: &[Token<'_>], at: usize) -> Option<(Value, Value, usize)> {
    let value = value_at(tokens, at).filter(|value| value.unit.is_some())?;
    let word = |at: usize, words: &[&str]| {
        tokens
            .get(at)
            .is_some_and(|token| words.iter().any(|word| token.is_word(word)))
    };
    // `must not fall below 10 mm either way` is a least of both sizes, and nothing deviates by a least.
    let before =
        |back: usize, words: &[&str]| at.checked_sub(back).is_some_and(|at| word(at, words));
    let least = before(1, &["below", "under", "least", "min", "minimum"])
        || before(1, &["than"]) && before(2, &["less", "smaller", "thinner", "narrower"]);
    if least {
        return None;
    }
    let end = second_value_end(tokens, value.next).unwrap_or(value.next);
    let way = end + usize::from(word(end, &["in"]));
    let said = word(way, &["either"]) && word(way + 1, &["way", "direction"])
        || word(way, &["both"]) && word(way + 1, &["ways", "directions"]);
    said.then(|| (value.clone(), value, way + 2))
}

/// A tolerance alone: `± 6 mm`, `+ 2 mm, − 0 mm`.
pub(super) fn deviation_at(tokens: &[Token<'_>], at: usize) -> Option<Spread> {
    // A number just before would make it that number's tolerance.
    if let Some(before) = at.checked_sub(1)
        && tokens.get(before).is_some_and(Token::is_numeric)
        && !is_limit(tokens, before)
    {
        return None;
    }
    let start = tokens.get(at)?.span;
    let (below, above, next) = deviations(tokens, at).or_else(|| either_way(tokens, at))?;
    // `the joint width plus 1/4 in. (6 mm), -0/+1/8 in.`: what is added has a tolerance of its own.
    let goes_on = tokens.get(next).is_some_and(|token| token.is_sign('/'))
        && (plus(tokens, next + 1) || minus(tokens, next + 1));
    if goes_on {
        return None;
    }
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
pub(super) fn tolerance_after(tokens: &[Token<'_>], first: &Value) -> Option<Spread> {
    const MEASURING: &[&str] = &[
        "deep", "wide", "thick", "long", "high", "wet", "dry", "overall", "o.c", "oc", "apart",
    ];
    // In `-0/+1/8 in. (-0/+3 mm)` the number is a deviation itself.
    let is_deviation = first.first >= 2
        && (plus(tokens, first.first - 1) || minus(tokens, first.first - 1))
        && tokens
            .get(first.first - 2)
            .is_some_and(|token| token.is_sign('/'));
    if is_deviation || is_limit(tokens, first.first) {
        return None;
    }
    // `1/2 in., +1/8, -0`: a comma may stand between.
    let at = if tokens
        .get(first.next)
        .is_some_and(|token| token.is_sign(',') || token.is_sign('('))
        && (two_sided(tokens, first.next + 1).is_some()
            || plus_minus(tokens, first.next + 1).is_some())
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
        .filter(|end| {
            plus_minus(tokens, *end).is_some()
                || two_sided(tokens, *end).is_some()
                || named_tolerance(tokens, *end).is_some()
        })
        .unwrap_or(at);
    let further = further_tolerance(tokens, first)
        .filter(|_| deviations(tokens, at).is_none() && named_tolerance(tokens, at).is_none());
    let (at, bracketed) = further.map_or((at, false), |(at, bracketed)| (at, bracketed));
    // `6 mm, tol. +2/-0`, `30 % (tolerance ± 5 percentage points)`
    let opened = at == first.next && tokens.get(at).is_some_and(|token| token.is_sign('('));
    let (named, opened) = named_tolerance(tokens, at).map_or((at, opened), |after| (after, opened));
    let is_named = named != at;
    let at = named;
    let (below, above, next) =
        deviations(tokens, at).or_else(|| is_named.then(|| unsigned(tokens, at))?)?;
    let mut next = skip_points(tokens, next);
    let unit = first.unit.or(above.unit).or(below.unit)?;
    let side = |value: &Value| value.unit.or(above.unit).or(below.unit);
    // `±25 % up to 2 in., ±12.5 % above`: shares that a text sets side by side are each their own.
    let shares = |value: &Value| side(value) == Some(Unit::Percent) && unit != Unit::Percent;
    if shares(&above) && !is_named && follows_share(tokens, first.first) {
        return None;
    }
    let in_unit = |value: &Value| match side(value) {
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
        || bracketed
        || at == first.next + 1
            && tokens
                .get(first.next)
                .is_some_and(|token| token.is_sign('('));
    if opened {
        tokens.get(next).filter(|token| token.is_sign(')'))?;
        next += 1;
    }
    // `25 mm (1 in.), plus or minus 6 mm (1/4 in.)`: the tolerance repeats itself as its value did.
    if !opened && second_value_end(tokens, first.next).is_some() {
        next = second_value_end(tokens, next)
            .or_else(|| second_deviation_end(tokens, next))
            .unwrap_or(next);
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

/// Whether a deviation in percent stands before a number.
fn follows_share(tokens: &[Token<'_>], at: usize) -> bool {
    (0..at).any(|before| {
        plus_minus(tokens, before)
            .and_then(|next| value_at(tokens, next))
            .is_some_and(|value| value.unit == Some(Unit::Percent))
    })
}

/// Whether a limit stands before a number: "min 1/2 in. ± 1/16 in." The limit holds, and the tolerance stands for itself.
fn is_limit(tokens: &[Token<'_>], at: usize) -> bool {
    const REACH: usize = 4;
    const LIMITS: &[&str] = &[
        "min",
        "minimum",
        "max",
        "maximum",
        "least",
        "most",
        "than",
        "exceed",
        "exceeding",
        "nlt",
        "nmt",
    ];
    tokens
        .get(at.saturating_sub(REACH)..at)
        .unwrap_or_default()
        .iter()
        .rev()
        .take_while(|token| token.word().is_some() || token.is_sign('('))
        .any(|token| LIMITS.contains(&token.lower))
        && !closes_another(tokens, at)
        || tokens
            .get(at.saturating_sub(1)..at)
            .unwrap_or_default()
            .iter()
            .any(|token| ['≥', '≤', '<', '>'].iter().any(|sign| token.is_sign(*sign)))
}

/// Whether the limit before a number closes the one before that, and a stop ends it: `24 in. O.C. MAX. CUT 3/4 in. SHORT`.
fn closes_another(tokens: &[Token<'_>], at: usize) -> bool {
    const REACH: usize = 4;
    (at.saturating_sub(REACH)..at.saturating_sub(1)).any(|limit| {
        let stopped = tokens.get(limit).is_some_and(|token| {
            ["min", "max"].iter().any(|word| token.is_word(word)) && token.span.len() == 4
        });
        let closes = limit
            .checked_sub(1)
            .and_then(|before| tokens.get(before))
            .is_some_and(|before| {
                before.is_numeric()
                    || before.is_sign(')')
                    || ["o.c", "oc"].iter().any(|word| before.is_word(word))
            });
        stopped && closes
    })
}
