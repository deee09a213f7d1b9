//! The foot of the sheet: cautions, key, title block (fields after ISO 7200, as far as a joint has them).

use conformance::{Overall, Verdict};

use super::heading::Heading;
use crate::known::Condition;
use crate::layout::wrapped;
use crate::plane::{Box2, pt};
use crate::svg::{Group, Ink, Pen};

/// What stands on every sheet.
const STANDING: &str = "Conforms only as read and recorded; the authority having jurisdiction decides. Local codes and licensed practice govern.";

const CAUTIONS: &[&str] = &[
    "Mineral wool, fireproofing and cut board give off dust and fibres: protect lungs, eyes and skin.",
    "Heads of walls and floor edges are at a height: work from a proper platform, guarded against falls.",
    "Old fireproofing may hold asbestos: have it tested before anybody scrapes, probes or cuts it.",
    "An opened joint must be repaired as its listing says.",
];

/// Cautions, in a box.
pub(super) fn cautions(frame: Box2) -> Group {
    let mut ink = vec![Ink::frame(frame, Pen::Beyond)];
    let left = frame.min.x + 2.0;
    let mut y = frame.min.y + 4.2;
    ink.push(Ink::bold(pt(left, y), 2.8, "Cautions"));
    for caution in CAUTIONS {
        y += 1.0;
        for line in wrapped(caution, 2.4, false, frame.width() - 4.0, 3) {
            y += 3.1;
            ink.push(Ink::words(pt(left, y), 2.4, line));
        }
    }
    Group {
        id: "cautions".to_owned(),
        title: "Cautions".to_owned(),
        ink,
    }
}

/// The title block.
pub(super) fn block(frame: Box2, heading: &Heading, condition: &Condition, scale: &str) -> Group {
    let Box2 { min, max } = frame;
    let mut ink = vec![Ink::frame(frame, Pen::Cut)];
    let left = min.x + 2.0;
    let wide = frame.width() - 4.0;
    let mut y = min.y + 5.6;
    let name = format!("{} · {}", heading.joint, heading.mark);
    for line in wrapped(&name, 4.4, true, wide * 0.58, 1) {
        ink.push(Ink::bold(pt(left, y), 4.4, line));
    }
    let (verdict, words) = outcome(heading);
    let column = min.x + frame.width() * 0.62;
    ink.push(Ink::Mark(pt(column + 1.4, y - 1.4), verdict));
    ink.push(Ink::bold(pt(column + 4.0, y), 3.4, words));
    y += 4.4;
    for line in wrapped(&heading.title, 2.8, false, wide * 0.6, 1) {
        ink.push(Ink::words(pt(left, y), 2.8, line));
    }
    if heading.provisional {
        ink.push(Ink::words(
            pt(column, y),
            2.4,
            "provisional: listing unconfirmed",
        ));
    }
    y += 1.6;
    ink.push(Ink::line(pt(min.x, y), pt(max.x, y), Pen::Beyond));
    let rows = [
        ("Building", heading.building.as_str()),
        ("Place", heading.place.as_str()),
        ("Listing", heading.listing.as_str()),
        ("Section", condition.kind.words()),
        ("Scale", scale),
    ];
    for (label, words) in rows {
        y += 3.7;
        ink.push(Ink::words(pt(left, y), 2.2, label));
        let words = if words.is_empty() {
            "not recorded"
        } else {
            words
        };
        for line in wrapped(words, 2.6, false, wide - 16.0, 1) {
            ink.push(Ink::words(pt(left + 15.0, y), 2.6, line));
        }
    }
    y += 1.7;
    ink.push(Ink::line(pt(min.x, y), pt(max.x, y), Pen::Beyond));
    for line in wrapped(STANDING, 2.4, true, wide, 2) {
        y += 3.2;
        ink.push(Ink::bold(pt(left, y), 2.4, line));
    }
    Group {
        id: "title-block".to_owned(),
        title: "Title block".to_owned(),
        ink,
    }
}

fn outcome(heading: &Heading) -> (Verdict, &'static str) {
    match heading.outcome {
        Some(Overall::Conforms) => (Verdict::Met, Overall::Conforms.words()),
        Some(Overall::DoesNotConform) => (Verdict::NotMet, Overall::DoesNotConform.words()),
        Some(Overall::Open) => (Verdict::Open, Overall::Open.words()),
        None => (Verdict::Open, "open: no listing"),
    }
}
