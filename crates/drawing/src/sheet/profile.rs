//! Along the wall: the profile of a deck whose flutes run across it, and what fills them.

use crate::known::{Condition, Deck, Floor, Kind};
use crate::plane::{Box2, Outline, Point, pt};
use crate::section::{Behaviour, Component, Material, Scene, Side, deck_profile};

/// The flutes of a deck that run across a wall, seen along it: two of them, cut in the plane of its board.
pub(super) fn along_the_wall(condition: &Condition, behaviour: &Behaviour) -> Option<Scene> {
    let Some(Floor::Deck(deck)) = &condition.floor else {
        return None;
    };
    if deck.along || condition.kind != Kind::HeadOfWall {
        return None;
    }
    let reach = deck.pitch.mm() * 1.15;
    let above = deck.depth.mm() + deck.cover.mm();
    let foot = condition.width.mm() + 45.0;
    let frame = Box2::of(pt(-reach, -above - 4.0), pt(reach, foot));
    let mut scene = Scene::new(behaviour.clone(), frame);
    scene.deck_along(deck);
    flutes(&mut scene, deck, condition);
    let width = condition.width.mm();
    if let Some(packing) = &condition.fill.packing {
        let outline = Outline::rectangle(pt(-reach, 0.0), pt(reach, width));
        let outline = outline.torn_at_x(reach).torn_at_x(-reach);
        scene.cut(
            Component::Packing,
            Material::wool(packing.fibres, true),
            &outline,
            packing.depth.from.is_fact(),
        );
    }
    let outline = Outline::rectangle(pt(-reach, width), pt(reach, foot));
    let outline = outline.torn_at_x(reach).torn_at_x(-reach).torn_at_y(foot);
    scene.cut(
        Component::Board,
        Material::Gypsum,
        &outline,
        condition.width.from.is_fact(),
    );
    let pitch = deck.pitch.mm();
    let level = frame.max.y;
    scene.measure(
        "flutes",
        Side::Below,
        pt(0.0, level),
        pt(pitch, level),
        &deck.pitch,
    );
    Some(scene)
}

/// What of the profile is drawn as is usual, as nobody has recorded it: lines too near each other to show dashes.
pub(super) fn drawn_as_usual(condition: &Condition) -> Vec<String> {
    let Some(Floor::Deck(deck)) = &condition.floor else {
        return Vec::new();
    };
    let unknown = [
        (&deck.depth, "depth of the deck"),
        (&deck.pitch, "spacing of the flutes"),
        (&deck.rib_top, "width of the ribs at the top"),
        (&deck.rib_bottom, "width of the ribs at the bottom"),
    ];
    let names: Vec<&str> = unknown
        .iter()
        .filter(|(length, _)| !length.from.is_fact())
        .map(|(_, name)| *name)
        .collect();
    if names.is_empty() {
        return Vec::new();
    }
    vec![format!(
        "not recorded, drawn as listed or usual: {}",
        names.join(", ")
    )]
}

/// The space of each flute, between two ribs, filled.
fn flutes(scene: &mut Scene, deck: &Deck, condition: &Condition) {
    let Some(packing) = &condition.fill.packing else {
        return;
    };
    let known =
        deck.depth.from.is_fact() && deck.rib_bottom.from.is_fact() && deck.rib_top.from.is_fact();
    let right: Vec<Point> = deck_profile(deck, scene.frame.max.x, 0.0);
    // After the middle valley the profile goes up, over and down again: four points a flute.
    for flute in right.get(1..).unwrap_or_default().chunks_exact(4) {
        for side in [1.0, -1.0] {
            let outline = Outline::of(flute.iter().map(|point| pt(side * point.x, point.y)));
            scene.cut(
                Component::FlutePacking,
                Material::wool(packing.fibres, true),
                &outline,
                known,
            );
        }
    }
}
