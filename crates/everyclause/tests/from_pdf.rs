//! A listing reads alike from its PDF and from its plain text, and each clause leads back to its place on the page.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a failed expectation is the point"
)]

mod common;

use std::fs;
use std::path::Path;

use common::run;
use serde_json::{Value, json};

/// The demo's listings that ship as PDF too: one column between head and foot, statements side by side with a table, and a narrow
/// justified column with broken words, raised powers and built fractions.
const BOTH: [&str; 3] = ["hw-d-0412-ed4", "ff-d-1102", "ww-d-1017"];

fn demo() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/demo"))
}

fn reading(file: &str) -> Value {
    let run = run(demo(), ["read", file, "--json"]);
    assert_eq!(run.code, Some(0), "{}", run.err);
    serde_json::from_str(&run.out).unwrap()
}

/// What a clause asks, without where its words stand.
fn asked(clause: &Value) -> Value {
    let mut asked = json!({});
    for field in [
        "id",
        "item",
        "property",
        "requirement",
        "condition",
        "option",
    ] {
        asked[field] = placeless(&clause[field]);
    }
    asked
}

/// A value without the bytes and words that it was read from.
fn placeless(value: &Value) -> Value {
    match value {
        Value::Object(fields) => fields
            .iter()
            .filter(|(name, _)| !matches!(name.as_str(), "at" | "span" | "words"))
            .map(|(name, value)| (name.clone(), placeless(value)))
            .collect(),
        Value::Array(values) => values.iter().map(placeless).collect(),
        other => other.clone(),
    }
}

#[test]
fn a_pdf_reads_as_its_text_does() {
    for name in BOTH {
        let text = reading(&format!("listings/{name}.txt"));
        let pdf = reading(&format!("pdf/{name}.pdf"));
        let clauses = |reading: &Value| -> Vec<Value> {
            reading["clauses"]
                .as_array()
                .unwrap()
                .iter()
                .map(asked)
                .collect()
        };
        for (text, pdf) in clauses(&text).iter().zip(clauses(&pdf)) {
            assert_eq!(*text, pdf, "{name}");
        }
        assert_eq!(clauses(&text).len(), clauses(&pdf).len(), "{name}");
        assert_eq!(
            placeless(&text["header"]),
            placeless(&pdf["header"]),
            "{name}"
        );
        assert_eq!(
            text["warnings"].as_array().unwrap().len(),
            pdf["warnings"].as_array().unwrap().len()
        );
    }
}

#[test]
fn every_clause_has_its_place_on_a_page() {
    let reading = reading("pdf/ww-d-1017.pdf");
    let paper = &reading["paper"];
    let text = paper["text"].as_str().unwrap();
    assert_eq!(reading["source"]["bytes"], text.len());
    assert_eq!(reading["source"]["pages"], 2);
    let clauses = reading["clauses"].as_array().unwrap();
    let places = paper["clauses"].as_array().unwrap();
    assert_eq!(clauses.len(), places.len());
    for (clause, place) in clauses.iter().zip(places) {
        assert_eq!(clause["id"], place["id"]);
        let places = place["places"].as_array().unwrap();
        assert!(!places.is_empty(), "{clause}");
        for place in places {
            let page = usize::try_from(place["page"].as_u64().unwrap()).unwrap();
            let size = &paper["pages"][page - 1];
            let rect = |edge: &str| place["rect"][edge].as_f64().unwrap();
            assert!(rect("x0") < rect("x1") && rect("x1") < size["width"].as_f64().unwrap());
            assert!(rect("y0") < rect("y1") && rect("y1") < size["height"].as_f64().unwrap());
        }
    }
    // The joint's width stands on the first page, the sealant's depth on the second.
    let page_of = |words: &str| {
        let at = clauses
            .iter()
            .position(|clause| clause["words"].as_str().unwrap().contains(words))
            .unwrap();
        places[at]["places"][0]["page"].clone()
    };
    assert_eq!(page_of("no narrower than"), 1);
    assert_eq!(page_of("no less than 1/2"), 2);
}

#[test]
fn a_confirmation_is_bound_to_the_pdf() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.pdf");
    fs::copy(demo().join("pdf/hw-d-0412-ed4.pdf"), &file).unwrap();
    let by = [
        "confirm",
        "a.pdf",
        "--by",
        "R. Reviewer",
        "--all",
        "--with-doubts",
    ];
    assert_eq!(run(folder.path(), by).code, Some(0));
    let confirmation = fs::read_to_string(folder.path().join("a.pdf.confirmed.toml")).unwrap();
    // By `sha256sum` of the file.
    let hash = reading("pdf/hw-d-0412-ed4.pdf")["source"]["sha256"]
        .as_str()
        .unwrap()
        .to_owned();
    assert!(confirmation.contains(&hash));
    // Another file with the same text is another source.
    let mut bytes = fs::read(&file).unwrap();
    bytes.extend(b"\n% printed again\n");
    fs::write(&file, bytes).unwrap();
    let again = run(folder.path(), ["read", "a.pdf"]);
    assert!(
        again.err.contains("another edition of this file"),
        "{}",
        again.err
    );
}

#[test]
fn a_folder_of_listings_may_hold_pdfs() {
    let folder = common::small();
    let listings = folder.path().join("listings");
    fs::copy(
        demo().join("pdf/ff-d-1102.pdf"),
        listings.join("ff-d-1102.pdf"),
    )
    .unwrap();
    let marks = folder.path().join("marks.csv");
    let text = fs::read_to_string(&marks)
        .unwrap()
        .replace("hw-d-0190-ed1", "ff-d-1102");
    fs::write(&marks, text).unwrap();
    let run = run(folder.path(), ["check", "--project", ".", "--json"]);
    let check: Value = serde_json::from_str(&run.out).unwrap();
    let used = check["listings"].as_array().unwrap();
    assert!(
        used.iter()
            .any(|listing| listing["file"].as_str().unwrap().ends_with("ff-d-1102.pdf")),
        "{used:?}"
    );
}
