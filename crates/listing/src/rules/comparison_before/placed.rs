//! Above and below as places: `no higher than 305 mm beneath the floor`.

use super::super::Sentence;
use super::super::counted_back::is_counted_back;
use super::negation::negation;
use crate::model::Relation;

/// `1-1/2 in. below the track, but no lower than 4 in.`: lower by a distance, which is more of it.
pub(super) fn is_placed(sentence: &Sentence<'_>, index: usize, at: usize, floor: usize) -> bool {
    const REACH: usize = 12;
    // `no higher than 300 mm beneath it` says itself from where.
    let says_where = sentence.amount(index).is_some_and(|amount| {
        sentence.is_any(
            sentence.skip_parentheses(amount.last),
            &["below", "beneath", "above"],
        )
    });
    if says_where {
        return false;
    }
    let start = floor.saturating_sub(REACH);
    let placed = |place: &[&str]| {
        sentence.amounts.iter().any(|amount| {
            (start..at).contains(&amount.first)
                && sentence.is_any(sentence.skip_parentheses(amount.last), place)
        })
    };
    let past = |word: &str, place: &[&str]| {
        at > 0 && sentence.is_word(at, "than") && sentence.is_word(at - 1, word) && placed(place)
    };
    past("lower", &["below", "under", "beneath"]) || past("higher", &["above", "over"])
}

/// `no higher than 305 mm beneath the floor`: what is less high there lies deeper, and is more of that distance. So is what is later than a time before
/// something less of that time.
pub(super) fn above_or_below(
    sentence: &Sentence<'_>,
    index: usize,
    at: usize,
    floor: usize,
) -> Option<(Relation, usize)> {
    let amount = sentence.amount(index)?;
    let below = sentence.is_any(
        sentence.skip_parentheses(amount.last),
        &["below", "beneath"],
    );
    let comparative = at
        .checked_sub(1)
        .filter(|_| sentence.is_word(at, "than") && at > floor)?;
    match sentence.word(comparative) {
        "higher" if below => Some((Relation::LessThan, comparative)),
        "lower" if below => Some((Relation::MoreThan, comparative)),
        "later" if is_counted_back(sentence, amount) => Some((Relation::LessThan, comparative)),
        "earlier" | "sooner" if is_counted_back(sentence, amount) => {
            Some((Relation::MoreThan, comparative))
        }
        _ => None,
    }
}

/// `go beyond 60 percent and you will tear it`: what would happen, which limits the other way.
pub(super) fn is_gone_past(sentence: &Sentence<'_>, at: usize, floor: usize) -> bool {
    at > 0
        && negation(sentence, at, floor).is_none()
        && sentence.forbidding(at).is_none()
        && sentence.is_any(at, &["beyond", "over", "above", "under", "below", "past"])
        && sentence.is_any(
            at - 1,
            &[
                "go", "goes", "going", "get", "gets", "stray", "drop", "drops",
            ],
        )
}
