//! What stands between a number and a condition behind it: another phrase takes the condition for itself, and a word that lets off, changes or gives an example
//! makes no only case of it. The number then holds always.

/// Checks each bound of a text: its number as written, its condition and its option.
#[track_caller]
fn check(text: &str, expected: &[(&str, &str, &str)]) {
    let reading = listing::read_text("parted.txt", text);
    let found: Vec<(String, String, String)> = reading
        .clauses
        .iter()
        .filter_map(|clause| {
            let condition = clause.condition.as_ref();
            Some((
                clause.bound()?.at.of(text).to_owned(),
                condition
                    .map(|own| own.expr.to_string())
                    .unwrap_or_default(),
                clause.option.clone().unwrap_or_default(),
            ))
        })
        .collect();
    let found: Vec<(&str, &str, &str)> = found
        .iter()
        .map(|(at, condition, option)| (at.as_str(), condition.as_str(), option.as_str()))
        .collect();
    assert_eq!(found, expected, "{text}");
}

/// Checks that one number holds always.
#[track_caller]
fn check_always(text: &str, number: &str) {
    check(text, &[(number, "", "")]);
}

#[test]
fn a_condition_behind_another_phrase_is_that_phrases() {
    for (text, number) in [
        (
            "1. Joint. Max 3 in. wide, caulked on both faces for 2 hr.\n",
            "3 in.",
        ),
        (
            "1. Fill. Min 5/8 in. thick, on the upper side only for 1 hr.\n",
            "5/8 in.",
        ),
        (
            "1. Cover. Min 18 ga, galvanized for joints over 3 in.\n",
            "18 ga",
        ),
        ("1. Packing. Min 5 in. deep, with pins for 2 hr.\n", "5 in."),
        (
            "1. Packing. Min 5 in. deep and wired where the joint exceeds 3 in.\n",
            "5 in.",
        ),
    ] {
        check_always(text, number);
    }
    // Words that measure the number, and what is set off in commas, part nothing.
    for text in [
        "1. Packing. Min 5 in. deep, minimum, for 2 hr.\n",
        "1. Packing. Min 5 in. deep on each side for 2 hr.\n",
        "1. Packing. Min 5 in. deep, required for 2 hr.\n",
        "1. Packing. Min 5 in. deep, flush with each face, for 2 hr.\n",
        "1. Packing, min 5 in. deep, is required for 2 hr.\n",
        "1. Packing. Min 5 in. deep or more for 2 hr.\n",
    ] {
        check(text, &[("5 in.", "joint.rating = 2 hr", "")]);
    }
}

#[test]
fn a_word_that_lets_off_makes_no_only_case() {
    for word in [
        "unnecessary",
        "none",
        "exempt",
        "superfluous",
        "of no consequence",
        "merely advised",
        "can be disregarded",
        "is optional work",
        "halved",
        "more",
        "e.g.",
        "notably",
        "as tried",
    ] {
        let text = format!("1. Packing. Min 5 in. deep, {word} for joints under 2 in.\n");
        check_always(&text, "5 in.");
    }
    check_always(
        "1. Packing. Min 5 in. deep is discretionary for joints under 2 in.\n",
        "5 in.",
    );
}

#[test]
fn what_is_not_required_is_left_out_still() {
    for words in ["may be omitted", "not required", "not mandatory", "waived"] {
        let text = format!("1. Packing. Min 5 in. deep, {words} for joints under 2 in.\n");
        check(&text, &[("5 in.", "not (joint.width < 2 in.)", "")]);
    }
}

#[test]
fn no_requirement_is_none_there() {
    check_always(
        "1. Packing. No requirement of min 5 in. deep for joints under 2 in.\n",
        "5 in.",
    );
}

#[test]
fn a_case_that_lets_off_is_not_where_a_number_holds() {
    for text in [
        "1. Packing. For 1 hr the min 5 in. depth is superfluous.\n",
        "1. Packing. In joints under 2 in. there is no need for min 5 in. of depth.\n",
    ] {
        check_always(text, "5 in.");
    }
}

#[test]
fn what_somebody_may_specify_excuses_nobody() {
    check_always(
        "1. Packing. Min 5 in. deep unless otherwise noted.\n",
        "5 in.",
    );
    check_always(
        "1. Packing. Unless shown otherwise, min 5 in. deep.\n",
        "5 in.",
    );
    check(
        "1. Packing. Min 5 in. deep unless the joint is under 2 in. wide.\n",
        &[("5 in.", "not (joint.width < 2 in.)", "")],
    );
}

#[test]
fn in_capitals_an_order_begins_a_sentence() {
    check_always(
        "1. FILL - FILL 5/8 IN. MIN. NO FILL IS NEEDED WHERE JOINT IS UNDER 1/2 IN.\n",
        "5/8 IN.",
    );
    check_always("1. CLIPS - MAX 18 IN. O.C. OMIT FOR 1 HR.\n", "18 IN.");
    check(
        "1. PACKING - PACKING 5 IN. DEEP MIN. OMIT PACKING WHERE JOINT IS UNDER 1/2 IN. COVER 18 GA. MIN.\n",
        &[("5 IN.", "", ""), ("18 GA.", "", "")],
    );
}

#[test]
fn a_case_that_steps_in_has_its_own_number() {
    for text in [
        "1. Packing. Depth is 5 in., which for 1 hr may be 3 in.\n",
        "1. Packing. 5 in. deep, in the case of 1 hr walls 3 in. deep.\n",
        "1. Packing. Depth is 5 in. and, in the case of 1 hr, 3 in.\n",
    ] {
        check(
            text,
            &[("5 in.", "", ""), ("3 in.", "joint.rating = 1 hr", "")],
        );
    }
    check(
        "1. Packing. Depth 5 in., in 1 hr walls 3 in., and recess 1/2 in. max.\n",
        &[
            ("5 in.", "", ""),
            ("3 in.", "joint.rating = 1 hr", ""),
            ("1/2 in.", "", ""),
        ],
    );
}

#[test]
fn what_is_said_of_the_excepted_case_holds_there() {
    check(
        "1. Packing. Other than for 1 hr (3 in.), min 5 in. deep.\n",
        &[
            ("3 in.", "joint.rating = 1 hr", ""),
            ("5 in.", "not (joint.rating = 1 hr)", ""),
        ],
    );
    check(
        "1. Packing. Except in 1 hr walls the depth is min 5 in., there min 3 in.\n",
        &[
            ("5 in.", "not (joint.rating = 1 hr)", ""),
            ("3 in.", "joint.rating = 1 hr", ""),
        ],
    );
}

#[test]
fn a_limit_of_the_rating_is_no_case() {
    check(
        "1. Joint. When foam is used the width is limited to 2 in. and the rating to 1 hr.\n",
        &[
            ("2 in.", "\"When foam is used\"", ""),
            ("1 hr", "\"When foam is used\"", ""),
        ],
    );
}

#[test]
fn a_case_before_a_colon_ends_with_its_sentence() {
    check(
        "1. Wall. If the wall is brick: min 9 in. thick. Joints are pointed. All walls max 18 ft high.\n",
        &[("9 in.", "\"If the wall is brick\"", ""), ("18 ft", "", "")],
    );
    check(
        "1. Packing. Joint width over 3 in.: depth min 7 in. Joint width 3 in. or under: depth min 5 in. All joints: min 6 pcf.\n",
        &[
            ("7 in.", "joint.width > 3 in.", ""),
            ("5 in.", "joint.width <= 3 in.", ""),
            ("6 pcf", "", ""),
        ],
    );
    check(
        "1. Packing. When spray is left out: min 7 in. deep; otherwise: min 5 in. deep. Density min 6 pcf.\n",
        &[
            ("7 in.", "\"When spray is left out\"", ""),
            ("5 in.", "\"otherwise\"", ""),
            ("6 pcf", "", ""),
        ],
    );
}

#[test]
fn in_other_joints_is_no_inch() {
    check(
        "1. Packing. Not less than 5 in. in joints up to 3 in. and not less than 7 in wider joints.\n",
        &[("5 in.", "joint.width <= 3 in.", "")],
    );
    check_always(
        "1. Packing. Min 5 in. in narrow joints and 7 in wide joints.\n",
        "5 in.",
    );
}

#[test]
fn shares_side_by_side_are_no_tolerance_of_a_length() {
    check(
        "1. Movement. ±20 percent at 3 in., ±10 percent at 6 in.\n",
        &[
            ("±20 percent", "", ""),
            ("3 in.", "", ""),
            ("±10 percent", "", ""),
            ("6 in.", "", ""),
        ],
    );
}

#[test]
fn a_listed_paragraph_begins_a_sentence() {
    check(
        "1. Cover. Bolts at twice the spacing, that is, 30 in.\n   (e) Covers may be left out in 1 hr walls.\n",
        &[("twice", "", ""), ("30 in.", "", "")],
    );
}

#[test]
fn a_configuration_that_is_taken_out_is_not_chosen() {
    for (text, condition) in [
        (
            "1. Rod. Configuration C excepted, rod min 5/8 in. dia is placed.\n",
            "\"Configuration C excepted\"",
        ),
        (
            "1. Rod. Configuration C does not apply: min 5/8 in. dia.\n",
            "\"Configuration C does not apply\"",
        ),
        (
            "1. Rod. Min 5/8 in. dia outside Configuration C.\n",
            "\"outside Configuration C\"",
        ),
        (
            "1. Rod. Min 5/8 in. dia, as opposed to Configuration C.\n",
            "\"as opposed to Configuration C\"",
        ),
        (
            "1. Rod. Option C excluded, min 5/8 in. dia.\n",
            "\"Option C excluded\"",
        ),
    ] {
        check(text, &[("5/8 in.", condition, "")]);
    }
    check_always(
        "1. Rod. Min 5/8 in. dia as in Configuration C.\n",
        "5/8 in.",
    );
    check(
        "1. Rod. Min 5/8 in. dia in Configuration C.\n",
        &[("5/8 in.", "", "Configuration C")],
    );
}

#[test]
fn a_limit_told_from_the_rest_is_a_case() {
    check(
        "1. Sealant. In walls at least 9 in. thick, sealant not less than 3/8 in. deep, elsewhere 5/8 in.\n",
        &[
            ("3/8 in.", "\"In walls at least 9 in. thick\"", ""),
            ("5/8 in.", "", ""),
        ],
    );
    check(
        "1. Angle. Fastener spacing 10 in. max; it may be raised to 16 in. but only with 3/8 in. angle.\n",
        &[
            ("10 in.", "", ""),
            ("16 in.", "\"but only with 3/8 in. angle\"", ""),
        ],
    );
}

#[test]
fn numbers_belong_to_the_cases_before_them_one_by_one() {
    check(
        "1. Fill. For 1, 2 and 3 hr: 3/8, 5/8 and 7/8 in. respectively.\n",
        &[
            ("3/8", "joint.rating = 1 hr", ""),
            ("5/8", "joint.rating = 2 hr", ""),
            ("7/8 in.", "joint.rating = 3 hr", ""),
        ],
    );
}
