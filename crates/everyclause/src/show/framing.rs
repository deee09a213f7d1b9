//! Framing, board screws and flutes of a work card.

use core::cmp::Ordering;

use measure::{Number, Quantity, Unit, print};

use super::table;
use super::words::on_one_line;
use crate::working::{Flutes, JointWork, Way};

/// A table of the joints of which something is known; only the columns that something stands in.
pub(crate) fn framing(joints: &[JointWork]) -> String {
    let rows: Vec<[String; 6]> = joints
        .iter()
        .map(|joint| {
            let range = joint.runner.as_ref();
            [
                on_one_line(&joint.joint),
                range.map_or_else(String::new, |range| moved(&range.down)),
                range.map_or_else(String::new, |range| moved(&range.up)),
                screws(joint),
                joint.seal.clone().unwrap_or_default(),
                joint.flutes.as_ref().map_or_else(String::new, flutes),
            ]
        })
        .filter(|[_, rest @ ..]| rest.iter().any(|cell| !cell.is_empty()))
        .collect();
    if rows.is_empty() {
        return String::new();
    }
    let headings = [
        "joint",
        "structure comes down",
        "structure goes up",
        "board screws",
        "preformed seal",
        "flutes to fill",
    ];
    let made = table::of_used_columns(&headings, &rows);
    format!("\n{}", table::set(&made))
}

/// "by 5/32 in.; room for 7/16 in., then the studs …": movement rounded up, room rounded down.
fn moved(way: &Way) -> String {
    let end = on_one_line(&way.end);
    let by = rounded(way.by, true);
    if way.room.number <= Number::ZERO {
        return format!("by {by}; no room: {end}");
    }
    format!("by {by}; room for {}, then {end}", rounded(way.room, false))
}

/// A length up or down to 1/32 in. or 0.1 mm, marked where that isn't exact.
fn rounded(length: Quantity, up: bool) -> String {
    let step = if length.unit == Unit::Inch {
        Number::new(1, 32)
    } else {
        Number::new(1, 10)
    };
    let near = step.and_then(|step| {
        let near = length.number.nearest(step)?;
        if up && near < length.number {
            near.plus(step)
        } else if !up && near > length.number {
            near.minus(step)
        } else {
            Some(near)
        }
    });
    let shown = Quantity::new(near.unwrap_or(length.number), length.unit);
    let mark = if shown == length { "" } else { "≈ " };
    format!("{mark}{}", print::trade(shown))
}

/// Where the board's screws go: what the listing asks, and what the legs coming down ask where that is more.
fn screws(joint: &JointWork) -> String {
    let Some(screws) = &joint.screws else {
        return String::new();
    };
    let mut parts = Vec::new();
    let clear = joint.runner.as_ref().map(|range| range.screws_clear_at);
    let is_more = |clear: &Quantity| {
        screws
            .below
            .is_none_or(|least| clear.compare(least).is_some_and(Ordering::is_gt))
    };
    let clear = clear.filter(is_more).map(|clear| {
        format!(
            "{} or more for the legs to clear them",
            rounded(clear, true)
        )
    });
    let asked = screws
        .below
        .map(|least| format!("{} or more as listed", print::trade(least)));
    let wanted: Vec<String> = asked.into_iter().chain(clear).collect();
    let recorded = screws.recorded.map(print::trade);
    parts.extend(match (wanted.as_slice(), recorded) {
        ([], None) => None,
        ([], Some(recorded)) => Some(format!(
            "uppermost {recorded} below the structure, as recorded"
        )),
        (wanted, None) => Some(format!(
            "uppermost, below the structure: {}",
            wanted.join(", ")
        )),
        (wanted, Some(recorded)) => Some(format!(
            "uppermost, below the structure: {} ({recorded} recorded)",
            wanted.join(", ")
        )),
    });
    if let Some(spacing) = screws.spacing {
        parts.push(format!("others {spacing} apart at most"));
    }
    if let Some(count) = screws.uppermost {
        parts.push(format!("{count} uppermost at least"));
    }
    parts.join("; ")
}

fn flutes(flutes: &Flutes) -> String {
    let mut words = format!("{} to {}", flutes.fewest, flutes.most);
    if let Some(deep) = flutes.deep {
        words.push_str(&format!(", {deep} deep"));
    }
    words.push_str(&format!(", {} from rib to rib", flutes.pitch));
    if let Some(long) = flutes.long {
        words.push_str(&format!("; pieces {long} long"));
    }
    if let Some(volume) = flutes
        .worked
        .as_ref()
        .and_then(|worked| worked.results.last())
    {
        words.push_str(&format!("; {} {}", volume.name, volume.shown));
    }
    words
}
