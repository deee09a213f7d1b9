//! What an item that may be left out asks for all the same: "Clips (optional) - ... If clips are not used, the sealant shall be min 1 in. thick". Whoever leaves
//! the item out must keep to it, so it can't fall away with the item.
//!
//! What it would misread: an item that says what holds without some other thing of its own name; that is asked for in every joint then, under its own condition.

use super::Around;
use crate::naming::component_of_title;

/// What a thing is or isn't that may be left out.
const THERE: [&str; 8] = [
    "used",
    "installed",
    "provided",
    "present",
    "fitted",
    "placed",
    "required",
    "included",
];

/// Words that say that it isn't there.
const ABSENT: [&str; 4] = ["omitted", "absent", "deleted", "excluded"];

/// Words that lead to what a sentence holds under.
const LEADS: [&str; 8] = [
    "if", "where", "when", "wherever", "whenever", "in", "for", "with",
];

/// Words that say neither which thing is meant nor that it isn't there.
const SMALL: [&str; 15] = [
    "the", "a", "an", "is", "are", "this", "these", "such", "it", "they", "optional", "option",
    "item", "joints", "joint",
];

/// What stands around a sentence: the same without the option that its item is, where the sentence holds without the item.
pub(super) fn without_own_option(around: &Around, sentence: &str) -> Option<Around> {
    let optional = around.options.contains(&around.item);
    let holds = optional && {
        let words = words(sentence);
        holds_without(around, &words) || holds_in_all(&words) && is_of_another(around, sentence)
    };
    holds.then(|| {
        let mut without = around.clone();
        without.options.retain(|option| *option != around.item);
        without
    })
}

/// Whether a sentence says what holds where the item isn't built, or whether it is or not.
fn holds_without(around: &Around, words: &[String]) -> bool {
    let says = |at: usize, said: &[&str]| {
        words
            .get(at)
            .is_some_and(|word| said.contains(&word.as_str()))
    };
    let runs = |at: usize, runs: &[&[&str]]| runs.iter().any(|run| is_run(words, at, run));
    // The item by its name, from a place on.
    let named = |at: usize| behind_name(around, words, at) > at && is_named(around, words, at);
    let left_out = |at: usize| {
        says(at, &["not"]) && says(at + 1, &THERE)
            || says(at, &["left"]) && says(at + 1, &["out"])
            || says(at, &["be"]) && says(at + 1, &["left"]) && says(at + 2, &["out"])
            || says(at, &["not"]) && says(at + 1, &["taken"])
            || says(at, &ABSENT)
    };
    (0..words.len()).any(|at| {
        let behind = behind_name(around, words, at + 1);
        let absent = || {
            left_out(behind)
                || says(behind, &["without"]) && named(behind + 1)
                || says(behind, &["no"])
                    && named(behind + 1)
                    && says(behind_name(around, words, behind + 1), &THERE)
                || says(behind + 1, &["not"])
                    && says(behind + 2, &["using", "having"])
                    && named(behind + 3)
        };
        says(at, &["unless"]) && says(behind, &THERE)
            || says(at, &LEADS) && absent()
            || says(at, &["should"]) && left_out(behind)
            || at == 0 && says(at, &["without"]) && named(at + 1)
            || runs(at, &[&["in", "the", "absence", "of"]]) && named(at + 4)
            || runs(
                at,
                &[&["with", "or", "without"], &["with", "and", "without"]],
            ) && named(at + 3)
            || runs(at, &[&["irrespective", "of"], &["regardless", "of"]]) && named(at + 2)
            || runs(at, &[&["whether", "or", "not"]])
    })
}

/// Whether the words from a place on to the first that is none of its name name the item, and are not only small ones.
fn is_named(around: &Around, words: &[String], from: usize) -> bool {
    let own = words
        .iter()
        .take(behind_name(around, words, from))
        .skip(from);
    own.into_iter()
        .any(|word| is_name(around, word) || word.eq_ignore_ascii_case(&around.item))
}

/// The first word from a place on that names neither the item nor is a small one.
fn behind_name(around: &Around, words: &[String], from: usize) -> usize {
    let mut places = from..words.len();
    let behind = places.find(|at| {
        words.get(*at).is_none_or(|word| {
            !SMALL.contains(&word.as_str())
                && !is_name(around, word)
                && !word.eq_ignore_ascii_case(&around.item)
        })
    });
    behind.unwrap_or(words.len())
}

/// What says that something holds in all cases.
const ALL: [&[&str]; 7] = [
    &["in", "any", "event"],
    &["in", "all", "cases"],
    &["in", "every", "case"],
    &["in", "any", "case"],
    &["in", "either", "case"],
    &["in", "all", "joints"],
    &["always"],
];

/// Whether a sentence says that it holds in all cases.
fn holds_in_all(words: &[String]) -> bool {
    (0..words.len()).any(|at| ALL.iter().any(|all| is_run(words, at, all)))
}

/// Whether a sentence speaks of another part than the item before its first number: "Sealant min 1/2 in. thick shall be used in all cases", "In every case the
/// packing shall be min 4 in. deep".
fn is_of_another(around: &Around, sentence: &str) -> bool {
    let opening = sentence.split(|c: char| c.is_ascii_digit()).next();
    let opening = opening.unwrap_or_default();
    let first = words(opening);
    let led = ALL.iter().find(|all| is_run(&first, 0, all));
    let placed = led.is_none()
        && first
            .first()
            .is_some_and(|word| LEADS.contains(&word.as_str()));
    let spoken: Vec<&str> = opening
        .split_whitespace()
        .skip(led.map_or(0, |all| all.len()))
        .collect();
    let spoken = Some(spoken.join(" "))
        .filter(|_| !placed)
        .and_then(|spoken| component_of_title(&spoken));
    let own = component_of_title(&around.subject.title);
    spoken.is_some() && own.is_some() && spoken != own
}

/// Whether a word is one of the item's title.
fn is_name(around: &Around, word: &str) -> bool {
    let title = around.subject.title.to_lowercase();
    let mut named = title.split(|c: char| !c.is_alphanumeric());
    let singular = |word: &str| word.strip_suffix('s').unwrap_or(word).to_owned();
    word.len() > 2 && named.any(|named| singular(named) == singular(word))
}

fn is_run(words: &[String], at: usize, run: &[&str]) -> bool {
    let own = words.iter().skip(at).take(run.len());
    own.len() == run.len() && own.zip(run).all(|(word, other)| word == other)
}

/// The words of a sentence in small letters, without the signs beside them.
fn words(sentence: &str) -> Vec<String> {
    let words = sentence.split_whitespace().map(|word| {
        let word = word.trim_matches(|c: char| !c.is_alphanumeric());
        word.to_lowercase()
    });
    words.filter(|word| !word.is_empty()).collect()
}
