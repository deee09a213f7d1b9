//! The head of a wall; turned over, its foot.

use super::behaviour::Behaviour;
use super::board_wall::{self, Faces};
use super::part::{Component, Material};
use super::scene::{Scene, Side};
use super::{deck, infill, sprayed_beam};
use crate::known::{Condition, Floor, Framed, Length, Solid, Wall};
use crate::plane::{Box2, Outline, pt};

/// What is shown beside the laps of the coating.
const BESIDE: f64 = 14.0;

/// The most of a floor that is shown.
const MOST_ABOVE: f64 = 1400.0;

/// The section through the head of a wall.
pub(super) fn scene(condition: &Condition, behaviour: Behaviour) -> Scene {
    let faces = faces(condition);
    let frame = frame(condition, faces);
    let mut scene = Scene::new(behaviour, frame);
    let soffit = match &condition.floor {
        Some(Floor::Deck(floor)) if floor.along => deck::along(&mut scene, floor),
        Some(Floor::Deck(floor)) => {
            if !floor.direction_known {
                scene.notes.push(
                    "Which way the flutes run isn't recorded: drawn across the wall.".to_owned(),
                );
            }
            deck::across(&mut scene, floor, condition, faces.half())
        }
        Some(Floor::Beam(beam)) => sprayed_beam::beam(&mut scene, beam),
        Some(Floor::Slab { thickness }) => deck::slab(&mut scene, thickness),
        None => deck::slab(&mut scene, &Length::usual(150)),
    };
    match &condition.wall {
        Some(Wall::Framed(wall)) => {
            board_wall::wall(&mut scene, wall, condition);
        }
        Some(Wall::Solid(wall)) => solid(&mut scene, wall, condition),
        None => {}
    }
    let width = (scene.behaviour.width, condition.width.from.is_fact());
    let at = faces.right;
    scene.measure_of(
        "joint width",
        Side::Right,
        pt(at, 0.0),
        pt(at, scene.behaviour.mm),
        width,
    );
    // The joint's width comes first of all measures.
    scene.measures.rotate_right(1);
    infill::infill(&mut scene, condition, &soffit, faces);
    scene
}

fn faces(condition: &Condition) -> Faces {
    match &condition.wall {
        Some(Wall::Framed(wall)) => Faces::of(wall),
        Some(Wall::Solid(wall)) => {
            let half = wall.thickness.mm() / 2.0;
            Faces {
                left: -half,
                right: half,
                framing: half,
            }
        }
        None => Faces {
            left: -75.0,
            right: 75.0,
            framing: 75.0,
        },
    }
}

/// What is shown: the joint with its laps and legs at its widest, and as much around as tells what it lies in. The same at every
/// state, so that the states can be compared.
fn frame(condition: &Condition, faces: Faces) -> Box2 {
    let mm = |length: Option<&Length>| length.map_or(0.0, Length::mm);
    let coating = condition.fill.coating.as_ref();
    let lap = mm(coating.map(|coating| &coating.onto_floor));
    let mut reach = faces.half() + (lap + BESIDE).max(44.0);
    let above = match &condition.floor {
        Some(Floor::Slab { thickness }) => thickness.mm(),
        Some(Floor::Deck(deck)) => {
            if deck.along {
                reach = reach.max(deck.pitch.mm() / 2.0);
            }
            if let Some(packing) = &condition.fill.packing {
                let half = mm(packing.flute_length.as_ref()) / 2.0;
                reach = reach.max(half + (lap + BESIDE).max(44.0));
            }
            deck.depth.mm() + deck.cover.mm()
        }
        Some(Floor::Beam(beam)) => {
            let spray = beam.fireproofing.as_ref();
            let side = mm(spray.map(|spray| &spray.thickness))
                + mm(spray.and_then(|spray| spray.lap.as_ref()));
            reach = reach.max(beam.flange_width.mm() / 2.0 + side + 40.0);
            beam.depth.mm()
                + beam.deck.depth.mm()
                + beam.deck.cover.mm()
                + mm(spray.map(|spray| &spray.thickness))
        }
        None => 150.0,
    };
    let opened = condition.motion.opening.as_ref().map_or(0.0, |share| {
        crate::known::as_number(share.ratio()) * condition.width.mm()
    });
    let widest = condition.width.mm() + opened;
    let framed = match &condition.wall {
        Some(Wall::Framed(wall)) => below(wall, opened),
        _ => 0.0,
    };
    let wall = widest + mm(coating.map(|coating| &coating.onto_wall));
    let below = framed.max(wall).max(80.0) + 24.0;
    Box2::of(
        pt(-reach, -(above + 8.0).min(MOST_ABOVE)),
        pt(reach, below.min(500.0).max(widest + 30.0)),
    )
}

fn below(wall: &Framed, opened: f64) -> f64 {
    let screw = wall
        .top_screw
        .as_ref()
        .map_or(0.0, |screw| screw.mm() + opened);
    let gap = wall
        .stud
        .end_gap
        .as_ref()
        .map_or(0.0, |gap| gap.mm() + opened);
    wall.runner.leg.mm().max(screw).max(gap + 10.0)
}

fn solid(scene: &mut Scene, wall: &Solid, condition: &Condition) {
    let half = wall.thickness.mm() / 2.0;
    let foot = scene.frame.max.y;
    let outline = Outline::rectangle(pt(-half, scene.behaviour.mm), pt(half, foot));
    let outline = outline.torn_at_y(foot);
    let material = if wall.masonry {
        Material::Masonry
    } else {
        Material::Concrete
    };
    let known = wall.thickness.from.is_fact() && condition.width.from.is_fact();
    scene.cut(Component::Wall, material, &outline, known);
    scene.measure(
        "wall",
        Side::Below,
        pt(-half, foot),
        pt(half, foot),
        &wall.thickness,
    );
}
