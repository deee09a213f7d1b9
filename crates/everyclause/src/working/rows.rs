//! Rows of fasteners and clips along a joint.

use engineering::takeoff::{SpacingAsked, fasteners};
use engineering::{Error, Known};
use measure::Quantity;
use schemars::JsonSchema;
use serde::Serialize;

use super::asks::Asks;

/// A row of fasteners or clips.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub(crate) struct Row {
    /// What.
    pub(crate) what: String,
    /// The greatest spacing.
    pub(crate) spacing: Quantity,
    /// From the ends, at most.
    pub(crate) end: Option<Quantity>,
    /// How many.
    pub(crate) count: u64,
}

/// Rows of fasteners and clips along the run, by what the listing asks of their spacing.
pub(super) fn fasteners_and_clips(
    run: Option<Quantity>,
    asks: &Asks<'_>,
) -> Result<Vec<Row>, Error> {
    let Some(run) = run else {
        return Ok(Vec::new());
    };
    let mut rows = Vec::new();
    let mut seen: Vec<&str> = Vec::new();
    for (property, item) in asks.properties() {
        let Some((what, end)) = along_the_run(property) else {
            continue;
        };
        if seen.contains(&property) {
            continue;
        }
        seen.push(property);
        let Some(spacing) = asks.most(property) else {
            continue;
        };
        let end = asks.most(end);
        let asked = SpacingAsked {
            run: Known::new(run, "schedule"),
            spacing: spacing.clone(),
            end: end.clone(),
            at_each: 1,
        };
        rows.push(Row {
            what: format!("{what} (item {item})"),
            spacing: spacing.quantity,
            end: end.map(|end| end.quantity),
            count: fasteners(&asked)?.value,
        });
    }
    Ok(rows)
}

/// What stands along a run at a spacing, and the property of its distance from the ends.
fn along_the_run(property: &str) -> Option<(&'static str, &'static str)> {
    Some(match property {
        "runner.fastener_spacing" => ("fasteners of the runner", "runner.end_distance"),
        "clip.spacing" => ("clips", "clip.end_distance"),
        "fastener.spacing" => ("fasteners", "fastener.end_distance"),
        _ => return None,
    })
}
