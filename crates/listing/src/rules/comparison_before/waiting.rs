//! How long something is kept from what is done to it: `shall not be painted before it has stood for 36 hours`.

use measure::Dimension;

use super::super::{Finding, Sentence};
use super::negation::negation;
use crate::conditions::not_yet;
use crate::model::Relation;

/// `shall not be painted before it has stood for 36 hours`: it stands that long at least.
pub(super) fn not_before(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    const REACH: usize = 8;
    let amount = sentence
        .amount(index)
        .filter(|amount| amount.unit.dimension() == Dimension::Time)?;
    let floor = sentence.floor(index);
    let before = (floor.max(amount.first.saturating_sub(REACH))..amount.first)
        .rev()
        .find(|at| sentence.is_any(*at, &["before", "until"]))?;
    let plain = (before + 1..amount.first).all(|at| {
        sentence.is_any(
            at,
            &[
                "it", "they", "has", "have", "had", "lapse", "of", "expiry", "end", "stood",
                "cured", "dried", "aged", "been", "for", "a", "the", "full", "lasted", "sat",
            ],
        )
    });
    // "It is forbidden to walk on the joint before the lapse of 7 days."
    let forbidden = || {
        (floor..before)
            .rev()
            .find(|at| sentence.is_any(*at, &["forbidden", "prohibited"]))
    };
    let negation = negation(sentence, before, floor)
        .or_else(forbidden)
        .filter(|_| plain)?;
    Some(Finding::sure(Relation::AtLeast, negation))
}

/// `shall not be walked on for 24 hours`: it is kept from that for so long at least.
pub(super) fn kept_from(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    const DISTURBED: &[&str] = &[
        "walked",
        "trafficked",
        "loaded",
        "disturbed",
        "touched",
        "wetted",
        "painted",
        "covered",
        "cycled",
        "stripped",
    ];
    let amount = sentence.amount(index).filter(|amount| {
        amount.unit.dimension() == Dimension::Time
            || amount.unit.dimension() == Dimension::CalendarTime
    })?;
    let floor = sentence.floor(index);
    let lead = amount.first.checked_sub(1).map(|at| {
        if sentence.is_any(at, &["a", "the", "first"]) {
            at.saturating_sub(1)
        } else {
            at
        }
    })?;
    // `shall not be coated when the slab has not aged 28 days`
    let forbidding = sentence.forbidding(amount.first);
    if let Some(negation) = forbidding.filter(|_| {
        (floor..amount.first).any(|at| not_yet(sentence, at).is_some_and(|end| end >= lead))
    }) {
        return Some(Finding::sure(Relation::AtLeast, negation));
    }
    // `once 2 h have passed`
    let passed = sentence.is_any(lead, &["once", "after"])
        && sentence.is_any(amount.last, &["have", "has"])
        && sentence.is_any(amount.last + 1, &["passed", "elapsed", "gone"]);
    if passed {
        return Some(Finding::sure(Relation::AtLeast, lead));
    }
    if let Some(told) = told_to_keep_off(sentence, floor, lead) {
        return Some(Finding::sure(Relation::AtLeast, told));
    }
    let verb = (floor..lead)
        .rev()
        .take(5)
        .find(|at| sentence.is_any(*at, DISTURBED))?;
    let denied = sentence.is_any(lead, &["for", "during"])
        && verb > 1
        && sentence.is_word(verb - 1, "be")
        && sentence.is_word(verb - 2, "not");
    denied.then(|| Finding::sure(Relation::AtLeast, verb - 2))
}

/// `Do not paint for 7 d`, `No traffic for 3 days`: the denial, where only what is kept off stands between it and "for".
fn told_to_keep_off(sentence: &Sentence<'_>, floor: usize, lead: usize) -> Option<usize> {
    const REACH: usize = 5;
    const OFF: &[&str] = &[
        "paint", "painting", "walk", "walking", "load", "loads", "loading", "disturb", "touch",
        "wet", "cover", "cycle", "strip", "open", "coat", "traffic",
    ];
    const BESIDE: &[&str] = &[
        "foot",
        "vehicle",
        "vehicular",
        "on",
        "the",
        "it",
        "or",
        "sealant",
        "seal",
        "joint",
        "coating",
    ];
    let denial = (floor..lead)
        .rev()
        .take(REACH)
        .find(|at| sentence.is_any(*at, &["not", "never", "no", "don't", "don’t"]))?;
    let told = sentence.is_any(denial, &["no", "never", "don't", "don’t"])
        || denial > 0 && sentence.is_word(denial - 1, "do");
    let off = (denial + 1..lead).any(|at| sentence.is_any(at, OFF));
    let plain =
        (denial + 1..lead).all(|at| sentence.is_any(at, OFF) || sentence.is_any(at, BESIDE));
    (sentence.is_word(lead, "for") && told && off && plain).then_some(denial)
}
