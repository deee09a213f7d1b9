//! Descriptions, and what is said beside a number, that must not become conditions: a condition excuses what it governs.

use listing::Clause;

fn bounds(text: &str) -> Vec<Clause> {
    let clauses = listing::read_text("excused.txt", text).clauses.into_iter();
    clauses.filter(|clause| clause.bound().is_some()).collect()
}

/// Checks each bound of a text: its property, relation, number as written and condition.
#[track_caller]
fn check(text: &str, expected: &[(&str, &str, &str, &str)]) {
    let bounds = bounds(text);
    let found: Vec<(String, String, String, String)> = bounds
        .iter()
        .filter_map(|clause| {
            let bound = clause.bound()?;
            Some((
                clause.property.clone(),
                format!("{:?}", bound.relation),
                bound.at.of(text).to_owned(),
                clause
                    .condition
                    .as_ref()
                    .map(|own| own.expr.to_string())
                    .unwrap_or_default(),
            ))
        })
        .collect();
    let found: Vec<(&str, &str, &str, &str)> = found
        .iter()
        .map(|(property, relation, at, condition)| {
            (
                property.as_str(),
                relation.as_str(),
                at.as_str(),
                condition.as_str(),
            )
        })
        .collect();
    assert_eq!(found, expected, "{text}");
}

#[test]
fn ratings_in_one_line_are_each_their_own() {
    for text in [
        "1. Joint. F Rating: 2 hr. T Rating: 1-1/2 hr.\n",
        "1. Joint. F Rating - 2 hr T Rating - 1-1/2 hr\n",
    ] {
        check(
            text,
            &[
                ("joint.f_rating", "Nominal", "2 hr", ""),
                ("joint.t_rating", "Nominal", "1-1/2 hr", ""),
            ],
        );
    }
}

#[test]
fn how_wide_the_joint_is_that_a_sentence_speaks_of_is_no_case() {
    check(
        "1. Wall 6 in. thick with joint 2 in. wide.\n",
        &[
            ("wall.thickness", "Nominal", "6 in.", ""),
            ("joint.width", "Nominal", "2 in.", ""),
        ],
    );
    check(
        "1. Packing compressed at least 25 percent of the joint width of up to 4 in.\n",
        &[
            ("packing.compression", "AtLeast", "25 percent", ""),
            ("joint.width", "AtMost", "4 in.", ""),
        ],
    );
    // A joint that is led to before the number, or one of two, is a case.
    check(
        "1. Packing. In joints 2 in. wide, min 4 in. deep.\n",
        &[("packing.depth", "AtLeast", "4 in.", "joint.width = 2 in.")],
    );
}

#[test]
fn which_joints_can_be_sealed_is_asked_of_all() {
    let bounds = bounds("1. Joints of not more than 4 in. can be sealed.\n");
    assert!(bounds.iter().all(|clause| clause.condition.is_none()));
    assert_eq!(bounds.len(), 1);
}

#[test]
fn a_second_width_has_what_the_sentence_tested_before() {
    let text = "1. Packing. Where joint is 2 in., min packing depth is 4 in., 6 in. where 3 in.\n";
    let conditions: Vec<String> = bounds(text)
        .into_iter()
        .filter_map(|clause| clause.condition.map(|own| own.expr.to_string()))
        .collect();
    assert_eq!(conditions, ["joint.width = 2 in.", "joint.width = 3 in."]);
}

#[test]
fn a_second_limit_is_no_half_of_the_first_condition() {
    check(
        "1. Sealant. Depth not less than 1/2 in. in joints 1/2 in. to 1 in. wide and not less than half the joint width in joints over 1 in.\n",
        &[
            (
                "sealant.depth",
                "AtLeast",
                "1/2 in.",
                "joint.width from 1/2 in. to 1 in.",
            ),
            (
                "sealant.depth",
                "AtLeast",
                "half the joint width",
                "joint.width > 1 in.",
            ),
        ],
    );
}

#[test]
fn a_depth_behind_the_joints_meant_is_no_limit_of_theirs() {
    let text = "1. Packing. No less than 4 in. deep in joints not more than 2 in. wide and no less than 5 in. deep elsewhere.\n";
    let found = bounds(text);
    let first = found.first().and_then(|clause| clause.condition.as_ref());
    assert_eq!(
        first.map(|own| own.expr.to_string()).as_deref(),
        Some("joint.width <= 2 in.")
    );
    assert_eq!(found.len(), 2);
}

#[test]
fn brackets_that_say_for_which_joints_a_thing_is_not_are_for_a_person() {
    check(
        "1. Sealant. Min 1/2 in. deep (not for joints under 1 in.).\n",
        &[(
            "sealant.depth",
            "AtLeast",
            "1/2 in.",
            "\"not for joints under 1 in.\"",
        )],
    );
}

#[test]
fn what_a_proviso_speaks_of_names_no_number_before_it() {
    let text = "1. Packing. Packing depth shall be 4 in. provided joint width exceeds 2 in.\n";
    check(
        text,
        &[
            ("packing.depth", "Nominal", "4 in.", ""),
            ("joint.width", "MoreThan", "2 in.", ""),
        ],
    );
}

#[test]
fn what_is_not_necessary_is_not_asked_for() {
    assert!(bounds("1. Packing. Packing need not necessarily be 4 in. deep.\n").is_empty());
}

#[test]
fn what_is_not_needed_in_some_joints_is_asked_for_in_the_others() {
    for text in [
        "Stiffener (not needed in joints under 4 in.). Steel, 20 gauge.",
        "Stiffener. Not needed in joints under 4 in. Steel, 20 gauge.",
        "Stiffener. Not needed in joints under 4 in. Otherwise of 20 gauge steel.",
    ] {
        let reading = listing::read_text(
            "let-off.txt",
            &format!("1. Floor. Min 6 in. thick.\n\n2. {text}\n"),
        );
        let gauge = reading.clauses.iter().find(|clause| {
            clause.item == "2" && matches!(clause.requirement, listing::Requirement::Bound(_))
        });
        let condition = gauge.and_then(|clause| clause.condition.as_ref());
        let said = condition
            .map(|own| format!("{:?}", own.expr))
            .unwrap_or_default();
        assert!(
            said.is_empty() || said.starts_with("Not("),
            "{text}: {said}"
        );
    }
}
