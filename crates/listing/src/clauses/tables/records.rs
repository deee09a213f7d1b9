//! Tables of which each row is one requirement, every part of it in a column of its own: `Part | Property | Limit | Value | Unit | When`.
//!
//! A mark such as "do." repeats the cell above. A limit or a unit that isn't known leaves the row as words; a column of cases that says more
//! than "all" is the row's condition.

use measure::Unit;
use measure::notation::unit_at;

use super::ditto::repeats;
use super::heading::{Heading, heading};
use super::labelled::heads_numbers;
use super::rating_of;
use crate::clauses::draft::local_property;
use crate::clauses::{Around, Draft, Yield};
use crate::layout::Flow;
use crate::model::{Condition, Confidence, Expr, Relation, Requirement, Span};
use crate::naming::{Subject, components_in};
use crate::outline::Table;

const PARTS: &[&str] = &["part", "component", "element", "member", "building part"];
const PROPERTIES: &[&str] = &[
    "property",
    "parameter",
    "characteristic",
    "attribute",
    "measure",
    "dimension",
    "what",
];
const VALUES: &[&str] = &[
    "value",
    "figure",
    "amount",
    "size",
    "requirement",
    "required",
    "req",
    "req.",
    "reqd",
    "req'd",
];
const LIMITS: &[&str] = &[
    "limit",
    "qualifier",
    "sense",
    "relation",
    "bound",
    "min/max",
    "sign",
    "limits",
];
pub(super) const UNITS: &[&str] = &["unit", "units", "uom", "unit of measure"];
const CASES: &[&str] = &[
    "when",
    "where",
    "case",
    "cases",
    "condition",
    "conditions",
    "applies to",
    "applies",
    "for",
    "var",
    "var.",
    "variant",
    "variants",
    "option",
    "use",
    "rating",
    "period",
    "fire period",
];
const REMARKS: &[&str] = &["remark", "remarks", "note", "notes", "comment", "comments"];
const ALL: &[&str] = &["all", "any", "both", "every", "always", "each", "general"];

/// Which column holds which part of a requirement.
struct Records {
    part: Option<usize>,
    property: usize,
    limit: Option<usize>,
    value: usize,
    unit: Option<usize>,
    /// The columns that say where a row holds.
    cases: Vec<usize>,
    headings: Vec<String>,
}

/// Reads a table of this kind; says whether it is one.
pub(super) fn read(source: &str, table: &Table, around: &Around, found: &mut Yield) -> bool {
    let headings = table
        .headings
        .iter()
        .map(|pieces| {
            Flow::of(source, pieces.iter().copied())
                .text()
                .trim()
                .to_lowercase()
        })
        .collect();
    let Some(records) = Records::of(headings) else {
        return false;
    };
    let mut above: Vec<Flow> = Vec::new();
    for row in &table.rows {
        let cells: Vec<Flow> = row
            .cells
            .iter()
            .enumerate()
            .map(|(column, pieces)| {
                let own =
                    Flow::of(source, pieces.iter().copied()).with_usual_units(around.usual_units);
                let repeats = repeats(own.text());
                above
                    .get(column)
                    .filter(|_| repeats)
                    .cloned()
                    .unwrap_or(own)
            })
            .collect();
        records.read_row(&cells, row.span, around, found);
        above = cells;
    }
    true
}

impl Records {
    /// The columns, where a property and a value have one each, and a limit or a unit has one too.
    fn of(headings: Vec<String>) -> Option<Self> {
        let one = |names: &[&str]| {
            let mut columns = headings
                .iter()
                .enumerate()
                .filter(|(_, heading)| names.contains(&heading.as_str()))
                .map(|(column, _)| column);
            columns.next().filter(|_| columns.next().is_none())
        };
        // "min 4" may stand under "Limit".
        let limit = one(LIMITS).filter(|_| one(VALUES).is_some());
        let (property, value) = (one(PROPERTIES)?, one(VALUES).or_else(|| one(LIMITS))?);
        let (part, unit) = (one(PARTS), one(UNITS));
        limit.or(unit)?;
        let taken = [part, Some(property), limit, Some(value), unit];
        let rest = || {
            headings.iter().enumerate().filter(|(column, words)| {
                !taken.contains(&Some(*column)) && !heads_numbers(&heading(words))
            })
        };
        // What heads anything else may ask something of its own.
        let known = |words: &str| {
            words.split(' ').all(|word| CASES.contains(&word))
                || CASES.contains(&words)
                || REMARKS.contains(&words)
        };
        if !rest().all(|(_, words)| known(words)) {
            return None;
        }
        let cases = rest().map(|(column, _)| column).collect();
        Some(Self {
            part,
            property,
            limit,
            value,
            unit,
            cases,
            headings,
        })
    }

    fn read_row(&self, cells: &[Flow], span: Span, around: &Around, found: &mut Yield) {
        let text = |column: Option<usize>| {
            column
                .and_then(|column| cells.get(column))
                .map_or("", |cell| cell.text().trim())
        };
        let around = &about(text(self.part), around);
        let condition = self.condition(cells, span);
        let value = cells
            .get(self.value)
            .filter(|value| !value.text().trim().is_empty());
        let said = limit(text(self.limit))
            .zip(unit(text(self.unit)))
            .filter(|(limit, unit)| agrees(text(self.limit), *limit, value, *unit));
        let (Some(value), Some((relation, unit)), Some(property)) =
            (value, said, cells.get(self.property))
        else {
            found
                .clauses
                .push(words(text(Some(self.property)), span, condition, around));
            return;
        };
        let label = heading(property.text()).requiring();
        let label = Heading {
            unit: unit.or(label.unit),
            relation: relation.or(label.relation),
            ..label
        };
        let mut own = Yield::default();
        super::read_labelled(
            &label,
            property,
            value,
            condition.as_ref(),
            around,
            &mut own,
        );
        // The words of a requirement are all of its row.
        for draft in &mut own.clauses {
            draft.span = span;
        }
        found.append(own);
        self.remarks(cells, condition.as_ref(), around, found);
    }

    /// What a row remarks may be asked too, "butt tight", "cores filled at top": a person must say.
    fn remarks(
        &self,
        cells: &[Flow],
        condition: Option<&Condition>,
        around: &Around,
        found: &mut Yield,
    ) {
        for column in &self.cases {
            let heads = self
                .headings
                .get(*column)
                .is_some_and(|heading| REMARKS.contains(&heading.as_str()));
            let Some(cell) = cells.get(*column).filter(|_| heads) else {
                continue;
            };
            let text = cell.text().trim();
            if text.chars().any(char::is_alphabetic) && rating_of(text).is_none() {
                let span = cell.span(0, cell.text().len());
                found
                    .clauses
                    .push(words(text, span, condition.cloned(), around));
            }
        }
    }

    /// Where the row holds.
    fn condition(&self, cells: &[Flow], span: Span) -> Option<Condition> {
        let mut words = Vec::new();
        let mut parts = Vec::new();
        for column in &self.cases {
            let (Some(heading), Some(cell)) = (self.headings.get(*column), cells.get(*column))
            else {
                continue;
            };
            let text = cell.text().trim();
            let lower = text.to_lowercase();
            if !text.chars().any(char::is_alphanumeric) || ALL.contains(&lower.as_str()) {
                continue;
            }
            let said = format!("{heading}: {text}");
            // A remark is a case only where it is a rating, and then it may be a time.
            if REMARKS.contains(&heading.as_str()) {
                if rating_of(text).is_some() {
                    parts.push(Expr::Words(said.clone()));
                    words.push(said);
                }
                continue;
            }
            parts.push(rating_of(text).unwrap_or_else(|| Expr::Words(said.clone())));
            words.push(said);
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
}

/// What the row is about.
fn about(part: &str, around: &Around) -> Around {
    if part.is_empty() {
        return around.clone();
    }
    let subject = Subject {
        titles: components_in(part)
            .into_iter()
            .map(|(component, ..)| (component, 0))
            .collect(),
        title: part.to_owned(),
        before: None,
    };
    Around {
        subject,
        ..around.clone()
    }
}

/// What a cell says of a limit: none where it says nothing of one, outer none where it isn't known.
#[allow(
    clippy::option_option,
    reason = "that there is no limit and that it isn't known are two things"
)]
fn limit(words: &str) -> Option<Option<Relation>> {
    Some(match words.to_lowercase().trim_end_matches('.') {
        "" | "-" | "–" | "—" | "btw" | "between" | "range" | "from-to" | "from - to" | "tol"
        | "±" => None,
        "min" | "minimum" | "≥" | ">=" | "not less than" | "at least" | "nlt" | "lower"
        | "least" => Some(Relation::AtLeast),
        "max" | "maximum" | "≤" | "<=" | "not more than" | "at most" | "nmt" | "upper"
        | "up to" | "most" => Some(Relation::AtMost),
        "nom" | "nominal" | "target" => Some(Relation::Nominal),
        "eq" | "=" | "exact" | "exactly" | "equal" => Some(Relation::Exactly),
        ">" | "over" | "more than" | "above" => Some(Relation::MoreThan),
        "<" | "under" | "less than" | "below" => Some(Relation::LessThan),
        "approx" | "about" | "~" | "≈" | "ca" => Some(Relation::About),
        _ => return None,
    })
}

/// Whether a value says nothing against its row's limit: `min` beside "<= 100", or "between" beside one value.
fn agrees(words: &str, limit: Option<Relation>, value: Option<&Flow>, unit: Option<Unit>) -> bool {
    let spread = [
        "btw",
        "between",
        "range",
        "from-to",
        "from - to",
        "tol",
        "±",
    ]
    .contains(&words.to_lowercase().as_str());
    let Some(cell) = value.and_then(|value| crate::phrase::cell(value.text(), unit, None)) else {
        return !spread;
    };
    let against = limit
        .zip(cell.relation)
        .is_some_and(|(limit, own)| limit != own);
    !against && (!spread || cell.hi.is_some())
}

/// The unit that a cell names: none where it names none, outer none where it isn't known.
#[allow(
    clippy::option_option,
    reason = "that there is no unit and that it isn't known are two things"
)]
pub(super) fn unit(words: &str) -> Option<Option<Unit>> {
    match words.to_lowercase().as_str() {
        "" | "-" | "–" | "—" => return Some(None),
        "no" | "no." | "nos" | "nos." | "pcs" | "pcs." | "pc" | "ea" | "ea." | "each" | "count"
        | "pieces" | "layers" | "coats" | "passes" | "strips" | "clips" | "screws" | "pins" => {
            return Some(Some(Unit::Count));
        }
        _ => {}
    }
    let words = words.strip_prefix("degrees ").unwrap_or(words);
    let words = match words {
        "C" => "°C",
        "F" => "°F",
        _ => words,
    };
    let (unit, end) = unit_at(words, 0)?;
    words
        .get(end..)?
        .trim_matches(['.', ' '])
        .is_empty()
        .then_some(Some(unit))
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
