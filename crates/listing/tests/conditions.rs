//! Which numbers a condition governs: one that is taken for the number before it would excuse a joint that is narrower.

mod common;

use common::cases::{check, check_cases};

#[test]
fn a_condition_that_opens_a_contrast_governs_what_follows() {
    for text in [
        "Clips shall be no more than 30 in. apart, though for joints over 5 in. the spacing shall not exceed 16 in.",
        "Clips shall be no more than 30 in. apart, while for joints over 5 in. the spacing shall not exceed 16 in.",
        "Clips shall be no more than 30 in. apart, but for joints over 5 in. the spacing shall not exceed 16 in.",
    ] {
        check(text, &[("30 in.", false), ("16 in.", true)]);
    }
}

#[test]
fn a_condition_before_a_qualified_number_governs_that_number() {
    check(
        "Compression minimum 20 %, for joints over 2 in. minimum 30 %.",
        &[("20 %", false), ("30 %", true)],
    );
    check(
        "Depth min 4 in., where the joint is wider than 2 in. not less than 5 in.",
        &[("4 in.", false), ("5 in.", true)],
    );
    check(
        "Depth min 4 in. for joints up to 2 in., min 5 in. for joints over 2 in.",
        &[("4 in.", true), ("5 in.", true)],
    );
}

#[test]
fn what_parallel_endings_share_holds_in_every_case() {
    check(
        "One layer of 2 in. thick wool for 1 hr and two for 2 hr.",
        &[("1", true), ("2 in.", false), ("2", true)],
    );
    check(
        "Two layers of 2 in. thick wool for the 2 hr rating and one for the 1 hr rating.",
        &[("2", true), ("2 in.", false), ("1", true)],
    );
    check(
        "One layer of 2 in. thick wool for the 1 hr rating and two layers of 1 in. thick wool for the 2 hr rating.",
        &[("1", true), ("2 in.", true), ("2", true), ("1 in.", true)],
    );
}

#[test]
fn the_rest_governs_the_number_before_it_and_none_behind() {
    check(
        "Seal 6 mm deep in joints up to 50 mm and 13 mm (1/2 in.) deep in wider joints, slope of floor not exceeding 2 %.",
        &[("6 mm", true), ("13 mm", true), ("2 %", false)],
    );
    // The state in which a joint has its width is no case.
    check(
        "The width of the joint shall not exceed 38 mm when it is made.",
        &[("38 mm", false)],
    );
}

#[test]
fn a_qualifier_between_commas_parts_nothing() {
    check(
        "Studs 2-1/2 in. deep for 1 hr; 4 in. deep, minimum, for 2 hr and 3 hr.",
        &[("2-1/2 in.", true), ("4 in.", true)],
    );
    check(
        "Wool 6 in. wide, 4 in. deep, for 2 hr.",
        &[("6 in.", false), ("4 in.", true)],
    );
}

#[test]
fn what_a_sentence_confines_itself_to_is_a_case() {
    check(
        "Wool 4 in. deep min. For stone panels only, a min 1 in. airspace is left.",
        &[("4 in.", false), ("1 in.", true)],
    );
    check(
        "The only wool is 4 in. deep min, on one side.",
        &[("4 in.", false)],
    );
}

#[test]
fn a_case_that_was_told_before_is_one() {
    check(
        "Depth min 10 mm. Contact not less than 12 mm in the latter case. Lap min 20 mm.",
        &[("10 mm", false), ("12 mm", true), ("20 mm", false)],
    );
    // In any case is always.
    check(
        "Contact not less than 12 mm in any case.",
        &[("12 mm", false)],
    );
    check(
        "Wool not less than 12 mm in the case of the clip.",
        &[("12 mm", false)],
    );
}

#[test]
fn a_condition_that_closes_an_exception_governs_nothing_before_it() {
    check(
        "Depth at least 4 in., or not less than 6 in. where the rating sought is 3 hours, and the wool shall weigh between 4 and 8 pcf, except \
         that wool of not less than 3 pcf may be used where the rating does not exceed 2 hours.",
        &[
            ("4 in.", false),
            ("6 in.", true),
            ("4 pcf", false),
            ("3 pcf", true),
        ],
    );
}

#[test]
fn a_conjunction_leads_a_condition_to_what_follows_it() {
    check_cases(
        "Depth shall be 4 in. for 2 hr rating and for 3 hr rating 5 in.",
        &[
            ("4 in.", "joint.rating = 2 hr"),
            ("5 in.", "joint.rating = 3 hr"),
        ],
    );
    check_cases(
        "4 in. deep and for joints over 2 in. compressed 40 percent.",
        &[("4 in.", ""), ("40 %", "joint.width > 2 in.")],
    );
    check_cases(
        "Min 6 pcf density and for the 3 hr rating min 8 pcf.",
        &[("6 pcf", ""), ("8 pcf", "joint.rating = 3 hr")],
    );
    check_cases(
        "Spaced max 24 in. oc and if the joint is wider than 2 in. two clips are used.",
        &[("24 in.", ""), ("2", "joint.width > 2 in.")],
    );
    check_cases(
        "Min 4 in. deep however for joints over 2 in. wide 5 in. is required.",
        &[("4 in.", ""), ("5 in.", "joint.width > 2 in.")],
    );
    // What is behind the next comma may be said of every joint.
    check_cases(
        "Min 4 in. deep and for joints over 2 in. compressed 40 percent, 6 pcf min.",
        &[
            ("4 in.", ""),
            ("40 %", "joint.width > 2 in."),
            ("6 pcf", ""),
        ],
    );
    // A list of ratings leads nowhere.
    check_cases(
        "Min 4 in. deep for the 2- and 3-hour ratings and 5 in. deep for the 4-hour rating.",
        &[
            ("4 in.", "joint.rating = 3 hr"),
            ("5 in.", "joint.rating = 4 hr"),
        ],
    );
}

#[test]
fn the_case_of_an_exception_governs_what_is_behind_it() {
    for text in [
        "Min 4 in. deep except for the 3 hr rating min 5 in.",
        "Min 4 in. deep, except for the 3 hr rating 5 in.",
        "Min 4 in. deep except 5 in. for the 3 hr rating.",
        "Min 4 in. deep with the exception that for the 3 hr rating the depth shall be 5 in.",
        "Min 4 in. deep, with the exception of the 3 hr rating which requires 5 in.",
    ] {
        check_cases(text, &[("4 in.", ""), ("5 in.", "joint.rating = 3 hr")]);
    }
    for text in [
        "Min 4 in. deep except in joints over 2 in. wide where the depth shall be 5 in.",
        "Min 4 in. deep except when the joint is wider than 2 in., then min 5 in.",
        "Min 4 in. deep, unless the joint is over 2 in. wide, in which event min 5 in.",
        "Min 4 in. deep except 5 in. in joints over 2 in. wide.",
    ] {
        check_cases(text, &[("4 in.", ""), ("5 in.", "joint.width > 2 in.")]);
    }
    check_cases(
        "Min 4 in. deep, with the exception of joints over 2 in. wide.",
        &[("4 in.", "not (joint.width > 2 in.)")],
    );
    check_cases(
        "Min 4 in. deep, except as noted for joints over 2 in. wide.",
        &[("4 in.", "not (joint.width > 2 in.)")],
    );
}

#[test]
fn conditions_side_by_side_are_one() {
    let either = "joint.rating = 3 hr or joint.width > 2 in.";
    let both = "joint.rating = 3 hr and joint.width > 2 in.";
    for (text, condition) in [
        (
            "Min 4 in. deep for the 3 hr rating or for joints over 2 in. wide.",
            either,
        ),
        (
            "For the 3 hr rating or where the joint is over 2 in. wide, min 4 in. deep.",
            either,
        ),
        (
            "Min 4 in. deep for the 3 hr rating in joints over 2 in. wide.",
            both,
        ),
        (
            "For the 3 hr rating, where the joint is over 2 in. wide, min 4 in. deep.",
            both,
        ),
        (
            "Min 4 in. deep both for 1 hr and for 2 hr.",
            "joint.rating = 1 hr or joint.rating = 2 hr",
        ),
        // Said of either, or of what is both.
        (
            "Min 4 in. deep for the 3 hr rating and for joints over 2 in. wide.",
            "\"for the 3 hr rating and for joints over 2 in. wide\"",
        ),
        (
            "Min 4 in. deep for joints over 2 in. wide or walls over 12 ft high.",
            "\"for joints over 2 in. wide or walls over 12 ft high\"",
        ),
    ] {
        check_cases(text, &[("4 in.", condition)]);
    }
}

#[test]
fn what_holds_in_a_case_as_well_is_under_no_condition() {
    check_cases(
        "Where the joint is over 2 in. wide, whether in floor or wall, min 5 in. deep.",
        &[("5 in.", "joint.width > 2 in.")],
    );
    for text in [
        "Min 4 in. deep whether or not the joint is over 2 in. wide.",
        "Min 4 in. deep, also for joints over 2 in. wide.",
        "Min 4 in. deep, as well as in joints over 2 in. wide.",
        "Min 4 in. deep, in joints over 2 in. wide too.",
        "Min 4 in. deep, also required for the 3 hr rating.",
        "Min 4 in. deep, including where the joint is over 2 in. wide.",
        "Min 4 in. deep even if the joint is over 2 in. wide.",
        "Min 4 in. deep regardless of whether the joint is over 2 in. wide.",
        "Whether or not the joint is over 2 in. wide, min 4 in. deep.",
    ] {
        check_cases(text, &[("4 in.", "")]);
    }
}

#[test]
fn what_a_thing_is_limited_to_is_no_case_of_it() {
    for text in [
        "Min 4 in. deep (limited to joints up to 2 in. wide).",
        "Min 4 in. deep, for use only with joints up to 2 in. wide.",
    ] {
        check_cases(text, &[("4 in.", ""), ("2 in.", "")]);
    }
}

#[test]
fn what_is_counted_in_two_cases_is_the_same_thing() {
    check_cases(
        "For 1 hr a single layer of batt 2 in. thick is laid and for 2 hr two layers.",
        &[
            ("1", "joint.rating = 1 hr"),
            ("2 in.", ""),
            ("2", "joint.rating = 2 hr"),
        ],
    );
}

#[test]
fn half_a_condition_excuses_nothing() {
    check_cases(
        "Min 4 in. deep (joints over 2 in.; walls over 12 ft high).",
        &[("4 in.", "\"joints over 2 in.; walls over 12 ft high\"")],
    );
    check_cases(
        "In Configuration A or for joints over 2 in., min 4 in. deep.",
        &[("4 in.", "\"In Configuration A or for joints over 2 in.\"")],
    );
    check_cases(
        "Min 4 in. deep for joints over 2 in. or in Configuration A.",
        &[("4 in.", "\"for joints over 2 in. or in Configuration A\"")],
    );
    // What a bracket asks for in its case is no second half of it.
    check_cases(
        "Min 4 in. deep (for joints over 2 in.; min 5 in. for joints over 4 in.).",
        &[
            ("4 in.", "joint.width > 2 in."),
            ("5 in.", "joint.width > 4 in."),
        ],
    );
    // A configuration is no option where it is one of two cases.
    let reading = listing::read_text(
        "conditions.txt",
        "1. Packing - Min 4 in. deep for joints over 2 in. or in Configuration A.\n2. Sealant - Min 1/2 in. deep.\n",
    );
    assert!(reading.clauses.iter().all(|clause| clause.option.is_none()));
}

#[test]
fn what_holds_otherwise_holds_in_the_other_cases() {
    check_cases(
        "Min depth 4 in. where the wall is of concrete, otherwise 5 in.",
        &[
            ("4 in.", "\"where the wall is of concrete\""),
            ("5 in.", "\"otherwise\""),
        ],
    );
    check_cases(
        "Min 3 in. deep for joints up to 2 in. wide, min 4 in. deep in all other cases.",
        &[
            ("3 in.", "joint.width <= 2 in."),
            ("4 in.", "not (joint.width <= 2 in.)"),
        ],
    );
    check_cases(
        "Min 3 in. deep for joints up to 2 in. wide. For all other joints min 4 in. deep.",
        &[
            ("3 in.", "joint.width <= 2 in."),
            ("4 in.", "\"For all other joints\""),
        ],
    );
    check_cases(
        "Below 50 F allow 48 h, otherwise 24 h.",
        &[("48 hr", "\"Below 50 F\""), ("24 hr", "\"otherwise\"")],
    );
}

#[test]
fn a_sentence_goes_on_with_the_case_before_it() {
    check_cases(
        "For joints over 2 in. the wool is pinned. In that case the pins are max 12 in. apart. Pieces are min 24 in. long.",
        &[("12 in.", "\"For joints over 2 in.\""), ("24 in.", "")],
    );
    check_cases(
        "For joints over 2 in. install a mesh. In such joints the mesh laps min 3 in.",
        &[("3 in.", "\"For joints over 2 in.\"")],
    );
    // "That case" is the one that is excepted; whether it is meant, a person must say.
    check_cases(
        "Two courses are laid, except in joints over 2 in. In that case each is min 3 in. deep.",
        &[
            ("2", "not (joint.width > 2 in.)"),
            ("3 in.", "\"in joints over 2 in.\""),
        ],
    );
    check_cases(
        "These joints are sealed last. In these joints the wool is min 3 in. deep.",
        &[("3 in.", "")],
    );
}

#[test]
fn the_weather_in_which_a_time_passes_is_a_condition() {
    check_cases(
        "Cure 24 h, below 10 °C no less than 48 h.",
        &[("24 hr", ""), ("48 hr", "\"below 10 °C\"")],
    );
    check_cases(
        "The patch stands three days, or seven days below 50 °F, before packing.",
        &[("3 days", ""), ("7 days", "\"below 50 °F\"")],
    );
    // What must hold meanwhile is asked for.
    check_cases(
        "Keep for 24 h at 50 °F or above.",
        &[("24 hr", ""), ("50 °F", "")],
    );
}

#[test]
fn openings_of_several_words_suppose_something_of_the_joint() {
    for opening in [
        "provided that",
        "so long as",
        "as long as",
        "on condition that",
    ] {
        check_cases(
            &format!("Packing depth may be 3 in. {opening} the joint width does not exceed 2 in."),
            &[("3 in.", "joint.width <= 2 in.")],
        );
    }
    // As a condition the proviso of what is asked for, or used at all, would excuse a wider joint.
    for asked in [
        "Packing depth shall be min 4 in. provided that the joint does not exceed 2 in.",
        "Packing min 4 in. deep may be used as long as the joint does not exceed 2 in.",
    ] {
        check_cases(asked, &[("4 in.", ""), ("2 in.", "")]);
    }
    for opening in [
        "In the event that the joint exceeds 2 in.",
        "Were the joint to exceed 2 in.",
        "Assuming a joint over 2 in. wide",
    ] {
        check_cases(
            &format!("{opening}, packing depth is min 4 in."),
            &[("4 in.", "joint.width > 2 in.")],
        );
    }
    // What is asked for stays so.
    check_cases(
        "The packing may be used provided that the joint width does not exceed 2 in.",
        &[("2 in.", "")],
    );
    check_cases(
        "Packing min 4 in. deep may be spliced provided that pieces lap 6 in.",
        &[("4 in.", ""), ("6 in.", "")],
    );
}

#[test]
fn a_kind_that_is_only_supposed_is_not_asked_for() {
    let reading = listing::read_text(
        "conditions.txt",
        "1. Packing - Where joint is over 2 in. or packing is unfaced, packing depth min 6 in.\n",
    );
    assert!(
        reading
            .clauses
            .iter()
            .all(|clause| clause.property != "packing.facing")
    );
}

#[test]
fn a_proviso_of_an_alternate_stays_asked_for() {
    check_cases(
        "Alternatively, sealant min 5/8 in. deep may be gunned in, provided that the joint is not more than 1 in. wide.",
        &[
            ("5/8 in.", "\"Alternatively\""),
            ("1 in.", "\"Alternatively\""),
        ],
    );
}
