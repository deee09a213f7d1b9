//! `3-5/8 (92)` where all dimensions are in inches, with millimetres in parentheses: two numbers that say the same length.

use measure::notation::Stated;
use measure::{Agreement, Unit, dual};

use super::super::lex::{Token, TokenKind};
use super::{is_bare, take};

/// Gives both numbers of each pair their units: `5/8 (16)`, `1/2 to 1 (13 to 25)`. Numbers that don't agree, as a count and the mark of a note, take none.
pub(super) fn pair_lengths(tokens: &mut [Token<'_>], first: Unit, second: Unit) {
    for at in 0..tokens.len() {
        for length in [1, 3] {
            if is_pair(tokens, at, length, first, second) {
                let inner = at + length + 1;
                for (place, unit) in [(at, first), (inner, second)] {
                    take(tokens, place, unit);
                    take(tokens, place + length - 1, unit);
                }
                break;
            }
        }
    }
}

/// Whether numbers of so many tokens (one, or a range of three) begin here and stand again in parentheses behind.
fn is_pair(tokens: &[Token<'_>], at: usize, length: usize, first: Unit, second: Unit) -> bool {
    let sign = |at: usize, sign| {
        tokens
            .get(at)
            .is_some_and(|token: &Token<'_>| token.is_sign(sign))
    };
    let open = at + length;
    let (inner, close) = (open + 1, open + 1 + length);
    let range = |from: usize| {
        length == 1
            || tokens.get(from + 1).is_some_and(|token| {
                token.is_word("to") || token.is_sign('-') || token.is_sign('–')
            })
    };
    let ends = [0, length - 1];
    is_bare(tokens, at)
        && sign(open, '(')
        && sign(close, ')')
        && range(at)
        && range(inner)
        && ends
            .iter()
            .all(|end| agree(tokens, (at + end, first), (inner + end, second)))
}

/// Whether two numbers say the same in their units, within what they are rounded to.
fn agree(tokens: &[Token<'_>], one: (usize, Unit), other: (usize, Unit)) -> bool {
    let stated = |(at, unit): (usize, Unit)| match &tokens.get(at)?.kind {
        TokenKind::Number(numeral) => Some(Stated {
            number: numeral.value,
            unit,
            step: numeral.step,
            style: numeral.style,
            span: 0..0,
        }),
        _ => None,
    };
    stated(one)
        .zip(stated(other))
        .and_then(|(one, other)| dual::agreement(&one, &other))
        .is_some_and(|agreement| agreement != Agreement::InConflict)
}
