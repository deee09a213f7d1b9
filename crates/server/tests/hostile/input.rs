//! Floods, scripts, odd addresses and forms.

use std::convert::Infallible;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use axum::body::{Body, Bytes};
use axum::http::{Method, StatusCode, header};
use futures_util::{StreamExt, stream};
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use store::people::Role;

use crate::ground::{Ground, on_each};
use crate::support::{here, project, project_of, tables, team};
use store::Store;

on_each![
    a_hundred_megabytes_are_cut_off_at_the_limit,
    who_hasn_t_signed_in_sends_nothing,
    scripts_in_names_and_texts_are_shown_and_never_run,
    odd_addresses_are_refused_with_words,
    what_is_nested_without_end_is_refused,
];

/// So many bytes as they would come from the network, and how many of them were taken.
fn flood(bytes: usize) -> (Body, Arc<AtomicUsize>) {
    const PIECE: usize = 16 << 10;
    let taken = Arc::new(AtomicUsize::new(0));
    let count = taken.clone();
    let pieces = stream::iter(0..bytes / PIECE).map(move |_| {
        count.fetch_add(PIECE, Ordering::Relaxed);
        Ok::<_, Infallible>(Bytes::from_static(&[b'a'; PIECE]))
    });
    (Body::from_stream(pieces), taken)
}

async fn a_hundred_megabytes_are_cut_off_at_the_limit(ground: Ground) {
    let desk = here(project(&ground).await).await;
    let before = desk.store.head().await.unwrap();
    for (method, path) in [
        ("POST", "/joints/J-004/facts"),
        ("POST", "/questions"),
        ("POST", "/listings/hw-d-0412-ed4.txt/confirm"),
        ("POST", "/nowhere"),
        ("PUT", "/api/v1/joints/J-004/facts/joint.width"),
    ] {
        for kind in [
            "application/x-www-form-urlencoded",
            "application/json",
            "text/plain",
            "multipart/form-data; boundary=b",
        ] {
            let (body, taken) = flood(100 << 20);
            let request = desk
                .request(method, path, "")
                .header(header::CONTENT_TYPE, kind)
                .body(body)
                .unwrap();
            let answered = desk.ask(request).await;
            assert!(
                answered.status.is_client_error(),
                "{path} {kind}: {}",
                answered.status
            );
            if !kind.starts_with("multipart") {
                assert_eq!(answered.status, StatusCode::PAYLOAD_TOO_LARGE);
                assert!(answered.text.contains("more than a form"));
            }
            let taken = taken.load(Ordering::Relaxed);
            assert!(
                taken <= 128 << 10,
                "{path} {kind}: {taken} bytes were taken"
            );
        }
    }
    // One that says beforehand how long it is isn't begun.
    let (body, taken) = flood(100 << 20);
    let request = desk
        .request("POST", "/questions", "")
        .header(header::CONTENT_LENGTH, 100 << 20)
        .body(body)
        .unwrap();
    assert_eq!(
        desk.ask(request).await.status,
        StatusCode::PAYLOAD_TOO_LARGE
    );
    assert_eq!(taken.load(Ordering::Relaxed), 0);
    assert_eq!(desk.store.head().await.unwrap(), before);
}

async fn who_hasn_t_signed_in_sends_nothing(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let reader = desk.somebody("Ada", Role::Reader).await;
    for (cookie, kind, expected) in [
        (
            "",
            "multipart/form-data; boundary=b",
            StatusCode::UNAUTHORIZED,
        ),
        ("", "application/json", StatusCode::UNAUTHORIZED),
        (
            reader.cookie.as_str(),
            "multipart/form-data; boundary=b",
            StatusCode::FORBIDDEN,
        ),
    ] {
        let (body, taken) = flood(100 << 20);
        let request = desk
            .request("POST", "/joints/J-004/facts", cookie)
            .header(header::CONTENT_TYPE, kind)
            .body(body)
            .unwrap();
        assert_eq!(desk.ask(request).await.status, expected, "{kind}");
        let taken = taken.load(Ordering::Relaxed);
        assert!(taken <= 32 << 10, "{kind}: {taken} bytes were taken");
    }
}

const SCRIPT: &str = "<script>alert(1)</script>";
const IMAGE: &str = "\"><img src=x onerror=alert(2)>'";

/// A project all of whose names and words are scripts.
async fn scripted(ground: &Ground) -> Store {
    let cell = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
    let name = format!("J{SCRIPT}{IMAGE}");
    let schedule = format!(
        "joint,mark,storey,barrier,grid,joint.width,packing.product\n{},HW1,{},{},{},7/8 in.,{}\n",
        cell(&name),
        cell(&format!("L{SCRIPT}")),
        cell(&format!("FB{IMAGE}")),
        cell(&format!("A{SCRIPT}")),
        cell(&format!("Wool{SCRIPT}{IMAGE} | Four")),
    );
    let file = format!("hw-d-{SCRIPT}{IMAGE}.txt").replace('/', "\u{2215}");
    let marks = format!(
        "mark,title,listing\nHW1,{},{}\n",
        cell(&format!("Head{SCRIPT}")),
        cell(file.trim_end_matches(".txt"))
    );
    let text = format!(
        "System No. HW-D-{SCRIPT}\n\nJoint width - Max 1 in. (25 mm) {IMAGE}\n\n1. Floor Assembly - Min 4 in. thick concrete {SCRIPT}{IMAGE}.\n\n2. Forming Material - Min 4 pcf mineral wool {SCRIPT}, compressed 25 percent {IMAGE}.\n"
    );
    project_of(
        ground,
        &tables(&schedule, &marks),
        &[(&file, text.into_bytes())],
    )
    .await
}

async fn scripts_in_names_and_texts_are_shown_and_never_run(ground: Ground) {
    let desk = here(scripted(&ground).await).await;
    let project = desk.store.project().await.unwrap();
    let encode = |text: &str| utf8_percent_encode(text, NON_ALPHANUMERIC).to_string();
    let joint = encode(&project.joints[0].name);
    let file = encode(&desk.store.listings().await.unwrap()[0].key.name);
    // What is entered on the desk, too: a value, a source, an answer with its question.
    let fact = format!(
        "property=packing.product&value={}&source={}&seen=1",
        encode(&format!("W{SCRIPT} | {IMAGE}")),
        encode(&format!("stated: {SCRIPT}{IMAGE}"))
    );
    let entered = desk
        .post(&format!("/joints/{joint}/facts"), "", &fact)
        .await;
    assert_eq!(entered.status, StatusCode::SEE_OTHER, "{}", entered.text);
    let wrong = format!(
        "property={}&value={}&source={}&seen=0",
        encode(SCRIPT),
        encode(IMAGE),
        encode(SCRIPT)
    );
    let refused = desk
        .post(&format!("/joints/{joint}/facts"), "", &wrong)
        .await;
    assert_eq!(
        refused.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "{}",
        refused.text
    );
    let late = desk
        .post(&format!("/joints/{joint}/facts"), "", &fact)
        .await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    let mut pages = vec![("refused".to_owned(), refused), ("late".to_owned(), late)];
    for path in [
        "/".to_owned(),
        format!("/joints/{joint}"),
        format!("/joints/{joint}/section.svg"),
        "/joints/%3Cscript%3Ealert(1)%3C%2Fscript%3E".to_owned(),
        "/listings".to_owned(),
        format!("/listings/{file}"),
        "/listings/%3Cscript%3Ealert(1)%3C%2Fscript%3E".to_owned(),
        "/questions".to_owned(),
        "/journal".to_owned(),
        "/journal?by=%3Cscript%3Ealert(1)%3C%2Fscript%3E".to_owned(),
        "/journal?before=%3Cscript%3Ealert(1)%3C%2Fscript%3E".to_owned(),
    ] {
        let page = desk.get(&path, "").await;
        pages.push((path, page));
    }
    let mut shown = 0;
    for (path, page) in pages {
        let kind = page.headers[header::CONTENT_TYPE].to_str().unwrap();
        let is_markup = kind.starts_with("text/html") || kind.starts_with("image/svg");
        let is_live = page.text.contains("<script>") || page.text.contains("<img src=x");
        assert!(!(is_markup && is_live), "{path}: {}", page.text);
        shown += usize::from(page.text.contains("&lt;script&gt;alert(1)"));
        assert!(
            page.headers.contains_key(header::CONTENT_SECURITY_POLICY),
            "{path}"
        );
        assert_eq!(
            page.headers[header::X_CONTENT_TYPE_OPTIONS],
            "nosniff",
            "{path}"
        );
    }
    assert!(shown >= 9, "the names are shown on {shown} pages");
    // Programs get them as they are, as what no browser takes for a page.
    let answered = desk.get("/api/v1/joints", "").await;
    assert!(answered.text.contains(SCRIPT));
    assert_eq!(answered.headers[header::CONTENT_TYPE], "application/json");
}

async fn odd_addresses_are_refused_with_words(ground: Ground) {
    let desk = here(project(&ground).await).await;
    let before = desk.store.head().await.unwrap();
    for (path, expected) in [
        ("/joints/%27%20OR%20%271%27%3D%271", StatusCode::NOT_FOUND),
        (
            "/joints/J-004%27%3B%20DROP%20TABLE%20journal%3B--",
            StatusCode::NOT_FOUND,
        ),
        (
            "/journal?before=1%3BDROP%20TABLE%20journal",
            StatusCode::BAD_REQUEST,
        ),
        (
            "/journal?before=9999999999999999999999",
            StatusCode::BAD_REQUEST,
        ),
        ("/journal?before=-1", StatusCode::OK),
        (
            "/listings/..%2F..%2F..%2Fetc%2Fpasswd",
            StatusCode::NOT_FOUND,
        ),
        ("/listings/%2Fetc%2Fpasswd", StatusCode::NOT_FOUND),
        ("/assets/..%2Fdesk.rs", StatusCode::NOT_FOUND),
        ("/joints/%FF", StatusCode::BAD_REQUEST),
        ("/joints/%C3%28", StatusCode::BAD_REQUEST),
        ("/joints/J-004%00", StatusCode::NOT_FOUND),
        ("/joints/%", StatusCode::NOT_FOUND),
        ("/joints/%zz", StatusCode::NOT_FOUND),
        ("/journal?by=%FF", StatusCode::OK),
        ("/api/v1/joints/%FF", StatusCode::BAD_REQUEST),
    ] {
        let answered = desk.get(path, "").await;
        assert_eq!(answered.status, expected, "{path}: {}", answered.text);
        assert!(answered.text.len() > 10, "{path} says nothing");
    }
    let by = desk.get("/journal?by=%27%20OR%20%271%27%3D%271", "").await;
    assert!(by.text.contains("Nothing was ever changed"), "{}", by.text);
    for length in [5_000, 60_000] {
        let long = desk
            .get(&format!("/journal?by={}", "a".repeat(length)), "")
            .await;
        assert_eq!(long.status, StatusCode::URI_TOO_LONG);
        assert!(long.text.contains("longer than any"));
    }
    for form in [
        "property=%FF&value=%C3%28&source=&seen=1",
        "seen=99999999999999999999",
        "=&&&=",
        "\u{0}",
    ] {
        let answered = desk.post("/joints/J-004/facts", "", form).await;
        assert!(
            answered.status.is_client_error(),
            "{form}: {}",
            answered.status
        );
        assert!(answered.text.len() > 10, "{form}");
    }
    let raw = desk
        .request("POST", "/joints/J-004/facts", "")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(Body::from(vec![0xff, 0xfe, b'=', 0xc3, 0x28]))
        .unwrap();
    assert!(desk.ask(raw).await.status.is_client_error());
    for method in [
        Method::DELETE,
        Method::OPTIONS,
        Method::TRACE,
        Method::PATCH,
    ] {
        let request = desk
            .request(method.as_str(), "/joints/J-004", "")
            .body(Body::empty());
        let status = desk.ask(request.unwrap()).await.status;
        assert_eq!(status, StatusCode::METHOD_NOT_ALLOWED, "{method}");
    }
    assert_eq!(desk.store.head().await.unwrap(), before);
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
}

async fn what_is_nested_without_end_is_refused(ground: Ground) {
    let desk = here(project(&ground).await).await;
    let before = desk.store.head().await.unwrap();
    let path = "/api/v1/joints/J-004/facts/joint.width";
    let lists = "[".repeat(60_000);
    let objects = "{\"a\":".repeat(10_000);
    let known = "\"value\":\"1 in.\",\"source\":\"stated: Kim\",\"seen\":1";
    for body in [
        lists.clone(),
        objects.clone(),
        format!("{{\"value\":{lists}"),
        format!("{{\"seen\":{objects}"),
        format!("{{{known},\"more\":{lists}"),
        format!(
            "{{{known},\"more\":{}{}}}",
            "[".repeat(30_000),
            "]".repeat(30_000)
        ),
    ] {
        let request = desk
            .request("PUT", path, "")
            .header(header::CONTENT_TYPE, "application/json")
            .body(Body::from(body.clone()))
            .unwrap();
        let answered = desk.ask(request).await;
        let began: String = body.chars().take(60).collect();
        assert!(
            answered.status.is_client_error(),
            "{began}: {}",
            answered.status
        );
        assert!(answered.text.len() > 20, "{began}: {}", answered.text);
        // Elsewhere nothing takes it for a form.
        let request = desk
            .request("POST", "/joints/J-004/facts", "")
            .header(header::CONTENT_TYPE, "application/json")
            .body(Body::from(body.clone()))
            .unwrap();
        let status = desk.ask(request).await.status;
        assert!(status.is_client_error(), "{began}: {status}");
    }
    assert_eq!(desk.store.head().await.unwrap(), before);
}
