//! How long the card of one joint takes, once its listing is read and checked.

#![allow(clippy::unwrap_used, reason = "a bench that can't begin must fail")]

use std::path::PathBuf;

use conformance::{Subject, check_draft};
use site::import::{File, import};
use workcard::{AtHand, BuiltTo, Checked, JointCard};

fn main() {
    divan::main();
}

/// Heads of wall of the demo: at a flat slab, and across the flutes of a deck.
#[divan::bench(args = [("J-001", "hw-d-0412-ed4.txt"), ("J-016", "hw-d-0437.txt")])]
fn one_joint(bencher: divan::Bencher<'_, '_>, (name, listing): (&str, &str)) {
    let demo = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    let file = |name: &str| std::fs::read(demo.join(name)).unwrap();
    let held = ["schedule.csv", "marks.csv", "barriers.csv"].map(|name| (name, file(name)));
    let files = held.each_ref().map(|(name, bytes)| File { name, bytes });
    let project = import(&files).unwrap().project;
    let reading = listing::read(listing, &file(&format!("listings/{listing}"))).unwrap();
    let joint = project.joint(name).unwrap();
    let result = check_draft(&reading, &Subject::of(&project, joint)).into();
    let checked = Checked {
        joint,
        place: String::new(),
        facts: project.facts(joint),
        built_to: Some(BuiltTo {
            reading: &reading,
            result: &result,
        }),
    };
    let at_hand = AtHand::usual();
    bencher.bench_local(|| JointCard::of(&checked, &at_hand));
}
