//! The door: who is let in, and who isn't.

use axum::body::Body;
use axum::http::{StatusCode, header};
use jiff::{SignedDuration, Timestamp};
use store::people::{Event, Role};
use store::{Key, Kind};

use crate::ground::{Ground, on_each};
use crate::support::{PASSWORD, here, project, team};
use crate::{FACT, PAGES, hash_of};

on_each![
    what_is_broken_isn_t_told_outside,
    nobody_sees_or_changes_anything_before_signing_in,
    forged_expired_and_revoked_cookies_lead_nowhere,
    signing_in_is_limited_and_says_the_same_of_every_name,
    somebody_elses_project_isn_t_reached_by_its_address,
    a_desk_of_one_machine_has_no_door,
];

async fn nobody_sees_or_changes_anything_before_signing_in(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let before = desk.store.head().await.unwrap();
    for path in PAGES {
        let page = desk.get(path, "").await;
        assert_eq!(page.status, StatusCode::SEE_OTHER, "{path}");
        assert!(page.location().starts_with("/sign-in?to="), "{path}");
        assert!(!page.text.contains("J-0"), "{path}");
    }
    for path in ["/api/v1/joints", "/api/v1/journal", "/api/v1/openapi.json"] {
        let answered = desk.get(path, "").await;
        assert_eq!(answered.status, StatusCode::UNAUTHORIZED, "{path}");
        assert!(answered.text.starts_with('{'), "{path}");
    }
    for path in [
        "/joints/J-004/facts",
        "/questions",
        "/people",
        "/people/invitations",
        "/account/password",
        "/sign-out",
    ] {
        let answered = desk.post(path, "", FACT).await;
        assert_eq!(answered.status, StatusCode::UNAUTHORIZED, "{path}");
    }
    let fact = r#"{"value":"1 in.","source":"witnessed","seen":1}"#;
    let request = desk
        .request("PUT", "/api/v1/joints/J-004/facts/joint.width", "")
        .header(header::CONTENT_TYPE, "application/json")
        .body(Body::from(fact))
        .unwrap();
    assert_eq!(desk.ask(request).await.status, StatusCode::UNAUTHORIZED);
    assert_eq!(
        desk.get("/assets/desk.css", "").await.status,
        StatusCode::OK
    );
    assert_eq!(desk.store.head().await.unwrap(), before);
    // Nor under another name than the desk's.
    let request = axum::http::Request::get("/sign-in").header(header::HOST, "localhost:8452");
    let answered = desk.ask(request.body(Body::empty()).unwrap()).await;
    assert_eq!(answered.status, StatusCode::MISDIRECTED_REQUEST);
}

async fn forged_expired_and_revoked_cookies_lead_nowhere(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let ada = desk.somebody("Ada", Role::Administrator).await;
    let is_in = async |cookie: &str| desk.get("/", cookie).await.status == StatusCode::OK;
    assert!(is_in(&ada.cookie).await);
    let name = "__Host-everyclause";
    let zeros = "0".repeat(64);
    for forged in [
        format!("{name}={zeros}"),
        // The hash that is kept is no token.
        format!("{name}={}", hash_of(&ada.cookie)),
        format!("{name}=' OR '1'='1"),
        format!("{name}=ada"),
        ada.cookie.replace(name, "everyclause"),
        format!("{}; {name}={zeros}", ada.cookie),
    ] {
        assert!(!is_in(&forged).await, "{forged}");
    }
    // One that nobody has used for an hour.
    let hash = hash_of(&ada.cookie);
    let now = Timestamp::now();
    let ago = |minutes| now.checked_sub(SignedDuration::from_mins(minutes)).unwrap();
    desk.store.use_session(&hash, ago(59)).await.unwrap();
    assert!(is_in(&ada.cookie).await);
    desk.store.use_session(&hash, ago(61)).await.unwrap();
    assert!(!is_in(&ada.cookie).await);
    desk.store.use_session(&hash, now).await.unwrap();
    assert!(!is_in(&ada.cookie).await, "it is gone for good");
    // One that began half a day ago, though it is used.
    let key = Key::new(Kind::Person, "ada", "");
    let old = |letter: &str| format!("{name}={}", letter.repeat(64));
    let password = desk.store.password(&key).await.unwrap().unwrap();
    for (cookie, minutes, lasts) in [(old("a"), 719, true), (old("b"), 721, false)] {
        let hash = hash_of(&cookie);
        desk.store
            .begin_session(&hash, &key, &password, ago(minutes), ago(100_000))
            .await
            .unwrap();
        desk.store.use_session(&hash, now).await.unwrap();
        assert_eq!(is_in(&cookie).await, lasts, "{minutes}");
    }
    // One that was stolen, and whose owner signs out.
    let signed_in = desk.sign_in("Ada", PASSWORD, "192.0.2.7").await;
    let ada = desk.with(signed_in.cookie(name).unwrap()).await;
    let stolen = ada.cookie.clone();
    let out = ada.post("/sign-out", "").await;
    assert_eq!(out.location(), "/sign-in");
    assert!(
        out.headers[header::SET_COOKIE]
            .to_str()
            .unwrap()
            .contains("Max-Age=0")
    );
    assert!(!is_in(&stolen).await);
}

async fn signing_in_is_limited_and_says_the_same_of_every_name(ground: Ground) {
    let desk = team(project(&ground).await).await;
    desk.somebody("Ada", Role::Reader).await;
    let mut said = Vec::new();
    for name in ["Ada", "Nobody", "' OR 1=1 --"] {
        let wrong = desk.sign_in(name, "not it at all", "198.51.100.1").await;
        assert_eq!(wrong.status, StatusCode::UNAUTHORIZED, "{name}");
        assert!(wrong.cookie("__Host-everyclause").is_none());
        let (_, alert) = wrong.text.split_once("role=\"alert\"").unwrap();
        said.push(alert.split("</div>").next().unwrap().to_owned());
    }
    assert!(said.iter().all(|one| *one == said[0]), "{said:?}");
    for name in ["Ada", "Nobody"] {
        let mut tries = 0;
        let last = loop {
            let answered = desk.sign_in(name, "not it at all", "198.51.100.2").await;
            if answered.status == StatusCode::TOO_MANY_REQUESTS {
                break answered;
            }
            tries += 1;
            assert!(tries < 20, "{name} may try for ever");
        };
        assert_eq!(tries, 6, "{name}");
        assert!(
            last.headers[header::RETRY_AFTER]
                .to_str()
                .unwrap()
                .parse::<u64>()
                .unwrap()
                <= 60
        );
        // The right password doesn't help now, and a header that the proxy didn't write neither.
        let right = desk
            .sign_in(name, PASSWORD, "203.0.113.9, 198.51.100.2")
            .await;
        assert_eq!(right.status, StatusCode::TOO_MANY_REQUESTS, "{name}");
    }
    // Elsewhere Ada comes in as ever.
    assert_eq!(
        desk.sign_in("Ada", PASSWORD, "198.51.100.3").await.status,
        StatusCode::SEE_OTHER
    );
    // Names that are nobody's aren't written down: one may be a password.
    let visits = desk.store.visits(Timestamp::MAX, 100).await.unwrap();
    let failed: Vec<_> = visits
        .iter()
        .filter(|visit| visit.event == Event::Failed)
        .collect();
    assert_eq!(failed.len(), 3 + 12);
    assert!(
        visits
            .iter()
            .all(|visit| visit.person.as_deref().is_none_or(|person| person == "ada"))
    );
    assert_eq!(
        failed.iter().filter(|visit| visit.person.is_none()).count(),
        2 + 6
    );
}

async fn somebody_elses_project_isn_t_reached_by_its_address(ground: Ground) {
    let one = team(project(&ground).await).await;
    let elsewhere = ground.another().await;
    let other = team(project(&elsewhere).await).await;
    let ada = one.somebody("Ada", Role::Administrator).await;
    assert_eq!(ada.get("/joints/J-004").await.status, StatusCode::OK);
    // Ada's cookie, token and name are worth nothing at another project's desk.
    for path in PAGES {
        let page = other.get(path, &ada.cookie).await;
        assert_eq!(page.status, StatusCode::SEE_OTHER, "{path}");
    }
    let form = format!("form_token={}&{FACT}", ada.token);
    let refused = other.post("/joints/J-004/facts", &ada.cookie, &form).await;
    assert_eq!(refused.status, StatusCode::UNAUTHORIZED);
    assert_eq!(
        other.sign_in("Ada", PASSWORD, "192.0.2.1").await.status,
        StatusCode::UNAUTHORIZED
    );
    assert_eq!(
        other.get("/api/v1/joints/J-004", &ada.cookie).await.status,
        StatusCode::UNAUTHORIZED
    );
}

async fn a_desk_of_one_machine_has_no_door(ground: Ground) {
    let desk = here(project(&ground).await).await;
    for path in [
        "/sign-in",
        "/people",
        "/audit",
        "/account",
        "/invitations/0000",
    ] {
        let page = desk.get(path, "").await;
        assert_eq!(page.status, StatusCode::NOT_FOUND, "{path}");
    }
    let page = desk.get("/", "").await;
    assert!(!page.text.contains("Sign out") && page.headers.get(header::SET_COOKIE).is_none());
    assert!(
        page.headers
            .get(header::STRICT_TRANSPORT_SECURITY)
            .is_none()
    );
    let elsewhere = ground.another().await;
    let team = team(project(&elsewhere).await).await;
    let page = team.get("/sign-in", "").await;
    assert!(page.headers.contains_key(header::STRICT_TRANSPORT_SECURITY));
    assert!(
        page.headers[header::CONTENT_SECURITY_POLICY]
            .to_str()
            .unwrap()
            .starts_with("default-src 'none'")
    );
    assert_eq!(page.headers[header::CACHE_CONTROL], "no-store");
}

async fn what_is_broken_isn_t_told_outside(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let ada = desk.somebody("Ada", Role::Reader).await;
    ground
        .run(&["ALTER TABLE session RENAME TO elsewhere"])
        .await;
    for path in ["/", "/journal", "/api/v1/joints", "/sign-in"] {
        let told = ada.get(path).await;
        assert_eq!(told.status, StatusCode::INTERNAL_SERVER_ERROR, "{path}");
        assert!(
            told.text.starts_with("The desk can't answer"),
            "{path}: {}",
            told.text
        );
        assert!(!told.text.contains("session"), "{path}: {}", told.text);
        assert!(told.headers.contains_key(header::CONTENT_SECURITY_POLICY));
    }
    ground
        .run(&["ALTER TABLE elsewhere RENAME TO session"])
        .await;
    assert_eq!(ada.get("/").await.status, StatusCode::OK);
    // Of two hosts none is the desk's.
    let request = axum::http::Request::get("/sign-in")
        .header(header::HOST, "desk.example.org")
        .header(header::HOST, "clinic.example")
        .body(Body::empty());
    let told = desk.ask(request.unwrap()).await;
    assert_eq!(told.status, StatusCode::MISDIRECTED_REQUEST);
}
