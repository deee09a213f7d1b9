//! A wall of gypsum board on studs, below what it stands against.

use measure::Quantity;

use super::BARELY_MM;
use super::part::{Component, Look, Material};
use super::scene::{Scene, Side};
use crate::known::{Condition, Framed, Length, Origin, RunnerKind};
use crate::plane::{Outline, band, pt};

/// Where the faces of a wall are, from its middle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Faces {
    /// The outer face on the left; below zero.
    pub(super) left: f64,
    /// The outer face on the right.
    pub(super) right: f64,
    /// The face of the framing on either side.
    pub(super) framing: f64,
}

impl Faces {
    /// The faces of a wall on studs.
    pub(super) fn of(wall: &Framed) -> Self {
        let framing = wall.stud.width.mm() / 2.0;
        let [left, right] = wall
            .layers
            .map(|layers| f64::from(layers) * wall.board.mm());
        Self {
            left: -(framing + left),
            right: framing + right,
            framing,
        }
    }

    /// Half of what must be spanned to cover the whole wall.
    pub(super) fn half(self) -> f64 {
        self.right.max(-self.left)
    }
}

/// Draws the wall: its runner against y = 0, its board from the joint's width downwards.
pub(super) fn wall(scene: &mut Scene, wall: &Framed, condition: &Condition) -> Faces {
    let faces = Faces::of(wall);
    let closed = scene.behaviour.closed_mm;
    stud(scene, wall, faces, closed);
    boards(scene, wall, faces, condition);
    runner(scene, wall, faces);
    slot_and_screw(scene, wall, faces, closed);
    board_screws(scene, wall, faces, closed);
    liner(scene, wall, faces, closed);
    faces
}

fn stud(scene: &mut Scene, wall: &Framed, faces: Faces, closed: f64) {
    let steel = wall.runner.steel.mm();
    let foot = scene.frame.max.y;
    let gap = wall.stud.end_gap.as_ref();
    let wanted = gap.map_or(steel, |gap| gap.mm() - closed);
    let (top, known) = (wanted.max(steel), gap.is_none_or(|gap| gap.from.is_fact()));
    let known = known && wall.stud.width.from.is_fact();
    let outline = Outline::rectangle(pt(-faces.framing, top), pt(faces.framing, foot));
    let outline = outline.torn_at_y(foot);
    scene.beyond(Component::Stud, Material::SheetSteel, &outline, known);
    for side in [-1.0, 1.0] {
        let x = side * (faces.framing - 12.0_f64.min(faces.framing / 2.0));
        scene.line(
            Component::Stud,
            Look::Beyond,
            [pt(x, top), pt(x, foot)],
            known,
        );
    }
    if wanted < steel - BARELY_MM && gap.is_some() {
        let short = one_tenth(steel - wanted);
        scene.trouble(
            pt(0.0, steel),
            format!("stud jams against the runner, {short} mm"),
        );
    }
    if let Some(gap) = gap
        && wanted >= steel
    {
        let moved = moved(gap, scene);
        scene.measure_of(
            "stud to floor",
            Side::Right,
            pt(0.0, 0.0),
            pt(0.0, top),
            moved,
        );
    }
    let leg = wall.runner.leg.mm();
    let inner = wall
        .runner
        .short_leg
        .as_ref()
        .map_or(leg, Length::mm)
        .min(leg);
    if top > inner {
        scene.trouble(
            pt(faces.framing, inner),
            format!("stud has left the runner, {} mm", one_tenth(top - inner)),
        );
    }
    scene.measure(
        "stud",
        Side::Below,
        pt(-faces.framing, foot),
        pt(faces.framing, foot),
        &wall.stud.width,
    );
}

/// A length in the joint, changed by its movement.
fn moved(length: &Length, scene: &Scene) -> (Quantity, bool) {
    let by = scene.behaviour.closed_by();
    let quantity = by
        .and_then(|by| length.quantity.minus(by))
        .unwrap_or(length.quantity);
    (quantity, length.from.is_fact())
}

fn boards(scene: &mut Scene, wall: &Framed, faces: Faces, condition: &Condition) {
    let top = scene.behaviour.mm;
    let foot = scene.frame.max.y;
    let each = wall.board.mm();
    let known = wall.board.from.is_fact() && condition.width.from.is_fact();
    for (side, layers) in [-1.0, 1.0].into_iter().zip(wall.layers) {
        for layer in 0..layers {
            let inner = faces.framing + f64::from(layer) * each;
            let outline =
                Outline::rectangle(pt(side * inner, top), pt(side * (inner + each), foot));
            let outline = outline.torn_at_y(foot);
            scene.cut(Component::Board, Material::Gypsum, &outline, known);
        }
    }
    let [_, right] = wall.layers;
    if right > 0 {
        let inner = faces.framing + f64::from(right - 1) * each;
        scene.measure(
            "board, each layer",
            Side::Below,
            pt(inner, foot),
            pt(inner + each, foot),
            &wall.board,
        );
    }
    if let Some(gap) = &wall.board_gap
        && (gap.mm() - condition.width.mm()).abs() > BARELY_MM
    {
        scene.notes.push(format!(
            "The gap at the top of the board is recorded as {}, the joint's width as {}: drawn by the width.",
            gap.words(),
            condition.width.words()
        ));
    }
}

fn runner(scene: &mut Scene, wall: &Framed, faces: Faces) {
    let runner = &wall.runner;
    let steel = runner.steel.mm();
    let half = faces.framing;
    // Of a shaft wall's J-runner the longer leg is on the side of the shaft.
    let other = match (&runner.short_leg, runner.kind) {
        (Some(short), _) => short.mm(),
        (None, RunnerKind::J) => (runner.leg.mm() / 2.0).min(32.0),
        (None, _) => runner.leg.mm(),
    };
    let long = runner.leg.mm();
    let path = [
        pt(half, other),
        pt(half, 0.0),
        pt(-half, 0.0),
        pt(-half, long),
    ];
    let known = runner.leg.from.is_fact() && runner.steel.from.is_fact();
    // From right to left the inside of the channel lies to the left of the path: a band of negative thickness.
    if let Some(outline) = band(&path, -steel) {
        scene.cut(Component::Runner, Material::SheetSteel, &outline, known);
    }
    scene.measure(
        "runner leg",
        Side::Right,
        pt(-half, 0.0),
        pt(-half, long),
        &runner.leg,
    );
    // Where clips carry the runner, nothing goes from it into concrete.
    if scene.parts_of(Component::Clip).next().is_none() {
        let head = steel + 2.5;
        scene.line(
            Component::Fastener,
            Look::Cut,
            [pt(0.0, head), pt(0.0, -26.0)],
            true,
        );
        scene.line(
            Component::Fastener,
            Look::Cut,
            [pt(-4.0, head), pt(4.0, head)],
            true,
        );
    }
}

/// The slot in the leg, and the screw that slides in it: at its middle as found.
fn slot_and_screw(scene: &mut Scene, wall: &Framed, faces: Faces, closed: f64) {
    let (Some(slot), RunnerKind::Slotted) = (&wall.runner.slot, wall.runner.kind) else {
        return;
    };
    let leg = wall.runner.leg.mm();
    let half_slot = (slot.mm() / 2.0).min(leg / 2.0 - 3.0);
    let middle = leg / 2.0;
    let steel = wall.runner.steel.mm();
    let known = slot.from.is_fact();
    for side in [-1.0, 1.0] {
        let (outer, inner) = (side * faces.framing, side * (faces.framing - steel));
        let outline =
            Outline::rectangle(pt(outer, middle - half_slot), pt(inner, middle + half_slot));
        scene.cut(Component::Runner, Material::Gap, &outline, known);
        let screw = middle - closed;
        let ends = [
            pt(outer + side * 1.5, screw),
            pt(side * (faces.framing - 18.0_f64.min(faces.framing)), screw),
        ];
        scene.line(
            Component::Screw,
            Look::Cut,
            ends,
            wall.stud.fastened == Some(true),
        );
    }
    let over = closed.abs() - half_slot;
    if over > BARELY_MM {
        scene.trouble(
            pt(faces.framing, middle - closed),
            format!(
                "screw at the end of its slot, {} mm too far",
                one_tenth(over)
            ),
        );
    }
    let (from, to) = (
        pt(faces.framing, middle - half_slot),
        pt(faces.framing, middle + half_slot),
    );
    if slot.mm() > 2.0 * half_slot + BARELY_MM {
        scene.trouble(
            from,
            "slot longer than the runner's leg has room for".to_owned(),
        );
    } else {
        scene.measure("slot", Side::Right, from, to, slot);
    }
}

/// The row of screws next to the joint, into the stud.
fn board_screws(scene: &mut Scene, wall: &Framed, faces: Faces, closed: f64) {
    let Some(distance) = &wall.top_screw else {
        return;
    };
    let level = distance.mm() - closed;
    let known = distance.from.is_fact();
    for (outer, layers) in [faces.left, faces.right].into_iter().zip(wall.layers) {
        if layers > 0 {
            let side = outer.signum();
            let tip = side * (faces.framing - 10.0_f64.min(faces.framing / 2.0));
            scene.line(
                Component::Screw,
                Look::Cut,
                [pt(outer, level), pt(tip, level)],
                known,
            );
        }
    }
    if level < wall.runner.leg.mm() - BARELY_MM && level > 0.0 {
        scene.trouble(
            pt(faces.framing, level),
            "board screw meets the runner's leg".to_owned(),
        );
    }
    scene.measure_of(
        "top screws to floor",
        Side::Right,
        pt(faces.right, 0.0),
        pt(faces.right, level),
        moved(distance, scene),
    );
}

/// The liner panel of a shaft wall, within the studs on the side of the shaft.
fn liner(scene: &mut Scene, wall: &Framed, faces: Faces, closed: f64) {
    let Some(liner) = &wall.liner else {
        return;
    };
    let steel = wall.runner.steel.mm();
    let top = (wall.stud.end_gap.as_ref().map_or(steel, Length::mm) - closed).max(steel);
    let foot = scene.frame.max.y;
    let inner = -faces.framing + steel;
    let outline = Outline::rectangle(pt(inner, top), pt(inner + liner.mm(), foot));
    let outline = outline.torn_at_y(foot);
    scene.cut(
        Component::Liner,
        Material::Gypsum,
        &outline,
        liner.from != Origin::Usual,
    );
}

/// A length in millimetres to a tenth.
pub(super) fn one_tenth(mm: f64) -> String {
    format!("{mm:.1}")
}
