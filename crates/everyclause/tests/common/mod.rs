//! The built program, run as a person runs it.

#![allow(
    dead_code,
    clippy::expect_used,
    reason = "each test file uses some of it, and expects what it set up"
)]

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What a run of the program gave.
#[derive(Debug)]
pub(crate) struct Run {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

/// Runs the program in a folder, on a page of a hundred columns.
pub(crate) fn run<A: AsRef<OsStr>>(folder: &Path, args: impl IntoIterator<Item = A>) -> Run {
    run_at(folder, "100", args)
}

/// Runs the program in a folder, on a page of so many columns.
pub(crate) fn run_at<A: AsRef<OsStr>>(
    folder: &Path,
    columns: &str,
    args: impl IntoIterator<Item = A>,
) -> Run {
    let output = Command::new(env!("CARGO_BIN_EXE_everyclause"))
        .args(args)
        .current_dir(folder)
        .env("COLUMNS", columns)
        .env("NO_COLOR", "1")
        .env_remove("CARGO")
        .output()
        .expect("the program starts");
    let text = |bytes| String::from_utf8(bytes).expect("the program writes UTF-8");
    let run = Run {
        code: output.status.code(),
        out: text(output.stdout),
        err: text(output.stderr),
    };
    assert!(!run.err.contains("panicked"), "{}", run.err);
    run
}

/// The small project of these tests, in a folder of its own.
pub(crate) fn small() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/small");
    copy(&from, folder.path());
    folder
}

/// The demo, in a folder of its own.
pub(crate) fn demo() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let demo = run(folder.path(), ["demo"]);
    assert_eq!(demo.code, Some(0), "{}", demo.err);
    folder
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).expect("a folder");
    for entry in std::fs::read_dir(from).expect("a folder") {
        let path = entry.expect("an entry").path();
        let there = to.join(path.file_name().expect("a name"));
        if path.is_dir() {
            copy(&path, &there);
        } else {
            std::fs::copy(&path, &there).expect("copied");
        }
    }
}

/// A folder with one file in it.
pub(crate) fn folder_with(name: &str, bytes: &[u8]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join(name), bytes).expect("written");
    folder
}

/// What lies in a folder, by name.
pub(crate) fn names(folder: &Path) -> Vec<PathBuf> {
    let mut names: Vec<PathBuf> = std::fs::read_dir(folder)
        .expect("a folder")
        .map(|entry| entry.expect("an entry").file_name().into())
        .collect();
    names.sort();
    names
}
