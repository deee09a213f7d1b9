//! The air leakage of the head.

use measure::{Dimension, Quantity};

use super::{HeaderRead, differs, near};
use crate::model::{
    HeaderTopic, Leakage, LeakageRelation, LeakageTemperature, Relation, WarningKind,
};
use crate::phrase::Amount;
use crate::rules::{Sentence, bounded};

/// How far after a value its temperature may stand, in tokens.
const REACH: usize = 4;

/// Adds a leakage, with a warning when it isn't stated per length. Every value is kept where several are stated for one temperature.
pub(super) fn leakage(
    sentence: &Sentence<'_>,
    index: usize,
    amount: &Amount,
    read: &mut HeaderRead,
) {
    // "Ambient: 0.8; 400 F: 1.1" begins with a temperature, "0.8 L/s.m at ambient, 1.1 at 204 C" with a value.
    let leads = (0..amount.first)
        .find_map(|at| temperature(sentence, at).map(|_| at))
        .is_some_and(|first| {
            let earlier = sentence.amounts.iter().take(index);
            !earlier
                .filter(|other| other.unit.dimension() == amount.unit.dimension())
                .any(|other| other.first < first)
        });
    let at = if leads {
        (0..amount.first)
            .rev()
            .find_map(|at| temperature(sentence, at))
    } else {
        (amount.last..amount.last + REACH).find_map(|at| temperature(sentence, at))
    };
    let Some(at) = at else { return };
    let relation = match bounded(sentence, index).map(|(finding, _)| finding.relation) {
        Some(Relation::LessThan) => LeakageRelation::LessThan,
        Some(Relation::AtMost) => LeakageRelation::AtMost,
        _ if amount
            .first
            .checked_sub(1)
            .is_some_and(|before| sentence.is_sign(before, '<')) =>
        {
            LeakageRelation::LessThan
        }
        _ => LeakageRelation::Equal,
    };
    let span = sentence.source(amount.at);
    if amount.unit.dimension() == Dimension::LeakagePerArea {
        read.warnings.push((
            WarningKind::LeakageUnit,
            span,
            "a joint's leakage is stated per length (cfm/lin ft); this one is per area".to_owned(),
        ));
    }
    let entry = Leakage {
        at,
        relation,
        value: amount.lo,
        unit: amount.unit,
        span,
    };
    let held = || read.header.leakage.iter().filter(|held| held.at == at);
    if held().any(|held| says_again(held, &entry)) {
        return;
    }
    let another = held().next().is_some();
    read.header.leakage.push(entry);
    if another {
        differs(&mut read.header, HeaderTopic::Leakage);
    }
}

/// The temperature that a token names.
fn temperature(sentence: &Sentence<'_>, at: usize) -> Option<LeakageTemperature> {
    if sentence.is_any(at, &["ambient", "amb", "room"]) {
        return Some(LeakageTemperature::Ambient);
    }
    let hot = sentence
        .amount_at(at)
        .and_then(|other| sentence.amount(other))
        .is_some_and(|other| other.unit.dimension() == Dimension::Temperature);
    (hot || sentence.is_word(at, "elevated")).then_some(LeakageTemperature::Elevated)
}

/// Whether two leakages are the same, in one unit or, rounded, in another.
fn says_again(held: &Leakage, entry: &Leakage) -> bool {
    let Some(converted) = Quantity::new(entry.value, entry.unit).to(held.unit) else {
        return false;
    };
    // Leakages are printed to one or two digits in the second unit: common practice.
    held.value == converted.number
        || (held.unit != entry.unit && near(held.value, converted.number, 10))
}
