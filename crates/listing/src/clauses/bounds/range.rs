//! Two limits that are one range: "no less than 2-1/2 in. nor more than 6 in."

use super::Reading;
use crate::model::{Bound, Relation, SecondValue};
use crate::phrase::Amount;
use crate::rules::{Finding, Sentence, is_spaced};

/// "no less than 2-1/2 in. nor more than 6 in." is one range, and so is "max 8 in. and min 1 in. wide".
pub(super) fn join_range(
    sentence: &Sentence<'_>,
    last: &Reading,
    amount: &Amount,
    (finding, rule): (&Finding, &str),
) -> Option<Bound> {
    let first = sentence.amount(*last.amounts.last()?)?;
    let rising = match (last.bound.relation, finding.relation) {
        (Relation::AtLeast, Relation::AtMost) => true,
        (Relation::AtMost, Relation::AtLeast) if reads_a_word(last.rule) && reads_a_word(rule) => {
            false
        }
        // "no more than 3 in., nor less than 3/4 in."
        (Relation::AtMost, Relation::AtLeast)
            if last.rule == "comparison before" && sentence.is_word(finding.from, "nor") =>
        {
            false
        }
        _ => return None,
    };
    if first.unit != amount.unit || last.amounts.len() > 1 || amount.hi.is_some() {
        return None;
    }
    // "50 mm deep or more at no more than 600 mm centres" bounds a depth and a spacing.
    if is_spaced(sentence, first.last) != is_spaced(sentence, amount.last) {
        return None;
    }
    if places_differently(sentence, (last.from, first), (finding.from, amount)) {
        return None;
    }
    // "nor shall it be narrower than 4 in." says it in a clause of its own.
    let own_clause = sentence.is_word(finding.from, "nor")
        && sentence.has_any(finding.from, amount.first, &["shall", "must", "may"]);
    if own_clause {
        return None;
    }
    let between = sentence.skip_parentheses(first.last)..finding.from.max(first.last);
    // `1-1/2 in. min, 3 in. max` and `min 1/2 in., max 1 in.`: a comma joins only limits that stand alike with nothing else between.
    let after = last.rule == "word after" && finding.from == amount.first;
    let before =
        last.rule == "word before" && finding.from + 1 == amount.first && between.len() <= 1;
    // `no less than 1/4 in., no more than 1 in.`
    let compared = last.rule == "comparison before"
        && rule == "comparison before"
        && rising
        && between.len() <= 1
        && sentence.is_any(finding.from, &["no", "not"])
        && sentence.is_any(last.from + 1, &["less", "below", "under"])
        && !sentence.has_word(sentence.skip_parentheses(amount.last));
    // A comma and a preposition begin another phrase: "0.84 mm min, at 600 mm o.c. max".
    let another = between.clone().any(|at| sentence.is_sign(at, ','))
        && between
            .clone()
            .any(|at| sentence.is_any(at, &["at", "to", "of", "is", "shall", "may"]));
    // `min 35 long at max 300`, `3-5/8 in. min at 24 in. max`
    let another = another
        || between.clone().any(|at| {
            sentence.is_word(at, "at")
                && (sentence.is_any(at + 1, &["min", "minimum", "max", "maximum"])
                    || at + 1 == amount.first)
        });
    // `max. joint width 2 in. min. overlap 1/2 in.`: what stands between a limit and its number is another's name.
    let named = reads_a_word(rule)
        && finding.from < amount.first
        && (finding.from + 1..amount.first)
            .any(|at| sentence.has_word(at) && !sentence.is_any(at, JOINING));
    let another = another || named || parts_closed_from_opened(sentence, last, rule, &between);
    // `3 in. wide or up to 4 in. when ...`
    let another = another
        || between
            .clone()
            .any(|at| sentence.is_word(at, "or") && sentence.is_word(at + 1, "up"));
    // `20 mm ≤ cavity ≤ 60 mm`
    let chain = last.rule == "sign after" && rule == "sign before";
    let joins = !another
        && (chain
            || between.clone().all(|at| {
                ((after
                    || before
                    || compared
                    || !rising
                    || sentence.is_any(at + 1, &["and", "but"]))
                    && sentence.is_sign(at, ','))
                    || sentence.is_any(at, JOINING)
            }));
    let (low, high) = if rising {
        (&first.lo, &amount.lo)
    } else {
        (&amount.lo, &first.lo)
    };
    // "depth max 1 in., min 1/4 in. lap" bounds two things.
    if names_anew(sentence, last, &between, amount) || measures_another(sentence, first, amount) {
        return None;
    }
    // "max 8 in. or min 1 in." would be two alternatives.
    let falling_or = !rising && between.clone().any(|at| sentence.is_word(at, "or"));
    (joins && !falling_or && between.len() <= 5 && low < high).then(|| Bound {
        relation: Relation::Between,
        lo: Some(*low),
        hi: Some(*high),
        at: last.bound.at.join(sentence.source(amount.at)),
        second: joined_seconds(last, amount, rising),
        ..last.bound.clone()
    })
}

/// Whether one of two limits says how far apart things stand or from what, and the other doesn't.
fn places_differently(
    sentence: &Sentence<'_>,
    (last_from, first): (usize, &Amount),
    (from, amount): (usize, &Amount),
) -> bool {
    const APART: &[&str] = &["apart", "closer", "nearer", "farther", "further"];
    const FROM: &[&str] = &["to", "from"];
    let says = |from: usize, amount: &Amount, words: &[&str]| {
        sentence.has_any(from.min(amount.first), amount.first, words)
    };
    // "no smaller than 5 in. and no farther apart than 60 in." bounds a size and a spacing.
    let apart = says(from, amount, APART);
    if apart != says(last_from, first, APART) {
        return true;
    }
    // "farther apart than 12 in. nor closer to the edge than 1 in." bounds a spacing and a distance.
    apart && says(from, amount, FROM) != says(last_from, first, FROM)
}

/// `12 in. max, min 1 in. wide`: a comma parts a number that its limit closes from one that its limit opens.
fn parts_closed_from_opened(
    sentence: &Sentence<'_>,
    last: &Reading,
    rule: &str,
    between: &core::ops::Range<usize>,
) -> bool {
    let commas = between.clone().any(|at| sentence.is_sign(at, ','));
    last.rule == "word after" && rule == "word before" && commas
}

/// Words that may stand between two limits of one range.
const JOINING: &[&str] = &[
    "and",
    "nor",
    "but",
    "to",
    "or",
    "shall",
    "may",
    "is",
    "a",
    "at",
    "min",
    "minimum",
    "max",
    "maximum",
    "of",
    "more",
    "least",
    "most",
    "greater",
    "the",
    "by",
    "when",
    "installed",
    "wide",
    "deep",
    "thick",
    "long",
    "high",
];

/// Whether a rule reads a qualifying word beside its number: "min 4 in."
fn reads_a_word(rule: &str) -> bool {
    rule == "word before" || rule == "word after"
}

/// Whether the words after a second limit name something that the first isn't about: "max 1 in., min 1/4 in. *lap*".
fn names_another(sentence: &Sentence<'_>, first: &Amount, amount: &Amount) -> bool {
    const SAME: &[&str] = &[
        "wide", "deep", "thick", "thk", "long", "high", "in", "with", "when", "where", "for",
        "and", "or", "min", "minimum", "max", "maximum", "overall", "clear", "to", "least", "most",
    ];
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum"];
    const MEASURES: &[&str] = &[
        "edge",
        "end",
        "lap",
        "overlap",
        "depth",
        "thickness",
        "embedment",
        "recess",
        "distance",
        "bearing",
        "width",
        "spacing",
        "length",
        "penetration",
        "leg",
    ];
    let after = |amount: &Amount| sentence.word(sentence.skip_parentheses(amount.last));
    let word = after(amount);
    // `16 in. max, 2 in. min edge distance`
    let behind = sentence.skip_parentheses(amount.last) + 1;
    if LIMITS.contains(&word) && sentence.is_any(behind, MEASURES) {
        return true;
    }
    !word.is_empty() && !SAME.contains(&word) && word != after(first)
}

/// Whether a second limit names another thing than the one before. `1-1/2 in. min to 3 in. max depth` is one depth.
fn names_anew(
    sentence: &Sentence<'_>,
    last: &Reading,
    between: &core::ops::Range<usize>,
    amount: &Amount,
) -> bool {
    let goes_to = last.rule == "word after"
        && between.len() == 2
        && sentence.is_word(between.start + 1, "to");
    let first = last.amounts.last().and_then(|own| sentence.amount(*own));
    reads_a_word(last.rule)
        && !goes_to
        && first.is_some_and(|first| names_another(sentence, first, amount))
}

/// Whether two limits say that they measure different things: "not less than 1 in. *wide* nor more than 2 in. *deep*".
fn measures_another(sentence: &Sentence<'_>, first: &Amount, amount: &Amount) -> bool {
    const MEASURES: &[&str] = &["wide", "deep", "thick", "long", "high"];
    let measure = |amount: &Amount| {
        let word = sentence.word(sentence.skip_parentheses(amount.last));
        MEASURES.contains(&word).then_some(word)
    };
    matches!((measure(first), measure(amount)), (Some(one), Some(other)) if one != other)
}

/// The second values of two limits as one range, where both have one.
fn joined_seconds(last: &Reading, amount: &Amount, rising: bool) -> Option<SecondValue> {
    let (one, other) = last.bound.second.as_ref().zip(amount.second.as_ref())?;
    let (low, high) = if rising {
        (one.lo, Some(other.lo))
    } else {
        (Some(other.lo), one.lo)
    };
    Some(SecondValue {
        lo: low,
        hi: high,
        unit: one.unit,
        agreement: one.agreement.max(other.agreement),
    })
}
