//! What the desk answers, and whom it refuses.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod changes;
#[path = "../support/ground.rs"]
mod ground;
mod pages;
mod programs;
#[path = "../support/mod.rs"]
mod support;

use std::path::PathBuf;
use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode, header};
use serde_json::Value;
use server::{Access, Desk};
use store::records::Known;
use store::{Key, Owner, Store};
use support::{PORT, project_of};
use tower::ServiceExt;

use ground::Ground;

/// A desk over the demo's project.
struct Demo {
    app: Router,
    desk: Arc<Desk>,
    store: Store,
}

async fn demo(ground: &Ground) -> Demo {
    let from = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    let read = |name: &str| std::fs::read(from.join(name)).unwrap();
    let files = ["schedule.csv", "marks.csv", "barriers.csv", "building.toml"];
    let files = files.map(|name| (name, read(name)));
    let listings = [
        "hw-d-0412-ed4.txt",
        "ff-d-1102.txt",
        "hw-d-0437.txt",
        "hw-d-0455.txt",
    ];
    let listings = listings.map(|name| (name, read(&format!("listings/{name}"))));
    let store = project_of(ground, &files, &listings).await;
    let desk = Arc::new(Desk::over(store.clone()).await.unwrap());
    desk.look_at_all().await.unwrap();
    Demo {
        app: server::app(desk.clone(), Access::here("Lee", PORT)),
        desk,
        store,
    }
}

/// What was answered.
struct Answered {
    status: StatusCode,
    headers: HeaderMap,
    text: String,
}

impl Demo {
    async fn ask(&self, request: Request<Body>) -> Answered {
        let response = self.app.clone().oneshot(request).await.unwrap();
        let (parts, body) = response.into_parts();
        let bytes = to_bytes(body, usize::MAX).await.unwrap();
        Answered {
            status: parts.status,
            headers: parts.headers,
            text: String::from_utf8(bytes.to_vec()).unwrap(),
        }
    }

    async fn json(&self, path: &str) -> Value {
        let answered = self.get(path).await;
        assert_eq!(answered.status, StatusCode::OK, "{path}: {}", answered.text);
        serde_json::from_str(&answered.text).unwrap()
    }

    async fn get(&self, path: &str) -> Answered {
        let request = Request::get(path).header(header::HOST, format!("localhost:{PORT}"));
        self.ask(request.body(Body::empty()).unwrap()).await
    }

    async fn post(&self, path: &str, form: &str) -> Answered {
        let request = Request::post(path)
            .header(header::HOST, format!("localhost:{PORT}"))
            .header(header::ORIGIN, format!("http://localhost:{PORT}"))
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded");
        self.ask(request.body(Body::from(form.to_owned())).unwrap())
            .await
    }

    async fn put(&self, path: &str, body: &Value) -> Answered {
        let request = Request::put(path)
            .header(header::HOST, format!("127.0.0.1:{PORT}"))
            .header(header::CONTENT_TYPE, "application/json");
        self.ask(request.body(Body::from(body.to_string())).unwrap())
            .await
    }

    async fn width(&self, joint: &str) -> (i64, String) {
        let key = Key::fact(&Owner::Joint(joint.to_owned()), "joint.width");
        let held = self.store.get::<Known>(&key).await.unwrap().unwrap();
        let Known::Fact(fact) = held.value else {
            panic!("{joint} has no width");
        };
        (held.version, fact.value.to_string())
    }
}
