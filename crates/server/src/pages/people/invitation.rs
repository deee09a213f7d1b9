//! An invitation, as whoever is invited opens it.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Path, State};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use serde::Deserialize;
use store::people::InvitationRecord;

use super::{alert, field, new_password, on_to, with_cookie};
use crate::desk::Desk;
use crate::pages::layout;
use crate::people::{AtTeam, Door};
use crate::trouble::Trouble;

pub(in crate::pages) async fn page(
    State(desk): State<Arc<Desk>>,
    AtTeam(team): AtTeam,
    headers: HeaderMap,
    Path(token): Path<String>,
) -> Result<Response, Trouble> {
    // Opening it uses nothing up: programs that look at links beforehand do no harm.
    let invitation = team.invitation(&token).await.map_err(AtDoor);
    let invitation = match invitation {
        Ok(held) => held.value,
        Err(away) => return Ok(away.into_response()),
    };
    let door = Door::of(&headers)?;
    let shown = shown(&desk, &door, &token, &invitation, &invitation.whom, None);
    Ok(with_cookie(door.cookie, shown))
}

/// A trouble of somebody who isn't in yet.
struct AtDoor(Trouble);

impl IntoResponse for AtDoor {
    fn into_response(self) -> Response {
        let body = html! { h1 { "This doesn't lead in" } (alert(Some(&self.0))) };
        let page = layout::at_the_door("This doesn't lead in", &body);
        (self.0.status(), page).into_response()
    }
}

#[derive(Debug, Deserialize)]
pub(in crate::pages) struct Taken {
    #[serde(default)]
    name: String,
    password: String,
    repeated: String,
}

pub(in crate::pages) async fn take_up(
    State(desk): State<Arc<Desk>>,
    AtTeam(team): AtTeam,
    headers: HeaderMap,
    Path(token): Path<String>,
    Form(form): Form<Taken>,
) -> Result<Response, Trouble> {
    let done = team
        .take_up(&token, &form.name, &form.password, &form.repeated)
        .await;
    match done {
        Ok(cookie) => Ok(on_to("/", cookie)),
        Err(trouble @ Trouble::Refused { .. }) => {
            let invitation = team.invitation(&token).await?.value;
            let door = Door::of(&headers)?;
            let shown = shown(
                &desk,
                &door,
                &token,
                &invitation,
                &form.name,
                Some(&trouble),
            );
            Ok(with_cookie(door.cookie, (trouble.status(), shown)))
        }
        Err(trouble) => Ok(AtDoor(trouble).into_response()),
    }
}

fn shown(
    desk: &Desk,
    door: &Door,
    token: &str,
    invitation: &InvitationRecord,
    name: &str,
    trouble: Option<&Trouble>,
) -> Markup {
    let project = desk.project();
    let title = if invitation.again {
        "Set another password"
    } else {
        "Come in"
    };
    let body = html! {
        h1 { (title) }
        @if !project.building.name.is_empty() { p.quiet { (project.building.name) } }
        @if !invitation.again {
            p { "You are invited as " strong { (invitation.role) } ": who " (invitation.role.may()) "." }
        }
        (alert(trouble))
        form.enter method="post" action={ "/invitations/" (token) } {
            (field(&door.form_token))
            @if invitation.again {
                label for="name" { "Name" }
                input id="name" name="name" value=(invitation.whom) readonly autocomplete="username";
            } @else {
                p.quiet id="names" { "Your name stands in the journal behind what you change, and you sign in with it." }
                label for="name" { "Name" }
                input id="name" name="name" required autocomplete="username" value=(name) aria-describedby="names";
            }
            (new_password())
            button { (title) }
        }
        p.quiet { "This link holds until " (crate::pages::journal::when(invitation.until)) ", and leads in once." }
    };
    layout::at_the_door(title, &body)
}
