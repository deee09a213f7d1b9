//! The project at a glance: storeys and barriers with the state of their joints, open questions by trade, what changed last.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::extract::State;
use conformance::Overall;
use maud::{Markup, html};
use vocabulary::Trade;

use super::{joints, journal, layout, questions};
use crate::board::{Board, Filter, Place, Row, Tally};
use crate::desk::Desk;
use crate::person::Person;
use crate::trouble::Trouble;

/// How many changes are shown.
const CHANGES: usize = 6;

/// The most joints of a project that are named one by one; of more, each barrier says how many came to what.
const MOST_NAMED: usize = 400;

pub(super) async fn page(State(desk): State<Arc<Desk>>, person: Person) -> Result<Markup, Trouble> {
    desk.catch_up().await?;
    let project = desk.project();
    let made = desk.store.changes_before(i64::MAX, CHANGES).await?;
    let (tally, trades, places) = desk.board(|board| {
        let order = project.building.storeys.iter().rev();
        let order = order.map(|storey| storey.name.as_str());
        (
            board.all(),
            board.questions().by_trade(),
            storeys(board, order),
        )
    });
    let name = if project.building.name.is_empty() {
        "The project"
    } else {
        &project.building.name
    };
    let body = html! {
        h1 { (name) }
        @if let Some(edition) = &project.building.code_edition { p.quiet { (edition) } }
        (counts(tally))
        section aria-labelledby="places" {
            h2 id="places" { "Storeys and barriers" }
            div.storeys { (places) }
            @if tally.joints() == 0 { p { "There are no joints yet. " a href="/import" { "Import" } " listings and a schedule to begin." } }
        }
        div.columns {
            section aria-labelledby="asked" {
                h2 id="asked" { "Open questions" }
                (by_trade(&trades))
            }
            section aria-labelledby="last" {
                h2 id="last" { "What changed last" }
                (journal::list(&made))
            }
        }
    };
    Ok(layout::page(&person, name, "/", &body))
}

fn counts(tally: Tally) -> Markup {
    html! {
        ul.counts {
            li { strong { (tally.joints()) } " joints" }
            li.met { strong { (tally.conform) } " conform" (sign(" ✓")) }
            li.not-met { strong { (tally.do_not) } " don't conform" (sign(" ✗")) }
            li.open { strong { (tally.open) } " open" (sign(" ?")) }
            @if tally.waiting > 0 { li { strong { (tally.waiting) } " not checked yet" (sign(" …")) } }
        }
        @if tally.provisional > 0 {
            p {
                strong { (tally.provisional) " of these are provisional" } " (in dashed frames): the reading of their listing isn't confirmed. "
                a href="/listings" { "To the listings" }
            }
        }
        p { a href="/joints" { "To all joints, to look for some of them" } }
    }
}

/// What stands beside a joint's name below; of that its state is read out instead.
fn sign(sign: &str) -> Markup {
    html! { span aria-hidden="true" { (sign) } }
}

/// The barriers of a storey.
type Barriers<'b> = Vec<(&'b Place, &'b Tally)>;

/// The storeys in the building's order, the highest first; what is on none of them last.
fn storeys<'n>(board: &Board, order: impl Iterator<Item = &'n str>) -> Markup {
    let mut of_storeys: BTreeMap<&str, Barriers<'_>> = BTreeMap::new();
    for (place, tally) in board.places() {
        let barriers = of_storeys.entry(&place.0).or_default();
        barriers.push((place, tally));
    }
    let named = named(board);
    let known: Vec<_> = order
        .filter_map(|storey| of_storeys.remove_entry(storey))
        .collect();
    html! {
        @for (storey, barriers) in known.into_iter().chain(of_storeys) { (one(storey, &barriers, &named)) }
    }
}

/// The joints of each barrier, where there are few enough to name them one by one.
fn named(board: &Board) -> BTreeMap<&Place, Vec<&Row>> {
    let mut named: BTreeMap<&Place, Vec<&Row>> = BTreeMap::new();
    if board.all().joints() <= MOST_NAMED {
        for row in board.rows() {
            named.entry(&row.card.place).or_default().push(row);
        }
    }
    named
}

fn one(storey: &str, barriers: &Barriers<'_>, named: &BTreeMap<&Place, Vec<&Row>>) -> Markup {
    html! {
        section.storey {
            h3 {
                @if storey.is_empty() {
                    a href=(joints::path(&Filter { unnamed: "storey".to_owned(), ..Filter::default() })) { "No storey named" }
                } @else {
                    a href=(joints::path(&Filter { storey: storey.to_owned(), ..Filter::default() })) { (storey) }
                }
            }
            dl {
                @for (place, tally) in barriers {
                    dt { a href=(joints::path(&of_place(place))) { @if place.1.is_empty() { "No barrier named" } @else { (place.1) } } }
                    dd {
                        @match named.get(*place) {
                            Some(rows) => @for row in rows { (joints::link(row)) " " },
                            None => (states(**tally)),
                        }
                    }
                }
            }
        }
    }
}

/// The joints of a barrier on a storey.
fn of_place((storey, barrier): &Place) -> Filter {
    let unnamed = [(storey, "storey"), (barrier, "barrier")]
        .into_iter()
        .filter_map(|(name, what)| name.is_empty().then_some(what));
    Filter {
        storey: storey.to_string(),
        barrier: barrier.to_string(),
        unnamed: unnamed.collect::<Vec<_>>().join(","),
        ..Filter::default()
    }
}

/// How many joints of a barrier came to what.
fn states(tally: Tally) -> Markup {
    let states = [
        (Some(Overall::Conforms), tally.conform, "conform"),
        (Some(Overall::DoesNotConform), tally.do_not, "don't"),
        (Some(Overall::Open), tally.open, "open"),
        (None, tally.waiting, "not checked yet"),
    ];
    html! {
        @for (overall, count, words) in states {
            @if count > 0 {
                span.state.(joints::class(overall)) { (count) " " (words) } " "
            }
        }
        @if tally.provisional > 0 { span.state.quiet { (tally.provisional) " provisional" } }
    }
}

fn by_trade(trades: &[(Option<Trade>, usize)]) -> Markup {
    html! {
        @if trades.is_empty() { p { "Nothing is open." } } @else {
            ul {
                @for (trade, count) in trades {
                    li { a href=(questions::path(*trade)) { (questions::title(*trade)) } ": " (count) }
                }
            }
        }
    }
}
