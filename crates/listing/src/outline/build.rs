//! Lines to items: each with its heading, its paragraphs and its tables.

use crate::layout::{Flow, Line, furniture, is_rule};
use crate::model::Span;

use super::caption::{caption, cites};
use super::marker::{Close, Marker, Part, marker};
use super::schedule::{Columns, columns};
use super::sequence::Sequence;
use super::tables::{Table, captioned_table_at, cells, is_boxed, plain_table_at, table_at};
use super::title::{clean, title_len};

/// A stretch of an item's text without a blank line, or a table.
#[derive(Debug, Clone)]
pub(crate) enum Paragraph {
    /// Pieces of the source, a line or part of a line each.
    Text(Vec<Span>),
    /// A table.
    Table(Table),
}

/// An item with what stands in it.
#[derive(Debug, Clone)]
pub(crate) struct OutlineItem {
    pub(crate) path: String,
    pub(crate) parent: Option<usize>,
    pub(crate) title: String,
    /// The marker, and the title when it has one.
    pub(crate) heading: Span,
    /// The further lines of a title that stands in a column.
    pub(crate) more_heading: Vec<Span>,
    pub(crate) paragraphs: Vec<Paragraph>,
}

/// A document as items.
#[derive(Debug, Default)]
pub(crate) struct Outline {
    /// What stands before the first item, a paragraph for each stretch.
    pub(crate) head: Vec<Vec<Span>>,
    pub(crate) items: Vec<OutlineItem>,
    /// Page heads, page feet and rules.
    pub(crate) furniture: Vec<Span>,
}

/// Finds the items of a document.
///
/// A document that numbers none has its headings for items, where each stands alone on its line above a paragraph.
pub(crate) fn outline(source: &str, lines: &[Line<'_>]) -> Outline {
    let numbered = Builder::new(source, lines, false).build();
    if numbered.items.len() >= 2 {
        return numbered;
    }
    let headed = Builder::new(source, lines, true).build();
    if headed.items.len() > numbered.items.len() {
        headed
    } else {
        numbered
    }
}

struct Builder<'a> {
    source: &'a str,
    lines: &'a [Line<'a>],
    furniture: Vec<bool>,
    sequence: Sequence,
    /// The indents of the open items, innermost last.
    open: Vec<(usize, usize)>,
    outline: Outline,
    current: Option<usize>,
    /// Whether headings are items.
    headings: bool,
    /// A blank line came since the last text.
    gap: bool,
    /// Page furniture came since the last text.
    page_turned: bool,
    /// The item whose caption has just been read: what follows is its table.
    captioned: Option<usize>,
    /// The columns of the schedule that the lines stand in.
    schedule: Option<Columns>,
    /// The item that the schedule stands in.
    scheduled: Option<usize>,
}

impl<'a> Builder<'a> {
    fn build(mut self) -> Outline {
        let mut at = 0;
        while at < self.lines.len() {
            at = self.step(at);
        }
        self.finish()
    }

    fn new(source: &'a str, lines: &'a [Line<'a>], headings: bool) -> Self {
        Self {
            headings,
            source,
            lines,
            furniture: furniture(lines),
            sequence: Sequence::default(),
            open: Vec::new(),
            outline: Outline::default(),
            current: None,
            gap: true,
            page_turned: false,
            captioned: None,
            schedule: None,
            scheduled: None,
        }
    }

    /// Takes one line, or a whole table, and gives the next line to take.
    fn step(&mut self, at: usize) -> usize {
        let Some(line) = self.lines.get(at) else {
            return at + 1;
        };
        if line.is_blank() {
            self.gap = true;
            return at + 1;
        }
        if let Some(columns) = columns(self.lines, at) {
            self.outline.furniture.push(line.content());
            self.schedule = Some(columns);
            self.scheduled = self.current;
            return at + 1;
        }
        if let Some(end) = self.schedule_row(at) {
            return end;
        }
        if let Some(end) = self.table(at) {
            return end;
        }
        if self.furniture.get(at).copied().unwrap_or_default() {
            self.outline.furniture.push(line.content());
            self.page_turned |= !is_rule(line.text);
            self.gap |= is_rule(line.text);
            return at + 1;
        }
        if self.headings && self.gap && self.is_heading(at) {
            let content = line.content();
            let title = clean(content.of(self.source));
            let index = self.push_item(title.clone(), None, content);
            if let Some(item) = self.outline.items.get_mut(index) {
                item.title = title;
            }
            self.open = vec![(line.indent, index)];
            self.gap = true;
            return at + 1;
        }
        if let Some(end) = self.begins_captioned_table(at) {
            return end;
        }
        self.captioned = None;
        self.text_line(line);
        at + 1
    }

    /// Takes a row of a schedule: its first column names an item, and each other column is a text of it. Where the first column holds the
    /// marker alone, the second holds the title.
    fn schedule_row(&mut self, at: usize) -> Option<usize> {
        let (row, end) = self.schedule.as_ref()?.row(self.lines, at)?;
        let indent = self.lines.get(at)?.indent;
        let mut columns = row.cells.into_iter();
        let mut titles: Vec<Span> = columns.next()?.concat();
        let first = *titles.first()?;
        let words = first.of(self.source);
        let placed = marker(words)
            .or_else(|| cell_marker(words))
            .and_then(|marker| {
                let placement = self.sequence.place(&marker, indent)?;
                Some((marker, placement))
            });
        let Some((marker, placement)) = placed else {
            return self.unmarked_row(&titles, columns, end);
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
        if titles.is_empty() {
            titles = columns.next().unwrap_or_default().concat();
        }
        self.title_row(index, titles);
        self.add_columns(columns);
        Some(end)
    }

    /// A row without a marker is a text of the item that the schedule stands in; in a document that numbers none it names an item by its
    /// title.
    fn unmarked_row(
        &mut self,
        titles: &[Span],
        columns: impl Iterator<Item = Vec<Vec<Span>>>,
        end: usize,
    ) -> Option<usize> {
        let first = *titles.first()?;
        if let Some(item) = self
            .scheduled
            .and_then(|index| self.outline.items.get_mut(index))
        {
            let mut pieces = titles.to_vec();
            pieces.extend(columns.flatten().flatten());
            item.paragraphs.push(Paragraph::Text(pieces));
            self.gap = true;
            return Some(end);
        }
        let words: Vec<&str> = titles.iter().map(|piece| piece.of(self.source)).collect();
        let title = clean(&words.join(" "));
        let index = self.push_item(title, None, first);
        self.title_row(index, titles.to_vec());
        self.add_columns(columns);
        Some(end)
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
        let item = self
            .current
            .and_then(|index| self.outline.items.get_mut(index));
        if let Some(item) = item {
            item.paragraphs
                .extend(columns.flatten().map(Paragraph::Text));
        }
        self.gap = true;
    }

    /// Opens an item for a captioned table that begins at this line; gives the line after the caption.
    fn begins_captioned_table(&mut self, at: usize) -> Option<usize> {
        const LONGEST: usize = 3;
        let line = self
            .lines
            .get(at)
            .filter(|_| self.gap && self.current.is_some())?;
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
        let heading = if says_more {
            Span::new(content.start(), label_end)
        } else {
            whole
        };
        let index = self.push_item(path, None, heading);
        if says_more {
            self.add_text(Span::new(label_end, content.end()), true);
            for piece in more {
                self.add_text(piece, false);
            }
        } else if let Some(item) = self.outline.items.get_mut(index) {
            let words = Span::new(label_end, whole.end()).of(self.source);
            item.title = clean(&words.split_whitespace().collect::<Vec<_>>().join(" "));
        }
        self.gap = false;
        self.captioned = Some(index);
        self.open.retain(|(indent, _)| *indent < line.indent);
        self.open.push((line.indent, index));
        Some(end)
    }

    /// Puts each captioned table under the item that alone cites it.
    fn place_tables(&mut self) {
        let items = &self.outline.items;
        let placed: Vec<(usize, usize)> = (0..items.len())
            .filter(|table| self.is_table(*table))
            .filter_map(|table| Some((table, self.sole_citing(table)?)))
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

    /// The one item that cites a table; none when several do, or none.
    fn sole_citing(&self, table: usize) -> Option<usize> {
        let path = &self.outline.items.get(table)?.path;
        let mut citing = (0..self.outline.items.len()).filter(|index| {
            !self.is_table(*index)
                && self
                    .outline
                    .items
                    .get(*index)
                    .is_some_and(|item| self.item_cites(item, path))
        });
        citing.next().filter(|_| citing.next().is_none())
    }

    fn item_cites(&self, item: &OutlineItem, path: &str) -> bool {
        cites(item.heading.of(self.source), path)
            || item.paragraphs.iter().any(|paragraph| match paragraph {
                Paragraph::Text(pieces) => {
                    cites(Flow::of(self.source, pieces.iter().copied()).text(), path)
                }
                Paragraph::Table(_) => false,
            })
    }

    /// Whether a line is a heading: short, without a number or a stop, above a paragraph of ten words or more.
    fn is_heading(&self, at: usize) -> bool {
        const SHORT: usize = 6;
        const LONG: usize = 10;
        let words = |at: usize| {
            self.lines
                .get(at)
                .map(|line| line.content().of(self.source))
                .unwrap_or_default()
        };
        let heading = words(at);
        let plain = heading.starts_with(char::is_uppercase)
            && heading.split_whitespace().count() <= SHORT
            && !heading
                .contains(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | ';' | ':' | '|'))
            && !heading.contains("  ");
        let next = (at + 1..self.lines.len()).find(|next| !words(*next).is_empty());
        let paragraph = next.map_or(0, |next| {
            let lines = (next..self.lines.len()).take_while(|line| !words(*line).is_empty());
            lines
                .map(|line| words(line).split_whitespace().count())
                .sum()
        });
        plain && paragraph >= LONG && self.lines.get(at + 1).is_some_and(Line::is_blank)
    }

    /// Takes a table that begins at this line.
    fn table(&mut self, at: usize) -> Option<usize> {
        let (table, end) = if self.captioned.is_some() {
            captioned_table_at(self.lines, at)?
        } else {
            let plain = || self.current.and_then(|_| plain_table_at(self.lines, at));
            table_at(self.lines, at).or_else(plain)?
        };
        let region = self.lines.get(at..end)?;
        if region.iter().any(|line| is_boxed(line.text)) {
            if self.captioned.is_none() && self.is_item_table(region) {
                self.item_table(region);
                return Some(end);
            }
            // A boxed block before the first item is the document's head.
            if self.current.is_none() {
                self.head_box(region);
                return Some(end);
            }
        } else if self.current.is_none() {
            return None;
        }
        for line in region.iter().filter(|line| is_rule(line.text)) {
            self.outline.furniture.push(line.content());
        }
        let item = self
            .current
            .and_then(|index| self.outline.items.get_mut(index))?;
        item.paragraphs.push(Paragraph::Table(table));
        self.captioned = None;
        self.gap = true;
        Some(end)
    }

    /// Whether the first cells of a box are item markers.
    fn is_item_table(&self, region: &[Line<'_>]) -> bool {
        let firsts: Vec<&str> = region
            .iter()
            .filter(|line| is_boxed(line.text) && !is_rule(line.text))
            .filter_map(|line| cells(line).first().map(|cell| cell.of(self.source)))
            .filter(|words| !words.is_empty())
            .collect();
        let marked = firsts
            .iter()
            .filter(|words| cell_marker(words).is_some())
            .count();
        marked >= 2 && marked * 3 >= firsts.len() * 2 && self.is_wordy(region)
    }

    /// Whether the cells of a box hold texts: in a table of values, no cell of most rows is longer than a few words.
    fn is_wordy(&self, region: &[Line<'_>]) -> bool {
        const FEW: usize = 4;
        let rows = || {
            region
                .iter()
                .filter(|line| is_boxed(line.text) && !is_rule(line.text))
        };
        let wordy = rows().filter(|line| {
            cells(line)
                .iter()
                .skip(1)
                .any(|cell| cell.of(self.source).split_whitespace().count() > FEW)
        });
        wordy.count() * 2 > rows().count()
    }

    /// Takes a box whose rows are items: marker, title, text.
    fn item_table(&mut self, region: &[Line<'_>]) {
        for line in region {
            if is_rule(line.text) {
                self.outline.furniture.push(line.content());
                continue;
            }
            let cells = cells(line);
            let Some((label, rest)) = cells.split_first() else {
                continue;
            };
            if let Some(marker) = cell_marker(label.of(self.source)) {
                let placement = self
                    .sequence
                    .place(&marker, line.indent)
                    .unwrap_or_else(|| self.sequence.unplaced(&marker));
                let index = self.push_item(placement.path.clone(), placement.parent, *label);
                self.sequence.enter(&marker, &placement, line.indent, index);
                self.open = vec![(line.indent, index)];
            }
            let (title, texts) = match rest {
                [title, texts @ ..] if !texts.is_empty() => (Some(*title), texts),
                texts => (None, texts),
            };
            let Some(item) = self
                .current
                .and_then(|index| self.outline.items.get_mut(index))
            else {
                continue;
            };
            if let Some(title) = title.filter(|title| !title.is_empty()) {
                let words = clean(title.of(self.source));
                item.title = if item.title.is_empty() {
                    words
                } else {
                    format!("{} {words}", item.title)
                };
                item.heading = item.heading.join(title);
            }
            for text in texts.iter().filter(|text| !text.is_empty()) {
                match item.paragraphs.last_mut() {
                    Some(Paragraph::Text(pieces)) => pieces.push(*text),
                    _ => item.paragraphs.push(Paragraph::Text(vec![*text])),
                }
            }
        }
        self.gap = true;
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

    fn text_line(&mut self, line: &Line<'_>) {
        let content = line.content();
        let words = content.of(self.source);
        if let Some(marker) = marker(words)
            && let Some(placement) = self.sequence.place(&marker, line.indent)
            && self.may_begin(&marker)
        {
            let heading = Span::new(content.start(), content.start() + marker.len);
            let index = self.push_item(placement.path.clone(), placement.parent, heading);
            self.sequence.enter(&marker, &placement, line.indent, index);
            self.open.retain(|(indent, _)| *indent < line.indent);
            self.open.push((line.indent, index));
            let rest = Span::new(heading.end(), content.end());
            // `T   JOINT SCHEDULE` captions the columns below it.
            let title = rest.of(self.source).to_lowercase();
            if title.ends_with("schedule") || title.ends_with("table") {
                self.captioned = Some(index);
            }
            if !rest.is_empty() {
                self.add_text(rest, true);
            }
        } else {
            self.continue_text(line, content);
        }
        self.gap = false;
        self.page_turned = false;
    }

    /// A marker without punctuation may begin an item only after a gap or at the very start.
    fn may_begin(&self, marker: &Marker) -> bool {
        let bare = marker.close == Close::Nothing
            && matches!(
                marker.parts.as_slice(),
                [Part::Number(_) | Part::Letters(_)]
            );
        self.gap || !bare
    }

    fn continue_text(&mut self, line: &Line<'_>, content: Span) {
        // After a gap, a line that stands further left than the item's marker belongs to an item around it.
        if self.gap && !self.page_turned {
            while self.open.len() > 1
                && self
                    .open
                    .last()
                    .is_some_and(|(indent, _)| *indent >= line.indent)
            {
                self.open.pop();
            }
            self.current = self.open.last().map(|(_, index)| *index).or(self.current);
        }
        let unfinished = self.page_turned && !self.last_sentence_ended();
        let words = content.of(self.source);
        let begins = (self.gap && !unfinished) || is_bullet(words) || is_labelled(words);
        self.add_text(content, begins);
    }

    fn last_sentence_ended(&self) -> bool {
        let item = self.current.and_then(|index| self.outline.items.get(index));
        match item.and_then(|item| item.paragraphs.last()) {
            Some(Paragraph::Text(pieces)) => pieces
                .last()
                .is_none_or(|piece| piece.of(self.source).trim_end().ends_with(['.', ':', ';'])),
            _ => true,
        }
    }

    fn add_text(&mut self, span: Span, begins: bool) {
        let Some(item) = self
            .current
            .and_then(|index| self.outline.items.get_mut(index))
        else {
            match self.outline.head.last_mut().filter(|_| !begins) {
                Some(pieces) => pieces.push(span),
                None => self.outline.head.push(vec![span]),
            }
            return;
        };
        match item.paragraphs.last_mut().filter(|_| !begins) {
            Some(Paragraph::Text(pieces)) => pieces.push(span),
            _ => item.paragraphs.push(Paragraph::Text(vec![span])),
        }
    }

    fn push_item(&mut self, path: String, parent: Option<usize>, heading: Span) -> usize {
        let index = self.outline.items.len();
        self.outline.items.push(OutlineItem {
            path,
            parent,
            title: String::new(),
            heading,
            more_heading: Vec::new(),
            paragraphs: Vec::new(),
        });
        self.current = Some(index);
        index
    }

    fn finish(mut self) -> Outline {
        for item in &mut self.outline.items {
            // A footnote has no title: its first words may be a maker's. A table's is in its caption.
            let untitled = item.path.starts_with('[') || item.path.starts_with("Table ");
            if item.title.is_empty() && !untitled && !item.path.is_empty() {
                take_title(self.source, item);
            }
        }
        self.place_tables();
        self.outline
    }
}

/// Moves an item's title out of its first paragraph.
fn take_title(source: &str, item: &mut OutlineItem) {
    let Some(Paragraph::Text(pieces)) = item.paragraphs.first_mut() else {
        return;
    };
    let flow = Flow::of(source, pieces.iter().copied());
    let len = title_len(flow.text());
    if len == 0 {
        return;
    }
    item.title = clean(flow.text().get(..len).unwrap_or_default());
    let end = flow.span(0, len.min(flow.text().trim_end().len())).end();
    item.heading = Span::new(item.heading.start(), end);
    pieces.retain_mut(|piece| {
        *piece = Span::new(piece.start().max(end), piece.end().max(end));
        !piece.of(source).trim().is_empty()
    });
    if pieces.is_empty() {
        item.paragraphs.remove(0);
    }
}

/// The first line from here on that isn't blank.
fn first_visible(lines: &[Line<'_>], start: usize) -> usize {
    (start..lines.len())
        .find(|at| lines.get(*at).is_some_and(|line| !line.is_blank()))
        .unwrap_or(lines.len())
}

/// The marker that a box's first cell is, whole.
fn cell_marker(words: &str) -> Option<Marker> {
    let closed = format!("{}. x", words.trim().trim_end_matches('.'));
    let marker = marker(&closed)?;
    (marker.len + 1 == closed.len() || marker.len >= closed.len() - 2).then_some(marker)
}

/// `Joint width:      12 mm to 120 mm`, `Depth ......... 4 in.`: a line of a list of labels.
fn is_labelled(words: &str) -> bool {
    if words.starts_with(char::is_uppercase)
        && (words.contains(" ....") || words.contains(" . . ."))
    {
        return true;
    }
    let Some((label, value)) = words.split_once(':') else {
        return false;
    };
    let short = label.split_whitespace().count() <= 5 && label.starts_with(char::is_uppercase);
    short && value.starts_with("  ") && !label.contains('.')
}

fn is_bullet(words: &str) -> bool {
    ["• ", "- ", "– ", "* ", "*B", "** "]
        .iter()
        .any(|bullet| words.starts_with(bullet))
}
