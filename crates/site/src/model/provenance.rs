//! Where a value comes from.

use core::fmt;

use jiff::civil::Date;
use measure::Quantity;
use serde::{Deserialize, Serialize};

/// Where a value comes from, and when.
#[derive(
    Debug, Clone, Default, PartialEq, Eq, Hash, Serialize, Deserialize, schemars::JsonSchema,
)]
pub struct Provenance {
    /// How it is known.
    #[serde(flatten)]
    pub kind: ProvenanceKind,
    /// The day it was seen, measured or stated.
    pub date: Option<Date>,
}

/// How a value is known.
#[derive(
    Debug, Clone, Default, PartialEq, Eq, Hash, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(tag = "source", rename_all = "snake_case")]
pub enum ProvenanceKind {
    /// From a drawing.
    Drawing {
        /// The sheet, such as `A-801`.
        sheet: String,
    },
    /// From a submittal.
    Submittal {
        /// Its reference, such as `07 84 43-03`.
        reference: String,
    },
    /// Seen in place.
    Witnessed {
        /// By whom, where that is said.
        by: Option<String>,
    },
    /// Measured in place.
    Measured {
        /// What with, such as `tape`.
        instrument: String,
        /// The smallest difference it shows.
        resolution: Option<Quantity>,
        /// Each reading, in the order taken; empty where only the value was noted.
        readings: Vec<Quantity>,
    },
    /// Somebody's word.
    StatedBy {
        /// Whose, such as `framing foreman's log`.
        who: String,
    },
    /// Nobody said where the value comes from.
    #[default]
    Unstated,
}

impl fmt::Display for Provenance {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.kind.fmt(f)?;
        match self.date {
            Some(date) => write!(f, "; {date}"),
            None => Ok(()),
        }
    }
}

impl fmt::Display for ProvenanceKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Drawing { sheet } => write!(f, "drawing {sheet}"),
            Self::Submittal { reference } => write!(f, "submittal {reference}"),
            Self::Witnessed { by: None } => f.write_str("witnessed"),
            Self::Witnessed { by: Some(by) } => write!(f, "witnessed by {by}"),
            Self::Measured {
                instrument,
                resolution,
                readings,
            } => {
                write!(f, "measured: {instrument}")?;
                if let Some(resolution) = resolution {
                    write!(f, ", {resolution}")?;
                }
                for (index, reading) in readings.iter().enumerate() {
                    f.write_str(if index == 0 { "; readings " } else { ", " })?;
                    write!(f, "{reading}")?;
                }
                Ok(())
            }
            Self::StatedBy { who } => write!(f, "stated: {who}"),
            Self::Unstated => f.write_str("no source stated"),
        }
    }
}
