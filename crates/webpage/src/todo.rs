//! What there is to do: what to look at, each kind with the way to the first, and how to confirm.

use listing::{Clause, Status, WarningKind};
use maud::{Markup, html};
use wording::text::{counted, on_one_line, shortened};
use wording::{clause, warning};

use crate::{Marked, clauses, pages};

/// The most unread numbers that are named above the words; from there each leads to the next.
const MOST_NUMBERS: usize = 12;

/// The most clauses of a kind that are named above the words without having to be asked for.
const MOST_AT_ONCE: usize = 12;

/// The most clauses of a kind that are named above the words at all; from there a key leads to the next.
const MOST_NAMED: usize = 200;

/// The most of a clause's words that is shown where it is named, in characters.
const MOST_OF_WORDS: usize = 70;

/// What a person should look at: how many of each kind, each of them with the way there, and what there is nothing of.
pub(crate) fn to_look_at(marked: &Marked<'_>) -> Markup {
    let others = || {
        let warnings = marked.reading.warnings.iter().enumerate();
        warnings.filter(|(_, warning)| {
            warning.kind != WarningKind::UnreadNumber || warning.span.is_empty()
        })
    };
    let notes = marked.paper.map_or(&[][..], |paper| &paper.notes);
    let pictures = marked
        .paper
        .and_then(|paper| wording::head::pictures(&paper.pictures()));
    let is_whole = clauses::unread(marked).next().is_none();
    let warned = others().count() + notes.len();
    html! {
        section aria-labelledby="look" {
            h2 id="look" { "To look at" }
            @if let Some(words) = &pictures { p.loud { (words) } }
            ul.sums {
                @if !is_whole { li { (unread(marked)) } }
                li { (of_clauses(marked, "doubtful", "clause read with a doubt", "clauses read with a doubt")) }
                li { (of_clauses(marked, "left", "clause left for a person to answer", "clauses left for a person to answer")) }
                li { (sum(warned, "other warning", "other warnings", others()
                    .find(|(_, warning)| !warning.span.is_empty()).map(|(index, _)| format!("#v{index}")), None)) }
            }
            ul.look {
                @for (index, warning) in others() {
                    li {
                        @if warning.span.is_empty() { (warning::message(warning)) }
                        @else { a href={ "#v" (index) } { (warning::message(warning)) } }
                    }
                }
                @for note in notes { li { span title=(pages::in_words(note.place)) { "page " (note.place.page) } ": " (on_one_line(&note.words)) } }
            }
            @if is_whole && pictures.is_none() && !marked.reading.clauses.is_empty() {
                p.quiet { "Every number with a unit is in a clause, a condition, a name or the head." }
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

/// How many clauses of a firmness nobody has looked at yet, each of them with the way there; and how many were confirmed as such.
fn of_clauses(marked: &Marked<'_>, firmness: &str, one: &str, many: &str) -> Markup {
    let of_them = || {
        let all = marked.reading.clauses.iter().enumerate();
        all.filter(|(_, clause)| clauses::firmness(clause) == firmness)
    };
    let open: Vec<(usize, &Clause)> = of_them()
        .filter(|(_, clause)| clause.status == Status::Draft)
        .collect();
    let settled = of_them().count() - open.len();
    let first = open.first().map(|(index, _)| format!("#c{index}"));
    let beside = html! {
        @if settled > 0 {
            @if !open.is_empty() { "; " }
            (settled) @if !open.is_empty() { " more" } " to answer at the joint, confirmed as such"
        }
    };
    html! {
        @if settled == 0 || !open.is_empty() { (sum(open.len(), one, many, first, Some(firmness))) }
        (beside)
        @if !open.is_empty() {
            details.which.fold open[firmness == "doubtful" && open.len() <= MOST_AT_ONCE] {
                summary { "each of them" }
                ul.look {
                    @for (index, clause) in open.iter().take(MOST_NAMED) {
                        li { a href={ "#c" (index) } { (on_one_line(&clause.id)) } ": " (named(marked, clause)) }
                    }
                    @if open.len() > MOST_NAMED { li { "and " (open.len() - MOST_NAMED) " more" } }
                }
            }
        }
    }
}

/// A clause in short: what is doubtful about it, else its first words.
fn named(marked: &Marked<'_>, clause: &Clause) -> String {
    match wording::doubt::in_short(marked.reading, clause) {
        Some(doubt) => format!("{}: {doubt}", clause::subject(clause)),
        None => format!(
            "“{}”",
            shortened(&on_one_line(&clause.words), MOST_OF_WORDS)
        ),
    }
}

/// So many of a kind, with the way to the first; `shown` is the kind that the page then shows alone.
fn sum(count: usize, one: &str, many: &str, first: Option<String>, shown: Option<&str>) -> Markup {
    let words = if count == 0 {
        format!("no {one}")
    } else {
        counted(count, one, many)
    };
    html! { @if let Some(first) = first { a href=(first) data-show=[shown] { (words) } } @else { (words) } }
}

/// What to do next with the reading, at the command line and at the desk.
pub(crate) fn next(marked: &Marked<'_>) -> Markup {
    let file = quoted(marked.file);
    let draft = || {
        let all = marked.reading.clauses.iter();
        all.filter(|clause| clause.status == Status::Draft)
    };
    let open = draft().count();
    let is_doubtful = draft().any(|clause| clauses::firmness(clause) == "doubtful");
    let first = draft().next();
    let first = first.map_or_else(|| "CLAUSE".to_owned(), |clause| quoted(&clause.id));
    let confirm = |rest: &[&str]| {
        let start = ["everyclause", "confirm", &file, "--by \"YOUR NAME\""];
        html! { code { @for part in start.iter().chain(rest) { span.part { (part) } " " } } }
    };
    html! {
        details.fold open {
            summary { h2 { "What to do next" } }
            @if open == 0 {
                p { "Nothing is left to confirm. A clause is still corrected by " (confirm(&["--correct CLAUSE"])) }
            } @else {
                p { "Read each clause beside its words; " (counted(open, "clause is", "clauses are"))
                    " still to be confirmed. Then, at the command line:" }
                dl.commands {
                    div { dt { "read rightly" } dd { (confirm(&["--clause", &first])) } }
                    div { dt { "read wrongly" } dd { (confirm(&["--correct CLAUSE", "--relation RELATION", "--value \"VALUE\""])) } }
                    @if !is_doubtful { div { dt { "all the rest" } dd { (confirm(&["--all"])) } } }
                }
                p { "What it is about, when it applies and with which option are put right by "
                    code { "--property" } ", " code { "--applies" } " and " code { "--option" } ": "
                    code { span.part { "everyclause confirm --help" } } "." }
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
