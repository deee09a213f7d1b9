//! What fills the joint at the head or foot of a wall: packing, coating, sealant, preformed seal, bead and tape.

use super::BARELY_MM;
use super::board_wall::{Faces, one_tenth};
use super::part::{Component, Look, Material};
use super::scene::{Scene, Side};
use super::soffit::Soffit;
use crate::known::{Condition, Length, Wall};
use crate::plane::{Outline, Point, band, part_of, pt};

/// Draws what fills the joint between the top of a wall and what is above it.
pub(super) fn infill(scene: &mut Scene, condition: &Condition, soffit: &Soffit, faces: Faces) {
    let coated = condition
        .fill
        .coating
        .as_ref()
        .map_or(0, |coating| coating.faces);
    let sealed = condition
        .fill
        .sealant
        .as_ref()
        .map_or(0, |sealant| sealant.faces);
    for (side, face) in [(1.0, faces.right), (-1.0, -faces.left)] {
        let first = side > 0.0;
        let room = Room {
            side,
            face,
            framing: inner_limit(condition, faces),
        };
        if room.face - room.framing > BARELY_MM {
            packing(scene, condition, soffit, room);
            seal(scene, condition, room);
            if sealed > u8::from(!first) {
                sealant(scene, condition, room);
            }
        }
        if coated > u8::from(!first) && room.face - room.framing > BARELY_MM {
            coating(scene, condition, soffit, room);
        }
    }
    bead_and_tape(scene, condition, faces);
}

/// One side of the wall: where its outer face and its framing are, counted outwards from the wall's middle.
#[derive(Debug, Clone, Copy)]
struct Room {
    /// 1 on the right, -1 on the left.
    side: f64,
    face: f64,
    framing: f64,
}

impl Room {
    fn place(self, outwards: f64, y: f64) -> Point {
        pt(self.side * outwards, y)
    }

    fn outline(self, points: impl IntoIterator<Item = Point>) -> Outline {
        let side = self.side;
        Outline::of(points).map(|point| pt(side * point.x, point.y))
    }
}

/// How far in something can go: to the runner's leg; of a solid wall, to its middle.
fn inner_limit(condition: &Condition, faces: Faces) -> f64 {
    match condition.wall {
        Some(Wall::Framed(_)) => faces.framing,
        _ => 0.0,
    }
}

/// How far back the packing stands: as recorded, and behind the sealant or seal in front of it.
fn recess(condition: &Condition) -> f64 {
    let fill = &condition.fill;
    let recorded = fill
        .packing
        .as_ref()
        .and_then(|packing| packing.recess.as_ref());
    let sealant = fill.sealant.as_ref().map(|sealant| &sealant.depth);
    let seal = fill.seal.as_ref().map(|seal| &seal.depth);
    [recorded, sealant, seal]
        .into_iter()
        .flatten()
        .map(Length::mm)
        .fold(0.0, f64::max)
}

fn packing(scene: &mut Scene, condition: &Condition, soffit: &Soffit, room: Room) {
    let Some(packing) = &condition.fill.packing else {
        return;
    };
    let recess = recess(condition);
    let outer = room.face - recess;
    let wanted = outer - packing.depth.mm();
    let inner = wanted.max(room.framing);
    if outer - inner < BARELY_MM {
        return;
    }
    if wanted < room.framing - BARELY_MM && room.side > 0.0 {
        let over = one_tenth(room.framing - wanted);
        let words = format!("packing {over} mm deeper than the room beside the runner");
        scene.trouble(room.place(inner, scene.behaviour.mm / 2.0), words);
    }
    let bottom = scene.behaviour.mm;
    let free = packing.thickness.as_ref().map(Length::mm);
    let top: Vec<Point> = match free {
        // Too thin: it lies on the board, and the joint gapes above it.
        Some(free) if free < bottom - BARELY_MM => {
            let gap = one_tenth(bottom - free);
            scene.trouble(
                room.place(outer, (bottom - free) / 2.0),
                format!("gap of {gap} mm above the packing"),
            );
            vec![pt(inner, bottom - free), pt(outer, bottom - free)]
        }
        _ => soffit.between(inner, outer),
    };
    let wool = Material::wool(packing.fibres, true);
    let known = packing.depth.from.is_fact() && condition.width.from.is_fact();
    let points = top
        .into_iter()
        .chain([pt(outer, bottom), pt(inner, bottom)]);
    scene.cut(Component::Packing, wool, &room.outline(points), known);
    if room.side > 0.0 && (wanted - inner).abs() < BARELY_MM {
        let level = scene.frame.max.y;
        scene.measure(
            "packing",
            Side::Below,
            room.place(inner, level),
            room.place(outer, level),
            &packing.depth,
        );
    }
}

fn seal(scene: &mut Scene, condition: &Condition, room: Room) {
    let Some(seal) = &condition.fill.seal else {
        return;
    };
    let inner = (room.face - seal.depth.mm()).max(room.framing);
    let bottom = scene.behaviour.mm;
    let free = seal.width.as_ref().map(Length::mm);
    let top = free.map_or(0.0, |free| (bottom - free).max(0.0));
    if top > BARELY_MM {
        scene.trouble(
            room.place(room.face, top / 2.0),
            format!("gap of {} mm above the seal", one_tenth(top)),
        );
    }
    let outline = room.outline([
        pt(inner, top),
        pt(room.face, top),
        pt(room.face, bottom),
        pt(inner, bottom),
    ]);
    scene.cut(
        Component::Seal,
        Material::Foam,
        &outline,
        seal.depth.from.is_fact(),
    );
}

fn sealant(scene: &mut Scene, condition: &Condition, room: Room) {
    let Some(sealant) = &condition.fill.sealant else {
        return;
    };
    let wanted = room.face - sealant.depth.mm();
    let inner = wanted.max(room.framing);
    if wanted < room.framing - BARELY_MM {
        let over = one_tenth(room.framing - wanted);
        let words = format!("sealant {over} mm deeper than the room beside the runner");
        scene.trouble(room.place(inner, scene.behaviour.mm / 2.0), words);
    }
    let bottom = scene.behaviour.mm;
    let outline = room.outline([
        pt(inner, 0.0),
        pt(room.face, 0.0),
        pt(room.face, bottom),
        pt(inner, bottom),
    ]);
    scene.cut(
        Component::Sealant,
        Material::Sealant,
        &outline,
        sealant.depth.from.is_fact(),
    );
    if room.side > 0.0 && (wanted - inner).abs() < BARELY_MM {
        let level = scene.frame.max.y;
        scene.measure(
            "sealant",
            Side::Below,
            room.place(inner, level),
            room.place(room.face, level),
            &sealant.depth,
        );
    }
}

/// Coating over the face of the packing, lapped onto the wall and onto what is above.
fn coating(scene: &mut Scene, condition: &Condition, soffit: &Soffit, room: Room) {
    let Some(coating) = &condition.fill.coating else {
        return;
    };
    let width = scene.behaviour.mm;
    if !soffit.covers(room.face) {
        // There is nothing over the face for it to lap onto.
        let words = "wall wider than what is above it: no place for the coating".to_owned();
        scene.trouble(room.place(room.face, 0.0), words);
        return;
    }
    let (down, out) = (coating.onto_wall.mm(), coating.onto_floor.mm());
    let (above, over_packing) = soffit.from(room.face);
    let lapped = part_of(&above, over_packing + out);
    let Some(corner) = lapped.first().copied() else {
        return;
    };
    // Where the deck comes down beside the face the coating fills a sharp corner, whose form nobody can tell.
    let sharp = lapped.get(1).is_some_and(|next| next.y > corner.y + 1e-6);
    let lapped = if sharp {
        let note =
            "The coating fills the sharp corner under the deck's flank; its lap there isn't drawn.";
        if room.side > 0.0 {
            scene.notes.push(note.to_owned());
        }
        vec![corner]
    } else {
        lapped
    };
    let path: Vec<Point> = core::iter::once(pt(room.face, width + down))
        .chain(lapped.iter().copied())
        .collect();
    let known = coating.thickness.from.is_fact()
        && coating.onto_wall.from.is_fact()
        && coating.onto_floor.from.is_fact();
    if let Some(outline) = band(&path, coating.thickness.mm()) {
        let side = room.side;
        let outline = outline.map(|point| pt(side * point.x, point.y));
        scene.cut(Component::Coating, Material::Coating, &outline, known);
    }
    if room.side > 0.0 {
        let face = room.face;
        scene.measure(
            "coating onto the wall",
            Side::Right,
            pt(face, width),
            pt(face, width + down),
            &coating.onto_wall,
        );
        let onto: Vec<Point> = part_of(&above, over_packing);
        let start = onto.last().copied().unwrap_or(corner);
        let end = lapped.last().copied().unwrap_or(corner);
        if (start.y - end.y).abs() < 0.01 && (start.distance(end) - out).abs() < BARELY_MM {
            let lift = pt(0.0, start.y + coating.thickness.mm() + 8.0).y;
            scene.measure(
                "coating onto the floor",
                Side::Under,
                pt(start.x, lift),
                pt(end.x, lift),
                &coating.onto_floor,
            );
        }
    }
}

fn bead_and_tape(scene: &mut Scene, condition: &Condition, faces: Faces) {
    if let Some(bead) = &condition.fill.bead {
        let half = (bead.mm() / 2.0).min(faces.framing / 3.0);
        for middle in [-faces.framing * 0.6, faces.framing * 0.6] {
            let ends = [pt(middle - half, 0.0), pt(middle + half, 0.0)];
            scene.line(Component::Bead, Look::Cut, ends, bead.from.is_fact());
        }
    }
    if let Some(tape) = &condition.fill.tape {
        let half = (tape.mm() / 2.0).min(faces.framing - 2.0);
        let ends = [pt(-half, 0.6), pt(half, 0.6)];
        scene.line(Component::Tape, Look::Cut, ends, tape.from.is_fact());
    }
}
