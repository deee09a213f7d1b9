//! A row of a table: its cells, its label and the line over it.

use super::super::heading::{Heading, Selects, heading};
use super::headings::case_of_label;
use crate::layout::Flow;
use crate::model::Span;

/// A row.
pub(in crate::clauses::tables) struct Row {
    pub(in crate::clauses::tables) cells: Vec<Flow>,
    /// What one of its cells says of those after it, in a table whose rows are labelled.
    pub(in crate::clauses::tables) label: Option<Heading>,
    /// The part that the row is of, where its first cell and those above name one: "Cover strip (optional)".
    pub(in crate::clauses::tables) part: String,
    /// The line that it stands under, which says which joints it is for: "FRL -/60/60".
    pub(in crate::clauses::tables) group: String,
    /// The columns whose cells repeat another, which stands elsewhere.
    pub(in crate::clauses::tables) repeated: Vec<usize>,
    pub(in crate::clauses::tables) span: Span,
}

impl Row {
    pub(in crate::clauses::tables) const fn of(cells: Vec<Flow>, span: Span) -> Self {
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
    pub(in crate::clauses::tables) fn read_label(&self, column: usize) -> Option<Heading> {
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
    pub(super) fn is_named(&self) -> bool {
        const SHORTEST: usize = 3;
        let first = self.text(0);
        first.len() >= SHORTEST && !first.contains(|c: char| c.is_ascii_digit())
    }

    /// Whether its first cell is all it has.
    pub(in crate::clauses::tables) fn is_alone(&self) -> bool {
        let mut others = 1..self.cells.len();
        !self.text(0).is_empty()
            && self.cells.len() > 1
            && others.all(|at| self.text(at).is_empty())
    }

    pub(in crate::clauses::tables) fn text(&self, column: usize) -> &str {
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
