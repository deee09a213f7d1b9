//! What is called out: each part with its item of the listing, its measures, and the state of its clauses.

mod items;
mod measures;

pub use items::Standing;

use crate::known::{Condition, Known};
use crate::section::{Component, Kinds};

/// A part called out.
#[derive(Debug, Clone, PartialEq)]
pub struct Callout {
    /// Which part.
    pub component: Component,
    /// What it is, with its item's number: "3A Packing".
    pub title: String,
    /// Its measures.
    pub measures: String,
    /// What was found of its clauses; none where no listing speaks of it.
    pub standing: Option<Standing>,
}

impl Callout {
    /// A part called out with what is known of it.
    pub fn of(component: Component, condition: &Condition, known: &Known<'_>) -> Self {
        let standing = Standing::of(component, condition, known);
        Self::with(component, condition, standing)
    }

    /// A part called out with what was found of its clauses.
    pub fn with(component: Component, condition: &Condition, standing: Option<Standing>) -> Self {
        let title = match &standing {
            Some(standing) => format!("{} {}", standing.items, component.title()),
            None => component.title().to_owned(),
        };
        Self {
            measures: measures::of(component, condition),
            component,
            title,
            standing,
        }
    }

    /// All of it in a line.
    pub fn words(&self) -> String {
        let standing = match &self.standing {
            Some(standing) => format!("; {}", standing.words),
            None => String::new(),
        };
        let measures = if self.measures.is_empty() {
            String::new()
        } else {
            format!(": {}", self.measures)
        };
        format!("{}{measures}{standing}", self.title)
    }
}

/// Every part of a section that is called out, each once.
pub fn callouts(components: &Kinds, condition: &Condition, known: &Known<'_>) -> Vec<Callout> {
    components
        .iter()
        .map(|component| Callout::of(*component, condition, known))
        .collect()
}
