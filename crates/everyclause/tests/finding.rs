//! Listings found for the demo's marks and joints, as people and programs see them.

#![allow(
    clippy::indexing_slicing,
    clippy::unwrap_used,
    reason = "what was set up is there; where it isn't, the test fails"
)]

mod common;

use std::fs;
use std::path::Path;

use common::{names, run, run_at};
use insta::assert_snapshot;
use serde_json::Value;

/// The demo's folder, written and confirmed.
fn demo() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let demo = run(folder.path(), ["demo"]);
    assert_eq!(demo.code, Some(0), "{}", demo.err);
    folder
}

fn json<const N: usize>(folder: &Path, args: [&str; N]) -> Value {
    let run = run(
        folder,
        args.iter().chain(&["--project", "demo-project", "--json"]),
    );
    assert!(matches!(run.code, Some(0 | 1)), "{}", run.err);
    serde_json::from_str(&run.out).unwrap()
}

fn listings(of: &Value) -> Vec<&str> {
    let all = of.as_array().unwrap().iter();
    all.map(|one| one["listing"].as_str().unwrap()).collect()
}

#[test]
fn as_people_see_it() {
    let folder = demo();
    for (name, columns, args) in [
        ("a_mark", "120", vec!["find", "HW4"]),
        ("a_joint", "80", vec!["find", "J-006"]),
        ("one_that_fits", "120", vec!["find", "WW1"]),
        (
            "another_value",
            "120",
            vec!["find", "WW1", "--with", "packing.density=4 pcf"],
        ),
        ("a_schedule", "120", vec!["find", "--all"]),
        (
            "another_product",
            "120",
            vec![
                "substitute",
                "packing=Ulmeregg Mineral Fibre | Ulmerpad 4",
                "--with",
                "packing.density=4 pcf",
            ],
        ),
    ] {
        let args = args.into_iter().chain(["--project", "demo-project"]);
        let run = run_at(folder.path(), columns, args);
        assert!(matches!(run.code, Some(0 | 1)), "{}", run.err);
        assert!(run.out.contains("A match isn't an approval"), "{}", run.out);
        assert_snapshot!(name, run.out);
    }
}

/// What `find` says of a joint's own listing is what `check` says.
#[test]
fn a_listing_stands_as_the_check_has_it() {
    let folder = demo();
    let check = json(folder.path(), ["check"]);
    let mut seen = 0;
    for joint in check["joints"].as_array().unwrap().iter().step_by(7) {
        let name = joint["joint"].as_str().unwrap();
        let found = json(folder.path(), ["find", name, "--most", "99"]);
        let answer = &found["asked"][0];
        let own = answer["own"].as_str().unwrap();
        let sort = match joint["result"]["overall"].as_str().unwrap() {
            "conforms" => "fits",
            "open" => "open",
            _ => "near",
        };
        let listed = answer[sort].as_array().unwrap().iter();
        let Some(listed) = listed.clone().find(|one| one["listing"] == own) else {
            // What the building asks isn't met: no change of the joint helps.
            assert_eq!(answer["own_rank"], "beyond", "{name}");
            continue;
        };
        assert_eq!(listed["counts"], joint["result"]["counts"], "{name}");
        seen += 1;
    }
    assert!(seen > 3);
}

#[test]
fn the_index_is_kept_and_made_anew_when_a_listing_changes() {
    let folder = demo();
    let before = json(folder.path(), ["find", "WW1"]);
    assert_eq!(listings(&before["asked"][0]["fits"]), ["ww-d-1017"]);
    let index = folder.path().join("demo-project/listings.index");
    assert!(index.exists());
    assert_eq!(json(folder.path(), ["find", "WW1"]), before);

    // A damaged index is made anew.
    let mut bytes = fs::read(&index).unwrap();
    let middle = bytes.len() / 2;
    bytes.truncate(middle);
    fs::write(&index, bytes).unwrap();
    assert_eq!(json(folder.path(), ["find", "WW1"]), before);

    // Without its confirmation the listing is a draft: what it gives is provisional, and doubtful clauses are open.
    fs::remove_file(
        folder
            .path()
            .join("demo-project/listings/ww-d-1017.txt.confirmed.toml"),
    )
    .unwrap();
    let draft = json(folder.path(), ["find", "WW1", "--most", "99"]);
    let answer = &draft["asked"][0];
    let found = ["fits", "open"]
        .iter()
        .flat_map(|sort| answer[*sort].as_array().unwrap());
    let found = found
        .clone()
        .find(|one| one["listing"] == "ww-d-1017")
        .unwrap();
    assert_eq!(found["standing"], "provisional");

    // Another text is another listing.
    let path = folder.path().join("demo-project/listings/ww-d-1017.txt");
    let text = fs::read_to_string(&path).unwrap();
    assert!(text.contains("5\npcf (80 kg/m3)"));
    fs::write(
        &path,
        text.replace("5\npcf (80 kg/m3)", "9\npcf (144 kg/m3)"),
    )
    .unwrap();
    let changed = json(folder.path(), ["find", "WW1"]);
    assert!(
        listings(&changed["asked"][0]["fits"]).is_empty(),
        "{changed}"
    );
}

#[test]
fn a_request_is_written_whole_where_nothing_fits() {
    let folder = demo();
    let args = [
        "find",
        "J-004",
        "--project",
        "demo-project",
        "--request",
        "request",
    ];
    let run = run(folder.path(), args);
    assert_eq!(run.code, Some(1), "{}", run.err);
    let written = names(&folder.path().join("request"));
    assert_eq!(written.len(), 4, "{written:?}");
    let text = fs::read_to_string(folder.path().join("request/request.md")).unwrap();
    assert_snapshot!("request", text);
    for svg in written
        .iter()
        .filter(|name| name.extension().is_some_and(|ending| ending == "svg"))
    {
        let svg = fs::read_to_string(folder.path().join("request").join(svg)).unwrap();
        assert!(svg.starts_with("<svg") || svg.contains("<svg "));
    }

    // Never over another, and never where a listing fits.
    let again = common::run(folder.path(), args);
    assert_eq!(again.code, Some(2));
    let fits = [
        "find",
        "WW1",
        "--project",
        "demo-project",
        "--request",
        "other",
    ];
    let fits = common::run(folder.path(), fits);
    assert_eq!(fits.code, Some(2), "{}", fits.out);
    assert!(fits.err.contains("fits"), "{}", fits.err);
    assert!(!folder.path().join("other").exists());
}

#[test]
fn facts_are_read_as_a_schedule_is() {
    let folder = demo();
    let with = |fact: &str| {
        let args = [
            "find",
            "--where",
            fact,
            "--listings",
            "demo-project/listings",
        ];
        run(folder.path(), args)
    };
    let good = with("joint.width=1 in.");
    assert_eq!(good.code, Some(1), "{}", good.err);
    for (fact, words) in [
        ("joint.width=1", "no unit"),
        ("joint.width", "no fact"),
        ("joint.wdth=1 in.", "joint.width"),
    ] {
        let bad = with(fact);
        assert_eq!(bad.code, Some(2));
        assert!(bad.err.contains(words), "{fact}: {}", bad.err);
    }
    let nothing = run(folder.path(), ["find", "HW1"]);
    assert_eq!(nothing.code, Some(2));
    assert!(nothing.err.contains("--project"), "{}", nothing.err);
    let unknown = run(folder.path(), ["find", "HW99", "--project", "demo-project"]);
    assert_eq!(unknown.code, Some(2));
}

fn texts(of: &Value) -> Vec<&str> {
    let all = of.as_array().unwrap().iter();
    all.map(|one| one.as_str().unwrap()).collect()
}

/// Joints of one mark may differ. Each is asked for as it is: its own listing stands as the check has it, and it is served by one of the
/// few listings or told as served by none.
#[test]
fn every_joint_of_a_schedule_is_answered_as_it_is() {
    let folder = demo();
    let found = json(folder.path(), ["find", "--all"]);
    let check = json(folder.path(), ["check"]);
    let asked = found["asked"].as_array().unwrap();
    let together = &found["together"];
    for joint in check["joints"].as_array().unwrap() {
        let (name, mark) = (&joint["joint"], &joint["mark"]);
        let mut conditions = asked
            .iter()
            .filter(|one| one["joints"].as_array().unwrap().contains(name));
        let condition = conditions.next().unwrap();
        assert!(conditions.next().is_none(), "{name} is asked for once");
        assert_eq!(&condition["name"], mark);
        let rank = &condition["own_rank"];
        let expected = match joint["result"]["overall"].as_str().unwrap() {
            "conforms" => "fits",
            "open" => "open",
            _ => "near",
        };
        assert!(
            rank.get(expected).is_some() || (expected == "near" && rank == "beyond"),
            "{name}: {rank}"
        );

        let name = name.as_str().unwrap();
        let is_served = together["chosen"].as_array().unwrap().iter().any(|one| {
            let marks = one["marks"].as_array().unwrap().iter();
            let mut ours = marks.filter(|one| &one["mark"] == mark);
            ours.any(|one| {
                texts(&one["fits"]).contains(&name) || texts(&one["open"]).contains(&name)
            })
        });
        let unserved = together["unserved"].as_array().unwrap().iter();
        let is_unserved = unserved
            .clone()
            .any(|one| texts(&one["joints"]).contains(&name));
        let is_held = ["fits", "open"]
            .iter()
            .any(|sort| !condition[*sort].as_array().unwrap().is_empty());
        assert_eq!((is_served, is_unserved), (is_held, !is_held), "{name}");
    }
}

/// Of a mark that a listing serves in part, the joints are told that it doesn't hold at.
#[test]
fn the_joints_that_a_listing_does_not_hold_at_are_told() {
    let folder = demo();
    let found = json(folder.path(), ["find", "--all"]);
    let asked = found["asked"].as_array().unwrap();
    let mut in_part = 0;
    for one in found["together"]["chosen"].as_array().unwrap() {
        for served in one["marks"].as_array().unwrap() {
            let mut told: Vec<&str> = ["fits", "open", "not"]
                .iter()
                .flat_map(|sort| texts(&served[*sort]))
                .collect();
            told.sort_unstable();
            let of_mark = asked.iter().filter(|one| one["name"] == served["mark"]);
            let mut joints: Vec<&str> = of_mark.flat_map(|one| texts(&one["joints"])).collect();
            joints.sort_unstable();
            assert_eq!(told, joints, "{}: {}", one["listing"], served["mark"]);
            in_part += usize::from(!texts(&served["not"]).is_empty());
        }
    }
    assert!(in_part > 3);
}
