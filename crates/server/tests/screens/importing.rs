//! Listings and schedules come in: what was understood of them is shown first.

use axum::http::StatusCode;
use store::records::{JointRecord, Known};
use store::{Change, Edit, Key, Kind, Owner};

use crate::ground::{Ground, on_each};
use crate::support::{Sat, demo_file, mark};

on_each![
    the_journal_says_what_was_brought_and_not_what_a_form_says,
    nothing_is_taken_until_it_is_said,
    a_bad_row_is_named_with_its_cell_and_nothing_is_taken,
    what_was_shown_is_what_is_taken,
    too_much_is_refused_in_plain_words,
    another_document_of_the_same_name_says_what_it_stands_in_place_of,
];

const LISTING: &str = "hw-d-0412-ed4.txt";

fn lot() -> Vec<(&'static str, Vec<u8>)> {
    vec![
        (LISTING, demo_file("listings/hw-d-0412-ed4.txt")),
        ("schedule.csv", demo_file("schedule.csv")),
        ("marks.csv", demo_file("marks.csv")),
        ("building.toml", demo_file("building.toml")),
        ("notes.docx", b"PK\x03\x04".to_vec()),
    ]
}

async fn nothing_is_taken_until_it_is_said(ground: Ground) {
    let sat = Sat::down(&ground).await;
    assert!(sat.get("/").await.text.contains("There are no joints yet"));
    assert!(sat.get("/listings").await.text.contains("no listings yet"));
    let brought = sat.bring(&lot()).await;
    assert_eq!(brought.status, StatusCode::SEE_OTHER, "{}", brought.text);
    let shown = sat.get(&brought.to).await.text;
    for says in [
        "HW-D-0412",
        "a table of joints, 60 rows",
        "<strong>60</strong> joints new",
        "Packing density",
        "notes.docx</strong>: it is neither",
    ] {
        assert!(shown.contains(says), "{says}: {shown}");
    }
    assert_eq!(sat.store.head().await.unwrap().seq, 0, "nothing yet");
    let form = [
        ("shown", mark(&shown)),
        ("listing", LISTING),
        ("tables", "yes"),
    ];
    let taken = sat.post(&brought.to, &form).await;
    assert_eq!(
        (taken.status, taken.to.as_str()),
        (StatusCode::SEE_OTHER, "/")
    );
    assert!(sat.get("/").await.text.contains("Vessary Point Clinic"));
    let journal = sat.get("/journal").await.text;
    assert!(
        journal.contains("took in the listing hw-d-0412-ed4.txt and a table of"),
        "{journal}"
    );
    assert!(sat.store.verify(None).await.unwrap().flaws.is_empty());
    let gone = sat.get(&brought.to).await;
    assert_eq!(gone.status, StatusCode::NOT_FOUND, "taken once");
    // The same again comes to nothing.
    let again = sat.bring(&lot()).await;
    let shown = sat.get(&again.to).await.text;
    assert!(shown.contains("byte for byte"), "{shown}");
    assert!(
        shown.contains("The store says all of it already"),
        "{shown}"
    );
    assert!(shown.contains("nothing here to take"), "{shown}");
}

async fn a_bad_row_is_named_with_its_cell_and_nothing_is_taken(ground: Ground) {
    let sat = Sat::down(&ground).await;
    let table = b"joint,mark,joint.width,joint.widht\nJ-1,HW1,0.75,1 in.\n".to_vec();
    let brought = sat.bring(&[("schedule.csv", table)]).await;
    let shown = sat.get(&brought.to).await.text;
    for says in [
        "cell C2",
        "has no unit",
        "joint.widht",
        "not understood",
        "0.75 in.",
    ] {
        assert!(shown.contains(says), "{says}: {shown}");
    }
    let form = [("shown", mark(&shown)), ("tables", "yes")];
    let taken = sat.post(&brought.to, &form).await;
    assert_eq!(taken.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(sat.store.head().await.unwrap().seq, 0);
}

async fn what_was_shown_is_what_is_taken(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let table = b"joint,mark,joint.width\n#source,,drawing A-9\nJ-004,HW1,1 in.\nJ-900,HW1,2 in.\n";
    let brought = sat.bring(&[("more.csv", table.to_vec())]).await;
    let shown = sat.get(&brought.to).await.text;
    for says in [
        "<strong>1</strong> joints new",
        "<strong>1</strong> changed",
        "in the store and not in these tables",
    ] {
        assert!(shown.contains(says), "{says}: {shown}");
    }
    // Somebody measures meanwhile.
    let key = Key::fact(&Owner::Joint("J-004".to_owned()), "joint.width");
    let held = sat.store.get::<Known>(&key).await.unwrap().unwrap();
    let fact = site::import::entered("joint.width", "7/8 in.", "witnessed").unwrap();
    let edit = Edit::put(key.clone(), held.version, &Known::Fact(Box::new(fact))).unwrap();
    let change = Change {
        by: "Kim".to_owned(),
        at: jiff::Timestamp::UNIX_EPOCH,
        what: "measured".to_owned(),
        edits: vec![edit],
    };
    sat.store.change(&change).await.unwrap();
    let form = [("shown", mark(&shown)), ("tables", "yes")];
    let refused = sat.post(&brought.to, &form).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        refused.text.contains("The store was changed since"),
        "{}",
        refused.text
    );
    assert!(
        refused.text.contains("entered in the store by a person"),
        "{}",
        refused.text
    );
    // Looked at again, it is taken; what was measured stays, and so do the other joints.
    let form = [("shown", mark(&refused.text)), ("tables", "yes")];
    let taken = sat.post(&brought.to, &form).await;
    assert_eq!(taken.status, StatusCode::SEE_OTHER, "{}", taken.text);
    let held = sat.store.get::<Known>(&key).await.unwrap().unwrap();
    assert!(!held.value.is_from_table());
    let joint = |name: &str| Key::new(Kind::Joint, name, "");
    for name in ["J-001", "J-900"] {
        let held = sat.store.get::<JointRecord>(&joint(name)).await.unwrap();
        assert!(held.is_some(), "{name}");
    }
}

async fn too_much_is_refused_in_plain_words(ground: Ground) {
    let sat = Sat::down(&ground).await;
    let refused = |answered: crate::support::Answered, says: &str| {
        assert_eq!(answered.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert!(answered.text.contains(says), "{says}: {}", answered.text);
    };
    let large = vec![b'x'; (32 << 20) + 1];
    refused(
        sat.bring(&[("hw.txt", large)]).await,
        "Hw.txt is larger than 32 MB",
    );
    let part = vec![b'x'; 30 << 20];
    let several = [
        ("a.txt", part.clone()),
        ("b.txt", part.clone()),
        ("c.txt", part),
    ];
    refused(sat.bring(&several).await, "together are larger than 64 MB");
    let twice = [("a.txt", b"x".to_vec()), ("b/a.txt", b"y".to_vec())];
    refused(sat.bring(&twice).await, "Two files are called a.txt");
    refused(sat.bring(&[]).await, "No file was chosen");
    refused(
        sat.bring(&[("..", b"x".to_vec())]).await,
        "is no name of a file",
    );
}

async fn another_document_of_the_same_name_says_what_it_stands_in_place_of(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let mut other = demo_file("listings/hw-d-0412-ed4.txt");
    other.extend(b"\n");
    let brought = sat
        .bring(&[
            (LISTING, other),
            ("copy.txt", demo_file("listings/hw-d-0412-ed4.txt")),
        ])
        .await;
    let shown = sat.get(&brought.to).await.text;
    assert!(shown.contains("another document of this name"), "{shown}");
    assert!(shown.contains("goes by the same designation"), "{shown}");
}

async fn the_journal_says_what_was_brought_and_not_what_a_form_says(ground: Ground) {
    let sat = Sat::down(&ground).await;
    let brought = sat.bring(&lot()).await;
    let shown = sat.get(&brought.to).await.text;
    let form = [
        ("shown", mark(&shown)),
        ("tables", "yes"),
        ("listing", "hw-1.txt, which R. Reviewer confirmed"),
    ];
    let taken = sat.post(&brought.to, &form).await;
    assert_eq!(taken.status, StatusCode::SEE_OTHER, "{}", taken.text);
    let entries = sat.store.entries_after(0, 10).await.unwrap();
    assert!(
        entries
            .iter()
            .all(|entry| entry.what.starts_with("took in a table of")),
        "{}",
        entries[0].what
    );
}
