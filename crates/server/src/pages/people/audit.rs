//! Who came and who couldn't, who was invited, and whose role was changed; and the way to what each has changed.

use std::sync::Arc;

use axum::extract::{Query, State};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;
use store::people::{Event, Visit};
use store::{Held, Kind};

use crate::desk::Desk;
use crate::pages::{journal, layout, piece};
use crate::people::AtTeam;
use crate::person::{Administrator, By};
use crate::trouble::Trouble;

/// How many visits, and how many changes of people, the page has.
const ON_PAGE: i64 = 200;

/// Until when.
#[derive(Debug, Deserialize)]
pub(in crate::pages) struct From {
    until: Option<Timestamp>,
}

pub(in crate::pages) async fn page(
    State(desk): State<Arc<Desk>>,
    AtTeam(_): AtTeam,
    person: By<Administrator>,
    Query(from): Query<From>,
) -> Result<Markup, Trouble> {
    let until = from.until.unwrap_or(Timestamp::MAX);
    let visits = desk.store.visits(until, ON_PAGE).await?;
    let is_full = i64::try_from(visits.len()).is_ok_and(|shown| shown == ON_PAGE);
    let kinds = [Kind::Person, Kind::Invitation];
    let changes = desk.store.entries_of_kinds(&kinds, ON_PAGE).await?;
    let people = desk.store.people().await?;
    let name = |key: &str| {
        let held = people.iter().find(|held: &&Held<_>| held.key.name == key);
        held.map_or_else(|| key.to_owned(), |held| held.value.name.clone())
    };
    let body = html! {
        h1 { "Audit" }
        section aria-labelledby="by-person" {
            h2 id="by-person" { "The journal by person" }
            ul.people {
                @for held in &people {
                    li { a href={ "/journal?by=" (piece(&held.value.name)) } { (held.value.name) } span.quiet { ", " (held.value.role) } }
                }
            }
        }
        div.columns {
            section aria-labelledby="visits" {
                h2 id="visits" { "At the door" }
                @if visits.is_empty() { p { "Nobody has come." } }
                ol.changes { @for visit in &visits { (one(visit, &name)) } }
                @if let Some(last) = visits.last().filter(|_| is_full) {
                    p { a href={ "/audit?until=" (last.at) } { "Earlier" } }
                }
            }
            section aria-labelledby="roles" {
                h2 id="roles" { "Invitations and roles" }
                ol.changes {
                    // What was changed together is said once.
                    @for entry in changes.iter().filter(|entry| entry.seq == entry.change) {
                        li {
                            span.quiet { (journal::when(entry.at)) } " "
                            strong { (entry.by) } " " (entry.what)
                        }
                    }
                }
            }
        }
    };
    Ok(layout::page(&person, "Audit", "/audit", &body))
}

fn one(visit: &Visit, name: &impl Fn(&str) -> String) -> Markup {
    let who = visit.person.as_deref().map(name);
    let who = who.as_deref().unwrap_or("A name that is nobody's");
    html! {
        li {
            span.quiet { (journal::when(visit.at)) } " "
            strong { (who) } " "
            @match visit.event {
                Event::SignedIn => "signed in",
                Event::SignedOut => "signed out",
                Event::Failed => span.not-met { "was not let in" },
            }
            " " span.quiet { "from " (visit.address) }
        }
    }
}
