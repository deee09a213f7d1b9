//! A clause before it has its id.

use crate::model::{Condition, Confidence, Requirement, Span, WarningKind};

/// A clause before it has its id.
#[derive(Debug, Clone)]
pub(crate) struct Draft {
    pub(crate) span: Span,
    pub(crate) property: String,
    pub(crate) component: String,
    pub(crate) attribute: String,
    pub(crate) requirement: Requirement,
    pub(crate) condition: Option<Condition>,
    pub(crate) options: Vec<String>,
    pub(crate) read_by: Vec<String>,
    pub(crate) confidence: Confidence,
}

/// What an item yields.
#[derive(Debug, Clone, Default)]
pub(crate) struct Yield {
    pub(crate) clauses: Vec<Draft>,
    pub(crate) warnings: Vec<(WarningKind, Span, String)>,
    /// Stretches whose words are all in a clause.
    pub(crate) covered: Vec<Span>,
    /// Stretches that only lead to what follows.
    pub(crate) lead_ins: Vec<Span>,
    /// Configurations that the item's text names.
    pub(crate) configurations: Vec<String>,
}

impl Yield {
    /// Takes in what another stretch of the item yields.
    pub(crate) fn append(&mut self, mut other: Self) {
        self.clauses.append(&mut other.clauses);
        self.warnings.append(&mut other.warnings);
        self.covered.append(&mut other.covered);
        self.lead_ins.append(&mut other.lead_ins);
        self.configurations.append(&mut other.configurations);
    }
}

/// A name local to an item: its path and a few of the clause's words.
pub(crate) fn local_property(item: &str, words: &str) -> String {
    let slug: Vec<String> = words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .take(5)
        .map(str::to_lowercase)
        .collect();
    let item = if item.is_empty() { "head" } else { item };
    format!("{item}:{}", slug.join("_"))
}
