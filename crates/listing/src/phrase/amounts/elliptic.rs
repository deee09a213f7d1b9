//! Numbers that take their unit from an amount before them.

use measure::{Dimension, Number};

use super::super::lex::{Token, TokenKind};
use super::{Amount, Shape};

/// `at least one hour but no longer than eight`: a number in words that ends its stretch, compared after a time, is in the time's unit.
pub(super) fn time_again(
    tokens: &[Token<'_>],
    at: usize,
    before: Option<&Amount>,
) -> Option<Amount> {
    const COMPARING: &[&str] = &[
        "longer", "more", "less", "later", "sooner", "fewer", "shorter",
    ];
    const REACH: usize = 6;
    let token = tokens.get(at)?;
    let number = token.count?;
    let before = before
        .filter(|before| before.unit.dimension() == Dimension::Time && at <= before.last + REACH)?;
    let compared = at > 1
        && tokens
            .get(at - 1)
            .is_some_and(|token| token.is_word("than"))
        && tokens
            .get(at - 2)
            .is_some_and(|token| COMPARING.contains(&token.lower));
    let ends = tokens
        .get(at + 1)
        .is_none_or(|next| matches!(next.kind, TokenKind::Sign('.' | ',' | ';' | ')')));
    (compared && ends).then(|| Amount {
        lo: Number::whole(number),
        hi: None,
        unit: before.unit,
        shape: Shape::Single,
        step: Number::ONE,
        second: None,
        first: at,
        last: at + 1,
        at: token.span,
        whole: token.span,
    })
}
