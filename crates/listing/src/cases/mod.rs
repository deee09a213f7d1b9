//! Cases: a stretch of listing, and what the reader must make of it, on a page of Markdown that a practitioner can dispute.
//!
//! A stretch stands quoted (`> `), and under it a line (`- `) for each number that is looked at:
//!
//! ```text
//! > 2. Packing - Min 4 in. deep, density 4 pcf.
//!
//! - `4 in.` at least 4 in of packing.depth
//! - `4 pcf` nominal 4 pcf of packing.density
//! ```
//!
//! `when` and a condition follow where the clause has one. A number that bounds nothing is `unread`. Where a number's words stand in the
//! stretch more than once, `(2 of 3)` says which of them is meant; a line without a number's words means any. Everything else on the page is for people.
//!
//! The pages of the rules are made of such cases, without the properties; [`of_corrections`] makes them of what people have corrected, and
//! [`failures`] holds the reader to them.

use crate::confirm::evened;
use crate::model::{Bound, Clause, Reading, Requirement, Span, Status};
use crate::reader::read_text;

mod export;

pub use export::{Cases, of_corrections};

/// A stretch of listing, and what must be read of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Case {
    /// The stretch.
    pub text: String,
    /// A line for each number.
    pub expected: Vec<String>,
}

/// The cases of a page, in order.
pub fn cases(page: &str) -> Vec<Case> {
    let mut cases: Vec<Case> = Vec::new();
    let mut quoting = false;
    for line in page.lines() {
        let quoted = line
            .strip_prefix("> ")
            .or_else(|| (line == ">").then_some(""));
        if let Some(text) = quoted {
            if !quoting {
                cases.push(Case {
                    text: String::new(),
                    expected: Vec::new(),
                });
            }
            if let Some(case) = cases.last_mut() {
                case.text.push_str(text);
                case.text.push('\n');
            }
        } else if let Some(expected) = line.strip_prefix("- ")
            && let Some(case) = cases.last_mut()
        {
            case.expected.push(expected.to_owned());
        }
        quoting = quoted.is_some();
    }
    cases
}

/// What the reader makes otherwise of a page's cases than they say: each with the stretch and what is read of it. Empty when it agrees.
///
/// Of each case the lines that it has must be among what is read; a stretch may hold more than is looked at.
pub fn failures(page: &str) -> Vec<String> {
    let mut failures = Vec::new();
    for case in cases(page) {
        let reading = read_text("case", &case.text);
        let mut found = lines(&case.text, &reading);
        for expected in &case.expected {
            let agrees = |line: &String| line == expected || without_number(line) == expected;
            match found.iter().position(agrees) {
                Some(at) => {
                    found.swap_remove(at);
                }
                None if is_unread(expected, &case.text, &reading) => {}
                None => failures.push(format!(
                    "{}expected {expected}\nread     {}\n",
                    case.text,
                    found.join("\n         ")
                )),
            }
        }
    }
    failures
}

/// What is read of a text: a line for each clause that is more than words.
fn lines(text: &str, reading: &Reading) -> Vec<String> {
    reading
        .clauses
        .iter()
        .filter_map(|clause| line(text, clause))
        .collect()
}

/// A clause as a case's line; none for words that are left to a person.
fn line(text: &str, clause: &Clause) -> Option<String> {
    let asked = match &clause.requirement {
        Requirement::Bound(bound) => of_bound(text, bound),
        Requirement::Named { names } => {
            let names: Vec<String> = names.iter().map(ToString::to_string).collect();
            format!("one of {}", names.join(" | "))
        }
        Requirement::Presence { presence } => format!("{presence:?}").to_lowercase(),
        Requirement::Reference { to } => format!("as in {to}"),
        Requirement::Prose => return None,
    };
    let when = clause
        .condition
        .as_ref()
        .map_or_else(String::new, |condition| format!(" when {}", condition.expr));
    Some(evened(&format!("{asked} of {}{when}", clause.property)))
}

fn of_bound(text: &str, bound: &Bound) -> String {
    let value = match (bound.lo, bound.hi) {
        (Some(lo), Some(hi)) => format!("{lo} and {hi}"),
        (one, other) => one
            .or(other)
            .map_or_else(String::new, |one| one.to_string()),
    };
    format!(
        "{} {} {value} {}",
        number(text, bound.at),
        bound.relation.words(),
        bound.unit
    )
}

/// A number's words, and which of them is meant where they stand in the text more than once.
fn number(text: &str, at: Span) -> String {
    let words = at.of(text);
    if words.is_empty() {
        return String::new();
    }
    let places: Vec<usize> = text.match_indices(words).map(|(place, _)| place).collect();
    let which = places.iter().position(|place| *place == at.start());
    match which {
        Some(which) if places.len() > 1 => {
            format!("`{}` ({} of {})", evened(words), which + 1, places.len())
        }
        _ => format!("`{}`", evened(words)),
    }
}

/// A line without the number's words: what is right of a clause in which no number was found can't name its words.
fn without_number(line: &str) -> &str {
    let relation = line
        .strip_prefix('`')
        .and_then(|rest| rest.split_once("` "))
        .map(|(_, rest)| rest);
    relation.map_or(line, |rest| match rest.strip_prefix('(') {
        Some(which) => which.split_once(") ").map_or(rest, |(_, rest)| rest),
        None => rest,
    })
}

/// Whether a line says that a number bounds nothing, and none of the clauses holds it.
fn is_unread(line: &str, text: &str, reading: &Reading) -> bool {
    let Some(wanted) = line.strip_suffix(" unread") else {
        return false;
    };
    let bounds = reading.clauses.iter().filter_map(Clause::bound);
    bounds
        .map(|bound| number(text, bound.at))
        .all(|held| held != wanted)
}

/// The clauses that a person has corrected.
fn corrected(reading: &Reading) -> impl Iterator<Item = &Clause> {
    let clauses = reading.clauses.iter();
    clauses.filter(|clause| clause.status == Status::Corrected)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "> 1. Packing - Min 4 in. deep,\n>\n> and max 4 in. wide.\n\n- `4 in.` (2 of 2) at most 4 in of packing.width\n";

    #[test]
    fn a_page_is_taken_apart() {
        let cases = cases(PAGE);
        assert_eq!(cases.len(), 1);
        assert_eq!(
            cases[0].text,
            "1. Packing - Min 4 in. deep,\n\nand max 4 in. wide.\n"
        );
        assert_eq!(cases[0].expected.len(), 1);
    }

    #[test]
    fn what_is_read_is_held_against_the_page() {
        let check = |line: &str, agrees: bool| {
            let page = format!(
                "> 1. Packing - Min 4 in. deep, mineral wool of nominal 4 pcf.\n\n- {line}\n"
            );
            assert_eq!(failures(&page).is_empty(), agrees, "{:?}", failures(&page));
        };
        check("`4 in.` at least 4 in of packing.depth", true);
        check("`4 in.` at most 4 in of packing.depth", false);
        check("`4 in.` at least 4 in of packing.width", false);
        check(
            "`4 in.` at least 4 in of packing.depth when joint.width > 2 in",
            false,
        );
        check("`4 in.` unread", false);
        check("`5 in.` at least 5 in of packing.depth", false);
        check("`16 gauge` unread", true);
        check("at least 4 in of packing.depth", true);
    }
}
