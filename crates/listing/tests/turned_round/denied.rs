//! What a denial reaches: each limit that goes on from the first, over commas and cases, and no statement of its own.

use crate::common::{check_item, unread_in as unread};

#[test]
fn what_is_denied_of_a_list_is_denied_of_its_distance() {
    check_item(
        "Packing - Depth 4 in. It shall not be broken by a column, pipe or duct within 6 in. of the corner.",
        &[
            "packing.depth: nominal 4 in",
            "2:duct_pipe_or_duct_of: at least 6 in",
        ],
    );
    // A clause of its own behind the comma is not denied.
    check_item(
        "Packing - Depth 4 in. The batt shall not be cut, and clips shall stand within 6 in. of the corner.",
        &[
            "packing.depth: nominal 4 in",
            "2:clips_clips_shall_stand_of: at most 6 in",
        ],
    );
}

#[test]
fn a_denial_reaches_over_a_case_between_commas() {
    check_item(
        "Packing - Depth 4 in. The joint shall not close by more than 15 percent, nor, where the sealant of paragraph 6 is used, by more than 10 percent.",
        &[
            "packing.depth: nominal 4 in",
            "2:joint_shall_not_close: at most 15 percent",
            "2:joint: at most 10 percent if \"where the sealant of paragraph 6 is used\"",
        ],
    );
}

#[test]
fn a_denial_reaches_every_limit_that_goes_on_from_the_first() {
    check_item(
        "Clips - Do not space clips less than 6 in. from the end, or more than 24 in. apart, or within 3 in. of a splice.",
        &[
            "clip.end_distance: at least 6 in",
            "clip.spacing: at most 24 in",
            "2:clips_apart_or_of_a: at least 3 in",
        ],
    );
    check_item(
        "Screws - No fastener is to be placed within 2 in. of the edge or more than 12 in. from another.",
        &[
            "2:fastener_to_be_placed_of: at least 2 in",
            "fastener.edge_distance: at most 12 in",
        ],
    );
    check_item(
        "Joint - The joint shall not exceed 4 in., be less than 1 in., or be deeper than 6 in. at the wall.",
        &[
            "2:joint_the_joint: at most 4 in",
            "2:joint: at least 1 in",
            "2:joint_depth: at most 6 in",
        ],
    );
    check_item(
        "Packing - Shall not be < 4 in., or be > 6 in. deep.",
        &["2:packing: at least 4 in", "packing.depth: at most 6 in"],
    );
}

#[test]
fn what_a_denial_may_reach_is_left_unread() {
    for (item, numbers) in [
        (
            "Packing - Depth may not be less than 4 in. and the recess more than 1/2 in.",
            &["1/2 in."][..],
        ),
        (
            "Clips - Clips shall not stand less than 2 in. from an edge; be spaced more than 24 in. apart; or lie within 3 in. of a splice.",
            &["24 in.", "3 in."],
        ),
        (
            "Clips - Must not: stand less than 2 in. from an edge; lie within 3 in. of a splice.",
            &["2 in.", "3 in."],
        ),
        (
            "Sealant - Avoid depths less than 1/2 in. or more than 1 in.",
            &["1/2 in.", "1 in."],
        ),
        (
            "Sealant - Gaps less than 1/2 in. wide, or more than 2 in. wide, are not permitted.",
            &["1/2 in.", "2 in."],
        ),
        (
            "Clips - Do not place 2 in. clips less than 6 in. apart.",
            &["6 in."],
        ),
        (
            "Packing - Not less than 4 in. deep or more than 6 pcf.",
            &["6 pcf"],
        ),
        (
            "Packing - Where the joint is not less than 1 in., or more than 2 in., depth min 4 in.",
            &["2 in."],
        ),
        (
            "Clips - Do not:\n   (a) space clips more than 24 in. apart\n   (b) place clips within 2 in. of an edge",
            &["24 in.", "2 in."],
        ),
        (
            "Clips - Clips shall not be:\n   - less than 1 in. wide\n   - within 2 in. of an edge",
            &["1 in.", "2 in."],
        ),
    ] {
        assert_eq!(unread(item), numbers, "{item}");
    }
}

#[test]
fn a_statement_of_its_own_is_not_denied() {
    check_item(
        "Clips - Fasteners shall not be omitted and shall be within 2 in. of each end.",
        &["fastener.end_distance: at most 2 in"],
    );
    check_item(
        "Clips - Adhesive is not required, clips are more than 1 in. wide.",
        &["clip.width: more than 1 in"],
    );
    check_item(
        "Clips - Space clips no more than 24 in. OC and within 2 in. of each end.",
        &[
            "clip.spacing: at most 24 in",
            "clip.end_distance: at most 2 in",
        ],
    );
    check_item(
        "Packing - Density not less than 4 pcf, melting point above 2000 F.",
        &[
            "packing.density: at least 4 pcf",
            "packing.melting_point: more than 2000 degF",
        ],
    );
}

#[test]
fn a_limit_that_is_denied_or_that_no_rule_reads_is_left_unread() {
    for item in [
        "Packing - Depth not up to 4 in.",
        "Packing - Depth not at or above 4 in.",
        "Packing - Depth not as deep as 4 in.",
        "Packing - Depth never short of 4 in.",
        "Packing - Depth up to but not including 4 in.",
        "Packing - Depth is not to be greater than, or less than, 4 in.",
        "Packing - Depth capped at 4 in.",
        "Packing - Nothing past 4 in.",
        "Packing - Depth 4 in. plus.",
        "Packing - Depth 4 in. and nothing less.",
    ] {
        check_item(item, &[]);
        assert_eq!(unread(item), ["4 in."], "{item}");
    }
}

/// What is closed behind its number and denied asks for the contrary, and a case for nothing: nobody should take it for the limit.
#[test]
fn a_closed_limit_that_is_denied_is_left_unread() {
    for (item, number) in [
        (
            "Packing - Density of 4 pcf or less shall not be used.",
            "4 pcf",
        ),
        (
            "Packing - No density of 3 pcf or less is permitted.",
            "3 pcf",
        ),
        (
            "Packing - Batts of 3 pcf or lighter are prohibited.",
            "3 pcf",
        ),
        (
            "Packing - Depth less than or equal to 3 in. is not permitted.",
            "3 in.",
        ),
        (
            "Joint - Do not use a joint width of 4 in. or more.",
            "4 in.",
        ),
        (
            "Joint - A width of 4 in. or more requires approval.",
            "4 in.",
        ),
        (
            "Pins - Pins shall not be placed 12 in. or more apart.",
            "12 in.",
        ),
        (
            "Beams - Beams 24 in. deep or deeper were not tested.",
            "24 in.",
        ),
    ] {
        check_item(item, &[]);
        assert_eq!(unread(item), [number], "{item}");
    }
    check_item(
        "Packing - Density of 4 pcf or more; lighter wool is not permitted.",
        &["packing.density: at least 4 pcf"],
    );
    check_item(
        "Packing - Packing 4 in. deep or more in not more than two layers.",
        &[
            "packing.depth: at least 4 in",
            "packing.layers: at most 2 count",
        ],
    );
}

#[test]
fn what_may_be_exceeded_limits_nothing() {
    for item in [
        "Packing - Depth may exceed 4 in.",
        "Packing - Depth is allowed to exceed 4 in.",
        "Packing - Depth does not have to be more than 4 in.",
        "Packing - Depth is not required to be at least 4 in.",
    ] {
        check_item(item, &[]);
        assert_eq!(unread(item), ["4 in."], "{item}");
    }
    check_item(
        "Packing - Depth may not exceed 4 in.",
        &["packing.depth: at most 4 in"],
    );
}

#[test]
fn what_is_not_needed_is_neither_asked_for_nor_forbidden() {
    let item =
        "Sealant - Depth not less than 10 mm, though a depth of more than 25 mm is not needed.";
    check_item(item, &["sealant.depth: at least 10 mm"]);
    assert_eq!(unread(item), ["25 mm"]);
}
