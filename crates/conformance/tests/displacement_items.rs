//! What items of a listing say of movement against a length on the width as found, and what is asked where it is open.
//! The figures are those of `displacement.rs`.

#![allow(
    clippy::expect_used,
    reason = "a case that isn't written right must fail"
)]

mod support;

use conformance::Reason::{NoFact, NotOffered, TooClose};
use conformance::{Ask, Reason, Verdict, questions};
use support::{MET, check, movement, open, reading};

const NOT_OFFERED: (Verdict, Reason) = (Verdict::NotMet, NotOffered);
const AS_FOUND: &str = "joint.width = 3/4 in. <- measured 1/16 in.";

/// What an item says of movement: 25 % is offered, 26.7 % is needed.
#[test]
fn an_item_is_held_against_the_length_too() {
    let line = "joint.movement_compression: at most 25 percent";
    let percentage = "joint.movement_compression = 23 % <- drawing S";
    let small = "joint.closing_displacement = 1/8 in. <- drawing S";
    let much = "joint.closing_displacement = 0.2 in. <- drawing S";
    let clause = |facts: &[&str], expected| support::check_verdict(line, facts, expected);
    clause(&[percentage], MET);
    clause(&[percentage, much, AS_FOUND], NOT_OFFERED);
    clause(&[much, AS_FOUND], NOT_OFFERED);
    clause(&[percentage, small, AS_FOUND], MET);
    clause(&[small, AS_FOUND], MET);
    clause(&[small], open(NoFact));
    clause(&["joint.closing_displacement = 0 in. <- drawing S"], MET);
    clause(
        &[
            "joint.closing_displacement = 3/16 in. <- drawing S",
            AS_FOUND,
        ],
        open(TooClose),
    );
    let range = "joint.movement_compression: between 10 percent and 30 percent";
    support::check_verdict(range, &[much, AS_FOUND], open(Reason::Deviates));
    // Less than 25 %: 3/16 in. on 3/4 in. as witnessed is 25 %.
    support::check_verdict(
        "joint.movement_compression: less than 25 percent",
        &[
            "joint.closing_displacement = 3/16 in. <- drawing S",
            "joint.width = 3/4 in. <- witnessed",
        ],
        NOT_OFFERED,
    );
}

#[test]
fn the_questions_ask_for_the_width() {
    let mut listing = reading(&["packing.depth: at least 1 in."]);
    listing.header.movement = vec![movement("II either 25")];
    let facts = [
        "joint.movement_class = II <- drawing S",
        "joint.closing_displacement = 3/16 in. <- drawing S",
        AS_FOUND,
    ];
    let result = check(&listing, &facts);
    let asked = questions([&result]);
    let of_width = asked
        .iter()
        .find(|question| question.property == "joint.width" && question.ask == Ask::FinerReading)
        .expect("the width is asked for");
    assert!(of_width.concerns[0].sentence.contains("3/16 in."));
}
