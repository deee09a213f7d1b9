//! What a permission is confined to: "may be used in joints up to 38 mm", "openings no wider than 2 in. may instead be caulked", "hollows up to
//! 4 mm deep may be left".
//!
//! Whoever makes use of the permission must keep to the number, so it is required, and not a case that something else holds in. It is
//! required of nobody else: unless the words only tolerate what they measure, the permission is the clause's condition, in words. What may be
//! left out or changed where something holds is a case as any other, and so is a permission that has numbers of its own. What is to be done in
//! return for a permission ("may be cut back where the sealant is made 5 mm deeper") is required likewise.

use super::Found;
use super::confined::{confines, offers_alternate};
use crate::model::{Expr, Relation};
use crate::rules::{NEGATIONS, Sentence, bounded_by_its_words};

/// A condition whose numbers are required.
#[derive(Debug, Clone)]
pub(crate) struct Permitted {
    /// The amounts.
    pub(crate) amounts: Vec<usize>,
    /// Tokens `[first, last)` of what is permitted; none where the number holds for everything of its kind.
    pub(crate) words: Option<(usize, usize)>,
}

/// Words that permit.
const MAY: &[&str] = &["may", "can"];
const SUITED: &[&str] = &[
    "suitable",
    "suited",
    "permitted",
    "allowed",
    "accepted",
    "acceptable",
    "admissible",
    "permissible",
    "tolerated",
    "intended",
    "covered",
];

/// What may be done without, or changed: the number says where, and limits nothing.
const LESSENED: &[&str] = &[
    "omitted",
    "waived",
    "dispensed",
    "deleted",
    "skipped",
    "reduced",
    "decreased",
    "increased",
    "raised",
    "lowered",
    "cut",
    "extended",
    "replaced",
    "less",
    "more",
    "lower",
    "higher",
    "greater",
    "need",
    "required",
];

/// Frees the numbers of the conditions that a permission is confined to.
/// `in_option` says whether the item may be left for another.
pub(crate) fn permitted(
    sentence: &mut Sentence<'_>,
    found: &mut [Found],
    in_option: bool,
) -> Vec<Permitted> {
    let permitted: Vec<(usize, Permitted)> = found
        .iter()
        .enumerate()
        .filter_map(|(number, condition)| {
            let permitted = permission(sentence, condition, in_option)
                .or_else(|| rests_on(sentence, condition))
                .or_else(|| of_alternate(sentence, condition, in_option))?;
            Some((number, permitted))
        })
        .collect();
    let [(number, only)] = permitted.as_slice() else {
        return Vec::new();
    };
    if let Some(condition) = found.get_mut(*number) {
        condition.triggers.clear();
        condition.expr = Expr::Words(sentence.words(condition.first, condition.last).to_owned());
        sentence.free(condition.first, &only.amounts);
    }
    vec![only.clone()]
}

fn permission(sentence: &Sentence<'_>, condition: &Found, in_option: bool) -> Option<Permitted> {
    let [trigger] = condition.triggers.as_slice() else {
        return None;
    };
    let stop = |at: usize| {
        sentence.is_stop(at) || sentence.is_sign(at, '.') || sentence.token(at).is_none()
    };
    let before = (0..condition.first)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map_or(0, |at| at + 1);
    let after = (condition.last..=sentence.tokens.len()).find(|at| stop(*at))?;
    // Numbers beside it in its stretch hold in its case.
    let alone = sentence.amounts.iter().all(|amount| {
        let inside = condition.first <= amount.first && amount.last <= condition.last;
        inside || amount.last <= before || amount.first >= after
    });
    let relation = bounded_by_its_words(sentence, *trigger)?.0.relation;
    let upper = matches!(
        relation,
        Relation::AtMost | Relation::LessThan | Relation::Between
    );
    let denied = (before..after)
        .filter(|at| !(condition.first..condition.last).contains(at))
        .any(|at| sentence.is_any(at, NEGATIONS) || sentence.is_any(at, LESSENED));
    let left_out =
        (before..after).any(|at| sentence.is_word(at, "left") && sentence.is_word(at + 1, "out"));
    if !alone || !upper || denied || left_out || sentence.is_word(condition.first, "unless") {
        return None;
    }
    let words = granted(sentence, condition, before, after)?;
    // What confines an alternate is required of nobody who builds the other.
    let first = condition.first;
    let alternate = words.is_none() && first > 1 && !in_option && offers_alternate(sentence);
    let words = if alternate {
        Some((0, first - 1))
    } else {
        words
    };
    Some(Permitted {
        amounts: vec![*trigger],
        words,
    })
}

/// `Alternate: 1/2 in. deep, flush with the board, in joints 3/4 in. or less`: what closes the words about an alternate confines it.
fn of_alternate(sentence: &Sentence<'_>, condition: &Found, in_option: bool) -> Option<Permitted> {
    let first = condition.first;
    let closes = sentence.token(condition.last).is_none()
        || [';', '.']
            .iter()
            .any(|sign| sentence.is_sign(condition.last, *sign));
    let parted =
        first > 0 && sentence.is_sign(first - 1, ',') && sentence.is_any(first, &["in", "for"]);
    let confines = confines(&condition.expr) && offers_alternate(sentence);
    (closes && parted && confines).then(|| Permitted {
        amounts: condition.triggers.clone(),
        words: (!in_option).then_some((0, first - 1)),
    })
}

/// `may be cut back to 75 mm where the depth of sealant is raised by 5 mm`, `24 in. is allowed if clips 0.1 in. thick are used`: what must be done in
/// return for a permission. What is only found there, such as a wide joint, is a case.
fn rests_on(sentence: &Sentence<'_>, condition: &Found) -> Option<Permitted> {
    const OPENERS: &[&str] = &["where", "when", "if"];
    const DONE: &[&str] = &[
        "raised",
        "increased",
        "made",
        "used",
        "placed",
        "fixed",
        "grouted",
        "filled",
        "deepened",
        "thickened",
        "provided",
        "applied",
        "added",
        "fastened",
        "lapped",
        "installed",
        "packed",
    ];
    let (first, last) = (condition.first, condition.last);
    let is_done = (first..last).any(|at| {
        sentence.is_any(at, &["is", "are"])
            && (sentence.is_any(at + 1, DONE) || sentence.is_any(at + 2, DONE))
    });
    // "where the joint is filled with ..." and a number compared with tell cases apart.
    let compared = condition
        .triggers
        .iter()
        .any(|index| super::compared(sentence, *index));
    let before = (0..first)
        .rev()
        .find(|at| sentence.is_sign(*at, ';'))
        .map_or(0, |at| at + 1);
    let plain = !sentence.has_any(before, first, NEGATIONS)
        && !sentence.has_any(first, last, &["and", "or"])
        && !(first..last).any(|at| {
            sentence.is_any(at, NEGATIONS)
                && !sentence.is_any(at + 1, &["less", "more", "fewer", "thinner", "thicker"])
        })
        && !sentence.has_any(before, first, &["omitted", "waived", "left"]);
    let may = sentence.has_any(before, first, MAY)
        || (before..first)
            .any(|at| sentence.is_any(at, &["is", "are"]) && sentence.is_any(at + 1, SUITED));
    let rests = sentence.is_any(first, OPENERS)
        && before < first
        && !condition.triggers.is_empty()
        && (is_done || begins_with_limit(sentence, condition))
        && !compared
        && plain
        && may;
    rests.then(|| Permitted {
        amounts: condition.triggers.clone(),
        words: Some((before, first)),
    })
}

/// `may be used if at least 5/8 in. deep throughout`: a proviso that is nothing but a limit of what is used.
fn begins_with_limit(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let [trigger] = condition.triggers.as_slice() else {
        return false;
    };
    let number = sentence.amount(*trigger).map_or(0, |amount| amount.first);
    let limit = (condition.first + 1..number).all(|at| {
        sentence.is_any(
            at,
            &[
                "at", "least", "most", "not", "no", "less", "more", "than", "min", "minimum",
                "max", "maximum",
            ],
        )
    });
    let used = (0..condition.first).any(|at| {
        sentence.is_any(at, MAY)
            && sentence.is_word(at + 1, "be")
            && sentence.is_any(at + 2, &["used", "retained", "kept", "reused", "left"])
    });
    sentence.is_word(condition.first, "if") && number > condition.first + 1 && limit && used
}

/// Whether something is permitted in a condition's stretch, and in which words.
#[allow(
    clippy::option_option,
    reason = "nothing permitted, permitted of all, permitted of what the words say"
)]
fn granted(
    sentence: &Sentence<'_>,
    condition: &Found,
    before: usize,
    after: usize,
) -> Option<Option<(usize, usize)>> {
    let is = |at: usize| sentence.is_any(at, &["is", "are"]);
    // `Only in joints narrower than 3 in.`, `For joint widths not exceeding 60 mm only`
    let only_before = condition.first == before + 1 && sentence.is_word(before, "only");
    let only_after = condition.first == before
        && (sentence.is_word(condition.last.saturating_sub(1), "only")
            || sentence.is_word(condition.last, "only") && condition.last + 1 == after);
    let whole = condition.last + usize::from(sentence.is_word(condition.last, "only")) == after;
    // `max. 10 %, for joint widths ≤ 30 mm only` says where the share holds.
    let lone = || {
        let stretch = (0..condition.first)
            .rev()
            .find(|at| sentence.is_sign(*at, ';'))
            .map_or(0, |at| at + 1);
        !(stretch..condition.first).any(|at| sentence.amount_at(at).is_some())
    };
    if (only_before || only_after) && whole && lone() {
        return Some(None);
    }
    if condition.first == before {
        // `Hollows up to 4 mm deep may be left`, `pinholes up to 1 mm are tolerated`
        let tolerated = is(condition.last) && sentence.is_any(condition.last + 1, SUITED)
            || sentence.is_any(condition.last, MAY)
                && sentence.is_any(condition.last + 1, &["be", "remain", "stay"])
                && (sentence.is_any(condition.last + 2, &["left", "tolerated", "ignored"])
                    || condition.last + 2 == after);
        // `Joints of not more than 4 in. can be sealed.` says which joints there may be.
        let sealed = sentence.is_any(before, &["joint", "joints", "gaps", "openings"])
            && sentence.is_any(condition.last, MAY)
            && sentence.is_word(condition.last + 1, "be")
            && sentence.is_any(
                condition.last + 2,
                &[
                    "sealed",
                    "filled",
                    "protected",
                    "closed",
                    "treated",
                    "covered",
                ],
            )
            && condition.last + 3 == after;
        if tolerated || sealed {
            return Some(None);
        }
        let may = sentence.is_any(condition.last, MAY);
        return may.then_some(Some((condition.last, after)));
    }
    let grants = sentence.has_any(before, condition.first, MAY)
        || (before..condition.first).any(|at| {
            is(at)
                && (sentence.is_any(at + 1, SUITED)
                    || sentence.is_word(at + 1, "only") && sentence.is_any(at + 2, SUITED))
        });
    // `The joint is permissible in width up to 90 mm` is said of every joint.
    let of_joint = (before..before + 3).any(|at| sentence.is_any(at, &["joint", "joints", "gap"]))
        && !sentence.has_any(before, condition.first, MAY);
    grants.then(|| (!of_joint).then_some((before, condition.first)))
}
