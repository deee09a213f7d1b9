//! The desk's selection answers as `find` does, on the same project: when it starts, as listings are confirmed, come and change, and when it starts
//! again with what was kept.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod common;

use std::fs;
use std::path::Path;
use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::Request;
use common::{demo, run};
use serde_json::Value;
use server::{Access, Desk};
use store::{Place, Store};
use tower::ServiceExt as _;

/// How many a page tells of those that need changes; of those with open questions the demo has fewer than a page tells.
const MOST: &str = "10";

async fn desk(store: &Path) -> Router {
    let place = Place::File(store.to_owned());
    let store = Store::open(&place, &place.attachments().unwrap()).await;
    let desk = Desk::over(store.unwrap()).await.unwrap();
    server::app(Arc::new(desk), Access::here("Lee", 8452))
}

async fn page(desk: &Router, path: &str) -> String {
    let request = Request::get(path)
        .header("host", "localhost:8452")
        .body(Body::empty());
    let response = desk.clone().oneshot(request.unwrap()).await.unwrap();
    let bytes = to_bytes(response.into_body(), usize::MAX).await.unwrap();
    String::from_utf8(bytes.to_vec()).unwrap()
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

/// What must stand on the page, in this order.
fn said(answer: &Value) -> Vec<String> {
    let list = |name: &str| answer[name].as_array().unwrap();
    let mut said = vec![
        format!("<strong>{}</strong> fit<", list("fits").len()),
        format!("<strong>{}</strong> open<", list("open").len()),
        format!("<strong>{}</strong> but for changes", list("near").len()),
    ];
    let name = |listed: &Value| format!(">{}</a>", listed["listing"].as_str().unwrap());
    said.extend(list("fits").iter().map(name));
    for listed in list("open") {
        said.push(name(listed));
        let questions = listed["questions"].as_array().unwrap().iter().take(12);
        said.extend(questions.map(|one| escaped(one["sentence"].as_str().unwrap())));
    }
    for listed in list("near") {
        said.push(name(listed));
        for change in listed["changes"].as_array().unwrap() {
            let text = |name: &str| change[name].as_str().unwrap();
            said.push(escaped(&format!("{}: {}", text("words"), text("numbers"))));
        }
    }
    said
}

/// Asserts that the desk says what `find` says of each mark, and of some joints.
async fn assert_the_same(folder: &Path, desk: &Router, when: &str) {
    assert_of(folder, desk, when, usize::MAX).await;
}

/// The same of the first few of them.
async fn assert_of(folder: &Path, desk: &Router, when: &str, most: usize) {
    let mut marks = fs::read_to_string(folder.join("demo-project/marks.csv")).unwrap();
    marks.push_str("J-001\nJ-004\nJ-016\nJ-031\n");
    let names = marks
        .lines()
        .skip(1)
        .map(|line| line.split(',').next().unwrap());
    let mut told = 0;
    let names = names.filter(|name| !name.is_empty() && !name.starts_with('#'));
    for name in names.take(most) {
        let find = [
            "find",
            name,
            "--project",
            "demo-project",
            "--most",
            MOST,
            "--json",
        ];
        let found: Value = serde_json::from_str(&run(folder, find).out).unwrap();
        let page = page(desk, &format!("/selection?of={name}")).await;
        let mut rest = page.as_str();
        for words in said(&found["asked"][0]) {
            let Some((_, after)) = rest.split_once(&words) else {
                panic!("{when}, {name}: no `{words}` in {rest}");
            };
            rest = after;
            told += 1;
        }
    }
    assert!(told > 10 * most.min(20), "{when}: {told}");
}

#[tokio::test(flavor = "multi_thread")]
async fn the_desk_selects_as_find_does() {
    let folder = demo();
    let folder = folder.path();
    let go = |line: &str| {
        let done = run(folder, line.split(' '));
        assert_eq!(done.code, Some(0), "{line}: {}", done.err);
    };
    let keep = || go("keep --project demo-project --into clinic.sqlite --by Kim");
    let listing = |name: &str| folder.join("demo-project/listings").join(name);
    fs::remove_file(listing("hw-d-0437.txt.confirmed.toml")).unwrap();
    keep();
    let store = folder.join("clinic.sqlite");
    let sat = desk(&store).await;
    assert_the_same(folder, &sat, "at first").await;
    let index = folder.join("clinic.sqlite.index");
    assert!(index.is_file());

    go("confirm demo-project/listings/hw-d-0437.txt --all --with-doubts --by Kim");
    keep();
    assert_the_same(folder, &sat, "confirmed").await;

    let text = fs::read_to_string(listing("hw-d-0455.txt")).unwrap();
    fs::write(
        listing("hw-d-0399.txt"),
        text.replace("HW-D-0455", "HW-D-0399"),
    )
    .unwrap();
    let other = fs::read_to_string(listing("ff-d-1102.txt")).unwrap();
    fs::write(listing("ff-d-1102.txt"), other + "\n").unwrap();
    keep();
    assert_the_same(folder, &sat, "one came and one changed").await;

    // With what was kept at first; then with a file that is damaged, and one of another store.
    assert_the_same(folder, &desk(&store).await, "started again").await;
    let whole = fs::read(&index).unwrap();
    for at in [10, whole.len() / 3, whole.len() / 2, whole.len() - 9] {
        let mut damaged = whole.clone();
        damaged[at] ^= 0x20;
        fs::write(&index, damaged).unwrap();
        assert_of(folder, &desk(&store).await, "damaged", 1).await;
    }
    fs::write(&index, &whole).unwrap();
    go("keep --project demo-project --into other.sqlite --by Lee");
    fs::copy(&index, folder.join("other.sqlite.index")).unwrap();
    let other = desk(&folder.join("other.sqlite")).await;
    assert_of(folder, &other, "another store", 3).await;
}
