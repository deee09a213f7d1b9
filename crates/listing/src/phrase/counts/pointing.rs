//! Numbers that point at things or label them, and so count nothing; and those that count by what they point at.

use super::super::lex::is_any;
use super::super::lex::{Token, TokenKind};

/// Whether a number only points at things already spoken of: `the two walls`, `between two walls`, `no single strip`, `in one layer`,
/// `to one angle only`.
pub(super) fn refers_back(tokens: &[Token<'_>], at: usize, number: i32) -> bool {
    // `in one pass` says how many; `in one corner` points.
    const DONE: &[&str] = &[
        "pass",
        "coat",
        "layer",
        "ply",
        "piece",
        "lift",
        "operation",
        "course",
    ];
    let Some(before) = at.checked_sub(1).and_then(|before| tokens.get(before)) else {
        return false;
    };
    let word = |at: usize, words: &[&str]| is_any(tokens, at, words);
    let pointed = [
        "the", "these", "those", "between", "both", "which", "no", "any", "every", "either",
        "lowest", "highest", "smallest", "largest", "thinnest",
    ]
    .iter()
    .any(|word| before.is_word(word));
    let done = before.is_word("in") && word(at + 1, DONE);
    // `at one place in every 10 m` counts; `at one place` points.
    let spread = (at + 1..at + 4)
        .any(|at| word(at, &["per"]) || word(at, &["in"]) && word(at + 1, &["every", "each"]));
    // `the lowest two courses` says how many.
    let extreme = number > 1 && (before.is_word("lowest") || before.is_word("highest"));
    let pointed = pointed && !extreme;
    let placed = number == 1
        && !spread
        && !done
        && ["in", "to", "from", "on", "onto", "at", "of", "than"]
            .iter()
            .any(|word| before.is_word(word))
        && !word(at + 1, &["or"])
        && !before.is_word("than");
    // `the least number for one board`
    let each = number == 1
        && is_any(tokens, at - 1, &["for", "per"])
        && at > 1
        && is_any(tokens, at - 2, &["number"]);
    let only = each || number == 1 && (word(at + 2, &["only"]) || word(at + 3, &["only"]));
    (pointed && !(number > 1 && lies_nearest(tokens, at)))
        || (placed || only) && !tells_faces_apart(tokens, at)
}

/// Whether one face is told from both in the same sentence: `on one face for floors and on both faces for walls` says how many.
fn tells_faces_apart(tokens: &[Token<'_>], at: usize) -> bool {
    const ONE: &[&str] = &["face", "side", "edge"];
    const BOTH: &[&str] = &["faces", "sides", "edges"];
    is_any(tokens, at + 1, ONE)
        && (0..tokens.len()).any(|at| is_any(tokens, at, &["both"]) && is_any(tokens, at + 1, BOTH))
}

/// `both faces` where one face was told from them: two.
pub(super) fn is_both_faces(tokens: &[Token<'_>], at: usize) -> bool {
    is_any(tokens, at, &["both"])
        && is_any(tokens, at + 1, &["faces", "sides", "edges"])
        && (0..tokens.len()).any(|at| is_any(tokens, at, &["one"]) && tells_faces_apart(tokens, at))
}

/// Whether things are told apart from others like them by lying nearest: `the two courses nearest the joint` says how many.
fn lies_nearest(tokens: &[Token<'_>], at: usize) -> bool {
    const NEAREST: &[&str] = &["nearest", "closest", "adjoining", "flanking"];
    const REACH: usize = 4;
    (at + 2..at + REACH)
        .take_while(|at| tokens.get(*at).is_some_and(|token| token.word().is_some()))
        .any(|at| {
            is_any(tokens, at, NEAREST)
                || is_any(tokens, at, &["next", "adjacent"]) && is_any(tokens, at + 1, &["to"])
        })
}

/// Whether `doubled` says that there are two of a part of the frame: `the stud nearest the joint is doubled`. A measure that is doubled, such as
/// a spacing, is no two of anything.
pub(super) fn doubles_a_part(tokens: &[Token<'_>], at: usize) -> bool {
    const PARTS: &[&str] = &[
        "stud", "studs", "joist", "joists", "runner", "runners", "track", "tracks", "channel",
        "channels", "jamb", "jambs", "plate", "plates", "header", "headers", "angle", "angles",
    ];
    const MEASURES: &[&str] = &[
        "spacing",
        "width",
        "depth",
        "thickness",
        "height",
        "length",
        "distance",
        "gap",
        "load",
        "movement",
        "rate",
        "number",
        "lap",
        "overlap",
        "size",
        "gauge",
        "not",
        "never",
        "may",
        "where",
        "when",
        "if",
        "unless",
        "be",
    ];
    const REACH: usize = 8;
    let before: Vec<&Token<'_>> = tokens
        .get(at.saturating_sub(REACH)..at)
        .unwrap_or_default()
        .iter()
        .rev()
        .take_while(|token| !matches!(token.kind, TokenKind::Sign('.' | ';' | ':' | '-' | '–')))
        .collect();
    let says = |words: &[&str]| {
        before
            .iter()
            .any(|token| words.iter().any(|word| token.is_word(word)))
    };
    says(PARTS) && !says(MEASURES)
}

/// Whether a token makes a label of the number after it, as the hyphen in `A-1` does.
pub(super) fn is_label(token: &Token<'_>, number: &Token<'_>) -> bool {
    match &token.kind {
        TokenKind::Sign('.') => token.span.end() == number.span.start(),
        TokenKind::Sign(sign) => matches!(sign, '-' | '/' | '[' | '"' | '“'),
        TokenKind::Word(word) => {
            word.starts_with(char::is_uppercase)
                && word.chars().skip(1).any(char::is_lowercase)
                && !is_opening_word(word)
        }
        _ => false,
    }
}

/// Capitalised words that only open a sentence.
fn is_opening_word(word: &str) -> bool {
    matches!(
        word.to_lowercase().as_str(),
        "min"
            | "minimum"
            | "max"
            | "maximum"
            | "use"
            | "provide"
            | "with"
            | "install"
            | "apply"
            | "nom"
            | "nominal"
            | "the"
            | "each"
            | "at"
    )
}
