//! A table's columns and rows: which cells say which joints the others are for.

use measure::{Quantity, Unit};

use super::Said;
use super::band::{bands_together, count_cases, width_band};
use super::caption::{captions, sets_a_limit, sizes_another, suits};
use super::heading::{Heading, Selects, heading};
use super::inequality::spelled;
use super::labelled::{heads_numbers, heads_remarks};
use super::labels;
use super::lead::Lead;
use super::limit_column::limit_rows;
use super::shared_heads::cases_under_one;
use super::statements::Stated;
use super::{all_of, ditto, holds_a_class_alone, of_group, sections, shared_units, spread_columns};
use crate::layout::{Flow, UsualUnits};
use crate::model::{Condition, Expr, Relation, Span, Test};
use crate::naming::{Subject, components_in};
use crate::outline::Table;
use crate::phrase::{Cell, cell};

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

/// A row.
pub(super) struct Row {
    pub(super) cells: Vec<Flow>,
    /// What one of its cells says of those after it, in a table whose rows are labelled.
    pub(super) label: Option<Heading>,
    /// The part that the row is of, where its first cell and those above name one: "Cover strip (optional)".
    pub(super) part: String,
    /// The line that it stands under, which says which joints it is for: "FRL -/60/60".
    pub(super) group: String,
    /// The columns whose cells repeat another, which stands elsewhere.
    pub(super) repeated: Vec<usize>,
    pub(super) span: Span,
}

impl Row {
    pub(super) const fn of(cells: Vec<Flow>, span: Span) -> Self {
        Self {
            cells,
            label: None,
            part: String::new(),
            group: String::new(),
            repeated: Vec::new(),
            span,
        }
    }

    /// What a cell would say of those after it.
    pub(super) fn read_label(&self, column: usize) -> Option<Heading> {
        let words = without_mark(self.cells.get(column)?.text());
        // What says for which joints it speaks doesn't name what it is of.
        let named = case_of_label(words)
            .and_then(|case| words.find(case))
            .and_then(|at| words.get(..at))
            .map_or(words, |name| name.trim_end_matches([' ', ',', '(']));
        let mut label = heading(named);
        label.requires = label.selects.take().and_then(Selects::property);
        Some(label)
    }

    /// Whether its first cell is a name, without a number.
    fn is_named(&self) -> bool {
        const SHORTEST: usize = 3;
        let first = self.text(0);
        first.len() >= SHORTEST && !first.contains(|c: char| c.is_ascii_digit())
    }

    /// Whether its first cell is all it has.
    pub(super) fn is_alone(&self) -> bool {
        let mut others = 1..self.cells.len();
        !self.text(0).is_empty()
            && self.cells.len() > 1
            && others.all(|at| self.text(at).is_empty())
    }

    pub(super) fn text(&self, column: usize) -> &str {
        self.cells.get(column).map_or("", |cell| cell.text().trim())
    }
}

/// A label without the mark that numbers its row: `W1 Concrete, least thickness`, `3.10 Packing, depth`.
fn without_mark(label: &str) -> &str {
    const LONGEST: usize = 4;
    let Some((mark, rest)) = label.split_once(' ') else {
        return label;
    };
    let lettered = mark.starts_with(|c: char| c.is_ascii_uppercase())
        && mark.ends_with(|c: char| c.is_ascii_digit());
    let numbered = mark.contains('.')
        && mark
            .split('.')
            .all(|part| part.bytes().all(|byte| byte.is_ascii_digit()));
    let is_mark = mark.len() <= LONGEST
        && (lettered || numbered)
        && rest.trim().starts_with(char::is_uppercase);
    if is_mark { rest.trim_start() } else { label }
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

/// What the headings of a table say. A width without a unit is in the document's.
fn read_headings(words: &[String], usual_units: UsualUnits) -> Vec<Heading> {
    let mut cases = cases_under_one(words);
    cases.extend(bands_together(words));
    let mut headings: Vec<Heading> = words
        .iter()
        .enumerate()
        .map(|(column, words)| {
            cases
                .remove(&column)
                .or_else(|| width_band(words).filter(|_| column > 0))
                .unwrap_or_else(|| heading(words))
        })
        .collect();
    for heading in &mut headings {
        if heading.selects == Some(Selects::Width) && heading.unit.is_none() {
            heading.unit = usual_units.length;
        }
    }
    headings
}

/// Whether words only name a part, and not which of several or when it is there: "Cover strip (optional)", "Clip or angle" do.
fn is_plain_name(words: &str) -> bool {
    const MOST_WORDS: usize = 3;
    const SAYING_MORE: &[&str] = &[
        "or",
        "optional",
        "alternate",
        "alternative",
        "if",
        "where",
        "when",
        "type",
        "option",
        "used",
    ];
    let plain = |word: &str| {
        word.chars().all(|c| c.is_alphabetic() || c == '-')
            && !SAYING_MORE.contains(&word.to_lowercase().as_str())
    };
    words.split_whitespace().count() <= MOST_WORDS && words.split_whitespace().all(plain)
}

/// What the caption and the words behind the table say of its columns, or of its rows. A limit that the caption sets for none of them leaves all
/// in doubt.
fn limit_by_words_around(mut headings: Vec<&mut Heading>, said: &Said<'_>) {
    let of_cases = headings.iter().any(|heading| heading.is_case_alone());
    for heading in &mut headings {
        if captions(said.before) {
            let own = heading.relation;
            heading.take_from_caption(said.before);
            if of_cases && sizes_another(said.before, heading) {
                heading.relation = own.or_else(|| stated_by_name(said.before, heading));
            }
        }
        if heading.selects.is_none() {
            let suited = said
                .of_all
                .filter(|relation| suits(*relation, &heading.words));
            heading.relation = heading.relation.or(suited);
        }
    }
    let caption = said.before.to_lowercase();
    let words: Vec<String> = headings
        .iter()
        .map(|one| one.words.to_lowercase())
        .collect();
    let stated = Stated::of(&caption);
    let is_caption = captions(said.before);
    let beside = |heading: &str| is_caption && stated.beside(heading).is_some();
    let none_is_limited = headings.iter().all(|heading| heading.relation.is_none());
    let speaks = is_caption || none_is_limited;
    let is_left = speaks && sets_a_limit(&stated.rest) && !words.iter().any(|words| beside(words));
    if is_left || stated.limits_another(&words) {
        for heading in headings {
            heading.limit_unknown = true;
        }
    }
}

/// How a caption limits a column by its name.
fn stated_by_name(caption: &str, heading: &Heading) -> Option<Relation> {
    Stated::of(&caption.to_lowercase()).by_name(&heading.words.to_lowercase())
}

/// The case that a label speaks of behind a comma or a bracket: "joint over 30 mm" of `Strips, joint over 30 mm`.
fn case_of_label(label: &str) -> Option<&str> {
    const SAYS: &[&str] = &[
        "joint", "joints", "width", "widths", "gap", "over", "up", "above", "below", "under", "≤",
        "≥", ">", "<", "rating", "wall",
    ];
    // `Compression, minimum, joint over 25 mm`: what stands before the last comma isn't part of it.
    let (_, case) = label
        .rmatch_indices([',', '('])
        .map(|(at, sign)| label.split_at(at + sign.len()))
        .find(|(_, case)| case.contains(|c: char| c.is_ascii_digit()))?;
    let case = case.trim_matches([' ', ')', ',']);
    let says = case
        .split_whitespace()
        .any(|word| SAYS.contains(&word.to_lowercase().as_str()));
    says.then_some(case)
}

/// Keeps as selecting the columns from the first on that say which joints a row is for. A width that stands behind others which tell the
/// rows apart already is what they require; so is a rating behind the row's own mark.
fn choose_selecting(headings: &mut [Heading], rows: &[Row], labelled: bool) {
    let mut selecting = true;
    let mut by_mark = true;
    let by_parts = headings
        .get(1)
        .is_some_and(|second| second.selects.is_none() && second.unit.is_none());
    let of_parts = headings.first().is_some_and(labels::names_parts);
    let one_row = rows.len() == 1;
    for index in 0..headings.len() {
        let told_apart = index > 0 && are_told_apart(rows, index);
        let Some(heading) = headings.get_mut(index) else {
            break;
        };
        // What names the row's part neither tells the rows apart nor asks anything.
        let names_part = labels::names_parts(heading) && index > 0;
        selecting &= heading.selects.is_some() || index == 0 || names_part;
        let required = match heading.selects {
            Some(Selects::Width) => told_apart,
            Some(Selects::Rating) => told_apart && by_mark,
            // Each part has its own size, `Clip | 20 ga, 1 in. wide`: no case tells it.
            Some(Selects::Other) => {
                told_apart && of_parts && heading.words.to_lowercase() == "size"
            }
            None => false,
        };
        // One row tells nothing of a gap or a width that isn't called the joint's.
        let of_joint = !one_row || heading.words.to_lowercase().contains("joint");
        if required && of_joint {
            heading.requires = heading.selects.and_then(Selects::property);
        }
        // What limits the values of one row alone tells no case.
        let asks = one_row && heading.is_limited() && index == 0;
        if !selecting || labelled || required || asks && heading.selects.is_none() {
            heading.selects = None;
            selecting &= !asks;
        } else if index == 0 && !(by_parts && numbers_parts(heading, rows)) {
            heading.selects.get_or_insert(Selects::Other);
        }
        by_mark &= heading.selects == Some(Selects::Other);
    }
}

/// Whether each row is for the class in its first cell: `Class | Element | Depth of strip` over `EI 120 - V - X - F | rigid wall | min. 110 mm`.
fn leads_with_classes(headings: &[Heading], rows: &[Row]) -> bool {
    let classed = |row: &Row| row.cells.first().is_some_and(holds_a_class_alone);
    headings.first().is_some_and(Heading::names_a_class)
        && rows.len() >= 2
        && rows.iter().all(classed)
}

/// Takes the names that tell the rows apart for what the rows are for, where the first column only numbers them: `Clause | Construction` over
/// `1.1 | Rigid wall`.
fn select_by_name(headings: &mut [Heading], rows: &[Row]) {
    let is_number = |row: &Row| {
        let mark = row.text(0);
        !mark.is_empty() && mark.chars().all(|c| c.is_ascii_digit() || c == '.')
    };
    let mut names: Vec<&str> = rows.iter().map(|row| row.text(1)).collect();
    let is_name = |name: &&str| {
        name.starts_with(char::is_alphabetic) && !name.contains(|c: char| c.is_ascii_digit())
    };
    let all_names = names.len() >= 2 && names.iter().all(is_name);
    names.sort_unstable();
    let apart = names.windows(2).all(|pair| pair.first() != pair.last());
    let [first, second, _, ..] = headings else {
        return;
    };
    let plain = second.selects.is_none()
        && !second.describes()
        && second.rating.is_none()
        && !heads_remarks(second);
    let by_number = first.selects == Some(Selects::Other);
    let numbers = heads_numbers(first) && by_number && rows.iter().all(is_number);
    if numbers && all_names && apart && plain {
        first.selects = None;
        second.selects = Some(Selects::Other);
    }
}

/// Whether a first column only numbers the parts that its rows describe, `Part | Description` over `B1 | Steel beam`: a mark says no case.
fn numbers_parts(heading: &Heading, rows: &[Row]) -> bool {
    const LONGEST: usize = 4;
    let is_mark = |row: &Row| {
        let mark = row.text(0);
        mark.len() <= LONGEST && !mark.contains(' ') && mark.contains(|c: char| c.is_ascii_digit())
    };
    let names = |row: &Row| row.text(1).starts_with(char::is_alphabetic);
    labels::names_parts(heading) && rows.iter().all(|row| is_mark(row) && names(row))
}

/// Whether the first columns alone tell every row from every other.
fn are_told_apart(rows: &[Row], columns: usize) -> bool {
    let key = |row: &Row| -> Vec<String> {
        (0..columns)
            .map(|column| row.text(column).to_owned())
            .collect()
    };
    let mut keys: Vec<Vec<String>> = rows.iter().map(key).collect();
    keys.sort_unstable();
    keys.windows(2).all(|pair| pair.first() != pair.last())
}

/// What a selecting cell tests.
pub(super) fn selecting(
    selects: Selects,
    heading: &Heading,
    text: &str,
    usual_unit: Option<Unit>,
) -> Expr {
    let usual_unit = usual_unit.filter(|_| selects == Selects::Width);
    let spelled = spelled(text).filter(|_| selects == Selects::Width);
    let value = spelled.as_deref().unwrap_or(text);
    selects
        .property()
        .zip(
            cell(value, heading.unit.or(usual_unit), heading.second_unit)
                .filter(|cell| !cell.goes_on),
        )
        .and_then(|(property, cell)| test(property, &cell, heading.relation))
        .unwrap_or_else(|| Expr::Words(under(heading, text)))
}

/// What a cell's amount asks of a property.
pub(super) fn test(property: &str, cell: &Cell, heading: Option<Relation>) -> Option<Expr> {
    let unit = cell.unit?;
    let quantity = |number| Quantity::new(number, unit);
    let (relation, lo, hi) = match (cell.relation.or(heading), cell.hi) {
        (_, Some(hi)) => (
            Relation::Between,
            Some(quantity(cell.lo)),
            Some(quantity(hi)),
        ),
        (Some(relation @ (Relation::AtMost | Relation::LessThan)), None) => {
            (relation, None, Some(quantity(cell.lo)))
        }
        (Some(relation @ (Relation::AtLeast | Relation::MoreThan)), None) => {
            (relation, Some(quantity(cell.lo)), None)
        }
        _ => (Relation::Exactly, Some(quantity(cell.lo)), None),
    };
    Some(Expr::Test(Test {
        property: property.to_owned(),
        relation,
        lo,
        hi,
        lo_excluded: cell.lo_excluded,
    }))
}

/// What a cell says under its heading: `Rating: 1 hr`.
fn under(heading: &Heading, text: &str) -> String {
    if heading.words.is_empty() {
        text.to_owned()
    } else {
        format!("{}: {text}", heading.words)
    }
}
