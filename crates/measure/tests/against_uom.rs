//! Conversions held against `uom`, a general units library, and against NIST SP 811.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

use measure::{Number, Quantity, Unit};

fn converted(text: &str, unit: Unit) -> Number {
    Quantity::parse(text).unwrap().to(unit).unwrap().number
}

fn approximate(number: Number) -> f64 {
    // Only for comparing with a library that knows no exact numbers.
    number.to_decimal(12).parse().unwrap()
}

/// Within the seven digits that NIST SP 811 prints, and `uom` carries, of factors that aren't exact decimals.
#[track_caller]
fn near(ours: Number, theirs: f64) {
    let ours = approximate(ours);
    assert!(
        (ours - theirs).abs() <= theirs.abs() * 1e-7,
        "{ours} against {theirs}"
    );
}

#[test]
fn lengths() {
    use uom::si::f64::Length;
    use uom::si::length::{centimeter, foot, inch, meter, micrometer, mil, millimeter};
    near(
        converted("2-1/2 in.", Unit::Millimetre),
        Length::new::<inch>(2.5).get::<millimeter>(),
    );
    near(
        converted("64 mm", Unit::Inch),
        Length::new::<millimeter>(64.0).get::<inch>(),
    );
    near(
        converted("12 ft", Unit::Metre),
        Length::new::<foot>(12.0).get::<meter>(),
    );
    near(
        converted("125 mil", Unit::Micrometre),
        Length::new::<mil>(125.0).get::<micrometer>(),
    );
    near(
        converted("1.5 cm", Unit::Inch),
        Length::new::<centimeter>(1.5).get::<inch>(),
    );
}

#[test]
fn densities_pressures_and_temperatures() {
    use uom::si::f64::{MassDensity, Pressure, TemperatureInterval, ThermodynamicTemperature};
    use uom::si::mass_density::{kilogram_per_cubic_meter, pound_per_cubic_foot};
    use uom::si::pressure::{pascal, psi};
    use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
    near(
        converted("4 pcf", Unit::KilogramPerCubicMetre),
        MassDensity::new::<pound_per_cubic_foot>(4.0).get::<kilogram_per_cubic_meter>(),
    );
    near(
        converted("150 psi", Unit::Pascal),
        Pressure::new::<psi>(150.0).get::<pascal>(),
    );
    near(
        converted("400 °F", Unit::Celsius),
        ThermodynamicTemperature::new::<degree_fahrenheit>(400.0).get::<degree_celsius>(),
    );
    // A rise is another dimension than a temperature: 325 °F of rise is 180.6 K (UL 2079, ASTM E814: 181).
    near(
        converted("325 °F rise", Unit::KelvinRise),
        TemperatureInterval::new::<uom::si::temperature_interval::degree_fahrenheit>(325.0)
            .get::<uom::si::temperature_interval::kelvin>(),
    );
}

#[test]
fn exact_where_the_definition_is_exact() {
    // NIST SP 811 (2008), B.8: the inch is 25.4 mm exactly, the pound 0.453 592 37 kg, the US gallon 231 cubic inches.
    assert_eq!(
        converted("1 in.", Unit::Millimetre),
        Number::new(254, 10).unwrap()
    );
    assert_eq!(
        converted("1/16 in.", Unit::Millimetre),
        Number::new(127, 80).unwrap()
    );
    assert_eq!(converted("1 gal", Unit::CubicInch), Number::from(231));
    assert_eq!(
        converted("1 ft", Unit::Millimetre),
        Number::new(3048, 10).unwrap()
    );
    assert_eq!(converted("127 mm", Unit::Inch), Number::from(5));
    assert_eq!(
        converted("204 °C", Unit::Fahrenheit),
        Number::new(1996, 5).unwrap()
    );
    // 1 and 5 cfm/ft are 1.548 and 7.742 L/s per metre (1.55 as listings print it).
    assert_eq!(
        converted("1 cfm/ft", Unit::LitrePerSecondMetre).to_decimal(3),
        "1.548"
    );
    assert_eq!(
        converted("5 cfm/ft", Unit::LitrePerSecondMetre).to_decimal(3),
        "7.742"
    );
    // 0.30 in. of water is 74.7 Pa (75 as UL 2079 is quoted).
    assert_eq!(
        converted("0.30 in. of water", Unit::Pascal).to_decimal(1),
        "74.7"
    );
}

#[test]
fn a_gauge_is_greater_the_lower_its_number() {
    let gauge = |text: &str| Quantity::parse(text).unwrap();
    assert_eq!(
        gauge("20 ga").compare(gauge("25 MSG")),
        Some(core::cmp::Ordering::Greater)
    );
    assert_eq!(gauge("20 ga").compare(gauge("0.036 in.")), None);
}

/// Exact sizes by NIST SP 811 (2008), B.8; the board foot is a foot square and an inch thick.
#[test]
fn units_of_structure_and_flow() {
    let one = |unit: Unit, to: Unit| Quantity::new(Number::ONE, unit).to(to).unwrap().number;
    assert_eq!(one(Unit::CubicFoot, Unit::BoardFoot), Number::from(12));
    assert_eq!(one(Unit::Kip, Unit::PoundForce), Number::from(1000));
    assert_eq!(one(Unit::Ksi, Unit::PoundPerSquareInch), Number::from(1000));
    assert_eq!(
        one(Unit::PoundPerSquareInch, Unit::PoundForcePerSquareFoot),
        Number::from(144)
    );
    assert_eq!(
        one(Unit::KipPerFoot, Unit::PoundForcePerFoot),
        Number::from(1000)
    );
    assert_eq!(
        one(Unit::InchFourth, Unit::MillimetreFourth).to_decimal(4),
        "416231.4256"
    );
    near(one(Unit::Kip, Unit::Kilonewton), 4.448_222);
    near(one(Unit::Cfm, Unit::LitrePerSecond), 0.471_947_4);
    near(one(Unit::PerFahrenheit, Unit::PerKelvin), 1.8);
    // A gallon is 231 cubic inches: as a film of one mil it covers 231,000 sq in., 1604.17 sq ft.
    near(
        one(Unit::SquareFootPerGallon, Unit::SquareMetrePerLitre),
        0.024_542_386_7,
    );
    near(one(Unit::FootPerGallon, Unit::MetrePerLitre), 0.080_519_642);
}
