//! Tables to clauses: each row a condition from its first columns, each other cell a clause.
//!
//! A column's heading gives the unit, the qualifier and the property; a column that says which joints the row is for (a width, a
//! rating, an orientation) gives the condition. A cell that is no number becomes prose under its heading.

use measure::{Dimension, Quantity, Unit, notation};

use super::Around;
use super::classes::class_numbers;
use super::draft::{Draft, Yield, local_property};
use crate::layout::Flow;
use crate::model::{
    Bound, Condition, Confidence, Expr, Relation, Requirement, SecondValue, Span, Test,
};
use crate::naming::{Name, name_heading};
use crate::outline::Table;
use crate::phrase::{Cell, cell};
use crate::rules::{Sentence, qualifier};

/// What a column's heading says of its cells.
struct Heading {
    words: String,
    unit: Option<Unit>,
    second_unit: Option<Unit>,
    relation: Option<Relation>,
    selects: Option<Selects>,
}

/// What a column that selects rows tests.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Selects {
    Width,
    Rating,
    Other,
}

pub(super) fn read(source: &str, table: &Table, caption: &str, around: &Around, found: &mut Yield) {
    found.covered.push(table.span);
    let mut headings: Vec<Heading> = headings(source, table);
    if captions(caption) {
        for heading in &mut headings {
            heading.take_from_caption(caption);
        }
    }
    for row in &table.rows {
        let flows: Vec<Flow> = row
            .cells
            .iter()
            .map(|pieces| Flow::of(source, pieces.iter().copied()))
            .collect();
        let condition = condition(row.span, &headings, &flows);
        for (heading, flow) in headings.iter().zip(&flows) {
            if flow.text().trim().is_empty() || is_blank_mark(flow.text()) {
                continue;
            }
            read_cell(heading, flow, condition.as_ref(), around, found);
        }
    }
}

/// Whether a paragraph before a table speaks of the table.
fn captions(caption: &str) -> bool {
    let lower = caption.to_lowercase();
    lower.starts_with("table")
        || lower.contains("in mm")
        || lower.contains("in inches")
        || lower.contains("dimensions")
}

impl Heading {
    /// A unit or qualifier that the caption gives holds for every column that has none of its own: "All measures in mm",
    /// "Number of layers (minimum)".
    fn take_from_caption(&mut self, caption: &str) {
        let lower = caption.to_lowercase();
        let unit = [
            ("in mm", Unit::Millimetre),
            ("millimetres", Unit::Millimetre),
            ("in inches", Unit::Inch),
            ("in in.", Unit::Inch),
        ];
        let measures = |words: &str| {
            [
                "width",
                "depth",
                "thickness",
                "wall",
                "height",
                "lap",
                "length",
                "spacing",
                "overlap",
                "recess",
                "slab",
                "floor",
                "diameter",
            ]
            .iter()
            .any(|word| words.contains(word))
        };
        if self.unit.is_none() && measures(&self.words.to_lowercase()) {
            self.unit = unit
                .iter()
                .find(|(words, _)| lower.contains(words))
                .map(|(_, unit)| *unit);
        }
        if self.selects.is_none() && self.relation.is_none() {
            self.relation = lower
                .split(|c: char| !c.is_alphabetic())
                .find_map(qualifier);
        }
        if self.selects.is_none() && self.unit.is_none() && lower.contains("layers") {
            self.words = format!("{caption} {}", self.words);
        }
    }
}

/// A dash or the like that leaves a cell empty.
fn is_blank_mark(words: &str) -> bool {
    !words.chars().any(char::is_alphanumeric)
}

fn headings(source: &str, table: &Table) -> Vec<Heading> {
    let mut selecting = true;
    table
        .headings
        .iter()
        .enumerate()
        .map(|(index, pieces)| {
            let flow = Flow::of(source, pieces.iter().copied());
            let mut heading = heading(flow.text());
            selecting &= heading.selects.is_some() || index == 0;
            if !selecting {
                heading.selects = None;
            } else if index == 0 && heading.selects.is_none() {
                heading.selects = Some(Selects::Other);
            }
            heading
        })
        .collect()
}

fn heading(text: &str) -> Heading {
    let lower = text.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| {
            !(c.is_alphanumeric() || matches!(c, '%' | '/' | '°' | '³' | '²' | '"' | '\''))
        })
        .filter(|word| !word.is_empty())
        .collect();
    let mut units = Vec::new();
    for word in &words {
        // In a heading `h` and `m` are units only when they stand alone, as they do here.
        if qualifier(word).is_none()
            && let Some((unit, end)) = notation::unit_at(&format!("1 {word}"), 1)
            && end == word.len() + 2
            && !units.contains(&unit)
        {
            units.push(unit);
        }
    }
    let says = |list: &[&str]| words.iter().any(|word| list.contains(word));
    let rates = says(&["rating", "hr", "hrs", "hour", "hours"]) || (words.as_slice() == ["h"]);
    let width = says(&["width", "widths", "opening", "openings", "gap", "gaps"])
        && words.iter().all(|word| speaks_of_joint_width(word));
    let selects = if rates && !width {
        Some(Selects::Rating)
    } else if width {
        Some(Selects::Width)
    } else if says(&[
        "orientation",
        "size",
        "condition",
        "configuration",
        "pipe",
        "case",
        "type",
        "combination",
        "row",
        "no",
    ]) {
        Some(Selects::Other)
    } else {
        None
    };
    let unit = units.first().copied();
    let second_unit = units
        .get(1)
        .copied()
        .filter(|second| unit.is_some_and(|unit| unit.dimension() == second.dimension()));
    let relation = words.iter().find_map(|word| qualifier(word)).or_else(|| {
        let says_pair = |pair: &[&str; 2]| words.windows(2).any(|two| two == pair);
        if says_pair(&["at", "least"])
            || says_pair(&["not", "under"])
            || says_pair(&["less", "than"]) && says(&["not"])
        {
            Some(Relation::AtLeast)
        } else if says_pair(&["at", "most"])
            || says_pair(&["up", "to"])
            || says_pair(&["not", "over"])
        {
            Some(Relation::AtMost)
        } else {
            None
        }
    });
    Heading {
        words: text.trim().to_owned(),
        unit,
        second_unit,
        relation,
        selects,
    }
}

/// Whether a word may stand in the heading of the joint's width. "Profile width" is the width of something else.
fn speaks_of_joint_width(word: &str) -> bool {
    const WIDTH: &[&str] = &[
        "width",
        "widths",
        "wide",
        "joint",
        "joints",
        "jt",
        "opening",
        "openings",
        "gap",
        "gaps",
        "linear",
        "seal",
        "nominal",
        "nom",
        "of",
        "the",
        "in",
        "w",
        "b",
        "from",
        "to",
        "up",
        "at",
        "as",
        "range",
        "installed",
        "clear",
        "design",
        "between",
        "over",
        "max",
        "maximum",
        "min",
        "minimum",
        "or",
        "and",
        "mm",
        "inch",
        "inches",
        "cm",
        "less",
        "than",
        "more",
        "least",
        "most",
        "not",
        "exceeding",
        "tested",
        "measured",
        "actual",
        "when",
        "is",
        "band",
    ];
    WIDTH.contains(&word) || word.chars().all(|c| !c.is_alphabetic())
}

/// The condition that a row's selecting cells make together.
fn condition(span: Span, headings: &[Heading], flows: &[Flow]) -> Option<Condition> {
    let mut parts = Vec::new();
    let mut words = Vec::new();
    for (heading, flow) in headings.iter().zip(flows) {
        let Some(selects) = heading.selects else {
            continue;
        };
        let text = flow.text().trim();
        if text.is_empty() {
            continue;
        }
        words.push(format!("{}: {text}", heading.words));
        let property = match selects {
            Selects::Width => Some("joint.width"),
            Selects::Rating => Some("joint.rating"),
            Selects::Other => None,
        };
        let tested = property
            .zip(cell(text, heading.unit, heading.second_unit))
            .and_then(|(property, cell)| test(property, &cell));
        parts.push(tested.unwrap_or_else(|| Expr::Words(format!("{}: {text}", heading.words))));
    }
    let expr = match parts.len() {
        0 => return None,
        1 => parts.pop()?,
        _ => Expr::All(parts),
    };
    Some(Condition {
        words: words.join("; "),
        span,
        expr,
    })
}

fn test(property: &str, cell: &Cell) -> Option<Expr> {
    let unit = cell.unit?;
    let quantity = |number| Quantity::new(number, unit);
    let (relation, lo, hi) = match (cell.relation, cell.hi) {
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

fn read_cell(
    heading: &Heading,
    flow: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let sentence = Sentence::new(flow, 0..flow.text().len());
    let classes = class_numbers(&sentence);
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
    let Some(cell) =
        cell(text, heading.unit, heading.second_unit).filter(|cell| cell.unit.is_some())
    else {
        push_words(heading, flow, condition, around, found);
        return;
    };
    let unit = cell.unit.unwrap_or(Unit::Count);
    let relation = match (cell.hi, cell.relation.or(heading.relation)) {
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
        bare: cell.relation.or(heading.relation).is_none() && cell.hi.is_none(),
        at: flow.span(cell.span.start(), cell.span.end()),
        second: cell.second.map(|second| SecondValue {
            lo: Some(second.lo),
            hi: second.hi,
            unit: second.unit,
            agreement: second.agreement,
        }),
    };
    let name = name_heading(&heading.words, unit.dimension(), &around.subject);
    push(flow, bound, &name, condition, around, "table cell", found);
    if cell.goes_on {
        push_words(heading, flow, condition, around, found);
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
        confidence: if name.doubtful {
            Confidence::WithDoubt
        } else {
            Confidence::ByRule
        },
    });
}

/// A cell that is words: a person must say what it asks for.
fn push_words(
    heading: &Heading,
    flow: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let name = name_heading(&heading.words, Dimension::Count, &around.subject);
    found.clauses.push(Draft {
        span: flow.span(0, flow.text().len()),
        property: local_property(&around.item, &heading.words),
        component: name.component,
        attribute: heading.words.to_lowercase(),
        requirement: Requirement::Prose,
        condition: condition.cloned(),
        options: around.options.clone(),
        read_by: vec!["left as words".to_owned()],
        confidence: Confidence::Prose,
    });
}
