//! Words beside a number that are about something else: none of them names what the number measures. The wordings are invented; what they mean is common
//! practice.

mod common;

use common::check;

#[test]
fn an_adjective_of_another_noun_names_no_measure() {
    check(
        "1. CLIPS - Max 12 in. in wide walls.\n",
        &["1:clip_in_walls: at most 12 in"],
    );
    check(
        "1. PACKING - Max 2 in. gap for thick floors.\n",
        &["1:packing_gap: at most 2 in"],
    );
    check(
        "1. CLIPS - Three per length, max 16 in. OC.\n",
        &[
            "1:clip_count: exactly 3 count",
            "clip.spacing: at most 16 in",
        ],
    );
    check(
        "1. CLIPS - Wide joints: max 12 in. OC.\n",
        &["1:joints_spacing: at most 12 in"],
    );
    // The adjective of the number itself.
    check(
        "1. PACKING - Min 4 in. deep, min 1 in. (25 mm) thick.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.thickness: at least 1 in",
        ],
    );
}

#[test]
fn what_stands_wider_apart_has_no_width() {
    check(
        "1. CLIPS - Spacing wider than 12 in. not permitted.\n",
        &["clip.spacing: at most 12 in"],
    );
    check(
        "1. CLIPS - Clips wider than 3 in. not permitted.\n",
        &["clip.width: at most 3 in"],
    );
}

#[test]
fn what_reaches_past_the_joint_is_no_width_of_it() {
    check(
        "1. PACKING - Packing width min 1/2 in. past joint.\n",
        &["1:packing_width: at least 1/2 in"],
    );
    check(
        "1. PACKING - Packing to extend past joint width min 1 in.\n",
        &["1:joint_width_width: at least 1 in"],
    );
    check(
        "1. JOINT - Joint width max 2 in.\n",
        &["joint.width: at most 2 in"],
    );
    check(
        "1. FILL - Min 1/2 in. depth into max 2 in. joint.\n",
        &["1:fill_depth: at least 1/2 in", "joint.width: at most 2 in"],
    );
}

#[test]
fn a_size_past_another_measure_is_none_of_the_thing() {
    check(
        "1. FLOOR - Floor thickness 1 in. over the flute depth.\n",
        &["1:floor_thickness_over_the_flute: nominal 1 in"],
    );
    check(
        "1. FLOOR - Concrete thickness min 2-1/2 in. over the flutes.\n",
        &["concrete.thickness: at least 5/2 in"],
    );
}

#[test]
fn a_size_behind_a_place_is_the_place_s() {
    check(
        "1. PACKING - Wool min 4 in. deep in walls min 5 in. thick.\n",
        &[
            "packing.depth: at least 4 in",
            "wall.thickness: at least 5 in",
        ],
    );
    check(
        "1. PACKING - Wool in walls, min 4 in. thick.\n",
        &["packing.thickness: at least 4 in"],
    );
}

#[test]
fn another_component_s_spacing_is_not_taken() {
    check(
        "1. MULLIONS - Min 0.100 in. wall thickness, spaced min 60 in. OC.\n",
        &[
            "curtain_wall.framing_wall_thickness: at least 1/10 in",
            "1:wall_spacing: at least 60 in",
        ],
    );
    check(
        "1. SPLICES - Max one splice between clips, min 24 in. apart.\n",
        &[
            "1:splices_count: at most 1 count",
            "1:clips_spacing: at least 24 in",
        ],
    );
    check(
        "1. CLIPS - Clips at splices, max 24 in. apart.\n",
        &["clip.spacing: at most 24 in"],
    );
}

#[test]
fn layers_of_wool_are_no_board() {
    check(
        "1. PACKING - Batts min 4 pcf in layers for a total of 4 in.\n",
        &["packing.density: at least 4 pcf", "1:layers: nominal 4 in"],
    );
    check(
        "1. BOARD - Two layers min 5/8 in. thick.\n",
        &[
            "board.layers: exactly 2 count",
            "board.thickness: at least 5/8 in",
        ],
    );
}

#[test]
fn how_deep_a_recess_is_is_the_recess() {
    check(
        "1. SEALANT - Recess max 1/2 in. deep. Min 1 in. deep.\n",
        &[
            "sealant.recess: at most 1/2 in",
            "sealant.depth: at least 1 in",
        ],
    );
    check(
        "1. SEALANT - Recess no deeper than 1/4 in.\n",
        &["sealant.recess: at most 1/4 in"],
    );
}
