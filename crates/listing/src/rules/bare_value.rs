use measure::{Dimension, Unit};

use super::comparison_before::is_held_under;
use super::shared_qualifier::is_the_same;
use super::word_after::labels_a_case;
use super::{Finding, Sentence, bounded_alone};
use crate::model::Relation;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    let before = amount.first.checked_sub(1);
    // "lapped over 2 in." is where it lies; a temperature is none to lie over.
    let lies = matches!(
        amount.unit.dimension(),
        Dimension::Length | Dimension::Count
    ) && amount.first > 1
        && sentence.is_any(
            amount.first - 2,
            &[
                "lapped", "lap", "applied", "placed", "laid", "splice", "spliced",
            ],
        );
    // A comparing word that no rule dared to read leaves the number unread.
    let unread = before.is_some_and(|at| {
        sentence.is_any(
            at,
            &[
                "over", "under", "above", "below", "than", "exceed", "beyond", "within",
            ],
        ) && !is_held_under(sentence, at)
    }) && !lies;
    let unread = unread
        || before.is_some_and(|at| is_led_to(sentence, at))
        || goes_up_to(sentence, index)
        || is_changed_from(sentence, amount.first);
    // `the same 1 in.`: as it is limited where it is first said.
    let unread = unread || is_the_same(sentence, amount.first);
    // `1/2 in. min` and on the next line `3 hr: three layers`
    let unread = unread
        || labels_a_case(sentence, index)
            && before.is_some_and(|at| sentence.is_any(at, &["min", "minimum", "max", "maximum"]));
    let unread = unread
        || is_before_a_limit(sentence, amount.last)
        || is_the_size_of_counted(sentence, index);
    let relation = if amount.unit == Unit::Count {
        Relation::Exactly
    } else {
        Relation::Nominal
    };
    (!unread).then(|| Finding::sure(relation, amount.first))
}

/// Whether a limit stands right behind a number that no rule gave it to, and right before none: `3/4 In. Max Class II Movement - 20 Percent`.
fn is_before_a_limit(sentence: &Sentence<'_>, last: usize) -> bool {
    let behind = sentence.skip_parentheses(last);
    sentence.is_any(behind, &["min", "minimum", "max", "maximum"])
        && sentence.has_word(behind + 1)
        && sentence.amount_at(behind + 1).is_none()
}

/// Whether a number alone in brackets stands behind things that are counted with a limit: `at least two cores (400 mm)`. Whether it is of one of them or
/// of all, and under the same limit, only the sense tells.
fn is_the_size_of_counted(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some((own, count)) = sentence.amount(index).zip(
        index
            .checked_sub(1)
            .and_then(|before| sentence.amount(before)),
    ) else {
        return false;
    };
    let bracketed = own.first > 0
        && sentence.is_sign(own.first - 1, '(')
        && sentence.closing(own.first - 1) == Some(own.last);
    let counted = count.unit == Unit::Count
        && count.last + 2 == own.first
        && own.unit.dimension() == Dimension::Length;
    let limited = || {
        bounded_alone(sentence, index - 1).is_some_and(|(finding, _)| {
            matches!(finding.relation, Relation::AtLeast | Relation::AtMost)
        })
    };
    bracketed && counted && limited()
}

/// Whether a number is as far as something goes, by words between: `up to a joint width of 20 mm`.
fn goes_up_to(sentence: &Sentence<'_>, index: usize) -> bool {
    const REACH: usize = 6;
    let first = sentence.amount(index).map_or(0, |amount| amount.first);
    let lowest = sentence.floor(index).max(first.saturating_sub(REACH));
    let of = first > 0 && sentence.is_word(first - 1, "of");
    let ends = |at: &usize| sentence.is_stop(*at);
    of && (lowest..first)
        .rev()
        .take_while(|at| !ends(at))
        .any(|at| sentence.is_word(at, "up") && sentence.is_word(at + 1, "to"))
}

/// Whether two numbers are what something is changed from and to, and no range: `increased from 4 in. to 6 in.`
pub(super) fn is_changed_from(sentence: &Sentence<'_>, first: usize) -> bool {
    const CHANGED: &[&str] = &[
        "increased",
        "raised",
        "reduced",
        "decreased",
        "lowered",
        "changed",
        "thickened",
        "widened",
        "deepened",
        "extended",
    ];
    const REACH: usize = 3;
    let from = first
        .checked_sub(1)
        .filter(|at| sentence.is_word(*at, "from"));
    from.is_some_and(|from| sentence.has_any(from.saturating_sub(REACH), from, CHANGED))
}

/// Whether words that limit in a way no rule reads lead to a number: `never short of 4 in.`, `up to but not including 4 in.`, `capped at 4 in.`, `greater
/// than, or less than, 4 in.`
fn is_led_to(sentence: &Sentence<'_>, at: usize) -> bool {
    let lead = |words: &[&str]| at > 0 && sentence.is_any(at - 1, words);
    let of = sentence.is_word(at, "of")
        && lead(&[
            "short", "shy", "upwards", "upward", "cap", "ceiling", "floor", "limit", "excess",
        ]);
    let capped = sentence.is_word(at, "at") && lead(&["capped", "limited"]);
    let beyond = sentence.is_word(at, "past")
        && !lead(&[
            "run", "runs", "extend", "extends", "extended", "carried", "lapped",
        ]);
    let bounded = sentence.is_any(at, &["including", "excluding", "until"])
        && lead(&["not", "but", "and", "depth", "width", "thickness"]);
    let compared = sentence.is_sign(at, ',') && lead(&["than"]);
    of || capped || beyond || bounded || compared
}
