//! A table's cell as an amount: its unit may stand in the column's heading.

use measure::{Number, Unit};

use super::amounts::{Second, Shape};
use super::lex::{Token, TokenKind, lex};
use super::seconds::cell_second;
use super::values::spread_in;
use super::words::count_word;
use crate::model::{Relation, Span};

/// A cell that holds an amount.
#[derive(Debug, Clone)]
pub(crate) struct Cell {
    pub(crate) lo: Number,
    pub(crate) hi: Option<Number>,
    pub(crate) unit: Option<Unit>,
    /// What the cell itself says: "max 5", "over 4", "up to 2".
    pub(crate) relation: Option<Relation>,
    pub(crate) lo_excluded: bool,
    pub(crate) second: Option<Second>,
    /// Bytes of the cell's text that the number stands on.
    pub(crate) span: Span,
    /// Whether the cell goes on in words after a comma: `12, top`.
    pub(crate) goes_on: bool,
}

/// Reads a cell that is one amount, with the unit of its column where it has none of its own. Words beside the amount make it
/// no amount, qualifiers apart.
pub(crate) fn cell(text: &str, unit: Option<Unit>, second_unit: Option<Unit>) -> Option<Cell> {
    let lower = text.to_ascii_lowercase();
    let tokens = lex(text, &lower);
    let (relation, start) = opening(&tokens);
    // `ca. 25`
    let start =
        start + usize::from(start > 0 && tokens.get(start).is_some_and(|token| token.is_sign('.')));
    if let Some(count) = tokens.get(start).and_then(Token::word).and_then(count_word) {
        // `one, 2 in. thick`
        let goes_on = tokens
            .get(start + 1)
            .is_some_and(|token| token.is_sign(','));
        let alone = goes_on || start + 1 == tokens.len();
        let span = tokens.get(start)?.span;
        let cell = Cell {
            lo: Number::whole(count),
            hi: None,
            unit: Some(Unit::Count),
            relation,
            lo_excluded: false,
            second: None,
            span,
            goes_on,
        };
        return (alone && unit.is_none_or(|unit| unit == Unit::Count)).then_some(cell);
    }
    let mut spread = spread_in(&tokens, start, unit)?;
    // `20 min` under a heading in percent is a minimum, no time; so is `24 min.` beside a label in hours.
    let minimum = spread.unit == Some(Unit::Minute)
        && unit.is_some_and(|unit| unit != Unit::Minute)
        && spread.span.of(text).trim_end_matches('.').ends_with("min");
    if minimum {
        spread.unit = unit;
    }
    let relation = relation.or(minimum.then_some(Relation::AtLeast));
    let own = spread.unit.or(unit).or_else(|| {
        let (_, end) = closing(&tokens, spread.next);
        is_count(&spread.lo, &tokens, end).then_some(Unit::Count)
    })?;
    let second = cell_second(&tokens, spread.next, &spread, own, second_unit);
    let next = second.as_ref().map_or(spread.next, |(_, next)| *next);
    let (closing, end) = closing(&tokens, next);
    let over_range = relation == Some(Relation::MoreThan) && spread.shape == Shape::Range;
    let goes_on = tokens.get(end).is_some_and(|token| token.is_sign(','));
    let limits_on = tokens
        .get(end..)
        .unwrap_or_default()
        .iter()
        .filter_map(Token::word)
        .any(|word| LIMITS.contains(&word.trim_end_matches('.').to_lowercase().as_str()));
    // `4 in. for beams, min`: whatever such a limit is said of.
    if limits_on {
        return None;
    }
    let rest_is_note = goes_on
        || is_lettered_mark(&tokens, end)
        || tokens.get(end).is_none_or(|token| {
            token.is_sign('[')
                || token.is_sign('(')
                || token.is_sign('*')
                || token.is_sign('.')
                || token.is_sign('†')
        });
    let relation = if over_range {
        None
    } else {
        relation.or(closing)
    };
    rest_is_note.then(|| Cell {
        lo: spread.lo,
        hi: spread.hi,
        unit: Some(own),
        relation,
        lo_excluded: over_range,
        second: second.map(|(second, _)| second),
        span: spread.span,
        goes_on,
    })
}

/// Whether a cell ends here but for the letter of a note behind brackets: `90 (3.5) b`.
fn is_lettered_mark(tokens: &[Token<'_>], at: usize) -> bool {
    let bracketed = at > 0 && tokens.get(at - 1).is_some_and(|token| token.is_sign(')'));
    let lettered = tokens.get(at).and_then(Token::word).is_some_and(is_mark);
    bracketed && lettered && at + 1 == tokens.len()
}

/// Whether a word is the letter of a note.
fn is_mark(word: &str) -> bool {
    matches!(word.as_bytes(), [b'a'..=b'f'])
}

/// Whether a cell's amount has the letter of a note behind it, which may say anything of it.
pub(crate) fn leads_to_a_note(text: &str) -> bool {
    let behind = text.rsplit_once(") ");
    behind.is_some_and(|(_, mark)| is_mark(mark))
}

fn is_count(lo: &Number, tokens: &[Token<'_>], next: usize) -> bool {
    lo.is_whole()
        && *lo <= 100
        && tokens
            .get(next)
            .is_none_or(|token| !matches!(token.kind, TokenKind::Word(_)))
}

/// Words that close a number as its limit.
const LIMITS: &[&str] = &["min", "minimum", "max", "maximum"];

/// The qualifier that opens a cell, and the token after it.
fn opening(tokens: &[Token<'_>]) -> (Option<Relation>, usize) {
    let word = |at: usize| {
        tokens
            .get(at)
            .and_then(Token::word)
            .map(|word| word.trim_end_matches('.').to_lowercase())
            .unwrap_or_default()
    };
    let sign = |sign: char| tokens.first().is_some_and(|token| token.is_sign(sign));
    let equals = tokens.get(1).is_some_and(|token| token.is_sign('='));
    let (first, second, third) = (word(0), word(1), word(2));
    match (first.as_str(), second.as_str(), third.as_str()) {
        ("up", "to", "and") => (Some(Relation::AtMost), 4),
        ("up", "to", _)
        | ("at", "most", _)
        | ("not" | "no" | "never", "over" | "exceeding" | "above", _) => {
            (Some(Relation::AtMost), 2)
        }
        ("at", "least", _) | ("not" | "no" | "never", "under" | "below", _) => {
            (Some(Relation::AtLeast), 2)
        }
        ("more" | "greater", "than", _) => (Some(Relation::MoreThan), 2),
        ("less", "than", _) => (Some(Relation::LessThan), 2),
        ("over" | "above" | "exceeding", _, _) => (Some(Relation::MoreThan), 1),
        ("under" | "below", _, _) => (Some(Relation::LessThan), 1),
        ("not" | "no", comparative, "than") if is_less(comparative) => (Some(Relation::AtLeast), 3),
        ("not" | "no", comparative, "than") if is_more(comparative) => (Some(Relation::AtMost), 3),
        ("min" | "minimum", _, _) => (Some(Relation::AtLeast), 1),
        ("max" | "maximum", _, _) => (Some(Relation::AtMost), 1),
        ("nom" | "nominal", _, _) => (Some(Relation::Nominal), 1),
        ("about" | "approx" | "approximately" | "ca" | "circa" | "abt" | "around", _, _) => {
            (Some(Relation::About), 1)
        }
        _ if sign('>') && equals => (Some(Relation::AtLeast), 2),
        _ if sign('<') && equals => (Some(Relation::AtMost), 2),
        _ if sign('≥') => (Some(Relation::AtLeast), 1),
        _ if sign('≤') => (Some(Relation::AtMost), 1),
        _ if sign('>') => (Some(Relation::MoreThan), 1),
        _ if sign('<') => (Some(Relation::LessThan), 1),
        _ if sign('~') || sign('≈') => (Some(Relation::About), 1),
        _ => (None, 0),
    }
}

fn is_less(comparative: &str) -> bool {
    [
        "less",
        "thinner",
        "narrower",
        "shallower",
        "shorter",
        "lower",
        "closer",
        "smaller",
        "lighter",
        "nearer",
        "colder",
        "younger",
    ]
    .contains(&comparative)
}

fn is_more(comparative: &str) -> bool {
    [
        "more", "greater", "thicker", "wider", "deeper", "longer", "higher", "larger", "heavier",
        "warmer", "hotter", "older", "later",
    ]
    .contains(&comparative)
}

/// The qualifier that closes a cell, and the token after it.
fn closing(tokens: &[Token<'_>], at: usize) -> (Option<Relation>, usize) {
    let word = |at: usize| {
        tokens
            .get(at)
            .and_then(Token::word)
            .map(|word| word.trim_end_matches('.').to_lowercase())
            .unwrap_or_default()
    };
    let sign = |at: usize, sign: char| tokens.get(at).is_some_and(|token| token.is_sign(sign));
    // `4 in. (min)`, `4 in., min`
    if sign(at, '(') && sign(at + 2, ')') && LIMITS.contains(&word(at + 1).as_str()) {
        return (closing(tokens, at + 1).0, at + 3);
    }
    if sign(at, ',') && LIMITS.contains(&word(at + 1).as_str()) {
        return closing(tokens, at + 1);
    }
    match (word(at).as_str(), word(at + 1).as_str()) {
        ("min" | "minimum", _) => (Some(Relation::AtLeast), at + 1),
        ("max" | "maximum", _) => (Some(Relation::AtMost), at + 1),
        ("at", "least")
        | ("or" | "and", "more" | "over" | "above" | "thicker" | "heavier" | "wider" | "greater") => {
            (Some(Relation::AtLeast), at + 2)
        }
        ("at", "most") | ("or" | "and", "less" | "under" | "below") => {
            (Some(Relation::AtMost), at + 2)
        }
        ("nominal" | "nom", _) => (Some(Relation::Nominal), at + 1),
        // `12 in. OC (max)`
        ("oc" | "o.c" | "each", _) => closing(tokens, at + 1),
        ("thick" | "deep" | "wide", _) => (None, at + 1),
        _ => (None, at),
    }
}
