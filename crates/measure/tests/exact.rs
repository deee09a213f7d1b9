//! Products and sums against a general-purpose library of ratios.

use measure::Number;
use num_rational::Ratio;
use proptest::prelude::*;

fn parts() -> impl Strategy<Value = (i128, i128)> {
    let small = (-2000_i128..2000, 1_i128..400);
    let large = (
        -1_000_000_000_000_000_i128..1_000_000_000_000_000,
        1_i128..1_000_000_000_000_000,
    );
    prop_oneof![small, large]
}

fn same(number: Option<Number>, expected: Ratio<i128>) -> bool {
    number.is_some_and(|number| {
        (number.numerator(), number.denominator()) == (*expected.numer(), *expected.denom())
    })
}

proptest! {
    /// Whatever way it is worked out, a product is the exact one in lowest terms.
    #[test]
    fn products_and_sums_are_exact((a, b) in parts(), (c, d) in parts(), (e, f) in parts()) {
        let number = |n, d| Number::new(n, d).expect("within the limit");
        let ratio = Ratio::new;
        prop_assert!(same(number(a, b).times(number(c, d)), ratio(a, b) * ratio(c, d)));
        prop_assert!(same(number(a, b).plus(number(c, d)), ratio(a, b) + ratio(c, d)));
        prop_assert!(same(number(a, b).plus(Number::ZERO), ratio(a, b)));
        // Of three large ones the product may be too large: none then, and never another.
        let three = number(a, b).times(number(c, d)).and_then(|two| two.times(number(e, f)));
        if let Some(three) = three {
            let back = three.over(number(e, f).times(number(c, d)).unwrap_or(Number::ONE));
            prop_assert!(e == 0 || c == 0 || back.is_none_or(|back| same(Some(back), ratio(a, b))));
        }
    }
}
