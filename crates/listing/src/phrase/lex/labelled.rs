//! Units that a label holds for the number behind it, or that the last of several labelled numbers holds for all.

use measure::Unit;
use measure::notation::{self, Stated};

use super::{Token, TokenKind};

/// `Depth (in.): 4`, `density (pcf): min 6`, `compression (%) = 25`: the unit stands in the label. A letter alone is the name of something, and "min" a
/// minimum.
pub(super) fn labelled_unit(text: &str, at: usize) -> Option<(Stated, usize)> {
    let numeral = text.get(at..)?.starts_with(|c: char| c.is_ascii_digit());
    if !numeral {
        return None;
    }
    let before = bounds_passed(text.get(..at)?);
    let label = before.strip_suffix([':', '='])?.trim_end_matches(' ');
    let (_, inner) = label.strip_suffix(')')?.rsplit_once('(')?;
    let inner = inner.trim();
    let (unit, unit_end) = notation::unit_at(inner, 0)?;
    let is_letter = inner.len() == 1 && inner.starts_with(char::is_alphabetic);
    if unit_end != inner.len() || is_letter || matches!(unit, Unit::Minute | Unit::Count) {
        return None;
    }
    let own = notation::quantity_at(text, at)
        .is_some_and(|own| !matches!(own.unit, Unit::Minute | Unit::Count));
    let (numeral, end) = notation::numeral_at(text, at)?;
    let runs_on = text
        .get(end..)?
        .starts_with(|c: char| c.is_alphanumeric() || c == '/');
    (!own && !runs_on).then(|| {
        let stated = Stated {
            number: numeral.value,
            unit,
            step: numeral.step,
            style: numeral.style,
            span: at..end,
        };
        (stated, end)
    })
}

/// A text without the words that bound the number behind it: `Depth (in.): min`.
fn bounds_passed(before: &str) -> &str {
    const BOUNDS: &[&str] = &[
        " min.",
        " min",
        " max.",
        " max",
        " minimum",
        " maximum",
        "≥",
        "≤",
        " at least",
        " at most",
    ];
    let before = before.trim_end_matches(' ');
    let bound = BOUNDS.iter().find_map(|bound| before.strip_suffix(bound));
    bound.unwrap_or(before).trim_end_matches(' ')
}

/// `compression 25, extension 10, shear 0 percent`: the last of several measures that a number stands behind has the unit of all.
pub(super) fn share_labelled_units(tokens: &mut [Token<'_>]) {
    const MEASURES: &[&str] = &[
        "compression",
        "extension",
        "shear",
        "closing",
        "opening",
        "contraction",
        "expansion",
    ];
    let is_measure =
        |token: Option<&Token<'_>>| token.is_some_and(|token| MEASURES.contains(&token.lower));
    for last in (0..tokens.len()).rev() {
        let TokenKind::Quantity(stated) =
            tokens.get(last).map_or(&TokenKind::Sign(' '), |t| &t.kind)
        else {
            continue;
        };
        let unit = stated.unit;
        let label = last.checked_sub(1);
        let Some(label) = label.filter(|label| is_measure(tokens.get(*label))) else {
            continue;
        };
        let joint = |at: usize| {
            tokens
                .get(at)
                .is_some_and(|token| token.is_sign(',') || token.is_word("and"))
        };
        let Some(number) = (0..label)
            .rev()
            .find(|at| !joint(*at))
            .filter(|at| at + 1 < label)
        else {
            continue;
        };
        if !number
            .checked_sub(1)
            .is_some_and(|label| is_measure(tokens.get(label)))
        {
            continue;
        }
        if let Some(token) = tokens.get_mut(number)
            && let TokenKind::Number(numeral) = &token.kind
        {
            token.kind = TokenKind::Quantity(Stated {
                number: numeral.value,
                unit,
                step: numeral.step,
                style: numeral.style,
                span: token.span.start()..token.span.end(),
            });
        }
    }
}
