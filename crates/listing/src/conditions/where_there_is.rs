//! A thing that not every joint has, where a bracket behind its name says so: "Head restraint angles (if any), max 6 mm thick", "Backer rod (where used) 1 in. in
//! diameter".
//!
//! What the sentence goes on to say of the thing is asked for where there is one, and whether there is, a person says. The name opens the sentence, or a part of
//! it behind a semicolon: in "Fold (if any) facing out, and the wool 4 in. deep" and in "Rod (if any) 1 in. in diameter, sealant 1/2 in. deep" the second number is of
//! another thing that is named anew, and is always asked for.
//! "(if required)" and "(where specified)" leave to somebody whether there is to be one, and excuse nobody.

use super::Found;
use crate::naming::mentions;
use crate::rules::{NEGATIONS, Sentence};

/// The amounts that such words govern; none where the condition isn't one.
pub(super) fn governed(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
) -> Option<Vec<usize>> {
    let condition = found.get(number)?;
    let name = named_before(sentence, condition)?;
    let end = another_thing(sentence, condition, &name);
    let within = |index: &usize| {
        let amount = sentence.amount(*index);
        amount.is_some_and(|amount| condition.last < amount.first && amount.first < end)
    };
    Some(bounds.iter().copied().filter(within).collect())
}

/// Whether a condition is only that there is such a thing: "if any", "where used".
pub(super) fn says_there_is_one(sentence: &Sentence<'_>, condition: &Found) -> bool {
    const THERE: &[&str] = &["any", "used", "present", "provided", "fitted", "there"];
    condition.last == condition.first + 2
        && sentence.is_any(condition.first, &["if", "where", "when"])
        && sentence.is_any(condition.first + 1, THERE)
}

/// The words of the thing right before a bracket that holds nothing but "if any".
fn named_before(sentence: &Sentence<'_>, condition: &Found) -> Option<Vec<String>> {
    const LONGEST: usize = 6;
    let open = condition.first.checked_sub(1)?;
    let bracketed = sentence.is_sign(open, '(') && sentence.is_sign(condition.last, ')');
    let before = (0..open).rev().find(|at| sentence.is_sign(*at, ';'));
    let from = before.map_or(0, |at| at + 1);
    let plain = |at: usize| {
        sentence.amount_at(at).is_none() && sentence.has_word(at) && !sentence.is_any(at, NEGATIONS)
    };
    let named = from < open && open - from <= LONGEST && (from..open).all(plain);
    (bracketed && says_there_is_one(sentence, condition) && named).then(|| {
        (from..open)
            .map(|at| sentence.word(at).to_owned())
            .collect()
    })
}

/// Where the sentence comes to another thing, "..., and the wool", "..., sealant 1/2 in. deep", or to what holds in every case.
fn another_thing(sentence: &Sentence<'_>, condition: &Found, name: &[String]) -> usize {
    const ANEW: &[&str] = &["the", "all", "each", "every", "both"];
    let is_own = |at: usize| {
        let word = sentence.word(at).trim_end_matches('s');
        name.iter().any(|own| own.trim_end_matches('s') == word)
    };
    let others: Vec<usize> = mentions(sentence)
        .into_iter()
        .filter(|mention| !(mention.first..mention.last).any(is_own))
        .map(|mention| mention.first)
        .collect();
    (condition.last..sentence.tokens.len())
        .find(|at| {
            let always = sentence.is_any(*at, &["always", "otherwise", "elsewhere", "regardless"]);
            let parted = sentence.is_sign(*at, ';') || always;
            let joined = sentence.is_any(*at, &["and", "but", "while"]);
            let anew = joined && sentence.is_any(at + 1, ANEW) && !is_own(at + 2);
            let listed = joined || sentence.is_sign(*at, ',');
            parted || anew || listed && names_soon(sentence, *at + 1, &others)
        })
        .unwrap_or(sentence.tokens.len())
}

/// Whether one of the things that are mentioned at some tokens begins a part of a sentence, before any number, and is nothing that the part is only led to: "*with*
/// screws".
fn names_soon(sentence: &Sentence<'_>, from: usize, mentioned: &[usize]) -> bool {
    const REACH: usize = 3;
    const LEADS: &[&str] = &[
        "with", "of", "by", "on", "onto", "to", "in", "into", "at", "from", "over", "under", "for",
    ];
    (from..from + REACH)
        .take_while(|at| sentence.amount_at(*at).is_none() && !sentence.is_any(*at, LEADS))
        .any(|at| mentioned.contains(&at))
}
