//! What is right where a clause was read wrongly, as options of the command.

use clap::{Args, ValueEnum};
use listing::confirm::Correction;
use listing::{Clause, Relation};
use measure::Quantity;
use vocabulary::vocabulary;

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
        let wrong = |problem: String| Fault::of_words(problem, &held.file, &held.text, clause.span);
        if self.relation.is_none()
            && self.value.is_none()
            && self.property.is_none()
            && !self.prose
            && !self.unconditional
        {
            return Err(wrong(format!("nothing says what is right of clause {}", clause.id))
                .help("add what was read wrongly: `--relation`, `--value`, `--property`, `--prose` or `--unconditional`"));
        }
        let property = self
            .property
            .as_deref()
            .map(|name| property(name, held))
            .transpose()?;
        let mut correction = Correction {
            property,
            prose: self.prose,
            unconditional: self.unconditional,
            ..Correction::default()
        };
        if self.relation.is_some() || self.value.is_some() {
            let relation = self
                .relation
                .map(Relation::from)
                .or_else(|| clause.bound().map(|bound| bound.relation));
            let relation = relation.ok_or_else(|| {
                wrong(format!("clause {} was read as no bound", clause.id))
                    .help("add `--relation`, such as `--relation at-least`")
            })?;
            if self.value.is_none() && clause.bound().is_none() {
                return Err(
                    wrong(format!("clause {} was read without a number", clause.id))
                        .help("add `--value`, such as `--value \"4 in.\"`"),
                );
            }
            correction.relation = Some(relation);
            if let Some(text) = &self.value {
                (correction.lo, correction.hi) = values(text, relation)?;
                fits(
                    correction.lo.or(correction.hi),
                    correction.property.as_deref().unwrap_or(&clause.property),
                )?;
            } else if relation == Relation::Between
                && clause
                    .bound()
                    .is_some_and(|bound| bound.lo.is_none() || bound.hi.is_none())
            {
                return Err(wrong("one number can't be a range".to_owned())
                    .help("add both ends: `--value \"1/2 to 3/4 in.\"`"));
            }
        }
        Ok(correction)
    }
}

/// A property of the vocabulary, or one local to the listing.
fn property(name: &str, held: &Held) -> Result<String, Fault> {
    let is_local = || {
        held.reading()
            .clauses
            .iter()
            .any(|clause| clause.property == name)
    };
    if vocabulary().property(name).is_some() || is_local() {
        return Ok(name.to_owned());
    }
    let fault = Fault::of_command(format!("there is no property `{name}`"));
    Err(match vocabulary().nearest_property(name) {
        Some(near) => fault.help(format!("is `{}` meant?", near.name)),
        None => fault.help("write `component.attribute`; `everyclause glossary packing` shows what a component has"),
    })
}

/// The low and the high value, placed as the relation asks for.
fn values(text: &str, relation: Relation) -> Result<(Option<Quantity>, Option<Quantity>), Fault> {
    let fault = |text: &str, why: String| {
        Fault::of_command(format!("`{text}` is no value: {why}"))
            .help("write a number with its unit: `4 in.`, `1/2 to 3/4 in.`, `33 %`")
    };
    let one =
        |text: &str| Quantity::parse(text.trim()).map_err(|error| fault(text, error.to_string()));
    match (text.split_once(" to "), relation) {
        (Some((low, high)), Relation::Between) => {
            let high = one(high)?;
            // "1/2 to 3/4 in.": the unit of both stands with the second.
            let low = Quantity::parse(low.trim())
                .or_else(|_| one(&format!("{} {}", low.trim(), high.unit)))?;
            if low.compare(high) != Some(std::cmp::Ordering::Less) {
                return Err(fault(
                    text,
                    "a range goes from the lower to the higher value".to_owned(),
                ));
            }
            Ok((Some(low), Some(high)))
        }
        (Some(_), _) => Err(fault(
            text,
            format!("a range doesn't go with \"{}\"", relation.words()),
        )),
        (None, Relation::Between) => Err(fault(text, "\"between\" needs both ends".to_owned())),
        (None, Relation::AtMost | Relation::LessThan) => Ok((None, Some(one(text)?))),
        (None, _) => Ok((Some(one(text)?), None)),
    }
}

/// Whether a value is of the kind that its property has.
fn fits(value: Option<Quantity>, property: &str) -> Result<(), Fault> {
    let known = vocabulary()
        .property(property)
        .and_then(vocabulary::Property::dimension);
    match (value, known) {
        (Some(value), Some(dimension)) if value.dimension() != dimension => {
            let problem = format!(
                "`{value}` doesn't fit: {property} is a {}",
                dimension.name().replace('_', " ")
            );
            Err(Fault::of_command(problem)
                .help("give a value of that kind, or name another `--property`"))
        }
        _ => Ok(()),
    }
}
