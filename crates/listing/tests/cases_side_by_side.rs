//! Cases in words that numbers stand under: where there is such a thing, at a place that not every joint has, in joints that move, in one layer of several; and what looks
//! like one of them and isn't.

mod common;

use common::{check, clauses};

#[test]
fn a_thing_that_there_may_be() {
    // What is said of it is asked for where there is one; of another thing that is named anew, always.
    check(
        "1. Wall - Studs max 24 in. OC. Head restraint angles (if any), max 6 mm thick, at 1200 mm centres.\n",
        &[
            "stud.spacing: at most 24 in",
            "angle.steel_thickness: at most 6 mm if \"if any\"",
            "1:angles_spacing: nominal 1200 mm if \"if any\"",
        ],
    );
    check(
        "1. Wall - Studs max 24 in. OC. Backer rod (where used) min 1 in. in diameter, set 1/2 in. deep.\n",
        &[
            "stud.spacing: at most 24 in",
            "backer.diameter: at least 1 in if \"where used\"",
            "backer.depth: nominal 1/2 in if \"where used\"",
        ],
    );
    check(
        "1. Wall - Studs max 600 mm OC. Cover plate (if fitted) max 3 mm thick; studs min 64 mm deep.\n",
        &[
            "stud.spacing: at most 600 mm",
            "strip.steel_thickness: at most 3 mm if \"if fitted\"",
            "stud.width: at least 64 mm",
        ],
    );
    check(
        "1. Wall - Studs max 24 in. OC. Corner bead (if any) max 1/8 in. thick, and the board min 5/8 in. thick.\n",
        &[
            "stud.spacing: at most 24 in",
            "sealant.depth: at most 1/8 in if \"if any\"",
            "board.thickness: at least 5/8 in",
        ],
    );
    check(
        "1. Track - Insulation (where used) min 40 mm thick. Track fastened max 600 mm OC.\n",
        &[
            "1:insulation_thickness: at least 40 mm if \"where used\"",
            "runner.fastener_spacing: at most 600 mm",
        ],
    );
}

#[test]
fn another_thing_in_the_same_sentence_is_always_asked_for() {
    for joint in [", and", ",", " and", ", while", ", and elastomeric"] {
        let found = clauses(&format!(
            "1. Seal - Backer rod (if any) min 1 in. in diameter{joint} sealant min 1/2 in. deep.\n"
        ));
        assert_eq!(
            found,
            [
                "backer.diameter: at least 1 in if \"if any\"",
                "sealant.depth: at least 1/2 in",
            ],
            "{joint}"
        );
    }
    let found =
        clauses("1. Seal - Backer rod (if any), wool 4 in. deep and sealant 1/2 in. deep.\n");
    assert!(
        found.iter().all(|clause| !clause.contains("if any")),
        "{found:?}"
    );
}

#[test]
fn what_somebody_may_ask_for_is_left_out_of_nothing() {
    check(
        "1. Wall - Studs max 24 in. OC. Head restraint angles (where specified), max 6 mm thick.\n",
        &[
            "stud.spacing: at most 24 in",
            "angle.steel_thickness: at most 6 mm",
        ],
    );
}

#[test]
fn a_place_that_is_one_of_several() {
    check(
        "1. Blanket - 4 in. deep. At a wall, blanket turned up 4 in. min. and held by a 20 gage angle, pinned 8 in. o.c.\n",
        &[
            "1:blanket_depth: nominal 4 in",
            "1:blanket_blanket_turned_min: at least 4 in if \"At a wall\"",
            "angle.gauge: nominal 20 gauge if \"At a wall\"",
            "1:angle_spacing: nominal 8 in if \"At a wall\"",
        ],
    );
    check(
        "1. Seal - At an upstand, turn the seal up 50 mm or more.\n",
        &["1:seal_turn_the_seal_or: at least 50 mm if \"At an upstand\""],
    );
    check(
        "1. Seal - At walls, lap 2 in. min.\n",
        &["seal.overlap: at least 2 in if \"At walls\""],
    );
    check(
        "1. Seal - At building exterior stop the blanket 1 in. short of the cladding.\n",
        &["1:blanket_gap: nominal 1 in if \"At building exterior\""],
    );
    check(
        "1. Seal - At a tee or cross, lap min 150 mm.\n",
        &["seal.overlap: at least 150 mm if \"At a tee or cross\""],
    );
    check(
        "1. Seal - At steel beams, lap min 3 in.\n",
        &["seal.overlap: at least 3 in if \"At steel beams\""],
    );
}

#[test]
fn what_says_how_or_where_every_joint_is_no_such_place() {
    check(
        "1. Seal - At the wall, lap 2 in. min.\n",
        &["seal.overlap: at least 2 in"],
    );
    check(
        "1. Clips - At a spacing of max 12 in., drive pins 1 in. long.\n",
        &[
            "clip.spacing: at most 12 in",
            "fastener.length: nominal 1 in",
        ],
    );
    check(
        "1. Seal - At a uniform rate, spray min 2 mm thick.\n",
        &["1:spray_thickness: at least 2 mm"],
    );
    check(
        "1. Safing - At a butt the ends are pressed together by 1/4 in. Clips of 20 gauge steel hold it.\n",
        &[
            "1:packing_are_pressed_together: nominal 1/4 in if \"At a butt\"",
            "clip.gauge: nominal 20 gauge",
        ],
    );
}

#[test]
fn joints_that_move_and_joints_that_do_not() {
    check(
        "1. Packing - Compress min 25 % for static joints; min 33 % for moving joints.\n",
        &[
            "1:packing_compress: at least 25 percent if \"for static joints\"",
            "1:packing_compress: at least 33 percent if \"for moving joints\"",
        ],
    );
    check(
        "1. Packing - Compress 25 percent minimum in static joints and 33 percent minimum in dynamic joints.\n",
        &[
            "1:packing_compress_minimum: at least 25 percent if \"in static joints\"",
            "1:packing_compress_minimum: at least 33 percent if \"in dynamic joints\"",
        ],
    );
    check(
        "1. Packing - Compress min 33 % for moving joints.\n",
        &["1:packing_compress_for_moving_joints: at least 33 percent"],
    );
}

#[test]
fn layers_in_their_order() {
    // One layer alone says where a screw goes; the spacing behind both is of all.
    check(
        "1. Screws - Length at least 1 in. for the first layer and 1-5/8 in. for the second.\n",
        &[
            "fastener.length: at least 1 in if \"for the first layer\"",
            "fastener.length: at least 13/8 in if \"for the second\"",
        ],
    );
    check(
        "1. Screws - First layer, 25 mm long; second layer, 41 mm long; third layer, 57 mm long.\n",
        &[
            "fastener.length: nominal 25 mm if \"First layer\"",
            "fastener.length: nominal 41 mm if \"second layer\"",
            "fastener.length: nominal 57 mm if \"third layer\"",
        ],
    );
    check(
        "1. Board - Drive 25 mm screws through the base layer and 41 mm screws through the face layer, 300 mm o.c.\n",
        &[
            "board.screw_length: nominal 25 mm if \"through the base layer\"",
            "board.screw_length: nominal 41 mm if \"through the face layer\"",
            "fastener.spacing: nominal 300 mm",
        ],
    );
    check(
        "1. Screws - Min 1 in. long through the first layer.\n",
        &["fastener.length: at least 1 in"],
    );
}

#[test]
fn a_place_may_close_a_second_number() {
    check(
        "1. Coating - Overlap onto wall 20 mm minimum, or 25 mm on masonry.\n",
        &[
            "coating.overlap_wall: at least 20 mm",
            "coating.overlap_wall: at least 25 mm if \"on masonry\"",
        ],
    );
    check(
        "1. Track - Fasteners 12 in. OC, 8 in. OC at corners.\n",
        &[
            "fastener.spacing: nominal 12 in",
            "fastener.spacing: nominal 8 in if \"at corners\"",
        ],
    );
    check(
        "1. Packing - Wool 6 pcf, or 8 pcf on block.\n",
        &[
            "packing.density: nominal 6 pcf",
            "packing.density: nominal 8 pcf if \"on block\"",
        ],
    );
    check(
        "1. Coating - Lap on wall min 1 in., and min 2 in. at mullions.\n",
        &[
            "coating.overlap_wall: at least 1 in",
            "coating.overlap_framing: at least 2 in if \"at mullions\"",
        ],
    );
    check(
        "1. Sealant - Min 1/2 in. deep. At corners and intersections this is increased to 3/4 in.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "sealant.depth: at least 3/4 in if \"At corners and intersections\"",
        ],
    );
}

#[test]
fn a_place_that_says_where_something_is_closes_no_case() {
    check(
        "1. Track - Fasteners at corners 8 in. OC.\n",
        &["fastener.spacing: nominal 8 in"],
    );
    check(
        "1. Coating - Lap 1 in. on masonry and concrete.\n",
        &["coating.overlap_wall: nominal 1 in"],
    );
    check(
        "1. Strip - Board strips 1 in. thick, 12 in. wide centered on mullions.\n",
        &[
            "board.thickness: nominal 1 in",
            "board.width: nominal 12 in",
        ],
    );
    check(
        "1. Coating - Lap min 1 in. at mullions.\n",
        &["coating.overlap_framing: at least 1 in"],
    );
}
