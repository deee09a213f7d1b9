//! Labels and values in two columns, with nothing between them but blanks.

use crate::layout::Line;

/// The fewest blanks between a label and its value.
const APART: &str = "  ";

/// The most words of a label.
const MOST_WORDS: usize = 5;

/// Whether a line of text begins an entry of a list of labels: `Depth          min 4 in. (102 mm)`. A line alone may only be set wide, so the
/// values of the line before or after must stand in the same column.
pub(super) fn begins(lines: &[Line<'_>], at: usize) -> bool {
    let column = |at: usize| lines.get(at).and_then(value_column);
    let Some(own) = column(at) else { return false };
    let before = at.checked_sub(1).and_then(column);
    [before, column(at + 1)].contains(&Some(own))
}

/// Where the value stands in a line that holds a label and a value; none when it is no such line.
fn value_column(line: &Line<'_>) -> Option<usize> {
    let words = line.text.trim();
    let (label, rest) = words.split_once(APART)?;
    let value = rest.trim_start();
    let is_label = label.starts_with(char::is_uppercase)
        && label.split_whitespace().count() <= MOST_WORDS
        && label
            .chars()
            .all(|c| c.is_alphabetic() || matches!(c, ' ' | '-' | '/' | '*' | '(' | ')'));
    // A third column would make it a row of a table.
    let is_value = !value.is_empty() && !value.contains("   ");
    let blanks = line.text.len() - line.text.trim_start().len();
    (is_label && is_value).then(|| blanks + words.len() - value.len())
}
