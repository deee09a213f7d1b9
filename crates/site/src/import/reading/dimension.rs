//! Dimensions in words, and what would be right of each.

use measure::{Dimension, Number, Quantity, Unit, print};

/// The dimension as a sentence names it, with its article: "a length".
pub(super) fn in_words(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length => "a length",
        Dimension::Area => "an area",
        Dimension::Volume => "a volume",
        Dimension::MassPerLength => "a mass per length",
        Dimension::MassPerArea => "a mass per area",
        Dimension::Density => "a density",
        Dimension::Temperature => "a temperature",
        Dimension::TemperatureDifference => "a rise in temperature",
        Dimension::Time => "a time",
        Dimension::CalendarTime => "a time in months or years",
        Dimension::Fraction => "a percentage",
        Dimension::Ratio => "a ratio",
        Dimension::Angle => "an angle",
        Dimension::Pressure => "a pressure",
        Dimension::ForcePerLength => "a force per length",
        Dimension::LeakagePerLength => "an air leakage per length",
        Dimension::LeakagePerArea => "an air leakage per area",
        Dimension::Force => "a force",
        Dimension::SecondMoment => "a second moment of area",
        Dimension::Coverage => "an area per volume",
        Dimension::Yield => "a length per volume",
        Dimension::ThermalExpansion => "a thermal expansion",
        Dimension::AirFlow => "a flow of air",
        Dimension::Count => "a count",
        Dimension::Gauge => "a sheet-steel gauge",
        Dimension::ScrewSize => "a screw size",
        Dimension::WireGauge => "a standard wire gauge",
        Dimension::ConductorGauge => "an American wire gauge",
        Dimension::PipeSchedule => "a pipe schedule",
        Dimension::JointWidths => "a multiple of the joint's width",
        Dimension::Multiple => "a multiple",
    }
}

/// What would be right, given the number that was written: "write `4 pcf` or `4 kg/m3`".
pub(super) fn example(dimension: Dimension, number: &str) -> String {
    let spelt = spellings(dimension, number);
    let quoted: Vec<_> = spelt
        .iter()
        .map(|spelling| format!("`{spelling}`"))
        .collect();
    format!("write for example {}", quoted.join(" or "))
}

/// A number that such a quantity may have, for an example.
pub(super) fn ordinary(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Gauge | Dimension::WireGauge | Dimension::ConductorGauge => "20",
        Dimension::Fraction => "33",
        Dimension::Temperature | Dimension::PipeSchedule => "40",
        Dimension::Area | Dimension::LeakagePerLength | Dimension::LeakagePerArea => "1",
        Dimension::ScrewSize => "8",
        Dimension::Angle => "5",
        Dimension::CalendarTime => "12",
        Dimension::TemperatureDifference => "325",
        Dimension::MassPerLength => "30",
        Dimension::ForcePerLength | Dimension::Pressure => "100",
        Dimension::Length
        | Dimension::Volume
        | Dimension::MassPerArea
        | Dimension::Density
        | Dimension::Time
        | Dimension::Ratio
        | Dimension::Count
        | Dimension::Force
        | Dimension::SecondMoment
        | Dimension::Coverage
        | Dimension::Yield
        | Dimension::ThermalExpansion
        | Dimension::AirFlow
        | Dimension::JointWidths
        | Dimension::Multiple => "2",
    }
}

fn spellings(dimension: Dimension, number: &str) -> Vec<String> {
    let with = |units: &[&str]| {
        units
            .iter()
            .map(|unit| format!("{number} {unit}"))
            .collect()
    };
    match dimension {
        Dimension::Length => with(&["in.", "mm"]),
        Dimension::Area => with(&["sq ft", "m2"]),
        Dimension::Volume => with(&["gal", "L"]),
        Dimension::MassPerLength => with(&["lb/ft", "kg/m"]),
        Dimension::MassPerArea => with(&["lb/sq ft", "kg/m2"]),
        Dimension::Density => with(&["pcf", "kg/m3"]),
        Dimension::Temperature => with(&["°F", "°C"]),
        Dimension::TemperatureDifference => with(&["°F rise", "K"]),
        Dimension::Time => with(&["hr", "min"]),
        Dimension::CalendarTime => with(&["months", "years"]),
        Dimension::Fraction => vec![percentage(number)],
        Dimension::Ratio => vec![format!("1:{number}")],
        Dimension::Angle => with(&["deg"]),
        Dimension::Pressure => with(&["psi", "kPa"]),
        Dimension::ForcePerLength => with(&["lbf/ft", "N/m"]),
        Dimension::LeakagePerLength => with(&["cfm/ft", "L/s/m"]),
        Dimension::LeakagePerArea => with(&["cfm/sq ft", "L/s/m2"]),
        Dimension::Force => with(&["kip", "kN"]),
        Dimension::SecondMoment => with(&["in4", "cm4"]),
        Dimension::Coverage => with(&["ft2/gal", "m2/L"]),
        Dimension::Yield => with(&["ft/gal", "m/L"]),
        Dimension::ThermalExpansion => with(&["1/degF", "1/K"]),
        Dimension::AirFlow => with(&["cfm", "L/s"]),
        Dimension::Count => vec![number.to_owned()],
        Dimension::Gauge => vec![number.to_owned(), format!("{number} MSG")],
        Dimension::ScrewSize => vec![format!("No. {number}")],
        Dimension::WireGauge => with(&["SWG"]),
        Dimension::ConductorGauge => with(&["AWG"]),
        Dimension::PipeSchedule => vec![format!("Schedule {number}")],
        Dimension::JointWidths | Dimension::Multiple => with(&["times"]),
    }
}

/// A share as a percentage: 0.33 was probably meant for 33 %, while 33 can only be that.
fn percentage(number: &str) -> String {
    let share = number
        .parse::<Number>()
        .ok()
        .filter(|share| *share > Number::ZERO && *share < Number::ONE);
    match share.and_then(|share| share.times(Number::whole(100))) {
        Some(percent) => print::trade(Quantity::new(percent, Unit::Percent)),
        None => format!("{number} %"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::import::reading::quantity::quantity;

    #[test]
    fn every_example_would_be_read() {
        // Those of structure and flow are written in calculations and not in schedules.
        let no_spelling = [
            Dimension::JointWidths,
            Dimension::Multiple,
            Dimension::Force,
            Dimension::SecondMoment,
            Dimension::Coverage,
            Dimension::Yield,
            Dimension::ThermalExpansion,
            Dimension::AirFlow,
        ];
        for dimension in Dimension::ALL
            .iter()
            .filter(|dimension| !no_spelling.contains(dimension))
        {
            for spelling in spellings(*dimension, ordinary(*dimension)) {
                let read = quantity(*dimension, "packing.depth", &spelling);
                assert!(read.is_ok(), "{dimension}: `{spelling}`: {read:?}");
            }
        }
    }

    #[test]
    fn a_share_is_offered_as_a_percentage() {
        assert_eq!(
            example(Dimension::Fraction, "0.33"),
            "write for example `33 %`"
        );
        assert_eq!(
            example(Dimension::Fraction, "33"),
            "write for example `33 %`"
        );
    }
}
