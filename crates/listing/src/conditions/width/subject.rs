//! Joints meant as the subject of what is said of them: `Joints wider than 100 mm (4 in.) shall be ...`

use super::super::Found;
use super::super::bands::second_limit;
use super::super::meant::{found, skip_attribute};
use super::VERBS;
use super::compared::{APART, compares, is_comparing, is_joint_noun, is_plural, joint_property};
use crate::rules::{Sentence, is_refused};

/// Verbs of joints that say what they get or bear.
const TAKES: &[&str] = &[
    "accept",
    "accommodate",
    "receive",
    "get",
    "take",
    "follow",
    "open",
    "close",
    "move",
];

/// Verbs of several joints that say what they must have.
pub(in crate::conditions) const REQUIRES: &[&str] = &[
    "shall", "must", "are", "require", "need", "receive", "have", "get",
];

/// `Joints wider than 50 mm are filled in two layers, joints up to 50 mm in one`: after such a subject another needs no verb.
pub(super) fn listed(sentence: &Sentence<'_>, index: usize, before: &[Found]) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let start = (0..amount.first)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map(|at| at + 1 + usize::from(sentence.is_any(at + 1, &["and", "but"])))?;
    let spoken_of = before
        .iter()
        .any(|other| is_joint_noun(sentence, other.first));
    let compared = start + 1 < amount.first
        && (start + 1..amount.first).all(|at| is_comparing(sentence, at))
        && compares(sentence, start + 1, amount.first);
    let after = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    let goes_on = sentence.is_any(
        after,
        &["in", "with", "at", "by", "no", "not", "one", "two", "only"],
    ) || sentence.amount_at(after).is_some();
    (spoken_of && is_joint_noun(sentence, start) && compared && goes_on)
        .then(|| found(sentence, index, start, joint_property(sentence, start)))
}

/// `Joints wider than 100 mm (4 in.) shall be ...`, `Spalls deeper than 10 mm shall be repaired`: a plural noun at the opening,
/// a comparison, and a verb after it.
pub(super) fn subject(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let floor = sentence.floor(index);
    let start = (floor..amount.first)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map_or(floor, |at| at + 1);
    // `save that a joint less than 2 in. wide calls for ...`
    let excepts = sentence.is_any(start, &["save", "except", "excepting", "but"]);
    let that = usize::from(excepts && sentence.is_word(start + 1, "that"));
    let start = start + usize::from(excepts) + that;
    // `Joints 4 in. or wider need clips.`
    let at_once = amount.first == start + 1;
    if amount.first <= start || amount.first > start + 7 {
        return None;
    }
    // "A joint wider than 3 in. shall have" speaks of such joints as "joints" does.
    let any_joint = |at: &usize| {
        *at == start + 1
            && sentence.is_any(start, &["a", "any"])
            && sentence.is_any(*at, &["joint", "gap", "opening"])
    };
    let noun = (start..amount.first)
        .find(|at| is_plural(sentence, *at) && sentence.word(*at).len() > 3 || any_joint(at))?;
    let compares = (noun + 1..amount.first).any(|at| {
        sentence.is_any(at, APART) || sentence.is_sign(at, '>') || sentence.is_sign(at, '<')
    });
    let negated = (noun + 1..amount.first).any(|at| sentence.is_any(at, &["no", "not"]));
    let speaks = negated
        || (start..amount.first).any(|at| {
            sentence.is_any(
                at,
                &["shall", "is", "are", "be", "may", "must", "not", "spaced"],
            )
        });
    let after = second_limit(sentence, index)
        .unwrap_or_else(|| skip_attribute(sentence, sentence.skip_parentheses(amount.last)));
    // `Gaps greater than 1/8 in. between boards are filled`
    let placed = sentence.is_any(
        after,
        &[
            "between", "in", "at", "from", "around", "along", "below", "above",
        ],
    ) && (after + 1..after + 6)
        .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
        .any(|at| sentence.is_any(at, &["is", "are", "shall", "must"]));
    let verb = placed
        || sentence.is_any(after, VERBS)
        || sentence.is_sign(after, ':')
        || sentence.is_sign(after, ',') && sentence.is_any(after + 1, VERBS);
    if is_refused(sentence, index) {
        return None;
    }
    let joint = is_joint_noun(sentence, noun);
    // `Joints of 2 in. or less will accept`, `Joints of more than 40 mm receive two strips`
    let told = !at_once || sentence.is_any(after + 1, &["wider", "more", "greater", "over"]);
    let or_less = joint
        && told
        && (noun + 1..amount.first).all(|at| sentence.is_word(at, "of"))
        && sentence.is_word(after, "or")
        && sentence.is_any(
            after + 1,
            &[
                "less", "more", "greater", "wider", "narrower", "over", "under",
            ],
        )
        && (sentence.is_any(after + 2, VERBS) || sentence.is_any(after + 2, TAKES));
    // `Gaps of 75 mm and above: brackets of steel.`, `Gaps of 40 mm and over shall be reinforced`
    let and_above = joint
        && sentence.is_any(after, &["or", "and"])
        && sentence.is_any(
            after + 1,
            &["above", "over", "below", "under", "more", "less"],
        )
        && (sentence.is_sign(after + 2, ':') || sentence.is_any(after + 2, REQUIRES))
        && (noun + 1..amount.first).all(|at| sentence.is_word(at, "of"));
    let or_less = or_less || and_above;
    let compares = compares || or_less;
    let verb = verb || or_less || joint && sentence.is_any(after, TAKES);
    // `Openings to 100 mm may be filled`
    let to = joint && sentence.is_word(noun + 1, "to") && noun + 2 == amount.first;
    let compares = compares || to && sentence.is_any(after, &["may", "can"]);
    (compares && !speaks && (verb || (joint && sentence.is_sign(after, ':'))))
        .then(|| found(sentence, index, start, joint_property(sentence, noun)))
}
