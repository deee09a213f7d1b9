//! A table's columns and rows: which cells say which joints the others are for.

mod headings;
mod row;
mod selecting;

pub(super) use self::row::Row;
pub(super) use self::selecting::{selecting, test};

use self::headings::{case_of_label, is_plain_name, limit_by_words_around, read_headings};
use self::selecting::{
    choose_selecting, leads_with_classes, select_before_classes, select_by_name, under,
};
use super::band::count_cases;
use super::heading::Heading;
use super::labelled::{heads_numbers, heads_remarks};
use super::lead::Lead;
use super::limit_column::limit_rows;
use super::{
    Said, all_of, ditto, labels, levels, of_group, sections, shared_units, spread_columns,
};
use crate::layout::{Flow, UsualUnits};
use crate::model::{Condition, Expr, Span};
use crate::naming::{Subject, components_in};
use crate::outline::Table;

/// A table whose headings are read.
pub(super) struct Columns {
    pub(super) headings: Vec<Heading>,
    /// Where each heading stands.
    places: Vec<Option<Span>>,
    pub(super) rows: Vec<Row>,
    /// Where the lines stand that only head rows.
    pub(super) groups: Vec<Span>,
    /// The column that says what the cells after it are; their own headings then say which joints they are for, or how they are limited.
    pub(super) label: Option<usize>,
    /// The column that says row by row how the values of a table with labels are meant.
    pub(super) limits: Option<usize>,
    /// The column that names the part which a row is of.
    parts: Option<usize>,
}

impl Columns {
    pub(super) fn of(
        source: &str,
        table: &Table,
        said: &Said<'_>,
        usual_units: UsualUnits,
    ) -> Self {
        let mut rows: Vec<Row> = table
            .rows
            .iter()
            .map(|row| {
                let cells = row.cells.iter().map(|pieces| {
                    Flow::of(source, pieces.iter().copied()).with_usual_units(usual_units)
                });
                Row::of(cells.collect(), row.span)
            })
            .collect();
        let words: Vec<String> = table
            .headings
            .iter()
            .map(|pieces| Flow::of(source, pieces.iter().copied()).text().to_owned())
            .collect();
        let mut headings = read_headings(&words, usual_units);
        count_cases(&mut headings, said.before);
        spread_columns::join(&mut headings, &mut rows);
        spread_columns::join_tolerances(&mut headings, &mut rows);
        let groups = if headings.len() >= 3 {
            labels::group_rows(&mut rows)
        } else {
            Vec::new()
        };
        let classed = leads_with_classes(&headings, &rows);
        let label = if table.labelled {
            Some(0)
        } else if classed {
            None
        } else {
            labels::column(&mut headings, &rows)
        };
        ditto::fill(&mut rows, label);
        if let Some(label) = label {
            ditto::fill_every_column(&mut rows, label, &headings);
        }
        choose_selecting(&mut headings, &rows, label.is_some());
        if label.is_none() {
            select_by_name(&mut headings, &rows);
            select_before_classes(&mut headings, &rows);
            levels::name(&mut headings, &rows);
        }
        if let Some(column) = label {
            for row in &mut rows {
                row.label = row.read_label(column);
            }
            let over = headings
                .get(column)
                .map_or_else(String::new, |heading| heading.words.clone());
            for label in rows.iter_mut().filter_map(|row| row.label.as_mut()) {
                label.named_by(said.before, &over);
            }
        }
        let parts = headings
            .iter()
            .take_while(|heading| labels::names_parts(heading) || heads_numbers(heading))
            .position(|heading| labels::names_parts(heading) && !heads_numbers(heading))
            // `Item` over names numbers nothing.
            .or_else(|| {
                let named = headings.first().is_some_and(labels::names_parts);
                (named && label.is_none() && rows.iter().all(Row::is_named)).then_some(0)
            });
        if let Some(column) = parts {
            labels::name_parts(&mut rows, column);
        }
        if label.is_none() {
            sections::as_cases(&mut headings);
        }
        let limits = label.and_then(|label| limit_rows(&headings, &mut rows, label));
        let labels = rows.iter_mut().filter_map(|row| row.label.as_mut());
        limit_by_words_around(headings.iter_mut().chain(labels).collect(), said);
        if label.is_none() {
            if let Some(lead) = Lead::of(said.before) {
                for heading in &mut headings {
                    lead.speak_of(heading);
                }
            }
            sections::name_the_rest(&mut headings);
            shared_units::share(&mut headings, &rows);
        }
        let place = |pieces: &Vec<Span>| pieces.iter().copied().reduce(Span::join);
        Self {
            headings,
            places: table.headings.iter().map(place).collect(),
            rows,
            groups,
            label,
            limits,
            parts,
        }
    }

    /// The column of the first cell that may ask something.
    pub(super) fn first_asking(&self) -> usize {
        self.label.map_or(0, |label| label + 1)
    }

    /// What a row is about, where the first column names parts: "Part: Sealant".
    pub(super) fn part(&self, row: &Row) -> Option<Subject> {
        let title = row.part.clone();
        let titles: Vec<_> = components_in(&title)
            .into_iter()
            .map(|(component, ..)| (component, 0))
            .collect();
        let named = !title.is_empty() && (self.label == Some(1) || !titles.is_empty());
        named.then_some(Subject {
            titles,
            title,
            ..Subject::default()
        })
    }

    /// Whether every row names one component, and this row alone the one that a requirement is of: that it is that part is then no condition.
    pub(super) fn is_of_its_part_alone(&self, row: &Row, component: &str) -> bool {
        let only = |row: &Row| match components_in(&row.part).as_slice() {
            [(own, ..)] if is_plain_name(&row.part) => Some(own.name.as_str()),
            _ => None,
        };
        let mut others = self.rows.iter().filter(|other| other.part != row.part);
        only(row) == Some(component)
            && others.all(|other| only(other).is_some_and(|own| own != component))
    }

    /// The condition that a row's selecting cells and a column's rating make together.
    pub(super) fn condition(&self, row: &Row, column: &Heading) -> Option<Condition> {
        self.condition_but_for(None, row, column)
    }

    /// The same without the name of the row's part.
    pub(super) fn condition_of_its_part(&self, row: &Row, column: &Heading) -> Option<Condition> {
        self.condition_but_for(self.parts, row, column)
    }

    fn condition_but_for(
        &self,
        left_out: Option<usize>,
        row: &Row,
        column: &Heading,
    ) -> Option<Condition> {
        let mut found: Vec<(String, Expr)> = Vec::new();
        if !row.group.is_empty() {
            found.push((row.group.clone(), of_group(&row.group)));
        }
        for (index, heading) in self.headings.iter().enumerate() {
            let Some(selects) = heading.selects.filter(|_| self.label.is_none()) else {
                continue;
            };
            if left_out == Some(index) {
                continue;
            }
            let text = row.text(index);
            if !text.is_empty() {
                let usual = row
                    .cells
                    .get(index)
                    .and_then(|cell| cell.usual_units().length);
                let said = under(heading, text);
                found.push((said, selecting(selects, heading, text, usual)));
            }
        }
        let in_words = |words: &str| (words.to_owned(), Expr::Words(words.to_owned()));
        if let Some(rating) = &column.rating {
            found.push((rating.words.clone(), rating.expr.clone()));
        } else if self.label.is_some()
            && !column.words.is_empty()
            && !labels::heads_values(column)
            && !heads_remarks(column)
        {
            found.push(in_words(&column.words));
        }
        // `Thickness, 2 hr` is for that rating.
        if let Some(rating) = row.label.as_ref().and_then(|label| label.rating.as_ref()) {
            found.push((rating.words.clone(), rating.expr.clone()));
        }
        // `Strips, joint over 30 mm` says itself for which joints it speaks.
        found.extend(
            self.label
                .and_then(|label| case_of_label(row.text(label)))
                .map(in_words),
        );
        // A part that may be left out binds nothing where it is.
        if self.label.is_some() && row.part.to_lowercase().contains("optional") {
            found.push(in_words(&row.part));
        }
        let of_heading = found.len() == 1 && column.is_band();
        let place = self.place(column);
        let mut condition = all_of(found, place.filter(|_| of_heading).unwrap_or(row.span))?;
        // A rating over the column is told where it stands, too.
        let over = place.filter(|_| column.rating.is_some() && !of_heading);
        condition.also.extend(over);
        Some(condition)
    }

    /// Where one of its headings stands.
    fn place(&self, heading: &Heading) -> Option<Span> {
        let column = self
            .headings
            .iter()
            .position(|own| core::ptr::eq(own, heading))?;
        self.places.get(column).copied().flatten()
    }
}
