//! A limit that may as well open the label behind it: `4 in. Max Recess: 1/2 in.`

use super::super::Sentence;
use super::super::word_before::qualifier;
use super::whose::{closes_itself, goes_on_measuring};

/// Whether a limit may as well open the label behind it, so that nobody can say whose it is: `4 in. Max Recess: 1/2 in.`, `2 in. Max: 4 in.`, `3 in. min. lap
/// 1 in.` A number behind that has a limit of its own leaves this one to the number before.
pub(super) fn may_open_a_label(sentence: &Sentence<'_>, at: usize) -> bool {
    const MOST_WORDS: usize = 4;
    let named = (at + 1..=at + MOST_WORDS)
        .take_while(|at| names_a_label(sentence, *at))
        .count();
    let end = sentence.skip_parentheses(at + 1 + named);
    let titled = named > 0 && (at..=at + named).all(|at| is_capitalized(sentence, at));
    let comma = titled && sentence.is_sign(end, ',');
    let parted = comma
        || [':', '=', '-', '–']
            .iter()
            .any(|sign| sentence.is_sign(end, *sign));
    let next = sentence.amount_at(end + usize::from(parted));
    // In capitals, and before one, the stop ends what it closes.
    let goes_on = sentence.ends_in_stop(at)
        && (titled
            || sentence
                .words(at + 1, at + 2)
                .starts_with(char::is_lowercase));
    let opens = parted || named > 0 && (end > at + 1 + named || goes_on);
    opens && next.is_some_and(|next| sentence.is_bound(next) && !is_closed(sentence, next))
}

/// Whether a number has a limit just after it that can't open the label behind.
fn is_closed(sentence: &Sentence<'_>, index: usize) -> bool {
    closes_itself(sentence, index)
        && sentence.amount(index).is_some_and(|amount| {
            !may_open_a_label(sentence, sentence.skip_parentheses(amount.last))
        })
}

/// Whether a word is printed as in a title: `Max Recess`.
fn is_capitalized(sentence: &Sentence<'_>, at: usize) -> bool {
    let printed = sentence.words(at, at + 1);
    printed.starts_with(char::is_uppercase) && printed.contains(char::is_lowercase)
}

/// Whether a word may stand in a label: none of those that go on with a measure or lead elsewhere.
fn names_a_label(sentence: &Sentence<'_>, at: usize) -> bool {
    const ELSEWHERE: &[&str] = &[
        "at", "to", "from", "with", "and", "or", "by", "for", "in", "into", "onto", "over",
        "under", "between", "per", "every", "each", "within", "where", "when", "if", "is", "are",
        "shall", "must", "may", "above", "below", "not", "no", "than", "o.c", "oc",
    ];
    let word = sentence.has_word(at);
    word && sentence.amount_at(at).is_none()
        && !sentence.is_any(at, ELSEWHERE)
        && !goes_on_measuring(sentence, at)
        && qualifier(sentence.word(at)).is_none()
}
