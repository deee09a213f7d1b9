//! Every route of the desk, and who may ask it: the router is walked, and one that isn't named here fails.

use std::collections::BTreeSet;

use axum::body::Body;
use axum::http::{StatusCode, header};
use store::people::Role;

use crate::ground::{Ground, on_each};
use crate::support::{Asked, PASSWORD, here, project, team};

on_each![every_route_is_named_here_and_asks_for_its_role];

/// Who may ask.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum May {
    /// Anybody, signed in or not.
    Anybody,
    /// Whoever has this role, or one that may do more.
    As(Role),
}

const READER: May = May::As(Role::Reader);
const INSPECTOR: May = May::As(Role::Inspector);
const REVIEWER: May = May::As(Role::Reviewer);
const ADMINISTRATOR: May = May::As(Role::Administrator);

/// A route: how it is asked, its path as the router has it and one of it, who may ask, and what a form would hold.
type Row = (&'static str, &'static str, &'static str, May, &'static str);

#[rustfmt::skip]
const ROUTES: &[Row] = &[
    ("GET", "/", "/", READER, ""),
    ("GET", "/joints", "/joints", READER, ""),
    ("GET", "/joints/{joint}", "/joints/J-004", READER, ""),
    ("GET", "/joints/{joint}/card", "/joints/J-004/card", READER, ""),
    ("POST", "/joints/{joint}/facts", "/joints/J-004/facts", INSPECTOR, "property=joint.width&value=1+in.&source=witnessed&seen=99"),
    ("POST", "/joints/{joint}/judgments", "/joints/J-004/judgments", REVIEWER, "clause=none&decision=accepted&basis=seen&scope=joint&seen=0"),
    ("GET", "/joints/{joint}/section.svg", "/joints/J-004/section.svg", READER, ""),
    ("GET", "/joints/{joint}/moved.svg", "/joints/J-004/moved.svg", READER, ""),
    ("GET", "/listings", "/listings", READER, ""),
    ("GET", "/listings/{file}", "/listings/hw-d-0412-ed4.txt", READER, ""),
    ("POST", "/listings/{file}/confirm", "/listings/hw-d-0412-ed4.txt/confirm", REVIEWER, "clauses=none"),
    ("POST", "/listings/{file}/let-go", "/listings/none.txt/let-go", REVIEWER, "seen=0"),
    ("GET", "/listings/{file}/clauses/{clause}/correct", "/listings/hw-d-0412-ed4.txt/clauses/3%2F1/correct", REVIEWER, ""),
    ("POST", "/listings/{file}/clauses/{clause}/correct", "/listings/hw-d-0412-ed4.txt/clauses/none/correct", REVIEWER, "seen=0"),
    ("POST", "/listings/{file}/clauses/{clause}/take-back", "/listings/hw-d-0412-ed4.txt/clauses/none/take-back", REVIEWER, "seen=0"),
    ("GET", "/listings/{file}/clauses/{clause}/judge", "/listings/hw-d-0412-ed4.txt/clauses/3%2F1/judge", REVIEWER, ""),
    ("GET", "/listings/{file}/clauses/{clause}/page", "/listings/hw-d-0412-ed4.txt/clauses/3%2F1/page", READER, ""),
    ("GET", "/listings/{file}/pages/{page}", "/listings/hw-d-0412-ed4.txt/pages/1", READER, ""),
    ("GET", "/listings/{file}/cases.md", "/listings/hw-d-0412-ed4.txt/cases.md", READER, ""),
    ("GET", "/selection", "/selection?of=HW1", READER, ""),
    ("GET", "/selection/substitute", "/selection/substitute", READER, ""),
    ("GET", "/submittals", "/submittals", READER, ""),
    ("POST", "/submittals", "/submittals", INSPECTOR, "number=1&title=a&from=b&received=never&marks=HW1&listing=c&proposed=&seen=0"),
    ("GET", "/submittals/{number}", "/submittals/1", READER, ""),
    ("POST", "/submittals/{number}/comments", "/submittals/1/comments", REVIEWER, "mark=HW1&clause=none&words=&comment=a&seen=0"),
    ("POST", "/submittals/{number}/outcome", "/submittals/1/outcome", REVIEWER, "outcome=rejected&note=&seen=0"),
    ("POST", "/submittals/{number}/files", "/submittals/1/files", INSPECTOR, ""),
    ("GET", "/submittals/{number}/files/{sha256}", "/submittals/1/files/none", READER, ""),
    ("POST", "/submittals/{number}/files/{sha256}/take-off", "/submittals/1/files/none/take-off", INSPECTOR, "seen=1"),
    ("GET", "/submittals/{number}/letter", "/submittals/1/letter", READER, ""),
    ("GET", "/questions", "/questions", READER, ""),
    ("POST", "/questions", "/questions", INSPECTOR, "question=none&joints=none&value=1&source=witnessed&seen=0"),
    ("GET", "/questions/{id}", "/questions/none", READER, ""),
    ("GET", "/journal", "/journal", READER, ""),
    ("GET", "/import", "/import", REVIEWER, ""),
    ("POST", "/import", "/import", REVIEWER, ""),
    ("GET", "/import/{lot}", "/import/1", REVIEWER, ""),
    ("POST", "/import/{lot}", "/import/1", REVIEWER, "shown=0"),
    ("GET", "/sign-in", "/sign-in", May::Anybody, ""),
    ("POST", "/sign-in", "/sign-in", May::Anybody, "name=Nobody&password=none&to=%2F"),
    ("GET", "/invitations/{token}", "/invitations/0000", May::Anybody, ""),
    ("POST", "/invitations/{token}", "/invitations/0000", May::Anybody, "name=Nobody&password=none&repeated=none"),
    ("GET", "/account", "/account", READER, ""),
    ("POST", "/account/password", "/account/password", READER, "current=none&password=short&repeated=short"),
    ("GET", "/people", "/people", ADMINISTRATOR, ""),
    ("POST", "/people", "/people", ADMINISTRATOR, "name=nobody&role=reader&may_sign_in=true&seen=1"),
    ("POST", "/people/invitations", "/people/invitations", ADMINISTRATOR, "whom=Noa&role=reader"),
    ("POST", "/people/invitations/{hash}/withdraw", "/people/invitations/0000/withdraw", ADMINISTRATOR, ""),
    ("GET", "/audit", "/audit", ADMINISTRATOR, ""),
    ("GET", "/assets/desk.css", "/assets/desk.css", May::Anybody, ""),
    ("GET", "/assets/icon.svg", "/assets/icon.svg", May::Anybody, ""),
    ("GET", "/assets/import.js", "/assets/import.js", May::Anybody, ""),
    ("GET", "/assets/desk.js", "/assets/desk.js", May::Anybody, ""),
    ("GET", "/api/v1/openapi.json", "/api/v1/openapi.json", READER, ""),
    ("GET", "/api/v1/joints", "/api/v1/joints", READER, ""),
    ("GET", "/api/v1/joints/{joint}", "/api/v1/joints/J-004", READER, ""),
    ("GET", "/api/v1/joints/{joint}/card", "/api/v1/joints/J-004/card", READER, ""),
    ("PUT", "/api/v1/joints/{joint}/facts/{property}", "/api/v1/joints/J-004/facts/joint.width", INSPECTOR, r#"{"value":"1 in.","source":"witnessed","seen":99}"#),
    ("GET", "/api/v1/questions", "/api/v1/questions", READER, ""),
    ("GET", "/api/v1/questions/{question}", "/api/v1/questions/none", READER, ""),
    ("GET", "/api/v1/journal", "/api/v1/journal", READER, ""),
    // What ends a session comes last.
    ("POST", "/account/sign-out-everywhere", "/account/sign-out-everywhere", READER, ""),
    ("POST", "/sign-out", "/sign-out", READER, ""),
];

/// Every path of the router. Axum doesn't list them, but shows them.
fn paths(desk: &Asked) -> BTreeSet<String> {
    let shown = format!("{:?}", desk.app);
    let quoted = shown.split('"').skip(1).step_by(2);
    let paths = quoted.filter(|text| text.starts_with('/') && !text.contains(['*', ' ']));
    paths.map(str::to_owned).collect()
}

/// The methods of a path, as the router says itself where it is asked by another.
async fn methods(desk: &Asked, path: &str) -> Vec<String> {
    let path: String = path
        .split('/')
        .map(|piece| if piece.starts_with('{') { "1" } else { piece })
        .collect::<Vec<_>>()
        .join("/");
    let request = desk.request("TRACE", &path, "").body(Body::empty());
    let answered = desk.ask(request.unwrap()).await;
    assert_eq!(answered.status, StatusCode::METHOD_NOT_ALLOWED, "{path}");
    let allowed = answered.headers[header::ALLOW].to_str().unwrap().split(',');
    let allowed = allowed.filter(|method| *method != "HEAD");
    allowed.map(str::to_owned).collect()
}

async fn asked(desk: &Asked, row: &Row, cookie: &str, token: &str) -> StatusCode {
    let (method, _, path, _, form) = *row;
    let request = desk.request(method, path, cookie);
    let request = match method {
        "GET" => request.body(Body::empty()),
        "PUT" => request
            .header(header::CONTENT_TYPE, "application/json")
            .body(Body::from(form)),
        _ => request
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .body(Body::from(format!("form_token={token}&{form}"))),
    };
    desk.ask(request.unwrap()).await.status
}

async fn every_route_is_named_here_and_asks_for_its_role(ground: Ground) {
    let store = project(&ground).await;
    let known: BTreeSet<(String, String)> = ROUTES
        .iter()
        .map(|(method, path, ..)| ((*method).to_owned(), (*path).to_owned()))
        .collect();
    let own = here(store.clone()).await;
    let mut found = BTreeSet::new();
    for path in paths(&own) {
        for method in methods(&own, &path).await {
            found.insert((method, path.clone()));
        }
    }
    assert!(found.len() > 40, "the router shows its paths: {found:?}");
    let unnamed: Vec<_> = found.difference(&known).collect();
    assert!(unnamed.is_empty(), "say here who may ask {unnamed:?}");
    let gone: Vec<_> = known.difference(&found).collect();
    assert!(gone.is_empty(), "the router has none of {gone:?}");

    let desk = team(store).await;
    for row @ (method, _, path, may, _) in ROUTES {
        // Who hasn't signed in is sent to the door, or told so.
        let status = asked(&desk, row, "", "").await;
        let is_sent_away = match *method {
            "GET" if !path.starts_with("/api/") => status == StatusCode::SEE_OTHER,
            _ => status == StatusCode::UNAUTHORIZED,
        };
        assert_eq!(
            is_sent_away,
            *may != May::Anybody,
            "{method} {path}: {status}"
        );
    }
    for role in Role::ALL {
        let name = format!("{role} Ada");
        let mut who = desk.somebody(&name, role).await;
        for row @ (method, _, path, may, _) in ROUTES {
            // Without the form's token nothing is changed by anybody.
            if *method == "POST" {
                let status = asked(&desk, row, &who.cookie, "none").await;
                assert_eq!(
                    status,
                    StatusCode::FORBIDDEN,
                    "{role} {path} without its token"
                );
            }
            let status = asked(&desk, row, &who.cookie, &who.token).await;
            if path.ends_with("/sign-out-everywhere") {
                let again = desk.sign_in(&name, PASSWORD, "192.0.2.20").await;
                who = desk.with(again.cookie("__Host-everyclause").unwrap()).await;
            }
            let is_refused = status == StatusCode::FORBIDDEN;
            let may_ask = match may {
                May::Anybody => true,
                May::As(asked) => role >= *asked,
            };
            assert_eq!(is_refused, !may_ask, "{role} {method} {path}: {status}");
            assert!(
                !status.is_server_error(),
                "{role} {method} {path}: {status}"
            );
        }
    }
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
}
