//! Movement that a rule gives: a deflection limit taken as a bound, temperature, storey drift, a sealant joint's width.

use std::sync::LazyLock;

use measure::{Number, Quantity, Unit};
use serde::Deserialize;

use crate::error::Error;
use crate::exact::{ceiling, count, counted, exact};
use crate::known::{Known, length_unit};
use crate::units::rule_step;
use crate::worked::{Computed, Standing, Worked, both, trade};

/// The most that a span may deflect by a limit L/n, where the deflection itself isn't known.
///
/// # Errors
/// A span that isn't above zero, an n of zero.
pub fn deflection_limit(span: &Known, n: u32) -> Result<Computed<Quantity>, Error> {
    let unit = length_unit(span.quantity.unit);
    let length = span.above_zero("the span", unit)?;
    let divisor = i32::try_from(n).ok().filter(|n| *n > 0);
    let divisor = divisor.ok_or_else(|| Error::range("the n of L/n", n, "1 or more"))?;
    let limit = (exact(length) / divisor).get("the limit")?;
    let mut worked = Worked::of("Deflection limit as a bound");
    worked.given("span, L", span);
    worked.chosen(
        "limit",
        &format!("L/{n}"),
        "as given; IBC Table 1604.3 has L/360 for live load on floors",
    );
    worked.formula("Δ <= L / n", "IBC, Table 1604.3");
    worked.result("deflection at most", limit, unit);
    worked.note("a limit is not a demand: it is the most that the structure may do, and stands in while the engineer's figure is not known");
    Ok(worked.with(Quantity::new(limit, unit)))
}

#[derive(Deserialize)]
struct File {
    material: Vec<Row>,
}

#[derive(Deserialize)]
struct Row {
    name: String,
    per_degf: String,
    source: String,
}

static MATERIALS: LazyLock<Result<Vec<(String, Known)>, Error>> = LazyLock::new(|| {
    let why = |why: &dyn ToString| Error::Table {
        table: "expansion",
        why: why.to_string(),
    };
    let file: File =
        toml::from_str(include_str!("../../data/expansion.toml")).map_err(|e| why(&e))?;
    let read = |row: Row| {
        let millionths: Number = row.per_degf.parse().map_err(|e| why(&e))?;
        let number = (exact(millionths) / 1_000_000).get("a coefficient")?;
        let known = Known::new(Quantity::new(number, Unit::PerFahrenheit), row.source);
        Ok((row.name, known))
    };
    file.material.into_iter().map(read).collect()
});

/// The coefficient of expansion of a material, from the table.
///
/// # Errors
/// When the table has no such material; the error names those there are.
pub fn expansion(material: &str) -> Result<Known, Error> {
    let all = MATERIALS.as_ref().map_err(Clone::clone)?;
    let found = all
        .iter()
        .find(|(name, _)| name.eq_ignore_ascii_case(material.trim()));
    found.map(|(_, known)| known.clone()).ok_or_else(|| {
        let names: Vec<&str> = all.iter().map(|(name, _)| name.as_str()).collect();
        Error::Unknown {
            what: "material",
            name: material.to_owned(),
            known: names.join(", "),
        }
    })
}

/// How much longer or shorter a length becomes: `Δ = α L ΔT`.
///
/// The difference is a difference of temperature and not a temperature: 100 °F of rise is 55.6 K.
///
/// # Errors
/// A length, coefficient or difference that isn't above zero.
pub fn thermal(
    length: &Known,
    coefficient: &Known,
    difference: &Known,
) -> Result<Computed<Quantity>, Error> {
    let unit = length_unit(length.quantity.unit);
    let l = length.above_zero("the length", unit)?;
    let alpha = coefficient.above_zero("the coefficient of expansion", Unit::PerFahrenheit)?;
    let rise = difference.above_zero("the difference of temperature", Unit::FahrenheitRise)?;
    let change = (exact(alpha) * l * rise).get("the thermal movement")?;
    let mut worked = Worked::of("Thermal movement");
    worked.given("length, L", length);
    worked.given("coefficient of expansion, α", coefficient);
    worked.given("difference of temperature, ΔT", difference);
    worked.formula("Δ = α L ΔT", "linear thermal expansion");
    worked.step(format!(
        "Δ = {} × {} × {} = {}",
        coefficient.quantity,
        both(l, unit),
        difference.quantity,
        both(change, unit)
    ));
    worked.result("change of length", change, unit);
    Ok(worked.with(Quantity::new(change, unit)))
}

/// What is asked of a storey's drift.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DriftAsked {
    /// The elastic drift of the storey under the code's forces, δxe.
    pub elastic: Known,
    /// The deflection amplification factor, Cd.
    pub amplification: Number,
    /// The importance factor, Ie.
    pub importance: Number,
    /// The storey's height, where the drift is held to its limit.
    pub height: Option<Known>,
    /// The limit as a part of the height, as 0.020 (ASCE 7, Table 12.12-1).
    pub limit: Option<Number>,
}

/// The design storey drift `δx = Cd δxe / Ie`, against its limit.
///
/// # Errors
/// A factor that isn't above zero, a limit outside 0 to 0.1.
pub fn design_drift(asked: &DriftAsked) -> Result<Computed<Quantity>, Error> {
    let unit = length_unit(asked.elastic.quantity.unit);
    let elastic = asked.elastic.not_negative("the elastic drift", unit)?;
    for (name, factor) in [("Cd", asked.amplification), ("Ie", asked.importance)] {
        if factor <= Number::ZERO {
            return Err(Error::range(name, factor, "above 0"));
        }
    }
    let drift = (exact(elastic) * asked.amplification / asked.importance).get("the drift")?;
    let mut worked = Worked::of("Design storey drift");
    worked.given("elastic drift, δxe", &asked.elastic);
    worked.chosen(
        "deflection amplification, Cd",
        &crate::error::plain(asked.amplification),
        "as given",
    );
    worked.chosen(
        "importance factor, Ie",
        &crate::error::plain(asked.importance),
        "as given",
    );
    worked.formula("δx = Cd δxe / Ie", "ASCE 7, 12.8.6");
    worked.step(format!(
        "δx = {} × {} / {} = {}",
        crate::error::plain(asked.amplification),
        both(elastic, unit),
        crate::error::plain(asked.importance),
        both(drift, unit)
    ));
    worked.result("design storey drift, δx", drift, unit);
    if let (Some(height), Some(limit)) = (&asked.height, asked.limit) {
        let tall = height.above_zero("the storey height", unit)?;
        let tenth = (exact(1) / 10).get("a tenth")?;
        if limit <= Number::ZERO || limit > tenth {
            return Err(Error::range(
                "the drift limit",
                limit.to_decimal(3),
                "above 0 and at most 0.1 of the height",
            ));
        }
        let most = (exact(tall) * limit).get("the drift limit")?;
        worked.given("storey height", height);
        let part = crate::error::plain(limit);
        worked.chosen("limit, part of the height", &part, "as given");
        worked.formula("limit = part × height", "ASCE 7, Table 12.12-1");
        worked.step(format!(
            "limit = {part} × {} = {}",
            both(tall, unit),
            both(most, unit)
        ));
        worked.result("drift limit", most, unit);
        let standing = if drift <= most {
            Standing::Met
        } else {
            Standing::NotMet
        };
        worked.find(
            standing,
            format!(
                "the drift is {}, its limit {}",
                both(drift, unit),
                both(most, unit)
            ),
        );
    }
    Ok(worked.with(Quantity::new(drift, unit)))
}

/// What is asked of the width of a sealant joint.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JointWidthAsked {
    /// What the sealant can move, as a percentage of its width.
    pub capability: Known,
    /// The movements it must follow, each a length: thermal, moisture, drift.
    pub movements: Vec<Known>,
    /// The tolerance of construction.
    pub tolerance: Option<Known>,
}

/// The least width of a sealant joint: `W = (100 / X)(sum of movements) + t`.
///
/// # Errors
/// A capability that isn't above 0 %, a negative movement or tolerance.
pub fn sealant_joint_width(asked: &JointWidthAsked) -> Result<Computed<Quantity>, Error> {
    let first = asked.movements.first();
    let first = first
        .ok_or_else(|| Error::missing("the movement", "give at least one movement, as a length"))?;
    let unit = length_unit(first.quantity.unit);
    let x = asked
        .capability
        .above_zero("the movement capability", Unit::Percent)?;
    let mut sum = exact(0);
    let mut worked = Worked::of("Width of a sealant joint");
    worked.given("movement capability, X", &asked.capability);
    for movement in &asked.movements {
        sum = sum + movement.not_negative("the movement", unit)?;
        worked.given("movement", movement);
    }
    let tolerance = asked
        .tolerance
        .as_ref()
        .map_or(Ok(Number::ZERO), |t| t.not_negative("the tolerance", unit))?;
    worked.given_if("tolerance of construction, t", asked.tolerance.as_ref());
    worked.formula(
        "W = (100 / X) × movements + t",
        "sealant joint design as in ASTM C1472",
    );
    let what = "the width of the joint";
    let total = sum.get(what)?;
    let width = (exact(total) * 100 / x + tolerance).get(what)?;
    worked.step(format!("movements together {}", both(total, unit)));
    worked.result("width of the joint, at least", width, unit);
    let step = rule_step(unit)?;
    let steps = counted(ceiling((exact(width) / step).get(what)?), what)?;
    let drawn = (exact(step) * count(steps)?).get(what)?;
    worked.result(format!("to the next {} up", trade(step, unit)), drawn, unit);
    Ok(worked.with(Quantity::new(width, unit)))
}
