//! Floors over a wall: a flat slab, or concrete on a fluted deck.

use super::part::{Component, Material};
use super::scene::{Scene, Side};
use super::soffit::Soffit;
use crate::known::{Condition, Deck, Length};
use crate::plane::{Outline, Point, band, offset, pt};

/// The thickness that deck steel is drawn with: its gauge is a matter of words, not of a section at this scale.
const DECK_STEEL: f64 = 1.2;

/// A flat slab above the wall.
pub(super) fn slab(scene: &mut Scene, thickness: &Length) -> Soffit {
    let reach = scene.frame.max.x;
    let above = -thickness.mm();
    let outline = Outline::rectangle(pt(-reach, above), pt(reach, 0.0));
    let outline = outline.torn_at_x(reach).torn_at_x(-reach);
    scene.cut(
        Component::Concrete,
        Material::Concrete,
        &outline,
        thickness.from.is_fact(),
    );
    let edge = reach - 4.0;
    scene.measure(
        "slab",
        Side::Right,
        pt(edge, above),
        pt(edge, 0.0),
        thickness,
    );
    Soffit::of(vec![pt(0.0, 0.0), pt(reach, 0.0)])
}

/// Concrete on a deck whose flutes run across the wall, cut along a flute: its crest is what lies above the packing.
pub(super) fn across(
    scene: &mut Scene,
    deck: &Deck,
    condition: &Condition,
    wall_half: f64,
) -> Soffit {
    let reach = scene.frame.max.x;
    let crest = -deck.depth.mm();
    let path = [pt(-reach, crest), pt(reach, crest)];
    deck_and_concrete(scene, deck, &path, true);
    // The flank of the flute and the valley beyond it.
    let beyond = Outline::rectangle(pt(-reach, crest), pt(reach, 0.0));
    let beyond = beyond.torn_at_x(reach).torn_at_x(-reach);
    scene.beyond(
        Component::Deck,
        Material::SheetSteel,
        &beyond,
        deck.depth.from.is_fact(),
    );
    scene
        .notes
        .push("Cut along a flute; the valley of the deck is seen beyond.".to_owned());
    let edge = reach - 4.0;
    scene.measure(
        "flute",
        Side::Right,
        pt(edge, crest),
        pt(edge, 0.0),
        &deck.depth,
    );
    let Some(packing) = &condition.fill.packing else {
        return Soffit::of(vec![pt(0.0, crest), pt(reach, crest)]);
    };
    let half = packing
        .flute_length
        .as_ref()
        .map_or(wall_half, |length| length.mm() / 2.0)
        .clamp(1.0, reach - 10.0);
    let known = deck.depth.from.is_fact()
        && packing
            .flute_length
            .as_ref()
            .is_none_or(|length| length.from.is_fact());
    let wool = Material::wool(packing.fibres, true);
    let outline = Outline::rectangle(pt(-half, crest), pt(half, 0.0));
    scene.cut(Component::FlutePacking, wool, &outline, known);
    let right = vec![
        pt(0.0, 0.0),
        pt(half, 0.0),
        pt(half, crest),
        pt(reach, crest),
    ];
    Soffit::of(right).packed_for(half + deck.depth.mm())
}

/// Concrete on a deck whose flutes run along the wall, with a valley over the wall.
pub(super) fn along(scene: &mut Scene, deck: &Deck) -> Soffit {
    let right = profile(deck, scene.frame.max.x, 0.0);
    let left = right.iter().skip(1).rev().map(|point| point.mirrored());
    let whole: Vec<Point> = left.chain(right.iter().copied()).collect();
    let ribs_known = deck.rib_bottom.from.is_fact() && deck.rib_top.from.is_fact();
    deck_and_concrete(scene, deck, &whole, deck.pitch.from.is_fact() && ribs_known);
    scene.notes.push(
        "Drawn with a valley over the middle of the wall; where it lies isn't recorded.".to_owned(),
    );
    let edge = scene.frame.max.x - 4.0;
    scene.measure(
        "flute",
        Side::Right,
        pt(edge, -deck.depth.mm()),
        pt(edge, 0.0),
        &deck.depth,
    );
    Soffit::of(right)
}

/// The profile of a deck from the middle of a valley outwards, its valleys at a level; it ends beyond `reach`.
pub(crate) fn profile(deck: &Deck, reach: f64, level: f64) -> Vec<Point> {
    let (bottom, top) = (deck.rib_bottom.mm() / 2.0, deck.rib_top.mm() / 2.0);
    let crest = level - deck.depth.mm();
    let mut points = vec![pt(0.0, level)];
    let mut middle = 0.0;
    // A pitch is at least 40 mm, so that this ends.
    while middle - bottom < reach {
        let next = middle + deck.pitch.mm();
        points.extend([
            pt(middle + bottom, level),
            pt(middle + top, crest),
            pt(next - top, crest),
            pt(next - bottom, level),
        ]);
        middle = next;
    }
    points
}

/// A deck along a path from left to right, and the concrete on it.
fn deck_and_concrete(scene: &mut Scene, deck: &Deck, path: &[Point], profile_known: bool) {
    let known = profile_known && deck.depth.from.is_fact();
    let level = path
        .iter()
        .map(|point| point.y)
        .fold(f64::INFINITY, f64::min);
    sheet_and_concrete(scene, deck, path, level, known);
}

/// Concrete on a deck cut along a rib, which rests at a level.
pub(super) fn along_a_rib(scene: &mut Scene, deck: &Deck, level: f64) {
    let reach = scene.frame.max.x;
    let crest = level - deck.depth.mm();
    let path = [pt(-reach, level), pt(reach, level)];
    sheet_and_concrete(scene, deck, &path, crest, deck.depth.from.is_fact());
    let edge = reach - 4.0;
    scene.measure(
        "deck",
        Side::Right,
        pt(edge, crest),
        pt(edge, level),
        &deck.depth,
    );
    scene
        .notes
        .push("The deck over the beam is cut along a rib.".to_owned());
}

/// A sheet along a path from left to right, and concrete over it that reaches its thickness above a level, the crests'.
fn sheet_and_concrete(scene: &mut Scene, deck: &Deck, path: &[Point], level: f64, known: bool) {
    let reach = scene.frame.max.x;
    let above = level - deck.cover.mm();
    // A band lies to the right of its path: from right to left that is above it.
    let leftwards: Vec<Point> = path.iter().rev().copied().collect();
    if let Some(steel) = band(&leftwards, DECK_STEEL) {
        scene.cut(Component::Deck, Material::SheetSteel, &steel, known);
    }
    if let (Some(underside), Some(first), Some(last)) =
        (offset(&leftwards, DECK_STEEL), path.first(), path.last())
    {
        let top = [pt(first.x, above), pt(last.x, above)];
        let outline = Outline::of(top.into_iter().chain(underside));
        let outline = outline.torn_at_x(reach).torn_at_x(-reach);
        scene.cut(
            Component::Concrete,
            Material::Concrete,
            &outline,
            deck.cover.from.is_fact(),
        );
    }
    let edge = reach - 4.0;
    scene.measure(
        "concrete over the crests",
        Side::Right,
        pt(edge, above),
        pt(edge, level),
        &deck.cover,
    );
}
