//! Air leakage, where the barrier is a smoke barrier.
//!
//! A joint in a smoke barrier may leak at most 5 cfm for each foot of its length, at 0.30 in. of water, at ambient and at
//! elevated temperature, tested by UL 2079 (IBC 715.6 to the 2018 edition, renumbered later). Both temperatures are
//! asked for: a listing that gives none at one of them doesn't show it.

use listing::{Leakage, LeakageRelation, LeakageTemperature};
use measure::{Dimension, Number, Quantity, Unit, print};
use site::{Barrier, Fact, Value};

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

/// A check, by its id and temperature.
pub(super) type At = (&'static str, LeakageTemperature);

pub(super) const AMBIENT: At = ("header/leakage-ambient", LeakageTemperature::Ambient);
pub(super) const ELEVATED: At = ("header/leakage-elevated", LeakageTemperature::Elevated);

/// One check for each temperature.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> [Head<'a>; 2] {
    [AMBIENT, ELEVATED].map(|at| one(context, &at))
}

/// The check for one temperature.
pub(super) fn one<'a>(context: &Context<'a, '_>, (id, at): &At) -> Head<'a> {
    let leakage = context.checklist.reading.header.leakage.iter();
    let stated: Vec<&Leakage> = leakage.filter(|leakage| leakage.at == *at).collect();
    let span = stated.first().map(|leakage| leakage.span);
    Head {
        id,
        property: Barrier::SMOKE_BARRIER,
        span,
        found: found(context, *at, &stated),
    }
}

fn found<'a>(
    context: &Context<'a, '_>,
    at: LeakageTemperature,
    stated: &[&'a Leakage],
) -> Assessment<'a> {
    let found = evidence(Barrier::SMOKE_BARRIER, context.subject);
    let (assessed, sentence) = match (found, found.fact().map(|fact| &fact.value)) {
        (Evidence::Shown(fact), Some(Value::Flag(true))) => {
            return in_smoke_barrier(context, at, stated, fact);
        }
        (Evidence::Shown(_), Some(Value::Flag(false))) => (
            Assessment::plain(Verdict::NotApplicable, Reason::NotAsked),
            "The barrier is no smoke barrier: leakage isn't limited.",
        ),
        (Evidence::Shown(_), _) => (
            Assessment::open(Reason::Unreadable),
            "Whether the barrier is a smoke barrier can't be read from its value.",
        ),
        (other, _) => (
            Assessment::open(reason_of(other)),
            "Whether the barrier is a smoke barrier isn't known; only in one is leakage limited.",
        ),
    };
    assessed
        .on(found.fact())
        .saying("in a smoke barrier, little leakage", sentence)
}

fn in_smoke_barrier<'a>(
    context: &Context<'a, '_>,
    at: LeakageTemperature,
    stated: &[&'a Leakage],
    fact: &'a Fact,
) -> Assessment<'a> {
    let temperature = match at {
        LeakageTemperature::Ambient => "ambient temperature",
        LeakageTemperature::Elevated => "elevated temperature (400 °F, 204 °C)",
    };
    let said = |assessed: Assessment<'a>, sentence: String| {
        let requirement = format!("leakage of at most {} at {temperature}", print::both(LIMIT));
        assessed
            .on(fact)
            .saying(requirement, sentence)
            .with_note(CODE)
    };
    let not_offered = || Assessment::plain(Verdict::NotMet, Reason::NotOffered);
    let unclear = || Assessment::open(Reason::ListingUnclear);
    let Some(worst) = worst(stated) else {
        return said(
            not_offered(),
            format!(
                "The barrier is a smoke barrier, and the listing gives no leakage at {temperature}."
            ),
        );
    };
    let is_per_area = |leakage: &&&Leakage| leakage.unit.dimension() != Dimension::LeakagePerLength;
    if let Some(per_area) = stated.iter().find(is_per_area) {
        let value = print::trade(Quantity::new(per_area.value, per_area.unit));
        return said(
            unclear(),
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
        None => said(unclear(), sentence),
        Some(order) if order.is_gt() => said(not_offered(), sentence).with_margin(margin),
        Some(_) if !is_tested_so(context) => said(
            unclear(),
            format!(
                "{sentence} By which test isn't read: for a smoke barrier the code asks for UL 2079."
            ),
        ),
        Some(_) => {
            said(Assessment::plain(Verdict::Met, Reason::Holds), sentence).with_margin(margin)
        }
    }
}

/// Whether the listing was tested by the standard that the code asks for.
fn is_tested_so(context: &Context<'_, '_>) -> bool {
    context
        .checklist
        .reading
        .header
        .standards
        .iter()
        .any(|standard| standard.contains("2079"))
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
