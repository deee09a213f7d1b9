//! What people have corrected must be read rightly: every page of `tests/corrected`, and of the folder that `EVERYCLAUSE_CASES` names.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop where it fails"
)]

use std::fs;
use std::path::{Path, PathBuf};

#[test]
fn every_correction_is_read_as_corrected() {
    let own = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/corrected");
    let named = std::env::var_os("EVERYCLAUSE_CASES").map(PathBuf::from);
    let mut wrong = Vec::new();
    for folder in [Some(own), named].into_iter().flatten() {
        let entries =
            fs::read_dir(&folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
        let mut pages: Vec<PathBuf> = entries
            .map(|entry| entry.unwrap().path())
            .filter(|path| {
                path.extension().is_some_and(|ending| ending == "md")
                    && !path.ends_with("README.md")
            })
            .collect();
        pages.sort();
        for page in pages {
            let failures = listing::cases::failures(&fs::read_to_string(&page).unwrap());
            wrong.extend(
                failures
                    .into_iter()
                    .map(|failure| format!("{}\n{failure}", page.display())),
            );
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}
