//! Which pages there are, and who may ask for them.

use axum::body::Body;
use axum::http::{Method, Request, StatusCode, header};

use crate::demo;
use crate::ground::{Ground, on_each};

on_each![
    every_page_is_there_and_may_do_little,
    nobody_else_may_ask_or_change_anything,
];

async fn every_page_is_there_and_may_do_little(ground: Ground) {
    let demo = demo(&ground).await;
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

async fn nobody_else_may_ask_or_change_anything(ground: Ground) {
    let demo = demo(&ground).await;
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
