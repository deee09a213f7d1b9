//! Rows that carry on with the columns of a table above, without headings of their own: `Density, min   4 pcf   6 pcf   -` in the item below it.

use super::{Table, Words, around};
use crate::layout::{Line, is_rule};
use crate::model::Span;

/// The columns of a table that rows may carry on with.
#[derive(Debug, Clone)]
pub(crate) struct Above {
    headings: Vec<Vec<Span>>,
    /// Where each column begins.
    starts: Vec<usize>,
}

impl Above {
    /// The columns of a table whose labels have no heading, so that each row says itself what it is of.
    pub(crate) fn of(table: &Table) -> Option<Self> {
        let first = table.headings.first()?;
        (first.is_empty() && table.starts.len() >= 3).then(|| Self {
            headings: table.headings.clone(),
            starts: table.starts.clone(),
        })
    }

    /// The table of the lines from one on, each a label and values right under the columns; none when fewer than two keep to them.
    pub(crate) fn table(&self, lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
        const FEWEST: usize = 2;
        let region = lines.get(start..)?;
        let rows: Vec<Vec<Span>> = region
            .iter()
            .take_while(|line| !line.is_blank() && !is_rule(line.text))
            .map_while(|line| self.cells(line))
            .collect();
        if rows.len() < FEWEST {
            return None;
        }
        let mut table = Table {
            headings: self.headings.clone(),
            labelled: true,
            ..Table::default()
        };
        for (cells, line) in rows.iter().zip(region) {
            table.push_row(cells, line.content());
        }
        table.span = around(region.get(..rows.len())?)?;
        Some((table, start + rows.len()))
    }

    /// The cells of a line: its label, and values that begin where columns do.
    fn cells(&self, line: &Line<'_>) -> Option<Vec<Span>> {
        let runs = runs(line);
        let (label, values) = runs.split_first()?;
        let worded = Words { line }.of(label.1).starts_with(char::is_alphabetic);
        if label.0 != *self.starts.first()? || values.is_empty() || !worded {
            return None;
        }
        let mut cells = vec![Span::default(); self.starts.len()];
        for (at, words) in &runs {
            let column = self.starts.iter().position(|start| start == at)?;
            *cells.get_mut(column)? = *words;
        }
        Some(cells)
    }
}

/// The stretches of a line that two blanks or more part, each with the character that it begins at.
fn runs(line: &Line<'_>) -> Vec<(usize, Span)> {
    let mut found: Vec<(usize, Span)> = Vec::new();
    let mut blanks = 2;
    for (place, (at, c)) in line.text.char_indices().enumerate() {
        if c.is_whitespace() {
            blanks += 1;
            continue;
        }
        let own = line.span.start() + at;
        let span = Span::new(own, own + c.len_utf8());
        match found.last_mut().filter(|_| blanks < 2) {
            Some((_, run)) => *run = run.join(span),
            None => found.push((place, span)),
        }
        blanks = 0;
    }
    found
}
