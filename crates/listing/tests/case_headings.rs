//! Lines that tell for which case the next parts of a list are: one ends the one before it, "in all cases" ends it for good, and "otherwise" is for a person to say.

mod common;

use common::{check, clauses, unread};

/// An item of its own before the text, so that it is a listing.
fn with_a_floor(item: &str) -> String {
    format!("1. Floor - 5 in. thick min.\n{item}")
}

#[track_caller]
fn check_list(item: &str, expected: &[&str]) {
    let expected: Vec<&str> = core::iter::once("floor.thickness: at least 5 in")
        .chain(expected.iter().copied())
        .collect();
    check(&with_a_floor(item), &expected);
}

#[test]
fn a_heading_of_a_case_ends_the_one_before_it() {
    check_list(
        "2. Packing\n   When wall is concrete:\n   A. Depth min 3 in.\n   When wall is gypsum:\n   B. Depth min 4 in.\n   \
         In all cases:\n   C. Density min 4 pcf.\n",
        &[
            "packing.depth: at least 3 in if \"When wall is concrete\"",
            "packing.depth: at least 4 in if \"When wall is gypsum\"",
            "packing.density: at least 4 pcf",
        ],
    );
}

#[test]
fn a_heading_ends_the_case_that_an_item_leads_to_its_list_with() {
    let text = "2. Clips - For joints over 1 in.:\n   A. Min 16 ga.\n   B. Max 12 in. OC.\n   For joints of 1 in. or less:\n   C. Min 20 ga.\n";
    check_list(
        text,
        &[
            "clip.gauge: at least 16 gauge if \"For joints over 1 in.\"",
            "clip.spacing: at most 12 in if \"For joints over 1 in.\"",
            "clip.gauge: at least 20 gauge if \"For joints of 1 in. or less\"",
        ],
    );
    assert!(unread(&with_a_floor(text)).is_empty());
}

#[test]
fn otherwise_is_what_the_others_are_not() {
    check_list(
        "2. Clips: where joint exceeds 2 in.:\n   a) max 12 in. OC\n   b) min 16 ga\n   otherwise:\n   c) max 24 in. OC\n   d) min 20 ga\n",
        &[
            "clip.spacing: at most 12 in if \"where joint exceeds 2 in.\"",
            "clip.gauge: at least 16 gauge if \"where joint exceeds 2 in.\"",
            "clip.spacing: at most 24 in if \"otherwise than where joint exceeds 2 in.\"",
            "clip.gauge: at least 20 gauge if \"otherwise than where joint exceeds 2 in.\"",
        ],
    );
}

#[test]
fn a_case_in_the_title_holds_for_every_part() {
    check_list(
        "2. Clips (joints over 1 in.)\n   A. Clips min 16 ga.\n   When wall is gypsum:\n   B. Clips max 12 in. OC.\n",
        &[
            "clip.gauge: at least 16 gauge if joint.width > 1 in.",
            "clip.spacing: at most 12 in if joint.width > 1 in. and \"When wall is gypsum\"",
        ],
    );
}

#[test]
fn a_heading_over_bullets_is_of_those_below_it() {
    check_list(
        "2. Packing, for joints up to 1 in.:\n   - min 4 pcf\n   - min 2 in. deep\n   In joints over 1 in.:\n   - min 4 in. deep\n",
        &[
            "packing.density: at least 4 pcf if \"for joints up to 1 in.\"",
            "packing.depth: at least 2 in if \"for joints up to 1 in.\"",
            "2:depth: at least 4 in if \"In joints over 1 in.\"",
        ],
    );
}

#[test]
fn a_case_that_nothing_stands_under_yet_is_said_of_all_headings_below_it() {
    check_list(
        "2. Packing - For joints over 1 in.:\n   When wall is concrete:\n   A. Depth min 3 in.\n   When wall is gypsum:\n   B. Depth min 4 in.\n",
        &[
            "packing.depth: at least 3 in if \"For joints over 1 in.; When wall is concrete\"",
            "packing.depth: at least 4 in if \"For joints over 1 in.; When wall is gypsum\"",
        ],
    );
}

#[test]
fn a_sentence_below_the_parts_for_some_joints_is_of_none_of_them() {
    let text = "1. Packing:\n   a) Joints up to 2 in.: depth 4 in.\n   b) Joints over 2 in.: depth 5 in.\n   Density 4 pcf min.\n";
    let found = clauses(text);
    assert!(
        found.contains(&"packing.density: at least 4 pcf".to_owned()),
        "{found:?}"
    );
}

#[test]
fn a_bracket_of_a_title_may_refer_elsewhere_behind_its_case() {
    for (bracket, when) in [
        (
            "(where exposed to impact; see also Note a)",
            "where exposed to impact; see also Note a",
        ),
        (
            "(joints over 2 in., see Note 2)",
            "joints over 2 in., see Note 2",
        ),
        (
            "(where the wall is exposed; refer to Figure 3)",
            "where the wall is exposed; refer to Figure 3",
        ),
    ] {
        check_list(
            &format!(
                "2. Impact plates {bracket}\n   A. Plates max 12 in. OC.\n3. Packing\n   A. Depth min 4 in.\n"
            ),
            &[
                &format!("strip.spacing: at most 12 in if \"{when}\""),
                "packing.depth: at least 4 in",
            ],
        );
    }
    // What goes on to say more says for which joints it is, too, and then the heading is of none.
    for bracket in [
        "(where exposed to impact; always at doors)",
        "(joints over 2 in.; see Note 2 for others)",
        "(joints over 2 in., see that they are sealed)",
    ] {
        check_list(
            &format!("2. Impact plates {bracket}\n   A. Plates max 12 in. OC.\n"),
            &["strip.spacing: at most 12 in"],
        );
    }
}
