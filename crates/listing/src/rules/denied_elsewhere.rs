//! A denial that isn't of the comparison behind it: covers "shall *not be omitted* from joints over 1 in.", "*no splice* in joints over 3 in.", "shall *not
//! be increased* to 3 in.", "*neither* 4 in. nor more", "*not necessarily* less than 2 in.", "*not prohibited* under 1/4 in."
//!
//! What is denied there is the omission, the splice or the change, and the number only says where, or from what. It is left unread. What it would misread, as
//! a number that nobody read: "no seal in joints over 4 in." that is meant as a limit of the joint.

use super::Sentence;
use super::comparison_before::{NEGATIONS, compares_down, compares_up};

/// How far before a number its denial may stand.
const REACH: usize = 12;

/// Whether a number is compared behind a denial of something else.
pub(super) fn is_denied_elsewhere(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some(first) = sentence.amount(index).map(|amount| amount.first) else {
        return false;
    };
    let lowest = sentence.floor(index).max(first.saturating_sub(REACH));
    let mut before = (lowest..first).rev().take_while(|at| {
        ![';', '.', ',']
            .iter()
            .any(|sign| sentence.is_sign(*at, *sign))
            && !sentence.is_any(*at, &["and", "but"])
    });
    before.any(|at| {
        sentence.is_word(at, "neither") && at + 1 == first
            || sentence.is_any(at, NEGATIONS)
                && (denies_leaving_out(sentence, at, first)
                    || denies_a_change(sentence, at, first)
                    || denies_a_denial(sentence, at)
                    || denies_a_thing(sentence, at, first))
    })
}

/// `shall not be omitted from joints over 1 in.`
fn denies_leaving_out(sentence: &Sentence<'_>, not: usize, first: usize) -> bool {
    const LEFT_OUT: &[&str] = &[
        "omitted",
        "omit",
        "waived",
        "deleted",
        "removed",
        "dispensed",
    ];
    const NEAR: usize = 3;
    let end = first.min(not + 1 + NEAR);
    let left_out = (not + 1..end)
        .any(|at| sentence.is_word(at, "left") && sentence.is_any(at + 1, &["out", "off"]));
    left_out || sentence.has_any(not + 1, end, LEFT_OUT)
}

/// `shall not be increased to 3 in.`
fn denies_a_change(sentence: &Sentence<'_>, not: usize, first: usize) -> bool {
    const CHANGED: &[&str] = &[
        "increased",
        "reduced",
        "decreased",
        "raised",
        "lowered",
        "widened",
        "extended",
        "changed",
        "thinned",
        "increase",
        "reduce",
        "raise",
        "lower",
    ];
    const NEAR: usize = 3;
    first > 0
        && sentence.is_word(first - 1, "to")
        && sentence.has_any(not + 1, first.min(not + 1 + NEAR), CHANGED)
}

/// `not necessarily less than 2 in.`, `is not prohibited in joints under 1/4 in.`
fn denies_a_denial(sentence: &Sentence<'_>, not: usize) -> bool {
    const DENIED: &[&str] = &[
        "necessarily",
        "prohibited",
        "forbidden",
        "excluded",
        "disallowed",
        "precluded",
        "unacceptable",
        "objectionable",
        "limited",
        "restricted",
    ];
    sentence.is_word(not, "not") && sentence.is_any(not + 1, DENIED)
}

/// `no splice in joints over 3 in.`: a thing that some joints don't have.
fn denies_a_thing(sentence: &Sentence<'_>, no: usize, first: usize) -> bool {
    const PLACES: &[&str] = &["joints", "gaps", "openings", "walls", "floors", "slabs"];
    let compares = |at: usize| {
        let word = sentence.word(at);
        compares_up(word) || compares_down(word)
    };
    let thing = sentence.is_word(no, "no")
        && !compares(no + 1)
        && !sentence.is_any(no + 1, PLACES)
        && sentence.has_word(no + 1);
    let placed = (no + 2..first).any(|at| {
        sentence.is_any(at, &["in", "for", "at", "from"]) && sentence.is_any(at + 1, PLACES)
    });
    thing && placed
}
