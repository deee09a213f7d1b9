//! A team's desk: who comes in, and what each may do.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use axum::body::Body;
use axum::http::{StatusCode, header};
use jiff::{SignedDuration, Timestamp};
use server::people::invite;
use sha2::{Digest, Sha256};
use store::people::{Event, Role};
use store::{Key, Kind};
use support::{HOST, LISTING, ORIGIN, PASSWORD, project, team};

const FACT: &str = "property=joint.width&value=3%2F4+in.&source=witnessed+by+Sam&seen=1";

/// Every page of the desk.
const PAGES: [&str; 10] = [
    "/",
    "/joints/J-004",
    "/joints/J-004/section.svg",
    "/listings",
    "/listings/hw-d-0412-ed4.txt",
    "/questions",
    "/journal",
    "/people",
    "/audit",
    "/account",
];

fn hash_of(cookie: &str) -> String {
    let token = cookie.split_once('=').unwrap().1;
    let hash = Sha256::digest(token.as_bytes());
    format!("{hash:x}")
}

#[tokio::test(flavor = "multi_thread")]
async fn nobody_sees_or_changes_anything_before_signing_in() {
    let desk = team(project().await).await;
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

#[tokio::test(flavor = "multi_thread")]
async fn an_invitation_leads_in_once_and_leaves_no_secret_behind() {
    let desk = team(project().await).await;
    let invited = invite(&desk.store, "Kim", "Ada Venn", Role::Reviewer, false)
        .await
        .unwrap();
    let page = desk.get(&invited.path, "").await;
    assert!(page.text.contains("value=\"Ada Venn\"") && page.text.contains("reviewer"));
    // Looking at it uses nothing up; what can't be a password says why, and leaves it open.
    let short = desk.take_up(&invited.path, "Ada Venn", "short").await;
    assert_eq!(short.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(short.text.contains("at least 15 characters"));
    let done = desk.take_up(&invited.path, "Ada  Venn", PASSWORD).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let set = done.headers[header::SET_COOKIE].to_str().unwrap();
    for part in [
        "__Host-everyclause=",
        "; Path=/",
        "; Secure",
        "; HttpOnly",
        "; SameSite=Lax",
    ] {
        assert!(set.contains(part), "{set}");
    }
    assert!(!set.contains("Domain"), "{set}");
    let cookie = done.cookie("__Host-everyclause").unwrap();
    assert!(desk.get("/", &cookie).await.text.contains("Ada Venn"));
    for path in [
        &invited.path,
        "/invitations/0000",
        &format!("/invitations/{}", "0".repeat(64)),
    ] {
        let again = desk.get(path, "").await;
        assert_eq!(again.status, StatusCode::NOT_FOUND);
        assert!(again.text.contains("was taken up"), "{}", again.text);
    }
    // The journal has who and what; nothing in it opens a door.
    let entries = desk.store.entries_after(0, 1000).await.unwrap();
    let journal = serde_json::to_string(&entries).unwrap();
    assert!(
        journal.contains("invited Ada Venn as reviewer")
            && journal.contains("took up the invitation as reviewer")
    );
    let token = cookie.split_once('=').unwrap().1;
    for secret in [
        PASSWORD,
        "argon2",
        token,
        &hash_of(&cookie),
        invited.path.rsplit('/').next().unwrap(),
    ] {
        assert!(!journal.contains(secret), "{secret}");
    }
    let key = Key::new(Kind::Person, "ada venn", "");
    let hash = desk.store.password(&key).await.unwrap().unwrap();
    assert!(
        hash.starts_with("$argon2id$v=19$m=19456,t=2,p=1$"),
        "{hash}"
    );
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
    // A name that is taken stays whose it is.
    let other = invite(&desk.store, "Kim", "Sam", Role::Administrator, false)
        .await
        .unwrap();
    let second = desk.take_up(&other.path, "ADA VENN", PASSWORD).await;
    assert_eq!(second.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(second.text.contains("is taken"), "{}", second.text);
    assert!(
        invite(&desk.store, "Kim", "ada venn", Role::Reader, false)
            .await
            .is_err()
    );
}

#[tokio::test(flavor = "multi_thread")]
async fn two_who_take_up_one_invitation_at_once_are_one_person() {
    let desk = team(project().await).await;
    let invited = invite(&desk.store, "Kim", "Ada", Role::Reviewer, false)
        .await
        .unwrap();
    let (one, other) = tokio::join!(
        desk.take_up(&invited.path, "Ada", PASSWORD),
        desk.take_up(&invited.path, "Bea", PASSWORD)
    );
    let in_ = [&one, &other].map(|done| done.status == StatusCode::SEE_OTHER);
    assert_ne!(in_[0], in_[1], "{} {}", one.status, other.status);
    assert_eq!(desk.store.people().await.unwrap().len(), 1);
}

#[tokio::test(flavor = "multi_thread")]
async fn each_may_do_what_their_role_says_and_no_more() {
    let desk = team(project().await).await;
    let confirm = format!("/listings/{LISTING}/confirm");
    let seen = desk.store.head().await.unwrap().seq;
    let answer = format!(
        "seen={seen}&question=Which%3F&property=coating.coats&joints=J-001&value=2&source=witnessed+by+Sam"
    );
    let judgment = format!("clause=3%2F1&decision=accepted&basis=seen&scope=joint&seen={seen}");
    let asks = [
        (Role::Inspector, "/joints/J-004/facts", FACT),
        (Role::Inspector, "/questions", answer.as_str()),
        (Role::Reviewer, confirm.as_str(), "clauses=3%2F1"),
        (Role::Reviewer, "/joints/J-004/judgments", judgment.as_str()),
        (
            Role::Administrator,
            "/people/invitations",
            "whom=Noa&role=reader",
        ),
        (
            Role::Administrator,
            "/people",
            "name=nobody&role=reader&may_sign_in=true&seen=1",
        ),
    ];
    for role in Role::ALL {
        let who = desk.somebody(&format!("{role} Ada"), role).await;
        for (asked, path, form) in asks {
            let answered = who.post(path, form).await;
            let was_refused = answered.status == StatusCode::FORBIDDEN;
            assert_eq!(
                was_refused,
                role < asked,
                "{role} {path}: {} {}",
                answered.status,
                answered.text
            );
            if was_refused {
                assert!(
                    answered
                        .text
                        .contains(&format!("asks for the role of {asked}")),
                    "{}",
                    answered.text
                );
            }
        }
        for path in ["/people", "/audit"] {
            let status = who.get(path).await.status;
            let expected = if role == Role::Administrator {
                StatusCode::OK
            } else {
                StatusCode::FORBIDDEN
            };
            assert_eq!(status, expected, "{role} {path}");
        }
        // Nobody is offered what they may not do.
        let joint = who.get("/joints/J-001").await.text;
        assert_eq!(
            joint.contains("action=\"/joints/J%2D001/facts\""),
            role >= Role::Inspector,
            "{role}"
        );
        assert_eq!(
            joint.contains("/judgments\""),
            role >= Role::Reviewer,
            "{role}"
        );
        let listing = who.get(&format!("/listings/{LISTING}")).await.text;
        assert_eq!(
            listing.contains("/confirm\""),
            role >= Role::Reviewer,
            "{role}"
        );
    }
    // A program asks the same of who may.
    let reader = desk.sign_in("reader Ada", PASSWORD, "192.0.2.9").await;
    let request = desk
        .request(
            "PUT",
            "/api/v1/joints/J-004/facts/joint.width",
            &reader.cookie("__Host-everyclause").unwrap(),
        )
        .header(header::CONTENT_TYPE, "application/json")
        .body(Body::from(
            r#"{"value":"1 in.","source":"witnessed","seen":1}"#,
        ))
        .unwrap();
    assert_eq!(desk.ask(request).await.status, StatusCode::FORBIDDEN);
    // What was done stands under the name of who did it.
    let made = desk
        .store
        .changes_by("inspector Ada", i64::MAX, 9)
        .await
        .unwrap();
    assert!(
        made.iter()
            .any(|made| made.first.what == "entered joint.width of J-004")
    );
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
}

#[tokio::test(flavor = "multi_thread")]
async fn forms_hold_a_token_and_nothing_is_done_without_it() {
    let desk = team(project().await).await;
    let ada = desk.somebody("Ada", Role::Administrator).await;
    let bea = desk.somebody("Bea", Role::Administrator).await;
    for path in PAGES {
        let page = ada.get(path).await.text;
        let forms = page.matches("<form").count();
        assert_eq!(page.matches("method=\"post\"").count(), forms, "{path}");
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

#[tokio::test(flavor = "multi_thread")]
async fn forged_expired_and_revoked_cookies_lead_nowhere() {
    let desk = team(project().await).await;
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
    for (cookie, minutes, lasts) in [(old("a"), 719, true), (old("b"), 721, false)] {
        let hash = hash_of(&cookie);
        desk.store
            .begin_session(&hash, &key, ago(minutes), ago(100_000))
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

#[tokio::test(flavor = "multi_thread")]
async fn another_password_ends_every_session() {
    let desk = team(project().await).await;
    let ada = desk.somebody("Ada", Role::Reader).await;
    let elsewhere = desk.sign_in("ada", PASSWORD, "192.0.2.7").await;
    let elsewhere = elsewhere.cookie("__Host-everyclause").unwrap();
    let is_in = async |cookie: &str| desk.get("/", cookie).await.status == StatusCode::OK;
    let form = |current: &str, new: &str| {
        format!("current={current}&password={new}&repeated={new}").replace(' ', "+")
    };
    let wrong = ada
        .post(
            "/account/password",
            &form("not it at all", "seven grey pebbles"),
        )
        .await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(is_in(&elsewhere).await);
    let done = ada
        .post("/account/password", &form(PASSWORD, "seven grey pebbles"))
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert!(!is_in(&elsewhere).await && !is_in(&ada.cookie).await);
    assert!(is_in(&done.cookie("__Host-everyclause").unwrap()).await);
    let old = desk.sign_in("Ada", PASSWORD, "192.0.2.8").await;
    assert_eq!(old.status, StatusCode::UNAUTHORIZED);
    let new = desk.sign_in("Ada", "seven grey pebbles", "192.0.2.8").await;
    assert_eq!(new.status, StatusCode::SEE_OTHER);
    // A person who has forgotten it gets a link, and stays who they are.
    let invited = invite(&desk.store, "Kim", "Ada", Role::Administrator, true)
        .await
        .unwrap();
    let done = desk
        .take_up(&invited.path, "Mallory", "eleven tin kettles")
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert!(!is_in(&new.cookie("__Host-everyclause").unwrap()).await);
    let people = desk.store.people().await.unwrap();
    assert_eq!((people.len(), people[0].value.role), (1, Role::Reader));
    let ada = desk.with(done.cookie("__Host-everyclause").unwrap()).await;
    let out = ada.post("/account/sign-out-everywhere", "").await;
    assert_eq!(out.status, StatusCode::SEE_OTHER);
    assert!(!is_in(&ada.cookie).await);
}

#[tokio::test(flavor = "multi_thread")]
async fn signing_in_is_limited_and_says_the_same_of_every_name() {
    let desk = team(project().await).await;
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

#[tokio::test(flavor = "multi_thread")]
async fn administrators_manage_people_and_it_holds_at_once() {
    let desk = team(project().await).await;
    let ada = desk.somebody("Ada", Role::Administrator).await;
    let page = ada
        .post("/people/invitations", "whom=Bea&role=inspector")
        .await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text);
    let (_, link) = page
        .text
        .split_once(&format!("{ORIGIN}/invitations/"))
        .unwrap();
    let path = format!("/invitations/{}", link.split('"').next().unwrap());
    let done = desk.take_up(&path, "Bea", PASSWORD).await;
    let bea = desk.with(done.cookie("__Host-everyclause").unwrap()).await;
    let may_enter = async |cookie: &str, token: &str| {
        let form = format!("form_token={token}&{}", FACT.replace("seen=1", "seen=99"));
        let answered = desk.post("/joints/J-004/facts", cookie, &form).await;
        answered.status == StatusCode::CONFLICT
    };
    assert!(may_enter(&bea.cookie, &bea.token).await);
    // Two administrators change one person: the second is told, and nothing is overwritten.
    let manage = |role: &str, may_sign_in: bool, seen: i64| {
        format!("name=Bea&role={role}&may_sign_in={may_sign_in}&seen={seen}")
    };
    let done = ada.post("/people", &manage("reader", true, 1)).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let late = ada.post("/people", &manage("administrator", true, 1)).await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    assert!(
        late.text.contains("Ada gave Bea the role of reader"),
        "{}",
        late.text
    );
    let again = desk.sign_in("Bea", PASSWORD, "192.0.2.5").await;
    let bea = desk.with(again.cookie("__Host-everyclause").unwrap()).await;
    assert!(!may_enter(&bea.cookie, &bea.token).await);
    let shut = ada.post("/people", &manage("reader", false, 2)).await;
    assert_eq!(shut.status, StatusCode::SEE_OTHER, "{}", shut.text);
    assert_eq!(
        bea.get("/").await.status,
        StatusCode::SEE_OTHER,
        "the session is over"
    );
    let refused = desk.sign_in("Bea", PASSWORD, "192.0.2.6").await;
    assert_eq!(refused.status, StatusCode::UNAUTHORIZED);
    // Nobody locks everybody out.
    let last = ada
        .post("/people", "name=Ada&role=reader&may_sign_in=true&seen=1")
        .await;
    assert_eq!(last.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(last.text.contains("Nobody would be left"), "{}", last.text);
    // An invitation that is withdrawn leads nowhere.
    let page = ada
        .post("/people/invitations", "whom=Cal&role=reader")
        .await;
    let (_, link) = page
        .text
        .split_once(&format!("{ORIGIN}/invitations/"))
        .unwrap();
    let path = format!("/invitations/{}", link.split('"').next().unwrap());
    let held = desk.store.invitations().await.unwrap();
    let withdraw = format!("/people/invitations/{}/withdraw", held[0].key.name);
    assert_eq!(ada.post(&withdraw, "").await.status, StatusCode::SEE_OTHER);
    assert_eq!(desk.get(&path, "").await.status, StatusCode::NOT_FOUND);
    // All of it stands in the audit, and each has a page of what they changed.
    let audit = ada.get("/audit").await.text;
    for line in [
        "invited Bea as inspector",
        "took up the invitation as inspector",
        "gave Bea the role of reader",
        "shut the door to Bea",
        "withdrew the invitation of Cal",
        "was not let in",
        "from 192.0.2.6",
        "/journal?by=Ada",
    ] {
        assert!(audit.contains(line), "{line}: {audit}");
    }
    let earlier = ada.get("/audit?until=2020-01-01T00:00:00Z").await.text;
    assert!(earlier.contains("Nobody has come"), "{earlier}");
    let own = ada.get("/journal?by=Ada").await.text;
    assert!(
        own.contains("shut the door to Bea") && !own.contains("took the project"),
        "{own}"
    );
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
}

#[tokio::test(flavor = "multi_thread")]
async fn the_second_of_two_is_shown_what_the_first_confirmed_or_judged() {
    let desk = team(project().await).await;
    let (ada, bea) = (
        desk.somebody("Ada", Role::Reviewer).await,
        desk.somebody("Bea", Role::Reviewer).await,
    );
    let confirm = format!("/listings/{LISTING}/confirm");
    assert_eq!(
        ada.post(&confirm, "clauses=3%2F1").await.status,
        StatusCode::SEE_OTHER
    );
    // Bea's page still offers it, alone or with others: neither is confirmed over Ada.
    let seq = desk.store.head().await.unwrap().seq;
    for clauses in ["3%2F1", "3%2F1%0A1%2F1"] {
        let late = bea.post(&confirm, &format!("clauses={clauses}")).await;
        assert_eq!(late.status, StatusCode::CONFLICT, "{clauses}");
        assert!(late.text.contains("Ada confirmed 3/1"), "{}", late.text);
        assert!(late.text.contains("Nothing was overwritten"));
    }
    assert_eq!(desk.store.head().await.unwrap().seq, seq);
    let overlay = desk.store.overlay(LISTING).await.unwrap().unwrap();
    assert_eq!(
        overlay
            .entries
            .iter()
            .map(|entry| entry.by.as_str())
            .collect::<Vec<_>>(),
        ["Ada"]
    );
    // A judgment of the mark is no less one of the joint, and the other way about.
    let judge = |seen: i64, decision: &str, scope: &str| {
        format!("clause=3%2F1&decision={decision}&basis=seen+in+place&scope={scope}&seen={seen}")
    };
    let path = "/joints/J-004/judgments";
    let done = ada.post(path, &judge(seq, "accepted", "mark")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    for scope in ["mark", "joint"] {
        let late = bea.post(path, &judge(seq, "rejected", scope)).await;
        assert_eq!(late.status, StatusCode::CONFLICT, "{scope}");
        assert!(
            late.text.contains("Ada accepted 3/1 at HW1"),
            "{}",
            late.text
        );
        // What stands is Ada's, and Bea sees it.
        assert!(late.text.contains("Judged by Ada"), "{}", late.text);
    }
    let now = desk.store.head().await.unwrap().seq;
    let done = bea.post(path, &judge(now, "rejected", "joint")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let late = ada.post(path, &judge(now, "accepted", "mark")).await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    assert!(
        late.text.contains("Bea rejected 3/1 at J-004"),
        "{}",
        late.text
    );
    // Two at once: one is first, whoever it is.
    let now = desk.store.head().await.unwrap().seq;
    let (one, other) = (
        judge(now, "accepted", "joint"),
        judge(now, "accepted", "joint"),
    );
    let (one, other) = tokio::join!(
        ada.post("/joints/J-001/judgments", &one),
        bea.post("/joints/J-001/judgments", &other)
    );
    let mut statuses = [one.status, other.status];
    statuses.sort_unstable();
    assert_eq!(statuses, [StatusCode::SEE_OTHER, StatusCode::CONFLICT]);
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
}

#[tokio::test(flavor = "multi_thread")]
async fn somebody_elses_project_isn_t_reached_by_its_address() {
    let one = team(project().await).await;
    let other = team(project().await).await;
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

#[tokio::test(flavor = "multi_thread")]
async fn a_desk_of_one_machine_has_no_door() {
    let desk = support::here(project().await).await;
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
    let team = team(project().await).await;
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
