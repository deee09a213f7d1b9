//! The band of nominal widths that a designation's number stands for.

use core::fmt;

use measure::{Number, Quantity, Unit};

use super::{Designation, JointKind};

/// A band of nominal joint widths.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct WidthBand {
    /// The width is greater than this.
    pub over: Option<Quantity>,
    /// The width is this or less.
    pub up_to: Option<Quantity>,
}

impl Designation {
    /// The band of nominal widths the number stands for; none where the convention gives none.
    ///
    /// ```
    /// use vocabulary::Designation;
    /// let band = |text| Designation::parse(text).unwrap().width_band().unwrap().to_string();
    /// assert_eq!(band("HW-D-1999"), "over 2 in. to 6 in.");
    /// assert_eq!(band("HW-D-2000"), "over 6 in. to 12 in.");
    /// ```
    pub fn width_band(&self) -> Option<WidthBand> {
        let thousands = self.number / 1000;
        if self.kind == JointKind::Perimeter && thousands > 2 {
            return None;
        }
        let (over, up_to) = match thousands {
            0 => (None, Some(2)),
            1 => (Some(2), Some(6)),
            2 => (Some(6), Some(12)),
            3 => (Some(12), Some(24)),
            4 => (Some(24), None),
            _ => return None,
        };
        Some(WidthBand {
            over: over.map(inches),
            up_to: up_to.map(inches),
        })
    }
}

impl WidthBand {
    /// Whether a width lies in the band, exactly; none where it isn't a length.
    ///
    /// ```
    /// use measure::Quantity;
    /// use vocabulary::Designation;
    /// let band = Designation::parse("HW-D-1001").unwrap().width_band().unwrap();
    /// let contains = |text| band.contains(Quantity::parse(text).unwrap());
    /// assert_eq!(contains("2 in."), Some(false));
    /// assert_eq!(contains("2-1/16 in."), Some(true));
    /// assert_eq!(contains("152.4 mm"), Some(true));
    /// assert_eq!(contains("4 pcf"), None);
    /// ```
    pub fn contains(&self, width: Quantity) -> Option<bool> {
        let mut inside = true;
        if let Some(over) = self.over {
            inside &= width.compare(over)?.is_gt();
        }
        if let Some(up_to) = self.up_to {
            inside &= width.compare(up_to)?.is_le();
        }
        Some(inside)
    }
}

impl fmt::Display for WidthBand {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.over, self.up_to) {
            (Some(over), Some(up_to)) => write!(f, "over {over} to {up_to}"),
            (Some(over), None) => write!(f, "over {over}"),
            (None, Some(up_to)) => write!(f, "{up_to} or less"),
            (None, None) => f.write_str("any width"),
        }
    }
}

fn inches(whole: i32) -> Quantity {
    Quantity::new(Number::whole(whole), Unit::Inch)
}
