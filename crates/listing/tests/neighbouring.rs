//! Numbers beside words that are about something else: what is only set against what is meant, a measure beside the one that is meant, a part of
//! another thing. The wordings are invented; what they mean is common practice.

mod common;

use common::{check, unread};

#[test]
fn what_is_set_against_the_thing_meant_is_not_measured() {
    check(
        "1. PACKING - Packing depth, not joint width, shall be at least 4 in.\n",
        &["packing.depth: at least 4 in"],
    );
    check(
        "1. PACKING - Cut the packing 25 percent wider than the joint, 4 in. deep and a minimum of 48 in. long.\n",
        &[
            "packing.oversize: nominal 25 percent",
            "packing.depth: nominal 4 in",
            "packing.length: at least 48 in",
        ],
    );
    check(
        "1. RUNNER - Flanges of runner sized to fit studs, min 2 in. deep.\n",
        &["runner.leg_length: at least 2 in"],
    );
    check(
        "1. STUDS - Cut 3/4 in. less in length than the wall height, spaced max 24 in. OC.\n",
        &[
            "stud.end_gap: nominal 3/4 in",
            "stud.spacing: at most 24 in",
        ],
    );
    // The number right behind it is its own.
    check(
        "1. RUNNER - Legs at least 1 in. longer than the joint.\n",
        &["runner.leg_beyond_joint: at least 1 in"],
    );
}

#[test]
fn a_measure_beside_the_one_meant_has_its_own_number() {
    check(
        "1. CLIP - Attached with 1/8 in. fillet welds 1 in. long.\n",
        &[
            "1:clip_fillet_welds: nominal 1/8 in",
            "fastener.weld_length: nominal 1 in",
        ],
    );
    check(
        "1. FASTENERS - Located min 3/8 in. from edges and 2 in. from ends.\n",
        &[
            "fastener.edge_distance: at least 3/8 in",
            "fastener.end_distance: at least 2 in",
        ],
    );
    check(
        "1. CLIP - 2 in. leg embedded 3 in. into packing.\n",
        &[
            "1:clip_length: nominal 2 in",
            "1:leg_embedment: nominal 3 in",
        ],
    );
    check(
        "1. FASTENERS - Staggered 12 in. between rows, rows 4 in. apart.\n",
        &[
            "1:fastener_offset: nominal 12 in",
            "1:fastener_spacing: nominal 4 in",
        ],
    );
    check(
        "1. RUNNER - Secured with staples 7/16 in. crown, 1 in. leg.\n",
        &[
            "1:runner_staples_crown: nominal 7/16 in",
            "1:crown_length: nominal 1 in",
        ],
    );
}

#[test]
fn a_part_or_a_filling_is_no_size_of_another_thing() {
    check(
        "1. STUDS - Min 3-5/8 in. wide with 1-1/4 in. legs.\n",
        &[
            "stud.width: at least 29/8 in",
            "1:stud_length: nominal 5/4 in",
        ],
    );
    check(
        "1. DECK - Valleys filled to a depth of 3 in. min.\n",
        &["1:valleys_depth: at least 3 in"],
    );
    check(
        "1. PACKING - Extends 6 in. past the beam flange, 4 in. deep.\n",
        &[
            "1:packing_extends_past_the_beam: nominal 6 in",
            "1:packing_depth: nominal 4 in",
        ],
    );
}

#[test]
fn a_limit_reaches_no_other_measure() {
    check(
        "1. GYPSUM BOARD - Joints staggered min 12 in. and third layer of 1/2 in. board.\n",
        &[
            "board.joint_offset: at least 12 in",
            "board.thickness: nominal 1/2 in",
        ],
    );
    check(
        "1. PACKING - Batts shall not be less than 4 in. thick or 4 pcf in density.\n",
        &[
            "packing.thickness: at least 4 in",
            "packing.density: at least 4 pcf",
        ],
    );
}

#[test]
fn a_label_of_joints_goes_on() {
    check(
        "1. SEAL - Joints between 15 and 50 mm wide: 1 strip; 50 to 100 mm wide: 2 strips.\n",
        &[
            "1:preformed_seal_strip: exactly 1 count if joint.width from 15 mm to 50 mm",
            "seal.layers: exactly 2 count if joint.width from 50 mm to 100 mm",
        ],
    );
    check(
        "1. PACKING - Strips cut 4-1/2 in. wide for 4 in. joint, 4 in. deep.\n",
        &[
            "packing.width: nominal 9/2 in if \"for 4 in. joint\"",
            "packing.depth: nominal 4 in",
        ],
    );
}

#[test]
fn films_share_a_unit() {
    check(
        "1. COATING - Applied 125 wet mils to achieve a minimum of 62 dry mils.\n",
        &[
            "coating.wet_thickness: nominal 125 mil",
            "coating.dry_thickness: at least 62 mil",
        ],
    );
    check(
        "1. COATING - Applied at 80 mils wet / 40 dry.\n",
        &[
            "coating.wet_thickness: nominal 80 mil",
            "coating.dry_thickness: nominal 40 mil",
        ],
    );
}

#[test]
fn numbers_in_words_and_ranges_of_them() {
    check(
        "1. PACKING - Four to six inches deep.\n",
        &["packing.depth: between 4 to 6 in"],
    );
    check(
        "1. CLIP - Six in. wide clips.\n",
        &["clip.width: nominal 6 in"],
    );
    check(
        "1. FASTENERS - Spaced minimum of 2, max 12 in. OC.\n",
        &[
            "fastener.spacing: at least 2 in",
            "fastener.spacing: at most 12 in",
        ],
    );
    check(
        "1. ANGLE - 2 by 2 in. by 20 ga.\n",
        &[
            "1:steel_angle_by: nominal 2 in",
            "1:steel_angle_by: nominal 2 in",
            "angle.gauge: nominal 20 gauge",
        ],
    );
}

#[test]
fn what_holds_on_one_side_only_is_left_to_a_person() {
    let shown = |text: &str| unread(&format!("1. PACKING - {text}\n"));
    assert_eq!(
        shown("Packing depth is min 6 in. above 2 in. joint width, min 4 in. below."),
        ["6 in.", "2 in.", "4 in."]
    );
    assert_eq!(
        shown("Depth 3 mm up to a joint width of 30 mm, above that 5 mm."),
        ["30 mm", "5 mm"]
    );
    assert_eq!(shown("Tightened to 25 ft-lb."), ["25 ft"]);
    assert_eq!(shown("Fixings @ 600 crs."), ["600"]);
    assert_eq!(
        shown("Width not exceeding that of the track plus 1/4 inch."),
        ["1/4 inch"]
    );
    assert_eq!(
        shown("Max width of 50 mm for walls (100 mm floors)."),
        ["100 mm"]
    );
}
