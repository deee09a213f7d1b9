//! The joints that a length sets apart, as a condition, and the words that belong to the length.

use super::width::{REQUIRES, is_statement_end};
use super::{Found, test};
use crate::model::Expr;
use crate::rules::Sentence;

/// Steps over "wide", "in width", "deep" after a number.
pub(super) fn skip_attribute(sentence: &Sentence<'_>, at: usize) -> usize {
    if sentence.is_any(
        at,
        &[
            "wide", "deep", "long", "thick", "high", "diameter", "dia", "old",
        ],
    ) {
        at + 1
    } else if sentence.is_word(at, "in")
        && sentence.is_any(at + 1, &["width", "depth", "length", "thickness", "height"])
    {
        at + 2
    } else {
        at
    }
}

pub(super) fn found(
    sentence: &Sentence<'_>,
    index: usize,
    from: usize,
    property: Option<&str>,
) -> Found {
    let last = sentence.amount(index).map_or(from, |amount| {
        let last = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
        // `joints of more than 50 mm width`
        let of_width = sentence.is_word(last, "width")
            && sentence.has_any(from, amount.first, &["of"])
            && property == Some("joint.width");
        last + usize::from(of_width)
    });
    let closed = sentence.is_any(last, &["or", "and"])
        && sentence.is_any(last + 1, &["above", "over", "below", "under"])
        && (is_statement_end(sentence, last + 2) || sentence.is_any(last + 2, REQUIRES));
    let end = if closed
        || sentence.is_word(last, "or")
            && sentence.is_any(last + 1, &["less", "more", "greater", "wider", "narrower"])
    {
        last + 2
    } else {
        last
    };
    let words = Expr::Words(sentence.words(from, end).to_owned());
    let expr = property
        .and_then(|property| test(sentence, index, property))
        .unwrap_or(words);
    Found {
        first: from,
        last: end,
        expr,
        triggers: vec![index],
        parts: Vec::new(),
    }
}
