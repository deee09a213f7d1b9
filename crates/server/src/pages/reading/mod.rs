//! A listing's text and its clauses side by side: to read, and to confirm.

mod lost;

use std::sync::Arc;

use axum::Form;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use conformance::asked_for;
use listing::{Clause, Confidence, Reading, Span, Status, WarningKind};
use maud::{Markup, html};
use serde::Deserialize;
use store::Done;
use store::people::Role;
use vocabulary::vocabulary;
use wording::doubt::reasons;

use super::{layout, piece};
use crate::desk::Desk;
use crate::listings::Read;
use crate::person::{By, Person, Reviewer};
use crate::trouble::Trouble;

/// The place of a clause on the page.
pub(super) fn anchor(clause: &str) -> String {
    format!("clause-{}", piece(clause).replace('%', "_"))
}

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Path(file): Path<String>,
) -> Result<Markup, Trouble> {
    shown(&desk, &person, &file, None).await
}

async fn shown(
    desk: &Desk,
    person: &Person,
    file: &str,
    trouble: Option<&Trouble>,
) -> Result<Markup, Trouble> {
    desk.catch_up().await?;
    let read = desk.listings.read(&desk.store, file).await?;
    let read = read.ok_or_else(|| Trouble::Unknown(format!("There is no listing {file}.")))?;
    let reading: &Reading = &read.state;
    let designation = if reading.header.designation.is_empty() {
        file
    } else {
        &reading.header.designation
    };
    let body = html! {
        h1 { (designation) @if !reading.header.edition.is_empty() { ", " (reading.header.edition) } }
        @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } }
        (state(person, &read))
        @if !read.lost.is_empty() { (lost::section(person, &desk.confirmed(&read).await?)) }
        (warnings(reading))
        @if reading.clauses.iter().any(|clause| clause.status == Status::Corrected) {
            p {
                a href={ "/listings/" (piece(file)) "/cases.md" } { "What was corrected, as cases that teach the reader" }
                ". The page quotes the listing, which belongs to its holder: don’t publish it."
            }
        }
        @if person.may(Role::Reviewer) { p.keys.quiet {
            "Keys: " kbd { "j" } " and " kbd { "k" } " go from clause to clause; "
            kbd { "c" } " confirms the one you are at, " kbd { "e" } " corrects it, " kbd { "g" } " judges it."
        } }
        p role="status" id="said" {}
        div.desk {
            section aria-labelledby="source" {
                h2 id="source" { "The listing" }
                pre.source tabindex="0" aria-label="Text of the listing" { (source(&read)) }
            }
            section aria-labelledby="clauses" {
                h2 id="clauses" { "Its clauses" }
                ol.clauses { @for clause in &reading.clauses { (one(person, &read, clause)) } }
            }
        }
    };
    Ok(layout::page(person, designation, "/listings", &body))
}

/// How much of it is accounted for, and how much is confirmed.
fn state(person: &Person, read: &Read) -> Markup {
    let reading: &Reading = &read.state;
    let drafts: Vec<&str> = reading
        .clauses
        .iter()
        .filter(|clause| clause.status == Status::Draft)
        .map(|clause| clause.id.as_str())
        .collect();
    let prose = reading
        .clauses
        .iter()
        .filter(|clause| clause.confidence == Confidence::Prose)
        .count();
    let clauses = reading.clauses.len();
    html! {
        ul.counts {
            li { strong { (reading.accounted.bytes) } " of " (reading.accounted.of) " bytes accounted for" }
            li { strong id="confirmed" { (clauses - drafts.len()) } " of " (clauses) " clauses confirmed" }
            li { strong { (prose) } " left as words for a person" }
        }
        @if person.may(Role::Reviewer) && !drafts.is_empty() {
            form method="post" action={ "/listings/" (piece(&read.file)) "/confirm" } {
                (person.field())
                (document(read))
                input type="hidden" name="clauses" value=(drafts.join("\n"));
                button { "Confirm the " (drafts.len()) " that nobody has confirmed yet" }
            }
        }
    }
}

fn warnings(reading: &Reading) -> Markup {
    html! {
        @if !reading.warnings.is_empty() {
            details {
                summary { "To look at: " (reading.warnings.len()) }
                ul { @for warning in &reading.warnings { li { q { (warning.words) } " " (warning.message) } } }
            }
        }
    }
}

/// The text, cut where clauses begin and end, each piece with the clauses it belongs to.
fn source(read: &Read) -> Markup {
    let reading: &Reading = &read.state;
    let unread: Vec<Span> = reading
        .warnings
        .iter()
        .filter(|warning| warning.kind == WarningKind::UnreadNumber)
        .map(|warning| warning.span)
        .collect();
    let spans = reading
        .clauses
        .iter()
        .map(|clause| clause.span)
        .chain(unread.iter().copied());
    let mut cuts: Vec<usize> = spans.flat_map(|span| [span.start(), span.end()]).collect();
    cuts.extend([0, read.text.len()]);
    cuts.sort_unstable();
    cuts.dedup();
    let ends = cuts.iter().skip(1);
    html! {
        @for (start, end) in cuts.iter().zip(ends) {
            @let span = Span::new(*start, *end);
            @let of: Vec<&Clause> = reading.clauses.iter().filter(|clause| clause.span.covers(span)).collect();
            @let is_unread = unread.iter().any(|unread| unread.covers(span));
            @if of.is_empty() && !is_unread { (span.of(&read.text)) } @else {
                @let anchors: Vec<String> = of.iter().map(|clause| anchor(&clause.id)).collect();
                span.words
                    .unread[is_unread]
                    .draft[of.iter().any(|clause| clause.status == Status::Draft)]
                    data-clauses=(anchors.join(" "))
                { (span.of(&read.text)) }
            }
        }
    }
}

fn one(person: &Person, read: &Read, clause: &Clause) -> Markup {
    let file = &read.file;
    let known = vocabulary().property(&clause.property);
    let title = known.map_or_else(
        || format!("{} {}", clause.component, clause.attribute),
        |known| known.title.clone(),
    );
    let title = if title.trim().is_empty() {
        "Words".to_owned()
    } else {
        title
    };
    let is_draft = clause.status == Status::Draft;
    html! {
        li.clause.draft[is_draft].prose[clause.confidence == Confidence::Prose] id=(anchor(&clause.id)) tabindex="-1" {
            h3 { (clause.id) " " (title) }
            p { (asked_for(clause)) }
            @if let Some(condition) = &clause.condition { p.quiet { "When: " (condition.words) } }
            @if let Some(option) = &clause.option { p.quiet { "Option: " (option) } }
            blockquote { (clause.words) }
            (terms(clause))
            @match clause.confidence {
                Confidence::ByRule => p.quiet { "Read by " (clause.read_by.join(", ")) },
                Confidence::WithDoubt => @for reason in reasons(&read.state, clause) { p { strong.open { "Doubtful:" } " " (reason) "." } },
                Confidence::Prose => p.quiet { "Left as words for a person" },
            }
            @if is_draft {
                @if let Some(entry) = read.lost.iter().find(|entry| entry.clause == clause.id) { (lost::beside(entry)) }
                @if person.may(Role::Reviewer) {
                    form.confirm method="post" action={ "/listings/" (piece(file)) "/confirm" } {
                        (person.field())
                        (document(read))
                        input type="hidden" name="clauses" value=(clause.id);
                        button { "Confirm" span.hidden { " " (clause.id) } }
                    }
                }
            } @else {
                p.met { span aria-hidden="true" { "✓ " } @if clause.status == Status::Corrected { "corrected" } @else { "confirmed" } }
            }
            (elsewhere(person, file, clause))
        }
    }
}

/// Where a clause is corrected, judged, or seen on its page.
fn elsewhere(person: &Person, file: &str, clause: &Clause) -> Markup {
    let path = format!("/listings/{}/clauses/{}", piece(file), piece(&clause.id));
    html! {
        p.ways {
            @if person.may(Role::Reviewer) {
                a data-key="e" href={ (path) "/correct" } { "Correct" span.hidden { " " (clause.id) } } " "
                a data-key="g" href={ (path) "/judge" } { "Judge" span.hidden { " " (clause.id) } } " "
            }
            @if is_pdf(file) { a href={ (path) "/page" } { "On its page" span.hidden { ", " (clause.id) } } }
        }
    }
}

fn is_pdf(file: &str) -> bool {
    let ending = file.rsplit_once('.').map(|(_, ending)| ending);
    ending.is_some_and(|ending| ending.eq_ignore_ascii_case("pdf"))
}

/// What the words of the trade in a clause mean.
fn terms(clause: &Clause) -> Markup {
    let terms = vocabulary().terms_in(&clause.words);
    html! {
        @if !terms.is_empty() {
            details.terms {
                summary { "Words of the trade" span.hidden { " in " (clause.id) } }
                dl { @for term in &terms { dt { (term.title()) } dd { (term.definition()) } } }
            }
        }
    }
}

/// The document that a form is about, so that what is said of it isn't taken as said of another.
pub(super) fn document(read: &Read) -> Markup {
    html! { input type="hidden" name="document" value=(read.unconfirmed.source.sha256); }
}

#[derive(Debug, Deserialize)]
pub(super) struct Confirmed {
    document: String,
    clauses: String,
}

pub(super) async fn confirm(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(file): Path<String>,
    Form(confirmed): Form<Confirmed>,
) -> Result<Response, Trouble> {
    let clauses: Vec<String> = lines(&confirmed.clauses).map(str::to_owned).collect();
    let done = desk
        .confirm(&person, &file, &confirmed.document, &clauses)
        .await;
    let place = match clauses.as_slice() {
        [one] => format!("#{}", anchor(one)),
        _ => String::new(),
    };
    answered(&desk, &person, &file, done, &place).await
}

/// Confirmations to let go: a line each, the version that was seen and the clause's number.
#[derive(Debug, Deserialize)]
pub(super) struct LetGo {
    document: String,
    gone: String,
}

pub(super) async fn let_go(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(file): Path<String>,
    Form(asked): Form<LetGo>,
) -> Result<Response, Trouble> {
    let gone = lines(&asked.gone).filter_map(|line| {
        let (version, id) = line.split_once(' ')?;
        Some((id.to_owned(), version.parse().ok()?))
    });
    let gone: Vec<(String, i64)> = gone.collect();
    let done = desk.let_go(&person, &file, &asked.document, &gone).await;
    answered(&desk, &person, &file, done, "").await
}

fn lines(text: &str) -> impl Iterator<Item = &str> {
    text.lines().map(str::trim).filter(|line| !line.is_empty())
}

/// Where one goes on, or the page with what was wrong.
async fn answered(
    desk: &Desk,
    person: &Person,
    file: &str,
    done: Result<Done, Trouble>,
    place: &str,
) -> Result<Response, Trouble> {
    let trouble = match done {
        Ok(_) => {
            let place = format!("/listings/{}{place}", piece(file));
            return Ok(Redirect::to(&place).into_response());
        }
        Err(trouble) => trouble.told()?,
    };
    let page = shown(desk, person, file, Some(&trouble)).await?;
    Ok((trouble.status(), page).into_response())
}
