//! The cells of a line by the columns that they stand under.

use super::Schedule;
use super::heading::Role;
use crate::layout::{Line, is_rule};
use crate::outline::tables::{Run, begins_value, runs};

/// How far beside its heading the words of a cell may begin.
const ASIDE: usize = 1;

/// A line of a schedule.
#[derive(Debug)]
pub(super) struct Cells<'a> {
    /// For each column, the words that stand in it.
    pub(super) columns: Vec<Option<Run<'a>>>,
    /// Words that begin under a limit and run across other columns: `wall less 2 x sealant depth`.
    pub(super) across: Option<Run<'a>>,
}

impl<'a> Cells<'a> {
    pub(super) fn of(&self, column: usize) -> Option<Run<'a>> {
        self.columns.get(column).copied().flatten()
    }
}

impl Schedule<'_> {
    /// The cells of a line; none where words stand under no column or under several.
    pub(super) fn cells<'b>(&self, line: &Line<'b>) -> Option<Cells<'b>> {
        if line.is_blank() || is_rule(line.text) {
            return None;
        }
        let mut cells = Cells {
            columns: vec![None; self.columns.len()],
            across: None,
        };
        for run in runs(line)
            .into_iter()
            .flat_map(|run| self.parted(line, run))
        {
            let Some(column) = self.column_of(&run) else {
                let begins = self.begins_under_limit(&run) && cells.across.is_none();
                cells.across = Some(run).filter(|_| begins);
                cells.across?;
                continue;
            };
            let cell = cells
                .columns
                .get_mut(column)
                .filter(|cell| cell.is_none())?;
            *cell = Some(run);
        }
        Some(cells)
    }

    /// A stretch of words, parted where a value begins right under a limit's heading: `Bearing on floor, in. 1-1/2`.
    fn parted<'b>(&self, line: &Line<'b>, run: Run<'b>) -> Vec<Run<'b>> {
        let edge = self
            .limits()
            .map(|column| column.head.from)
            .find_map(|edge| {
                let within = run.from < edge && edge < run.to;
                let at = within.then(|| byte_at(line.text, edge))??;
                let words = line.text.get(at..run.span.end() - line.span.start())?;
                let parted = line.text.get(..at)?.ends_with(' ');
                let dash = matches!(words, "-" | "--" | "–" | "—");
                (parted && (begins_value(words) || dash)).then_some((edge, at))
            });
        let Some((edge, at)) = edge else {
            return vec![run];
        };
        let start = line.span.start() + at;
        let own = run.span.start() - line.span.start();
        let before = line.text.get(own..at).unwrap_or_default().trim_end();
        let words = line
            .text
            .get(at..run.span.end() - line.span.start())
            .unwrap_or_default();
        let first = Run {
            words: before,
            to: run.from + before.chars().count(),
            span: crate::model::Span::new(run.span.start(), run.span.start() + before.len()),
            ..run
        };
        let second = Run {
            words,
            from: edge,
            to: run.to,
            span: crate::model::Span::new(start, run.span.end()),
        };
        vec![first, second]
    }

    fn limits(&self) -> impl Iterator<Item = &super::Column<'_>> {
        self.columns
            .iter()
            .filter(|column| column.role == Role::Value)
    }

    /// The column that words stand in: texts begin with their heading, values stand under one heading alone or nearest to it by far, and a few words that only
    /// overhang are of the one that they begin under.
    fn column_of(&self, run: &Run<'_>) -> Option<usize> {
        let begins = self.columns.iter().position(|column| {
            is_text(column.role) && column.head.from.abs_diff(run.from) <= ASIDE
        });
        begins
            .or_else(|| self.remark(run))
            .or_else(|| match self.over(run).as_slice() {
                [only] if self.stands_under(run, *only) => Some(*only),
                [only] => self.nearest(run).filter(|nearest| nearest == only),
                [] => self.nearest(run),
                _ => self.overhanging(run),
            })
    }

    /// Whether words begin or end with the heading of a column, or stand in the middle of it.
    fn stands_under(&self, run: &Run<'_>, column: usize) -> bool {
        const NEAR: usize = 2;
        let near = |one: usize, other: usize| one.abs_diff(other) <= NEAR;
        self.columns.get(column).is_some_and(|column| {
            let head = &column.head;
            near(run.from, head.from)
                || near(run.to, head.to)
                || near(
                    usize::midpoint(run.from, run.to),
                    usize::midpoint(head.from, head.to),
                )
        })
    }

    /// The column of a limit that a few words begin under, `joint + 50 mm`, where they reach beyond it.
    fn overhanging(&self, run: &Run<'_>) -> Option<usize> {
        const FEW: usize = 3;
        let words = run.words.split_whitespace();
        let few = words
            .filter(|word| word.contains(char::is_alphanumeric))
            .count()
            <= FEW;
        let valued = run.words.contains(|c: char| c.is_ascii_digit());
        let column = self.columns.iter().position(|column| {
            column.role == Role::Value && column.head.from.abs_diff(run.from) <= ASIDE
        });
        column.filter(|_| few && valued)
    }

    /// The last column, where it holds remarks and words stand in it.
    fn remark(&self, run: &Run<'_>) -> Option<usize> {
        let last = self.columns.len() - 1;
        let column = self.columns.get(last)?;
        (column.role == Role::Remark && column.head.from <= run.from).then_some(last)
    }

    /// The columns that words stand under; none of them where one is a text's, which begins elsewhere.
    fn over(&self, run: &Run<'_>) -> Vec<usize> {
        let over = self
            .columns
            .iter()
            .enumerate()
            .filter(|(_, column)| column.head.from < run.to && run.from < column.head.to);
        let found: Vec<(usize, &super::Column<'_>)> = over.collect();
        if found.iter().any(|(_, column)| is_text(column.role)) {
            // Neither here nor anywhere else.
            return vec![0, 0];
        }
        found.into_iter().map(|(at, _)| at).collect()
    }

    /// The column of a short value that stands beside all headings, one of them much nearer than the others.
    fn nearest(&self, run: &Run<'_>) -> Option<usize> {
        /// How far from the middle of its heading that of a value may stand, in half characters.
        const FARTHEST: usize = 10;
        let middle = |run: &Run<'_>| run.from + run.to;
        let mut by_distance: Vec<(usize, usize)> = self
            .columns
            .iter()
            .enumerate()
            .filter(|(_, column)| column.role != Role::Number)
            .map(|(at, column)| (middle(&column.head).abs_diff(middle(run)), at))
            .collect();
        by_distance.sort_unstable();
        let ((nearest, at), (next, _)) = (by_distance.first()?, by_distance.get(1)?);
        let valued = self
            .columns
            .get(*at)
            .is_some_and(|column| !is_text(column.role));
        (valued && *nearest <= FARTHEST && *nearest * 2 < *next).then_some(*at)
    }

    fn begins_under_limit(&self, run: &Run<'_>) -> bool {
        self.limits()
            .any(|column| column.head.from.abs_diff(run.from) <= ASIDE)
            && run.words.contains(' ')
    }
}

const fn is_text(role: Role) -> bool {
    matches!(
        role,
        Role::Number | Role::Name | Role::Product | Role::Property | Role::Remark
    )
}

/// The byte that a character of a line begins at.
fn byte_at(text: &str, character: usize) -> Option<usize> {
    text.char_indices().nth(character).map(|(at, _)| at)
}
