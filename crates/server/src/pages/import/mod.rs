//! Bringing listings and tables: what was understood of them first, and nothing is taken until the person says so.

mod tables;

use std::sync::Arc;

use axum::Form;
use axum::extract::{Multipart, Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use wording::text::{counted, listed};

use super::layout;
use crate::desk::Desk;
use crate::person::{By, Person, Reviewer};
use crate::taking::Chosen;
use crate::taking::arriving::{Arrived, MOST_FILES, MOST_IN_ALL, MOST_IN_FILE};
use crate::taking::looking::{Brought, Heard, Look, Standing};
use crate::taking::waiting::Lot;
use crate::trouble::Trouble;

/// Where files are brought.
pub(in crate::pages) async fn page(person: By<Reviewer>) -> Markup {
    asking(&person, None)
}

fn asking(person: &Person, trouble: Option<&Trouble>) -> Markup {
    let body = html! {
        h1 { "Import" }
        @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } }
        p {
            "Bring listings (plain text or PDF) and tables (CSV or XLSX): as many at once as you like. "
            "You see what was understood of them first; nothing is taken until you say so."
        }
        form.drop method="post" action="/import" enctype="multipart/form-data" {
            (person.field())
            label for="files" { "Choose files, or drop them here" }
            input id="files" type="file" name="files" multiple required
                accept=".txt,.text,.pdf,.csv,.xlsx,.toml" aria-describedby="most";
            p.quiet id="most" {
                "At most " (MOST_FILES) " files, " (MOST_IN_FILE >> 20) " MB each and " (MOST_IN_ALL >> 20) " MB together."
            }
            button { "See what is understood of them" }
        }
        script type="module" src="/assets/import.js" {}
        h2 { "What a table is" }
        p { "The first row names the columns. The column that names each row says what the table is of:" }
        dl.plain {
            dt { code { "joint" } } dd { "a schedule: " code { "mark" } ", " code { "listing" } ", " code { "storey" } ", " code { "barrier" } ", " code { "grid" } ", " code { "length" } " and properties such as " code { "joint.width" } " or " code { "packing.density" } }
            dt { code { "mark" } } dd { "the types of joint: " code { "title" } ", " code { "listing" } " and properties" }
            dt { code { "barrier" } } dd { "rated walls and floors: " code { "kind" } ", " code { "rating" } ", " code { "title" } }
            dt { code { "joint_or_mark" } } dd { "judgments that people have recorded" }
        }
        p {
            "A value has its unit (" code { "3/4 in." } "). A row under the headings that begins with " code { "#source" }
            " says where the values of each column come from. A schedule alone will do to begin with."
        }
    };
    layout::page(person, "Import", "/import", &body)
}

/// Takes files in to be looked at.
pub(in crate::pages) async fn bring(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    form: Multipart,
) -> Response {
    match Arrived::read(form).await {
        Ok(arrived) => {
            let number = desk.waiting.put(&person.name, arrived);
            Redirect::to(&format!("/import/{number}")).into_response()
        }
        Err(trouble) => (trouble.status(), asking(&person, Some(&trouble))).into_response(),
    }
}

fn lot(desk: &Desk, person: &Person, number: u64) -> Result<Arc<Lot>, Trouble> {
    desk.waiting.get(number, &person.name).ok_or_else(|| {
        Trouble::Unknown(
            "These files don't wait any more: they were taken, or others came since. Bring them again."
                .to_owned(),
        )
    })
}

pub(in crate::pages) async fn look(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(number): Path<u64>,
) -> Result<Markup, Trouble> {
    let lot = lot(&desk, &person, number)?;
    let look = desk.understand(&lot).await?;
    Ok(shown(&person, number, &look, None))
}

pub(in crate::pages) async fn take(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(number): Path<u64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let lot = lot(&desk, &person, number)?;
    let (mut chosen, mut mark) = (Chosen::default(), 0);
    for (name, value) in fields {
        match name.as_str() {
            "listing" => chosen.listings.push(value),
            "tables" => chosen.tables = true,
            "remove" => chosen.remove = true,
            "shown" => mark = value.parse().unwrap_or_default(),
            _ => {}
        }
    }
    let trouble = match desk.take(&person, &lot, &chosen, mark).await {
        Ok(Some(_)) => return Ok(Redirect::to(after(&chosen)).into_response()),
        Ok(None) => Trouble::Refused {
            message: "the store was changed since you looked, and the files would come to something else now; nothing was taken".to_owned(),
            help: "look at it again below, and take it where it is right".to_owned(),
        },
        Err(trouble @ (Trouble::Refused { .. } | Trouble::Conflicts(_))) => trouble,
        Err(trouble) => return Err(trouble),
    };
    let look = desk.understand(&lot).await?;
    let status = match trouble {
        Trouble::Conflicts(_) => StatusCode::CONFLICT,
        _ => trouble.status(),
    };
    Ok((status, shown(&person, number, &look, Some(&trouble))).into_response())
}

/// Where one goes on with what was taken.
const fn after(chosen: &Chosen) -> &'static str {
    if chosen.tables { "/" } else { "/listings" }
}

fn shown(person: &Person, number: u64, look: &Look, trouble: Option<&Trouble>) -> Markup {
    let changes = look
        .tables
        .as_ref()
        .and_then(|tables| tables.result.as_ref().ok());
    let has_new = |one: &Brought| matches!(&one.read, Ok(heard) if !heard.proposal.is_empty());
    let is_worth = look.listings.iter().any(has_new)
        || changes.is_some_and(|changes| !changes.proposal.is_empty());
    let body = html! {
        h1 { "What was understood" }
        @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } }
        @if is_worth { p { "Nothing is taken yet. Untick what you don't want; then take the rest." } }
        @else { p { strong { "There is nothing here to take." } " What the store says already, and what can't be read, is told below." } }
        form method="post" action={ "/import/" (number) } {
            (person.field())
            input type="hidden" name="shown" value=(look.mark());
            (act(is_worth))
            @if !look.listings.is_empty() {
                section aria-labelledby="listings" {
                    h2 id="listings" { "Listings" }
                    @for (at, one) in look.listings.iter().enumerate() { (listing(one, at)) }
                }
            }
            @if let Some(held) = &look.tables { (tables::tables(held)) }
            @if !look.others.is_empty() {
                section aria-labelledby="others" {
                    h2 id="others" { "Not understood" }
                    ul { @for (name, why) in &look.others { li { strong { (name) } ": " (why) } } }
                }
            }
            (act(is_worth))
        }
    };
    layout::page(person, "What was understood", "/import", &body)
}

fn act(is_worth: bool) -> Markup {
    html! {
        p.act {
            @if is_worth { button { "Take what is ticked" } " " }
            a href="/import" { "Bring other files" }
        }
    }
}

fn listing(one: &Brought, at: usize) -> Markup {
    html! {
        article.brought {
            @match &one.read {
                Err(why) => {
                    h3 { (one.name) }
                    p.not-met { strong { "Can't be read" } ": " (why) "." }
                    p.quiet { "Give it as text, or as a PDF that holds text." }
                }
                Ok(heard) => {
                    h3 {
                        @if heard.proposal.is_empty() { (one.name) } @else {
                            label.tick for={ "listing-" (at) } {
                                input id={ "listing-" (at) } type="checkbox" name="listing" value=(one.name) checked[!heard.is_none];
                                (one.name)
                            }
                        }
                    }
                    (self::heard(heard))
                }
            }
        }
    }
}

fn heard(heard: &Heard) -> Markup {
    html! {
        p {
            @if heard.designation.is_empty() { strong { "No designation was found" } }
            @else { strong { (heard.designation) } @if !heard.edition.is_empty() { ", " (heard.edition) } }
            @if let Some(pages) = heard.pages { "; " (counted(pages, "page", "pages")) }
            "; " (counted(heard.clauses, "clause", "clauses"))
            @if heard.prose > 0 { ", of which no rule could read " (heard.prose) ": they are left as words for a person" }
            "."
        }
        @if heard.is_none { p.not-met { "Nothing in it looks like a listing. Tick it only if you are sure." } }
        @match heard.standing {
            Standing::New => {}
            Standing::Same => { p.quiet { "The store has it already, byte for byte." } }
            Standing::InPlaceOf(0) => { p.open { "The store has another document of this name. Taken, this one stands in its place; the other stays in the journal." } }
            Standing::InPlaceOf(confirmed) => {
                p.open {
                    "The store has another document of this name, with " (counted(confirmed, "clause", "clauses"))
                    " that people have confirmed. Taken, this one stands in its place: what was confirmed holds where the words are the same. "
                    "If it is another edition, give the file another name and compare the two."
                }
            }
        }
        @for file in &heard.namesakes {
            p.open { (file) " goes by the same designation: a mark that names the designation won't say which is meant." }
        }
        @if !heard.scanned.is_empty() {
            p.not-met {
                "Pages that are pictures, whose text isn't surely in the file: "
                (listed(&heard.scanned.iter().map(ToString::to_string).collect::<Vec<_>>()))
                ". Read them yourself against the paper."
            }
        }
        @if let Some((held, lost)) = heard.confirmed {
            p {
                "Confirmed by people: " (counted(held, "clause", "clauses"))
                @if lost > 0 { "; of " (lost) " more the words aren't in it any more" }
                "."
            }
        }
        @if !heard.unread.is_empty() {
            details {
                summary { "Numbers that no rule could read: " (heard.unread.len()) }
                ul { @for words in &heard.unread { li { q { (words) } } } }
            }
        }
    }
}
