//! Hours that name a rating: "for the 2 h rating", "1 and 2 Hr walls", "at 3 h", "1 Hr: ...".

mod lasting;
mod opening;
mod stated;

pub(super) use self::lasting::{LASTS, speaks_of_time};

use core::ops::Range;
use measure::Unit;

use self::lasting::{ends_several, ends_stretch, lasts};
use self::opening::{in_the_case, of_a_rating, of_compared_ratings, up_to};
use self::stated::{gives, is_bounded, is_given_by_a_count, is_limited, is_stated};
use super::denied_rating::denied;
use super::own_rating::is_of_the_part;
use super::rating_labels::is_label;
use super::{Found, test};
use crate::model::Expr;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Words after the hours that make them a rating.
const RATED: &[&str] = &[
    "rating",
    "ratings",
    "rated",
    "fire-rated",
    "fire",
    "wall",
    "walls",
    "assembly",
    "assemblies",
    "partition",
    "partitions",
    "joint",
    "joints",
    "system",
    "systems",
    "f",
    "t",
    "construction",
    "class",
    "classification",
    "fire-resistance",
    "resistance",
    "rate",
    "version",
];

/// Words that may introduce the condition.
const INTRODUCE: &[&str] = &["for", "at", "in", "of", "with", "on", "when", "where", "if"];

pub(super) fn ratings(sentence: &Sentence<'_>, taken: &[usize]) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    let mut index = 0;
    while index < sentence.amounts.len() {
        let group = group(sentence, index, taken);
        if group.is_empty() {
            index += 1;
            continue;
        }
        if let Some(condition) = condition(sentence, &group) {
            found.push(condition);
        }
        index += group.len();
    }
    found
}

/// The hours listed together from an amount on: `1 and 2 Hr`, `the 3/4-hour and 1-hour ratings`.
fn group(sentence: &Sentence<'_>, start: usize, taken: &[usize]) -> Vec<usize> {
    let mut group: Vec<usize> = Vec::new();
    for index in start..sentence.amounts.len() {
        let Some(amount) = sentence.amount(index) else {
            break;
        };
        let hours = is_rating_time(amount) && !taken.contains(&index);
        let listed = group
            .last()
            .and_then(|last| sentence.amount(*last))
            .is_none_or(|last| {
                let between = last.last..amount.first;
                between.len() <= 3
                    && between.clone().all(|at| {
                        sentence.is_sign(at, ',')
                            || sentence.is_sign(at, '&')
                            || sentence.is_any(at, &["and", "or", "the", "rating", "to", "a"])
                            // "for 1 Hr walls and 2 Hr walls"
                            || sentence.is_any(at, &["wall", "walls"])
                                && sentence.is_any(at + 1, &["and", "or"])
                    })
            });
        if !(hours && listed) {
            break;
        }
        group.push(index);
    }
    group
}

/// Hours, or minutes as European classes count them.
pub(super) fn is_rating_time(amount: &Amount) -> bool {
    match amount.unit {
        Unit::Hour => true,
        Unit::Minute => {
            [15, 20, 30, 45, 60, 90, 120, 180, 240]
                .iter()
                .any(|minutes| amount.lo == *minutes)
                && amount.hi.is_none()
        }
        _ => false,
    }
}

/// What has a rating that isn't the joint's: "a 3 h floor", "a 1 hr door".
const OTHERS: &[&str] = &[
    "floor", "floors", "shaft", "beam", "beams", "roof", "roofs", "barrier", "barriers", "door",
    "doors", "column", "columns", "duct", "damper", "slab", "deck",
];

fn condition(sentence: &Sentence<'_>, group: &[usize]) -> Option<Found> {
    let (first, last) = (
        sentence.amount(*group.first()?)?,
        sentence.amount(*group.last()?)?,
    );
    let mut start = first.first;
    while start > 0
        && sentence.is_any(
            start - 1,
            &[
                "the", "a", "an", "each", "any", "both", "min", "minimum", "max", "maximum",
                "rating", "is", "ratings",
            ],
        )
        && first.first - start < 3
    {
        start -= 1;
    }
    if is_limited(sentence, start) {
        return None;
    }
    if is_stated(sentence, start, first.first, last.last) {
        return None;
    }
    let of_the_part = is_of_the_part(sentence, first.first, last.last, group.len());
    if group.len() == 1 && of_the_part {
        return None;
    }
    if start < first.first && is_bounded(sentence, start) {
        return None;
    }
    // `2 layers @ 2 hr`
    let introduced =
        start > 0 && (sentence.is_any(start - 1, INTRODUCE) || sentence.is_sign(start - 1, '@'));
    // `610 mm o.c. max. 2 h: 406 mm`: the stop of an abbreviation may end what stood before.
    let opens = start == 0 || sentence.is_sign(start - 1, ';') || sentence.ends_in_stop(start - 1);
    let (end, named) = after_hours(sentence, last.last);
    let labelled = is_label(sentence, group, start, end, opens);
    // `4 in. min, 1 hr; 6 in. min, 2 hr`
    let ends_one =
        ends_stretch(sentence, start, end) && ends_several(sentence) && !speaks_of_time(sentence);
    let sought = sentence.has_any(
        start.saturating_sub(6),
        start,
        &["rating", "ratings", "rated"],
    );
    let lasts = lasts(sentence, first, last);
    let bracketed = start > 0 && sentence.is_sign(start - 1, '(') && sentence.is_sign(end, ')');
    let given = !lasts && is_given_by_a_count(sentence, start, end);
    let reads = named
        || !lasts && up_to(sentence, start, group).is_some()
        || given
        || bracketed
        || labelled
        || ends_one && !lasts
        || sought
        || (introduced && !lasts)
        || (opens && !lasts && group.len() > 1);
    if !reads || (lasts && !named) {
        return None;
    }
    let from = if given && gives(sentence, start - 1) {
        start - 1
    } else if introduced {
        of_a_rating(sentence, start - 1).unwrap_or(start - 1)
    } else {
        start
    };
    let from = of_compared_ratings(sentence, start).unwrap_or(from);
    let from = in_the_case(sentence, from).unwrap_or(from);
    let from = up_to(sentence, start, group).unwrap_or(from);
    if let Some(tokens) = denied(sentence, from, end) {
        return Some(in_words(sentence, tokens, group));
    }
    if sentence.is_any(end, OTHERS) {
        return Some(in_words(sentence, from..end + 1, group));
    }
    // "1 or 2 hr rated wall, studs max 24 in. OC" may be said of the studs in every joint.
    if of_the_part {
        return Some(in_words(sentence, from..end, group));
    }
    let parts: Vec<Expr> = group
        .iter()
        .filter_map(|index| test(sentence, *index, "joint.rating"))
        .collect();
    let expr = if parts.len() > 1 {
        Expr::Any(parts.clone())
    } else {
        parts.first()?.clone()
    };
    Some(Found {
        first: from,
        last: end,
        expr,
        triggers: group.to_vec(),
        parts,
    })
}

/// A condition that only a person can test, in the words of its tokens.
fn in_words(sentence: &Sentence<'_>, tokens: Range<usize>, hours: &[usize]) -> Found {
    Found {
        first: tokens.start,
        last: tokens.end,
        expr: Expr::Words(sentence.words(tokens.start, tokens.end).to_owned()),
        triggers: hours.to_vec(),
        parts: Vec::new(),
    }
}

/// The token after the words that make hours a rating, and whether there are any: `2 Hr fire-rated wall`, `1 h or less`.
pub(super) fn after_hours(sentence: &Sentence<'_>, last: usize) -> (usize, bool) {
    const MOST: usize = 5;
    let mut end = last;
    let mut named = false;
    for _ in 0..MOST {
        if sentence.is_any(end, RATED) {
            named = true;
            end += 1;
        } else if (sentence.is_any(end, &["or", "and"])
            && sentence.is_any(end + 1, &["less", "more", "greater"]))
            || sentence.is_word(end, "gypsum")
        {
            end += 2;
        } else if sentence.is_any(end, &["only", "sought", "required", "maximum"]) {
            end += 1;
        } else {
            break;
        }
    }
    (end, named)
}
