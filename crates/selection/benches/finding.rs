//! Finding listings in libraries of a hundred to ten thousand. `cargo bench -p everyclause-selection`
//!
//! What each figure is of, and what was measured, stands in `README.md` beside this file.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a benchmark ends where it fails"
)]

use std::sync::{Mutex, OnceLock};

use conformance::{Checklist, Subject};
use divan::Bencher;
use divan::counter::{BytesCount, ItemsCount};
use selection::{Finder, Index, Wanted};
use site::{Fact, Joint, Project};
use support::Held;
use support::facts::conditions;
use support::spec::Spec;

#[path = "../tests/support/mod.rs"]
mod support;

const SIZES: &[usize] = &[100, 1_000, 10_000];

/// The joints of a schedule.
const JOINTS: usize = 20_000;

/// Of how many conditions they are.
const CONDITIONS: usize = 500;

const FIVE: Wanted = Wanted {
    open: 5,
    near: 5,
    every_single_change: false,
};

fn main() {
    divan::main();
}

/// A library with its checklists and index, made once a process and kept to its end.
struct Made {
    library: Vec<Spec>,
    checklists: Vec<Checklist<'static>>,
    index: Index,
}

fn made(size: usize) -> &'static Made {
    static MADE: OnceLock<Mutex<Vec<(usize, &'static Made)>>> = OnceLock::new();
    let mut known = MADE.get_or_init(Mutex::default).lock().unwrap();
    if let Some((_, made)) = known.iter().find(|(of, _)| *of == size) {
        return made;
    }
    let library = Spec::library(size, 1);
    let held: &'static [Held] = support::read(&library).leak();
    let checklists = support::checklists(held);
    let index = support::index(&checklists);
    let made: &'static Made = Box::leak(Box::new(Made {
        library,
        checklists,
        index,
    }));
    known.push((size, made));
    made
}

fn subjects(conditions: &[Vec<Fact>]) -> Vec<Subject<'_>> {
    let subject = |facts| Subject {
        joint: "J-1",
        mark: "M1",
        facts,
        judgments: Vec::new(),
    };
    let facts = conditions.iter().map(|facts| facts.iter().collect());
    facts.map(subject).collect()
}

/// From texts to an index: read, made ready, its points told apart.
#[divan::bench(args = [100, 1_000], sample_count = 5)]
fn index_from_texts(bencher: Bencher<'_, '_>, size: usize) {
    let library = Spec::library(size, 1);
    let texts: Vec<(String, String)> = library.iter().map(|one| (one.file(), one.text())).collect();
    let bytes: usize = texts.iter().map(|(_, text)| text.len()).sum();
    bencher
        .counter(ItemsCount::new(size))
        .counter(BytesCount::new(bytes))
        .bench(|| {
            let mut builder = selection::index::Builder::default();
            for (file, text) in &texts {
                let reading = listing::read(file, text.as_bytes()).unwrap();
                builder.add(&Checklist::of_draft(&reading)).unwrap();
            }
            builder.finish()
        });
}

/// The same without the reading.
#[divan::bench(args = [1_000], sample_count = 5)]
fn index_from_readings(bencher: Bencher<'_, '_>, size: usize) {
    let made = made(size);
    bencher
        .counter(ItemsCount::new(size))
        .bench(|| support::index(&made.checklists));
}

/// The index taken from its bytes and made ready.
#[divan::bench(args = SIZES, sample_count = 5)]
fn index_from_bytes(bencher: Bencher<'_, '_>, size: usize) {
    let bytes = made(size).index.to_bytes().unwrap();
    bencher.counter(BytesCount::new(bytes.len())).bench(|| {
        let index = Index::from_bytes(&bytes).unwrap();
        Finder::new(&index).index().distinct_points()
    });
}

/// One condition: all that fits, the best five of the others.
#[divan::bench(args = SIZES)]
fn one_condition(bencher: Bencher<'_, '_>, size: usize) {
    each_in_turn(bencher, size, FIVE);
}

/// One condition: every listing that fits, is only open, or needs one change.
#[divan::bench(args = SIZES)]
fn one_condition_in_full(bencher: Bencher<'_, '_>, size: usize) {
    let wanted = Wanted {
        open: usize::MAX,
        near: 5,
        every_single_change: true,
    };
    each_in_turn(bencher, size, wanted);
}

fn each_in_turn(bencher: Bencher<'_, '_>, size: usize, wanted: Wanted) {
    let made = made(size);
    let finder = Finder::new(&made.index);
    let asked = conditions(&made.library, 64, 2);
    let subjects = subjects(&asked);
    let mut turn = 0;
    bencher.bench_local(|| {
        turn = (turn + 1) % subjects.len();
        finder
            .find(&made.checklists, &subjects[turn], &wanted)
            .unwrap()
    });
}

/// A schedule of twenty thousand joints of five hundred conditions, on two threads: grouped, and all that fits and the best five others
/// found for each, with what stands in their way in words.
#[divan::bench(args = SIZES, sample_count = 3)]
fn a_schedule(bencher: Bencher<'_, '_>, size: usize) {
    let made = made(size);
    let finder = Finder::new(&made.index);
    let project = project(&conditions(&made.library, CONDITIONS, 3));
    bencher.counter(ItemsCount::new(JOINTS)).bench(|| {
        let grouped = selection::conditions(&project, &made.index);
        let subjects: Vec<Subject<'_>> = grouped.into_iter().map(|one| one.subject).collect();
        finder
            .find_each(&made.checklists, &subjects, &FIVE, 2)
            .unwrap()
    });
}

fn project(conditions: &[Vec<Fact>]) -> Project {
    let joint = |number: usize| Joint {
        name: format!("J-{number:05}"),
        facts: conditions[number % conditions.len()]
            .iter()
            .map(|fact| (fact.property.clone(), fact.clone()))
            .collect(),
        ..Joint::default()
    };
    Project {
        joints: (0..JOINTS).map(joint).collect(),
        ..Project::default()
    }
}

/// One condition against every listing in full, without the index.
#[divan::bench(args = [100, 1_000], sample_count = 5)]
fn one_condition_plainly(bencher: Bencher<'_, '_>, size: usize) {
    let made = made(size);
    let asked = conditions(&made.library, 1, 2);
    let subjects = subjects(&asked);
    bencher.bench(|| support::plain::all(&made.checklists, &subjects[0]));
}
