//! What to ask whom so that nothing stays open. An answer becomes a fact with its source.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use axum::Form;
use axum::extract::State;
use axum::response::Redirect;
use conformance::{Ask, Question};
use maud::{Markup, html};
use serde::Deserialize;
use store::people::Role;
use store::records::AnswerRecord;

use super::{layout, path_of_joint, piece};
use crate::board::Board;
use crate::desk::Desk;
use crate::person::{By, Inspector, Person};
use crate::trouble::Trouble;

/// What must be said before anybody goes and looks.
fn cautions(board: &Board) -> Vec<&'static str> {
    let all: BTreeSet<&str> = board
        .values()
        .flat_map(|found| found.cautions.iter().copied())
        .collect();
    all.into_iter().collect()
}

/// Whom to ask.
pub(super) fn trade(question: &Question) -> &'static str {
    question
        .trade
        .map_or("Nobody in particular", vocabulary::Trade::title)
}

/// The place of a trade on the page.
pub(super) fn anchor(trade: &str) -> String {
    trade
        .to_lowercase()
        .chars()
        .map(|c| if c.is_alphanumeric() { c } else { '-' })
        .collect()
}

pub(super) async fn page(State(desk): State<Arc<Desk>>, person: Person) -> Result<Markup, Trouble> {
    let seen = desk.store.head().await?.seq;
    let questions = desk.questions();
    let (files, cautions) = desk.board(|board| (files(board), cautions(board)));
    let mut last = "";
    let body = html! {
        h1 { "Questions" }
        p { (questions.len()) " would close whatever is open, each asked of whoever can answer it." }
        (layout::cautions(&cautions))
        @for (number, question) in questions.iter().enumerate() {
            @if trade(question) != last {
                h2 id=(anchor(trade(question))) { ({ last = trade(question); last }) }
            }
            (one(&person, question, number, seen, &files))
        }
    };
    Ok(layout::page(&person, "Questions", "/questions", &body))
}

/// The joints that a question is about, each once.
fn joints(question: &Question) -> Vec<&str> {
    let mut joints: Vec<&str> = Vec::new();
    for concern in &question.concerns {
        if !joints.contains(&concern.joint.as_str()) {
            joints.push(&concern.joint);
        }
    }
    joints
}

/// The file of the listing that each joint was checked against.
fn files(board: &Board) -> BTreeMap<String, String> {
    let open = board.values().filter_map(|found| found.open.as_ref());
    open.map(|result| (result.joint.clone(), result.source_name.clone()))
        .collect()
}

/// The path of the clause that a question is about, in its listing.
fn clause(question: &Question, files: &BTreeMap<String, String>) -> Option<String> {
    let concern = question.concerns.first()?;
    let file = files.get(&concern.joint)?;
    let anchor = super::reading::anchor(&concern.clause);
    Some(format!("/listings/{}#{anchor}", piece(file)))
}

fn one(
    person: &Person,
    question: &Question,
    number: usize,
    seen: i64,
    files: &BTreeMap<String, String>,
) -> Markup {
    let joints = joints(question);
    // What a person must judge or confirm is answered where its words are.
    let can_be_answered =
        person.may(Role::Inspector) && !matches!(question.ask, Ask::Judgment | Ask::Confirmation);
    html! {
        article.question {
            h3 { (question.sentence) }
            p.quiet { (question.help) }
            details {
                summary { (joints.len()) @if joints.len() == 1 { " joint" } @else { " joints" } }
                p { @for joint in &joints { a href=(path_of_joint(joint)) { (joint) } " " } }
                @if let Some(concern) = question.concerns.first().filter(|concern| !concern.words.is_empty()) {
                    blockquote { (concern.words) }
                }
            }
            @if let Some(path) = clause(question, files) { p { a href=(path) { "The clause in its listing" } } }
            @if can_be_answered {
                form method="post" action="/questions" {
                    (person.field())
                    input type="hidden" name="seen" value=(seen);
                    input type="hidden" name="question" value=(question.sentence);
                    input type="hidden" name="property" value=(question.property);
                    input type="hidden" name="joints" value=(joints.join("\n"));
                    label for={ "value-" (number) } { "Answer" }
                    input id={ "value-" (number) } name="value" required autocomplete="off";
                    label for={ "source-" (number) } { "Where from" }
                    input id={ "source-" (number) } name="source" required placeholder="measured: tape, 1/16 in.";
                    button { "Enter" @if joints.len() > 1 { " for all " (joints.len()) } }
                }
            }
        }
    }
}

#[derive(Debug, Deserialize)]
pub(super) struct Answer {
    seen: i64,
    question: String,
    property: String,
    joints: String,
    value: String,
    source: String,
}

pub(super) async fn answer(
    State(desk): State<Arc<Desk>>,
    person: By<Inspector>,
    Form(answer): Form<Answer>,
) -> Result<Redirect, Trouble> {
    let asked = AnswerRecord {
        question: answer.question,
        property: answer.property,
        joints: answer
            .joints
            .lines()
            .map(|line| line.trim().to_owned())
            .collect(),
        value: answer.value,
        source: answer.source,
    };
    desk.answer(&person, asked, answer.seen).await?;
    Ok(Redirect::to("/questions"))
}
