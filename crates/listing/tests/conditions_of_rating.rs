//! Ratings that tell cases apart, and hours that are none.

mod common;

use common::cases::{check, check_cases, governed};

#[test]
fn a_limit_for_another_rating_is_no_part_of_the_condition_before_it() {
    check(
        "Depth not less than 4 in. when the 2 hour rating is wanted and not less than 3 in. for the 1 hour rating.",
        &[("4 in.", true), ("3 in.", true)],
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
fn up_to_a_rating_is_a_case_where_another_is_named() {
    check(
        "Depth 4 inches up to 2 hours and 6 inches at 3 hours or more.",
        &[("4 in.", true), ("6 in.", true)],
    );
    check(
        "Cured: 100 mils up to 2 hours and 200 mils at 3 hours.",
        &[("100 mil", false), ("2 hr", false), ("200 mil", true)],
    );
}
