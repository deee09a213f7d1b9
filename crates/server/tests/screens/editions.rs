//! Another edition comes under the name of a listing that people have confirmed: what no longer stands is said, and may be confirmed again.

use axum::http::StatusCode;
use listing::Reading;
use store::records::ConfirmationRecord;

use crate::ground::{Ground, on_each};
use crate::support::{Answered, Sat, hidden};

on_each![
    a_clause_whose_words_changed_is_confirmed_again,
    a_clause_that_came_in_between_takes_no_other_s_confirmation,
    what_the_document_doesn_t_have_any_more_is_let_go,
    a_correction_of_other_words_isn_t_carried_over_to_a_clause_of_that_number,
];

const FILE: &str = "hw-s-0900.txt";

const FIRST: &str = "System No. HW-S-0900\n\n\
1. Floor - Concrete floor, min 5 in. (127 mm) thick.\n\n\
2. Packing - Min 4 in. (102 mm) deep. Nominal density 4 pcf (64 kg/m3). Fibers run parallel to the wall.\n\n\
3. Sealant - Min 1/2 in. (13 mm) depth of sealant on each face of the wall.\n";

fn read(text: &str) -> Reading {
    listing::read(FILE, text.as_bytes()).unwrap()
}

fn ids(reading: &Reading) -> Vec<String> {
    reading
        .clauses
        .iter()
        .map(|clause| clause.id.clone())
        .collect()
}

/// A desk with the first edition, every clause of it confirmed.
async fn confirmed(ground: &Ground) -> Sat {
    let sat = Sat::down(ground).await;
    sat.take(FILE, FIRST.into()).await;
    let done = confirm(&sat, FIRST, &ids(&read(FIRST))).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert!(page(&sat).await.contains("✓"));
    assert_eq!(open(&sat).await, 0);
    sat
}

/// Confirms clauses as somebody who has read a text.
async fn confirm(sat: &Sat, text: &str, clauses: &[String]) -> Answered {
    let document = read(text).source.sha256;
    let form = [
        ("document", document.as_str()),
        ("clauses", &clauses.join("\n")),
    ];
    sat.post(&format!("/listings/{FILE}/confirm"), &form).await
}

async fn page(sat: &Sat) -> String {
    sat.get(&format!("/listings/{FILE}")).await.text
}

/// How many clauses nobody has confirmed.
async fn open(sat: &Sat) -> usize {
    page(sat).await.matches("class=\"clause draft").count()
}

/// The clauses that are confirmed, each under the number that it has.
async fn under(sat: &Sat) -> Vec<String> {
    let held = sat.store.get_all::<ConfirmationRecord>(FILE).await.unwrap();
    let mut under: Vec<String> = held.iter().map(|held| held.key.part.clone()).collect();
    for held in held {
        assert_eq!(held.key.part, held.value.entry.clause);
    }
    under.sort();
    under
}

async fn a_clause_whose_words_changed_is_confirmed_again(ground: Ground) {
    let sat = confirmed(&ground).await;
    let second = FIRST.replace("4 in. (102 mm)", "5 in. (127 mm)");
    sat.take(FILE, second.clone().into()).await;
    let reading = page(&sat).await;
    for says in [
        "1 confirmation no longer stands",
        "<strong>2/1</strong>, confirmed by Lee",
        "the clause has other words now",
        "<q>Min 4 in. (102 mm) deep.</q>",
        "<q>Min 5 in. (127 mm) deep.</q>",
        "Under this number other words were confirmed by Lee",
    ] {
        assert!(reading.contains(says), "{says}: {reading}");
    }
    assert_eq!(open(&sat).await, 1);
    // Who still has the first edition before them confirms nothing of the second.
    let stale = confirm(&sat, FIRST, &["2/1".to_owned()]).await;
    assert_eq!(stale.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        stale.text.contains("another document now"),
        "{}",
        stale.text
    );
    assert_eq!(open(&sat).await, 1);
    let again = confirm(&sat, &second, &["2/1".to_owned()]).await;
    assert_eq!(again.status, StatusCode::SEE_OTHER, "{}", again.text);
    assert_eq!(open(&sat).await, 0);
    assert!(!page(&sat).await.contains("no longer stand"));
    let overlay = sat.store.overlay(FILE).await.unwrap().unwrap();
    let laid = listing::confirm::confirm(read(&second), &overlay);
    assert!(laid.confirmed().is_ok(), "the second edition is final");
    // And nobody confirms over another, as ever.
    let late = confirm(&sat, &second, &["2/1".to_owned()]).await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    assert!(late.text.contains("Lee confirmed 2/1"), "{}", late.text);
    assert!(sat.store.verify(None).await.unwrap().flaws.is_empty());
}

async fn a_clause_that_came_in_between_takes_no_other_s_confirmation(ground: Ground) {
    let sat = confirmed(&ground).await;
    // A sentence before the others: each of them has another number now, and 2/1 is about something new.
    let second = FIRST.replace("Min 4 in.", "Packing shall be kept dry. Min 4 in.");
    sat.take(FILE, second.clone().into()).await;
    assert_eq!(
        open(&sat).await,
        1,
        "what was confirmed stands, whatever its number"
    );
    assert!(!page(&sat).await.contains("no longer stand"));
    let done = confirm(&sat, &second, &["2/1".to_owned()]).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(open(&sat).await, 0);
    let mut expected = ids(&read(&second));
    expected.sort();
    assert_eq!(under(&sat).await, expected, "each under its own number");
    let overlay = sat.store.overlay(FILE).await.unwrap().unwrap();
    assert!(
        listing::confirm::confirm(read(&second), &overlay)
            .confirmed()
            .is_ok()
    );
}

async fn what_the_document_doesn_t_have_any_more_is_let_go(ground: Ground) {
    let sat = confirmed(&ground).await;
    let (second, _) = FIRST.split_once("3. Sealant").unwrap();
    sat.take(FILE, second.into()).await;
    assert_eq!(open(&sat).await, 0);
    let reading = page(&sat).await;
    assert!(
        reading.contains("its words aren&#39;t in the document any more")
            || reading.contains("its words aren't in the document any more"),
        "{reading}"
    );
    let overlay = sat.store.overlay(FILE).await.unwrap().unwrap();
    assert!(
        listing::confirm::confirm(read(second), &overlay)
            .confirmed()
            .is_err()
    );
    let document = read(second).source.sha256;
    let path = format!("/listings/{FILE}/let-go");
    // What stands isn't let go.
    let form = [("document", document.as_str()), ("gone", "1 2/1")];
    let stands = sat.post(&path, &form).await;
    assert_eq!(
        stands.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "{}",
        stands.text
    );
    let gone = hidden(&reading, "gone").to_owned();
    let form = [("document", document.as_str()), ("gone", gone.as_str())];
    let done = sat.post(&path, &form).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let overlay = sat.store.overlay(FILE).await.unwrap().unwrap();
    assert!(
        listing::confirm::confirm(read(second), &overlay)
            .confirmed()
            .is_ok()
    );
    let twice = sat.post(&path, &form).await;
    assert_eq!(twice.status, StatusCode::UNPROCESSABLE_ENTITY);
    let journal = sat.get("/journal").await.text;
    assert!(journal.contains("go, whose words it doesn"), "{journal}");
}

async fn a_correction_of_other_words_isn_t_carried_over_to_a_clause_of_that_number(ground: Ground) {
    let sat = Sat::down(&ground).await;
    sat.take(FILE, FIRST.into()).await;
    let path = format!("/listings/{FILE}/clauses/2%2F1/correct");
    let send = async |text: &str, seen: &str, further: &str| {
        let document = read(text).source.sha256;
        let form = [
            ("property", "packing.length"),
            ("asks", "at_least"),
            ("value", "9 in."),
            ("applies", "always"),
            ("seen", seen),
            ("document", document.as_str()),
            ("further", further),
            ("step", "record"),
        ];
        sat.post(&path, &form).await
    };
    let done = send(FIRST, "0", "true").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert!(page(&sat).await.contains("2/1+1"));
    let second = FIRST.replace("4 in. (102 mm)", "5 in. (127 mm)");
    sat.take(FILE, second.clone().into()).await;
    assert!(!page(&sat).await.contains("2/1+1"), "it was of other words");
    // Correcting the clause of the second edition begins with it as it was read.
    let asked = sat.get(&path).await.text;
    assert!(!asked.contains("Take back"), "{asked}");
    let seen = hidden(&asked, "seen").to_owned();
    let done = send(&second, &seen, "false").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let reading = page(&sat).await;
    assert!(
        !reading.contains("2/1+1") && reading.contains("at least 9 in."),
        "{reading}"
    );
    assert!(!reading.contains("no longer stand"));
    let stale = send(FIRST, "2", "false").await;
    assert_eq!(stale.status, StatusCode::UNPROCESSABLE_ENTITY);
}
