//! Numbers without a unit in a document that states one for all its dimensions: `120 thick`, `at 400 centres`, `50 x 70 x 0.9`.
//!
//! Only a number that its neighbours say is a length takes the unit: a word of size right after it, or right before it with nothing but
//! words of limit between. A count, a date, a designation or a share takes none.

mod minimums;
mod neighbours;
mod paired;
mod pointed;
mod stated;

use measure::Unit;
use measure::notation::Stated;

use super::lex::{Token, TokenKind};
use super::names::{follows_name, names_something};
use crate::layout::UsualUnits;
use minimums::part_minimums;
use neighbours::{counts, follows, is_compared, is_length};
use paired::pair_lengths;
use pointed::group_thousands;
pub(crate) use stated::usual_units;

/// Gives the lengths among the numbers without a unit the unit that the document states for all of them.
pub(crate) fn with_usual<'a>(tokens: &mut Vec<Token<'a>>, text: &'a str, usual: UsualUnits) {
    if usual.pointed {
        group_thousands(tokens, text);
    }
    part_minimums(tokens, text, usual);
    if let Some((first, second)) = usual.length.zip(usual.second_length) {
        pair_lengths(tokens, first, second);
    }
    let units: Vec<Option<Unit>> = (0..tokens.len())
        .map(|at| {
            is_bare(tokens, at)
                .then(|| unit_at(tokens, at, usual))
                .flatten()
        })
        .collect();
    for (at, unit) in units.into_iter().enumerate() {
        if let Some(unit) = unit {
            take(tokens, at, unit);
        }
    }
    let usual = [usual.length, usual.density, usual.bare];
    for unit in usual.into_iter().flatten() {
        for at in 0..tokens.len() {
            if goes_with(tokens, at, unit) {
                take(tokens, at, unit);
            }
        }
    }
}

/// Whether a text is one length with the same in parentheses: `1/2 (13)`, where the document states both units.
pub(crate) fn is_paired_length(text: &str, usual: UsualUnits) -> bool {
    let Some((first, second)) = usual.length.zip(usual.second_length) else {
        return false;
    };
    let lower = text.to_ascii_lowercase();
    let mut tokens = super::lex::lex(text, &lower);
    pair_lengths(&mut tokens, first, second);
    let quantity = |at: usize| {
        tokens
            .get(at)
            .is_some_and(|token| matches!(token.kind, TokenKind::Quantity(_)))
    };
    quantity(0) && tokens.iter().any(|token| token.is_sign('('))
}

/// The unit of a number that has none.
fn unit_at(tokens: &[Token<'_>], at: usize, usual: UsualUnits) -> Option<Unit> {
    if usual.density.is_some()
        && !counts(tokens, at)
        && follows(tokens, at, &["density", "densities"])
    {
        return usual.density;
    }
    let length = || is_length(tokens, at) || is_compared(tokens, at);
    usual
        .length
        .filter(|_| length())
        .or(usual.bare.filter(|_| !counts(tokens, at)))
}

fn take(tokens: &mut [Token<'_>], at: usize, unit: Unit) {
    let Some(token) = tokens.get_mut(at) else {
        return;
    };
    if let TokenKind::Number(numeral) = &token.kind {
        token.kind = TokenKind::Quantity(Stated {
            number: numeral.value,
            unit,
            step: numeral.step,
            style: numeral.style,
            span: token.span.start()..token.span.end(),
        });
    }
}

/// Whether a number stands here with neither unit nor name.
fn is_bare(tokens: &[Token<'_>], at: usize) -> bool {
    let number = tokens
        .get(at)
        .is_some_and(|token| matches!(token.kind, TokenKind::Number(_)));
    let named = at
        .checked_sub(1)
        .is_some_and(|before| names_something(tokens, before))
        || follows_name(tokens.get(..at).unwrap_or_default());
    // `gauge 20`, `No. 8`
    let sized = at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .is_some_and(|before| {
            ["gauge", "gage", "ga", "no", "no.", "nos"]
                .iter()
                .any(|word| before.is_word(word))
                || before.is_sign('#')
        });
    let share = tokens.get(at + 1).is_some_and(|token| token.is_sign('%'));
    number && !named && !sized && !share && !shares_a_unit(tokens, at)
}

/// Whether the unit of a number stands behind the last of those that it goes with: `4 to 6 in.`, `1/2, 3/4 or 1 in.`
fn shares_a_unit(tokens: &[Token<'_>], at: usize) -> bool {
    let joins = |at: usize| {
        tokens.get(at).is_some_and(|token| {
            ["to", "or", "and", "by", "x"]
                .iter()
                .any(|word| token.is_word(word))
                || ['-', '–', '×'].iter().any(|sign| token.is_sign(*sign))
        })
    };
    let is_listed = |at: usize| tokens.get(at).is_some_and(|token| token.is_sign(','));
    let kind = |at: usize| tokens.get(at).map(|token| &token.kind);
    let mut at = at;
    loop {
        match (joins(at + 1), is_listed(at + 1), kind(at + 2)) {
            (true, _, Some(TokenKind::Quantity(_))) => return true,
            (true, _, Some(TokenKind::Number(_))) | (_, true, Some(TokenKind::Number(_))) => {
                at += 2;
            }
            _ => return false,
        }
    }
}

/// The other end of a range, or a tolerance: `20 to 60`, `150 ± 5`.
fn goes_with(tokens: &[Token<'_>], at: usize, unit: Unit) -> bool {
    let length = |at: usize| {
        tokens.get(at).is_some_and(
            |token| matches!(&token.kind, TokenKind::Quantity(stated) if stated.unit == unit),
        )
    };
    let joins = at >= 2
        && tokens.get(at - 1).is_some_and(|token| {
            ["to", "and"].iter().any(|word| token.is_word(word))
                || ['±', '-', '–'].iter().any(|sign| token.is_sign(*sign))
        });
    joins && length(at - 2) && is_bare(tokens, at) && !counts(tokens, at)
}

#[cfg(test)]
mod tests {
    use super::super::amounts::amounts;
    use super::super::lex::lex;
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &[&str]) {
        let lower = text.to_ascii_lowercase();
        let mut tokens = lex(text, &lower);
        with_usual(
            &mut tokens,
            text,
            UsualUnits {
                length: Some(Unit::Millimetre),
                ..UsualUnits::default()
            },
        );
        let found: Vec<_> = amounts(&tokens)
            .iter()
            .map(|amount| {
                let hi = amount.hi.map_or(String::new(), |hi| format!("..{hi}"));
                format!("{}{hi} {}", amount.lo, amount.unit)
            })
            .collect();
        assert_eq!(found, expected, "{text}");
    }

    #[test]
    fn what_its_neighbours_call_a_length_takes_the_unit() {
        check("slab min 120 thick", &["120 mm"]);
        check(
            "studs 92 wide, spaced max 600 on centre",
            &["92 mm", "600 mm"],
        );
        check("leg 75 min, fastened at 400 centres", &["75 mm", "400 mm"]);
        check("lap not less than 25 onto each side", &["25 mm"]);
        check("and 175 or more in thickness", &["175 mm"]);
        check("butts no closer together than 600", &["600 mm"]);
        check("angle 50 x 70 x 0.9", &["50 mm", "70 mm", "9/10 mm"]);
        check("width from 20 to 60", &["20..60 mm"]);
        check("75 to 100 thick", &["75..100 mm"]);
        check("thickness: 150 ± 5", &["145..155 mm"]);
        check("not less than 75 bears on the floor", &["75 mm"]);
        check("not less than 35 laps under the angle", &["35 mm"]);
        check(
            "carried 50 on to floor and 75 up the wall",
            &["50 mm", "75 mm"],
        );
        check("gaps of 5 to 8 between, slack of 30", &["5..8 mm", "30 mm"]);
        check("sleeve 100 longer than the seal is deep", &["100 mm"]);
        check(
            "3.0 wet, never below 10 nor over 25",
            &["3 mm", "10 mm", "25 mm"],
        );
        check("studs 92 deep, @ 600 max", &["92 mm", "600 mm"]);
        check("concrete, 175 minimum, where claimed", &["175 mm"]);
        check(
            "two layers of 15 board each side, not more than 5 short of it",
            &["2 count", "15 mm", "5 mm"],
        );
        check(
            "strip fixed to slab only at 600, rod Ø12",
            &["600 mm", "12 mm"],
        );
    }

    #[test]
    fn a_count_a_name_or_a_share_takes_none() {
        check("leg with 2 screws", &["2 count"]);
        check("see Table 4 for the width", &[]);
        check("width reduced by 25 %", &["25 percent"]);
        check("2 layers, each 15 thick", &["2 count", "15 mm"]);
        check("edition of 2019", &[]);
        check("butts fewer than 6", &[]);
        check("not less than 3 anchors bear on the angle", &["3 count"]);
        check("tested at 400", &[]);
        check("screws for one board, 48 minimum", &["1 count", "48 count"]);
        check("fixed at 3 points", &["3 count"]);
    }

    #[test]
    fn lengths_are_paired_with_what_stands_in_parentheses() {
        let usual = usual_units("KEY. Dimensions are inches with (mm).");
        assert_eq!(
            (usual.length, usual.second_length),
            (Some(Unit::Inch), Some(Unit::Millimetre))
        );
        for statement in [
            "All dimensions in inches, millimetres in parentheses.",
            "Dimensions are given in inches (mm).",
        ] {
            assert_eq!(
                usual_units(statement).second_length,
                Some(Unit::Millimetre),
                "{statement}"
            );
        }
        let alone = usual_units("All dimensions in inches. Boards are 1200 mm wide.");
        assert_eq!(alone.second_length, None);
        let lengths = |text: &str| {
            let lower = text.to_ascii_lowercase();
            let mut tokens = lex(text, &lower);
            with_usual(&mut tokens, text, usual);
            amounts(&tokens)
                .iter()
                .filter(|amount| amount.second.is_some())
                .map(|amount| amount.at.of(text).to_owned())
                .collect::<Vec<_>>()
        };
        assert_eq!(lengths("studs 3-5/8 (92) min. width"), ["3-5/8"]);
        assert_eq!(lengths("1/2 to 1 (13 to 25)"), ["1/2 to 1"]);
        assert_eq!(lengths("1/2 (13) min. to 3 (76) max."), ["1/2", "3"]);
        assert_eq!(lengths("items 2 (3) and layers 2 (1)"), [""; 0]);
    }

    #[test]
    fn the_unit_is_stated_once_for_all() {
        assert_eq!(
            usual_units("General: All dimensions are in millimetres unless stated.").length,
            Some(Unit::Millimetre)
        );
        assert_eq!(
            usual_units("(Dimensions in mm)").length,
            Some(Unit::Millimetre)
        );
        assert_eq!(
            usual_units("all dimensions\nin inches unless noted").length,
            Some(Unit::Inch)
        );
        assert_eq!(
            usual_units("Unless noted, dimensions are millimetres.").length,
            Some(Unit::Millimetre)
        );
        assert_eq!(usual_units("sizes up to 40 mm in width").length, None);
        assert_eq!(
            usual_units("dimensions in mm. Dimensions in inches.").length,
            None
        );
    }
}
