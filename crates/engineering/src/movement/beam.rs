//! Deflection of beams and of slab strips that span like beams.
//!
//! Elastic, small deflections, one E I, bending alone. Textbook curves are added up exactly; where only the greatest
//! deflection is wanted, the line is computed at 512 places, and what can be missed between them is bounded by the
//! greatest moment: `M (L/1024)² / (2 E I)`.

use measure::{Number, Quantity, Unit};

use super::beam_asked::{BeamAsked, SpanAsked, Supports};
use super::curve::{Span, make_continuous};
use crate::between::Between;
use crate::error::Error;
use crate::exact::exact;
use crate::known::length_unit;
use crate::worked::{Computed, Standing, Worked, both, trade};

/// How far a beam goes down, in inches or millimetres.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Deflection {
    /// The most that any place goes down; zero if none does.
    pub down: Between,
    /// The most that any place goes up, as beside a loaded span.
    pub up: Between,
    /// How far it goes down at the joint, where the place is known; below zero is up.
    pub at_joint: Option<Number>,
    /// The unit of these lengths.
    pub unit: Unit,
}

/// The places of a span at which the line is computed.
const PLACES: i32 = 512;

/// Deflection of a beam under its loads.
///
/// # Errors
/// A length, modulus or second moment that isn't above zero, a place off its span, no span or more than six, a
/// cantilever of several spans, no load.
pub fn deflection(asked: &BeamAsked) -> Result<Computed<Deflection>, Error> {
    let units = Units::of(asked.modulus.quantity.unit);
    asked.could_be()?;
    let e = asked
        .modulus
        .above_zero("the modulus of elasticity", units.modulus)?;
    let i = asked
        .inertia
        .above_zero("the second moment of area", units.inertia)?;
    let stiffness = (exact(e) * i).get("E I")?;
    let mut spans = Vec::new();
    for span in &asked.spans {
        spans.push(units.span(span, asked.supports)?);
    }
    let fixed = match asked.supports {
        Supports::Fixed => (true, true),
        Supports::FixedLeft => (true, false),
        Supports::Pinned | Supports::Cantilever => (false, false),
    };
    if asked.supports != Supports::Cantilever {
        make_continuous(&mut spans, fixed)?;
    }
    let mut worked = inputs(asked);
    let mut found = Deflection {
        down: Between::exactly(Number::ZERO),
        up: Between::exactly(Number::ZERO),
        at_joint: None,
        unit: units.length,
    };
    for (number, span) in spans.iter().enumerate() {
        let (down, up, place) = extremes(span, stiffness)?;
        let name = if spans.len() == 1 {
            String::new()
        } else {
            format!("span {}: ", number + 1)
        };
        if down.high > Number::ZERO {
            worked.step(format!(
                "{name}down at most {} near {} from the left",
                both(down.high, units.length),
                both(place, units.length)
            ));
        }
        found.down = larger(found.down, down);
        found.up = larger(found.up, up);
    }
    worked.ranged(
        "greatest deflection down",
        found.down.high,
        shown(found.down),
        units.length,
    );
    if found.up.high > Number::ZERO {
        worked.ranged(
            "greatest deflection up, beside a loaded span",
            found.up.high,
            shown(found.up),
            units.length,
        );
    }
    if let Some((number, place)) = &asked.joint {
        let span = number.checked_sub(1).and_then(|at| spans.get(at));
        let span = span.ok_or_else(|| {
            Error::range(
                "the span of the joint",
                number,
                format!("1 to {}", spans.len()),
            )
        })?;
        let x = place.not_negative("the place of the joint", units.length)?;
        if x > span.length {
            return Err(Error::range(
                "the place of the joint",
                place.quantity,
                format!("at most the span, {}", trade(span.length, units.length)),
            ));
        }
        let there = (exact(span.at(x)?) / stiffness).get("the deflection")?;
        if there.is_negative() {
            worked.result("deflection at the joint, up", -there, units.length);
        } else {
            worked.result("deflection at the joint, down", there, units.length);
        }
        found.at_joint = Some(there);
    }
    limit(asked, &spans, found, units.length, &mut worked)?;
    Ok(worked.with(found))
}

fn inputs(asked: &BeamAsked) -> Worked {
    let mut worked = Worked::of("Deflection of a beam");
    for (number, span) in asked.spans.iter().enumerate() {
        let name = if asked.spans.len() == 1 {
            "span, L".to_owned()
        } else {
            format!("span {}, L", number + 1)
        };
        worked.given(&name, &span.length);
        worked.given_if("uniform load, w", span.uniform.as_ref());
        for point in &span.points {
            worked.given("force, P", &point.force);
            worked.given("at a distance from the left, a", &point.at);
        }
    }
    worked.given("modulus of elasticity, E", &asked.modulus);
    worked.given("second moment of area, I", &asked.inertia);
    let (words, uniform, point) = match asked.supports {
        Supports::Pinned if asked.spans.len() > 1 => (
            "continuous over its supports, free to turn at the ends",
            "three-moment equation for the moments over the supports, then y = w L⁴ (ξ - 2ξ³ + ξ⁴) / 24EI + L² (M₁(ξ/3 - ξ²/2 + ξ³/6) + M₂(ξ/6 - ξ³/6)) / EI",
            "y = P L³ b ξ (1 - b² - ξ²) / 6EI for a force at a L = (1 - b) L; ξ = x / L",
        ),
        Supports::Pinned => (
            "free to turn at both ends",
            "y = w L⁴ (ξ - 2ξ³ + ξ⁴) / 24EI; at mid-span 5 w L⁴ / 384EI",
            "y = P b x (L² - b² - x²) / 6EIL for x <= a; at mid-span, force there: P L³ / 48EI",
        ),
        Supports::Fixed => (
            "fixed at both ends",
            "at mid-span w L⁴ / 384EI",
            "at mid-span, force there: P L³ / 192EI",
        ),
        Supports::FixedLeft => (
            "fixed at the left, free to turn at the right",
            "y = w x² (3L² - 5Lx + 2x²) / 48EI",
            "end moment by the three-moment equation",
        ),
        Supports::Cantilever => (
            "cantilever, fixed at the left",
            "y = w x² (6L² - 4Lx + x²) / 24EI; at the end w L⁴ / 8EI",
            "y = P x² (3a - x) / 6EI for x <= a; at the end, force there: P L³ / 3EI",
        ),
    };
    worked.chosen("held", words, "as given");
    worked.formula(
        uniform,
        "elastic line, as in handbook tables of beam formulas (AISC Manual, Table 3-23)",
    );
    worked.formula(point, "the same");
    worked
}

fn limit(
    asked: &BeamAsked,
    spans: &[Span],
    found: Deflection,
    unit: Unit,
    worked: &mut Worked,
) -> Result<(), Error> {
    let Some(n) = asked.limit else { return Ok(()) };
    let n = i32::try_from(n)
        .ok()
        .filter(|n| *n > 0)
        .ok_or_else(|| Error::range("the n of L/n", n, "1 or more"))?;
    let shortest = spans
        .iter()
        .map(|span| span.length)
        .min()
        .unwrap_or(Number::ZERO);
    let limit = (exact(shortest) / n).get("the limit")?;
    worked.step(format!("L/{n} = {}", both(limit, unit)));
    let standing = found.down.at_most(limit);
    let words = match standing {
        Standing::Met => format!("deflects no more than L/{n}"),
        Standing::NotMet => format!("deflects more than L/{n}"),
        _ => format!("too near L/{n} to tell"),
    };
    worked.find(standing, words);
    Ok(())
}

/// The most a span goes down and up, and where it goes down most.
fn extremes(span: &Span, stiffness: Number) -> Result<(Between, Between, Number), Error> {
    let what = "the deflection";
    let mut most = (Number::ZERO, Number::ZERO);
    let mut least = Number::ZERO;
    for step in 1..=PLACES {
        let x = (exact(span.length) * step / PLACES).get(what)?;
        let y = span.at(x)?;
        if y > most.0 {
            most = (y, x);
        }
        least = least.min(y);
    }
    let missed = (exact(span.moment_bound()?) * span.length * span.length / (PLACES * PLACES * 8))
        .get(what)?;
    // A cantilever is lowest at its end, which is one of the places.
    let missed = if span.is_cantilever {
        Number::ZERO
    } else {
        missed
    };
    let within = |value: Number| -> Result<Between, Error> {
        if value.is_zero() {
            return Ok(Between::exactly(value));
        }
        Ok(Between {
            low: (exact(value) / stiffness).get(what)?,
            high: ((exact(value) + missed) / stiffness).get(what)?,
        })
    };
    Ok((within(most.0)?, within(least.abs())?, most.1))
}

fn larger(one: Between, other: Between) -> Between {
    Between {
        low: one.low.max(other.low),
        high: one.high.max(other.high),
    }
}

/// To a hundred-thousandth, for showing.
fn rounded(number: Number) -> Number {
    let step = Number::new(1, 10_000).unwrap_or(Number::ONE);
    number.nearest(step).unwrap_or(number)
}

fn shown(between: Between) -> Between {
    Between {
        low: rounded(between.low),
        high: rounded(between.high),
    }
}

/// The consistent system that a beam is computed in.
#[derive(Clone, Copy)]
struct Units {
    length: Unit,
    modulus: Unit,
    inertia: Unit,
    force: Unit,
    /// Force for each length, and how many of the length make it one of the system's.
    uniform: (Unit, i32),
}

impl Units {
    /// Pounds and inches, or newtons and millimetres, as the modulus is given.
    const fn of(modulus: Unit) -> Self {
        match length_unit(modulus) {
            Unit::Millimetre => Self {
                length: Unit::Millimetre,
                modulus: Unit::Megapascal,
                inertia: Unit::MillimetreFourth,
                force: Unit::Newton,
                uniform: (Unit::NewtonPerMetre, 1000),
            },
            _ => Self {
                length: Unit::Inch,
                modulus: Unit::PoundPerSquareInch,
                inertia: Unit::InchFourth,
                force: Unit::PoundForce,
                uniform: (Unit::PoundForcePerFoot, 12),
            },
        }
    }

    fn span(self, asked: &SpanAsked, supports: Supports) -> Result<Span, Error> {
        let length = asked.length.above_zero("the span", self.length)?;
        let uniform = asked.uniform.as_ref().map_or(Ok(Number::ZERO), |load| {
            load.not_negative("the uniform load", self.uniform.0)
        })?;
        let mut points = Vec::new();
        for point in &asked.points {
            let force = point.force.not_negative("the force", self.force)?;
            let at = point
                .at
                .not_negative("the place of the force", self.length)?;
            if at > length {
                return Err(Error::range(
                    "the place of the force",
                    point.at.quantity,
                    format!("at most the span, {}", asked.length.quantity),
                ));
            }
            points.push((force, at));
        }
        Ok(Span {
            length,
            uniform: (exact(uniform) / self.uniform.1).get("the uniform load")?,
            points,
            ends: (Number::ZERO, Number::ZERO),
            is_cantilever: supports == Supports::Cantilever,
        })
    }
}

impl Deflection {
    /// What a joint must follow: the deflection at its place, else the greatest.
    pub fn demand(self) -> Quantity {
        Quantity::new(
            self.at_joint
                .map_or(self.down.high, |there| there.max(Number::ZERO)),
            self.unit,
        )
    }
}
