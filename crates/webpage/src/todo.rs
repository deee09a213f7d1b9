//! What there is to do: what to look at, each kind with the way to the first, and how to confirm.

use listing::{Clause, Status, WarningKind};
use maud::{Markup, html};
use wording::text::{counted, on_one_line, shortened};
use wording::warning;

use crate::{Marked, clauses, pages};

/// The most unread numbers that are named above the words; from there each leads to the next.
const MOST_NUMBERS: usize = 12;

/// What a person should look at: how many of each kind, then each warning.
pub(crate) fn to_look_at(marked: &Marked<'_>) -> Markup {
    let others = || {
        let warnings = marked.reading.warnings.iter().enumerate();
        warnings.filter(|(_, warning)| {
            warning.kind != WarningKind::UnreadNumber || warning.span.is_empty()
        })
    };
    let notes = marked.paper.map_or(&[][..], |paper| &paper.notes);
    html! {
        section aria-labelledby="look" {
            h2 id="look" { "To look at" }
            ul.sums {
                li { (unread(marked)) }
                li { (of_clauses(marked, "doubtful", "clause read with a doubt", "clauses read with a doubt")) }
                li { (of_clauses(marked, "left", "clause left for a person to answer", "clauses left for a person to answer")) }
                li { (sum(others().count() + notes.len(), "other warning", "other warnings", others()
                    .find(|(_, warning)| !warning.span.is_empty()).map(|(index, _)| format!("#v{index}")))) }
            }
            ul.look {
                @for (index, warning) in others() {
                    li {
                        @if warning.span.is_empty() { (warning::message(warning)) }
                        @else { a href={ "#v" (index) } { (warning::message(warning)) } }
                    }
                }
                @for note in notes { li { (pages::in_words(note.place)) ": " (on_one_line(&note.words)) } }
            }
        }
    }
}

/// How many numbers nobody read, and the first of them, each with the way to its place.
fn unread(marked: &Marked<'_>) -> Markup {
    let count = clauses::unread(marked).count();
    let Some(first) = clauses::unread(marked).next() else {
        return html! { "Every number with a unit is in a clause, a condition, a name or the head." };
    };
    html! {
        a.loud href={ "#v" (first) } { (counted(count, "number nobody read", "numbers nobody read")) }
        ":"
        @for index in clauses::unread(marked).take(MOST_NUMBERS) {
            @if let Some(warning) = marked.reading.warnings.get(index) {
                " " a.missing href={ "#v" (index) } { (shortened(&on_one_line(&warning.words), 40)) }
            }
        }
        @if count > MOST_NUMBERS { " …" }
    }
}

/// How many clauses of a firmness nobody has looked at yet, with the way to the first.
fn of_clauses(marked: &Marked<'_>, firmness: &str, one: &str, many: &str) -> Markup {
    let is_open =
        |clause: &Clause| clauses::firmness(clause) == firmness && clause.status == Status::Draft;
    let of_them = || {
        let all = marked.reading.clauses.iter().enumerate();
        all.filter(|(_, clause)| is_open(clause))
    };
    let first = of_them().next().map(|(index, _)| format!("#c{index}"));
    sum(of_them().count(), one, many, first)
}

fn sum(count: usize, one: &str, many: &str, first: Option<String>) -> Markup {
    let words = if count == 0 {
        format!("no {one}")
    } else {
        counted(count, one, many)
    };
    html! { @if let Some(first) = first { a href=(first) { (words) } } @else { (words) } }
}

/// What to do next with the reading, at the command line and at the desk.
pub(crate) fn next(marked: &Marked<'_>) -> Markup {
    let file = quoted(marked.file);
    let draft = || {
        let all = marked.reading.clauses.iter();
        all.filter(|clause| clause.status == Status::Draft)
    };
    let open = draft().count();
    let id = |clause: Option<&Clause>| {
        clause.map_or_else(|| "ID".to_owned(), |clause| quoted(&clause.id))
    };
    let (first, bound) = (
        id(draft().next()),
        id(draft().find(|clause| clause.bound().is_some())),
    );
    let confirm = |rest: &[&str]| {
        let start = ["everyclause", "confirm", &file, "--by \"YOUR NAME\""];
        html! { code { @for part in start.iter().chain(rest) { span.part { (part) } " " } } }
    };
    html! {
        section aria-labelledby="next" {
            h2 id="next" { "What to do next" }
            @if open == 0 {
                p { "Nothing is left to confirm. A clause is still corrected by " (confirm(&["--correct ID"])) }
            } @else {
                p { "Read each clause beside its words; " (counted(open, "clause is", "clauses are"))
                    " still to be confirmed. Then, at the command line:" }
                dl.commands {
                    div { dt { "read rightly" } dd { (confirm(&["--clause", &first])) } }
                    div { dt { "read wrongly" } dd { (confirm(&["--correct", &bound, "--relation at-least", "--value \"4 in.\""])) } }
                    div { dt { "all of them" } dd { (confirm(&["--all"])) } }
                }
                p { "The desk, opened by " code { "everyclause serve" } ", confirms and corrects too." }
            }
        }
    }
}

/// A word as a shell takes it for one.
fn quoted(word: &str) -> String {
    let word = on_one_line(word);
    let is_plain = |c: char| c.is_alphanumeric() || "./_-:+".contains(c);
    if !word.is_empty() && word.chars().all(is_plain) {
        word
    } else {
        format!("'{}'", word.replace('\'', "'\\''"))
    }
}
