//! A fact that a person enters, and not a table.

use vocabulary::{ValueKind, vocabulary};

use super::column::About;
use super::problem::{Wrong, quoted};
use super::reading::{fact, source};
use crate::model::{Cell, Fact};

/// Why something that was entered can't be taken, and what would be right.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// What is wrong.
    pub message: String,
    /// What would be right.
    pub help: String,
}

impl From<Wrong> for Refusal {
    fn from(wrong: Wrong) -> Self {
        Self {
            message: wrong.message,
            help: wrong.help,
        }
    }
}

/// A fact as a person enters it: the property by its name (`packing.density`, `2A:runner.gauge`, `option.3B`), the value and its source as a
/// schedule's cells and its `#source` row write them. It has no cell.
///
/// # Errors
/// When there is no such property, or its value or source can't be read: what is wrong, and what would be right.
///
/// ```
/// use site::import::entered;
/// let fact = entered("packing.density", "4 pcf", "submittal 07 84 43-03").unwrap();
/// assert_eq!(fact.value.to_string(), "4 pcf");
/// assert!(entered("packing.density", "4", "witnessed").is_err());
/// assert!(entered("packing.density", "4 pcf", "").is_err());
/// ```
pub fn entered(property: &str, value: &str, from: &str) -> Result<Fact, Refusal> {
    read(&about(property)?, value, from)
}

/// A fact on a property that a listing has for itself, by the name that its reading gives it, of one of the kinds of value that the listing asks
/// for: of the first as which the value can be read.
///
/// # Errors
/// As [`entered`]; where the value can be read as none of the kinds, as it is none of the first.
///
/// ```
/// use measure::Dimension;
/// use site::import::entered_as;
/// use vocabulary::ValueKind;
/// let length = [ValueKind::Quantity(Dimension::Length)];
/// let fact = entered_as("2A2:flute_width", &length, "5-1/2 in.", "measured: tape, 1/16 in.").unwrap();
/// assert_eq!((fact.property.as_str(), fact.value.to_string().as_str()), ("2A2:flute_width", "5-1/2 in."));
/// assert!(entered_as("2A2:flute_width", &length, "5 kg", "witnessed").is_err());
/// assert!(entered_as("2A2:flute_width", &length, "5 in.", "").is_err());
/// assert!(entered_as("2A2:flute_width", &[], "5 in.", "witnessed").is_err());
/// ```
pub fn entered_as(
    property: &str,
    kinds: &[ValueKind],
    value: &str,
    from: &str,
) -> Result<Fact, Refusal> {
    let mut refusal = None;
    for kind in kinds {
        let about = About::Local {
            name: property.to_owned(),
            kind: kind.clone(),
        };
        match read(&about, value, from) {
            Ok(fact) => return Ok(fact),
            Err(wrong) => refusal = refusal.or(Some(wrong)),
        }
    }
    Err(refusal.unwrap_or_else(|| {
        let message = format!("the listing asks for no value of {}", quoted(property));
        let help = "have a named person judge the clause".to_owned();
        Refusal { message, help }
    }))
}

fn read(about: &About, value: &str, from: &str) -> Result<Fact, Refusal> {
    let column = source(from)?;
    if from.trim().is_empty() {
        return Err(Wrong::new(
            "nothing says where the value comes from",
            "write `drawing A-801`, `submittal 07 84 43-03`, `witnessed by ...`, `measured: tape, 1/16 in.` or `stated: ...`",
        )
        .into());
    }
    let nowhere = Cell {
        file: String::new(),
        sheet: None,
        row: 0,
        column: String::new(),
    };
    let fact = fact(about, value.trim(), &column, nowhere)?;
    let fact = fact.ok_or_else(|| {
        Wrong::new(
            format!("{} says that nothing is known", quoted(value)),
            "enter a value, or leave the question open",
        )
    })?;
    Ok(Fact { cell: None, ..fact })
}

fn about(property: &str) -> Result<About, Refusal> {
    let name = property.trim();
    let unknown = || {
        let help = vocabulary().nearest_property(name).map_or_else(
            || "write `component.attribute`, such as `packing.density`".to_owned(),
            |near| format!("is `{}` meant?", near.name),
        );
        Refusal::from(Wrong::new(
            format!("there is no property {}", quoted(name)),
            help,
        ))
    };
    if let Some(option) = About::option(name) {
        return option.map_err(|()| unknown());
    }
    if let Some(of_item) = About::of_item(name) {
        return of_item.map_err(|_| unknown());
    }
    let known = vocabulary().property(name);
    known.map(About::Property).ok_or_else(unknown)
}
