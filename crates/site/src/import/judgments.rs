//! Tables of judgments.

use super::names::{Names, unknown};
use super::problem::{Findings, Wrong, quoted};
use super::reading::date;
use super::rows::{Entry, entries};
use super::table::Table;
use crate::model::{Decision, Judgment, Scope};

/// Reads the judgments of tables. Who decided, when and on what ground may not be left out.
pub(crate) fn read<'t>(
    tables: impl Iterator<Item = &'t Table<'t>>,
    names: &Names,
    findings: &mut Findings,
) -> Vec<Judgment> {
    let mut judgments = Vec::new();
    for table in tables {
        let entries = entries(table, findings);
        let whole = entries.iter().filter(|entry| entry.is_whole());
        judgments.extend(whole.filter_map(|entry| judgment(entry, names, findings)));
    }
    judgments
}

/// Reads one judgment. Every cell is read before any that is missing ends it, so that each is reported.
fn judgment(entry: &Entry<'_>, names: &Names, findings: &mut Findings) -> Option<Judgment> {
    let scope = checked(
        entry,
        "joint_or_mark",
        &entry.name,
        |name| scope(name, names),
        findings,
    );
    let listing = entry.text("listing", findings);
    let item = entry.required("item", findings);
    let words = entry.required("words", findings);
    let decision = entry.required("decision", findings);
    let decision =
        decision.and_then(|text| checked(entry, "decision", &text, decision_of, findings));
    let by = entry.required("by", findings);
    let when = entry.required("when", findings);
    let when = when.and_then(|text| checked(entry, "when", &text, date, findings));
    let basis = entry.required("basis", findings);
    Some(Judgment {
        scope: scope?,
        listing,
        item: item?,
        words: words?,
        decision: decision?,
        by: by?,
        when: when?,
        basis: basis?,
    })
}

/// Reads a text; what is wrong with it is a problem of the column's cell.
fn checked<T>(
    entry: &Entry<'_>,
    heading: &str,
    text: &str,
    read: impl FnOnce(&str) -> Result<T, Wrong>,
    findings: &mut Findings,
) -> Option<T> {
    if text.is_empty() {
        return None; // said already
    }
    let read = read(text);
    read.map_err(|wrong| findings.problem(entry.place(heading), text, wrong))
        .ok()
}

fn scope(name: &str, names: &Names) -> Result<Scope, Wrong> {
    match (names.joints.has(name), names.marks.has(name)) {
        (true, false) => Ok(Scope::Joint(name.to_owned())),
        (false, true) => Ok(Scope::Mark(name.to_owned())),
        (true, true) => Err(Wrong::new(
            format!("{} is the name of a joint and of a mark", quoted(name)),
            "give them different names",
        )),
        (false, false) => {
            let known = names.joints.names().chain(names.marks.names());
            Err(unknown("joint or mark", name, known))
        }
    }
}

fn decision_of(text: &str) -> Result<Decision, Wrong> {
    match text.to_lowercase().as_str() {
        "accepted" => Ok(Decision::Accepted),
        "rejected" => Ok(Decision::Rejected),
        _ => {
            let message = format!("{} isn't a decision", quoted(text));
            Err(Wrong::new(message, "write `accepted` or `rejected`"))
        }
    }
}
