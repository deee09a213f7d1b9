//! What must not be done while something holds: "shall not be gunned when the air is colder than 40 °F" requires air of 40 °F or more.

use super::Found;
use crate::rules::{NEGATIONS, Sentence};

/// Words that open the state in which something is forbidden.
const OPENERS: &[&str] = &["when", "where", "if", "whenever", "while"];

/// Words that take part of it back.
const BUT: &[&str] = &["unless", "except", "until", "but"];

/// What is done on site, and can be forbidden while something holds. "Shall not be omitted where" demands, and "is not required when" frees.
pub(super) const DOING: &[&str] = &[
    "apply",
    "applied",
    "place",
    "placed",
    "install",
    "installed",
    "gun",
    "gunned",
    "spray",
    "sprayed",
    "thin",
    "thinned",
    "mix",
    "mixed",
    "use",
    "used",
    "employ",
    "employed",
    "paint",
    "painted",
    "pour",
    "poured",
    "tool",
    "tooled",
    "cast",
    "begin",
    "begun",
    "start",
    "started",
    "proceed",
    "work",
    "handle",
    "handled",
    "insert",
    "inserted",
    "pack",
    "packed",
    "seal",
    "sealed",
    "prime",
    "primed",
    "coat",
    "coated",
];

/// A state in which something is forbidden.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Forbidden {
    /// The token of the word that forbids.
    pub(crate) negation: usize,
    /// Tokens `[first, last)` of the state.
    pub(crate) first: usize,
    pub(crate) last: usize,
}

/// What a condition forbids, when each of its numbers is compared with; none when the words before it forbid something of a number, since
/// that is another matter. One word may forbid several states: `before` are those found already.
pub(super) fn forbidden(
    sentence: &Sentence<'_>,
    condition: &Found,
    before: &[Forbidden],
) -> Option<Forbidden> {
    let (first, last) = (condition.first, condition.last);
    if let Some(negation) = denied_directly(sentence, condition) {
        return Some(Forbidden {
            negation,
            first,
            last,
        });
    }
    if let Some(negation) = stopped(sentence, condition) {
        return Some(Forbidden {
            negation,
            first,
            last,
        });
    }
    let negation = (0..first).find(|at| sentence.is_any(*at, NEGATIONS))?;
    let commands = (negation > 0
        && (sentence.is_any(negation - 1, &["shall", "must", "may", "do", "should"])
            || sentence.is_any(negation - 1, &["is", "are"])
                && is_of_weather(sentence, condition)))
        || (negation == 0 && sentence.is_word(0, "never"));
    // "Neither product may be placed ...": the verb stands after the modal.
    let neither = negation == 0 && sentence.is_word(0, "neither");
    let modal = (0..first)
        .take(8)
        .find(|at| neither && sentence.is_any(*at, &["shall", "must", "may"]));
    let commands = commands || modal.is_some();
    let from = modal.unwrap_or(negation);
    let verb = if sentence.is_word(from + 1, "be") {
        from + 2
    } else {
        from + 1
    };
    // "shall not be applied thinner than shown where ..." forbids the thinness, not the place.
    let first_state = before.first().map_or(first, |state| state.first.min(first));
    let does = sentence.is_any(verb, DOING)
        && !sentence.has_any(verb, first_state, &["than", "alone", "only", "without"]);
    // `not applied above 40 °C or where the humidity is over 90 %`: one state and another.
    let another = first > 0 && sentence.is_any(first - 1, &["or", "nor"]);
    let alone = !condition.triggers.is_empty()
        && sentence
            .amounts
            .iter()
            .enumerate()
            .filter(|(_, amount)| negation < amount.first && amount.last <= first)
            .all(|(index, amount)| {
                another && super::compared(sentence, index)
                    || before
                        .iter()
                        .any(|state| state.first <= amount.first && amount.last <= state.last)
            });
    let denied =
        (first..last).any(|at| sentence.is_any(at, NEGATIONS) && not_yet(sentence, at).is_none());
    let plain = !denied
        && !sentence.has_any(negation, first, BUT)
        && !sentence.has_any(last, sentence.tokens.len(), BUT);
    let compared = condition.triggers.iter().all(|index| {
        super::compared(sentence, *index)
            || is_not_yet(sentence, *index)
            || is_span(sentence, *index)
    });
    let forbids = sentence.is_any(first, OPENERS) && commands && does && alone && plain && compared;
    forbids.then_some(Forbidden {
        negation,
        first,
        last,
    })
}

/// Whether a state is one of the air or of what is worked on, not a case of joints: "clips are not used where the joint is narrower than 2 in."
/// only says where they are left out.
fn is_of_weather(sentence: &Sentence<'_>, condition: &Found) -> bool {
    condition.triggers.iter().all(|index| {
        sentence.amount(*index).is_some_and(|amount| {
            amount.unit.dimension() == measure::Dimension::Temperature
                || amount.unit == measure::Unit::Percent
                    && sentence.has_any(
                        condition.first,
                        condition.last,
                        &["humidity", "moisture", "rh"],
                    )
        })
    })
}

/// `Work shall stop when the air falls below 4 °C`: the word that ends what is done.
fn stopped(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    const STOP: &[&str] = &[
        "stop",
        "stops",
        "cease",
        "ceases",
        "stopped",
        "ceased",
        "halted",
        "suspended",
    ];
    const REACH: usize = 5;
    let (first, last) = (condition.first, condition.last);
    // `Reject if more than 10% of samples are thin.`
    if first == 1 && sentence.is_any(0, &["reject", "refuse", "discard"]) {
        let rejected = condition
            .triggers
            .iter()
            .all(|index| super::compared(sentence, *index));
        let plain = !condition.triggers.is_empty() && !sentence.has_any(first, last, NEGATIONS);
        return (rejected && plain).then_some(0);
    }
    let stop = (first.saturating_sub(REACH)..first)
        .rev()
        .find(|at| sentence.is_any(*at, STOP))?;
    let commands = sentence.has_any(
        stop.saturating_sub(2),
        stop,
        &["shall", "must", "is", "are", "should", "will"],
    ) || sentence.is_any(stop, &["stops", "ceases"]);
    let plain = !sentence.has_any(0, first, NEGATIONS)
        && !sentence.has_any(first, sentence.tokens.len(), BUT)
        && !sentence.has_any(first, last, NEGATIONS);
    let compared = !condition.triggers.is_empty()
        && condition
            .triggers
            .iter()
            .all(|index| super::compared(sentence, *index));
    (commands && plain && compared && sentence.is_any(first, OPENERS)).then_some(stop)
}

/// Whether a time only says when the state is expected: `is, or within eight hours is expected to be, below 40 °F`.
fn is_span(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        amount.unit.dimension() == measure::Dimension::Time
            && amount.first > 1
            && sentence.is_word(amount.first - 1, "within")
            && sentence.is_any(amount.first - 2, &["or", "and"])
    })
}

/// `has not aged 28 days`, of an amount.
fn is_not_yet(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        (amount.first.saturating_sub(5)..amount.first)
            .any(|at| not_yet(sentence, at).is_some_and(|end| end <= amount.first))
    })
}

/// `has not yet cured for`: what hasn't happened to a thing, and the token after.
pub(crate) fn not_yet(sentence: &Sentence<'_>, negation: usize) -> Option<usize> {
    let has = negation > 0 && sentence.is_any(negation - 1, &["has", "have"]);
    let not = sentence.is_word(negation, "not");
    let yet = negation + 1 + usize::from(sentence.is_any(negation + 1, &["yet", "been"]));
    let aged = sentence.is_any(yet, &["aged", "cured", "dried", "stood", "hardened", "set"]);
    (has && not && aged).then(|| yet + 1 + usize::from(sentence.is_any(yet + 1, &["for", "at"])))
}

/// `placed within 45 minutes, neither when the concrete is colder than 40 °F nor when its moisture exceeds 5 percent`: the negation stands
/// right before the state.
fn denied_directly(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    let before = condition.first.checked_sub(1)?;
    let neither = || sentence.has_any(0, before, &["neither", "not", "never"]);
    let denied = sentence.is_any(before, &["neither", "never"])
        || (sentence.is_word(before, "nor") && neither());
    let plain = !condition.triggers.is_empty()
        && condition
            .triggers
            .iter()
            .all(|index| super::compared(sentence, *index))
        && !sentence.has_any(condition.first, condition.last, NEGATIONS)
        && !sentence.has_any(condition.last, sentence.tokens.len(), BUT);
    let does = sentence.has_any(0, before, DOING);
    (denied && plain && does).then_some(before)
}
