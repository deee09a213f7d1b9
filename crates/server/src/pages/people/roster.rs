//! Who there is, what each may do, and who is invited.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;
use store::Held;
use store::people::{InvitationRecord, PersonRecord, Role};

use super::{alert, day};
use crate::desk::Desk;
use crate::pages::{journal, layout, piece};
use crate::people::{AtTeam, Invited, invite};
use crate::person::{Administrator, By};
use crate::trouble::Trouble;

pub(in crate::pages) async fn page(
    State(desk): State<Arc<Desk>>,
    AtTeam(_): AtTeam,
    person: By<Administrator>,
) -> Result<Markup, Trouble> {
    shown(&desk, &person, &Top::default()).await
}

#[derive(Debug, Deserialize)]
pub(in crate::pages) struct Asked {
    whom: String,
    role: Role,
    #[serde(default)]
    again: bool,
}

pub(in crate::pages) async fn invite_one(
    State(desk): State<Arc<Desk>>,
    AtTeam(team): AtTeam,
    person: By<Administrator>,
    Form(asked): Form<Asked>,
) -> Result<Response, Trouble> {
    let done = invite(
        &desk.store,
        &person.name,
        &asked.whom,
        asked.role,
        asked.again,
    )
    .await;
    let top = match done {
        Ok(invited) => Top {
            link: Some(link(team.front.origin(), &asked.whom, &invited)),
            trouble: None,
        },
        Err(trouble) => Top {
            link: None,
            trouble: Some(trouble),
        },
    };
    answer(&desk, &person, top).await
}

#[derive(Debug, Deserialize)]
pub(in crate::pages) struct Managed {
    name: String,
    role: Role,
    may_sign_in: bool,
    seen: i64,
}

pub(in crate::pages) async fn manage(
    State(desk): State<Arc<Desk>>,
    AtTeam(team): AtTeam,
    person: By<Administrator>,
    Form(managed): Form<Managed>,
) -> Result<Response, Trouble> {
    let Managed {
        name,
        role,
        may_sign_in,
        seen,
    } = managed;
    match team.manage(&person, &name, seen, role, may_sign_in).await {
        Ok(()) => Ok(Redirect::to("/people").into_response()),
        Err(trouble) => {
            let top = Top {
                link: None,
                trouble: Some(trouble),
            };
            answer(&desk, &person, top).await
        }
    }
}

pub(in crate::pages) async fn withdraw(
    AtTeam(team): AtTeam,
    person: By<Administrator>,
    Path(hash): Path<String>,
) -> Result<Redirect, Trouble> {
    team.withdraw(&person, &hash).await?;
    Ok(Redirect::to("/people"))
}

/// What stands above the tables.
#[derive(Debug, Default)]
struct Top {
    link: Option<Markup>,
    trouble: Option<Trouble>,
}

async fn answer(desk: &Desk, person: &By<Administrator>, top: Top) -> Result<Response, Trouble> {
    let status = top.trouble.as_ref().map(Trouble::status);
    let body = shown(desk, person, &top).await?;
    Ok((status.unwrap_or_default(), body).into_response())
}

/// The link that an invited person is to be given. It is shown this once.
fn link(origin: &str, whom: &str, invited: &Invited) -> Markup {
    let link = format!("{origin}{}", invited.path);
    html! {
        section.made role="status" aria-labelledby="link" {
            h2 id="link" { "A link for " (whom) }
            p { "Give it to nobody else: whoever opens it first comes in. It is shown this once, and holds until " (journal::when(invited.until)) "." }
            input readonly value=(link) aria-labelledby="link";
        }
    }
}

async fn shown(desk: &Desk, person: &By<Administrator>, top: &Top) -> Result<Markup, Trouble> {
    let people = desk.store.people().await?;
    let invitations = desk.store.invitations().await?;
    let body = html! {
        h1 { "People" }
        (alert(top.trouble.as_ref()))
        @if let Some(link) = &top.link { (link) }
        section aria-labelledby="there" {
            h2 id="there" { "Who may come in" }
            ul.people { @for held in &people { (one(person, held)) } }
        }
        @if !invitations.is_empty() {
            section aria-labelledby="invited" {
                h2 id="invited" { "Who is invited" }
                ul.people { @for held in &invitations { (open(person, held)) } }
            }
        }
        section aria-labelledby="invite" {
            h2 id="invite" { "Invite somebody" }
            form.enter method="post" action="/people/invitations" {
                (person.field())
                label for="whom" { "Name" }
                input id="whom" name="whom" required autocomplete="off";
                label for="role" { "As" }
                (roles("role", Role::Reader))
                button { "Make a link" }
            }
            dl.roles {
                @for role in Role::ALL { dt { (role) } dd { (role.may()) } }
            }
            p.quiet { "Each may do what those above may." }
        }
    };
    Ok(layout::page(person, "People", "/people", &body))
}

fn roles(id: &str, chosen: Role) -> Markup {
    html! {
        select id=(id) name="role" {
            @for role in Role::ALL { option value=(role) selected[role == chosen] { (role) } }
        }
    }
}

fn one(person: &By<Administrator>, held: &Held<PersonRecord>) -> Markup {
    let PersonRecord {
        name,
        role,
        may_sign_in,
        password_set,
    } = &held.value;
    let id = format!("role-{}", piece(&held.key.name).replace('%', "_"));
    html! {
        li {
            h3 { (name) @if !may_sign_in { span.quiet { ", may not sign in" } } }
            p.quiet {
                (role) ", password set on " (day(*password_set)) ". "
                a href={ "/journal?by=" (piece(name)) } { "What " (name) " has changed" }
            }
            details.change {
                summary { "Change" span.hidden { " " (name) } }
                form.enter method="post" action="/people" {
                    (known(person, held))
                    input type="hidden" name="may_sign_in" value="true";
                    label for=(id) { "Role" }
                    (roles(&id, *role))
                    button { @if *may_sign_in { "Give this role" } @else { "Let in again with this role" } }
                }
                @if *may_sign_in {
                    form method="post" action="/people" {
                        (known(person, held))
                        input type="hidden" name="role" value=(role);
                        input type="hidden" name="may_sign_in" value="false";
                        button { "Shut the door to " (name) }
                    }
                    form method="post" action="/people/invitations" {
                        (person.field())
                        input type="hidden" name="whom" value=(name);
                        input type="hidden" name="role" value=(role);
                        input type="hidden" name="again" value="true";
                        button { "Make a link for another password" }
                    }
                }
            }
        }
    }
}

fn known(person: &By<Administrator>, held: &Held<PersonRecord>) -> Markup {
    html! {
        (person.field())
        input type="hidden" name="name" value=(held.value.name);
        input type="hidden" name="seen" value=(held.version);
    }
}

fn open(person: &By<Administrator>, held: &Held<InvitationRecord>) -> Markup {
    let InvitationRecord {
        whom,
        role,
        until,
        again,
    } = &held.value;
    let has_run_out = *until <= Timestamp::now();
    html! {
        li {
            h3 { (whom) }
            p.quiet {
                @if *again { "to set another password" } @else { "as " (role) }
                @if has_run_out { ", has run out" } @else { ", until " (journal::when(*until)) }
            }
            form method="post" action={ "/people/invitations/" (held.key.name) "/withdraw" } {
                (person.field())
                button { "Withdraw" span.hidden { " the invitation of " (whom) } }
            }
        }
    }
}
