//! The pages.

mod card;
mod clause;
mod import;
mod joint;
mod joints;
mod journal;
mod layout;
mod listings;
mod overview;
mod people;
mod questions;
mod reading;
mod section;
mod selection;
mod submittals;
mod worked;

use std::sync::Arc;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use maud::{Markup, html};
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use site::Fact;
use store::Conflict;
use store::records::Known;
use wording::property;

use crate::desk::Desk;
use crate::taking::arriving::MOST_READ;
use crate::trouble::Trouble;

/// The pages, by where they are.
pub(crate) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .merge(submittals::routes())
        .route("/", get(overview::page))
        .route("/joints", get(joints::page))
        .route("/joints/{joint}", get(joint::page))
        .route("/joints/{joint}/card", get(card::page))
        .route("/joints/{joint}/facts", post(joint::enter))
        .route("/joints/{joint}/judgments", post(joint::judge))
        .route("/joints/{joint}/section.svg", get(section::sheet))
        .route("/joints/{joint}/moved.svg", get(section::moved))
        .route("/listings", get(listings::page))
        .route("/listings/{file}", get(reading::page))
        .route("/listings/{file}/confirm", post(reading::confirm))
        .route("/listings/{file}/let-go", post(reading::let_go))
        .route(
            "/listings/{file}/clauses/{clause}/correct",
            get(clause::correct::page).post(clause::correct::send),
        )
        .route(
            "/listings/{file}/clauses/{clause}/take-back",
            post(clause::correct::take_back),
        )
        .route(
            "/listings/{file}/clauses/{clause}/judge",
            get(clause::judge::page),
        )
        .route(
            "/listings/{file}/clauses/{clause}/page",
            get(clause::sheet::of_clause),
        )
        .route("/listings/{file}/pages/{page}", get(clause::sheet::page))
        .route("/listings/{file}/cases.md", get(clause::correct::cases))
        .route("/selection", get(selection::page))
        .route("/selection/substitute", get(selection::substitute::page))
        .route("/questions", get(questions::page).post(questions::answer))
        .route("/questions/{id}", get(questions::details))
        .route("/journal", get(journal::page))
        .route(
            "/import",
            get(import::page)
                .post(import::bring)
                .layer(DefaultBodyLimit::max(MOST_READ)),
        )
        .route("/import/{lot}", get(import::look).post(import::take))
        .route(
            "/sign-in",
            get(people::sign_in::page).post(people::sign_in::sign_in),
        )
        .route("/sign-out", post(people::sign_in::sign_out))
        .route(
            "/invitations/{token}",
            get(people::invitation::page).post(people::invitation::take_up),
        )
        .route("/account", get(people::account::page))
        .route("/account/password", post(people::account::set_password))
        .route(
            "/account/sign-out-everywhere",
            post(people::account::sign_out_everywhere),
        )
        .route(
            "/people",
            get(people::roster::page).post(people::roster::manage),
        )
        .route("/people/invitations", post(people::roster::invite_one))
        .route(
            "/people/invitations/{hash}/withdraw",
            post(people::roster::withdraw),
        )
        .route("/audit", get(people::audit::page))
        .route("/assets/desk.css", get(|| async { asset("text/css", CSS) }))
        .route(
            "/assets/icon.svg",
            get(|| async { asset("image/svg+xml", ICON) }),
        )
        .route(
            "/assets/import.js",
            get(|| async { asset("text/javascript", IMPORT_JS) }),
        )
        .route(
            "/assets/desk.js",
            get(|| async { asset("text/javascript", JS) }),
        )
}

/// How many records that others have changed are told of one by one.
const MOST_SHOWN: usize = 12;

const CSS: &str = include_str!("../assets/desk.css");
const JS: &str = include_str!("../assets/desk.js");
const IMPORT_JS: &str = include_str!("../assets/import.js");
const ICON: &str = include_str!("../assets/icon.svg");

fn asset(kind: &'static str, text: &'static str) -> Response {
    let headers = [
        (header::CONTENT_TYPE, kind),
        (header::CACHE_CONTROL, "no-cache"),
    ];
    (headers, text).into_response()
}

/// What is answered where nothing is.
pub(crate) async fn nothing_here() -> Trouble {
    Trouble::Unknown("There is no such page.".to_owned())
}

/// A piece of a path.
fn piece(text: &str) -> String {
    utf8_percent_encode(text, NON_ALPHANUMERIC).to_string()
}

/// The path of a joint's page.
fn path_of_joint(name: &str) -> String {
    format!("/joints/{}", piece(name))
}

impl Trouble {
    pub(crate) const fn status(&self) -> StatusCode {
        match self {
            Self::Unknown(_) => StatusCode::NOT_FOUND,
            Self::NotSignedIn => StatusCode::UNAUTHORIZED,
            Self::MayNot { .. } => StatusCode::FORBIDDEN,
            Self::Refused { .. } => StatusCode::UNPROCESSABLE_ENTITY,
            Self::Conflicts(_) => StatusCode::CONFLICT,
            Self::Store(_) | Self::Broken(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// What is told on the page that it came from, where whoever did it can put it right.
    ///
    /// # Errors
    /// Itself, where nobody can there.
    pub(crate) fn told(self) -> Result<Self, Self> {
        match self {
            Self::Refused { .. } | Self::Conflicts(_) => Ok(self),
            other => Err(other),
        }
    }

    /// What is wrong, for a page.
    fn shown(&self) -> Markup {
        match self {
            Self::Refused { message, help } => html! {
                p { strong { (capital(message)) "." } }
                p { (capital(help)) "." }
            },
            Self::Conflicts(conflicts) => html! {
                p { strong { "Somebody has changed this meanwhile. Nothing was overwritten." } }
                @for conflict in conflicts.iter().take(MOST_SHOWN) {
                    ul {
                        @for entry in &conflict.since {
                            li { (entry.by) " " (entry.what) ", " (journal::when(entry.at)) }
                        }
                    }
                    @if let Some((fact, owner)) = stands_now(conflict) {
                        p { "Now, " (owner) ": " (property::title(&fact.property)) " is " strong { (fact.value) } ", " (fact.provenance) "." }
                    }
                }
                @if conflicts.len() > MOST_SHOWN { p { "and " (conflicts.len() - MOST_SHOWN) " more" } }
                p { "What stands here now is theirs. If yours is right, enter it again." }
            },
            Self::NotSignedIn => html! {
                p { strong { "You aren't signed in, or not any more. Nothing was changed." } }
                p { a href="/sign-in" { "Sign in" } ", and do it again." }
            },
            other => html! { p { strong { (capital(&other.to_string())) } } },
        }
    }
}

/// The fact that others have entered, and whose it is.
fn stands_now(conflict: &Conflict) -> Option<(Box<Fact>, String)> {
    let now = conflict.now.clone()?;
    match now.read::<Known>().ok()?.value {
        Known::Fact(fact) => Some((fact, conflict.key.name.replacen(':', " ", 1))),
        Known::NotKnown => None,
    }
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        let body = html! { h1 { "That didn't work" } div.trouble role="alert" { (self.shown()) } };
        (self.status(), layout::unowned("That didn't work", &body)).into_response()
    }
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(chars).collect()
    })
}
