//! What stands in brackets is a case of what is in them, and seldom of what stands before.

mod common;

use common::cases::{check, check_cases};

#[test]
fn what_stands_in_brackets_governs_nothing_before_them() {
    check(
        "Clips spaced 24 in. OC max (16 in. OC max where the joint is wider than 3 in.).",
        &[("24 in.", false), ("16 in.", true)],
    );
    check(
        "Mineral wool, 6 pcf min (8 pcf min for joints over 1 in.).",
        &[("6 pcf", false), ("8 pcf", true)],
    );
    check(
        "Angle with legs 3 in. long (4 in. where the joint is wider than 2 in.).",
        &[("3 in.", false), ("4 in.", true)],
    );
}

#[test]
fn parts_of_the_building_in_brackets_tell_cases_apart() {
    check(
        "Concrete of at least 600 kg/m³ (walls) or at least 2300 kg/m³ (floors).",
        &[("600 kg/m³", true), ("2300 kg/m³", true)],
    );
    // One alone says where it is, and no case.
    check("Depth at least 60 mm (walls).", &[("60 mm", false)]);
    // Both share the number.
    check(
        "At most 60 mm from the edge (walls) or from the rib (floors).",
        &[("60 mm", false)],
    );
}

#[test]
fn several_cases_in_one_bracket_are_alternatives() {
    check_cases(
        "4 in. (for 1 hr; 5 in. for 2 hr).",
        &[
            ("4 in.", "joint.rating = 1 hr"),
            ("5 in.", "joint.rating = 2 hr"),
        ],
    );
    check_cases(
        "Min depth (1 hr: 4 in.; 2 hr: 5 in.).",
        &[
            ("4 in.", "joint.rating = 1 hr"),
            ("5 in.", "joint.rating = 2 hr"),
        ],
    );
    check_cases(
        "Min 4 in. deep (5 in. for joints over 2 in., 6 in. for joints over 4 in.).",
        &[
            ("4 in.", ""),
            ("5 in.", "joint.width > 2 in."),
            ("6 in.", "joint.width > 4 in."),
        ],
    );
    check_cases(
        "Depth (4 in. min; 5 in. min for 3 hr).",
        &[("4 in.", ""), ("5 in.", "joint.rating = 3 hr")],
    );
    check_cases(
        "Clips max 24 in. oc (for joints over 2 in. wide: 16 in. oc; for the 3 hr rating: 12 in. oc).",
        &[
            ("24 in.", ""),
            ("16 in.", "joint.width > 2 in."),
            ("12 in.", "joint.rating = 3 hr"),
        ],
    );
    // The limit before the brackets is none of the rating in them.
    check_cases(
        "Depth 4 in. min (2 hr).",
        &[("4 in.", "joint.rating = 2 hr")],
    );
}

#[test]
fn brackets_that_take_a_case_out_turn_it_round() {
    for (aside, expected) in [
        ("except joints under 1 in.", "not (joint.width < 1 in.)"),
        ("excluding joints under 1 in.", "not (joint.width < 1 in.)"),
        ("N/A for joints < 1 in.", "not (joint.width < 1 in.)"),
        ("omit for joints under 1 in.", "not (joint.width < 1 in.)"),
        ("delete at joints under 1 in.", "not (joint.width < 1 in.)"),
        ("joints under 1 in. excluded", "not (joint.width < 1 in.)"),
        (
            "not applicable to joints under 1 in.",
            "not (joint.width < 1 in.)",
        ),
        (
            "does not apply to joints under 1 in.",
            "not (joint.width < 1 in.)",
        ),
        // What is left out in a comparison takes nothing out.
        ("joints not over 1 in. wide", "joint.width <= 1 in."),
        // Taken out or forbidden: a person says.
        ("not in joints under 1 in.", "\"not in joints under 1 in.\""),
        (
            "but not in joints under 1 in.",
            "\"but not in joints under 1 in.\"",
        ),
        (
            "never in joints under 1 in.",
            "\"never in joints under 1 in.\"",
        ),
    ] {
        check_cases(
            &format!("Min depth 4 in. ({aside})."),
            &[("4 in.", expected)],
        );
    }
}

#[test]
fn brackets_that_deny_another_thing_or_point_at_a_case_excuse_nothing() {
    for aside in [
        "joints under 1 in.: no clips",
        "no clips for joints under 1 in.",
        "clips not needed in joints under 1 in.",
        "without exception for joints under 1 in.",
        "see Note 3 for joints under 1 in.",
        "e.g. for joints over 1 in.",
        "as tested, in a joint 2 in. wide",
        "tested with joints 2 in. wide",
        "joints over 2 in. included",
        "including joints under 1 in.",
    ] {
        check_cases(&format!("Min depth 4 in. ({aside})."), &[("4 in.", "")]);
    }
    check_cases(
        "Clips 24 in. OC max (clips not needed in joints under 2 in.).",
        &[("24 in.", "not (joint.width < 2 in.)")],
    );
}

#[test]
fn a_case_that_opens_brackets_governs_the_number_in_them() {
    check_cases(
        "Min depth 4 in. (joints under 1 in. need only 3 in.).",
        &[("4 in.", ""), ("3 in.", "joint.width < 1 in.")],
    );
    check_cases(
        "Min depth 4 in. (joints under 1 in.: 3 in.).",
        &[("4 in.", ""), ("3 in.", "joint.width < 1 in.")],
    );
}

#[test]
fn what_brackets_say_of_the_thing_is_not_said_of_the_case_behind_it() {
    for (text, expected) in [
        (
            "1. FLOOR - Min 4-1/2 in. thick concrete (100 to 150 pcf) for the 2 hr rating.\n",
            [
                "concrete.thickness: at least 9/2 in if joint.rating = 2 hr",
                "concrete.density: between 100 to 150 pcf",
            ],
        ),
        // What says the number before it again goes with it.
        (
            "1. STUDS - Min 30 mils (20 gauge) where the wall is taller than 14 ft.\n",
            [
                "1:stud: at least 30 mil if wall.height > 14 ft",
                "stud.gauge: at least 20 gauge if wall.height > 14 ft",
            ],
        ),
    ] {
        common::check(text, &expected);
    }
}

#[test]
fn a_bracket_that_says_another_value_is_no_case_of_the_one_before() {
    for words in [
        "Stud gap 3/4 in. (less where the joint is under 3/4 in. wide).",
        "Stud gap 3/4 in. (more where the joint is over 2 in. wide).",
    ] {
        let found = common::clauses(&format!("1. STUDS - {words}\n"));
        assert!(
            found
                .iter()
                .any(|clause| clause.contains("3/4 in") && !clause.contains(" if ")),
            "{words} {found:?}"
        );
    }
}
