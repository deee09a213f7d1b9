//! The joint width of the head.

use measure::{Dimension, Number, Quantity};

use super::topic::measures;
use super::{BESIDE, beside, differs, for_configuration, near};
use crate::conditions::Mentioned;
use crate::model::{Header, HeaderTopic, Relation, WidthLimit};
use crate::phrase::Amount;
use crate::rules::{Sentence, bounded, qualifier};

/// Adds a width. Two that stand for different configurations, ratings or relations leave the strictest beside the most generous.
pub(super) fn width(
    sentence: &Sentence<'_>,
    index: usize,
    amount: &Amount,
    named: &[Mentioned],
    header: &mut Header,
) {
    let stated = bounded(sentence, index)
        .filter(|(_, rule)| *rule != "bare value")
        .map(|(finding, _)| finding.relation)
        // "Nominal Joint Width - 4 in. max": by its nominal size, up to that.
        .filter(|relation| *relation != Relation::Nominal);
    let spread = amount.hi.is_some();
    let relation = stated
        .or_else(|| limit_behind(sentence, amount))
        .or_else(|| limit_before(sentence, amount, named).filter(|_| !spread))
        .unwrap_or(Relation::Nominal);
    let span = sentence.source(amount.at);
    let Some(held) = &mut header.width else {
        let upper = matches!(relation, Relation::AtMost | Relation::LessThan);
        let lo = (!upper).then_some(amount.lo);
        let hi = if upper { Some(amount.lo) } else { amount.hi };
        header.width = Some(WidthLimit {
            relation,
            lo,
            hi,
            unit: amount.unit,
            strictest_hi: None,
            span,
        });
        return;
    };
    if held.unit != amount.unit {
        if !says_again(held, amount) {
            differs(header, HeaderTopic::Width);
        }
        return;
    }
    let was = held.hi.or(held.lo);
    let greatest = amount.hi.unwrap_or(amount.lo);
    let apart = was.is_some_and(|was| was != greatest)
        && (held.relation != relation || stands_for_a_case(sentence, index, named));
    let is_another = was.is_some_and(|was| was != greatest) && is_one_of_two(sentence, amount);
    // `3/4 in. or 1-1/2 in.`: either of them, and nothing between.
    let least = held.lo.map_or(amount.lo, |lo| lo.min(amount.lo));
    if held.lo.is_some() {
        held.lo = Some(least);
    }
    held.hi = Some(was.map_or(greatest, |was| was.max(greatest)));
    held.span = held.span.join(span);
    if apart || is_another {
        let strictest = was.map_or(greatest, |was| was.min(greatest));
        held.strictest_hi = Some(
            held.strictest_hi
                .map_or(strictest, |held| held.min(strictest)),
        );
    }
    if apart {
        differs(header, HeaderTopic::Width);
    }
}

/// The limit right behind a width: in a head the next line begins with a label of its own, `Joint Width - 3/4 In. Max` over `Class II Movement - 20 Percent`.
fn limit_behind(sentence: &Sentence<'_>, amount: &Amount) -> Option<Relation> {
    let behind = sentence.skip_parentheses(amount.last);
    let limit = qualifier(sentence.word(behind));
    limit.filter(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost))
}

/// The limit before the name of a width, `Max joint width 8 in.`, or before the number: `Width: to 6 in.`
fn limit_before(sentence: &Sentence<'_>, amount: &Amount, named: &[Mentioned]) -> Option<Relation> {
    let is_name = |at: &usize| {
        sentence.is_any(
            *at,
            &["width", "joint", "jt", "gap", "opening", "of", "nominal"],
        ) || named.iter().any(|own| (own.first..own.last).contains(at))
            || [':', '-', '–', '—', '=']
                .iter()
                .any(|sign| sentence.is_sign(*at, *sign))
    };
    let first = amount.first.checked_sub(1)?;
    if sentence.is_any(first, &["to"]) {
        return is_name(&first.checked_sub(1)?).then_some(Relation::AtMost);
    }
    let at = (0..amount.first).rev().find(|at| !is_name(at))?;
    let limit = qualifier(sentence.word(at)).filter(|_| at < first);
    limit.filter(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost))
}

/// Whether a width is stated as another one that may be built: `3/4 in. or 1-1/2 in.`
fn is_one_of_two(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let before = amount.first.checked_sub(1);
    amount.hi.is_none() && before.is_some_and(|before| sentence.is_word(before, "or"))
}

/// Whether a width in another unit is one of those held, rounded.
fn says_again(held: &WidthLimit, amount: &Amount) -> bool {
    let again = |number: Number| {
        let number = Quantity::new(number, amount.unit).to(held.unit);
        number.is_some_and(|number| {
            let mut values = held.lo.iter().chain(&held.hi);
            // Rounding of a dual value, as loosely as the trade rounds it: common practice.
            values.any(|value| near(*value, number.number, 20))
        })
    };
    again(amount.lo) && amount.hi.is_none_or(again)
}

/// Whether words beside a width give it for a configuration or a rating.
fn stands_for_a_case(sentence: &Sentence<'_>, index: usize, named: &[Mentioned]) -> bool {
    let Some(amount) = sentence.amounts.get(index) else {
        return false;
    };
    // No more amounts than words stand beside one.
    let around = index.saturating_sub(BESIDE + 1)..sentence.amounts.len().min(index + BESIDE + 2);
    let timed = sentence
        .amounts
        .get(around)
        .unwrap_or_default()
        .iter()
        .any(|other| {
            other.unit.dimension() == Dimension::Time && beside(amount, other.first, other.last)
        });
    timed || for_configuration(named, amount) || is_told_in_brackets(sentence, amount)
}

/// Whether brackets behind a width tell what it is of: `1 in. (one layer) or 2 in. (two layers)`.
fn is_told_in_brackets(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const OF_SIZES: &[&str] = &[
        "nominal", "nom", "max", "maximum", "min", "minimum", "see", "note", "item",
    ];
    let end = sentence.skip_parentheses(amount.last);
    let inside = amount.last..end;
    let numbered = inside.clone().any(|at| measures(sentence, at));
    let sized = inside.clone().any(|at| sentence.is_any(at, OF_SIZES));
    let worded = inside.into_iter().any(|at| !sentence.word(at).is_empty());
    worded && !numbered && !sized
}
