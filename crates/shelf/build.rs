//! Tells which reader the program has, so that an index made by another is made anew: a hash of everything that bears on
//! how a listing is read and what of it is kept.

use std::fs;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

const WHAT_READS: [&str; 6] = [
    "measure/src",
    "vocabulary/src",
    "vocabulary/data",
    "paper/src",
    "listing/src",
    "conformance/src/points",
];

fn main() {
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut hash = Sha256::new();
    for folder in WHAT_READS.iter().chain(&["selection/src", "shelf/src"]) {
        let folder = crates.join(folder);
        println!("cargo:rerun-if-changed={}", folder.display());
        for file in files(&folder) {
            let name = file.strip_prefix(&crates).unwrap_or(&file);
            hash.update(name.to_string_lossy().as_bytes());
            hash.update(fs::read(&file).unwrap_or_default());
        }
    }
    let reader = hash
        .finalize()
        .iter()
        .fold(String::new(), |hex, byte| format!("{hex}{byte:02x}"));
    println!("cargo:rustc-env=EVERYCLAUSE_READER={reader}");
}

/// The files of a folder and those in it, in the order of their names.
fn files(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.path()).collect();
    paths.sort();
    paths
        .into_iter()
        .flat_map(|path| {
            if path.is_dir() {
                files(&path)
            } else {
                vec![path]
            }
        })
        .collect()
}
