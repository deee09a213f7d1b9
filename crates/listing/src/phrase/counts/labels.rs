//! Counts behind a label: `Number of coats: 2`, `Layers (each side): 2`, `Anchors per piece ....... min. 5`.

use super::super::lex::is_any;
use super::super::lex::{Token, TokenKind};
use super::things::COUNTED_SINGLY;

/// `500 cycles`, `Cycles: 500`, `Cycles rated: 500`
pub(super) fn counts_cycles(tokens: &[Token<'_>], at: usize) -> bool {
    const REACH: usize = 3;
    let labelled = at > 0 && tokens.get(at - 1).is_some_and(|token| token.is_sign(':'));
    is_any(tokens, at + 1, &["cycles"])
        || labelled && (at.saturating_sub(REACH + 1)..at).any(|at| is_any(tokens, at, &["cycles"]))
}

/// `Number of coats: 2`, `Number of coats 2`: a label asks for the number, and what follows ends its phrase.
pub(super) fn is_number_of(tokens: &[Token<'_>], at: usize) -> bool {
    const REACH: usize = 10;
    let label = (at.saturating_sub(REACH)..at).rev().find(|at| {
        is_any(tokens, *at, &["number", "no", "no.", "quantity", "count"])
            && is_any(tokens, at + 1, &["of"])
    });
    let Some(label) = label else { return false };
    let plain = (label + 2..at).all(|at| {
        tokens.get(at).is_some_and(|token| {
            token.word().is_some()
                || token.is_sign(':')
                || token.is_sign('.')
                || token.is_sign('=')
                || token.is_sign('-')
                || token.is_sign('–')
        })
    });
    let ends = tokens.get(at + 1).is_none_or(|token| {
        matches!(token.kind, TokenKind::Sign(',' | ';' | '.' | '(' | ')'))
            || is_any(tokens, at + 1, &["min", "max", "minimum", "maximum", "or"])
    });
    // A number in words stands in sentences, too: there a sign must part it from its label.
    let parted = (label + 2..at).any(|at| {
        tokens
            .get(at)
            .is_some_and(|token| token.is_sign(':') || token.is_sign('-') || token.is_sign('–'))
    });
    let digits = tokens.get(at).is_some_and(Token::is_numeric);
    plain && ends && label + 2 < at && (digits || parted)
}

/// `Layers: 2 each side`, `Screws per stud: 2`: a label that counts, and its value.
pub(super) fn is_labelled_count(tokens: &[Token<'_>], at: usize) -> bool {
    const MOST_WORDS: usize = 6;
    const SIZES: &[&str] = &[
        "spacing",
        "thickness",
        "width",
        "depth",
        "length",
        "size",
        "gauge",
        "diameter",
        "gap",
        "lap",
        "overlap",
    ];
    const LIMITS: &[&str] = &[
        "min", "minimum", "max", "maximum", "no", "not", "more", "less", "fewer", "than", "at",
        "least", "most",
    ];
    // A colon, or the dots that lead from a label to its value.
    let parts = |at: usize| {
        tokens
            .get(at)
            .is_some_and(|token| token.is_sign(':') || token.is_sign('.') && token.span.len() >= 3)
    };
    let limited = (0..at)
        .rev()
        .take_while(|at| is_any(tokens, *at, LIMITS))
        .count();
    let Some(colon) = (at - limited)
        .checked_sub(1)
        .filter(|colon| (1..=MOST_WORDS).contains(colon))
    else {
        return false;
    };
    let label = tokens.get(..colon).unwrap_or_default();
    let parted = parts(colon);
    // `Splices per 50 ft run`
    let stretch = |index: usize, token: &Token<'_>| {
        token.is_numeric()
            && label
                .get(index.wrapping_sub(1))
                .is_some_and(|per| per.is_word("per"))
    };
    let plain = label.iter().enumerate().all(|(index, token)| {
        token.word().is_some()
            || token.is_sign('(')
            || token.is_sign(')')
            || token.is_sign(',')
            || stretch(index, token)
    });
    let sized = label.iter().any(|token| SIZES.contains(&token.lower));
    let counted = label.first().is_some_and(|token| {
        COUNTED_SINGLY.contains(&token.lower.trim_end_matches('s')) && token.lower.ends_with('s')
    });
    let ends = tokens.get(at + 1).is_none_or(|token| {
        matches!(token.kind, TokenKind::Sign(',' | ';' | '.' | '('))
            || is_any(
                tokens,
                at + 1,
                &[
                    "each", "per", "on", "min", "max", "minimum", "maximum", "or",
                ],
            )
    });
    parted && plain && counted && !sized && ends
}
