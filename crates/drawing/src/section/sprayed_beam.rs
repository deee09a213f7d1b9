//! A beam with its fireproofing over a wall that runs along it.

use super::deck::along_a_rib;
use super::part::{Component, Look, Material};
use super::scene::{Scene, Side};
use super::soffit::Soffit;
use crate::known::{Beam, Length};
use crate::plane::{Outline, Point, band, offset, pt};

/// The half width of a beam's web: of no moment to the joint, and never known.
const HALF_WEB: f64 = 3.5;

/// A beam, what is above it, and its fireproofing; the underside of all lies at y = 0.
pub(super) fn beam(scene: &mut Scene, beam: &Beam) -> Soffit {
    let reach = scene.frame.max.x;
    let spray = beam
        .fireproofing
        .as_ref()
        .map_or(0.0, |spray| spray.thickness.mm());
    let bottom = -spray;
    let top = bottom - beam.depth.mm();
    along_a_rib(scene, &beam.deck, top);
    let half = beam.flange_width.mm() / 2.0;
    let flange = beam.flange_thickness.mm();
    // From the deck on the right, down around the beam, to the middle of its underside.
    let right_side = [
        pt(half, top),
        pt(half, top + flange),
        pt(HALF_WEB, top + flange),
        pt(HALF_WEB, bottom - flange),
        pt(half, bottom - flange),
        pt(half, bottom),
    ];
    let outline: Vec<Point> = right_side
        .iter()
        .copied()
        .chain(right_side.iter().rev().map(|point| point.mirrored()))
        .collect();
    let known = beam.depth.from.is_fact() && beam.flange_width.from.is_fact();
    scene.cut(
        Component::Beam,
        Material::RolledSteel,
        &Outline::of(outline),
        known,
    );
    if !beam.flange_thickness.from.is_fact() {
        scene
            .notes
            .push("The beam's flanges and web are drawn as thick as is usual.".to_owned());
    }
    let edge = reach - 4.0;
    scene.measure(
        "beam",
        Side::Right,
        pt(edge, top),
        pt(edge, bottom),
        &beam.depth,
    );
    let soffit = sprayed(scene, beam, &right_side, reach);
    clip(scene, beam, bottom);
    soffit
}

fn sprayed(scene: &mut Scene, beam: &Beam, right_side: &[Point; 6], reach: f64) -> Soffit {
    let Some(spray) = &beam.fireproofing else {
        let mut path = vec![pt(0.0, 0.0)];
        path.extend(right_side.iter().rev().copied());
        return Soffit::of(path);
    };
    let thickness = spray.thickness.mm();
    let [at_deck, ..] = *right_side;
    let lap = spray.lap.as_ref().map_or(0.0, Length::mm);
    let end = pt(
        (at_deck.x + lap.max(thickness + 1.0)).min(reach - 2.0),
        at_deck.y,
    );
    // Spray that would fill the space between flange and web is drawn as a box around the beam.
    let pocket = (at_deck.x - HALF_WEB).min(beam.depth.mm() / 2.0 - beam.flange_thickness.mm());
    let boxed = thickness > pocket - 2.0;
    let beside = |point: &&Point| !boxed || point.x > HALF_WEB;
    let right: Vec<Point> = core::iter::once(end)
        .chain(right_side.iter().filter(beside).copied())
        .collect();
    let left = right.iter().rev().map(|point| point.mirrored());
    // One coat, from the deck on the left around the beam to the deck on the right: its outer side lies to the right of the path.
    let path: Vec<Point> = right.iter().copied().chain(left).rev().collect();
    let known =
        spray.thickness.from.is_fact() && spray.lap.as_ref().is_none_or(|lap| lap.from.is_fact());
    if let Some(outline) = band(&path, thickness) {
        scene.cut(Component::Fireproofing, Material::Sprayed, &outline, known);
    }
    scene.measure(
        "fireproofing",
        Side::Right,
        pt(0.0, -thickness),
        pt(0.0, 0.0),
        &spray.thickness,
    );
    if let Some(lap) = &spray.lap {
        let level = at_deck.y + thickness + 10.0;
        scene.measure(
            "lap on the deck",
            Side::Under,
            pt(at_deck.x, level),
            pt(at_deck.x + lap.mm(), level),
            lap,
        );
    }
    let from_middle: Vec<Point> = core::iter::once(pt(0.0, -thickness))
        .chain(right.iter().rev().copied())
        .collect();
    Soffit::of(offset(&from_middle, thickness).unwrap_or_default())
}

/// A Z-clip as high as the fireproofing is thick, between the beam and the runner.
fn clip(scene: &mut Scene, beam: &Beam, bottom: f64) {
    let (Some(clip), Some(_)) = (&beam.clip, &beam.fireproofing) else {
        return;
    };
    let steel = clip.steel.mm().min(-bottom / 3.0);
    let leg = clip.leg.mm().min(beam.flange_width.mm() / 2.0 - 2.0);
    let path = [
        pt(-leg, bottom),
        pt(0.0, bottom),
        pt(0.0, -steel),
        pt(leg, -steel),
    ];
    // The upper leg hangs under the flange, the lower lies on the runner.
    if let Some(outline) = band(&path, steel) {
        let known = clip.leg.from.is_fact() && clip.steel.from.is_fact();
        scene.cut(Component::Clip, Material::SheetSteel, &outline, known);
    }
    let pin = -leg / 2.0;
    scene.line(
        Component::Fastener,
        Look::Cut,
        [
            pt(pin, bottom + 3.0),
            pt(pin, bottom - beam.flange_thickness.mm() - 4.0),
        ],
        true,
    );
}
