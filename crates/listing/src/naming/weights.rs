//! Which components a number may be about, and how near each is.

use measure::Dimension;
use vocabulary::Component;

use super::{Mention, Subject};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// The components that a number may be about, each with how near it is.
pub(super) fn component_weights(
    sentence: &Sentence<'_>,
    amount: &Amount,
    subject: &Subject,
    mentions: &[Mention],
) -> Vec<(&'static Component, i32)> {
    let (first, last) = (amount.first, amount.last);
    let mut weights: Vec<(&'static Component, i32)> = Vec::new();
    let mut give = |component: &'static Component, weight: i32| match weights
        .iter_mut()
        .find(|(own, _)| own.name == component.name)
    {
        Some((_, held)) => *held = (*held).max(weight),
        None => weights.push((component, weight)),
    };
    let stop_between = |from: usize, to: usize| {
        (from..to).any(|at| sentence.is_sign(at, ';') || sentence.is_sign(at, ':'))
    };
    let amount_between = |from: usize, to: usize| {
        sentence
            .amounts
            .iter()
            .any(|amount| amount.first >= from && amount.last <= to)
    };
    let before = mentions
        .iter()
        .rev()
        .find(|mention| mention.last <= first && !stop_between(mention.last, first));
    if let Some(mention) = before {
        // "concrete floor" speaks of concrete, too; "wall of concrete" speaks of the wall first.
        for component in mention.inner() {
            give(component, 6);
        }
        let head = mentions
            .iter()
            .rev()
            .find(|head| head.last + 1 == mention.first && sentence.is_word(head.last, "of"));
        // "a wall of concrete with a density of" speaks of the material.
        if let Some(head) = head.filter(|_| amount.unit.dimension() != Dimension::Density) {
            give(head.component, 10 - head.penalty());
        }
        give(
            mention.component,
            subject_weight(sentence, mention, mentions, amount) - mention.penalty(),
        );
    }
    // "4-1/2 in. of concrete"
    let material = mentions
        .iter()
        .find(|mention| mention.first == last + 1 && sentence.is_word(last, "of"));
    if let Some(mention) = material {
        give(mention.component, 9 - mention.penalty());
    }
    let after = mentions.iter().find(|mention| mention.first >= last);
    if let Some(mention) = after
        && mention.first - last <= 6
        && !(last..mention.first).any(|at| {
            sentence.is_stop(at)
                || sentence.is_any(
                    at,
                    &[
                        "of", "from", "onto", "on", "to", "below", "above", "into", "than", "in",
                        "beyond", "between", "over", "for", "and", "or", "with", "is", "are",
                        "shall",
                    ],
                )
        })
        && !amount_between(last, mention.first)
    {
        give(mention.component, 10 - mention.penalty());
    }
    if let Some(mention) = mentions.first().filter(|mention| mention.last <= first) {
        give(mention.component, 8 - mention.penalty());
    }
    for (component, depth) in &subject.titles {
        give(component, 7 - 2 * i32::try_from(*depth).unwrap_or(3).min(3));
    }
    if mentions.is_empty()
        && let Some(component) = subject.before
    {
        give(component, 6);
    }
    weights
}

/// The weight of the mention nearest before a number: less where it is only what something is fastened to or lies on, or what
/// another mention is a part of ("the runner at the head of the wall").
fn subject_weight(
    sentence: &Sentence<'_>,
    mention: &Mention,
    mentions: &[Mention],
    amount: &Amount,
) -> i32 {
    const ARTICLES: &[&str] = &[
        "the", "a", "an", "every", "each", "both", "either", "all", "any",
    ];
    const PLACES: &[&str] = &[
        "to", "onto", "from", "below", "above", "over", "under", "through", "into", "against",
        "on", "at", "beyond", "between", "across", "along", "beside", "in", "within", "inside",
    ];
    let before = (0..mention.first)
        .rev()
        .find(|at| !sentence.is_any(*at, ARTICLES));
    let Some(before) = before else { return 9 };
    let earlier = mentions
        .iter()
        .any(|other| other.last <= before && other.component.name != mention.component.name);
    // "fastened to every valley of the deck"
    let part_of_place = sentence.is_word(before, "of")
        && (before.saturating_sub(3)..before).any(|at| sentence.is_any(at, PLACES));
    if sentence.is_any(before, PLACES) || part_of_place {
        6
    } else if sentence.is_word(before, "of")
        && earlier
        && amount.unit.dimension() != Dimension::Density
    {
        7
    } else {
        9
    }
}
