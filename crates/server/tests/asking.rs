//! What the desk answers, and whom it refuses.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Method, Request, StatusCode, header};
use jiff::Timestamp;
use serde_json::{Value, json};
use server::{Access, Desk};
use site::import::{File, import};
use store::records::Known;
use store::{Change, Key, Owner, Place, Store};
use tempfile::TempDir;
use tower::ServiceExt;

const PORT: u16 = 8452;

/// A desk over the demo's project.
struct Demo {
    app: Router,
    desk: Arc<Desk>,
    store: Store,
    _folder: TempDir,
}

async fn demo() -> Demo {
    let from = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    let read = |name: &str| std::fs::read(from.join(name)).unwrap();
    let names = ["schedule.csv", "marks.csv", "barriers.csv", "building.toml"];
    let held: Vec<(&str, Vec<u8>)> = names.iter().map(|name| (*name, read(name))).collect();
    let files: Vec<File<'_>> = held
        .iter()
        .map(|(name, bytes)| File { name, bytes })
        .collect();
    let project = import(&files).unwrap().project;
    let folder = tempfile::tempdir().unwrap();
    let place = Place::File(folder.path().join("clinic.sqlite"));
    let store = Store::make(&place, &place.attachments().unwrap())
        .await
        .unwrap();
    let mut edits = store.propose(&project).await.unwrap().edits;
    for file in [
        "hw-d-0412-ed4.txt",
        "ff-d-1102.txt",
        "hw-d-0437.txt",
        "hw-d-0455.txt",
    ] {
        let document = store
            .attach(read(&format!("listings/{file}")))
            .await
            .unwrap();
        edits.extend(
            store
                .propose_listing(file, &document, "", None)
                .await
                .unwrap()
                .edits,
        );
    }
    let change = Change {
        by: "Kim".to_owned(),
        at: Timestamp::UNIX_EPOCH,
        what: "took the project's files".to_owned(),
        edits,
    };
    store.change(&change).await.unwrap();
    let desk = Arc::new(Desk::over(store.clone()).await.unwrap());
    desk.look_at_all().await.unwrap();
    Demo {
        app: server::app(desk.clone(), Access::here("Lee", PORT)),
        desk,
        store,
        _folder: folder,
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

#[tokio::test(flavor = "multi_thread")]
async fn every_page_is_there_and_may_do_little() {
    let demo = demo().await;
    for (path, says) in [
        ("/", "Vessary Point Clinic"),
        ("/joints/J-004", "Joint width is 1-5/16 in."),
        ("/listings", "hw-d-0412-ed4.txt"),
        ("/listings/hw%2Dd%2D0412%2Ded4%2Etxt", "bytes accounted for"),
        ("/questions", "What is the"),
        ("/questions", "have it tested before anybody scrapes"),
        ("/questions?trade=framing", "aria-current"),
        ("/joints?words=fb-2&state=open", "Look for them"),
        (
            "/joints?words=%27%3B+DROP+TABLE+record%3B+--",
            "0</strong> joints",
        ),
        ("/journal", "took the project&#39;s files"),
        ("/joints/J-004/section.svg", "<svg"),
        ("/assets/desk.css", "color-scheme"),
        ("/assets/desk.js", "confirm"),
    ] {
        let page = demo.get(path).await;
        assert_eq!(page.status, StatusCode::OK, "{path}: {}", page.text);
        assert!(
            page.text.contains(says) || page.text.contains(&says.replace("&#39;", "'")),
            "{path}: {}",
            page.text
        );
        let policy = page.headers[header::CONTENT_SECURITY_POLICY]
            .to_str()
            .unwrap();
        assert!(policy.starts_with("default-src 'none'"));
        assert!(!policy.contains("unsafe"));
        // Nothing from elsewhere, and nothing that the policy would stop.
        for never in ["style=\"", "onclick", "<script>", "//cdn"] {
            assert!(
                path.contains("svg") || !page.text.contains(never),
                "{path}: {never}"
            );
        }
    }
    for path in [
        "/nowhere",
        "/joints/J-999",
        "/listings/none.txt",
        "/questions/none",
        "/questions?after=none",
        "/questions?trade=none",
    ] {
        assert_eq!(demo.get(path).await.status, StatusCode::NOT_FOUND, "{path}");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn nobody_else_may_ask_or_change_anything() {
    let demo = demo().await;
    let before = demo.store.head().await.unwrap();
    let ask = async |method: Method, headers: &[(&str, &str)]| {
        let mut request = Request::builder().method(method).uri("/joints/J-004/facts");
        for (name, value) in headers {
            request = request.header(*name, *value);
        }
        let form = "property=joint.width&value=1+in.&source=witnessed&seen=1";
        demo.ask(request.body(Body::from(form)).unwrap())
            .await
            .status
    };
    let form = ("content-type", "application/x-www-form-urlencoded");
    let here = ("host", "localhost:8452");
    // A name of somebody else's that was made to lead here.
    for host in [
        "clinic.example:8452",
        "localhost",
        "localhost:80",
        "127.0.0.1.example:8452",
    ] {
        let status = ask(Method::GET, &[("host", host)]).await;
        assert_eq!(status, StatusCode::MISDIRECTED_REQUEST, "{host}");
    }
    assert_eq!(ask(Method::GET, &[]).await, StatusCode::MISDIRECTED_REQUEST);
    // A page of somebody else's, or one that doesn't say whose it is.
    for headers in [
        vec![here, form],
        vec![here, form, ("origin", "http://clinic.example")],
        vec![here, form, ("origin", "null")],
        vec![here, form, ("origin", "http://localhost:9999")],
        vec![here, form, ("sec-fetch-site", "cross-site")],
        vec![here, form, ("sec-fetch-site", "same-site")],
        vec![
            here,
            form,
            ("origin", "http://localhost:8452"),
            ("sec-fetch-site", "cross-site"),
        ],
        vec![here, ("content-type", "text/plain")],
    ] {
        assert_eq!(
            ask(Method::POST, &headers).await,
            StatusCode::FORBIDDEN,
            "{headers:?}"
        );
    }
    // More than a form can hold.
    let long = format!("property=joint.width&value={}", "1".repeat(100_000));
    let answered = demo.post("/joints/J-004/facts", &long).await;
    assert_eq!(answered.status, StatusCode::PAYLOAD_TOO_LARGE);
    assert_eq!(demo.store.head().await.unwrap(), before);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_changed_fact_changes_the_verdict_at_once() {
    let demo = demo().await;
    let not_met = "Joint width is 1-5/16 in.";
    assert!(demo.get("/joints/J-004").await.text.contains(not_met));
    let (version, _) = demo.width("J-004").await;
    let form = |value: &str, seen: i64| {
        format!(
            "property=joint.width&value={value}&source=measured%3A+tape%2C+1%2F16+in.&seen={seen}"
        )
    };
    let done = demo
        .post("/joints/J-004/facts", &form("3%2F4+in.", version))
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let page = demo.get("/joints/J-004").await.text;
    assert!(!page.contains(not_met) && page.contains("3/4 in."));
    assert_eq!(
        demo.width("J-004").await,
        (version + 1, "3/4 in.".to_owned())
    );
    // Who still saw the old width is told of the change, and nothing is overwritten.
    let late = demo
        .post("/joints/J-004/facts", &form("7%2F8+in.", version))
        .await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    assert!(
        late.text.contains("Lee entered joint.width of J-004"),
        "{}",
        late.text
    );
    assert_eq!(demo.width("J-004").await.1, "3/4 in.");
    // What can't be right is told with what would be, and stays in the form.
    let wrong = demo
        .post("/joints/J-004/facts", &form("three", version + 1))
        .await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(wrong.text.contains("value=\"three\""), "{}", wrong.text);
    assert_eq!(demo.width("J-004").await.1, "3/4 in.");
}

#[tokio::test(flavor = "multi_thread")]
async fn confirming_every_clause_makes_verdicts_final() {
    let demo = demo().await;
    let provisional = "Provisional: the reading of the listing isn't confirmed";
    assert!(demo.get("/joints/J-004").await.text.contains(provisional));
    // Nothing that rests on a draft looks final at a glance either.
    let overview = async || demo.get("/").await.text;
    let count = overview().await.matches(", provisional").count();
    assert!(count > 0);
    let page = demo.get("/listings/hw-d-0412-ed4.txt").await.text;
    let reading = listing::read(
        "hw-d-0412-ed4.txt",
        &std::fs::read(
            PathBuf::from(env!("CARGO_MANIFEST_DIR"))
                .join("../everyclause/demo/listings/hw-d-0412-ed4.txt"),
        )
        .unwrap(),
    )
    .unwrap();
    assert!(page.contains(&format!("of {} clauses confirmed", reading.clauses.len())));
    let encoded = |id: &str| id.replace('/', "%2F").replace('§', "%C2%A7");
    let first = encoded(&reading.clauses[0].id);
    let path = "/listings/hw-d-0412-ed4.txt/confirm";
    let one = demo.post(path, &format!("clauses={first}")).await;
    assert_eq!(one.status, StatusCode::SEE_OTHER, "{}", one.text);
    // Nobody confirms over another.
    let twice = demo.post(path, &format!("clauses={first}")).await;
    assert_eq!(twice.status, StatusCode::CONFLICT);
    assert!(demo.get("/joints/J-004").await.text.contains(provisional));
    let rest: Vec<String> = reading.clauses[1..]
        .iter()
        .map(|clause| encoded(&clause.id))
        .collect();
    let all = demo
        .post(path, &format!("clauses={}", rest.join("%0A")))
        .await;
    assert_eq!(all.status, StatusCode::SEE_OTHER, "{}", all.text);
    assert!(!demo.get("/joints/J-004").await.text.contains(provisional));
    let overlay = demo
        .store
        .overlay("hw-d-0412-ed4.txt")
        .await
        .unwrap()
        .unwrap();
    assert_eq!(overlay.entries.len(), reading.clauses.len());
    assert!(overlay.entries.iter().all(|entry| entry.by == "Lee"));
}

#[tokio::test(flavor = "multi_thread")]
async fn an_answer_becomes_a_fact_of_each_joint_with_its_source() {
    let demo = demo().await;
    let seen = demo.store.head().await.unwrap().seq;
    let asked = demo.json("/api/v1/questions?limit=1000").await;
    let asked = asked["questions"].as_array().unwrap();
    let asked = asked
        .iter()
        .find(|one| {
            one["property"]
                .as_str()
                .unwrap()
                .starts_with("coating.overlap")
        })
        .unwrap();
    let id = asked["id"].as_str().unwrap();
    let property = asked["property"].as_str().unwrap();
    let in_full = demo.json(&format!("/api/v1/questions/{id}")).await;
    let concerns = in_full["question"]["concerns"].as_array().unwrap();
    let joint_of = |one: &Value| one["joint"].as_str().unwrap().to_owned();
    let joints: BTreeSet<String> = concerns.iter().map(joint_of).collect();
    let page = demo.get(&format!("/questions/{id}")).await.text;
    let mark = page.split("name=\"joints\" value=\"").nth(1).unwrap();
    let mark = mark.split('"').next().unwrap();
    let form = |mark: &str| {
        format!("seen={seen}&question={id}&joints={mark}&value=2+in.&source=witnessed+by+Sam")
    };
    // Who has seen it asked of other joints doesn't answer for these.
    let others = demo.post("/questions", &form("1-0000000000000000")).await;
    assert_eq!(others.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(others.text.contains("of other joints"), "{}", others.text);
    let done = demo.post("/questions", &form(mark)).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    for joint in &joints {
        let key = Key::fact(&Owner::Joint(joint.clone()), property);
        let held = demo.store.get::<Known>(&key).await.unwrap().unwrap();
        let Known::Fact(fact) = held.value else {
            panic!("{joint}")
        };
        assert_eq!(fact.provenance.to_string(), "witnessed by Sam");
        assert_eq!(fact.cell, None);
    }
    // It is answered, and nobody who asked before that overwrites it.
    let late = demo.post("/questions", &form(mark)).await;
    assert_eq!(
        late.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "{}",
        late.text
    );
    let answers = demo.store.head().await.unwrap().seq - seen;
    assert_eq!(usize::try_from(answers).unwrap(), joints.len() + 1);
    assert_eq!(demo.store.verify(None).await.unwrap().flaws, []);
}

#[tokio::test(flavor = "multi_thread")]
async fn programs_get_the_same_and_a_description_of_it() {
    let demo = demo().await;
    let json = async |path: &str| demo.json(path).await;
    let joints = json("/api/v1/joints").await;
    assert_eq!(joints["count"], 60);
    assert_eq!(joints["joints"].as_array().unwrap().len(), 60);
    assert_eq!(joints["next"], Value::Null);
    // Some at a time it is the same.
    for list in ["joints", "questions"] {
        let whole = json(&format!("/api/v1/{list}?limit=1000")).await;
        let (mut after, mut parts) = (String::new(), Vec::new());
        loop {
            let part = json(&format!("/api/v1/{list}?limit=7&after={after}")).await;
            parts.extend(part[list].as_array().unwrap().clone());
            match part["next"].as_str() {
                Some(next) => next.clone_into(&mut after),
                None => break,
            }
        }
        assert_eq!(whole[list], Value::Array(parts), "{list}");
    }
    let questions = json("/api/v1/questions").await;
    let question = questions["questions"][0]["id"].as_str().unwrap();
    let joint = json("/api/v1/joints/J-004").await;
    assert_eq!(joint["result"]["joint"], "J-004");
    let seen = joint["versions"]["joint.width"].as_i64().unwrap();
    let fact = json!({"value": "3/4 in.", "source": "witnessed", "seen": seen});
    let path = "/api/v1/joints/J-004/facts/joint.width";
    assert_eq!(demo.put(path, &fact).await.status, StatusCode::OK);
    let late = demo.put(path, &fact).await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    let late: Value = serde_json::from_str(&late.text).unwrap();
    assert_eq!(late["conflicts"][0]["since"][0]["by"], "Lee");
    // Each path of the description is there, and each schema that it refers to.
    let described = json("/api/v1/openapi.json").await;
    assert_eq!(described["openapi"], "3.1.0");
    for path in described["paths"].as_object().unwrap().keys() {
        let path = path
            .replace("{joint}", "J-004")
            .replace("{question}", question)
            .replace("/facts/{property}", "");
        json(&format!("/api/v1{path}")).await;
    }
    let text = described.to_string();
    for rest in text.split("\"$ref\":\"").skip(1) {
        let reference = rest.split('"').next().unwrap();
        let pointer = reference.strip_prefix('#').unwrap();
        assert!(described.pointer(pointer).is_some(), "{reference}");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn what_others_change_is_taken_into_account() {
    let demo = demo().await;
    let desk = demo.desk.clone();
    let keeping_up = tokio::spawn(async move { desk.keep_up().await });
    // Somebody removes a joint by another way than this desk.
    let key = Key::new(store::Kind::Joint, "J-060", "");
    let change = Change {
        by: "Sam".to_owned(),
        at: Timestamp::UNIX_EPOCH,
        what: "took a joint away".to_owned(),
        edits: vec![store::Edit::remove(key, 1)],
    };
    demo.store.change(&change).await.unwrap();
    let mut tries = 0;
    while demo.get("/").await.text.contains("J-060") {
        tries += 1;
        assert!(tries < 200, "it is still shown");
        tokio::time::sleep(std::time::Duration::from_millis(100)).await;
    }
    keeping_up.abort();
}

#[tokio::test(flavor = "multi_thread")]
async fn a_judgment_is_recorded_with_its_ground_and_shown() {
    let demo = demo().await;
    let result = async |joint: &str| -> Value {
        let answered = demo.get(&format!("/api/v1/joints/{joint}")).await;
        serde_json::from_str(&answered.text).unwrap()
    };
    // The packing's fibres: words that no fact settles.
    let open = result("J-001").await["result"]["findings"]
        .as_array()
        .unwrap()
        .iter()
        .find(|one| one["verdict"] == "open" && one["explanation"]["missing"]["ask"] == "judgment")
        .unwrap()["explanation"]["clause"]
        .as_str()
        .unwrap()
        .to_owned();
    let verdict = async |joint: &str| {
        let found = result(joint).await;
        let findings = found["result"]["findings"].as_array().unwrap().clone();
        let one = findings
            .iter()
            .find(|one| one["explanation"]["clause"] == open.as_str());
        one.unwrap()["verdict"].as_str().unwrap().to_owned()
    };
    let seen = demo.store.head().await.unwrap().seq;
    let form = |basis: &str| {
        let clause = open.replace('/', "%2F");
        format!("clause={clause}&decision=accepted&scope=mark&basis={basis}&seen={seen}")
    };
    let path = "/joints/J-001/judgments";
    let without = demo.post(path, &form("+")).await;
    assert_eq!(without.status, StatusCode::UNPROCESSABLE_ENTITY);
    let done = demo.post(path, &form("seen+in+place")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(verdict("J-001").await, "judged");
    assert_eq!(
        verdict("J-002").await,
        "judged",
        "another joint of the mark"
    );
    assert!(
        demo.get("/joints/J-001")
            .await
            .text
            .contains("Judged by Lee")
    );
    // Who hasn't seen it doesn't overwrite it.
    let late = demo.post(path, &form("another+ground")).await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    assert_eq!(demo.store.verify(None).await.unwrap().flaws, []);
}
