//! The clauses and warnings that stand beside the words.

use listing::confirm::Entry;
use listing::{Clause, Confidence, Requirement, Status, Warning, WarningKind};
use maud::{Markup, html};
use wording::text::{on_one_line, shortened};
use wording::{clause, condition, doubt, rule, warning};

use crate::{Marked, pages};

/// The most of a clause's words that its card shows before and after the number, in characters.
const AROUND_A_NUMBER: usize = 70;

/// The most of the words that were left for a person that their card shows, in characters.
const MOST_LEFT: usize = 600;

/// A clause: its words, what it asks for, of what, when, in which option, and how it was read.
pub(crate) fn clause(marked: &Marked<'_>, index: usize, clause: &Clause) -> Markup {
    let condition = clause
        .condition
        .as_ref()
        .map(|condition| condition::condition(&condition.expr));
    html! {
        li.clause.(firmness(clause)) id={ "c" (index) } data-lit=(index) tabindex="-1" {
            p.about {
                a.name href={ "#w" (index) } { (on_one_line(&clause.id)) }
                " " (clause::subject(clause)) " " (machine_name(clause))
            }
            p.asks { (clause::requirement(clause)) }
            p.said { (said(clause)) }
            @if let Some(condition) = condition { p.when { "when " (condition) } }
            @if let Some(options) = options(clause) { p.only { "only with " (options) } }
            @for reason in doubt::reasons(marked.reading, clause) { p.doubt { "Doubtful: " (reason) "." } }
            p.how { (how(marked, clause)) }
        }
    }
}

/// The name that `--property` takes, or that the vocabulary has none.
fn machine_name(clause: &Clause) -> Markup {
    html! {
        @if clause.requirement == Requirement::Prose {}
        @else if clause.is_in_vocabulary() { small { code { (on_one_line(&clause.property)) } } }
        @else { small { "in the listing's own words" } }
    }
}

/// The clause's words in short, with the number it was read from.
fn said(clause: &Clause) -> Markup {
    let parts = clause.bound().and_then(|bound| {
        let from = bound.at.start().checked_sub(clause.span.start())?;
        let to = bound.at.end().checked_sub(clause.span.start())?;
        let (before, rest) = clause.words.split_at_checked(from)?;
        let (number, after) = rest.split_at_checked(to.checked_sub(from)?)?;
        (!number.is_empty()).then_some((before, number, after))
    });
    html! {
        "“"
        @if let Some((before, number, after)) = parts {
            (last_of(before)) b { (on_one_line(number)) } (first_of(after))
        } @else { (shortened(&on_one_line(&clause.words), MOST_LEFT)) }
        "”"
    }
}

/// The words on one line, with a space at either end where one stood.
fn flowing(words: &str) -> String {
    let space = |is: bool| if is { " " } else { "" };
    let line = on_one_line(words);
    let line = line.trim();
    if line.is_empty() {
        return space(!words.is_empty()).to_owned();
    }
    format!(
        "{}{line}{}",
        space(words.starts_with(char::is_whitespace)),
        space(words.ends_with(char::is_whitespace))
    )
}

/// The last of the words before a number, from a space on.
fn last_of(words: &str) -> String {
    let words = flowing(words);
    let count = words.chars().count();
    if count <= AROUND_A_NUMBER {
        return words;
    }
    let kept: String = words.chars().skip(count - AROUND_A_NUMBER).collect();
    let kept = kept.split_once(' ').map_or(kept.as_str(), |(_, kept)| kept);
    format!("… {kept}")
}

/// The first of the words after a number.
fn first_of(words: &str) -> String {
    shortened(&flowing(words), AROUND_A_NUMBER)
}

/// How firm a clause's reading is, as the page's style names it.
pub(crate) fn firmness(clause: &Clause) -> &'static str {
    match (clause.confidence, &clause.requirement) {
        (Confidence::Prose, _) | (_, Requirement::Prose) => "left",
        (Confidence::WithDoubt, _) => "doubtful",
        (Confidence::ByRule, _) => "firm",
    }
}

/// By which rules it was read, who has confirmed it, and where it stands on the pages.
fn how(marked: &Marked<'_>, clause: &Clause) -> String {
    let read = match clause.confidence {
        Confidence::Prose => None,
        _ if clause.read_by.is_empty() => None,
        Confidence::ByRule | Confidence::WithDoubt => {
            Some(format!("read by {}", rule::named(&clause.read_by)))
        }
    };
    let place = marked
        .paper
        .and_then(|paper| pages::place(paper, clause.span));
    let parts = [decision(marked, clause), read, place];
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

/// A warning at its place, with the way to the next unread number where it is of one.
pub(crate) fn warning(marked: &Marked<'_>, index: usize, warning: &Warning) -> Markup {
    let is_unread = warning.kind == WarningKind::UnreadNumber;
    let next = unread(marked).find(|next| is_unread && *next > index);
    html! {
        li.warning.(if is_unread { "missed" } else { "other" }) id={ "v" (index) } tabindex="-1" {
            p.asks {
                a.name href={ "#u" (index) } { @if is_unread { "? Unread number" } @else { "! Look here" } }
                ": " (warning::message(warning))
            }
            @if let Some(advice) = warning::advice(warning.kind) { p.how { (advice) } }
            @if let Some(next) = next { p { a.next href={ "#v" (next) } { "to the next unread number" } } }
        }
    }
}

/// The warnings of numbers that nobody read, by their place in the reading.
pub(crate) fn unread(marked: &Marked<'_>) -> impl Iterator<Item = usize> {
    let warnings = marked.reading.warnings.iter().enumerate();
    warnings
        .filter(|(_, warning)| {
            warning.kind == WarningKind::UnreadNumber && !warning.span.is_empty()
        })
        .map(|(index, _)| index)
}
