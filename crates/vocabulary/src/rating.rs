//! Rating letters, and the limits of temperature behind them.

use measure::Quantity;
use serde::Deserialize;

/// A rating by its letter or letters.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rating {
    /// The letter or letters: `F`, `FTH`, `EI`.
    pub letter: String,
    /// The plain title.
    pub title: String,
    /// What it states.
    pub meaning: String,
    /// The standards that use it, by number.
    pub standards: Vec<String>,
    /// Where the meaning is from.
    pub source: String,
}

/// A limit on how far the unexposed side may warm in a fire test.
///
/// It is a rise above the temperature at the start, never a point on a scale.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TemperatureLimit {
    /// The name.
    pub name: String,
    /// The plain title.
    pub title: String,
    /// One sentence that defines it.
    pub definition: String,
    /// The rise, in the unit of the standard.
    pub rise: Quantity,
    /// The rise in kelvins as the standard rounds it, where the standard states both.
    pub rise_metric: Option<Quantity>,
    /// Where the figure is from.
    pub source: String,
}
