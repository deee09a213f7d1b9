//! A schedule of 20,000 joints taken off. Aim: under 2 s on two cores.

#![allow(clippy::unwrap_used, reason = "a benchmark may stop where it fails")]

use divan::Bencher;
use engineering::takeoff::{
    Coating, Fasteners, MarkAsked, Packing, Profile, Run, Sealant, Stock, take_off,
};
use measure::Number;

fn main() {
    divan::main();
}

fn number(over: i128, under: i128) -> Number {
    Number::new(over, under).unwrap()
}

/// Twelve marks, packed, coated, sealed and fastened.
fn marks() -> Vec<MarkAsked> {
    let mark = |at: i128| MarkAsked {
        mark: format!("HW{at}"),
        packing: vec![Packing {
            product: "wool, 4 pcf".to_owned(),
            thickness: number(1 + at % 2, 1),
            strips: 1 + u64::try_from(at % 3).unwrap(),
            cut_width: number(20 + at, 4),
            stock: Stock {
                length: number(48, 1),
                width: number(24, 1),
                kerf: number(1, 8),
            },
            butts_apart: number(24, 1),
        }],
        coatings: vec![Coating {
            product: "joint spray".to_owned(),
            band: number(9, 4),
            wet: number(1, 8),
            faces: 2,
            loss: number(1, 10),
        }],
        sealants: vec![Sealant {
            product: "sealant".to_owned(),
            area: number(1, 4),
            faces: 2,
            package: number(183, 10),
            loss: number(1, 20),
        }],
        profiles: vec![Profile {
            what: "runner".to_owned(),
            rows: 1,
        }],
        fasteners: vec![Fasteners {
            what: "pins".to_owned(),
            spacing: number(16, 1),
            end: number(2, 1),
            at_each: 1,
        }],
    };
    (0..12).map(mark).collect()
}

fn runs() -> Vec<Run> {
    let mut seed = 7_u64;
    let mut next = || {
        seed = seed
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        seed >> 33
    };
    let run = |_| Run {
        mark: usize::try_from(next() % 12).unwrap(),
        storey: format!("L{}", next() % 40),
        length: number(i128::from(400 + next() % 8000), 16),
    };
    (0..20_000).map(run).collect()
}

#[divan::bench]
fn twenty_thousand_joints(bencher: Bencher) {
    let (marks, runs) = (marks(), runs());
    bencher.bench(|| take_off(&marks, &runs).unwrap());
}
