//! A small project, its desk on one machine or for a team, and people who use it.

#![allow(dead_code, reason = "each file of tests uses some of it")]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

use std::path::PathBuf;
use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode, header};
use jiff::Timestamp;
use server::people::{Front, invite};
use server::{Access, Desk};
use site::import::{File, import};
use store::people::Role;
use store::{Change, Store};
use tower::ServiceExt;

use crate::ground::Ground;

pub(crate) const ORIGIN: &str = "https://desk.example.org";
pub(crate) const HOST: &str = "desk.example.org";
pub(crate) const PASSWORD: &str = "quiet copper lantern";
pub(crate) const PORT: u16 = 8452;

/// Two joints of one mark, and a listing.
const SCHEDULE: &str = "joint,mark,joint.width\nJ-001,HW1,7/8 in.\nJ-004,HW1,1-5/16 in.\n";
const MARKS: &str = "mark,title,listing\nHW1,Head of wall,hw-d-0412-ed4\n";
pub(crate) const LISTING: &str = "hw-d-0412-ed4.txt";

/// A store with a small project.
pub(crate) async fn project(ground: &Ground) -> Store {
    project_of(ground, &tables(SCHEDULE, MARKS), &[(LISTING, listing())]).await
}

fn listing() -> Vec<u8> {
    let demo = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo/listings");
    std::fs::read(demo.join(LISTING)).unwrap()
}

/// What a form says of the listing's document.
pub(crate) fn document() -> String {
    let reading = listing::read(LISTING, &listing()).unwrap();
    format!("document={}", reading.source.sha256)
}

/// A schedule and its marks, as files.
pub(crate) fn tables(schedule: &str, marks: &str) -> [(&'static str, Vec<u8>); 2] {
    [
        ("schedule.csv", schedule.into()),
        ("marks.csv", marks.into()),
    ]
}

/// A store with some project.
pub(crate) async fn project_of(
    ground: &Ground,
    files: &[(&str, Vec<u8>)],
    listings: &[(&str, Vec<u8>)],
) -> Store {
    let files: Vec<File<'_>> = files
        .iter()
        .map(|(name, bytes)| File { name, bytes })
        .collect();
    let project = import(&files).unwrap().project;
    let store = ground.make().await;
    let mut edits = store.propose(&project).await.unwrap().edits;
    for (file, bytes) in listings {
        let document = store.attach(bytes.clone()).await.unwrap();
        let proposed = store
            .propose_listing(file, &document, "", None)
            .await
            .unwrap();
        edits.extend(proposed.edits);
    }
    let change = Change {
        by: "Kim".to_owned(),
        at: Timestamp::UNIX_EPOCH,
        what: "took the project's files".to_owned(),
        edits,
    };
    store.change(&change).await.unwrap();
    store
}

/// A desk, as it answers without a network.
pub(crate) struct Asked {
    pub(crate) app: Router,
    pub(crate) store: Store,
    host: String,
    origin: String,
}

/// What was answered.
pub(crate) struct Answered {
    pub(crate) status: StatusCode,
    pub(crate) headers: HeaderMap,
    pub(crate) text: String,
}

impl Answered {
    /// The first cookie it sets that begins with a name: the name and value alone.
    pub(crate) fn cookie(&self, name: &str) -> Option<String> {
        let set = self.headers.get_all(header::SET_COOKIE);
        let mut cookies = set.iter().map(|cookie| cookie.to_str().unwrap());
        let cookie = cookies.find(|cookie| cookie.starts_with(&format!("{name}=")))?;
        Some(cookie.split(';').next().unwrap().to_owned())
    }

    /// The token of its first form.
    pub(crate) fn form_token(&self) -> String {
        let (_, rest) = self
            .text
            .split_once("name=\"form_token\" value=\"")
            .unwrap_or_else(|| panic!("no form token in {}", self.text));
        rest.split('"').next().unwrap().to_owned()
    }

    pub(crate) fn location(&self) -> &str {
        self.headers[header::LOCATION].to_str().unwrap()
    }
}

pub(crate) async fn here(store: Store) -> Asked {
    let desk = Arc::new(Desk::over(store.clone()).await.unwrap());
    desk.look_at_all().await.unwrap();
    Asked {
        app: server::app(desk, Access::here("Lee", PORT)),
        store,
        host: format!("localhost:{PORT}"),
        origin: format!("http://localhost:{PORT}"),
    }
}

pub(crate) async fn team(store: Store) -> Asked {
    let desk = Arc::new(Desk::over(store.clone()).await.unwrap());
    desk.look_at_all().await.unwrap();
    let front = Front::at(ORIGIN, ([127, 0, 0, 1], PORT).into(), true).unwrap();
    let access = Access::team(store.clone(), front).unwrap();
    Asked {
        app: server::app(desk, access),
        store,
        host: HOST.to_owned(),
        origin: ORIGIN.to_owned(),
    }
}

impl Asked {
    pub(crate) async fn ask(&self, request: Request<Body>) -> Answered {
        let response = self.app.clone().oneshot(request).await.unwrap();
        let (parts, body) = response.into_parts();
        let bytes = to_bytes(body, usize::MAX).await.unwrap();
        Answered {
            status: parts.status,
            headers: parts.headers,
            text: String::from_utf8(bytes.to_vec()).unwrap(),
        }
    }

    pub(crate) fn request(
        &self,
        method: &str,
        path: &str,
        cookie: &str,
    ) -> axum::http::request::Builder {
        let mut request = Request::builder()
            .method(method)
            .uri(path)
            .header(header::HOST, &self.host)
            .header("x-forwarded-for", "192.0.2.1");
        if !cookie.is_empty() {
            request = request.header(header::COOKIE, cookie);
        }
        if method != "GET" {
            request = request.header(header::ORIGIN, &self.origin);
        }
        request
    }

    pub(crate) async fn get(&self, path: &str, cookie: &str) -> Answered {
        let request = self.request("GET", path, cookie).body(Body::empty());
        self.ask(request.unwrap()).await
    }

    /// Sends a form as it is.
    pub(crate) async fn post(&self, path: &str, cookie: &str, form: &str) -> Answered {
        let request = self
            .request("POST", path, cookie)
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .body(Body::from(form.to_owned()));
        self.ask(request.unwrap()).await
    }

    /// Opens an invitation, and sets a name and a password.
    pub(crate) async fn take_up(&self, path: &str, name: &str, password: &str) -> Answered {
        let page = self.get(path, "").await;
        assert_eq!(page.status, StatusCode::OK, "{}", page.text);
        let cookie = page.cookie("__Host-everyclause-door").unwrap();
        let name = name.replace(' ', "+");
        let password = password.replace(' ', "+");
        let token = page.form_token();
        let form =
            format!("form_token={token}&name={name}&password={password}&repeated={password}");
        self.post(path, &cookie, &form).await
    }

    /// Somebody who has signed in.
    pub(crate) async fn somebody(&self, name: &str, role: Role) -> Somebody<'_> {
        let invited = invite(&self.store, "Kim", name, role, false).await.unwrap();
        let done = self.take_up(&invited.path, name, PASSWORD).await;
        assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
        self.with(done.cookie("__Host-everyclause").unwrap()).await
    }

    /// Whoever has a cookie.
    pub(crate) async fn with(&self, cookie: String) -> Somebody<'_> {
        let token = self.get("/", &cookie).await.form_token();
        Somebody {
            desk: self,
            cookie,
            token,
        }
    }

    /// Signs in.
    pub(crate) async fn sign_in(&self, name: &str, password: &str, from: &str) -> Answered {
        let page = self.get("/sign-in", "").await;
        let cookie = page.cookie("__Host-everyclause-door").unwrap();
        let form = format!(
            "form_token={}&name={}&password={}&to=%2F",
            page.form_token(),
            name.replace(' ', "+"),
            password.replace(' ', "+")
        );
        let request = Request::post("/sign-in")
            .header(header::HOST, &self.host)
            .header(header::ORIGIN, &self.origin)
            .header(header::COOKIE, cookie)
            .header("x-forwarded-for", from)
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .body(Body::from(form));
        self.ask(request.unwrap()).await
    }
}

/// Somebody who has signed in to a desk.
pub(crate) struct Somebody<'d> {
    desk: &'d Asked,
    pub(crate) cookie: String,
    pub(crate) token: String,
}

impl Somebody<'_> {
    pub(crate) async fn get(&self, path: &str) -> Answered {
        self.desk.get(path, &self.cookie).await
    }

    /// Sends a form with its token.
    pub(crate) async fn post(&self, path: &str, form: &str) -> Answered {
        let form = format!("form_token={}&{form}", self.token);
        self.desk.post(path, &self.cookie, &form).await
    }
}
