//! Who changed what, and when.

use std::sync::Arc;

use axum::extract::{Query, State};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;
use store::{Kind, Made, Owner};

use super::submittals::path as path_of_submittal;
use super::{layout, path_of_joint, piece};
use crate::desk::Desk;
use crate::person::Person;
use crate::trouble::Trouble;

/// How many changes a page has.
const ON_PAGE: usize = 50;

#[derive(Debug, Deserialize)]
pub(super) struct From {
    before: Option<i64>,
    /// Only what one person has changed.
    by: Option<String>,
}

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Query(from): Query<From>,
) -> Result<Markup, Trouble> {
    let before = from.before.unwrap_or(i64::MAX);
    let made = match &from.by {
        Some(by) => desk.store.changes_by(by, before, ON_PAGE).await?,
        None => desk.store.changes_before(before, ON_PAGE).await?,
    };
    let of = from.by.as_deref().map(|by| format!("&by={}", piece(by)));
    let head = desk.store.head().await?;
    let body = html! {
        h1 { "Journal" }
        @if let Some(by) = &from.by { p { "What " strong { (by) } " has changed. " a href="/journal" { "All of it" } } }
        p {
            "The journal ends with entry " (head.seq) ". Its hash, to be noted elsewhere: "
            code.hash { (head.hash) }
        }
        (list(&made))
        @if let Some(last) = made.last().filter(|_| made.len() == ON_PAGE) {
            p { a href={ "/journal?before=" (last.first.seq) (of.unwrap_or_default()) } { "Earlier" } }
        }
    };
    Ok(layout::page(&person, "Journal", "/journal", &body))
}

/// Changes, the latest first.
pub(super) fn list(made: &[Made]) -> Markup {
    html! {
        @if made.is_empty() { p { "Nothing was ever changed." } } @else {
            ol.changes {
                @for Made { first, records } in made {
                    li {
                        span.quiet { (when(first.at)) } " "
                        strong { (first.by) } " "
                        @if let Some(path) = path(first) { a href=(path) { (first.what) } } @else { (first.what) }
                        @if *records > 1 { span.quiet { " (" (records) " records)" } }
                    }
                }
            }
        }
    }
}

/// Where what was changed can be seen.
fn path(entry: &store::Entry) -> Option<String> {
    match entry.key.kind {
        Kind::Fact => match entry.key.name.parse() {
            Ok(Owner::Joint(joint)) => Some(path_of_joint(&joint)),
            _ => None,
        },
        Kind::Attachment => match entry.key.name.parse() {
            Ok(Owner::Submittal(number)) => Some(path_of_submittal(&number)),
            _ => None,
        },
        Kind::Submittal | Kind::Comment => Some(path_of_submittal(&entry.key.name)),
        Kind::Confirmation => Some(format!("/listings/{}", piece(&entry.key.name))),
        _ => None,
    }
}

pub(super) fn when(at: Timestamp) -> String {
    at.strftime("%Y-%m-%d %H:%M UTC").to_string()
}
