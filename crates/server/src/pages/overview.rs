//! The project at a glance: storeys and barriers with the state of their joints, open questions by trade, what changed last.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::extract::State;
use conformance::Question;
use maud::{Markup, html};
use site::{Joint, Project};

use super::{journal, layout, path_of_joint};
use crate::board::{Board, Tally};
use crate::desk::Desk;
use crate::person::Person;
use crate::trouble::Trouble;

/// How many changes are shown.
const CHANGES: usize = 6;

pub(super) async fn page(State(desk): State<Arc<Desk>>, person: Person) -> Result<Markup, Trouble> {
    let project = desk.project();
    let made = desk.store.changes_before(i64::MAX, CHANGES).await?;
    let questions = desk.questions();
    let (tally, places) = desk.board(|board| {
        let mut tally = Tally::default();
        for joint in &project.joints {
            tally.add(board.get(&joint.name));
        }
        (tally, places(&project, board))
    });
    let name = if project.building.name.is_empty() {
        "The project"
    } else {
        &project.building.name
    };
    let body = html! {
        h1 { (name) }
        @if let Some(edition) = &project.building.code_edition { p.quiet { (edition) } }
        (counts(project.joints.len(), tally))
        section aria-labelledby="places" {
            h2 id="places" { "Storeys and barriers" }
            div.storeys { @for place in &places { (storey(place)) } }
            @if places.is_empty() { p { "There are no joints yet. " a href="/import" { "Import" } " listings and a schedule to begin." } }
        }
        div.columns {
            section aria-labelledby="asked" {
                h2 id="asked" { "Open questions" }
                (by_trade(&questions))
            }
            section aria-labelledby="last" {
                h2 id="last" { "What changed last" }
                (journal::list(&made))
            }
        }
    };
    Ok(layout::page(&person, name, "/", &body))
}

fn counts(joints: usize, tally: Tally) -> Markup {
    html! {
        ul.counts {
            li { strong { (joints) } " joints" }
            li.met { strong { (tally.conform) } " conform" }
            li.not-met { strong { (tally.do_not) } " don't" }
            li.open { strong { (tally.open) } " open" }
            @if tally.waiting > 0 { li { strong { (tally.waiting) } " not checked yet" } }
        }
        @if tally.provisional > 0 {
            p {
                strong { (tally.provisional) " of these are provisional" } " (in dashed frames): the reading of their listing isn't confirmed. "
                a href="/listings" { "To the listings" }
            }
        }
    }
}

/// The joints of each barrier.
type Barriers<'p> = BTreeMap<&'p str, Vec<(&'p Joint, Tally)>>;

/// One storey with its barriers and their joints.
struct Place<'p> {
    storey: &'p str,
    barriers: Barriers<'p>,
}

/// The storeys in the building's order, the highest first; what is on none of them last.
fn places<'p>(project: &'p Project, board: &Board) -> Vec<Place<'p>> {
    let mut of_storeys: BTreeMap<&str, Barriers<'_>> = BTreeMap::new();
    for joint in &project.joints {
        let mut tally = Tally::default();
        tally.add(board.get(&joint.name));
        of_storeys
            .entry(joint.storey.as_deref().unwrap_or_default())
            .or_default()
            .entry(joint.barrier.as_deref().unwrap_or_default())
            .or_default()
            .push((joint, tally));
    }
    let mut places = Vec::new();
    for storey in project.building.storeys.iter().rev() {
        if let Some(barriers) = of_storeys.remove(storey.name.as_str()) {
            places.push(Place {
                storey: &storey.name,
                barriers,
            });
        }
    }
    places.extend(
        of_storeys
            .into_iter()
            .map(|(storey, barriers)| Place { storey, barriers }),
    );
    places
}

/// The most joints of a barrier that are named one by one.
const MOST_NAMED: usize = 40;

fn storey(place: &Place<'_>) -> Markup {
    let name = if place.storey.is_empty() {
        "No storey named"
    } else {
        place.storey
    };
    html! {
        section.storey {
            h3 { (name) }
            dl {
                @for (barrier, joints) in &place.barriers {
                    dt { @if barrier.is_empty() { "No barrier named" } @else { (barrier) } }
                    dd {
                        @for (joint, tally) in joints.iter().take(MOST_NAMED) {
                            a.joint.(class(tally)).provisional[tally.provisional > 0] href=(path_of_joint(&joint.name)) {
                                (joint.name) " " span aria-hidden="true" { (mark(tally)) }
                                span.hidden { (words(tally)) @if tally.provisional > 0 { ", provisional" } }
                            } " "
                        }
                        @if joints.len() > MOST_NAMED { "and " (joints.len() - MOST_NAMED) " more" }
                    }
                }
            }
        }
    }
}

const fn class(tally: &Tally) -> &'static str {
    match (tally.conform, tally.do_not, tally.open) {
        (1, ..) => "met",
        (_, 1, _) => "not-met",
        (.., 1) => "open",
        _ => "quiet",
    }
}

const fn mark(tally: &Tally) -> &'static str {
    match (tally.conform, tally.do_not, tally.open) {
        (1, ..) => "✓",
        (_, 1, _) => "✗",
        (.., 1) => "?",
        _ => "…",
    }
}

const fn words(tally: &Tally) -> &'static str {
    match (tally.conform, tally.do_not, tally.open) {
        (1, ..) => "conforms",
        (_, 1, _) => "does not conform",
        (.., 1) => "open",
        _ => "not checked yet",
    }
}

fn by_trade(questions: &[Question]) -> Markup {
    let mut trades: Vec<(&str, usize)> = Vec::new();
    for question in questions {
        let trade = super::questions::trade(question);
        match trades.iter_mut().find(|(name, _)| *name == trade) {
            Some((_, count)) => *count += 1,
            None => trades.push((trade, 1)),
        }
    }
    html! {
        @if trades.is_empty() { p { "Nothing is open." } } @else {
            ul {
                @for (trade, count) in trades {
                    li { a href={ "/questions#" (super::questions::anchor(trade)) } { (trade) } ": " (count) }
                }
            }
        }
    }
}
