//! Clauses of one listing that can't all be met.

use std::collections::BTreeMap;

use measure::Unit;

use crate::model::{Bound, Clause, Relation, Requirement, Warning, WarningKind};

/// Pairs of clauses that bound one property of the vocabulary in one item, under the same option and condition, and can't both
/// hold, or name different values: the words must tell them apart in a way that no rule has seen.
pub(super) fn contradicting(clauses: &[Clause]) -> Vec<(usize, usize)> {
    let mut pairs = Vec::new();
    let mut first: BTreeMap<(&str, &str, Option<&str>, String), usize> = BTreeMap::new();
    for (index, clause) in clauses.iter().enumerate() {
        let Requirement::Bound(bound) = &clause.requirement else {
            continue;
        };
        let condition = clause
            .condition
            .as_ref()
            .map(|condition| condition.expr.to_string())
            .unwrap_or_default();
        let key = (
            clause.item.as_str(),
            clause.property.as_str(),
            clause.option.as_deref(),
            condition,
        );
        match first.get(&key) {
            Some(earlier) => {
                let other = clauses.get(*earlier).and_then(Clause::bound);
                let opposite = other.is_some_and(|other| {
                    let ends = (other.relation, bound.relation);
                    let open_range = matches!(
                        ends,
                        (Relation::AtLeast, Relation::AtMost)
                            | (Relation::AtMost, Relation::AtLeast)
                    );
                    // "half the joint width but not less than 10 mm"
                    let limited = limits_share(other, bound);
                    !open_range
                        && !limited
                        && (other.lo, other.hi, other.unit) != (bound.lo, bound.hi, bound.unit)
                });
                if opposite {
                    pairs.push((*earlier, index));
                }
            }
            None => {
                first.insert(key, index);
            }
        }
    }
    pairs
}

/// Whether a length only limits a share of the joint's width.
fn limits_share(share: &Bound, limit: &Bound) -> bool {
    share.unit == Unit::TimesJointWidth
        && limit.unit != Unit::TimesJointWidth
        && matches!(
            limit.relation,
            Relation::AtLeast | Relation::AtMost | Relation::Between
        )
}

pub(super) fn contradictions(clauses: &[Clause], pairs: &[(usize, usize)]) -> Vec<Warning> {
    pairs
        .iter()
        .filter_map(|(earlier, later)| {
            let (earlier, later) = (clauses.get(*earlier)?, clauses.get(*later)?);
            earlier.is_in_vocabulary().then(|| Warning {
                kind: WarningKind::Contradiction,
                span: later.span,
                words: later.words.clone(),
                message: format!(
                    "item {} bounds {} twice ({} and {}); what tells the two apart must be confirmed",
                    later.item, later.property, earlier.id, later.id
                ),
            })
        })
        .collect()
}
