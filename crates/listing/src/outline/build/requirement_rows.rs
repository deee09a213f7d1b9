//! Schedules whose rows are requirements to items with their tables.

use core::mem;
use core::ops::Range;

use crate::layout::{Line, is_rule};
use crate::model::Span;

use super::super::requirement_rows::{Content, Item, Schedule, heads_numbers};
use super::super::sequence::Sequence;
use super::super::tables::{Table, runs};
use super::super::title::clean;
use super::{Builder, OutlineItem, Paragraph};

/// What an item of texts below such rows is called.
const BELOW: &str = "Below the rows";

/// The rows of items that stand above, up to the next item or table.
#[derive(Default)]
pub(super) struct RowsAbove<'a> {
    /// The columns that more of them may carry on with.
    pub(super) columns: Option<Schedule<'a>>,
    /// The items that hold them.
    containers: Vec<usize>,
    /// Whether they are the last that was taken, in no item around them.
    pub(super) are_last: bool,
}

impl<'a> Builder<'a> {
    /// Takes such a schedule that this line heads, or the rows of one whose headings stand above.
    pub(super) fn requirement_rows(&mut self, at: usize) -> Option<usize> {
        let headed = Schedule::headed_by(self.lines, at);
        let (schedule, from) = match headed {
            Some((schedule, from)) => (schedule, from),
            None => (self.carried_columns(at)?, at),
        };
        let (items, end) = schedule.items(self.lines, from)?;
        if from > at {
            self.outline.furniture.extend(schedule.headings());
        }
        self.scheduled_items(items, at..end);
        self.rows_above.columns = Some(schedule);
        Some(end)
    }

    /// Takes the items of a drawn table of the same kind.
    pub(super) fn table_items(&mut self, table: &Table, items: Vec<Item>, lines: Range<usize>) {
        let headings = table.headings.iter().flatten().copied();
        self.outline.furniture.extend(headings);
        self.scheduled_items(items, lines);
    }

    fn scheduled_items(&mut self, items: Vec<Item>, lines: Range<usize>) {
        let region = self.lines.get(lines).unwrap_or_default();
        let rules = region.iter().filter(|line| is_rule(line.text));
        self.outline.furniture.extend(rules.map(Line::content));
        let of_text = region.iter().find(|line| !is_rule(line.text));
        let indent = of_text.map_or(0, |line| line.indent);
        let container = self.container();
        // What numbers the rows of one table goes on with no numbers around it.
        let around = container.map(|_| mem::replace(&mut self.sequence, Sequence::midway()));
        for item in items {
            self.scheduled_item(item, container, indent);
        }
        match around {
            Some(around) => {
                self.rows_above.containers.extend(container);
                self.sequence = around;
                self.current = container;
            }
            None => self.rows_above.are_last = true,
        }
        self.schedule = None;
        self.captioned = None;
        self.gap = true;
        self.page_turned = false;
    }

    /// Forgets the columns above at a line that heads others, though nobody may know what they hold.
    pub(super) fn leave_columns(&mut self, line: &Line<'_>) {
        const FEWEST: usize = 3;
        let heads = runs(line);
        let numbered = heads
            .first()
            .is_some_and(|first| heads_numbers(first.words));
        if heads.len() >= FEWEST && numbered {
            self.rows_above.columns = None;
        }
    }

    /// The columns above, where a line behind a gap carries on with them.
    fn carried_columns(&self, at: usize) -> Option<Schedule<'a>> {
        let line = self.lines.get(at).filter(|_| self.gap)?;
        let schedule = self.rows_above.columns.as_ref()?;
        schedule.is_carried_by(line).then(|| schedule.clone())
    }

    /// The item whose table the rows are: one with a caption, one headed by a word such as "Part", or one that holds nothing but the table.
    fn container(&self) -> Option<usize> {
        let index = self.captioned.or(self.current)?;
        let item = self.outline.items.get(index)?;
        let heading = item.heading.of(self.source);
        let headed = heading.starts_with(|c: char| c.is_alphabetic())
            && !item.path.starts_with(|c: char| c.is_alphabetic());
        let empty =
            item.paragraphs.is_empty() && !item.path.starts_with('[') && !self.rows_above.are_last;
        (self.captioned.is_some() || headed || empty).then_some(index)
    }

    /// Calls the parts around rows of items by their word, `Part 2`, all through the document: a row may have the same number.
    pub(super) fn call_parts_by_their_word(&mut self) {
        let source = self.source;
        let word = |item: &OutlineItem| {
            let heading = item.heading.of(source);
            let word = heading.split_once(' ').map(|(word, _)| word.to_lowercase());
            let numbered = item.path.starts_with(|c: char| c.is_ascii_digit());
            word.filter(|word| numbered && word.chars().all(char::is_alphabetic))
        };
        let items = &mut self.outline.items;
        let mut containers: Vec<String> = self
            .rows_above
            .containers
            .iter()
            .filter_map(|index| word(items.get(*index)?))
            .collect();
        containers.sort_unstable();
        containers.dedup();
        for item in items {
            if let Some(word) = word(item).filter(|word| containers.contains(word)) {
                let mut letters = word.chars();
                let first = letters.next().into_iter().flat_map(char::to_uppercase);
                let called: String = first.chain(letters).collect();
                item.path = format!("{called} {}", item.path);
            }
        }
    }

    fn scheduled_item(&mut self, item: Item, container: Option<usize>, indent: usize) {
        let placement = self
            .sequence
            .place(&item.marker, indent)
            .unwrap_or_else(|| self.sequence.unplaced(&item.marker));
        let parent = placement.parent.or(container);
        let index = self.push_item(placement.path.clone(), parent, item.label);
        self.sequence.enter(&item.marker, &placement, indent, index);
        if container.is_none() {
            self.open = vec![(indent, index)];
        }
        let words: Vec<&str> = item
            .title
            .iter()
            .map(|piece| piece.of(self.source))
            .collect();
        let title = clean(&words.join(" "));
        if let Some(own) = self.outline.items.get_mut(index) {
            own.title = title;
            own.more_heading = item.title;
            own.paragraphs
                .extend(item.contents.into_iter().map(|content| match content {
                    Content::Rows(table) => Paragraph::Table(table),
                    Content::Product(pieces) | Content::Words(pieces) => Paragraph::Text(pieces),
                }));
        }
    }

    /// Opens an item for what stands below rows of items: it is of none of them.
    pub(super) fn leave_rows(&mut self, line: &Line<'_>) {
        if !self.rows_above.are_last {
            return;
        }
        let start = line.span.start();
        // A text between the rows doesn't end them.
        let columns = self.rows_above.columns.take();
        let index = self.push_item(BELOW.to_owned(), None, Span::new(start, start));
        self.rows_above.columns = columns;
        self.open = vec![(line.indent, index)];
    }
}
