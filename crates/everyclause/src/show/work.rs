//! The work card of a mark, for installer and inspector.

use comfy_table::Cell;
use conformance::Standing;
use engineering::Standing as Found;
use engineering::worked::STANDING;
use measure::print;
use workcard::{Asked, Card, JointWork, Ordered, words};

use super::page::{heading, labelled, wrapped};
use super::paint::{QUIET, STRONG, UNKNOWN, paint};
use super::words::{counted, feet_and_inches, in_runs, on_one_line, shortened, to_a_hundredth};
use super::{table, worked};

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
    text.push_str(&paint(QUIET, wrapped(STANDING, 0, 0).trim_end()));
    text.push('\n');
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
                words::width(joint),
                words::laid(joint),
                joint.cut_width.map_or_else(String::new, print::both),
                words::compressed(joint),
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

fn film(joint: &JointWork) -> String {
    [words::coating(joint), words::sealant(joint)]
        .concat()
        .join(", ")
}

fn fastened(joint: &JointWork) -> String {
    let rows: Vec<String> = joint.fasteners.iter().map(words::row).collect();
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
        for finding in words::objections(joint) {
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
                words::nearness(order),
            ]
            .map(Cell::new),
        );
    }
    table::to_the_right(&mut table, 3);
    table::set(&table)
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
