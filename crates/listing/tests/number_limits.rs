//! Limits that turn on a word near their number: what is counted back, what ends by a time, what edges are free of, what must not be done while it holds.
//! The wordings are invented; what they mean is common practice.

mod common;

use common::{check, clauses, unread};

/// Whether a clause of a text ends in what is expected.
#[track_caller]
fn ends(text: &str, expected: &str) {
    let clauses = clauses(text);
    assert!(
        clauses.iter().any(|clause| clause.ends_with(expected)),
        "{text} {clauses:?}"
    );
}

#[test]
fn what_may_not_fall_below_a_size_either_way_has_it_at_least() {
    ends(
        "1. SEALANT - The fillet must not drop below 8 mm either way.\n",
        "at least 8 mm",
    );
    ends(
        "1. SEALANT - The fillet measures not less than 3/8 in. in either direction.\n",
        "at least 3/8 in",
    );
    ends(
        "1. SCREWS - They may stray 3 mm either way from the line.\n",
        "between -3 to 3 mm",
    );
}

#[test]
fn a_time_before_something_is_counted_back() {
    for (text, expected) in [
        (
            "Send samples no later than 21 days before delivery.",
            "at least 21 day",
        ),
        (
            "Send samples at the latest 2 weeks prior to delivery.",
            "at least 2 week",
        ),
        (
            "The primer is brushed on no earlier than 6 hours before the sealant.",
            "at most 6 hr",
        ),
        (
            "The cover goes on not later than 6 hours after the sealant.",
            "at most 6 hr",
        ),
    ] {
        ends(&format!("1. SEALANT - {text}\n"), expected);
    }
}

#[test]
fn what_lapses_after_a_time_lasts_no_longer() {
    ends(
        "1. SCOPE - This opinion expires in all cases after 36 months.\n",
        "at most 36 month",
    );
    ends(
        "1. SCOPE - This opinion does not expire after 36 months.\n",
        "nominal 36 month",
    );
}

#[test]
fn an_edge_is_free_of_what_is_deeper() {
    ends(
        "1. FLOOR - The edge is clean and free from chips wider than 6 mm.\n",
        "at most 6 mm",
    );
    check(
        "1. FLOOR - Chips deeper than 6 mm are to be patched.\n",
        &[],
    );
}

#[test]
fn weather_in_which_nothing_is_done_is_limited_the_other_way() {
    let text = "1. SEALANT - Do not seal when humidity > 85% or surface temp. < 4°C.\n";
    ends(text, "at most 85 percent");
    ends(text, "at least 4 degC");
}

#[test]
fn a_sign_that_is_turned_down_limits_the_other_way() {
    ends(
        "1. WOOL - Offcuts < 250 mm long are not permitted.\n",
        "at least 250 mm",
    );
    assert_eq!(
        unread("1. WOOL - Offcuts of ≤ 250 mm are not permitted.\n"),
        ["250 mm"]
    );
}

#[test]
fn a_size_behind_counted_things_is_left_to_a_person() {
    assert_eq!(
        unread("1. WALL - Grouted for at least three courses (600 mm) above the joint.\n"),
        ["600 mm"]
    );
}

#[test]
fn another_case_behind_a_semicolon_has_the_limit_of_the_first() {
    ends(
        "1. WALL - Units are 150 mm thick or more; for the 4 hr rating, 200 mm.\n",
        "at least 200 mm if joint.rating = 4 hr",
    );
    ends(
        "1. WALL - Units are 150 mm thick or more; for the 4 hr rating, fill 200 mm.\n",
        "nominal 200 mm if joint.rating = 4 hr",
    );
}

#[test]
fn a_movement_to_a_size_is_that_at_most() {
    ends("1. JOINT - Lateral shear to 12 mm.\n", "at most 12 mm");
}

#[test]
fn two_laps_share_the_limit_that_closes_them() {
    let text = "1. SEALANT - Lap 25 mm on the wall and 15 mm on the steel beam as a minimum.\n";
    ends(text, "at least 25 mm");
    ends(text, "at least 15 mm");
}

#[test]
fn about_is_of_the_number_right_behind_it() {
    ends(
        "1. WOOL - Around the hangers bring the wool 20 mm past all edges.\n",
        "nominal 20 mm",
    );
    ends(
        "1. WOOL - Strips roughly 40 mm wide by 15 mm thick.\n",
        "nominal 15 mm",
    );
    ends("1. WOOL - Gap of around 20 mm.\n", "about 20 mm");
}

#[test]
fn sheets_and_gauges_by_their_trade_names() {
    ends(
        "1. ANGLE - Steel angle 40 x 40 x 0.75 BMT.\n",
        "nominal 3/4 mm",
    );
    ends(
        "1. DECK - Fluted deck, No. 16 to No. 20 ga.\n",
        "between 16 to 20 gauge",
    );
}

#[test]
fn points_group_thousands_where_commas_part_decimals() {
    let commas = "1. BOARD - Board 9,5 mm thick.\n\n2. FLOOR - Density 1.350 kg/m3, length 1.200 to 1.800 mm.\n";
    ends(commas, "nominal 1350 kg/m3");
    ends(commas, "between 1200 to 1800 mm");
    let points = "1. BOARD - Board 9.5 mm thick.\n\n2. FILM - Film 1.350 mm thick.\n";
    ends(points, "nominal 27/20 mm");
    let mixed = "1. BOARD - Board 9,5 mm thick, gap 0.5 mm.\n\n2. FILM - Film 1.350 mm thick.\n";
    ends(mixed, "nominal 27/20 mm");
}

#[test]
fn a_measure_that_names_its_thing_is_no_second_one() {
    let text = "1. TOP TRACK: LONG FLANGE, FLANGES 3\" MIN, 20 GA MIN.\n";
    ends(text, "at least 3 in");
    ends(text, "at least 20 gauge");
}

#[test]
fn a_limit_that_a_stop_ends_keeps_no_tolerance_from_the_next_number() {
    ends(
        "1. STUDS: 16\" O.C. MAX. HOLD 1/2\" SHORT (+0\", -1/8\").\n",
        "between 3/8 to 1/2 in",
    );
    ends(
        "1. BOARD: GAP 1\" MAX. LOW SCREWS 3\" (+/-1/2\") ABOVE THE EDGE.\n",
        "between 5/2 to 7/2 in",
    );
    ends(
        "1. BOARD: GAP MAX. 1\" (+/-1/8\") AT THE EDGE.\n",
        "between -1/8 to 1/8 in",
    );
}

#[test]
fn a_share_in_figures_is_one_of_what_it_names() {
    ends(
        "1. PINS - Pins enter the wool at 3/4 of its depth.\n",
        "nominal 75 percent",
    );
    // What is compressed to a share is compressed by the rest.
    let squeezed = clauses("1. WOOL - Wool compressed to 3/4 of its thickness.\n");
    assert!(
        squeezed.iter().all(|clause| !clause.contains("75 percent")),
        "{squeezed:?}"
    );
}

#[test]
fn a_resistance_rating_in_three_parts_is_read_in_its_cell() {
    let text = "1.  CASES\n\n      Case      Gap (mm)   FRR\n      K1        25-60      -/90/90\n      K2        61-90      -/60/60\n";
    ends(text, "nominal 90 min if \"Case: K1\"");
    ends(text, "nominal 60 min if \"Case: K2\"");
}
