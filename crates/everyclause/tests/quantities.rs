//! Quantities of a schedule and fireproofing on the work card, against numbers worked out by hand from the demo's tables.

#![allow(
    clippy::indexing_slicing,
    clippy::unwrap_used,
    reason = "what was set up is there; where it isn't, the test fails"
)]

mod common;

use std::fs;
use std::path::Path;

use common::{Run, run, run_at};
use insta::assert_snapshot;
use serde_json::Value;

/// The demo's folder, written and confirmed.
fn demo() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let demo = run(folder.path(), ["demo"]);
    assert_eq!(demo.code, Some(0), "{}", demo.err);
    folder
}

fn json(folder: &Path, command: &str) -> Value {
    let run = run(folder, [command, "--project", "demo-project", "--json"]);
    assert_eq!(run.code, Some(1), "{}", run.err);
    serde_json::from_str(&run.out).unwrap()
}

/// The only row with these values.
fn row<'a>(rows: &'a Value, wanted: &[(&str, &str)]) -> &'a Value {
    let fits = |row: &&Value| {
        wanted.iter().all(|(key, value)| {
            let words = row[key].as_str().unwrap_or_default();
            words == *value || (*key == "what" && words.starts_with(value))
        })
    };
    let found: Vec<&Value> = rows.as_array().unwrap().iter().filter(fits).collect();
    assert_eq!(found.len(), 1, "{wanted:?}: {found:?}");
    found[0]
}

/// An exact amount, as `whole or ratio` and unit.
fn is(quantity: &Value, number: &str, unit: &str) {
    assert_eq!(
        (quantity["number"].as_str(), quantity["unit"].as_str()),
        (Some(number), Some(unit)),
        "{quantity}"
    );
}

#[test]
fn quantities_of_the_demo_by_hand() {
    let folder = demo();
    let made = json(folder.path(), "takeoff");
    let line = |mark, storey, what| {
        let wanted = [("mark", mark), ("storey", storey), ("what", what)];
        row(&made["lines"], &wanted)
    };
    // HW1 on L2: J-001 of 27 ft 6 in. and J-002 of 31 ft 2 in. make 330 + 374 = 704 in., 58 2/3 ft.
    is(&line("HW1", "L2", "joint")["amount"], "176/3", "ft");
    // Packing on two faces, 1-1/2 in. thick (scheduled), 7/8 in. deep (item 3A, 2 hr):
    // 2 × 704 in. = 117 1/3 ft; 2 × 704 × 7/8 × 1-1/2 / 144 = 1848 / 144 = 12 5/6 board feet.
    let packing = line("HW1", "L2", "packing");
    is(&packing["amount"], "352/3", "ft");
    is(&packing["volume"], "77/6", "bd_ft");
    // Coating 1/8 in. wet on two faces; the band is the width and 1/2 + 1 in. of overlap (item 3B): 2-3/8 in. at
    // J-001, 2-1/4 in. at J-002. (330 × 2-3/8 + 374 × 2-1/4) × 2 × 1/8 = 1625-1/4 / 4 cu in.; / 231 / 0.9 gallons
    // = 162525 / 83160 = 985 / 504.
    is(&line("HW1", "L2", "coating")["amount"], "985/504", "gal");
    // Fasteners at 20 in., 2 in. from the ends (item 2A): 326 / 20 = 16.3, so 17 + 1; 370 / 20 = 18.5, so 19 + 1.
    is(
        &line("HW1", "L2", "fasteners of the runner")["amount"],
        "38",
        "count",
    );
    // HW6 on L7: J-021 of 29 ft 11 in. = 359 in., clips at 20 in., 8 in. from the ends: 343 / 20 = 17.15, so 18 + 1;
    // two fasteners each.
    is(&line("HW6", "L7", "clips")["amount"], "19", "count");
    is(
        &line("HW6", "L7", "fasteners of the clips")["amount"],
        "38",
        "count",
    );
    // HW11 on L3: a round bead of 6 mm along 148 ft = 45110.4 mm. With π at most 3.1416 its area is 28.2744 mm²;
    // 28.2744 × 45110.4 / 16387.064 / 0.9 = 86.482 cu in.
    let bead = &line("HW11", "L3", "sealant")["amount"];
    let ratio = bead["number"].as_str().unwrap().split_once('/').unwrap();
    let cubic_inches = ratio.0.parse::<f64>().unwrap() / ratio.1.parse::<f64>().unwrap();
    assert!((cubic_inches - 86.482).abs() < 0.001, "{cubic_inches}");
}

#[test]
fn what_to_bring_by_hand() {
    let folder = demo();
    let made = json(folder.path(), "takeoff");
    // Strips of 1-1/2 in. at 6 pcf, 7/8 in. wide, from pieces of 48 in., on two faces each:
    //   J-001 and J-047, 330 in.: 6 whole and 42.   J-002, 374 in.: 7 and 38.   J-005, 264 in.: 5 and 24.
    //   J-006, 220 in.: 4 and 28.   J-003, 297-1/2 in.: 6 and 9-1/2, too short for butt joints 24 in. apart, so 5 whole
    //   and two of 28-3/4.
    // Whole: 2 × (6 + 6 + 7 + 5 + 4 + 5) = 66. Of the rests, those of 42, 38, 28 and 28-3/4 in. are over half a piece
    // and take one each: 2 × (2 + 1 + 1 + 2) = 12; the two of 24 in. share one. 66 + 12 + 1 = 79 strips; 27 strips of
    // 7/8 in. come from a batt of 24 in.; 79 / 27 = 2.93, so 3 batts, and no way takes fewer.
    let wool = "packing: Vostmat 60, 6 pcf, 1-1/2 in. thick";
    let wool = row(&made["orders"], &[("kind", "packing"), ("what", wool)]);
    assert_eq!((&wool["pieces"], &wool["at_least"]), (&3.into(), &3.into()));
    // 3 × 24 × 48 × 1-1/2 / 144.
    is(&wool["brought"], "36", "bd_ft");
    // 2 × (330 + 330 + 374 + 264 + 220 + 297-1/2) = 3631 in.; × 7/8 × 1-1/2 / 144 = 76251/2304 = 25417/768.
    is(&wool["net"], "25417/768", "bd_ft");
    // 108 clips with two fasteners each: 19 at each of J-021 to J-024; J-025 and J-026 of 25 ft 8 in. = 308 in.:
    // 292 / 20 = 14.6, so 15 + 1.
    let clips = row(&made["orders"], &[("what", "clips")]);
    is(&clips["brought"], "108", "count");
}

#[test]
fn what_is_not_stated_is_left_out_and_named() {
    let folder = demo();
    let made = json(folder.path(), "takeoff");
    let left_out = |made: &Value, why: &str| -> Vec<String> {
        let all = made["left_out"].as_array().unwrap().iter();
        let fit = all.filter(|one| one["why"].as_str().unwrap().starts_with(why));
        let joints = fit.flat_map(|one| one["joints"].as_array().unwrap().clone());
        joints.map(|one| one.as_str().unwrap().to_owned()).collect()
    };
    // On how many faces the coating of FW1 and FW2 lies, no table says.
    assert_eq!(left_out(&made, "coating: "), ["J-059", "J-060"]);
    let lines = made["lines"].as_array().unwrap();
    let of_edge = lines.iter().filter(|line| line["mark"] == "FW1");
    assert_eq!(of_edge.count(), 1, "its length alone");
    // Nor, once the schedule has lost them, a length and a thickness.
    let file = folder.path().join("demo-project/schedule.csv");
    let schedule = fs::read_to_string(&file).unwrap();
    let shorter = schedule.replacen(
        "J-001,HW1,L2,FB-2,C/2-4,27 ft 6 in.,",
        "J-001,HW1,L2,FB-2,C/2-4,,",
        1,
    );
    assert_ne!(schedule, shorter);
    fs::write(&file, shorter).unwrap();
    let file = folder.path().join("demo-project/marks.csv");
    let marks = fs::read_to_string(&file).unwrap();
    fs::write(&file, marks.replace("packing.thickness", "packing.voids")).unwrap();
    let refused = run(folder.path(), ["takeoff", "--project", "demo-project"]);
    assert_eq!(
        refused.code,
        Some(2),
        "an unknown column is no guess either"
    );
    fs::write(&file, without_column(&marks, "packing.thickness")).unwrap();
    let made = json(folder.path(), "takeoff");
    assert_eq!(
        left_out(&made, "everything: the schedule doesn't state the length"),
        ["J-001"]
    );
    let thick = left_out(&made, "packing: the schedule doesn't say how thick it is");
    assert!(thick.contains(&"J-002".to_owned()), "{thick:?}");
    // J-002 alone is left of HW1 on L2: 374 in.
    let wanted = [("mark", "HW1"), ("storey", "L2"), ("what", "joint")];
    is(&row(&made["lines"], &wanted)["amount"], "187/6", "ft");
}

/// A table of plain cells without one of its columns.
fn without_column(table: &str, name: &str) -> String {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .from_reader(table.as_bytes());
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let column = rows[0].iter().position(|cell| cell == name).unwrap();
    let mut writer = csv::WriterBuilder::new()
        .flexible(true)
        .from_writer(Vec::new());
    for row in &rows {
        let cells = row.iter().enumerate().filter(|(at, _)| *at != column);
        writer.write_record(cells.map(|(_, cell)| cell)).unwrap();
    }
    String::from_utf8(writer.into_inner().unwrap()).unwrap()
}

#[test]
fn tables_as_people_see_them() {
    let folder = demo();
    let show = |args: &[&str]| -> Run { run_at(folder.path(), "130", args) };
    let quantities = show(&["takeoff", "--project", "demo-project"]);
    assert_eq!(quantities.code, Some(1), "{}", quantities.err);
    assert_snapshot!("takeoff", quantities.out);
    let csv = show(&["takeoff", "--project", "demo-project", "--csv"]).out;
    assert!(csv.starts_with("part,mark,storey,kind,what,amount,unit,"));
    assert!(
        csv.contains("\nmark and storey,HW1,L2,fasteners,fasteners of the runner,38,count,"),
        "{csv}"
    );
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    assert!(reader.records().all(|row| row.is_ok()));
}

/// The examples in the help run as they stand.
#[test]
fn examples_run() {
    let folder = demo();
    for command in ["takeoff"] {
        let help = run_at(folder.path(), "400", [command, "--help"]).out;
        let examples = help.split("Examples:").nth(1).unwrap();
        let lines = examples.lines().map(str::trim);
        let mut tried = 0;
        for line in lines.filter_map(|line| line.strip_prefix("everyclause ")) {
            let asked = line.split(" > ").next().unwrap();
            let parts = asked.split('"').enumerate();
            let args: Vec<&str> = parts
                .flat_map(|(at, part)| match at % 2 {
                    1 => vec![part],
                    _ => part.split_whitespace().collect(),
                })
                .collect();
            let run = run(folder.path(), args);
            assert_eq!(run.code, Some(1), "{line}: {}", run.err);
            tried += 1;
        }
        assert!(tried > 1, "{command}");
    }
}

/// HW6: fireproofing at the joint by what was measured there (item 1D, 2 hr: at least 1-3/16 in.; item 3B: the coating
/// laps at least 2 in. onto it). A thickness from a drawing is no reading.
#[test]
fn fireproofing_on_the_work_card() {
    let folder = demo();
    let args = ["work", "HW6", "--project", "demo-project", "--json"];
    let card: Value = serde_json::from_str(&run(folder.path(), args).out).unwrap();
    let findings = |joint: &str| -> Vec<String> {
        let work = row(&card["joints"], &[("joint", joint)]);
        let findings = work["fireproofing"]["findings"].as_array();
        let standings = findings.into_iter().flatten().map(|one| &one["standing"]);
        standings
            .map(|one| one.as_str().unwrap().to_owned())
            .collect()
    };
    // Drawing S-303 shows 7/8 in.; nobody measured it.
    assert!(findings("J-021").is_empty());
    // 1-3/8 in., read to 1/16 in., is over 1-3/16; the laps are 2 in. and more.
    assert_eq!(findings("J-022")[..2], ["met", "met"]);
    // 1-1/2 in. of lap is under 2 in.
    assert_eq!(findings("J-023")[..2], ["met", "not_met"]);
}

/// The card of HW1 with a value of J-001 written anew, as the work of the joint.
fn first_joint_with(column: &str, value: &str) -> (Value, String) {
    let folder = demo();
    let path = folder.path().join("demo-project/schedule.csv");
    let schedule = fs::read_to_string(&path).unwrap();
    let rows = schedule.lines().enumerate().map(|(at, row)| match at {
        0 => format!("{row},{column}"),
        _ if row.starts_with("J-001,") => format!("{row},\"{value}\""),
        _ => format!("{row},"),
    });
    fs::write(&path, rows.collect::<Vec<_>>().join("\n") + "\n").unwrap();
    let card = |more: &[&str]| {
        let args = [&["work", "HW1", "--project", "demo-project"], more].concat();
        run(folder.path(), args)
    };
    let json: Value = serde_json::from_str(&card(&["--json"]).out).unwrap();
    (json["joints"][0].clone(), card(&[]).out)
}

/// Studs cut 3 in. short of legs of 2-1/2 in. reach into nothing: that is told, and the packing is worked out all the same.
#[test]
fn one_value_that_cannot_be_keeps_nothing_else_from_the_card() {
    let (joint, card) = first_joint_with("stud.end_gap", "3 in.");
    assert!(joint["runner"].is_null() && joint["packing"].is_object());
    let gaps = joint["gaps"].to_string();
    assert!(
        gaps.contains("the gap at the studs is 3 in.; it must be less than the legs, 2-1/2 in."),
        "{gaps}"
    );
    assert!(card.contains("J-006"), "{card}");
}

/// Studs read at three places move as far as the tightest lets them: 1/8 in. as read, 3/32 in. as closely as a tape tells.
#[test]
fn the_tightest_reading_decides_on_the_card() {
    let readings = "3/4 in. [measured: tape, 1/16 in.; readings 3/4 in., 1/8 in., 3/4 in.]";
    let (joint, _) = first_joint_with("stud.end_gap", readings);
    is(&joint["runner"]["down"]["room"], "3/32", "in");
    // A tape whose division nobody recorded is one of the coarsest that are used, not exact.
    let unrecorded = "3/4 in. [measured: tape; readings 3/4 in., 1/8 in., 3/4 in.]";
    let (joint, _) = first_joint_with("stud.end_gap", unrecorded);
    is(&joint["runner"]["down"]["room"], "3/32", "in");
}
