//! Numbers that nothing asks for: of an exemption, "not required under 2 in.", of what is given up, "in lieu of 4 in.", of a case, "only if the joint
//! width exceeds 2 in.", of a reference, "see Item 5 for 6 in. joints", and of a line whose side nobody can tell, "none above 2 in. from the top".
//!
//! Each is left unread. What it would misread: a requirement told by an exemption of the rest, "not required except within 3 in. of the ends".

use super::Sentence;
use super::comparison_before::NEGATIONS;
use crate::phrase::Amount;

/// How far before a number the words may stand.
const REACH: usize = 9;

/// Whether nothing asks for a number.
pub(super) fn is_not_asked(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        let floor = sentence.floor(index);
        is_exempt(sentence, floor, amount)
            || is_given_up(sentence, amount.first)
            || is_not_necessary(sentence, floor, amount.first)
            || is_labelled_case(sentence, index, amount)
            || is_of_two_measures(sentence, amount)
            || is_excluded(sentence, floor, amount)
            || is_let_go(sentence, floor, amount)
            || is_case_only(sentence, floor, amount)
            || is_referred_to(sentence, amount.first)
            || is_past_a_line(sentence, floor, amount)
    })
}

/// The tokens before a number in its stretch, nearest first.
fn before<'s>(
    sentence: &'s Sentence<'_>,
    floor: usize,
    first: usize,
) -> impl Iterator<Item = usize> + 's {
    let lowest = floor.max(first.saturating_sub(REACH));
    (lowest..first)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && !sentence.is_sign(*at, '.'))
}

/// `not required under 2 in.`, `no packing required within 1 in. of the edge`, `not needed for depths over 6 in.`
fn is_exempt(sentence: &Sentence<'_>, floor: usize, amount: &Amount) -> bool {
    const NEEDED: &[&str] = &["required", "needed", "necessary"];
    /// How many words may stand between what denies and what is needed: `no packing of any kind required`.
    const NEAR: usize = 5;
    const WHERE: &[&str] = &[
        "under",
        "over",
        "below",
        "above",
        "within",
        "for",
        "in",
        "at",
        "where",
        "when",
        "if",
        "exceeding",
        "on",
    ];
    let Some(needed) =
        before(sentence, floor, amount.first).find(|at| sentence.is_any(*at, NEEDED))
    else {
        return false;
    };
    let denied = before(sentence, floor, needed).find(|at| sentence.is_any(*at, NEGATIONS));
    denied.is_some_and(|at| needed - at <= NEAR) && sentence.is_any(needed + 1, WHERE)
}

/// `need not necessarily be 4 in. deep`, `not necessarily 4 in.`, `shall not be required to exceed 1/2 in.`
fn is_not_necessary(sentence: &Sentence<'_>, floor: usize, first: usize) -> bool {
    let freed = |at: usize| {
        sentence.is_any(at, &["required", "needed", "obliged"])
            && sentence.is_word(at + 1, "to")
            && before(sentence, floor, at).any(|at| sentence.is_any(at, NEGATIONS))
    };
    before(sentence, floor, first).any(|at| {
        freed(at)
            || sentence.is_word(at, "necessarily") && at > 0 && sentence.is_word(at - 1, "not")
    })
}

/// `joints up to 2 in. - 3 in.; joints over 2 in. - 4 in.`: a case that a dash or dots lead on from, which no condition was read from.
fn is_labelled_case(sentence: &Sentence<'_>, index: usize, amount: &Amount) -> bool {
    let dash = sentence.skip_parentheses(amount.last);
    let leads = ['-', '–', '—']
        .iter()
        .any(|sign| sentence.is_sign(dash, *sign))
        || sentence.is_sign(dash, '.') && sentence.is_stop(dash);
    let next = sentence.amount(index + 1);
    let valued = next.is_some_and(|next| {
        next.first == dash + 1 && next.unit.dimension() == amount.unit.dimension()
    });
    let compared = amount.first > 0
        && sentence.is_any(
            amount.first - 1,
            &["to", "over", "under", "exceeding", "than"],
        );
    leads && valued && compared
}

/// `joint width 1 in. - 3 in. depth`: what looks like a range is one number of the one measure and one of the other.
fn is_of_two_measures(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let behind = sentence.skip_parentheses(amount.last);
    let deep = sentence.is_any(behind, &["depth", "thickness"]);
    let wide = sentence.is_any(1, &["width", "widths"]) && sentence.is_any(0, &["joint", "gap"]);
    let before = (2..amount.first).all(|at| {
        sentence.is_stop(at)
            || sentence.amount_at(at).is_some()
            || sentence.is_any(at, &["depth", "thickness"])
    });
    amount.hi.is_some() && deep && wide && before
}

/// `not used with joints max 1 in. wide`, `not suitable for joints of at least 2 in.`: the size of what something is not for.
fn is_excluded(sentence: &Sentence<'_>, floor: usize, amount: &Amount) -> bool {
    const USED: &[&str] = &[
        "used",
        "permitted",
        "allowed",
        "suitable",
        "intended",
        "accepted",
    ];
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum", "least", "most"];
    let behind = sentence.skip_parentheses(amount.last);
    let limited = before(sentence, floor, amount.first).any(|at| sentence.is_any(at, LIMITS))
        || sentence.is_any(behind, LIMITS);
    limited
        && before(sentence, floor, amount.first).any(|at| {
            at > 0
                && sentence.is_any(at, USED)
                && sentence.is_any(at - 1, &["not", "never"])
                && sentence.is_any(at + 1, &["with", "in", "for"])
        })
}

/// `may be omitted with packing at least 4 in. deep`: what lets something go, and is not asked for itself.
fn is_let_go(sentence: &Sentence<'_>, floor: usize, amount: &Amount) -> bool {
    before(sentence, floor, amount.first).any(|at| {
        sentence.is_any(at, &["omitted", "deleted", "eliminated"])
            && sentence.is_any(at + 1, &["with", "over"])
            && sentence.has_any(floor, at, &["may", "can"])
    })
}

/// `in lieu of 25 percent`, `instead of 4 in.`, `rather than 4 in.`
fn is_given_up(sentence: &Sentence<'_>, first: usize) -> bool {
    let Some(at) = first.checked_sub(1) else {
        return false;
    };
    let of = sentence.is_word(at, "of")
        && at > 0
        && sentence.is_any(at - 1, &["instead", "lieu", "place"]);
    let than = sentence.is_word(at, "than") && at > 0 && sentence.is_word(at - 1, "rather");
    of || than
}

/// `only if the joint width exceeds 2 in.`: when something is asked for, and not what. "Provided the joint is 2 in. or less" asks for it.
fn is_case_only(sentence: &Sentence<'_>, floor: usize, amount: &Amount) -> bool {
    let only = sentence.is_word(0, "only") && sentence.is_any(1, &["if", "when", "where"]);
    // "Required only with sealants deeper than 1/2 in."
    let needed = before(sentence, floor, amount.first).any(|at| {
        sentence.is_any(at, &["required", "needed"])
            && sentence.is_word(at + 1, "only")
            && sentence.is_any(at + 2, &["with", "for", "in", "over", "behind"])
    });
    (needed || only && floor == 0)
        && before(sentence, floor, amount.first)
            .any(|at| sentence.is_any(at, &["exceeds", "exceed", "over", "under", "than", "below"]))
}

/// `(see Item 5 for 6 in. joints)`: a number in words that only refer.
fn is_referred_to(sentence: &Sentence<'_>, first: usize) -> bool {
    let open = (first.saturating_sub(REACH)..first)
        .rev()
        .find(|at| sentence.is_sign(*at, '('));
    open.is_some_and(|open| {
        sentence.is_any(open + 1, &["see", "refer"])
            && sentence.closing(open).is_some_and(|close| first < close)
            && sentence.has_any(open + 2, first, &["for"])
    })
}

/// `no fasteners above 2 in. from the top`: above a line is nearer to the top and farther from the bottom; of other places nobody knows.
fn is_past_a_line(sentence: &Sentence<'_>, floor: usize, amount: &Amount) -> bool {
    const LOW: &[&str] = &[
        "bottom",
        "base",
        "sill",
        "floor",
        "foot",
        "finished",
        "underside",
        "lower",
        "below",
    ];
    let past = amount
        .first
        .checked_sub(1)
        .filter(|at| sentence.is_any(*at, &["above", "below"]));
    let Some(past) = past.filter(|past| *past >= floor) else {
        return false;
    };
    let from = sentence.skip_parentheses(amount.last);
    let denied = before(sentence, floor, past).any(|at| sentence.is_any(at, NEGATIONS));
    sentence.is_word(from, "from")
        && !sentence.has_any(from + 1, from + 4, LOW)
        && (denied || super::turned_down::is_turned_down_amount(sentence, amount))
}
