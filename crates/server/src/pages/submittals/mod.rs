//! What contractors propose: the list, and the form to enter one.

mod files;
mod letter;
mod review;

use std::sync::Arc;

use axum::extract::{DefaultBodyLimit, State};
use axum::response::{IntoResponse, Redirect, Response};
use axum::routing::{get, post};
use axum::{Form, Router};
use maud::{Markup, html};
use store::people::Role;
use store::records::{Held, SubmittalRecord};
use wording::text::listed;

use super::{layout, piece};
use crate::desk::Desk;
use crate::person::{By, Inspector, Person};
use crate::submitting::Submitted;
use crate::trouble::Trouble;

/// The pages of submittals, by where they are.
pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/submittals", get(page).post(enter))
        .route("/submittals/{number}", get(review::page))
        .route("/submittals/{number}/comments", post(review::comment))
        .route("/submittals/{number}/outcome", post(review::decide))
        .route(
            "/submittals/{number}/files",
            post(files::attach).layer(DefaultBodyLimit::max(files::MOST_READ)),
        )
        .route(
            "/submittals/{number}/files/{sha256}",
            get(files::bring_back),
        )
        .route(
            "/submittals/{number}/files/{sha256}/take-off",
            post(files::take_off),
        )
        .route("/submittals/{number}/letter", get(letter::page))
}

async fn page(State(desk): State<Arc<Desk>>, person: Person) -> Result<Markup, Trouble> {
    list(&desk, &person, None, &Submitted::default()).await
}

async fn enter(
    State(desk): State<Arc<Desk>>,
    person: By<Inspector>,
    Form(said): Form<Submitted>,
) -> Result<Response, Trouble> {
    match desk.submit(&person, &said).await {
        Ok(_) => Ok(Redirect::to(&path(said.number.trim())).into_response()),
        Err(trouble @ (Trouble::Refused { .. } | Trouble::Conflicts(_))) => {
            let page = list(&desk, &person, Some(&trouble), &said).await?;
            Ok((trouble.status(), page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

/// The path of a submittal's page.
pub(super) fn path(number: &str) -> String {
    format!("/submittals/{}", piece(number))
}

async fn list(
    desk: &Desk,
    person: &Person,
    trouble: Option<&Trouble>,
    said: &Submitted,
) -> Result<Markup, Trouble> {
    let submittals = desk.submittals().await?;
    let body = html! {
        h1 { "Submittals" }
        p { "What a contractor proposes for some marks: a listing and products. The review shows how each clause stands; what comes of it, a reviewer says." }
        @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } }
        @if submittals.is_empty() { p { "There are none yet." } } @else { (table(&submittals)) }
        @if person.may(Role::Inspector) {
            h2 { "Enter a submittal" }
            (form(desk, person, said))
        }
    };
    Ok(layout::page(person, "Submittals", "/submittals", &body))
}

fn table(submittals: &[Held<SubmittalRecord>]) -> Markup {
    html! {
        div.wide tabindex="0" role="region" aria-label="Submittals, as a table" {
            table {
                thead { tr { th scope="col" { "Number" } th scope="col" { "What" } th scope="col" { "From" } th scope="col" { "Marks" } th scope="col" { "Outcome" } } }
                tbody {
                    @for held in submittals {
                        @let record = &held.value;
                        tr {
                            th scope="row" { a href=(path(&held.key.name)) { (held.key.name) } }
                            td { (record.title) }
                            td { (record.from) ", " (record.received) }
                            td { (listed(&record.marks)) }
                            td {
                                @match &record.outcome {
                                    Some(outcome) => { (outcome.outcome.words()) ", " (outcome.by) },
                                    None => span.quiet { "not reviewed" },
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// The form; `said` is what it holds already.
fn form(desk: &Desk, person: &Person, said: &Submitted) -> Markup {
    html! {
        form.enter method="post" action="/submittals" {
            (person.field())
            input type="hidden" name="seen" value=(said.seen);
            label for="number" { "Number" }
            input id="number" name="number" required readonly[said.seen > 0] autocomplete="off" placeholder="07 84 43-05" value=(said.number);
            label for="title" { "What it is" }
            input id="title" name="title" required autocomplete="off" value=(said.title);
            label for="from" { "Submitted by" }
            input id="from" name="from" required autocomplete="off" value=(said.from);
            label for="received" { "Received on" }
            input id="received" name="received" type="date" required value=(said.received);
            label for="marks" { "For marks" }
            input id="marks" name="marks" required autocomplete="off" placeholder="HW1, HW2" value=(said.marks);
            label for="listing" { "Listing proposed" }
            select id="listing" name="listing" required {
                option value="" { "choose one" }
                @for heading in desk.listings.headings().iter() {
                    option value=(heading.file) selected[heading.file == said.listing] { (heading.file) @if !heading.designation.is_empty() { " (" (heading.designation) ")" } }
                }
            }
            label for="proposed" { "What is proposed, one a line" }
            textarea id="proposed" name="proposed" rows="4" placeholder="packing.product = Maker | Product\npacking.density = 4 pcf" { (said.proposed) }
            button { @if said.seen > 0 { "Record the change" } @else { "Enter" } }
        }
    }
}
