//! Which numbers a condition governs: one that is taken for the number before it would excuse a joint that is narrower.

/// The bounds of a text with the words of their conditions.
fn governed(text: &str) -> Vec<(String, Option<String>)> {
    let text = format!("1. Packing - {text}\n2. Sealant - Min 1/2 in. deep.\n");
    let reading = listing::read_text("conditions.txt", &text);
    let of_packing = reading
        .clauses
        .into_iter()
        .filter(|clause| clause.item == "1");
    of_packing
        .filter_map(|clause| {
            let value = clause
                .bound()?
                .low()
                .or(clause.bound()?.high())?
                .to_string();
            Some((value, clause.condition.map(|condition| condition.words)))
        })
        .collect()
}

#[track_caller]
fn check(text: &str, expected: &[(&str, bool)]) {
    let found = governed(text);
    let found: Vec<(&str, bool)> = found
        .iter()
        .map(|(value, condition)| (value.as_str(), condition.is_some()))
        .collect();
    assert_eq!(found, expected, "{text}");
}

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
fn the_joint_itself_is_no_joint_among_others() {
    check(
        "Strips min 4 in. wide, lapped to either side of the joint not less than 1-1/2 in.",
        &[("4 in.", false), ("1-1/2 in.", false)],
    );
    check(
        "Sealant of min 1/2 in., set in the joint not less than 1/4 in. deep.",
        &[("1/2 in.", false), ("1/4 in.", false)],
    );
}

#[test]
fn widths_that_are_included_and_those_above_are_told_apart() {
    check(
        "Packing cut 15 mm oversize for gaps up to and including 100 mm and 20 mm oversize for gaps above that.",
        &[("15 mm", true), ("20 mm", true)],
    );
    check(
        "Depth 22 mm minimum (60 min) and 38 mm minimum (120 min); dry density 300 kg/m3.",
        &[("22 mm", true), ("38 mm", true), ("300 kg/m³", false)],
    );
    check(
        "Where one batt meets another the coats overlap by 51 mm (2 in.).",
        &[("51 mm", true)],
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
fn what_a_number_of_the_same_measure_follows_at_once_is_its_own_condition() {
    check(
        "Depth 12 mm, but in joints of more than 50 mm width 20 mm.",
        &[("12 mm", false), ("20 mm", true)],
    );
    check(
        "Compressed 30 %, for widths up to 20 mm only 15 %.",
        &[("30 %", false), ("15 %", true)],
    );
    check(
        "Compressed 25 % minimum (in joints narrower than 50 mm (2 in.), 33 %). Depth 4 in.",
        &[("25 %", false), ("33 %", true), ("4 in.", false)],
    );
    // At the end it is still that of the number before.
    check(
        "Depth 4 in., in joints wider than 2 in.",
        &[("4 in.", true)],
    );
}

#[test]
fn a_limit_for_another_rating_is_no_part_of_the_condition_before_it() {
    check(
        "Depth not less than 4 in. when the 2 hour rating is wanted and not less than 3 in. for the 1 hour rating.",
        &[("4 in.", true), ("3 in.", true)],
    );
}

#[test]
fn the_width_of_another_kind_of_joint_is_no_case() {
    check(
        "Screed 40 mm thick or more, with a control joint of width 10 mm over it.",
        &[("40 mm", false), ("10 mm", false)],
    );
    check(
        "Depth 40 mm or more in joints of width up to 10 mm.",
        &[("40 mm", true)],
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
fn gaps_of_so_much_and_over_are_a_case() {
    let found = governed("Gaps of 40 mm and over shall have a mesh of mass 160 g/m2.");
    assert_eq!(
        found,
        [(
            "160 g/m²".to_owned(),
            Some("Gaps of 40 mm and over".to_owned())
        )]
    );
    // Over the slab is a place.
    let found = governed("A gap of 40 mm and over the slab 20 mm of coating.");
    assert!(
        found.iter().all(|(_, condition)| condition.is_none()),
        "{found:?}"
    );
}

#[test]
fn hours_that_lead_to_values_are_ratings() {
    check(
        "Thickness: 1 and 2 hr, 6 in. min; 3 hr, 8 in. min.",
        &[("6 in.", true), ("8 in.", true)],
    );
    // One alone may be a time, and so may those that something dries.
    check(
        "Cured: 2 hr, 6 in. min.",
        &[("2 hr", false), ("6 in.", false)],
    );
    check(
        "Two coats, each 60 mils wet, with 4 hr between them.",
        &[("2", false), ("60 mil", false), ("4 hr", false)],
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
fn a_thing_with_a_width_of_its_own_is_no_joint() {
    check(
        "Units of nominal width 190 mm laid in mortar.",
        &[("190 mm", false)],
    );
}

/// Whether each bound of an item stands under a condition.
fn conditioned(text: &str, item: &str) -> Vec<bool> {
    let reading = listing::read_text("conditions.txt", text);
    let bounds = reading
        .clauses
        .into_iter()
        .filter(|clause| clause.item == item && clause.bound().is_some());
    bounds.map(|clause| clause.condition.is_some()).collect()
}

#[test]
fn an_item_that_is_asked_for_elsewhere_in_wide_joints_only_stands_under_them() {
    let text = |said: &str| {
        format!(
            "1. Packing - Min 4 pcf. {said}\n\n2. Steel Clips - Min 2 in. wide.\n\n3. Sealant - Min 1/2 in. deep.\n"
        )
    };
    let asks = text("Joints wider than 6 in. require the clips of Item 2.");
    assert_eq!(conditioned(&asks, "2"), [true]);
    assert_eq!(conditioned(&asks, "3"), [false]);
    // What every joint has is in the narrow ones, too.
    let asks = text("Joints wider than 6 in. require the sealant of Item 3.");
    assert_eq!(conditioned(&asks, "3"), [false]);
    for said in [
        "Joints wider than 6 in. do not require the clips of Item 2.",
        "Joints require the clips of Item 2.",
        "Joints up to 6 in. require the clips of Item 2 or Item 3.",
    ] {
        assert_eq!(conditioned(&text(said), "2"), [false], "{said}");
    }
}

#[test]
fn an_item_required_on_one_side_in_wide_joints_stands_under_them() {
    let text = |said: &str| {
        format!("1. Steel Angle - (Not Shown) - Required on one side {said}. Min 22 ga.\n")
    };
    assert_eq!(
        conditioned(
            &text("of the wall for joints wider than 2 in. in 3 Hr walls"),
            "1"
        ),
        [true]
    );
    assert_eq!(conditioned(&text("of the wall"), "1"), [false]);
}

#[test]
fn ratings_of_walls_side_by_side_are_of_one_case() {
    let reading = listing::read_text(
        "conditions.txt",
        "1. Studs - Min 3-5/8 in. wide for 1 Hr walls and 2 Hr walls.\n\n2. Sealant - Min 1/2 in. deep.\n",
    );
    let clause = reading.clauses.iter().find(|clause| clause.item == "1");
    let condition = clause.and_then(|clause| clause.condition.as_ref());
    assert_eq!(
        condition.map(|condition| condition.expr.to_string()),
        Some("joint.rating = 1 hr or joint.rating = 2 hr".to_owned())
    );
    // Each has its own number.
    check(
        "Depth min 4 in. for 1 Hr walls and min 5 in. for 2 Hr walls.",
        &[("4 in.", true), ("5 in.", true)],
    );
}

#[test]
fn what_is_required_on_some_grounds_only_is_asked_of_them() {
    check(
        "Primer. Required on block and on cut concrete: one coat of at least 80 g/m2.",
        &[("1", true), ("80 g/m²", true)],
    );
    check(
        "Primer. Required on each face: one coat of at least 80 g/m2.",
        &[("1", false), ("80 g/m²", false)],
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

/// The bounds of a text, each with its condition as a test.
#[track_caller]
fn check_cases(text: &str, expected: &[(&str, &str)]) {
    let text = format!("1. Packing - {text}\n2. Sealant - Min 1/2 in. deep.\n");
    let reading = listing::read_text("conditions.txt", &text);
    let mut found = Vec::new();
    for clause in reading.clauses.iter().filter(|clause| clause.item == "1") {
        let Some(bound) = clause.bound() else {
            continue;
        };
        let value = bound.low().or(bound.high()).map(|own| own.to_string());
        let condition = clause.condition.as_ref().map(|own| own.expr.to_string());
        found.push((value.unwrap_or_default(), condition.unwrap_or_default()));
    }
    let found: Vec<(&str, &str)> = found
        .iter()
        .map(|(value, condition)| (value.as_str(), condition.as_str()))
        .collect();
    assert_eq!(found, expected, "{text}");
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
fn what_may_be_left_out_in_a_case_is_asked_for_in_the_others() {
    for text in [
        "Packing min 4 in. deep may be omitted where the joint is narrower than 1 in.",
        "Packing min 4 in. deep is optional where the joint is narrower than 1 in.",
        "Packing min 4 in. deep may be left out in joints under 1 in. wide.",
        "Packing min 4 in. deep can be dispensed with in joints under 1 in. wide.",
        "Min 4 in. deep (not required where the joint is narrower than 1 in.).",
    ] {
        check_cases(text, &[("4 in.", "not (joint.width < 1 in.)")]);
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
fn hours_behind_what_is_counted_per_side_are_ratings() {
    for text in [
        "One layer per side for 1 hr and two layers per side for 2 hr.",
        "One layer per side, 1 Hr; two layers per side, 2 Hr.",
        "1 Hr - one layer on each side; 2 Hr - two layers on each side.",
    ] {
        check_cases(
            text,
            &[("1", "joint.rating = 1 hr"), ("2", "joint.rating = 2 hr")],
        );
    }
    // A time that goes by is none.
    check_cases(
        "One coat per side, dry for 2 hr.",
        &[("1", ""), ("2 hr", "")],
    );
}

#[test]
fn joints_of_so_much_or_wider_are_a_case() {
    let text = |said: &str| format!("1. Floor - Min 5 in. thick.\n2. {said}\n");
    assert_eq!(
        conditioned(&text("Joints 4 in. or wider need clips of 16 gauge."), "2"),
        [true]
    );
    // A whole sentence of a case behind the name of a thing is said of all of it.
    assert_eq!(
        conditioned(
            &text(
                "Support Clips - For joints wider than 2 in. No. 20 MSG steel. Spaced 18 in. OC."
            ),
            "2"
        ),
        [true, true]
    );
    // What may be left out is no part that is asked for there alone.
    assert_eq!(
        conditioned(
            &text("Packing (Leave out this step if the joint is 1 in. or less.)\nMin 4 in. deep."),
            "2"
        ),
        [false]
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
fn what_narrows_a_rating_down_belongs_to_the_condition() {
    check_cases(
        "For the 2 hr rating in which the joint is over 2 in. min 4 in. deep.",
        &[(
            "4 in.",
            "\"For the 2 hr rating in which the joint is over 2 in.\"",
        )],
    );
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
    // What an exception leaves is not what "that case" names: its words are for a person.
    check_cases(
        "Two courses are laid, except in joints over 2 in. In that case each is min 3 in. deep.",
        &[
            ("2", "not (joint.width > 2 in.)"),
            ("3 in.", "\"except in joints over 2 in.\""),
        ],
    );
    check_cases(
        "These joints are sealed last. In these joints the wool is min 3 in. deep.",
        &[("3 in.", "")],
    );
}

#[test]
fn a_width_in_a_title_is_a_condition_and_bounds_nothing() {
    let text = |title: &str| {
        format!("1. Floor - Min 5 in. thick.\n2. {title} Mesh min 6 in. wide, lapped min 3 in.\n")
    };
    assert_eq!(conditioned(&text("Mesh, W > 3 in.:"), "2"), [true, true]);
    assert_eq!(conditioned(&text("Mesh (W > 3 in.) -"), "2"), [true, true]);
    // Where the narrow joints are let off, the wide ones aren't: which is which stays in words.
    for let_off in [
        "(Not required for joints 2 in. or less)",
        "(Not required for joints up to 2 in.)",
        "(Not required in joints under 2 in.)",
    ] {
        let title = format!("Mesh {let_off} -");
        let reading = listing::read_text("conditions.txt", &text(&title));
        let mesh = reading.clauses.iter().filter(|own| own.item == "2");
        for clause in mesh.filter(|own| own.bound().is_some()) {
            let words = clause.condition.as_ref().map(|own| own.words.as_str());
            assert_eq!(words, Some(let_off.trim_matches(['(', ')'])));
        }
    }
    assert_eq!(
        conditioned(&text("Brace Clips (walls over 12 ft high only):"), "2"),
        [true, true]
    );
}

#[test]
fn a_title_that_runs_into_the_width_it_is_for_hides_no_condition() {
    let text = "1. Floor - Min 5 in. thick.\n\n2. Supports\nFrom a joint width of 80 mm the wool rests on min 3 mm thick steel.\n";
    assert_eq!(conditioned(text, "2"), [true]);
}

#[test]
fn a_clause_cited_by_its_number_is_asked_for_where_the_citing_one_says() {
    let text = |more: &str| {
        format!(
            "1 CONSTRUCTION\n1.1 Floor. Min 125 mm thick.\n\n2 JOINT\n2.1 Width 25 mm to 200 mm. Where the joint exceeds 125 mm provide the supports of 3.2.{more}\n\n3 MATERIALS\n3.1 Packing. Min 100 mm deep.\n3.2 Supports. Steel brackets min 1.2 mm thick.\n"
        )
    };
    assert_eq!(conditioned(&text(""), "3.2"), [true]);
    assert_eq!(conditioned(&text(""), "3.1"), [false]);
    // What another sentence speaks of as well may be there in every joint.
    assert_eq!(
        conditioned(&text(" The supports of 3.2 are galvanized."), "3.2"),
        [false]
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
fn a_limit_may_stand_before_the_joint_that_it_tells() {
    check_cases(
        "Legs min 2-1/2 in. up to a 1 in. joint; over that, min 3 in.",
        &[
            ("2-1/2 in.", "joint.width <= 1 in."),
            ("3 in.", "not (joint.width <= 1 in.)"),
        ],
    );
}

#[test]
fn hours_right_behind_a_side_or_an_at_sign_are_ratings() {
    check_cases(
        "1 layer each side 1 hr; 2 layers each side 2 hr.",
        &[("1", "joint.rating = 1 hr"), ("2", "joint.rating = 2 hr")],
    );
    check_cases(
        "1 layer each side @ 1 hr, 2 layers each side @ 2 hr.",
        &[("1", "joint.rating = 1 hr"), ("2", "joint.rating = 2 hr")],
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
fn how_long_something_is_borne_is_no_rating() {
    for text in [
        "Strip 10 mm thick must withstand 180 C for 30 min.",
        "A load of 100 plf is placed 2 ft from the joint edge for 30 minutes.",
        "Board 1/2 in. thick tested for 1 hr.",
        "Packing 4 in. deep, heated for 1 hr.",
        "Sealant 1/2 in. deep is immersed for 2 hr.",
    ] {
        let found = governed(text);
        assert!(found.len() > 1, "{text}");
        assert!(
            found.iter().all(|(_, case)| case.is_none()),
            "{text}: {found:?}"
        );
    }
    check_cases(
        "Packing 4 in. deep for 1 hr, 6 in. deep for 2 hr.",
        &[
            ("4 in.", "joint.rating = 1 hr"),
            ("6 in.", "joint.rating = 2 hr"),
        ],
    );
}

#[test]
fn what_excepts_or_includes_joints_bounds_no_width() {
    check_cases(
        "Min depth 1/2 in., excluding joints less than 1 in. wide.",
        &[("1/2 in.", "not (joint.width < 1 in.)")],
    );
    check_cases(
        "Min depth 1/2 in., including joints less than 1 in. wide.",
        &[("1/2 in.", "")],
    );
    check_cases(
        "Depth 4 in. for joints other than those more than 2 in. wide.",
        &[("4 in.", "not (joint.width > 2 in.)")],
    );
    check_cases(
        "Min depth 4 in. for any joint which is not less than 2 in. wide.",
        &[("4 in.", "joint.width >= 2 in.")],
    );
    check_cases(
        "For 2 in. joints, packing depth is min 4 in.",
        &[("4 in.", "\"For 2 in. joints\"")],
    );
    check_cases(
        "Clips 24 in. OC max. This does not apply to joints under 1 in.",
        &[("24 in.", "")],
    );
}

#[test]
fn a_rating_that_is_not_asked_for_keeps_its_not() {
    check_cases(
        "If a 2 hr rating is not required, packing depth may be 3 in.",
        &[("3 in.", "\"If a 2 hr rating is not required\"")],
    );
    check_cases(
        "Min depth 1/2 in. required except when 2 hr rating is not needed.",
        &[("1/2 in.", "\"except when 2 hr rating is not needed\"")],
    );
    check_cases(
        "Min depth 4 in. where no 2 hr rating is required.",
        &[("4 in.", "\"where no 2 hr rating is required\"")],
    );
    check_cases(
        "Packing depth min 4 in. except for ratings over 2 hr, where min 6 in. is required.",
        &[("4 in.", ""), ("6 in.", "joint.rating > 2 hr")],
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

/// The bounds of a text with their options, and whether they stand in doubt.
fn options(text: &str) -> Vec<(String, Option<String>, bool)> {
    let reading = listing::read_text("conditions.txt", &format!("1. Joint - {text}\n"));
    let bounds = reading.clauses.into_iter().filter_map(|clause| {
        let value = clause.bound()?.low().or(clause.bound()?.high())?;
        let doubt = clause.confidence == listing::Confidence::WithDoubt;
        Some((value.to_string(), clause.option, doubt))
    });
    bounds.collect()
}

#[test]
fn a_configuration_of_the_subject_governs_what_is_said_of_it() {
    let a = || Some("Configuration A".to_owned());
    let b = || Some("Configuration B".to_owned());
    assert_eq!(
        options(
            "The system of Configuration A is designed for max 25 percent shear, and that of Configuration B a max 12 percent shear. Depth min 4 in."
        )
        .iter()
        .map(|(value, option, _)| (value.as_str(), option.clone()))
        .collect::<Vec<_>>(),
        [("25 %", a()), ("12 %", b()), ("4 in.", None)]
    );
    // At the end of what is said it governs what stands before.
    assert_eq!(
        options(
            "Packing min 5 in. wide for Configuration A and min 6 in. wide for Configuration B."
        )
        .into_iter()
        .map(|(_, option, _)| option)
        .collect::<Vec<_>>(),
        [a(), b()]
    );
}

#[test]
fn words_of_one_configuration_never_carry_another() {
    let reading = listing::read_text(
        "conditions.txt",
        "1. Packing - Cut to a min width of 5 in. for Configuration A and a width no less than that of the wall for Configuration B.\n",
    );
    let words = reading
        .clauses
        .iter()
        .find(|clause| clause.words.contains("that of the wall"));
    assert_eq!(
        words.and_then(|clause| clause.option.as_deref()),
        Some("Configuration B")
    );
}

#[test]
fn what_is_asked_besides_a_configuration_is_a_condition() {
    let reading = listing::read_text(
        "conditions.txt",
        "1. Coating - In Configuration B with the sprayed deck of Item 2, the overlap shall be min 3 in.\n2. Deck - Sprayed, min 1/2 in. thick.\n",
    );
    let overlap = reading
        .clauses
        .iter()
        .find(|clause| clause.bound().is_some());
    let overlap = overlap.map(|clause| {
        let condition = clause.condition.as_ref();
        (
            clause.option.clone(),
            condition.map(|condition| condition.expr.to_string()),
        )
    });
    assert_eq!(
        overlap,
        Some((
            Some("Configuration B".to_owned()),
            Some("\"with the sprayed deck of Item 2\"".to_owned())
        ))
    );
}

#[test]
fn a_place_that_stays_words_leaves_its_numbers_in_doubt() {
    let doubts = |text| -> Vec<bool> {
        options(text)
            .into_iter()
            .map(|(_, _, doubt)| doubt)
            .collect()
    };
    assert_eq!(
        doubts(
            "In the gap between the top of the board and the valleys, wool min 2 in. deep is set."
        ),
        [true]
    );
    assert_eq!(doubts("Wool min 2 in. deep is set in the gap."), [false]);
}
