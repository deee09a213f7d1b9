//! The clauses and warnings that stand beside the words.

use listing::confirm::Entry;
use listing::{Clause, Confidence, Requirement, Status, Warning};
use maud::{Markup, html};
use wording::text::on_one_line;
use wording::{clause, condition, warning};

use crate::{Marked, pages};

/// A clause: what it asks for, of what, when, in which option, and how it was read.
pub(crate) fn clause(marked: &Marked<'_>, index: usize, clause: &Clause) -> Markup {
    let condition = clause
        .condition
        .as_ref()
        .map(|condition| condition::condition(&condition.expr));
    html! {
        li.clause.(firmness(clause)) id={ "c" (index) } data-lit=(index) {
            p.about {
                a.name href={ "#w" (index) } { (on_one_line(&clause.id)) }
                " " (clause::subject(clause))
            }
            p.asks { (clause::requirement(clause)) }
            @if let Some(condition) = condition { p.when { "when " (condition) } }
            @if let Some(options) = options(clause) { p.when { "only with " (options) } }
            p.how { (how(marked, clause)) }
        }
    }
}

/// How firm a clause's reading is, as the page's style names it.
fn firmness(clause: &Clause) -> &'static str {
    match (clause.confidence, &clause.requirement) {
        (Confidence::Prose, _) | (_, Requirement::Prose) => "left",
        (Confidence::WithDoubt, _) => "doubtful",
        (Confidence::ByRule, _) => "firm",
    }
}

/// How it was read and by which rules, who has confirmed it, and where it stands on the pages.
fn how(marked: &Marked<'_>, clause: &Clause) -> String {
    let rules = clause.read_by.join(", ");
    let read = match clause.confidence {
        Confidence::ByRule => Some(format!("read by rule: {rules}")),
        Confidence::WithDoubt => Some(format!("read with a doubt: {rules}")),
        Confidence::Prose => None,
    };
    let place = marked
        .paper
        .and_then(|paper| pages::place(paper, clause.span));
    let parts = [read, decision(marked, clause), place];
    parts.into_iter().flatten().collect::<Vec<_>>().join("; ")
}

/// The options that must be chosen for a clause to count.
fn options(clause: &Clause) -> Option<String> {
    let within = clause.within();
    let entries: Vec<String> = within
        .iter()
        .map(|names| on_one_line(&names.join(" or ")))
        .collect();
    (!entries.is_empty()).then(|| entries.join(" and "))
}

/// Who has confirmed or corrected a clause, and when.
fn decision(marked: &Marked<'_>, clause: &Clause) -> Option<String> {
    let word = match clause.status {
        Status::Draft => return None,
        Status::Confirmed => "✓ confirmed",
        Status::Corrected => "✎ corrected",
    };
    let entry: Option<&Entry> = marked
        .decisions
        .iter()
        .find(|entry| entry.clause == clause.id);
    Some(entry.map_or_else(
        || word.to_owned(),
        |entry| format!("{word} by {} on {}", on_one_line(&entry.by), entry.when),
    ))
}

/// A warning at its place.
pub(crate) fn warning(index: usize, warning: &Warning) -> Markup {
    html! {
        li.warning id={ "v" (index) } {
            p.asks {
                a.name href={ "#u" (index) } { "Look here" }
                ": " (on_one_line(&warning.message))
            }
            @if let Some(advice) = warning::advice(warning.kind) { p.how { (advice) } }
        }
    }
}
