//! Sealant: the volume of a bead, and how far a package goes.

use measure::{Number, Quantity, Unit};

use crate::between::Between;
use crate::error::Error;
use crate::exact::{ceiling, counted, exact};
use crate::known::{Known, length_unit};
use crate::units::{cubic, square};
use crate::worked::{Computed, Worked, both};

/// What a bead looks like cut across.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Section {
    /// As wide as the joint and so deep.
    Rectangle {
        /// The width.
        width: Known,
        /// The depth.
        depth: Known,
    },
    /// In a corner, with two equal legs.
    Fillet {
        /// The leg.
        leg: Known,
    },
    /// A round bead laid on a surface.
    Round {
        /// The diameter.
        diameter: Known,
    },
}

/// What is asked of a bead.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BeadAsked {
    /// Its cross-section.
    pub section: Section,
    /// The length to be laid, where the volume for it is wanted.
    pub length: Option<Known>,
    /// The volume of a package, as a cartridge of 10.1 fl oz.
    pub package: Option<Known>,
    /// What is lost in nozzles and tooling, as a percentage of what is used.
    pub loss: Option<Known>,
}

/// A bead.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bead {
    /// Its area cut across, in square inches or square millimetres.
    pub area: Between,
    /// Length for each volume: feet a gallon, or metres a litre; the least where the area is within bounds.
    pub rate: Quantity,
    /// Volume for the length asked for; the most.
    pub volume: Option<Quantity>,
    /// Packages for that length, whole ones.
    pub packages: Option<u64>,
    /// The length that one package makes.
    pub per_package: Option<Quantity>,
}

/// Volume, yield and packages of a bead.
///
/// # Errors
/// A length or volume that isn't above zero, a loss outside 0 to below 100 %.
pub fn bead(asked: &BeadAsked) -> Result<Computed<Bead>, Error> {
    let what = "the bead";
    let mut worked = Worked::of("Sealant bead");
    let (unit, area) = area(&asked.section, &mut worked)?;
    let is_metric = unit == Unit::Millimetre;
    let lost = asked
        .loss
        .as_ref()
        .map_or(Ok(Number::ZERO), |loss| loss.part("the loss"))?;
    let kept = (exact(1) - lost).get(what)?;
    worked.given_if("length, L", asked.length.as_ref());
    worked.given_if("package", asked.package.as_ref());
    worked.given_if("loss, p", asked.loss.as_ref());
    worked.formula(
        "length per volume = 231 cu in./gal × (1 - p) / (area × 12); 1000 mL/L × (1 - p) / area",
        super::COVERAGE_SOURCE,
    );
    // Inches per gallon are feet per gallon by twelve; a litre of a square millimetre is a thousand metres.
    let rate = if is_metric {
        exact(1000) * kept / area.high
    } else {
        exact(231) * kept / area.high / 12
    };
    let rate = rate.get(what)?;
    let rate_unit = if is_metric {
        Unit::MetrePerLitre
    } else {
        Unit::FootPerGallon
    };
    worked.result("area of the bead", area.high, square(unit));
    worked.result("yield", rate, rate_unit);
    let (small, per) = cubic(unit);
    let mut found = Bead {
        area,
        rate: Quantity::new(rate, rate_unit),
        volume: None,
        packages: None,
        per_package: None,
    };
    let length = asked
        .length
        .as_ref()
        .map(|length| length.above_zero("the length", unit))
        .transpose()?;
    if let Some(length) = length {
        let volume = (exact(area.high) * length / kept / per).get(what)?;
        worked.result("volume for the length", volume, small);
        found.volume = Some(Quantity::new(volume, small));
    }
    if let Some(package) = &asked.package {
        let size = package.above_zero("the package", small)?;
        let reach = (exact(size) * per * kept / area.high).get(what)?;
        let (shown, long) = if is_metric {
            (exact(reach) / 1000, Unit::Metre)
        } else {
            (exact(reach) / 12, Unit::Foot)
        };
        let shown = shown.get(what)?;
        worked.step(format!(
            "one package of {} makes {}",
            both(size, small),
            both(shown, long)
        ));
        worked.result("length from one package", shown, long);
        found.per_package = Some(Quantity::new(shown, long));
        if let Some(length) = length {
            let packages = counted(ceiling((exact(length) / reach).get(what)?), "packages")?;
            worked.result("packages", crate::exact::count(packages)?, Unit::Count);
            found.packages = Some(packages);
        }
    }
    Ok(worked.with(found))
}

fn area(section: &Section, worked: &mut Worked) -> Result<(Unit, Between), Error> {
    let what = "the bead";
    match section {
        Section::Rectangle { width, depth } => {
            let unit = length_unit(width.quantity.unit);
            let area = exact(width.above_zero("the width of the bead", unit)?)
                * depth.above_zero("the depth of the bead", unit)?;
            worked.given("width of the bead", width);
            worked.given("depth of the bead", depth);
            worked.formula("area = width × depth", "area of a rectangle");
            Ok((unit, Between::exactly(area.get(what)?)))
        }
        Section::Fillet { leg } => {
            let unit = length_unit(leg.quantity.unit);
            let side = leg.above_zero("the leg of the bead", unit)?;
            worked.given("leg of the bead", leg);
            worked.formula("area = leg² / 2", "area of a triangle");
            Ok((unit, Between::exactly((exact(side) * side / 2).get(what)?)))
        }
        Section::Round { diameter } => {
            let unit = length_unit(diameter.quantity.unit);
            let across = diameter.above_zero("the diameter of the bead", unit)?;
            worked.given("diameter of the bead", diameter);
            worked.formula(
                "area = π d² / 4, with 3.14159 < π < 3.14160",
                "area of a circle",
            );
            let of = |pi: i32| (exact(across) * across * pi / 400_000).get(what);
            Ok((
                unit,
                Between {
                    low: of(314_159)?,
                    high: of(314_160)?,
                },
            ))
        }
    }
}
