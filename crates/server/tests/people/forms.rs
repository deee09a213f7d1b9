//! Forms: whose they are.

use axum::body::Body;
use axum::http::{StatusCode, header};
use store::people::Role;

use crate::ground::{Ground, on_each};
use crate::support::{HOST, PASSWORD, project, team};
use crate::{FACT, PAGES};

on_each![forms_hold_a_token_and_nothing_is_done_without_it,];

async fn forms_hold_a_token_and_nothing_is_done_without_it(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let ada = desk.somebody("Ada", Role::Administrator).await;
    let bea = desk.somebody("Bea", Role::Administrator).await;
    for path in PAGES {
        let page = ada.get(path).await.text;
        let forms = page.matches("method=\"post\"").count();
        assert_eq!(
            page.matches(&ada.token).count(),
            forms,
            "{path}: a form without its token"
        );
        assert!(path.contains("svg") || forms > 0, "{path}");
        // The token says nothing of the cookie.
        assert!(
            !page.contains(ada.cookie.split_once('=').unwrap().1),
            "{path}"
        );
    }
    let before = desk.store.head().await.unwrap();
    for token in ["", &"0".repeat(64), &bea.token] {
        let form = format!("form_token={token}&{FACT}");
        let refused = desk.post("/joints/J-004/facts", &ada.cookie, &form).await;
        assert_eq!(refused.status, StatusCode::FORBIDDEN, "{token}");
    }
    let refused = desk.post("/joints/J-004/facts", &ada.cookie, FACT).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN);
    assert!(refused.text.contains("load the page again"));
    // With the token, but from another site's page, or as what no form sends.
    let form = format!("form_token={}&{FACT}", ada.token);
    for (name, value) in [
        ("origin", "https://clinic.example"),
        ("origin", "http://desk.example.org"),
        ("origin", "https://desk.example.org:8443"),
        ("origin", "null"),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
    ] {
        let request = axum::http::Request::post("/joints/J-004/facts")
            .header(header::HOST, HOST)
            .header(header::COOKIE, &ada.cookie)
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .header(name, value)
            .body(Body::from(form.clone()))
            .unwrap();
        assert_eq!(
            desk.ask(request).await.status,
            StatusCode::FORBIDDEN,
            "{name}: {value}"
        );
    }
    let request = desk
        .request("POST", "/joints/J-004/facts", &ada.cookie)
        .header(header::CONTENT_TYPE, "application/json")
        .body(Body::from(form.clone()))
        .unwrap();
    assert_eq!(
        desk.ask(request).await.status,
        StatusCode::UNSUPPORTED_MEDIA_TYPE
    );
    // Signing somebody in from another site fails too: their browser has no cookie of the door.
    let page = desk.get("/sign-in", "").await;
    let form = format!(
        "form_token={}&name=Ada&password={PASSWORD}",
        page.form_token()
    );
    assert_eq!(
        desk.post("/sign-in", "", &form).await.status,
        StatusCode::FORBIDDEN
    );
    assert_eq!(desk.store.head().await.unwrap(), before);
    // An upload is known by its first part.
    for (token, expected) in [
        (ada.token.as_str(), StatusCode::UNSUPPORTED_MEDIA_TYPE),
        ("0", StatusCode::FORBIDDEN),
    ] {
        let body = format!(
            "--b\r\nContent-Disposition: form-data; name=\"form_token\"\r\n\r\n{token}\r\n--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n\r\njoint\r\n--b--\r\n"
        );
        let request = desk
            .request("POST", "/joints/J-004/facts", &ada.cookie)
            .header(header::CONTENT_TYPE, "multipart/form-data; boundary=b")
            .body(Body::from(body))
            .unwrap();
        assert_eq!(desk.ask(request).await.status, expected);
    }
}
