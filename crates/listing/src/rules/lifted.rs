//! What a rule read well and the words around it still take away: a value that is turned down, a limit that "need not" be kept, one of two
//! limits that can't be told apart, what nothing asks for. The number is left unread, for a person.

use super::Sentence;
use super::closed_denied::is_denied_or_case;
use super::comparison_before::NEGATIONS;
use super::denied_elsewhere::is_denied_elsewhere;
use super::not_asked::is_not_asked;
use super::pair_of_limits::is_one_of_a_pair;
use super::several_measures::is_given_out;
use super::sign_before::compares_by_sign;
use super::turned_down::is_rejected;

/// How far before a number the words may stand.
const REACH: usize = 9;

pub(super) fn is_lifted(sentence: &Sentence<'_>, index: usize, rule: &str) -> bool {
    // What compares or is a distance has turned round for its refusal already, and so has what shares its limit.
    let turns = matches!(
        rule,
        "comparison before" | "within a distance" | "shared qualifier"
    ) || rule == "sign before" && compares_by_sign(sentence, index);
    let paired = rule != "pair of limits" && is_one_of_a_pair(sentence, index);
    paired
        || is_given_out(sentence, index)
        || is_not_asked(sentence, index)
        || is_denied_elsewhere(sentence, index)
        || !turns && is_rejected(sentence, index)
        || is_denied_or_case(sentence, index, rule)
        || is_needless(sentence, index, rule)
        || rule == "comparison before" && is_unneeded(sentence, index)
        || names_no_time(sentence, index)
}

/// `a depth of more than 25 mm is not needed`, `more than two coats are unnecessary`: beyond that nothing is asked for, and nothing forbidden.
fn is_unneeded(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    let from = sentence.skip_parentheses(amount.last);
    let stretch = (from..from + REACH).take_while(|at| !sentence.is_stop(*at));
    let mut verbs = stretch.filter(|at| sentence.is_any(*at, &["is", "are"]));
    verbs.any(|at| {
        let not = usize::from(sentence.is_word(at + 1, "not"));
        not == 1 && sentence.is_any(at + 2, &["needed", "required", "necessary"])
            || sentence.is_any(at + 1, &["unnecessary", "needless"])
    })
}

/// `need not exceed 4 in.`, `not limited to 2 in.`: a limit that nothing asks for.
fn is_needless(sentence: &Sentence<'_>, index: usize, rule: &str) -> bool {
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    let mut before = (sentence
        .floor(index)
        .max(amount.first.saturating_sub(REACH))..amount.first)
        .rev()
        .take_while(|at| {
            !sentence.is_stop(*at)
                && !sentence.is_any(*at, &["and", "but", "where", "when", "if", "unless"])
        });
    before.any(|at| {
        let exceed = || sentence.has_any(at, amount.first, &["exceed", "more", "over", "than"]);
        let least = || sentence.is_word(amount.first.saturating_sub(1), "least");
        let needless = sentence.is_word(at, "need") && sentence.is_word(at + 1, "not")
            || sentence.is_any(at, &["needn't", "needn’t"]);
        let to = sentence.is_word(at + 2, "to");
        let unasked = to
            && sentence.is_word(at, "not")
            && sentence.is_any(at + 1, &["required", "needed", "have", "obliged"]);
        let permitted = sentence.is_any(at, &["may", "can", "might"])
            && sentence.is_any(at + 1, &["exceed", "be", "have", "go", "run"])
            || sentence.is_any(at, &["allowed", "permitted", "free"])
                && sentence.is_word(at + 1, "to");
        let unlimited = sentence.is_word(at, "not")
            && sentence.is_any(at + 1, &["limited", "restricted", "confined"])
            && sentence.is_word(at + 2, "to");
        let denied = sentence.has_any(sentence.floor(index), amount.first, NEGATIONS);
        // `may be of any length over 6 in.`
        let of_any = sentence.has_any(at, amount.first, &["any"]);
        (needless || unasked) && (exceed() || least())
            || unlimited
            || permitted && exceed() && !denied && !of_any && rule == "comparison before"
    })
}

/// `gauge: 20 min`, `depth 4 min`: behind the name of a size, "min" is a limit rather than minutes, and the number has no unit.
fn names_no_time(sentence: &Sentence<'_>, index: usize) -> bool {
    const SIZES: &[&str] = &[
        "gauge",
        "gage",
        "depth",
        "width",
        "thickness",
        "spacing",
        "length",
        "height",
        "density",
        "overlap",
        "lap",
        "embedment",
        "diameter",
        "recess",
        "weight",
        "layers",
    ];
    let Some(amount) = sentence
        .amount(index)
        .filter(|amount| amount.unit == measure::Unit::Minute)
    else {
        return false;
    };
    let printed = amount.at.of(sentence.text).trim_end_matches('.');
    let lead = usize::from(amount.first > 0 && sentence.is_sign(amount.first - 1, ':'));
    let label = amount.first.checked_sub(1 + lead);
    printed.to_lowercase().ends_with("min") && label.is_some_and(|at| sentence.is_any(at, SIZES))
}
