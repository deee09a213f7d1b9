//! Where the words before hours begin that make a case of them: "for ratings over", "in the case of", "up to".

use measure::Dimension;

use super::lasting::speaks_of_time;
use super::{INTRODUCE, is_rating_time};
use crate::rules::Sentence;

/// Whether "up to" stands before hours where the sentence names others, too: "4 in. *up to 2 hours* and 6 in. at 3 hours or more", "5 in. thick *for up to 3 hr*, 6 in.
/// for 4 hr". Alone it may say which rating there is at most.
pub(super) fn up_to(sentence: &Sentence<'_>, start: usize, group: &[usize]) -> Option<usize> {
    const SIZED: &[&str] = &[
        "thick", "deep", "wide", "min", "minimum", "max", "maximum", "concrete", "board", "each",
        "side",
    ];
    let led = start > 2 && sentence.is_word(start - 1, "to") && sentence.is_word(start - 2, "up");
    let up = start.checked_sub(2)?;
    let first = up - usize::from(up > 0 && sentence.is_any(up - 1, &["for", "at"]));
    let measured = (0..sentence.amounts.len()).any(|index| {
        sentence.amount(index).is_some_and(|amount| {
            let behind = sentence.skip_parentheses(amount.last);
            // How long something lasts is no size.
            let timed = matches!(
                amount.unit.dimension(),
                Dimension::Time | Dimension::CalendarTime | Dimension::Temperature
            );
            !timed && behind <= first && (behind..first).all(|at| sentence.is_any(at, SIZED))
        })
    });
    let other = (0..sentence.amounts.len()).any(|index| {
        let amount = sentence.amount(index);
        !group.contains(&index) && amount.is_some_and(is_rating_time)
    });
    (led && measured && other && !speaks_of_time(sentence)).then_some(first)
}

/// Where "for ratings over" begins, that hours right behind it are compared by.
pub(super) fn of_compared_ratings(sentence: &Sentence<'_>, hours: usize) -> Option<usize> {
    const COMPARING: &[&str] = &[
        "over",
        "above",
        "under",
        "below",
        "exceeding",
        "more",
        "less",
        "greater",
        "higher",
        "lower",
        "than",
        "up",
        "to",
        "not",
        "no",
    ];
    let compared = (0..hours)
        .rev()
        .take_while(|at| sentence.is_any(*at, COMPARING))
        .last()?;
    let rating = compared
        .checked_sub(1)
        .filter(|at| sentence.is_any(*at, &["rating", "ratings"]))?;
    let at = (rating.saturating_sub(3)..rating)
        .rev()
        .take_while(|at| {
            sentence.is_any(*at, &["a", "the", "fire"]) || sentence.is_any(*at, INTRODUCE)
        })
        .last()?;
    sentence.is_any(at, INTRODUCE).then_some(at)
}

/// Where "in the case of" begins, whose last word is this one.
pub(super) fn in_the_case(sentence: &Sentence<'_>, of: usize) -> Option<usize> {
    let case = of.checked_sub(1)?;
    let lead = case.checked_sub(1 + usize::from(case > 0 && sentence.is_word(case - 1, "the")))?;
    let reads = sentence.is_word(of, "of")
        && sentence.is_word(case, "case")
        && sentence.is_word(lead, "in");
    reads.then_some(lead)
}

/// Where "for a rating of" begins, whose last word is "of".
pub(super) fn of_a_rating(sentence: &Sentence<'_>, of: usize) -> Option<usize> {
    let rating = of.checked_sub(1)?;
    let mut at = rating.checked_sub(1)?;
    at -= usize::from(at > 0 && sentence.is_any(at, &["a", "the", "fire"]));
    let reads = sentence.is_word(of, "of")
        && sentence.is_any(rating, &["rating", "ratings"])
        && sentence.is_any(at, &["for", "at", "under"]);
    reads.then_some(at)
}
