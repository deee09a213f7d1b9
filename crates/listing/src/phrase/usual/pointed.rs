//! Points that group thousands in a document whose decimals stand behind commas: `1.200 kg/m³` beside `12,5 mm`.

use measure::notation::{self, NumeralStyle};
use measure::{Number, Unit};

use super::super::lex::{Token, TokenKind};

/// Whether the points of a document group thousands: some decimals stand behind a comma, and none behind a point.
pub(super) fn are_pointed(text: &str) -> bool {
    has_decimals(text, ',') && !has_decimals(text, '.')
}

/// Whether a number with one or two decimals behind a mark stands before a metric unit.
fn has_decimals(text: &str, mark: char) -> bool {
    text.match_indices(mark).any(|(at, _)| {
        let (before, after) = (text.get(..at), text.get(at + 1..));
        let Some((before, after)) = before.zip(after) else {
            return false;
        };
        let decimals = digits(after);
        let whole = before
            .chars()
            .rev()
            .take_while(char::is_ascii_digit)
            .count();
        let begins = before.len() == whole
            || before
                .get(..before.len() - whole)
                .is_some_and(|head| !head.ends_with(['.', ',']));
        let unit = notation::unit_at(text, at + 1 + decimals).map(|(unit, _)| unit);
        (1..=2).contains(&decimals) && whole > 0 && begins && unit.is_some_and(is_metric)
    })
}

/// Makes a thousand of each number of three digits behind a point that has a metric unit, or is joined to one that does.
pub(super) fn group_thousands(tokens: &mut [Token<'_>], text: &str) {
    for at in (0..tokens.len()).rev() {
        let joined = matches!(tokens.get(at + 2).map(|token| &token.kind), Some(TokenKind::Quantity(stated)) if is_metric(stated.unit));
        let Some(token) = tokens
            .get_mut(at)
            .filter(|token| is_grouped(token.span.of(text)))
        else {
            continue;
        };
        match &mut token.kind {
            TokenKind::Quantity(stated) if is_metric(stated.unit) => {
                if let Some(number) = stated.number.times(Number::whole(1000)) {
                    stated.number = number;
                    stated.step = Number::ONE;
                    stated.style = NumeralStyle::Whole;
                }
            }
            TokenKind::Number(numeral) if joined => {
                if let Some(number) = numeral.value.times(Number::whole(1000)) {
                    numeral.value = number;
                    numeral.step = Number::ONE;
                    numeral.style = NumeralStyle::Whole;
                }
            }
            _ => {}
        }
    }
}

/// Whether a number is one to three digits, a point and three more.
fn is_grouped(text: &str) -> bool {
    let whole = digits(text);
    let tail = text.get(whole..).and_then(|tail| tail.strip_prefix('.'));
    (1..=3).contains(&whole) && !text.starts_with('0') && tail.is_some_and(|tail| digits(tail) == 3)
}

fn digits(text: &str) -> usize {
    text.chars().take_while(char::is_ascii_digit).count()
}

const fn is_metric(unit: Unit) -> bool {
    matches!(
        unit,
        Unit::Millimetre
            | Unit::Metre
            | Unit::KilogramPerCubicMetre
            | Unit::GramPerSquareMetre
            | Unit::Celsius
    )
}
