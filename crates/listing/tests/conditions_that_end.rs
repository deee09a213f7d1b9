//! Where a condition ends: a number that it reaches too far to would be asked of fewer joints than it is said of.

mod common;

use common::cases::{check, check_cases};

#[test]
fn a_sign_of_a_limit_behind_a_condition_opens_its_stretch() {
    check_cases(
        "Depth ≥ 80 mm, for joint widths over 50 mm ≥ 100 mm.",
        &[("80 mm", ""), ("100 mm", "joint.width > 50 mm")],
    );
    check(
        "Thickness ≥ 100 mm, for EI 120 however ≥ 150 mm.",
        &[("100 mm", false), ("150 mm", true)],
    );
}

#[test]
fn never_behind_a_comma_speaks_of_every_case() {
    check(
        "Compression minimum 20 %, for widths over 60 mm minimum 30 %, never in excess of 50 %.",
        &[("20 %", false), ("30 %", true), ("50 %", false)],
    );
    check(
        "In joints over 4 in. the depth is 5 in., and the recess shall in no case exceed 1/4 in.",
        &[("5 in.", true), ("1/4 in.", false)],
    );
    // It goes on with what is said of the case.
    check(
        "In joints over 4 in. the depth is 5 in. nominal, but never under 4-1/2 in.",
        &[("5 in.", true), ("4-1/2 in.", true)],
    );
    check(
        "In joints over 4 in., never less than 5 in. deep.",
        &[("5 in.", true)],
    );
}

#[test]
fn another_way_in_brackets_says_nothing_of_what_follows_them() {
    check(
        "Wool is clamped to the angles (or, if there are none, to the wall itself) by bars 1-1/4 in. wide.",
        &[("1-1/4 in.", false)],
    );
}

#[test]
fn what_is_set_between_commas_ends_where_the_sentence_goes_on() {
    check(
        "Its depth is 4 in. or, for the 3 hour rating, never less than 5 in., and so wide that it is squeezed by no less than 25 percent.",
        &[("4 in.", false), ("5 in.", true), ("25 %", false)],
    );
}

#[test]
fn a_condition_that_closes_a_statement_says_nothing_of_the_next() {
    check(
        "Blocks shall be grouted solid, unless they are of solid material, and mortar joints shall be 3/8 in. thick.",
        &[("3/8 in.", false)],
    );
    // Nothing is said before it.
    check(
        "Where the joint is over 4 in., clips shall be 2 in. wide, and pins shall be 3 in. long.",
        &[("2 in.", true), ("3 in.", true)],
    );
}

#[test]
fn the_stop_of_a_shortened_word_may_end_a_statement() {
    check(
        "FULL WIDTH OF WALL, 4-7/8\" MIN. AT 1 HR WALLS 3-5/8\" MIN IS ACCEPTABLE.",
        &[("4-7/8 in.", false), ("3-5/8 in.", true)],
    );
    check(
        "LEGS 2-1/2\" MIN. LEGS 3\" MIN WHERE JOINT IS OVER 1\".",
        &[("2-1/2 in.", false), ("3 in.", true)],
    );
    check(
        "BOARD 5/8\" TYPE X. (1) LAYER EACH SIDE AT 1 HR, (2) LAYERS EACH SIDE AT 2 HR.",
        &[("5/8 in.", false), ("2", true)],
    );
    // What goes on with the measure belongs to it.
    check(
        "STRIPS 4 IN. DEEP MIN. WHERE JOINT IS OVER 1 IN.",
        &[("4 in.", true)],
    );
}

#[test]
fn a_number_that_measures_the_same_again_is_told_from_the_one_before() {
    check(
        "Depth 15 mm min. 20 mm when the gap exceeds 35 mm",
        &[("15 mm", false), ("20 mm", true)],
    );
}

#[test]
fn a_variant_ends_where_a_sentence_comes_to_another() {
    let text = "1. JT: DETAIL A, W = 2\" MAX, 1/2\" MIN. DETAIL B, W = 1\" NOM. MOVEMENT 12% OF W, COMP OR EXT.\n";
    assert_eq!(
        common::clauses(text),
        [
            "1:jt_w_max: between 1/2 to 2 in if \"DETAIL A\"",
            "1:jt_movement: nominal 1 in",
            "1:movement_share: nominal 12 percent",
        ]
    );
}

#[test]
fn a_case_ends_where_the_next_line_of_a_list_has_its_letter() {
    check(
        "Joints wider than 60 mm shall be referred to the board f label: within 300 mm of the head, letters 8 mm or taller",
        &[("300 mm", false), ("8 mm", false)],
    );
    check_cases(
        "In joints wider than 60 mm label: within 300 mm of the head",
        &[("300 mm", "joint.width > 60 mm")],
    );
}

#[test]
fn a_limit_of_the_material_ends_a_condition() {
    for (text, depth, other) in [
        (
            "1. Packing - Min 4 in. deep where joint is over 1 in. wide and min 4 pcf.\n",
            "packing.depth: at least 4 in if joint.width > 1 in.",
            "packing.density: at least 4 pcf",
        ),
        (
            "1. Packing - Min 4 in. deep when rated 2 hr and compressed min 25 percent.\n",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.compression: at least 25 percent",
        ),
        (
            "1. Packing - For 2 hr rating, min 4 in. deep and min 4 pcf for all ratings.\n",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.density: at least 4 pcf",
        ),
    ] {
        let found = common::clauses(text);
        for clause in [depth, other] {
            assert!(found.contains(&clause.to_owned()), "{clause} {found:?}");
        }
    }
}

#[test]
fn a_number_of_another_place_or_rating_is_no_part_of_the_case_before_it() {
    check(
        "Thickness 150 mm (6 in.) min. where a 1-1/2 h rating is wanted and 190 mm (7-1/2 in.) min. for 3 h.",
        &[("150 mm", true), ("190 mm", true)],
    );
    check(
        "Clips 12 in. OC where the joint is exposed to traffic and 24 in. OC in the field.",
        &[("12 in.", true), ("24 in.", false)],
    );
    check(
        "Lap 20 mm where the wall is of block and 30 mm min on the slab.",
        &[("20 mm", true), ("30 mm", false)],
    );
    // Both numbers tell which joints are meant.
    check(
        "Where the joint is 1 in. min and 2 in. max in the floor, the lap is 3 in.",
        &[("3 in.", true)],
    );
}

#[test]
fn a_condition_ends_at_the_subject_of_the_next_verb() {
    check(
        "Where the blanket changes direction joints are lapped 200 mm.",
        &[("200 mm", true)],
    );
    check(
        "Where the tray turns a corner (upturns, crossings) ends are lapped 2 in. and held by 1/4 in. bolts, laps 6 in. apart.",
        &[("2 in.", true), ("1/4 in.", true), ("6 in.", true)],
    );
    check(
        "Where the blanket changes direction joints are lapped 200 mm; wool is 60 kg/m3.",
        &[("200 mm", true), ("60 kg/m³", false)],
    );
    // What is said of a thing of the condition is no requirement.
    for condition in [
        "Where the wall meets units that are 200 mm deep, the wool is 50 mm deep.",
        "Where the runner stops short and studs are 20 gauge, the wool is 50 mm deep.",
        "Where the deck is cut behind openings are 50 mm gaps, the wool is 50 mm deep.",
    ] {
        let found = common::cases::governed(condition);
        assert_eq!(found.len(), 1, "{found:?}");
    }
}
