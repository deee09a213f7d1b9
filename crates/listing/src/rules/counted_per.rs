//! What a count is taken on: "at least one clip *per 24 in.*", "spaced at least *every 24 in.*", "no fewer than two *per 4-ft* section".
//!
//! More things or a shorter stretch are as good, so that the least of the count is no least of the stretch. "At least every 24 in." is 24 in. at most; else the
//! stretch is what it is.

use measure::Dimension;

use super::{Finding, Found, Sentence};
use crate::model::Relation;

/// A finding as it is of a number that a count is taken on.
pub(super) fn counted_per(
    sentence: &Sentence<'_>,
    index: usize,
    finding: Finding,
    rule: &'static str,
) -> Found {
    let amount = sentence.amount(index)?;
    let article =
        usize::from(amount.first > 0 && sentence.is_any(amount.first - 1, &["the", "a", "full"]));
    let per = amount.first.checked_sub(1 + article);
    let counted = per.filter(|at| sentence.is_any(*at, &["every", "per"]));
    let stretch =
        amount.unit.dimension() == Dimension::Length && finding.relation == Relation::AtLeast;
    // `splices every 3 m or more` are far apart on purpose.
    let or_more = sentence.is_word(sentence.skip_parentheses(amount.last), "or");
    // `jointed no closer than every 900 mm`: it is the stretch that is compared.
    let compared = per.is_some_and(|at| {
        at >= 2
            && sentence.is_word(at - 1, "than")
            && sentence.is_any(at - 2, &["closer", "nearer"])
    });
    let Some(per) = counted.filter(|_| stretch && !or_more && !compared) else {
        return Some((finding, rule));
    };
    let at_least =
        per >= 2 && sentence.is_word(per - 1, "least") && sentence.is_word(per - 2, "at");
    if at_least {
        return Some((Finding::sure(Relation::AtMost, per - 2), rule));
    }
    Some((Finding::sure(Relation::Nominal, amount.first), "bare value"))
}
