//! Layers of sheets, and the gauge of one whose number stands behind.

use measure::notation::NumeralStyle;
use measure::{Number, Unit};

use super::super::lex::{Token, TokenKind};
use super::{Amount, Shape};

/// `2 × 12,5 mm board`: so many layers of that thickness, since nothing is 2 mm by 12.5 mm.
pub(super) fn layers_of(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    let TokenKind::Number(numeral) = &tokens.get(at)?.kind else {
        return None;
    };
    let times = tokens
        .get(at + 1)
        .is_some_and(|token| token.is_sign('×') || token.is_word("x"));
    let TokenKind::Quantity(thickness) = &tokens.get(at + 2)?.kind else {
        return None;
    };
    // `Depth 2 x 50 mm`, `Batts 2 x 50 mm`
    let colon = at > 0 && tokens.get(at - 1).is_some_and(|token| token.is_sign(':'));
    // `to a depth of not less than 2 x 50 mm`
    let bounding = |token: &&Token<'_>| {
        [
            "of", "not", "no", "less", "than", "min", "minimum", "at", "least", "is",
        ]
        .iter()
        .any(|word| token.is_word(word))
    };
    let before = tokens
        .get(..at - usize::from(colon))
        .and_then(|before| before.iter().rev().find(|token| !bounding(token)));
    let led = before.is_some_and(|token| {
        [
            "depth",
            "board",
            "boards",
            "batts",
            "slabs",
            "layers",
            "insulation",
            "wool",
            "packing",
            "backing",
        ]
        .iter()
        .any(|thing| token.is_word(thing))
    });
    // `4 x 40 mm screws` has no layers.
    let sheets = tokens
        .get(behind_other_cases(tokens, at + 3)..)
        .unwrap_or_default()
        .iter()
        .take(4)
        .any(|token| {
            [
                "board", "gypsum", "plaster", "layer", "sheet", "panel", "type", "wool", "batt",
                "slab", "mineral",
            ]
            .iter()
            .any(|thing| token.lower.starts_with(thing))
        });
    let layers = (sheets || led || names_sheets_before(tokens, at))
        && numeral.value.is_whole()
        && numeral.value <= 4
        && thickness.unit == Unit::Millimetre
        && thickness.number >= 6;
    let span = tokens.get(at)?.span;
    (times && layers).then(|| Amount {
        lo: numeral.value,
        hi: None,
        unit: Unit::Count,
        shape: Shape::Single,
        step: Number::ONE,
        second: None,
        first: at,
        last: at + 2,
        at: span,
        whole: span,
    })
}

/// Where the thing stands that is named once behind several cases: `2 x 13 mm (FRL -/90/90) or 2 x 16 mm (FRL -/120/120) board`.
fn behind_other_cases(tokens: &[Token<'_>], from: usize) -> usize {
    let sign = |at: usize, sign: char| tokens.get(at).is_some_and(|token| token.is_sign(sign));
    let word = |at: usize, word: &str| tokens.get(at).is_some_and(|token| token.is_word(word));
    let mut at = from;
    loop {
        if sign(at, '(') {
            let Some(closes) = (at..tokens.len()).find(|at| sign(*at, ')')) else {
                return at;
            };
            at = closes + 1;
        }
        let joined = usize::from(sign(at, ',')) + usize::from(word(at, "or") || word(at, "and"));
        let next = at + joined;
        let times = word(next + 1, "x") || sign(next + 1, '×');
        let thick = tokens
            .get(next + 2)
            .is_some_and(|token| matches!(token.kind, TokenKind::Quantity(_)));
        if joined == 0 || !times || !thick {
            return at;
        }
        at = next + 3;
    }
}

/// `Plasterboard 13 mm or 2 x 16 mm`: whether sheets were named a few words before, and nothing that is long and narrow.
fn names_sheets_before(tokens: &[Token<'_>], at: usize) -> bool {
    const REACH: usize = 12;
    const SHEETS: &[&str] = &["board", "plasterboard", "gypsum", "wool", "batt", "slab"];
    const NARROW: &[&str] = &[
        "screw", "pin", "nail", "anchor", "strap", "strip", "angle", "plate", "clip", "bar",
        "steel", "stud", "channel", "washer", "bead", "rod",
    ];
    let before = tokens.get(at.saturating_sub(REACH)..at).unwrap_or_default();
    let near = || {
        before
            .iter()
            .rev()
            .take_while(|token| !token.is_sign(';') && !token.is_sign('.'))
    };
    let named = |things: &[&str]| {
        near().any(|token| things.iter().any(|thing| token.lower.starts_with(thing)))
    };
    let after = tokens.get(at + 3..).unwrap_or_default().iter().take(3);
    let narrow_after = after
        .into_iter()
        .any(|token| NARROW.iter().any(|thing| token.lower.starts_with(thing)));
    named(SHEETS) && !named(NARROW) && !narrow_after
}

/// `gauge 20`: a size of sheet whose number stands behind.
pub(super) fn gauge_at(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    const SIZES: core::ops::RangeInclusive<i32> = 8..=32;
    let colon = tokens
        .get(at + 1)
        .is_some_and(|token| token.is_sign(':') || token.is_sign('='));
    let number = at + 1 + usize::from(colon);
    let (word, next) = (tokens.get(at)?, tokens.get(number)?);
    let TokenKind::Number(numeral) = &next.kind else {
        return None;
    };
    let named = ["gauge", "gage"].iter().any(|name| word.is_word(name));
    let size = numeral.value.is_whole()
        && numeral.value >= *SIZES.start()
        && numeral.value <= *SIZES.end();
    (named && size && numeral.style == NumeralStyle::Whole).then(|| Amount {
        lo: numeral.value,
        hi: None,
        unit: Unit::Gauge,
        shape: Shape::Single,
        step: numeral.step,
        second: None,
        first: number,
        last: number + 1,
        at: next.span,
        whole: next.span,
    })
}
