//! What was said of one listing's own requirement isn't said of another's that has the same item and words.

use axum::http::StatusCode;
use serde_json::Value;

use crate::ground::{Ground, on_each};
use crate::support::{Sat, mark};

on_each![
    an_answer_to_one_listing_decides_nothing_of_another,
    which_option_is_built_is_said_of_one_listing,
    another_edition_under_the_same_file_is_another_listing,
    a_judgment_is_of_the_document_that_it_was_made_on,
    what_a_table_says_is_said_of_the_document_that_its_listing_is,
];

const LUG: &str = "1:lug_lug_reach";

const A: &str = "System No. HW-D-0001\n\n1. Lug - Max 5 in. lug reach.\n";
/// The same item and words, and a stricter limit.
const B: &str = "System No. HW-D-0002\n\n1. Lug - Max 3 in. lug reach.\n";
/// The same item and words, and no stricter limit: the same words may mean another lug.
const C: &str = "System No. HW-D-0003\n\n1. Lug - Max 5 in. lug reach.\n";

/// A desk with one joint, to be built to `hw-d-1`, and some listings.
async fn desk(ground: &Ground, listings: &[(&str, &str)]) -> Sat {
    let sat = Sat::down(ground).await;
    for (file, text) in listings {
        sat.take(file, text.as_bytes().to_vec()).await;
    }
    build_to(&sat, "hw-d-1").await;
    sat
}

/// Gives the joint a listing, as its schedule does.
async fn build_to(sat: &Sat, listing: &str) {
    let table = format!("joint,mark,listing,joint.width\nJ-1,HW1,{listing},1 in.\n");
    take_table(sat, table).await;
}

async fn take_table(sat: &Sat, table: String) {
    let brought = sat.bring(&[("schedule.csv", table.into_bytes())]).await;
    let shown = sat.get(&brought.to).await.text;
    let form = [("tables", "yes"), ("shown", mark(&shown))];
    let taken = sat.post(&brought.to, &form).await;
    assert_eq!(taken.status, StatusCode::SEE_OTHER, "{}", taken.text);
    sat.desk.look_at_all().await.unwrap();
}

async fn confirm(sat: &Sat, file: &str, text: &str) {
    let reading = listing::read(file, text.as_bytes()).unwrap();
    let ids: Vec<&str> = reading.clauses.iter().map(|one| one.id.as_str()).collect();
    let form = [
        ("document", reading.source.sha256.as_str()),
        ("clauses", &ids.join("\n")),
    ];
    let done = sat.post(&format!("/listings/{file}/confirm"), &form).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
}

async fn found(sat: &Sat) -> Value {
    let text = sat.get("/api/v1/joints/J-1").await.text;
    serde_json::from_str(&text).unwrap()
}

/// The verdict on the clause, or clauses, on a property.
async fn verdicts(sat: &Sat, property: &str) -> Vec<String> {
    let found = found(sat).await;
    let findings = found["result"]["findings"].as_array().unwrap();
    let of_it = findings
        .iter()
        .filter(|one| one["explanation"]["property"] == property);
    of_it
        .map(|one| one["verdict"].as_str().unwrap().to_owned())
        .collect()
}

/// Whether the board asks for a property.
async fn is_asked(sat: &Sat, property: &str) -> bool {
    sat.desk.look_at_all().await.unwrap();
    let text = sat.get("/api/v1/questions?limit=1000").await.text;
    let asked: Value = serde_json::from_str(&text).unwrap();
    let questions = asked["questions"].as_array().unwrap();
    questions.iter().any(|one| one["property"] == property)
}

async fn an_answer_to_one_listing_decides_nothing_of_another(ground: Ground) {
    let all = [("hw-d-1.txt", A), ("hw-d-2.txt", B), ("hw-d-3.txt", C)];
    let sat = desk(&ground, &all).await;
    for (file, text) in all {
        confirm(&sat, file, text).await;
    }
    let done = sat.enter("J-1", LUG, "2 in.").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(verdicts(&sat, LUG).await, ["met"]);
    assert!(!is_asked(&sat, LUG).await);
    for other in ["hw-d-2", "hw-d-3"] {
        build_to(&sat, other).await;
        assert_eq!(verdicts(&sat, LUG).await, ["open"], "{other}");
        assert!(is_asked(&sat, LUG).await, "{other}");
        // Never silently: the page tells what it was said of.
        let page = sat.get("/joints/J-1").await.text;
        assert!(page.contains("was said of hw-d-1"), "{page}");
        assert!(page.contains("doesn’t count here"), "{page}");
        let card = sat.get("/joints/J-1/card").await;
        assert_eq!(card.status, StatusCode::OK);
        // A desk that starts anew says the same.
        let anew = sat.started_anew().await;
        assert_eq!(verdicts(&anew, LUG).await, ["open"]);
        assert!(is_asked(&anew, LUG).await, "{other}");
    }
    // An answer to the other listing stands beside the first.
    let done = sat.enter("J-1", LUG, "4 in.").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(verdicts(&sat, LUG).await, ["met"]);
    build_to(&sat, "hw-d-2").await;
    assert_eq!(verdicts(&sat, LUG).await, ["open"]);
    // With the first listing back, what was said of it counts again.
    build_to(&sat, "hw-d-1").await;
    assert_eq!(verdicts(&sat, LUG).await, ["met"]);
    let facts = found(&sat).await["result"].to_string();
    assert!(facts.contains("2 in."), "{facts}");
    assert!(sat.store.verify(None).await.unwrap().flaws.is_empty());
}

const OPTIONS: [(&str, &str); 2] = [
    (
        "hw-d-1.txt",
        "System No. HW-D-0001\n\n1. Wall - Concrete wall, min 5 in. (127 mm) thick.\n\n\
         3. Fill - Install one of the following:\n\n\
         3A. Sealant - Min 1/2 in. (13 mm) depth of sealant.\n\n\
         3B. Sealant (As an alternate to Item 3A) - Min 1/4 in. (6 mm) depth of sealant.\n",
    ),
    (
        "hw-d-2.txt",
        "System No. HW-D-0002\n\n1. Wall - Concrete wall, min 5 in. (127 mm) thick.\n\n\
         3. Fill - Install one of the following:\n\n\
         3A. Sealant - Min 1 in. (25 mm) depth of sealant.\n\n\
         3B. Sealant (As an alternate to Item 3A) - Min 1/8 in. (3 mm) depth of sealant.\n",
    ),
];

/// How a joint's options were chosen.
async fn how(sat: &Sat) -> Vec<String> {
    let found = found(sat).await;
    let chosen = found["result"]["chosen"].as_array().unwrap();
    chosen
        .iter()
        .map(|one| one["how"].as_str().unwrap().to_owned())
        .collect()
}

async fn which_option_is_built_is_said_of_one_listing(ground: Ground) {
    let sat = desk(&ground, &OPTIONS).await;
    for (file, text) in OPTIONS {
        confirm(&sat, file, text).await;
    }
    let form = [
        ("property", "option.3A"),
        ("value", "3B"),
        ("source", "drawing A-801"),
        ("seen", "0"),
    ];
    let done = sat.post("/joints/J-1/facts", &form).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(how(&sat).await, ["stated"]);
    build_to(&sat, "hw-d-2").await;
    assert_ne!(how(&sat).await, ["stated"]);
    let page = sat.get("/joints/J-1").await.text;
    assert!(page.contains("was said of hw-d-1"), "{page}");
    build_to(&sat, "hw-d-1").await;
    assert_eq!(how(&sat).await, ["stated"]);
}

async fn another_edition_under_the_same_file_is_another_listing(ground: Ground) {
    let sat = desk(&ground, &[("hw-d-1.txt", A)]).await;
    confirm(&sat, "hw-d-1.txt", A).await;
    let done = sat.enter("J-1", LUG, "2 in.").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(verdicts(&sat, LUG).await, ["met"]);
    // Item 1 has the same words; nobody knows whether it means the same lug. What was confirmed of its words stands.
    let next = format!("{A}\n2. Packing - Min 4 in. (102 mm) deep.\n");
    sat.take("hw-d-1.txt", next.into_bytes()).await;
    assert_eq!(verdicts(&sat, LUG).await, ["open"]);
    let page = sat.get("/joints/J-1").await.text;
    assert!(page.contains("another document"), "{page}");
    sat.take("hw-d-1.txt", A.as_bytes().to_vec()).await;
    assert_eq!(verdicts(&sat, LUG).await, ["met"]);
}

async fn a_judgment_is_of_the_document_that_it_was_made_on(ground: Ground) {
    let sat = desk(&ground, &[("hw-d-1.txt", A)]).await;
    confirm(&sat, "hw-d-1.txt", A).await;
    let seen = sat.store.head().await.unwrap().seq.to_string();
    let form = [
        ("clause", "header/rating"),
        ("decision", "accepted"),
        ("basis", "letter of the laboratory"),
        ("scope", "joint"),
        ("seen", &seen),
    ];
    let done = sat.post("/joints/J-1/judgments", &form).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let judged = "Judged by";
    assert!(sat.get("/joints/J-1").await.text.contains(judged));
    let next = A.replace("Max 5 in.", "Max 4 in.");
    sat.take("hw-d-1.txt", next.into_bytes()).await;
    let page = sat.get("/joints/J-1").await.text;
    assert!(!page.contains(judged), "{page}");
    assert!(
        page.contains("made on another document of the same name"),
        "{page}"
    );
    sat.take("hw-d-1.txt", A.as_bytes().to_vec()).await;
    assert!(sat.get("/joints/J-1").await.text.contains(judged));
}

async fn what_a_table_says_is_said_of_the_document_that_its_listing_is(ground: Ground) {
    let (file, text) = OPTIONS[0];
    let sat = desk(&ground, &OPTIONS).await;
    let table = |listing: &str, heading: &str| {
        format!(
            "joint,mark,listing,joint.width,{heading}\n#source,,,,drawing A-801\nJ-1,HW1,{listing},1 in.,3B\n"
        )
    };
    take_table(&sat, table("hw-d-1", "option.3A")).await;
    assert_eq!(how(&sat).await, ["stated"]);
    sat.take(file, format!("{text}\n4. Note - Keep dry.\n").into_bytes())
        .await;
    assert_ne!(how(&sat).await, ["stated"], "another edition came");
    sat.take(file, text.as_bytes().to_vec()).await;
    assert_eq!(how(&sat).await, ["stated"]);
    // The heading names another listing than the joint's.
    take_table(&sat, table("hw-d-2", "option.3A@HW-D-0001")).await;
    assert_ne!(how(&sat).await, ["stated"]);
    take_table(&sat, table("hw-d-2", "option.3A@HW-D-0002")).await;
    assert_eq!(how(&sat).await, ["stated"]);
}
