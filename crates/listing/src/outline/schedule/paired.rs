//! Schedules whose last two columns are a label and its value, line by line: `PART   REQUIREMENT   VALUE` over
//!
//! ```text
//! Wall     thickness       4 in. min
//!          unit weight     110 pcf min
//! ```
//!
//! Read down its columns, a value would stand with the label of another, and a limit with the value of the line before.

use super::Columns;
use super::heading::is_plain;
use crate::layout::Line;
use crate::model::Span;
use crate::outline::tables::{Table, begins_value};
use crate::rules::qualifier;

/// What stands over the values, where it limits them all: "MINIMUM".
#[derive(Debug, Clone)]
pub(in crate::outline) struct Pairs {
    limit: Option<Span>,
}

/// Whether the lines below headings are pairs: a line with a value has a label, the labels are words, and most values are amounts. Rows of
/// words in both columns, such as requirements and remarks, are none; nor are rows of one line each, which tables are.
pub(super) fn pairs(columns: &Columns, heading: &Line<'_>, below: &[&Line<'_>]) -> Option<Pairs> {
    const FEWEST: usize = 4;
    if columns.starts.len() < 3 || !columns.ratings.is_empty() || !is_plain(heading.text) {
        return None;
    }
    let lines: Vec<(&str, &str, bool)> = below
        .iter()
        .filter_map(|line| {
            let (label, value) = columns.pair(line)?;
            let words = |span: Span| {
                let start = line.span.start();
                line.text.get(span.start() - start..span.end() - start)
            };
            Some((words(label)?, words(value)?, columns.begins_row(line)))
        })
        .filter(|(_, value, _)| !value.is_empty())
        .collect();
    let count = |holds: &dyn Fn(&(&str, &str, bool)) -> bool| {
        lines.iter().filter(|line| holds(line)).count()
    };
    let labelled = count(&|(label, ..)| {
        label.starts_with(char::is_alphabetic) && !label.ends_with(['.', ';'])
    });
    let valued = count(&|(_, value, _)| begins_value(value));
    let going_on = count(&|(.., begins)| !begins);
    let are_pairs = lines.len() >= FEWEST
        && labelled * 6 >= lines.len() * 5
        && valued * 2 >= lines.len()
        && going_on * 3 >= lines.len();
    let limit = columns
        .cells(heading)
        .and_then(|cells| cells.last().copied())
        .filter(|words| {
            let start = heading.span.start();
            let words = heading.text.get(words.start() - start..words.end() - start);
            words.is_some_and(|words| words.split(' ').any(|word| qualifier(word).is_some()))
        });
    are_pairs.then_some(Pairs { limit })
}

impl Columns {
    /// Whether the second column may hold titles: where it is one of labels, it doesn't.
    pub(in crate::outline) fn has_title_column(&self) -> bool {
        self.pairs.is_none() || self.starts.len() > 3
    }

    /// The label and the value of a line, either of which may be empty.
    fn pair(&self, line: &Line<'_>) -> Option<(Span, Span)> {
        let cells = self.cells(line)?;
        let mut last = cells.iter().rev();
        let (value, label) = (last.next()?, last.next()?);
        Some((*label, *value))
    }

    /// The pairs of some lines as a table with a label for each row, and the labels without a value that stand before them.
    pub(in crate::outline) fn paired_table(
        &self,
        lines: &[Line<'_>],
    ) -> Option<(Vec<Span>, Table)> {
        let pairs = self.pairs.as_ref()?;
        let mut names = Vec::new();
        let mut table = Table::of_labels(pairs.limit);
        for line in lines {
            let (label, value) = self.pair(line)?;
            if value.is_empty() && table.rows.is_empty() {
                names.push(label);
            } else {
                table.push_pair(label, value, line);
            }
        }
        Some((names, table))
    }
}
