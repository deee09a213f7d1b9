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
    let relation = if amount.unit == Unit::Count { Relation::Exactly } else { Relation::Nominal };
    (!unread).then(|| Finding::sure(relation, amount.first))
}
