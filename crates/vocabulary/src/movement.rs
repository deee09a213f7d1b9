//! Movement classes.

use serde::Deserialize;

/// A movement class: the cycling a joint goes through before its fire test (UL 2079, ASTM E1399).
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MovementClass {
    /// The roman numeral.
    #[serde(rename = "name")]
    pub roman: String,
    /// What makes the joint move.
    pub cause: String,
    /// One sentence that defines it.
    pub definition: String,
    /// Where the figures are from.
    pub source: String,
    /// The cycling, one phase after the other.
    pub phases: Vec<Phase>,
}

/// Cycling at one rate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Phase {
    /// The number of cycles.
    pub cycles: u32,
    /// Cycles in a minute.
    pub per_minute: u32,
}

impl MovementClass {
    /// The cycles of all phases together.
    pub fn cycles(&self) -> u32 {
        self.phases
            .iter()
            .map(|phase| phase.cycles)
            .fold(0, u32::saturating_add)
    }
}
