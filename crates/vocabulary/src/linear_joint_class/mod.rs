//! The European class of a linear joint seal (EN 13501-2): `EI 120 – V – M30 – B – W 20 to 100`.
//!
//! | field | written | means |
//! |---|---|---|
//! | rating | `E 120`, `EI 120`, `E 120, EI 60` | minutes of integrity, or of integrity and insulation |
//! | orientation | `H`, `V`, `T` | joint in a floor; vertical in a wall; horizontal in a wall |
//! | movement | `X`, `M30`, `M 12,5` | none (up to 7.5 % is allowed); induced, in percent of the width |
//! | splices | `M`, `F`, `B` | made in the factory; made on site; both |
//! | width | `W 20 to 100` | the range of widths in millimetres |
//!
//! Fields are parted by hyphens or dashes, with spaces or none; a decimal point may be a comma; the last field may
//! name its unit. The sign of an induced movement isn't part of the class. The classes of time are those of
//! EN 13501-2 (from memory): another number of minutes is refused.

mod read;

use core::fmt;

use measure::Quantity;

pub use read::{ClassError, Field};

/// A class, decoded.
///
/// ```
/// use vocabulary::LinearJointClass;
/// let class = LinearJointClass::parse("EI 120 - V - M 12,5 - F - W 10 to 50").unwrap();
/// assert_eq!(class.to_string(), "EI 120 – V – M12.5 – F – W 10 to 50");
/// assert_eq!(
///     class.describe(),
///     "integrity and insulation 120 minutes; vertical joint in a wall; \
///      induced movement 12.5 percent of the width; splices made on site; widths 10 mm to 50 mm",
/// );
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LinearJointClass {
    /// The ratings, in the order written; never empty.
    pub ratings: Vec<ClassRating>,
    /// How the joint runs and in what.
    pub orientation: Orientation,
    /// The movement it was tested with.
    pub movement: InducedMovement,
    /// Where splices may be made.
    pub splices: Splices,
    /// The widths it holds for.
    pub widths: WidthRange,
}

/// A criterion with its minutes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ClassRating {
    /// What holds.
    pub criterion: Criterion,
    /// For how many minutes.
    pub minutes: u16,
}

/// What holds for the time of the class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Criterion {
    /// E.
    Integrity,
    /// EI.
    IntegrityAndInsulation,
}

/// How a joint runs, and in what.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Orientation {
    /// H: in a floor.
    HorizontalInFloor,
    /// V: vertical, in a wall.
    VerticalInWall,
    /// T: horizontal, in a wall.
    HorizontalInWall,
}

/// The movement a seal was tested with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InducedMovement {
    /// X: none; up to 7.5 % is allowed.
    None,
    /// M: this percentage of the width.
    Percent(Quantity),
}

/// Where splices of the seal may be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Splices {
    /// M.
    Manufactured,
    /// F.
    Field,
    /// B.
    Both,
}

/// A range of widths, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WidthRange {
    /// The least.
    pub least: Quantity,
    /// The greatest.
    pub greatest: Quantity,
}

impl LinearJointClass {
    /// The class in words.
    pub fn describe(&self) -> String {
        let ratings: Vec<_> = self
            .ratings
            .iter()
            .map(|rating| format!("{} {} minutes", rating.criterion.title(), rating.minutes))
            .collect();
        let movement = match self.movement {
            InducedMovement::None => "no movement (up to 7.5 percent is allowed)".to_owned(),
            InducedMovement::Percent(percent) => {
                format!("induced movement {} percent of the width", plain(percent))
            }
        };
        format!(
            "{}; {}; {movement}; {}; widths {} mm to {} mm",
            ratings.join(" and "),
            self.orientation.title(),
            self.splices.title(),
            plain(self.widths.least),
            plain(self.widths.greatest),
        )
    }

    /// The minutes for which integrity holds: the longest of all its ratings.
    ///
    /// ```
    /// use vocabulary::LinearJointClass;
    /// let class = LinearJointClass::parse("E 120, EI 60 - H - X - B - W 31 to 100").unwrap();
    /// assert_eq!((class.integrity_minutes(), class.insulation_minutes()), (Some(120), Some(60)));
    /// ```
    pub fn integrity_minutes(&self) -> Option<u16> {
        self.ratings.iter().map(|rating| rating.minutes).max()
    }

    /// The minutes for which integrity and insulation hold; none where the class states integrity alone.
    pub fn insulation_minutes(&self) -> Option<u16> {
        let insulating =
            |rating: &&ClassRating| rating.criterion == Criterion::IntegrityAndInsulation;
        self.ratings
            .iter()
            .filter(insulating)
            .map(|rating| rating.minutes)
            .max()
    }
}

impl WidthRange {
    /// Whether a width lies in the range, exactly; none where it isn't a length.
    pub fn contains(&self, width: Quantity) -> Option<bool> {
        Some(width.compare(self.least)?.is_ge() && width.compare(self.greatest)?.is_le())
    }
}

impl fmt::Display for LinearJointClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, rating) in self.ratings.iter().enumerate() {
            let comma = if at == 0 { "" } else { ", " };
            write!(f, "{comma}{} {}", rating.criterion.code(), rating.minutes)?;
        }
        write!(f, " – {} – ", self.orientation.code())?;
        match self.movement {
            InducedMovement::None => f.write_str("X")?,
            InducedMovement::Percent(percent) => write!(f, "M{}", plain(percent))?,
        }
        let (least, greatest) = (plain(self.widths.least), plain(self.widths.greatest));
        write!(f, " – {} – W {least} to {greatest}", self.splices.code())
    }
}

/// The number alone, as a decimal where it has one.
fn plain(quantity: Quantity) -> String {
    let digits = quantity.number.exact_decimals().unwrap_or(0);
    quantity.number.to_decimal(digits)
}

impl Criterion {
    /// The letters.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Integrity => "E",
            Self::IntegrityAndInsulation => "EI",
        }
    }

    /// In words.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Integrity => "integrity",
            Self::IntegrityAndInsulation => "integrity and insulation",
        }
    }
}

impl Orientation {
    /// The letter.
    pub const fn code(self) -> &'static str {
        match self {
            Self::HorizontalInFloor => "H",
            Self::VerticalInWall => "V",
            Self::HorizontalInWall => "T",
        }
    }

    /// In words.
    pub const fn title(self) -> &'static str {
        match self {
            Self::HorizontalInFloor => "joint in a floor",
            Self::VerticalInWall => "vertical joint in a wall",
            Self::HorizontalInWall => "horizontal joint in a wall",
        }
    }
}

impl Splices {
    /// The letter.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Manufactured => "M",
            Self::Field => "F",
            Self::Both => "B",
        }
    }

    /// In words.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Manufactured => "splices made in the factory",
            Self::Field => "splices made on site",
            Self::Both => "splices made in the factory and on site",
        }
    }
}
