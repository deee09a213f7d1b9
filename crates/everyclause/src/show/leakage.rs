//! The leakage of smoke barriers.

use comfy_table::Cell;
use engineering::worked::{Finding, STANDING};
use engineering::{Known, Standing};
use measure::{Quantity, print};

use super::page::{heading, wrapped};
use super::paint::{QUIET, STRONG, UNKNOWN, paint};
use super::words::{counted, feet_and_inches, in_runs, on_one_line, to_a_hundredth};
use super::{table, worked};
use crate::leakage::{BarrierLeakage, Leakages};

/// Every smoke barrier with its joints.
pub(crate) fn leakages(of: &Leakages) -> String {
    let count = counted(of.barriers.len(), "smoke barrier", "smoke barriers");
    let mut text = format!(
        "{}  {count}\n",
        paint(STRONG, &on_one_line(&format!("Leakage {}", of.building)))
    );
    let limit = format!(
        "at most {} for each joint ({})",
        print::both(of.limit.quantity),
        of.limit.provenance
    );
    text.push_str(&wrapped(&limit, 2, 2));
    if !of.provisional.is_empty() {
        let joints: Vec<&str> = of.provisional.iter().map(String::as_str).collect();
        let words = format!(
            "provisional: nobody has confirmed all of how the listing was read at {}",
            in_runs(&joints)
        );
        text.push_str(&paint(UNKNOWN, wrapped(&words, 2, 2).trim_end()));
        text.push('\n');
    }
    for barrier in &of.barriers {
        text.push_str(&one(barrier));
    }
    let open = [
        (
            "nobody says whether these are smoke barriers",
            &of.not_known,
        ),
        (
            "the schedule doesn't say in which barrier these joints lie",
            &of.without_barrier,
        ),
    ];
    let open: Vec<String> = open
        .iter()
        .filter(|(_, names)| !names.is_empty())
        .map(|(words, names)| {
            let names: Vec<&str> = names.iter().map(String::as_str).collect();
            format!("? {words}: {}", in_runs(&names))
        })
        .collect();
    if !open.is_empty() {
        text.push_str(&heading("Left out"));
        for words in open {
            text.push_str(&paint(UNKNOWN, wrapped(&words, 2, 2).trim_end()));
            text.push('\n');
        }
    }
    text.push('\n');
    text.push_str(&paint(QUIET, wrapped(STANDING, 0, 0).trim_end()));
    text.push('\n');
    text
}

fn one(barrier: &BarrierLeakage) -> String {
    let mut text = heading(&on_one_line(&format!(
        "{}  {}",
        barrier.barrier, barrier.title
    )));
    if !barrier.joints.is_empty() {
        text.push_str(&joints(barrier));
    }
    for finding in &barrier.findings {
        text.push_str(&worked::finding(finding));
    }
    if barrier.standing == Standing::Met {
        text.push_str(&worked::finding(&Finding {
            standing: Standing::Met,
            words: "every joint in the schedule is within the limit at both temperatures"
                .to_owned(),
        }));
    }
    text
}

fn joints(barrier: &BarrierLeakage) -> String {
    let mut table = table::table(&["joint", "length", "listing", "ambient", "elevated"]);
    for joint in &barrier.joints {
        let listing = joint.listing.as_deref().unwrap_or("none");
        let row = [
            on_one_line(&joint.joint),
            joint.length.map_or_else(|| "?".to_owned(), feet_and_inches),
            on_one_line(listing),
            rated(joint.ambient.as_ref()),
            rated(joint.elevated.as_ref()),
        ];
        table.add_row(row.map(Cell::new));
    }
    let sum = |sum: Option<Quantity>, has: bool| match sum {
        Some(sum) if has => to_a_hundredth(sum),
        _ => "no sum".to_owned(),
    };
    let is_rated = |of: fn(&crate::leakage::Leaks) -> bool| barrier.joints.iter().any(of);
    let row = [
        "sum, of those rated".to_owned(),
        String::new(),
        String::new(),
        sum(barrier.ambient, is_rated(|joint| joint.ambient.is_some())),
        sum(barrier.elevated, is_rated(|joint| joint.elevated.is_some())),
    ];
    table.add_row(row.map(Cell::new));
    table::set(&table)
}

fn rated(rating: Option<&Known>) -> String {
    rating.map_or_else(
        || "no rating".to_owned(),
        |rating| print::both(rating.quantity),
    )
}
