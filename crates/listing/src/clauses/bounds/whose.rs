//! Numbers that a limit near them may not be meant of, or that a denial over them would turn.

use measure::Unit;

use super::super::denied_list::denies_below;
use crate::model::Relation;
use crate::phrase::Amount;
use crate::rules::{Finding, Sentence, bounded, compares_down, compares_up};

/// Whether a limit that another measure of the same thing took may be meant of a bare number, too: "strips 1/2 in. deep *and 2 in. wide minimum*", "*min 3 in.
/// deep*, 4 in. wide strips".
pub(super) fn shares_a_limit(
    sentence: &Sentence<'_>,
    index: usize,
    findings: &[Option<(Finding, &'static str)>],
) -> bool {
    const MEASURES: &[&str] = &["deep", "wide", "thick", "long", "high", "tall"];
    let rule = |index: usize| findings.get(index).copied().flatten().map(|(_, rule)| rule);
    let measure = |amount: &Amount| sentence.skip_parentheses(amount.last);
    if is_size_before_the_limited(sentence, index, rule) {
        return true;
    }
    let Some(own) = sentence
        .amount(index)
        .filter(|own| sentence.is_any(measure(own), MEASURES))
    else {
        return false;
    };
    let alike = |other: &Amount| {
        other.unit == own.unit
            && sentence.is_any(measure(other), MEASURES)
            && sentence.word(measure(other)) != sentence.word(measure(own))
    };
    let joined = |from: &Amount, to: &Amount| {
        let joint = measure(from) + 1;
        to.first == joint + 1
            && (sentence.is_any(joint, &["and", "by", "x"]) || sentence.is_sign(joint, ','))
    };
    let behind = sentence.amount(index + 1).is_some_and(|next| {
        rule(index + 1) == Some("word after") && alike(next) && joined(own, next)
    });
    let before = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before))
        .is_some_and(|before| {
            rule(index - 1) == Some("word before") && alike(before) && joined(before, own)
        });
    behind || before
}

/// Whether a number is multiplied by others of which the last has a limit: "angles *1-1/2 x 2* x 1/8 in. min."
fn is_size_before_the_limited(
    sentence: &Sentence<'_>,
    index: usize,
    rule: impl Fn(usize) -> Option<&'static str>,
) -> bool {
    let times = |one: usize| {
        let pair = sentence.amount(one).zip(sentence.amount(one + 1));
        pair.is_some_and(|(own, next)| {
            let joint = own.last;
            let multiplies = sentence.is_any(joint, &["x", "by"]) || sentence.is_sign(joint, '×');
            multiplies && next.first == joint + 1 && next.unit == own.unit
        })
    };
    let last = (index..sentence.amounts.len()).find(|one| !times(*one));
    last.is_some_and(|last| last > index && rule(last) == Some("word after"))
}

/// `1 Minimum.`: a number and a limit with nothing that they count, as a note begins.
pub(super) fn is_numbered_limit(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let rest = amount.last..sentence.tokens.len();
    amount.first == 0
        && sentence.is_any(amount.last, &["min", "minimum", "max", "maximum"])
        && rest.skip(1).all(|at| sentence.is_sign(at, '.'))
}

/// `25 percent in compression, half that in extension`: a part of another number.
pub(super) fn is_part_of_that(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    amount.last > 0
        && sentence.is_any(amount.last - 1, &["half", "quarter", "third", "twice"])
        && sentence.is_any(amount.last, &["that", "this"])
}

/// `1 hr - 3`: hours with a number of something else behind a dash.
pub(super) fn is_beside_a_bare_number(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let dash = ['-', '–', '—']
        .iter()
        .any(|dash| sentence.is_sign(amount.last, *dash));
    let next = amount.last + 1;
    let bare = sentence
        .token(next)
        .is_some_and(crate::phrase::Token::is_numeric)
        && sentence.amount_at(next).is_none();
    amount.unit == Unit::Hour && dash && bare
}

/// `max width of 50 mm for walls (100 mm floors)`: another place's number, in brackets behind a limit that may reach it.
pub(super) fn is_elsewhere(sentence: &Sentence<'_>, index: usize) -> bool {
    const PLACES: &[&str] = &[
        "floor", "floors", "wall", "walls", "ceiling", "ceilings", "roof", "roofs",
    ];
    let pair = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before).zip(sentence.amount(index)));
    pair.is_some_and(|(before, own)| {
        let for_place = sentence.is_any(own.last, &["for", "in", "at"]);
        let place = own.last + usize::from(for_place);
        before.unit == own.unit
            && own.first > 0
            && sentence.is_sign(own.first - 1, '(')
            && sentence.is_any(place, PLACES)
            && sentence.is_sign(place + 1, ')')
            && bounded(sentence, index - 1).is_some_and(|(_, rule)| rule != "bare value")
    })
}

/// Whether what a rule found would be turned by a denial over it. Under a title that forbids, a comparison is turned.
pub(super) fn would_be_denied(relation: Relation, rule: &str, turned: bool) -> bool {
    let compares = matches!(relation, Relation::LessThan | Relation::MoreThan);
    compares && !turned || relation == Relation::AtMost && rule == "within a distance"
}

/// Whether a number stands in a list that its sentence opens with a denial: "Not allowed: a depth of 3 in. or less".
pub(super) fn is_denied_above(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let colon = (0..amount.first)
        .rev()
        .find(|at| sentence.is_sign(*at, ':'));
    colon.is_some_and(|colon| denies_below(sentence.words(0, colon + 1)))
}

/// Whether a limit is closed behind its number: "3 in. or less", "3 in. deep or more".
pub(super) fn is_or_so(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const FARTHEST: usize = 2;
    let after = sentence.skip_parentheses(amount.last);
    (after..after + FARTHEST).any(|at| {
        let limit = sentence.word(at + 1);
        sentence.is_word(at, "or") && (compares_up(limit) || compares_down(limit))
    })
}
