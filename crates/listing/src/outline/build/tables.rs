//! Tables: those of values stay tables, those whose rows are items become items, and a captioned one is an item of its own.

use crate::layout::{Flow, Line, is_rule};
use crate::model::Span;

use super::super::caption::{caption, cites, demand_at};
use super::super::marker::marker;
use super::super::requirement_rows::items_of;
use super::super::tables::{
    Above, Table, captioned_table_at, cells, is_boxed, is_tabbed, plain_table_at, table_at,
};
use super::super::title::clean;
use super::{Builder, OutlineItem, Paragraph};

impl Builder<'_> {
    /// Opens an item for a captioned table that begins at this line; gives the line after the caption.
    pub(super) fn begins_captioned_table(&mut self, at: usize) -> Option<usize> {
        const LONGEST: usize = 3;
        let line = self.lines.get(at).filter(|_| self.gap)?;
        let content = line.content();
        let (path, title) = caption(content.of(self.source))?;
        let end = (at + 1..=at + LONGEST).find(|end| {
            captioned_table_at(self.lines, first_visible(self.lines, *end)).is_some()
        })?;
        let more: Vec<Span> = self
            .lines
            .get(at + 1..end)?
            .iter()
            .map(Line::content)
            .filter(|piece| !piece.is_empty())
            .collect();
        let label_end = content.end() - title.len();
        let whole = more.last().map_or(content, |last| content.join(*last));
        // A caption of several sentences says more than what the table is about.
        let says_more = whole.of(self.source).contains(". ") && title.contains(' ');
        // `TABLE 2  PACKING (density 4 pcf min)`
        let demand = demand_at(whole.of(self.source))
            .filter(|_| !says_more)
            .map(|at| Span::new(whole.start() + at, whole.end()));
        let heading = if says_more {
            Span::new(content.start(), label_end)
        } else {
            demand.map_or(whole, |demand| Span::new(whole.start(), demand.start()))
        };
        let index = self.push_item(path, None, heading);
        if says_more {
            self.add_text(Span::new(label_end, content.end()), true);
            for piece in &more {
                self.add_text(*piece, false);
            }
        } else if let Some(item) = self.outline.items.get_mut(index) {
            let words = Span::new(label_end, heading.end()).of(self.source);
            item.title = clean(&words.split_whitespace().collect::<Vec<_>>().join(" "));
        }
        if let Some(demand) = demand {
            let pieces = core::iter::once(content).chain(more);
            for piece in pieces.filter(|piece| piece.end() > demand.start()) {
                let start = piece.start().max(demand.start());
                self.add_text(Span::new(start, piece.end()), start == demand.start());
            }
        }
        self.gap = false;
        self.captioned = Some(index);
        self.open.retain(|(indent, _)| *indent < line.indent);
        self.open.push((line.indent, index));
        Some(end)
    }

    /// Puts each captioned table under the item that alone cites it.
    pub(super) fn place_tables(&mut self) {
        let items = &self.outline.items;
        let (tables, others): (Vec<usize>, Vec<usize>) =
            (0..items.len()).partition(|index| self.is_table(*index));
        if tables.is_empty() {
            return;
        }
        // Looked for once: a long document has many tables and many items.
        let citing: Vec<(usize, String)> = others
            .into_iter()
            .filter_map(|index| Some((index, self.words_on_tables(items.get(index)?))))
            .filter(|(_, words)| !words.is_empty())
            .collect();
        let placed: Vec<(usize, usize)> = tables
            .into_iter()
            .filter_map(|table| {
                let path = items.get(table)?.path.to_lowercase();
                let mut citing = citing.iter().filter(|(_, words)| cites(words, &path));
                let (only, _) = citing.next().filter(|_| citing.next().is_none())?;
                Some((table, *only))
            })
            .collect();
        for (table, citing) in placed {
            if let Some(item) = self.outline.items.get_mut(table) {
                item.parent = Some(citing);
            }
        }
    }

    fn is_table(&self, index: usize) -> bool {
        let item = self.outline.items.get(index);
        item.is_some_and(|item| item.path.starts_with("Table "))
    }

    /// What an item says in words that name a table, in small letters.
    fn words_on_tables(&self, item: &OutlineItem) -> String {
        let texts = item
            .paragraphs
            .iter()
            .filter_map(|paragraph| match paragraph {
                Paragraph::Text(pieces)
                | Paragraph::Cell { text: pieces, .. }
                | Paragraph::Case { text: pieces, .. } => Some(
                    Flow::of(self.source, pieces.iter().copied())
                        .lower()
                        .to_owned(),
                ),
                Paragraph::Table(_) | Paragraph::Entry(_) => None,
            });
        let heading = item.heading.of(self.source).to_lowercase();
        let naming: Vec<String> = core::iter::once(heading)
            .chain(texts)
            .filter(|words| words.contains("table "))
            .collect();
        naming.join("\n")
    }

    /// Whether a drawn table may begin at this line: it has uprights or tabs, or a rule stands within the lines of a heading. Most text has neither.
    fn may_be_drawn(&self, at: usize) -> bool {
        const HEADING: usize = 7;
        let ruled = self.rules.iter().skip(at).take(HEADING).any(|rule| *rule);
        let parted = |line: &Line<'_>| is_boxed(line.text) || is_tabbed(line);
        ruled || self.lines.get(at).is_some_and(parted)
    }

    /// Whether a line only heads an item whose table stands below: `ITEM B.  HEAD TRACK`.
    fn heads_item(&self, at: usize) -> bool {
        let Some(line) = self.lines.get(at).filter(|line| !is_boxed(line.text)) else {
            return false;
        };
        let words = line.content().of(self.source);
        marker(words).is_some_and(|marker| {
            let title = words.get(marker.len..).unwrap_or_default().trim();
            // `3   PACKING IN FLUTES      density 6 pcf min` says more at the end of its line.
            let apart = title
                .split_once("  ")
                .filter(|(name, rest)| is_in_capitals(name) && !rest.trim().contains("  "));
            let title = apart.map_or(title, |(name, _)| name);
            !title.contains("  ")
                && title.starts_with(char::is_uppercase)
                && !title.contains(|c: char| c.is_ascii_digit())
                && self.sequence.place(&marker, line.indent).is_some()
                && self.may_begin(&marker, words)
        })
    }

    /// Takes a table that begins at this line.
    pub(super) fn table(&mut self, at: usize) -> Option<usize> {
        let carried = || self.above.as_ref()?.table(self.lines, at);
        let (table, end) = if let Some(carried) = self.gap.then(carried).flatten() {
            carried
        } else if self.captioned.is_some() {
            captioned_table_at(self.lines, at)?
        } else if self
            .lines
            .get(at)
            .is_some_and(|line| caption(line.text).is_some())
        {
            // A caption heads the table below it, and is no row of one.
            return None;
        } else if self.heads_item(at) {
            return None;
        } else {
            let drawn = || {
                self.may_be_drawn(at)
                    .then(|| table_at(self.lines, at))
                    .flatten()
            };
            drawn().or_else(|| plain_table_at(self.lines, at))?
        };
        let region = self.lines.get(at..end)?;
        if let Some(items) = items_of(&table, self.source) {
            self.table_items(&table, items, at..end);
            return Some(end);
        }
        self.leave_rows(region.first()?);
        self.rows_above.columns = None;
        if region.iter().any(|line| is_boxed(line.text)) {
            if self.captioned.is_none() && self.is_item_table(&table) {
                self.item_table(&table, region);
                return Some(end);
            }
            // A boxed block before the first item is the document's head, unless it holds values under headings.
            if self.current.is_none() && is_of_values(&table, self.source) {
                let start = region.first()?.span.start();
                self.push_item("Table".to_owned(), None, Span::new(start, start));
            } else if self.current.is_none() {
                self.head_box(region);
                return Some(end);
            }
        } else if self.current.is_none() {
            if !is_of_values(&table, self.source) {
                return None;
            }
            let start = region.first()?.span.start();
            self.push_item("Table".to_owned(), None, Span::new(start, start));
        }
        for line in region.iter().filter(|line| is_rule(line.text)) {
            self.outline.furniture.push(line.content());
        }
        let item = self
            .current
            .and_then(|index| self.outline.items.get_mut(index))?;
        self.above = Above::of(&table).or(self.above.take());
        item.paragraphs.push(Paragraph::Table(table));
        self.captioned = None;
        self.gap = true;
        Some(end)
    }

    /// Takes a boxed block of the head, column by column.
    fn head_box(&mut self, region: &[Line<'_>]) {
        let mut columns: Vec<Vec<Span>> = Vec::new();
        for line in region {
            if is_rule(line.text) {
                self.outline.furniture.push(line.content());
                continue;
            }
            for (index, cell) in cells(line).into_iter().enumerate() {
                if columns.len() <= index {
                    columns.push(Vec::new());
                }
                if let Some(column) = columns.get_mut(index).filter(|_| !cell.is_empty()) {
                    column.push(cell);
                }
            }
        }
        self.outline
            .head
            .extend(columns.into_iter().filter(|column| !column.is_empty()));
        self.gap = true;
    }
}

/// Whether a table has rows enough with a number in a cell behind the first, and headings of their own.
fn is_of_values(table: &Table, source: &str) -> bool {
    const FEWEST: usize = 4;
    let holds_number = |cell: &Vec<Span>| {
        cell.iter()
            .any(|piece| piece.of(source).starts_with(|c: char| c.is_ascii_digit()))
    };
    let of_values = table
        .rows
        .iter()
        .filter(|row| {
            row.cells
                .iter()
                .skip(1)
                .filter(|cell| holds_number(cell))
                .count()
                >= 2
        })
        .count();
    let headed = table
        .headings
        .iter()
        .filter(|heading| !heading.is_empty())
        .count();
    headed >= 2 && of_values >= FEWEST && of_values * 2 >= table.rows.len()
        || is_of_requirements(table, source) && table.rows.len() >= FEWEST
}

/// Whether a table has columns of units and of limits, as no head of a document has.
fn is_of_requirements(table: &Table, source: &str) -> bool {
    const UNITS: &[&str] = &["unit", "units", "uom"];
    const LIMITS: &[&str] = &[
        "min", "max", "minimum", "maximum", "min.", "max.", "limit", "value",
    ];
    let has = |names: &[&str]| {
        table.headings.iter().any(|heading| {
            let words: Vec<&str> = heading
                .iter()
                .map(|piece| piece.of(source).trim())
                .collect();
            names.contains(&words.join(" ").to_lowercase().as_str())
        })
    };
    has(UNITS) && has(LIMITS)
}

/// The first line from here on that isn't blank.
fn first_visible(lines: &[Line<'_>], start: usize) -> usize {
    (start..lines.len())
        .find(|at| lines.get(*at).is_some_and(|line| !line.is_blank()))
        .unwrap_or(lines.len())
}

/// Whether a few words are a heading by being in capitals alone.
fn is_in_capitals(words: &str) -> bool {
    let capital = |c: char| !c.is_lowercase();
    words.trim().contains(' ') && words.chars().all(capital) && words.contains(char::is_alphabetic)
}
