//! The work card of a mark, for installer and inspector.

use comfy_table::Cell;
use conformance::Standing;
use engineering::Standing as Found;
use measure::print;

use super::page::{heading, labelled, wrapped};
use super::paint::{QUIET, STRONG, UNKNOWN, paint};
use super::words::{counted, feet_and_inches, in_runs, on_one_line, shortened, to_a_hundredth};
use super::{table, worked};
use crate::working::{Asked, Card, JointWork, Ordered};

/// The whole card.
pub(crate) fn card(card: &Card) -> String {
    let mut text = format!(
        "{}  {}\n",
        paint(STRONG, &format!("Work card {}", on_one_line(&card.mark))),
        on_one_line(&card.title)
    );
    if !card.listing.is_empty() {
        text.push_str(&labelled(
            "listing",
            &on_one_line(
                format!("{}, {}", card.listing, card.edition).trim_end_matches([',', ' ']),
            ),
            2,
            9,
        ));
    }
    if card.standing == Some(Standing::Provisional) {
        let words = "provisional: nobody has confirmed all of how the listing was read";
        text.push_str(&paint(
            UNKNOWN,
            labelled("standing", words, 2, 9).trim_end(),
        ));
        text.push('\n');
    }
    text.push_str(&labelled(
        "joints",
        &counted(card.joints.len(), "joint", "joints"),
        2,
        9,
    ));
    if !card.joints.is_empty() {
        text.push_str(&heading("What to make, joint by joint"));
        text.push_str(&joints(&card.joints));
        text.push_str(&super::framing::framing(&card.joints));
        let found = found(&card.joints);
        if !found.is_empty() {
            text.push('\n');
            text.push_str(&found);
        }
    }
    if !card.orders.is_empty() {
        text.push_str(&heading("What to bring, all joints together"));
        text.push_str(&orders(&card.orders));
    }
    if !card.asks.is_empty() {
        text.push_str(&heading("What to hold against it, as the listing asks"));
        text.push_str(&asks(&card.asks));
    }
    text.push_str(&heading("To note"));
    for note in &card.notes {
        text.push_str(&wrapped(&on_one_line(note), 2, 2));
    }
    text.push_str(&heading("Cautions"));
    for caution in &card.cautions {
        text.push_str(&wrapped(caution, 2, 2));
    }
    text.push('\n');
    for line in worked::STANDING_LINES {
        text.push_str(&paint(QUIET, wrapped(line, 0, 0).trim_end()));
        text.push('\n');
    }
    text
}

fn joints(joints: &[JointWork]) -> String {
    let headings = [
        "joint",
        "place",
        "length",
        "width",
        "packing, uncompressed",
        "cut wide, at least",
        "compressed",
    ];
    let rows: Vec<[String; 7]> = joints
        .iter()
        .map(|joint| {
            [
                on_one_line(&joint.joint),
                on_one_line(&joint.place),
                joint.length.map_or_else(|| "?".to_owned(), feet_and_inches),
                width(joint),
                laid(joint),
                joint.cut_width.map_or_else(String::new, print::both),
                compressed(joint),
            ]
        })
        .collect();
    let strips = table::of_used_columns(&headings, &rows);
    let headings = ["joint", "coating or sealant", "fasteners"];
    let rows: Vec<[String; 3]> = joints
        .iter()
        .map(|joint| [on_one_line(&joint.joint), film(joint), fastened(joint)])
        .collect();
    let fills = table::of_used_columns(&headings, &rows);
    format!("{}\n{}", table::set(&strips), table::set(&fills))
}

fn width(joint: &JointWork) -> String {
    if joint.is_width_as_found {
        joint.width.clone()
    } else {
        format!("{}, as drawn", joint.width)
    }
}

fn laid(joint: &JointWork) -> String {
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
fn compressed(joint: &JointWork) -> String {
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

fn film(joint: &JointWork) -> String {
    let mut parts = Vec::new();
    if let Some(wet) = joint.wet {
        parts.push(format!("{} wet", print::both(wet)));
    }
    if let Some(band) = joint.band {
        parts.push(format!("band {}", print::both(band)));
    }
    if let Some(volume) = joint.coating_volume {
        parts.push(to_a_hundredth(volume));
    }
    if let Some(depth) = joint.sealant_depth {
        parts.push(format!("sealant {} deep", print::both(depth)));
    }
    if let Some(diameter) = joint.bead_diameter {
        parts.push(format!("bead {} across", print::both(diameter)));
    }
    parts.join(", ")
}

fn fastened(joint: &JointWork) -> String {
    let rows: Vec<String> = joint
        .fasteners
        .iter()
        .map(|row| {
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
        })
        .collect();
    rows.join("; ")
}

/// Findings of the calculations that are more than met, and what couldn't be worked out.
fn found(joints: &[JointWork]) -> String {
    let mut text = String::new();
    let mut gaps: Vec<(&str, Vec<&str>)> = Vec::new();
    for joint in joints {
        for not_met in &joint.not_met {
            let words = format!("{}: put right first: {not_met}", joint.joint);
            text.push_str(&worked::finding(&engineering::worked::Finding {
                standing: Found::NotMet,
                words,
            }));
        }
        for gap in &joint.gaps {
            match gaps.iter_mut().find(|(words, _)| words == gap) {
                Some((_, joints)) => joints.push(&joint.joint),
                None => gaps.push((gap, vec![&joint.joint])),
            }
        }
        let findings = joint
            .packing
            .iter()
            .chain(&joint.coating)
            .chain(joint.runner.as_ref().map(|range| &range.worked))
            .flat_map(|worked| &worked.findings);
        let of_fireproofing = joint
            .fireproofing
            .iter()
            .flat_map(|worked| &worked.findings)
            .filter(|finding| finding.standing != Found::Note);
        for finding in findings
            .filter(|finding| finding.standing >= Found::Open)
            .chain(of_fireproofing)
        {
            let named = engineering::worked::Finding {
                standing: finding.standing,
                words: format!("{}: {}", joint.joint, finding.words),
            };
            text.push_str(&worked::finding(&named));
        }
    }
    for (gap, joints) in gaps {
        let words = format!("? {}: {}", on_one_line(&in_runs(&joints)), on_one_line(gap));
        text.push_str(&paint(UNKNOWN, wrapped(&words, 2, 2).trim_end()));
        text.push('\n');
    }
    text
}

/// What to bring.
pub(super) fn orders(orders: &[Ordered]) -> String {
    let mut table = table::table(&["what", "in place", "to bring", "pieces", "cutting"]);
    for order in orders {
        table.add_row(
            [
                on_one_line(&order.what),
                to_a_hundredth(order.net),
                to_a_hundredth(order.brought),
                order
                    .pieces
                    .map_or_else(String::new, |pieces| pieces.to_string()),
                nearness(order),
            ]
            .map(Cell::new),
        );
    }
    table::to_the_right(&mut table, 3);
    table::set(&table)
}

/// How near the cutting is to the fewest pieces there can be.
fn nearness(order: &Ordered) -> String {
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

fn asks(asks: &[Asked]) -> String {
    let mut table = table::table(&["item", "about", "asked", "joints"]);
    for ask in asks {
        let counts = [(ask.met, "✓"), (ask.not_met, "✗"), (ask.open, "?")];
        let counts: Vec<String> = counts
            .iter()
            .filter(|(count, _)| *count > 0)
            .map(|(count, mark)| format!("{mark} {count}"))
            .collect();
        table.add_row(
            [
                on_one_line(if ask.item.is_empty() {
                    "head"
                } else {
                    &ask.item
                }),
                on_one_line(&ask.title),
                shortened(&on_one_line(&ask.requirement), 160),
                counts.join("  "),
            ]
            .map(Cell::new),
        );
    }
    table::unwrapped(&mut table, 0);
    table::unwrapped(&mut table, 3);
    table::set(&table)
}
