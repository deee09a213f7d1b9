//! The work at a joint in words: the same in the terminal, on a page and on paper.

use core::cmp::Ordering;

use conformance::Explanation;
use engineering::Standing;
use engineering::worked::Finding;
use measure::{Number, Quantity, Unit, print};

use crate::flutes::Flutes;
use crate::framing::Way;
use crate::rows::Row;
use crate::{JointWork, Ordered};

/// The width as found or drawn.
pub fn width(joint: &JointWork) -> String {
    if joint.is_width_as_found {
        joint.width.clone()
    } else {
        format!("{}, as drawn", joint.width)
    }
}

/// The strips of packing as they are laid; empty where none are worked out.
pub fn laid(joint: &JointWork) -> String {
    let strips: Vec<String> = joint
        .strips
        .iter()
        .map(|strip| format!("{} × {}", strip.count, strip.thickness))
        .collect();
    let faces = if joint.faces > 1 && !strips.is_empty() {
        format!(", each of {} faces", joint.faces)
    } else {
        String::new()
    };
    let in_all = match joint.strips.as_slice() {
        [one] if joint.is_scheduled => format!("{} in all, as scheduled", one.thickness),
        _ => strips.join(" + "),
    };
    in_all + &faces
}

/// The compression at the ends of what was read, as the calculation has it.
pub fn compressed(joint: &JointWork) -> String {
    let steps = joint.packing.iter().flat_map(|worked| &worked.steps);
    let at = steps.filter_map(|step| {
        let (name, rest) = step.split_once(" width, ")?;
        let (_, c) = rest.split_once(": c")?;
        (name != "mean").then(|| format!("{name} {}", c.trim_start_matches([' ', '='])))
    });
    let ends: Vec<String> = at.collect();
    if ends.is_empty() {
        let steps = joint.packing.iter().flat_map(|worked| &worked.steps);
        let mean = steps.filter_map(|step| {
            step.strip_prefix("mean width, ")?
                .split_once(": c")
                .map(|(_, c)| c)
        });
        return mean
            .map(|c| c.trim_start_matches([' ', '=']).to_owned())
            .collect();
    }
    ends.join("; ")
}

/// The coating: its wet film, the band on each face, and the volume for all of them.
pub fn coating(joint: &JointWork) -> Vec<String> {
    let wet = joint.wet.map(|wet| format!("{} wet", print::both(wet)));
    let band = joint.band.map(|band| format!("band {}", print::both(band)));
    let volume = joint.coating_volume.map(wording::quantity::to_a_hundredth);
    wet.into_iter().chain(band).chain(volume).collect()
}

/// The sealant: how deep, and how wide a round bead is.
pub fn sealant(joint: &JointWork) -> Vec<String> {
    let depth = joint
        .sealant_depth
        .map(|depth| format!("sealant {} deep", print::both(depth)));
    let bead = joint
        .bead_diameter
        .map(|diameter| format!("bead {} across", print::both(diameter)));
    depth.into_iter().chain(bead).collect()
}

/// A row of fasteners or clips.
pub fn row(row: &Row) -> String {
    let what = format!("{} {} (item {})", row.count, row.what, row.item);
    if row.at_each > 1 {
        return format!("{what}, {} at each", row.at_each);
    }
    let end = row.end.map_or_else(String::new, |end| {
        format!(
            ", the first and last {} from the ends at most",
            print::trade(end)
        )
    });
    format!("{what}, {} apart at most{end}", print::trade(row.spacing))
}

/// A way that the structure moves, "by 5/32 in.; room for 7/16 in., then the studs …": movement rounded up, room rounded down.
pub fn moved(way: &Way) -> String {
    let by = rounded(way.by, true);
    if way.room.number <= Number::ZERO {
        return format!("by {by}; no room: {}", way.end);
    }
    let room = rounded(way.room, false);
    format!("by {by}; room for {room}, then {}", way.end)
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
pub fn screws(joint: &JointWork) -> String {
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

/// The flutes over a joint, and what fills them.
pub fn flutes(flutes: &Flutes) -> String {
    let deep = flutes
        .deep
        .map_or_else(String::new, |deep| format!(", {deep} deep"));
    let long = flutes
        .long
        .map_or_else(String::new, |long| format!("; pieces {long} long"));
    let volume = flutes
        .worked
        .as_ref()
        .and_then(|worked| worked.results.last())
        .map_or_else(String::new, |volume| {
            format!("; {} {}", volume.name, volume.shown)
        });
    let (fewest, most, pitch) = (flutes.fewest, flutes.most, flutes.pitch);
    format!("{fewest} to {most}{deep}, {pitch} from rib to rib{long}{volume}")
}

/// How near the cutting of something is to the fewest pieces there can be; empty for what isn't cut.
pub fn nearness(order: &Ordered) -> String {
    match (order.pieces, order.at_least) {
        (Some(pieces), Some(least)) if pieces == least => "fewest there can be".to_owned(),
        (Some(pieces), Some(least)) => {
            format!(
                "at most {} more than the fewest",
                pieces.saturating_sub(least)
            )
        }
        _ => String::new(),
    }
}

/// What a clause asks for; its words, where they are no bound.
pub fn asked(explanation: &Explanation) -> String {
    let is_words =
        explanation.requirement.is_empty() || explanation.requirement == "as the words say";
    if is_words {
        format!("\"{}\"", explanation.words.trim())
    } else {
        explanation.requirement.clone()
    }
}

/// What the calculations of a joint found open or not met.
pub fn objections(joint: &JointWork) -> impl Iterator<Item = &Finding> {
    let of_runner = joint.runner.as_ref().map(|range| &range.worked);
    let worked = joint.packing.iter().chain(&joint.coating).chain(of_runner);
    let found = worked
        .flat_map(|worked| &worked.findings)
        .filter(|finding| finding.standing >= Standing::Open);
    let of_fireproofing = joint
        .fireproofing
        .iter()
        .flat_map(|worked| &worked.findings)
        .filter(|finding| finding.standing != Standing::Note);
    found.chain(of_fireproofing)
}
