//! A row of a table of requirements to clauses.

use measure::Unit;
use measure::notation::unit_at;

use super::super::columns::Row;
use super::super::heading::Heading;
use super::super::labelled;
use super::super::worded::read_words;
use super::super::{
    is_blank_mark, is_no_limit, is_reference, rating_of, read_labelled, says_number,
};
use super::cases::is_case;
use super::columns::Records;
use super::label::{Label, together};
use super::spread::join_limits;
use super::units::{agrees, limit, units};
use crate::clauses::draft::local_property;
use crate::clauses::{Around, Draft, Yield};
use crate::layout::Flow;
use crate::model::{Condition, Confidence, Relation, Requirement, Span};
use crate::naming::{Subject, components_in};

impl Records {
    pub(super) fn read_row(&self, source: &str, row: &Row, around: &Around, found: &mut Yield) {
        let text = |column: Option<usize>| column.map_or("", |column| row.text(column));
        let Some(property) = row.cells.get(self.property) else {
            return;
        };
        let label = Label::of(source, property, self.numbered);
        let around = &self.about(row, around);
        let condition = self.condition(row, &label.cases, None);
        let values: Vec<(&Flow, &Heading)> = self
            .values
            .iter()
            .filter_map(|(column, heading)| Some((row.cells.get(*column)?, heading)))
            .filter(|(cell, heading)| {
                // Under "max" alone, "none" may as well mean that none is allowed.
                let limits = heading.words.to_lowercase().ends_with(" limit");
                !(is_blank_mark(cell.text()) || limits && is_no_limit(cell.text()))
            })
            .collect();
        let unit_remarked = self.remarked_unit(row);
        let unit = unit_remarked.map(|column| row.text(column));
        let said = limit(text(self.limit)).zip(units(unit.unwrap_or_else(|| text(self.unit))));
        let tolerance = self
            .tolerance
            .filter(|column| !is_blank_mark(row.text(*column)));
        let (Some((relation, unit)), false) = (said, values.is_empty()) else {
            found
                .clauses
                .push(words(label.words.text(), row.span, condition, around));
            return;
        };
        let mut own = Yield::default();
        for (cell, heading) in values {
            let deviating = self.deviating(row, cell, heading);
            let placed = without_place(source, cell);
            let cell = deviating.as_ref().or(placed.as_ref()).unwrap_or(cell);
            let united = self.united(row, cell, unit);
            let cell = united.as_ref().unwrap_or(cell);
            let (first, second) = unit.map_or((None, None), |(unit, second)| (Some(unit), second));
            let asked = Heading {
                unit: first.or(heading.unit).or(label.heading.unit),
                second_unit: second.or(heading.second_unit).or(label.heading.second_unit),
                relation: relation.or(heading.relation),
                ..label.heading.clone()
            };
            let condition = self.condition(row, &label.cases, Some(heading));
            let relation = together(label.heading.relation, asked.relation)
                .filter(|_| tolerance.is_none() || deviating.is_some())
                .filter(|relation| agrees(text(self.limit), *relation, Some(cell), asked.unit))
                .filter(|_| is_one(cell, heading, asked.unit))
                .filter(|relation| relation.is_none() || is_amount(cell, asked.unit));
            match relation {
                Some(relation) => {
                    let relation = relation.or_else(|| around.table_limits.unmarked());
                    let asked = Heading { relation, ..asked };
                    read_labelled(
                        &asked,
                        &label.words,
                        cell,
                        condition.as_ref(),
                        around,
                        &mut own,
                    );
                }
                None => own
                    .clauses
                    .push(words(label.words.text(), row.span, condition, around)),
            }
        }
        join_limits(&mut own.clauses);
        // The words of a requirement are all of its row.
        for draft in &mut own.clauses {
            draft.span = row.span;
        }
        found.append(own);
        self.read_remarks(row, &label, condition.as_ref(), around, found);
    }

    /// A value and how far it may be off, `40` and `±5`, as one text; none where the two don't stand side by side and make a range.
    fn deviating(&self, row: &Row, cell: &Flow, heading: &Heading) -> Option<Flow> {
        let column = self.tolerance.filter(|column| {
            let [(value, _)] = self.values.as_slice() else {
                return false;
            };
            value < column
        })?;
        let plain = !matches!(heading.relation, Some(Relation::AtLeast | Relation::AtMost));
        let tolerance = row.cells.get(column)?;
        let signed = ["±", "+/-", "+ / -"]
            .iter()
            .any(|sign| tolerance.text().trim().starts_with(sign));
        let both = cell.joined(" ", tolerance);
        let spread = || {
            crate::phrase::cell(both.text(), Some(Unit::Count), None)
                .is_some_and(|cell| cell.hi.is_some())
        };
        (plain && signed && spread()).then_some(both)
    }

    /// The column of remarks that holds the unit of a row's values, `1760 | 2400 | kg/m3`, where no other column does.
    fn remarked_unit(&self, row: &Row) -> Option<usize> {
        let stated = self.unit.is_some_and(|unit| !is_blank_mark(row.text(unit)));
        let labelled = row
            .cells
            .get(self.property)
            .is_some_and(|label| Label::of(label.text(), label, false).heading.unit.is_some());
        self.remarks.iter().copied().find(|column| {
            let text = row.text(*column);
            // A letter alone is a note's.
            let marked = text.len() == 1 && text != "%";
            let whole = unit_at(text, 0).is_some_and(|(_, end)| end == text.len());
            !stated && !labelled && !text.is_empty() && !marked && whole
        })
    }

    /// A value that is no amount by itself, with the unit behind it that stands in a column of its own: `1 900` and `g/m²`, `2,0 (-0/+0,5)` and `mm`.
    fn united(&self, row: &Row, cell: &Flow, unit: Option<(Unit, Option<Unit>)>) -> Option<Flow> {
        let (unit, _) = unit.filter(|(unit, _)| *unit != Unit::Count)?;
        let column = self
            .unit
            .filter(|column| !is_blank_mark(row.text(*column)))?;
        let text = cell.text().trim_end();
        let open = text.ends_with(|c: char| c.is_ascii_digit() || c == ')');
        let both = cell.joined(" ", row.cells.get(column)?);
        let reads = is_amount(&both, Some(unit));
        (open && !is_amount(cell, Some(unit)) && reads).then_some(both)
    }

    /// What a row remarks may be asked too. Numbers are read as those of any text, "100 mm (max) from end of piece", one that opens the remark as of
    /// the row's label; the rest, "butt tight", is for a person.
    fn read_remarks(
        &self,
        row: &Row,
        label: &Label,
        condition: Option<&Condition>,
        around: &Around,
        found: &mut Yield,
    ) {
        for column in &self.remarks {
            let Some(cell) = row.cells.get(*column) else {
                continue;
            };
            let text = cell.text().trim();
            if text.chars().any(char::is_alphabetic)
                && rating_of(text).is_none()
                && !is_case(text)
                && self.remarked_unit(row) != Some(*column)
                && !is_reference(text)
            {
                if says_number(text) {
                    let opens = text.starts_with(|c: char| c.is_ascii_digit());
                    let named = opens.then(|| labelled::text(&label.heading, &label.words, cell));
                    read_words(named.as_ref().unwrap_or(cell), condition, around, found);
                    continue;
                }
                let span = cell.span(0, cell.text().len());
                found
                    .clauses
                    .push(words(text, span, condition.cloned(), around));
            }
        }
    }

    /// What the row is about: the part in its own column, or in the line that it stands under, or in the heading of its label.
    fn about(&self, row: &Row, around: &Around) -> Around {
        let part = self.part.map_or("", |column| row.text(column));
        let part = if part.is_empty() {
            row.part.as_str()
        } else {
            part
        };
        // An item's own name says no more than the item, which may stand in one that names a component.
        let own = part == around.subject.title && components_in(part).is_empty();
        if !part.is_empty() && !own {
            return about(part, around);
        }
        let headed = self.headings.get(self.property).map_or("", String::as_str);
        if components_in(headed).is_empty() {
            return around.clone();
        }
        about(headed, around)
    }
}

/// Whether a cell under a limit holds one amount: a range under "Min" may be anything.
fn is_one(cell: &Flow, heading: &Heading, unit: Option<Unit>) -> bool {
    let amount = crate::phrase::cell(cell.text(), unit, None);
    heading.relation.is_none() || amount.is_none_or(|amount| amount.hi.is_none())
}

/// Whether a cell holds an amount and nothing else: a limit in another column reaches no further words.
fn is_amount(cell: &Flow, unit: Option<Unit>) -> bool {
    crate::phrase::cell(cell.text(), unit, None).is_some()
}

/// A cell without the words behind its amount that only say where it holds: `2 in. (51 mm) each side`.
fn without_place(source: &str, cell: &Flow) -> Option<Flow> {
    let text = cell.text().trim_end();
    let place = ["each side", "per side", "each end", "each face"]
        .iter()
        .find(|place| text.to_lowercase().ends_with(*place))?;
    let amount = text
        .get(..text.len() - place.len())?
        .trim_end_matches([' ', ',']);
    Some(Flow::of(source, [cell.span(0, amount.len())]).with_usual_units(cell.usual_units()))
}

/// What stands around a row that is about a part.
fn about(part: &str, around: &Around) -> Around {
    let subject = Subject {
        titles: components_in(part)
            .into_iter()
            .map(|(component, ..)| (component, 0))
            .collect(),
        title: part.to_owned(),
        ..Subject::default()
    };
    Around {
        subject,
        ..around.clone()
    }
}

/// A row that no rule dares to read.
fn words(property: &str, span: Span, condition: Option<Condition>, around: &Around) -> Draft {
    let name = crate::naming::name_heading(property, measure::Dimension::Count, &around.subject);
    Draft {
        span,
        property: local_property(&around.item, property),
        component: name.component,
        attribute: property.to_lowercase(),
        requirement: Requirement::Prose,
        condition,
        options: around.options.clone(),
        read_by: vec!["left as words".to_owned()],
        confidence: Confidence::Prose,
    }
}
