//! Correcting a clause: what is right, shown in plain words before it is recorded.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Path, Query, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use listing::confirm::Wrong;
use listing::{Clause, Reading};
use maud::{Markup, html};
use serde::Deserialize;

use super::form::Filled;
use super::in_words;
use crate::correcting::{AtHand, Righted};
use crate::desk::Desk;
use crate::listings::Read;
use crate::pages::{layout, piece, reading};
use crate::person::{By, Person, Reviewer};
use crate::trouble::Trouble;

/// What a page is asked for.
#[derive(Debug, Deserialize)]
pub(crate) struct Asked {
    /// Whether something besides is to be found in the words.
    #[serde(default)]
    further: bool,
}

/// What a person sends.
#[derive(Debug, Deserialize)]
pub(crate) struct Sent {
    #[serde(flatten)]
    filled: Filled,
    /// `look`, `again`, `record`.
    step: String,
    seen: i64,
    /// The document that the person saw, by its hash.
    document: String,
    #[serde(default)]
    further: bool,
}

/// What stands on the page.
struct Shown<'a> {
    read: &'a Read,
    at_hand: &'a AtHand<'a>,
    filled: &'a Filled,
    further: bool,
    trouble: Option<&'a Trouble>,
    seen: i64,
}

pub(crate) async fn page(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path((file, id)): Path<(String, String)>,
    Query(asked): Query<Asked>,
) -> Result<Markup, Trouble> {
    let read = super::read(&desk, &file).await?;
    let at_hand = desk.at_hand(&read, &id).await?;
    let now = at_hand.now(&read);
    let filled = match now.first() {
        Some(clause) if !asked.further => Filled::of(clause),
        _ => Filled::further(),
    };
    let shown = Shown {
        read: &read,
        at_hand: &at_hand,
        filled: &filled,
        further: asked.further,
        trouble: None,
        seen: at_hand.version,
    };
    Ok(asking(&person, &shown, &now))
}

pub(crate) async fn send(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path((file, id)): Path<(String, String)>,
    Form(sent): Form<Sent>,
) -> Result<Response, Trouble> {
    let read = desk.read_as_seen(&file, &sent.document).await?;
    let at_hand = desk.at_hand(&read, &id).await?;
    let now = at_hand.now(&read);
    let mut shown = Shown {
        read: &read,
        at_hand: &at_hand,
        filled: &sent.filled,
        further: sent.further,
        trouble: None,
        seen: sent.seen,
    };
    if sent.step == "again" {
        return Ok(asking(&person, &shown, &now).into_response());
    }
    let righted = match righted(&sent, &at_hand, &read.state) {
        Ok(righted) => righted,
        Err(wrong) => {
            let trouble = Trouble::Refused {
                message: wrong.problem,
                help: wrong.help,
            };
            shown.trouble = Some(&trouble);
            let page = asking(&person, &shown, &now);
            return Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response());
        }
    };
    if sent.step != "record" {
        let after = at_hand.after(&read, &righted, &person.name);
        return Ok(looking(&person, &shown, &now, &after).into_response());
    }
    match desk
        .correct(&person, &read, &at_hand, &righted, sent.seen)
        .await
    {
        Ok(_) => Ok(back(&file, &at_hand.read.id).into_response()),
        Err(trouble @ (Trouble::Refused { .. } | Trouble::Conflicts(_))) => {
            shown.trouble = Some(&trouble);
            shown.seen = at_hand.version;
            Ok((trouble.status(), asking(&person, &shown, &now)).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

#[derive(Debug, Deserialize)]
pub(crate) struct Seen {
    seen: i64,
    document: String,
}

pub(crate) async fn take_back(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path((file, id)): Path<(String, String)>,
    Form(Seen { seen, document }): Form<Seen>,
) -> Result<Redirect, Trouble> {
    let read = desk.read_as_seen(&file, &document).await?;
    let at_hand = desk.at_hand(&read, &id).await?;
    desk.correct(&person, &read, &at_hand, &Righted::TakenBack, seen)
        .await?;
    Ok(back(&file, &at_hand.read.id))
}

/// What has been corrected of a listing, as cases that teach the reader.
pub(crate) async fn cases(
    State(desk): State<Arc<Desk>>,
    _person: Person,
    Path(file): Path<String>,
) -> Result<Response, Trouble> {
    let read = super::read(&desk, &file).await?;
    let cases = crate::listings::working(move || {
        listing::cases::of_corrections(&read.text, &read.unconfirmed, &read.state)
    })
    .await?;
    if cases.held == 0 {
        return Err(Trouble::Unknown(
            "Nothing has been corrected yet that a case could be made of.".to_owned(),
        ));
    }
    let headers = [
        (header::CONTENT_TYPE, "text/markdown; charset=utf-8"),
        (
            header::CONTENT_DISPOSITION,
            "attachment; filename=\"corrected.md\"",
        ),
    ];
    Ok((headers, cases.page).into_response())
}

fn righted(sent: &Sent, at_hand: &AtHand<'_>, reading: &Reading) -> Result<Righted, Wrong> {
    let said = sent.filled.said(at_hand.read, sent.further);
    if sent.further {
        let blank = Clause {
            requirement: listing::Requirement::Prose,
            ..at_hand.read.clone()
        };
        return Ok(Righted::Further(said.correction(&blank, reading)?));
    }
    if said == listing::confirm::Said::default() {
        return Err(Wrong {
            problem: "nothing is said otherwise than it was read".to_owned(),
            help: "change what was read wrongly; or go back and confirm the clause".to_owned(),
        });
    }
    Ok(Righted::Corrected(said.correction(at_hand.read, reading)?))
}

fn back(file: &str, id: &str) -> Redirect {
    Redirect::to(&path_in_reading(file, id))
}

fn path_in_reading(file: &str, id: &str) -> String {
    format!("/listings/{}#{}", piece(file), reading::anchor(id))
}

fn path(shown: &Shown<'_>) -> String {
    let id = &shown.at_hand.read.id;
    format!(
        "/listings/{}/clauses/{}/correct",
        piece(&shown.read.file),
        piece(id)
    )
}

fn asking(person: &Person, shown: &Shown<'_>, now: &[Clause]) -> Markup {
    let clause = shown.at_hand.read;
    let title = if shown.further {
        format!("Something more in {}", clause.id)
    } else {
        format!("Correct {}", clause.id)
    };
    let body = html! {
        (head(shown, &title))
        @if let Some(trouble) = shown.trouble { div.trouble role="alert" { (trouble.shown()) } }
        div.columns {
            section aria-labelledby="stands" {
                h2 id="stands" { "As it stands" }
                @for one in now { (in_words(one)) }
                @if shown.at_hand.entry.is_some() {
                    form method="post" action={ (path(shown).trim_end_matches("correct")) "take-back" } {
                        (person.field())
                        input type="hidden" name="seen" value=(shown.at_hand.version);
                        (reading::document(shown.read))
                        button.plain { "Take back what was confirmed or corrected" }
                    }
                }
            }
            section aria-labelledby="right" {
                h2 id="right" { @if shown.further { "What the words ask for besides" } @else { "What is right" } }
                form.enter method="post" action=(path(shown)) {
                    (person.field())
                    input type="hidden" name="seen" value=(shown.seen);
                    (reading::document(shown.read))
                    input type="hidden" name="further" value=(shown.further);
                    (shown.filled.fields(clause, &shown.read.state, shown.further))
                    button name="step" value="look" { "See it in plain words" }
                }
                @if !shown.further {
                    p {
                        a href={ (path(shown)) "?further=true" } { "The words ask for something more" }
                        ", that the reader has overlooked"
                    }
                }
            }
        }
    };
    layout::page(person, &title, "/listings", &body)
}

fn looking(person: &Person, shown: &Shown<'_>, now: &[Clause], after: &[Clause]) -> Markup {
    let title = format!("Is this right of {}?", shown.at_hand.read.id);
    let body = html! {
        (head(shown, &title))
        div.columns {
            section aria-labelledby="was" { h2 id="was" { "As it stands" } @for one in now { (in_words(one)) } }
            section aria-labelledby="will" { h2 id="will" { "As it would stand" } @for one in after { (in_words(one)) } }
        }
        p { "Verdicts at every joint that is built to this listing follow it at once. Your name and the day stand behind it." }
        form.act method="post" action=(path(shown)) {
            (person.field())
            input type="hidden" name="seen" value=(shown.seen);
            (reading::document(shown.read))
            input type="hidden" name="further" value=(shown.further);
            (shown.filled.hidden())
            button name="step" value="record" { "Record it" }
            " "
            button.plain name="step" value="again" { "Change it again" }
        }
    };
    layout::page(person, &title, "/listings", &body)
}

fn head(shown: &Shown<'_>, title: &str) -> Markup {
    let clause = shown.at_hand.read;
    html! {
        h1 { (title) }
        p { a href=(path_in_reading(&shown.read.file, &clause.id)) { "Back to the reading of " (shown.read.file) } }
        blockquote { (clause.words) }
    }
}
