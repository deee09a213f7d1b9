//! What is known of the floor, deck and beam.

use measure::{Number, Quantity};

use super::condition::{Beam, Clip, Deck, Fireproofing, Floor, Kind};
use super::evidence::Known;
use super::value::{Length, Origin};

/// The floor of a joint.
pub(super) fn of(known: &Known<'_>, kind: Kind) -> Floor {
    if !has_deck(known) {
        return Floor::Slab {
            thickness: slab(known),
        };
    }
    let deck = deck(known);
    let has_beam = known.knows_of("beam") || known.asks_of("beam");
    if kind == Kind::HeadOfWall && has_beam {
        Floor::Beam(beam(known, deck))
    } else {
        Floor::Deck(deck)
    }
}

fn has_deck(known: &Known<'_>) -> bool {
    match known.text("floor.kind") {
        Some("steel-deck-and-concrete" | "steel-roof-deck") => true,
        Some(_) => false,
        None => known.knows_of("deck") || known.asks_of("deck"),
    }
}

/// Of two names for one thickness, the one that is a fact.
fn slab(known: &Known<'_>) -> Length {
    let both = ["floor.thickness", "concrete.thickness"].map(|property| known.length(property));
    let fact = both.iter().flatten().find(|length| length.from.is_fact());
    let drawable = |length: &&Length| length.mm() > 1.0;
    fact.or_else(|| both.iter().flatten().next())
        .filter(drawable)
        .cloned()
        .unwrap_or_else(|| Length::usual(150))
}

fn deck(known: &Known<'_>) -> Deck {
    let above = |property, least: f64, usual| {
        known
            .length(property)
            .filter(|length| length.mm() >= least)
            .unwrap_or_else(|| Length::usual(usual))
    };
    let depth = above("deck.depth", 5.0, 51);
    let pitch = above("deck.flute_spacing", 40.0, 305);
    // Where nobody says how wide ribs are, 5/12 of the pitch at the underside and 7/12 at the crests: common practice for composite
    // decks.
    let share = |over| Length {
        quantity: part(pitch.quantity, over),
        from: Origin::Usual,
    };
    let rib = |property, over: i32| {
        known
            .length(property)
            .filter(|rib| rib.mm() > 5.0 && rib.mm() < pitch.mm() - 5.0)
            .unwrap_or_else(|| share(over))
    };
    let rib_bottom = rib("deck.rib_width_bottom", 5);
    let mut rib_top = rib("deck.rib_width_top", 7);
    // The flanks of a re-entrant deck are drawn upright, and dashed as what isn't so.
    if rib_top.mm() < rib_bottom.mm() {
        rib_top = Length {
            quantity: rib_bottom.quantity,
            from: Origin::Usual,
        };
    }
    let direction = known.text("deck.direction");
    Deck {
        cover: above("concrete.thickness", 10.0, 64),
        along: direction == Some("along"),
        direction_known: matches!(direction, Some("along" | "across")),
        depth,
        pitch,
        rib_bottom,
        rib_top,
    }
}

/// So many twelfths.
fn part(whole: Quantity, twelfths: i32) -> Quantity {
    Number::new(i128::from(twelfths), 12)
        .and_then(|share| whole.times(share))
        .unwrap_or(whole)
}

fn beam(known: &Known<'_>, deck: Deck) -> Beam {
    let at_least =
        |property, least: f64| known.length(property).filter(|length| length.mm() >= least);
    let depth = at_least("beam.depth", 80.0).unwrap_or_else(|| Length::usual(305));
    let flange_thickness = at_least("beam.flange_thickness", 2.0)
        .filter(|flange| flange.mm() < depth.mm() / 4.0)
        .unwrap_or_else(|| Length::usual(11));
    let fireproofing = known.length("fireproofing.thickness").or_else(|| {
        let there = known.knows_of("fireproofing") || known.asks_of("fireproofing");
        there.then(|| Length::usual(25))
    });
    let has_clip = known.knows_of("clip") || known.asks_of("clip");
    Beam {
        flange_width: at_least("beam.flange_width", 40.0).unwrap_or_else(|| Length::usual(165)),
        clip: has_clip.then(|| Clip {
            leg: at_least("clip.leg_length", 10.0).unwrap_or_else(|| Length::usual(50)),
            steel: at_least("clip.steel_thickness", 0.2).unwrap_or_else(|| Length::usual(1)),
        }),
        fireproofing: fireproofing
            .filter(|thickness| thickness.mm() >= 1.0 && thickness.mm() < depth.mm() / 4.0)
            .map(|thickness| Fireproofing {
                thickness,
                lap: known.length("fireproofing.overlap"),
            }),
        depth,
        flange_thickness,
        deck,
    }
}
