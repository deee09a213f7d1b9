//! The work card of one joint, on one sheet: what to make and bring, and what to hold it against. Each line leads to the clauses it rests on.

use std::sync::Arc;

use axum::extract::{Path, State};
use conformance::{Explanation, JointResult, Standing, Verdict};
use engineering::worked::STANDING;
use maud::{Markup, html};
use wording::quantity::{feet_and_inches, to_a_hundredth};
use workcard::{Brought, CAUTIONS, JointCard, JointWork, words};

use super::joint::{listing, title};
use super::reading::anchor;
use super::{layout, path_of_joint, piece, worked};
use crate::desk::{Desk, Seen};
use crate::person::Person;
use crate::trouble::Trouble;

/// The path of a joint's card.
pub(super) fn path(joint: &str) -> String {
    format!("{}/card", path_of_joint(joint))
}

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Path(name): Path<String>,
) -> Result<Markup, Trouble> {
    let (seen, card) = desk.card(&name).await?;
    let body = html! {
        article.card {
            (head(&seen))
            (layout::cautions(&CAUTIONS))
            @match (card, seen.result.as_ref()) {
                (Some(card), Some(result)) => (whole(&seen, &card, result)),
                _ => p.open { "There is no listing to build it to: so there is nothing to make, bring or hold it against yet." },
            }
            p.quiet { (STANDING) }
        }
    };
    let title = format!("Work card of {name}");
    Ok(layout::page(&person, &title, "", &body))
}

fn head(seen: &Seen) -> Markup {
    let name = &seen.joint.name;
    html! {
        h1 { "Work card: " (name) }
        p.ways { a href=(path_of_joint(name)) { "The joint" } span.quiet.screen { "Printed, the card is one sheet." } }
        @if let Some(result) = &seen.result {
            p.lead {
                (layout::overall(result.overall))
                @if result.standing == Standing::Provisional { " " strong { "Provisional: the reading of the listing isn't confirmed." } }
            }
        }
        dl.head {
            dt { "Mark" } dd { (seen.joint.mark) @if !title(seen).is_empty() { ": " (title(seen)) } }
            @if !seen.place().is_empty() { dt { "Place" } dd { (seen.place()) } }
            @if let (Some(read), Some(result)) = (&seen.listing, &seen.result) {
                dt { "Listing" } dd { a href={ "/listings/" (piece(&read.file)) } { (listing(result)) } }
            }
        }
    }
}

fn whole(seen: &Seen, card: &JointCard, result: &JointResult) -> Markup {
    let file = seen.listing.as_ref().map_or("", |read| read.file.as_str());
    let work = &card.work;
    html! {
        (first(result, file))
        section aria-labelledby="make" {
            h2 id="make" { "What to make" }
            dl.head {
                dt { "Length" } dd { (work.length.map_or_else(|| "not known".to_owned(), feet_and_inches)) }
                dt { "Width" } dd { (words::width(work)) }
                @for line in &card.lines { dt { (line.about) } dd { (line.words) " " (leading(file, &line.clauses)) } }
            }
            (not_worked_out(work))
        }
        @if !card.orders.is_empty() {
            section aria-labelledby="bring" {
                h2 id="bring" { "What to bring" }
                (orders(&card.orders, file))
            }
        }
        (held_against(result, file))
        @if !card.notes.is_empty() {
            section aria-labelledby="notes" {
                h2 id="notes" { "To note" }
                ul.notes { @for note in &card.notes { li { (layout::told(note)) } } }
            }
        }
        section.screen aria-labelledby="worked" {
            h2 id="worked" { "How it was worked out" }
            @for calculation in work.worked() { (worked::folded(calculation)) }
        }
    }
}

/// Where the words of some clauses stand.
fn leading(file: &str, clauses: &[String]) -> Markup {
    html! {
        @if !clauses.is_empty() {
            span.cited {
                @for (at, id) in clauses.iter().enumerate() {
                    @if at > 0 { ", " }
                    a href=(words_of(file, id)) { (id) }
                }
            }
        }
    }
}

fn words_of(file: &str, id: &str) -> String {
    format!("/listings/{}#{}", piece(file), anchor(id))
}

/// What isn't met as things stand: put right before anything is placed. What several clauses ask of one property is said once.
fn first(result: &JointResult, file: &str) -> Markup {
    let mut properties: Vec<(&Explanation, Vec<String>)> = Vec::new();
    for finding in result.with(Verdict::NotMet) {
        let said = &finding.explanation;
        let cited = (!said.words.is_empty()).then(|| said.clause.clone());
        let known = properties
            .iter_mut()
            .find(|(first, _)| first.property == said.property);
        match known {
            Some((_, clauses)) => clauses.extend(cited),
            None => properties.push((said, cited.into_iter().collect())),
        }
    }
    html! {
        @if !properties.is_empty() {
            section aria-labelledby="first" {
                h2 id="first" { "Put right first" }
                ul.notes { @for (said, clauses) in properties { li { span.not-met { (layout::told(&said.sentence)) } " " (leading(file, &clauses)) } } }
            }
        }
    }
}

/// What the calculations hold against it, and what couldn't be worked out.
fn not_worked_out(work: &JointWork) -> Markup {
    let objections: Vec<_> = words::objections(work).collect();
    html! {
        @if !objections.is_empty() || !work.gaps.is_empty() {
            ul.notes {
                @for finding in objections { li { (worked::finding(finding)) } }
                @for gap in &work.gaps { li.open { span aria-hidden="true" { "? " } (gap) } }
            }
        }
    }
}

fn orders(orders: &[Brought], file: &str) -> Markup {
    html! {
        div.wide tabindex="0" role="region" aria-label="What to bring, as a table" {
            table {
                thead { tr { th scope="col" { "What" } th scope="col" { "In place" } th scope="col" { "To bring" } th scope="col" { "Pieces" } } }
                tbody {
                    @for Brought { order, clauses } in orders {
                        tr {
                            th scope="row" { (order.what) " " (leading(file, clauses)) }
                            td { (to_a_hundredth(order.net)) }
                            td { (to_a_hundredth(order.brought)) }
                            td {
                                @if let Some(pieces) = order.pieces { (pieces) @if !words::nearness(order).is_empty() { ", " (words::nearness(order)) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Everything that the listing asks here, in its order.
fn held_against(result: &JointResult, file: &str) -> Markup {
    let findings = result
        .findings
        .iter()
        .filter(|finding| finding.verdict != Verdict::NotApplicable);
    html! {
        section aria-labelledby="held" {
            h2 id="held" { "What to hold it against, as the listing asks" }
            ul.held {
                @for finding in findings {
                    @let said = &finding.explanation;
                    li id=(anchor(&said.clause)) {
                        (layout::verdict(finding.verdict)) " "
                        @if said.words.is_empty() { "head, " (said.title) }
                        @else { a href=(words_of(file, &said.clause)) { (said.item) ", " (said.title) span.hidden { ", " (said.clause) } } }
                        ": " (words::asked(said))
                    }
                }
            }
        }
    }
}
