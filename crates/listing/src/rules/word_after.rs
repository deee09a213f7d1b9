mod closing;
mod label;
mod set_off;
mod stretch;
mod whose;

pub(super) use self::closing::or_more;
pub(super) use self::stretch::stretch_of_a_slope;
pub(super) use self::whose::{closes_adjacent, labels_a_case};

use self::closing::{closing_word, ends_stretch, not_a_jot};
use self::set_off::{
    alternatives_closed, closes_stretch, place_closed, set_off, set_off_qualifier,
};
use self::stretch::{counted_stretch, is_one, names_fasteners};
use self::whose::{is_limited_right_before, opens_a_statement};
use super::denied::is_denied_both_ways;
use super::prefixed::limits_precede;
use super::{Finding, Sentence};
use crate::model::Relation;

/// How many words may stand between a number and the word that qualifies it.
const REACH: usize = 5;

/// Words that end the search.
const BREAKS: &[&str] = &[
    "and", "with", "for", "in", "on", "by", "onto", "from", "into", "to", "when", "where", "if",
    "that", "which", "having", "shall", "is", "are", "than", "below", "above",
];

#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    let last = amount.last;
    if limits_precede(sentence, index) || is_limited_right_before(sentence, index) {
        return None;
    }
    // `three every 20 ft minimum`: the word is said of the count, not of the stretch it is counted on.
    if amount.first > 0
        && sentence.is_any(amount.first - 1, &["every", "per"])
        && sentence
            .bound_before(index)
            .and_then(|before| sentence.amount(before))
            .is_some_and(|before| {
                before.last + 1 == amount.first
                    && !(is_one(before)
                        && (sentence.is_word(before.last, "every") || names_fasteners(sentence)))
            })
    {
        return None;
    }
    // `one splice per 1 m or fewer`: nor is "fewer".
    let rate = amount.first > 0 && sentence.is_any(amount.first - 1, &["every", "per"]);
    if rate
        && amount.unit != measure::Unit::Count
        && sentence.is_word(last, "or")
        && sentence.is_word(last + 1, "fewer")
    {
        return None;
    }
    if index > 0 && counted_stretch(sentence, index - 1) == Some(last) {
        return None;
    }
    // `1/4 in. in 10 ft or better`: the flatter, the better.
    if let Some(end) = stretch_of_a_slope(sentence, index)
        && sentence.is_word(end, "or")
        && sentence.is_word(end + 1, "better")
    {
        return Some(Finding::sure(Relation::AtMost, amount.first));
    }
    let last = counted_stretch(sentence, index)
        .or_else(|| stretch_of_a_slope(sentence, index))
        .unwrap_or(last);
    if index > 0 && stretch_of_a_slope(sentence, index - 1).is_some() {
        return None;
    }
    let mut at = sentence.skip_parentheses_but(last);
    // `4 HRS. MIN.`: the stop shortens the unit.
    if sentence.is_sign(at, '.') && closing_word(sentence, at + 1).is_some() {
        at += 1;
    }
    if let Some(relation) = set_off(sentence, last)
        .or_else(|| place_closed(sentence, last))
        .or_else(|| closes_stretch(sentence, index, last))
    {
        return Some(Finding::sure(relation, sentence.amount(index)?.first));
    }
    // `1/8 in. wet (1/16 in. dry) min.`
    if sentence.is_any(at, &["wet", "dry"])
        && sentence.is_sign(at + 1, ')')
        && closing_word(sentence, at + 2).is_some()
    {
        at += 2;
    }
    for _ in 0..=REACH {
        if opens_a_statement(sentence, at) && closing_word(sentence, at).is_some() {
            return None;
        }
        if let Some(relation) = closing_word(sentence, at) {
            return Some(Finding::sure(relation, sentence.amount(index)?.first));
        }
        // `two per length of packing as a minimum`
        if sentence.is_word(at, "as")
            && let Some((relation, end)) = set_off_qualifier(sentence, at)
            && ends_stretch(sentence, end)
        {
            return Some(Finding::sure(relation, amount.first));
        }
        if sentence.is_word(at, "on") && sentence.word(at + 1).starts_with("cent") {
            at += 2;
            continue;
        }
        if sentence.is_sign(at, ',')
            && let Some(relation) = not_a_jot(sentence, at + 1)
        {
            return Some(Finding::sure(relation, sentence.amount(index)?.first));
        }
        // `13 mm (1/2 in.), and never less`
        let denied = at + 1 + usize::from(sentence.is_any(at + 1, &["and", "but"]));
        if sentence.is_sign(at, ',') && sentence.is_any(denied, &["not", "no", "never"]) {
            let ends = sentence.is_stop(denied + 2)
                || sentence.is_sign(denied + 2, '.')
                || sentence.token(denied + 2).is_none();
            let relation = or_more(sentence.word(denied + 1))
                .filter(|_| ends && !is_denied_both_ways(sentence, denied))?;
            let opposite = if relation == Relation::AtLeast {
                Relation::AtMost
            } else {
                Relation::AtLeast
            };
            return Some(Finding::sure(opposite, sentence.amount(index)?.first));
        }
        let closes_late = sentence.is_word(at + 1, "at")
            && sentence.is_any(at + 2, &["most", "least"])
            && ends_stretch(sentence, at + 3);
        if sentence.is_sign(at, ',')
            && (closes_late || sentence.is_any(at + 1, &["or", "min", "minimum", "max", "maximum"]))
        {
            at += 1;
            continue;
        }
        // `33 percent at joint width max`: the state of the joint, and no limit of the share.
        if sentence.is_any(at, &["at", "in"])
            && sentence.has_any(
                at + 1,
                at + 4,
                &["joint", "width", "opening", "extension", "gap"],
            )
        {
            return None;
        }
        // `20 percent of the nominal width`: another thing's qualifier.
        if sentence.is_word(at, "of") && sentence.is_any(at + 1, &["the", "its", "their", "that"]) {
            return None;
        }
        // `12 in. below it (minimum)`
        let aside = (at..at + 4).find(|at| {
            sentence.is_sign(*at, '(')
                && sentence.is_sign(at + 2, ')')
                && closing_word(sentence, at + 1).is_some()
        });
        if let Some(aside) = aside.filter(|aside| (at..*aside).all(|at| sentence.has_word(at))) {
            return Some(Finding::sure(
                closing_word(sentence, aside + 1)?,
                sentence.amount(index)?.first,
            ));
        }
        if let Some(relation) = alternatives_closed(sentence, index, at) {
            return Some(Finding::sure(relation, sentence.amount(index)?.first));
        }
        let goes_on = sentence.has_word(at) && !sentence.is_any(at, BREAKS);
        if !goes_on || sentence.amount_at(at).is_some() {
            return None;
        }
        at = sentence.skip_parentheses_but(at + 1);
    }
    None
}
