//! One joint against one listing of eighty clauses, as long as the longer of published listings. Aim: every verdict
//! in 50 µs; putting them in words comes on top.

use conformance::{Checklist, Subject, check_draft, compare};
use divan::Bencher;
use listing::Reading;
use site::Fact;

#[path = "../tests/support/mod.rs"]
mod support;

fn main() {
    divan::main();
}

/// Twenty properties, each bounded by four clauses: for either rating, in a second item, and in an alternate to it.
const BOUNDS: &[(&str, &str, &str)] = &[
    (
        "floor.thickness",
        "at least 4-1/2 in. (114 mm)",
        "6 in. <- drawing S-1",
    ),
    (
        "concrete.density",
        "between 110 pcf and 150 pcf (1762 kg/m3 and 2403 kg/m3)",
        "145 pcf <- drawing S-1",
    ),
    (
        "deck.depth",
        "at most 3 in. (76 mm)",
        "2 in. <- drawing S-1",
    ),
    ("deck.gauge", "at least 22 MSG", "20 gauge <- submittal 3"),
    (
        "stud.width",
        "at least 3-1/2 in. (89 mm)",
        "3-5/8 in. <- submittal 3",
    ),
    ("stud.gauge", "at least 25 MSG", "20 gauge <- submittal 3"),
    (
        "stud.spacing",
        "at most 24 in. (610 mm)",
        "16 in. <- drawing A-1",
    ),
    (
        "stud.end_gap",
        "between 1/2 in. and 1 in. (13 mm and 25 mm)",
        "3/4 in. <- measured 1/16 in.: 3/4 in., 11/16 in., 13/16 in.",
    ),
    ("runner.gauge", "at least 25 MSG", "20 gauge <- submittal 3"),
    (
        "runner.leg_length",
        "at least 2 in. (51 mm)",
        "2-1/2 in. <- submittal 3",
    ),
    (
        "runner.fastener_spacing",
        "at most 24 in. (610 mm)",
        "16 in. <- measured 1/8 in.",
    ),
    ("board.layers", "bare 2", "2"),
    (
        "board.thickness",
        "nominal 5/8 in. (16 mm)",
        "5/8 in. <- submittal 4",
    ),
    (
        "board.gap",
        "at most 1 in. (25 mm)",
        "7/8 in. <- measured 1/16 in.: 3/4 in., 7/8 in., 7/8 in.",
    ),
    (
        "packing.density",
        "nominal 4 pcf (64 kg/m3)",
        "4 pcf <- submittal 5",
    ),
    (
        "packing.depth",
        "at least 1-1/4 in. (32 mm)",
        "1-1/2 in. <- measured 1/16 in.",
    ),
    ("packing.compression", "at least 33 percent", "40 %"),
    (
        "coating.product",
        "named Tarrowfen Coatings | Tarroseal 30, Quillbrook Seals | Quillcoat S",
        "Quillbrook Seals | Quillcoat S <- submittal 5",
    ),
    (
        "coating.wet_thickness",
        "at least 1/8 in. (3.2 mm)",
        "5/32 in. <- measured 1/64 in.",
    ),
    (
        "coating.overlap_board",
        "at least 1/2 in. (13 mm)",
        "3/4 in. <- measured 1/16 in.",
    ),
];

fn listing() -> Reading {
    let lines = BOUNDS.iter().flat_map(|(property, bound, _)| {
        [
            format!("{property}: {bound} ; item 1A ; if joint.rating = 1 hr"),
            format!("{property}: {bound} ; item 1A ; if joint.rating = 2 hr"),
            format!("{property}: {bound} ; item 2B"),
            format!("{property}: {bound} ; item 2B1"),
        ]
    });
    let lines: Vec<String> = lines.collect();
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    let mut listing = support::reading(&lines);
    listing.options = vec![support::alternates("2B", &["2B", "2B1"])];
    listing.header.width = Some(support::width("at most 1 in."));
    listing.header.movement = vec![support::movement("II, III either 25")];
    listing
}

fn facts() -> Vec<Fact> {
    let of_joint = [
        "barrier.rating = 2 hr",
        "barrier.smoke_barrier = no",
        "joint.kind = head-of-wall <- drawing A-1",
        "joint.width = 7/8 in. <- measured 1/16 in.: 3/4 in., 7/8 in., 13/16 in.",
        "joint.movement_compression = 15 % <- drawing S-1",
        "joint.movement_extension = 10 % <- drawing S-1",
        "joint.movement_class = II <- drawing S-1",
    ];
    let bounded = BOUNDS
        .iter()
        .map(|(property, _, value)| support::fact(&format!("{property} = {value}")));
    bounded
        .chain(of_joint.iter().map(|line| support::fact(line)))
        .collect()
}

/// The listing made ready, once for all its joints.
#[divan::bench]
fn prepare(bencher: Bencher<'_, '_>) {
    let listing = listing();
    bencher.bench(|| Checklist::of_draft(&listing));
}

/// Every verdict on one joint.
#[divan::bench]
fn decide(bencher: Bencher<'_, '_>) {
    let (listing, facts) = (listing(), facts());
    let subject: Subject<'_> = support::subject(&facts, &[]);
    let checklist = Checklist::of_draft(&listing);
    bencher.bench(|| checklist.decide(&subject));
}

/// All of it: the listing made ready, every verdict, and its explanation in words.
#[divan::bench]
fn check_and_explain(bencher: Bencher<'_, '_>) {
    let (listing, facts) = (listing(), facts());
    let subject: Subject<'_> = support::subject(&facts, &[]);
    bencher.bench(|| check_draft(&listing, &subject));
}

#[divan::bench]
fn compare_with_itself(bencher: Bencher<'_, '_>) {
    let listing = listing();
    bencher.bench(|| compare(&listing, &listing));
}
