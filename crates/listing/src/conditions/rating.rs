//! Hours that name a rating: "for the 2 h rating", "1 and 2 Hr walls", "at 3 h", "1 Hr: ...".

use core::ops::Range;

use measure::Unit;

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

/// Words near hours that make them a duration.
pub(super) const LASTS: &[&str] = &[
    "cure",
    "cured",
    "curing",
    "cures",
    "dry",
    "dried",
    "drying",
    "dries",
    "after",
    "before",
    "within",
    "wait",
    "waiting",
    "interval",
    "intervals",
    "pause",
    "delay",
    "longer",
    "tack",
    "recoat",
    "old",
    "age",
    "life",
    "minutes",
    "sooner",
    "later",
    "apart",
    "exposed",
    "interrupted",
    "passes",
    "left",
    "leave",
    "following",
    "until",
    "elapse",
    "elapsed",
    "elapses",
    "stand",
    "shift",
    "rain",
    "mixing",
    "mixed",
    "set",
    "setting",
    "temperature",
    "°f",
    "overnight",
    "every",
    "per",
    "between",
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

/// Whether words before a rating bound it: "the F Rating is limited to 2 hr", "is exactly 1 h".
fn is_limited(sentence: &Sentence<'_>, start: usize) -> bool {
    let limited = |at: usize| {
        sentence.is_word(at, "to") && at > 0 && sentence.is_any(at - 1, &["limited", "restricted"])
    };
    let before = start.checked_sub(1);
    before.is_some_and(|at| sentence.is_any(at, &["exactly"]) || limited(at))
}

/// Whether a rating begins with what bounds it of the thing that it names: "Min 2 hr rated concrete floor".
fn is_bounded(sentence: &Sentence<'_>, start: usize) -> bool {
    sentence.is_any(start, &["min", "minimum", "max", "maximum"])
        && (start == 0 || !sentence.is_any(start - 1, INTRODUCE))
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
    let stopped = |at: usize| {
        sentence
            .token(at)
            .is_some_and(|token| token.span.of(sentence.text).ends_with('.'))
    };
    let opens = start == 0 || sentence.is_sign(start - 1, ';') || stopped(start - 1);
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

/// Whether "up to" stands before hours where the sentence names others, too: "4 in. *up to 2 hours* and 6 in. at 3 hours or more". Alone it may say which rating
/// there is at most.
fn up_to(sentence: &Sentence<'_>, start: usize, group: &[usize]) -> Option<usize> {
    let led = start > 2 && sentence.is_word(start - 1, "to") && sentence.is_word(start - 2, "up");
    let measured = (0..sentence.amounts.len()).any(|index| {
        let amount = sentence.amount(index);
        amount
            .is_some_and(|amount| sentence.skip_parentheses(amount.last) == start.saturating_sub(2))
    });
    let other = (0..sentence.amounts.len()).any(|index| {
        let amount = sentence.amount(index);
        !group.contains(&index) && amount.is_some_and(is_rating_time)
    });
    (led && measured && other && !speaks_of_time(sentence)).then_some(start.saturating_sub(2))
}

/// Whether a token says what something comes to: "gives".
fn gives(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(
        at,
        &[
            "give", "gives", "giving", "yield", "yields", "achieve", "achieves",
        ],
    )
}

/// Whether hours end a stretch in which a count of things gives them: `One layer gives 1 h.`, `Two layers give 2 h, three layers 3 h.`
fn is_given_by_a_count(sentence: &Sentence<'_>, start: usize, end: usize) -> bool {
    const THINGS: &[&str] = &[
        "layer", "layers", "coat", "coats", "ply", "plies", "sheet", "sheets", "board", "boards",
    ];
    let ends = sentence.token(end).is_none()
        || sentence.is_stop(end)
        || sentence.is_sign(end, '.') && sentence.token(end + 1).is_none();
    let Some(before) = start.checked_sub(1) else {
        return false;
    };
    let elided = !gives(sentence, before);
    let thing = if elided {
        before
    } else {
        let Some(thing) = before.checked_sub(1) else {
            return false;
        };
        thing
    };
    let counted = thing > 0
        && sentence.is_any(thing, THINGS)
        && sentence.amounts.iter().any(|amount| {
            amount.unit == Unit::Count && (amount.last == thing || amount.last == thing + 1)
        });
    let said = !elided || (0..thing).any(|at| gives(sentence, at));
    ends && counted && said
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

/// Whether hours are a time that passes: by the words near them, or because no rating is longer than four hours.
fn lasts(sentence: &Sentence<'_>, first: &Amount, last: &Amount) -> bool {
    const BEFORE: usize = 7;
    const BEHIND: usize = 4;
    // "one layer per side for 1 hr": no time goes by for a side.
    let shares = |at: usize| {
        sentence.is_word(at, "per") && sentence.is_any(at + 1, &["side", "face", "wall", "runner"])
    };
    let told = |at: usize| sentence.is_any(at, LASTS) && !shares(at);
    let near = (first.first.saturating_sub(BEFORE)..first.first).any(told)
        || (last.last..last.last + BEHIND)
            .take_while(|at| !sentence.is_sign(*at, ';'))
            .any(told);
    let short = measure::Quantity::new(last.lo, last.unit)
        .to(Unit::Hour)
        .is_some_and(|hours| hours.number <= 4);
    near || !short || is_borne(sentence, first.first)
}

/// Whether hours are how long something is borne or done, by the words of its stretch before them: "withstand 180 C for 30 min", "tested for 1 hr", "a load
/// is placed 2 ft from the edge for 30 minutes".
fn is_borne(sentence: &Sentence<'_>, hours: usize) -> bool {
    const BORNE: &[&str] = &[
        "withstand",
        "withstands",
        "withstood",
        "resist",
        "resists",
        "resisted",
        "endure",
        "endures",
        "tested",
        "load",
        "loads",
        "loaded",
        "heated",
        "heat",
        "immersed",
        "soaked",
        "submerged",
        "subjected",
        "conditioned",
        "kept",
        "held",
        "burned",
    ];
    let start = (0..hours)
        .rev()
        .find(|at| sentence.is_stop(*at) || sentence.is_sign(*at, '('))
        .map_or(0, |at| at + 1);
    hours > 0 && sentence.is_word(hours - 1, "for") && sentence.has_any(start, hours, BORNE)
}

/// Where "for ratings over" begins, that hours right behind it are compared by.
fn of_compared_ratings(sentence: &Sentence<'_>, hours: usize) -> Option<usize> {
    const COMPARING: &[&str] = &[
        "over",
        "above",
        "under",
        "below",
        "exceeding",
        "more",
        "less",
        "greater",
        "higher",
        "lower",
        "than",
        "up",
        "to",
        "not",
        "no",
    ];
    let compared = (0..hours)
        .rev()
        .take_while(|at| sentence.is_any(*at, COMPARING))
        .last()?;
    let rating = compared
        .checked_sub(1)
        .filter(|at| sentence.is_any(*at, &["rating", "ratings"]))?;
    let at = (rating.saturating_sub(3)..rating)
        .rev()
        .take_while(|at| {
            sentence.is_any(*at, &["a", "the", "fire"]) || sentence.is_any(*at, INTRODUCE)
        })
        .last()?;
    sentence.is_any(at, INTRODUCE).then_some(at)
}

/// Where "in the case of" begins, whose last word is this one.
fn in_the_case(sentence: &Sentence<'_>, of: usize) -> Option<usize> {
    let case = of.checked_sub(1)?;
    let lead = case.checked_sub(1 + usize::from(case > 0 && sentence.is_word(case - 1, "the")))?;
    let reads = sentence.is_word(of, "of")
        && sentence.is_word(case, "case")
        && sentence.is_word(lead, "in");
    reads.then_some(lead)
}

/// Where "for a rating of" begins, whose last word is "of".
fn of_a_rating(sentence: &Sentence<'_>, of: usize) -> Option<usize> {
    let rating = of.checked_sub(1)?;
    let mut at = rating.checked_sub(1)?;
    at -= usize::from(at > 0 && sentence.is_any(at, &["a", "the", "fire"]));
    let reads = sentence.is_word(of, "of")
        && sentence.is_any(rating, &["rating", "ratings"])
        && sentence.is_any(at, &["for", "at", "under"]);
    reads.then_some(at)
}

/// Whether a sentence says what is done after a while, so that its hours are no ratings: "first coat 1/16 in. wet, 2 hr; second coat".
pub(super) fn speaks_of_time(sentence: &Sentence<'_>) -> bool {
    const TIMED: &[&str] = &[
        "first", "second", "recoat", "prime", "primed", "primer", "cure", "cures", "curing", "dry",
        "dries", "drying", "skin", "skins", "tack", "wait", "set", "sets", "cured", "then",
    ];
    sentence.has_any(0, sentence.tokens.len(), TIMED)
}

/// Whether hours stand alone behind a comma and end their stretch: `4 in. min, 1 hr;`.
fn ends_stretch(sentence: &Sentence<'_>, start: usize, end: usize) -> bool {
    // `1 layer each side 1 hr; 2 layers each side 2 hr`
    let behind = start > 0
        && (sentence.is_sign(start - 1, ',')
            || sentence.is_any(start - 1, &["side", "face", "thick", "deep"]));
    let ends = sentence.token(end).is_none()
        || sentence.is_sign(end, ';')
        || sentence.is_sign(end, '.') && sentence.token(end + 1).is_none();
    behind && ends
}

/// Whether several hours of a sentence each end a stretch: one alone may say how long something takes.
fn ends_several(sentence: &Sentence<'_>) -> bool {
    let ending = |amount: &&Amount| {
        is_rating_time(amount)
            && ends_stretch(sentence, amount.first, after_hours(sentence, amount.last).0)
    };
    sentence.amounts.iter().filter(ending).count() > 1
}

/// Whether hours are said of a thing and tell no case: "achieved an F rating of 2 hours", "the T rating drops to 1/2 h", "shall have a rating of not less
/// than 2 hours", "is a 2 h assembly". "In walls with a rating of 2 hours" is a case.
fn is_stated(sentence: &Sentence<'_>, start: usize, first: usize, last: usize) -> bool {
    const CASES: &[&str] = &[
        "for", "in", "at", "with", "where", "when", "if", "whose", "having", "that", "which",
    ];
    const REACH: usize = 9;
    let stop = (0..start)
        .rev()
        .find(|at| sentence.is_stop(*at) && !sentence.is_sign(*at, ':'))
        .map_or(0, |at| at + 1);
    let rating = (first.saturating_sub(REACH).max(stop)..first)
        .rev()
        .find(|at| sentence.is_any(*at, &["rating", "ratings"]));
    // `is a 2 h assembly`
    let is_one = start > 0
        && sentence.is_any(start - 1, &["is", "are"])
        && sentence.is_any(last, &["assembly", "assemblies", "construction"]);
    // `keeps its integrity and insulation for 120 minutes`
    let keeps = start > 0
        && sentence.is_word(start - 1, "for")
        && sentence.has_any(stop, start, &["integrity", "insulation"])
        && sentence.has_any(
            stop,
            start,
            &[
                "keep",
                "keeps",
                "kept",
                "maintain",
                "maintains",
                "maintained",
                "retained",
                "retains",
            ],
        );
    let Some(rating) = rating else {
        return is_one || keeps;
    };
    // "the joint is limited to 1 in. and the rating to 2 hr"
    let limited = start == rating + 2
        && sentence.is_word(rating + 1, "to")
        && sentence.has_any(stop, rating, &["limited", "restricted"]);
    if limited {
        return true;
    }
    let said = |words: &[&str]| sentence.has_any(stop, rating, words);
    let of_case = said(CASES) && !said(&["acceptance", "conditions"]);
    let linked = (rating + 1..first).all(|at| {
        sentence.is_any(
            at,
            &[
                "of", "is", "drops", "falls", "rises", "to", "not", "no", "less", "more", "than",
                "at", "least", "most", "a", "then",
            ],
        ) || [':', '-', '–', '—', '=']
            .iter()
            .any(|sign| sentence.is_sign(at, *sign))
    });
    let has = said(&[
        "has", "have", "achieved", "achieves", "obtained", "obtains", "met", "reached", "reaches",
        "gives", "earned", "attained",
    ]);
    let verb = sentence.has_any(rating + 1, first, &["is", "drops", "falls", "rises"]);
    // `T Rating: 1 hr` and `T Rating - 0 hr` say what it is, wherever they stand; `F Rating - 2 hr: 4 in.` is a case.
    let signed = [':', '-', '–', '—', '=']
        .iter()
        .any(|sign| sentence.is_sign(rating + 1, *sign));
    let lettered = rating > stop
        && sentence.is_any(rating - 1, &["f", "t", "fh", "fth"])
        && signed
        && !sentence.is_sign(last, ':')
        && !sentence.is_sign(last, '=');
    let labelled = (stop == rating.saturating_sub(1).max(stop)
        && sentence.is_sign(rating + 1, ':'))
        || lettered;
    linked && !of_case && (has || verb || labelled)
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
