//! The units, each with its exact size.
//!
//! Sizes are those of NIST SP 811 (2008), appendix B: 1 in. = 25.4 mm exactly, 1 lb = 0.453 592 37 kg
//! exactly, a US gallon is 231 cubic inches. The inch of water is its conventional value (249.0889 Pa).

use core::fmt;
use core::str::FromStr;

use crate::dimension::Dimension;
use crate::number::Number;

/// The system a unit belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum System {
    /// Inches, pounds, degrees Fahrenheit.
    Customary,
    /// Millimetres, kilograms, degrees Celsius.
    Metric,
    /// Hours, percent, counts: the same in both.
    Shared,
}

macro_rules! units {
    ($($(#[$doc:meta])* $variant:ident $symbol:literal $dim:ident $system:ident $num:literal / $den:literal,)*) => {
        /// A unit. Its [`symbol`](Unit::symbol) is what files and JSON carry.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Unit { $($(#[$doc])* $variant,)* }

        impl Unit {
            /// Every unit, in the order of this page.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The symbol, as JSON carries it.
            pub const fn symbol(self) -> &'static str {
                match self { $(Self::$variant => $symbol,)* }
            }

            /// What the unit measures.
            pub const fn dimension(self) -> Dimension {
                match self { $(Self::$variant => Dimension::$dim,)* }
            }

            /// The system the unit belongs to.
            pub const fn system(self) -> System {
                match self { $(Self::$variant => System::$system,)* }
            }

            /// The unit's size in the base unit of its dimension, exactly.
            pub const fn size(self) -> Number {
                match self { $(Self::$variant => Number::fixed($num, $den),)* }
            }
        }
    };
}

units! {
    /// Inch; the base of lengths is the millimetre.
    Inch "in" Length Customary 254 / 10,
    /// Foot.
    Foot "ft" Length Customary 3048 / 10,
    /// Mil, a thousandth of an inch.
    Mil "mil" Length Customary 254 / 10_000,
    /// Millimetre.
    Millimetre "mm" Length Metric 1 / 1,
    /// Centimetre.
    Centimetre "cm" Length Metric 10 / 1,
    /// Metre.
    Metre "m" Length Metric 1000 / 1,
    /// Micrometre.
    Micrometre "um" Length Metric 1 / 1000,
    /// Square inch; the base of areas is the square millimetre.
    SquareInch "in2" Area Customary 64_516 / 100,
    /// Square foot.
    SquareFoot "ft2" Area Customary 9_290_304 / 100,
    /// Square millimetre.
    SquareMillimetre "mm2" Area Metric 1 / 1,
    /// Square centimetre.
    SquareCentimetre "cm2" Area Metric 100 / 1,
    /// Square metre.
    SquareMetre "m2" Area Metric 1_000_000 / 1,
    /// Cubic inch; the base of volumes is the cubic millimetre.
    CubicInch "in3" Volume Customary 16_387_064 / 1000,
    /// US gallon.
    Gallon "gal" Volume Customary 3_785_411_784 / 1000,
    /// US fluid ounce.
    FluidOunce "floz" Volume Customary 3_785_411_784 / 128_000,
    /// Litre.
    Litre "L" Volume Metric 1_000_000 / 1,
    /// Millilitre.
    Millilitre "mL" Volume Metric 1000 / 1,
    /// Cubic foot.
    CubicFoot "ft3" Volume Customary 28_316_846_592 / 1000,
    /// Board foot: a foot square and an inch thick.
    BoardFoot "bd_ft" Volume Customary 2_359_737_216 / 1000,
    /// Cubic metre.
    CubicMetre "m3" Volume Metric 1_000_000_000 / 1,
    /// Pound per foot; the base is the kilogram per metre.
    PoundPerFoot "lb/ft" MassPerLength Customary 45_359_237 / 30_480_000,
    /// Kilogram per metre.
    KilogramPerMetre "kg/m" MassPerLength Metric 1 / 1,
    /// Pound per square foot; the base is the gram per square metre.
    PoundPerSquareFoot "lb/ft2" MassPerArea Customary 453_592_370_000 / 92_903_040,
    /// Gram per square metre.
    GramPerSquareMetre "g/m2" MassPerArea Metric 1 / 1,
    /// Kilogram per square metre.
    KilogramPerSquareMetre "kg/m2" MassPerArea Metric 1000 / 1,
    /// Pound per cubic foot; the base is the kilogram per cubic metre.
    PoundPerCubicFoot "pcf" Density Customary 453_592_370_000 / 28_316_846_592,
    /// Kilogram per cubic metre.
    KilogramPerCubicMetre "kg/m3" Density Metric 1 / 1,
    /// Degree Celsius; the base of temperatures, with an offset for Fahrenheit.
    Celsius "degC" Temperature Metric 1 / 1,
    /// Degree Fahrenheit.
    Fahrenheit "degF" Temperature Customary 5 / 9,
    /// Kelvin of temperature difference.
    KelvinRise "K" TemperatureDifference Metric 1 / 1,
    /// Fahrenheit degree of temperature difference.
    FahrenheitRise "degF_rise" TemperatureDifference Customary 5 / 9,
    /// Second; the base of durations.
    Second "s" Time Shared 1 / 1,
    /// Minute.
    Minute "min" Time Shared 60 / 1,
    /// Hour.
    Hour "hr" Time Shared 3600 / 1,
    /// Day.
    Day "day" Time Shared 86_400 / 1,
    /// Week.
    Week "week" Time Shared 604_800 / 1,
    /// Month.
    Month "month" CalendarTime Shared 1 / 1,
    /// Year.
    Year "year" CalendarTime Shared 12 / 1,
    /// Percent.
    Percent "percent" Fraction Shared 1 / 1,
    /// A ratio to one.
    Ratio "ratio" Ratio Shared 1 / 1,
    /// Degree of arc.
    Degree "deg" Angle Shared 1 / 1,
    /// Pascal.
    Pascal "Pa" Pressure Metric 1 / 1,
    /// Kilopascal.
    Kilopascal "kPa" Pressure Metric 1000 / 1,
    /// Inch of water.
    InchOfWater "inH2O" Pressure Customary 2_490_889 / 10_000,
    /// Pound-force per square inch.
    PoundPerSquareInch "psi" Pressure Customary 44_482_216_152_605 / 6_451_600_000,
    /// Pound-force per square foot.
    PoundForcePerSquareFoot "psf" Pressure Customary 44_482_216_152_605 / 929_030_400_000,
    /// Thousand pounds-force per square inch.
    Ksi "ksi" Pressure Customary 44_482_216_152_605 / 6_451_600,
    /// Megapascal.
    Megapascal "MPa" Pressure Metric 1_000_000 / 1,
    /// Pound-force; the base is the newton.
    PoundForce "lbf" Force Customary 44_482_216_152_605 / 10_000_000_000_000,
    /// Thousand pounds-force.
    Kip "kip" Force Customary 44_482_216_152_605 / 10_000_000_000,
    /// Newton.
    Newton "N" Force Metric 1 / 1,
    /// Kilonewton.
    Kilonewton "kN" Force Metric 1000 / 1,
    /// Thousand pounds-force per foot.
    KipPerFoot "kip/ft" ForcePerLength Customary 44_482_216_152_605 / 3_048_000_000,
    /// Kilonewton per metre.
    KilonewtonPerMetre "kN/m" ForcePerLength Metric 1000 / 1,
    /// Inch to the fourth; the base of second moments is the millimetre to the fourth.
    InchFourth "in4" SecondMoment Customary 4_162_314_256 / 10_000,
    /// Millimetre to the fourth.
    MillimetreFourth "mm4" SecondMoment Metric 1 / 1,
    /// Centimetre to the fourth.
    CentimetreFourth "cm4" SecondMoment Metric 10_000 / 1,
    /// Square foot for each US gallon; the base is the square metre for each litre.
    SquareFootPerGallon "ft2/gal" Coverage Customary 92_903_040 / 3_785_411_784,
    /// Square metre for each litre.
    SquareMetrePerLitre "m2/L" Coverage Metric 1 / 1,
    /// Foot for each US gallon; the base is the metre for each litre.
    FootPerGallon "ft/gal" Yield Customary 304_800_000 / 3_785_411_784,
    /// Metre for each litre.
    MetrePerLitre "m/L" Yield Metric 1 / 1,
    /// Lengthening for each Fahrenheit degree; the base is that for each kelvin.
    PerFahrenheit "1/degF" ThermalExpansion Customary 9 / 5,
    /// Lengthening for each kelvin.
    PerKelvin "1/K" ThermalExpansion Metric 1 / 1,
    /// Cubic foot a minute; the base is the litre a second.
    Cfm "cfm" AirFlow Customary 28_316_846_592 / 60_000_000_000,
    /// Litre a second.
    LitrePerSecond "L/s" AirFlow Metric 1 / 1,
    /// Pound-force per foot; the base is the newton per metre.
    PoundForcePerFoot "lbf/ft" ForcePerLength Customary 44_482_216_152_605 / 3_048_000_000_000,
    /// Newton per metre.
    NewtonPerMetre "N/m" ForcePerLength Metric 1 / 1,
    /// Cubic foot a minute for each foot of joint; the base is the litre a second for each metre.
    CfmPerFoot "cfm/ft" LeakagePerLength Customary 28_316_846_592 / 18_288_000_000,
    /// Litre a second for each metre of joint.
    LitrePerSecondMetre "L/s/m" LeakagePerLength Metric 1 / 1,
    /// Cubic metre an hour for each metre of joint.
    CubicMetrePerHourMetre "m3/h/m" LeakagePerLength Metric 10 / 36,
    /// Cubic foot a minute for each square foot; the base is the litre a second for each square metre.
    CfmPerSquareFoot "cfm/ft2" LeakagePerArea Customary 28_316_846_592 / 5_574_182_400,
    /// Litre a second for each square metre.
    LitrePerSecondSquareMetre "L/s/m2" LeakagePerArea Metric 1 / 1,
    /// A number of things.
    Count "count" Count Shared 1 / 1,
    /// Sheet-steel gauge (manufacturers' standard, galvanized).
    Gauge "gauge" Gauge Shared 1 / 1,
    /// Screw size number.
    ScrewNumber "screw_no" ScrewSize Shared 1 / 1,
    /// Standard wire gauge.
    Swg "SWG" WireGauge Shared 1 / 1,
    /// American wire gauge.
    Awg "AWG" ConductorGauge Shared 1 / 1,
    /// Pipe schedule.
    Schedule "schedule" PipeSchedule Shared 1 / 1,
    /// A multiple of the joint's width.
    TimesJointWidth "times joint width" JointWidths Shared 1 / 1,
    /// A multiple of what the sentence names.
    Times "times" Multiple Shared 1 / 1,
}

impl Unit {
    /// The number of base units at the unit's zero: Fahrenheit's zero is -160/9 °C.
    pub const fn offset(self) -> Number {
        match self {
            Self::Fahrenheit => Number::fixed(-160, 9),
            _ => Number::ZERO,
        }
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.symbol())
    }
}

/// A symbol that no unit has.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("`{0}` is not a unit; known are {known}", known = known_symbols())]
pub struct UnknownUnit(String);

fn known_symbols() -> String {
    let symbols: Vec<_> = Unit::ALL.iter().map(|unit| unit.symbol()).collect();
    symbols.join(", ")
}

impl FromStr for Unit {
    type Err = UnknownUnit;

    fn from_str(symbol: &str) -> Result<Self, Self::Err> {
        let known = Self::ALL.iter().find(|unit| unit.symbol() == symbol);
        known.copied().ok_or_else(|| UnknownUnit(symbol.to_owned()))
    }
}

impl serde::Serialize for Unit {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.symbol())
    }
}

impl<'de> serde::Deserialize<'de> for Unit {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

impl schemars::JsonSchema for Unit {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Unit".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let symbols: Vec<_> = Self::ALL.iter().map(|unit| unit.symbol()).collect();
        schemars::json_schema!({ "type": "string", "enum": symbols })
    }
}
