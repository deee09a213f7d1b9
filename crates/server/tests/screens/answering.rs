//! Questions are answered: also those about a property that a listing has for itself; and by two people at once.

use axum::http::StatusCode;
use conformance::goes_by;
use serde_json::Value;
use store::records::{AnswerRecord, Known};
use store::{Key, Owner};

use crate::ground::{Ground, on_each};
use crate::support::{Answered, Sat, demo_file, hidden};

on_each![
    what_a_listing_asks_of_a_property_of_its_own_is_answered_and_the_verdict_turns,
    no_value_answers_what_no_listing_asks,
    two_who_say_the_same_don_t_get_in_each_other_s_way,
    who_says_otherwise_is_shown_what_the_first_said,
    where_the_first_answered_at_one_joint_only_the_second_is_told_whatever_they_say,
];

const LISTING: &str = "hw-d-0455.txt";

/// How long the welds of a runner's pins are: no vocabulary has it. Six joints are built to the listing.
const WELDS: &str = "2A:pins_of_fillet_weld";
const CLAUSE: &str = "2A/11";

/// A question as a page shows it.
struct Question {
    id: String,
    property: String,
    joints: String,
    seen: String,
    page: String,
}

async fn json(sat: &Sat, path: &str) -> Value {
    serde_json::from_str(&sat.get(path).await.text).unwrap()
}

/// The question about a property.
async fn question(sat: &Sat, property: &str) -> Option<Question> {
    let asked = json(sat, "/api/v1/questions?limit=1000").await;
    let asked = asked["questions"].as_array().unwrap().clone();
    let asked = asked.iter().find(|one| {
        let ask = one["ask"].as_str().unwrap_or_default();
        one["property"] == property && !matches!(ask, "judgment" | "confirmation")
    })?;
    let id = asked["id"].as_str().unwrap().to_owned();
    let page = sat.get(&format!("/questions/{id}")).await.text;
    let (_, form) = page.split_once("action=\"/questions\"")?;
    let field = |name: &str| hidden(form, name).to_owned();
    Some(Question {
        property: field("property"),
        joints: field("joints"),
        seen: field("seen"),
        id,
        page,
    })
}

impl Question {
    async fn answer(&self, sat: &Sat, value: &str, source: &str) -> Answered {
        let form = [
            ("seen", self.seen.as_str()),
            ("question", &self.id),
            ("property", &self.property),
            ("joints", &self.joints),
            ("value", value),
            ("source", source),
        ];
        sat.post("/questions", &form).await
    }
}

async fn verdict(sat: &Sat, joint: &str, clause: &str) -> String {
    let found = json(sat, &format!("/api/v1/joints/{joint}")).await;
    let findings = found["result"]["findings"].as_array().unwrap().clone();
    let one = findings
        .iter()
        .find(|one| one["explanation"]["clause"] == clause);
    one.unwrap()["verdict"].as_str().unwrap().to_owned()
}

async fn fact(sat: &Sat, joint: &str, property: &str) -> (i64, String, String) {
    // It is kept with the document that it was said of.
    let bytes = demo_file(&format!("listings/{LISTING}"));
    let reading = listing::read(LISTING, &bytes).unwrap();
    let name = goes_by(&reading).saying(property);
    let key = Key::fact(&Owner::Joint(joint.to_owned()), &name);
    let held = sat.store.get::<Known>(&key).await.unwrap().unwrap();
    match held.value {
        Known::Fact(fact) => (
            held.version,
            fact.value.to_string(),
            fact.provenance.to_string(),
        ),
        Known::NotKnown => panic!("{joint}"),
    }
}

async fn what_a_listing_asks_of_a_property_of_its_own_is_answered_and_the_verdict_turns(
    ground: Ground,
) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let listing = sat.get(&format!("/listings/{LISTING}")).await.text;
    let confirmed = [
        ("document", hidden(&listing, "document")),
        ("clauses", CLAUSE),
    ];
    let done = sat
        .post(&format!("/listings/{LISTING}/confirm"), &confirmed)
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    sat.desk.look_at_all().await.unwrap();
    let asked = question(&sat, WELDS).await.unwrap();
    assert!(
        asked
            .page
            .contains("The listing asks for at least 1 in. (25 mm)"),
        "{}",
        asked.page
    );
    for joint in ["J-021", "J-026"] {
        assert_eq!(verdict(&sat, joint, CLAUSE).await, "open");
    }
    // What isn't a length is told with what would be right.
    for (value, says) in [("1", "unit"), ("4 pcf", "length"), ("yes", "no number")] {
        let told = asked.answer(&sat, value, "witnessed").await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{value}");
        assert!(told.text.contains(says), "{value}: {}", told.text);
        assert!(told.text.contains("You answered"), "{}", told.text);
    }
    let done = asked
        .answer(&sat, "3/4 in.", "measured: tape, 1/16 in.")
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert!(question(&sat, WELDS).await.is_none(), "it is asked no more");
    for joint in ["J-021", "J-026"] {
        let (_, value, source) = fact(&sat, joint, WELDS).await;
        assert_eq!(
            (value.as_str(), source.as_str()),
            ("3/4 in.", "measured: tape, 1/16 in.")
        );
        assert_eq!(verdict(&sat, joint, CLAUSE).await, "not_met");
    }
    // And is put right at the joint, as any fact is.
    let page = sat.get("/joints/J-021").await.text;
    assert!(
        page.contains("Pins of fillet weld (item 2A of hw-d-0455)"),
        "{page}"
    );
    let form = |value| {
        [
            ("property", WELDS),
            ("value", value),
            ("source", "measured: tape, 1/16 in."),
            ("seen", "1"),
        ]
    };
    let wrong = sat.post("/joints/J-021/facts", &form("some")).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    let done = sat.post("/joints/J-021/facts", &form("1-1/4 in.")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(verdict(&sat, "J-021", CLAUSE).await, "met");
    assert_eq!(verdict(&sat, "J-026", CLAUSE).await, "not_met");
    assert!(sat.store.verify(None).await.unwrap().flaws.is_empty());
}

async fn no_value_answers_what_no_listing_asks(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    // Words that a person must judge, a property of another listing, and none at all.
    for property in [
        "1:form_ridges_over_the_wall",
        "2A2:nothing_asks_this",
        "3Z:",
    ] {
        let form = [
            ("property", property),
            ("value", "yes"),
            ("source", "witnessed"),
            ("seen", "0"),
        ];
        let told = sat.post("/joints/J-021/facts", &form).await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{property}");
        assert!(told.text.contains("There is no property"), "{}", told.text);
    }
}

async fn two_who_say_the_same_don_t_get_in_each_other_s_way(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let asked = question(&sat, WELDS).await.unwrap();
    let joints = ["J-021", "J-022", "J-023", "J-024", "J-025", "J-026"];
    let first = asked.answer(&sat, "1-1/4 in.", "witnessed by Sam").await;
    assert_eq!(first.status, StatusCode::SEE_OTHER, "{}", first.text);
    // The second saw the same page: in other words, and from elsewhere, but the same.
    let second = asked
        .answer(&sat, "1.25 in.", "measured: tape, 1/16 in.")
        .await;
    assert_eq!(second.status, StatusCode::SEE_OTHER, "{}", second.text);
    for joint in joints {
        let (version, value, source) = fact(&sat, joint, &asked.property).await;
        assert_eq!(
            (version, value.as_str(), source.as_str()),
            (1, "1-1/4 in.", "witnessed by Sam"),
            "the first's stands"
        );
    }
    let answers = sat
        .store
        .get_all::<AnswerRecord>(&asked.property)
        .await
        .unwrap();
    let sources: Vec<&str> = answers
        .iter()
        .map(|held| held.value.source.as_str())
        .collect();
    assert_eq!(
        sources,
        ["witnessed by Sam", "measured: tape, 1/16 in."],
        "what the second said isn't lost"
    );
    assert_eq!(answers[1].value.joints, joints);
    let journal = sat.get("/journal").await.text;
    assert!(journal.contains("answered as others have"), "{journal}");
    assert!(sat.store.verify(None).await.unwrap().flaws.is_empty());
}

async fn who_says_otherwise_is_shown_what_the_first_said(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let asked = question(&sat, WELDS).await.unwrap();
    let first = asked.answer(&sat, "1-1/4 in.", "witnessed by Sam").await;
    assert_eq!(first.status, StatusCode::SEE_OTHER, "{}", first.text);
    let second = asked.answer(&sat, "2 in.", "witnessed by Kim").await;
    assert_eq!(second.status, StatusCode::CONFLICT, "{}", second.text);
    for says in [
        "Nothing was overwritten",
        "Now, joint J-021: Pins of fillet weld (item 2A of hw-d-0455) is <strong>1-1/4 in.</strong>, witnessed by Sam",
        "<strong>2 in.</strong>, witnessed by Kim",
    ] {
        assert!(second.text.contains(says), "{says}: {}", second.text);
    }
    let (version, value, _) = fact(&sat, "J-021", &asked.property).await;
    assert_eq!((version, value.as_str()), (1, "1-1/4 in."));
}

async fn where_the_first_answered_at_one_joint_only_the_second_is_told_whatever_they_say(
    ground: Ground,
) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let asked = question(&sat, WELDS).await.unwrap();
    let form = [
        ("property", asked.property.as_str()),
        ("value", "1-1/4 in."),
        ("source", "witnessed"),
        ("seen", "0"),
    ];
    let one = sat.post("/joints/J-021/facts", &form).await;
    assert_eq!(one.status, StatusCode::SEE_OTHER, "{}", one.text);
    let same = asked.answer(&sat, "1-1/4 in.", "witnessed").await;
    assert_eq!(same.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(same.text.contains("of other joints now"), "{}", same.text);
    let other = asked.answer(&sat, "2 in.", "witnessed").await;
    assert_eq!(other.status, StatusCode::CONFLICT, "{}", other.text);
}
