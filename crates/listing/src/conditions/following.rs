//! What a condition governs that opens a stretch of a sentence: every amount after it, to the next semicolon, the next such opening, or words that speak of every
//! case.

use super::Found;
use super::configuration::is_said_of_all;
use super::contrast::leads_to_the_rest;
use super::labels::{end_of_label, labels};
use super::led::{end_of_led, is_led};
use super::opening::{leads_to_another_case, lifts, opens_stretch, subject};
use super::variants::{comes_to_another, names_case};
use crate::model::Expr;
use crate::rules::Sentence;

pub(super) fn after_opening(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
) -> Vec<usize> {
    let Some(condition) = found.get(number) else {
        return Vec::new();
    };
    let named = heads_configuration(sentence, condition);
    // "Where the height exceeds 48 in.; use two rows": what a sentence begins with says something of what follows.
    let from = condition.last + usize::from(condition.first == 0);
    let semicolon = (from..sentence.tokens.len())
        .filter(|at| sentence.is_sign(*at, ';'))
        .find(|at| !named || is_said_of_all(sentence, at + 1))
        .unwrap_or(sentence.tokens.len());
    let next_opening = found
        .iter()
        .skip(number + 1)
        .filter(|other| other.first >= condition.last)
        .filter(|other| !named || subject(&other.expr) == subject(&condition.expr))
        .find(|other| opens(sentence, found, other) && !sentence.is_word(other.first, "whether"))
        .map_or(sentence.tokens.len(), |other| other.first);
    let always = (condition.last..sentence.tokens.len())
        .find(|at| speaks_of_every_case(sentence, condition, *at));
    let next_label = next_hours_label(sentence, condition.last);
    let bracket = end_of_brackets(sentence, condition).unwrap_or(sentence.tokens.len());
    // "Option A: 18 ga. clips 12 in. OC." says all of it of the option.
    let headed = named
        || sentence.is_sign(condition.last, ':')
            && matches!(&condition.expr, Expr::Words(words) if names_case(words));
    let next_order = if headed {
        sentence.tokens.len()
    } else {
        next_order(sentence, condition.last)
    };
    let label = end_of_label(sentence, condition).filter(|_| labels(sentence, condition));
    // "Depth 4 in., in 1 hr walls 2 in., and recess 1/4 in.": what steps in between commas reaches to the next.
    let steps_in = condition.first > 0
        && sentence.is_sign(condition.first - 1, ',')
        && leads_to_another_case(sentence, condition);
    let led = !opens_by_itself(sentence, condition) || steps_in;
    let end_of_led = if led {
        end_of_led(sentence, condition)
    } else {
        end_of_set_off(sentence, condition).unwrap_or(semicolon)
    };
    let end = semicolon
        .min(end_of_led)
        .min(label.unwrap_or(sentence.tokens.len()))
        .min(next_opening)
        .min(next_label)
        .min(bracket)
        .min(next_order)
        .min(next_key(sentence, condition.last))
        .min(comes_to_another(sentence, condition).unwrap_or(sentence.tokens.len()))
        .min(always.unwrap_or(sentence.tokens.len()));
    let own: Vec<usize> = bounds
        .iter()
        .copied()
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.first >= condition.last && amount.first < end)
        })
        .collect();
    if next_opening == end {
        return but_what_layers_share(sentence, found, number, bounds, own);
    }
    own
}

/// Whether words behind a condition hold whatever it says: "..., and in every case lapped 1 in.", "for widths over 60 mm minimum 30 %, never in excess of 50 %".
fn speaks_of_every_case(sentence: &Sentence<'_>, condition: &Found, at: usize) -> bool {
    let in_case = |which: &[&str]| {
        sentence.is_word(at, "in")
            && sentence.is_any(at + 1, which)
            && sentence.is_any(at + 2, &["case", "cases", "event"])
    };
    let never = sentence.is_word(at, "never") || in_case(&["no"]);
    in_case(&["every", "all", "any", "either"])
        || sentence.is_any(at, &["always", "otherwise", "regardless", "elsewhere"])
        || never && is_said_anew(sentence, condition, at)
        || lifts(sentence, at)
}

/// Whether what stands at `at` is said by itself: right behind a comma, or of another subject behind "and". "..., *but* never under 4 in." goes on with what is said.
fn is_said_anew(sentence: &Sentence<'_>, condition: &Found, at: usize) -> bool {
    let comma = (condition.last..at)
        .rev()
        .find(|at| sentence.is_sign(*at, ','));
    comma.is_some_and(|comma| {
        let numbered = sentence
            .amounts
            .iter()
            .any(|amount| condition.last <= amount.first && amount.last <= comma);
        let of_another = sentence.is_word(comma + 1, "and") && comma + 2 < at;
        numbered && comma + 1 == at || of_another
    })
}

/// Where the brackets end that a condition opens, or in which it leads to words of its own: "(or, if there are none, to the wall)".
fn end_of_brackets(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    let opened = condition
        .first
        .checked_sub(1)
        .and_then(|before| sentence.closing(before));
    let alternative = condition
        .first
        .checked_sub(3)
        .filter(|open| sentence.is_sign(*open, '('))
        .filter(|open| sentence.is_any(open + 1, &["or", "and", "but"]))
        .filter(|open| sentence.is_sign(open + 2, ','))
        .and_then(|open| sentence.closing(open));
    opened.or(alternative)
}

/// Where the statement ends in which a condition stands between commas behind a conjunction: "4 in. deep or, *for the 3 hour rating*, never less than 5 in., and so
/// wide that it is compressed 25 percent".
fn end_of_set_off(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    let comma = condition.first.checked_sub(1)?;
    let conjunction = comma.checked_sub(1)?;
    let set_off = sentence.is_sign(comma, ',')
        && sentence.is_sign(condition.last, ',')
        && sentence.is_any(conjunction, &["or", "and", "but"]);
    let first = sentence
        .amounts
        .iter()
        .find(|amount| amount.first >= condition.last)?;
    let numbered = sentence
        .amounts
        .iter()
        .any(|amount| amount.last <= conjunction);
    let end = (first.last..sentence.tokens.len())
        .find(|at| sentence.is_sign(*at, ',') && sentence.is_any(at + 1, &["and", "but"]))?;
    (set_off && numbered).then_some(end)
}

/// Whether a configuration heads all that stands behind its name, to the name of the next: `Configuration A - min 4 in. deep; min 4 pcf; ...`
fn heads_configuration(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let parted = [':', '-', '–', '—'];
    let begins = condition
        .first
        .checked_sub(1)
        .is_none_or(|before| sentence.is_stop(before) || sentence.is_sign(before, '.'));
    begins
        && subject(&condition.expr) == Some("configuration")
        && parted
            .iter()
            .any(|sign| sentence.is_sign(condition.last, *sign))
}

/// Of the amounts behind the first of two openings those that the second doesn't share: "for 1 hour a single layer of board 5/8 in. thick and for 2 hours two
/// layers" asks for such boards in both.
fn but_what_layers_share(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
    own: Vec<usize>,
) -> Vec<usize> {
    let is_count = |index: &usize| {
        let amount = sentence.amount(*index);
        amount.is_some_and(|amount| amount.unit == measure::Unit::Count)
    };
    let about = |condition: &Found| subject(&condition.expr).map(str::to_owned);
    let pair = found.get(number).zip(found.get(number + 1));
    let alike = pair.is_some_and(|(one, next)| about(one).is_some() && about(one) == about(next));
    let next = if alike {
        after_opening(sentence, found, number + 1, bounds)
    } else {
        Vec::new()
    };
    let counts_only = !next.is_empty() && next.iter().all(is_count);
    if counts_only && own.first().is_some_and(is_count) {
        return own.into_iter().filter(is_count).collect();
    }
    own
}

/// Whether a condition governs what stands after it.
pub(crate) fn opens(sentence: &Sentence<'_>, found: &[Found], condition: &Found) -> bool {
    opens_by_itself(sentence, condition) || is_led(sentence, found, condition)
}

fn opens_by_itself(sentence: &Sentence<'_>, condition: &Found) -> bool {
    opens_stretch(sentence, condition) || leads_to_the_rest(sentence, condition)
}

/// Where hours label what follows them, though no rule read them as a condition: `2 HR & UP = 6 IN.`
fn next_hours_label(sentence: &Sentence<'_>, from: usize) -> usize {
    const REACH: usize = 3;
    let labels = |amount: &&crate::phrase::Amount| {
        amount.first >= from
            && amount.unit == measure::Unit::Hour
            && (amount.last..=amount.last + REACH)
                .any(|at| sentence.is_sign(at, '=') || sentence.is_sign(at, ':'))
    };
    sentence
        .amounts
        .iter()
        .find(labels)
        .map_or(sentence.tokens.len(), |amount| amount.first)
}

/// Where the next line of a list begins with its letter and name, though no stop closes the line before: `e joints over 60 mm are referred to us *f label:* 8 mm`.
fn next_key(sentence: &Sentence<'_>, from: usize) -> usize {
    let is_letter = |at: usize| {
        let letter = sentence.words(at, at + 1);
        letter.len() == 1 && letter.chars().all(|c| c.is_ascii_lowercase()) && letter != "a"
    };
    let ends = sentence.tokens.len();
    (from + 1..ends)
        .find(|at| {
            is_letter(*at)
                && sentence
                    .token(at + 1)
                    .is_some_and(|name| name.word().is_some())
                && sentence.is_sign(at + 2, ':')
                && sentence
                    .token(at - 1)
                    .is_some_and(|before| before.word().is_some())
        })
        .unwrap_or(ends)
}

/// Where a second thing is to be done, behind the stop of a shortened word: `IN JOINTS OVER 2 IN. ADD CLIPS 18 IN. O.C. MAX. PACK 4 IN. DEEP`.
fn next_order(sentence: &Sentence<'_>, from: usize) -> usize {
    const ORDERS: &[&str] = &[
        "add", "pack", "coat", "cut", "fill", "provide", "install", "use", "lap", "fasten",
        "attach", "apply", "set", "hold", "place", "compress", "spray", "seal", "caulk", "anchor",
        "screw", "space", "studs", "stud", "board", "packing", "sealant", "coating", "clips",
        "runner", "track",
    ];
    let stopped =
        |at: usize| at > 0 && (sentence.ends_in_stop(at - 1) || sentence.is_sign(at - 1, '.'));
    (from + 1..sentence.tokens.len())
        .find(|at| sentence.is_any(*at, ORDERS) && stopped(*at))
        .unwrap_or(sentence.tokens.len())
}
