//! Below the small views: the deck along the wall, the readings along the run, notes.

use measure::{Number, Quantity, Unit, print};

use super::dimensions::dimension;
use super::heading::Heading;
use super::scale::Scale;
use super::view::View;
use super::{caption, chart, profile, reasons};
use crate::known::{Condition, Kind, Origin};
use crate::layout::{Occupied, width, wrapped};
use crate::plane::{Box2, pt};
use crate::section::Scene;
use crate::svg::{Group, Ink};

/// How high the chart is.
const CHART: f64 = 36.0;
const SIZE: f64 = 2.4;

/// What stands below the small views, one after the other as far as there is room.
pub(super) fn below(
    groups: &mut Vec<Group>,
    condition: &Condition,
    found: &Scene,
    heading: &Heading,
    room: Box2,
) {
    let mut y = room.min.y;
    // Why a joint doesn't conform comes before everything that could crowd it out.
    if let Some((group, foot)) = reasons::reasons(heading, room) {
        groups.push(group);
        y = foot;
    }
    if let Some(scene) = profile::along_the_wall(condition, &found.behaviour)
        && y + 48.0 < room.max.y
    {
        let room = Box2::of(pt(room.min.x, y), room.max);
        let guessed = caption::fitted(&profile::drawn_as_usual(condition), room.width());
        y = along_the_wall(groups, &scene, &guessed, room);
    }
    if y + CHART + 10.0 < room.max.y
        && let Some(chart) = chart::chart(
            Box2::of(pt(room.min.x, y), pt(room.max.x, y + CHART)),
            condition,
        )
    {
        groups.push(chart);
        y += CHART + 4.0;
    }
    groups.push(notes(
        condition,
        found,
        Box2::of(pt(room.min.x, y), room.max),
    ));
}

fn along_the_wall(groups: &mut Vec<Group>, scene: &Scene, guessed: &[String], room: Box2) -> f64 {
    let scale = Scale::fitting(scene.frame, room.width() - 4.0, 34.0);
    let wide = scene.frame.width() * scale.of_paper();
    let left = room.min.x + (room.width() - wide) / 2.0;
    let view = View {
        scene,
        scale,
        origin: pt(left, room.min.y),
    };
    groups.extend(view.groups("along", |component| component.title().to_owned()));
    let (dimensions, foot) = dimension(
        &view,
        "along",
        &scene.measures,
        room.max.x,
        &mut Occupied::default(),
    );
    groups.push(dimensions);
    let at = pt(f64::midpoint(room.min.x, room.max.x), foot + 5.0);
    groups.push(caption::caption(
        "along",
        at,
        "Along the wall".to_owned(),
        scale,
        guessed,
    ));
    at.y + 4.0 + caption::height(guessed)
}

fn notes(condition: &Condition, found: &Scene, room: Box2) -> Group {
    let left = room.min.x;
    let mut y = room.min.y + 2.8;
    let mut ink = vec![Ink::bold(pt(left, y), 2.8, "Notes")];
    for (at, note) in told(condition, found).iter().enumerate() {
        let number = format!("{}.", at + 1);
        let lines = wrapped(note, SIZE, false, room.width() - 6.0, 3);
        let high = 3.1 * f64::from(u32::try_from(lines.len()).unwrap_or(0));
        if y + high + 1.0 > room.max.y {
            break;
        }
        let indent = (1.2 + width(&number, SIZE, false)).max(4.0);
        for (at, line) in lines.into_iter().enumerate() {
            y += 3.1;
            if at == 0 {
                ink.push(Ink::words(pt(left, y), SIZE, number.clone()));
            }
            ink.push(Ink::words(pt(left + indent, y), SIZE, line));
        }
        y += 0.6;
    }
    Group {
        id: "notes".to_owned(),
        title: "Notes".to_owned(),
        ink,
    }
}

fn told(condition: &Condition, found: &Scene) -> Vec<String> {
    let mut notes = found.notes.clone();
    if let Origin::Listing(words) = &condition.width.from {
        notes.push(format!(
            "The joint's width isn't recorded: drawn as the listing has it, {words}."
        ));
    }
    for (share, words) in [
        (&condition.motion.closing, "closes"),
        (&condition.motion.opening, "opens"),
    ] {
        if let Some(share) = share {
            let whence = match &share.from {
                Origin::Fact(provenance) => provenance.clone(),
                _ => "as the listing was tested; what is needed isn't recorded".to_owned(),
            };
            notes.push(format!(
                "Movement: {words} by {} of its width ({whence}).",
                share.percent
            ));
        }
    }
    if condition.fill.is_empty() {
        notes.push("Nothing is known of what fills the joint.".to_owned());
    }
    let packing = condition.fill.packing.as_ref();
    if packing.is_some_and(|packing| packing.thickness.is_none()) {
        notes.push("How thick the packing was before compression isn't recorded: neither is its density in place.".to_owned());
    }
    if condition.kind == Kind::FloorToFloor || condition.kind == Kind::FloorToWall {
        notes.push("The edges of the joint are drawn plumb and of one level.".to_owned());
    }
    notes.push(
        "In dimensions millimetres are rounded to 0.1 mm, inches to 1/32 in.; ≈ marks what is."
            .to_owned(),
    );
    notes
}

/// A long length as it is said: feet and inches, or metres.
pub(super) fn long_length(length: Quantity) -> String {
    let inches = (length.unit == Unit::Inch)
        .then(|| length.number.over(Number::whole(12)))
        .flatten()
        .filter(|feet| *feet >= Number::whole(1));
    let Some(feet) = inches else {
        return print::both(length);
    };
    let whole = feet.numerator().div_euclid(feet.denominator());
    let rest = Number::new(whole * 12, 1).and_then(|inches| length.number.minus(inches));
    let rest = rest.filter(|rest| !rest.is_zero());
    let inches = rest.map(|rest| format!(" {}", print::trade(Quantity::new(rest, Unit::Inch))));
    let metres = length
        .to(Unit::Metre)
        .map(|metres| format!(" ({} m)", metres.number.to_decimal(2)));
    format!(
        "{whole} ft{}{}",
        inches.unwrap_or_default(),
        metres.unwrap_or_default()
    )
}
