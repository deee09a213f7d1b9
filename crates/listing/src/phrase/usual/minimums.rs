//! `75 min` that is a length and its limit, and `25 in height` that is no length.

use measure::Unit;
use measure::notation::Numeral;

use super::super::lex::{Token, TokenKind};
use super::neighbours::{follows_size, is_followed_by_size};
use crate::layout::UsualUnits;
use crate::model::Span;

/// Parts `75 min` in two where it is a length and its limit, and no time: `leg 75 min`; and `25 in height` where it is no length.
pub(super) fn part_minimums<'a>(tokens: &mut Vec<Token<'a>>, text: &'a str, usual: UsualUnits) {
    let mut at = 0;
    while at < tokens.len() {
        if let Some((number, limit)) = minimum_at(tokens, at, text, usual)
            && let Some(token) = tokens.get_mut(at)
        {
            *token = number;
            tokens.insert(at + 1, limit);
        }
        at += 1;
    }
}

fn minimum_at<'a>(
    tokens: &[Token<'a>],
    at: usize,
    text: &'a str,
    usual: UsualUnits,
) -> Option<(Token<'a>, Token<'a>)> {
    let is_place = |tokens: &[Token<'_>], at: usize| {
        const PLACES: &[&str] = &[
            "height", "width", "depth", "length", "any", "each", "every", "all", "the",
        ];
        tokens
            .get(at)
            .is_some_and(|token| PLACES.contains(&token.lower))
    };
    let token = tokens.get(at)?;
    let TokenKind::Quantity(stated) = &token.kind else {
        return None;
    };
    let words = token.span.of(text);
    let bare = words.trim_end_matches('.');
    let stop = words.len() - bare.len();
    let word = match stated.unit {
        Unit::Minute
            if usual.bare.is_some()
                || follows_size(tokens, at)
                || is_followed_by_size(tokens, at) =>
        {
            "min"
        }
        // `25 in height` of a percentage
        Unit::Inch
            if usual
                .bare
                .or(usual.length)
                .is_some_and(|unit| unit != Unit::Inch)
                && stop == 0
                && is_place(tokens, at + 1) =>
        {
            " in"
        }
        _ => return None,
    };
    bare.strip_suffix(word)?;
    let from = token.span.end() - stop - word.trim_start().len();
    let number_end = token.span.start() + text.get(token.span.start()..from)?.trim_end().len();
    let number = Token {
        kind: TokenKind::Number(Numeral {
            value: stated.number,
            step: stated.step,
            style: stated.style,
        }),
        span: Span::new(token.span.start(), number_end),
        ..token.clone()
    };
    let word = text.get(from..from + word.trim_start().len())?;
    let limit = Token {
        kind: TokenKind::Word(word),
        lower: word,
        count: None,
        span: Span::new(from, token.span.end()),
    };
    Some((number, limit))
}
