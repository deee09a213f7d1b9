//! Conditions by name and by contrast: classes, the rest of the joints, kinds of concrete, variants.

mod common;

use common::check;

#[test]
fn the_rest_of_the_joints_is_the_one_test_turned_round() {
    check(
        "1. Sealant - In joints not exceeding 2 in. the depth is at least 1/2 in.; in wider joints it is at least 1 in.\n",
        &[
            "sealant.depth: at least 1/2 in if joint.width <= 2 in.",
            "1:sealant_it: at least 1 in if not (joint.width <= 2 in.)",
        ],
    );
    // "Narrower" than those up to 2 in. are none, so the words stay for a person.
    check(
        "1. Sealant - In joints not exceeding 2 in. the depth is at least 1/2 in.; in narrower joints it is at least 1 in.\n",
        &[
            "sealant.depth: at least 1/2 in if joint.width <= 2 in.",
            "1:sealant_it: at least 1 in if \"in narrower joints\"",
        ],
    );
    // Without a test before them they are for a person.
    check(
        "1. Sealant - Depth at least 1/2 in.; in wider joints it is at least 1 in.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "sealant.depth: at least 1 in if \"in wider joints\"",
        ],
    );
}

#[test]
fn what_is_said_of_an_excepted_case_governs_nothing_before_it() {
    check(
        "1. Packing - Compressed min 25 percent, save in joints over 4 in., where min 35 percent is required.\n",
        &[
            "packing.compression: at least 25 percent",
            "1:packing_where_is_required: at least 35 percent if joint.width > 4 in.",
        ],
    );
}

#[test]
fn classes_name_cases_where_something_else_is_said() {
    check(
        "1. Floor - Min 150 mm thick for EI 120, min 175 mm thick for EI 180 and EI 240.\n",
        &[
            "floor.thickness: at least 150 mm if joint.rating = 120 min",
            "floor.thickness: at least 175 mm if joint.rating = 180 min or joint.rating = 240 min",
        ],
    );
    // A class is one itself where it is what a seal is classified for.
    check(
        "1. Seal - The seal is classified for EI 120. Depth min 20 mm.\n",
        &[
            "1:joint_ei_class: nominal 120 min",
            "seal.depth: at least 20 mm",
        ],
    );
}

#[test]
fn hours_that_label_or_end_each_of_several_are_ratings() {
    check(
        "1. Floor - 4 in. min thk, 1 hr; 6 in. min thk, 2 hr.\n",
        &[
            "floor.thickness: at least 4 in if joint.rating = 1 hr",
            "floor.thickness: at least 6 in if joint.rating = 2 hr",
        ],
    );
    // What an abbreviation's stop parts from a label holds in every case.
    check(
        "1. BOARD - 1 HR = 1 LAYER E.S.; 2 HR = 2 LAYERS E.S. HOLD BOARD 1/2\" MIN. BELOW DECK.\n",
        &[
            "board.layers: exactly 1 count if joint.rating = 1 hr",
            "board.layers: exactly 2 count if joint.rating = 2 hr",
            "1:board_distance: at least 1/2 in",
        ],
    );
    // One alone may say how long something takes.
    check(
        "1. Sealant - 1/2 in. min deep, 2 hr.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "1:sealant_min_deep: nominal 2 hr",
        ],
    );
}

#[test]
fn kinds_of_concrete_part_their_densities() {
    check(
        "1. Concrete - Lightweight, 107 to 116 pcf, or normal weight, 140 to 150 pcf.\n",
        &[
            "concrete.density: between 107 to 116 pcf if \"Lightweight\"",
            "concrete.density: between 140 to 150 pcf if \"normal weight\"",
        ],
    );
    // One density for both kinds holds for both.
    check(
        "1. Concrete - Lightweight or normal weight, 100 to 150 pcf.\n",
        &["concrete.density: between 100 to 150 pcf"],
    );
}

#[test]
fn variants_and_items_by_name_are_for_a_person() {
    check(
        "1. Movement - Max 30 percent, except that with Item 3D the movement is limited to 12 percent.\n",
        &[
            "1:movement: at most 30 percent",
            "1:movement_movement: at most 12 percent if \"with Item 3D\"",
        ],
    );
    // What something is sealed with is no case, and "Type X" is a sort of board.
    check(
        "1. Board - Type X board 5/8 in. thick, its joints sealed with Item 5 sealant 1/4 in. deep.\n",
        &[
            "board.thickness: nominal 5/8 in",
            "sealant.depth: nominal 1/4 in",
            "board.kind: one of Type X board",
        ],
    );
}

#[test]
fn places_that_not_every_joint_has_are_for_a_person() {
    check(
        "1. Coating - Lap 1 in. min. On aerated concrete, the lap is 2 in. min. On the board, the lap is 1/2 in. min.\n",
        &[
            "coating.overlap: at least 1 in",
            "1:coating_overlap: at least 2 in if \"On aerated concrete\"",
            "coating.overlap_board: at least 1/2 in",
        ],
    );
}

#[test]
fn a_detail_behind_a_sign_for_at_is_a_case() {
    check(
        "1. Joint - JT WIDTH 1\" MAX @ DET A, 3/4\" MAX @ DET B.\n",
        &[
            "joint.width: at most 1 in if \"@ DET A\"",
            "joint.width: at most 3/4 in if \"@ DET B\"",
        ],
    );
    // What follows a limit's abbreviation may be a sentence of its own.
    check(
        "1. Pins - @ DET B 16\" O.C. MAX. 2 PINS MIN.\n",
        &[
            "fastener.spacing: at most 16 in",
            "fastener.count: at least 2 count",
        ],
    );
}

#[test]
fn types_before_their_own_limits() {
    let found = common::clauses(
        "1. Blanket - Overlap at ends: type U at least 150 mm, type V at least 100 mm.\n",
    );
    for (number, case) in [("150 mm", "type U"), ("100 mm", "type V")] {
        let own = found.iter().find(|own| own.contains(number));
        let told = own.is_some_and(|own| own.to_lowercase().contains(&case.to_lowercase()));
        assert!(told, "{number} {case} {found:?}");
    }
}
