//! What is known of a joint that was built to some listing, more or less.

use measure::notation::quantity;
use site::{Fact, ProductFact, Provenance, ProvenanceKind, Value};

use super::seed::Seed;
use super::spec::{BOARDS, COATINGS, PACKINGS, Spec};
use super::text::inches_alone;

/// How a joint strays from its listing.
#[derive(Debug, Clone, Copy)]
pub struct Stray {
    /// How many facts in a hundred aren't known.
    pub unknown: usize,
    /// How many in a hundred are of some other listing.
    pub otherwise: usize,
    /// How many in a hundred are known from drawings only.
    pub drawn: usize,
}

/// As built, with little wrong.
pub const AS_BUILT: Stray = Stray {
    unknown: 2,
    otherwise: 3,
    drawn: 0,
};

/// As designed: much of it nobody has seen yet.
pub const AS_DESIGNED: Stray = Stray {
    unknown: 30,
    otherwise: 4,
    drawn: 50,
};

fn amount(text: &str) -> Value {
    Value::Quantity(
        quantity(text)
            .unwrap_or_else(|error| panic!("{text}: {error}"))
            .quantity(),
    )
}

fn length(in_64ths: usize) -> Value {
    amount(&inches_alone(in_64ths))
}

fn count(number: usize) -> Value {
    let number = i32::try_from(number).unwrap();
    Value::Quantity(measure::Quantity::new(
        measure::Number::whole(number),
        measure::Unit::Count,
    ))
}

fn product((maker, product): (&str, &str)) -> Value {
    Value::Product(ProductFact {
        maker: Some(maker.to_owned()),
        product: product.to_owned(),
    })
}

fn text(words: &str) -> Value {
    Value::Text(words.to_owned())
}

/// Everything that may be known of a joint built to a listing.
fn all(spec: &Spec, rating: usize, seed: &mut Seed) -> Vec<(&'static str, Value)> {
    let layers = 1 + spec
        .ratings
        .iter()
        .position(|one| *one >= rating)
        .unwrap_or(0);
    let mut known = vec![
        ("joint.width", length(spec.width - seed.one(&[0, 4, 8]))),
        ("joint.movement_class", text(spec.class)),
        ("joint.static_or_dynamic", text("dynamic")),
        (
            "joint.movement_compression",
            amount(&format!("{} %", spec.compression - seed.one(&[0, 3]))),
        ),
        (
            "joint.movement_extension",
            amount(&format!("{} %", spec.extension - seed.one(&[0, 3]))),
        ),
        ("packing.material", text("mineral-wool")),
        (
            "packing.density",
            amount(&format!("{} pcf", spec.packing_density)),
        ),
        (
            "packing.compression",
            amount(&format!(
                "{} %",
                spec.packing_compression + seed.one(&[0, 5])
            )),
        ),
        (
            "packing.depth",
            length(spec.depth_for(rating) + seed.one(&[0, 16])),
        ),
        ("packing.product", product(seed.one(&spec.packings))),
        (
            "coating.wet_thickness",
            length(spec.wet + seed.one(&[0, 2])),
        ),
        (
            "coating.overlap_concrete",
            length(spec.overlap_concrete + seed.one(&[0, 16])),
        ),
        ("coating.product", product(seed.one(&spec.coatings))),
    ];
    if spec.kind.has_floor() {
        known.push(("floor.thickness", length(spec.floor + seed.one(&[0, 32]))));
        known.push((
            "concrete.thickness",
            length(spec.floor + seed.one(&[0, 32])),
        ));
        known.push(("concrete.density", amount("145 pcf")));
    } else {
        known.push(("wall.thickness", length(spec.wall)));
        known.push(("concrete.thickness", length(spec.wall)));
    }
    if spec.kind.has_studs() {
        known.push((
            "runner.gauge",
            amount(&format!("{} MSG", spec.runner_gauge)),
        ));
        let thick = match spec.runner_gauge {
            25 => "0.021 in.",
            22 => "0.029 in.",
            20 => "0.035 in.",
            _ => "0.047 in.",
        };
        known.push(("runner.steel_thickness", amount(thick)));
        known.push(("runner.leg_length", length(spec.runner_leg)));
        known.push(("runner.fastener_spacing", length(spec.runner_spacing * 64)));
        known.push(("stud.width", length(spec.stud_width)));
        known.push(("stud.spacing", length(spec.stud_spacing * 64)));
        known.push(("board.thickness", length(40)));
        known.push(("board.layers", count(layers)));
        known.push((
            "board.top_screw_distance",
            length(spec.screw + seed.one(&[0, 16])),
        ));
        known.push(("board.product", product(seed.one(&spec.boards))));
        known.push((
            "coating.overlap_board",
            length(spec.overlap_board + seed.one(&[0, 16])),
        ));
    }
    if let Some(apart) = spec.splice {
        known.push(("packing.splice_spacing", length(apart * 64)));
    }
    known
}

/// A condition near one listing, some of it as another listing would have it.
pub fn condition(spec: &Spec, other: &Spec, stray: Stray, seed: &mut Seed) -> Vec<Fact> {
    let rating = seed.one(spec.ratings);
    let witnessed = Provenance {
        kind: ProvenanceKind::Witnessed { by: None },
        date: None,
    };
    let drawing = Provenance {
        kind: ProvenanceKind::Drawing {
            sheet: "A-801".to_owned(),
        },
        date: None,
    };
    let fact = |property: &str, value, provenance: &Provenance| Fact {
        property: property.to_owned(),
        value,
        provenance: provenance.clone(),
        cell: None,
    };
    let mut facts = vec![
        fact("joint.kind", text(spec.kind.name()), &drawing),
        fact("barrier.rating", amount(&format!("{rating} hr")), &drawing),
        fact(
            "barrier.smoke_barrier",
            Value::Flag(seed.percent(2)),
            &drawing,
        ),
    ];
    let others = all(other, rating, seed);
    for (property, value) in all(spec, rating, seed) {
        if seed.percent(stray.unknown) {
            continue;
        }
        let instead = others.iter().find(|known| known.0 == property);
        let value = match instead {
            Some((_, instead)) if seed.percent(stray.otherwise) => instead.clone(),
            _ => value,
        };
        let provenance = if seed.percent(stray.drawn) {
            &drawing
        } else {
            &witnessed
        };
        facts.push(fact(property, value, provenance));
    }
    if spec.alternate.is_some() && seed.percent(30) {
        facts.push(fact("option.3A", text("3A"), &drawing));
    }
    if spec.kind.has_studs() && seed.percent(10) {
        facts.push(fact(
            "3A:packing.product",
            product(seed.one(PACKINGS)),
            &witnessed,
        ));
    }
    facts
}

/// So many conditions for a library.
pub fn conditions(library: &[Spec], size: usize, seed: u64) -> Vec<Vec<Fact>> {
    let mut seed = Seed(seed);
    let condition = |_| {
        let (spec, other) = (seed.below(library.len()), seed.below(library.len()));
        let stray = if seed.percent(60) {
            AS_BUILT
        } else {
            AS_DESIGNED
        };
        condition(&library[spec], &library[other], stray, &mut seed)
    };
    (0..size).map(condition).collect()
}

/// Every product that the library may name.
pub fn products() -> impl Iterator<Item = (&'static str, &'static str)> {
    PACKINGS.iter().chain(COATINGS).chain(BOARDS).copied()
}
