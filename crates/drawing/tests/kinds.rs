//! The SVG of one joint of each kind, from facts alone, so that only the drawing can change it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a failed expectation is the point"
)]

mod support;

use conformance::Subject;
use drawing::{Heading, Known};
use measure::{Number, Quantity, Unit};
use site::{Fact, Facts, Value};

/// Facts, one a line: `packing.depth 1 in.`; a value that is no quantity is a text.
fn facts(lines: &str) -> Vec<Fact> {
    lines
        .lines()
        .filter_map(|line| line.trim().split_once(' '))
        .map(|(property, value)| {
            let value = match (value, Quantity::parse(value)) {
                ("yes", _) => Value::Flag(true),
                ("1" | "2", _) => {
                    let count = value.parse::<i32>().unwrap();
                    Value::Quantity(Quantity::new(Number::from(count), Unit::Count))
                }
                (_, Ok(quantity)) => Value::Quantity(quantity),
                (text, Err(_)) => Value::Text(text.to_owned()),
            };
            support::fact(property, value)
        })
        .collect()
}

fn check(name: &str, lines: &str) {
    let facts = facts(lines);
    let subject = Subject {
        joint: name,
        mark: "M1",
        facts: Facts::from_iter(&facts),
        judgments: Vec::new(),
    };
    let known = Known {
        subject: &subject,
        listing: None,
    };
    let heading = Heading {
        joint: name.to_owned(),
        mark: "M1".to_owned(),
        ..Heading::default()
    };
    let page = drawing::sheet(&known, &heading).expect("a sheet");
    support::assert_sheet_is_clean(&page, name);
    insta::assert_snapshot!(name, drawing::svg(&page));
}

const FRAMED: &str = "
    wall.kind gypsum-steel-stud
    stud.width 3-5/8 in.
    stud.end_gap 3/4 in.
    board.layers 2
    board.thickness 5/8 in.
    board.top_screw_distance 4 in.
    runner.leg_length 2-1/2 in.
    packing.depth 1-1/4 in.
    packing.thickness 1-1/2 in.
    packing.density 4 pcf
    packing.edge_first yes
    coating.wet_thickness 5/32 in.
    coating.overlap_board 3/4 in.
    joint.movement_compression 20 %
    joint.movement_extension 10 %";

#[test]
fn head_under_a_slab() {
    check(
        "head-slab",
        &format!(
            "joint.kind head-of-wall\njoint.width 7/8 in.\nfloor.thickness 8 in.\ncoating.overlap_concrete 1-1/4 in.{FRAMED}"
        ),
    );
}

#[test]
fn head_across_flutes() {
    check(
        "head-across-flutes",
        &format!(
            "joint.kind head-of-wall\njoint.width 1 in.\nfloor.kind steel-deck-and-concrete\ndeck.depth 2 in.\ndeck.flute_spacing 12 in.\ndeck.direction across\nconcrete.thickness 3-1/2 in.\npacking.length 6-1/4 in.\ncoating.overlap_deck 2 in.{FRAMED}"
        ),
    );
}

#[test]
fn head_along_flutes() {
    check(
        "head-along-flutes",
        &format!(
            "joint.kind head-of-wall\njoint.width 5/8 in.\nfloor.kind steel-deck-and-concrete\ndeck.depth 2 in.\ndeck.flute_spacing 12 in.\ndeck.rib_width_bottom 5 in.\ndeck.rib_width_top 7 in.\ndeck.direction along\nconcrete.thickness 3-1/2 in.\ncoating.overlap_deck 2 in.{FRAMED}"
        ),
    );
}

#[test]
fn head_under_a_sprayed_beam() {
    check(
        "head-beam",
        &format!(
            "joint.kind head-of-wall\njoint.width 3/4 in.\nfloor.kind steel-deck-and-concrete\ndeck.depth 2 in.\nconcrete.thickness 3-1/2 in.\nbeam.depth 12 in.\nbeam.flange_width 6-1/2 in.\nfireproofing.thickness 1-3/8 in.\nfireproofing.overlap 5 in.\nclip.leg_length 2-1/2 in.\ncoating.overlap_fireproofing 2-1/2 in.{FRAMED}"
        ),
    );
}

/// The slotted runner's legs are too short for what the joint opens to, and its slots for what it closes: both are marked.
#[test]
fn head_with_a_slotted_runner_that_jams_and_gapes() {
    check(
        "head-slotted-troubled",
        &format!(
            "joint.kind head-of-wall\njoint.width 2-1/4 in.\nfloor.thickness 8 in.\nrunner.kind slotted\nrunner.slot_length 1 in.{FRAMED}\nstud.end_gap 2-1/4 in.\njoint.movement_compression 45 %\njoint.movement_extension 45 %"
        ),
    );
}

#[test]
fn head_of_a_shaft_wall() {
    check(
        "head-shaft-wall",
        "joint.kind head-of-wall
        joint.width 1/2 in.
        joint.static_or_dynamic static
        floor.thickness 8 in.
        wall.kind shaft-wall
        stud.width 4 in.
        stud.end_gap 1/2 in.
        board.layers 2
        board.sides 1
        board.thickness 5/8 in.
        runner.kind j
        runner.leg_length 3 in.
        sealant.depth 1-1/4 in.
        sealant.bead_diameter 3/8 in.
        tape.width 2 in.",
    );
}

#[test]
fn head_with_a_preformed_seal() {
    check(
        "head-seal",
        "joint.kind head-of-wall
        joint.width 32 mm
        floor.thickness 200 mm
        wall.kind gypsum-steel-stud
        stud.width 92 mm
        stud.end_gap 32 mm
        board.layers 1
        board.thickness 16 mm
        runner.leg_length 90 mm
        seal.width 64 mm
        seal.depth 16 mm
        joint.movement_compression 20 %",
    );
}

#[test]
fn foot_of_a_masonry_wall() {
    check(
        "foot-masonry",
        "joint.kind bottom-of-wall
        joint.width 16 mm
        floor.thickness 150 mm
        wall.kind masonry
        wall.thickness 200 mm
        sealant.depth 25 mm
        packing.depth 100 mm",
    );
}

#[test]
fn between_floors() {
    check(
        "floor-to-floor",
        "joint.kind floor-to-floor
        joint.width 3-1/4 in.
        floor.thickness 8 in.
        packing.depth 4-1/2 in.
        packing.thickness 4-3/4 in.
        packing.density 64 kg/m3
        packing.fiber_direction vertical
        coating.wet_thickness 5/32 in.
        coating.overlap_concrete 1-1/4 in.
        joint.movement_compression 15 %
        joint.movement_extension 15 %",
    );
}

/// Opened by 40 % the joint is wider than its packing was thick: the gap is marked.
#[test]
fn between_walls_with_packing_too_thin() {
    check(
        "wall-to-wall-gaping",
        "joint.kind wall-to-wall
        joint.width 3 in.
        wall.kind concrete
        wall.thickness 8 in.
        packing.depth 4-1/2 in.
        packing.thickness 4 in.
        packing.density 6 pcf
        sealant.depth 1 in.
        joint.movement_extension 40 %",
    );
}

#[test]
fn between_a_floor_and_a_wall() {
    check(
        "floor-to-wall",
        "joint.kind floor-to-wall
        joint.width 2-1/2 in.
        floor.thickness 8 in.
        wall.kind concrete
        wall.thickness 10 in.
        packing.depth 4-1/2 in.
        packing.thickness 4 in.
        clip.steel_thickness 0.047 in.
        coating.wet_thickness 5/32 in.
        coating.overlap_concrete 1-1/4 in.
        joint.movement_compression 10 %",
    );
}

/// A depth in whole inches within a wall of whole millimetres: a tenth of a millimetre too deep by the width of a hair.
#[test]
fn a_sealant_deeper_by_a_tenth_is_not_drawn_as_if_it_fitted() {
    let facts = facts(
        "joint.kind head-of-wall\njoint.width 1 in.\nwall.kind gypsum-steel-stud\nfloor.kind flat-concrete\n\
         stud.width 129 mm\nboard.total_thickness 38 mm\nsealant.depth 1 1/2 in.",
    );
    let subject = Subject {
        joint: "J-1",
        mark: "M1",
        facts: Facts::from_iter(&facts),
        judgments: Vec::new(),
    };
    let known = Known {
        subject: &subject,
        listing: None,
    };
    let condition = drawing::Condition::of(&known).unwrap();
    let scene = drawing::Scene::as_found(&condition);
    support::assert_lengths_are_true(&scene, "38.1 mm in 38 mm");
    assert!(
        scene.troubles.iter().any(|trouble| trouble
            .words
            .starts_with("sealant 0.1 mm deeper than the room")),
        "{:?}",
        scene.troubles
    );
}

#[test]
fn what_cannot_be_drawn_says_what_is_missing() {
    let error = |lines: &str| {
        let facts = facts(lines);
        let subject = Subject {
            joint: "J-1",
            mark: "M1",
            facts: Facts::from_iter(&facts),
            judgments: Vec::new(),
        };
        let known = Known {
            subject: &subject,
            listing: None,
        };
        drawing::sheet(&known, &Heading::default())
            .unwrap_err()
            .to_string()
    };
    insta::assert_snapshot!("undrawable", [
        error("joint.width 1 in."),
        error("joint.kind perimeter\njoint.width 1 in."),
        error("joint.kind head-of-wall\nwall.kind concrete"),
        error("joint.kind head-of-wall\njoint.width 0 in.\nwall.kind concrete"),
        error("joint.kind head-of-wall\njoint.width 1 in."),
        error("joint.kind head-of-wall\njoint.width 1 in.\nwall.kind concrete\nwall.thickness 2 mm"),
    ].join("\n"));
}
