//! The names of a project's things, and where each stands.

use std::collections::BTreeMap;

use super::problem::{Findings, Wrong, listed, quoted};
use crate::model::Cell;

/// The names of one kind of thing.
#[derive(Debug, Default)]
pub(crate) struct Register(BTreeMap<String, Cell>);

/// The names of a project's things. A thing whose row has a problem is named all the same, so that one slip isn't
/// reported again wherever the thing is mentioned.
#[derive(Debug, Default)]
pub(crate) struct Names {
    pub barriers: Register,
    pub marks: Register,
    pub joints: Register,
    /// Where each joint names its mark, barrier and storey.
    pub mentions: Vec<Mention>,
}

/// What a joint's row mentions.
#[derive(Debug)]
pub(crate) struct Mention {
    pub what: Mentioned,
    pub name: String,
    pub cell: Cell,
}

/// What kind of thing is mentioned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Mentioned {
    Mark,
    Barrier,
    Storey,
}

impl Register {
    /// Enters a name; one that stands already is a problem.
    pub(crate) fn enter(&mut self, name: &str, cell: Cell, findings: &mut Findings) {
        if let Some(first) = self.0.get(name) {
            let wrong = Wrong::new(
                format!("{} stands twice; it is first in {first}", quoted(name)),
                "give each its own name",
            );
            findings.problem(cell, name, wrong);
            return;
        }
        self.0.insert(name.to_owned(), cell);
    }

    /// Enters a name that may stand already.
    pub(crate) fn note(&mut self, name: &str, cell: &Cell) {
        self.0
            .entry(name.to_owned())
            .or_insert_with(|| cell.clone());
    }

    pub(crate) fn has(&self, name: &str) -> bool {
        self.0.contains_key(name)
    }

    /// Every name with its place, in the order of names.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (&str, &Cell)> {
        self.0.iter().map(|(name, cell)| (name.as_str(), cell))
    }

    pub(crate) fn names(&self) -> impl Iterator<Item = &str> + Clone {
        self.0.keys().map(String::as_str)
    }
}

/// What is said of a name that none of the known things has.
pub(crate) fn unknown<'n>(
    what: &str,
    name: &str,
    known: impl Iterator<Item = &'n str> + Clone,
) -> Wrong {
    let message = format!("there is no {what} {}", quoted(name));
    let help = match nearest(name, known.clone()) {
        Some(near) => format!("the nearest is `{near}`"),
        None if known.clone().next().is_none() => format!("no {what} was given at all"),
        None => format!("known are {}", listed(known)),
    };
    Wrong::new(message, help)
}

/// The longest name that is compared, and the most names it is compared with: enough for people, and a bound on the work.
const MOST_COMPARED: (usize, usize) = (64, 2000);

/// The known name nearest to another: at most a third of its letters differ, and of several the first.
pub(crate) fn nearest<'n>(name: &str, known: impl IntoIterator<Item = &'n str>) -> Option<&'n str> {
    let (longest, most) = MOST_COMPARED;
    let lower = name.to_lowercase();
    let farthest = (lower.chars().count() / 3).max(1);
    if lower.len() > longest {
        return None;
    }
    let near = known
        .into_iter()
        .take(most)
        .filter(|other| other.len() <= longest);
    let distances = near.map(|other| (strsim::osa_distance(&lower, &other.to_lowercase()), other));
    let nearest = distances.min_by_key(|(distance, _)| *distance)?;
    (nearest.0 <= farthest).then_some(nearest.1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_name() {
        for (name, expected) in [
            ("hw1", Some("HW1")),
            ("HW01", Some("HW1")),
            ("WH1", Some("HW1")),
            ("FB-2", None),
        ] {
            assert_eq!(nearest(name, ["HW1", "HW12"]), expected, "{name}");
        }
        assert_eq!(nearest(&"x".repeat(1000), ["HW1"]), None);
    }
}
