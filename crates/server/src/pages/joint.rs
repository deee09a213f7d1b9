//! One joint: its section, what is known of it and whence, each verdict beside its words.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use conformance::{Finding, JointResult, Standing, Verdict, goes_by};
use maud::{Markup, html};
use serde::Deserialize;
use site::{Decision, Fact, SaidOf, said_of_listing};
use store::Done;
use store::people::Role;
use wording::property;

use super::{card, layout, path_of_joint, piece, section};
use crate::change::Said;
use crate::desk::{Desk, Seen};
use crate::person::{By, Inspector, Person, Reviewer};
use crate::trouble::Trouble;

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Path(name): Path<String>,
    Query(moving): Query<section::Moving>,
) -> Result<Markup, Trouble> {
    let seen = desk.look(&name).await?;
    let entered = Entered::default();
    Ok(shown(&person, &seen, None, &entered, moving.moved))
}

/// What a person enters of a joint.
#[derive(Debug, Default, Deserialize)]
pub(super) struct Entered {
    property: String,
    value: String,
    source: String,
    seen: i64,
    /// The listing that the page was about: what is its own is said of it, and of no other that has taken its place since.
    #[serde(default)]
    listing: String,
}

pub(super) async fn enter(
    State(desk): State<Arc<Desk>>,
    person: By<Inspector>,
    Path(name): Path<String>,
    Form(entered): Form<Entered>,
) -> Result<Response, Trouble> {
    let Entered {
        property,
        value,
        source,
        seen,
        listing,
    } = &entered;
    let property = said_of_listing(property.trim(), listing);
    let done = desk
        .enter(&person, &name, &property, value, source, *seen)
        .await;
    let place = format!("{}#known", path_of_joint(&name));
    answered(&desk, &person, &name, done, &place, &entered).await
}

/// Where one goes on; or the joint as it stands now with what was wrong, and what was entered.
async fn answered(
    desk: &Desk,
    person: &Person,
    name: &str,
    done: Result<Done, Trouble>,
    place: &str,
    entered: &Entered,
) -> Result<Response, Trouble> {
    let trouble = match done {
        Ok(_) => return Ok(Redirect::to(place).into_response()),
        Err(trouble) => trouble.told()?,
    };
    let now = desk.look(name).await?;
    let body = shown(person, &now, Some(&trouble), entered, 0);
    Ok((trouble.status(), body).into_response())
}

/// What a person decides of a clause, as the form says it.
#[derive(Debug, Deserialize)]
pub(super) struct Decided {
    clause: String,
    decision: Decision,
    basis: String,
    scope: String,
    seen: i64,
}

pub(super) async fn judge(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(name): Path<String>,
    Form(decided): Form<Decided>,
) -> Result<Response, Trouble> {
    let said = Said {
        clause: decided.clause,
        decision: decided.decision,
        basis: decided.basis,
        whole_mark: decided.scope == "mark",
    };
    let done = desk.judge(&person, &name, said, decided.seen).await;
    let place = path_of_joint(&name);
    answered(&desk, &person, &name, done, &place, &Entered::default()).await
}

pub(super) fn title(seen: &Seen) -> &str {
    seen.project
        .mark(&seen.joint.mark)
        .map_or("", |mark| &mark.title)
}

pub(super) fn listing(result: &JointResult) -> String {
    if result.edition.is_empty() {
        result.listing.clone()
    } else {
        format!("{}, {}", result.listing, result.edition)
    }
}

fn shown(
    person: &Person,
    seen: &Seen,
    trouble: Option<&Trouble>,
    entered: &Entered,
    moved: i64,
) -> Markup {
    let name = &seen.joint.name;
    let body = html! {
        h1 { (name) }
        p.lead {
            @if let Some(result) = &seen.result { (layout::overall(result.overall)) }
            @if seen.result.as_ref().is_some_and(|result| result.standing == Standing::Provisional) {
                " " strong { "Provisional: the reading of the listing isn't confirmed." }
            }
        }
        dl.head {
            dt { "Mark" } dd { (seen.joint.mark) @if !title(seen).is_empty() { ": " (title(seen)) } }
            dt { "Place" } dd { (seen.place()) }
            dt { "Listing" }
            dd {
                @match (&seen.listing, &seen.result) {
                    (Some(read), Some(result)) => a href={ "/listings/" (piece(&read.file)) } { (listing(result)) },
                    _ => "none to check against: the mark names none, or none in the store goes by its name",
                }
            }
            dt { "Work card" } dd { a href=(card::path(name)) { "What to make and bring, and what to hold it against" } }
        }
        @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } }
        (section::drawn(seen, moved))
        @if let Some(result) = &seen.result {
            (layout::cautions(&conformance::cautions([result])))
            (findings(person, result, seen))
        }
        (known(person, seen, entered))
    };
    layout::page(person, name, "", &body)
}

fn findings(person: &Person, result: &JointResult, seen: &Seen) -> Markup {
    let file = seen.listing.as_ref().map_or("", |read| read.file.as_str());
    html! {
        section aria-labelledby="verdicts" {
            h2 id="verdicts" { "Clause by clause" }
            @for note in &result.notes { p.note { (layout::told(note)) } }
            @for assumed in &result.assumed { p.note { "Taken to be so: " (layout::told(assumed)) "." } }
            (layout::by_verdict(result, |one| finding(person, one, file, seen)))
        }
    }
}

fn finding(person: &Person, finding: &Finding, file: &str, seen: &Seen) -> Markup {
    let said = &finding.explanation;
    let item = if said.item.is_empty() {
        "head"
    } else {
        &said.item
    };
    html! {
        article.finding {
            h4 { (layout::verdict(finding.verdict)) " " (item) ", " (said.title) }
            p { (layout::told(&said.sentence)) }
            @if let Some(margin) = &said.margin { p.quiet { "Margin: " (margin.words) } }
            @if let Some(missing) = &said.missing { p.quiet { (layout::told(&missing.help)) } }
            @if let Some(judgment) = &said.judgment {
                p.quiet { "Judged by " (judgment.by) ", " (judgment.when) ": " (judgment.basis) }
            }
            @for note in &said.notes { p.quiet { (layout::told(note)) } }
            @if person.may(Role::Reviewer) && matches!(finding.verdict, Verdict::Open | Verdict::NotMet | Verdict::Judged) { (judging(person, &said.clause, seen)) }
            details {
                summary { "Words and fact" }
                @if !said.words.is_empty() {
                    blockquote { (said.words) }
                    p { a href={ "/listings/" (piece(file)) "#" (super::reading::anchor(&said.clause)) } { "In the listing" } }
                }
                @if finding.verdict != Verdict::NotApplicable {
                    p { a href={ (card::path(&seen.joint.name)) "#" (super::reading::anchor(&said.clause)) } { "On the work card" } }
                }
                @if seen.listing.as_ref().is_some_and(|read| read.is_corrected(&said.clause)) {
                    p.open { "A person has corrected how these words were read." }
                }
                p { "Asked for: " (said.requirement) @if let Some(condition) = &said.condition { ", " (condition) } }
                @if let Some(fact) = &said.fact {
                    p {
                        "Known: " (fact.value) ", " (fact.provenance)
                        @if let Some(place) = &fact.place { "; " (place) }
                    }
                }
            }
        }
    }
}

/// A form in which a person decides what no fact settles, folded away.
fn judging(person: &Person, clause: &str, seen: &Seen) -> Markup {
    html! {
        details.change {
            summary { "Judge" span.hidden { " " (clause) } }
            (judging_form(person, clause, seen))
        }
    }
}

/// A form in which a person decides what no fact settles.
pub(super) fn judging_form(person: &Person, clause: &str, seen: &Seen) -> Markup {
    html! {
        form.enter method="post" action={ (path_of_joint(&seen.joint.name)) "/judgments" } {
            (person.field())
            input type="hidden" name="seen" value=(seen.seq);
            input type="hidden" name="clause" value=(clause);
            label { "Decision"
                select name="decision" {
                    option value="accepted" { "It counts as met" }
                    option value="rejected" { "It isn't met" }
                }
            }
            label { "For"
                select name="scope" {
                    option value="joint" { (seen.joint.name) }
                    option value="mark" { "every joint of " (seen.joint.mark) }
                }
            }
            label { "On what ground" input name="basis" required; }
            button { "Record" }
        }
    }
}

/// What is known, each with a form to enter something else; and one for what isn't known yet.
fn known(person: &Person, seen: &Seen, entered: &Entered) -> Markup {
    let facts = seen.project.facts(&seen.joint);
    let version = |property: &str| {
        let held = seen.known.iter().find(|held| held.key.part == property);
        held.map_or(0, |held| held.version)
    };
    html! {
        section aria-labelledby="known" {
            h2 id="known" tabindex="-1" { "What is known" }
            div.wide tabindex="0" role="region" aria-label="What is known, as a table" {
                table {
                    thead { tr { th scope="col" { "Property" } th scope="col" { "Value" } th scope="col" { "Where from" } } }
                    tbody {
                        @for fact in facts.iter() { (row(person, seen, fact, version(&fact.property))) }
                    }
                }
            }
            @if person.may(Role::Inspector) {
                h3 { "Enter something else" }
                form.enter method="post" action={ (path_of_joint(&seen.joint.name)) "/facts" } {
                    (person.field())
                    input type="hidden" name="seen" value="0";
                    @if let Some(read) = &seen.listing { input type="hidden" name="listing" value=(goes_by(&read.state).as_said()); }
                    label for="property" { "Property" }
                    input id="property" name="property" list="properties" required autocomplete="off" value=(entered.property);
                    label for="value" { "Value" }
                    input id="value" name="value" required autocomplete="off" value=(entered.value);
                    label for="source" { "Where from" }
                    input id="source" name="source" required placeholder="measured: tape, 1/16 in.; readings 1 in., 1-1/16 in." value=(entered.source);
                    button { "Enter" }
                }
                datalist id="properties" {
                    @for property in asked(seen) { option value=(property) {} }
                }
            }
        }
    }
}

fn row(person: &Person, seen: &Seen, fact: &Fact, version: i64) -> Markup {
    let title = property::title(&fact.property);
    let counts = counts(seen, fact);
    html! {
        tr {
            th scope="row" { (title) br; code { (fact.asked_as()) } }
            td {
                (fact.value)
                @if counts && person.may(Role::Inspector) { details.change {
                    summary { "Change" span.hidden { " " (title) } }
                    form.enter method="post" action={ (path_of_joint(&seen.joint.name)) "/facts" } {
                        (person.field())
                        input type="hidden" name="seen" value=(version);
                        input type="hidden" name="property" value=(fact.property);
                        label { "Value" input name="value" required autocomplete="off" value=(fact.value); }
                        label { "Where from" input name="source" required value=(fact.provenance); }
                        button { "Enter" }
                    }
                } }
            }
            td {
                (fact.provenance)
                @if let Some(cell) = &fact.cell { br; span.quiet { (cell) } }
                @if version == 0 { br; span.quiet { "of its mark or barrier" } }
                @if !counts { br; span.open { (elsewhere(seen, fact)) } }
            }
        }
    }
}

/// Whether a fact counts where the joint is checked: it is of no listing in particular, or was said of the one that the joint is built to.
fn counts(seen: &Seen, fact: &Fact) -> bool {
    let is_meant = || {
        let (said, read) = (fact.said_of()?, seen.listing.as_ref()?);
        Some(goes_by(&read.state).is_meant(said))
    };
    !fact.is_of_one_listing() || is_meant().unwrap_or(false)
}

/// What is said of a fact that doesn't count here.
fn elsewhere(seen: &Seen, fact: &Fact) -> String {
    let Some(said) = fact.said_of() else {
        return "Nothing says of which listing this was said: it doesn’t count here.".to_owned();
    };
    let is_same_name = seen.listing.as_ref().is_some_and(|read| {
        let named = SaidOf {
            document: None,
            ..said
        };
        goes_by(&read.state).is_meant(named)
    });
    if is_same_name {
        let listing = said.listing;
        format!("This was said of another document of the name {listing}: it doesn’t count here.")
    } else {
        format!("This was said of {}: it doesn’t count here.", said.listing)
    }
}

/// The properties that clauses ask for and nothing is known of.
fn asked(seen: &Seen) -> Vec<&str> {
    let open = seen
        .result
        .iter()
        .flat_map(|result| result.with(Verdict::Open));
    let mut asked: Vec<&str> = open
        .filter_map(|finding| finding.explanation.missing.as_ref())
        .map(|missing| missing.property.as_str())
        .collect();
    asked.sort_unstable();
    asked.dedup();
    asked
}
