//! Pages about people: at the door, and behind it.

pub(super) mod account;
pub(super) mod audit;
pub(super) mod invitation;
pub(super) mod roster;
pub(super) mod sign_in;

use std::convert::Infallible;
use std::net::IpAddr;
use std::sync::Arc;

use axum::extract::{FromRequestParts, OptionalFromRequestParts};
use axum::http::request::Parts;
use axum::http::{HeaderValue, header};
use axum::response::{IntoResponse, Redirect, Response};
use jiff::Timestamp;
use maud::{Markup, html};

use crate::desk::Desk;
use crate::people::{AtTeam, Peer, SignedIn};
use crate::person::FORM_TOKEN;
use crate::trouble::Trouble;

/// From which network address a request comes, as far as the front tells.
pub(super) struct Address(Option<IpAddr>);

impl FromRequestParts<Arc<Desk>> for Address {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, desk: &Arc<Desk>) -> Result<Self, Trouble> {
        let AtTeam(team) = AtTeam::from_request_parts(parts, desk).await?;
        let peer = parts.extensions.get::<Peer>().copied();
        Ok(Self(team.front.address(&parts.headers, peer)))
    }
}

impl FromRequestParts<Arc<Desk>> for SignedIn {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, desk: &Arc<Desk>) -> Result<Self, Trouble> {
        AtTeam::from_request_parts(parts, desk).await?;
        let signed_in = parts.extensions.get::<Self>().cloned();
        signed_in.ok_or(Trouble::NotSignedIn)
    }
}

impl OptionalFromRequestParts<Arc<Desk>> for SignedIn {
    type Rejection = Infallible;

    async fn from_request_parts(
        parts: &mut Parts,
        _: &Arc<Desk>,
    ) -> Result<Option<Self>, Infallible> {
        Ok(parts.extensions.get::<Self>().cloned())
    }
}

/// The hidden field of a form at the door.
fn field(form_token: &str) -> Markup {
    html! { input type="hidden" name=(FORM_TOKEN) value=(form_token); }
}

/// A response that sets a cookie, where there is one to set.
fn with_cookie(cookie: Option<HeaderValue>, response: impl IntoResponse) -> Response {
    let mut response = response.into_response();
    if let Some(cookie) = cookie {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
    response
}

/// On to another page, with a cookie.
fn on_to(place: &str, cookie: HeaderValue) -> Response {
    with_cookie(Some(cookie), Redirect::to(place))
}

/// What was refused, above a form.
fn alert(trouble: Option<&Trouble>) -> Markup {
    html! { @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } } }
}

fn day(at: Timestamp) -> String {
    at.strftime("%Y-%m-%d").to_string()
}

/// The fields of a new password.
fn new_password() -> Markup {
    let fewest = crate::people::FEWEST_IN_PASSWORD;
    html! {
        p.quiet id="rule" {
            "At least " (fewest) " characters. A few words that have nothing to do with one another are easy to keep in mind."
        }
        label for="password" { "New password" }
        input id="password" name="password" type="password" required minlength=(fewest) autocomplete="new-password" aria-describedby="rule";
        label for="repeated" { "The same once more" }
        input id="repeated" name="repeated" type="password" required autocomplete="new-password";
    }
}
