//! The kinds of quantity a listing states.

use core::fmt;
use core::str::FromStr;

macro_rules! dimensions {
    ($($(#[$doc:meta])* $variant:ident = $name:literal,)*) => {
        /// A kind of quantity. Quantities of one dimension can be compared; others never are.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Dimension { $($(#[$doc])* $variant,)* }

        impl Dimension {
            /// Every dimension, in the order of this page.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The snake-case name, as data files write it.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)* }
            }
        }
    };
}

dimensions! {
    /// A length, width, depth, thickness or spacing.
    Length = "length",
    /// An area.
    Area = "area",
    /// A volume.
    Volume = "volume",
    /// Mass per length, as of a beam.
    MassPerLength = "mass_per_length",
    /// Mass per area, as of a primer coat.
    MassPerArea = "mass_per_area",
    /// Mass per volume.
    Density = "density",
    /// A point on a temperature scale.
    Temperature = "temperature",
    /// A temperature rise or difference: 325 °F of rise is 181 K, not 163 °C.
    TemperatureDifference = "temperature_difference",
    /// A duration.
    Time = "time",
    /// Months and years, which have no exact length in days.
    CalendarTime = "calendar_time",
    /// A share, in percent.
    Fraction = "fraction",
    /// A plain ratio, such as a slope of one in twelve or a dilution.
    Ratio = "ratio",
    /// An angle.
    Angle = "angle",
    /// A pressure or pressure difference.
    Pressure = "pressure",
    /// Force per length.
    ForcePerLength = "force_per_length",
    /// Air leakage per length of joint.
    LeakagePerLength = "leakage_per_length",
    /// Air leakage per area of opening.
    LeakagePerArea = "leakage_per_area",
    /// A force.
    Force = "force",
    /// The second moment of area of a section.
    SecondMoment = "second_moment",
    /// What a volume covers: area per volume.
    Coverage = "coverage",
    /// What a volume fills: length per volume.
    Yield = "yield",
    /// Lengthening per length and degree.
    ThermalExpansion = "thermal_expansion",
    /// A flow of air.
    AirFlow = "air_flow",
    /// A number of things.
    Count = "count",
    /// A sheet-steel gauge number: the lower, the heavier.
    Gauge = "gauge",
    /// A screw size number.
    ScrewSize = "screw_size",
    /// A wire size number (standard wire gauge): the lower, the heavier.
    WireGauge = "wire_gauge",
    /// An American wire gauge number: the lower, the heavier.
    ConductorGauge = "conductor_gauge",
    /// A pipe schedule number.
    PipeSchedule = "pipe_schedule",
    /// A multiple of the joint's width.
    JointWidths = "joint_widths",
    /// A multiple of something the sentence names.
    Multiple = "multiple",
}

impl Dimension {
    /// Whether a lower number means a heavier thing, as with gauges.
    pub const fn lower_is_heavier(self) -> bool {
        matches!(self, Self::Gauge | Self::WireGauge | Self::ConductorGauge)
    }
}

impl fmt::Display for Dimension {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// A name that no dimension has.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("`{0}` is not a dimension; known are length, density, time, fraction and the like")]
pub struct UnknownDimension(String);

impl FromStr for Dimension {
    type Err = UnknownDimension;

    fn from_str(name: &str) -> Result<Self, Self::Err> {
        let known = Self::ALL.iter().find(|d| d.name() == name);
        known
            .copied()
            .ok_or_else(|| UnknownDimension(name.to_owned()))
    }
}
