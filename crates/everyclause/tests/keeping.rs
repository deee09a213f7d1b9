//! A project in a store, from the command line.

mod common;

use std::fs;

use common::{demo, run};

#[test]
fn a_store_says_what_its_files_say() {
    let folder = demo();
    let go = |line: &str| run(folder.path(), line.split(' '));
    let kept = go("keep --project demo-project --into clinic.sqlite --by Kim");
    assert_eq!(kept.code, Some(0), "{}", kept.err);
    assert!(kept.out.contains("0 changed, 0 removed"), "{}", kept.out);
    let again = go("keep --project demo-project --into clinic.sqlite --by Kim");
    assert!(
        again.out.contains("says all of it already"),
        "{}",
        again.out
    );
    // Everything that can be asked of the files can be asked of the store, and answers the same.
    for command in ["check", "explain J-004", "questions", "work HW1", "leakage"] {
        let of_files = go(&format!("{command} --project demo-project --json"));
        let of_store = go(&format!("{command} --store clinic.sqlite --json"));
        assert_eq!(of_files.code, of_store.code, "{command}: {}", of_store.err);
        // Where a listing lies is told as it is: in a folder, or in the store.
        let plain = of_files.out.replace("demo-project/listings/", "");
        assert!(!plain.is_empty() && plain == of_store.out, "{command}");
    }
    let verified = go("verify --store clinic.sqlite");
    assert_eq!(verified.code, Some(0), "{}", verified.out);
    let journal = go("journal --store clinic.sqlite");
    assert!(journal.out.contains("Kim"), "{}", journal.out);
    assert!(journal.out.contains("took the project's files"));
}

#[test]
fn a_store_goes_out_and_comes_in_whole() {
    let folder = demo();
    let go = |line: &str| run(folder.path(), line.split(' '));
    go("keep --project demo-project --into clinic.sqlite --by Kim");
    let out = go("export --store clinic.sqlite --out clinic.zip");
    assert_eq!(out.code, Some(0), "{}", out.err);
    let twice = go("export --store clinic.sqlite --out clinic.zip");
    assert_eq!(twice.code, Some(2));
    assert!(twice.err.contains("already"), "{}", twice.err);
    let back = go("restore clinic.zip --store other.sqlite");
    assert_eq!(back.code, Some(0), "{}", back.err);
    let check = |store: &str| go(&format!("check --store {store} --json")).out;
    assert!(check("clinic.sqlite") == check("other.sqlite"));
    let over = go("restore clinic.zip --store other.sqlite");
    assert_eq!(over.code, Some(2));
    let noted = go("verify --store other.sqlite --json").out;
    let noted: serde_json::Value = serde_json::from_str(&noted).unwrap();
    let hash = noted["head"]["hash"].as_str().unwrap();
    assert_eq!(
        go(&format!("verify --store other.sqlite --noted {hash}")).code,
        Some(0)
    );
    let other = "0".repeat(63) + "1";
    let unknown = go(&format!("verify --store other.sqlite --noted {other}"));
    assert_eq!(unknown.code, Some(1));
    assert!(
        unknown.out.contains("doesn't lead through"),
        "{}",
        unknown.out
    );
}

#[test]
fn a_look_changes_nothing_and_a_changed_table_is_told() {
    let folder = demo();
    let go = |line: &str| run(folder.path(), line.split(' '));
    let nothing = go("keep --project demo-project --into clinic.sqlite --look");
    assert_eq!(nothing.code, Some(2), "there is no store to look at");
    go("keep --project demo-project --into clinic.sqlite --by Kim");
    let schedule = folder.path().join("demo-project/schedule.csv");
    let text = fs::read_to_string(&schedule).unwrap();
    fs::write(&schedule, text.replacen("\nJ-060,", "\nJ-061,", 1)).unwrap();
    let look = go("keep --project demo-project --into clinic.sqlite --look");
    assert!(look.out.contains("would be removed"), "{}", look.out);
    let head = |text: &str| text.lines().last().unwrap().to_owned();
    let before = head(&look.out);
    assert_eq!(head(&go("verify --store clinic.sqlite").out), before);
    let kept = go("keep --project demo-project --into clinic.sqlite --by Lee");
    assert_ne!(head(&kept.out), before);
    assert_eq!(go("explain J-060 --store clinic.sqlite").code, Some(2));
}

#[test]
fn a_damaged_document_is_found() {
    let folder = demo();
    let go = |line: &str| run(folder.path(), line.split(' '));
    go("keep --project demo-project --into clinic.sqlite --by Kim");
    let attachments = folder.path().join("clinic.sqlite.attachments");
    let some = fs::read_dir(&attachments).unwrap().next().unwrap().unwrap();
    let document = fs::read_dir(some.path()).unwrap().next().unwrap().unwrap();
    let mut bytes = fs::read(document.path()).unwrap();
    bytes[7] ^= 1;
    fs::write(document.path(), bytes).unwrap();
    let verified = go("verify --store clinic.sqlite");
    assert_eq!(verified.code, Some(1), "{}", verified.out);
    assert!(
        verified.out.contains("isn't what was put there"),
        "{}",
        verified.out
    );
    let check = go("check --store clinic.sqlite");
    assert_eq!(check.code, Some(2), "a check on a damaged listing");
}

#[test]
fn a_place_that_can_t_be_is_told() {
    let folder = demo();
    let go = |line: &str| run(folder.path(), line.split(' '));
    for (line, why) in [
        (
            "check --store nowhere.sqlite",
            "there is no store at nowhere.sqlite",
        ),
        (
            "check --store demo-project/marks.csv",
            "file is not a database",
        ),
        (
            "verify --store postgres://localhost/x",
            "where the attachments of a database are",
        ),
        ("verify --store https://localhost/x", "can't be at a URL"),
        (
            "check --store a.sqlite --project demo-project",
            "cannot be used with",
        ),
        ("keep --project demo-project --into a.sqlite", "--by"),
    ] {
        let run = go(line);
        assert_eq!(run.code, Some(2), "{line}: {}", run.out);
        assert!(run.err.contains(why), "{line}: {}", run.err);
    }
    assert!(!folder.path().join("nowhere.sqlite").exists());
}
