//! What words of the trade mean.

#![allow(clippy::panic, reason = "a failed expectation is the point of a test")]

use vocabulary::{GlossaryAnswer, vocabulary};

fn titles(term: &str) -> Vec<String> {
    match vocabulary().glossary(term) {
        GlossaryAnswer::Found(entries) => entries
            .iter()
            .map(|entry| format!("{}: {}", entry.kind(), entry.title()))
            .collect(),
        GlossaryAnswer::Unknown { suggestions } => {
            panic!("{term} is unknown; near: {suggestions:?}")
        }
    }
}

fn suggestions(term: &str) -> Vec<&'static str> {
    match vocabulary().glossary(term) {
        GlossaryAnswer::Found(entries) => panic!("{term} is known: {entries:?}"),
        GlossaryAnswer::Unknown { suggestions } => suggestions,
    }
}

#[test]
fn a_component_is_found_by_any_of_its_nouns() {
    assert_eq!(titles("forming material"), ["component: Packing"]);
    assert_eq!(titles("Stone-Wool Slab"), ["component: Packing"]);
    assert_eq!(titles("Deep Leg Track"), ["component: Runner"]);
    assert_eq!(titles("SFRM"), ["component: Fireproofing"]);
}

#[test]
fn an_ambiguous_noun_has_each_of_its_meanings() {
    assert_eq!(
        titles("fill, void or cavity material"),
        ["component: Coating", "component: Sealant"]
    );
}

#[test]
fn a_property_is_found_by_name_and_title() {
    assert_eq!(titles("packing.recess"), ["property: Packing recess"]);
    assert_eq!(titles("board gap"), ["property: Board gap"]);
}

#[test]
fn classes_ratings_and_standards_are_found() {
    assert_eq!(titles("Class III"), ["movement class: III"]);
    assert_eq!(titles("I"), ["movement class: I", "rating: Insulation"]);
    assert_eq!(
        titles("F-rating"),
        ["property: F rating", "rating: F rating"]
    );
    assert_eq!(titles("ul 2079"), ["standard: UL 2079"]);
    assert_eq!(titles("e1966"), ["standard: ASTM E1966"]);
    assert_eq!(titles("ULC S115"), ["standard: CAN/ULC-S115"]);
    assert_eq!(titles("WFT"), ["term: Wet film thickness"]);
}

#[test]
fn an_unknown_word_gets_the_nearest_known() {
    assert_eq!(
        suggestions("forming materal").first(),
        Some(&"forming material")
    );
    assert_eq!(
        suggestions("packing.densty").first(),
        Some(&"packing.density")
    );
    assert_eq!(suggestions("qqqqqqqq"), [""; 0]);
}

#[test]
fn every_meaning_is_defined() {
    let nouns = vocabulary().nouns().map(|noun| noun.words);
    for word in nouns.chain(
        vocabulary()
            .properties()
            .map(|property| property.name.as_str()),
    ) {
        let GlossaryAnswer::Found(entries) = vocabulary().glossary(word) else {
            panic!("{word} is unknown")
        };
        assert!(
            entries.iter().all(|entry| !entry.definition().is_empty()),
            "{word}"
        );
    }
}

#[test]
fn a_mistyped_property_gets_the_nearest() {
    let nearest = |name| {
        vocabulary()
            .nearest_property(name)
            .map(|property| property.name.as_str())
    };
    assert_eq!(nearest("packing.densty"), Some("packing.density"));
    assert_eq!(nearest("Board.Layers"), Some("board.layers"));
    assert_eq!(nearest("runner.leg_lenght"), Some("runner.leg_length"));
    assert_eq!(nearest("price"), None);
}
