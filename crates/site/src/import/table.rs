//! A sheet whose columns are known.

use std::collections::BTreeMap;

use vocabulary::vocabulary;

use super::column::About;
use super::kind::Kind;
use super::names::nearest;
use super::problem::{Findings, Wrong, listed, quoted};
use super::reading::{Source, says_not_known, source};
use super::sheet::{Row, Sheet};

/// A sheet with its columns, and the rows under them.
pub(crate) struct Table<'s> {
    pub kind: Kind,
    pub sheet: &'s Sheet,
    /// The rows of the table's things: not the headings, not the sources.
    pub rows: &'s [Row],
    /// The columns by name.
    pub named: BTreeMap<&'static str, usize>,
    /// The columns of properties and options, in the table's order, each with where its values come from.
    pub properties: Vec<(usize, About, Source)>,
    /// The columns that have a heading.
    pub headed: Vec<usize>,
    /// How many columns the headings take.
    pub width: usize,
}

impl<'s> Table<'s> {
    /// Reads the headings and sources of a sheet. A sheet of a workbook that is no table gives a notice, and none.
    pub(crate) fn of(sheet: &'s Sheet, findings: &mut Findings) -> Option<Self> {
        let (heading, rows) = sheet.rows.split_first()?;
        let Some(kind) = kind_of(heading) else {
            no_table(sheet, heading, findings);
            return None;
        };
        let mut table = Self {
            kind,
            sheet,
            rows,
            named: BTreeMap::new(),
            properties: Vec::new(),
            headed: heading.cells.keys().copied().collect(),
            width: heading
                .width
                .or_else(|| heading.cells.keys().max().map(|last| last + 1))
                .unwrap_or(0),
        };
        let mut seen = BTreeMap::new();
        for (column, text) in &heading.cells {
            if let Err(wrong) = table.add(*column, text, &mut seen) {
                findings.problem(sheet.cell(heading, *column), text, wrong);
            }
        }
        for needed in kind.columns().iter().filter(|column| column.required) {
            if !seen.contains_key(needed.heading) {
                table.missing(needed.heading, findings);
            }
        }
        table.merged(findings);
        table.take_sources(findings);
        Some(table)
    }

    /// How many cells tell a property or an option.
    pub(crate) fn told(&self) -> usize {
        let tells = |row: &Row| {
            let columns = self.properties.iter();
            columns.filter(|(at, ..)| row.text(*at).is_some()).count()
        };
        self.rows.iter().map(tells).sum()
    }

    /// Says of merged cells that they can't be read: what is shown for all their rows stands in the first alone.
    fn merged(&self, findings: &mut Findings) {
        let rows: BTreeMap<usize, &Row> = self
            .sheet
            .rows
            .iter()
            .map(|row| (row.number, row))
            .collect();
        for merged in self
            .sheet
            .merged
            .iter()
            .filter(|merged| merged.column < self.width)
        {
            let row = rows.get(&merged.row).copied();
            if let Some((row, text)) = row.and_then(|row| Some((row, row.text(merged.column)?))) {
                let message = format!("the cells {} are merged", merged.range);
                let wrong = Wrong::new(message, "unmerge them and fill in each");
                findings.problem(self.sheet.cell(row, merged.column), text, wrong);
            }
        }
    }

    /// Adds a column by its heading.
    fn add(
        &mut self,
        column: usize,
        text: &str,
        seen: &mut BTreeMap<String, usize>,
    ) -> Result<(), Wrong> {
        if text.starts_with('#') {
            return Ok(());
        }
        if let Some(about) = About::option(text) {
            return self.add_option(column, text, about, seen);
        }
        if let Some(about) = About::of_item(text) {
            return self.add_of_item(column, text, about, seen);
        }
        let name = heading_name(text);
        let named = self
            .kind
            .columns()
            .iter()
            .find(|known| known.heading == name);
        let property_name = named.map_or(Some(name.as_str()), |named| named.property);
        let property = property_name.and_then(|name| vocabulary().property(name));
        let property = property.filter(|property| self.kind.takes(property));
        if named.is_none() && property.is_none() {
            return Err(self.unknown(text, &name));
        }
        let what = property.map_or(name, |property| property.name.clone());
        first_of(&what, column, seen)?;
        match (property, named) {
            (Some(property), _) => {
                let about = About::Property(property);
                self.properties.push((column, about, Source::default()));
            }
            (None, Some(named)) => drop(self.named.insert(named.heading, column)),
            (None, None) => {}
        }
        Ok(())
    }

    /// Adds a column about the part that one item describes.
    fn add_of_item(
        &mut self,
        column: usize,
        text: &str,
        about: Result<About, String>,
        seen: &mut BTreeMap<String, usize>,
    ) -> Result<(), Wrong> {
        let taken = |about: &About| {
            about
                .property()
                .is_some_and(|property| self.kind.takes(property))
        };
        let about = match about {
            Ok(about) if taken(&about) => about,
            Ok(about) => return Err(self.unknown(text, &heading_name(about.name()))),
            Err(words) => return Err(self.unknown(text, &words)),
        };
        first_of(&about.name().to_lowercase(), column, seen)?;
        self.properties.push((column, about, Source::default()));
        Ok(())
    }

    /// Adds a column that says which option is built.
    fn add_option(
        &mut self,
        column: usize,
        text: &str,
        about: Result<About, ()>,
        seen: &mut BTreeMap<String, usize>,
    ) -> Result<(), Wrong> {
        if !self.kind.takes_options() {
            let message = format!("{} isn't a column of {}", quoted(text), self.kind.word());
            return Err(Wrong::new(
                message,
                "move it to the table of joints or marks",
            ));
        }
        let about = about.map_err(|()| {
            let message = format!("{} doesn't say which option", quoted(text));
            let help = "name the item, as `option.3C`, or write `option.configuration`";
            Wrong::new(message, help)
        })?;
        // `option.3c` beside `option.3C` would leave it to chance which of them counts.
        first_of(&about.name().to_lowercase(), column, seen)?;
        self.properties.push((column, about, Source::default()));
        Ok(())
    }

    /// What is said of a heading that is neither one of the table's nor a property.
    fn unknown(&self, text: &str, name: &str) -> Wrong {
        let columns = self.kind.columns().iter().map(|column| column.heading);
        let known = columns.clone();
        let message = format!("{} isn't a column of {}", quoted(text), self.kind.word());
        let own = "or begin the heading with `#` to keep the column from being read";
        if vocabulary().property(name).is_some() {
            let message = format!("{message}, whose properties stand elsewhere");
            return Wrong::new(message, "move it to the table of joints or marks");
        }
        let property = (name.len() <= MOST_TO_COMPARE)
            .then(|| vocabulary().nearest_property(name))
            .flatten();
        let property = property.filter(|property| self.kind.takes(property));
        match (nearest(name, known), property) {
            (Some(near), _) => Wrong::new(message, format!("the nearest is `{near}`; {own}")),
            (None, Some(near)) => Wrong::new(
                message,
                format!("the nearest property is `{}`; {own}", near.name),
            ),
            (None, None) => {
                let known = listed(columns);
                let help = format!(
                    "its columns are {known}, and properties such as `packing.density`; {own}"
                );
                Wrong::new(message, help)
            }
        }
    }

    /// Notes that the table lacks a column it needs.
    pub(crate) fn missing(&self, heading: &str, findings: &mut Findings) {
        let message = format!(
            "there is no column `{heading}`, which this table of {} needs",
            self.kind.word()
        );
        let place = self
            .sheet
            .rows
            .first()
            .map(|first| self.sheet.row_place(first));
        findings.problem(
            place.unwrap_or_else(|| self.sheet.place()),
            "",
            Wrong::new(message, "add it"),
        );
    }

    /// How many cells a row has, where it hasn't as many as the headings.
    pub(crate) fn other_width(&self, row: &Row) -> Option<usize> {
        let filled = row.cells.last_key_value().map_or(0, |(last, _)| last + 1);
        if filled > self.width {
            return Some(row.width.unwrap_or(filled));
        }
        row.width.filter(|width| *width < self.width)
    }

    /// Takes the row of sources from the top of the rows.
    fn take_sources(&mut self, findings: &mut Findings) {
        let Some((first, rest)) = self.rows.split_first() else {
            return;
        };
        if !is_source_row(first) {
            return;
        }
        self.rows = rest;
        if let Some(cells) = self.other_width(first) {
            findings.problem(self.sheet.row_place(first), "", self.ragged(cells));
            return;
        }
        let read: Vec<usize> = self.named.values().copied().collect();
        for column in read {
            self.source_of(first, column, findings);
        }
        let mut properties = core::mem::take(&mut self.properties);
        for (column, _, its) in &mut properties {
            *its = self.source_of(first, *column, findings);
        }
        self.properties = properties;
    }

    /// What the row of sources says of a column.
    fn source_of(&self, sources: &Row, column: usize, findings: &mut Findings) -> Source {
        let text = sources.text(column).unwrap_or_default();
        if says_not_known(text) || is_source_word(text) {
            return Source::default();
        }
        let read = source(text).and_then(Source::of_column);
        read.unwrap_or_else(|wrong| {
            findings.problem(self.sheet.cell(sources, column), text, wrong);
            Source::default()
        })
    }

    /// What is said of a row that hasn't as many cells as the headings.
    pub(crate) fn ragged(&self, cells: usize) -> Wrong {
        Wrong::new(
            format!(
                "the row has {cells} cells where the headings have {}",
                self.width
            ),
            "put a text that has a comma in it in double quotes, and give every column its cell",
        )
    }
}

/// Notes that a column was seen; one that stands already is a problem.
fn first_of(what: &str, column: usize, seen: &mut BTreeMap<String, usize>) -> Result<(), Wrong> {
    match seen.insert(what.to_owned(), column) {
        None => Ok(()),
        Some(first) => {
            let message = format!("the column {} stands twice", quoted(what));
            let first = super::sheet::letters(first);
            Err(Wrong::new(
                message,
                format!("keep this one or the one in column {first}"),
            ))
        }
    }
}

/// The longest heading that is compared with the vocabulary's names.
const MOST_TO_COMPARE: usize = 64;

/// Whether a row says where the values come from.
fn is_source_row(row: &Row) -> bool {
    let first = row.cells.first_key_value();
    first.is_some_and(|(_, text)| is_source_word(text))
}

fn is_source_word(text: &str) -> bool {
    text.eq_ignore_ascii_case("#source")
}

fn kind_of(heading: &Row) -> Option<Kind> {
    let has = |key: &str| heading.cells.values().any(|text| heading_name(text) == key);
    Kind::ALL.iter().copied().find(|kind| has(kind.key()))
}

/// A heading as a name: `Smoke barrier` is `smoke_barrier`.
fn heading_name(text: &str) -> String {
    text.to_lowercase().replace(' ', "_")
}

/// What is said of a sheet that has no key column: of a workbook's it is a notice, since a workbook may hold other
/// things, unless a heading shows that a table was meant.
fn no_table(sheet: &Sheet, heading: &Row, findings: &mut Findings) {
    let keys = || Kind::ALL.iter().map(|kind| kind.key());
    let near = heading
        .cells
        .values()
        .find_map(|text| nearest(&heading_name(text), keys()));
    let has_property = heading
        .cells
        .values()
        .any(|text| vocabulary().property(&heading_name(text)).is_some());
    let place = sheet.row_place(heading);
    if sheet.name.is_some() && near.is_none() && !has_property {
        findings.notice(
            place,
            "the sheet isn't a table of the project and wasn't read",
        );
        return;
    }
    let message = format!(
        "the first row has none of the columns {}, one of which says what the table is",
        listed(keys())
    );
    let help = match near {
        Some(near) => format!("the nearest is `{near}`"),
        None => "name the columns in the first row; a schedule of joints has a column `joint`"
            .to_owned(),
    };
    findings.problem(place, "", Wrong::new(message, help));
}
