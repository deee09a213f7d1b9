//! Schedules whose rows are requirements, each under the item that it is of: `Item | Component | Requirement | Min | Max | Notes` over
//!
//! ```text
//! 5     Clip, galv. steel    Gauge                 20        -         d
//!                            Width, in.            1         -
//! ```
//!
//! Each number opens an item, and the rows down to the next are a table of its own. A heading that no list knows, or a line whose words stand under two
//! columns or under none, is no part of such a schedule: a limit never goes to a number of another column.

mod cells;
mod heading;
mod items;
mod table;

pub(super) use self::heading::heads_numbers;
pub(crate) use self::heading::{heads_properties, is_code};
pub(super) use self::items::{Content, Item};
pub(super) use self::table::items_of;

use self::heading::{Role, heads_limits, heads_units, role};
use super::tables::{Run, runs};
use crate::layout::{Line, is_rule};
use crate::model::Span;

/// The columns of such a schedule.
#[derive(Debug, Clone)]
pub(super) struct Schedule<'a> {
    columns: Vec<Column<'a>>,
    /// The first column of requirements; those before it are of the item.
    property: usize,
}

/// A column: its heading, and what it holds.
#[derive(Debug, Clone)]
struct Column<'a> {
    head: Run<'a>,
    /// The second line of the heading.
    more: Option<Run<'a>>,
    role: Role,
}

/// The fewest columns.
const FEWEST: usize = 4;

impl<'a> Schedule<'a> {
    /// The schedule that a line heads, with the line that its rows begin at.
    pub(super) fn headed_by(lines: &[Line<'a>], at: usize) -> Option<(Self, usize)> {
        let ruled = lines.get(at).is_some_and(|line| is_rule(line.text));
        let at = at + usize::from(ruled);
        let heads = runs(lines.get(at)?);
        let first = heads.first().filter(|head| heads_numbers(head.words))?;
        if heads.len() < FEWEST
            || !first
                .words
                .starts_with(|c: char| c.is_alphabetic() || c == '#')
        {
            return None;
        }
        let below = lines.get(at + 1).and_then(|line| second_line(line, &heads));
        let heading_lines = 1 + usize::from(below.is_some());
        let mut below = below.unwrap_or_default().into_iter();
        let columns: Option<Vec<Column<'_>>> = heads
            .iter()
            .map(|head| {
                let more = below.next().flatten();
                let words = more.map_or_else(
                    || head.words.to_owned(),
                    |more| format!("{} {}", head.words, more.words),
                );
                Some(Column {
                    head: *head,
                    more,
                    role: role(&words)?,
                })
            })
            .collect();
        let mut columns = columns?;
        columns.first_mut()?.role = Role::Number;
        let headings: Vec<&str> = columns.iter().map(|column| column.head.words).collect();
        let roles = columns.iter().map(|column| column.role).collect();
        let roles = settled(roles, &headings)?;
        for (column, role) in columns.iter_mut().zip(&roles) {
            column.role = *role;
        }
        let property = property(&roles)?;
        let mut from = at + heading_lines;
        while lines
            .get(from)
            .is_some_and(|line| line.is_blank() || is_rule(line.text))
        {
            from += 1;
        }
        Some((Self { columns, property }, from))
    }

    /// What its headings take of their lines.
    pub(super) fn headings(&self) -> impl Iterator<Item = Span> + '_ {
        let pieces =
            |column: &Column<'_>| [Some(column.head.span), column.more.map(|more| more.span)];
        self.columns.iter().flat_map(pieces).flatten()
    }
}

/// The roles of columns with their headings; none where these can't be such a schedule, since neither a limit nor a unit nor a value has a column.
///
/// `Property | Requirement` asks in the second for what the first names.
fn settled(mut roles: Vec<Role>, headings: &[&str]) -> Option<Vec<Role>> {
    let property = headings.iter().position(|words| heads_properties(words));
    let mut valued = false;
    if let Some(property) = property {
        let behind = roles.iter_mut().skip(property + 1);
        for role in behind.filter(|role| **role == Role::Property) {
            *role = Role::Value;
            valued = true;
        }
    }
    let limited = headings
        .iter()
        .any(|words| heads_limits(words) || heads_units(words));
    (limited || valued).then_some(roles)
}

/// The column of what is asked: behind the number, and behind the name and the product where these have columns; all others stand behind it.
fn property(roles: &[Role]) -> Option<usize> {
    let at = roles.iter().position(|role| *role == Role::Property)?;
    let (before, behind) = (roles.get(1..at)?, roles.get(at + 1..)?);
    let named = matches!(before, [] | [Role::Name] | [Role::Name, Role::Product]);
    let asked = behind
        .iter()
        .all(|role| matches!(role, Role::Value | Role::Case | Role::Remark));
    (named && asked).then_some(at)
}

/// The second line of headings, each word of it under one of the first.
fn second_line<'a>(line: &Line<'a>, heads: &[Run<'a>]) -> Option<Vec<Option<Run<'a>>>> {
    if line.is_blank() || is_rule(line.text) {
        return None;
    }
    let mut found = vec![None; heads.len()];
    for run in runs(line) {
        let worded = run
            .words
            .starts_with(|c: char| c.is_alphabetic() || c == '(')
            && !run.words.contains(|c: char| c.is_ascii_digit());
        let mut over = (0..heads.len()).filter(|at| {
            heads
                .get(*at)
                .is_some_and(|head| head.from < run.to && run.from < head.to)
        });
        let only = over
            .next()
            .filter(|at| worded && *at > 0 && over.next().is_none())?;
        *found.get_mut(only)? = Some(run);
    }
    Some(found)
}
