//! Denials before the joints meant: those that make a bound of them, and those that set them aside.

use crate::rules::Sentence;

/// Whether a token denies: "not", and not the "not" of "not less than half".
pub(super) fn denies(sentence: &Sentence<'_>, at: usize) -> bool {
    let compares = sentence.is_any(at, &["not", "no"])
        && sentence.is_any(
            at + 1,
            &["less", "fewer", "smaller", "thinner", "shallower"],
        );
    sentence.is_any(at, &["not", "never", "no"]) && !compares
}

/// Whether brackets behind a number open with "not for", and close behind the joints.
pub(super) fn is_set_aside(sentence: &Sentence<'_>, from: usize) -> bool {
    let opens = from > 1 && sentence.is_word(from - 1, "not") && sentence.is_sign(from - 2, '(');
    let measured = sentence.amounts.iter().any(|amount| amount.last < from);
    opens && sentence.is_word(from, "for") && measured
}

/// `for use only with joints up to 2 in. wide`: what may be used in no other joint is no case of its numbers.
pub(super) fn is_for_use_only(sentence: &Sentence<'_>, from: usize, noun: usize) -> bool {
    (from.saturating_sub(3)..noun).any(|at| {
        sentence.is_word(at, "for")
            && sentence.is_word(at + 1, "use")
            && sentence.is_word(at + 2, "only")
    })
}

/// Whether the denial before a case stands in brackets behind a number, so that it bounds no width: "(not in", "(but never in", "(no clips for". "(not for" may
/// say for which joints a thing is not.
pub(super) fn denied_in_brackets(sentence: &Sentence<'_>, from: usize) -> bool {
    let Some(open) = (0..from).rev().find(|at| sentence.is_sign(*at, '(')) else {
        return false;
    };
    let denial = open + 1 + usize::from(sentence.is_word(open + 1, "but"));
    let measured = sentence.amounts.iter().any(|amount| amount.last <= open);
    let bare = denial + 1 == from
        && sentence.is_any(denial, &["not", "never"])
        && !sentence.is_word(from, "for");
    let of_thing = sentence.is_word(denial, "no");
    measured && sentence.closing(open).is_some_and(|close| close > from) && (bare || of_thing)
}

/// A negation that already belongs to a verb before: "shall not be spliced in joints over 4 in." is a condition all the same
/// only for words, so it stays a bound's business.
pub(super) fn after_negated_verb(sentence: &Sentence<'_>, from: usize) -> bool {
    sentence.has_any(
        from.saturating_sub(4),
        from,
        &[
            "spliced",
            "required",
            "needed",
            "necessary",
            "apply",
            "applicable",
            "mandatory",
            "obligatory",
            "compulsory",
        ],
    )
}
