//! Alternatives from a listing's words to a verdict: a joint built to one of them is decided on that one alone, and one that is built to none
//! doesn't conform.

mod support;

use conformance::Reason::{NotChosen, OptionUnknown};
use conformance::{Overall, Verdict};
use listing::Reading;
use support::{check, finding, not_applicable, open};

fn read(text: &str) -> Reading {
    listing::read_text("alternatives.txt", text)
}

#[track_caller]
fn verdict(listing: &Reading, facts: &[&str], clause: &str) -> (Verdict, conformance::Reason) {
    let result = check(listing, facts);
    let found = finding(&result, clause);
    (found.verdict, found.explanation.reason)
}

const FILLS: &str = "1. Floor - Reinforced concrete.\n\n2. Fill - One of the following:\n   A. Sealant - Min 1/2 in. deep.\n   \
                     B. Coating - Min 1/8 in. wet, lapped min 1 in. onto the floor.\n";

#[test]
fn one_of_a_list_is_decided_on_that_one_alone() {
    let listing = read(FILLS);
    let built = [
        "coating.wet_thickness = 3/16 in.",
        "option.2 = 2B <- drawing A",
    ];
    assert_eq!(verdict(&listing, &built, "2A/1"), not_applicable(NotChosen));
    assert_eq!(verdict(&listing, &built, "2B/1"), support::MET);
    let thin = [
        "coating.wet_thickness = 1/16 in.",
        "option.2 = 2B <- drawing A",
    ];
    assert_eq!(verdict(&listing, &thin, "2B/1"), support::NOT_MET);
    // The other one's value is no way out.
    let both = [
        "coating.wet_thickness = 1/16 in.",
        "sealant.depth = 1/4 in.",
    ];
    let found = check(&listing, &both);
    assert_ne!(found.overall, Overall::Conforms);
    assert!(
        found
            .findings
            .iter()
            .any(|found| found.verdict == Verdict::NotMet)
    );
}

#[test]
fn nothing_known_of_any_of_a_list_leaves_it_open() {
    let result = check(&read(FILLS), &[]);
    assert_ne!(result.overall, Overall::Conforms);
    // A value that two of the list would take tells of neither.
    let walls = read(
        "1. Floor - Reinforced concrete.\n\n2. Wall - One of the following:\n   A. Wall - Min 6 in. thick wall.\n   \
         B. Wall - Min 10 in. thick wall.\n",
    );
    let thick = ["wall.thickness = 8 in."];
    assert_eq!(verdict(&walls, &thick, "option/2"), open(OptionUnknown));
    assert_ne!(check(&walls, &thick).overall, Overall::Conforms);
}

#[test]
fn a_part_that_is_no_choice_stays_required_whatever_is_built() {
    for part in [
        "C. The coating or sealant shall lap min 1 in. onto the wall.",
        "C. Wall Lap - Required with Item 2A, min 1 in. of coating or sealant onto the wall.",
        "C. Wall Lap - With Item 2A the coating laps min 1 in. onto the wall.",
        "C. Laps of the coating min 1 in. onto the wall.",
    ] {
        let listing = read(&format!("{FILLS}   {part}\n"));
        let facts = ["sealant.depth = 3/4 in.", "coating.overlap_wall = 1/2 in."];
        let result = check(&listing, &facts);
        assert_eq!(result.overall, Overall::DoesNotConform, "{part}");
        let without = check(&listing, &["sealant.depth = 3/4 in."]);
        assert_ne!(without.overall, Overall::Conforms, "{part}");
    }
}

#[test]
fn values_of_two_of_a_list_leave_it_open() {
    let listing = read(FILLS);
    let facts = [
        "sealant.depth = 3/4 in.",
        "coating.wet_thickness = 3/16 in.",
        "coating.overlap_floor = 2 in.",
    ];
    assert_eq!(verdict(&listing, &facts, "option/2"), open(OptionUnknown));
    let said = [facts.as_slice(), &["option.2 = 2A <- drawing A"]].concat();
    assert_eq!(verdict(&listing, &said, "2A/1"), support::MET);
}

const RUNNERS: &str = "1. Floor - Reinforced concrete.\n\n2. Wall\n   A. Runner - Min 25 ga, legs min 2 in. long.\n      \
                       A1. Slotted Runner - (Alternate to Item 2A for joints 1 in. wide or less) - Min 20 ga, slots 1-1/2 in. long.\n      \
                       A2. Clips - Spaced max 24 in. OC.\n   B. Studs - Min 25 ga.\n";

#[test]
fn an_alternate_that_is_a_part_of_its_base_spares_the_other_parts() {
    let listing = read(RUNNERS);
    let slotted = ["option.2A = 2A1 <- drawing A", "clip.spacing = 30 in."];
    assert_eq!(
        verdict(&listing, &slotted, "2A/1"),
        not_applicable(NotChosen)
    );
    assert_eq!(verdict(&listing, &slotted, "2A2/1"), support::NOT_MET);
}

#[test]
fn an_alternate_may_not_be_built_beyond_what_it_is_confined_to() {
    let listing = read(RUNNERS);
    let confined = listing
        .clauses
        .iter()
        .find(|clause| clause.property == "joint.width");
    let confined = confined.map_or("", |clause| clause.id.as_str());
    for (width, expected) in [("1 in.", support::MET), ("2 in.", support::NOT_MET)] {
        let width = format!("joint.width = {width}");
        let facts = [width.as_str(), "option.2A = 2A1 <- drawing A"];
        assert_eq!(verdict(&listing, &facts, confined), expected);
    }
}

#[test]
fn a_rating_after_a_citation_lets_no_other_item_fall_away() {
    let listing = read(
        "1. Floor - Concrete, min 4-1/2 in. thick.\n2. Fill\n   A. Coating - Min 1/8 in. wet.\n   \
         B. Sealant - (Alternate to Item 2A, 1 and 3 Hr ratings only) - Min 1/2 in. deep.\n3. Clips - Spaced max 24 in. OC.\n",
    );
    let facts = [
        "option.2A = 2B <- drawing A",
        "concrete.thickness = 3 in.",
        "clip.spacing = 30 in.",
    ];
    assert_eq!(verdict(&listing, &facts, "1/1"), support::NOT_MET);
    assert_eq!(verdict(&listing, &facts, "3/1"), support::NOT_MET);
}

#[test]
fn an_alternate_of_another_configuration_lets_nothing_fall_away() {
    let listing = read(
        "1. Floor - Concrete, min 4-1/2 in. thick.\n\n2. Wall - In Configuration A, studs 24 in. OC max. In Configuration B, studs 16 in. OC max.\n   \
         A. Runner - Min 25 ga.\n   B. Slotted Runner - (Alternate to Item 2A, Configuration A only) - Min 20 ga.\n",
    );
    let facts = [
        "option.2A = 2B <- drawing A",
        "option.configuration = Configuration B <- drawing A",
    ];
    assert_eq!(verdict(&listing, &facts, "option/2A"), open(OptionUnknown));
    assert_ne!(check(&listing, &facts).overall, Overall::Conforms);
}
