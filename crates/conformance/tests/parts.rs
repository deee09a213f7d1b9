//! Several parts of one kind in one listing: a fact must say of which it is known (common practice: a floor runner and a ceiling
//! runner are two lines of a submittal).

#![allow(
    clippy::indexing_slicing,
    reason = "a case that isn't written right must fail"
)]

mod support;

use conformance::Reason::{NoFact, WhichPart};
use listing::{Item, Reading, Span};
use support::{MET, NOT_MET, alternates, check, finding, open, reading};

/// A listing whose items have titles: each a path, a title and the path of the item around it.
fn titled(lines: &[&str], items: &[(&str, &str, Option<&str>)]) -> Reading {
    let mut listing = reading(lines);
    listing.items = items
        .iter()
        .map(|(path, title, parent)| Item {
            path: (*path).to_owned(),
            title: (*title).to_owned(),
            span: Span::new(0, 0),
            option: None,
            parent: parent.map(str::to_owned),
        })
        .collect();
    listing
}

fn two_runners() -> Reading {
    titled(
        &[
            "runner.gauge: at least 25 MSG ; item 2A",
            "runner.gauge: at least 20 MSG ; item 2B",
        ],
        &[
            ("2", "WALL", None),
            ("2A", "FLOOR RUNNER", Some("2")),
            ("2B", "CEILING RUNNER", Some("2")),
        ],
    )
}

fn verdicts(listing: &Reading, facts: &[&str]) -> Vec<(conformance::Verdict, conformance::Reason)> {
    let result = check(listing, facts);
    listing
        .clauses
        .iter()
        .map(|clause| {
            let found = finding(&result, &clause.id);
            (found.verdict, found.explanation.reason)
        })
        .collect()
}

#[test]
fn one_value_for_two_parts_shows_nothing() {
    let found = verdicts(&two_runners(), &["runner.gauge = 16 MSG"]);
    assert_eq!(found, [open(WhichPart), open(WhichPart)]);
    // Nor does it show that either fails.
    let found = verdicts(&two_runners(), &["runner.gauge = 25 MSG"]);
    assert_eq!(found, [open(WhichPart), open(WhichPart)]);
}

#[test]
fn a_condition_on_a_property_of_two_parts_is_of_neither() {
    let listing = titled(
        &[
            "board.layers: at least 1 ; item 2A",
            "board.layers: at least 1 ; item 2B",
            "sealant.depth: at least 5/8 in. ; item 3 ; if board.layers = 2",
        ],
        &[
            ("2", "WALL", None),
            ("2A", "GYPSUM BOARD", Some("2")),
            ("2B", "GYPSUM BOARD LINER", Some("2")),
            ("3", "SEALANT", None),
        ],
    );
    for layers in ["1", "2"] {
        let fact = format!("board.layers = {layers}");
        let found = verdicts(&listing, &[&fact, "sealant.depth = 5/8 in."]);
        assert_eq!(found[2], open(WhichPart), "{layers}");
    }
}

/// A property of one part before that of two must not hide it.
#[test]
fn a_condition_on_several_properties_is_looked_through() {
    let listing = titled(
        &[
            "board.layers: at least 1 ; item 2A",
            "board.layers: at least 1 ; item 2B",
            "stud.width: at least 3-5/8 in. ; item 2C",
            "stud.width: at least 2-1/2 in. ; item 2D",
            "sealant.depth: at least 5/8 in. ; item 3 ; if stud.width = 3-5/8 in. and board.layers = 2",
        ],
        &[
            ("2", "WALL", None),
            ("2A", "GYPSUM BOARD", Some("2")),
            ("2B", "GYPSUM BOARD LINER", Some("2")),
            ("2C", "STUDS", Some("2")),
            ("2D", "STUDS OF THE LINER", Some("2")),
            ("3", "SEALANT", None),
        ],
    );
    let facts = [
        "board.layers = 2",
        "stud.width = 3-5/8 in.",
        "2D:stud.width = 2-1/2 in.",
        "sealant.depth = 5/8 in.",
    ];
    assert_eq!(verdicts(&listing, &facts)[4], open(WhichPart));
}

#[test]
fn a_value_may_name_its_item() {
    let found = verdicts(
        &two_runners(),
        &["2A:runner.gauge = 25 MSG", "2B:runner.gauge = 25 MSG"],
    );
    assert_eq!(found, [MET, NOT_MET]);
}

#[test]
fn the_last_part_that_no_value_names_has_the_other() {
    let found = verdicts(
        &two_runners(),
        &["2A:runner.gauge = 25 MSG", "runner.gauge = 20 MSG"],
    );
    assert_eq!(found, [MET, MET]);
}

#[test]
fn what_is_said_elsewhere_of_one_part_is_of_that_part() {
    // Item 3 isn't about runners: what it asks holds of whatever runner there is.
    let listing = titled(
        &[
            "runner.leg_length: at least 2 in. ; item 2A",
            "runner.leg_length: at least 3 in. ; item 3",
        ],
        &[("2A", "CEILING RUNNER", None), ("3", "JOINT", None)],
    );
    let found = verdicts(&listing, &["runner.leg_length = 2-1/2 in."]);
    assert_eq!(found, [MET, NOT_MET]);
}

#[test]
fn an_item_within_an_item_describes_the_same_part() {
    let listing = titled(
        &[
            "packing.density: nominal 4 pcf ; item 3A",
            "packing.depth: at least 4 in. ; item 3A1",
        ],
        &[("3A", "PACKING", None), ("3A1", "Depth", Some("3A"))],
    );
    let found = verdicts(
        &listing,
        &["packing.density = 4 pcf", "packing.depth = 4 in."],
    );
    assert_eq!(found, [MET, MET]);
}

#[test]
fn alternates_are_one_part_or_the_other() {
    let mut listing = titled(
        &[
            "runner.leg_length: at least 2 in. ; item 2A",
            "runner.slot_length: at least 1 in. ; item 2A1",
            "runner.leg_length: at least 2 in. ; item 2A1",
        ],
        &[
            ("2A", "CEILING RUNNER", None),
            ("2A1", "SLOTTED RUNNER", Some("2A")),
        ],
    );
    listing.options = vec![alternates("2A", &["2A", "2A1"])];
    let result = check(
        &listing,
        &["option.2A = 2A", "runner.leg_length = 2-1/2 in."],
    );
    let found = finding(&result, "2A/1");
    assert_eq!((found.verdict, found.explanation.reason), MET);
}

#[test]
fn each_item_has_its_own_fasteners() {
    let listing = titled(
        &[
            "fastener.spacing: at most 24 in. ; item 2A",
            "fastener.spacing: at most 12 in. ; item 2C",
        ],
        &[("2A", "FLOOR RUNNER", None), ("2C", "GYPSUM BOARD", None)],
    );
    let found = verdicts(&listing, &["fastener.spacing = 12 in."]);
    assert_eq!(found, [open(WhichPart), open(WhichPart)]);
    let found = verdicts(
        &listing,
        &[
            "2A:fastener.spacing = 16 in.",
            "2C:fastener.spacing = 12 in.",
        ],
    );
    assert_eq!(found, [MET, MET]);
}

#[test]
fn the_finding_says_how_to_name_the_part() {
    let result = check(&two_runners(), &["runner.gauge = 16 MSG"]);
    let explanation = &finding(&result, "2B/1").explanation;
    assert_eq!(
        explanation.requirement,
        "a value of its own, as `2B:runner.gauge`"
    );
    assert!(
        explanation
            .sentence
            .starts_with("Item 2A and item 2B describe each their own"),
        "{}",
        explanation.sentence
    );
}

#[test]
fn an_undecided_part_leaves_the_value_to_no_other() {
    let listing = titled(
        &[
            "runner.gauge: at least 25 MSG ; item 2A",
            "runner.gauge: at least 20 MSG ; item 2B ; if wall.height > 12 ft",
        ],
        &[("2A", "FLOOR RUNNER", None), ("2B", "CEILING RUNNER", None)],
    );
    let found = verdicts(&listing, &["runner.gauge = 20 MSG"]);
    assert_eq!(found[0], open(WhichPart));
}

#[test]
fn a_value_of_the_item_around_is_of_no_part() {
    let found = verdicts(&two_runners(), &["2:runner.gauge = 16 MSG"]);
    assert_eq!(found, [open(NoFact), open(NoFact)]);
}

#[test]
fn a_clause_on_any_part_needs_to_know_which() {
    let listing = titled(
        &[
            "runner.gauge: at least 25 MSG ; item 2A",
            "runner.gauge: at least 20 MSG ; item 2B",
            "runner.gauge: at least 18 MSG ; item 3",
        ],
        &[
            ("2A", "FLOOR RUNNER", None),
            ("2B", "CEILING RUNNER", None),
            ("3", "JOINT", None),
        ],
    );
    let found = verdicts(&listing, &["runner.gauge = 16 MSG"]);
    assert_eq!(found[2], open(WhichPart));
}
