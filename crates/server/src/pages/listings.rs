//! The listings, and how far each is confirmed.

use std::sync::Arc;

use axum::extract::State;
use maud::{Markup, html};

use super::{layout, piece};
use crate::desk::Desk;
use crate::person::Person;

pub(super) async fn page(State(desk): State<Arc<Desk>>, person: Person) -> Markup {
    let body = html! {
        h1 { "Listings" }
        @if desk.listings.headings().is_empty() { p { "There are no listings yet. " a href="/import" { "Import" } " some to begin." } }
        @else { table {
            thead { tr { th scope="col" { "File" } th scope="col" { "Designation" } } }
            tbody {
                @for heading in desk.listings.headings() {
                    tr {
                        td { a href={ "/listings/" (piece(&heading.file)) } { (heading.file) } }
                        td { (heading.designation) }
                    }
                }
            }
        } }
    };
    layout::page(&person, "Listings", "/listings", &body)
}
