//! A sentence that is nothing but the cases in which the thing of its item is asked for: "Only in joints over 2 in. of Option B.", "At joints wider than 2 in. and at
//! every 3 hr joint."
//!
//! It has no verb of its own, measures nothing, and tells the wide joints or high walls from the rest: an upper limit says where a thing may be used, and as a condition
//! it would excuse whoever uses it in a wider joint. Which joints are meant, a person says.

use super::conditions;
use super::heading::sets_apart;
use super::which_joints::tells_which_joints;
use crate::model::{Condition, Expr};
use crate::rules::{NEGATIONS, Sentence};

/// Whether a sentence only says in which joints something is.
pub(crate) fn only_in_some(sentence: &Sentence<'_>) -> bool {
    const LONGEST: usize = 22;
    const SPOILING: &[&str] = &[
        "shall", "must", "may", "can", "should", "will", "up", "less", "under", "below",
        "narrower", "smaller", "unless", "except", "optional", "lieu", "instead", "use", "provide",
        "add", "install", "fit", "min", "minimum", "max", "maximum", "least", "most", "suitable",
        "tested", "with", "the",
    ];
    let only = usize::from(sentence.is_word(0, "only"));
    let opens = sentence.is_any(only, &["in", "at", "for"])
        && (only..only + 3).any(|at| sentence.is_any(at, &["joints", "gaps", "walls", "openings"]));
    let found = conditions(sentence).found;
    let told = found.first().is_some_and(|first| {
        first.first <= only && sets_apart(&first.expr) && !first.triggers.is_empty()
    });
    let end = sentence.tokens.len();
    let plain = !sentence.has_any(only, end, SPOILING) && !sentence.has_any(only, end, NEGATIONS);
    let stops = (0..end).any(|at| sentence.is_stop(at) || sentence.is_sign(at, '-'));
    opens
        && told
        && plain
        && !stops
        && end <= LONGEST
        && (only == 1 || found.len() > 1 || joined(sentence))
}

/// Whether a second case is joined: "... and at every 3 hr joint". A single one without "only" is a heading, and read as one.
fn joined(sentence: &Sentence<'_>) -> bool {
    (0..sentence.tokens.len()).any(|at| {
        sentence.is_any(at, &["and", "or"]) && sentence.is_any(at + 1, &["in", "at", "for"])
    })
}

/// The condition that a bracket behind a name and nothing else sets, though it may name a product, too: "Brackets (Type B; joints over 50 mm only)", "Clips (not required
/// under 75 mm joint width)".
pub(crate) fn in_bracket(sentence: &Sentence<'_>) -> Option<Condition> {
    const LONGEST: usize = 6;
    const UPPER: &[&str] = &["under", "below", "less", "narrower", "up"];
    let open = (0..=LONGEST).find(|at| sentence.is_sign(*at, '('))?;
    let close = sentence.closing(open)?;
    let named = (0..open).all(|at| {
        let word = sentence.has_word(at);
        word && sentence.amount_at(at).is_none()
    });
    // "Retaining wire (...): 16 gauge steel"
    let labels = sentence.is_sign(close + 1, ':');
    let alone = labels
        || (close + 1..sentence.tokens.len()).all(|at| {
            ['.', '-', '–', '—', '*']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
        });
    let semicolon = (open..close).rev().find(|at| sentence.is_sign(*at, ';'));
    if let Some(said) = semicolon.and_then(|at| not_needed_otherwise(sentence, open, at, close)) {
        return (named && alone).then_some(said);
    }
    let from = semicolon.unwrap_or(open) + 1;
    let words = sentence.words(from, close);
    let let_off = sentence.is_word(from, "not")
        && sentence.is_any(from + 1, &["required", "needed", "necessary"])
        && sentence.has_any(from + 2, close, UPPER)
        && !sentence.has_any(from + 2, close, NEGATIONS)
        && (from + 2..close).any(|at| sentence.amount_at(at).is_some());
    let expr = if let_off {
        // "Not required under 75 mm": required wherever that isn't so.
        Expr::Not(Box::new(Expr::Words(
            sentence.words(from + 2, close).to_owned(),
        )))
    } else if tells_which_joints(words) {
        Expr::Words(words.to_owned())
    } else {
        return None;
    };
    (named && alone).then(|| Condition {
        also: Vec::new(),
        words: words.to_owned(),
        span: sentence.source_of(from, close),
        expr,
    })
}

/// What a bracket says before "not otherwise needed": "Retaining wire (for overhead or battered joints; not otherwise needed)".
fn not_needed_otherwise(
    sentence: &Sentence<'_>,
    open: usize,
    semicolon: usize,
    close: usize,
) -> Option<Condition> {
    const NEEDED: &[&str] = &["needed", "required", "necessary"];
    let not = semicolon + 1;
    let behind = sentence.is_word(not + 1, "otherwise") && sentence.is_any(not + 2, NEEDED);
    let before =
        sentence.is_any(not + 1, NEEDED) && sentence.is_any(not + 2, &["otherwise", "elsewhere"]);
    let says = sentence.is_word(not, "not") && (behind || before) && not + 3 == close;
    let told = sentence.is_any(
        open + 1,
        &["for", "in", "at", "where", "when", "if", "over", "under"],
    );
    let words = sentence.words(open + 1, semicolon);
    let plain = !sentence.has_any(open, semicolon, NEGATIONS);
    (says && told && plain).then(|| Condition {
        also: Vec::new(),
        words: words.to_owned(),
        span: sentence.source_of(open + 1, semicolon),
        expr: Expr::Words(words.to_owned()),
    })
}
