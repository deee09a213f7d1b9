//! The same stories on SQLite, always, and on PostgreSQL, where there is one.

#![allow(dead_code, reason = "each file of tests uses some of it")]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a step that fails must fail the test"
)]

mod ground;

use std::path::PathBuf;

use jiff::Timestamp;
use site::import::{File, import};
use site::{Fact, Project, Provenance, ProvenanceKind, Value};
use store::records::Known;
use store::{Change, Edit, Store};

#[allow(unused_imports, reason = "each file of tests uses some of it")]
pub(crate) use ground::{Ground, on_each, on_postgres};

/// A moment of the stories' own clock.
pub(crate) fn at(second: i64) -> Timestamp {
    Timestamp::from_second(1_773_500_000 + second).unwrap()
}

pub(crate) fn change(by: &str, what: &str, edits: Vec<Edit>) -> Change {
    Change {
        by: by.to_owned(),
        at: at(0),
        what: what.to_owned(),
        edits,
    }
}

/// A value that somebody stated.
pub(crate) fn stated(text: &str, who: &str) -> Known {
    Known::Fact(Box::new(Fact {
        property: "joint.width".to_owned(),
        value: Value::Text(text.to_owned()),
        provenance: Provenance {
            kind: ProvenanceKind::StatedBy {
                who: who.to_owned(),
            },
            date: None,
        },
        cell: None,
    }))
}

pub(crate) fn demo_file(name: &str) -> Vec<u8> {
    let demo = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../everyclause/demo");
    std::fs::read(demo.join(name)).unwrap()
}

/// The demo's project, with something replaced in its schedule.
pub(crate) fn demo_project(replace: &[(&str, &str)]) -> Project {
    let names = [
        "schedule.csv",
        "marks.csv",
        "barriers.csv",
        "judgments.csv",
        "building.toml",
    ];
    let mut held: Vec<(&str, Vec<u8>)> =
        names.iter().map(|name| (*name, demo_file(name))).collect();
    let mut schedule = String::from_utf8(held[0].1.clone()).unwrap();
    for (from, to) in replace {
        assert!(schedule.contains(from), "the schedule has no {from}");
        schedule = schedule.replacen(from, to, 1);
    }
    held[0].1 = schedule.into_bytes();
    let files: Vec<File<'_>> = held
        .iter()
        .map(|(name, bytes)| File { name, bytes })
        .collect();
    import(&files).unwrap().project
}

/// Asserts that nothing is wrong with a store.
pub(crate) async fn assert_whole(store: &Store) {
    let verified = store.verify(None).await.unwrap();
    assert_eq!(verified.flaws, [], "{verified:?}");
}
