//! Rows of a schedule to items, or to texts of the item that it stands in.

use crate::model::Span;

use super::super::marker::{cell_marker, marker};
use super::super::schedule::{Columns, is_case};
use super::super::title::clean;
use super::{Builder, Paragraph};

impl Builder<'_> {
    /// Takes a row of a schedule: its first column names an item, and each other column is a text of it. Where the first column holds the
    /// marker alone, the second holds the title.
    pub(super) fn schedule_row(&mut self, at: usize) -> Option<usize> {
        let (row, end) = self.schedule.as_ref()?.row(self.lines, at)?;
        let indent = self.lines.get(at)?.indent;
        let mut columns = row.cells.into_iter();
        let mut titles: Vec<Span> = columns.next()?.concat();
        let Some(first) = titles.first().copied() else {
            return self.part_row(columns, end);
        };
        let words = first.of(self.source);
        let placed = marker(words)
            .or_else(|| cell_marker(words))
            .and_then(|marker| {
                let placement = self.sequence.place(&marker, indent)?;
                Some((marker, placement))
            });
        let Some((marker, placement)) = placed else {
            // A line that fills the first column alone only happens to begin where it does.
            let alone = self.scheduled.is_some() && columns.clone().all(|column| column.is_empty());
            if alone {
                return None;
            }
            return self.unmarked_row(&titles, columns, row.lines, end);
        };
        let length = marker.len.min(words.len());
        let label = Span::new(first.start(), first.start() + length);
        let index = self.push_item(placement.path.clone(), placement.parent, label);
        self.sequence.enter(&marker, &placement, indent, index);
        self.open = vec![(indent, index)];
        titles.remove(0);
        let rest = Span::new(label.end(), first.end());
        if !rest.of(self.source).trim().is_empty() {
            titles.insert(0, rest);
        }
        let has_title_column = self
            .schedule
            .as_ref()
            .is_some_and(Columns::has_title_column);
        if titles.is_empty() && has_title_column {
            titles = columns.next().unwrap_or_default().concat();
        }
        self.title_row(index, titles);
        if !self.add_pairs(row.lines) {
            self.add_columns(columns);
        }
        Some(end)
    }

    /// Takes the labels and values of a row, where its schedule has them line by line; says whether it has.
    fn add_pairs(&mut self, lines: core::ops::Range<usize>) -> bool {
        let table = self
            .lines
            .get(lines)
            .and_then(|lines| self.schedule.as_ref()?.paired_table(lines));
        let item = self
            .current
            .and_then(|index| self.outline.items.get_mut(index));
        let (Some((names, table)), Some(item)) = (table, item) else {
            return false;
        };
        if !names.is_empty() {
            item.paragraphs.push(Paragraph::Text(names));
        }
        if !table.rows.is_empty() {
            item.paragraphs.push(Paragraph::Table(table));
        }
        self.gap = true;
        true
    }

    /// A part of the row above, `- clip anchors   2 per clip`, is a text of its item.
    fn part_row(
        &mut self,
        columns: impl Iterator<Item = Vec<Vec<Span>>>,
        end: usize,
    ) -> Option<usize> {
        let index = self.current?;
        let pieces: Vec<Span> = columns.flatten().flatten().collect();
        let item = self.outline.items.get_mut(index)?;
        item.paragraphs.push(Paragraph::Text(pieces));
        self.gap = true;
        Some(end)
    }

    /// A row without a marker is a text of the item that the schedule stands in; in a document that numbers none it names an item by its
    /// title.
    fn unmarked_row(
        &mut self,
        titles: &[Span],
        columns: impl Iterator<Item = Vec<Vec<Span>>>,
        lines: core::ops::Range<usize>,
        end: usize,
    ) -> Option<usize> {
        let first = *titles.first()?;
        if let Some(item) = self
            .scheduled
            .and_then(|index| self.outline.items.get_mut(index))
        {
            // What one cell limits ends with it: read on, `22 ga min` would limit the remark beside it.
            let mut columns = columns.filter(|column| !column.is_empty());
            let asked = columns.next().into_iter().flatten().flatten();
            let first: Vec<Span> = titles.iter().copied().chain(asked).collect();
            item.paragraphs.push(Paragraph::Text(first));
            let others = columns.map(|column| Paragraph::Text(column.concat()));
            item.paragraphs.extend(others);
            self.gap = true;
            return Some(end);
        }
        let words: Vec<&str> = titles.iter().map(|piece| piece.of(self.source)).collect();
        let title = clean(&words.join(" "));
        let index = self.push_item(title, None, first);
        self.title_row(index, titles.to_vec());
        if !self.add_pairs(lines) {
            self.add_columns(columns);
        }
        Some(end)
    }

    /// Takes out of the last column what only says when the requirement beside it holds: `2 h`, `J-1 over 75 mm`.
    fn take_cases(&self, columns: &mut [Vec<Vec<Span>>]) -> Vec<(Vec<Span>, Vec<Span>)> {
        let rated = self
            .schedule
            .as_ref()
            .is_some_and(|schedule| !schedule.ratings.is_empty());
        let Some((last, before)) = columns.split_last_mut().filter(|_| !rated) else {
            return Vec::new();
        };
        let line_of = |pieces: &Vec<Span>| {
            let start = pieces.first()?.start();
            Some(
                self.lines
                    .partition_point(|line| line.span.start() <= start),
            )
        };
        let Some(requirements) = before.last().filter(|_| !before.is_empty()) else {
            return Vec::new();
        };
        let mut cases = Vec::new();
        last.retain(|remark| {
            let words: Vec<&str> = remark.iter().map(|piece| piece.of(self.source)).collect();
            let beside = requirements
                .iter()
                .find(|text| line_of(text) == line_of(remark));
            match beside.filter(|_| is_case(&words.join(" "))) {
                Some(text) => {
                    cases.push((text.clone(), remark.clone()));
                    false
                }
                None => true,
            }
        });
        cases
    }

    fn title_row(&mut self, index: usize, titles: Vec<Span>) {
        let words: Vec<&str> = titles
            .iter()
            .map(|piece| piece.of(self.source).trim())
            .collect();
        let title = clean(&words.join(" "));
        if let Some(item) = self.outline.items.get_mut(index) {
            item.title = title;
            item.more_heading = titles;
        }
    }

    fn add_columns(&mut self, columns: impl Iterator<Item = Vec<Vec<Span>>>) {
        let mut columns: Vec<Vec<Vec<Span>>> = columns.collect();
        let cases = self.take_cases(&mut columns);
        let ratings: Vec<Span> = self
            .schedule
            .as_ref()
            .map_or_else(Vec::new, |schedule| schedule.ratings.clone());
        let wordy = columns.len().saturating_sub(ratings.len());
        let headings = core::iter::repeat_n(None, wordy).chain(ratings.into_iter().map(Some));
        let item = self
            .current
            .and_then(|index| self.outline.items.get_mut(index));
        if let Some(item) = item {
            for (column, heading) in columns.into_iter().zip(headings) {
                // What stands under a rating is of what the item's title names, for that rating.
                item.paragraphs.extend(column.into_iter().map(|text| {
                    let case = cases.iter().find(|(requirement, _)| *requirement == text);
                    match (heading, case) {
                        (Some(heading), _) => Paragraph::Cell {
                            heading: vec![heading],
                            text,
                        },
                        (None, Some((_, case))) => Paragraph::Case {
                            case: case.clone(),
                            text,
                        },
                        (None, None) => Paragraph::Text(text),
                    }
                }));
            }
        }
        self.gap = true;
    }
}
