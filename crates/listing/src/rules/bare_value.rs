use measure::Unit;

use super::{Finding, Sentence};
use crate::model::Relation;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    let before = amount.first.checked_sub(1);
    // A comparing word that no rule dared to read leaves the number unread.
    let unread = before.is_some_and(|at| {
        sentence.is_any(at, &["over", "under", "above", "below", "than", "exceed", "beyond", "within"])
            && !(at > 0 && sentence.is_any(at - 1, &["lapped", "lap", "applied", "placed", "laid", "splice", "spliced"]))
    });
    let unread = unread || before.is_some_and(|at| is_led_to(sentence, at));
    let relation = if amount.unit == Unit::Count { Relation::Exactly } else { Relation::Nominal };
    (!unread).then(|| Finding::sure(relation, amount.first))
}

/// Whether words that limit in a way no rule reads lead to a number: `never short of 4 in.`, `up to but not including 4 in.`, `capped at 4 in.`, `greater
/// than, or less than, 4 in.`
fn is_led_to(sentence: &Sentence<'_>, at: usize) -> bool {
    let lead = |words: &[&str]| at > 0 && sentence.is_any(at - 1, words);
    let of = sentence.is_word(at, "of") && lead(&["short", "shy", "upwards", "upward", "cap", "ceiling", "floor", "limit", "excess"]);
    let capped = sentence.is_word(at, "at") && lead(&["capped", "limited"]);
    let beyond = sentence.is_word(at, "past") && !lead(&["run", "runs", "extend", "extends", "extended", "carried", "lapped"]);
    let bounded = sentence.is_any(at, &["including", "excluding", "until"]) && lead(&["not", "but", "and", "depth", "width", "thickness"]);
    let compared = sentence.is_sign(at, ',') && lead(&["than"]);
    of || capped || beyond || bounded || compared
}
