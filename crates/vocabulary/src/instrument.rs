//! What a property is measured with, and how finely.

use core::cmp::Ordering;

use measure::Quantity;

/// An instrument or method, with the smallest difference it can tell.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Instrument {
    /// Its name, with the standard of its use where there is one.
    pub name: String,
    /// The smallest difference it can tell anywhere on its scale. None where nothing is measured: a label or
    /// certificate is read. For a temperature this is a temperature difference.
    pub resolution: Option<Quantity>,
    /// Finer steps on the lower part of its scale, lowest first; empty for most.
    pub steps: Vec<Step>,
}

/// A part of an instrument's scale with a step of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Step {
    /// The step holds for readings up to this one.
    pub up_to: Quantity,
    /// The smallest difference told there.
    pub step: Quantity,
}

impl Instrument {
    /// The smallest difference that can be told at a reading.
    ///
    /// A wet-film comb has fine teeth for thin films and coarse ones for thick films (ASTM D4414), so that the
    /// step depends on where the reading stands. A reading in another dimension gets the coarsest step.
    ///
    /// ```
    /// use measure::Quantity;
    /// let wet = vocabulary::vocabulary().property("coating.wet_thickness").unwrap();
    /// let comb = wet.instruments.first().unwrap();
    /// let at = |text| comb.resolution_at(Quantity::parse(text).unwrap()).unwrap().to_string();
    /// assert_eq!(at("8 mil"), "1 mil");
    /// assert_eq!(at("1/8 in."), "5 mil");
    /// ```
    pub fn resolution_at(&self, reading: Quantity) -> Option<Quantity> {
        let reaches = |step: &&Step| {
            matches!(
                reading.compare(step.up_to),
                Some(Ordering::Less | Ordering::Equal)
            )
        };
        self.steps
            .iter()
            .find(reaches)
            .map(|step| step.step)
            .or(self.resolution)
    }
}
