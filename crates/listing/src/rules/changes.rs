//! How far something may be changed, beside a change that nothing limits: "increase without limit; *decrease to 1980 kg/m³*".
//!
//! Where one way is said to be free, the other goes as far as its number. A decrease that stands alone may be what is to be done, and limits nothing.

use super::Sentence;
use crate::model::Relation;

const UP: &[&str] = &["increase", "increased", "increases"];
const DOWN: &[&str] = &[
    "decrease",
    "decreased",
    "decreases",
    "reduction",
    "reduce",
    "reduced",
];
/// How many words may stand between a change and what sets it free: `increase of thickness is permitted without limit`.
const REACH: usize = 6;

/// What the number behind "to" limits, where the change before it is the other one of two.
pub(super) fn ends_a_change(sentence: &Sentence<'_>, to: usize) -> Option<Relation> {
    let change = to.checked_sub(1)?;
    let (other, relation) = if sentence.is_any(change, DOWN) {
        (UP, Relation::AtLeast)
    } else if sentence.is_any(change, UP) {
        (DOWN, Relation::AtMost)
    } else {
        return None;
    };
    let freed = |at: usize| {
        sentence.is_any(at, other)
            && (at + 1..at + 1 + REACH)
                .take_while(|at| !sentence.is_stop(*at))
                .any(|at| is_free(sentence, at))
    };
    (0..change).any(freed).then_some(relation)
}

/// Whether words set something free: "without limit", "unlimited".
fn is_free(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["unlimited", "unrestricted"])
        || sentence.is_word(at, "without")
            && sentence.is_any(at + 1, &["limit", "limits", "limitation", "restriction"])
}
