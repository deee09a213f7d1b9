use clap::{Args, ValueEnum};
use schemars::schema_for;

use crate::answer::Answer;
use crate::checking::Check;

/// Prints the JSON Schema of what a command gives with --json
#[derive(Debug, Args)]
#[command(after_long_help = "Example: everyclause schema check > check.schema.json")]
pub(crate) struct SchemaOf {
    /// The command
    #[arg(value_enum, default_value = "read")]
    of: Contract,
}

/// What has a schema.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum Contract {
    /// A listing as read
    Read,
    /// A project as checked
    Check,
    /// A joint as explained
    Explain,
    /// What to ask whom
    Questions,
    /// Two editions compared
    Compare,
    /// A worked calculation
    Calc,
    /// A mark's work card
    Work,
    /// The quantities of a schedule
    #[value(name = "takeoff")]
    TakeOff,
    /// The leakage of smoke barriers
    Leakage,
    /// Which listings fit
    Find,
    /// What another product would come to
    Substitute,
    /// What a look through a store came to
    Verify,
    /// Who changed what in a store
    Journal,
}

impl SchemaOf {
    /// The schema.
    pub(crate) fn run(self) -> Answer {
        Answer::json(&self.of.schema())
    }
}

impl Contract {
    fn schema(self) -> schemars::Schema {
        match self {
            Self::Read => schema_for!(crate::source::ReadFrom<'_>),
            Self::Check => schema_for!(Check),
            Self::Explain => schema_for!(crate::checking::Checked),
            Self::Questions => schema_for!(Vec<conformance::Question>),
            Self::Compare => schema_for!(Vec<conformance::Change>),
            Self::Calc => schema_for!(engineering::Worked),
            Self::Work => schema_for!(workcard::Card),
            Self::TakeOff => schema_for!(workcard::quantities::Quantities),
            Self::Find => schema_for!(crate::finding::Finds),
            Self::Substitute => schema_for!(selection::substitution::Substitution),
            Self::Verify => schema_for!(store::Verified),
            Self::Journal => schema_for!(Vec<store::Made>),
            Self::Leakage => schema_for!(crate::leakage::Leakages),
        }
    }
}
