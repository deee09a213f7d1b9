//! Cutting stock against the optimum, and the take-off.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

mod common;

use std::collections::BTreeMap;

use common::{known, n, q};
use engineering::Known;
use engineering::takeoff::{
    Coating, CuttingAsked, Fasteners, Kind, MarkAsked, Packing, Piece, Profile, Run, Sealant,
    SpacingAsked, Stock, cutting, fasteners, take_off,
};
use measure::{Number, Quantity, Unit};
use proptest::prelude::*;

fn pieces(of: &[(&str, u64)]) -> Vec<Piece> {
    of.iter()
        .map(|(length, count)| Piece {
            length: q(length),
            count: *count,
        })
        .collect()
}

/// The paper-roll instance that encyclopedias print for the cutting stock problem: rolls of 5600 mm, thirteen widths, 73 rolls.
#[test]
fn the_published_instance() {
    let widths = [
        (1380, 22),
        (1520, 25),
        (1560, 12),
        (1710, 14),
        (1820, 18),
        (1880, 18),
        (1930, 20),
        (2000, 10),
        (2050, 12),
        (2100, 14),
        (2140, 16),
        (2150, 18),
        (2200, 20),
    ];
    let pieces = widths.iter().map(|(width, count)| Piece {
        length: q(&format!("{width} mm")),
        count: *count,
    });
    let found = cutting(&CuttingAsked {
        stock: known("5600 mm"),
        kerf: None,
        pieces: pieces.collect(),
    })
    .unwrap()
    .value;
    assert_eq!((found.stocks, found.at_least), (73, 73));
    // Published waste: 0.401 %.
    assert_eq!(
        found.waste.times(Number::from(100)).unwrap().to_decimal(3),
        "0.401"
    );
    check_cuts(
        &found.cuts,
        &widths
            .map(|(width, count)| (Number::from(width), count))
            .into(),
        Number::from(5600),
        Number::ZERO,
    );
}

/// Every piece is cut, none twice, and every stock has room for its own.
fn check_cuts(
    cuts: &[engineering::takeoff::Cut],
    wanted: &BTreeMap<Number, u64>,
    stock: Number,
    kerf: Number,
) {
    let mut found: BTreeMap<Number, u64> = BTreeMap::new();
    for cut in cuts {
        let mut used = Number::ZERO;
        let mut count = 0;
        for piece in &cut.pieces {
            *found.entry(piece.length.number).or_default() += piece.count * cut.times;
            let times = Number::from(i32::try_from(piece.count).unwrap());
            used = used
                .plus(piece.length.number.times(times).unwrap())
                .unwrap();
            count += piece.count;
        }
        let cuts = Number::from(i32::try_from(count - 1).unwrap());
        assert!(used.plus(kerf.times(cuts).unwrap()).unwrap() <= stock);
    }
    assert_eq!(&found, wanted);
}

#[test]
fn a_saw_takes_its_share() {
    let ask = |kerf: Option<&str>| CuttingAsked {
        stock: known("24 in."),
        kerf: kerf.map(known),
        pieces: pieces(&[("4 in.", 6)]),
    };
    assert_eq!(cutting(&ask(None)).unwrap().value.stocks, 1);
    assert_eq!(cutting(&ask(Some("1/8 in."))).unwrap().value.stocks, 2);
    let long = CuttingAsked {
        stock: known("24 in."),
        kerf: None,
        pieces: pieces(&[("25 in.", 1)]),
    };
    assert_eq!(
        cutting(&long).unwrap_err().to_string(),
        "the length of a piece is 25 in.; it must be at most the stock, 24 in."
    );
}

/// Best fit puts 4 and 4 together and takes three stocks; 4, 3, 3 twice takes two.
#[test]
fn the_quick_way_is_not_always_the_best() {
    let ask = CuttingAsked {
        stock: known("10 in."),
        kerf: None,
        pieces: pieces(&[("4 in.", 2), ("3 in.", 4)]),
    };
    let found = cutting(&ask).unwrap().value;
    assert_eq!((found.stocks, found.at_least), (2, 2));
}

/// The fewest stocks by trying every split of the pieces: f(set) = 1 + least f(set without what fits in one stock).
fn brute_force(stock: u64, pieces: &[u64]) -> u64 {
    let all = (1_usize << pieces.len()) - 1;
    let sum = |set: usize| -> u64 {
        pieces
            .iter()
            .enumerate()
            .filter(|(at, _)| set & (1 << at) != 0)
            .map(|(_, p)| p)
            .sum()
    };
    let fits: Vec<bool> = (0..=all).map(|set| sum(set) <= stock).collect();
    let mut best = vec![u64::MAX; all + 1];
    best[0] = 0;
    for set in 1..=all {
        let first = set & set.wrapping_neg();
        let mut sub = set;
        while sub > 0 {
            if sub & first != 0 && fits[sub] {
                best[set] = best[set].min(best[set & !sub].saturating_add(1));
            }
            sub = (sub - 1) & set;
        }
    }
    best[all]
}

fn run(mark: usize, length: Number) -> Run {
    Run {
        mark,
        storey: "L1".to_owned(),
        length,
    }
}

fn mark() -> MarkAsked {
    MarkAsked {
        mark: "HW1".to_owned(),
        packing: vec![Packing {
            product: "wool, 4 pcf".to_owned(),
            thickness: n("3/2"),
            strips: 1,
            cut_width: n("5"),
            stock: Stock {
                length: n("48"),
                width: n("24"),
                kerf: n("0"),
            },
            butts_apart: n("24"),
        }],
        coatings: vec![Coating {
            product: "spray".to_owned(),
            band: n("2"),
            wet: n("1/8"),
            faces: 2,
            loss: n("1/10"),
        }],
        sealants: vec![Sealant {
            product: "sealant".to_owned(),
            area: n("1/16"),
            faces: 1,
            package: n("18.3"),
            loss: n("0"),
        }],
        profiles: vec![Profile {
            what: "runner".to_owned(),
            rows: 1,
        }],
        fasteners: vec![Fasteners {
            what: "pins".to_owned(),
            spacing: n("16"),
            end: n("2"),
            at_each: 1,
        }],
    }
}

fn batts(runs: &[Run]) -> u64 {
    take_off(&[mark()], runs).unwrap().value.orders[0]
        .pieces
        .unwrap()
}

#[test]
fn a_schedule_taken_off() {
    // 14 ft: three strips of 4 ft and a rest of 2 ft, the rests of two runs from one strip: seven strips, four a batt.
    let runs = [run(0, n("168")), run(0, n("168"))];
    let found = take_off(&[mark()], &runs).unwrap().value;
    let packing = &found.orders[0];
    assert_eq!((packing.pieces, packing.at_least), (Some(2), Some(2)));
    // Net 336 × 5 × 1.5 / 144 = 17.5, bought 2 × 48 × 24 × 1.5 / 144 = 24 board feet.
    assert_eq!(
        (packing.net, packing.bought),
        (q("17.5 bd_ft"), q("24 bd_ft"))
    );
    assert_eq!(packing.waste, Some(n("13/48")));
    let of = |what: &str| {
        found
            .lines
            .iter()
            .find(|line| line.what.starts_with(what))
            .unwrap()
            .amount
    };
    assert_eq!(of("joint"), q("28 ft"));
    assert_eq!(of("runner"), q("28 ft"));
    // The strips of both runs, uncompressed: 336 × 5 × 1.5 / 144.
    let strips = found.lines.iter().find(|line| line.kind == Kind::Packing);
    assert_eq!(strips.unwrap().volume, Some(q("17.5 bd_ft")));
    // 336 × 2 × 2 × 1/8 / 231 / 0.9.
    assert_eq!(of("spray").number, n("168/231").over(n("9/10")).unwrap());
    // (168 - 4) / 16 = 10.25: 11 spaces, 12 pins, twice.
    assert_eq!(of("pins"), q("24 count"));
    let pin = SpacingAsked {
        run: known("14 ft"),
        spacing: known("16 in."),
        end: Some(known("2 in.")),
        at_each: 1,
    };
    assert_eq!(fasteners(&pin).unwrap().value, 12);
    // 21 cu in. are two cartridges of 18.3.
    assert!(
        found
            .orders
            .iter()
            .any(|order| order.what.starts_with("sealant") && order.pieces == Some(2))
    );
}

#[test]
fn a_rest_too_short_is_shared() {
    // 50 in. is 48 and 2: the 2 would bring butt joints too near, so two of 25 in., from two strips.
    let found = take_off(&[mark()], &[run(0, n("50"))]).unwrap().value;
    assert_eq!(found.orders[0].pieces, Some(1));
    let mut wide = mark();
    wide.packing[0].cut_width = n("25");
    assert!(
        take_off(&[wide], &[run(0, n("50"))])
            .unwrap_err()
            .to_string()
            .contains("the width of a strip")
    );
    assert!(take_off(&[mark()], &[run(1, n("50"))]).is_err());
    assert!(take_off(&[mark()], &[run(0, n("0"))]).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn as_few_as_by_trying_everything(stock in 10..60_u64, lengths in prop::collection::vec(1..60_u64, 1..10), kerf in 0..3_u64) {
        let lengths: Vec<u64> = lengths.into_iter().map(|length| length.min(stock)).collect();
        let mm = |length: u64| Quantity::new(Number::from(i32::try_from(length).unwrap()), Unit::Millimetre);
        let ask = CuttingAsked {
            stock: Known::new(mm(stock), "test"),
            kerf: Some(Known::new(mm(kerf), "test")),
            pieces: lengths.iter().map(|length| Piece { length: mm(*length), count: 1 }).collect(),
        };
        let found = cutting(&ask).unwrap().value;
        let with_kerf: Vec<u64> = lengths.iter().map(|length| length + kerf).collect();
        prop_assert_eq!(found.stocks, brute_force(stock + kerf, &with_kerf));
        prop_assert_eq!(found.at_least, found.stocks);
        let mut wanted = BTreeMap::new();
        for length in &lengths {
            *wanted.entry(mm(*length).number).or_default() += 1;
        }
        check_cuts(&found.cuts, &wanted, mm(stock).number, mm(kerf).number);
    }

    /// Two runs taken off together never need more than apart.
    #[test]
    fn together_never_more_than_apart(one in 16..3000_i128, other in 16..3000_i128) {
        let length = |sixteenths| Number::new(sixteenths, 16).unwrap();
        let (one, other) = (run(0, length(one)), run(0, length(other)));
        let apart = batts(std::slice::from_ref(&one)) + batts(std::slice::from_ref(&other));
        prop_assert!(batts(&[one, other]) <= apart);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    #[test]
    fn the_bound_holds_for_many(lengths in prop::collection::vec((1..200_i128, 1..400_u64), 1..80)) {
        let pieces: Vec<Piece> = lengths.iter().map(|(length, count)| Piece { length: Quantity::new(Number::new(*length, 16).unwrap(), Unit::Inch), count: *count }).collect();
        let found = cutting(&CuttingAsked { stock: known("24 in."), kerf: Some(known("1/8 in.")), pieces }).unwrap().value;
        prop_assert!(found.at_least <= found.stocks);
    }
}
