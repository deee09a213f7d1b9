//! Writes a store of a large invented project, the same for the same numbers: what the desk's speed is measured on.
//!
//! ```text
//! cargo run --release -p everyclause-server --example large -- FILE [JOINTS [LISTINGS]]
//! ```
//!
//! Half of its listings are copies of the demo's under other numbers; the other half are drawn and written by the generator of
//! `selection`. Every fourth is confirmed. Its marks are the demo's and drawn ones alike, and so are the joints: with what is
//! known of them here and there left out or otherwise, so that each state is there.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "what isn't written right must fail"
)]

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use jiff::Timestamp;
use listing::confirm::confirm_all;
use site::import::{File, import};
use site::{Barrier, Joint, Mark, Project, Storey};
use store::project::Proposal;
use store::{Change, Place, Store, StoreError};
use support::facts::{AS_BUILT, AS_DESIGNED, condition};
use support::seed::Seed;
use support::spec::Spec;

#[path = "../../selection/tests/support/mod.rs"]
mod support;

const JOINTS: usize = 20_000;
const LISTINGS: usize = 2_000;
/// How many joints there are of a mark.
const OF_A_MARK: usize = 50;
const STOREYS: usize = 40;
const BARRIERS: usize = 300;

/// What is measured at each joint; the rest is known of its mark.
const AT_THE_JOINT: [&str; 3] = ["joint.width", "packing.", "coating."];

fn main() -> ExitCode {
    let given: Vec<String> = std::env::args().skip(1).collect();
    let number = |at: usize, usual| {
        let given = given.get(at).map(|text| text.parse().unwrap());
        given.unwrap_or(usual)
    };
    let Some(path) = given.first() else {
        eprintln!("name the file to write: large FILE [JOINTS [LISTINGS]]");
        return ExitCode::from(2);
    };
    let (joints, listings) = (number(1, JOINTS), number(2, LISTINGS));
    let runtime = tokio::runtime::Runtime::new().unwrap();
    match runtime.block_on(write(Path::new(path), joints, listings)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}; {}", error.help());
            ExitCode::FAILURE
        }
    }
}

async fn write(path: &Path, joints: usize, listings: usize) -> Result<(), StoreError> {
    let place = Place::File(path.to_owned());
    let attachments = place.attachments().unwrap();
    let store = Store::make(&place, &attachments).await?;
    let library = library(listings);
    let mut proposal = Proposal::default();
    for (number, document) in library.iter().enumerate() {
        proposal.extend(kept(&store, number, document).await?);
    }
    proposal.extend(store.propose(&project(joints, &library)).await?);
    let change = Change {
        by: "Kim".to_owned(),
        at: Timestamp::UNIX_EPOCH,
        what: "took the project's files".to_owned(),
        edits: proposal.edits,
    };
    let done = store.change(&change).await?;
    println!(
        "{joints} joints, {listings} listings, {} records",
        done.changed
    );
    store.close().await;
    Ok(())
}

/// A listing's document, and whence it comes.
struct Document {
    file: String,
    text: String,
    of: Of,
}

enum Of {
    /// A copy of the demo's file of that stem.
    Demo(String),
    Drawn(Box<Spec>),
}

impl Document {
    fn stem(&self) -> &str {
        self.file.strip_suffix(".txt").unwrap_or(&self.file)
    }
}

/// Half copies of the demo's, half drawn, by turns.
fn library(size: usize) -> Vec<Document> {
    let demo: Vec<(String, String)> = demo_listings();
    let mut drawn = Spec::library(size.div_ceil(2), 1).into_iter();
    let document = |number: usize| {
        if number.is_multiple_of(2) {
            let (stem, text) = &demo[number / 2 % demo.len()];
            let (kind, _) = stem.split_at(5);
            let (old, _) = stem.split_at(9);
            let new = format!("{kind}{}", 3000 + number);
            return Document {
                file: format!("{new}.txt"),
                text: text.replace(&old.to_uppercase(), &new.to_uppercase()),
                of: Of::Demo(stem.clone()),
            };
        }
        let spec = drawn.next().unwrap();
        Document {
            file: spec.file(),
            text: spec.text(),
            of: Of::Drawn(Box::new(spec)),
        }
    };
    (0..size).map(document).collect()
}

async fn kept(store: &Store, number: usize, document: &Document) -> Result<Proposal, StoreError> {
    let bytes = document.text.clone().into_bytes();
    let reading = listing::read(&document.file, &bytes).unwrap();
    let overlay = number
        .is_multiple_of(4)
        .then(|| confirm_all(&reading, "Kim", jiff::civil::date(2031, 5, 6)));
    let attached = store.attach(bytes).await?;
    store
        .propose_listing(
            &document.file,
            &attached,
            &reading.header.designation,
            overlay.as_ref(),
        )
        .await
}

fn demo() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo")
}

fn demo_listings() -> Vec<(String, String)> {
    let mut listings: Vec<(String, String)> = std::fs::read_dir(demo().join("listings"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .map(|path| {
            let stem = path.file_stem().unwrap().to_str().unwrap().to_owned();
            (stem, std::fs::read_to_string(path).unwrap())
        })
        .collect();
    listings.sort();
    listings
}

fn demo_project() -> Project {
    let names = ["schedule.csv", "marks.csv", "barriers.csv", "building.toml"];
    let held = names.map(|name| (name, std::fs::read(demo().join(name)).unwrap()));
    let files = held.each_ref().map(|(name, bytes)| File { name, bytes });
    import(&files).unwrap().project
}

/// A project whose marks take the library's listings in turn.
fn project(joints: usize, library: &[Document]) -> Project {
    let demo = demo_project();
    let mut seed = Seed(7);
    let mut project = Project {
        building: demo.building.clone(),
        ..Project::default()
    };
    project.building.storeys = (1..=STOREYS)
        .map(|number| Storey {
            name: format!("L{number}"),
            ..demo.building.storeys[0].clone()
        })
        .collect();
    project.barriers = (0..BARRIERS)
        .map(|number| Barrier {
            name: format!("FB-{number:03}"),
            ..demo.barriers[number % demo.barriers.len()].clone()
        })
        .collect();
    for number in 0..joints.div_ceil(OF_A_MARK) {
        let document = &library[number % library.len()];
        let others = &library[(number + 7) % library.len()];
        let (mark, patterns) = match &document.of {
            Of::Demo(stem) => of_demo(&demo, stem),
            Of::Drawn(spec) => drawn(spec, others, &mut seed),
        };
        let name = format!("M{number:03}");
        let first = number * OF_A_MARK;
        for nth in first..joints.min(first + OF_A_MARK) {
            let pattern = &patterns[seed.below(patterns.len())];
            // A storey has the barriers of its own number.
            let storey = seed.below(STOREYS);
            let barrier = storey + STOREYS * seed.below(BARRIERS / STOREYS);
            project.joints.push(Joint {
                name: format!("J-{nth:05}"),
                mark: name.clone(),
                listing: None,
                storey: Some(format!("L{}", storey + 1)),
                barrier: Some(format!("FB-{barrier:03}")),
                grid: Some(format!("{}/{}", seed.one(&["A", "B", "C", "D"]), nth % 30)),
                ..pattern.clone()
            });
        }
        project.marks.push(Mark {
            name,
            listing: Some(document.stem().to_owned()),
            ..mark
        });
    }
    project
}

/// A mark of the demo that is built to a listing, and its joints to take after.
fn of_demo(demo: &Project, stem: &str) -> (Mark, Vec<Joint>) {
    let is_built_to = |mark: &&Mark| mark.listing.as_deref() == Some(stem);
    let mark = demo.marks.iter().find(is_built_to);
    let mark = mark.unwrap_or(&demo.marks[0]);
    let joints = demo.joints.iter().filter(|joint| joint.mark == mark.name);
    (mark.clone(), joints.cloned().collect())
}

/// A mark drawn for a listing, and some joints to take after: as built or as designed, some of it as another listing has it.
fn drawn(spec: &Spec, other: &Document, seed: &mut Seed) -> (Mark, Vec<Joint>) {
    let other = match &other.of {
        Of::Drawn(other) => other,
        Of::Demo(_) => spec,
    };
    let is_at_joint = |property: &str| AT_THE_JOINT.iter().any(|start| property.starts_with(start));
    let of_mark = condition(spec, other, AS_DESIGNED, seed)
        .into_iter()
        .filter(|fact| !is_at_joint(&fact.property));
    let mark = Mark {
        title: format!("Joint of {}", spec.designation()),
        facts: of_mark.map(|fact| (fact.property.clone(), fact)).collect(),
        ..Mark::default()
    };
    let joint = |_| {
        let stray = if seed.percent(60) {
            AS_BUILT
        } else {
            AS_DESIGNED
        };
        let known = condition(spec, other, stray, seed).into_iter();
        let facts = known
            .filter(|fact| is_at_joint(&fact.property))
            .map(|fact| (fact.property.clone(), fact));
        Joint {
            facts: facts.collect(),
            ..Joint::default()
        }
    };
    (mark, (0..12).map(joint).collect())
}
