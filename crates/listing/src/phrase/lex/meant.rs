//! Tokens that mean what only their neighbours tell.

use measure::Unit;
use measure::notation::{NumeralStyle, Stated};

use super::{Token, TokenKind};

/// `14 gauge (0.071) steel`: a decimal in brackets behind a gauge is the sheet's thickness in inches. No sheet is a quarter of an inch.
pub(super) fn give_gauges_their_inches(tokens: &mut [Token<'_>]) {
    for at in 0..tokens.len().saturating_sub(3) {
        let gauge = tokens.get(at).is_some_and(|token| {
            matches!(&token.kind, TokenKind::Quantity(stated) if stated.unit == Unit::Gauge)
        });
        let bracketed = tokens.get(at + 1).is_some_and(|token| token.is_sign('('))
            && tokens.get(at + 3).is_some_and(|token| token.is_sign(')'));
        let Some(token) = tokens.get_mut(at + 2).filter(|_| gauge && bracketed) else {
            continue;
        };
        let TokenKind::Number(numeral) = &token.kind else {
            continue;
        };
        let thin = numeral.value > 0
            && numeral
                .value
                .times(measure::Number::whole(4))
                .is_some_and(|four| four < 1);
        if thin && numeral.style == NumeralStyle::Decimal {
            token.kind = TokenKind::Quantity(Stated {
                number: numeral.value,
                unit: Unit::Inch,
                step: numeral.step,
                style: numeral.style,
                span: token.span.start()..token.span.end(),
            });
        }
    }
}

/// `No. 18 to No. 22 ga`: the first number of a span of gauges is one, too, and no screw's.
pub(super) fn name_gauges(tokens: &mut [Token<'_>]) {
    for at in 0..tokens.len().saturating_sub(2) {
        let joined = tokens.get(at + 1).is_some_and(|token| {
            ["to", "through", "thru"]
                .iter()
                .any(|word| token.is_word(word))
                || token.is_sign('-')
                || token.is_sign('–')
        });
        let gauge = tokens.get(at + 2).is_some_and(|token| {
            matches!(&token.kind, TokenKind::Quantity(stated) if stated.unit == Unit::Gauge)
        });
        if let Some(token) = tokens.get_mut(at).filter(|_| joined && gauge)
            && let TokenKind::Quantity(stated) = &mut token.kind
            && stated.unit == Unit::ScrewNumber
        {
            stated.unit = Unit::Gauge;
        }
    }
}

/// `35 × 35 × 0.55 BMT`: a base metal thickness is one in millimetres, where the number is no part of an inch.
pub(super) fn give_sheets_their_unit(tokens: &mut [Token<'_>]) {
    for at in 0..tokens.len().saturating_sub(1) {
        let named = tokens.get(at + 1).is_some_and(|token| token.is_word("bmt"));
        let Some(token) = tokens.get_mut(at).filter(|_| named) else {
            continue;
        };
        let TokenKind::Number(numeral) = &token.kind else {
            continue;
        };
        let in_millimetres = numeral
            .value
            .times(measure::Number::whole(3))
            .is_some_and(|three| three >= 1);
        if in_millimetres && numeral.value <= 6 && numeral.style == NumeralStyle::Decimal {
            token.kind = TokenKind::Quantity(Stated {
                number: numeral.value,
                unit: Unit::Millimetre,
                step: numeral.step,
                style: numeral.style,
                span: token.span.start()..token.span.end(),
            });
        }
    }
}

/// `MIN. WOOL, 4 PCF`: mineral wool, unless the word closes a number: `4 in. min. wool`.
pub(super) fn name_minerals(tokens: &mut [Token<'_>]) {
    const MINERAL: &[&str] = &["wool", "fiber", "fibre", "fibers", "fibres"];
    const MEASURES: &[&str] = &[
        "density",
        "depth",
        "thickness",
        "width",
        "length",
        "weight",
        "compression",
        "recess",
        "deep",
        "thick",
        "thk",
        "wide",
        "long",
        "high",
    ];
    let measures =
        |token: Option<&Token<'_>>| token.is_some_and(|token| MEASURES.contains(&token.lower));
    for at in 0..tokens.len() {
        // `MIN. FIBER DEPTH 4 IN.` and `4 IN. DEEP MIN. WOOL` limit a measure.
        if measures(tokens.get(at + 2)) || at > 0 && measures(tokens.get(at - 1)) {
            continue;
        }
        let next = tokens
            .get(at + 1)
            .is_some_and(|next| MINERAL.contains(&next.lower));
        let closes = at
            .checked_sub(1)
            .and_then(|before| tokens.get(before))
            .is_some_and(|before| {
                before.is_numeric() || before.is_sign(')') || before.is_sign(']')
            });
        if let Some(token) = tokens
            .get_mut(at)
            .filter(|token| token.is_word("min") && next && !closes)
        {
            token.lower = "mineral";
        }
    }
}
