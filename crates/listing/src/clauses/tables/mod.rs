//! Tables to clauses: each row a condition from its first columns, each other cell a clause.
//!
//! A column's heading gives the unit, the qualifier and the property; a column that says which joints the row is for (a width, a
//! rating, an orientation) gives the condition. A cell that is no number becomes prose under its heading.

mod band;
mod caption;
mod cell;
mod columns;
mod ditto;
mod heading;
mod inequality;
mod keyed;
mod labelled;
mod labels;
mod lead;
mod levels;
mod limit_column;
mod marks;
mod products;
mod rating;
mod records;
mod sections;
mod shared_heads;
mod shared_units;
mod spread_columns;
mod statements;
mod upright;
mod worded;

pub(super) use self::caption::said_of_all;
pub(super) use self::cell::read_cell;
pub(super) use self::heading::{Heading, heading};
pub(super) use self::keyed::keyed_list;

use self::cell::push_class;
use self::columns::Columns;
use self::labelled::{heads_numbers, heads_remarks};
use self::marks::{
    is_bare_number, is_blank_mark, is_no_limit, is_reference, names_part_alone,
    says_more_in_parentheses, says_number,
};
use self::worded::{push_words, read_words};
use super::Around;
use super::draft::Yield;
use super::table_limits::TableLimits;
use crate::layout::Flow;
use crate::model::{Condition, Expr, Relation, Span};
use crate::outline::Table;

/// What stands beside a table and speaks of it.
pub(super) struct Said<'a> {
    /// The paragraph before it.
    pub(super) before: &'a str,
    /// What the paragraph behind it says of all its values.
    pub(super) of_all: Option<Relation>,
    /// The paragraph behind it.
    pub(super) behind: &'a str,
    /// What sentences of the document say of tables by their marks.
    pub(super) elsewhere: &'a TableLimits,
}

pub(super) fn read(
    source: &str,
    table: &Table,
    said: &Said<'_>,
    around: &Around,
    found: &mut Yield,
) {
    found.covered.push(table.span);
    let Some(upright) = upright::upright(source, table) else {
        read_standing(source, table, said, around, found);
        return;
    };
    let from = found.clauses.len();
    read_standing(source, &upright, said, around, found);
    // In the order in which they are written.
    if let Some(own) = found.clauses.get_mut(from..) {
        own.sort_by_key(|draft| draft.span.start());
    }
}

/// Reads a table whose columns have headings.
fn read_standing(source: &str, table: &Table, said: &Said<'_>, around: &Around, found: &mut Yield) {
    if records::read(source, table, around, found) {
        return;
    }
    let table = Columns::of(source, table, said, around.usual_units);
    let has_units = table.headings.iter().any(records::heads_units);
    found.lead_ins.extend(table.groups.iter().copied());
    if let Some(products) = products::columns(&table.headings) {
        products.read(&table, around, found);
        return;
    }
    for row in &table.rows {
        let cells = table.headings.iter().zip(&row.cells);
        if row.is_alone() {
            // Words across the table, such as a remark on all of it.
            for (heading, cell) in cells.take(1) {
                push_words(heading, cell, None, around, found);
            }
            continue;
        }
        let leading = table
            .headings
            .iter()
            .zip(&row.cells)
            .take(table.first_asking());
        for (heading, cell) in leading
            .clone()
            .filter(|(heading, _)| heading.names_a_class())
        {
            let condition = table.condition(row, heading);
            push_class(cell, condition.as_ref(), around, found);
        }
        for (heading, cell) in leading.filter(|(heading, _)| labels::names_parts(heading)) {
            if says_number(cell.text()) && !heads_numbers(heading) {
                read_words(cell, None, around, found);
            }
        }
        for (column, (heading, cell)) in cells.enumerate().skip(table.first_asking()) {
            let says_how = table.limits == Some(column);
            if says_how || table.label.is_some() && records::heads_units(heading) {
                continue;
            }
            let from = found.clauses.len();
            // Under "max" alone, "none" may as well mean that none is allowed.
            let limits = row.label.is_some() && heading.words.to_lowercase().ends_with(" limit");
            let names_part = names_part_alone(heading, row);
            if names_part || is_blank_mark(cell.text()) || (limits && is_no_limit(cell.text())) {
                continue;
            }
            let condition = table.condition(row, heading);
            // What only numbers the rows asks nothing.
            if column == 0 && heads_numbers(heading) && is_bare_number(cell.text()) {
                continue;
            }
            // Which unit of another column a number has, nobody knows.
            if has_units && is_bare_number(cell.text()) {
                push_words(heading, cell, condition.as_ref(), around, found);
                continue;
            }
            let label = row.label.as_ref().map(|label| label.limited_by(heading));
            let part_alone = table
                .part(row)
                .map(|_| table.condition_of_its_part(row, heading));
            let part = table.part(row).map(|subject| Around {
                subject,
                ..around.clone()
            });
            let around = part.as_ref().unwrap_or(around);
            let words = table.label.and_then(|label| row.cells.get(label));
            let labelled = label.as_ref().zip(words);
            if heads_remarks(heading) && is_reference(cell.text()) {
                continue;
            }
            match labelled {
                Some((label, words)) => {
                    read_labelled(label, words, cell, condition.as_ref(), around, found);
                }
                None => read_cell(heading, cell, condition.as_ref(), around, found),
            }
            if let Some(of_part) = part_alone.as_ref() {
                for draft in found.clauses.iter_mut().skip(from) {
                    if table.is_of_its_part_alone(row, &draft.component)
                        && draft.condition == condition
                    {
                        draft.condition.clone_from(of_part);
                    }
                }
            }
            // What a mark repeats stands elsewhere: the requirement's own words are its row.
            if row.repeated.contains(&column) {
                for draft in found.clauses.iter_mut().skip(from) {
                    draft.span = row.span;
                }
            }
        }
    }
}

/// Reads a cell that its row's label speaks of.
fn read_labelled(
    label: &Heading,
    words: &Flow,
    cell: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let mut own = label.clone();
    // Under "Studs", "Width" is theirs.
    let says = |word: &str| label.words.to_lowercase().contains(word);
    let named = around
        .subject
        .titles
        .iter()
        .any(|(part, _)| part.name != "joint");
    let of_joint = says("joint") || (says("gap") || says("opening")) && !named;
    let part = around
        .subject
        .titles
        .iter()
        .any(|(component, _)| component.property("width").is_some());
    own.requires = own
        .requires
        .filter(|property| of_joint || !part && !named || *property != "joint.width");
    own.unit = labelled::unit_of(label, cell);
    let is_value =
        crate::phrase::cell(cell.text(), own.unit, own.second_unit).is_some_and(|amount| {
            let second = amount.second.is_some();
            amount.unit.is_some()
                && !amount.goes_on
                && (second || !says_more_in_parentheses(cell.text()))
        });
    if is_value || !says_number(cell.text()) {
        read_cell(&own, cell, condition, around, found);
    } else {
        read_words(
            &labelled::text(label, words, cell),
            condition,
            around,
            found,
        );
    }
}

/// What the line over a row says.
pub(super) fn of_group(words: &str) -> Expr {
    rating_of(words).unwrap_or_else(|| Expr::Words(words.to_owned()))
}

/// The condition of a row of which all of this is said; none where nothing is.
pub(super) fn all_of(said: Vec<(String, Expr)>, span: Span) -> Option<Condition> {
    let (words, mut parts): (Vec<String>, Vec<Expr>) = said.into_iter().unzip();
    let expr = match parts.len() {
        0 => return None,
        1 => parts.pop()?,
        _ => Expr::All(parts),
    };
    Some(Condition {
        also: Vec::new(),
        words: words.join("; "),
        span,
        expr,
    })
}

/// The rating that words are, and nothing besides: `60 minutes`, `2 hr`.
pub(super) fn rating_of(words: &str) -> Option<Expr> {
    let (rest, rating) = rating::split_rating(words.trim());
    rest.is_empty().then_some(rating?.expr)
}

/// Whether a row is for one width alone, `25 mm` above `38 mm`: what a joint of 30 mm needs nobody has said.
fn lies_beside_others(condition: &Condition) -> bool {
    let exact = |expr: &Expr| matches!(expr, Expr::Test(test) if test.property == "joint.width" && test.relation == Relation::Exactly);
    match &condition.expr {
        Expr::All(parts) => parts.iter().any(exact),
        expr => exact(expr),
    }
}
