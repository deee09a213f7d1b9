//! The units that a caption gives its columns: "in. (mm)", "thickness in in., density in pcf".

use measure::Unit;

use super::super::heading::{Heading, unit_of};
use super::count;

impl Heading {
    /// "MOVEMENT, % OF INSTALLED WIDTH" over columns of movements.
    pub(super) fn take_percent(&mut self, caption: &str) {
        const MOVEMENTS: &[&str] = &["compression", "extension", "shear", "movement"];
        let moves = count(MOVEMENTS, &self.words.to_lowercase()) > 0;
        if self.unit.is_none() && self.selects.is_none() && moves && in_percent(caption) {
            self.unit = Some(Unit::Percent);
        }
    }
}

/// The unit that a caption gives the column by its name: "thickness in in., density in pcf".
pub(super) fn named_unit(caption: &str, heading: &str) -> Option<Unit> {
    let pieces = caption.split([',', ';', ':', '(', ')']);
    let mut units = pieces.filter_map(|piece| {
        let (name, unit) = piece.trim().rsplit_once(" in ")?;
        let unit = unit_of(unit.trim())?;
        let named = heading.trim() == name.trim();
        named.then_some(unit)
    });
    units.next().filter(|_| units.next().is_none())
}

/// Whether a caption says that movements are in percent.
pub(super) fn in_percent(caption: &str) -> bool {
    caption.contains("movement")
        && [", % of", "(% of", "(%)", ", percent of", "in percent of"]
            .iter()
            .any(|words| caption.contains(words))
}

/// The unit that closes a caption behind a comma, and the second one in parentheses.
pub(super) fn units_at_the_end(caption: &str) -> Option<(Unit, Option<Unit>)> {
    let (_, end) = caption.trim_end_matches(['.', ':', ' ']).rsplit_once(',')?;
    Some(match end.trim() {
        "in. (mm" | "in. (mm)" | "inches (mm)" | "in (mm)" => (Unit::Inch, Some(Unit::Millimetre)),
        "mm (in.)" | "mm (in.)." | "mm (in" | "mm (inches)" => (Unit::Millimetre, Some(Unit::Inch)),
        "in" | "inches" | "in inches" => (Unit::Inch, None),
        "mm" | "in mm" | "millimetres" => (Unit::Millimetre, None),
        _ => return None,
    })
}
