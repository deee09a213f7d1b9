//! Lists for programs: some at a time, each answer saying where the next goes on.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, Query, State};
use conformance::{Overall, Question};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::ForPrograms;
use crate::board::{Asked, Filter, Row, Whom};
use crate::desk::Desk;
use crate::trouble::Trouble;

/// A joint at a glance.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct JointAtGlance {
    /// Its name.
    joint: String,
    /// Its mark.
    mark: String,
    /// Its storey.
    storey: Option<String>,
    /// The barrier it lies in.
    barrier: Option<String>,
    /// What it comes to; none while it wasn't checked yet.
    overall: Option<Overall>,
    /// How many clauses aren't met.
    not_met: Option<u32>,
    /// Whether the reading of its listing isn't confirmed.
    provisional: Option<bool>,
}

/// How many things an answer has.
#[derive(Debug, Deserialize)]
pub(super) struct Limit {
    limit: Option<usize>,
}

/// How many things an answer has unless somebody says otherwise.
const USUAL: usize = 100;

/// The most things that an answer has.
const MOST: usize = 1000;

impl Limit {
    fn most(&self) -> usize {
        self.limit.unwrap_or(USUAL).clamp(1, MOST)
    }
}

/// Some of the joints.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct JointPage {
    /// How many there are in all, in this answer or not.
    count: usize,
    /// Those of this answer, by name.
    joints: Vec<JointAtGlance>,
    /// What to ask with as `after` for those that follow; none when there are no more.
    next: Option<String>,
}

pub(super) async fn joints(
    State(desk): State<Arc<Desk>>,
    Query(filter): Query<Filter>,
    Query(limit): Query<Limit>,
) -> Result<Json<JointPage>, ForPrograms> {
    desk.catch_up().await?;
    let named = |name: &Arc<str>| (!name.is_empty()).then(|| name.to_string());
    Ok(Json(desk.board(|board| {
        let chosen = board.choose(&filter, limit.most());
        let at_glance = |row: &&Row| {
            let (card, found) = (&row.card, row.found.as_ref());
            JointAtGlance {
                joint: card.name.to_string(),
                mark: card.mark.to_string(),
                storey: named(&card.place.0),
                barrier: named(&card.place.1),
                overall: found.map(|found| found.overall),
                not_met: found.map(|found| found.not_met),
                provisional: found.map(|found| found.is_provisional),
            }
        };
        let last = chosen.rows.last().filter(|_| chosen.has_more);
        JointPage {
            count: chosen.count,
            next: last.map(|row| row.card.name.to_string()),
            joints: chosen.rows.iter().map(at_glance).collect(),
        }
    })))
}

/// Where an answer goes on.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct After {
    after: String,
}

/// A question, without what it concerns.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct QuestionAtGlance {
    /// What it goes by.
    id: String,
    /// At how many joints it would close something.
    joints: usize,
    /// The question, with the first clause that it would close.
    #[serde(flatten)]
    question: Question,
}

/// Some of the questions.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct QuestionPage {
    /// How many there are in all.
    count: usize,
    /// Those of this answer, by trade and stage.
    questions: Vec<QuestionAtGlance>,
    /// What to ask with as `after` for those that follow; none when there are no more.
    next: Option<String>,
}

pub(super) async fn asked(
    State(desk): State<Arc<Desk>>,
    Query(from): Query<After>,
    Query(limit): Query<Limit>,
) -> Result<Json<QuestionPage>, ForPrograms> {
    desk.catch_up().await?;
    let most = limit.most();
    let some = desk.board(|board| {
        let questions = board.questions();
        let mut some: Vec<&Asked> = if from.after.is_empty() {
            questions.of(Whom::Anybody).take(most + 1).collect()
        } else {
            questions
                .after(&from.after, Whom::Anybody)?
                .take(most + 1)
                .collect()
        };
        let has_more = some.len() > most;
        some.truncate(most);
        let at_glance = |asked: &&Asked| {
            Some(QuestionAtGlance {
                id: asked.id.to_string(),
                joints: asked.count(),
                question: board.question(asked)?,
            })
        };
        let last = some.last().filter(|_| has_more);
        Some(QuestionPage {
            count: questions.len(),
            next: last.map(|asked| asked.id.to_string()),
            questions: some.iter().filter_map(at_glance).collect(),
        })
    });
    let unknown = || Trouble::Unknown("There is no question to go on after.".to_owned());
    Ok(Json(some.ok_or_else(unknown)?))
}

/// A question with some of what it concerns.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct QuestionInFull {
    /// The question; its clauses are those of some of its joints.
    question: Question,
    /// The joint to ask with as `after` for the clauses of those that follow; none when there are no more.
    next: Option<String>,
}

pub(super) async fn question(
    State(desk): State<Arc<Desk>>,
    Path(id): Path<String>,
    Query(from): Query<After>,
    Query(limit): Query<Limit>,
) -> Result<Json<QuestionInFull>, ForPrograms> {
    desk.catch_up().await?;
    let most = limit.most();
    let found = desk.board(|board| {
        let asked = board.questions().get(&id)?;
        let mut joints: Vec<&str> = asked.joints_after(&from.after).take(most + 1).collect();
        let has_more = joints.len() > most;
        joints.truncate(most);
        let points = joints.iter().flat_map(|joint| board.points(joint, asked));
        Some(QuestionInFull {
            question: Question {
                concerns: points.map(|(card, point)| point.at(card)).collect(),
                ..board.question(asked)?
            },
            next: joints
                .last()
                .filter(|_| has_more)
                .map(|name| (*name).to_owned()),
        })
    });
    let unknown = || Trouble::Unknown("Nobody asks this any more.".to_owned());
    Ok(Json(found.ok_or_else(unknown)?))
}
