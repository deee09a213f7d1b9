//! A denial that reaches past its first limit: "shall *not* be less than 1 in., *or more than 2 in.*", "do *not* place clips within 2 in. of an edge *or
//! more than 12 in. apart*".
//!
//! What compares behind an earlier denial would say the opposite of what is meant if it stood for itself. It is turned as the limit before it was where an
//! "or" or a comma joins the two and nothing else begins between; where nobody can tell, the number is left unread. A statement with a verb of its own is
//! under no denial: "shall not be cut, and clips are within 6 in. of the ends". What it would misread: a statement that begins without a verb behind
//! "and", which it leaves to a person.

use super::comparison_before::{NEGATIONS, compares_down, compares_up, is_refused};
use super::turned_down::is_turned_down;
use super::{Finding, Sentence, bounded_alone};
use crate::model::Relation;

/// What an earlier denial in the sentence does to a comparison.
enum Denial {
    /// None reaches it.
    Free,
    /// It is denied as the limit before it is.
    Denied,
    /// Nobody can tell.
    Doubtful,
}

/// Words that deny what follows, besides the negations.
const KEEPS_FROM: &[&str] = &[
    "avoid",
    "avoids",
    "avoiding",
    "prevent",
    "prevents",
    "preventing",
    "forbidden",
    "prohibited",
    "forbid",
    "forbids",
    "prohibit",
    "prohibits",
    "refrain",
];
/// Verbs of a statement of its own.
const VERBS: &[&str] = &[
    "shall", "must", "should", "will", "may", "can", "is", "are", "was", "were", "has", "need",
    "needs",
];
/// Words behind which another case begins.
const CASES: &[&str] = &[
    "but", "unless", "except", "save", "until", "provided", "where", "when", "if", "while",
    "whereas",
];
/// Words that may stand between what joins two limits and the second: `or to be placed more than`.
const LIGHT: &[&str] = &[
    "be", "have", "to", "by", "a", "an", "any", "is", "are", "stand", "lie", "of",
];

/// The finding of a comparison, as the denial before it has it; none where that can't be told.
pub(super) fn further_denied(
    sentence: &Sentence<'_>,
    index: usize,
    finding: Finding,
    rule: &str,
) -> Option<Finding> {
    if !may_be_denied(finding.relation, rule) {
        // `not up to 4 in.`, `not at or above 4 in.`: a limit that is denied as it stands.
        let denied = limits(sentence, finding, rule)
            && finding.from > 0
            && denies(sentence, finding.from - 1);
        return (!denied).then_some(finding);
    }
    match denial(sentence, index, &finding) {
        Denial::Free => Some(finding),
        Denial::Denied => Some(Finding {
            relation: turned(finding.relation)?,
            ..finding
        }),
        Denial::Doubtful => None,
    }
}

/// Whether a finding is a limit whose own words deny nothing.
fn limits(sentence: &Sentence<'_>, finding: Finding, rule: &str) -> bool {
    let limit = matches!(finding.relation, Relation::AtLeast | Relation::AtMost);
    limit
        && matches!(rule, "limit verb" | "comparison before" | "word before")
        && !denies(sentence, finding.from)
}

/// Whether a relation is one that a denial would turn: a comparison, or a distance within which something stands.
fn may_be_denied(relation: Relation, rule: &str) -> bool {
    matches!(relation, Relation::LessThan | Relation::MoreThan)
        || rule == "within a distance" && relation == Relation::AtMost
}

fn turned(relation: Relation) -> Option<Relation> {
    if relation == Relation::AtMost {
        Some(Relation::AtLeast)
    } else {
        relation.negated()
    }
}

fn denial(sentence: &Sentence<'_>, index: usize, finding: &Finding) -> Denial {
    let from = finding.from;
    if goes_on_from_a_condition(sentence, from) {
        return Denial::Doubtful;
    }
    let Some(not) = denial_before(sentence, from) else {
        let opens = from == 0 && may_not_be_used(sentence, index);
        return match denied_behind(sentence, index) {
            true if opens => Denial::Denied,
            true => Denial::Doubtful,
            false => Denial::Free,
        };
    };
    let alternative = (not..from)
        .rev()
        .take_while(|at| !sentence.is_word(*at, "and"))
        .any(|at| sentence.is_any(at, &["or", "nor"]));
    // `splices prohibited within 12 in. of a clip, and the next within 18 in.`
    if sentence.is_any(not, &["prohibited", "forbidden"]) && !alternative {
        return Denial::Free;
    }
    let compares = compares_itself(sentence, not);
    // `no more than 24 in. OC and within 2 in. of each end`, `not less than 4 pcf, melting above 1000 °C`: that denial has its comparison, unless the next
    // comparison goes on with nothing of its own: `nothing less than 4 in. deep, lighter than 4 pcf`.
    if compares
        && !alternative
        && (finding.relation == Relation::AtMost || !goes_on_behind_a_comma(sentence, from))
    {
        return Denial::Free;
    }
    let attributive = compares && !sentence.is_word(not + 1, "exceed");
    if joins_the_limit_before(sentence, index, from, attributive) {
        Denial::Denied
    } else {
        Denial::Doubtful
    }
}

/// Whether a denial is of the comparison right behind it: `no more than`, `not exceeding`, `in no case under`.
fn compares_itself(sentence: &Sentence<'_>, not: usize) -> bool {
    const CASES: &[&str] = &["case", "place", "point", "event", "location"];
    let not = not + usize::from(sentence.is_any(not + 1, CASES));
    let next = sentence.word(not + 1);
    let exceeding = sentence.is_any(
        not + 1,
        &["exceed", "exceeding", "over", "under", "below", "above"],
    ) || sentence.is_word(not + 1, "to") && sentence.is_word(not + 2, "exceed");
    exceeding || compares_up(next) || compares_down(next)
}

/// Whether a comparison stands behind a comma with nothing of its own before it.
fn goes_on_behind_a_comma(sentence: &Sentence<'_>, from: usize) -> bool {
    start_of_light_words(sentence, from)
        .checked_sub(1)
        .is_some_and(|at| sentence.is_sign(at, ','))
}

/// Where the small words before a comparison begin: `be more than`, `to have more than`.
fn start_of_light_words(sentence: &Sentence<'_>, from: usize) -> usize {
    (0..from)
        .rev()
        .take_while(|at| sentence.is_any(*at, LIGHT))
        .last()
        .unwrap_or(from)
}

/// The word that denies what a comparison says, looked for back to where another statement ends.
fn denial_before(sentence: &Sentence<'_>, from: usize) -> Option<usize> {
    let mut passed_number = false;
    let mut at = from;
    while at > 0 {
        at = before_group(sentence, at - 1, from)?;
        if denies(sentence, at) {
            return Some(at);
        }
        passed_number |= sentence.amount_at(at).is_some();
        if sentence.is_any(at, VERBS) {
            return denied_subject(sentence, at);
        }
        if sentence.is_sign(at, ';')
            && !goes_on(sentence, at + 1)
            && !in_a_denied_list(sentence, at)
        {
            return None;
        }
        if sentence.is_any(at, CASES) && !passed_number {
            return None;
        }
    }
    None
}

/// The token itself, or the first of the parenthesis or the condition that ends with it and holds no part of the comparison.
fn before_group(sentence: &Sentence<'_>, at: usize, from: usize) -> Option<usize> {
    if sentence.in_condition(at) && !sentence.in_condition(from) {
        return (0..at).rev().find(|at| !sentence.in_condition(*at));
    }
    if sentence.is_sign(at, ')') {
        return (0..at)
            .rev()
            .find(|open| sentence.closing(*open) == Some(at))
            .or(Some(at));
    }
    Some(at)
}

/// Whether a word denies what follows it.
fn denies(sentence: &Sentence<'_>, at: usize) -> bool {
    const COUNTED: &[&str] = &[
        "only",
        "just",
        "merely",
        "counting",
        "including",
        "counted",
        "included",
    ];
    // `No. 8 screws` counts, and `whether or not` leaves open.
    let shortened = sentence.is_word(at, "no")
        && (sentence.amount_at(at).is_some()
            || sentence
                .tokens_span(at, at + 1)
                .of(sentence.text)
                .ends_with('.'));
    let open = sentence.is_word(at, "not") && at > 0 && sentence.is_word(at - 1, "or");
    let negates = sentence.is_any(at, NEGATIONS) && !sentence.is_any(at + 1, COUNTED);
    (negates || sentence.is_any(at, KEEPS_FROM)) && !shortened && !open
}

/// `no fastener is to be placed within 2 in.`: the denial in the subject of a verb.
fn denied_subject(sentence: &Sentence<'_>, verb: usize) -> Option<usize> {
    (0..verb)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && !sentence.is_word(*at, "and"))
        .find(|at| denies(sentence, *at))
}

/// Whether what stands behind a semicolon goes on with what stands before it: `; or lie within 3 in.`, `; be spaced more than 24 in.`
fn goes_on(sentence: &Sentence<'_>, at: usize) -> bool {
    let word = sentence.word(at);
    sentence.is_any(
        at,
        &[
            "or", "nor", "be", "have", "within", "over", "under", "above", "below",
        ],
    ) || compares_up(word)
        || compares_down(word)
}

/// Whether a denial opens the list that a semicolon stands in: `must not: stand within 2 in.; lie within 3 in.`
fn in_a_denied_list(sentence: &Sentence<'_>, semicolon: usize) -> bool {
    const REACH: usize = 6;
    let colon = (0..semicolon).rev().find(|at| sentence.is_sign(*at, ':'));
    colon.is_some_and(|colon| (colon.saturating_sub(REACH)..colon).any(|at| denies(sentence, at)))
}

/// `where the joint is not less than 1 in., or more than 2 in., depth 4 in.`: a comparison that an "or" joins to a condition is another case of it.
fn goes_on_from_a_condition(sentence: &Sentence<'_>, from: usize) -> bool {
    let Some(or) = start_of_light_words(sentence, from)
        .checked_sub(1)
        .filter(|at| sentence.is_any(*at, &["or", "nor"]))
    else {
        return false;
    };
    let end = if or > 0 && sentence.is_sign(or - 1, ',') {
        or - 1
    } else {
        or
    };
    !sentence.in_condition(from) && end > 0 && sentence.in_condition(end - 1)
}

/// Whether the limit before is denied, and an "or" or a comma joins this one to it with nothing of its own between.
fn joins_the_limit_before(
    sentence: &Sentence<'_>,
    index: usize,
    from: usize,
    attributive: bool,
) -> bool {
    const LONGEST: usize = 9;
    let (Some(before), Some(own)) = (sentence.bound_before(index), sentence.amount(index)) else {
        return false;
    };
    let Some(first) = sentence.amount(before).filter(|first| first.last < from) else {
        return false;
    };
    let start = sentence.skip_parentheses(first.last);
    let joint = (start..from)
        .rev()
        .find(|at| sentence.is_stop(*at) || sentence.is_any(*at, &["or", "nor"]));
    let Some(joint) = joint else { return false };
    let or = sentence.is_any(joint, &["or", "nor"]);
    let light =
        (joint + 1..from).all(|at| sentence.is_any(at, LIGHT) || sentence.word(at).ends_with("ed"));
    let plain = from - start <= LONGEST
        && (start..joint).all(|at| {
            !sentence.is_any(at, VERBS)
                && !sentence.is_any(at, CASES)
                && !sentence.is_any(at, &["and", "with"])
                && !sentence.is_sign(at, ':')
                && !sentence.in_condition(at)
                && sentence.amount_at(at).is_none()
        });
    // `not less than 4 in. deep or more than 6 pcf` may offer another wool.
    let alike = !attributive || or && first.unit.dimension() == own.unit.dimension();
    let denied = || {
        bounded_alone(sentence, before).is_some_and(|(finding, rule)| {
            let turned = matches!(finding.relation, Relation::AtLeast | Relation::AtMost);
            turned
                && matches!(
                    rule,
                    "comparison before" | "within a distance" | "sign before"
                )
                && !(rule == "within a distance" && finding.relation == Relation::AtMost)
        })
    };
    (or || sentence.is_sign(joint, ',')) && light && plain && alike && denied()
}

/// Whether a number is one of several that are turned down together behind the last: `gaps less than 1/2 in. or more than 2 in. wide are not permitted`,
/// `gaps of more than 2 in. shall not be filled`.
fn denied_behind(sentence: &Sentence<'_>, index: usize) -> bool {
    let mut last = index;
    while is_joined_to_the_next(sentence, last) {
        last += 1;
        if is_turned_down(sentence, last) || is_refused(sentence, last) {
            return true;
        }
    }
    sentence
        .amount(last)
        .is_some_and(|amount| says_not(sentence, amount.last))
}

/// Whether an "or", an "and" or a comma joins the next number to this one, and no verb stands between.
fn is_joined_to_the_next(sentence: &Sentence<'_>, index: usize) -> bool {
    const LONGEST: usize = 12;
    let (Some(own), Some(next)) = (sentence.amount(index), sentence.amount(index + 1)) else {
        return false;
    };
    let between = || own.last..next.first;
    let parted = between().any(|at| {
        sentence.is_any(at, VERBS)
            || sentence.is_any(at, CASES)
            || sentence.is_sign(at, ';')
            || sentence.is_sign(at, ':')
    });
    let joined =
        between().any(|at| sentence.is_any(at, &["or", "and"]) || sentence.is_sign(at, ','));
    joined && !parted && between().len() <= LONGEST
}

/// Whether a few words behind a number a verb is denied: `wide shall not be filled`.
fn says_not(sentence: &Sentence<'_>, last: usize) -> bool {
    const REACH: usize = 4;
    let start = sentence.skip_parentheses(last);
    let denied =
        |at: usize| sentence.is_any(at, VERBS) && sentence.is_any(at + 1, &["not", "never"]);
    // `or more than 2 in. wide, are not permitted`
    (start..start + REACH)
        .take_while(|at| !sentence.is_stop(*at) || denied(at + 1))
        .take_while(|at| {
            !sentence.is_any(*at, &["and", "but", "which", "that"])
                && sentence.amount_at(*at).is_none()
        })
        .any(denied)
}

/// `Below 5 °C the coating shall not be applied.`: where nothing may be done, what opens the sentence must not be.
fn may_not_be_used(sentence: &Sentence<'_>, index: usize) -> bool {
    const USED: &[&str] = &[
        "applied",
        "used",
        "installed",
        "placed",
        "poured",
        "sprayed",
        "gunned",
        "employed",
    ];
    const REACH: usize = 6;
    let stretch = sentence
        .amount(index)
        .map_or(0..0, |amount| amount.last..amount.last + REACH);
    stretch.into_iter().any(|at| {
        let denied =
            sentence.is_any(at, &["shall", "must", "may"]) && sentence.is_word(at + 1, "not");
        denied && sentence.is_word(at + 2, "be") && sentence.is_any(at + 3, USED)
    })
}
