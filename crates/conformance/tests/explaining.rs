//! What an explanation says. Its wording is behaviour.

mod support;

use conformance::{Ask, Explanation, Standing, questions};
use support::{check, finding, reading};
use vocabulary::{Stage, Trade};

fn explained(clause: &str, facts: &[&str]) -> Explanation {
    finding(&check(&reading(&[clause]), facts), "1/1")
        .explanation
        .clone()
}

#[track_caller]
fn check_sentence(clause: &str, facts: &[&str], sentence: &str) {
    assert_eq!(explained(clause, facts).sentence, sentence);
}

#[test]
fn a_comparison_in_both_systems() {
    let found = explained(
        "packing.depth: at least 4 in.",
        &["packing.depth = 3-1/2 in."],
    );
    assert_eq!(
        found.sentence,
        "Packing depth is 3-1/2 in. (88.9 mm); the listing asks for at least 4 in. (101.6 mm)."
    );
    assert_eq!(found.requirement, "at least 4 in. (101.6 mm)");
    let margin = found.margin.unwrap();
    assert_eq!(
        (
            margin.quantity.number.to_string().as_str(),
            margin.words.as_str()
        ),
        ("-1/2", "1/2 in. (12.7 mm) short")
    );
    let fact = found.fact.unwrap();
    assert_eq!(
        (fact.value.as_str(), fact.provenance.as_str()),
        ("3-1/2 in. (88.9 mm)", "witnessed")
    );
}

#[test]
fn margins() {
    for (clause, fact, words) in [
        (
            "board.gap: at most 1 in.",
            "board.gap = 7/8 in.",
            "1/8 in. (≈ 3.2 mm) to spare",
        ),
        (
            "board.gap: at most 1 in.",
            "board.gap = 1-1/4 in.",
            "1/4 in. (≈ 6.4 mm) over",
        ),
        (
            "stud.gauge: at least 25 MSG",
            "stud.gauge = 20 gauge",
            "5 gauge numbers to spare",
        ),
        (
            "stud.gauge: at least 20 MSG",
            "stud.gauge = 25 gauge",
            "5 gauge numbers too light",
        ),
        (
            "packing.depth: at least 4 in.",
            "packing.depth = 4 in.",
            "exactly at the limit",
        ),
        (
            "stud.gauge: at least 20 MSG",
            "stud.gauge = 20 gauge",
            "exactly at the limit",
        ),
        // What is open has nothing to spare.
        (
            "packing.depth: at least 4 in.",
            "packing.depth = 5 in. <- drawing A",
            "1 in. (25.4 mm) within the limit",
        ),
        (
            "packing.depth: at least 4 in.",
            "packing.depth = 4-1/64 in. <- measured 1/16 in.",
            "1/64 in. (≈ 0.4 mm) within the limit",
        ),
        (
            "packing.depth: at least 4 in.",
            "packing.depth = 4 in. <- measured 1/16 in.",
            "exactly at the limit",
        ),
        (
            "stud.spacing: bare 16 in.",
            "stud.spacing = 15 in. <- measured 1/8 in.",
            "1 in. (25.4 mm) less than that",
        ),
        (
            "joint.movement_compression: between 10 percent and 25 percent",
            "joint.movement_compression = 20 % <- drawing S",
            "10 % over",
        ),
        // A difference of temperatures is a rise: 18 °F of it is 10 K, not -7.8 °C.
        (
            "coating.application_temperature: at least 40 °F",
            "coating.application_temperature = 58 °F",
            "18 °F rise (10 K rise) to spare",
        ),
        (
            "packing.density: nominal 3 pcf",
            "packing.density = 6 pcf",
            "3 pcf (≈ 48 kg/m³) more than that",
        ),
    ] {
        assert_eq!(
            explained(clause, &[fact]).margin.unwrap().words,
            words,
            "{clause}"
        );
    }
}

#[test]
fn what_is_missing_and_who_can_supply_it() {
    let found = explained("packing.depth: at least 4 in. (102 mm)", &[]);
    assert_eq!(
        found.sentence,
        "Nobody has shown the packing depth; the listing asks for at least 4 in. (102 mm)."
    );
    let missing = found.missing.unwrap();
    assert_eq!(
        (missing.ask, missing.trade),
        (Ask::Value, Some(Trade::Firestop))
    );
    assert!(
        missing
            .help
            .starts_with("State the packing depth and where it is known from. It can be seen ")
    );

    let wet = explained("coating.wet_thickness: at least 1/8 in.", &[])
        .missing
        .unwrap();
    assert_eq!(
        (wet.until, wet.trade),
        (Some(Stage::Wet), Some(Trade::Firestop))
    );
    assert!(
        wet.help.ends_with("It can be seen while wet."),
        "{}",
        wet.help
    );
}

#[test]
fn a_reading_that_decided() {
    let found = explained(
        "board.gap: at most 1 in.",
        &["board.gap = 7/8 in. <- measured 1/16 in.: 7/8 in., 1-1/16 in., 3/4 in."],
    );
    let fact = found.fact.unwrap();
    assert_eq!(fact.value, "1-1/16 in. (≈ 27 mm)");
    assert_eq!(
        fact.readings.unwrap().words,
        "3 readings, 3/4 in. to 1-1/16 in., mean ≈ 0.896 in.; 1-1/16 in. decided"
    );
}

#[test]
fn sentences() {
    check_sentence(
        "packing.depth: at least 4 in.",
        &["packing.depth = 4 in. <- measured 1/16 in."],
        "Packing depth is 4 in. (101.6 mm); the listing asks for at least 4 in. (101.6 mm). That is closer to 4 in. (101.6 mm) \
         than the instrument can tell: it may be 1/32 in. off.",
    );
    check_sentence(
        "stud.spacing: bare 16 in. (406 mm)",
        &["stud.spacing = 15-1/2 in."],
        "Stud spacing is 15-1/2 in. (393.7 mm); the listing asks for 16 in. (406 mm). That is 1/2 in. (12.7 mm) less, and no \
         tolerance of a cited standard covers it: a person must judge.",
    );
    check_sentence(
        "packing.compression: at least 33 percent",
        &["packing.compression = 40 percent <- drawing A-801"],
        "Packing compression is 40 %; the listing asks for at least 33 %. So says drawing A-801, but nobody has seen what is built.",
    );
    check_sentence(
        "packing.depth: at least 1 in. ; if joint.rating = 1 hr",
        &["barrier.rating = 2 hr"],
        "Applies \"if joint.rating = 1 hr\"; the rating that applies here is 2 hr.",
    );
    check_sentence(
        "stud.attached_to_runner: absent",
        &["stud.attached_to_runner = yes"],
        "Stud attached to runner: yes; the listing rules it out.",
    );
    check_sentence(
        "board.layers: bare 2",
        &["board.layers = 3"],
        "Board layers are 3; the listing asks for 2.",
    );
    check_sentence(
        "stud.gauge: at least 25 MSG",
        &["stud.gauge = 28 gauge"],
        "Stud gauge is 28 gauge; the listing asks for 25 gauge or heavier.",
    );
}

#[test]
fn a_conflict_is_said() {
    let found = explained("board.gap: at most 5/8 in. (32 mm)", &["board.gap = 30 mm"]);
    assert_eq!(found.requirement, "at most 5/8 in. (stated also as 32 mm)");
    assert!(found.notes[0].contains("in conflict"));
}

#[test]
fn a_draft_says_that_it_is_one() {
    let result = check(&reading(&["packing.depth: at least 4 in."]), &[]);
    assert_eq!(result.standing, Standing::Provisional);
    let json = serde_json::to_value(&result).unwrap();
    assert_eq!(json["standing"], "provisional");
    assert_eq!(json["findings"][0]["explanation"]["clause"], "header/kind");
}

#[test]
fn questions_by_trade_then_stage_then_property() {
    let listing = reading(&[
        "coating.wet_thickness: at least 1/8 in.",
        "packing.depth: at least 4 in.",
        "stud.spacing: at most 24 in.",
        "packing.seams: prose ; words Seams tightly butted.",
    ]);
    let first = check(&listing, &[]);
    let mut second = check(&listing, &["stud.spacing = 16 in."]);
    second.joint = "J2".to_owned();
    let asked = questions([&first, &second]);
    let seen: Vec<_> = asked
        .iter()
        .map(|one| (one.trade, one.property.as_str(), one.concerns.len()))
        .collect();
    assert_eq!(
        seen,
        questions([&first, &second])
            .iter()
            .map(|one| (one.trade, one.property.as_str(), one.concerns.len()))
            .collect::<Vec<_>>()
    );
    let find = |property: &str| {
        asked
            .iter()
            .find(|question| question.property == property)
            .unwrap()
    };
    assert_eq!(
        find("packing.depth").sentence,
        "What is the packing depth at J1 and J2?"
    );
    assert_eq!(find("packing.depth").concerns.len(), 2);
    assert_eq!(
        find("stud.spacing").sentence,
        "What is the stud spacing at J1?"
    );
    assert_eq!(
        find("packing.seams").sentence,
        "Is this met at J1 and J2? \"Seams tightly butted.\""
    );
    let place = |property: &str| {
        asked
            .iter()
            .position(|question| question.property == property)
            .unwrap()
    };
    // Design before framing before firestop; while placing before wet.
    assert!(place("barrier.rating") < place("stud.spacing"));
    assert!(place("stud.spacing") < place("packing.depth"));
    assert!(place("packing.depth") < place("coating.wet_thickness"));
}

#[test]
fn what_comes_out_has_a_schema() {
    let schema = schemars::schema_for!(conformance::JointResult);
    let schema = serde_json::to_value(schema).unwrap();
    assert!(schema["properties"]["findings"].is_object());
    for schema in [
        schemars::schema_for!(conformance::Question),
        schemars::schema_for!(conformance::Change),
    ] {
        assert!(schema.get("properties").is_some());
    }
}

#[test]
fn a_rating_that_just_reaches() {
    let result = support::check(&support::reading(&[]), &["barrier.rating = 2 hr"]);
    let found = &support::finding(&result, "header/rating").explanation;
    assert_eq!(found.margin.as_ref().unwrap().words, "exactly at the limit");
    let result = support::check(&support::reading(&[]), &["barrier.rating = 3 hr"]);
    let found = &support::finding(&result, "header/rating").explanation;
    assert_eq!(found.margin.as_ref().unwrap().words, "1 hr short");
}
