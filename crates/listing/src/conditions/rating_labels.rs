//! Hours that label the value behind them: `2 hr: 6 in.`, `1 HR = 1 LAYER`, `1 and 2 Hr, 6 in. min; 3 Hr, 8 in. min`.

use super::rating::{LASTS, after_hours, is_rating_time, speaks_of_time};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether hours label what follows: `2 hr: 6 in.`, `Packing depth, 2 hr: 100 mm`, `1 HR = 1 LAYER`.
pub(super) fn is_label(
    sentence: &Sentence<'_>,
    group: &[usize],
    start: usize,
    end: usize,
    opens: bool,
) -> bool {
    let in_label = start > 0
        && sentence.is_sign(start - 1, ',')
        && group.first() == Some(&0)
        && !sentence.has_any(0, start, LASTS);
    let labels = sentence.is_sign(end, ':') || sentence.is_sign(end, '=');
    labels && !speaks_of_time(sentence) && (opens || in_label || labels_several(sentence, end))
        || opens && dashes_to_value(sentence, end)
        || leads_value(sentence, start, end) && leads_several(sentence)
}

/// Whether a dash parts hours from the value that they are for: `1 Hr - one layer on each side`.
fn dashes_to_value(sentence: &Sentence<'_>, end: usize) -> bool {
    const REACH: usize = 4;
    let dash = ['-', '–', '—']
        .iter()
        .any(|dash| sentence.is_sign(end, *dash));
    let value = (end + 1..end + REACH)
        .find_map(|at| sentence.amount_at(at))
        .and_then(|index| sentence.amount(index));
    dash && !speaks_of_time(sentence) && value.is_some_and(|amount| !is_rating_time(amount))
}

/// Whether hours open their stretch and lead to its value: `Thickness: 1 and 2 Hr, 6 in. min; 3 Hr, 8 in. min`.
fn leads_value(sentence: &Sentence<'_>, start: usize, end: usize) -> bool {
    let opens = start == 0
        || [':', ';']
            .iter()
            .any(|sign| sentence.is_sign(start - 1, *sign));
    let value = sentence
        .amount_at(end + 1)
        .and_then(|index| sentence.amount(index));
    let qualified = sentence.is_any(end + 1, &["min", "max", "minimum", "maximum", "nominal"]);
    let valued = qualified || value.is_some_and(|amount| !is_rating_time(amount));
    opens && sentence.is_sign(end, ',') && valued && !speaks_of_time(sentence)
}

/// Whether several hours of a sentence lead to values: one alone may say how long something takes.
fn leads_several(sentence: &Sentence<'_>) -> bool {
    let leading = |amount: &&Amount| {
        let end = after_hours(sentence, amount.last).0;
        let stretch = (0..amount.first)
            .rev()
            .find(|at| [':', ';'].iter().any(|sign| sentence.is_sign(*at, *sign)))
            .map_or(0, |at| at + 1);
        is_rating_time(amount) && leads_value(sentence, stretch, end)
    };
    sentence.amounts.iter().filter(leading).count() > 1
}

/// Whether hours before this colon or equals sign are one of several such labels: `60 minutes: one layer 90 minutes: two layers`.
fn labels_several(sentence: &Sentence<'_>, own: usize) -> bool {
    let is_label = |amount: &Amount| {
        let end = after_hours(sentence, amount.last).0;
        is_rating_time(amount)
            && (sentence.is_sign(end, ':') || sentence.is_sign(end, '='))
            && end != own
    };
    sentence.amounts.iter().any(is_label)
}
