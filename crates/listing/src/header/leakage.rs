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
    let name = named_since(sentence, index, amount);
    let told = |from: usize| {
        (from..amount.first)
            .rev()
            .find_map(|at| temperature(sentence, at))
    };
    let behind = || {
        (amount.last..amount.last + REACH)
            .take_while(|at| !names_leakage(sentence, *at))
            .find_map(|at| temperature(sentence, at))
    };
    let at = match name {
        Some(name) => told(name).or_else(behind),
        None if leads => told(0),
        None => behind(),
    };
    // Tested at no temperature that is stated, or for something else.
    let Some(at) = at else {
        read.unread.push(sentence.source(amount.at));
        return;
    };
    let relation = match bounded(sentence, index).map(|(finding, _)| finding.relation) {
        Some(Relation::LessThan) => LeakageRelation::LessThan,
        Some(Relation::AtMost) => LeakageRelation::AtMost,
        _ if is_less_than(sentence, amount) => LeakageRelation::LessThan,
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

/// Where the name of a leakage stands that an amount is stated under: behind the leakage before it.
fn named_since(sentence: &Sentence<'_>, index: usize, amount: &Amount) -> Option<usize> {
    let earlier = sentence.amounts.iter().take(index).rev();
    let since = earlier
        .filter(|other| is_leakage(other))
        .map(|other| other.last)
        .next()
        .unwrap_or(0);
    let name = (since..amount.first)
        .rev()
        .find(|at| names_leakage(sentence, *at));
    // `Ambient L rating`
    let qualified = |name: usize| {
        let before = name.checked_sub(1)?;
        let ambient = temperature(sentence, before) == Some(LeakageTemperature::Ambient);
        (ambient && sentence.begins_line(before)).then_some(before)
    };
    name.map(|name| qualified(name).unwrap_or(name))
}

fn is_leakage(amount: &Amount) -> bool {
    matches!(
        amount.unit.dimension(),
        Dimension::LeakagePerLength | Dimension::LeakagePerArea
    )
}

/// Whether a token is the name of a leakage: `L Rating`, `L-rating`, `Air leakage`.
fn names_leakage(sentence: &Sentence<'_>, at: usize) -> bool {
    let rating = sentence.is_word(at, "l") && sentence.is_any(at + 1, &["rating", "ratings"]);
    rating || sentence.is_any(at, &["l-rating", "l-ratings", "leakage"])
}

/// Whether the words right before an amount say that less was measured: `Less Than 1 CFM/Lin Ft`, `< 1 cfm/ft`.
fn is_less_than(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let Some(before) = amount.first.checked_sub(1) else {
        return false;
    };
    let denied = before >= 2 && sentence.is_any(before - 2, &["no", "not"]);
    let less = sentence.is_word(before, "than")
        && before >= 1
        && sentence.is_word(before - 1, "less")
        && !denied;
    less || sentence.is_sign(before, '<')
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

#[cfg(test)]
mod tests {
    use crate::header::tests::{leakages, unread};

    #[test]
    fn a_leakage_keeps_to_the_temperature_of_its_own_name() {
        for (text, expected) in [
            (
                "L Rating at Ambient - Less Than 1 CFM/Lin Ft\nL Rating at 400 F - 2 CFM/Lin Ft",
                "ambient <1, 400 2",
            ),
            ("L Rating at 400 F - No less than 2 CFM/Lin Ft", "400 2"),
            ("L Rating at 400 F - 2 cfm/ft\nL Rating - 5 cfm/ft", "400 2"),
            ("L-Rating: 2 cfm/ft\nL Rating at 400 F: 1 cfm/ft", "400 1"),
            ("Ambient L rating   0.4 cfm/ft", "ambient 2/5"),
            (
                "L: ambient 0.8 cfm/ft; 400 F 1.1 cfm/ft",
                "ambient 4/5, 400 11/10",
            ),
        ] {
            assert_eq!(leakages(text), expected, "{text}");
        }
    }

    #[test]
    fn a_leakage_at_no_temperature_is_not_silent() {
        assert_eq!(unread("Air leakage: 2 cfm/ft"), "2 cfm/ft");
        assert_eq!(
            unread("L Rating at 400 F - 2 cfm/ft\nL Rating (smoke) - 5 cfm/ft"),
            "5 cfm/ft"
        );
    }
}
