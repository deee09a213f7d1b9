//! What is right where a clause was read wrongly, as options of the command.

use clap::{Args, ValueEnum};
use listing::confirm::{Correction, Said, SaidOf};
use listing::{Clause, Presence, Relation};

use crate::fault::Fault;
use crate::shelf::Held;
use crate::show::words::listed;

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
    /// When it applies: a property, a relation and a value, as "joint.width more-than 2 in."
    #[arg(
        long,
        value_name = "CONDITION",
        requires = "correct",
        conflicts_with = "unconditional"
    )]
    applies: Option<String>,
    /// The option it belongs to, as the listing names it
    #[arg(long, value_name = "OPTION", requires = "correct")]
    option: Option<String>,
    /// It belongs to no option
    #[arg(long, requires = "correct", conflicts_with = "option")]
    no_option: bool,
    /// Whether something must, must not or may be there
    #[arg(long, value_enum, requires = "correct", conflicts_with_all = ["relation", "value", "prose"])]
    presence: Option<There>,
    /// A product that will do, as "Maker | Product"; once for each
    #[arg(long, value_name = "PRODUCT", requires = "correct", conflicts_with_all = ["relation", "value", "prose", "presence"])]
    product: Vec<String>,
}

/// Whether something must be there.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum There {
    Required,
    NotAllowed,
    Optional,
}

impl From<There> for Presence {
    fn from(there: There) -> Self {
        match there {
            There::Required => Self::Required,
            There::NotAllowed => Self::Absent,
            There::Optional => Self::Optional,
        }
    }
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
            applies: self.applies.as_deref().map(condition).transpose()?,
            option: if self.no_option {
                Some(String::new())
            } else {
                self.option.clone()
            },
            presence: self.presence.map(Presence::from),
            names: self.product.clone(),
        };
        said.correction(clause, held.reading()).map_err(|wrong| {
            Fault::of_words(wrong.problem, &held.file, &held.text, clause.span).help(wrong.help)
        })
    }
}

/// A condition as it is written: a property, a relation, a value.
fn condition(text: &str) -> Result<SaidOf, Fault> {
    let wrong = || {
        let fault = Fault::of_command(format!("`{text}` is no condition"));
        fault.help(
            "write a property, a relation and a value: `--applies \"joint.width more-than 2 in.\"`",
        )
    };
    let (property, rest) = text.trim().split_once(' ').ok_or_else(wrong)?;
    let (relation, value) = rest.trim().split_once(' ').ok_or_else(wrong)?;
    let relation = Bounded::from_str(relation, true).map_err(|_| {
        let names = Bounded::value_variants()
            .iter()
            .filter_map(ValueEnum::to_possible_value);
        let names: Vec<String> = names.map(|name| format!("`{}`", name.get_name())).collect();
        let fault = Fault::of_command(format!("`{relation}` is no relation"));
        fault.help(format!("the relations are {}", listed(&names)))
    })?;
    Ok(SaidOf {
        property: property.to_owned(),
        relation: relation.into(),
        value: value.trim().to_owned(),
    })
}
