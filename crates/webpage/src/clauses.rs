//! The clauses and warnings that stand beside the words.

use listing::{Clause, Confidence, Requirement, Status, Warning, WarningKind};
use maud::{Markup, html};
use wording::cell::Cell;
use wording::text::{on_one_line, shortened};
use wording::{clause, condition, doubt, rule, warning};

use crate::known::Known;
use crate::{Marked, pages};

/// The most of a clause's words that its card shows before and after the number, in characters.
const AROUND_A_NUMBER: usize = 70;

/// The most of the words that were left for a person that their card shows, in characters.
const MOST_LEFT: usize = 600;

/// A clause: its words, what it asks for, of what, when, with which choice, and what was decided of it.
pub(crate) fn clause(known: &Known<'_>, index: usize, clause: &Clause) -> Markup {
    let marked = known.marked;
    let when = clause
        .condition
        .as_ref()
        .map(|condition| condition::applies(&condition.expr));
    html! {
        li.clause.(firmness(clause)).(standing(clause)) id={ "c" (index) } data-lit=(index) tabindex="-1" {
            p.about {
                a.name href={ "#w" (index) } aria-label=[spoken(clause)] { (on_one_line(&clause.id)) }
                " " (clause::subject(clause)) " " (machine_name(clause))
            }
            p.asks { (clause::requirement(clause)) }
            @if let Some(was) = was(known, clause) { p.was { "was read as: " s { (was) } } }
            p.said { (said(marked.text, clause)) }
            @if let Some(when) = when { p.when { (when) } }
            @if let Some(choices) = known.choices.in_words(clause) { p.only { (choices) } }
            @for reason in doubt::reasons(marked.reading, clause) { p.doubt { "Doubtful: " (reason) "." } }
            (how(known, clause))
        }
    }
}

/// What a clause is called where its bar can't be seen; nothing where its name says enough.
fn spoken(clause: &Clause) -> Option<String> {
    let how = match (firmness(clause), clause.status) {
        ("doubtful", _) => "read with a doubt",
        ("left", Status::Draft) => "for a person to answer",
        (_, Status::Corrected) => "corrected",
        _ => return None,
    };
    Some(format!("{}, {how}", on_one_line(&clause.id)))
}

/// What people have decided of a clause, as the page's style names it.
const fn standing(clause: &Clause) -> &'static str {
    match clause.status {
        Status::Draft => "draft",
        Status::Confirmed => "confirmed",
        Status::Corrected => "corrected",
    }
}

/// What a corrected clause was read as, where that is told otherwise now.
fn was(known: &Known<'_>, clause: &Clause) -> Option<String> {
    if clause.status != Status::Corrected {
        return None;
    }
    let read = known.as_read(clause)?;
    let told = |clause: &Clause| {
        let when = clause.condition.as_ref();
        let when = when.map_or_else(
            || "always".to_owned(),
            |condition| condition::applies(&condition.expr),
        );
        [
            clause::subject(clause),
            clause::requirement(clause),
            when,
            clause.option.clone().map_or_else(
                || "with any option".to_owned(),
                |option| format!("only with {option}"),
            ),
        ]
    };
    let (was, is) = (told(read), told(clause));
    let changed = was.into_iter().zip(is).filter(|(was, is)| was != is);
    let changed: Vec<String> = changed.map(|(was, _)| on_one_line(&was)).collect();
    (!changed.is_empty()).then(|| changed.join(", "))
}

/// The name that `--property` takes, or that the vocabulary has none.
fn machine_name(clause: &Clause) -> Markup {
    html! {
        @if clause.requirement == Requirement::Prose {}
        @else if clause.is_in_vocabulary() { small { code { (on_one_line(&clause.property)) } } }
        @else { small { "in the listing's own words" } }
    }
}

/// The clause's words in short, with the number it was read from; of a table's cell its row and column.
fn said(text: &str, clause: &Clause) -> Markup {
    if let Some(cell) = Cell::of(text, clause).filter(|cell| !cell.place().is_empty()) {
        return html! { "“" (cell.place()) ": " b { (cell.number) } "”" };
    }
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

/// Who has confirmed it, whether it was read with a doubt, on which page it stands; and, where that is asked for, by which rules it
/// was read.
fn how(known: &Known<'_>, clause: &Clause) -> Markup {
    let decision = decision(known, clause);
    let past = clause.status != Status::Draft && known.was_doubtful(clause);
    let place = known
        .marked
        .paper
        .and_then(|paper| pages::place(paper, clause.span));
    let is_read = clause.confidence != Confidence::Prose && !clause.read_by.is_empty();
    html! {
        @if let Some(decision) = decision { p.decided { (decision) } }
        @if past { p.doubt { "The reader was in doubt of it." } }
        @if let Some(place) = place { p.how title=(pages::in_words(place)) { "page " (place.page) } }
        @if is_read { p.how.rule { "read by " (rule::named(&clause.read_by)) } }
    }
}

/// Who has confirmed or corrected a clause, and when.
fn decision(known: &Known<'_>, clause: &Clause) -> Option<String> {
    let word = match (clause.status, clause.confidence) {
        (Status::Draft, _) => return None,
        (Status::Confirmed, Confidence::Prose) => "✓ confirmed as one to answer at the joint",
        (Status::Confirmed, _) => "✓ confirmed",
        (Status::Corrected, _) => "✎ corrected",
    };
    let entry = known.decision(clause);
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
