//! Boxes whose rows are items: a marker, a title, and texts, or labels and values line by line.

use crate::layout::{Line, is_rule};
use crate::model::Span;

use super::super::marker::{Marker, cell_marker, marker};
use super::super::schedule::names_columns;
use super::super::tables::{Row, Table, begins_value};
use super::super::title::clean;
use super::{Builder, Paragraph};

impl Builder<'_> {
    /// Whether the first cells of a box are item markers.
    pub(super) fn is_item_table(&self, table: &Table) -> bool {
        let firsts: Vec<&str> = table
            .rows
            .iter()
            .filter_map(|row| row.cells.first()?.first())
            .map(|cell| cell.of(self.source))
            .collect();
        let marked = firsts
            .iter()
            .filter(|words| cell_marker(words).is_some())
            .count();
        let titled = firsts
            .iter()
            .filter(|words| titled_marker(words).is_some())
            .count();
        let of_texts = || self.is_wordy(table) || self.is_paired(table);
        marked >= 2 && marked * 3 >= firsts.len() * 2 && of_texts()
            || titled >= 2 && titled * 3 >= firsts.len() * 2 && table.headings.len() == 2
    }

    /// Whether the cells of a box hold texts: in a table of values, no cell of most rows is longer than a few words.
    fn is_wordy(&self, table: &Table) -> bool {
        const FEW: usize = 4;
        let words = |cell: &Vec<Span>| -> usize {
            cell.iter()
                .map(|piece| piece.of(self.source).split_whitespace().count())
                .sum()
        };
        let of_texts = table
            .rows
            .iter()
            .filter(|row| row.cells.iter().skip(1).any(|cell| words(cell) > FEW));
        of_texts.count() * 2 > table.rows.len()
    }

    /// Takes a box whose rows are items: marker, title, and a text in each other column.
    pub(super) fn item_table(&mut self, table: &Table, region: &[Line<'_>]) {
        for line in region.iter().filter(|line| is_rule(line.text)) {
            self.outline.furniture.push(line.content());
        }
        let indent = region.first().map_or(0, |line| line.indent);
        let mut before = None;
        let paired = self.is_paired(table);
        for row in &table.rows {
            let Some((first, rest)) = row.cells.split_first() else {
                continue;
            };
            let label = first.first().copied();
            if label.is_some() && label != before {
                before = label;
                self.item_row(first, rest, indent);
            }
            if let Some(pairs) = paired.then(|| self.pairs_in(rest)).flatten() {
                if let Some(item) = self
                    .current
                    .and_then(|index| self.outline.items.get_mut(index))
                {
                    item.paragraphs.push(Paragraph::Table(pairs));
                }
                continue;
            }
            let titled = rest.len() > 1;
            let texts = rest.iter().enumerate().skip(usize::from(titled));
            for (column, text) in texts.filter(|(_, text)| !text.is_empty()) {
                let heading = table.headings.get(column + 1).cloned().unwrap_or_default();
                let item = self
                    .current
                    .and_then(|index| self.outline.items.get_mut(index));
                if let Some(item) = item {
                    item.paragraphs.push(Paragraph::Cell {
                        heading,
                        text: text.clone(),
                    });
                }
            }
        }
        self.gap = true;
    }

    /// Whether each row of a box ends in labels and values beside each other: short labels without a number, several in some row, or under a heading
    /// that says so.
    fn is_paired(&self, table: &Table) -> bool {
        const SHORT: usize = 6;
        let behind = |row: &Row| self.pairs_in(row.cells.get(1..).unwrap_or_default());
        let pairs: Option<Vec<Table>> = table.rows.iter().map(behind).collect();
        let Some(pairs) = pairs else { return false };
        let labels: Vec<&str> = pairs
            .iter()
            .flat_map(|pairs| &pairs.rows)
            .filter_map(|row| row.cells.first()?.first())
            .map(|label| label.of(self.source))
            .collect();
        let plain = labels.iter().filter(|label| {
            label.split_whitespace().count() <= SHORT
                && !label.contains(|c: char| c.is_ascii_digit())
        });
        let column = table.headings.len().checked_sub(2);
        let heading = column.and_then(|column| table.headings.get(column)?.first());
        let headed = heading.is_some_and(|heading| names_columns(heading.of(self.source)));
        let several = pairs.iter().any(|pairs| pairs.rows.len() > 1);
        plain.count() * 5 >= labels.len() * 4 && (several || headed)
    }

    /// The labels and values that stand beside each other, line by line, in the last two of three cells or more: `stud depth | 70 mm min` over
    /// `stud spacing | 600 mm max`; none where a value has no label, or is none.
    fn pairs_in(&self, cells: &[Vec<Span>]) -> Option<Table> {
        let [_, .., labels, values] = cells else {
            return None;
        };
        let line_of = |piece: &Span| {
            self.lines
                .partition_point(|line| line.span.start() <= piece.start())
        };
        let amounts = values
            .iter()
            .filter(|value| begins_value(value.of(self.source)))
            .count();
        let labelled = values
            .iter()
            .all(|value| labels.iter().any(|label| line_of(label) == line_of(value)))
            && labels
                .iter()
                .all(|label| label.of(self.source).starts_with(char::is_alphabetic));
        if values.is_empty() || !labelled || amounts * 2 < values.len() {
            return None;
        }
        let mut table = Table::of_labels(None);
        for label in labels {
            let line = self.lines.get(line_of(label).checked_sub(1)?)?;
            let value = values.iter().find(|value| line_of(value) == line_of(label));
            table.push_pair(*label, value.copied().unwrap_or_default(), line);
        }
        Some(table)
    }

    /// Opens the item of a row, titled by its second cell where others follow.
    fn item_row(&mut self, label: &[Span], rest: &[Vec<Span>], indent: usize) {
        let Some(first) = label.first() else { return };
        let words = first.of(self.source);
        let Some(marker) = cell_marker(words).or_else(|| titled_marker(words)) else {
            return;
        };
        // `5.6 Steel faces`
        let own = Span::new(first.start() + marker.len.min(words.len()), first.end());
        let own = Some(own).filter(|_| cell_marker(words).is_none());
        let placement = self
            .sequence
            .place(&marker, indent)
            .unwrap_or_else(|| self.sequence.unplaced(&marker));
        let index = self.push_item(placement.path.clone(), placement.parent, *first);
        self.sequence.enter(&marker, &placement, indent, index);
        self.open = vec![(indent, index)];
        let title = rest.first().filter(|_| rest.len() > 1);
        let named: Vec<Span> = match own {
            Some(own) => core::iter::once(own)
                .chain(label.iter().skip(1).copied())
                .collect(),
            None => title.into_iter().flatten().copied().collect(),
        };
        let words: Vec<&str> = named.iter().map(|piece| piece.of(self.source)).collect();
        if let Some(item) = self.outline.items.get_mut(index) {
            item.title = clean(&words.join(" "));
            item.more_heading = label
                .iter()
                .skip(1)
                .chain(title.into_iter().flatten())
                .copied()
                .collect();
        }
    }
}

/// The marker of parts that a box's first cell begins with, before the title: `5.6 Steel faces`.
fn titled_marker(words: &str) -> Option<Marker> {
    let marker = marker(words)?;
    let title = words.get(marker.len..)?.trim();
    (marker.parts.len() >= 2 && title.starts_with(char::is_alphabetic)).then_some(marker)
}
