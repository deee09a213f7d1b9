//! Where a row of a table of requirements holds.

use super::super::columns::{Row, selecting};
use super::super::heading::{Heading, Selects, heading};
use super::super::{all_of, of_group, rating_of};
use super::columns::Records;
use crate::model::{Condition, Expr};

const ALL: &[&str] = &[
    "all",
    "any",
    "both",
    "every",
    "always",
    "each",
    "general",
    "throughout",
];

/// Whether a cell says that its row always holds: `all`, `every joint`, `both ratings`.
fn is_of_all(text: &str) -> bool {
    let lower = text.trim().to_lowercase();
    let opens = ["all ", "every ", "both ", "any "]
        .iter()
        .any(|open| lower.starts_with(open));
    let plain = !lower.contains(|c: char| c.is_ascii_digit()) && lower.split(' ').count() == 2;
    ALL.contains(&lower.as_str()) || opens && plain
}

impl Records {
    /// Where a value of the row holds: as its columns of cases say, its label, the line that it stands under, and the heading of the value.
    pub(super) fn condition(
        &self,
        row: &Row,
        said: &[(String, Expr)],
        value: Option<&Heading>,
    ) -> Option<Condition> {
        let mut found: Vec<(String, Expr)> = Vec::new();
        if !row.group.is_empty() {
            found.push((row.group.clone(), of_group(&row.group)));
        }
        found.extend(
            self.cases
                .iter()
                .filter_map(|column| self.case(row, *column)),
        );
        found.extend(
            self.remarks
                .iter()
                .filter_map(|column| self.remarked_case(row, *column)),
        );
        found.extend(said.iter().cloned());
        if let Some(rating) = value.and_then(|value| value.rating.as_ref()) {
            found.push((rating.words.clone(), rating.expr.clone()));
        }
        if is_optional(&row.part) {
            found.push((row.part.clone(), Expr::Words(row.part.clone())));
        }
        all_of(found, row.span)
    }

    /// What a cell of a column of cases says.
    fn case(&self, row: &Row, column: usize) -> Option<(String, Expr)> {
        let headed = self.headings.get(column)?;
        let text = row.text(column);
        if !text.chars().any(char::is_alphanumeric) || is_of_all(text) {
            return None;
        }
        let said = format!("{}: {text}", headed.to_lowercase());
        let over = heading(headed);
        let usual = row
            .cells
            .get(column)
            .and_then(|cell| cell.usual_units().length);
        let expr = match over.selects {
            Some(selects) if selects != Selects::Other && over.unit.is_some() => {
                selecting(selects, &over, text, usual)
            }
            _ => rating_of(text).unwrap_or_else(|| Expr::Words(said.clone())),
        };
        Some((said, expr))
    }

    /// A remark is a case only where it begins as cases do, or is a rating, which may be a time.
    fn remarked_case(&self, row: &Row, column: usize) -> Option<(String, Expr)> {
        let text = row.text(column);
        if !is_case(text) {
            rating_of(text)?;
        }
        let said = format!("{}: {text}", self.headings.get(column)?.to_lowercase());
        Some((said.clone(), Expr::Words(said)))
    }
}

/// Whether a remark says that its row holds where the thing is there, and nothing else: `if used`. What says more, "where the deck spans over 3 m the spacing
/// is 150 mm", may ask something itself, and "when cured" says only in which state.
pub(super) fn is_case(remark: &str) -> bool {
    const OPENS: &[&str] = &["if", "where", "when"];
    const THERE: &[&str] = &[
        "used",
        "fitted",
        "provided",
        "present",
        "specified",
        "any",
        "applied",
    ];
    let lower = remark.trim().trim_end_matches('.').to_lowercase();
    lower
        .split_once(' ')
        .is_some_and(|(open, rest)| OPENS.contains(&open) && THERE.contains(&rest.trim()))
}

/// Whether a part may be left out: "Cover strip (optional)"; of "Clip, optional coating" only the coating may.
fn is_optional(part: &str) -> bool {
    let lower = part.to_lowercase();
    let bare = lower.trim_matches(|c: char| !c.is_alphanumeric());
    bare.starts_with("optional") || bare.ends_with("optional") || lower.contains("(optional)")
}
