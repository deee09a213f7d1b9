//! Clauses that belong to several options, and options within options.

use conformance::Reason::{NotBuilt, NotChosen};
use conformance::{How, JointResult, Verdict};
use listing::Reading;

use crate::support::{self, alternates, check, configurations, not_applicable, optional};
use crate::{listing, verdict};

/// Alternates within alternates: 2A or 2A1; within 2A1, 2A1 itself or 2A1X.
fn nested(lines: &[&str]) -> Reading {
    let mut listing = listing(
        lines,
        vec![
            alternates("2A", &["2A", "2A1"]),
            alternates("2A1", &["2A1", "2A1X"]),
        ],
    );
    for item in &mut listing.items {
        item.parent = match item.path.as_str() {
            "2A1X" => Some("2A1".to_owned()),
            "2A1" => Some("2A".to_owned()),
            _ => None,
        };
    }
    listing
}

#[test]
fn options_within_options() {
    let listing = nested(&[
        "stud.gauge: at least 25 MSG ; item 2A",
        "runner.gauge: at least 25 MSG ; item 2A1",
        "clip.gauge: at least 18 MSG ; item 2A1X",
    ]);
    let result = check(&listing, &["clip.gauge = 16 gauge <- submittal S"]);
    assert_eq!(verdict(&result, "2A/1"), not_applicable(NotChosen));
    assert_eq!(verdict(&result, "2A1/1"), not_applicable(NotChosen));
    assert_eq!(verdict(&result, "2A1X/1"), support::MET);
    let result = check(&listing, &["stud.gauge = 20 gauge <- submittal S"]);
    assert_eq!(verdict(&result, "2A/1"), support::MET);
    assert_eq!(verdict(&result, "2A1X/1"), not_applicable(NotChosen));
    assert_eq!(result.chosen.len(), 1);
}

/// Configurations A and B, and an optional item 4 that asks something of one of them.
fn configured() -> Reading {
    listing(
        &[
            "packing.depth: at least 4 in. ; item 3 ; option Configuration A",
            "packing.layers: bare 2 ; item 3 ; option Configuration B",
            "sealant.depth: at least 1/2 in. ; item 3 ; option Configuration A or Configuration B",
            "angle.gauge: at least 20 MSG ; item 4 ; option 4 & Configuration B",
        ],
        vec![
            configurations(&["Configuration A", "Configuration B", "Configuration C"]),
            optional("4"),
        ],
    )
}

#[test]
fn a_clause_of_two_options_asks_where_both_are_built() {
    let thin = "angle.gauge = 25 gauge <- submittal S";
    let at = |configuration: &str, four: &str| {
        let configuration = format!("option.configuration = Configuration {configuration}");
        let four = format!("option.4 = {four}");
        let result = check(&configured(), &[thin, &configuration, &four]);
        verdict(&result, "4/1")
    };
    assert_eq!(at("B", "yes"), support::NOT_MET);
    assert_eq!(at("A", "yes"), not_applicable(NotChosen));
    assert_eq!(at("B", "no"), not_applicable(NotBuilt));
}

#[test]
fn a_clause_of_either_configuration_asks_in_both() {
    let shallow = "sealant.depth = 1/4 in.";
    for (configuration, expected) in [
        ("Configuration A", support::NOT_MET),
        ("Configuration B", support::NOT_MET),
        ("Configuration C", not_applicable(NotChosen)),
    ] {
        let stated = format!("option.configuration = {configuration}");
        let result = check(&configured(), &[shallow, &stated]);
        assert_eq!(verdict(&result, "3/3"), expected, "{configuration}");
    }
    // It counts with either in choosing: B fails by nothing else, and A by its packing.
    let result = check(
        &configured(),
        &["sealant.depth = 3/4 in.", "packing.layers = 2"],
    );
    assert_eq!(result.chosen[0].choice.as_deref(), Some("Configuration B"));
    assert_eq!(result.chosen[0].considered[0].counts.met, 1);
    assert_eq!(result.chosen[0].considered[1].counts.met, 2);
}

#[test]
fn an_option_that_no_group_knows_makes_no_clause_fall_away() {
    for option in [
        "Configuration Q",
        "Configuration A or Configuration Q",
        "Configuration Q & 9",
    ] {
        let mut listing = configured();
        listing.clauses[2].option = Some(option.to_owned());
        let result = check(
            &listing,
            &[
                "sealant.depth = 1/4 in.",
                "option.configuration = Configuration B",
            ],
        );
        assert_eq!(verdict(&result, "3/3"), support::NOT_MET, "{option}");
    }
    // What is known of it counts all the same.
    let mut listing = configured();
    listing.clauses[2].option = Some("Configuration Q & Configuration B".to_owned());
    let result = check(
        &listing,
        &[
            "sealant.depth = 1/4 in.",
            "option.configuration = Configuration A",
        ],
    );
    assert_eq!(verdict(&result, "3/3"), not_applicable(NotChosen));
}

#[test]
fn options_that_cannot_both_be_built_make_no_clause_fall_away() {
    let mut listing = configured();
    listing.clauses[2].option = Some("Configuration A & Configuration B".to_owned());
    for (configuration, expected) in [
        ("Configuration A", support::NOT_MET),
        ("Configuration B", support::NOT_MET),
        ("Configuration C", not_applicable(NotChosen)),
    ] {
        let stated = format!("option.configuration = {configuration}");
        let result = check(&listing, &["sealant.depth = 1/4 in.", &stated]);
        assert_eq!(verdict(&result, "3/3"), expected, "{configuration}");
    }
}

#[test]
fn an_alternate_within_an_alternate_is_cited_with_both_paths() {
    let listing = nested(&[
        "stud.gauge: at least 25 MSG ; item 2A",
        "runner.gauge: at least 25 MSG ; item 2A1 ; option 2A1",
        "clip.gauge: at least 18 MSG ; item 2A1X ; option 2A1 & 2A1X",
    ]);
    let stated = |outer: &str, inner: &str| {
        let result = check(
            &listing,
            &[
                "clip.gauge = 20 gauge <- submittal S",
                &format!("option.2A = {outer}"),
                &format!("option.2A1 = {inner}"),
            ],
        );
        verdict(&result, "2A1X/1")
    };
    assert_eq!(stated("2A1", "2A1X"), support::NOT_MET);
    assert_eq!(stated("2A1", "2A1"), not_applicable(NotChosen));
    assert_eq!(stated("2A", "2A1X"), not_applicable(NotChosen));
}

#[test]
fn a_clause_of_options_of_different_groups_asks_where_either_is_built() {
    let mut listing = configured();
    listing.clauses[2].option = Some("Configuration A or 4".to_owned());
    let at = |configuration: &str, four: &str| {
        let configuration = format!("option.configuration = Configuration {configuration}");
        let four = format!("option.4 = {four}");
        let result = check(
            &listing,
            &["sealant.depth = 1/4 in.", &configuration, &four],
        );
        verdict(&result, "3/3")
    };
    assert_eq!(at("A", "no"), support::NOT_MET);
    assert_eq!(at("B", "yes"), support::NOT_MET);
    assert_eq!(at("B", "no").0, Verdict::NotApplicable);
}

#[test]
fn a_column_of_the_schedule_says_which_is_built() {
    let schedule = "joint,option.configuration@case,option.4@HW-D-0901,sealant.depth\n\
                    #source,drawing A-801,drawing A-802,witnessed\n\
                    J1,configuration b,no,1/4 in.\n\
                    J2,Configuration C,yes,1/4 in.\n";
    let file = site::import::File {
        name: "schedule.csv",
        bytes: schedule.as_bytes(),
    };
    let project = site::import::import(&[file]).unwrap().project;
    let listing = configured();
    let results: Vec<JointResult> = project
        .joints
        .iter()
        .map(|joint| {
            let subject = conformance::Subject::of(&project, joint);
            conformance::check_draft(&listing, &subject).into()
        })
        .collect();
    assert_eq!(verdict(&results[0], "3/3"), support::NOT_MET);
    assert_eq!(verdict(&results[0], "4/1"), not_applicable(NotBuilt));
    assert_eq!(verdict(&results[1], "3/3"), not_applicable(NotChosen));
    for result in &results {
        assert!(result.chosen.iter().all(|chosen| chosen.how == How::Stated));
    }
}
