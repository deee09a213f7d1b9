//! The amounts of a sentence: single values, ranges, tolerances and counts, each with its value in a second unit.

mod elliptic;
mod film;
mod sheets;
mod taking;

use measure::notation::NumeralStyle;
use measure::{Agreement, Number, Unit};

use super::counts::{count_at, count_list_at, count_range_at};
use super::lex::{Token, TokenKind};
use super::names::{is_meant, names_something, skip_name};
use super::ratios::ratio_at;
use super::seconds::pair;
use super::values::{dimensions_at, range_of_pairs, spread_at};
use crate::model::Span;
use elliptic::{pounds_again, screw_again, time_again};
use film::film_at;
use sheets::{gauge_at, layers_of};
use taking::{take_list, take_spread};

/// How an amount is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Shape {
    /// One value.
    Single,
    /// From one value to another.
    Range,
    /// A value with a tolerance: `150 ± 5`, `4 in. +1/4, -0`.
    Tolerance,
    /// A tolerance alone: `± 6 mm`, `+2 mm, -0 mm`.
    Deviation,
}

/// An amount in a sentence.
#[derive(Debug, Clone)]
pub(crate) struct Amount {
    pub(crate) lo: Number,
    /// The high value, unless there is but one.
    pub(crate) hi: Option<Number>,
    pub(crate) unit: Unit,
    pub(crate) shape: Shape,
    /// The smallest difference its notation can show.
    pub(crate) step: Number,
    pub(crate) second: Option<Second>,
    /// Tokens `[first, last)`, the second value included.
    pub(crate) first: usize,
    pub(crate) last: usize,
    /// Bytes of the running text that the numbers stand on, the second value left out.
    pub(crate) at: Span,
    /// The same with the second value.
    pub(crate) whole: Span,
}

/// The same amount in a second unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Second {
    pub(crate) lo: Number,
    pub(crate) hi: Option<Number>,
    pub(crate) unit: Unit,
    pub(crate) agreement: Agreement,
}

/// A value, a range or a tolerance before its unit is settled.
#[derive(Debug, Clone)]
pub(super) struct Spread {
    pub(super) lo: Number,
    pub(super) hi: Option<Number>,
    pub(super) unit: Option<Unit>,
    pub(super) shape: Shape,
    pub(super) step: Number,
    pub(super) style: NumeralStyle,
    pub(super) span: Span,
    pub(super) next: usize,
}

/// Finds the amounts of a tokenized text, in order.
pub(crate) fn amounts(tokens: &[Token<'_>]) -> Vec<Amount> {
    let mut found = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let before = found.len();
        at = take(tokens, at, &mut found).unwrap_or(at + 1);
        debug_assert!(found.len() >= before);
    }
    found
}

/// Takes the amounts that begin at a token; gives the token after them.
fn take(tokens: &[Token<'_>], at: usize, found: &mut Vec<Amount>) -> Option<usize> {
    if names_something(tokens, at) {
        return Some(skip_name(tokens, at));
    }
    if let Some(amount) = ratio_at(tokens, at) {
        let next = amount.last;
        found.push(amount);
        return Some(next);
    }
    if let Some(amount) = layers_of(tokens, at) {
        let next = amount.last;
        found.push(amount);
        return Some(next);
    }
    if let Some(amount) = gauge_at(tokens, at) {
        let next = amount.last;
        found.push(amount);
        return Some(next);
    }
    if let Some((range, second)) = range_of_pairs(tokens, at)
        && let Some(unit) = range.unit
    {
        found.push(Amount {
            lo: range.lo,
            hi: range.hi,
            unit,
            shape: range.shape,
            step: range.step,
            second: pair(&range, unit, &second),
            first: at,
            last: range.next,
            at: range.span,
            whole: range.span.join(second.span),
        });
        return Some(range.next);
    }
    let spread = spread_at(tokens, at).map(|spread| borrow_unit(tokens, spread));
    if spread
        .as_ref()
        .is_none_or(|spread| spread.shape == Shape::Single)
        && let Some(values) = dimensions_at(tokens, at)
    {
        return Some(take_list(tokens, at, &values, found));
    }
    if let Some(spread) = spread
        && let Some(unit) = spread.unit
        && is_meant(tokens, at, &spread, unit)
    {
        return Some(take_spread(tokens, at, &spread, unit, found));
    }
    if let Some(film) = film_at(tokens, at, found.last())
        && let Some(unit) = film.unit
    {
        return Some(take_spread(tokens, at, &film, unit, found));
    }
    let again = time_again(tokens, at, found.last())
        .or_else(|| screw_again(tokens, at, found.last()))
        .or_else(|| pounds_again(tokens, at, density_before(found)));
    if let Some(amount) = again {
        let next = amount.last;
        found.push(amount);
        return Some(next);
    }
    let counts = count_list_at(tokens, at).or_else(|| {
        let count = count_range_at(tokens, at).or_else(|| count_at(tokens, at));
        count.map(|count| vec![count])
    })?;
    let next = counts.last()?.last;
    found.extend(counts);
    Some(next)
}

/// The density spoken of last; its value in kg/m3 may stand between.
fn density_before(found: &[Amount]) -> Option<&Amount> {
    found
        .iter()
        .rfind(|amount| amount.unit == Unit::PoundPerCubicFoot)
}

/// A single number without a unit takes that of the limit it is paired with: `by less than 1/2 nor more than 1 in.`
fn borrow_unit(tokens: &[Token<'_>], mut spread: Spread) -> Spread {
    let before = spread
        .next
        .checked_sub(2)
        .and_then(|before| tokens.get(before));
    let compared = before.is_some_and(|token| {
        ["than", "least", "of", "min", "minimum"]
            .iter()
            .any(|word| token.is_word(word))
    });
    if spread.unit.is_some()
        || spread.shape != Shape::Single
        || !(spread.style == NumeralStyle::Fraction || compared)
    {
        return spread;
    }
    for at in spread.next..spread.next + 6 {
        let Some(token) = tokens.get(at) else { break };
        if let TokenKind::Quantity(stated) = &token.kind {
            spread.unit = Some(stated.unit);
            break;
        }
        let pairs = [
            "nor",
            "or",
            "and",
            "but",
            "not",
            "no",
            "more",
            "less",
            "than",
            "over",
            "exceeding",
            "to",
            "max",
            "maximum",
            "a",
            "of",
        ]
        .iter()
        .any(|word| token.is_word(word));
        // `minimum of 2, max 12 in.`
        let parts = token.is_sign(',')
            && tokens
                .get(at + 1)
                .is_some_and(|next| next.is_word("max") || next.is_word("maximum"));
        if !(pairs || parts) {
            break;
        }
    }
    spread
}

#[cfg(test)]
mod tests {
    use super::super::lex::lex;
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &[&str]) {
        let lower = text.to_ascii_lowercase();
        let found: Vec<_> = amounts(&lex(text, &lower))
            .iter()
            .map(|amount| {
                let hi = amount.hi.map_or(String::new(), |hi| format!("..{hi}"));
                let second = amount.second.as_ref().map_or(String::new(), |second| {
                    let hi = second.hi.map_or(String::new(), |hi| format!("..{hi}"));
                    format!(" = {}{hi} {}", second.lo, second.unit)
                });
                format!("{}{hi} {}{second}", amount.lo, amount.unit)
            })
            .collect();
        assert_eq!(found, expected, "{text}");
    }

    #[test]
    fn amounts_of_every_shape() {
        check("min 3-5/8 in. (92 mm) wide", &["29/8 in = 92 mm"]);
        check(
            "1/2 in. to 3/4 in. (13 to 19 mm) less",
            &["1/2..3/4 in = 13..19 mm"],
        );
        check("between 5 and 38 °C; coating", &["5..38 degC"]);
        check(
            "107 pcf (1714 kg/m3) to 152 pcf (2435 kg/m3)",
            &["107..152 pcf = 1714..2435 kg/m3"],
        );
        check("110 +/- 3 pcf", &["107..113 pcf"]);
        check("setback 6 mm, tol. +2/-0", &["6..8 mm"]);
        check(
            "30 % (tolerance ± 5 percentage points)",
            &["25..35 percent"],
        );
        check("flush, tolerance 0/-5 mm", &["-5..0 mm"]);
        check("three-sixteenths inch in diameter", &["3/16 in"]);
        check(
            "two layers for 1 hr and three for 2 hr",
            &["2 count", "1 hr", "3 count", "2 hr"],
        );
        check(
            "2400 ± 80 kg/m3 (150 ± 5 pcf)",
            &["2320..2480 kg/m3 = 145..155 pcf"],
        );
        check("a width of 4 in. +1/4 in., -0 in. along", &["4..17/4 in"]);
        check(
            "(145 to 155 pcf (2323 to 2483 kg/m3))",
            &["145..155 pcf = 2323..2483 kg/m3"],
        );
        check("(0.029 in. or 0.74 mm)", &["29/1000 in = 37/50 mm"]);
        check("1/8 in. (125 mils; 3 mm), drying", &["1/8 in = 125 mil"]);
        check(
            "1-1/2 by 2 in. (38 by 51 mm) legs",
            &["3/2 in = 38 mm", "2 in = 51 mm"],
        );
        check(
            "2-1/2 in. wide by 5 in. deep (64 by 127 mm)",
            &["5/2 in = 64 mm", "5 in = 127 mm"],
        );
        check("flange 40 x 40 x 3 mm", &["40 mm", "40 mm", "3 mm"]);
        check(
            "the 1, 1-1/2 or 2 Hr rated wall",
            &["1 hr", "3/2 hr", "2 hr"],
        );
        check("100-150 pcf.", &["100..150 pcf"]);
        check(
            "not fewer than two coats, one or more layers",
            &["2 count", "1 count"],
        );
        check("as described in Item 2 and Table 1", &[]);
        check("tolerance + 2 mm, − 0 mm", &["0..2 mm"]);
        check(
            "three times the joint width or 3 in.",
            &["3 times joint width", "3 in"],
        );
        check("the slope shall not exceed one in twelve", &["1/12 ratio"]);
        check(
            "No. 8 by 1/2-inch long pan head screws",
            &["8 screw_no", "1/2 in"],
        );
        check(
            "joint with 1/2 to 1 in. (13 to 25 mm)",
            &["1/2..1 in = 13..25 mm"],
        );
        check(
            "min 1/4 in. per linear foot (6 mm per 305 mm)",
            &["1/4 in = 6 mm"],
        );
    }
}
