//! What a contractor proposes is entered, reviewed clause by clause, and answered by letter.

use axum::http::StatusCode;
use store::records::SubmittalRecord;
use store::{Key, Kind};

use crate::ground::{Ground, on_each};
use crate::support::{Sat, hidden};

on_each![
    a_comment_is_of_a_clause_that_stands_there,
    a_submittal_is_reviewed_and_answered,
    what_isn_t_right_of_it_is_told,
];

const LISTING: &str = "hw-d-0412-ed4.txt";
const PAGE: &str = "/submittals/07%2084%2043%2D05";

fn submitted<'a>(marks: &'a str, proposed: &'a str) -> Vec<(&'a str, &'a str)> {
    vec![
        ("number", "07 84 43-05"),
        ("title", "Head-of-wall joints, level 2"),
        ("from", "Contractor"),
        ("received", "2026-03-14"),
        ("marks", marks),
        ("listing", LISTING),
        ("proposed", proposed),
        ("seen", "0"),
    ]
}

async fn a_submittal_is_reviewed_and_answered(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let entered = sat
        .post(
            "/submittals",
            &submitted(
                "HW1",
                "packing.product = Ulmeregg Mineral Fibre | Ulmerpad 4\npacking.density = 3 pcf",
            ),
        )
        .await;
    assert_eq!(
        (entered.status, entered.to.as_str()),
        (StatusCode::SEE_OTHER, PAGE),
        "{}",
        entered.text
    );
    let page = sat.get(PAGE).await.text;
    for says in [
        "3 pcf",
        "Not met: ",
        "No reviewer has said yet",
        "yours to choose",
        "<option value=\"\">",
    ] {
        assert!(page.contains(says), "{says}: {page}");
    }
    let (_, choices) = page.split_once("outcome-choice").unwrap();
    let (choices, _) = choices.split_once("</select>").unwrap();
    assert!(
        !choices.contains("selected"),
        "nothing is chosen for the reviewer"
    );
    // A clause that the density doesn't meet is commented on.
    assert!(page.contains("Packing density is 3 pcf"), "{page}");
    let clause = hidden(&page, "clause").to_owned();
    let words = hidden(&page, "words")
        .replace("&quot;", "\"")
        .replace("&amp;", "&");
    let said = [
        ("mark", "HW1"),
        ("clause", clause.as_str()),
        ("words", words.as_str()),
        ("comment", "Supply what the listing names."),
        ("seen", "0"),
    ];
    let done = sat.post(&format!("{PAGE}/comments"), &said).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let late = sat.post(&format!("{PAGE}/comments"), &said).await;
    assert_eq!(late.status, StatusCode::CONFLICT, "the second is told");
    let draft = sat.get(&format!("{PAGE}/letter")).await.text;
    assert!(draft.contains("Draft: no reviewer"), "{draft}");
    let decided = [
        ("outcome", "revise_and_resubmit"),
        ("note", "See the comments."),
        ("seen", "1"),
    ];
    let done = sat.post(&format!("{PAGE}/outcome"), &decided).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let letter = sat.get(&format!("{PAGE}/letter")).await.text;
    for says in [
        "Revise and resubmit",
        "See the comments.",
        "Supply what the listing names.",
        "authority having jurisdiction",
        "asbestos",
        "Vessary Point Clinic",
        "3 pcf",
    ] {
        assert!(letter.contains(says), "{says}: {letter}");
    }
    assert!(!letter.to_lowercase().contains("approved"));
    let journal = sat.get("/journal").await.text;
    assert!(journal.contains("reviewed submittal 07 84 43-05: revise and resubmit"));
    // Submitted anew, the outcome doesn't hold any more.
    let mut anew = submitted("HW1", "packing.density = 4 pcf");
    anew.pop();
    anew.push(("seen", "2"));
    let done = sat.post("/submittals", &anew).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let key = Key::new(Kind::Submittal, "07 84 43-05", "");
    let held = sat
        .store
        .get::<SubmittalRecord>(&key)
        .await
        .unwrap()
        .unwrap();
    assert_eq!(held.value.outcome, None);
    assert!(sat.store.verify(None).await.unwrap().flaws.is_empty());
}

async fn what_isn_t_right_of_it_is_told(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    for (marks, proposed, says) in [
        ("HW99", "", "no mark `HW99`"),
        ("", "", "names no marks"),
        ("HW1", "packing.density", "no property with its value"),
        ("HW1", "packing.density = 4", "has no unit"),
        (
            "HW1",
            "packing.density = 4 pcf\npacking.density = 6 pcf",
            "stands twice",
        ),
    ] {
        let told = sat.post("/submittals", &submitted(marks, proposed)).await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{says}");
        assert!(told.text.contains(says), "{says}: {}", told.text);
    }
    assert_eq!(
        sat.get("/submittals/none").await.status,
        StatusCode::NOT_FOUND
    );
}

/// What the listing's words are, and where, isn't for a form to say.
async fn a_comment_is_of_a_clause_that_stands_there(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let entered = sat
        .post("/submittals", &submitted("HW1", "packing.density = 3 pcf"))
        .await;
    assert_eq!(entered.status, StatusCode::SEE_OTHER, "{}", entered.text);
    let page = sat.get(PAGE).await.text;
    let clause = hidden(&page, "clause").to_owned();
    let head = sat.store.head().await.unwrap();
    for (mark, clause, words) in [
        ("HW1", clause.as_str(), "Packing of any density will do."),
        ("HW9", clause.as_str(), ""),
        ("HW1", "none, as R. Reviewer said", ""),
        ("HW1", "", "Of the whole."),
    ] {
        let said = [
            ("mark", mark),
            ("clause", clause),
            ("words", words),
            ("comment", "Supply what the listing names."),
            ("seen", "0"),
        ];
        let refused = sat.post(&format!("{PAGE}/comments"), &said).await;
        assert_eq!(
            refused.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{mark} {clause}"
        );
    }
    assert_eq!(sat.store.head().await.unwrap(), head);
}
