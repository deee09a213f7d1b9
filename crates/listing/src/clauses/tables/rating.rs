//! Ratings that head columns: `EI 90`, `2 hr`.

use measure::{Number, Quantity, Unit};

use crate::model::{Expr, Relation, Test};
use crate::phrase::{Token, TokenKind, lex};

/// A rating that heads a column.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rating {
    pub(super) words: String,
    pub(super) expr: Expr,
}

/// A heading's own words, and the rating that stands among them: `Depth, mm (min.) EI 90`, `F = 1 h floor`, `2 hr`.
pub(super) fn split_rating(text: &str) -> (String, Option<Rating>) {
    const SPOILS: &[&str] = &["and", "or", "to", "up", "over", "under", "after", "within"];
    let lower = text.to_ascii_lowercase();
    let tokens = lex(text, &lower);
    let Some((at, stated)) = (0..tokens.len()).find_map(|at| Some((at, rating_at(&tokens, at)?)))
    else {
        return (text.to_owned(), None);
    };
    // "1 and 2 hr", "up to 2 hr", "EI 60 / EI 90", "after 1 hr" are not one plain rating.
    let spoils = |token: Option<&Token<'_>>| {
        token.is_some_and(|token| {
            SPOILS.iter().any(|word| token.is_word(word))
                || ['/', '-', '–', ','].iter().any(|sign| token.is_sign(*sign))
        })
    };
    let before = (0..at).rev().find(|before| {
        !tokens
            .get(*before)
            .is_some_and(|token| matches!(token.word(), Some("EI" | "REI" | "E")))
    });
    if spoils(
        before
            .and_then(|before| tokens.get(before))
            .filter(|token| !token.is_sign(',')),
    ) || spoils(tokens.get(at + 1))
    {
        return (text.to_owned(), None);
    }
    // What leads to the rating goes with it: `EI 90`, `F = 1 h`, `at 2 hr`.
    let leads = |token: &Token<'_>| {
        token.is_sign('=')
            || ["ei", "rei", "e", "f", "t", "frl", "for", "at"]
                .iter()
                .any(|word| token.is_word(word))
    };
    let first = (0..at)
        .rev()
        .take_while(|before| tokens.get(*before).is_some_and(leads))
        .last()
        .unwrap_or(at);
    let start = tokens.get(first).map_or(0, |token| token.span.start());
    let end = tokens.get(at).map_or(text.len(), |token| token.span.end());
    let own = |range: core::ops::Range<usize>| text.get(range).unwrap_or_default().trim();
    let words = format!("{} {}", own(0..start), own(end..text.len()));
    let expr = Expr::Test(Test {
        property: "joint.rating".to_owned(),
        relation: Relation::Exactly,
        lo: Some(stated),
        hi: None,
        lo_excluded: false,
    });
    let rating = Rating {
        words: own(start..end).to_owned(),
        expr,
    };
    (words.trim().to_owned(), Some(rating))
}

/// The rating at a token: hours to four, or the minutes of a class.
fn rating_at(tokens: &[Token<'_>], at: usize) -> Option<Quantity> {
    const MINUTES: [i32; 9] = [15, 20, 30, 45, 60, 90, 120, 180, 240];
    match &tokens.get(at)?.kind {
        TokenKind::Quantity(stated) => (stated.unit == Unit::Hour && stated.number <= 4)
            .then(|| Quantity::new(stated.number, stated.unit)),
        TokenKind::Number(numeral) => {
            let before = tokens.get(at.checked_sub(1)?)?;
            let class = matches!(before.word(), Some("EI" | "REI" | "E"));
            let minutes = MINUTES
                .iter()
                .any(|minutes| numeral.value == Number::whole(*minutes));
            (class && minutes).then(|| Quantity::new(numeral.value, Unit::Minute))
        }
        _ => None,
    }
}
