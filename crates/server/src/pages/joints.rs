//! Some of the joints, as somebody looks for them.

use std::sync::Arc;

use axum::extract::{Query, State};
use conformance::Overall;
use maud::{Markup, html};

use super::{layout, path_of_joint};
use crate::board::{Chosen, Filter, Row, State as Asked, state};
use crate::desk::Desk;
use crate::person::Person;
use crate::trouble::Trouble;

/// How many joints a page has.
const ON_PAGE: usize = 100;

/// The path of the joints that a filter lets through.
pub(super) fn path(filter: &Filter) -> String {
    // Texts and names of states alone: they can't but be written.
    let query = serde_urlencoded::to_string(filter).unwrap_or_default();
    format!("/joints?{query}")
}

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Query(filter): Query<Filter>,
) -> Result<Markup, Trouble> {
    desk.catch_up().await?;
    let project = desk.project();
    let storeys = project.building.storeys.iter().rev();
    let storeys = storeys.map(|storey| storey.name.as_str());
    let found = desk.board(|board| found(&board.choose(&filter, ON_PAGE), &filter));
    let body = html! {
        h1 { "Joints" }
        (form(&filter, storeys))
        (found)
    };
    Ok(layout::page(&person, "Joints", "", &body))
}

fn form<'n>(filter: &Filter, storeys: impl Iterator<Item = &'n str>) -> Markup {
    html! {
        form.enter role="search" method="get" action="/joints" {
            label for="words" { "Words" }
            input id="words" name="words" type="search" autocomplete="off" value=(filter.words);
            label for="storey" { "Storey" }
            select id="storey" name="storey" {
                option value="" { "any" }
                @for storey in storeys { option value=(storey) selected[storey == filter.storey] { (storey) } }
            }
            label for="barrier" { "Barrier" }
            input id="barrier" name="barrier" autocomplete="off" value=(filter.barrier);
            label for="mark" { "Mark" }
            input id="mark" name="mark" autocomplete="off" value=(filter.mark);
            label for="state" { "State" }
            select id="state" name="state" {
                @for (state, name, words) in Asked::ALL {
                    option value=(name) selected[state == filter.state] { (words) }
                }
            }
            button { "Look for them" }
        }
    }
}

fn found(chosen: &Chosen<'_>, filter: &Filter) -> Markup {
    html! {
        p role="status" {
            strong { (chosen.count) } @if chosen.count == 1 { " joint" } @else { " joints" }
            @if !filter.unnamed.is_empty() { " without a " (filter.unnamed.replace(',', " and a ")) }
        }
        @if !chosen.rows.is_empty() {
            div.wide tabindex="0" role="region" aria-label="The joints, as a table" {
                table {
                    thead { tr {
                        th scope="col" { "Joint" } th scope="col" { "State" } th scope="col" { "Mark" }
                        th scope="col" { "Storey" } th scope="col" { "Barrier" }
                    } }
                    tbody { @for row in &chosen.rows { (line(row)) } }
                }
            }
        }
        @if let Some(last) = chosen.rows.last().filter(|_| chosen.has_more) {
            p { a rel="next" href=(path(&Filter { after: last.card.name.to_string(), ..filter.clone() })) { "Further joints" } }
        }
    }
}

fn line(row: &Row) -> Markup {
    let card = &row.card;
    let found = row.found.as_ref();
    html! {
        tr {
            th scope="row" { a href=(path_of_joint(&card.name)) { (card.name) } }
            td {
                @match state(found) {
                    Some(overall) => (layout::overall(overall)),
                    None => span.quiet { (words(None)) },
                }
                @if let Some(found) = found {
                    @if found.is_provisional { span.quiet { ", provisional" } }
                    @if found.not_met > 0 { span.quiet { "; " (found.not_met) " not met" } }
                }
            }
            td { (card.mark) }
            td { (card.place.0) }
            td { (card.place.1) }
        }
    }
}

/// A joint's name with its state, leading to it.
pub(super) fn link(row: &Row) -> Markup {
    let found = row.found.as_ref();
    let overall = state(found);
    let is_provisional = found.is_some_and(|found| found.is_provisional);
    html! {
        a.joint.(class(overall)).provisional[is_provisional] href=(path_of_joint(&row.card.name)) {
            (row.card.name) " " span aria-hidden="true" { (mark(overall)) }
            span.hidden { (words(overall)) @if is_provisional { ", provisional" } }
        }
    }
}

/// How a state looks; none is that of a joint that wasn't looked at yet.
pub(super) const fn class(overall: Option<Overall>) -> &'static str {
    match overall {
        Some(Overall::Conforms) => "met",
        Some(Overall::DoesNotConform) => "not-met",
        Some(Overall::Open) => "open",
        None => "quiet",
    }
}

const fn mark(overall: Option<Overall>) -> &'static str {
    match overall {
        Some(Overall::Conforms) => "✓",
        Some(Overall::DoesNotConform) => "✗",
        Some(Overall::Open) => "?",
        None => "…",
    }
}

const fn words(overall: Option<Overall>) -> &'static str {
    match overall {
        Some(Overall::Conforms) => "conforms",
        Some(Overall::DoesNotConform) => "does not conform",
        Some(Overall::Open) => "open",
        None => "not checked yet",
    }
}
