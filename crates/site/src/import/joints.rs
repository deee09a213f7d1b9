//! Tables of joints: the schedule.

use super::names::{Mention, Mentioned, Names};
use super::problem::Findings;
use super::rows::{Entry, entries};
use super::table::Table;
use crate::model::{Joint, Value};

/// The property that says how long a joint is.
const LENGTH: &str = "joint.length";

/// Reads the joints of tables. Where marks are given, each joint needs one.
pub(crate) fn read<'t>(
    tables: impl Iterator<Item = &'t Table<'t>>,
    marks_given: bool,
    names: &mut Names,
    findings: &mut Findings,
) -> Vec<Joint> {
    let mut joints = Vec::new();
    for table in tables {
        if marks_given && !table.named.contains_key("mark") {
            table.missing("mark", findings);
        }
        for entry in entries(table, findings) {
            if !entry.name.is_empty() {
                names
                    .joints
                    .enter(&entry.name, entry.place("joint"), findings);
            }
            if entry.is_whole() {
                joints.push(joint(&entry, marks_given, names, findings));
            }
        }
    }
    joints
}

fn joint(
    entry: &Entry<'_>,
    marks_given: bool,
    names: &mut Names,
    findings: &mut Findings,
) -> Joint {
    let mark = if marks_given {
        entry.required("mark", findings)
    } else {
        entry.text("mark", findings)
    };
    let storey = entry.text("storey", findings);
    let barrier = entry.text("barrier", findings);
    let mentioned = [
        (Mentioned::Mark, "mark", &mark),
        (Mentioned::Storey, "storey", &storey),
        (Mentioned::Barrier, "barrier", &barrier),
    ];
    for (what, heading, name) in mentioned {
        let mention = name.iter().map(|name| Mention {
            what,
            name: name.clone(),
            cell: entry.place(heading),
        });
        names.mentions.extend(mention);
    }
    let listing = entry.text("listing", findings);
    let known = entry.known(listing.as_deref(), findings);
    let length = match known.facts.get(LENGTH).map(|fact| &fact.value) {
        Some(Value::Quantity(length)) => Some(*length),
        _ => None,
    };
    Joint {
        name: entry.name.clone(),
        mark: mark.unwrap_or_default(),
        listing,
        storey,
        barrier,
        grid: entry.text("grid", findings),
        length,
        facts: known.facts,
        not_known: known.not_known,
    }
}
