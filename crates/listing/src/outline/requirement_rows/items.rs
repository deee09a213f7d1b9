//! The lines of a schedule as items, each with the rows that stand under its number.

use super::Schedule;
use super::cells::Cells;
use super::heading::Role;
use crate::layout::{Line, is_rule};
use crate::model::Span;
use crate::outline::marker::{Marker, cell_marker};
use crate::outline::open_end::ends_open;
use crate::outline::tables::{Row, Run, Table};

use super::table::repeats;

/// An item of a schedule.
#[derive(Debug)]
pub(in crate::outline) struct Item {
    /// Its number.
    pub(in crate::outline) marker: Marker,
    /// Where the number stands.
    pub(in crate::outline) label: Span,
    /// The pieces of its name.
    pub(in crate::outline) title: Vec<Span>,
    /// What is asked of it.
    pub(in crate::outline) contents: Vec<Content>,
}

/// What stands under an item.
#[derive(Debug)]
pub(in crate::outline) enum Content {
    /// Rows of requirements.
    Rows(Table),
    /// A product, as it stands beside the rows.
    Product(Vec<Span>),
    /// A row whose words run across the columns of its limits.
    Words(Vec<Span>),
}

/// A row while its lines are gathered.
#[derive(Debug, Default)]
struct Gathered {
    cells: Vec<Vec<Span>>,
    across: bool,
    valued: bool,
    /// Whether its label ends in a word that must go on.
    open: bool,
    /// Which of the item's names it stands under.
    name: usize,
    span: Span,
}

/// An item while its rows are gathered.
struct Open {
    marker: Marker,
    label: Span,
    /// The pieces of its name, and of the names of further parts under its number.
    names: Vec<Vec<Span>>,
    /// Whether its name is that of the item above.
    name_repeats: bool,
    /// Whether the last name ends in words that must go on.
    awaits_name: bool,
    product: Vec<Span>,
    rows: Vec<Gathered>,
}

impl Schedule<'_> {
    /// The items from a line on, with the line after the last; none where no two rows state a value.
    pub(in crate::outline) fn items(
        &self,
        lines: &[Line<'_>],
        start: usize,
    ) -> Option<(Vec<Item>, usize)> {
        const FEWEST: usize = 2;
        let (open, end) = self.gather(lines, start);
        let valued = open.iter().flat_map(|item| &item.rows);
        (valued.filter(|row| row.valued).count() >= FEWEST).then(|| {
            let mut items: Vec<Item> = Vec::new();
            for mut item in open {
                // `do.` repeats the name above.
                let above = items.last().filter(|_| item.name_repeats);
                if let Some((above, own)) = above.zip(item.names.first_mut()) {
                    own.clone_from(&above.title);
                }
                items.push(self.finished(item));
            }
            (items, end)
        })
    }

    /// Whether a line carries on with the columns, behind a text: it numbers and names an item, says what is asked of it, and states a value.
    pub(in crate::outline) fn is_carried_by(&self, line: &Line<'_>) -> bool {
        self.cells(line).is_some_and(|cells| {
            cells
                .of(0)
                .is_some_and(|number| cell_marker(number.words).is_some())
                && (1..=self.property).all(|column| cells.of(column).is_some())
                && self.states_value(&cells)
        })
    }

    fn gather(&self, lines: &[Line<'_>], start: usize) -> (Vec<Open>, usize) {
        let mut items: Vec<Open> = Vec::new();
        let (mut at, mut end) = (start, start);
        while let Some(line) = lines.get(at) {
            if line.is_blank() || is_rule(line.text) {
                at += 1;
                continue;
            }
            // Behind a gap only a number goes on: a row without one may be of the item above or of the one below.
            let parted = at > end;
            let taken = self
                .cells(line)
                .filter(|cells| !parted || cells.of(0).is_some())
                .is_some_and(|cells| self.take(&cells, line, &mut items).is_some());
            if !taken {
                break;
            }
            at += 1;
            end = at;
        }
        (items, end)
    }

    /// Takes a line; none where it is none of the schedule's.
    fn take(&self, cells: &Cells<'_>, line: &Line<'_>, items: &mut Vec<Open>) -> Option<()> {
        if let Some(run) = cells.of(0) {
            let marker = cell_marker(run.words).filter(|_| self.names(cells))?;
            items.push(Open {
                marker,
                label: run.span,
                names: vec![Vec::new()],
                awaits_name: true,
                name_repeats: self.name(cells).is_some_and(|run| repeats(run.words)),
                product: Vec::new(),
                rows: Vec::new(),
            });
        }
        let item = items.last_mut()?;
        if let Some(name) = self.name(cells) {
            let asks = cells.of(self.property).is_some() && self.states_value(cells);
            item.add_name(&name, asks);
        }
        item.product
            .extend(self.of_role(cells, Role::Product).map(|run| run.span));
        let own: Vec<Option<Run<'_>>> = (self.property..self.columns.len())
            .map(|column| cells.of(column))
            .collect();
        let nothing = own.iter().all(Option::is_none) && cells.across.is_none();
        let named = self.property == 1 && self.name(cells).is_some();
        if nothing || named {
            return Some(());
        }
        let goes_on =
            cells.of(0).is_none() && item.rows.last().is_some_and(|row| self.goes_on(row, cells));
        if goes_on {
            let row = item.rows.last_mut()?;
            row.valued |= self.states_value(cells);
            row.add(&own, line);
            return Some(());
        }
        let label = self.repeated_label(item, cells)?;
        let valued = self.states_value(cells);
        let mut row = Gathered::of(own.len(), valued, cells.across.is_some());
        row.name = item.names.len() - 1;
        row.cells.first_mut()?.extend(label);
        row.add(&own, line);
        if let Some(across) = cells.across {
            row.cells.get_mut(1)?.push(across.span);
        }
        item.rows.push(row);
        Some(())
    }

    /// The label that a row without one has: that of the row above. None where there is none, or the line holds nothing but remarks.
    fn repeated_label(&self, item: &Open, cells: &Cells<'_>) -> Option<Vec<Span>> {
        if cells.of(self.property).is_some() {
            return Some(Vec::new());
        }
        let above = item.rows.last().filter(|_| self.states_value(cells))?;
        above.cells.first().cloned()
    }

    /// Whether a line goes on with the row above: it has no label and no value of its own, or its label goes on in small letters and one of the two
    /// has no value.
    fn goes_on(&self, row: &Gathered, cells: &Cells<'_>) -> bool {
        let valued = self.states_value(cells) || cells.across.is_some();
        let Some(label) = cells.of(self.property) else {
            // `(102 mm)`, `joint width`
            let goes_on = |words: &str| words.starts_with(|c: char| c == '(' || c.is_lowercase());
            let second = |column: usize| {
                cells
                    .of(column)
                    .is_none_or(|run| !self.is_value(column) || goes_on(run.words))
            };
            return !valued || (0..self.columns.len()).all(second);
        };
        let small = !label.words.starts_with(char::is_uppercase);
        (small || row.open) && !(valued && row.valued)
    }

    fn is_value(&self, column: usize) -> bool {
        self.columns
            .get(column)
            .is_some_and(|column| column.role == Role::Value)
    }

    /// Whether a limit or a unit stands in a line, be it a dash.
    fn states_value(&self, cells: &Cells<'_>) -> bool {
        (0..self.columns.len()).any(|column| self.is_value(column) && cells.of(column).is_some())
    }

    /// The name that stands in a line: in its column, or where there is none beside the number, in that of what is asked if nothing else stands there.
    fn name<'b>(&self, cells: &Cells<'b>) -> Option<Run<'b>> {
        if self.property > 1 {
            return self.of_role(cells, Role::Name);
        }
        let heads = cells.of(0).is_some() && self.is_alone(cells);
        cells.of(self.property).filter(|_| heads)
    }

    /// Whether nothing is asked in a line but the words in the column of what is asked.
    fn is_alone(&self, cells: &Cells<'_>) -> bool {
        cells.across.is_none()
            && (self.property + 1..self.columns.len()).all(|column| cells.of(column).is_none())
    }

    fn names(&self, cells: &Cells<'_>) -> bool {
        self.name(cells).is_some() || cells.of(self.property).is_some()
    }

    fn of_role<'b>(&self, cells: &Cells<'b>, role: Role) -> Option<Run<'b>> {
        let column = self.columns.iter().position(|column| column.role == role)?;
        cells.of(column)
    }

    /// An item with its rows as tables, and as texts where they run across the columns.
    fn finished(&self, open: Open) -> Item {
        // Each row says which part it is of, as it would where the name stood in it.
        let name = self
            .columns
            .get(1)
            .filter(|column| column.role == Role::Name);
        let names = open.names;
        let headings: Vec<Vec<Span>> = name
            .into_iter()
            .chain(self.columns.iter().skip(self.property))
            .map(|column| {
                let more = column.more.map(|more| more.span);
                core::iter::once(column.head.span).chain(more).collect()
            })
            .collect();
        let product = Some(open.product).filter(|pieces| !pieces.is_empty());
        let mut contents: Vec<Content> = product.map(Content::Product).into_iter().collect();
        for row in open.rows {
            if row.across {
                contents.push(Content::Words(row.cells.concat()));
                continue;
            }
            let part = name.and_then(|_| names.get(row.name).cloned());
            let own = Row {
                cells: part.into_iter().chain(row.cells).collect(),
                span: row.span,
            };
            match contents.last_mut() {
                Some(Content::Rows(table)) => table.push_whole(own),
                _ => contents.push(Content::Rows(Table::of_row(headings.clone(), own))),
            }
        }
        Item {
            marker: open.marker,
            label: open.label,
            title: names.into_iter().next().unwrap_or_default(),
            contents,
        }
    }
}

impl Open {
    /// Adds a line of a name. One that begins anew beside a row of its own, once the name above is whole, is of another part.
    fn add_name(&mut self, name: &Run<'_>, asks: bool) {
        let anew = name.words.starts_with(char::is_uppercase);
        let another = anew && asks && !self.awaits_name && !self.rows.is_empty();
        if another {
            self.names.push(Vec::new());
        }
        if let Some(pieces) = self.names.last_mut() {
            pieces.push(name.span);
        }
        let unclosed = name.words.rfind('(') > name.words.rfind(')');
        self.awaits_name =
            unclosed || ends_open(name.words) || name.words.ends_with([',', '-', '/', '&']);
    }
}

impl Gathered {
    fn of(columns: usize, valued: bool, across: bool) -> Self {
        Self {
            cells: vec![Vec::new(); columns],
            across,
            valued,
            open: false,
            name: 0,
            span: Span::default(),
        }
    }

    /// Adds the cells of a line.
    fn add(&mut self, cells: &[Option<Run<'_>>], line: &Line<'_>) {
        for (column, run) in self.cells.iter_mut().zip(cells) {
            column.extend(run.map(|run| run.span));
        }
        if let Some(label) = cells.first().copied().flatten() {
            self.open = ends_open(label.words) || label.words.ends_with(['-', ',']);
        }
        let own = cells
            .iter()
            .flatten()
            .map(|run| run.span)
            .reduce(Span::join);
        let own = own.unwrap_or_else(|| line.content());
        self.span = if self.span.is_empty() {
            own
        } else {
            self.span.join(own)
        };
    }
}
