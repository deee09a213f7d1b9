//! What is wrong with the input is said, with its place and what would be right; nothing panics, nothing is half-written.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a failed expectation is the point"
)]

mod common;

use std::ffi::OsString;
use std::fs;

use common::{Run, folder_with, names, run, small};

/// A faulty run: it ends with 2, says nothing on standard output, and says each of these on standard error.
#[track_caller]
fn check_fault(run: &Run, said: &[&str]) {
    assert_eq!(run.code, Some(2), "{run:?}");
    assert_eq!(run.out, "");
    for words in said {
        assert!(run.err.contains(words), "`{words}` isn't in:\n{}", run.err);
    }
}

#[track_caller]
fn check_read(bytes: &[u8], said: &[&str]) {
    let folder = folder_with("a.txt", bytes);
    check_fault(&run(folder.path(), ["read", "a.txt"]), said);
    assert_eq!(names(folder.path()).len(), 1, "nothing is written");
}

#[test]
fn listings_that_are_none() {
    check_read(
        b"",
        &[
            "the file is empty",
            "a.txt",
            "help: give the listing as plain text",
        ],
    );
    check_read(b" \n\t\n", &["nothing but white space"]);
    check_read(
        b"\x7fELF\x02\x01\x00\x00\x00",
        &[
            "looks like a program",
            "a.txt",
            "help: is it the right file?",
        ],
    );
    check_read(b"Min 4 in.\x02 deep", &["isn't text: byte", "a.txt"]);
    check_read(
        b"%PDF-1.7\n\x00\x01\x02",
        &["the PDF is damaged", "fetch the file again"],
    );
}

#[test]
fn a_line_of_fifty_megabytes() {
    check_read(
        &vec![b'a'; 50_000_000],
        &["more than 16 MB", "is it the right file?"],
    );
}

#[test]
fn a_long_line_is_read_and_shown_short() {
    let folder = folder_with("a.txt", &vec![b'a'; 200_000]);
    let run = run(folder.path(), ["read", "a.txt"]);
    assert_eq!(run.code, Some(1));
    assert!(
        run.out.contains("is this a listing?") && run.out.len() < 3_000,
        "{}",
        run.out
    );
}

#[test]
fn paths_that_cant_be_read() {
    let folder = folder_with("listing.txt", b"1. Packing - Min 4 in. deep.\n");
    check_fault(
        &run(folder.path(), ["read", "listng.txt"]),
        &["no such file", "is `listing.txt` meant?"],
    );
    check_fault(
        &run(folder.path(), ["read", "."]),
        &["this is a folder", "in it are `listing.txt`"],
    );
    check_fault(
        &run(folder.path(), ["check", "--project", "nowhere"]),
        &["no such folder", "nowhere"],
    );
    check_fault(
        &run(folder.path(), ["check", "--project", "."]),
        &["no schedule in the folder"],
    );
    check_fault(
        &run(
            folder.path(),
            [
                "check",
                "--schedule",
                "listing.txt",
                "--listings",
                "listing.txt",
            ],
        ),
        &["listing.txt"],
    );
}

#[cfg(unix)]
#[test]
fn names_that_arent_utf8() {
    use std::os::unix::ffi::OsStringExt;
    let name = OsString::from_vec(b"a\xff.txt".to_vec());
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join(&name), b"1. Packing - Min 4 in. deep.\n").unwrap();
    let read = run(folder.path(), [OsString::from("read"), name.clone()]);
    assert_eq!(read.code, Some(0));
    assert!(read.out.contains("Packing"));
    let confirm = run(
        folder.path(),
        [
            OsString::from("confirm"),
            name,
            "--by".into(),
            "A".into(),
            "--all".into(),
        ],
    );
    assert_eq!(confirm.code, Some(0), "{confirm:?}");
    assert_eq!(names(folder.path()).len(), 2);
}

#[test]
fn encodings_are_told() {
    let text = "1. Packing - Min 2½ in. deep, at 40°F.\n";
    let wide: Vec<u8> = [0xff, 0xfe]
        .into_iter()
        .chain(text.encode_utf16().flat_map(u16::to_le_bytes))
        .collect();
    let old: Vec<u8> = text.chars().map(|c| u8::try_from(c).unwrap()).collect();
    for (bytes, encoding) in [(wide, "UTF-16"), (old, "Windows-1252")] {
        let folder = folder_with("a.txt", &bytes);
        let run = run(folder.path(), ["read", "a.txt"]);
        assert_eq!(run.code, Some(0));
        assert!(
            run.out.contains(encoding) && run.out.contains("2-1/2 in."),
            "{}",
            run.out
        );
    }
}

#[test]
fn control_characters_dont_reach_the_terminal() {
    let folder = folder_with(
        "a.txt",
        "1. Packing - Min 4 in. \u{9b}31m deep \u{202e}.\n".as_bytes(),
    );
    let run = run(folder.path(), ["read", "a.txt"]);
    assert!(
        !run.out.contains(['\u{9b}', '\u{202e}', '\u{1b}']),
        "{}",
        run.out
    );
}

#[track_caller]
fn check_schedule(schedule: &str, said: &[&str]) {
    let folder = small();
    fs::remove_file(folder.path().join("judgments.csv")).unwrap();
    fs::write(folder.path().join("schedule.csv"), schedule).unwrap();
    check_fault(&run(folder.path(), ["check", "--project", "."]), said);
}

#[test]
fn schedules_that_cant_be_used() {
    check_schedule("", &["schedule.csv", "the file is empty"]);
    check_schedule(
        "joint,mark,joint.widht\nN-1,W1,1 in.\n",
        &["schedule.csv, cell C1", "`joint.widht`", "`joint.width`"],
    );
    check_schedule(
        "joint,mark,joint.width\nN-1,W1,1 furlong\n",
        &["schedule.csv, cell C2", "1 furlong", "^^^^^^^^^"],
    );
    check_schedule(
        "joint,mark,packing.density\nN-1,W1,3 in.\n",
        &["schedule.csv, cell C2", "3 in.", "density"],
    );
    check_schedule(
        "joint,mark\nN-1,W7\n",
        &["schedule.csv, cell B2", "`W7`", "nothing was checked"],
    );
    check_schedule("joint,mark\n", &["no joints in the schedule"]);
    check_schedule("mark,joint.width\nW1,1 in.\n", &["schedule.csv"]);
}

#[test]
fn every_bad_cell_at_once() {
    check_schedule(
        "joint,mark,joint.width\nN-1,W1,1 furlong\nN-1,W8,1\n",
        &[
            "cell C2",
            "cell A3",
            "cell B3",
            "cell C3",
            "4 problems in the tables",
        ],
    );
}

#[test]
fn a_mark_without_joints_is_told() {
    let folder = small();
    fs::write(folder.path().join("schedule.csv"), "joint,mark\nN-1,W1\n").unwrap();
    let run = run(folder.path(), ["check", "--project", "."]);
    assert_eq!(run.code, Some(1));
    assert!(
        run.err.contains("mark `W2` has no joint") && run.err.contains("marks.csv, cell A4"),
        "{}",
        run.err
    );
}

#[test]
fn two_listings_with_one_designation() {
    let folder = small();
    let marks = fs::read_to_string(folder.path().join("marks.csv")).unwrap();
    fs::write(
        folder.path().join("marks.csv"),
        marks.replace("hw-d-0190-ed1", "HW-D-0190"),
    )
    .unwrap();
    check_fault(
        &run(folder.path(), ["check", "--project", "."]),
        &[
            "2 listings go by `HW-D-0190`",
            "mark `W1` says so",
            "hw-d-0190-ed1.txt",
            "hw-d-0190-ed2.txt",
            "Edition 1",
            "the file's name without its ending",
            "Nothing was checked",
        ],
    );
}

#[test]
fn a_listing_that_isnt_there() {
    let folder = small();
    let marks = fs::read_to_string(folder.path().join("marks.csv")).unwrap();
    fs::write(
        folder.path().join("marks.csv"),
        marks.replace("hw-d-0190-ed1", "hw-d-0190-ed7"),
    )
    .unwrap();
    fs::write(folder.path().join("listings/other.txt"), "").unwrap();
    check_fault(
        &run(folder.path(), ["check", "--project", "."]),
        &[
            "no listing goes by `hw-d-0190-ed7`",
            "is `hw-d-0190-ed",
            "leave the cell empty",
            "other.txt",
            "the file is empty",
        ],
    );
}

#[test]
fn a_confirmation_that_cant_be_read_is_left_alone() {
    let folder = folder_with("a.txt", b"1. Packing - Min 4 in. deep.\n");
    let path = folder.path().join("a.txt.confirmed.toml");
    fs::write(&path, "source_sha256 = \"0\"\nsource_name = 7\n").unwrap();
    let confirm = run(folder.path(), ["confirm", "a.txt", "--by", "A", "--all"]);
    check_fault(
        &confirm,
        &[
            "a.txt.confirmed.toml:2",
            "the confirmation can't be read",
            "it was left as it is",
        ],
    );
    assert!(
        fs::read_to_string(&path)
            .unwrap()
            .contains("source_name = 7")
    );
    assert_eq!(names(folder.path()).len(), 2);
}

#[test]
fn confirming_what_isnt_there() {
    let folder = folder_with("a.txt", b"1. Packing - Min 4 in. deep.\n");
    for (args, said) in [
        (vec!["--all"], "nobody is named who confirms"),
        (vec!["--by", " ", "--all"], "nobody is named who confirms"),
        (vec!["--by", "A", "--clause", "1/9"], "no clause `1/9`"),
        (
            vec!["--by", "A", "--correct", "1/1"],
            "nothing says what is right",
        ),
        (
            vec!["--by", "A", "--correct", "1/1", "--value", "4"],
            "`4` is no value",
        ),
        (
            vec!["--by", "A", "--correct", "1/1", "--value", "4 pcf"],
            "packing.depth is a length",
        ),
        (
            vec!["--by", "A", "--correct", "1/1", "--relation", "between"],
            "one number can't be a range",
        ),
        (
            vec![
                "--by",
                "A",
                "--correct",
                "1/1",
                "--value",
                "2 to 1 in.",
                "--relation",
                "between",
            ],
            "from the lower to the higher",
        ),
        (
            vec![
                "--by",
                "A",
                "--correct",
                "1/1",
                "--property",
                "packing.dept",
            ],
            "is `packing.depth` meant?",
        ),
    ] {
        let args = ["confirm", "a.txt"].into_iter().chain(args);
        check_fault(&run(folder.path(), args), &[said]);
    }
    assert_eq!(names(folder.path()).len(), 1, "nothing is written");
}

#[test]
fn words_and_joints_that_arent_known() {
    let folder = small();
    check_fault(
        &run(folder.path(), ["glossary", "packin"]),
        &["nothing that goes by `packin`", "`packing`"],
    );
    check_fault(
        &run(folder.path(), ["read", "--rules", "word befor"]),
        &["is `word before` meant?"],
    );
    check_fault(
        &run(folder.path(), ["explain", "N-9", "--project", "."]),
        &["no joint `N-9`"],
    );
    check_fault(
        &run(
            folder.path(),
            ["questions", "--project", ".", "--trade", "masons"],
        ),
        &["masons"],
    );
}
