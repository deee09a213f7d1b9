//! Choosing among a listing's options.

#![allow(
    clippy::indexing_slicing,
    reason = "a case that isn't written right must fail"
)]

mod least;
mod of_several;
#[path = "../support/mod.rs"]
mod support;

use conformance::Reason::{NotBuilt, NotChosen, OptionUnknown};
use conformance::{How, JointResult, Overall, Verdict};
use listing::{OptionGroup, Reading};
use site::Decision;
use support::{
    alternates, check, check_with, finding, judgment, not_applicable, open, optional, reading,
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
