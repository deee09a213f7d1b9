//! Things that only wide joints have, and what is said of them farther on; classes and levels as the labels of what follows.

mod common;

use common::check;

#[test]
fn a_title_may_say_in_which_joints_its_thing_is() {
    check(
        "1. Clips (not required under 75 mm joint width). Z-shaped clips of 0.9 mm steel, 40 mm wide.\n",
        &[
            "clip.steel_thickness: nominal 9/10 mm if not (\"under 75 mm joint width\")",
            "clip.width: nominal 40 mm if not (\"under 75 mm joint width\")",
        ],
    );
    check(
        "1. Clips (Gripsel 4; joints over 50 mm only). Steel min 20 ga.\n",
        &[
            "clip.product: one of Gripsel 4 if \"Clips (Gripsel 4; joints over 50 mm only).\"",
            "clip.gauge: at least 20 gauge if \"joints over 50 mm only\"",
        ],
    );
    check(
        "1. Brackets - Only in joints over 2 in. of Option B. Strip min 22 gauge, 1-1/2 in. wide.\n",
        &[
            "strip.gauge: at least 22 gauge if \"Only in joints over 2 in. of Option B\"",
            "strip.width: nominal 3/2 in if \"Only in joints over 2 in. of Option B\"",
        ],
    );
    check(
        "1. Angles - At joints wider than 2 in. and at every 3 hr joint. Steel, 25 gage min.\n",
        &[
            "angle.gauge: at least 25 gauge if \"At joints wider than 2 in. and at every 3 hr joint\"",
        ],
    );
    check(
        "1. Clips - Steel, 20 gauge, 3 in. wide. Required only in joints exceeding 4 in.; maximum spacing 24 in.\n",
        &[
            "clip.gauge: nominal 20 gauge if \"Required only in joints exceeding 4 in.\"",
            "clip.width: nominal 3 in if \"Required only in joints exceeding 4 in.\"",
            "clip.spacing: at most 24 in if \"Required only in joints exceeding 4 in.\"",
        ],
    );
    check(
        "1. Clips - Not needed in joints under 4 in. Otherwise of 20 gauge steel, 2 in. wide.\n",
        &[
            "clip.gauge: nominal 20 gauge if not (\"in joints under 4 in.\")",
            "clip.width: nominal 2 in if not (\"in joints under 4 in.\")",
        ],
    );
}

#[test]
fn an_upper_limit_or_another_case_confines_nothing() {
    // What may be used only in narrow joints isn't excused in wide ones.
    check(
        "1. Foam (joints up to 50 mm only). Min 30 mm deep.\n",
        &["backer.depth: at least 30 mm"],
    );
    check(
        "1. Brackets - Only in joints up to 2 in. of Option B. Strip min 22 gauge.\n",
        &["strip.gauge: at least 22 gauge"],
    );
    check(
        "1. Clips - Steel, 20 gauge. Required only in joints exceeding 4 in.; in other joints one pin 2 in. long.\n",
        &[
            "clip.gauge: nominal 20 gauge",
            "1:clip_pin: exactly 1 count if not (joint.width > 4 in.)",
            "fastener.length: nominal 2 in if not (joint.width > 4 in.)",
        ],
    );
    check(
        "1. Packing - Only in joints over 2 in. of Option B. Wool min 4 in. deep.\n",
        &["packing.depth: at least 4 in"],
    );
}

#[test]
fn what_a_sentence_goes_on_to_say_of_the_thing() {
    check(
        "1. Packing - Wool 4 in. deep. In joints over 75 mm support the packing on Z clips of 1.2 mm steel. Upper leg of clip 38 mm on the slab.\n",
        &[
            "packing.depth: nominal 4 in",
            "clip.steel_thickness: nominal 6/5 mm if joint.width > 75 mm",
            "1:clip_leg_of_clip_on: nominal 38 mm if \"In joints over 75 mm\"",
        ],
    );
    check(
        "1. Coating - 2 mm wet. For joints more than 2 in. wide, embed glass mesh, min 3 in. wider than the joint. Mesh weight shall be 65 to 95 g/m2. The second coat is applied within 8 hours.\n",
        &[
            "coating.wet_thickness: nominal 2 mm",
            "1:glass_mesh_difference_wider_than: at least 3 in if joint.width > 2 in.",
            "1:mesh_mesh_weight: between 65 to 95 g/m2 if \"For joints more than 2 in. wide\"",
            "coating.recoat_time: at most 8 hr",
        ],
    );
    check(
        "1. Packing - Provide angle brackets, 20 ga, at 18 in. o.c. where the joint is over 3 in. Brackets lap the slab 1-1/4 in. min.\n",
        &[
            "angle.gauge: nominal 20 gauge if joint.width > 3 in.",
            "1:brackets_spacing: nominal 18 in if joint.width > 3 in.",
            "clip.overlap: at least 5/4 in if \"where the joint is over 3 in.\"",
        ],
    );
    check(
        "1. Fill - Joints wider than 125 mm need a carrier plate of 1.5 mm steel. Anchors of the plate are 6 mm in diameter. The packing is recessed 5 mm.\n",
        &[
            "1:plate_a_carrier_plate_steel: nominal 3/2 mm if joint.width > 125 mm",
            "fastener.diameter: nominal 6 mm if \"Joints wider than 125 mm\"",
            "packing.recess: nominal 5 mm",
        ],
    );
    check(
        "1. Packing - Where the joint is over 4 in. wide the wool is held by clips. The lower legs are 2 in. long. The wool is recessed 1/4 in.\n",
        &[
            "1:legs_length: nominal 2 in if \"Where the joint is over 4 in. wide\"",
            "packing.recess: nominal 1/4 in",
        ],
    );
    check(
        "1. SUPPORT CLIPS - For joints wider than 80 mm, the wool rests on Z-shaped clips bent from steel strip 1.0 mm thick. Each clip bears at least 40 mm on the slab.\n",
        &[
            "clip.steel_thickness: nominal 1 mm if joint.width > 80 mm",
            "1:clip_each_clip_bears_on: at least 40 mm if \"For joints wider than 80 mm\"",
        ],
    );
}

#[test]
fn what_is_of_something_else_holds_always() {
    check(
        "1. Packing - Provide angle brackets at 24 in. o.c., at 18 in. o.c. where the joint is over 3 in. Brackets lap the slab 1-1/4 in. min.\n",
        &[
            "1:brackets_spacing: nominal 24 in",
            "1:brackets_spacing: nominal 18 in if joint.width > 3 in.",
            "clip.overlap: at least 5/4 in",
        ],
    );
    check(
        "1. Packing - In joints over 75 mm the wool is held by clips. Legs of the runner are 50 mm long. Flange edges shall be at least 40 mm thick.\n",
        &[
            "runner.leg_length: nominal 50 mm",
            "packing.thickness: at least 40 mm",
        ],
    );
}

#[test]
fn levels_and_classes_as_labels() {
    check(
        "1. Linings, each side: FRL -/60/60, 16 mm thick board; FRL -/90/90, 26 mm thick board.\n",
        &[
            "board.thickness: nominal 16 mm if \"FRL -/60/60\"",
            "board.thickness: nominal 26 mm if \"FRL -/90/90\"",
        ],
    );
    check(
        "1. Packing - Wool, min 80 kg/m3 (EI 120: min 100 kg/m3), depth 120 mm.\n",
        &[
            "packing.density: at least 80 kg/m3",
            "packing.density: at least 100 kg/m3 if joint.rating = 120 min",
            "packing.depth: nominal 120 mm",
        ],
    );
    check(
        "1. Wall - FRL -/60/60, min 100 mm thick.\n",
        &["wall.thickness: at least 100 mm"],
    );
}

#[test]
fn endings_of_one_kind_share_what_another_kind_does_not() {
    check(
        "1. Board - One layer of board 5/8 in. thick for the 1 hour rating and two layers of board 1/2 in. thick for the 2 hour rating, with screws 1 in. long for the first layer and 1-5/8 in. for the second, 12 in. o.c.\n",
        &[
            "board.layers: exactly 1 count if joint.rating = 1 hr",
            "board.thickness: nominal 5/8 in if joint.rating = 1 hr",
            "board.layers: exactly 2 count if joint.rating = 2 hr",
            "board.thickness: nominal 1/2 in if joint.rating = 2 hr",
            "fastener.length: nominal 1 in if \"for the first layer\"",
            "fastener.length: nominal 13/8 in if \"for the second\"",
            "fastener.spacing: nominal 12 in",
        ],
    );
}

#[test]
fn legs_of_what_every_joint_has_are_always_asked_for() {
    check(
        "1. Runner - Steel, 25 ga. In joints over 2 in. provide straps 12 in. OC. Legs 2-1/2 in. long.\n",
        &[
            "runner.gauge: nominal 25 gauge",
            "strip.spacing: nominal 12 in if joint.width > 2 in.",
            "runner.leg_length: nominal 5/2 in",
        ],
    );
    for text in [
        "1. Angle - Steel, 16 ga. In joints over 2 in. provide anchors 12 in. OC. Vertical leg 3 in.\n",
        "1. Packing - Wool on steel angles. In joints over 2 in. provide clips 12 in. OC. Lower legs 3 in. long.\n",
    ] {
        let leg = common::clauses(text)
            .into_iter()
            .find(|clause| clause.contains("3 in"));
        assert!(
            leg.as_ref().is_some_and(|leg| !leg.contains(" if ")),
            "{leg:?}"
        );
    }
}
