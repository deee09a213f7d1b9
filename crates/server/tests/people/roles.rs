//! Roles: what each may do, and who says so.

use axum::body::Body;
use axum::http::{StatusCode, header};
use store::people::Role;

use crate::FACT;
use crate::ground::{Ground, on_each};
use crate::support::{LISTING, ORIGIN, PASSWORD, document, project, team};

/// What asks for a role, whatever is known of the project.
const FURTHER: [(Role, &str, &str); 3] = [
    (Role::Inspector, "/joints/J-004/facts", FACT),
    (
        Role::Administrator,
        "/people/invitations",
        "whom=Noa&role=reader",
    ),
    (Role::Reviewer, "/listings/none.txt/let-go", ""),
];

on_each![
    two_administrators_don_t_lock_each_other_out,
    each_may_do_what_their_role_says_and_no_more,
    administrators_manage_people_and_it_holds_at_once,
];

async fn each_may_do_what_their_role_says_and_no_more(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let confirm = format!("/listings/{LISTING}/confirm");
    let confirmed = format!("{}&clauses=3%2F1", document());
    let seen = desk.store.head().await.unwrap().seq;
    let answer = format!(
        "seen={seen}&question=Which%3F&property=coating.coats&joints=J-001&value=2&source=witnessed+by+Sam"
    );
    let judgment = format!("clause=3%2F1&decision=accepted&basis=seen&scope=joint&seen={seen}");
    let asks = [
        (Role::Inspector, "/questions", answer.as_str()),
        (Role::Inspector, "/submittals/1/files", ""),
        (
            Role::Inspector,
            "/submittals/1/files/none/take-off",
            "seen=1",
        ),
        (Role::Reviewer, confirm.as_str(), confirmed.as_str()),
        (Role::Reviewer, "/joints/J-004/judgments", judgment.as_str()),
        (
            Role::Administrator,
            "/people",
            "name=nobody&role=reader&may_sign_in=true&seen=1",
        ),
    ];
    for role in Role::ALL {
        let who = desk.somebody(&format!("{role} Ada"), role).await;
        for (asked, path, form) in asks.into_iter().chain(FURTHER) {
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

async fn administrators_manage_people_and_it_holds_at_once(ground: Ground) {
    let desk = team(project(&ground).await).await;
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

/// Each sees the other as an administrator who is left; only one of the changes may be made.
async fn two_administrators_don_t_lock_each_other_out(ground: Ground) {
    let desk = team(project(&ground).await).await;
    for turn in 0..4 {
        let (one, other) = (format!("Ada {turn}"), format!("Bea {turn}"));
        let ada = desk.somebody(&one, Role::Administrator).await;
        let bea = desk.somebody(&other, Role::Administrator).await;
        let shut = |name: &str| {
            let name = name.replace(' ', "+");
            format!("name={name}&role=reader&may_sign_in=false&seen=1")
        };
        let (by_ada, by_bea) = (shut(&other), shut(&one));
        let (first, second) =
            tokio::join!(ada.post("/people", &by_ada), bea.post("/people", &by_bea));
        let people = desk.store.people().await.unwrap();
        let mut left = people
            .iter()
            .filter(|held| held.value.may_sign_in && held.value.role == Role::Administrator);
        let left = left
            .next()
            .unwrap_or_else(|| panic!("{} {}", first.status, second.status));
        assert!(left.value.name == one || left.value.name == other);
        // The one who is left goes, so that the next two are alone.
        let held = left.value.clone();
        let edit = store::Edit::remove(held.key(), left.version);
        let change = store::Change {
            by: "Kim".to_owned(),
            at: jiff::Timestamp::UNIX_EPOCH,
            what: "cleared the ground".to_owned(),
            edits: vec![edit],
        };
        desk.store.change(&change).await.unwrap();
    }
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
}
