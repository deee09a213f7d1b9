//! The letter that goes back with a submittal: the reviewer's outcome and comments, on paper.

use std::sync::Arc;

use axum::extract::{Path, State};
use conformance::{JointResult, Verdict};
use maud::{Markup, html};
use selection::Asked;
use store::records::{CommentRecord, Held};
use wording::property;
use wording::text::{counted, listed};

use super::{files, path};
use crate::desk::Desk;
use crate::pages::layout;
use crate::person::Person;
use crate::submitting::Review;
use crate::trouble::Trouble;

/// What must stand below a review.
const STANDING: [&str; 3] = [
    "This review compares what was submitted with the clauses of the listing named above, as read and recorded. It is no approval of the \
     construction: approval belongs to the authority having jurisdiction, and local codes and licensed practice decide.",
    "It doesn't relieve the contractor of the listing's every word, of the contract documents, or of coordination, quantities, dimensions \
     and the means and methods of the work.",
    "Before work begins: keep dust and fibres off people, work from a proper platform, have fireproofing in an older building tested for \
     asbestos before it is disturbed, and make good what is opened as the listing says.",
];

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Path(number): Path<String>,
) -> Result<Markup, Trouble> {
    let review = desk.review(&number).await?;
    let project = desk.project();
    let title = format!("Letter on submittal {number}");
    let body = html! {
        p.screen { a href=(path(&number)) { "Back to the review" } ". Print this page for the letter." }
        article.letter {
            (letter(&review, &project.building.name))
        }
    };
    Ok(layout::page(&person, &title, "/submittals", &body))
}

fn letter(review: &Review, building: &str) -> Markup {
    let record = &review.held.value;
    html! {
        h1 { "Submittal " (review.number) ": " (record.title) }
        dl.head {
            @if !building.is_empty() { dt { "Project" } dd { (building) } }
            dt { "To" } dd { (record.from) }
            dt { "Received" } dd { (record.received) }
            dt { "For marks" } dd { (listed(&record.marks)) }
            dt { "Listing" } dd { (proposed_listing(review)) }
            @for fact in &record.proposed { dt { (property::title(&fact.property)) } dd { (fact.value) } }
        }
        @if !review.files.is_empty() {
            h2 { "Files submitted" }
            ul { @for file in &review.files { li { (file.held.value.file) ", " (files::size(file.held.value.bytes)) code.hash { "SHA-256 " (file.held.value.sha256) } } } }
        }
        h2 { "Outcome" }
        @match &record.outcome {
            None => p { strong { "Draft: no reviewer has said yet what comes of it." } },
            Some(outcome) => {
                p { strong { (capital(outcome.outcome.words())) } }
                @if !outcome.note.is_empty() { p.lines { (outcome.note) } }
            },
        }
        h2 { "Comments" }
        @if review.comments.is_empty() { p { "None." } } @else { (comments(review)) }
        h2 { "What was compared" }
        @for (asked, result) in &review.marks { (compared(review, asked, result.as_ref())) }
        @for line in STANDING { p { (line) } }
        @if let Some(outcome) = &record.outcome {
            p.signed { (outcome.by) br; (outcome.when) }
        }
    }
}

fn proposed_listing(review: &Review) -> String {
    let mut results = review
        .marks
        .iter()
        .filter_map(|(_, result)| result.as_ref());
    let file = &review.held.value.listing;
    match results.next() {
        Some(result) if result.edition.is_empty() => format!("{} ({file})", result.listing),
        Some(result) => format!("{}, {} ({file})", result.listing, result.edition),
        None => file.clone(),
    }
}

/// The comments, those on the whole first, then by mark and in the order of the listing's clauses.
fn comments(review: &Review) -> Markup {
    let mut comments: Vec<&Held<CommentRecord>> = review.comments.iter().collect();
    comments.sort_by_key(|held| (order(review, &held.value), held.since));
    html! {
        ol {
            @for held in comments {
                @let comment = &held.value;
                li {
                    p.lines {
                        strong { "Mark " (comment.mark) @if !comment.clause.is_empty() { ", clause " (comment.clause) } ": " }
                        (comment.comment)
                    }
                    @if !comment.words.is_empty() { blockquote { (comment.words) } }
                }
            }
        }
    }
}

fn order(review: &Review, comment: &CommentRecord) -> (Option<usize>, Option<usize>) {
    let mark = review
        .marks
        .iter()
        .position(|(asked, _)| asked.name == comment.mark);
    let result = mark
        .and_then(|at| review.marks.get(at))
        .and_then(|(_, result)| result.as_ref());
    let clause = result.and_then(|result| {
        let mut findings = result.findings.iter();
        findings.position(|finding| finding.explanation.clause == comment.clause)
    });
    (mark, clause)
}

fn compared(review: &Review, asked: &Asked, result: Option<&JointResult>) -> Markup {
    html! {
        @if let Some(result) = result {
            p {
                "Mark " (asked.name) " (" (counted(asked.joints.len(), "joint", "joints")) "), of "
                (counted(result.findings.len(), "clause", "clauses")) ": "
                (result.counts.met) " met, " (result.counts.judged) " judged, " (result.counts.not_met) " not met, "
                (result.counts.open) " open, " (result.counts.not_applicable) " not applicable."
            }
            @if result.counts.not_met > 0 {
                ul {
                    @for finding in result.with(Verdict::NotMet) {
                        li {
                            (finding.explanation.sentence)
                            @if review.is_corrected(&finding.explanation.clause) { " (As a person has corrected the reading of the listing.)" }
                        }
                    }
                }
            }
        } @else {
            p { "Mark " (asked.name) ": the listing that is proposed isn't at hand." }
        }
    }
}

fn capital(words: &str) -> String {
    let mut chars = words.chars();
    let first = chars.next().into_iter().flat_map(char::to_uppercase);
    first.chain(chars.clone()).collect()
}
