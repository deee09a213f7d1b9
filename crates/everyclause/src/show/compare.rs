//! Two editions of a listing, clause by clause.

use comfy_table::{Cell, Color};
use conformance::{Change, ChangeKind, Side};

use super::page::{self, labelled, wrapped};
use super::paint::{STRONG, UNKNOWN, paint};
use super::table;
use super::words::{on_one_line, printable, shortened};
use crate::shelf::Held;

fn designation(held: &Held) -> String {
    let designation = on_one_line(&held.reading().header.designation);
    if designation.is_empty() {
        held.file.clone()
    } else {
        designation
    }
}

/// What became of each clause; those that haven't changed only when asked for.
pub(crate) fn compare(old: &Held, new: &Held, changes: &[Change], all: bool) -> String {
    let mut text = format!(
        "{}\n",
        paint(STRONG, &on_one_line(&new.reading().header.designation))
    );
    for (label, held) in [("old", old), ("new", new)] {
        let edition = on_one_line(&held.reading().header.edition);
        let edition = if edition.is_empty() {
            "no edition stated".to_owned()
        } else {
            edition
        };
        text.push_str(&labelled(label, &format!("{edition}: {}", held.file), 2, 5));
    }
    let (was, is) = (designation(old), designation(new));
    if !was.eq_ignore_ascii_case(&is) {
        let words = format!(
            "! These are two listings, {was} and {is}, not two editions of one: what \"became\" of a clause is only what stands in its place."
        );
        text.push_str(&paint(UNKNOWN, wrapped(&words, 2, 2).trim_end()));
        text.push('\n');
    }
    text.push('\n');
    let shown: Vec<&Change> = changes
        .iter()
        .filter(|change| all || change.kind != ChangeKind::Unchanged)
        .collect();
    if shown.is_empty() {
        text.push_str("Word for word the same.\n");
        return text;
    }
    let is_wide = page::width() >= 110;
    let mut rows = if is_wide {
        table::table(&["", "old", "new", "what changed", "words"])
    } else {
        table::table(&["", "old", "new", "what changed"])
    };
    for column in 0..3 {
        table::unwrapped(&mut rows, column);
    }
    for change in &shown {
        let (mark, color) = kind(change.kind);
        let (what, quotes) = what_changed(change);
        let mut cells = vec![
            Cell::new(format!("{mark} {}", change.kind.words())).fg(color),
            Cell::new(id(change.old.as_ref())),
            Cell::new(id(change.new.as_ref())),
            Cell::new(what),
        ];
        if is_wide {
            let side = change
                .new
                .as_ref()
                .or(change.old.as_ref())
                .filter(|_| !quotes);
            let words = side
                .map(|side| on_one_line(&side.words))
                .unwrap_or_default();
            cells.push(Cell::new(shortened(&words, 90)));
        }
        rows.add_row(cells);
    }
    text.push_str(&table::set(&rows));
    text.push('\n');
    text.push_str(&wrapped(&summary(changes, all), 0, 0));
    text
}

/// What changed, in a sentence, and whether that quotes the words, as it does of clauses in words.
fn what_changed(change: &Change) -> (String, bool) {
    let in_words = |side: Option<&Side>| {
        let is_prose = |side: &&Side| side.requirement == "as the words say";
        side.filter(is_prose)
            .map(|side| format!("\"{}\"", shortened(&on_one_line(&side.words), 160)))
    };
    let words = match (
        change.kind,
        in_words(change.old.as_ref()),
        in_words(change.new.as_ref()),
    ) {
        (ChangeKind::Added, _, Some(new)) => Some(format!("{new} is new")),
        (ChangeKind::Removed, Some(old), _) => Some(format!("{old} is gone")),
        (ChangeKind::Changed, Some(old), Some(new)) => Some(format!("{old} became {new}")),
        _ => None,
    };
    match words {
        Some(words) => (format!("{}: {words}.", on_one_line(&change.title)), true),
        None => (on_one_line(&change.sentence), false),
    }
}

fn id(side: Option<&Side>) -> String {
    match side {
        None => "–".to_owned(),
        Some(side) if side.clause.starts_with("header/") => "head".to_owned(),
        Some(side) => printable(&side.clause),
    }
}

const fn kind(kind: ChangeKind) -> (&'static str, Color) {
    match kind {
        ChangeKind::Unchanged => ("=", Color::Reset),
        ChangeKind::Reworded => ("≈", Color::Reset),
        ChangeKind::Tightened => ("▲", Color::DarkRed),
        ChangeKind::Loosened => ("▼", Color::DarkGreen),
        ChangeKind::Changed => ("≠", Color::DarkYellow),
        ChangeKind::Added => ("+", Color::DarkYellow),
        ChangeKind::Removed => ("−", Color::DarkYellow),
    }
}

fn summary(changes: &[Change], all: bool) -> String {
    let kinds = [
        ChangeKind::Tightened,
        ChangeKind::Loosened,
        ChangeKind::Changed,
        ChangeKind::Added,
        ChangeKind::Removed,
        ChangeKind::Reworded,
        ChangeKind::Unchanged,
    ];
    let counts = kinds.iter().map(|kind| {
        (
            changes.iter().filter(|change| change.kind == *kind).count(),
            kind.words(),
        )
    });
    let counts: Vec<String> = counts
        .filter(|(count, _)| *count > 0)
        .map(|(count, words)| format!("{count} {words}"))
        .collect();
    let hint = if all {
        ""
    } else {
        " `--all` shows the unchanged ones, too."
    };
    format!("{}.{hint}", counts.join(", "))
}
