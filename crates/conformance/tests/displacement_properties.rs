//! What must hold of a movement stated as a length, whatever the numbers.
//!
//! Movement is tested as a percentage of the installed nominal width (UL 2079, ASTM E1966): a length asks for more of a
//! narrower joint.

#![allow(
    clippy::unwrap_used,
    reason = "a case that isn't written right must fail"
)]

mod support;

use conformance::{Finding, Verdict};
use engineering::movement::{EnvelopeAsked, envelope};
use engineering::{Known, Readings, Standing};
use measure::{Number, Quantity, Unit};
use proptest::prelude::*;
use support::{check, finding, movement, reading};

fn inches() -> impl Strategy<Value = Number> {
    (
        1_i128..400,
        prop::sample::select(vec![4_i128, 8, 16, 32, 10]),
    )
        .prop_map(|(over, under)| Number::new(over, under).unwrap())
}

/// The share at a joint with readings of its width in inches, and the verdict.
fn at(moves: Number, widths: &[Number]) -> Finding {
    let written = |number: &Number| format!("{} in.", number.to_decimal(5));
    let readings: Vec<String> = widths.iter().map(written).collect();
    let facts = [
        "joint.movement_class = II <- drawing S".to_owned(),
        format!(
            "joint.closing_displacement = {} <- drawing S",
            written(&moves)
        ),
        format!(
            "joint.width = {} <- measured 1/64 in.: {}",
            written(widths.first().unwrap()),
            readings.join(", ")
        ),
    ];
    let facts: Vec<&str> = facts.iter().map(String::as_str).collect();
    let mut listing = reading(&["packing.depth: at least 1 in."]);
    listing.header.movement = vec![movement("II either 25")];
    finding(&check(&listing, &facts), "header/movement-compression").clone()
}

const fn rank(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Met => 0,
        Verdict::Open => 1,
        _ => 2,
    }
}

proptest! {
    /// A narrower width as found never lowers the percentage needed, nor betters the verdict.
    #[test]
    fn narrower_never_needs_less(movement in inches(), one in inches(), other in inches()) {
        let (narrow, wide) = (one.min(other), one.max(other));
        let narrower = at(movement, &[narrow]);
        let wider = at(movement, &[wide]);
        let share = |found: &Finding| found.explanation.share.clone().unwrap();
        let (of_narrow, of_wide) = (share(&narrower), share(&wider));
        prop_assert!(of_narrow.percent.number >= of_wide.percent.number);
        prop_assert!(of_narrow.least.number >= of_wide.least.number);
        prop_assert!(of_narrow.greatest.number >= of_wide.greatest.number);
        prop_assert!(rank(narrower.verdict) >= rank(wider.verdict));
        // Exact: the percentage times the width is the length.
        let back = of_narrow.percent.number.times(narrow).unwrap().over(Number::whole(100));
        prop_assert_eq!(back, Some(movement));
    }

    /// The check and the envelope of widths are one rule: on the same facts neither passes what the other doesn't.
    #[test]
    fn the_envelope_says_the_same(moves in inches(), widths in prop::collection::vec(inches(), 1..4), drawn in inches()) {
        let quantity = |number: &Number| Quantity::new(*number, Unit::Inch);
        let known = |quantity| Known::new(quantity, "test");
        let percent = |number: i32| Quantity::new(Number::whole(number), Unit::Percent);
        let asked = EnvelopeAsked {
            found: Readings::new(
                widths.iter().map(quantity).collect(),
                Some(Quantity::parse("1/64 in.").unwrap()),
                "test",
            ),
            nominal: known(quantity(&drawn)),
            closing: known(quantity(&moves)),
            opening: known(Quantity::new(Number::ZERO, Unit::Inch)),
            compression: Some(known(percent(25))),
            extension: None,
        };
        let by_envelope = envelope(&asked).unwrap().value.by_width;
        let expected = match at(moves, &widths).verdict {
            Verdict::Met => Standing::Met,
            Verdict::NotMet => Standing::NotMet,
            _ => Standing::Open,
        };
        prop_assert_eq!(by_envelope, expected);
    }

    /// Another reading never lowers the percentage needed, and the order of the readings is nothing.
    #[test]
    fn another_reading_never_needs_less(movement in inches(), widths in prop::collection::vec(inches(), 1..5), more in inches()) {
        let share = |widths: &[Number]| at(movement, widths).explanation.share.unwrap();
        let before = share(&widths);
        let mut all = widths.clone();
        all.push(more);
        prop_assert!(share(&all).percent.number >= before.percent.number);
        let mut turned = widths;
        turned.reverse();
        prop_assert_eq!(share(&turned).percent, before.percent);
    }
}
