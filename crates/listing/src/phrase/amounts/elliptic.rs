//! Numbers that take their unit from an amount before them.

use measure::{Dimension, Number, Unit};

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

/// `6 pounds per cubic foot, or of 8 pounds in exterior joints`: pounds after a density are of the same. It would misread a load that is named
/// right behind a density without its own "per".
pub(super) fn pounds_again(
    tokens: &[Token<'_>],
    at: usize,
    before: Option<&Amount>,
) -> Option<Amount> {
    const REACH: usize = 16;
    const MOST: i32 = 60;
    let token = tokens.get(at)?;
    let number = match &token.kind {
        TokenKind::Number(numeral) => numeral.value,
        _ => Number::whole(token.count?),
    };
    let unit = tokens.get(at + 1)?;
    let is = |token: &Token<'_>, words: &[&str]| words.iter().any(|word| token.is_word(word));
    let of_density = before
        .is_some_and(|before| before.unit == Unit::PoundPerCubicFoot && at <= before.last + REACH);
    let rated = tokens
        .get(at + 2)
        .is_some_and(|next| is(next, &["per", "of", "a", "to", "force"]));
    let pounds = is(unit, &["pounds", "lb", "lbs"]) && !rated && number <= MOST;
    (of_density && pounds).then(|| Amount {
        lo: number,
        hi: None,
        unit: Unit::PoundPerCubicFoot,
        shape: Shape::Single,
        step: Number::ONE,
        second: None,
        first: at,
        last: at + 2,
        at: token.span.join(unit.span),
        whole: token.span.join(unit.span),
    })
}

/// `Nos. 8 or 10 screws`: a number joined to the size of a screw is a size as well.
pub(super) fn screw_again(
    tokens: &[Token<'_>],
    at: usize,
    before: Option<&Amount>,
) -> Option<Amount> {
    let token = tokens.get(at)?;
    let TokenKind::Number(numeral) = &token.kind else {
        return None;
    };
    let joint = tokens.get(at.checked_sub(1)?)?;
    let joined = ["or", "and", "to"].iter().any(|word| joint.is_word(word)) || joint.is_sign(',');
    let sized = before
        .is_some_and(|before| before.unit == Unit::ScrewNumber && before.last + 1 == at && joined);
    let screws = tokens
        .get(at + 1)
        .is_some_and(|next| ["screw", "screws"].iter().any(|word| next.is_word(word)));
    (sized && screws).then(|| Amount {
        lo: numeral.value,
        hi: None,
        unit: Unit::ScrewNumber,
        shape: Shape::Single,
        step: Number::ONE,
        second: None,
        first: at,
        last: at + 1,
        at: token.span,
        whole: token.span,
    })
}
