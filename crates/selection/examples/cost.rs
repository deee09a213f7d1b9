//! What finding costs in processor time, which other work on the machine disturbs less than the clock: `cost [LISTINGS] [CONDITIONS]`.
//! Linux only: it reads what the kernel has counted for this thread.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::unchecked_time_subtraction,
    reason = "a tool for benchmarks ends where it fails"
)]

use std::time::{Duration, Instant};

use conformance::Subject;
use selection::{Finder, Index, Wanted};
use site::{Fact, Joint, Project};
use support::spec::Spec;

#[path = "../tests/support/mod.rs"]
mod support;

const FIVE: Wanted = Wanted {
    open: 5,
    near: 5,
    every_single_change: false,
};

const ALL_OPEN: Wanted = Wanted {
    open: usize::MAX,
    near: 5,
    every_single_change: true,
};

const JOINTS: usize = 20_000;

fn main() {
    let mut args = std::env::args().skip(1);
    let mut number = |usual: usize| {
        args.next()
            .map_or(usual, |given| given.parse().expect("a number"))
    };
    let (size, conditions) = (number(1_000), number(500));
    let library = Spec::library(size, 1);
    let texts: Vec<(String, String)> = library.iter().map(|one| (one.file(), one.text())).collect();
    let bytes: usize = texts.iter().map(|(_, text)| text.len()).sum();
    println!("{size} listings, {} bytes each", bytes / size);
    let held = told("read", size, || support::read(&library));
    let checklists = told("made ready", size, || support::checklists(&held));
    let index = told("indexed", size, || support::index(&checklists));
    println!("{} distinct points", index.distinct_points());
    let stored = index.to_bytes().unwrap();
    told("index from its stored form", 1, || {
        Index::from_bytes(&stored).unwrap()
    });
    println!("{} bytes stored", stored.len());
    let finder = Finder::new(&index);
    one_by_one(&finder, &checklists, &library);
    schedule(&finder, &checklists, &library, conditions);
    println!("memory at most: {}", most_memory());
}

fn one_by_one(finder: &Finder<'_>, checked: &dyn selection::Library, library: &[Spec]) {
    let asked = support::facts::conditions(library, 64, 2);
    let subjects: Vec<Subject<'_>> = asked.iter().map(|facts| subject(facts)).collect();
    for (name, wanted) in [("one condition", FIVE), ("one condition in full", ALL_OPEN)] {
        // The kernel counts in steps of some milliseconds: all of them together, and the best of three, as what the machine does besides
        // can only add.
        let once = || {
            let since = spent();
            let found = subjects
                .iter()
                .map(|subject| finder.find(checked, subject, &wanted));
            let in_full: usize = found.map(|found| found.unwrap().checked).sum();
            (spent() - since, in_full)
        };
        let (took, in_full) = (0..3).map(|_| once()).min().unwrap();
        let of = u32::try_from(subjects.len()).unwrap();
        println!(
            "{name}: {:?} on average of {of}, {} checked in full each",
            took / of,
            in_full / subjects.len()
        );
    }
}

fn schedule(
    finder: &Finder<'_>,
    checked: &dyn selection::Library,
    library: &[Spec],
    conditions: usize,
) {
    let asked = support::facts::conditions(library, conditions, 3);
    let joint = |number: usize| Joint {
        name: format!("J-{number:05}"),
        facts: asked[number % asked.len()]
            .iter()
            .map(|fact| (fact.property.clone(), fact.clone()))
            .collect(),
        ..Joint::default()
    };
    let project = Project {
        joints: (0..JOINTS).map(joint).collect(),
        ..Project::default()
    };
    let grouped = told("joints grouped", 1, || {
        selection::conditions(&project, finder.index())
    });
    let subjects: Vec<Subject<'_>> = grouped.into_iter().map(|one| one.subject).collect();
    println!("{} conditions", subjects.len());
    let before = spent_by_all();
    finder.find_each(checked, &subjects, &FIVE, 1).unwrap();
    println!("found for each, one thread: {:?}", spent_by_all() - before);
    let since = Instant::now();
    let found = finder.find_each(checked, &subjects, &FIVE, 2).unwrap();
    println!("by the clock, two threads: {:?}", since.elapsed());
    let sum = |of: fn(&selection::Found) -> usize| found.iter().map(of).sum::<usize>();
    println!(
        "{} fit, {} open told, {} near told, {} checked in full",
        sum(|one| one.fits.len()),
        sum(|one| one.open.len()),
        sum(|one| one.near.len()),
        sum(|one| one.checked)
    );
}

fn subject(facts: &[Fact]) -> Subject<'_> {
    Subject {
        joint: "J-1",
        mark: "M1",
        facts: facts.iter().collect(),
        judgments: Vec::new(),
    }
}

/// Does something and tells what it took of this thread's processor time, whole and each.
fn told<T>(what: &str, each: usize, work: impl FnOnce() -> T) -> T {
    let since = spent();
    let made = work();
    let took = spent() - since;
    let each = u32::try_from(each).unwrap();
    println!("{what}: {took:?}, {:?} each", took / each);
    made
}

/// The processor time that this thread has had.
fn spent() -> Duration {
    let counted = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap();
    let nanoseconds = counted.split_whitespace().next().unwrap();
    Duration::from_nanos(nanoseconds.parse().unwrap())
}

/// The processor time of every thread, those that have ended among them, to a hundredth of a second.
fn spent_by_all() -> Duration {
    let counted = std::fs::read_to_string("/proc/self/stat").unwrap();
    let behind_name = counted.rsplit(')').next().unwrap();
    let mut fields = behind_name.split_whitespace().skip(11);
    let mut ticks = || -> u64 { fields.next().unwrap().parse().unwrap() };
    Duration::from_millis((ticks() + ticks()) * 10)
}

fn most_memory() -> String {
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let line = status.lines().find(|line| line.starts_with("VmHWM:"));
    line.unwrap_or_default()
        .replace("VmHWM:", "")
        .trim()
        .to_owned()
}
