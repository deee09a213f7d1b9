//! A submittal's review: clause by clause, with the reviewer's comments; and what comes of it, which the reviewer alone says.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use conformance::{Finding, JointResult, Standing};
use jiff::Zoned;
use maud::{Markup, html};
use selection::Asked;
use serde::Deserialize;
use store::people::Role;
use store::records::{CommentRecord, Outcome};
use wording::property;
use wording::text::{counted, listed};

use super::{files, path};
use crate::desk::Desk;
use crate::pages::{layout, piece, reading};
use crate::person::{By, Person, Reviewer};
use crate::submitting::{MOST_IN_COMMENT, Review, Submitted};
use crate::trouble::Trouble;

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Path(number): Path<String>,
) -> Result<Markup, Trouble> {
    shown(&desk, &person, &number, None).await
}

/// What a reviewer says of a clause.
#[derive(Debug, Deserialize)]
pub(super) struct Said {
    mark: String,
    clause: String,
    words: String,
    comment: String,
    seen: i64,
}

pub(super) async fn comment(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(number): Path<String>,
    Form(said): Form<Said>,
) -> Result<Response, Trouble> {
    let place = place(&said.mark, &said.clause);
    let record = CommentRecord {
        mark: said.mark,
        clause: said.clause,
        words: said.words,
        comment: said.comment,
        by: String::new(),
        when: Zoned::now().date(),
    };
    let done = desk.comment(&person, &number, record, said.seen).await;
    answered(&desk, &person, &number, done.map(|_| place)).await
}

/// What a reviewer decides.
#[derive(Debug, Deserialize)]
pub(super) struct Decided {
    outcome: Outcome,
    #[serde(default)]
    note: String,
    seen: i64,
}

pub(super) async fn decide(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path(number): Path<String>,
    Form(decided): Form<Decided>,
) -> Result<Response, Trouble> {
    let Decided {
        outcome,
        note,
        seen,
    } = decided;
    let done = desk.decide(&person, &number, outcome, &note, seen).await;
    answered(&desk, &person, &number, done.map(|_| "outcome".to_owned())).await
}

pub(super) async fn answered(
    desk: &Desk,
    person: &Person,
    number: &str,
    done: Result<String, Trouble>,
) -> Result<Response, Trouble> {
    let trouble = match done {
        Ok(place) => {
            let place = format!("{}#{place}", path(number));
            return Ok(Redirect::to(&place).into_response());
        }
        Err(trouble) => trouble.told()?,
    };
    let page = shown(desk, person, number, Some(&trouble)).await?;
    Ok((trouble.status(), page).into_response())
}

/// The place of a clause at a mark on the page.
fn place(mark: &str, clause: &str) -> String {
    format!("at-{}-{}", piece(mark), piece(clause)).replace('%', "_")
}

async fn shown(
    desk: &Desk,
    person: &Person,
    number: &str,
    trouble: Option<&Trouble>,
) -> Result<Markup, Trouble> {
    let review = desk.review(number).await?;
    let record = &review.held.value;
    let results = review
        .marks
        .iter()
        .filter_map(|(_, result)| result.as_ref());
    let cautions = conformance::cautions(results.collect::<Vec<_>>());
    let body = html! {
        h1 { "Submittal " (number) }
        @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble.shown()) } }
        (about(&review))
        (files::section(person, &review))
        (outcome(person, &review))
        (layout::cautions(&cautions))
        @for (asked, result) in &review.marks { (at_mark(person, &review, asked, result.as_ref())) }
        @for mark in record.marks.iter().filter(|mark| !review.marks.iter().any(|(asked, _)| asked.name == **mark)) {
            p.open { "The schedule has no mark " (mark) " any more." }
        }
        @if person.may(Role::Inspector) {
            details.brought {
                summary { "Change what is submitted" }
                p { "What came of an earlier review doesn’t hold for what is submitted anew." }
                (super::form(desk, person, &as_entered(&review)))
            }
        }
    };
    let title = format!("Submittal {number}");
    Ok(layout::page(person, &title, "/submittals", &body))
}

fn as_entered(review: &Review) -> Submitted {
    let record = &review.held.value;
    let lines: Vec<String> = record
        .proposed
        .iter()
        .map(|fact| format!("{} = {}", fact.asked_as(), fact.value))
        .collect();
    Submitted {
        number: review.number.clone(),
        title: record.title.clone(),
        from: record.from.clone(),
        received: record.received.to_string(),
        marks: record.marks.join(", "),
        listing: record.listing.clone(),
        proposed: lines.join("\n"),
        seen: review.held.version,
    }
}

fn about(review: &Review) -> Markup {
    let record = &review.held.value;
    html! {
        dl.head {
            dt { "What" } dd { (record.title) }
            dt { "From" } dd { (record.from) ", received " (record.received) }
            dt { "For marks" } dd { (listed(&record.marks)) }
            dt { "Listing" } dd { a href={ "/listings/" (piece(&record.listing)) } { (record.listing) } }
            @for fact in &record.proposed { dt { (property::title(&fact.property)) } dd { (fact.value) } }
        }
    }
}

/// What came of it, and the form in which a reviewer says so. Nothing is chosen beforehand.
fn outcome(person: &Person, review: &Review) -> Markup {
    html! {
        section.brought aria-labelledby="outcome" {
            h2 id="outcome" { "Outcome" }
            @match &review.held.value.outcome {
                Some(outcome) => {
                    p { strong { (outcome.outcome.words()) } ", decided by " (outcome.by) ", " (outcome.when) }
                    @if !outcome.note.is_empty() { p.lines { (outcome.note) } }
                    p.quiet { "The review below is as things stand now." }
                },
                None => p { "No reviewer has said yet what comes of it." },
            }
            p { a href={ (path(&review.number)) "/letter" } { "The letter" } }
            @if person.may(Role::Reviewer) {
                form.enter method="post" action={ (path(&review.number)) "/outcome" } {
                    (person.field())
                    input type="hidden" name="seen" value=(review.held.version);
                    label for="outcome-choice" { "What comes of it" }
                    select id="outcome-choice" name="outcome" required {
                        option value="" { "yours to choose" }
                        @for outcome in Outcome::ALL { option value=(value(outcome)) { (outcome.words()) } }
                    }
                    label for="outcome-note" { "What you add" }
                    textarea id="outcome-note" name="note" rows="2" maxlength=(MOST_IN_COMMENT) {}
                    button { "Record the outcome" }
                }
            }
        }
    }
}

const fn value(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::NoExceptionsTaken => "no_exceptions_taken",
        Outcome::MakeCorrectionsNoted => "make_corrections_noted",
        Outcome::ReviseAndResubmit => "revise_and_resubmit",
        Outcome::Rejected => "rejected",
    }
}

fn at_mark(
    person: &Person,
    review: &Review,
    asked: &Asked,
    result: Option<&JointResult>,
) -> Markup {
    html! {
        section {
            h2 { "Mark " (asked.name) @if !asked.title.is_empty() { ": " (asked.title) } }
            p.quiet { "As submitted, for " (counted(asked.joints.len(), "joint", "joints")) "; what isn't submitted is as the schedule has it." }
            @for note in &asked.notes { p.note { (layout::told(note)) } }
            @match result {
                None => p.open { "The listing that is proposed isn't in the store any more." },
                Some(result) => {
                    @if result.standing == Standing::Provisional { p.open { "Provisional: the reading of the listing isn't confirmed." } }
                    @for note in &result.notes { p.note { (layout::told(note)) } }
                    (layout::by_verdict(result, |finding| clause(person, review, &asked.name, finding)))
                },
            }
        }
    }
}

fn clause(person: &Person, review: &Review, mark: &str, finding: &Finding) -> Markup {
    let said = &finding.explanation;
    let held = review.comment(mark, &said.clause);
    let file = &review.held.value.listing;
    html! {
        article.finding id=(place(mark, &said.clause)) {
            h4 { (layout::verdict(finding.verdict)) " " (if said.item.is_empty() { "head" } else { &said.item }) ", " (said.title) }
            p { (layout::told(&said.sentence)) }
            @for note in &said.notes { p.quiet { (layout::told(note)) } }
            @if review.is_corrected(&said.clause) { p.open { "A person has corrected how these words were read." } }
            @if let Some(missing) = &said.missing { p.quiet { (layout::told(&missing.help)) } }
            @if !said.words.is_empty() {
                blockquote { (said.words) }
                p { a href={ "/listings/" (piece(file)) "#" (reading::anchor(&said.clause)) } { "In the listing" span.hidden { ", " (said.clause) } } }
            }
            @if let Some(held) = held {
                p.lines { strong { (held.value.by) ", " (held.value.when) ": " } (held.value.comment) }
            }
            @if person.may(Role::Reviewer) {
                details.change {
                    summary { @if held.is_some() { "Change the comment" } @else { "Comment" } span.hidden { " on " (said.clause) " at " (mark) } }
                    form.enter method="post" action={ (path(&review.number)) "/comments" } {
                        (person.field())
                        input type="hidden" name="mark" value=(mark);
                        input type="hidden" name="clause" value=(said.clause);
                        input type="hidden" name="words" value=(said.words);
                        input type="hidden" name="seen" value=(held.map_or(0, |held| held.version));
                        label { "What is to be said" textarea name="comment" rows="2" maxlength=(MOST_IN_COMMENT) { (held.map_or("", |held| &held.value.comment)) } }
                        button { "Record" }
                    }
                }
            }
        }
    }
}
