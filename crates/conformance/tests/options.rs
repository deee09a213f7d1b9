//! Choosing among a listing's options.

#![allow(
    clippy::indexing_slicing,
    reason = "a case that isn't written right must fail"
)]

mod support;

use conformance::Reason::{NotBuilt, NotChosen, OptionUnknown};
use conformance::{How, JointResult, Overall, Verdict};
use listing::{OptionGroup, Reading};
use proptest::prelude::*;
use site::Decision;
use support::{
    alternates, check, check_with, configurations, finding, judgment, not_applicable, open,
    optional, reading,
};

fn listing(lines: &[&str], options: Vec<OptionGroup>) -> Reading {
    let mut listing = reading(lines);
    listing.options = options;
    listing
}

fn verdict(result: &JointResult, clause: &str) -> (Verdict, conformance::Reason) {
    let found = finding(result, clause);
    (found.verdict, found.explanation.reason)
}

/// Item 3B, a coating, and its alternate 3B1, a sealant.
fn coating_or_sealant() -> Reading {
    listing(
        &[
            "coating.wet_thickness: at least 1/8 in. ; item 3B",
            "coating.overlap_board: at least 1/2 in. ; item 3B",
            "sealant.depth: at least 5/8 in. ; item 3B1",
        ],
        vec![alternates("3B", &["3B", "3B1"])],
    )
}

#[test]
fn an_alternate_replaces_its_base() {
    let result = check(&coating_or_sealant(), &["sealant.depth = 3/4 in."]);
    assert_eq!(verdict(&result, "3B/1"), not_applicable(NotChosen));
    assert_eq!(verdict(&result, "3B/2"), not_applicable(NotChosen));
    assert_eq!(verdict(&result, "3B1/1"), support::MET);
    assert_eq!(
        (result.chosen[0].choice.as_deref(), result.chosen[0].how),
        (Some("3B1"), How::BestFit)
    );
}

#[test]
fn an_alternate_that_nobody_built_hides_nothing() {
    // The coating fails; the sealant, of which nothing is known, would only be open.
    let result = check(
        &coating_or_sealant(),
        &[
            "coating.wet_thickness = 1/16 in.",
            "coating.overlap_board = 1 in.",
        ],
    );
    assert_eq!(verdict(&result, "3B/1"), support::NOT_MET);
    assert_eq!(verdict(&result, "3B1/1"), not_applicable(NotChosen));
}

#[test]
fn the_base_need_not_be_named_among_the_choices() {
    let mut listing = coating_or_sealant();
    listing.options = vec![alternates("3B", &["3B1"])];
    let result = check(&listing, &["sealant.depth = 3/4 in."]);
    assert_eq!(verdict(&result, "3B/1"), not_applicable(NotChosen));
    assert_eq!(verdict(&result, "3B1/1"), support::MET);
}

#[test]
fn an_alternate_may_replace_several_items() {
    let mut listing = listing(
        &[
            "runner.gauge: at least 25 MSG ; item 2A",
            "clip.gauge: at least 18 MSG ; item 2B",
            "angle.gauge: at least 20 MSG ; item 2C",
        ],
        vec![alternates("2A", &["2A", "2C"])],
    );
    listing.options[0].also_replaced = vec!["2B".to_owned()];
    let result = check(&listing, &["angle.gauge = 16 gauge <- submittal S"]);
    assert_eq!(verdict(&result, "2B/1"), not_applicable(NotChosen));
    let result = check(&listing, &["runner.gauge = 20 gauge <- submittal S"]);
    assert_eq!(verdict(&result, "2B/1"), open(conformance::Reason::NoFact));
}

#[test]
fn a_fact_or_a_judgment_settles_which_is_built() {
    let facts = ["sealant.depth = 3/4 in.", "option.3B = 3B <- drawing A"];
    let result = check(&coating_or_sealant(), &facts);
    assert_eq!(verdict(&result, "3B1/1"), not_applicable(NotChosen));
    assert_eq!(result.chosen[0].how, How::Stated);

    let decided = [judgment(
        "3B",
        "built",
        Decision::Accepted,
        "seen on the walk",
    )];
    let result = check_with(&coating_or_sealant(), &facts[..1], &decided);
    assert_eq!(verdict(&result, "3B1/1"), not_applicable(NotChosen));
    assert!(result.notes.is_empty());

    // A name that none of the options has, and a value that nobody stands for, settle nothing.
    let result = check(
        &coating_or_sealant(),
        &["sealant.depth = 3/4 in.", "option.3B = 3B7"],
    );
    assert_eq!(verdict(&result, "option/3B"), open(OptionUnknown));
    let result = check(
        &coating_or_sealant(),
        &["sealant.depth = 3/4 in.", "option.3B = 3B <- unstated"],
    );
    assert_eq!(verdict(&result, "3B1/1"), support::MET);
}

/// Item 2A, clips at a spacing, or 2A1, a continuous angle: both of sheet steel.
fn clips_or_angle() -> Reading {
    listing(
        &[
            "clip.gauge: at least 18 MSG ; item 2A",
            "clip.spacing: at most 20 in. ; item 2A",
            "clip.fasteners_each: bare 2 ; item 2A",
            "clip.gauge: at least 20 MSG ; item 2A1",
        ],
        vec![alternates("2A", &["2A", "2A1"])],
    )
}

#[test]
fn what_only_one_choice_is_about_tells_that_it_is_built() {
    // The angle asks less, and the gauge would do for it; but what has a spacing is a clip.
    let steel = "clip.gauge = 16 gauge <- submittal S";
    for (spacing, expected) in [("16 in.", support::MET), ("24 in.", support::NOT_MET)] {
        let spacing = format!("clip.spacing = {spacing} <- witnessed");
        let result = check(&clips_or_angle(), &[steel, &spacing]);
        assert_eq!(verdict(&result, "2A/2"), expected);
        assert_eq!(verdict(&result, "2A/3"), open(conformance::Reason::NoFact));
        assert_eq!(verdict(&result, "2A1/1"), not_applicable(NotChosen));
    }
}

#[test]
fn an_alternate_that_nothing_tells_of_closes_nothing() {
    let result = check(&clips_or_angle(), &["clip.gauge = 16 gauge <- submittal S"]);
    assert_eq!(verdict(&result, "2A1/1"), support::MET);
    assert_eq!(verdict(&result, "option/2A"), open(OptionUnknown));
    // Another product than the alternate's doesn't tell of the alternate.
    let listing = listing(
        &[
            "runner.gauge: at least 25 MSG ; item 2B",
            "runner.product: named Tarrowfen Steel | Tarroslot ; item 2B1",
        ],
        vec![alternates("2B", &["2B", "2B1"])],
    );
    let plain = "runner.product = Quillbrook Steel | Quilltrack <- submittal S";
    let result = check(&listing, &["runner.gauge = 20 gauge <- submittal S", plain]);
    assert_eq!(verdict(&result, "2B/1"), support::MET);
    assert_eq!(verdict(&result, "2B1/1"), not_applicable(NotChosen));
}

#[test]
fn a_choice_that_asks_nothing_wins_nothing() {
    // The alternate's only clause falls away by its condition: choosing it would make the base's clauses vanish.
    let listing = listing(
        &[
            "coating.wet_thickness: at least 1/8 in. ; item 3B",
            "sealant.depth: at least 5/8 in. ; item 3B1 ; if joint.rating = 1 hr",
        ],
        vec![alternates("3B", &["3B", "3B1"])],
    );
    let result = check(
        &listing,
        &["barrier.rating = 2 hr", "coating.wet_thickness = 1/16 in."],
    );
    assert_eq!(verdict(&result, "3B/1"), support::NOT_MET);
    // With nothing known of either, the joint still isn't closed by it.
    let result = check(&listing, &["barrier.rating = 2 hr"]);
    assert_eq!(verdict(&result, "option/3B"), open(OptionUnknown));
    assert_ne!(result.overall, Overall::Conforms);
}

#[test]
fn an_optional_item_is_one_question() {
    let listing = listing(
        &[
            "packing.depth: at least 1 in. ; item 3A",
            "beam.depth: at least 10 in. ; item 4A",
            "beam.weight: at least 22 lb/ft ; item 4A",
        ],
        vec![optional("4")],
    );
    let mut listing = listing;
    listing.items.push(support::an_item("4"));
    let packed = "packing.depth = 2 in.";

    let unknown = check(&listing, &[packed]);
    assert_eq!(verdict(&unknown, "option/4"), open(OptionUnknown));
    assert_eq!(verdict(&unknown, "4A/1"), not_applicable(NotBuilt));
    assert_eq!(unknown.assumed[0], "item 4 is not built");
    let questions = conformance::questions([&unknown]);
    assert!(
        questions
            .iter()
            .any(|question| question.property == "option.4")
    );

    for (stated, question, clause) in [
        ("option.4 = no", None, not_applicable(NotBuilt)),
        ("option.4 = yes", None, open(conformance::Reason::NoFact)),
    ] {
        let result = check(&listing, &[packed, stated]);
        assert_eq!(result.finding("option/4"), question);
        assert_eq!(verdict(&result, "4A/1"), clause, "{stated}");
    }
    // Whether it is built makes no difference where all of it is met.
    let result = check(
        &listing,
        &[packed, "beam.depth = 12 in.", "beam.weight = 30 lb/ft"],
    );
    assert!(result.finding("option/4").is_none());
    assert_eq!(verdict(&result, "4A/1"), support::MET);
    // A person may say so.
    let decided = [judgment(
        "4",
        "not built",
        Decision::Accepted,
        "no beam crosses",
    )];
    let result = check_with(&listing, &[packed], &decided);
    assert!(result.finding("option/4").is_none());
    let decided = [judgment(
        "option/4",
        "",
        Decision::Accepted,
        "no beam crosses",
    )];
    let result = check_with(&listing, &[packed], &decided);
    assert_eq!(finding(&result, "option/4").verdict, Verdict::Judged);
}

#[test]
fn options_within_options() {
    // 2A or 2A1; within 2A1, 2A1 itself or 2A1X.
    let mut listing = listing(
        &[
            "stud.gauge: at least 25 MSG ; item 2A",
            "runner.gauge: at least 25 MSG ; item 2A1",
            "clip.gauge: at least 18 MSG ; item 2A1X",
        ],
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
    let mut listing = listing(
        &[
            "stud.gauge: at least 25 MSG ; item 2A",
            "runner.gauge: at least 25 MSG ; item 2A1 ; option 2A1",
            "clip.gauge: at least 18 MSG ; item 2A1X ; option 2A1 & 2A1X",
        ],
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

/// What a clause will be found to be: met, not met, or open for want of a fact.
#[derive(Debug, Clone, Copy)]
enum Fate {
    Met,
    NotMet,
    Open,
}

fn fates() -> impl Strategy<Value = Vec<Fate>> {
    proptest::collection::vec(
        prop_oneof![Just(Fate::Met), Just(Fate::NotMet), Just(Fate::Open)],
        0..4,
    )
}

/// Groups of choices of clauses.
fn groups() -> impl Strategy<Value = Vec<Vec<Vec<Fate>>>> {
    proptest::collection::vec(proptest::collection::vec(fates(), 1..4), 1..4)
}

/// A listing with these groups, and the facts that bring the fates about.
fn build(groups: &[Vec<Vec<Fate>>]) -> (Reading, Vec<String>) {
    let mut lines = Vec::new();
    let mut facts = Vec::new();
    let mut options = Vec::new();
    for (group, choices) in groups.iter().enumerate() {
        let names: Vec<String> = (0..choices.len())
            .map(|choice| format!("G{group} way {choice}"))
            .collect();
        for (choice, fates) in choices.iter().enumerate() {
            for (at, fate) in fates.iter().enumerate() {
                let property = format!("local.g{group}c{choice}n{at}");
                lines.push(format!(
                    "{property}: at least 1 in. ; option {}",
                    names[choice]
                ));
                match fate {
                    Fate::Met => facts.push(format!("{property} = 2 in.")),
                    Fate::NotMet => facts.push(format!("{property} = 1/2 in.")),
                    Fate::Open => {}
                }
            }
        }
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        let mut group_of = configurations(&names);
        group_of.id = format!("G{group}");
        options.push(group_of);
    }
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    (listing(&lines, options), facts)
}

/// What a combination of choices comes to: choices nothing is known of, clauses not met, clauses open.
fn cost(groups: &[Vec<Vec<Fate>>], combination: &[usize]) -> (usize, usize, usize) {
    let mut cost = (0, 0, 0);
    for (choices, &choice) in groups.iter().zip(combination) {
        let fates = &choices[choice];
        let count = |wanted: fn(&Fate) -> bool| fates.iter().filter(|fate| wanted(fate)).count();
        let open = count(|fate| matches!(fate, Fate::Open));
        cost.0 += usize::from(open == fates.len());
        cost.1 += count(|fate| matches!(fate, Fate::NotMet));
        cost.2 += open;
    }
    cost
}

/// Every combination of one choice of each group.
fn combinations(groups: &[Vec<Vec<Fate>>]) -> Vec<Vec<usize>> {
    let mut all = vec![Vec::new()];
    for choices in groups {
        let longer = |shorter: &Vec<usize>, choice| {
            let mut longer = shorter.clone();
            longer.push(choice);
            longer
        };
        all = all
            .iter()
            .flat_map(|shorter| (0..choices.len()).map(move |choice| longer(shorter, choice)))
            .collect();
    }
    all
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Choosing in each group alone finds the best of all combinations.
    #[test]
    fn the_best_of_each_group_is_the_best_of_all(groups in groups()) {
        let (listing, facts) = build(&groups);
        let facts: Vec<&str> = facts.iter().map(String::as_str).collect();
        let result = check(&listing, &facts);
        let chosen: Vec<usize> = groups
            .iter()
            .zip(&result.chosen)
            .map(|(choices, chosen)| {
                let name = chosen.choice.as_deref().unwrap();
                (0..choices.len()).find(|choice| name.ends_with(&format!("way {choice}"))).unwrap()
            })
            .collect();
        let best = combinations(&groups).into_iter().min_by_key(|one| cost(&groups, one)).unwrap();
        prop_assert_eq!(cost(&groups, &chosen), cost(&groups, &best));
        // Of equals the first in the listing.
        prop_assert_eq!(chosen, best);
    }
}
