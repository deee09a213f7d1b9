use super::comparison_before::negation;
use super::turned_down::{is_turned_down, leaves_out};
use super::{Finding, Sentence};
use crate::model::Relation;

/// How many tokens before a distance "without" may deny it.
const WITHOUT: usize = 2;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    let at = first.checked_sub(1)?;
    // `within a quarter inch`, `inside the last 3 in.`, `within the preceding 14 days`
    let lead = if sentence.is_any(
        at,
        &[
            "last",
            "first",
            "preceding",
            "previous",
            "outer",
            "outermost",
        ],
    ) && at > 0
        && sentence.is_word(at - 1, "the")
    {
        2
    } else {
        usize::from(sentence.is_any(at, &["a", "an"]))
    };
    let at = at.checked_sub(lead)?;
    // `flat to 1/4 in. in 10 ft`: true to within it.
    let true_to = sentence.is_word(at, "to")
        && at > floor
        && sentence.is_any(
            at - 1,
            &[
                "flat", "level", "plumb", "true", "straight", "square", "even",
            ],
        );
    if !(sentence.is_any(at, &["within", "w/in", "inside"]) || true_to) {
        return None;
    }
    // `is, or within eight hours is expected to be, below 40 °F`
    let expected = at > 0
        && sentence.is_any(at - 1, &["or", "and"])
        && sentence.has_any(
            index_end(sentence, index)?,
            index_end(sentence, index)? + 3,
            &["expected", "forecast"],
        );
    if expected {
        return None;
    }
    // `Pipes within 200 mm: none`
    let amount = sentence.amount(index)?;
    let colon = (amount.last..amount.last + 6).find(|at| sentence.is_sign(*at, ':'));
    if colon.is_some_and(|colon| sentence.is_any(colon + 1, &["none", "nil", "no", "not"])) {
        return Some(Finding::sure(Relation::AtLeast, at));
    }
    // `poured without a break and used up within 20 min`
    let denied = negation(sentence, at, floor)
        .filter(|not| at - not <= WITHOUT || !sentence.is_word(*not, "without"));
    let relation = match denied.or_else(|| denied_of_a_list(sentence, at, floor)) {
        // `not counting those within 6 in. of the ends` says which are meant, and bounds nothing.
        Some(not)
            if sentence.is_any(not + 1, &["counting", "including", "counted", "included"]) =>
        {
            return None;
        }
        Some(_) => Relation::AtLeast,
        None => match left_out(sentence, at, floor) {
            // `may be omitted within 3 in.` frees, and bounds nothing.
            Some(omitted)
                if sentence.has_any(
                    omitted.saturating_sub(3),
                    omitted,
                    &["may", "can", "need"],
                ) =>
            {
                return None;
            }
            Some(_) => Relation::AtLeast,
            None if is_turned_down(sentence, index) => Relation::AtLeast,
            None => Relation::AtMost,
        },
    };
    Some(Finding::sure(relation, at))
}

/// The negation before a list of things: `shall not be crossed by a column, pipe or duct within 6 in.` Each part of the list is a thing or two, and
/// its last an "or" joins.
fn denied_of_a_list(sentence: &Sentence<'_>, within: usize, floor: usize) -> Option<usize> {
    const LONGEST: usize = 3;
    let plain = |from: usize, to: usize| {
        (from..to).all(|at| {
            sentence.has_word(at)
                && !sentence.is_any(
                    at,
                    &["and", "but", "shall", "must", "is", "are", "may", "be"],
                )
        })
    };
    let or = (floor.max(within.saturating_sub(LONGEST + 1))..within)
        .rev()
        .find(|at| sentence.is_any(*at, &["or", "nor"]))?;
    let mut end = or;
    let mut listed = false;
    while let Some(comma) = (floor.max(end.saturating_sub(LONGEST + 1))..end)
        .rev()
        .find(|at| sentence.is_sign(*at, ','))
    {
        if !plain(comma + 1, end) {
            return None;
        }
        listed = true;
        end = comma;
    }
    (listed && plain(or + 1, within))
        .then(|| negation(sentence, end, floor))
        .flatten()
}

/// The word that leaves out what is within the distance: `screws shall be omitted within 3 in.`, `avoid splices within 12 in.`
fn left_out(sentence: &Sentence<'_>, within: usize, floor: usize) -> Option<usize> {
    const REACH: usize = 10;
    let stretch = (floor.max(within.saturating_sub(REACH))..within)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && !sentence.is_any(*at, &["and", "but"]));
    stretch.into_iter().find(|at| leaves_out(sentence, *at))
}

fn index_end(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    sentence
        .amount(index)
        .map(|amount| sentence.skip_parentheses(amount.last))
}
