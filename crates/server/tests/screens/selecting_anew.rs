//! What a search kept from the one before is never told once something has changed that it was found from: each page is held against that of a
//! desk that has just been started over the same store.

use axum::http::StatusCode;
use jiff::Timestamp;
use store::{Change, Edit, Key, Kind, Owner};

use crate::ground::{Ground, on_each};
use crate::support::{Sat, demo_file};

on_each![
    a_fact_a_listing_a_confirmation_and_a_judgment_change_the_next_answer,
    what_others_change_is_in_the_next_answer,
    joints_of_one_condition_are_told_by_their_own_names,
    each_project_has_its_own_answers,
];

const OWN: &str = "hw-d-0412-ed4.txt";
const LISTINGS: [&str; 3] = [OWN, "ff-d-1102.txt", "hw-d-0437.txt"];

const PAGES: [&str; 3] = [
    "/selection?of=HW1",
    "/selection?of=J-001",
    "/selection?of=J-001&property=joint.width&value=9+in.",
];

/// The pages, asked for twice so that the second comes from what was kept; the same as from a desk that has just been started.
async fn pages(sat: &Sat) -> [String; 3] {
    let anew = sat.started_anew().await;
    let mut pages = PAGES.map(str::to_owned);
    for page in &mut pages {
        let path = page.clone();
        let first = sat.get(&path).await;
        assert_eq!(first.status, StatusCode::OK, "{path}: {}", first.text);
        assert_eq!(sat.get(&path).await.text, first.text, "{path}");
        assert_eq!(anew.get(&path).await.text, first.text, "{path}");
        *page = first.text;
    }
    pages
}

/// That the pages are others than before, those of some numbers.
async fn changed(sat: &Sat, before: &mut [String; 3], which: &[usize], what: &str) {
    let now = pages(sat).await;
    for at in which {
        assert!(now[*at] != before[*at], "{}: {what}", PAGES[*at]);
    }
    *before = now;
}

async fn a_fact_a_listing_a_confirmation_and_a_judgment_change_the_next_answer(ground: Ground) {
    let sat = Sat::with(&ground, &LISTINGS).await;
    let mut told = pages(&sat).await;

    let done = sat.enter("J-001", "joint.width", "7 in.").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    // Of the mark nothing was known there before, as its joints differ.
    changed(&sat, &mut told, &[1], "a fact").await;

    sat.take("hw-d-0455.txt", demo_file("listings/hw-d-0455.txt"))
        .await;
    changed(&sat, &mut told, &[0, 1, 2], "a listing").await;

    let reading = listing::read(OWN, &demo_file(&format!("listings/{OWN}"))).unwrap();
    let clauses: Vec<&str> = reading.clauses.iter().map(|one| one.id.as_str()).collect();
    let form = [
        ("document", reading.source.sha256.as_str()),
        ("clauses", &clauses.join("\n")),
    ];
    let done = sat.post(&format!("/listings/{OWN}/confirm"), &form).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    changed(&sat, &mut told, &[0, 1, 2], "a confirmation").await;

    // What is open of the listing as words, a person decides.
    let words = reading.clauses.iter().filter(|one| one.bound().is_none());
    let mut judged = 0;
    for clause in words {
        let seen = sat.store.head().await.unwrap().seq.to_string();
        let form = [
            ("clause", clause.id.as_str()),
            ("decision", "rejected"),
            ("scope", "mark"),
            ("basis", "seen in place"),
            ("seen", &seen),
        ];
        let done = sat.post("/joints/J-001/judgments", &form).await;
        judged += usize::from(done.status == StatusCode::SEE_OTHER);
        if judged == 3 {
            break;
        }
    }
    assert_eq!(judged, 3);
    changed(&sat, &mut told, &[0, 1, 2], "a judgment").await;
}

async fn what_others_change_is_in_the_next_answer(ground: Ground) {
    let sat = Sat::with(&ground, &LISTINGS).await;
    let reading = listing::read(OWN, &demo_file(&format!("listings/{OWN}"))).unwrap();
    let clauses: Vec<&str> = reading.clauses.iter().map(|one| one.id.as_str()).collect();
    let form = [
        ("document", reading.source.sha256.as_str()),
        ("clauses", &clauses.join("\n")),
    ];
    let done = sat.post(&format!("/listings/{OWN}/confirm"), &form).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let mut told = pages(&sat).await;
    let elsewhere = async |edit: Edit| {
        let change = Change {
            by: "Sam".to_owned(),
            at: Timestamp::UNIX_EPOCH,
            what: "changed it elsewhere".to_owned(),
            edits: vec![edit],
        };
        sat.store.change(&change).await.unwrap();
    };

    // A confirmation is withdrawn.
    let key = Key::confirmation(OWN, &reading.clauses[0].id);
    elsewhere(Edit::remove(key, 1)).await;
    changed(&sat, &mut told, &[0, 1, 2], "a confirmation withdrawn").await;

    // Something that is known of the mark isn't known any more.
    let mark = Owner::Mark("HW1".to_owned());
    let known = sat.store.known(&mark).await.unwrap();
    let packing = known
        .iter()
        .find(|held| held.key.part == "packing.density")
        .unwrap();
    elsewhere(Edit::remove(packing.key.clone(), packing.version)).await;
    changed(&sat, &mut told, &[0, 1, 2], "a fact of the mark").await;

    // A listing goes.
    elsewhere(Edit::remove(
        Key::new(Kind::Listing, "hw-d-0437.txt", ""),
        1,
    ))
    .await;
    changed(&sat, &mut told, &[0, 1, 2], "a listing gone").await;
}

async fn joints_of_one_condition_are_told_by_their_own_names(ground: Ground) {
    let sat = Sat::with(&ground, &LISTINGS).await;
    let anew = sat.started_anew().await;
    let project = sat.store.project().await.unwrap();
    for joint in project.joints.iter().step_by(7) {
        let path = format!("/selection?of={}", joint.name);
        let page = sat.get(&path).await.text;
        assert!(page.contains(&format!("To joint {}", joint.name)), "{path}");
        // There it is the first that is asked for.
        let first = Sat::over(anew.store.clone()).await.get(&path).await.text;
        assert_eq!(page, first, "{path}");
    }
}

async fn each_project_has_its_own_answers(ground: Ground) {
    let one = Sat::with(&ground, &LISTINGS).await;
    let other = Sat::with(&ground.another().await, &LISTINGS[..2]).await;
    for _ in 0..2 {
        let counts = |text: &str| text.contains("<strong>3</strong> listings");
        assert!(counts(&one.get(PAGES[0]).await.text));
        assert!(!counts(&other.get(PAGES[0]).await.text));
    }
}
