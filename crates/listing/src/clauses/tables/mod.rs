//! Tables to clauses: each row a condition from its first columns, each other cell a clause.
//!
//! A column's heading gives the unit, the qualifier and the property; a column that says which joints the row is for (a width, a
//! rating, an orientation) gives the condition. A cell that is no number becomes prose under its heading.

mod band;
mod caption;
mod columns;
mod ditto;
mod heading;
mod inequality;
mod keyed;
mod labelled;
mod labels;
mod lead;
mod limit_column;
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

use measure::Unit;

use vocabulary::vocabulary;

pub(super) use self::caption::said_of_all;
use self::columns::{Columns, Row};
use self::heading::Sense;
pub(super) use self::heading::{Heading, heading};
pub(super) use self::keyed::keyed_list;
use self::labelled::{heads_numbers, heads_remarks};
use self::worded::{left_as_words, push_words, read_words};

use super::Around;
use super::classes::{class_alone, class_numbers};
use super::draft::{Draft, Yield, local_property};
use crate::layout::Flow;
use crate::model::{Bound, Condition, Confidence, Expr, Relation, Requirement, SecondValue, Span};
use crate::naming::{Name, is_plausible, name_heading};
use crate::outline::Table;
use crate::phrase::{Cell, cell, count_word, is_paired_length, leads_to_a_note};
use crate::rules::Sentence;

/// What stands beside a table and speaks of it.
pub(super) struct Said<'a> {
    /// The paragraph before it.
    pub(super) before: &'a str,
    /// What the paragraph behind it says of all its values.
    pub(super) of_all: Option<Relation>,
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

/// Whether an amount stands in parentheses behind another: `min 20 ga (0.033 in.)`. A note's mark is none.
fn says_more_in_parentheses(words: &str) -> bool {
    words
        .match_indices('(')
        .any(|(at, _)| measure::notation::quantity_at(words, at + 1).is_some())
}

/// Whether words hold a number, in digits or as a count: `two or more`.
fn says_number(words: &str) -> bool {
    words.contains(|c: char| c.is_ascii_digit())
        || words
            .split(|c: char| !(c.is_alphanumeric() || c == '-'))
            .any(|word| count_word(word).is_some())
}

/// Whether a cell names the row's part and says no more of it: "Board, 5/8 in. thick" does.
fn names_part_alone(heading: &Heading, row: &Row) -> bool {
    labels::names_parts(heading) && !row.part.is_empty() && !says_number(&row.part)
}

/// Whether words are a number and nothing besides: `100`, `4-1/2`.
fn is_bare_number(words: &str) -> bool {
    words.starts_with(|c: char| c.is_ascii_digit())
        && words
            .chars()
            .all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | '-' | ' '))
}

/// Whether a cell only refers to notes: `a, b`, `[ii]`, `3`.
fn is_reference(words: &str) -> bool {
    let is_mark = |mark: &str| {
        let roman = mark.chars().all(|c| matches!(c, 'i' | 'v' | 'x'));
        let number = mark.len() <= 2 && mark.chars().all(|c| c.is_ascii_digit());
        number || roman || mark.len() == 1 && mark.starts_with(char::is_lowercase)
    };
    words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .all(is_mark)
        && !words.contains(['/', '.', '%', '°'])
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

/// A dash, `n/a` or the like that leaves a cell empty.
fn is_blank_mark(words: &str) -> bool {
    const NOT_APPLICABLE: &[&str] = &["n/a", "n.a.", "na", "not applicable"];
    if NOT_APPLICABLE.contains(&words.trim().to_lowercase().as_str()) {
        return true;
    }
    words.chars().all(|c| {
        matches!(c, '-' | '–' | '—' | '−' | '.' | '*' | '†' | '‡' | '/') || c.is_whitespace()
    })
}

/// "none" where a limit may stand: there is no such limit.
fn is_no_limit(words: &str) -> bool {
    const WORDS: &[&str] = &["none", "no limit", "not limited", "unlimited", "nil"];
    WORDS.contains(&words.trim().to_lowercase().as_str())
}

/// Whether a cell is a class and nothing else.
fn holds_a_class_alone(flow: &Flow) -> bool {
    !class_alone(&Sentence::new(flow, 0..flow.text().len())).is_empty()
}

/// Reads the class that a cell is, and nothing else.
fn push_class(flow: &Flow, condition: Option<&Condition>, around: &Around, found: &mut Yield) {
    let sentence = Sentence::new(flow, 0..flow.text().len());
    for class in class_alone(&sentence) {
        let bound = class.bound(&sentence);
        push(
            flow,
            bound,
            &class.name(),
            condition,
            around,
            "class code",
            found,
        );
    }
}

/// Reads a cell under its heading.
pub(super) fn read_cell(
    heading: &Heading,
    flow: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let sentence = Sentence::new(flow, 0..flow.text().len());
    let mut classes = class_numbers(&sentence);
    if classes.is_empty() && heading.selects.is_none() && heading.names_a_class() {
        classes = class_alone(&sentence);
    }
    if !classes.is_empty() {
        for class in classes {
            push(
                flow,
                class.bound(&sentence),
                &class.name(),
                condition,
                around,
                "class code",
                found,
            );
        }
        return;
    }
    if heading.selects.is_some() {
        return;
    }
    let text = flow.text();
    let usual = flow.usual_units();
    let paired = heading.unit.is_none() && is_paired_length(text, usual);
    let (column_unit, second_unit) = if paired {
        (usual.length, usual.second_length)
    } else {
        let unit = heading.unit.or_else(|| usual_unit(heading, flow));
        (unit, heading.second_unit)
    };
    let Some(cell) = cell(text, column_unit, second_unit).filter(|cell| cell.unit.is_some()) else {
        push_words(heading, flow, condition, around, found);
        return;
    };
    let unit = cell.unit.unwrap_or(Unit::Count);
    if heading.is_of_another_measure(unit) {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    // A column for a rating alone doesn't say what its numbers are of.
    let bare = text.starts_with(|c: char| c.is_ascii_digit());
    let unnamed = bare && heading.words.is_empty() && heading.rating.is_some();
    // `50 (2)` is one number in two units that nobody names, and no count.
    let in_two_units = text
        .split_once(" (")
        .is_some_and(|(_, second)| second.starts_with(|c: char| c.is_ascii_digit()));
    if (heading.unit_unknown || unnamed || in_two_units) && unit == Unit::Count {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    let said = limit_of(cell.relation, heading.relation);
    if heading.sense == Sense::BothWays {
        read_both_ways(heading, flow, &cell, unit, condition, around, found);
        return;
    }
    if heading.limit_unknown && said.is_none() && cell.hi.is_none() {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    let relation = match (cell.hi, said) {
        (Some(_), _) => Relation::Between,
        (None, Some(relation)) => relation,
        (None, None) if unit == Unit::Count => Relation::Exactly,
        (None, None) => Relation::Nominal,
    };
    let (lo, hi) = match (relation, cell.hi) {
        (Relation::AtMost | Relation::LessThan, None) => (None, Some(cell.lo)),
        (_, hi) => (Some(cell.lo), hi),
    };
    let bound = Bound {
        relation,
        lo,
        hi,
        unit,
        lo_excluded: cell.lo_excluded,
        bare: said.is_none() && cell.hi.is_none(),
        at: flow.span(cell.span.start(), cell.span.end()),
        second: cell.second.as_ref().map(|second| SecondValue {
            lo: Some(second.lo),
            hi: second.hi,
            unit: second.unit,
            agreement: second.agreement,
        }),
    };
    let name = name_of_cell(heading, &cell, unit, around);
    let name = Name {
        doubtful: name.doubtful
            || said != cell.relation.or(heading.relation)
            || leads_to_a_note(text),
        ..name
    };
    push(flow, bound, &name, condition, around, "table cell", found);
    let rest = text.get(cell.span.end()..).unwrap_or_default();
    match cell.goes_on {
        // `16 ga, galv`: the number is read already.
        true if !says_number(rest) => left_as_words(heading, flow, condition, around, found),
        true => push_words(heading, flow, condition, around, found),
        false => {}
    }
}

/// What a cell is called: by its heading, without a property where the heading only says where, or where no building has such a number.
fn name_of_cell(heading: &Heading, cell: &Cell, unit: Unit, around: &Around) -> Name {
    let name = heading
        .requires
        .and_then(name_of)
        .unwrap_or_else(|| name_heading(&heading.words, unit.dimension(), &around.subject));
    let implausible = name
        .property
        .is_some_and(|property| !is_plausible(cell.lo, cell.hi, unit, property));
    let unnamed = labelled::is_distance(&heading.words)
        || labelled::is_rate(&heading.words)
        || heading.sense == Sense::AtPlace
        || implausible;
    if unnamed {
        Name {
            property: None,
            attribute: heading.words.to_lowercase(),
            ..name
        }
    } else {
        name
    }
}

/// Reads a number that is meant both ways, `25` under `Movement, % (+/-)`. Under another heading it is how far the value may be off, and not the value.
fn read_both_ways(
    heading: &Heading,
    flow: &Flow,
    cell: &Cell,
    unit: Unit,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let moves = heading.words.to_lowercase().contains("movement");
    let bare = is_bare_number(flow.text().trim_start_matches(['±', ' ']));
    let limited = heading.relation.is_some() || heading.limit_unknown;
    if !moves || !bare || limited || cell.hi.is_some() || unit == Unit::Count {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    let bound = Bound {
        relation: Relation::Between,
        lo: Some(-cell.lo),
        hi: Some(cell.lo),
        unit,
        lo_excluded: false,
        bare: false,
        at: flow.span(cell.span.start(), cell.span.end()),
        second: None,
    };
    let name = name_heading(&heading.words, unit.dimension(), &around.subject);
    push(flow, bound, &name, condition, around, "table cell", found);
}

/// What a cell and its heading say of a value together: the cell's own word, but of "about 3" under a limit the limit.
fn limit_of(own: Option<Relation>, of_heading: Option<Relation>) -> Option<Relation> {
    let limit =
        of_heading.filter(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost));
    match own {
        Some(Relation::About) => limit.or(own),
        _ => own.or(of_heading),
    }
}

/// The unit that the document states for all its lengths or densities, where the column is of one: it names a size, or a part and a limit alone.
fn usual_unit(heading: &Heading, flow: &Flow) -> Option<Unit> {
    let usual = flow.usual_units();
    if heading.words.to_lowercase().contains("density") {
        return usual.density;
    }
    usual
        .length
        .filter(|_| labelled::names_size(&heading.words) || names_part_and_limit(heading))
}

/// `WALL min`: a part, whose thickness is meant, and how it is limited.
fn names_part_and_limit(heading: &Heading) -> bool {
    const MOST_WORDS: usize = 2;
    const PARTS: &[&str] = &["wall", "slab", "floor", "board", "deck"];
    let lower = heading.words.to_lowercase();
    let mut words = lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty());
    let limited = matches!(heading.relation, Some(Relation::AtLeast | Relation::AtMost));
    limited
        && lower.split_whitespace().count() <= MOST_WORDS
        && words.any(|word| PARTS.contains(&word))
}

/// The name of a property of the vocabulary.
fn name_of(property: &str) -> Option<Name> {
    let property = vocabulary().property(property)?;
    Some(Name {
        property: Some(property),
        also: None,
        component: "joint".to_owned(),
        attribute: property.attribute.replace('_', " "),
        doubtful: false,
    })
}

/// Whether a row is for one width alone, `25 mm` above `38 mm`: what a joint of 30 mm needs nobody has said.
fn lies_beside_others(condition: &Condition) -> bool {
    let exact = |expr: &Expr| matches!(expr, Expr::Test(test) if test.property == "joint.width" && test.relation == Relation::Exactly);
    match &condition.expr {
        Expr::All(parts) => parts.iter().any(exact),
        expr => exact(expr),
    }
}

fn push(
    flow: &Flow,
    bound: Bound,
    name: &Name,
    condition: Option<&Condition>,
    around: &Around,
    rule: &str,
    found: &mut Yield,
) {
    let property = name.property.map_or_else(
        || {
            local_property(
                &around.item,
                &format!("{} {}", name.component, name.attribute),
            )
        },
        |property| property.name.clone(),
    );
    found.clauses.push(Draft {
        span: flow.span(0, flow.text().len()),
        property,
        component: name.component.clone(),
        attribute: name.attribute.clone(),
        requirement: Requirement::Bound(bound),
        condition: condition.cloned(),
        options: around.options.clone(),
        read_by: vec![rule.to_owned()],
        confidence: if name.doubtful || condition.is_some_and(lies_beside_others) {
            Confidence::WithDoubt
        } else {
            Confidence::ByRule
        },
    });
}
