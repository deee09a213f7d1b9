//! What stands along a run at a spacing, and what lies along it: fasteners, clips, runners.

use engineering::takeoff::{SpacingAsked, fasteners};
use engineering::{Error, Known};
use listing::Reading;
use measure::Quantity;
use schemars::JsonSchema;
use serde::Serialize;
use site::FactsFor;
use vocabulary::{ValueKind, vocabulary};

use crate::JointWork;
use crate::asks::Asks;
use crate::facts::{counted, of_item};

/// A row of fasteners or clips.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Row {
    /// What.
    pub what: String,
    /// The listing's item that asks for them.
    pub item: String,
    /// The greatest spacing.
    pub spacing: Quantity,
    /// From the ends, at most.
    pub end: Option<Quantity>,
    /// How many at each place.
    pub at_each: u64,
    /// How many in all.
    pub count: u64,
}

impl Row {
    /// The properties that the listing states for it.
    pub(crate) fn rests_on(&self) -> &'static [&'static str] {
        let along = ALONG.iter().find(|along| along.what == self.what);
        along.map_or(&["fastener.count"], |along| along.rests_on)
    }
}

/// What stands along the run at a spacing.
struct Along {
    spacing: &'static str,
    what: &'static str,
    /// The property of its distance from the ends.
    end: &'static str,
    /// All that the listing states for it.
    rests_on: &'static [&'static str],
}

const ALONG: [Along; 4] = [
    Along {
        spacing: RUNNER_FASTENERS,
        what: "fasteners of the runner",
        end: "runner.end_distance",
        rests_on: &[
            RUNNER_FASTENERS,
            "runner.end_distance",
            "fastener.end_distance",
        ],
    },
    Along {
        spacing: "clip.spacing",
        what: "clips",
        end: "clip.end_distance",
        rests_on: &["clip.spacing", "clip.end_distance", "fastener.end_distance"],
    },
    Along {
        spacing: "fastener.spacing",
        what: "fasteners",
        end: "fastener.end_distance",
        rests_on: &["fastener.spacing", "fastener.end_distance"],
    },
    Along {
        spacing: "strip.spacing",
        what: "steel strips",
        end: "strip.end_distance",
        rests_on: &[
            "strip.spacing",
            "strip.end_distance",
            "fastener.end_distance",
        ],
    },
];

const RUNNER_FASTENERS: &str = "runner.fastener_spacing";

/// Rows of fasteners and clips along the run, by what the listing asks of their spacing.
pub(super) fn of_fasteners(
    work: &mut JointWork,
    asks: &Asks<'_>,
    facts: &FactsFor<'_>,
) -> Result<(), Error> {
    let Some(run) = work.length else {
        return Ok(());
    };
    let mut counted_items = Vec::new();
    for along in &ALONG {
        let Some(spacing) = asks.most(along.spacing) else {
            continue;
        };
        let mut items = asks.items_of(along.spacing);
        let item = items.next().unwrap_or_default();
        for other in items {
            work.gaps.push(format!(
                "{} of item {other}: item {item} sets a spacing too, and only one row is counted",
                along.what
            ));
        }
        // Listings say "the end fasteners" of a runner's own.
        let end = asks
            .most(along.end)
            .or_else(|| asks.most_in("fastener.end_distance", item));
        let asked = SpacingAsked {
            run: Known::new(run, "schedule"),
            spacing: spacing.clone(),
            end: end.clone(),
            at_each: 1,
        };
        let row = Row {
            what: along.what.to_owned(),
            item: item.to_owned(),
            spacing: spacing.quantity,
            end: end.map(|end| end.quantity),
            at_each: 1,
            count: fasteners(&asked)?.value,
        };
        work.fasteners.push(row.clone());
        if along.what == "clips" {
            let of_clips = asks.exact_in("fastener.count", item);
            let of_clips = of_clips.or_else(|| facts.get("clip.fasteners_each").and_then(counted));
            match of_clips {
                Some(each) => {
                    counted_items.push(item.to_owned());
                    work.fasteners.push(Row {
                        what: "fasteners of the clips".to_owned(),
                        at_each: each,
                        count: row.count.saturating_mul(each),
                        ..row
                    });
                }
                None => work
                    .gaps
                    .push("fasteners of the clips: how many each takes isn't stated".to_owned()),
            }
        }
    }
    for item in asks.items_of("fastener.count") {
        if !counted_items.iter().any(|counted| counted == item) {
            work.gaps.push(format!("fasteners of item {item}: the listing says how many, but at what is in its words only"));
        }
    }
    Ok(())
}

/// Runners that lie along the run, one for each item that asks something of a runner.
pub(super) fn of_profiles(
    work: &mut JointWork,
    reading: &Reading,
    asks: &Asks<'_>,
    facts: &FactsFor<'_>,
) {
    let mut items: Vec<&str> = Vec::new();
    for (property, item) in asks.properties() {
        if property.starts_with("runner.") && !items.contains(&item) {
            items.push(item);
        }
    }
    // Where the listing describes several runners, a fact that names no item is of none of them.
    let is_only = items.len() == 1;
    let fastened: Vec<&str> = asks.items_of(RUNNER_FASTENERS).collect();
    for item in items {
        let title = reading.items.iter().find(|one| one.path == item);
        let title = title.map(|one| one.title.to_lowercase());
        let name = title.filter(|title| title.contains("runner"));
        let name = name.unwrap_or_else(|| "runner".to_owned());
        let fact = |attribute: &str| {
            let property = format!("runner.{attribute}");
            if is_only {
                of_item(facts, Some(item), &property)
            } else {
                facts.get(&format!("{item}:{property}"))
            }
        };
        let kind = fact("kind").map(|fact| fact.value.to_string());
        let kind = kind.map(|kind| {
            // "J-runner" and "runner with deflection clips", but "deep-leg" beside the runner's own name.
            let title = title_of("runner.kind", &kind).unwrap_or(kind);
            title.strip_suffix(" runner").unwrap_or(&title).to_owned()
        });
        let gauge = fact("gauge").map(|fact| fact.value.to_string());
        let legs = fact("leg_length").map(|fact| format!("legs {}", fact.value));
        let parts: Vec<String> = [Some(name.clone()), kind, gauge, legs]
            .into_iter()
            .flatten()
            .collect();
        work.profiles.push(parts.join(", "));
        if !fastened.contains(&item) {
            work.gaps.push(format!("fasteners of the {name} (item {item}): the listing states no spacing that a program could read"));
        }
    }
}

/// What the vocabulary calls a value of a property: "deep-leg runner" for `deep-leg`.
fn title_of(property: &str, value: &str) -> Option<String> {
    let ValueKind::Text(values) = &vocabulary().property(property)?.kind else {
        return None;
    };
    let known = values.iter().find(|known| known.name == value)?;
    Some(known.title.clone())
}
