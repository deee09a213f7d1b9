//! Writing quantities as the trade does, in either system or both.
//!
//! A number is written exactly wherever its notation can: inches as mixed fractions to 1/64, everything else in
//! decimals. Where a conversion can't be written exactly it is rounded (inches to the nearest 1/16 unless told
//! otherwise) and marked with `≈`, so that a rounded figure never passes for the one that a verdict used.

use crate::dimension::Dimension;
use crate::number::Number;
use crate::quantity::Quantity;
use crate::unit::{System, Unit};

/// The inch step used for rounding unless told otherwise.
pub const SIXTEENTH: Number = Number::fixed(1, 16);

/// The quantity in its own unit: `2-1/2 in.`, `64 mm`, `4 pcf`, `25 MSG`, `33 %`.
///
/// ```
/// use measure::{Quantity, print};
/// assert_eq!(print::trade(Quantity::parse("2.5 in").unwrap()), "2-1/2 in.");
/// ```
pub fn trade(quantity: Quantity) -> String {
    let Quantity { number, unit } = quantity;
    let written = match unit {
        Unit::Inch | Unit::SquareInch | Unit::Hour => {
            mixed(number).unwrap_or_else(|| decimal(number))
        }
        _ => decimal(number),
    };
    match unit {
        Unit::Count => written,
        Unit::Gauge => format!("{written} gauge"),
        Unit::ScrewNumber => format!("No. {written}"),
        Unit::Swg => format!("No. {written} SWG"),
        Unit::Awg => format!("No. {written} AWG"),
        Unit::Schedule => format!("Schedule {written}"),
        Unit::Degree => format!("{written}°"),
        Unit::PerFahrenheit | Unit::PerKelvin => {
            let millionths = number.times(Number::whole(1_000_000)).unwrap_or(number);
            format!("{} × 10⁻⁶ {}", decimal(millionths), label(unit))
        }
        Unit::Day if number != Number::ONE => format!("{written} days"),
        _ => format!("{written} {}", label(unit)),
    }
}

/// The quantity in its own unit and in the other system's: `2-1/2 in. (63.5 mm)`.
pub fn both(quantity: Quantity) -> String {
    both_to(quantity, SIXTEENTH)
}

/// As [`both`], with inches rounded to the nearest `inch_step`.
pub fn both_to(quantity: Quantity, inch_step: Number) -> String {
    match other_system(quantity.unit).and_then(|unit| quantity.to(unit)) {
        Some(converted) => format!("{} ({})", trade(quantity), rounded(converted, inch_step)),
        None => trade(quantity),
    }
}

/// A converted quantity, rounded to what the trade would write and marked `≈` when that isn't exact. What is small for the step is written
/// to a finer one, so that a film of 1 mm doesn't become one of 1/16 in.
pub fn rounded(quantity: Quantity, inch_step: Number) -> String {
    let number = quantity.number;
    let steps = match quantity.unit {
        Unit::Inch => [inch_step, SIXTY_FOURTH, THOUSANDTH],
        unit => {
            let step = display_step(unit);
            let finer = |by| step.times(by).unwrap_or(step);
            [step, finer(TENTH), finer(HUNDREDTH)]
        }
    };
    let nearest = |step| number.nearest(step);
    let mut near = steps.into_iter().filter_map(nearest);
    let near = near.find(|near| is_near(*near, number));
    // Too small for any step: shown in decimals rather than as nothing.
    let Some(near) = near else {
        return trade(quantity);
    };
    let mark = if near == number { "" } else { "≈ " };
    format!("{mark}{}", trade(Quantity::new(near, quantity.unit)))
}

const SIXTY_FOURTH: Number = Number::fixed(1, 64);
const TENTH: Number = Number::fixed(1, 10);
const HUNDREDTH: Number = Number::fixed(1, 100);
const THOUSANDTH: Number = Number::fixed(1, 1000);

/// Whether a number is rounded by no more than the trade rounds: 3 mm is written as 1/8 in., which is 6 % more. Common practice.
fn is_near(near: Number, number: Number) -> bool {
    let apart = near.minus(number).map(Number::abs);
    let allowed = number.abs().times(Number::fixed(6, 100));
    apart
        .zip(allowed)
        .is_some_and(|(apart, allowed)| apart <= allowed)
}

/// A whole or mixed number with a fraction to 1/64; none when it takes finer.
fn mixed(number: Number) -> Option<String> {
    let under = number.denominator();
    if under > 64 || !(under.cast_unsigned()).is_power_of_two() {
        return None;
    }
    let over = number.numerator().abs();
    let sign = if number.is_negative() { "-" } else { "" };
    let (whole, part) = (over / under, over % under);
    Some(match (whole, part) {
        (_, 0) => format!("{sign}{whole}"),
        (0, _) => format!("{sign}{part}/{under}"),
        _ => format!("{sign}{whole}-{part}/{under}"),
    })
}

/// Decimals, exact where six digits will do, else three digits marked `≈`.
fn decimal(number: Number) -> String {
    match number.exact_decimals() {
        Some(digits) if digits <= 6 => number.to_decimal(digits),
        _ => format!("≈ {}", number.to_decimal(3)),
    }
}

const fn label(unit: Unit) -> &'static str {
    match unit {
        Unit::Inch => "in.",
        Unit::SquareInch => "sq in.",
        Unit::CubicInch => "cu in.",
        Unit::SquareFoot => "sq ft",
        Unit::SquareMillimetre => "mm²",
        Unit::SquareCentimetre => "cm²",
        Unit::SquareMetre => "m²",
        Unit::Micrometre => "µm",
        Unit::KilogramPerCubicMetre => "kg/m³",
        Unit::GramPerSquareMetre => "g/m²",
        Unit::KilogramPerSquareMetre => "kg/m²",
        Unit::PoundPerSquareFoot => "lb/sq ft",
        Unit::Celsius => "°C",
        Unit::Fahrenheit => "°F",
        Unit::FahrenheitRise => "°F rise",
        Unit::KelvinRise => "K rise",
        Unit::Percent => "%",
        Unit::InchOfWater => "in. water",
        Unit::CfmPerSquareFoot => "cfm/sq ft",
        Unit::FluidOunce => "fl oz",
        Unit::CubicFoot => "cu ft",
        Unit::BoardFoot => "bd ft",
        Unit::CubicMetre => "m³",
        Unit::InchFourth => "in⁴",
        Unit::MillimetreFourth => "mm⁴",
        Unit::CentimetreFourth => "cm⁴",
        Unit::SquareFootPerGallon => "sq ft/gal",
        Unit::SquareMetrePerLitre => "m²/L",
        Unit::PerFahrenheit => "per °F",
        Unit::PerKelvin => "per K",
        other => other.symbol(),
    }
}

/// The unit that the other system would use for the same thing, if it has one.
pub const fn other_system(unit: Unit) -> Option<Unit> {
    Some(match (unit.dimension(), unit.system()) {
        (Dimension::Length, System::Customary) => match unit {
            Unit::Foot => Unit::Metre,
            Unit::Mil => Unit::Micrometre,
            _ => Unit::Millimetre,
        },
        (Dimension::Length, System::Metric) => match unit {
            Unit::Metre => Unit::Foot,
            Unit::Micrometre => Unit::Mil,
            _ => Unit::Inch,
        },
        (Dimension::Area, System::Customary) => match unit {
            Unit::SquareFoot => Unit::SquareMetre,
            _ => Unit::SquareCentimetre,
        },
        (Dimension::Area, System::Metric) => match unit {
            Unit::SquareMetre => Unit::SquareFoot,
            _ => Unit::SquareInch,
        },
        (Dimension::MassPerLength, System::Customary) => Unit::KilogramPerMetre,
        (Dimension::MassPerLength, System::Metric) => Unit::PoundPerFoot,
        (Dimension::Density, System::Customary) => Unit::KilogramPerCubicMetre,
        (Dimension::Density, System::Metric) => Unit::PoundPerCubicFoot,
        (Dimension::Temperature, System::Customary) => Unit::Celsius,
        (Dimension::Temperature, System::Metric) => Unit::Fahrenheit,
        (Dimension::TemperatureDifference, System::Customary) => Unit::KelvinRise,
        (Dimension::TemperatureDifference, System::Metric) => Unit::FahrenheitRise,
        (Dimension::Volume, System::Customary) => match unit {
            Unit::FluidOunce => Unit::Millilitre,
            Unit::CubicFoot | Unit::BoardFoot => Unit::CubicMetre,
            _ => Unit::Litre,
        },
        (Dimension::Volume, System::Metric) => match unit {
            Unit::Millilitre => Unit::FluidOunce,
            Unit::CubicMetre => Unit::CubicFoot,
            _ => Unit::Gallon,
        },
        (Dimension::Pressure, System::Customary) => match unit {
            Unit::Ksi => Unit::Megapascal,
            _ => Unit::Pascal,
        },
        (Dimension::Pressure, System::Metric) => match unit {
            Unit::Megapascal => Unit::Ksi,
            _ => Unit::InchOfWater,
        },
        (Dimension::Force, System::Customary) => Unit::Kilonewton,
        (Dimension::Force, System::Metric) => Unit::Kip,
        (Dimension::ForcePerLength, System::Customary) => Unit::KilonewtonPerMetre,
        (Dimension::ForcePerLength, System::Metric) => Unit::KipPerFoot,
        (Dimension::SecondMoment, System::Customary) => Unit::CentimetreFourth,
        (Dimension::SecondMoment, System::Metric) => Unit::InchFourth,
        (Dimension::Coverage, System::Customary) => Unit::SquareMetrePerLitre,
        (Dimension::Coverage, System::Metric) => Unit::SquareFootPerGallon,
        (Dimension::Yield, System::Customary) => Unit::MetrePerLitre,
        (Dimension::Yield, System::Metric) => Unit::FootPerGallon,
        (Dimension::ThermalExpansion, System::Customary) => Unit::PerKelvin,
        (Dimension::ThermalExpansion, System::Metric) => Unit::PerFahrenheit,
        (Dimension::AirFlow, System::Customary) => Unit::LitrePerSecond,
        (Dimension::AirFlow, System::Metric) => Unit::Cfm,
        (Dimension::LeakagePerLength, System::Customary) => Unit::LitrePerSecondMetre,
        (Dimension::LeakagePerLength, System::Metric) => Unit::CfmPerFoot,
        (Dimension::LeakagePerArea, System::Customary) => Unit::LitrePerSecondSquareMetre,
        (Dimension::LeakagePerArea, System::Metric) => Unit::CfmPerSquareFoot,
        _ => return None,
    })
}

/// The step to which a converted value is shown.
const fn display_step(unit: Unit) -> Number {
    match unit {
        Unit::Millimetre
        | Unit::Celsius
        | Unit::Fahrenheit
        | Unit::KelvinRise
        | Unit::FahrenheitRise
        | Unit::SquareCentimetre
        | Unit::PoundPerCubicFoot
        | Unit::Mil => Number::fixed(1, 10),
        Unit::KilogramPerCubicMetre | Unit::Micrometre | Unit::CentimetreFourth => Number::ONE,
        // Small: the step must not swallow them.
        Unit::PerKelvin | Unit::PerFahrenheit => Number::fixed(1, 100_000_000),
        Unit::CubicMetre => Number::fixed(1, 10_000),
        Unit::InchOfWater | Unit::LitrePerSecondMetre | Unit::CfmPerFoot => Number::fixed(1, 1000),
        _ => Number::fixed(1, 100),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &str) {
        assert_eq!(both(Quantity::parse(text).unwrap()), expected);
    }

    #[test]
    fn both_systems() {
        check("2.5 in", "2-1/2 in. (63.5 mm)");
        check("64 mm", "64 mm (≈ 2-1/2 in.)");
        check("1/16 in.", "1/16 in. (≈ 1.6 mm)");
        check("4 pcf", "4 pcf (≈ 64 kg/m³)");
        check("0.036 in.", "0.036 in. (≈ 0.9 mm)");
        check("0.2 mm", "0.2 mm (≈ 0.008 in.)");
        check("3 mm", "3 mm (≈ 1/8 in.)");
        check("2 mm", "2 mm (≈ 5/64 in.)");
        check("1 mm", "1 mm (≈ 0.039 in.)");
        check("0.0179 in.", "0.0179 in. (≈ 0.45 mm)");
        check("25 MSG", "25 gauge");
        check("33 percent", "33 %");
        check("1-1/2 hr", "1-1/2 hr");
        check("40 F", "40 °F (≈ 4.4 °C)");
        // UL 2079's L rating test pressure: 0.30 in. of water is 75 Pa as published, 74.7 Pa exactly.
        check("0.30 in. of water", "0.3 in. water (≈ 74.73 Pa)");
        // 1 cfm/ft is 1.55 L/s·m in published listings, 1.548 to three places.
        check("1 cfm/ft", "1 cfm/ft (≈ 1.548 L/s/m)");
        let of = |number, unit| both(Quantity::new(number, unit));
        // Steel, published as 6.5 and 11.7 millionths.
        assert_eq!(
            of(Number::fixed(65, 10_000_000), Unit::PerFahrenheit),
            "6.5 × 10⁻⁶ per °F (11.7 × 10⁻⁶ per K)"
        );
        assert_eq!(
            of(Number::whole(1330), Unit::InchFourth),
            "1330 in⁴ (≈ 55359 cm⁴)"
        );
        assert_eq!(of(Number::whole(50), Unit::Cfm), "50 cfm (≈ 23.6 L/s)");
    }

    #[test]
    fn what_is_printed_reads_back_the_same() {
        for text in [
            "2-1/2 in.",
            "64 mm",
            "4 pcf",
            "25 gauge",
            "33 %",
            "1-1/2 hr",
            "40 °F",
            "No. 8",
        ] {
            let quantity = Quantity::parse(text).unwrap();
            assert_eq!(Quantity::parse(&trade(quantity)), Ok(quantity), "{text}");
        }
    }
}
