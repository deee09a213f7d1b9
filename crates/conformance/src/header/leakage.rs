//! Air leakage, where the barrier is a smoke barrier.
//!
//! A joint in a smoke barrier may leak at most 5 cfm for each foot of its length, at 0.30 in. of water, at ambient and at
//! elevated temperature, tested by UL 2079 (IBC 715.6 to the 2018 edition, renumbered later). Both temperatures are
//! asked for: a listing that gives none at one of them doesn't show it.

use listing::{Leakage, LeakageRelation, LeakageTemperature};
use measure::{Dimension, Number, Quantity, Unit, print};
use site::{Barrier, Value};

use super::{Context, Head};
use crate::assessment::Assessment;
use crate::condition::reason_of;
use crate::evidence::{Evidence, evidence};
use crate::verdict::{Reason, Verdict};

/// The most that a joint in a smoke barrier may leak.
pub(crate) const LIMIT: Quantity = Quantity::new(Number::whole(5), Unit::CfmPerFoot);

/// Where the limit is from.
const CODE: &str =
    "IBC 715.6 to the 2018 edition, renumbered later; check it against the code in force.";

/// One check for each temperature.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> [Head<'a>; 2] {
    [
        ("header/leakage-ambient", LeakageTemperature::Ambient),
        ("header/leakage-elevated", LeakageTemperature::Elevated),
    ]
    .map(|(id, at)| {
        let stated: Vec<&Leakage> = context
            .checklist
            .reading
            .header
            .leakage
            .iter()
            .filter(|leakage| leakage.at == at)
            .collect();
        let span = stated.first().map(|leakage| leakage.span);
        Head {
            id,
            property: Barrier::SMOKE_BARRIER,
            span,
            found: found(context, at, &stated),
        }
    })
}

fn found<'a>(
    context: &Context<'a, '_>,
    at: LeakageTemperature,
    stated: &[&'a Leakage],
) -> Assessment<'a> {
    let temperature = match at {
        LeakageTemperature::Ambient => "ambient temperature",
        LeakageTemperature::Elevated => "elevated temperature (400 °F, 204 °C)",
    };
    let requirement = format!("leakage of at most {} at {temperature}", print::both(LIMIT));
    let found = evidence(Barrier::SMOKE_BARRIER, context.subject);
    let fact = match found {
        Evidence::Shown(fact) => fact,
        other => {
            return Assessment::open(reason_of(other)).on(other.fact()).saying(
                requirement,
                "Whether the barrier is a smoke barrier isn't known; only in one is leakage limited.",
            );
        }
    };
    match fact.value {
        Value::Flag(true) => {}
        Value::Flag(false) => {
            return Assessment::plain(Verdict::NotApplicable, Reason::NotAsked)
                .on(fact)
                .saying(
                    requirement,
                    "The barrier is no smoke barrier: leakage isn't limited.",
                );
        }
        _ => {
            return Assessment::open(Reason::Unreadable).on(fact).saying(
                requirement,
                "Whether the barrier is a smoke barrier can't be read from its value.",
            );
        }
    }
    let said = |verdict: Assessment<'a>, sentence: String| {
        verdict
            .on(fact)
            .saying(requirement.clone(), sentence)
            .with_note(CODE)
    };
    let Some(worst) = worst(stated) else {
        return said(
            Assessment::plain(Verdict::NotMet, Reason::NotOffered),
            format!(
                "The barrier is a smoke barrier, and the listing gives no leakage at {temperature}."
            ),
        );
    };
    if let Some(per_area) = stated
        .iter()
        .find(|leakage| leakage.unit.dimension() != Dimension::LeakagePerLength)
    {
        let value = print::trade(Quantity::new(per_area.value, per_area.unit));
        return said(
            Assessment::open(Reason::ListingUnclear),
            format!(
                "The listing states {value} at {temperature}; a joint's leakage is stated for each length of joint (UL 2079), and nobody can tell what was meant."
            ),
        );
    }
    let leaks = Quantity::new(worst.value, worst.unit);
    let shows = match worst.relation {
        LeakageRelation::LessThan => "less than ",
        LeakageRelation::Equal => "",
        LeakageRelation::AtMost => "at most ",
    };
    let sentence = format!(
        "The listing leaks {shows}{} at {temperature}.",
        print::both(leaks)
    );
    let margin = LIMIT.minus(leaks);
    match leaks.compare(LIMIT) {
        Some(order) if order.is_le() => {}
        Some(_) => {
            return said(
                Assessment::plain(Verdict::NotMet, Reason::NotOffered),
                sentence,
            )
            .with_margin(margin);
        }
        None => return said(Assessment::open(Reason::ListingUnclear), sentence),
    }
    let standards = &context.checklist.reading.header.standards;
    if !standards.iter().any(|standard| standard.contains("2079")) {
        return said(
            Assessment::open(Reason::ListingUnclear),
            format!(
                "{sentence} By which test isn't read: for a smoke barrier the code asks for UL 2079."
            ),
        );
    }
    said(Assessment::plain(Verdict::Met, Reason::Holds), sentence).with_margin(margin)
}

/// The leakiest of several statements.
fn worst<'a>(stated: &[&'a Leakage]) -> Option<&'a Leakage> {
    let quantity = |leakage: &Leakage| Quantity::new(leakage.value, leakage.unit);
    stated.iter().copied().reduce(|worst, other| {
        let leakier = quantity(other)
            .compare(quantity(worst))
            .is_some_and(core::cmp::Ordering::is_gt);
        if leakier { other } else { worst }
    })
}
