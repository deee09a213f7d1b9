//! Readings against the design thickness, and against what a listing asks at the joint.

use measure::{Number, Quantity, Unit};

use crate::between::Between;
use crate::error::Error;
use crate::exact::{count, exact};
use crate::known::{Known, Readings, Summary};
use crate::worked::{Computed, Standing, Worked, both};

/// Which edition's rule decides.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rule {
    /// IBC before 2009: the average reaches the design thickness, high readings counted as design plus 1/4 in.
    Average,
    /// IBC 2009 and later: at most one reading in ten is below the design thickness.
    TenPercent,
}

/// What is sprayed, which decides how many readings a place needs (IBC 2018, 1705.14.4.6 to .9).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Member {
    /// Beam or girder: nine at each end of 12 in.
    Beam,
    /// Joist or truss: seven.
    Joist,
    /// Wide-flange column: twelve.
    Column,
    /// Hollow section or pipe: four at least.
    Hollow,
    /// Deck: four at least.
    Deck,
}

/// What is asked of the readings on a member.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FieldAsked {
    /// The readings.
    pub readings: Readings,
    /// The design thickness of the member.
    pub design: Known,
    /// Which edition decides.
    pub rule: Rule,
    /// What is sprayed.
    pub member: Member,
}

/// What the readings on a member come to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field {
    /// The average, high readings capped.
    pub average: Number,
    /// Readings surely below the design thickness.
    pub below: usize,
    /// Readings that may be.
    pub maybe_below: usize,
    /// The least reading allowed.
    pub minimum: Quantity,
    /// What is found.
    pub standing: Standing,
}

/// The least single reading: design less 1/4 in. from 1 in. on, design less a quarter of it below.
///
/// # Errors
/// A design thickness that isn't above zero.
pub fn minimum_reading(design: &Known) -> Result<Quantity, Error> {
    let inches = design.above_zero("the design thickness", Unit::Inch)?;
    let least = if inches >= Number::ONE {
        exact(inches) - quarter()?
    } else {
        exact(inches) * 3 / 4
    };
    let least = Quantity::new(least.get("the least reading")?, Unit::Inch);
    Ok(least
        .to(crate::known::length_unit(design.quantity.unit))
        .unwrap_or(least))
}

fn quarter() -> Result<Number, Error> {
    (exact(1) / 4).get("a quarter inch")
}

/// Holds the readings on a member against its design thickness.
///
/// # Errors
/// No reading, a thickness that isn't a length above zero.
pub fn field_test(asked: &FieldAsked) -> Result<Computed<Field>, Error> {
    let unit = asked.readings.length_unit("the readings")?;
    let readings = asked.readings.summary("the readings", unit)?;
    let design = asked.design.above_zero("the design thickness", unit)?;
    let minimum = minimum_reading(&asked.design)?;
    let least = Known::new(minimum, "").above_zero("the least reading", unit)?;
    let mut worked = Worked::of("Thickness of sprayed material on a member");
    worked.read("readings", &asked.readings);
    worked.given("design thickness", &asked.design);
    worked.chosen("rule", asked.rule.words(), asked.rule.source());
    worked.formula(
        "least reading = design - 1/4 in. for a design of 1 in. and more, design - 25 % below",
        "IBC 2018, 1705.14.4.1; UFGS 07 81 00",
    );
    worked.step(format!("least reading allowed = {}", both(least, unit)));
    let of = |limit| standings(&readings, limit);
    let (under_least, maybe_under_least) = of(least)?;
    let (below, maybe_below) = of(design)?;
    let average = capped_average(&readings, design, unit)?;
    worked.result("average, high readings capped", average.low, unit);
    worked.result(
        "readings",
        count(readings.numbers.len() as u64)?,
        Unit::Count,
    );
    let single = match (under_least, maybe_under_least) {
        (0, 0) => Standing::Met,
        (0, _) => Standing::Open,
        _ => Standing::NotMet,
    };
    worked.find(
        single,
        match single {
            Standing::Met => format!("no reading is below {}", both(least, unit)),
            Standing::NotMet => format!(
                "{under_least} of {} readings are below {}",
                readings.numbers.len(),
                both(least, unit)
            ),
            _ => format!(
                "{maybe_under_least} of {} readings are too near {} to tell",
                readings.numbers.len(),
                both(least, unit)
            ),
        },
    );
    let overall = match asked.rule {
        Rule::Average => of_average(average, readings.half, design, unit, &mut worked)?,
        Rule::TenPercent => of_share(
            below,
            maybe_below,
            readings.numbers.len(),
            design,
            unit,
            &mut worked,
        ),
    };
    let wanted = asked.member.readings();
    let enough = if readings.numbers.len() >= wanted {
        Standing::Met
    } else {
        Standing::Open
    };
    worked.find(
        enough,
        format!(
            "{} readings; {} needs at least {wanted} at each place",
            readings.numbers.len(),
            asked.member.words()
        ),
    );
    worked.caution("Old sprayed material may hold asbestos: don't disturb it before it is tested.");
    let standing = single.and(overall).and(enough);
    Ok(worked.with(Field {
        average: average.low,
        below,
        maybe_below,
        minimum,
        standing,
    }))
}

/// How many readings are surely below a limit, and how many may be.
fn standings(readings: &Summary, limit: Number) -> Result<(usize, usize), Error> {
    let mut counts = (0, 0);
    for number in &readings.numbers {
        match Between::around(*number, readings.half, "a reading")?.at_least(limit) {
            Standing::NotMet => counts.0 += 1,
            Standing::Open => counts.1 += 1,
            _ => {}
        }
    }
    Ok(counts)
}

/// The average with no reading counted higher than design + 1/4 in.
fn capped_average(readings: &Summary, design: Number, unit: Unit) -> Result<Between, Error> {
    let cap = Quantity::new(quarter()?, Unit::Inch)
        .to(unit)
        .map_or(Number::ZERO, |q| q.number);
    let cap = (exact(design) + cap).get("the average")?;
    let sum = readings
        .numbers
        .iter()
        .fold(exact(0), |sum, number| sum + (*number).min(cap));
    let average = (sum / count(readings.numbers.len() as u64)?).get("the average")?;
    Ok(Between::exactly(average))
}

fn of_average(
    average: Between,
    half: Number,
    design: Number,
    unit: Unit,
    worked: &mut Worked,
) -> Result<Standing, Error> {
    // Every reading may be off the same way, so the average is no surer than one of them.
    let average = Between::around(average.low, half, "the average")?;
    let standing = average.at_least(design);
    worked.formula(
        "average of readings, each counted as design + 1/4 in. at most, >= design",
        Rule::Average.source(),
    );
    worked.find(
        standing,
        match standing {
            Standing::Met => format!(
                "the average reaches the design thickness, {}",
                both(design, unit)
            ),
            Standing::NotMet => format!(
                "the average is below the design thickness, {}",
                both(design, unit)
            ),
            _ => "the average is too near the design thickness to tell".to_owned(),
        },
    );
    Ok(standing)
}

fn of_share(
    below: usize,
    maybe: usize,
    of: usize,
    design: Number,
    unit: Unit,
    worked: &mut Worked,
) -> Standing {
    let standing = if below * 10 > of {
        Standing::NotMet
    } else if (below + maybe) * 10 > of {
        Standing::Open
    } else {
        Standing::Met
    };
    worked.formula(
        "readings below design <= 10 % of readings",
        Rule::TenPercent.source(),
    );
    let unclear = if maybe == 0 {
        String::new()
    } else {
        format!(", {maybe} too near it to tell")
    };
    worked.find(standing, format!("{below} of {of} readings are below the design thickness, {}{unclear}; at most one in ten may be", both(design, unit)));
    standing
}

impl Rule {
    const fn words(self) -> &'static str {
        match self {
            Self::Average => "the average reaches the design thickness",
            Self::TenPercent => "at most one reading in ten is below the design thickness",
        }
    }

    const fn source(self) -> &'static str {
        match self {
            Self::Average => "IBC 2006 and earlier, 1704.11.3",
            Self::TenPercent => "IBC 2009, 1704.12.4; IBC 2018, 1705.14.4",
        }
    }
}

impl Member {
    /// The readings that a place on it needs.
    pub const fn readings(self) -> usize {
        match self {
            Self::Beam => 9,
            Self::Joist => 7,
            Self::Column => 12,
            Self::Hollow | Self::Deck => 4,
        }
    }

    const fn words(self) -> &'static str {
        match self {
            Self::Beam => "a beam",
            Self::Joist => "a joist",
            Self::Column => "a wide-flange column",
            Self::Hollow => "a hollow section",
            Self::Deck => "a deck",
        }
    }
}

/// What the material at a joint comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AtJoint {
    /// Whether it is as thick as the listing asks.
    pub thickness: Standing,
    /// Whether the joint's own fill laps onto it as far as the listing asks.
    pub overlap: Standing,
}

/// Readings at the joint against the listing's own thickness and overlap; the member's design is no part of it.
///
/// # Errors
/// No reading, a length that isn't above zero, an overlap read but none asked for or the reverse.
pub fn at_joint(
    readings: &Readings,
    least: &Known,
    overlap: Option<(&Readings, &Known)>,
) -> Result<Computed<AtJoint>, Error> {
    let mut worked = Worked::of("Sprayed material at the joint");
    worked.formula("every reading >= the listing's least", "the listing");
    let thickness = every("thickness at the joint", readings, least, &mut worked)?;
    let overlap = match overlap {
        None => Standing::Note,
        Some((readings, least)) => every(
            "overlap onto the sprayed material",
            readings,
            least,
            &mut worked,
        )?,
    };
    worked
        .note("the member's own design thickness is another requirement, with its own field test");
    worked.caution("Material taken off to fit a joint is put back to the design thickness up to the joint, as the listing has it.");
    worked.caution("Old sprayed material may hold asbestos: don't disturb it before it is tested.");
    Ok(worked.with(AtJoint { thickness, overlap }))
}

fn every(
    name: &str,
    readings: &Readings,
    least: &Known,
    worked: &mut Worked,
) -> Result<Standing, Error> {
    let unit = readings.length_unit(name)?;
    let summary = readings.summary(name, unit)?;
    let limit = least.above_zero(&format!("the least {name}"), unit)?;
    worked.read(name, readings);
    worked.given(&format!("{name}, at least"), least);
    let between = Between::around(summary.least, summary.half, name)?;
    let standing = between.at_least(limit);
    worked.ranged(
        format!("{name}, least reading"),
        summary.least,
        between,
        unit,
    );
    worked.find(
        standing,
        match standing {
            Standing::Met => format!("{name}: every reading is at least {}", both(limit, unit)),
            Standing::NotMet => format!(
                "{name}: {} is below {}",
                both(summary.least, unit),
                both(limit, unit)
            ),
            _ => format!(
                "{name}: {} is too near {} to tell",
                both(summary.least, unit),
                both(limit, unit)
            ),
        },
    );
    Ok(standing)
}
