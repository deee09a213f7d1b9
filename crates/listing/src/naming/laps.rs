//! What a lap is onto, where the words stand before its number.

use super::cues::is_bounding;
use crate::rules::Sentence;

/// The beginnings of words that speak of a lap.
const LAPS: &[&str] = &["lap", "overlap", "exten", "carried", "onto"];

/// Whether a lap is spoken of before a number, past a semicolon only where the number says itself onto what: "lap on board 12 mm; on concrete 25 mm".
pub(super) fn speaks_of_a_lap(sentence: &Sentence<'_>, first: usize) -> bool {
    const REACH: usize = 16;
    let from = first.saturating_sub(REACH);
    let parted = (from..first).rev().find(|at| sentence.is_sign(*at, ';'));
    let from = parted
        .filter(|at| !sentence.is_any(at + 1, &["on", "onto", "over", "at", "to"]))
        .unwrap_or(from);
    (from..first).any(|at| {
        let word = sentence.word(at);
        LAPS.iter().any(|begins| word.starts_with(begins))
    })
}

/// Whether a lap's verb or a parting comma stands before the number with a noun or two between, and so from the first number of a list on: "laps wall
/// 1 in., deck 2 in. and track 1/2 in."
pub(super) fn places_before_number(sentence: &Sentence<'_>, index: usize) -> bool {
    const NOUNS: usize = 3;
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    let named = (0..amount.first)
        .rev()
        .find(|at| !is_bounding(sentence.word(*at)));
    let Some(named) = named.filter(|at| sentence.token(*at).is_some_and(|t| t.word().is_some()))
    else {
        return false;
    };
    let laps = |at: usize| {
        ["lap", "overlap"]
            .iter()
            .any(|begins| sentence.word(at).starts_with(begins))
    };
    let opening = (named.saturating_sub(NOUNS)..named)
        .rev()
        .find(|at| laps(*at) || sentence.is_sign(*at, ',') || sentence.is_word(*at, "and"));
    opening.is_some_and(|at| {
        laps(at) && !laps(named)
            || !laps(at) && index > 0 && places_before_number(sentence, index - 1)
    })
}
