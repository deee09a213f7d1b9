//! Generated joints: facts, from the usual to the absurd.

use measure::{Number, Quantity, Unit};
use proptest::prelude::*;
use site::{Fact, Value};

use super::fact;

/// Facts of a joint that can be drawn at all: its kind, its width and the kind of its wall are among them.
pub(crate) fn joint() -> impl Strategy<Value = Vec<Fact>> {
    let kind = prop_oneof![
        4 => Just("head-of-wall"),
        1 => Just("bottom-of-wall"),
        1 => Just("wall-to-wall"),
        1 => Just("floor-to-floor"),
        1 => Just("floor-to-wall"),
    ];
    let wall = prop_oneof![
        3 => Just("gypsum-steel-stud"),
        1 => Just("shaft-wall"),
        1 => Just("concrete"),
        1 => Just("masonry"),
    ];
    (
        kind,
        wall,
        length(4, 150),
        floor(),
        framing(),
        filling(),
        movement(),
    )
        .prop_map(|(kind, wall, width, floor, framing, filling, movement)| {
            let mut facts = vec![
                text("joint.kind", kind),
                text("wall.kind", wall),
                fact("joint.width", width),
            ];
            facts.extend(floor);
            facts.extend(framing);
            facts.extend(filling);
            facts.extend(movement);
            facts
        })
}

fn text(property: &str, value: &str) -> Fact {
    fact(property, Value::Text(value.to_owned()))
}

/// A length in whole millimetres or sixteenths of an inch.
fn length(least: i32, most: i32) -> impl Strategy<Value = Value> {
    prop_oneof![
        (least..=most)
            .prop_map(|mm| Value::Quantity(Quantity::new(Number::whole(mm), Unit::Millimetre))),
        (least..=most).prop_map(|mm| {
            let sixteenths = Number::new(i128::from(mm) * 16 / 25 + 1, 16).unwrap();
            Value::Quantity(Quantity::new(sixteenths, Unit::Inch))
        }),
    ]
}

fn percent(most: i32) -> impl Strategy<Value = Value> {
    (0..=most)
        .prop_map(|percent| Value::Quantity(Quantity::new(Number::whole(percent), Unit::Percent)))
}

fn count(most: i32) -> impl Strategy<Value = Value> {
    (0..=most).prop_map(|count| Value::Quantity(Quantity::new(Number::whole(count), Unit::Count)))
}

/// A fact that may be missing.
fn maybe(
    property: &'static str,
    value: impl Strategy<Value = Value>,
) -> impl Strategy<Value = Option<Fact>> {
    proptest::option::weighted(0.75, value)
        .prop_map(move |value| value.map(|value| fact(property, value)))
}

fn flatten(facts: Vec<Option<Fact>>) -> Vec<Fact> {
    facts.into_iter().flatten().collect()
}

fn floor() -> impl Strategy<Value = Vec<Fact>> {
    let kind = prop_oneof![Just("flat-concrete"), Just("steel-deck-and-concrete")];
    let way = prop_oneof![Just("along"), Just("across"), Just("at-an-angle")];
    let deck = (
        maybe("deck.depth", length(0, 120)),
        maybe("deck.flute_spacing", length(0, 600)),
        maybe("deck.rib_width_top", length(10, 300)),
        maybe("deck.rib_width_bottom", length(10, 300)),
        proptest::option::of(way),
    );
    let beam = (
        maybe("beam.depth", length(50, 900)),
        maybe("beam.flange_width", length(30, 400)),
        maybe("beam.flange_thickness", length(0, 60)),
        maybe("fireproofing.thickness", length(0, 90)),
        maybe("fireproofing.overlap", length(0, 400)),
        maybe("clip.leg_length", length(5, 120)),
    );
    let slab = (
        maybe("floor.thickness", length(0, 700)),
        maybe("concrete.thickness", length(0, 300)),
    );
    (kind, slab, deck, proptest::option::weighted(0.4, beam)).prop_map(
        |(kind, slab, deck, beam)| {
            let mut facts = vec![Some(text("floor.kind", kind)), slab.0, slab.1];
            if kind == "steel-deck-and-concrete" {
                facts.extend([deck.0, deck.1, deck.2, deck.3]);
                facts.push(deck.4.map(|way| text("deck.direction", way)));
                if let Some((a, b, c, d, e, f)) = beam {
                    facts.extend([a, b, c, d, e, f]);
                }
            }
            flatten(facts)
        },
    )
}

fn framing() -> impl Strategy<Value = Vec<Fact>> {
    let kind = prop_oneof![Just("plain"), Just("deep-leg"), Just("slotted"), Just("j")];
    let wall = (
        maybe("wall.thickness", length(20, 500)),
        maybe("stud.width", length(12, 320)),
        maybe("stud.end_gap", length(0, 120)),
        maybe("board.layers", count(5)),
        maybe("board.sides", count(2)),
        maybe("board.thickness", length(0, 30)),
        maybe("board.total_thickness", length(3, 90)),
        maybe("board.top_screw_distance", length(0, 300)),
        maybe("board.gap", length(0, 90)),
    );
    let runner = (
        proptest::option::of(kind),
        maybe("runner.leg_length", length(0, 160)),
        maybe("runner.slot_length", length(0, 120)),
        maybe("runner.short_leg_length", length(0, 100)),
        maybe("runner.steel_thickness", length(0, 4)),
    );
    (wall, runner).prop_map(|(wall, runner)| {
        let mut facts = vec![
            wall.0, wall.1, wall.2, wall.3, wall.4, wall.5, wall.6, wall.7, wall.8,
        ];
        facts.extend([runner.1, runner.2, runner.3, runner.4]);
        facts.push(runner.0.map(|kind| text("runner.kind", kind)));
        flatten(facts)
    })
}

fn filling() -> impl Strategy<Value = Vec<Fact>> {
    let way = prop_oneof![
        Just("vertical"),
        Just("horizontal"),
        Just("along-joint"),
        Just("across-joint")
    ];
    let packing = (
        maybe("packing.depth", length(0, 250)),
        maybe("packing.thickness", length(0, 250)),
        maybe("packing.compression", percent(99)),
        maybe("packing.recess", length(0, 40)),
        maybe("packing.length", length(1, 300)),
        proptest::option::of(way),
    );
    let coating = (
        maybe("coating.wet_thickness", length(0, 8)),
        maybe("coating.overlap_board", length(0, 150)),
        maybe("coating.overlap_concrete", length(0, 150)),
        maybe("coating.overlap_deck", length(0, 150)),
        maybe("coating.overlap_fireproofing", length(0, 150)),
        maybe("coating.faces", count(2)),
    );
    let rest = (
        maybe("sealant.depth", length(0, 60)),
        maybe("sealant.faces", count(2)),
        maybe("sealant.bead_diameter", length(0, 20)),
        maybe("seal.depth", length(0, 60)),
        maybe("seal.width", length(0, 150)),
        maybe("tape.width", length(0, 150)),
    );
    let some = |share| proptest::bool::weighted(share);
    (
        packing,
        coating,
        rest,
        some(0.8),
        some(0.7),
        some(0.3),
        some(0.15),
    )
        .prop_map(
            |(packing, coating, rest, packed, coated, sealed, with_seal)| {
                let mut facts = Vec::new();
                if packed {
                    facts.extend([packing.0, packing.1, packing.2, packing.3, packing.4]);
                    facts.push(packing.5.map(|way| text("packing.fiber_direction", way)));
                }
                if coated {
                    facts.extend([
                        coating.0, coating.1, coating.2, coating.3, coating.4, coating.5,
                    ]);
                }
                if sealed {
                    facts.extend([rest.0, rest.1, rest.2]);
                }
                if with_seal {
                    facts.extend([rest.3, rest.4, rest.5]);
                }
                flatten(facts)
            },
        )
}

fn movement() -> impl Strategy<Value = Vec<Fact>> {
    (
        maybe("joint.movement_compression", percent(100)),
        maybe("joint.movement_extension", percent(120)),
    )
        .prop_map(|(closing, opening)| flatten(vec![closing, opening]))
}
