//! Writes an invented library of listings to a folder: `library FOLDER SIZE [SEED]`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a tool for benchmarks ends where it fails"
)]

use std::path::PathBuf;

#[path = "../tests/support/mod.rs"]
mod support;

fn main() {
    let mut args = std::env::args().skip(1);
    let folder = PathBuf::from(args.next().expect("the folder to write to"));
    let size: usize = args
        .next()
        .expect("how many listings")
        .parse()
        .expect("a number");
    let seed: u64 = args
        .next()
        .map_or(1, |seed| seed.parse().expect("a number"));
    std::fs::create_dir_all(&folder).unwrap();
    for spec in support::spec::Spec::library(size, seed) {
        std::fs::write(folder.join(spec.file()), spec.text()).unwrap();
    }
}
