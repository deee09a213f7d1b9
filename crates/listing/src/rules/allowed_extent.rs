use super::comparison_before::NEGATIONS;
use super::{Finding, Sentence};
use crate::model::Relation;

/// How many tokens apart the words of an allowance may stand.
const REACH: usize = 8;

const ALLOWED: &[&str] = &[
    "allowed",
    "permitted",
    "accepted",
    "acceptable",
    "admissible",
    "permissible",
    "tolerated",
    "tolerable",
    "covered",
    "allowable",
];

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence
        .amount(index)
        .filter(|amount| amount.hi.is_none())?;
    let (first, last, floor) = (amount.first, amount.last, sentence.floor(index));
    let lead = first.checked_sub(1).filter(|at| *at >= floor)?;
    if let Some((relation, verb)) = may_go_to(sentence, lead, floor) {
        return Some(Finding::sure(relation, verb));
    }
    let allowed = allowed_behind(sentence, last);
    let deviates = || {
        sentence
            .is_word(lead, "of")
            .then(|| fault_before(sentence, lead, floor))
            .flatten()
    };
    if let Some(fault) = deviates().filter(|_| allowed) {
        return Some(Finding::sure(Relation::AtMost, fault));
    }
    // `blocks down to 100 mm may be used`
    let down = sentence.is_word(lead, "to") && lead > floor && sentence.is_word(lead - 1, "down");
    (down && (allowed || may_be_used(sentence, last)) && !is_denied(sentence, lead, floor))
        .then(|| Finding::sure(Relation::AtLeast, lead - 1))
}

/// `may run to 1-1/2 in.`, `can open to 3 in.`: how far a thing may go by itself.
fn may_go_to(sentence: &Sentence<'_>, to: usize, floor: usize) -> Option<(Relation, usize)> {
    const UP: &[&str] = &[
        "run", "open", "grow", "rise", "widen", "increase", "stretch", "expand", "swell", "amount",
    ];
    const DOWN: &[&str] = &["close", "shrink", "drop", "fall", "narrow", "decrease"];
    const MEASURE: &[&str] = &["measure", "be"];
    let to = Some(to).filter(|to| sentence.is_word(*to, "to"))?;
    let towards = usize::from(to > floor && sentence.is_any(to - 1, &["up", "down", "out"]));
    let verb = to.checked_sub(1 + towards).filter(|verb| *verb > floor)?;
    sentence.is_any(verb - 1, &["may", "can"]).then_some(())?;
    // `the gap at old slabs may go to 4 in.`
    let opening = towards == 0
        && sentence.has_any(
            verb.saturating_sub(REACH).max(floor),
            verb,
            &["gap", "joint", "width", "opening"],
        );
    let upwards = sentence.is_any(verb, UP)
        || sentence.is_word(verb, "go") && (opening || sentence.is_word(to - 1, "up"));
    let downwards = sentence.is_any(verb, DOWN)
        || sentence.is_word(verb, "go") && sentence.is_word(to - 1, "down");
    // `may measure down to 8 in.`
    let downwards = downwards || sentence.is_any(verb, MEASURE) && sentence.is_word(to - 1, "down");
    match (upwards, downwards) {
        (true, _) => Some((Relation::AtMost, verb - 1)),
        (_, true) => Some((Relation::AtLeast, verb - 1)),
        _ => None,
    }
}

/// The fault before a token of which so much may be: `a deviation of 5 mm`, `unevenness of 3 mm`.
fn fault_before(sentence: &Sentence<'_>, of: usize, floor: usize) -> Option<usize> {
    const FAULTS: &[&str] = &[
        "deviation",
        "deviations",
        "unevenness",
        "misalignment",
        "offset",
        "spalls",
        "spalling",
        "variation",
        "variations",
        "cracks",
        "inaccuracy",
        "bow",
        "twist",
    ];
    let fault = of
        .checked_sub(1)
        .filter(|at| *at >= floor && sentence.is_any(*at, FAULTS))?;
    (!is_denied(sentence, fault, floor)).then_some(fault)
}

/// Whether it is said behind a number that so much is allowed.
fn allowed_behind(sentence: &Sentence<'_>, last: usize) -> bool {
    stretch(sentence, last)
        .any(|at| sentence.is_any(at, &["is", "are"]) && sentence.is_any(at + 1, ALLOWED))
}

/// Whether it is said behind a number that a thing of such a size may be used.
fn may_be_used(sentence: &Sentence<'_>, last: usize) -> bool {
    stretch(sentence, last).any(|at| {
        sentence.is_any(at, &["may", "can"])
            && sentence.is_word(at + 1, "be")
            && sentence.is_any(at + 2, &["used", "installed", "employed"])
    })
}

fn stretch<'s>(sentence: &'s Sentence<'_>, last: usize) -> impl Iterator<Item = usize> + 's {
    let from = sentence.skip_parentheses(last);
    (from..from + REACH).take_while(|at| !sentence.is_stop(*at) && !sentence.is_any(*at, NEGATIONS))
}

fn is_denied(sentence: &Sentence<'_>, at: usize, floor: usize) -> bool {
    sentence.has_any(at.saturating_sub(REACH).max(floor), at, NEGATIONS)
}
