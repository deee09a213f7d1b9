//! Confirmations that no longer stand, as another document has come under the listing's name: which, and why.

use listing::confirm::{Entry, stands_for};
use maud::{Markup, html};
use store::people::Role;
use wording::text::counted;

use super::{anchor, document};
use crate::confirming::{Confirmed, Stands};
use crate::pages::piece;
use crate::person::Person;

/// All of them; a reviewer may let them go.
pub(super) fn section(person: &Person, confirmed: &Confirmed<'_>) -> Markup {
    let lost: Vec<&Stands> = confirmed.lost().collect();
    let read = confirmed.read;
    let gone: Vec<String> = lost
        .iter()
        .map(|one| format!("{} {}", one.held.version, one.held.key.part))
        .collect();
    html! {
        section.brought aria-labelledby="lost" {
            h2 id="lost" { (counted(lost.len(), "confirmation no longer stands", "confirmations no longer stand")) }
            p {
                "They were made on another document that had this file’s name. While any of them is kept, the reading isn’t final: read those clauses again and "
                "confirm them, which takes the place of what is kept under their numbers; then let the rest go. The journal keeps them."
            }
            ul.notes { @for one in &lost { li { (line(one, confirmed)) } } }
            @if person.may(Role::Reviewer) {
                form method="post" action={ "/listings/" (piece(&read.file)) "/let-go" } {
                    (person.field())
                    (document(read))
                    input type="hidden" name="gone" value=(gone.join("\n"));
                    button.plain { "Let " (counted(lost.len(), "confirmation go", "confirmations go")) }
                }
            }
        }
    }
}

fn line(one: &Stands, confirmed: &Confirmed<'_>) -> Markup {
    let entry = &one.held.value.entry;
    let reading = &confirmed.read.unconfirmed;
    let now = reading
        .clauses
        .iter()
        .find(|clause| clause.id == entry.clause);
    html! {
        strong { (entry.clause) } ", " (said(entry)) ": "
        @if let Err(why) = stands_for(reading, entry) { (why.words()) ". " }
        "Then: " q { (entry.words) }
        @if let Some(now) = now { " Now " a href={ "#" (anchor(&now.id)) } { (now.id) } ": " q { (now.words) } }
    }
}

fn said(entry: &Entry) -> String {
    let verb = if entry.correction.is_some() {
        "corrected"
    } else {
        "confirmed"
    };
    format!("{verb} by {}, {}", entry.by, entry.when)
}

/// Beside a clause whose number another clause had.
pub(super) fn beside(entry: &Entry) -> Markup {
    html! {
        p.open { "Under this number other words were " (said(entry)) ": " q { (entry.words) } }
    }
}
