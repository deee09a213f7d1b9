//! Counts: in words, from one number to another, and where only the words about them say that they require. The wordings are invented; what
//! they mean is common practice.

mod common;

use common::check;

#[test]
fn a_count_goes_from_one_number_to_another() {
    check(
        "1. SCREWS - Four to six screws per stud.\n",
        &["fastener.count: between 4 to 6 count"],
    );
    check(
        "1. SCREWS - Fix each clip with 4 to 6 screws.\n",
        &["fastener.count: between 4 to 6 count"],
    );
    // Steps are no screws.
    check("1. SCREWS - See Steps 4 to 6.\n", &[]);
}

#[test]
fn a_number_before_a_comma_and_another_has_not_its_unit() {
    let clauses = common::clauses("1. SPRAY - Coats: at least 2, and 3 hr between them.\n");
    assert!(
        !clauses.iter().any(|clause| clause.contains(" 2 hr")),
        "{clauses:?}"
    );
    let clauses = common::clauses("1. WALL - Spacers of 1, 2, or 3 in.\n");
    assert!(
        clauses.iter().all(|clause| clause.ends_with(" in")),
        "{clauses:?}"
    );
}

#[test]
fn the_ones_that_lie_nearest_are_counted() {
    let grouted = |words: &str| format!("1. WALL - Masonry. {words}\n");
    for words in [
        "The two courses nearest the joint shall be grouted solid.",
        "Grout the two cells next to the joint.",
        "The two courses adjoining the joint are filled.",
    ] {
        let clauses = common::clauses(&grouted(words));
        assert!(
            clauses
                .iter()
                .any(|clause| clause.ends_with(": exactly 2 count")),
            "{words} {clauses:?}"
        );
    }
    // What is only pointed at counts nothing.
    check("1. WALL - The two walls meet at the joint.\n", &[]);
    check("1. WALL - The two layers overlap.\n", &[]);
}

#[test]
fn what_is_doubled_is_two() {
    for words in [
        "The stud nearest the joint is doubled.",
        "Studs are doubled at the joint.",
        "Steel studs, doubled at the joint.",
    ] {
        let clauses = common::clauses(&format!("1. STUDS - {words}\n"));
        assert!(
            clauses
                .iter()
                .any(|clause| clause.ends_with(": exactly 2 count")),
            "{words} {clauses:?}"
        );
    }
    // A measure that is doubled is no two of anything.
    check(
        "1. STUDS - The spacing of the studs is doubled at openings.\n",
        &[],
    );
    check("1. STUDS - The load on studs is doubled there.\n", &[]);
}

#[test]
fn a_class_code_alone_is_read_where_the_words_speak_of_a_class() {
    check(
        "1. JOINT - The class of the joint is EI 90.\n",
        &["joint.rating: nominal 90 min"],
    );
    check(
        "1. JOINT - The joint reaches EI 60 at the most.\n",
        &["joint.rating: at most 60 min"],
    );
    // A class for some joints only, or in some case, is not the joint's rating.
    check(
        "1. JOINT - For flexible walls the class is raised to EI 90.\n",
        &["1:joint_ei_class: nominal 90 min"],
    );
    check(
        "1. JOINT - The class falls to EI 60 where the slab is of lightweight concrete.\n",
        &["1:joint_ei_class: nominal 60 min if \"where the slab is of lightweight concrete\""],
    );
    // What only says which joints are meant, and what the code is of, isn't said.
    check(
        "1. JOINT - Class EI 180 requires a floor of concrete.\n",
        &[],
    );
    check("1. WALL - A rigid wall EI 120 stands on the slab.\n", &[]);
}

#[test]
fn so_many_to_each_and_in_pairs() {
    check(
        "1. CLIPS - Z-clips, two to each batt.\n",
        &["1:z_clips_z_clips_to: exactly 2 count"],
    );
    for words in [
        "A pair of studs closes the end.",
        "Studs are set in pairs at 4 ft centers.",
    ] {
        let clauses = common::clauses(&format!("1. WALL - {words}\n"));
        assert!(
            clauses
                .iter()
                .any(|clause| clause.ends_with(": exactly 2 count")),
            "{words} {clauses:?}"
        );
    }
    // The pair that was spoken of, and pieces that are joined in pairs, count nothing.
    check("1. WALL - The pair is screwed together in pairs.\n", &[]);
    // A share of what is left has a third of nothing to each.
    check("1. WALL - Filled from two to a third of them.\n", &[]);
}

#[test]
fn how_often_is_a_count_and_a_multiple_is_none() {
    check(
        "1. INSPECTION - The works shall be inspected at least twice a year.\n",
        &["1:inspection_shall_be_inspected_a: at least 2 count"],
    );
    check(
        "1. JOINT - The joint was cycled 500 times.\n",
        &["1:joint_joint_was_cycled: exactly 500 count"],
    );
    check(
        "1. STRIP - Depth at least 4 times the thickness of the sheet.\n",
        &["1:strip_depth_the_thickness_of: at least 4 times"],
    );
}

#[test]
fn labels_that_count() {
    for (text, expected) in [
        ("Coats: 2 min", "at least 2 count"),
        ("Layers (each side): 2", "exactly 2 count"),
        ("Coats: two", "exactly 2 count"),
        ("Anchors per piece ........ min. 5", "at least 5 count"),
        (
            "Number of anchors per bracket: no fewer than 2",
            "at least 2 count",
        ),
    ] {
        let clauses = common::clauses(&format!("1. DATA\n\n   {text}\n"));
        assert!(
            clauses.iter().any(|clause| clause.ends_with(expected)),
            "{text} {clauses:?}"
        );
    }
    // A spacing behind a label of parts is a length, and a time a time.
    check(
        "1. DATA\n\n   Screw spacing: 300 mm max\n",
        &["fastener.spacing: at most 300 mm"],
    );
    let clauses = common::clauses("1. DATA\n\n   Pot life: 20 min\n");
    assert!(
        clauses.iter().any(|clause| clause.ends_with("20 min")),
        "{clauses:?}"
    );
}

#[test]
fn a_class_letter_counts_nothing() {
    check(
        "1. JOINT - EI 60 applies to joints.\n",
        &["1:joint_ei_class: nominal 60 min"],
    );
}

#[test]
fn the_mark_of_a_note_and_not_one_count_nothing() {
    check(
        "1. STRIP\n\n   Depth of strip: 125 mm min (1)\n",
        &["1:strip_depth: at least 125 mm"],
    );
    check(
        "1. PINS - Take ten readings, with not one reading under 3/4 in.\n",
        &[
            "1:fastener_take_readings: exactly 10 count",
            "1:reading_not_one_reading: at least 3/4 in",
        ],
    );
    check(
        "1. STUDS - Fasten @ 16\" o.c. max w/ (2) #10 screws.\n",
        &[
            "stud.spacing: at most 16 in",
            "1:stud_o_c_max_w: exactly 2 count",
            "fastener.size: nominal 10 screw_no",
        ],
    );
}

#[test]
fn layers_of_one_thickness_are_counted_and_a_strip_has_two_sizes() {
    check(
        "1. FILL - Depth 2 x 50 mm in walls.\n",
        &[
            "1:fill_depth: exactly 2 count",
            "1:fill_in_walls: nominal 50 mm",
        ],
    );
    let strip = common::clauses("1. STRIP - Steel strip 2 x 50 mm.\n");
    assert!(
        strip.iter().any(|clause| clause.ends_with("nominal 2 mm")),
        "{strip:?}"
    );
}

#[test]
fn one_every_stretch_at_most_limits_the_stretch() {
    check(
        "1. CLIPS - One clip every 500 mm at most.\n",
        &[
            "1:clip_clip_every: exactly 1 count",
            "1:clip_clip_every_at_most: at most 500 mm",
        ],
    );
    check(
        "1. INSULATION - 2\" THK, W/ 2 PCS MAX.\n",
        &[
            "1:insulation_thickness: nominal 2 in",
            "1:insulation_thk_w_pcs_max: at most 2 count",
        ],
    );
}

#[test]
fn pieces_and_their_size_without_a_space() {
    check(
        "1. BOARD - Gypsum board 2x12.5 mm.\n",
        &[
            "1:gypsum_board_gypsum_board: exactly 2 count",
            "1:gypsum_board: nominal 25/2 mm",
        ],
    );
    // The depth of one of two pieces is not that of both.
    check(
        "1. PACKING - Depth 2x50 mm.\n",
        &[
            "1:packing_depth: exactly 2 count",
            "1:packing: nominal 50 mm",
        ],
    );
    check("1. STUDS - Studs 2x4 wood, W8x28 beam.\n", &[]);
}

#[test]
fn a_share_of_things_is_no_number_of_them() {
    check(
        "1. CLIPS - Test one clip in twenty.\n",
        &["1:clip_test: nominal 1/20 ratio"],
    );
    check(
        "1. CLIPS - One clip in 2 studs.\n",
        &[
            "1:clip_clip_in: exactly 1 count",
            "stud.count: exactly 2 count",
        ],
    );
}

#[test]
fn layers_of_wool_are_no_layers_of_board() {
    check(
        "1. BOARD AND WOOL - Board, and three layers of wool.\n",
        &["1:board_layers: exactly 3 count"],
    );
    check(
        "1. BOARD - Two layers of board.\n",
        &["board.layers: exactly 2 count"],
    );
}

#[test]
fn a_fraction_before_in_is_of_an_inch() {
    check(
        "1. COATING - MIN LAP 1/2 IN EACH SIDE.\n",
        &["coating.overlap: at least 1/2 in"],
    );
    check("1. CLIPS - PLACE 2 IN EACH FLUTE.\n", &[]);
}

#[test]
fn the_lowest_two_are_counted_and_the_board_that_they_are_for_is_not() {
    for (words, expected) in [
        ("The lowest two courses are grouted.", "exactly 2 count"),
        (
            "Openings 1 in. dia max, 3 max in any notch.",
            "at most 3 count",
        ),
        (
            "Pins, six being the least number for one board.",
            "at least 6 count",
        ),
        (
            "One screw at each end, or by two where the wall is longer than 12 ft.",
            "exactly 2 count if \"where the wall is longer than 12 ft.\"",
        ),
        (
            "One layer in a 1 h wall, two in a 2 h wall.",
            "exactly 2 count if joint.rating = 2 hr",
        ),
    ] {
        let found = common::clauses(&format!("1. WALL - {words}\n"));
        assert!(
            found.iter().any(|clause| clause.ends_with(expected)),
            "{words} {found:?}"
        );
        assert!(
            !words.contains("six") || found.len() == 1,
            "{words} {found:?}"
        );
    }
}

#[test]
fn one_face_counts_where_it_is_told_from_both() {
    check(
        "1. SEALANT - Sealant on one face for floors and on both faces for walls.\n",
        &[
            "sealant.faces: exactly 1 count if \"for floors\"",
            "sealant.faces: exactly 2 count if \"for walls\"",
        ],
    );
    check("1. SEALANT - Sealant on both faces.\n", &[]);
}

#[test]
fn the_same_things_are_counted_in_another_place() {
    let clauses = common::clauses(
        "1. WALL - Cells grouted for at least two courses above and one course below the floor.\n",
    );
    let counts: Vec<_> = clauses
        .iter()
        .filter(|clause| clause.contains("at least"))
        .collect();
    assert_eq!(counts.len(), 2, "{clauses:?}");
    // Another thing has its own count.
    let clauses =
        common::clauses("1. WALL - At least two courses above and one anchor below the floor.\n");
    assert!(
        clauses
            .iter()
            .any(|clause| clause.ends_with(": exactly 1 count")),
        "{clauses:?}"
    );
}

#[test]
fn boards_named_before_are_layers_and_straps_are_none() {
    let clauses = common::clauses("1. BOARD - Plasterboard 13 mm or 2 x 16 mm, each side.\n");
    assert!(
        clauses
            .iter()
            .any(|clause| clause.ends_with(": exactly 2 count")),
        "{clauses:?}"
    );
    let clauses = common::clauses("1. BOARD - Plasterboard on 2 x 25 mm straps.\n");
    assert!(
        !clauses.iter().any(|clause| clause.contains("2 count")),
        "{clauses:?}"
    );
}

#[test]
fn a_decimal_in_brackets_behind_a_gauge_is_the_sheet() {
    check(
        "1. CLIPS - Clips of 14 gauge (0.071) steel.\n",
        &[
            "clip.gauge: nominal 14 gauge",
            "clip.steel_thickness: nominal 71/1000 in",
        ],
    );
    check(
        "1. CLIPS - Clips of 14 gauge (2) steel.\n",
        &["clip.gauge: nominal 14 gauge"],
    );
}

#[test]
fn a_single_piece_is_one() {
    for piece in ["block", "pad", "mat"] {
        check(
            &format!("1. FILL - A single {piece} of wool, min 4 in. deep.\n"),
            &[
                &format!("1:fill_{piece}_of_wool: exactly 1 count"),
                "packing.depth: at least 4 in",
            ],
        );
    }
    // What is only named isn't counted.
    for words in [
        "No single block shall be narrower than the joint.",
        "The single block is placed centrally.",
        "One block at the end is cut.",
    ] {
        check(&format!("1. FILL - {words}\n"), &[]);
    }
}
