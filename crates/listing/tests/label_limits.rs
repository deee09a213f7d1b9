//! Limits in labels, set off from what they limit, and limits that stand between two numbers. The wordings are invented; what they mean is common practice.

mod common;

use common::{check, unread};

#[test]
fn a_limit_in_parentheses_limits_its_label() {
    check(
        "1. CLIPS - Spacing (max): 12 in. OC; width (min): 1 in.; gauge (min): 20 MSG\n",
        &[
            "clip.spacing: at most 12 in",
            "clip.width: at least 1 in",
            "clip.gauge: at least 20 gauge",
        ],
    );
    check(
        "1. JOINT WIDTH (max)......... 2 in.\n",
        &["joint.width: at most 2 in"],
    );
    check(
        "1. CLIPS\n   Width (min.): 1 in.\n   Spacing [max]: 12 in.\n",
        &["clip.width: at least 1 in", "clip.spacing: at most 12 in"],
    );
}

#[test]
fn a_nominal_size_may_be_limited() {
    check(
        "1. PACKING - Min nom 4 in. depth.\n",
        &["packing.depth: at least 4 in"],
    );
    check(
        "1. CLIPS - Spacing max nominal 24 in. OC.\n",
        &["clip.spacing: at most 24 in"],
    );
    check(
        "1. CLIPS - 12 in. OC max, nominal 2 in. wide.\n",
        &["clip.spacing: at most 12 in", "clip.width: nominal 2 in"],
    );
}

#[test]
fn a_limit_that_heads_the_next_words_closes_nothing() {
    check(
        "1. PACKING - minimum: depth 4 in., density 4 pcf. maximum: recess 1/2 in.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
            "packing.recess: at most 1/2 in",
        ],
    );
    check(
        "1. PACKING - With 8 pcf wool the min depth is 4 in.\n",
        &[
            "packing.density: nominal 8 pcf",
            "packing.depth: at least 4 in",
        ],
    );
    check(
        "1. PACKING - Depth 4 in. at the minimum.\n",
        &["packing.depth: at least 4 in"],
    );
    assert_eq!(
        unread("1. RUNNER - Steel with 2 in. flange min using 1 in. screws max 8 in. OC\n"),
        ["2 in.", "1 in."]
    );
}

#[test]
fn a_size_and_what_stands_at_it_are_no_range() {
    check(
        "1. STUDS - Studs 3-5/8 in. wide min at 24 in. max.\n",
        &[
            "stud.width: at least 29/8 in",
            "1:studs_wide_max: at most 24 in",
        ],
    );
}

#[test]
fn a_limit_reaches_the_next_case() {
    check(
        "1. SEALANT - Min 1/2 in. depth in walls, 1 in. depth in floors.\n",
        &[
            "sealant.depth: at least 1/2 in if \"in walls\"",
            "sealant.depth: at least 1 in if \"in floors\"",
        ],
    );
    check(
        "1. CLIPS - Max 12 in. OC in joints up to 4 in. and 6 in. OC for joints over 4 in. wide.\n",
        &[
            "clip.spacing: at most 12 in if joint.width <= 4 in.",
            "clip.spacing: at most 6 in if joint.width > 4 in.",
        ],
    );
    // Another measure has none.
    check(
        "1. CLIPS - Max 12 in. OC in walls, 1 in. wide.\n",
        &["clip.spacing: at most 12 in", "clip.width: nominal 1 in"],
    );
}

#[test]
fn feet_and_a_fraction_of_an_inch_are_one_length() {
    check(
        "1. JOINT - Joint width max 1'-0 1/2\".\n",
        &["joint.width: at most 25/2 in"],
    );
    check(
        "1. JOINT - Joint width max 1 ft 0-1/2 in.\n",
        &["joint.width: at most 25/2 in"],
    );
}

#[test]
fn a_limit_in_capitals_closes_the_number_before_a_comma_or_a_label() {
    check(
        "1. CLIPS - Width: 2 In. Max, Length: 4 In. Min\n",
        &["clip.width: at most 2 in", "1:clip_length: at least 4 in"],
    );
    check(
        "1. CLIPS - Spacing 12 in. Max: screws 1 in. Min from ends\n",
        &[
            "clip.spacing: at most 12 in",
            "fastener.end_distance: at least 1 in",
        ],
    );
    check(
        "1. CLIPS - Spacing 12 in. Max, Min 1 in. wide\n",
        &["clip.spacing: at most 12 in", "clip.width: at least 1 in"],
    );
    check(
        "1. PACKING - Depth 4 in. Min, 6 in. Max\n",
        &["packing.depth: between 4 to 6 in"],
    );
}

#[test]
fn a_limit_that_may_open_the_next_label_is_left_to_a_person() {
    for (item, numbers) in [
        (
            "PACKING - Depth 4 in. Max Recess: 1/2 in.",
            ["4 in.", "1/2 in."],
        ),
        (
            "PACKING - Depth 100 mm min density: 60 kg/m3",
            ["100 mm", "60 kg/m3"],
        ),
        (
            "CLIPS - 12 in. Max Edge Distance, 1 in.",
            ["12 in.", "1 in."],
        ),
        ("CLIPS - 3 in. Min. lap 1 in.", ["3 in.", "1 in."]),
    ] {
        assert_eq!(unread(&format!("1. {item}\n")), numbers, "{item}");
    }
}

#[test]
fn a_shortened_limit_before_small_words_is_of_the_number_before() {
    check(
        "1. CLIPS - 1 in. Max. wide at 6 in. Min. centres\n",
        &["clip.width: at most 1 in", "clip.spacing: at least 6 in"],
    );
    check(
        "1. CLIPS - Length 3 in. Min. spaced 12 in. OC\n",
        &[
            "1:clip_length: at least 3 in",
            "clip.spacing: nominal 12 in",
        ],
    );
    check(
        "1. CLIPS - 3 in. Min. long spaced 12 in. Max. OC\n",
        &[
            "1:clip_length: at least 3 in",
            "clip.spacing: at most 12 in",
        ],
    );
    check(
        "1. CLIPS - Length 3 in. min spaced 12 in. OC\n",
        &[
            "1:clip_length: at least 3 in",
            "clip.spacing: nominal 12 in",
        ],
    );
}

#[test]
fn a_limit_before_a_capital_closes_the_number_or_leaves_words() {
    // What goes on with the measure, or begins a label in small letters, is no name that the limit heads.
    check(
        "1. CLIPS - Spacing 12 in. Max. Edge distance 2 in.\n",
        &[
            "clip.spacing: at most 12 in",
            "1:clip_edge_distance: nominal 2 in",
        ],
    );
    check(
        "1. CLIPS - Lap 3 in. Min. Spaced 12 in. OC.\n",
        &["clip.overlap: at least 3 in", "clip.spacing: nominal 12 in"],
    );
    check(
        "1. PACKING - Depth 4 in. Min. Item 3 may be omitted.\n",
        &["packing.depth: at least 4 in"],
    );
    // One name before a number may take it or not: nobody can say.
    for text in [
        "1. PACKING - Depth 4 in. Min. Recess 1/2 in.\n",
        "1. PACKING - Depth 4 in. min recess 1/2 in.\n",
    ] {
        check(text, &[]);
        assert_eq!(unread(text), ["4 in.", "1/2 in."], "{text}");
    }
    // A number behind that has its own limit leaves it.
    for limit in ["min recess 1/2 in. max", "Min. Recess 1/2 in. Max."] {
        check(
            &format!("1. PACKING - Depth 4 in. {limit}\n"),
            &[
                "packing.depth: at least 4 in",
                "packing.recess: at most 1/2 in",
            ],
        );
    }
}

#[test]
fn a_limit_may_be_said_in_passing() {
    for at_most in [
        "at the outside",
        "and not an inch more",
        ", and not an inch more",
        ", not a hair more",
    ] {
        check(
            &format!("1. CLIPS - Spaced 12 in. {at_most}.\n"),
            &["clip.spacing: at most 12 in"],
        );
    }
    check(
        "1. PACKING - Depth 4 in. and not an inch less.\n",
        &["packing.depth: at least 4 in"],
    );
    // A place is no limit.
    check(
        "1. CLIPS - Spaced 12 in. at the outside of the wall.\n",
        &["clip.spacing: nominal 12 in"],
    );
    check(
        "1. CLIPS - Spaced 12 in. on the inside face, 8 in. at the outside.\n",
        &[
            "clip.spacing: nominal 12 in",
            "1:clip_the_inside_face_at: nominal 8 in",
        ],
    );
}
