//! Conditions that label what follows them, and where such a label's reach ends.

use super::Found;
use crate::layout::LIST_SIGNS;
use crate::model::Expr;
use crate::rules::Sentence;

/// Whether a condition with a number of its own labels what follows: `2 hr: 6 in.`. "Compression when fitted: 25 %" names a state.
pub(super) fn labels(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let signed = sentence.is_sign(condition.last, ':') || sentence.is_sign(condition.last, '=');
    signed && (!matches!(condition.expr, Expr::Words(_)) || !condition.triggers.is_empty())
}

/// Where what a label governs ends at the latest: where an abbreviation's stop may end a sentence, too: `2 HR = 2 LAYERS E.S. HOLD BOARD 1/2" DOWN`.
pub(super) fn end_of_label(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    const GO_ON: &[&str] = &[
        "max", "min", "nom", "oc", "o.c", "thk", "dia", "type", "ea", "each",
    ];
    (condition.last + 1..sentence.tokens.len()).find(|at| {
        let stopped = sentence.token(at - 1).is_some_and(|token| {
            token.word().is_some() && token.span.of(sentence.text).ends_with('.')
        });
        let word = sentence.token(*at).and_then(|token| token.word());
        let capital = word.is_some_and(|word| word.starts_with(char::is_uppercase));
        stopped && capital && !GO_ON.contains(&sentence.word(*at).trim_end_matches('.'))
    })
}

/// Whether a token is a semicolon, or the bullet before a line.
pub(super) fn begins_statement(sentence: &Sentence<'_>, before: usize) -> bool {
    sentence.is_sign(before, ';')
        || before == 0
            && LIST_SIGNS
                .iter()
                .chain(&['—'])
                .any(|bullet| sentence.is_sign(before, *bullet))
}

/// Whether a number that bounds something follows a condition before the next semicolon.
pub(super) fn goes_on(sentence: &Sentence<'_>, condition: &Found) -> bool {
    (condition.last..sentence.tokens.len())
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .any(|at| sentence.amount_at(at).is_some())
}
