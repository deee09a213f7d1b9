//! What a condition governs that ends a stretch of a sentence: the amount before it, and one that is part of the same phrase.

use super::Found;
use super::opening::subject;
use super::parted::{is_not_asked, parts};
use crate::phrase::{Amount, Token};
use crate::rules::{Sentence, is_spaced};

pub(super) fn before_ending(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
    parallel: bool,
) -> Vec<usize> {
    let Some(condition) = found.get(number) else {
        return Vec::new();
    };
    let semicolon = (0..condition.first)
        .rev()
        .find(|at| sentence.is_sign(*at, ';'))
        .map_or(0, |at| at + 1);
    let previous = number
        .checked_sub(1)
        .and_then(|before| found.get(before))
        .map_or(0, |before| before.last);
    let start = semicolon.max(previous);
    // The comma before an ending belongs to it: "min 5 pcf, except for the 3 Hr rating".
    let anchor = condition
        .first
        .checked_sub(1)
        .filter(|before| sentence.is_sign(*before, ','))
        .unwrap_or(condition.first);
    let comma = (start..anchor)
        .rev()
        .find(|at| sentence.is_sign(*at, ',') && !sets_off_a_qualifier(sentence, *at))
        .map_or(start, |at| at + 1);
    let mut before: Vec<usize> = bounds
        .iter()
        .copied()
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.first >= start && amount.last <= condition.first)
        })
        .collect();
    leave_asides(sentence, condition, &mut before);
    if let Some(provided) = provided_where(sentence, found, condition, start, &before) {
        return provided;
    }
    let in_segment = |index: &usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| amount.first >= comma)
    };
    if parallel && previous > semicolon {
        return before;
    }
    // Words that can't be tested reach no further than their own stretch.
    if subject(&condition.expr).is_none() {
        before.retain(in_segment);
    }
    if parallel && !before.iter().any(in_segment) {
        return same_as_next(sentence, found, number, bounds, &before)
            .into_iter()
            .collect();
    }
    let Some(nearest) = before.pop() else {
        return Vec::new();
    };
    let parted = sentence.amount(nearest).is_some_and(|amount| {
        parts(sentence, amount.last, condition.first)
            || is_not_asked(sentence, amount.first)
            || (amount.last..condition.first).any(|at| begins_with_count(sentence, at))
    });
    if parted {
        return Vec::new();
    }
    let mut governed = vec![nearest];
    while let Some(other) = before.pop() {
        let (Some(a), Some(b)) = (
            sentence.amount(other),
            governed.last().and_then(|index| sentence.amount(*index)),
        ) else {
            break;
        };
        // "legs 3 in. long (3-1/2 in. where the joint is wider)": what is said in brackets governs nothing before them.
        let opened = (a.last..b.first).fold(0, |depth, at| {
            depth + i32::from(sentence.is_sign(at, '(')) - i32::from(sentence.is_sign(at, ')'))
        });
        // "30 mils (20 gauge) where the wall is taller": a bracket that says the number before it again.
        let again = a.last + 1 == b.first
            && sentence.closing(a.last) == Some(b.last)
            && b.last < condition.first;
        let same_phrase = (opened <= 0 || again)
            && !measures_again(sentence, a, b)
            && !(a.last..b.first).any(|at| begins_anew(sentence, at))
            && b.first <= a.last + 4
            && !(a.last..b.first).any(|at| sentence.is_stop(at) || sentence.is_any(at, PARTING));
        if !same_phrase {
            break;
        }
        governed.push(other);
    }
    governed
}

/// Leaves out what brackets say of the thing between a number and its condition: "min 4 in. of concrete *(100 to 150 pcf)* for the 2 hr rating". A count may be what
/// the case changes, and what says the number before it again goes with that number.
fn leave_asides(sentence: &Sentence<'_>, condition: &Found, before: &mut Vec<usize>) {
    let whole = |amount: &Amount| {
        let open = amount.first.checked_sub(1)?;
        let close = sentence
            .closing(open)
            .filter(|_| sentence.is_sign(open, '('))?;
        (close < condition.first).then_some(open)
    };
    let counts = |amount: &Amount| amount.unit == measure::Unit::Count;
    let unbracketed = |index: &usize| {
        let amount = sentence.amount(*index);
        amount.filter(|amount| whole(amount).is_none())
    };
    let told: Vec<&Amount> = before.iter().filter_map(unbracketed).collect();
    before.retain(|index| {
        let Some(amount) = sentence.amount(*index) else {
            return true;
        };
        let Some(open) = whole(amount).filter(|_| !counts(amount)) else {
            return true;
        };
        let again = told.iter().any(|other| other.last == open);
        let of_another = |other: &&Amount| {
            other.last < open && other.unit.dimension() != amount.unit.dimension()
        };
        again || !told.iter().any(of_another)
    });
}

/// Whether a number measures once more what the one before it does, with nothing but a qualifier between: of "15 mm min. 20 mm where the gap is wider" the second
/// alone is said of wider gaps.
fn measures_again(sentence: &Sentence<'_>, one: &Amount, next: &Amount) -> bool {
    const QUALIFIERS: &[&str] = &["min", "minimum", "max", "maximum", "nom", "nominal"];
    one.last < next.first
        && one.unit.dimension() == next.unit.dimension()
        && (one.last..next.first).all(|at| sentence.is_any(at, QUALIFIERS))
}

/// All that is to be provided under a condition that closes its sentence: "Provide clips, 20 ga., 18 in. o.c., where the joint is over 3 in."
fn provided_where(
    sentence: &Sentence<'_>,
    found: &[Found],
    condition: &Found,
    start: usize,
    before: &[usize],
) -> Option<Vec<usize>> {
    let ends = (condition.last..sentence.tokens.len()).all(|at| sentence.is_sign(at, '.'));
    let provided = ends
        && found.len() == 1
        && sentence.is_any(0, &["provide", "add"])
        && sentence.is_any(condition.first, &["where", "when", "if"]);
    if !provided {
        return None;
    }
    // "packing 4 in. deep and clips 18 in. o.c. where": only what stands last is then to be provided.
    let last = (start..condition.first)
        .rev()
        .find(|at| sentence.is_any(*at, &["and", "with", "plus"]))
        .unwrap_or(start);
    let behind = |index: &usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| amount.first >= last)
    };
    let mut own: Vec<usize> = before.iter().copied().filter(behind).collect();
    keep_last_spacing(sentence, &mut own);
    Some(own)
}

/// Keeps of several spacings the last: of "clips at 24 in. o.c., at 18 in. o.c. where the joint is over 3 in." the first is of every joint.
fn keep_last_spacing(sentence: &Sentence<'_>, before: &mut Vec<usize>) {
    let spaced = |index: &usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| is_spaced(sentence, amount.last))
    };
    let last = before.iter().copied().rfind(spaced);
    let several = before.iter().filter(|index| spaced(index)).count() > 1;
    if several {
        before.retain(|index| Some(*index) == last);
    }
}

/// Whether a stop ends a statement though it may close a shortened word: `LEGS 2-1/2" MIN. *LEGS* 3" MIN WHERE JOINT IS OVER 1"`.
fn begins_anew(sentence: &Sentence<'_>, at: usize) -> bool {
    const GOES_ON: &[&str] = &[
        "min", "max", "minimum", "maximum", "nom", "nominal", "with", "by", "in", "on", "at", "of",
        "x", "from", "to", "deep", "thick", "thk", "wide", "long", "high", "dia", "diam", "each",
        "ea", "wet", "dry", "o.c", "oc", "spacing", "for", "into", "onto",
    ];
    let next = sentence.words(at + 1, at + 2);
    let begins = next.chars().next().is_some_and(char::is_uppercase);
    sentence.ends_in_stop(at)
        && begins
        && next.chars().filter(|c| c.is_alphabetic()).count() > 1
        && !sentence.is_any(at + 1, GOES_ON)
        && sentence.amount_at(at + 1).is_none()
}

/// Whether a stop is followed by a count in brackets, which begins another statement: `5/8" TYPE X. *(1)* LAYER EACH SIDE AT 1 HR`.
fn begins_with_count(sentence: &Sentence<'_>, at: usize) -> bool {
    let count = sentence.token(at + 2).is_some_and(Token::is_numeric);
    sentence.ends_in_stop(at)
        && sentence.is_sign(at + 1, '(')
        && count
        && sentence.is_sign(at + 3, ')')
}

/// Words that part a number from what is said of another case.
const PARTING: &[&str] = &[
    "and",
    "or",
    "but",
    "except",
    "excepting",
    "save",
    "increased",
    "increasing",
    "reduced",
    "then",
    "however",
];

/// `4 in. deep, minimum, for 2 hr`: a comma that sets off nothing but the qualifier of the number before it.
fn sets_off_a_qualifier(sentence: &Sentence<'_>, comma: usize) -> bool {
    sentence.is_any(comma + 1, &["min", "minimum", "max", "maximum", "nominal"])
        && sentence.is_sign(comma + 2, ',')
}

/// Of the amounts before a condition those of its own exception, where it closes one: of "105 to 150 pcf, except that 90 pcf may be used where the
/// rating does not exceed 2 hours" the second alone.
pub(super) fn within_its_exception(
    sentence: &Sentence<'_>,
    condition: &Found,
    governed: Vec<usize>,
) -> Vec<usize> {
    let excepts = |at: &usize| {
        sentence.is_any(*at, &["except", "excepting", "save"]) && sentence.is_word(at + 1, "that")
    };
    let Some(from) = (0..condition.first).rev().find(excepts) else {
        return governed;
    };
    let is_within = |index: &usize| {
        let amount = sentence.amount(*index);
        amount.is_some_and(|amount| amount.first > from)
    };
    let own: Vec<usize> = governed.iter().copied().filter(is_within).collect();
    if own.is_empty() { governed } else { own }
}

/// What parallel endings share is said once and holds in every case: "one layer of 5/8 in. board for 1 Hr and two for 2 Hr" asks for 5/8 in.
/// boards in both. Of one ending's amounts those are its own which measure what its neighbours' amounts do.
pub(super) fn but_what_is_shared(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
    governed: Vec<usize>,
) -> Vec<usize> {
    let dimension = |index: &usize| {
        let amount = sentence.amount(*index)?;
        Some(amount.unit.dimension())
    };
    let dimensions_of = |ending: usize| -> Vec<measure::Dimension> {
        let start = ending.checked_sub(1).and_then(|before| found.get(before));
        let (start, end) = (start.map_or(0, |before| before.last), found.get(ending));
        let within = |index: &&usize| {
            sentence
                .amount(**index)
                .zip(end)
                .is_some_and(|(amount, end)| amount.first >= start && amount.last <= end.first)
        };
        let within = bounds.iter().filter(within);
        within.filter_map(dimension).collect()
    };
    let neighbours = [number.checked_sub(1), Some(number + 1)];
    // "two layers for the 2 hour rating, with screws 1 in. long for the first layer": the layer is no other rating.
    let about = |ending: usize| {
        found
            .get(ending)
            .map(|ending| subject(&ending.expr).map(str::to_owned))
    };
    let alike = |ending: &usize| about(*ending) == about(number);
    let neighbours = neighbours.into_iter().flatten().filter(alike);
    let neighbours = neighbours.map(dimensions_of);
    let neighbours: Vec<_> = neighbours.filter(|said| !said.is_empty()).collect();
    let is_own = |index: &usize| {
        let own = dimension(index);
        own.is_some_and(|own| neighbours.iter().all(|said| said.contains(&own)))
    };
    if !governed.iter().any(is_own) {
        return governed;
    }
    governed.into_iter().filter(is_own).collect()
}

/// The amount before the first of several endings that measures what the next ending's own amount does: in "one layer of board, 5/8 in.
/// thick, on each side for 1 h and two layers for 2 h" the first ending speaks of the one layer.
fn same_as_next(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
    before: &[usize],
) -> Option<usize> {
    let (own, next) = (found.get(number)?, found.get(number + 1)?);
    let following = bounds
        .iter()
        .filter_map(|index| sentence.amount(*index))
        .find(|amount| amount.first >= own.last && amount.last <= next.first)?;
    let dimension = following.unit.dimension();
    let alike = |index: &&usize| {
        sentence
            .amount(**index)
            .is_some_and(|amount| amount.unit.dimension() == dimension)
    };
    before.iter().rev().find(alike).copied()
}
