//! Widths that tell joints apart, and widths that bound them.

mod common;

use common::cases::{check, check_cases, governed};

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
fn a_thing_with_a_width_of_its_own_is_no_joint() {
    check(
        "Units of nominal width 190 mm laid in mortar.",
        &[("190 mm", false)],
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
fn through_a_width_is_up_to_it() {
    check(
        "Pins 12 in. OC for widths through 8 in., 8 in. OC for widths greater than 8 in.",
        &[("12 in.", true), ("8 in.", true)],
    );
}

#[test]
fn a_heading_may_name_the_wider_joints_alone() {
    let text = "3. Packing. Wool. Depth 4 in.\n\n   3.1. Joints above 4 in. Provide pins of 9 gauge wire, 12 in. on center.\n\n   3.2. Facing. Foil 2 in. wide.\n";
    assert_eq!(conditioned(text, "3.1"), [true, true]);
    assert_eq!(conditioned(text, "3.2"), [false]);
    // What may not be built excuses nothing.
    let text = "3. Packing. Wool. Depth 4 in.\n\n   3.1. Joints above 4 in.: not permitted. Strips 2 in. wide.\n";
    assert_eq!(conditioned(text, "3.1").last(), Some(&false));
}

#[test]
fn a_gap_behind_the_second_of_two_values_is_its_case() {
    for text in [
        "Wool squeezed 33 % min (50 % min in an opening of 13 mm or less).",
        "Wool squeezed 33 % min, 50 % min in a gap of 1/2 in. or less.",
        "Wool squeezed 33 % min (50 % in an opening of 13 mm (1/2 in.) or less).",
    ] {
        check(text, &[("33 %", false), ("50 %", true)]);
    }
    // Behind one value alone the gap is limited.
    check(
        "Sealant 1/2 in. deep in a gap of 2 in. or less.",
        &[("1/2 in.", false), ("2 in.", false)],
    );
    check(
        "Sealant 13 mm (1/2 in.) deep in a gap of 50 mm or less.",
        &[("13 mm", false), ("50 mm", false)],
    );
}
