//! Signing in and out.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use serde::Deserialize;

use super::{Address, alert, field, on_to, with_cookie};
use crate::desk::Desk;
use crate::pages::layout;
use crate::people::{AtTeam, Door, SignedIn, Tried, ended_cookie};
use crate::trouble::Trouble;

/// Where somebody wanted to go.
#[derive(Debug, Default, Deserialize)]
pub(in crate::pages) struct Whither {
    #[serde(default)]
    to: String,
}

impl Whither {
    /// A page of this desk, whatever it says: never another site's.
    fn place(&self) -> &str {
        let is_own = self.to.starts_with('/')
            && !self.to.starts_with("//")
            && self.to.chars().all(|c| c.is_ascii_graphic() && c != '\\')
            && !self.to.starts_with("/sign-");
        if is_own { &self.to } else { "/" }
    }
}

pub(in crate::pages) async fn page(
    State(desk): State<Arc<Desk>>,
    AtTeam(_): AtTeam,
    signed_in: Option<SignedIn>,
    headers: HeaderMap,
    Query(whither): Query<Whither>,
) -> Result<Response, Trouble> {
    if signed_in.is_some() {
        return Ok(Redirect::to(whither.place()).into_response());
    }
    let door = Door::of(&headers)?;
    let shown = form(&desk, &door, "", &whither, None);
    Ok(with_cookie(door.cookie, shown))
}

#[derive(Debug, Deserialize)]
pub(in crate::pages) struct Named {
    name: String,
    password: String,
    #[serde(flatten)]
    whither: Whither,
}

pub(in crate::pages) async fn sign_in(
    State(desk): State<Arc<Desk>>,
    AtTeam(team): AtTeam,
    signed_in: Option<SignedIn>,
    Address(address): Address,
    headers: HeaderMap,
    Form(named): Form<Named>,
) -> Result<Response, Trouble> {
    let refuse = |status: StatusCode, trouble: &Trouble| {
        let door = Door::of(&headers)?;
        let shown = form(&desk, &door, &named.name, &named.whither, Some(trouble));
        Ok(with_cookie(door.cookie, (status, shown)))
    };
    match team.sign_in(&named.name, &named.password, address).await? {
        Tried::In(cookie) => {
            // Whoever was signed in on this browser isn't any more.
            if let Some(before) = signed_in {
                team.sign_out(&before, address).await?;
            }
            Ok(on_to(named.whither.place(), cookie))
        }
        Tried::Wrong => {
            let trouble = Trouble::Refused {
                message: "the name and the password don't belong together".to_owned(),
                help: "is the name written as in the journal? An administrator can give you a link to set another password"
                    .to_owned(),
            };
            refuse(StatusCode::UNAUTHORIZED, &trouble)
        }
        Tried::TooOften(wait) => {
            let seconds = wait.as_secs() + 1;
            let trouble = Trouble::Refused {
                message: "that was tried too often".to_owned(),
                help: format!("wait for {seconds} seconds"),
            };
            let mut response = refuse(StatusCode::TOO_MANY_REQUESTS, &trouble)?;
            let wait = HeaderValue::from(seconds);
            response.headers_mut().insert(header::RETRY_AFTER, wait);
            Ok(response)
        }
    }
}

fn form(
    desk: &Desk,
    door: &Door,
    name: &str,
    whither: &Whither,
    trouble: Option<&Trouble>,
) -> Markup {
    let project = desk.project();
    let body = html! {
        h1 { "Sign in" }
        @if !project.building.name.is_empty() { p.quiet { (project.building.name) } }
        (alert(trouble))
        form.enter method="post" action="/sign-in" {
            (field(&door.form_token))
            input type="hidden" name="to" value=(whither.place());
            label for="name" { "Name" }
            input id="name" name="name" required autocomplete="username" autocapitalize="words" value=(name);
            label for="password" { "Password" }
            input id="password" name="password" type="password" required autocomplete="current-password";
            button { "Sign in" }
        }
        p.quiet { "People come in by invitation. An administrator of the project can give you one, or a link to set another password." }
    };
    layout::at_the_door("Sign in", &body)
}

pub(in crate::pages) async fn sign_out(
    AtTeam(team): AtTeam,
    who: SignedIn,
    Address(address): Address,
) -> Result<Response, Trouble> {
    team.sign_out(&who, address).await?;
    Ok(on_to("/sign-in", ended_cookie()))
}

#[cfg(test)]
mod tests {
    use super::Whither;

    #[test]
    fn signing_in_never_leads_to_another_site() {
        let place = |to: &str| Whither { to: to.to_owned() }.place().to_owned();
        assert_eq!(place("/joints/J-004"), "/joints/J-004");
        for to in [
            "",
            "//desk.example",
            "https://desk.example",
            "/\\desk.example",
            "\\/x",
            "/a\nb",
            "javascript:1",
            "/sign-out",
        ] {
            assert_eq!(place(to), "/", "{to}");
        }
    }
}
