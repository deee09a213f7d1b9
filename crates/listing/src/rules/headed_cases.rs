use super::word_before::qualifier;
use super::{Finding, Sentence};
use crate::model::Relation;
use crate::phrase::Shape;

/// What is measured, in the head of a list of cases.
const MEASURES: &[&str] = &[
    "depth",
    "depths",
    "thickness",
    "thicknesses",
    "width",
    "widths",
    "height",
    "length",
    "overlap",
    "lap",
    "recess",
    "spacing",
    "density",
    "compression",
    "embedment",
];

/// What may stand between the head and its numbers besides their cases.
const JOINING: &[&str] = &[
    "and",
    "or",
    "for",
    "is",
    "are",
    "shall",
    "be",
    "as",
    "follows",
    "the",
    "following",
    "to",
    "of",
    "a",
    "an",
    "with",
    "in",
    "at",
    "oc",
    "o.c",
];

/// How far before a number its head may stand, in tokens.
const REACH: usize = 60;

/// How many words may say of what the measure is: `min depth of packing material for 1 hr`.
const NAMED: usize = 4;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    let measured = amount.unit != measure::Unit::Count && amount.shape == Shape::Single;
    let measure = measure_of_head(sentence, index).filter(|_| measured)?;
    let (relation, from) = limit_of(sentence, measure)?;
    let cased = (measure..amount.first).any(|at| sentence.in_condition(at));
    (cased && ends_its_case(sentence, amount.last)).then(|| Finding::sure(relation, from))
}

/// The measure that heads the cases before a number, when nothing else stands between them.
fn measure_of_head(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let amount = sentence.amount(index)?;
    let mut named = 0;
    let mut at = amount.first;
    while at > amount.first.saturating_sub(REACH) {
        at -= 1;
        if let Some(other) = sentence
            .amount_at(at)
            .filter(|other| sentence.is_bound(*other))
        {
            let other = sentence.amount(other)?;
            if other.unit != amount.unit || other.shape != amount.shape {
                return None;
            }
            at = other.first;
            continue;
        }
        if sentence.in_condition(at) {
            continue;
        }
        if sentence.is_any(at, MEASURES) {
            return Some(at);
        }
        let sign = [',', ';', ':', '(', ')', '/', '=', '-', '–']
            .iter()
            .any(|sign| sentence.is_sign(at, *sign));
        if sign || sentence.is_any(at, JOINING) {
            continue;
        }
        // `of packing material`, and nothing of the kind behind a number.
        named += 1;
        let word = sentence.has_word(at);
        let behind = (0..index).any(|before| {
            sentence.is_bound(before)
                && sentence.amount(before).is_some_and(|before| {
                    before.last <= at && before.first > amount.first.saturating_sub(REACH)
                })
        });
        if !word
            || named > NAMED
            || behind
            || sentence.word(at).ends_with("ed")
            || sentence.word(at) == "cut"
        {
            return None;
        }
    }
    None
}

/// The limit that opens a statement right before its measure, or stands behind it between a comma and a colon: `min depth`, `depth, min:`.
fn limit_of(sentence: &Sentence<'_>, measure: usize) -> Option<(Relation, usize)> {
    let limit = |at: usize| {
        qualifier(sentence.word(at))
            .filter(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost))
    };
    let opens = |at: usize| {
        at == 0
            || sentence.is_sign(at - 1, '.')
            || sentence.is_sign(at - 1, ';')
            || at == 1 && sentence.is_any(0, &["the", "a"])
    };
    if sentence.is_sign(measure + 1, ',') && sentence.is_sign(measure + 3, ':') && opens(measure) {
        return Some((limit(measure + 2)?, measure));
    }
    let from = measure.checked_sub(1)?;
    let from = if limit(from).is_some() {
        from
    } else {
        from.checked_sub(1)?
    };
    Some((limit(from)?, from)).filter(|_| opens(from))
}

/// Whether nothing but a case and the next number follows a number.
fn ends_its_case(sentence: &Sentence<'_>, last: usize) -> bool {
    let next = sentence.skip_parentheses(last);
    let next = next + usize::from(sentence.is_any(next, &["oc", "o.c"]));
    let sign = [',', ';', '.', ')', '/']
        .iter()
        .any(|sign| sentence.is_sign(next, *sign));
    sentence.token(next).is_none()
        || sign
        || sentence.is_any(next, &["and", "or"])
        || sentence.in_condition(next)
        || sentence.in_condition(last)
}
