//! The card of one joint of the demo: its numbers by hand, its clauses by the reading, and the same work as on the card of its mark.

#![allow(clippy::unwrap_used, reason = "a step that fails must fail the test")]

use std::path::PathBuf;

use conformance::{JointResult, Subject, Verdict, check_draft};
use listing::Reading;
use site::import::{File, import};
use site::{Joint, Project};
use workcard::{AtHand, BuiltTo, Card, Checked, JointCard};

fn demo_file(name: &str) -> Vec<u8> {
    let demo = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    std::fs::read(demo.join(name)).unwrap()
}

fn project() -> Project {
    let names = ["schedule.csv", "marks.csv", "barriers.csv"];
    let held = names.map(|name| (name, demo_file(name)));
    let files = held.each_ref().map(|(name, bytes)| File { name, bytes });
    import(&files).unwrap().project
}

fn reading() -> Reading {
    let name = "hw-d-0412-ed4.txt";
    listing::read(name, &demo_file(&format!("listings/{name}"))).unwrap()
}

fn found(project: &Project, reading: &Reading, joint: &Joint) -> JointResult {
    check_draft(reading, &Subject::of(project, joint)).into()
}

fn checked<'a>(
    project: &'a Project,
    joint: &'a Joint,
    reading: &'a Reading,
    result: &'a JointResult,
) -> Checked<'a> {
    Checked {
        joint,
        place: String::new(),
        facts: project.facts(joint),
        built_to: Some(BuiltTo { reading, result }),
    }
}

#[test]
fn the_numbers_are_those_that_a_hand_finds() {
    let (project, reading) = (project(), reading());
    let joint = project.joint("J-001").unwrap();
    let result = found(&project, &reading, joint);
    let checked = checked(&project, joint, &reading, &result);
    let card = JointCard::of(&checked, &AtHand::usual()).unwrap().unwrap();
    let words = |about: &str| {
        let line = card.lines.iter().find(|line| line.about == about);
        line.map_or_else(|| panic!("no line on {about}"), |line| line.words.as_str())
    };
    // 7/8 in. read to 1/16 in., 1-1/2 in. scheduled: (1.5 - 0.90625) / 1.5 and (1.5 - 0.84375) / 1.5.
    assert_eq!(words("Packing compressed"), "≈ 39.6 % to ≈ 43.8 %");
    assert_eq!(words("Packing cut wide, at least"), "7/8 in. (≈ 22.2 mm)");
    // 7/8 in. with 1/2 in. on board and 1 in. on concrete; 2-3/8 in. × 330 in. × 1/8 in. × 2 faces / 231 in³ / 0.9.
    assert_eq!(
        words("Coating"),
        "1/8 in. (≈ 3.2 mm) wet, band 2-3/8 in. (≈ 60.3 mm), ≈ 0.94 gal (≈ 3.56 L)"
    );
    // 330 in. less 3 in. at either end, at 20 in.: 16.2 spaces, so 17, and a fastener more.
    assert!(words("Along the run").starts_with("18 fasteners of the runner (item 2A)"));
}

#[test]
fn each_line_leads_to_clauses_that_apply() {
    let (project, reading) = (project(), reading());
    let of_mark = project.joints.iter().filter(|joint| joint.mark == "HW1");
    let mut cited = 0;
    for joint in of_mark {
        let result = found(&project, &reading, joint);
        let checked = checked(&project, joint, &reading, &result);
        let card = JointCard::of(&checked, &AtHand::usual()).unwrap().unwrap();
        let of_orders = card.orders.iter().map(|brought| &brought.clauses);
        for clauses in card.lines.iter().map(|line| &line.clauses).chain(of_orders) {
            assert!(!clauses.is_empty(), "{card:?}");
            for id in clauses {
                let finding = result.finding(id).unwrap();
                assert_ne!(finding.verdict, Verdict::NotApplicable, "{id}");
                cited += 1;
            }
        }
        let packing = card.lines.iter().find(|line| line.about == "Coating");
        for id in &packing.unwrap().clauses {
            let property = &result.finding(id).unwrap().explanation.property;
            assert!(property.starts_with("coating."), "{id}: {property}");
        }
    }
    assert!(cited > 60, "{cited}");
}

#[test]
fn the_work_is_that_of_the_mark_s_card() {
    let (project, reading) = (project(), reading());
    let of_mark = project.joints.iter().filter(|joint| joint.mark == "HW1");
    let found: Vec<(&Joint, JointResult)> = of_mark
        .map(|joint| (joint, found(&project, &reading, joint)))
        .collect();
    let all: Vec<Checked<'_>> = found
        .iter()
        .map(|(joint, result)| checked(&project, joint, &reading, result))
        .collect();
    let at_hand = AtHand::usual();
    let card = Card::of(project.mark("HW1").unwrap(), &all, &at_hand).unwrap();
    assert_eq!(card.joints.len(), all.len());
    for (checked, on_card) in all.iter().zip(&card.joints) {
        let alone = JointCard::of(checked, &at_hand).unwrap().unwrap();
        let json = |work: &workcard::JointWork| serde_json::to_value(work).unwrap();
        assert_eq!(json(&alone.work), json(on_card));
    }
    let without = Checked {
        built_to: None,
        ..all.first().unwrap().clone()
    };
    assert!(JointCard::of(&without, &at_hand).unwrap().is_none());
}
