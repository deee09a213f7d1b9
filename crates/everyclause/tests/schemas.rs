//! The published schemas are those of the types, and what the program prints keeps to the contract.

mod common;

use std::fs;
use std::path::Path;

use common::{run, small};
use serde_json::Value;

#[test]
fn the_published_schemas_are_those_of_the_types() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../schemas");
    for name in [
        "read",
        "check",
        "explain",
        "questions",
        "compare",
        "calc",
        "work",
        "takeoff",
        "leakage",
        "find",
        "substitute",
        "verify",
        "journal",
    ] {
        let now = run(Path::new("."), ["schema", name]).out;
        let published = fs::read_to_string(folder.join(format!("{name}.json"))).unwrap_or_default();
        assert!(
            now == published,
            "schemas/{name}.json is out of date; write it anew with `everyclause schema {name} > schemas/{name}.json`"
        );
    }
}

/// The fields that a program may count on.
#[test]
fn a_reading_has_the_fields_of_the_contract() {
    let folder = small();
    let run = run(
        folder.path(),
        ["read", "listings/hw-d-0190-ed1.txt", "--json"],
    );
    assert_eq!(run.code, Some(0));
    let reading: Value = serde_json::from_str(&run.out).unwrap();
    let text = fs::read_to_string(folder.path().join("listings/hw-d-0190-ed1.txt")).unwrap();
    let has = |value: &Value, fields: &[&str]| {
        for field in fields {
            assert!(value.get(field).is_some(), "no {field} in {value}");
        }
    };
    has(
        &reading,
        &[
            "source",
            "header",
            "items",
            "clauses",
            "accounted",
            "warnings",
        ],
    );
    has(&reading["source"], &["name", "sha256", "bytes", "pages"]);
    has(
        &reading["header"],
        &[
            "title",
            "designation",
            "edition",
            "standards",
            "ratings_hr",
            "width",
            "movement",
            "leakage",
        ],
    );
    has(&reading["items"][0], &["path", "title", "span", "option"]);
    assert_eq!(reading["accounted"]["bytes"], reading["accounted"]["of"]);
    assert!(
        reading["warnings"]
            .as_array()
            .unwrap()
            .iter()
            .any(|warning| warning["kind"] == "dual_units_disagree")
    );
    for clause in reading["clauses"].as_array().unwrap() {
        has(
            clause,
            &[
                "id",
                "item",
                "span",
                "words",
                "property",
                "component",
                "attribute",
                "requirement",
                "condition",
                "option",
                "read_by",
                "status",
            ],
        );
        let at = |end: usize| usize::try_from(clause["span"][end].as_u64().unwrap()).unwrap();
        assert_eq!(text.get(at(0)..at(1)), clause["words"].as_str());
        if clause["requirement"]["kind"] == "bound" {
            has(
                &clause["requirement"],
                &["relation", "lo", "hi", "unit", "at", "second"],
            );
        }
    }
}

#[test]
fn every_command_has_its_answer_for_programs() {
    let folder = small();
    let old = "listings/hw-d-0190-ed1.txt";
    let new = "listings/hw-d-0190-ed2.txt";
    for (args, code) in [
        (vec!["check", "--project", "."], 1),
        (vec!["explain", "N-1", "--project", "."], 1),
        (vec!["questions", "--project", "."], 1),
        (vec!["compare", old, new], 1),
        (vec!["compare", old, old], 0),
        (vec!["glossary", "packing"], 0),
        (vec!["confirm", old], 1),
    ] {
        let run = run(folder.path(), args.iter().chain(&["--json"]));
        assert_eq!(run.code, Some(code), "{args:?}");
        serde_json::from_str::<Value>(&run.out).unwrap_or_else(|error| panic!("{args:?}: {error}"));
    }
    let csv = run(folder.path(), ["questions", "--project", ".", "--csv"]);
    assert!(csv.out.starts_with("trade,stage,property,"), "{}", csv.out);
}
