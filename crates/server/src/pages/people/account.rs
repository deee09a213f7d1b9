//! One's own account: another password, and signing out everywhere.

use axum::Form;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use serde::Deserialize;

use super::{Address, alert, day, new_password, on_to};
use crate::pages::{layout, piece};
use crate::people::{AtTeam, SignedIn, ended_cookie};
use crate::person::Person;
use crate::trouble::Trouble;

pub(in crate::pages) async fn page(AtTeam(_): AtTeam, person: Person, who: SignedIn) -> Markup {
    shown(&person, &who, None)
}

#[derive(Debug, Deserialize)]
pub(in crate::pages) struct Changed {
    current: String,
    password: String,
    repeated: String,
}

pub(in crate::pages) async fn set_password(
    AtTeam(team): AtTeam,
    person: Person,
    who: SignedIn,
    Address(address): Address,
    Form(changed): Form<Changed>,
) -> Result<Response, Trouble> {
    let refused = |message: &str, help: &str| Trouble::Refused {
        message: message.to_owned(),
        help: help.to_owned(),
    };
    let done = match team.is_password_of(&who, &changed.current, address).await? {
        Some(true) => {
            team.set_password(&who, &changed.password, &changed.repeated)
                .await
        }
        Some(false) => Err(refused(
            "the present password isn't right",
            "an administrator can give you a link to set another",
        )),
        None => Err(refused("that was tried too often", "wait for a minute")),
    };
    match done {
        Ok(cookie) => Ok(on_to("/account", cookie)),
        Err(trouble @ (Trouble::Refused { .. } | Trouble::Conflicts(_))) => {
            let body = shown(&person, &who, Some(&trouble));
            Ok((trouble.status(), body).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

pub(in crate::pages) async fn sign_out_everywhere(
    AtTeam(team): AtTeam,
    who: SignedIn,
    Address(address): Address,
) -> Result<Response, Trouble> {
    team.sign_out_everywhere(&who, address).await?;
    Ok(on_to("/sign-in", ended_cookie()))
}

fn shown(person: &Person, who: &SignedIn, trouble: Option<&Trouble>) -> Markup {
    let own = &who.person.value;
    let body = html! {
        h1 { (own.name) }
        p {
            "You are here as " strong { (own.role) } ", who " (own.role.may()) ". "
            a href={ "/journal?by=" (piece(&own.name)) } { "What you have changed" }
        }
        (alert(trouble))
        section aria-labelledby="another" {
            h2 id="another" { "Another password" }
            p.quiet { "Set on " (day(own.password_set)) ". A new one ends your sessions on every other device." }
            form.enter method="post" action="/account/password" {
                (person.field())
                // For programs that keep passwords.
                input class="hidden" name="name" value=(own.name) autocomplete="username" readonly tabindex="-1" aria-label="Name";
                label for="current" { "Present password" }
                input id="current" name="current" type="password" required autocomplete="current-password";
                (new_password())
                button { "Set it" }
            }
        }
        section aria-labelledby="everywhere" {
            h2 id="everywhere" { "Sign out everywhere" }
            p { "Ends your sessions on every device, this one too." }
            form method="post" action="/account/sign-out-everywhere" {
                (person.field())
                button { "Sign out everywhere" }
            }
        }
    };
    layout::page(person, &own.name, "/account", &body)
}
