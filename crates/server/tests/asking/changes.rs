//! What a change comes to: a fact, a confirmation, an answer, a judgment, and what others change.

use std::collections::BTreeSet;
use std::path::PathBuf;

use axum::http::StatusCode;
use jiff::Timestamp;
use serde_json::Value;
use store::records::Known;
use store::{Change, Key, Owner};

use crate::demo;
use crate::ground::{Ground, on_each};

on_each![
    a_changed_fact_changes_the_verdict_at_once,
    confirming_every_clause_makes_verdicts_final,
    an_answer_becomes_a_fact_of_each_joint_with_its_source,
    what_others_change_is_taken_into_account,
    a_judgment_is_recorded_with_its_ground_and_shown,
];

async fn a_changed_fact_changes_the_verdict_at_once(ground: Ground) {
    let demo = demo(&ground).await;
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

async fn confirming_every_clause_makes_verdicts_final(ground: Ground) {
    let demo = demo(&ground).await;
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
    let document = format!("document={}", reading.source.sha256);
    let one = demo
        .post(path, &format!("{document}&clauses={first}"))
        .await;
    assert_eq!(one.status, StatusCode::SEE_OTHER, "{}", one.text);
    // Nobody confirms over another.
    let twice = demo
        .post(path, &format!("{document}&clauses={first}"))
        .await;
    assert_eq!(twice.status, StatusCode::CONFLICT);
    assert!(demo.get("/joints/J-004").await.text.contains(provisional));
    let rest: Vec<String> = reading.clauses[1..]
        .iter()
        .map(|clause| encoded(&clause.id))
        .collect();
    let all = demo
        .post(path, &format!("{document}&clauses={}", rest.join("%0A")))
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

async fn an_answer_becomes_a_fact_of_each_joint_with_its_source(ground: Ground) {
    let demo = demo(&ground).await;
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
        format!(
            "seen={seen}&question={id}&property={property}&joints={mark}&value=2+in.&source=witnessed+by+Sam"
        )
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
    let late = demo
        .post("/questions", &form(mark).replace("value=2", "value=3"))
        .await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.text);
    let answers = demo.store.head().await.unwrap().seq - seen;
    assert_eq!(usize::try_from(answers).unwrap(), joints.len() + 1);
    assert_eq!(demo.store.verify(None).await.unwrap().flaws, []);
}

async fn what_others_change_is_taken_into_account(ground: Ground) {
    let demo = demo(&ground).await;
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

async fn a_judgment_is_recorded_with_its_ground_and_shown(ground: Ground) {
    let demo = demo(&ground).await;
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
