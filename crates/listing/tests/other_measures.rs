//! Numbers whose nearest words name a measure that they are none of: fill is no packing, a movement no width, what is sprayed on a beam no part of it.
//! The wordings are invented; what they mean is common practice.

mod common;

use common::check;

#[test]
fn the_fill_of_an_item_called_so_is_no_packing() {
    check(
        "1. FILL - The fill is 3/8 in. deep.\n",
        &["1:fill_depth: nominal 3/8 in"],
    );
    check(
        "1. FILL - Fill depth not less than 3/8 in., unlike the packing.\n",
        &["1:fill_depth: at least 3/8 in"],
    );
    // Under another title the word is what the title says.
    check(
        "1. PACKING - Fill depth 3 in.\n",
        &["packing.depth: nominal 3 in"],
    );
}

#[test]
fn leakage_behind_a_heat_is_that_of_a_hot_joint() {
    check(
        "1. LEAKAGE - At ambient, 2 cfm/ft; at 400 F, 3 cfm/ft in walls and 5 cfm/ft in floors.\n",
        &[
            "joint.leakage_ambient: nominal 2 cfm/ft",
            "1:joint: nominal 400 degF",
            "joint.leakage_elevated: nominal 3 cfm/ft if \"in walls\"",
            "joint.leakage_elevated: nominal 5 cfm/ft if \"in floors\"",
        ],
    );
}

#[test]
fn a_movement_is_no_width() {
    check(
        "1. JOINT - Joint width admits 3/4 in. in extension.\n",
        &["1:joint_width_movement: nominal 3/4 in"],
    );
    check(
        "1. JOINT - 25 percent of the joint width, or 3/4 in., in either direction.\n",
        &[
            "1:joint_share: nominal 25 percent",
            "1:joint_width_width: nominal 3/4 in",
        ],
    );
    check(
        "1. JOINT - Joint width 3/4 in. in walls.\n",
        &["joint.width: nominal 3/4 in"],
    );
}

#[test]
fn what_is_laid_on_a_thing_is_no_part_of_it() {
    check(
        "1. BEAM - Beam flange sprayed 3/4 in. thick.\n",
        &["1:beam_flange_thickness: nominal 3/4 in"],
    );
    check(
        "1. COATING - Min 1/4 in. thick on the deck, lapped 2 in. onto the deck.\n",
        &[
            "1:coating_thickness: at least 1/4 in",
            "coating.overlap_deck: nominal 2 in",
        ],
    );
    check(
        "1. BEAM - Flange 1 in. thick.\n",
        &["beam.flange_thickness: nominal 1 in"],
    );
}

#[test]
fn parts_have_their_own_measures() {
    check(
        "1. BOARD - Base layer 5/8 in. and face layer 1/2 in., nailed.\n",
        &[
            "1:base_layer_base_layer: nominal 5/8 in",
            "board.thickness: nominal 1/2 in",
        ],
    );
    check(
        "1. BOARD - Base layer stops 1/2 in. below the outer layer.\n",
        &["board.layer_offset: nominal 1/2 in"],
    );
    check(
        "1. RUNNER - Leg 3 in., flange 1-1/2 in.\n",
        &["1:leg_leg: nominal 3 in", "1:flange_flange: nominal 3/2 in"],
    );
    check(
        "1. SEALANT - Three beads, one each side.\n",
        &[
            "1:sealant_beads: exactly 3 count",
            "1:beads_count: exactly 1 count",
        ],
    );
    check(
        "1. COVER - Plate 12 ft long and 14 ga.\n",
        &[
            "1:plate_length: nominal 12 ft",
            "1:plate_long_and: nominal 14 gauge",
        ],
    );
}

#[test]
fn the_label_of_the_next_number_names_no_number_before_it() {
    check(
        "1. JOINT - MAX WIDTH 3 IN. PACKING DEPTH 5 IN.\n",
        &["joint.width: at most 3 in", "packing.depth: nominal 5 in"],
    );
    check(
        "1. PACKING - Strips 3 in. thick by wall thickness, cut square.\n",
        &["packing.thickness: nominal 3 in"],
    );
}
