//! Movement classes against the published table (UL 2079, ASTM E1399; class IV from memory).

#![allow(
    clippy::expect_used,
    reason = "a failed expectation is the point of a test"
)]

use vocabulary::{MovementClass, vocabulary};

fn check(roman: &str, cause: &str, phases: &[(u32, u32)]) {
    let class = vocabulary().movement_class(roman).expect(roman);
    assert_eq!(class.cause, cause, "{roman}");
    let found: Vec<_> = class
        .phases
        .iter()
        .map(|p| (p.cycles, p.per_minute))
        .collect();
    assert_eq!(found, phases, "{roman}");
}

#[test]
fn cycles_and_rates_are_those_published() {
    check("I", "thermal", &[(500, 1)]);
    check("II", "wind sway", &[(500, 10)]);
    check("III", "seismic", &[(100, 30)]);
    check("IV", "combined", &[(100, 30), (400, 10)]);
    assert_eq!(vocabulary().movement_classes().len(), 4);
}

#[test]
fn phases_add_up() {
    assert_eq!(
        vocabulary().movement_class("IV").map(MovementClass::cycles),
        Some(500)
    );
}

#[test]
fn a_class_is_known_by_its_roman_numeral_only() {
    assert!(vocabulary().movement_class("2").is_none());
    assert!(vocabulary().movement_class("V").is_none());
}

#[test]
fn the_words_of_the_property_are_the_classes() {
    let property = vocabulary().property("joint.movement_class").unwrap();
    let words: Vec<_> = property
        .text_values()
        .iter()
        .map(|value| &value.name)
        .collect();
    let classes: Vec<_> = vocabulary()
        .movement_classes()
        .iter()
        .map(|class| &class.roman)
        .collect();
    assert_eq!(words, classes);
}
