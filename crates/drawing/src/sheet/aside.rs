//! Beside the main view: the joint closed and open, or a detail of one that doesn't move.

use super::dimensions::dimension;
use super::scale::Scale;
use super::view::View;
use super::{caption, troubles};
use crate::known::{Condition, Kind};
use crate::layout::Occupied;
use crate::plane::{Box2, Point, pt};
use crate::section::{Measure, Scene, Side, State};
use crate::svg::Group;

/// The room at the right of a small view for the joint's width.
const LANE: f64 = 18.0;

/// The joint closed and open, side by side; of a joint that doesn't move, a detail. Gives how far down they go.
pub(super) fn beside(
    groups: &mut Vec<Group>,
    condition: &Condition,
    found: &Scene,
    room: Box2,
) -> f64 {
    let states = [State::Closed, State::Open].map(|state| Scene::of(condition, state));
    let scenes: Vec<Scene> = states
        .into_iter()
        .flatten()
        .map(|scene| scene.detail(joint_only(condition, &scene)))
        .collect();
    let Some(first) = scenes.first() else {
        return detail(groups, condition, found, room);
    };
    let wide = room.width() / 2.0;
    let scale = Scale::fitting(first.frame, wide - lane(first), 86.0);
    let mut below = room.min.y;
    for (at, scene) in scenes.iter().enumerate() {
        let left = room.min.x + wide * f64::from(u32::try_from(at).unwrap_or(0));
        let id = if scene.behaviour.state == State::Closed {
            "closed"
        } else {
            "open"
        };
        let column = Box2::of(pt(left, room.min.y), pt(left + wide, room.max.y));
        let lines = caption::fitted(&caption::lines(condition, scene), wide - 3.0);
        below = below.max(view(
            groups,
            id,
            scene,
            scale,
            column,
            &caption::title(scene),
            &lines,
        ));
    }
    below
}

/// The room that the joint's width takes at the right of a view.
fn lane(scene: &Scene) -> f64 {
    match scene.measures.first() {
        Some(width) if width.side == Side::Right => LANE,
        _ => 3.0,
    }
}

/// One view with its caption at the top of a column.
fn view(
    groups: &mut Vec<Group>,
    id: &str,
    scene: &Scene,
    scale: Scale,
    column: Box2,
    title: &str,
    lines: &[String],
) -> f64 {
    let wide = scene.frame.width() * scale.of_paper();
    let spare = (column.width() - lane(scene) - wide).max(0.0);
    let view = View {
        scene,
        scale,
        origin: pt(column.min.x + spare / 2.0, column.min.y),
    };
    groups.extend(view.groups(id, |component| component.title().to_owned()));
    let mut occupied = Occupied::default();
    let (dimensions, foot) = dimension(&view, id, &scene.measures, column.max.x, &mut occupied);
    groups.push(dimensions);
    groups.extend(troubles::marks(&view, id, &mut occupied));
    let at: Point = pt(f64::midpoint(column.min.x, column.max.x - 3.0), foot + 7.0);
    groups.push(caption::caption(id, at, title.to_owned(), scale, lines));
    at.y + caption::height(lines)
}

/// What of a section shows the movement: of a wall that is the same on both sides, its right half, and of what is above only as much
/// as the joint needs.
fn joint_only(condition: &Condition, scene: &Scene) -> Box2 {
    let Box2 { min, max } = scene.frame;
    match condition.kind {
        Kind::HeadOfWall => {
            let face = scene.measures.first().map_or(max.x, |width| width.from.x);
            let lap = condition
                .fill
                .coating
                .as_ref()
                .map_or(0.0, |coating| coating.onto_floor.mm());
            let right = max.x.min(face + lap.max(30.0) + 20.0);
            Box2::of(
                pt(-12.0, min.y.max(-deep_enough(condition))),
                pt(right, max.y),
            )
        }
        Kind::BottomOfWall => Box2::of(pt(-12.0, min.y), pt(max.x, max.y.min(40.0))),
        _ => scene.frame,
    }
}

fn deep_enough(condition: &Condition) -> f64 {
    match &condition.floor {
        Some(crate::known::Floor::Deck(deck)) => deck.depth.mm() + 30.0,
        Some(crate::known::Floor::Beam(beam)) => {
            beam.fireproofing
                .as_ref()
                .map_or(0.0, |spray| spray.thickness.mm())
                + 60.0
        }
        _ => 40.0,
    }
}

/// A detail of a joint that doesn't move.
fn detail(groups: &mut Vec<Group>, condition: &Condition, found: &Scene, room: Box2) -> f64 {
    let Some(Measure { from, to, .. }) = found.measures.first() else {
        return room.min.y;
    };
    let middle = from.towards(*to, 0.5);
    let around = Box2::of(middle, middle).grown((condition.width.mm() / 2.0 + 30.0).max(44.0));
    let (shown, around) = (found.frame, around);
    let frame = Box2::of(
        pt(around.min.x.max(shown.min.x), around.min.y.max(shown.min.y)),
        pt(around.max.x.min(shown.max.x), around.max.y.min(shown.max.y)),
    );
    let scene = found.detail(frame);
    let scale = Scale::fitting(frame, room.width() - lane(&scene), 100.0);
    let why = if condition.motion.closing.is_none() && condition.motion.opening.is_none() {
        vec![if condition.motion.is_static {
            "The joint is static: it isn't meant to move.".to_owned()
        } else {
            "No movement of the joint is recorded.".to_owned()
        }]
    } else {
        Vec::new()
    };
    view(
        groups,
        "detail",
        &scene,
        scale,
        room,
        "Detail, as found",
        &why,
    )
}
