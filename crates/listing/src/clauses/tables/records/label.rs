//! What a row asks, by its label: `3.5 Packing compression, minimum, joint up to 25 mm`.

use super::super::band::width_band;
use super::super::heading::{Heading, heading};
use super::super::labelled::names_size;
use super::super::rating::split_rating;
use crate::layout::Flow;
use crate::model::{Expr, Relation};
use crate::naming::components_in;
use crate::rules::qualifier;

/// A label taken apart.
pub(super) struct Label {
    /// What it says of the value beside it.
    pub(super) heading: Heading,
    /// Its words, without the number of its row.
    pub(super) words: Flow,
    /// The joints or the parts that it says the row is for.
    pub(super) cases: Vec<(String, Expr)>,
}

impl Label {
    pub(super) fn of(source: &str, cell: &Flow, numbered: bool) -> Self {
        let words = if numbered {
            without_number(source, cell)
        } else {
            cell.clone()
        };
        let mut asked = Vec::new();
        let mut cases = Vec::new();
        for part in parts(words.text()) {
            match case(part) {
                Some(case) if !asked.is_empty() => cases.push(case),
                _ => asked.push(part),
            }
        }
        let named = asked.first().copied().filter(|first| names_all(first));
        let asked = asked.join(", ");
        let mut heading = heading(&asked).requiring();
        heading.relation = heading.relation.filter(|_| says_limit(&asked));
        if let Some(named) = named {
            named.clone_into(&mut heading.words);
        }
        Self {
            heading,
            words,
            cases,
        }
    }
}

/// Whether a label's first part names both a component and its size: the screw's length is what `Screw length, outer layer` asks, and the rest only
/// says where.
fn names_all(first: &str) -> bool {
    names_size(first) && !components_in(first).is_empty()
}

/// Whether cells are the numbers of their rows, each of them another: `1.1`, `a)`, `W3`. Whole numbers alone count up from one.
pub(super) fn numbers<'a>(cells: impl Iterator<Item = &'a str>) -> bool {
    let cells: Vec<&str> = cells.filter(|cell| !cell.is_empty()).collect();
    let mut sorted = cells.clone();
    sorted.sort_unstable();
    sorted.dedup();
    let plain = cells
        .iter()
        .all(|cell| cell.chars().all(|c| c.is_ascii_digit()));
    let counted = cells.iter().enumerate().all(|(index, cell)| {
        cell.parse::<usize>()
            .is_ok_and(|number| number == index + 1)
    });
    cells.len() >= 2
        && sorted.len() == cells.len()
        && cells.iter().all(|cell| is_number(cell))
        && (!plain || counted)
}

/// Whether a word may number a row.
fn is_number(word: &str) -> bool {
    const LONGEST: usize = 6;
    let bare = word.trim_matches(|c| matches!(c, '(' | ')' | '.' | '[' | ']'));
    let closed = bare.len() < word.len();
    let groups = bare.split(['.', '-']);
    let each = groups.clone().all(|group| {
        let letters = group.trim_end_matches(|c: char| c.is_ascii_digit());
        !group.is_empty() && letters.len() <= 1 && letters.chars().all(|c| c.is_ascii_alphabetic())
    });
    let lettered = bare.len() > 1 && bare.contains(|c: char| c.is_ascii_digit());
    word.len() <= LONGEST && each && (closed || lettered || bare.len() == 1)
}

/// A cell without the word that it begins with.
fn without_number(source: &str, cell: &Flow) -> Flow {
    let text = cell.text();
    let from = text.find(' ').map_or(0, |at| at + 1);
    Flow::of(source, [cell.span(from, text.len())]).with_usual_units(cell.usual_units())
}

/// A label's parts, between commas and brackets, and before the words that say where it holds.
fn parts(label: &str) -> impl Iterator<Item = &str> {
    label
        .split([',', ';', '(', ')', '['])
        .flat_map(|part| part.split(" - "))
        .flat_map(|part| {
            // `Depth for 3 hrs`
            let rated = part.find(" for ").filter(|at| {
                part.get(at + 5..)
                    .and_then(super::super::rating_of)
                    .is_some()
            });
            let at = [" where ", " when ", " if ", " for joints ", " in joints "]
                .iter()
                .filter_map(|place| part.find(place))
                .chain(rated)
                .min()
                .unwrap_or(part.len());
            let (said, place) = part.split_at(at);
            [said, place]
        })
        .map(|part| part.trim_matches([' ', ']', ':']))
        .filter(|part| !part.is_empty())
}

/// What a part of a label says of the joints, or of what must be there, for the row to hold.
fn case(part: &str) -> Option<(String, Expr)> {
    const OPENS: &[&str] = &[
        "where", "when", "if", "in", "for", "only", "optional", "unless",
    ];
    let bare = ["where ", "when ", "if ", "for ", "in ", "the "]
        .iter()
        .fold(part, |part, lead| part.strip_prefix(lead).unwrap_or(part));
    let band = width_band(bare).and_then(|heading| heading.rating);
    let rating = || {
        let bare = part.strip_prefix("for ").unwrap_or(part);
        split_rating(bare)
            .1
            .filter(|_| split_rating(bare).0.is_empty())
    };
    if let Some(rating) = band.or_else(rating) {
        return Some((part.to_owned(), rating.expr));
    }
    let lower = part.to_lowercase();
    let first = lower.split(' ').next().unwrap_or_default();
    // "in service", "for each face" say where; a unit alone says nothing of the joints.
    let places =
        matches!(first, "in" | "for") && !lower.contains("joint") && !lower.contains(" hr");
    // "when compressed" says in which state it is measured.
    let state = matches!(first, "when" | "where")
        && lower.split(' ').count() == 2
        && lower.ends_with(['d', 't'])
        && !["used", "fitted", "provided", "required", "specified"]
            .iter()
            .any(|there| lower.ends_with(there));
    (OPENS.contains(&first) && lower != "in" && !places && !state)
        .then(|| (part.to_owned(), Expr::Words(part.to_owned())))
}

/// Whether a label limits what it names: "Lap over the slab" and "Clearance up to the deck" don't.
fn says_limit(label: &str) -> bool {
    const PHRASES: &[&str] = &[
        "at least",
        "at most",
        "less than",
        "more than",
        "not under",
        "not over",
        "or more",
        "or less",
        "or greater",
        "or heavier",
        "or thicker",
        "lower limit",
        "upper limit",
    ];
    let lower = label.to_lowercase();
    let words = || lower.split(|c: char| !c.is_alphabetic());
    words().any(|word| qualifier(word).is_some())
        || PHRASES.iter().any(|phrase| lower.contains(phrase))
}

/// How the value is meant, by its row's label and its column's heading; none where they contradict each other.
#[allow(
    clippy::option_option,
    reason = "that neither says how and that they contradict each other are two things"
)]
pub(super) fn together(
    label: Option<Relation>,
    column: Option<Relation>,
) -> Option<Option<Relation>> {
    match (label, column) {
        (Some(own), Some(column)) if own != column => None,
        (own, column) => Some(own.or(column)),
    }
}
