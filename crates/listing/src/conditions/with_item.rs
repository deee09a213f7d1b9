//! Things of another item that a sentence opens with, "With the caulking of Item 6 the width is limited to 1 in.", or for which it asks for something: "3 in. is required with the
//! granite panel of Item 2.3c".
//!
//! Where the item is one of several only some joints have it, which a person says. "Fastened with the screws of Item 4" says by what, and is no case.

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

pub(super) fn with_item(sentence: &Sentence<'_>) -> Vec<Found> {
    (0..sentence.tokens.len())
        .filter_map(|at| opening(sentence, at).or_else(|| asked_for_with(sentence, at)))
        .collect()
}

/// "With the caulking of Item 6 the width is ..." at the beginning of a sentence or of its part.
fn opening(sentence: &Sentence<'_>, with: usize) -> Option<Found> {
    const REACH: usize = 9;
    let begins = with == 0 || sentence.is_sign(with - 1, ';');
    let last = thing_of_item(sentence, with).filter(|_| begins)?;
    let subject = last + usize::from(sentence.is_sign(last, ','));
    // "With the clips of Item 4 fasten the batts" is an order.
    let named = sentence.is_any(subject, &["the", "a", "an"])
        || last < subject && sentence.has_word(subject);
    let says = (subject..subject + REACH)
        .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
        .any(|at| sentence.is_any(at, &["is", "are", "shall", "must", "may"]));
    (named && says).then(|| found(sentence, with, last))
}

/// "... is required with the granite panel of Item 2.3c" at the end of what is said.
fn asked_for_with(sentence: &Sentence<'_>, with: usize) -> Option<Found> {
    let asked = with > 1
        && sentence.is_any(with - 1, &["required", "needed", "necessary"])
        && sentence.is_any(with - 2, &["is", "are", "only", "be"])
        && !sentence.has_any(0, with, &["not", "no", "never"]);
    let last = thing_of_item(sentence, with).filter(|_| asked)?;
    let ends =
        sentence.token(last).is_none() || sentence.is_stop(last) || sentence.is_sign(last, '.');
    ends.then(|| found(sentence, with, last))
}

/// Where "with the granite panel of Item 2.3c" ends that begins at a token.
fn thing_of_item(sentence: &Sentence<'_>, with: usize) -> Option<usize> {
    const MOST_WORDS: usize = 4;
    let lead = sentence.is_any(with, &["with", "for"]) && sentence.is_any(with + 1, &["the", "a"]);
    let named = |at: usize| sentence.has_word(at) && sentence.amount_at(at).is_none();
    let item = (with + 3..=with + 4 + MOST_WORDS)
        .find(|at| sentence.is_any(*at, &["item", "section", "part"]))?;
    let of = sentence.is_any(item - 1, &["of", "in"]);
    let bracketed = sentence.is_sign(item - 1, '(');
    let plain =
        (with + 2..item - 1).all(|at| named(at) && !sentence.is_any(at, &["of", "and", "or"]));
    let label = sentence.token(item + 1).is_some_and(|token| {
        token
            .span
            .of(sentence.text)
            .starts_with(|c: char| c.is_ascii_digit())
    });
    // A part's letter may stand apart from its number: `2.3c`.
    let letter = sentence.token(item + 2).is_some_and(|token| {
        let apart = sentence
            .token(item + 1)
            .is_some_and(|number| number.span.end() < token.span.start());
        !apart && token.word().is_some_and(|word| word.len() == 1)
    });
    let last = item + 2 + usize::from(letter);
    let last = last + usize::from(bracketed && sentence.is_sign(last, ')'));
    (lead && (of || bracketed) && plain && label && item > with + 3).then_some(last)
}

fn found(sentence: &Sentence<'_>, first: usize, last: usize) -> Found {
    Found {
        first,
        last,
        expr: Expr::Words(sentence.words(first, last).to_owned()),
        triggers: Vec::new(),
        parts: Vec::new(),
    }
}
