//! The same for programs.

use axum::http::StatusCode;
use serde_json::{Value, json};

use crate::demo;
use crate::ground::{Ground, on_each};

on_each![programs_get_the_same_and_a_description_of_it,];

async fn programs_get_the_same_and_a_description_of_it(ground: Ground) {
    let demo = demo(&ground).await;
    let json = async |path: &str| demo.json(path).await;
    let joints = json("/api/v1/joints").await;
    assert_eq!(joints["count"], 60);
    assert_eq!(joints["joints"].as_array().unwrap().len(), 60);
    assert_eq!(joints["next"], Value::Null);
    // Some at a time it is the same.
    for list in ["joints", "questions"] {
        let whole = json(&format!("/api/v1/{list}?limit=1000")).await;
        let (mut after, mut parts) = (String::new(), Vec::new());
        loop {
            let part = json(&format!("/api/v1/{list}?limit=7&after={after}")).await;
            parts.extend(part[list].as_array().unwrap().clone());
            match part["next"].as_str() {
                Some(next) => next.clone_into(&mut after),
                None => break,
            }
        }
        assert_eq!(whole[list], Value::Array(parts), "{list}");
    }
    let questions = json("/api/v1/questions").await;
    let question = questions["questions"][0]["id"].as_str().unwrap();
    let joint = json("/api/v1/joints/J-004").await;
    assert_eq!(joint["result"]["joint"], "J-004");
    let seen = joint["versions"]["joint.width"].as_i64().unwrap();
    let fact = json!({"value": "3/4 in.", "source": "witnessed", "seen": seen});
    let path = "/api/v1/joints/J-004/facts/joint.width";
    assert_eq!(demo.put(path, &fact).await.status, StatusCode::OK);
    let late = demo.put(path, &fact).await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    let late: Value = serde_json::from_str(&late.text).unwrap();
    assert_eq!(late["conflicts"][0]["since"][0]["by"], "Lee");
    // Each path of the description is there, and each schema that it refers to.
    let described = json("/api/v1/openapi.json").await;
    assert_eq!(described["openapi"], "3.1.0");
    for path in described["paths"].as_object().unwrap().keys() {
        let path = path
            .replace("{joint}", "J-004")
            .replace("{question}", question)
            .replace("/facts/{property}", "");
        json(&format!("/api/v1{path}")).await;
    }
    let text = described.to_string();
    for rest in text.split("\"$ref\":\"").skip(1) {
        let reference = rest.split('"').next().unwrap();
        let pointer = reference.strip_prefix('#').unwrap();
        assert!(described.pointer(pointer).is_some(), "{reference}");
    }
}
