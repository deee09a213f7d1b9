//! What fills a joint between two upright faces.

use super::BARELY_MM;
use super::board_wall::one_tenth;
use super::part::{Component, Look, Material};
use super::scene::{Scene, Side};
use crate::known::{Condition, Kind, Length};
use crate::plane::{Outline, band, pt};

/// Draws what fills the joint, which is so deep.
pub(super) fn fill(scene: &mut Scene, condition: &Condition, deep: f64) {
    let half = scene.behaviour.mm / 2.0;
    let fill = &condition.fill;
    let sealed = fill.sealant.as_ref().map_or((0.0, 0), |sealant| {
        (sealant.depth.mm().min(deep), sealant.faces)
    });
    let (seal_depth, seal_faces) = sealed;
    if let Some(sealant) = &fill.sealant {
        let known = sealant.depth.from.is_fact();
        let top = Outline::rectangle(pt(-half, 0.0), pt(half, seal_depth));
        scene.cut(Component::Sealant, Material::Sealant, &top, known);
        if seal_faces > 1 && deep >= 2.0 * seal_depth {
            let foot = Outline::rectangle(pt(-half, deep - seal_depth), pt(half, deep));
            scene.cut(Component::Sealant, Material::Sealant, &foot, known);
        }
        let both = if seal_faces > 1 { 2.0 } else { 1.0 };
        if both * sealant.depth.mm() > deep + BARELY_MM {
            let words = "sealant deeper than the joint has room for".to_owned();
            scene.trouble(pt(0.0, seal_depth), words);
        } else {
            scene.measure(
                "sealant",
                Side::Right,
                pt(half, 0.0),
                pt(half, seal_depth),
                &sealant.depth,
            );
        }
    }
    if let Some(seal) = &fill.seal {
        let foot = (seal_depth + seal.depth.mm()).min(deep);
        let outline = Outline::rectangle(pt(-half, seal_depth), pt(half, foot));
        scene.cut(
            Component::Seal,
            Material::Foam,
            &outline,
            seal.depth.from.is_fact(),
        );
    }
    packing(scene, condition, deep, sealed);
    coating(scene, condition);
}

fn packing(scene: &mut Scene, condition: &Condition, deep: f64, (sealed, faces): (f64, u8)) {
    let Some(packing) = &condition.fill.packing else {
        return;
    };
    let half = scene.behaviour.mm / 2.0;
    let wanted = packing.depth.mm();
    // At the upper face packing stands behind sealant and seal; at the lower, behind sealant.
    let seal = condition.fill.seal.as_ref();
    let before = sealed + seal.map_or(0.0, |seal| seal.depth.mm());
    let recorded = packing.recess.as_ref().map_or(0.0, Length::mm);
    let taken = recorded.max(before);
    let room = if faces > 1 {
        deep - before - sealed
    } else {
        deep - taken
    };
    // With sealant at both faces nothing says which it lies behind: it is drawn in the middle.
    let top = if faces > 1 {
        before + ((room - wanted) / 2.0).max(0.0)
    } else {
        taken
    };
    let foot = top + wanted.min(room.max(0.0));
    if foot - top < BARELY_MM {
        return;
    }
    if wanted > room + BARELY_MM {
        let over = one_tenth(wanted - room);
        scene.trouble(
            pt(0.0, foot),
            format!("packing {over} mm deeper than the joint has room for"),
        );
    } else if faces > 1 && room - wanted > 1.0 {
        let void = one_tenth((room - wanted) / 2.0);
        scene.trouble(
            pt(-half / 2.0, f64::midpoint(before, top)),
            format!("void of {void} mm between packing and sealant"),
        );
    }
    let free = packing.thickness.as_ref().map(Length::mm);
    let right = match free {
        Some(free) if free < 2.0 * half - BARELY_MM => {
            let gap = one_tenth(2.0 * half - free);
            scene.trouble(
                pt(half - (2.0 * half - free) / 2.0, top),
                format!("gap of {gap} mm beside the packing"),
            );
            free - half
        }
        _ => half,
    };
    let known = packing.depth.from.is_fact() && condition.width.from.is_fact();
    let outline = Outline::rectangle(pt(-half, top), pt(right, foot));
    scene.cut(
        Component::Packing,
        Material::wool(packing.fibres, false),
        &outline,
        known,
    );
    if wanted <= room + BARELY_MM {
        scene.measure(
            "packing",
            Side::Right,
            pt(half, top),
            pt(half, foot),
            &packing.depth,
        );
    }
    if let Some(steel) = &condition.fill.support {
        let path = [
            pt(-half, foot - 25.0_f64.min(foot - top)),
            pt(-half, foot),
            pt(half, foot),
            pt(half, foot - 25.0_f64.min(foot - top)),
        ];
        scene.line(Component::Clip, Look::Cut, path, steel.from.is_fact());
    }
}

/// Coating over the packing, lapped onto both sides.
fn coating(scene: &mut Scene, condition: &Condition) {
    let Some(coating) = &condition.fill.coating else {
        return;
    };
    let half = scene.behaviour.mm / 2.0;
    let (first, second) = (coating.onto_floor.mm(), coating.onto_wall.mm());
    let at_wall = condition.kind == Kind::FloorToWall;
    // From the far end of the right-hand lap leftwards, so that it lies above.
    let path = if at_wall {
        vec![pt(half, -second), pt(half, 0.0), pt(-half - first, 0.0)]
    } else {
        vec![pt(half + second, 0.0), pt(-half - first, 0.0)]
    };
    let known = coating.thickness.from.is_fact()
        && coating.onto_floor.from.is_fact()
        && coating.onto_wall.from.is_fact();
    if let Some(outline) = band(&path, coating.thickness.mm()) {
        scene.cut(Component::Coating, Material::Coating, &outline, known);
    }
    let level = -coating.thickness.mm() - 4.0;
    scene.measure(
        "coating onto the floor",
        Side::Over,
        pt(-half - first, level),
        pt(-half, level),
        &coating.onto_floor,
    );
    if at_wall {
        scene.measure(
            "coating onto the wall",
            Side::Right,
            pt(half, -second),
            pt(half, 0.0),
            &coating.onto_wall,
        );
    } else {
        scene.measure(
            "coating onto the floor",
            Side::Over,
            pt(half, level),
            pt(half + second, level),
            &coating.onto_wall,
        );
    }
}
