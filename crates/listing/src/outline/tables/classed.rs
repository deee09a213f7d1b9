//! Tables without a rule or a caption whose last column is one of classes: `System   Element   FRL` over `1   Masonry wall   -/120/120`.
//!
//! Each row fills every column and ends in a class, so that words in the columns before are no running text. What it would misread: a row whose cell goes on
//! in the line below; it declines where any but a blank line or a rule stands there.

use super::grid::gaps;
use super::unruled::assembled;
use super::{Table, speaks};
use crate::clauses::level_parts;
use crate::layout::{Line, is_rule};

/// The table of classes that begins at a line.
pub(super) fn classed_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    const FEWEST: usize = 2;
    let region = lines.get(start..)?;
    let headings = region.first().filter(|line| heads_classes(line))?;
    let columns = gaps(headings.text);
    let from = 1 + usize::from(region.get(1).is_some_and(Line::is_blank));
    let body = region.get(from..)?;
    let ends_in_class = |line: &&Line<'_>| {
        let cell = line.text.trim_end().rsplit("  ").next().unwrap_or_default();
        gaps(line.text) == columns && is_class(cell.trim())
    };
    let rows = body.iter().take_while(ends_in_class).count();
    let ended = body
        .get(rows)
        .is_none_or(|next| next.is_blank() || is_rule(next.text));
    if rows < FEWEST || !ended {
        return None;
    }
    let table = assembled(
        region.get(..1)?,
        body.get(..rows)?,
        region.get(..from + rows)?,
    )?;
    let whole = |row: &super::Row| row.cells.iter().all(|cell| cell.len() == 1);
    let kept = table.headings.len() == columns + 1 && table.rows.iter().all(whole);
    kept.then_some((table, start + from + rows))
}

/// Whether a line is headings in columns, the last of which is one of classes.
fn heads_classes(line: &Line<'_>) -> bool {
    const CLASSES: &[&str] = &[
        "class",
        "classes",
        "classification",
        "frl",
        "frr",
        "fire resistance level",
        "fire resistance",
    ];
    let last = line.text.trim_end().rsplit("  ").next().unwrap_or_default();
    gaps(line.text) >= 1
        && !speaks(line.text)
        && !line.text.contains(|c: char| c.is_ascii_digit())
        && CLASSES.contains(&last.trim().to_lowercase().as_str())
}

/// Whether a cell is a class and begins as one: `-/120/120`, `EI 60 - V - X - F - W 10 to 30`.
fn is_class(cell: &str) -> bool {
    let mut words = cell.split(' ');
    let first = words.next().unwrap_or_default();
    let lettered = matches!(first, "E" | "EI" | "EW" | "REI")
        && words
            .next()
            .is_some_and(|word| word.bytes().all(|byte| byte.is_ascii_digit()));
    lettered || level_parts(first).is_some() && words.next().is_none()
}
