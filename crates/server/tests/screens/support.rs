//! A desk over a store of its own, and how to ask it.

use std::path::PathBuf;
use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode, header};
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use server::{Access, Desk};
use store::{Owner, Store};
use tower::ServiceExt as _;

use crate::ground::Ground;

const PORT: u16 = 8452;

/// A desk, and the store that it is over.
pub(crate) struct Sat {
    app: Router,
    pub(crate) desk: Arc<Desk>,
    pub(crate) store: Store,
}

/// What was answered.
#[derive(Debug)]
pub(crate) struct Answered {
    pub(crate) status: StatusCode,
    /// Where it leads on.
    pub(crate) to: String,
    pub(crate) text: String,
}

/// A file of the demo.
pub(crate) fn demo_file(name: &str) -> Vec<u8> {
    let from = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    std::fs::read(from.join(name)).unwrap()
}

impl Sat {
    /// A desk over an empty store.
    pub(crate) async fn down(ground: &Ground) -> Self {
        Self::over(ground.make().await).await
    }

    /// A desk over a store.
    pub(crate) async fn over(store: Store) -> Self {
        let desk = Arc::new(Desk::over(store.clone()).await.unwrap());
        Self {
            app: server::app(desk.clone(), Access::here("Lee", PORT)),
            desk,
            store,
        }
    }

    /// Another desk over the same store, which keeps nothing yet.
    pub(crate) async fn started_anew(&self) -> Self {
        Self::over(self.store.clone()).await
    }

    /// Enters a value of a joint's property that somebody has just seen.
    pub(crate) async fn enter(&self, joint: &str, property: &str, value: &str) -> Answered {
        let owner = Owner::Joint(joint.to_owned());
        let known = self.store.known(&owner).await.unwrap();
        let held = known.iter().find(|held| held.key.part == property);
        let seen = held.map_or(0, |held| held.version).to_string();
        let form = [
            ("property", property),
            ("value", value),
            ("source", "measured: tape, 1/16 in."),
            ("seen", &seen),
        ];
        self.post(&format!("/joints/{joint}/facts"), &form).await
    }

    /// A desk over the demo's project with some of its listings, none of which is confirmed.
    pub(crate) async fn with(ground: &Ground, listings: &[&str]) -> Self {
        let sat = Self::down(ground).await;
        let mut files: Vec<(&str, Vec<u8>)> =
            ["schedule.csv", "marks.csv", "barriers.csv", "building.toml"]
                .map(|name| (name, demo_file(name)))
                .to_vec();
        files.extend(
            listings
                .iter()
                .map(|name| (*name, demo_file(&format!("listings/{name}")))),
        );
        let brought = sat.bring(&files).await;
        let shown = sat.get(&brought.to).await.text;
        let mut form = vec![("tables", "yes"), ("shown", mark(&shown))];
        form.extend(listings.iter().map(|name| ("listing", *name)));
        let taken = sat.post(&brought.to, &form).await;
        assert_eq!(taken.status, StatusCode::SEE_OTHER, "{}", taken.text);
        sat.desk.look_at_all().await.unwrap();
        sat
    }

    /// Brings a listing, and takes it.
    pub(crate) async fn take(&self, name: &str, bytes: Vec<u8>) {
        let brought = self.bring(&[(name, bytes)]).await;
        let shown = self.get(&brought.to).await.text;
        let form = [("shown", mark(&shown)), ("listing", name)];
        let taken = self.post(&brought.to, &form).await;
        assert_eq!(taken.status, StatusCode::SEE_OTHER, "{}", taken.text);
    }

    pub(crate) async fn get(&self, path: &str) -> Answered {
        let request = Request::get(path).header(header::HOST, format!("localhost:{PORT}"));
        self.ask(request.body(Body::empty()).unwrap()).await
    }

    pub(crate) async fn post(&self, path: &str, form: &[(&str, &str)]) -> Answered {
        let encoded = |text: &str| utf8_percent_encode(text, NON_ALPHANUMERIC).to_string();
        let fields: Vec<String> = form
            .iter()
            .map(|(name, value)| format!("{}={}", encoded(name), encoded(value)))
            .collect();
        self.send(
            path,
            "application/x-www-form-urlencoded",
            fields.join("&").into(),
        )
        .await
    }

    /// Sends files as the form of the import page does.
    pub(crate) async fn bring(&self, files: &[(&str, Vec<u8>)]) -> Answered {
        self.bring_to("/import", files).await
    }

    /// Sends files as a form for files does.
    pub(crate) async fn bring_to(&self, path: &str, files: &[(&str, Vec<u8>)]) -> Answered {
        const BETWEEN: &str = "a-line-that-no-file-of-these-holds";
        let mut body = Vec::new();
        for (name, bytes) in files {
            let head = format!(
                "--{BETWEEN}\r\nContent-Disposition: form-data; name=\"files\"; filename=\"{name}\"\r\n\r\n"
            );
            body.extend(head.as_bytes());
            body.extend(bytes);
            body.extend(b"\r\n");
        }
        body.extend(format!("--{BETWEEN}--\r\n").as_bytes());
        self.send(
            path,
            &format!("multipart/form-data; boundary={BETWEEN}"),
            body,
        )
        .await
    }

    async fn send(&self, path: &str, kind: &str, body: Vec<u8>) -> Answered {
        let request = Request::post(path)
            .header(header::HOST, format!("localhost:{PORT}"))
            .header(header::ORIGIN, format!("http://localhost:{PORT}"))
            .header(header::CONTENT_TYPE, kind);
        self.ask(request.body(Body::from(body)).unwrap()).await
    }

    /// What comes back where that is no page.
    pub(crate) async fn bytes(&self, path: &str) -> (HeaderMap, Vec<u8>) {
        let request = Request::get(path).header(header::HOST, format!("localhost:{PORT}"));
        let request = request.body(Body::empty()).unwrap();
        let response = self.app.clone().oneshot(request).await.unwrap();
        let (parts, body) = response.into_parts();
        assert_eq!(parts.status, StatusCode::OK, "{path}");
        (
            parts.headers,
            to_bytes(body, usize::MAX).await.unwrap().to_vec(),
        )
    }

    async fn ask(&self, request: Request<Body>) -> Answered {
        let response = self.app.clone().oneshot(request).await.unwrap();
        let (parts, body) = response.into_parts();
        let bytes = to_bytes(body, usize::MAX).await.unwrap();
        let to = parts.headers.get(header::LOCATION);
        Answered {
            status: parts.status,
            to: to.map_or("", |to| to.to_str().unwrap()).to_owned(),
            text: String::from_utf8(bytes.to_vec()).unwrap(),
        }
    }
}

/// The value of the hidden field that stands for what was shown.
pub(crate) fn mark(page: &str) -> &str {
    hidden(page, "shown")
}

/// The value of a page's first hidden field of a name.
pub(crate) fn hidden<'p>(page: &'p str, name: &str) -> &'p str {
    let field = format!("name=\"{name}\" value=\"");
    let (_, after) = page
        .split_once(&field)
        .unwrap_or_else(|| panic!("no {name} in {page}"));
    after.split('"').next().unwrap()
}
