//! What is right where a clause was read wrongly, as options of the command.

use clap::{Args, ValueEnum};
use listing::confirm::{Correction, Said};
use listing::{Clause, Relation};

use crate::fault::Fault;
use crate::shelf::Held;

#[derive(Debug, Args)]
#[command(next_help_heading = "Correcting a clause")]
pub(super) struct Correct {
    /// A clause that was read wrongly; say what is right with the options below
    #[arg(long = "correct", id = "correct", value_name = "ID")]
    pub(super) clause: Option<String>,
    /// How the number is bounded
    #[arg(long, value_enum, requires = "correct")]
    relation: Option<Bounded>,
    /// The value, as "4 in." or "1/2 to 3/4 in."
    #[arg(long, requires = "correct")]
    value: Option<String>,
    /// What it is about, as packing.density
    #[arg(long, requires = "correct")]
    property: Option<String>,
    /// It is no bound: its words are for a person to answer
    #[arg(long, requires = "correct", conflicts_with_all = ["relation", "value"])]
    prose: bool,
    /// It always applies, whatever condition was read
    #[arg(long, requires = "correct")]
    unconditional: bool,
}

/// How a number is bounded.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Bounded {
    AtLeast,
    AtMost,
    LessThan,
    MoreThan,
    Nominal,
    Exactly,
    Between,
    About,
}

impl From<Bounded> for Relation {
    fn from(bounded: Bounded) -> Self {
        match bounded {
            Bounded::AtLeast => Self::AtLeast,
            Bounded::AtMost => Self::AtMost,
            Bounded::LessThan => Self::LessThan,
            Bounded::MoreThan => Self::MoreThan,
            Bounded::Nominal => Self::Nominal,
            Bounded::Exactly => Self::Exactly,
            Bounded::Between => Self::Between,
            Bounded::About => Self::About,
        }
    }
}

impl Correct {
    /// Whether a correction is asked for.
    pub(super) const fn is_asked(&self) -> bool {
        self.clause.is_some()
    }

    /// The correction of a clause.
    ///
    /// # Errors
    /// When nothing is said to be right, or what is said doesn't fit together.
    pub(super) fn correction(&self, clause: &Clause, held: &Held) -> Result<Correction, Fault> {
        let said = Said {
            property: self.property.clone(),
            relation: self.relation.map(Relation::from),
            value: self.value.clone(),
            prose: self.prose,
            unconditional: self.unconditional,
            ..Said::default()
        };
        said.correction(clause, held.reading()).map_err(|wrong| {
            Fault::of_words(wrong.problem, &held.file, &held.text, clause.span).help(wrong.help)
        })
    }
}
