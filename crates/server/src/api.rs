//! The same for programs, as JSON, under one prefix; and its description as OpenAPI 3.1, whose schemas are JSON Schema made from the types.

mod lists;

use std::sync::Arc;

use axum::extract::{Path, Query, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use axum::routing::{get, put};
use axum::{Json, Router};
use conformance::JointResult;
use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, SchemaGenerator};
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use store::{Conflict, Head, Made};
use workcard::JointCard;

use crate::desk::Desk;
use crate::person::{By, Inspector};
use crate::trouble::Trouble;

/// Under which path everything stands.
pub(crate) const PREFIX: &str = "/api/v1";

/// The paths, below the prefix.
pub(crate) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/openapi.json", get(description))
        .route("/joints", get(lists::joints))
        .route("/joints/{joint}", get(joint))
        .route("/joints/{joint}/card", get(card))
        .route("/joints/{joint}/facts/{property}", put(enter))
        .route("/questions", get(lists::asked))
        .route("/questions/{question}", get(lists::question))
        .route("/journal", get(journal))
}

/// What is entered of a property.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct FactEntered {
    /// The value, as a schedule's cell has it: `4 pcf`.
    value: String,
    /// Where it comes from, as a schedule has it: `measured: tape, 1/16 in.`
    source: String,
    /// The version that was seen; 0 where nothing was known.
    seen: i64,
}

/// A joint with what was found, and the versions of what is known of it alone.
#[derive(Debug, Serialize, JsonSchema)]
struct JointFound {
    /// What was found; none without a listing.
    result: Option<JointResult>,
    /// The version of each property that is known of the joint itself.
    versions: std::collections::BTreeMap<String, i64>,
}

/// What is wrong.
#[derive(Debug, Serialize, JsonSchema)]
struct Problem {
    /// In a sentence.
    message: String,
    /// What others have changed meanwhile, where that is what is wrong.
    conflicts: Vec<Conflict>,
}

/// A trouble as programs get it.
struct ForPrograms(Trouble);

impl<T: Into<Trouble>> From<T> for ForPrograms {
    fn from(trouble: T) -> Self {
        Self(trouble.into())
    }
}

impl IntoResponse for ForPrograms {
    fn into_response(self) -> Response {
        let status = self.0.status();
        let message = self.0.to_string();
        let conflicts = match self.0 {
            Trouble::Conflicts(conflicts) => conflicts,
            _ => Vec::new(),
        };
        (status, Json(Problem { message, conflicts })).into_response()
    }
}

/// A trouble as programs get it.
pub(crate) fn problem(trouble: Trouble) -> Response {
    ForPrograms(trouble).into_response()
}

async fn joint(
    State(desk): State<Arc<Desk>>,
    Path(name): Path<String>,
) -> Result<Json<JointFound>, ForPrograms> {
    let seen = desk.look(&name).await?;
    let version = |held: &store::Held<_>| (held.key.part.clone(), held.version);
    Ok(Json(JointFound {
        versions: seen.known.iter().map(version).collect(),
        result: seen.result,
    }))
}

async fn card(
    State(desk): State<Arc<Desk>>,
    Path(name): Path<String>,
) -> Result<Json<Option<JointCard>>, ForPrograms> {
    let (_, card) = desk.card(&name).await?;
    Ok(Json(card))
}

async fn enter(
    State(desk): State<Arc<Desk>>,
    person: Result<By<Inspector>, Trouble>,
    Path((joint, property)): Path<(String, String)>,
    Json(fact): Json<FactEntered>,
) -> Result<Json<Head>, ForPrograms> {
    let done = desk
        .enter(
            &person?,
            &joint,
            &property,
            &fact.value,
            &fact.source,
            fact.seen,
        )
        .await?;
    Ok(Json(done.head))
}

#[derive(Debug, Deserialize)]
struct Before {
    before: Option<i64>,
}

async fn journal(
    State(desk): State<Arc<Desk>>,
    Query(query): Query<Before>,
) -> Result<Json<Vec<Made>>, ForPrograms> {
    let before = query.before.unwrap_or(i64::MAX);
    Ok(Json(desk.store.changes_before(before, 100).await?))
}

async fn description() -> Response {
    let kind = [(header::CONTENT_TYPE, "application/json")];
    (kind, openapi().to_string()).into_response()
}

/// The description: OpenAPI 3.1.
pub(crate) fn openapi() -> Value {
    let mut settings = SchemaSettings::draft2020_12();
    settings.definitions_path = "/components/schemas".into();
    let mut schemas = settings.into_generator();
    let paths = json!({
        "/joints": {"get": answers::<lists::JointPage>(
            &mut schemas,
            "The joints at a glance, by name, some at a time: `?after=` and `limit` go on; `storey`, `barrier`, `mark`, `state` and `words` choose",
            &[],
        )},
        "/joints/{joint}": {
            "get": answers::<JointFound>(&mut schemas, "One joint, clause by clause", &["joint"])
        },
        "/joints/{joint}/card": {
            "get": answers::<Option<JointCard>>(&mut schemas, "A joint's work card: what to make and bring; null without a listing", &["joint"])
        },
        "/joints/{joint}/facts/{property}": {
            "put": taking::<FactEntered>(&mut schemas, |schemas| {
                answers::<Head>(schemas, "Enters what is known of a property", &["joint", "property"])
            })
        },
        "/questions": {"get": answers::<lists::QuestionPage>(&mut schemas, "What to ask whom, some at a time: `?after=` and `limit` go on", &[])},
        "/questions/{question}": {"get": answers::<lists::QuestionInFull>(
            &mut schemas,
            "One question with the clauses that it would close, some joints at a time: `?after=` and `limit` go on",
            &["question"],
        )},
        "/journal": {"get": answers::<Vec<Made>>(&mut schemas, "The last hundred changes; those before an entry with `?before=`", &[])},
    });
    json!({
        "openapi": "3.1.0",
        "info": {
            "title": "everyclause",
            "version": env!("CARGO_PKG_VERSION"),
            "description": "The desk's own answers, for programs of this machine; on a team's desk, for those that send the cookie of somebody who has signed in. What changes something must come with `Content-Type: application/json`."
        },
        "servers": [{"url": PREFIX}],
        "paths": paths,
        "components": {"schemas": schemas.take_definitions(true)},
    })
}

fn answers<T: JsonSchema>(
    schemas: &mut SchemaGenerator,
    summary: &str,
    parameters: &[&str],
) -> Value {
    let parameters: Vec<Value> = parameters
        .iter()
        .map(|name| json!({"name": name, "in": "path", "required": true, "schema": {"type": "string"}}))
        .collect();
    let problem = schemas.subschema_for::<Problem>();
    json!({
        "summary": summary,
        "parameters": parameters,
        "responses": {
            "200": {
                "description": "Done",
                "content": {"application/json": {"schema": schemas.subschema_for::<T>()}}
            },
            "default": {
                "description": "It couldn't be done, and nothing was changed; 409 where somebody else was first",
                "content": {"application/json": {"schema": problem}}
            }
        }
    })
}

fn taking<T: JsonSchema>(
    schemas: &mut SchemaGenerator,
    answer: impl FnOnce(&mut SchemaGenerator) -> Value,
) -> Value {
    let mut operation = answer(schemas);
    let schema = schemas.subschema_for::<T>();
    if let Some(operation) = operation.as_object_mut() {
        let body = json!({"required": true, "content": {"application/json": {"schema": schema}}});
        operation.insert("requestBody".to_owned(), body);
    }
    operation
}
