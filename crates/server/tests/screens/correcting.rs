//! A clause that was read wrongly is put right, and verdicts follow.

use std::sync::LazyLock;

use axum::http::StatusCode;
use store::Key;
use store::records::ConfirmationRecord;

use crate::ground::{Ground, on_each};
use crate::support::{Sat, demo_file, hidden, mark};

on_each![
    what_is_right_is_seen_before_it_is_recorded,
    what_isn_t_right_is_told_with_what_would_be,
    words_ask_for_something_more_or_for_nothing,
    a_clause_is_judged_from_the_listing,
    a_pdf_shows_its_page_with_the_clause_marked,
];

const LISTING: &str = "hw-d-0412-ed4.txt";

/// A bound of the demo's listing, with its id.
async fn a_bound(sat: &Sat) -> (String, String) {
    let bytes = demo_file("listings/hw-d-0412-ed4.txt");
    let reading = listing::read(LISTING, &bytes).unwrap();
    let clause = reading
        .clauses
        .iter()
        .find(|clause| clause.property == "packing.density" && clause.bound().is_some())
        .unwrap();
    let path = format!(
        "/listings/{LISTING}/clauses/{}/correct",
        clause.id.replace('/', "%2F")
    );
    assert_eq!(sat.get(&path).await.status, StatusCode::OK);
    (clause.id.clone(), path)
}

/// What a form says of the listing's document.
fn document() -> &'static str {
    static DOCUMENT: LazyLock<String> = LazyLock::new(|| {
        let bytes = demo_file("listings/hw-d-0412-ed4.txt");
        listing::read(LISTING, &bytes).unwrap().source.sha256
    });
    &DOCUMENT
}

fn form<'a>(
    step: &'a str,
    seen: &'a str,
    asks: &'a str,
    value: &'a str,
) -> Vec<(&'a str, &'a str)> {
    vec![
        ("property", "packing.density"),
        ("asks", asks),
        ("value", value),
        ("applies", "always"),
        ("seen", seen),
        ("document", document()),
        ("step", step),
    ]
}

async fn what_is_right_is_seen_before_it_is_recorded(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let (id, path) = a_bound(&sat).await;
    let key = Key::confirmation(LISTING, &id);
    let page = sat.get(&path).await.text;
    let seen = hidden(&page, "seen").to_owned();
    let look = sat
        .post(&path, &form("look", &seen, "at_most", "9 pcf"))
        .await;
    assert_eq!(look.status, StatusCode::OK, "{}", look.text);
    assert!(look.text.contains("at most 9 pcf"), "{}", look.text);
    assert!(
        sat.store
            .get::<ConfirmationRecord>(&key)
            .await
            .unwrap()
            .is_none()
    );
    let done = sat
        .post(&path, &form("record", &seen, "at_most", "9 pcf"))
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let reading = sat.get(&format!("/listings/{LISTING}")).await.text;
    assert!(reading.contains("at most 9 pcf"), "{reading}");
    let held = sat
        .store
        .get::<ConfirmationRecord>(&key)
        .await
        .unwrap()
        .unwrap();
    assert_eq!(held.value.entry.by, "Lee");
    let joint = sat.get("/joints/J-004").await.text;
    assert!(joint.contains("9 pcf"), "the verdict follows");
    let cases = sat.get(&format!("/listings/{LISTING}/cases.md")).await;
    assert!(
        cases.text.contains("at most 9 pcf of packing.density"),
        "{}",
        cases.text
    );
    // The second of two who looked at the same is told.
    let late = sat
        .post(&path, &form("record", &seen, "at_least", "1 pcf"))
        .await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    assert!(
        late.text.contains("Nothing was overwritten"),
        "{}",
        late.text
    );
    // What was recorded is taken back.
    let back = path.replace("correct", "take-back");
    let gone = sat
        .post(&back, &[("seen", "1"), ("document", document())])
        .await;
    assert_eq!(gone.status, StatusCode::SEE_OTHER, "{}", gone.text);
    assert!(
        sat.store
            .get::<ConfirmationRecord>(&key)
            .await
            .unwrap()
            .is_none()
    );
    assert!(
        !sat.get(&format!("/listings/{LISTING}"))
            .await
            .text
            .contains("at most 9 pcf")
    );
}

async fn what_isn_t_right_is_told_with_what_would_be(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let (_, path) = a_bound(&sat).await;
    for (asks, value, says) in [
        ("at_least", "9", "no known unit"),
        ("at_least", "9 in.", "packing.density is a density"),
        ("between", "9 pcf", "needs both ends"),
        ("named", "", "Nothing is said otherwise"),
    ] {
        let told = sat.post(&path, &form("look", "0", asks, value)).await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{asks}");
        assert!(told.text.contains(says), "{says}: {}", told.text);
    }
    let mut elsewhere = form("look", "0", "at_least", "9 pcf");
    elsewhere[0].1 = "packing.densty";
    let told = sat.post(&path, &elsewhere).await;
    assert!(
        told.text.contains("Is `packing.density` meant?"),
        "{}",
        told.text
    );
}

async fn words_ask_for_something_more_or_for_nothing(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let (id, path) = a_bound(&sat).await;
    let page = sat.get(&format!("{path}?further=true")).await.text;
    assert!(page.contains("What the words ask for besides"));
    let mut more = form("record", "0", "at_least", "2 in.");
    more[0].1 = "packing.depth";
    more.push(("further", "true"));
    let done = sat.post(&path, &more).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let reading = sat.get(&format!("/listings/{LISTING}")).await.text;
    assert!(
        reading.contains(&format!("{id}+1 Packing depth")),
        "{reading}"
    );
    let done = sat.post(&path, &form("record", "1", "nothing", "")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let reading = sat.get(&format!("/listings/{LISTING}")).await.text;
    assert!(
        reading.contains(&format!("{id}+1 Packing depth")),
        "what was found besides stays"
    );
    let journal = sat.get("/journal").await.text;
    assert!(
        journal.contains(&format!("found something more in the words of {id}")),
        "{journal}"
    );
}

async fn a_clause_is_judged_from_the_listing(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let (_, path) = a_bound(&sat).await;
    let page = sat.get(&path.replace("correct", "judge")).await.text;
    assert!(page.contains("Mark HW1"), "{page}");
}

async fn a_pdf_shows_its_page_with_the_clause_marked(ground: Ground) {
    let sat = Sat::down(&ground).await;
    let brought = sat
        .bring(&[("ff-d-1102.pdf", demo_file("pdf/ff-d-1102.pdf"))])
        .await;
    let shown = sat.get(&brought.to).await.text;
    assert!(shown.contains("FF-D-1102"), "{shown}");
    let form = [("shown", mark(&shown)), ("listing", "ff-d-1102.pdf")];
    sat.post(&brought.to, &form).await;
    let reading = sat.get("/listings/ff-d-1102.pdf").await.text;
    assert!(reading.contains("On its page"));
    let (before, _) = reading.split_once("/page\">On its page").unwrap();
    let (_, path) = before.rsplit_once('"').unwrap();
    let page = sat.get(&format!("{path}/page")).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text);
    assert!(page.text.contains("class=\"marked\""), "{}", page.text);
    assert!(page.text.contains("<text"), "{}", page.text);
    let beyond = sat.get("/listings/ff-d-1102.pdf/pages/99").await;
    assert_eq!(beyond.status, StatusCode::NOT_FOUND);
}
