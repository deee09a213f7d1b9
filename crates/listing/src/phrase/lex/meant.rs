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
