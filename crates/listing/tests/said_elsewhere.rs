//! Limits that are said behind their number, beside it or once before: "is the limit", "whichever is greater", "the same 1 inch". The wordings are invented;
//! what they mean is common practice.

mod common;

use common::{clauses, unread};

/// Whether one clause of a text ends in what is expected, under whatever condition.
#[track_caller]
fn ends(text: &str, expected: &str) {
    let clauses = clauses(text);
    let bare = |clause: &String| clause.split(" if ").next().unwrap_or_default().to_owned();
    let found = clauses
        .iter()
        .filter(|clause| bare(clause).ends_with(expected));
    assert_eq!(found.count(), 1, "{text} {clauses:?}");
}

#[test]
fn what_is_the_limit_is_the_most() {
    ends(
        "1. STUDS - Where spaced wider, 24 in. (610 mm) is the limit.\n",
        "at most 24 in",
    );
    ends(
        "1. GASKET - Fill any gap; 1/16 in. is the most you may leave.\n",
        "at most 1/16 in",
    );
    // A lowest temperature is a limit, too.
    ends(
        "1. SPRAY - For the coating 40 °F is the limit.\n",
        "nominal 40 degF",
    );
}

#[test]
fn of_the_greater_of_two_each_is_the_least() {
    ends(
        "1. PACKING - The depth shall be 4 in. or the thickness of the slab less 1/2 in., whichever is greater.\n",
        "at least 4 in",
    );
    ends(
        "1. PACKING - The depth shall be 4 in. or the thickness of the slab less 1/2 in., whichever is less.\n",
        "nominal 4 in",
    );
    ends(
        "1. JOINT - The movement is 10 mm or the drift of the frame, whichever is greater.\n",
        "nominal 10 mm",
    );
}

#[test]
fn the_same_number_is_limited_as_it_was_before() {
    let text =
        "1. SEAL - It laps the slab by a minimum of 1 in. and the insulation by the same 1 in.\n";
    let found = clauses(text);
    let least = found
        .iter()
        .filter(|clause| clause.ends_with("at least 1 in"));
    assert_eq!(least.count(), 2, "{found:?}");
    // Where nothing before says so much, nobody can tell.
    let text = "1. SEAL - It laps the insulation by the same 1 in.\n";
    assert!(!unread(text).is_empty(), "{:?}", clauses(text));
}

#[test]
fn what_lies_beyond_is_no_further_limit() {
    ends(
        "1. TRACK - Leg length: 2 in. up to 3/4 in. opening, 3 in. (76 mm) beyond.\n",
        "nominal 3 in",
    );
}

#[test]
fn joints_no_closer_than_a_stretch_are_that_far_apart() {
    ends(
        "1. BACKING - It is jointed no closer than every 900 mm.\n",
        "at least 900 mm",
    );
}

#[test]
fn what_is_flush_or_recessed_by_so_much_is_a_range() {
    ends(
        "1. PACKING - Wool flush to 1/8 in. recessed from the board.\n",
        "between 0 to 1/8 in",
    );
    ends(
        "1. PACKING - Wool is 1/8 in. recessed from the board.\n",
        "nominal 1/8 in",
    );
}

#[test]
fn shares_in_words() {
    ends(
        "1. CLIP - The clip enters the safing to between one half and three quarters of its depth.\n",
        "between 50 to 75 percent",
    );
    ends(
        "1. CLIP - The lower leg reaches at least half the batt depth.\n",
        "at least 50 percent",
    );
    // The condition behind a share of the joint is no part of its words.
    let text = "1. SEALANT - Its depth is never less than half the joint width where the joint is 20 mm wide or narrower.\n";
    ends(text, "at least 1/2 times joint width");
    assert!(unread(text).is_empty(), "{:?}", unread(text));
}

#[test]
fn a_limit_before_the_next_rating_closes_its_own_number() {
    let text = "1. BOARD - Type X:\n\n    2 hr:  two layers, each 1/2 in. min\n    3 hr:  three layers, each 5/8 in. min\n";
    ends(text, "at least 1/2 in");
    let found = clauses(text);
    assert!(
        !found.iter().any(|clause| clause.contains("least 3 hr")),
        "{found:?}"
    );
}

#[test]
fn a_time_set_off_leaves_the_limit_to_its_subject() {
    ends(
        "1. JOINT - Max width, at time of installation, is 1-1/2 in. (38 mm).\n",
        "at most 3/2 in",
    );
}

#[test]
fn a_range_may_go_on_at_the_head_of_a_line() {
    ends(
        "1. WALL - Concrete of density 1600\n   - 2400 kg/m3 (100 - 150 pcf).\n",
        "between 1600 to 2400 kg/m3",
    );
    ends(
        "1. WALL - Built as in Table 3\n   - 150 mm minimum\n",
        "at least 150 mm",
    );
}
