//! What to ask whom so that nothing stays open: by trade, some at a time. An answer becomes a fact with its source.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use conformance::{Ask, Question};
use maud::{Markup, html};
use serde::Deserialize;
use store::people::Role;
use vocabulary::Trade;
use wording::property;

use super::{layout, path_of_joint, piece};
use crate::answering::Answered;
use crate::board::{Asked, Board, Point, Whom};
use crate::desk::Desk;
use crate::person::{By, Inspector, Person};
use crate::trouble::Trouble;

/// How many questions a page has.
const ON_PAGE: usize = 30;

/// How many joints a page of one question has.
const JOINTS_ON_PAGE: usize = 100;

/// What stands for the trade of a question that is nobody's in particular.
const NOBODY: &str = "nobody";

/// Whom to ask.
pub(super) fn title(trade: Option<Trade>) -> &'static str {
    trade.map_or("Nobody in particular", Trade::title)
}

/// The path of a trade's questions.
pub(super) fn path(trade: Option<Trade>) -> String {
    format!("/questions?trade={}", trade.map_or(NOBODY, Trade::name))
}

/// Which questions a page has.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Which {
    /// A trade's name; of every trade, where it is empty.
    trade: String,
    /// The question after which they go on.
    after: String,
}

impl Which {
    fn whom(&self) -> Result<Whom, Trouble> {
        match self.trade.as_str() {
            "" => Ok(Whom::Anybody),
            NOBODY => Ok(Whom::Only(None)),
            name => {
                let known = Trade::ALL.iter().find(|trade| trade.name() == name);
                let unknown = || Trouble::Unknown(format!("There is no trade {name}."));
                Ok(Whom::Only(Some(*known.ok_or_else(unknown)?)))
            }
        }
    }
}

pub(super) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Query(which): Query<Which>,
) -> Result<Markup, Trouble> {
    shown(&desk, &person, &which, None).await
}

async fn shown(
    desk: &Desk,
    person: &Person,
    which: &Which,
    trouble: Option<&Markup>,
) -> Result<Markup, Trouble> {
    let seen = desk.catch_up().await?;
    let whom = which.whom()?;
    let body = desk.board(|board| {
        let questions = board.questions();
        let after: Vec<&Asked> = if which.after.is_empty() {
            questions.of(whom).take(ON_PAGE + 1).collect()
        } else {
            let after = questions.after(&which.after, whom);
            let unknown = || Trouble::Unknown("There is no such page of questions.".to_owned());
            after.ok_or_else(unknown)?.take(ON_PAGE + 1).collect()
        };
        let shown = after.get(..ON_PAGE).unwrap_or(&after);
        let more = shown.last().filter(|_| after.len() > ON_PAGE);
        let mut last = None;
        Ok::<_, Trouble>(html! {
            h1 { "Questions" }
            @if let Some(trouble) = trouble { div.trouble role="alert" { (trouble) } }
            p { (questions.len()) " would close whatever is open, each asked of whoever can answer it." }
            @if board.all().waiting > 0 {
                p role="status" { (board.all().waiting) " joints aren't checked yet: what they leave open is still to come." }
            }
            (layout::cautions(&board.cautions()))
            (trades(board, whom))
            @for asked in shown {
                @let of = asked.topic.trade();
                @if last != Some(of) { h2 { ({ last = Some(of); title(of) }) } }
                (one(person, board, asked, seen))
            }
            @if let Some(more) = more {
                p { a rel="next" href={ "/questions?trade=" (which.trade) "&after=" (more.id) } { "Further questions" } }
            }
        })
    })?;
    Ok(layout::page(person, "Questions", "/questions", &body))
}

/// How many there are of each trade, each leading to its own.
fn trades(board: &Board, shown: Whom) -> Markup {
    html! {
        nav aria-label="Trades" {
            ul.counts {
                li { a href="/questions" aria-current=[(shown == Whom::Anybody).then_some("page")] { "All" } }
                @for (trade, count) in board.questions().by_trade() {
                    li { a href=(path(trade)) aria-current=[(shown == Whom::Only(trade)).then_some("page")] { (title(trade)) } ": " (count) }
                }
            }
        }
    }
}

#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct After {
    /// The joint after which the page goes on.
    after: String,
}

/// One question, with the joints that it is about.
pub(super) async fn details(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Path(id): Path<String>,
    Query(from): Query<After>,
) -> Result<Markup, Trouble> {
    let seen = desk.catch_up().await?;
    let body = desk.board(|board| {
        let asked = board.questions().get(&id)?;
        let joints: Vec<&str> = asked.joints_after(&from.after).take(JOINTS_ON_PAGE + 1).collect();
        let shown = joints.get(..JOINTS_ON_PAGE).unwrap_or(&joints);
        let more = shown.last().filter(|_| joints.len() > JOINTS_ON_PAGE);
        Some(html! {
            h1 { "Question" }
            (layout::cautions(&board.cautions()))
            (one(&person, board, asked, seen))
            h2 { "At " (asked.count()) @if asked.count() == 1 { " joint" } @else { " joints" } }
            div.wide tabindex="0" role="region" aria-label="The joints, as a table" {
                table {
                    thead { tr { th scope="col" { "Joint" } th scope="col" { "Clause" } th scope="col" { "Why it is open" } } }
                    tbody { @for joint in shown { @for (card, point) in board.points(joint, asked) { (line(&card.name, point)) } } }
                }
            }
            @if let Some(more) = more { p { a rel="next" href={ "?after=" (piece(more)) } { "Further joints" } } }
        })
    });
    let body = body.ok_or_else(|| Trouble::Unknown("Nobody asks this any more.".to_owned()))?;
    Ok(layout::page(&person, "Question", "", &body))
}

fn line(joint: &str, point: &Point) -> Markup {
    html! {
        tr {
            th scope="row" { a href=(path_of_joint(joint)) { (joint) } }
            td { a href=(clause(point)) { (point.clause) } }
            td { (layout::told(&point.sentence)) }
        }
    }
}

/// The path of an open clause in its listing.
fn clause(point: &Point) -> String {
    let anchor = super::reading::anchor(&point.clause);
    format!("/listings/{}#{anchor}", piece(&point.file))
}

fn one(person: &Person, board: &Board, asked: &Asked, seen: i64) -> Markup {
    let question = board.question(asked);
    let point = asked.joints().next();
    let point = point.and_then(|joint| board.points(joint, asked).next());
    html! {
        @if let (Some(question), Some((_, point))) = (question, point) {
            article.question {
                h3 { (layout::told(&question.sentence)) }
                p.quiet { (layout::told(&question.help)) }
                // Where the clause itself is asked about, its words stand in the question.
                @if !point.words.is_empty() && !is_about_words(&question) {
                    blockquote { (point.words) }
                    p.quiet { "The listing asks for " (point.requirement) "." }
                }
                p {
                    a href={ "/questions/" (asked.id) } { "At " (asked.count()) @if asked.count() == 1 { " joint" } @else { " joints" } }
                    " · " a href=(clause(point)) { "The clause in its listing" }
                }
                (answering(person, asked, &question, seen))
            }
        }
    }
}

/// Whether a person must judge or confirm the clause itself.
const fn is_about_words(question: &Question) -> bool {
    matches!(question.ask, Ask::Judgment | Ask::Confirmation)
}

fn answering(person: &Person, asked: &Asked, question: &Question, seen: i64) -> Markup {
    // What a person must judge or confirm is answered where its words are.
    let can_be_answered = person.may(Role::Inspector) && !is_about_words(question);
    let id = &asked.id;
    html! {
        @if can_be_answered {
            form method="post" action="/questions" {
                (person.field())
                input type="hidden" name="seen" value=(seen);
                input type="hidden" name="question" value=(id);
                input type="hidden" name="property" value=(question.property);
                input type="hidden" name="joints" value=(asked.mark());
                label for={ "value-" (id) } { "Answer" }
                input id={ "value-" (id) } name="value" required autocomplete="off";
                label for={ "source-" (id) } { "Where from" }
                input id={ "source-" (id) } name="source" required placeholder="measured: tape, 1/16 in.";
                button { "Enter" @if asked.count() > 1 { " for all " (asked.count()) } }
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
) -> Result<Response, Trouble> {
    let answered = Answered {
        question: answer.question,
        property: answer.property,
        joints: answer.joints,
        value: answer.value,
        source: answer.source,
    };
    let trouble = match desk.answer(&person, &answered, answer.seen).await {
        Ok(_) => return Ok(Redirect::to("/questions").into_response()),
        Err(trouble) => trouble.told()?,
    };
    let told = html! { (trouble.shown()) (kept(&answered)) };
    let page = shown(&desk, &person, &Which::default(), Some(&told)).await?;
    Ok((trouble.status(), page).into_response())
}

/// What a person has answered that wasn't taken, so that they needn't remember it.
fn kept(answered: &Answered) -> Markup {
    html! {
        p { "You answered, of " (property::title(&answered.property)) ": " strong { (answered.value) } ", " (answered.source) "." }
    }
}
