//! One joint's sheet: section, call-outs, dimensions, SVG. Aim: under 5 ms.

use conformance::Subject;
use divan::Bencher;
use drawing::{Heading, Known};
use measure::Quantity;
use site::{Fact, Facts, Provenance, Value};

fn main() {
    divan::main();
}

/// A head of wall under a sprayed beam: the most parts.
const TEXTS: &[(&str, &str)] = &[
    ("joint.kind", "head-of-wall"),
    ("floor.kind", "steel-deck-and-concrete"),
    ("wall.kind", "gypsum-steel-stud"),
    ("runner.kind", "deep-leg"),
];

const LENGTHS: &[(&str, &str)] = &[
    ("joint.width", "3/4 in."),
    ("deck.depth", "2 in."),
    ("deck.flute_spacing", "12 in."),
    ("concrete.thickness", "3-1/2 in."),
    ("beam.depth", "12 in."),
    ("beam.flange_width", "6-1/2 in."),
    ("fireproofing.thickness", "1-3/8 in."),
    ("fireproofing.overlap", "5 in."),
    ("clip.leg_length", "2-1/2 in."),
    ("stud.width", "3-5/8 in."),
    ("stud.end_gap", "3/4 in."),
    ("runner.leg_length", "3 in."),
    ("board.thickness", "5/8 in."),
    ("board.top_screw_distance", "4 in."),
    ("packing.depth", "5/8 in."),
    ("packing.thickness", "1-3/4 in."),
    ("packing.density", "4 pcf"),
    ("coating.wet_thickness", "5/32 in."),
    ("coating.overlap_board", "3/4 in."),
    ("coating.overlap_fireproofing", "2-1/2 in."),
    ("joint.movement_compression", "20 %"),
    ("joint.movement_extension", "10 %"),
];

fn facts() -> Vec<Fact> {
    let fact = |property: &str, value| Fact {
        property: property.to_owned(),
        value,
        provenance: Provenance::default(),
        cell: None,
    };
    let texts = TEXTS
        .iter()
        .map(|(property, text)| fact(property, Value::Text((*text).to_owned())));
    let lengths = LENGTHS.iter().filter_map(|(property, text)| {
        Some(fact(property, Value::Quantity(Quantity::parse(text).ok()?)))
    });
    texts.chain(lengths).collect()
}

#[divan::bench]
fn beam_head_to_svg(bencher: Bencher<'_, '_>) {
    let facts = facts();
    let subject = Subject {
        joint: "J-1",
        mark: "HW1",
        facts: Facts::from_iter(&facts),
        judgments: Vec::new(),
    };
    let known = Known {
        subject: &subject,
        listing: None,
    };
    let heading = Heading::default();
    bencher.bench_local(|| drawing::sheet(&known, &heading).map(|page| drawing::svg(&page)));
}
