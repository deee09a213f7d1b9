//! What an alternate is confined to: "sealant, in place of (a), for joints up to 60 mm". Whoever builds the alternate must keep to it, so it is
//! required and no condition: as one it would let the alternate's clauses fall away in a wider joint.

use super::Found;
use crate::model::{Expr, Relation, Test};
use crate::rules::Sentence;

/// In an item that may be built in place of another: takes what confines it out of the conditions, where the sentence says nothing else in numbers.
pub(crate) fn keep_required(sentence: &Sentence<'_>, found: &mut Vec<Found>) {
    let says_nothing_else = (0..sentence.amounts.len()).all(|index| {
        found
            .iter()
            .any(|condition| condition.triggers.contains(&index) && confines(&condition.expr))
    });
    if says_nothing_else && offers_alternate(sentence) {
        found.retain(|condition| !confines(&condition.expr));
    }
}

/// Takes what says in a sentence of its own where a thing is used out of the conditions: it excuses nobody.
pub(crate) fn keep_scope(sentence: &Sentence<'_>, found: &mut Vec<Found>) {
    if let [only] = found.as_slice()
        && is_of_widths(&only.expr)
        && only.triggers.len() == sentence.amounts.len()
        && only_says_where_used(sentence, only.first)
    {
        found.clear();
    }
}

/// `Use only in joints of 10 to 25 mm.`, `Used for gaps up to 75 mm.`: what is used so keeps its joints to that.
fn only_says_where_used(sentence: &Sentence<'_>, condition: usize) -> bool {
    let used = sentence.is_any(0, &["use", "used", "suitable", "intended"]);
    let only = usize::from(sentence.is_any(1, &["only", "solely"]));
    used && condition == 1 + only
}

/// Whether a condition tells joints by their width alone, and not by the least.
fn is_of_widths(expr: &Expr) -> bool {
    confines(expr)
        || matches!(expr, Expr::Test(Test { property, relation, .. })
            if property == "joint.width" && *relation == Relation::Between)
}

/// Whether a condition sets an upper limit to the joints that are meant.
pub(super) fn confines(expr: &Expr) -> bool {
    let Expr::Test(Test {
        property, relation, ..
    }) = expr
    else {
        return false;
    };
    matches!(property.as_str(), "joint.width" | "joint.rating")
        && matches!(relation, Relation::AtMost | Relation::LessThan)
}

/// Whether a sentence offers something in place of something else.
pub(super) fn offers_alternate(sentence: &Sentence<'_>) -> bool {
    (0..sentence.tokens.len()).any(|at| {
        sentence.is_any(at, &["alternate", "alternative"])
            || at == 0 && sentence.is_word(at, "alt")
            || sentence.is_word(at, "in")
                && sentence.is_any(at + 1, &["place", "lieu"])
                && sentence.is_word(at + 2, "of")
    })
}
