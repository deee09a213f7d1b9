//! Lines to items: each with its heading, its paragraphs and its tables.

mod bands;
mod begins;
mod boxes;
mod case_heads;
mod case_lines;
mod case_words;
mod cases;
mod citation;
mod closing;
mod column;
mod first_part;
mod goes_on;
mod headings;
mod labels;
mod notes;
mod numbered_texts;
mod own_line;
mod parts;
mod requirement_rows;
mod schedules;
mod side_by_side;
mod tables;
mod title;
mod variant_lines;

pub(crate) use self::cases::is_case;
pub(crate) use self::labels::{heads_all, is_rating};

use self::case_heads::CaseHeads;
use self::case_lines::CaseLines;
use self::cases::CaseLine;
use self::closing::Setting;
use self::parts::Parts;
use self::requirement_rows::RowsAbove;
use self::title::take_title;
use self::variant_lines::VariantLines;
use super::entry::{Entry, entries_at};
use super::marker::{Close, marker, note_marks};
use super::schedule::{Columns, columns, heads_columns};
use super::sequence::Sequence;
use super::tables::{Above, Table};
use crate::layout::{Line, furniture, is_rule};
use crate::model::Span;

/// A stretch of an item's text without a blank line, or a table.
#[derive(Debug, Clone)]
pub(crate) enum Paragraph {
    /// Pieces of the source, a line or part of a line each.
    Text(Vec<Span>),
    /// A table.
    Table(Table),
    /// A label with its unit, and a value.
    Entry(Entry),
    /// A cell of words, and the heading of its column.
    Cell {
        /// The pieces of the heading.
        heading: Vec<Span>,
        /// The pieces of the cell.
        text: Vec<Span>,
    },
    /// Words, and what says when they hold.
    Case {
        /// The pieces of the case.
        case: Vec<Span>,
        /// The pieces of the words.
        text: Vec<Span>,
    },
}

impl Paragraph {
    /// The pieces of running text that it is made of; none of a table.
    pub(crate) fn pieces(&self) -> Vec<Span> {
        match self {
            Self::Text(pieces)
            | Self::Cell { text: pieces, .. }
            | Self::Case { text: pieces, .. } => pieces.clone(),
            Self::Entry(entry) => entry.pieces().collect(),
            Self::Table(_) => Vec::new(),
        }
    }
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
    /// Whether its first item isn't the first of the listing: pages before it are missing.
    pub(crate) midway: bool,
    /// Page heads, page feet and rules.
    pub(crate) furniture: Vec<Span>,
    /// The lines at the margin that end the option before them: they are of no item.
    pub(crate) closing: Vec<Span>,
    /// The lines that say for which joints the text under them is.
    pub(crate) bands: Vec<Span>,
    /// The lines between the parts of a list that say for which case the next are: they are of no item.
    pub(crate) cases: Vec<CaseLine>,
}

/// Finds the items of a document.
///
/// A document that numbers none from one up may count in tens; one that numbers none at all has its headings for items, where each stands
/// alone on its line above a paragraph. So has one whose first number stands behind most of its text: only its notes are numbered. One whose
/// headings are marked as such, `## Floor`, has these. What has no item at all may be a page from the middle of a listing.
pub(crate) fn outline(source: &str, lines: &[Line<'_>]) -> Outline {
    if headings::are_marked(lines) {
        return Builder::new(source, lines, true, Sequence::default()).build();
    }
    let numbered = Builder::new(source, lines, false, Sequence::default()).build();
    let late = numbered.begins_late(source);
    if numbered.counted() >= 2 && !late {
        return numbered;
    }
    let in_tens = Builder::new(source, lines, false, Sequence::in_tens()).build();
    if in_tens.counted() >= 3 && !late {
        return in_tens;
    }
    let headed = Builder::new(source, lines, true, Sequence::default()).build();
    if headed.items.len() > numbered.items.len() {
        return headed;
    }
    if numbered.items.is_empty() {
        let midway = Builder::new(source, lines, false, Sequence::midway()).build();
        if midway.counted() >= 2 {
            return Outline {
                midway: true,
                ..midway
            };
        }
    }
    numbered
}

impl Outline {
    /// How many items it has, footnotes apart.
    fn counted(&self) -> usize {
        let is_item = |item: &&OutlineItem| !item.path.starts_with('[');
        self.items.iter().filter(is_item).count()
    }

    /// Whether more than half of the text stands before the first item, tables apart.
    fn begins_late(&self, source: &str) -> bool {
        let is_item =
            |item: &&OutlineItem| !item.path.starts_with('[') && !item.path.starts_with("Table");
        let first = self
            .items
            .iter()
            .find(is_item)
            .map(|item| item.heading.start());
        first.is_some_and(|first| first * 2 > source.len())
    }
}

struct Builder<'a> {
    source: &'a str,
    lines: &'a [Line<'a>],
    furniture: Vec<bool>,
    /// Which lines are drawn, not written.
    rules: Vec<bool>,
    sequence: Sequence,
    /// The indents of the open items, innermost last.
    open: Vec<(usize, usize)>,
    outline: Outline,
    current: Option<usize>,
    /// Whether headings are items.
    headings: bool,
    /// The last item whose heading is marked as one.
    marked: Option<usize>,
    /// A blank line came since the last text.
    gap: bool,
    /// Page furniture came since the last text.
    page_turned: bool,
    /// The item whose caption has just been read: what follows is its table.
    captioned: Option<usize>,
    /// The columns of the schedule that the lines stand in.
    schedule: Option<Columns>,
    /// The rows of items above.
    rows_above: RowsAbove<'a>,
    /// The item that the schedule stands in.
    scheduled: Option<usize>,
    /// Labels in brackets that begin several lines: marks of notes, and no items.
    note_marks: Vec<String>,
    /// The columns of a table that later rows may carry on with.
    above: Option<Above>,
    /// The parts of the document that count anew.
    parts: Parts,
    /// The lines that notes begin with.
    notes: Vec<usize>,
    /// The lines that head bands of joints.
    bands: Vec<usize>,
    /// The lines that open with the joints they are for.
    case_lines: CaseLines,
    /// The lines under those that are a case and nothing more.
    case_heads: CaseHeads,
    /// The lines that begin anew because of the variants that lines begin with.
    variant_lines: VariantLines,
    /// The lines whose bare numbers count the items.
    column: Vec<usize>,
    /// How its lines are set.
    setting: Setting,
}

impl<'a> Builder<'a> {
    fn build(mut self) -> Outline {
        let mut at = 0;
        while at < self.lines.len() {
            at = self.step(at);
        }
        self.finish()
    }

    fn new(source: &'a str, lines: &'a [Line<'a>], headings: bool, sequence: Sequence) -> Self {
        let setting = Setting::of(lines);
        let case_lines = case_lines::begin(lines, setting);
        Self {
            headings,
            marked: None,
            source,
            lines,
            furniture: furniture(lines),
            rules: lines.iter().map(|line| is_rule(line.text)).collect(),
            sequence,
            open: Vec::new(),
            outline: Outline::default(),
            current: None,
            gap: true,
            page_turned: false,
            captioned: None,
            schedule: None,
            rows_above: RowsAbove::default(),
            scheduled: None,
            note_marks: note_marks(lines.iter().map(|line| line.text)),
            above: None,
            parts: Parts::default(),
            notes: notes::begin(lines),
            bands: bands::begin(lines),
            case_heads: CaseHeads::of(lines, setting, &case_lines),
            case_lines,
            variant_lines: VariantLines::of(lines, setting),
            column: column::counted(lines),
            setting,
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
        if let Some(end) = self.marked_heading(at) {
            return end;
        }
        if self.bands.contains(&at) {
            self.band(at, line);
            return at + 1;
        }
        let headed = self
            .heading_of_numbered_texts(at)
            .or_else(|| self.requirement_rows(at));
        if let Some(end) = headed {
            return end;
        }
        self.leave_columns(line);
        if let Some(columns) = columns(self.lines, at) {
            self.outline.furniture.push(line.content());
            self.schedule = Some(columns);
            self.scheduled = self.current;
            return at + 1;
        }
        let within = self
            .schedule
            .as_ref()
            .is_some_and(|schedule| schedule.is_within_row(line));
        if self.gap && heads_columns(self.lines, at) && !within {
            self.schedule = None;
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
        if let Some(end) = self.heading(at) {
            return end;
        }
        if let Some(end) = self
            .side_by_side(at)
            .or_else(|| self.begins_captioned_table(at))
        {
            return end;
        }
        if let Some(end) = self.entries(at) {
            return end;
        }
        self.captioned = None;
        self.text_line(at, line);
        at + 1
    }

    /// Takes the entries of a data sheet that begin at a line.
    fn entries(&mut self, at: usize) -> Option<usize> {
        self.current?;
        let (entries, end) = entries_at(self.lines, at)?;
        self.leave_rows(self.lines.get(at)?);
        let item = self
            .current
            .and_then(|index| self.outline.items.get_mut(index))?;
        item.paragraphs
            .extend(entries.into_iter().map(Paragraph::Entry));
        self.gap = true;
        self.page_turned = false;
        Some(end)
    }

    fn text_line(&mut self, at: usize, line: &Line<'_>) {
        let content = line.content();
        let words = content.of(self.source);
        if self.note(at, line, words) {
            return;
        }
        let marked = marker(words)
            .or_else(|| self.announced_part(words))
            .filter(|marker| {
                !(marker.close == Close::Brackets && self.note_marks.contains(&marker.label))
            })
            .filter(|marker| {
                let begins = self.column.contains(&at)
                    || self.may_begin(marker, words)
                    || self.returns_to_margin(at, line, marker, words);
                begins
                    && !self.ends_bracket(marker, words)
                    && !self.ends_sentence(marker, words)
                    && !self.is_cited()
            });
        if let Some(marker) = marked
            && let Some(placement) = self
                .alternate(&marker, words)
                .or_else(|| self.place(&marker, line))
                .or_else(|| self.leap(&marker, line, words))
        {
            self.begin_item(at, &marker, &placement, line.indent, content);
        } else if !self.case_line(at, line, content) {
            self.note_part(at, words);
            self.continue_text(at, line, content);
        }
        self.gap = false;
        self.page_turned = false;
    }

    /// Takes the first line of a note.
    fn note(&mut self, at: usize, line: &Line<'_>, words: &str) -> bool {
        let begins = self.notes.contains(&at) && self.current.is_some();
        let Some(mark) = notes::mark_of(words).filter(|_| begins) else {
            return false;
        };
        let content = line.content();
        let heading = Span::new(content.start(), content.start() + mark.len());
        let path = format!("[{}]", mark.label());
        let index = self.push_item(path, None, heading);
        self.open = vec![(line.indent, index)];
        let text = Span::new(heading.end(), content.end());
        let words = text.of(self.source).trim_start();
        self.add_text(Span::new(content.end() - words.len(), content.end()), true);
        self.gap = false;
        self.page_turned = false;
        true
    }

    /// Takes a line that heads a band of joints.
    fn band(&mut self, at: usize, line: &Line<'_>) {
        let content = line.content();
        self.captioned = None;
        self.note_part(at, content.of(self.source));
        self.outline.bands.push(content);
        self.continue_text(at, line, content);
        self.gap = false;
        self.page_turned = false;
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
        self.rows_above.are_last = false;
        self.rows_above.columns = None;
        index
    }

    fn finish(mut self) -> Outline {
        let mut parents = vec![false; self.outline.items.len()];
        for parent in self.outline.items.iter().filter_map(|item| item.parent) {
            if let Some(is_parent) = parents.get_mut(parent) {
                *is_parent = true;
            }
        }
        for (item, is_parent) in self.outline.items.iter_mut().zip(parents) {
            // A footnote has no title: its first words may be a maker's. A table's is in its caption.
            let untitled = item.path.starts_with('[') || item.path.starts_with("Table ");
            if item.title.is_empty() && !untitled && !item.path.is_empty() {
                take_title(self.source, item, !is_parent, self.setting);
            }
        }
        self.place_tables();
        self.call_parts_by_their_word();
        self.outline
    }
}
