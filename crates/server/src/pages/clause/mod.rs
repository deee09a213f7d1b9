//! One clause: correcting how it was read, judging it, and where it stands on its page.

pub(super) mod correct;
mod form;
pub(super) mod judge;
pub(super) mod sheet;

use std::sync::Arc;

use listing::Clause;
use maud::{Markup, html};
use wording::clause as words;

use crate::desk::Desk;
use crate::listings::Read;
use crate::trouble::Trouble;

/// The listing of a file.
async fn read(desk: &Desk, file: &str) -> Result<Arc<Read>, Trouble> {
    desk.catch_up().await?;
    let read = desk.listings.read(&desk.store, file).await?;
    read.ok_or_else(|| Trouble::Unknown(format!("There is no listing {file}.")))
}

/// A clause in plain words.
fn in_words(clause: &Clause) -> Markup {
    html! {
        dl.head {
            dt { "About" } dd { (words::subject(clause)) " " code { (clause.property) } }
            dt { "Asks for" } dd { (asks(clause)) }
            dt { "Applies" }
            dd {
                @match &clause.condition {
                    None => "always",
                    Some(condition) => { "when " (wording::condition::condition(&condition.expr)) },
                }
            }
            @if let Some(option) = &clause.option { dt { "Option" } dd { (option) } }
        }
    }
}

/// What a clause asks for, in plain words.
fn asks(clause: &Clause) -> String {
    match &clause.requirement {
        listing::Requirement::Presence {
            presence: listing::Presence::Optional,
        } => "nothing: it may be so or not".to_owned(),
        _ => words::requirement(clause),
    }
}
