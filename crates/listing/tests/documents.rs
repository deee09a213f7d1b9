//! Reads whole documents and holds the clauses against what people expected of them.
//!
//! `tests/documents` were written, each with its expected clauses, before the rules that read them, by many hands in as many styles.
//! `tests/set_aside` were written likewise and looked at by nobody who writes rules: they say how well the reader does on what it has
//! never seen. What is counted, and how: `common/scoring.rs`. `cargo run --example score` names what was not read as expected.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

mod common;

use std::num::NonZero;
use std::path::{Path, PathBuf};
use std::thread;

use common::scoring::{self, Score};
use listing::{Reading, Requirement};

fn score(folder: &str) -> Score {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests")
        .join(folder);
    let documents = scoring::documents(&folder);
    let hands = thread::available_parallelism().map_or(1, NonZero::get);
    let share = documents.len().div_ceil(hands).max(1);
    let mut total = Score::default();
    thread::scope(|scope| {
        let shares: Vec<_> = documents
            .chunks(share)
            .map(|share| scope.spawn(|| score_all(share)))
            .collect();
        for share in shares {
            total += share.join().unwrap();
        }
    });
    println!("{}: {total:?}", folder.display());
    total
}

fn score_all(documents: &[PathBuf]) -> Score {
    let mut total = Score::default();
    for path in documents {
        let (text, gold) = scoring::expected(path);
        let reading = listing::read_text("document", &text);
        assert_whole(&reading, &text);
        total += scoring::score(&reading, &text, &gold);
    }
    total
}

/// Every byte has a place, the places follow one another, and every clause shows its own words.
fn assert_whole(reading: &Reading, text: &str) {
    let mut at = 0;
    for place in &reading.places {
        assert_eq!(place.span.start(), at);
        at = place.span.end();
    }
    assert_eq!(
        (at, reading.accounted.bytes, reading.accounted.of),
        (text.len(), text.len(), text.len())
    );
    for clause in &reading.clauses {
        assert_eq!(clause.span.of(text), clause.words, "{}", clause.id);
        if let Requirement::Bound(bound) = &clause.requirement {
            assert!(!bound.at.of(text).is_empty(), "{}", clause.id);
        }
    }
}

#[test]
fn documents_in_many_styles() {
    let score = score("documents");
    assert!(score.found * 1000 >= score.expected * 966, "{score:?}");
    assert!(score.wrong * 200 <= score.expected, "{score:?}");
    let names = score.names;
    assert!(names.read * 100 >= names.expected * 70, "{score:?}");
    assert!(names.wrong * 100 <= names.with_maker, "{score:?}");
}

#[test]
fn documents_set_aside() {
    let score = score("set_aside");
    // A floor under what was measured when they were first read; the crate's documentation has the figures.
    assert!(score.found * 100 >= score.expected * 87, "{score:?}");
}
