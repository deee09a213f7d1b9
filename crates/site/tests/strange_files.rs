//! Files that are no tables, or are made to exhaust a reader.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a failed expectation is the point of a test"
)]

mod common;

use std::time::{Duration, Instant};

use common::{check_problem, problems};
use proptest::prelude::*;
use site::{File, ImportError};

fn import(name: &str, bytes: &[u8]) -> Result<site::Import, ImportError> {
    site::import::import(&[File { name, bytes }])
}

#[track_caller]
fn check_bytes(bytes: &[u8], place: &str, part: &str) {
    let error = import("s.csv", bytes).unwrap_err();
    let [problem] = &error.problems[..] else {
        panic!("{error}")
    };
    assert_eq!(problem.cell.to_string(), place);
    assert!(problem.to_string().contains(part), "{problem}");
}

#[test]
fn files_that_are_no_tables() {
    check_bytes(b"", "s.csv", "the file is empty");
    check_bytes(b" \r\n\n", "s.csv", "the file is empty");
    check_bytes(b"\x7fELF\x00\x00", "s.csv", "isn't text");
    check_bytes(b"%PDF-1.7\n", "s.csv", "a PDF");
    check_bytes(
        b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1",
        "s.csv",
        "old or a protected workbook",
    );
    check_bytes(
        b"PK\x03\x04 and nothing else",
        "s.csv",
        "the workbook can't be read",
    );
    check_bytes("j\u{0}o".as_bytes(), "s.csv", "isn't text");
    check_problem(
        &[("b.toml", "")],
        "b.toml, row 1",
        "missing field `name`",
        "`name`",
    );
}

#[test]
fn files_that_are_too_large() {
    check_bytes(&vec![b'x'; 50 << 20], "s.csv", "larger than 32 MB");
    check_bytes(&vec![b'x'; 4 << 20], "s.csv, cell A1", "longer than");
    check_bytes(&vec![b','; 4 << 20], "s.csv, row 1", "more than 1000");
    let rows = format!("joint\n{}", "J\n".repeat(200_001));
    check_bytes(
        rows.as_bytes(),
        "s.csv, row 200001",
        "more than 200000 rows",
    );
    let error = import("b.toml", &vec![b'x'; 50 << 20]).unwrap_err();
    assert!(error.to_string().contains("larger than 256 kB"), "{error}");
}

#[test]
fn a_file_of_nothing_but_slips_is_soon_done() {
    let headings: Vec<String> = (0..900).map(|n| format!("packing.densty{n}")).collect();
    let headings = format!("joint,mark,{}\n", headings.join(","));
    let begun = Instant::now();
    assert_eq!(
        import("s.csv", headings.as_bytes())
            .unwrap_err()
            .problems
            .len(),
        900
    );
    let rows = |row: fn(u32) -> String| (0..20_000).map(row).collect::<Vec<_>>().join("\n");
    let schedule = rows(|n| format!("J{n},M{n},{n}"));
    let schedule = format!("joint,mark,joint.width\n{schedule}\n");
    let marks = format!("mark\n{}\n", rows(|n| format!("N{n}")));
    let files = [
        File {
            name: "s.csv",
            bytes: schedule.as_bytes(),
        },
        File {
            name: "m.csv",
            bytes: marks.as_bytes(),
        },
    ];
    let error = site::import::import(&files).unwrap_err();
    assert_eq!((error.problems.len(), error.left_out), (2000, 38_000));
    assert!(error.to_string().ends_with("and 38000 more"));
    assert!(
        begun.elapsed() < Duration::from_mins(1),
        "{:?}",
        begun.elapsed()
    );
}

proptest! {
    #[test]
    fn no_bytes_make_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let _ = import("s.csv", &bytes);
        let _ = import("b.toml", &bytes);
    }

    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,200}") {
        let _ = import("s.csv", text.as_bytes());
        let _ = import("b.toml", text.as_bytes());
    }

    #[test]
    fn no_cell_makes_it_panic(
        property in prop::sample::select(vec![
            "joint.width", "packing.density", "board.layers", "stud.gauge", "floor.slope", "packing.flush",
            "packing.product", "deck.direction", "coating.application_temperature", "length", "mark", "storey",
        ]),
        value in "[-0-9/.,; ½\\[\\]()a-z%°:|\"#\u{2212}é]{0,30}",
        source in "(measured: |drawing |readings |witnessed|stated )?[-0-9/.,; ½a-z%:\"]{0,24}",
    ) {
        let quoted = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
        let table = format!("joint,{property}\n#source,{}\nJ-1,{}\n", quoted(&source), quoted(&value));
        let _ = import("s.csv", table.as_bytes());
        let bracketed = format!("joint,{property}\nJ-1,{}\n", quoted(&format!("{value} [{source}]")));
        let _ = import("s.csv", bracketed.as_bytes());
    }
}

/// However deep a building's file nests, it is refused with its place; on a thread with no more stack than any other has.
#[test]
fn a_building_nested_without_end_is_refused() {
    let deep = 80_000;
    let hostile = [
        format!("name = {}", "[".repeat(deep)),
        format!("name = {}1{}", "[".repeat(deep), "]".repeat(deep)),
        format!("name = {}", "{a=".repeat(deep)),
        format!("{}name = 1", "a.".repeat(deep)),
        format!("[{}name]", "a.".repeat(deep)),
        format!("[[{}name]]", "a.".repeat(deep)),
        format!("name = {{{}b = 1}}", "a.".repeat(deep)),
    ];
    for text in hostile {
        let start: String = text.chars().take(20).collect();
        let told = std::thread::Builder::new()
            .stack_size(2 << 20)
            .spawn(move || problems(&[("building.toml", &text)]))
            .unwrap()
            .join();
        let told = told.unwrap_or_else(|_| panic!("{start}"));
        assert!(!told.is_empty(), "{start}");
        assert!(
            told[0].to_string().starts_with("building.toml"),
            "{}",
            told[0]
        );
    }
}
