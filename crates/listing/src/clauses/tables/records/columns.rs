//! Which column of a table of requirements holds what.

use super::super::columns::Row;
use super::super::heading::{Heading, heading};
use super::super::labelled::heads_numbers;
use super::label::numbers;
use super::roles::{Role, heads_labels, role};

/// Which column holds which part of a requirement.
pub(super) struct Records {
    pub(super) part: Option<usize>,
    pub(super) property: usize,
    pub(super) limit: Option<usize>,
    pub(super) values: Vec<(usize, Heading)>,
    pub(super) tolerance: Option<usize>,
    pub(super) unit: Option<usize>,
    /// The columns that say where a row holds.
    pub(super) cases: Vec<usize>,
    pub(super) remarks: Vec<usize>,
    pub(super) headings: Vec<String>,
    /// Whether the labels begin with the numbers of their rows: `3.1 Joint width`.
    pub(super) numbered: bool,
}

impl Records {
    /// The columns, where a property and a value have one each at least, and a unit has one, or how the values are meant is known by a column.
    /// What heads anything else may ask something of its own.
    pub(super) fn of(mut headings: Vec<String>, rows: &[Row]) -> Option<Self> {
        let numbering: Vec<bool> = (0..headings.len())
            .map(|column| numbers(rows.iter().map(|row| row.text(column))))
            .collect();
        move_past_numbers(&mut headings, &numbering);
        let mut roles: Vec<Role> = headings.iter().map(|words| role(words)).collect();
        for (role, numbers) in roles.iter_mut().zip(&numbering) {
            if *numbers && !matches!(role, Role::Value(_) | Role::Unit | Role::Tolerance) {
                *role = Role::Number;
            }
        }
        let property = property(&headings, &roles)?;
        for (column, role) in roles.iter_mut().enumerate() {
            if column == property {
                *role = Role::Property;
            } else if headings
                .get(column)
                .is_some_and(|words| heads_numbers(&heading(words)))
            {
                *role = Role::Number;
            }
        }
        settle_limit(&mut roles);
        let columns = |is: fn(&Role) -> bool| -> Vec<usize> {
            let of = roles.iter().enumerate().filter(|(_, role)| is(role));
            of.map(|(column, _)| column).collect()
        };
        let at_most_one = |is: fn(&Role) -> bool| match columns(is)[..] {
            [] => Some(None),
            [only] => Some(Some(only)),
            _ => None,
        };
        if !columns(|role| matches!(role, Role::Other)).is_empty() {
            return None;
        }
        let values: Vec<(usize, Heading)> = roles
            .iter()
            .enumerate()
            .filter_map(|(column, role)| match role {
                Role::Value(heading) => Some((column, heading.as_ref().clone())),
                _ => None,
            })
            .collect();
        let limit = at_most_one(|role| matches!(role, Role::Limit))?;
        let unit = at_most_one(|role| matches!(role, Role::Unit))?;
        let limited = values.iter().any(|(_, value)| value.relation.is_some());
        let one_limit = limit.is_none() || values.len() == 1;
        if values.is_empty() || !one_limit || !(limit.is_some() || unit.is_some() || limited) {
            return None;
        }
        Some(Self {
            part: at_most_one(|role| matches!(role, Role::Part))?,
            property,
            limit,
            values,
            tolerance: at_most_one(|role| matches!(role, Role::Tolerance))?,
            unit,
            cases: columns(|role| matches!(role, Role::Case)),
            remarks: columns(|role| matches!(role, Role::Remark)),
            numbered: numbers_labels(rows, property),
            headings,
        })
    }

    /// The columns of values that are headed by the joints that they are for.
    pub(super) fn rated(&self) -> impl Iterator<Item = usize> + '_ {
        let rated = self
            .values
            .iter()
            .filter(|(_, heading)| heading.rating.is_some());
        rated.map(|(column, _)| *column)
    }
}

/// A heading over a column of numbers is that of the column behind it, where that has none: `Requirement` over `4.1  Layers`.
fn move_past_numbers(headings: &mut [String], numbering: &[bool]) {
    let unheaded = |column: usize| headings.get(column).is_some_and(String::is_empty);
    let at = (1..headings.len())
        .find(|column| unheaded(*column) && numbering.get(column - 1).is_some_and(|is| *is));
    if let Some(at) = at {
        headings.swap(at - 1, at);
    }
}

/// The column that says what is asked: one headed as a property; else as a requirement, an item or a part; else the one whose heading no list
/// knows, which may name the part. It stands before all values.
fn property(headings: &[String], roles: &[Role]) -> Option<usize> {
    let first_value = roles
        .iter()
        .position(|role| matches!(role, Role::Value(heading) if heading.relation.is_some() || heading.rating.is_some()))
        .unwrap_or(roles.len());
    let mut properties =
        (0..roles.len()).filter(|column| matches!(roles.get(*column), Some(Role::Property)));
    if let Some(only) = properties.next() {
        return properties.next().is_none().then_some(only);
    }
    let open = |column: &usize| {
        let role = roles.get(*column);
        !matches!(role, Some(Role::Number | Role::Unit | Role::Remark))
    };
    // Of `Component | Requirement` the second says what is asked, and the first of what.
    let labelled = (0..first_value).rfind(|column| {
        open(column)
            && headings
                .get(*column)
                .is_some_and(|words| heads_labels(words))
    });
    let mut others =
        (0..roles.len()).filter(|column| matches!(roles.get(*column), Some(Role::Other)));
    match (others.next(), others.next(), labelled) {
        // `Part | Packing detail | Min | Max`
        (Some(only), None, labelled) if only < first_value => {
            let parts = labelled.is_none_or(|label| {
                label == only || matches!(roles.get(label), Some(Role::Part)) && label < only
            });
            parts.then_some(only)
        }
        (None, None, labelled) => labelled,
        _ => None,
    }
}

/// "Limit" alone heads values: `Property | Limit | Unit` over `min 4`.
fn settle_limit(roles: &mut [Role]) {
    let valued = roles.iter().any(|role| matches!(role, Role::Value(_)));
    for role in roles.iter_mut().filter(|_| !valued) {
        if matches!(role, Role::Limit) {
            *role = Role::Value(Box::new(super::super::heading::heading("value")));
        }
    }
}

/// Whether every label begins with the number of its row.
fn numbers_labels(rows: &[Row], property: usize) -> bool {
    let labels = rows
        .iter()
        .filter(|row| !row.is_alone())
        .map(|row| row.text(property));
    numbers(labels.map(|label| label.split_once(' ').map_or("", |(mark, _)| mark)))
}
