//! What is printed reads back the same, what converts converts back, and no text makes a panic.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

use measure::{Number, Quantity, Unit, notation, print};
use proptest::prelude::*;

fn units() -> impl Strategy<Value = Unit> {
    let printed = [
        Unit::Inch,
        Unit::Foot,
        Unit::Mil,
        Unit::Millimetre,
        Unit::Metre,
        Unit::PoundPerCubicFoot,
        Unit::KilogramPerCubicMetre,
        Unit::Percent,
        Unit::Hour,
        Unit::Minute,
        Unit::Fahrenheit,
        Unit::Celsius,
        Unit::CfmPerFoot,
        Unit::Pascal,
        Unit::Gauge,
    ];
    prop::sample::select(printed.to_vec())
}

proptest! {
    #[test]
    fn a_number_takes_some_of_its_text(text in "[0-9.,/ ½¼⁄\"' -]{0,14}(mm|in\\.|ft|%)?") {
        for (at, _) in text.char_indices() {
            if let Some((_, end)) = notation::numeral_at(&text, at) {
                prop_assert!(end > at, "`{text}` at {at}");
            }
            if let Some(stated) = notation::quantity_at(&text, at) {
                prop_assert!(stated.span.end > at, "`{text}` at {at}");
            }
        }
    }
}

#[test]
fn the_end_of_a_date_is_no_number() {
    assert!(notation::numeral_at(".12.2012", 0).is_none());
    assert!(notation::numeral_at(".12", 0).is_some());
}

proptest! {
    #[test]
    fn printed_quantities_read_back(sixteenths in 1_i128..100_000, unit in units()) {
        let whole = matches!(unit, Unit::Gauge);
        let number = if whole { Number::new(sixteenths % 40 + 1, 1) } else { Number::new(sixteenths, 16) }.unwrap();
        let quantity = Quantity::new(number, unit);
        prop_assert_eq!(Quantity::parse(&print::trade(quantity)).unwrap(), quantity);
    }

    #[test]
    fn conversions_convert_back(over in -1_000_000_i128..1_000_000, under in 1_i128..1000, from in 0..Unit::ALL.len(), to in 0..Unit::ALL.len()) {
        let (from, to) = (Unit::ALL[from], Unit::ALL[to]);
        let quantity = Quantity::new(Number::new(over, under).unwrap(), from);
        if let Some(there) = quantity.to(to) {
            prop_assert_eq!(there.to(from).unwrap(), quantity);
            prop_assert_eq!(there.compare(quantity), Some(core::cmp::Ordering::Equal));
        } else {
            prop_assert_ne!(from.dimension(), to.dimension());
        }
    }

    #[test]
    fn any_text_is_read_or_refused(text in any::<String>(), at in 0_usize..40) {
        let _ = Quantity::parse(&text);
        if let Some((_, end)) = notation::numeral_at(&text, at) {
            prop_assert!(text.get(at..end).is_some());
        }
        if let Some(stated) = notation::quantity_at(&text, at) {
            prop_assert!(text.get(stated.span).is_some());
        }
        let _ = notation::unit_at(&text, at);
    }

    #[test]
    fn order_is_the_same_in_every_unit(a in 1_i128..10_000, b in 1_i128..10_000) {
        let inches = |n| Quantity::new(Number::new(n, 64).unwrap(), Unit::Inch);
        let (x, y) = (inches(a), inches(b));
        prop_assert_eq!(x.compare(y), Some(a.cmp(&b)));
        prop_assert_eq!(x.to(Unit::Millimetre).unwrap().compare(y), Some(a.cmp(&b)));
    }
}
