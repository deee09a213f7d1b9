//! The listings, some at a time.

use std::sync::Arc;

use axum::extract::{Query, State};
use maud::{Markup, html};
use serde::Deserialize;

use super::{layout, piece};
use crate::desk::Desk;
use crate::person::Person;
use crate::trouble::Trouble;

/// How many listings a page has.
const ON_PAGE: usize = 200;

#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct From {
    /// The file after which they go on.
    after: String,
}

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Query(from): Query<From>,
) -> Result<Markup, Trouble> {
    desk.catch_up().await?;
    let headings = desk.listings.headings();
    let after: Vec<_> = headings
        .iter()
        .filter(|heading| heading.file > from.after)
        .take(ON_PAGE + 1)
        .collect();
    let shown = after.get(..ON_PAGE).unwrap_or(&after);
    let more = shown.last().filter(|_| after.len() > ON_PAGE);
    let body = html! {
        h1 { "Listings" }
        @if headings.iter().len() == 0 { p { "There are no listings yet. " a href="/import" { "Import" } " some to begin." } }
        @else {
            p { (headings.iter().len()) " in the store" }
            table {
            thead { tr { th scope="col" { "File" } th scope="col" { "Designation" } } }
            tbody {
                @for heading in shown {
                    tr {
                        td { a href={ "/listings/" (piece(&heading.file)) } { (heading.file) } }
                        td { (heading.designation) }
                    }
                }
            }
            }
            @if let Some(last) = more { p { a rel="next" href={ "/listings?after=" (piece(&last.file)) } { "Further listings" } } }
        }
    };
    Ok(layout::page(&person, "Listings", "/listings", &body))
}
