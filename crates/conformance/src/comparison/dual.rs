//! A bound that the listing states in two units: `2-1/2 in. (64 mm)`.
//!
//! | the pair | what it asks |
//! |---|---|
//! | consistent | one requirement stated twice: the statement in the value's own system counts |
//! | loosely rounded | two limits that differ a little: where they give different verdicts, the clause is open. One nominal value, though: a value equal to the statement in its own system is that value |
//! | in conflict | two different limits: the stricter governs until a person decides; of two nominal values neither |
//!
//! A pair of two dimensions, such as a gauge and its thickness, is compared in the one that the value has.

use listing::Bound;
use measure::{Agreement, Quantity};

use super::limits::Limits;
use super::{Compared, Outcome};

/// A value against a bound in one unit or two; `compare` does so for one statement.
pub(crate) fn against(
    value: Quantity,
    bound: &Bound,
    is_equality: bool,
    compare: impl Fn(&Limits) -> Compared,
) -> Compared {
    let first = Limits::of(bound);
    let Some(second) = bound.second.as_ref() else {
        return compare(&first);
    };
    let in_second = Limits::of_second(bound, second);
    let fits = |unit: measure::Unit| unit.dimension() == value.dimension();
    match (fits(bound.unit), fits(second.unit)) {
        (true, false) => return compare(&first),
        (false, true) => return compare(&in_second),
        (false, false) => return Compared::unreadable(value),
        (true, true) => {}
    }
    let system = value.unit.system();
    let second_is_own = second.unit.system() == system && bound.unit.system() != system;
    let (own, other) = if second_is_own {
        (&in_second, &first)
    } else {
        (&first, &in_second)
    };
    match second.agreement {
        Agreement::Consistent => compare(own),
        Agreement::LooselyRounded => {
            let (ours, theirs) = (compare(own), compare(other));
            let same = ours.outcome == theirs.outcome;
            let named = is_equality && ours.outcome == Outcome::Holds;
            if same || named {
                ours
            } else {
                Compared {
                    outcome: Outcome::BetweenStatements,
                    ..ours
                }
            }
        }
        Agreement::InConflict => {
            let (ours, theirs) = (compare(own), compare(other));
            let one_holds = (ours.outcome == Outcome::Holds) != (theirs.outcome == Outcome::Holds);
            if is_equality && one_holds {
                return Compared {
                    outcome: Outcome::BetweenStatements,
                    ..ours
                };
            }
            ours.worse(theirs)
        }
    }
}
