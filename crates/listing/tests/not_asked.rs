//! Numbers that nothing asks for, and numbers whose measure or limit can't be told: each is shown as unread, and limits nothing. The wordings are invented;
//! what they mean is common practice.

mod common;

use common::{check, unread};

#[test]
fn no_side_of_a_line_is_guessed() {
    for words in [
        "No fasteners above 2 in. from top.",
        "No fasteners below 2 in. from top.",
        "No fasteners in the top 2 in.",
        "Fasteners above 2 in. from the edge not permitted.",
    ] {
        assert_eq!(
            unread(&format!("1. FASTENERS - {words}\n")),
            ["2 in."],
            "{words}"
        );
    }
    check(
        "1. SCREWS - No screws above 2 in. from the bottom of the board.\n",
        &["1:screws_distance: at most 2 in"],
    );
    check(
        "1. FASTENERS - No fasteners closer than 2 in. to the edge.\n",
        &["1:fasteners_no_fasteners_closer_to: at least 2 in"],
    );
}

#[test]
fn numbers_of_several_measures_are_not_given_out() {
    for words in [
        "Spacing and width max 12 in. and min 1 in.",
        "Clip spacing and end distance not to exceed 12 in. and 1 in., respectively.",
        "Min width and max spacing of 12 in. and 1 in.",
        "Width and length min 12 in. and 1 in.",
    ] {
        assert_eq!(
            unread(&format!("1. CLIPS - {words}\n")),
            ["12 in.", "1 in."],
            "{words}"
        );
    }
    assert_eq!(
        unread("1. PACKING - Min thickness and density of 4 in. and 4 pcf.\n"),
        ["4 in.", "4 pcf"]
    );
    // One measure with two limits, and each measure beside its own number.
    check(
        "1. JOINT - Width min 1/2 in. and max 2 in.\n",
        &["joint.width: between 1/2 to 2 in"],
    );
    check(
        "1. PACKING - Min thickness 4 in. and max recess 1/2 in.\n",
        &[
            "packing.thickness: at least 4 in",
            "packing.recess: at most 1/2 in",
        ],
    );
}

#[test]
fn an_exemption_asks_for_nothing() {
    for (words, number) in [
        ("Not required under 2 in.", "2 in."),
        ("No packing required under 1 in. joint width.", "1 in."),
        ("Not required for depths over 6 in.", "6 in."),
        ("Packing is not needed within 12 in. of corners.", "12 in."),
        ("Packing min 6 in. deep instead of 4 in.", "4 in."),
        ("Compressed 33% in lieu of 25%.", "25%"),
        (
            "Only if joint width exceeds 2 in. is a min 6 in. depth required.",
            "2 in.",
        ),
        ("Min 4 in. deep. (See Item 5 for 6 in. joints.)", "6 in."),
    ] {
        assert_eq!(
            unread(&format!("1. PACKING - {words}\n")),
            [number],
            "{words}"
        );
    }
    check(
        "1. PACKING - Min 4 in. depth is required in walls over 5 in. thick.\n",
        &["packing.depth: at least 4 in if \"in walls over 5 in. thick\""],
    );
    check(
        "1. PACKING - Not less than 4 in. is required.\n",
        &["1:packing_is_required: at least 4 in"],
    );
}

#[test]
fn behind_a_size_min_is_no_minute() {
    assert_eq!(unread("1. STUDS - Gauge: 20 min.\n"), ["20 min"]);
    check(
        "1. SEALANT - Tool within 20 min.\n",
        &["1:sealant_duration: at most 20 min"],
    );
}
