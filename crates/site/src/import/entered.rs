//! A fact that a person enters, and not a table.

use vocabulary::vocabulary;

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
    let about = about(property)?;
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
    let fact = fact(&about, value.trim(), &column, nowhere)?;
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
