//! What is known of a joint that was built to some listing, more or less.

use measure::{Number, Quantity, Unit};
use site::{Fact, ProductFact, Provenance, ProvenanceKind, Value, said_of_listing};

use vocabulary::vocabulary;

use super::seed::Seed;
use super::spec::products::PACKINGS;
use super::spec::{Amount, Ask, Built, Part, Product, Spec, Statement};
use super::text::amounts::{First, tenths_of_millimetres};

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

/// As built, and all of it known.
pub const ALL_KNOWN: Stray = Stray {
    unknown: 0,
    otherwise: 0,
    drawn: 0,
};

/// As designed: much of it nobody has seen yet.
pub const AS_DESIGNED: Stray = Stray {
    unknown: 30,
    otherwise: 4,
    drawn: 50,
};

/// A length, in millimetres where the listing knows no inches.
fn length(in_64ths: usize, first: First) -> Value {
    Value::Quantity(match first {
        First::MetricAlone => {
            let tenths = tenths_of_millimetres(in_64ths);
            Quantity::new(fraction(tenths, 10), Unit::Millimetre)
        }
        _ => Quantity::new(fraction(in_64ths, 64), Unit::Inch),
    })
}

fn whole(number: usize, unit: Unit) -> Value {
    Value::Quantity(Quantity::new(fraction(number, 1), unit))
}

fn fraction(top: usize, bottom: i128) -> Number {
    Number::new(i128::try_from(top).unwrap(), bottom).unwrap()
}

fn product((maker, product): Product) -> Value {
    Value::Product(ProductFact {
        maker: Some(maker.to_owned()),
        product: product.to_owned(),
    })
}

fn text(words: &str) -> Value {
    Value::Text(words.to_owned())
}

/// A value, so much more than the amount.
fn more(amount: Amount, steps: isize, first: First) -> Value {
    let moved = |number: usize, step: isize| number.saturating_add_signed(step * steps);
    match amount {
        Amount::Length(in_64ths) => {
            length(moved(in_64ths, if in_64ths > 32 { 8 } else { 1 }), first)
        }
        Amount::Percent(percent) => whole(moved(percent, 3), Unit::Percent),
        Amount::Density(pcf) => whole(moved(pcf, 1), Unit::PoundPerCubicFoot),
        Amount::Weight(pounds) => whole(moved(pounds, 2), Unit::PoundPerFoot),
        Amount::Count(count) => whole(moved(count, 1), Unit::Count),
        Amount::Hours(hours) => whole(moved(hours, 6), Unit::Hour),
        Amount::Fahrenheit(degrees) => whole(degrees, Unit::Fahrenheit),
        Amount::Gauge(number) => whole(number, Unit::Gauge),
    }
}

/// A value that meets what is asked.
fn meeting(ask: Ask, first: First, seed: &mut Seed) -> Value {
    let further = seed.one(&[0, 0, 1, 2]);
    match ask {
        Ask::AtLeast(amount) => more(amount, further, first),
        Ask::AtMost(amount) => more(amount, -further, first),
        Ask::Nominal(amount) | Ask::Exactly(amount) => more(amount, 0, first),
        Ask::Between(low, high) => more(seed.one(&[low, high]), 0, first),
    }
}

/// Everything that may be known of a joint of such a rating and width, built to a listing without its alternates.
fn all(spec: &Spec, rating: usize, width: usize, seed: &mut Seed) -> Vec<(String, Value)> {
    let first = spec.first_unit();
    let mut known = vec![
        ("joint.movement_class".to_owned(), text(spec.movement.class)),
        ("joint.static_or_dynamic".to_owned(), text("dynamic")),
        ("packing.material".to_owned(), text("mineral-wool")),
        ("joint.width".to_owned(), length(width, first)),
    ];
    let parts = spec.all_parts();
    let base = |part: &&&Part| part.built == Built::Always;
    for part in parts.iter().filter(base) {
        let here =
            |one: &&Statement| one.when.holds(rating, width) && one.property != "joint.width";
        for one in part.statements.iter().filter(here) {
            let value = meeting(one.ask, first, seed);
            if let (Ask::AtLeast(Amount::Gauge(number)), Some(component)) =
                (one.ask, one.property.strip_suffix(".gauge"))
            {
                let thick = Number::new(i128::from(thousandths(number)), 1000).unwrap();
                let thick = Value::Quantity(Quantity::new(thick, Unit::Inch));
                known.push((format!("{component}.steel_thickness"), thick));
            }
            // The concrete of a floor or wall is the floor or wall.
            let attribute = one.property.strip_prefix("concrete.");
            if let Some(attribute) = attribute.filter(|_| part.component != "concrete") {
                let name = format!("{}.{attribute}", part.component);
                if vocabulary().property(&name).is_some() {
                    known.push((name, value.clone()));
                }
            }
            known.push((one.property.to_owned(), value));
        }
        if !part.products.is_empty() {
            let product = product(seed.one(&part.products));
            known.push((format!("{}.product", part.component), product));
        }
    }
    // Of two parts of one kind the first is known.
    let mut names: Vec<String> = Vec::new();
    known.retain(|(name, _)| {
        let is_new = !names.contains(name);
        names.extend(is_new.then(|| name.clone()));
        is_new
    });
    known
}

const fn thousandths(gauge: usize) -> u8 {
    match gauge {
        25 => 21,
        22 => 29,
        20 => 35,
        _ => 47,
    }
}

/// A condition near one listing, some of it as another listing would have it.
pub fn condition(spec: &Spec, other: &Spec, stray: Stray, seed: &mut Seed) -> Vec<Fact> {
    let rating = seed.one(spec.ratings);
    let width = spec.width - seed.one(&[0, 4, 8, 16]);
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
        fact("barrier.rating", whole(rating, Unit::Hour), &drawing),
        fact(
            "barrier.smoke_barrier",
            Value::Flag(seed.percent(2)),
            &drawing,
        ),
    ];
    let others = all(other, rating, other.width, seed);
    for (property, value) in all(spec, rating, width, seed) {
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
        facts.push(fact(&property, value, provenance));
    }
    // What is said of one listing's own is mostly said of this one.
    let of = if seed.percent(70) { spec } else { other }.file();
    let own = |name: &str| said_of_listing(name, &of);
    if seed.percent(10) {
        facts.push(fact(&own("option.3A"), text("3A"), &drawing));
    }
    if seed.percent(10) {
        let leg = length(seed.one(&[64, 96, 160]), First::Inches);
        facts.push(fact(&own("2A:runner.leg_length"), leg, &witnessed));
    }
    if seed.percent(5) {
        let other = product(seed.one(PACKINGS));
        facts.push(fact(&own("3A:packing.product"), other, &witnessed));
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
