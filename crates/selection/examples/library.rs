//! Writes an invented library of listings to a folder, and a building's schedule beside it: `library FOLDER SIZE [JOINTS] [SEED]`. The
//! listings go to `FOLDER/listings`; the folder is a project as `everyclause find --project FOLDER` takes it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a tool for benchmarks ends where it fails"
)]

use std::path::PathBuf;

#[path = "../tests/support/mod.rs"]
mod support;

/// Of how many conditions the joints are.
const CONDITIONS: usize = 500;

fn main() {
    let mut args = std::env::args().skip(1);
    let folder = PathBuf::from(args.next().expect("the folder to write to"));
    let mut number = |usual: u64| {
        args.next()
            .map_or(usual, |given| given.parse().expect("a number"))
    };
    let size = usize::try_from(number(1_000)).unwrap();
    let joints = usize::try_from(number(20_000)).unwrap();
    let seed = number(1);
    let listings = folder.join("listings");
    std::fs::create_dir_all(&listings).unwrap();
    let library = support::spec::Spec::library(size, seed);
    for spec in &library {
        std::fs::write(listings.join(spec.file()), spec.text()).unwrap();
    }
    for (name, text) in support::schedule::files(&library, joints, CONDITIONS, seed) {
        std::fs::write(folder.join(name), text).unwrap();
    }
}
