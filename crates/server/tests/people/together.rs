//! Two people on one thing.

use axum::http::StatusCode;
use store::people::Role;

use crate::ground::{Ground, on_each};
use crate::support::{LISTING, document, project, team};

on_each![the_second_of_two_is_shown_what_the_first_confirmed_or_judged,];

async fn the_second_of_two_is_shown_what_the_first_confirmed_or_judged(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let (ada, bea) = (
        desk.somebody("Ada", Role::Reviewer).await,
        desk.somebody("Bea", Role::Reviewer).await,
    );
    let (confirm, document) = (format!("/listings/{LISTING}/confirm"), document());
    assert_eq!(
        ada.post(&confirm, &format!("{document}&clauses=3%2F1"))
            .await
            .status,
        StatusCode::SEE_OTHER
    );
    // Bea's page still offers it, alone or with others: neither is confirmed over Ada.
    let seq = desk.store.head().await.unwrap().seq;
    for clauses in ["3%2F1", "3%2F1%0A1%2F1"] {
        let late = bea
            .post(&confirm, &format!("{document}&clauses={clauses}"))
            .await;
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
