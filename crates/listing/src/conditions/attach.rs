//! Which amounts a condition governs, by its place in the sentence.
//!
//! - At the opening of a stretch, before a comma, colon or verb: every amount after it, to the next semicolon or to the next
//!   such opening.
//! - After an amount: that amount, and one that is part of the same phrase ("two layers of 5/8 in. board"). Where the sentence has
//!   several such endings, each takes the amounts back to the one before.
//! - With "respectively": the first part to the first amount, the second to the second.

use super::bracket::{Bracketed, in_its_bracket};
use super::configuration::is_said_of_all;
use super::contrast::{is_contrast, leads_to_the_rest};
use super::exception::{is_case_of_exception, is_prohibition, says_what_holds};
use super::labels::{end_of_label, labels};
use super::led::{end_of_led, is_led};
use super::opening::{holds_anyway, leads_to_another_case, lifts, opens_stretch, subject};
use super::parted::{is_let_off, is_not_asked, parts};
use super::undecided::{self, is_undecided};
use super::variants::names_case;
use super::{Found, built_of, kinds, offers, parallel, whichever};
use crate::model::Expr;
use crate::rules::Sentence;

/// What governs an amount: conditions by their index, and of one its part, for "respectively".
#[derive(Debug, Clone, Default)]
pub(crate) struct Attached {
    pub(crate) conditions: Vec<usize>,
    pub(crate) part: Option<(usize, Expr)>,
    /// Whether nobody can say if one of the conditions is its own.
    pub(crate) doubtful: bool,
}

/// For each amount, what governs it.
pub(crate) fn attach(
    sentence: &Sentence<'_>,
    found: &[Found],
    is_bound: impl Fn(usize) -> bool,
) -> Vec<Attached> {
    let mut attached = vec![Attached::default(); sentence.amounts.len()];
    let bounds: Vec<usize> = (0..sentence.amounts.len())
        .filter(|index| is_bound(*index))
        .collect();
    for (number, condition) in found.iter().enumerate() {
        if holds_anyway(sentence, condition) || is_prohibition(sentence, condition) {
            continue;
        }
        if is_undecided(sentence, condition) {
            doubt_both(sentence, found, number, &bounds, &mut attached);
            continue;
        }
        let excepted = found.get(number + 1).is_some_and(|next| {
            is_case_of_exception(sentence, next) && next.first == condition.first + 1
        });
        let of_kind = kinds::governed(sentence, condition)
            .or_else(|| offers::governed(sentence, condition))
            .or_else(|| parallel::governed(sentence, condition))
            .or_else(|| built_of::governed(sentence, condition))
            .or_else(|| whichever::governed(sentence, condition));
        let bracketed = in_its_bracket(sentence, found, number, &bounds);
        let governed = if let Some(Bracketed::Own(own)) = bracketed {
            own
        } else if let Some(Bracketed::Before) = bracketed {
            before_ending(sentence, found, number, &bounds, false)
        } else if let Some(own) = of_kind {
            own.into_iter().filter(|index| is_bound(*index)).collect()
        } else if excepted {
            before_ending(sentence, found, number, &bounds, false)
        } else if says_what_holds(sentence, condition) {
            // "except in joints over 4 in., where 20 percent is allowed, depth 4 in.": the depth is said of all.
            let mut after = after_opening(sentence, found, number, &bounds);
            after.truncate(1);
            after
        } else if opens(sentence, found, condition) {
            let mut after = after_opening(sentence, found, number, &bounds);
            after.retain(|index| {
                sentence.amount(*index).is_none_or(|amount| {
                    !is_not_asked(sentence, amount.first) && !is_let_off(sentence, amount.last)
                })
            });
            after
        } else {
            let parallel = found.iter().enumerate().any(|(other, rival)| {
                other != number
                    && !opens(sentence, found, rival)
                    && subject(&rival.expr).is_some()
                    && subject(&rival.expr) == subject(&condition.expr)
            });
            let governed = before_ending(sentence, found, number, &bounds, parallel);
            let governed = within_its_exception(sentence, condition, governed);
            if parallel {
                but_what_is_shared(sentence, found, number, &bounds, governed)
            } else {
                governed
            }
        };
        let paired = governed_respectively(sentence, condition, &bounds);
        let paired = governed_behind(sentence, condition, &bounds).unwrap_or(paired);
        let respectively = condition.parts.len() > 1
            && condition.parts.len() == paired.len()
            && (sentence.has_any(condition.last, condition.last + 6, &["respectively"])
                || governed_behind(sentence, condition, &bounds).is_some()
                || is_list(sentence, &paired));
        if respectively {
            for (index, part) in paired.into_iter().zip(&condition.parts) {
                if let Some(slot) = attached.get_mut(index) {
                    slot.conditions.push(number);
                    slot.part = Some((number, part.clone()));
                }
            }
            continue;
        }
        // No condition holds for the number that it is made of.
        let own = |index: &usize| {
            sentence.amount(*index).is_some_and(|amount| {
                condition.first <= amount.first && amount.last <= condition.last
            })
        };
        for index in governed.into_iter().filter(|index| !own(index)) {
            if let Some(slot) = attached.get_mut(index) {
                slot.conditions.push(number);
                if let Some(case) = case_left_out(sentence, condition, index) {
                    slot.part = Some((number, case));
                }
            }
        }
    }
    // What is said of the rest isn't said of what the rest is told from.
    for slot in &mut attached {
        let of_the_rest = |number: &usize| {
            found
                .get(*number)
                .is_some_and(|other| is_contrast(sentence, other))
        };
        if slot.conditions.iter().any(of_the_rest) {
            slot.conditions.retain(of_the_rest);
        }
    }
    for (index, slot) in attached.iter_mut().enumerate() {
        part_what_excludes_each_other(sentence, found, index, slot);
    }
    attached
}

/// Leaves the numbers on both sides of an undecided condition in doubt; those behind it stand under it.
fn doubt_both(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
    attached: &mut [Attached],
) {
    for index in before_ending(sentence, found, number, bounds, false) {
        if let Some(slot) = attached.get_mut(index) {
            slot.doubtful = true;
        }
    }
    for index in undecided::behind(sentence, found, number, bounds) {
        if let Some(slot) = attached.get_mut(index) {
            slot.conditions.push(number);
            slot.doubtful = true;
        }
    }
}

/// The case that an exception leaves out, where a number is said of that case: "other than for 1 hr *(2 in.)*, min 4 in.", "except in 1 hr walls min 4 in., *there*
/// min 2 in."
fn case_left_out(sentence: &Sentence<'_>, condition: &Found, index: usize) -> Option<Expr> {
    let Expr::Not(case) = &condition.expr else {
        return None;
    };
    let amount = sentence.amount(index)?;
    let bracketed = sentence
        .closing(condition.last)
        .is_some_and(|close| condition.last < amount.first && amount.last <= close);
    let there = (condition.last..amount.first).any(|at| {
        sentence.is_any(at, &["there", "here"])
            && at > 0
            && (sentence.is_stop(at - 1) || sentence.is_any(at - 1, &["and", "but"]))
    });
    let excepts = sentence.is_any(
        condition.first,
        &["except", "other", "save", "excepting", "unless"],
    );
    (excepts && (bracketed || there)).then(|| (**case).clone())
}

/// Keeps of conditions that no joint meets together the one behind the number, "where the joint is 2 in., 4 in., *6 in. where 3 in.*", and where none is, none:
/// a number that is never asked for would excuse every joint.
fn part_what_excludes_each_other(
    sentence: &Sentence<'_>,
    found: &[Found],
    index: usize,
    slot: &mut Attached,
) {
    let value = |number: &usize| found.get(*number).and_then(exact_value);
    let excluded = |number: &usize| {
        let own = value(number);
        let mut others = slot.conditions.iter().filter_map(value);
        own.is_some_and(|own| others.any(|other| other.0 == own.0 && other.1 != own.1))
    };
    let excluding: Vec<usize> = slot.conditions.iter().copied().filter(excluded).collect();
    let behind = |number: &usize| {
        let condition = found.get(*number);
        let amount = sentence.amount(index);
        condition
            .zip(amount)
            .is_some_and(|(condition, amount)| condition.first >= amount.last)
    };
    let behind: Vec<usize> = excluding.iter().copied().filter(behind).collect();
    let kept = match behind.as_slice() {
        [one] if value(one).is_some_and(|(property, _)| property == "joint.width") => Some(*one),
        _ => None,
    };
    slot.conditions
        .retain(|number| !excluding.contains(number) || Some(*number) == kept);
}

/// The property that a condition asks to have one value, and the value.
fn exact_value(condition: &Found) -> Option<(&str, Option<measure::Quantity>)> {
    match &condition.expr {
        Expr::Test(test) if test.relation == crate::model::Relation::Exactly => {
            Some((&test.property, test.lo))
        }
        _ => None,
    }
}

/// Of the amounts before a condition those of its own exception, where it closes one: of "105 to 150 pcf, except that 90 pcf may be used where the
/// rating does not exceed 2 hours" the second alone.
fn within_its_exception(
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

/// Whether counts stand in one list and nowhere else: "one, two or three layers ... for 1, 2 and 3 Hr ratings" pairs them, though it
/// doesn't say "respectively".
fn is_list(sentence: &Sentence<'_>, amounts: &[usize]) -> bool {
    let listed = |pair: &[usize]| {
        let [one, next] = pair else { return false };
        let (Some(one), Some(next)) = (sentence.amount(*one), sentence.amount(*next)) else {
            return false;
        };
        one.unit == measure::Unit::Count
            && next.unit == measure::Unit::Count
            && (one.last..next.first)
                .all(|at| sentence.is_sign(at, ',') || sentence.is_any(at, &["or", "and"]))
    };
    amounts.windows(2).all(listed)
}

/// The amounts behind a list of cases that a sentence opens with, where it says that they belong to them one by one: "For 1, 2 and 3 hr: 1/4, 1/2 and 3/4 in.
/// respectively".
fn governed_behind(
    sentence: &Sentence<'_>,
    condition: &Found,
    bounds: &[usize],
) -> Option<Vec<usize>> {
    let said = sentence.has_any(condition.last, sentence.tokens.len(), &["respectively"]);
    let behind: Vec<usize> = bounds
        .iter()
        .copied()
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.first >= condition.last)
        })
        .collect();
    let all = behind.len() == bounds.len() && behind.len() == condition.parts.len();
    (said && all && condition.first == 0).then_some(behind)
}

/// The last amounts before a list of conditions, as many as it has parts.
fn governed_respectively(
    sentence: &Sentence<'_>,
    condition: &Found,
    bounds: &[usize],
) -> Vec<usize> {
    let before: Vec<usize> = bounds
        .iter()
        .copied()
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.last <= condition.first)
        })
        .collect();
    let skip = before.len().saturating_sub(condition.parts.len());
    before.get(skip..).unwrap_or_default().to_vec()
}

fn after_opening(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
) -> Vec<usize> {
    let Some(condition) = found.get(number) else {
        return Vec::new();
    };
    let named = heads_configuration(sentence, condition);
    let semicolon = (condition.last..sentence.tokens.len())
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
    // "..., and in every case lapped 1 in." holds whatever the condition.
    let always = (condition.last..sentence.tokens.len()).find(|at| {
        (sentence.is_word(*at, "in")
            && sentence.is_any(at + 1, &["every", "all", "any", "either"])
            && sentence.is_any(at + 2, &["case", "cases", "event"]))
            || sentence.is_any(*at, &["always", "otherwise", "regardless", "elsewhere"])
            || lifts(sentence, *at)
    });
    let next_label = next_hours_label(sentence, condition.last);
    // What is said in brackets ends with them.
    let bracket = condition
        .first
        .checked_sub(1)
        .and_then(|before| sentence.closing(before))
        .unwrap_or(sentence.tokens.len());
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
    let end = semicolon
        .min(if led {
            end_of_led(sentence, condition)
        } else {
            semicolon
        })
        .min(label.unwrap_or(sentence.tokens.len()))
        .min(next_opening)
        .min(next_label)
        .min(bracket)
        .min(next_order)
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

/// Where a second thing is to be done, behind the stop of a shortened word: `IN JOINTS OVER 2 IN. ADD CLIPS 18 IN. O.C. MAX. PACK 4 IN. DEEP`.
fn next_order(sentence: &Sentence<'_>, from: usize) -> usize {
    const ORDERS: &[&str] = &[
        "add", "pack", "coat", "cut", "fill", "provide", "install", "use", "lap", "fasten",
        "attach", "apply", "set", "hold", "place", "compress", "spray", "seal", "caulk", "anchor",
        "screw", "space", "studs", "stud", "board", "packing", "sealant", "coating", "clips",
        "runner", "track",
    ];
    let stopped = |at: usize| {
        at.checked_sub(1)
            .and_then(|before| sentence.token(before))
            .is_some_and(|token| token.span.of(sentence.text).ends_with('.'))
            || at > 0 && sentence.is_sign(at - 1, '.')
    };
    (from + 1..sentence.tokens.len())
        .find(|at| sentence.is_any(*at, ORDERS) && stopped(*at))
        .unwrap_or(sentence.tokens.len())
}

fn before_ending(
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
    // "Provide clips, 20 ga., 18 in. o.c., where the joint is over 3 in.": all that is to be provided is.
    let ends = (condition.last..sentence.tokens.len()).all(|at| sentence.is_sign(at, '.'));
    if ends
        && found.len() == 1
        && sentence.is_any(0, &["provide", "add"])
        && sentence.is_any(condition.first, &["where", "when", "if"])
    {
        // "packing 4 in. deep and clips 18 in. o.c. where": only what stands last is then to be provided.
        let last = (start..condition.first)
            .rev()
            .find(|at| sentence.is_any(*at, &["and", "with", "plus"]))
            .unwrap_or(start);
        before.retain(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.first >= last)
        });
        return before;
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
        parts(sentence, amount.last, condition.first) || is_not_asked(sentence, amount.first)
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
            && b.first <= a.last + 4
            && !(a.last..b.first).any(|at| sentence.is_stop(at) || sentence.is_any(at, PARTING));
        if !same_phrase {
            break;
        }
        governed.push(other);
    }
    governed
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

/// What parallel endings share is said once and holds in every case: "one layer of 5/8 in. board for 1 Hr and two for 2 Hr" asks for 5/8 in.
/// boards in both. Of one ending's amounts those are its own which measure what its neighbours' amounts do.
fn but_what_is_shared(
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
    let neighbours = neighbours.into_iter().flatten().map(dimensions_of);
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
