//! Which property a number is of: that of the thing it is said of, and else none, as the wrong property is worse than the listing's own words.

mod common;

use common::{check, clauses};

#[test]
fn a_number_is_not_lent_to_the_part_beside_it() {
    check(
        "1. DECK - Fluted steel deck.\n1A. BRIDGING PLATES - Bridging plates at max 16 in. o.c.\n",
        &["1A:bridging_plates_spacing: at most 16 in"],
    );
    check(
        "1. PACKING - Mineral wool held by shims 1/4 in. thick.\n",
        &[
            "1:shims_thickness: nominal 1/4 in",
            "packing.material: one of Mineral wool",
        ],
    );
    // The thickness of an angle on a floor is not the floor's.
    check(
        "1. FLOOR - Concrete, with steel angles 3/16 in. thick or more at the edge.\n",
        &["angle.steel_thickness: at least 3/16 in"],
    );
}

#[test]
fn a_spacing_is_of_screws_only_where_they_are_named() {
    check(
        "1. GYPSUM BOARD - Gypsum board on the studs, 24 in. o.c.\n",
        &["1:studs_spacing: nominal 24 in"],
    );
    check(
        "1. GYPSUM BOARD - Gypsum board with screws 12 in. o.c.\n",
        &["board.screw_spacing: nominal 12 in"],
    );
}

#[test]
fn what_is_added_is_no_property_and_a_tolerance_is_its_values() {
    check(
        "1. RUNNER - Legs = max joint width + 1 in.\n",
        &["1:joint_width_max_joint_width: nominal 1 in"],
    );
    check(
        "1. JOINT - Measure the width every 8 ft along the wall.\n",
        &["1:joint_the_width_every_along: nominal 8 ft"],
    );
    check(
        "1. SEALANT - Depth of sealant 1/2 in., tolerance ± 1/16 in.\n",
        &["sealant.depth: between 7/16 to 9/16 in"],
    );
}

#[test]
fn a_lap_is_onto_what_the_words_say() {
    check(
        "1. COATING - Lap 1/2 in. on gypsum board, 2 in. on fireproofing and 1 in. on clips, all min.\n",
        &[
            "coating.overlap_board: at least 1/2 in",
            "coating.overlap_fireproofing: at least 2 in",
            "1:fireproofing_on_clips: at least 1 in",
        ],
    );
}

#[test]
fn a_lap_lends_nothing_to_a_spacing() {
    check(
        "1. CLIPS - Clips overlapping the slab at least 2 in. on each side and 24 in. on center.\n",
        &[
            "1:slab_overlap: at least 2 in",
            "clip.spacing: nominal 24 in",
        ],
    );
}

#[test]
fn what_is_left_of_a_thickness_is_no_compression() {
    check(
        "1. PACKING - Compressed to not less than two-thirds of its original thickness.\n",
        &["1:packing_compressed_of_its_original: at least 200/3 percent"],
    );
}

#[test]
fn a_number_beside_its_like_keeps_its_own_words() {
    check(
        "1. JOINT - Movement 100 percent in shear, 50 percent in compression.\n",
        &[
            "joint.movement_shear: nominal 100 percent",
            "joint.movement_compression: nominal 50 percent",
        ],
    );
}

#[test]
fn a_word_that_may_name_anything_names_nothing_alone() {
    check(
        "1. BRACES - Supplied in lengths of 10 ft.\n",
        &["1:lengths_length: nominal 10 ft"],
    );
}

#[test]
fn a_size_that_is_no_size_of_the_part_keeps_its_own_words() {
    check_never(&[
        (
            "1. WALL - Concrete wall, plumb to within 5 mm over its height.\n",
            "wall.height",
        ),
        (
            "1. JOINT WIDTH - Not to vary more than 1/8 in. in one bay.\n",
            "joint.width",
        ),
        (
            "1. FLOOR - Precast tees, flange min 50 mm thick.\n",
            "floor.thickness",
        ),
        (
            "1. PIN - Each track length has a pin inside the last 3 in.\n",
            "fastener.length",
        ),
        (
            "1. PACKING - Squeezed to two-thirds of its free thickness.\n",
            "packing.compression",
        ),
        (
            "1. TRAY - Its flanges bearing not less than 1-1/2 in. on the floor.\n",
            "beam.flange_width",
        ),
    ]);
}

#[test]
fn a_screw_has_its_length_behind_its_size() {
    check(
        "1. SCREWS - One No. 8 by 1/2 in. pan head screw per stud.\n",
        &[
            "1:fastener: exactly 1 count",
            "1:fastener_by: nominal 8 screw_no",
            "fastener.length: nominal 1/2 in",
        ],
    );
}

#[test]
fn a_name_is_that_of_the_thing_named_last() {
    check_never(&[
        (
            "1. SAFING - Safing is carried on clips of 20 ga steel, 1 in. wide.\n",
            "packing.width",
        ),
        (
            "1. BOARD - Hold board down 1-1/2 in. max fr deck.\n",
            "deck.",
        ),
        (
            "1. JOINTS - Strips are compressed together by 10 mm at every joint.\n",
            "joint.width",
        ),
        (
            "1. FLANGES - Differences in level of flanges shall not exceed 3/8 in. in joints up to 2 in. wide.\n",
            "joint.width",
        ),
        (
            "1. PACKING - Depth full wall thickness less 1 in.\n",
            "wall.thickness",
        ),
        (
            "1. BLANKET - Hang blanket with a sag of 1 inch per inch of width.\n",
            "packing.width",
        ),
    ]);
}

/// Whether each text yields clauses, and none on a property that begins so.
#[track_caller]
fn check_never(cases: &[(&str, &str)]) {
    for (text, never) in cases {
        let found = clauses(text);
        assert!(!found.is_empty(), "{text}");
        assert!(
            !found.iter().any(|clause| clause.starts_with(never)),
            "{text} {found:?}"
        );
    }
}

#[test]
fn a_place_takes_no_measure() {
    check(
        "1. PACKING - Wool, 4 in. deep at columns. Except that at beams the depth shall be 5 in. min.\n",
        &[
            "packing.depth: nominal 4 in",
            "packing.depth: at least 5 in",
        ],
    );
    check(
        "1. COATING - Coating 1/8 in. thick at the runner.\n",
        &["1:coating_thickness: nominal 1/8 in"],
    );
    check(
        "1. FILL - Near the beam, 3 in. thick min. Patched around each clip to not less than 1/2 in. thick.\n",
        &[
            "1:fill_thickness: at least 3 in",
            "1:fill_thickness: at least 1/2 in",
        ],
    );
    // Nobody knows what is so deep, and no beam is.
    check(
        "1. NOTES - At beams the depth shall be 5 in. min. At columns 4 in. deep.\n",
        &[
            "1:notes_depth: at least 5 in if \"At beams\"",
            "1:columns_depth: nominal 4 in",
        ],
    );
    check(
        "1. SEALANT - At walls 6 in. thick the depth is 1 in.\n",
        &[
            "1:walls_thickness: nominal 6 in",
            "sealant.depth: nominal 1 in",
        ],
    );
}

#[test]
fn a_place_keeps_a_measure_of_its_own() {
    check(
        "1. BEAM - The beam shall be 8 in. deep min.\n\n2. FLOOR - Slab 4-1/2 in. thick min over the beam. Slab over the wall 5 in. thick min.\n",
        &[
            "beam.depth: at least 8 in",
            "floor.thickness: at least 9/2 in",
            "floor.thickness: at least 5 in",
        ],
    );
    check(
        "1. JOINT - Tested at a wall height of 9 ft.\n\n2. PACKING - Wool 4 in. deep min in walls min 5 in. thick.\n",
        &[
            "wall.height: nominal 9 ft",
            "packing.depth: at least 4 in",
            "wall.thickness: at least 5 in",
        ],
    );
    // A noun behind the measure is what is so thick.
    check(
        "1. COLUMN - Wrapped below the slab in 38 mm thick packing.\n",
        &["packing.thickness: nominal 38 mm"],
    );
}

#[test]
fn two_numbers_are_given_out_to_two_measures_in_their_order() {
    check(
        "1. COATING - Minimum wet and dry film thickness shall be 1/8 in. and 1/16 in. respectively.\n",
        &[
            "coating.wet_thickness: at least 1/8 in",
            "coating.dry_thickness: at least 1/16 in",
        ],
    );
    check(
        "1. COATING - Dry and wet thickness 1/16 and 1/8 in. respectively.\n",
        &[
            "coating.dry_thickness: nominal 1/16 in",
            "coating.wet_thickness: nominal 1/8 in",
        ],
    );
    // There is no depth of a joint that the number could be, and its width is another.
    check(
        "1. JOINT - The max joint width and depth are 2 in. and 4 in., respectively.\n",
        &[
            "joint.width: at most 2 in",
            "1:joint_joint_depth: at most 4 in",
        ],
    );
    for text in [
        // Which limit is whose is not told.
        "1. JOINT - Max joint width and min depth: 2 in. and 4 in., respectively.\n",
        "1. SEALANT - Min width and depth of sealant 2 in. and 4 in., respectively.\n",
        "1. SEALANT - Width and depth 2, 3 and 4 in. respectively.\n",
        // One number of two, or none said which.
        "1. COATING - Wet and dry film thickness 1/8 and 1/16 in.\n",
        "1. COATING - Wet and dry film thickness 1/16 in.\n",
    ] {
        check(text, &[]);
    }
}

#[test]
fn a_gap_between_parts_is_no_width_of_the_joint() {
    check(
        "1. BOARD - Gap of 1/4 in. is permitted between boards and runner.\n",
        &["1:gap_gap: nominal 1/4 in"],
    );
    check(
        "1. BOARD - A gap of max 1/2 in. is left between the board and the deck.\n",
        &["board.gap: at most 1/2 in"],
    );
    check(
        "1. JOINT - Separation between floor and wall max 4 in.\n",
        &["joint.width: at most 4 in"],
    );
}

#[test]
fn a_size_right_behind_a_place_is_the_places() {
    for (item, expected) in [
        (
            "SEALANT - Sealant lapped 1/2 in. onto wall at least 6 in. thick.",
            "wall.thickness: at least 6 in",
        ),
        (
            "SEALANT - Sealant applied to boards at least 5/8 in. thick.",
            "board.thickness: at least 5/8 in",
        ),
        (
            "SEALANT - Sealant over packing at least 4 in. thick.",
            "1:packing_thickness: at least 4 in",
        ),
        (
            "PACKING - Packing depth min 4 in. in 2 hr rated floors at least 4-1/2 in. thick.",
            "floor.thickness: at least 9/2 in",
        ),
        (
            "PACKING - Packing min 4 in. deep, in joint of block wall min 8 in. thick.",
            "wall.thickness: at least 8 in",
        ),
        (
            "CLIPS - Clips fastened to studs at least 20 ga.",
            "stud.gauge: at least 20 gauge",
        ),
        (
            "CLIPS - Clips 1 in. wide fastened to studs at least 3-5/8 in. wide.",
            "stud.width: at least 29/8 in",
        ),
        (
            "PACKING - Packing 4 in. min deep in joint 4 in. max wide.",
            "joint.width: at most 4 in",
        ),
        (
            "PACKING - Packing installed around a beam at least 8 in. deep shall be 4 in. deep.",
            "packing.depth: nominal 4 in",
        ),
        (
            "SEALANT - Apply 1/4 in. bead of sealant at perimeter of plate, 3/8 in. thick plate.",
            "1:plate_thickness: nominal 3/8 in",
        ),
        // What stands right there itself keeps its size.
        (
            "PACKING - Packing in joint min 4 in. deep.",
            "packing.depth: at least 4 in",
        ),
        (
            "PACKING - Packing in strips min 1 in. thick.",
            "packing.thickness: at least 1 in",
        ),
    ] {
        let found = clauses(&format!("1. {item}\n"));
        assert_eq!(
            found.last().map(String::as_str),
            Some(expected),
            "{found:?}"
        );
    }
}

#[test]
fn what_the_words_name_is_not_the_items() {
    for item in [
        "SEAL - Wall thickness: at least 100 mm for EI 60, at least 150 mm for EI 120.",
        "SEAL - Adhesion width on both flanks at least 10 mm.",
        "SEAL - In the case of splices at least 10 mm sealant is to be used.",
        "SEALANT - Sealant is to be applied in two layers of 5 mm each.",
    ] {
        let found = clauses(&format!("1. {item}\n"));
        let taken = found
            .iter()
            .any(|clause| clause.starts_with("seal") || clause.starts_with("board"));
        assert!(!taken && !found.is_empty(), "{found:?}");
    }
}

#[test]
fn what_wool_is_squeezed_to_is_no_compression() {
    for item in [
        "PACKING - Packing shall not be compressed to less than 60 percent of its original thickness.",
        "PACKING - Packing shall not be compressed below 60 percent of its original thickness.",
        "PACKING - Packing compressed to 60 percent.",
    ] {
        let found = clauses(&format!("1. {item}\n"));
        assert!(
            found
                .iter()
                .all(|clause| !clause.starts_with("packing.compression")),
            "{found:?}"
        );
    }
}
