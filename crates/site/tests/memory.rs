//! How much memory the import takes, told by an allocator that counts: little files that would become much are refused before they do, and
//! honest schedules are read.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a failed expectation is the point of a test"
)]

use std::fmt::Write as _;
use std::io::{Cursor, Write as _};

use peak_alloc::PeakAlloc;
use site::import::{File, import};
use zip::write::SimpleFileOptions;

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

/// What reading some files took at most beside the files themselves, in MB; and what came of it.
fn reading(files: &[(&str, &[u8])]) -> (f32, Result<usize, String>) {
    let files: Vec<File<'_>> = files
        .iter()
        .map(|(name, bytes)| File { name, bytes })
        .collect();
    let before = MEMORY.current_usage_as_mb();
    MEMORY.reset_peak_usage();
    let done = import(&files)
        .map(|import| import.project.joints.len())
        .map_err(|error| error.to_string());
    (MEMORY.peak_usage_as_mb() - before, done)
}

/// A workbook of parts that are made as they are written, so that the test itself needs little.
fn workbook(strings: &[(&str, usize)], sheet: &[(&str, usize)]) -> Vec<u8> {
    let types = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    let root = format!(
        "<Relationships><Relationship Id=\"a\" Type=\"{types}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
    );
    let parts = format!(
        "<Relationships><Relationship Id=\"rId1\" Type=\"{types}/worksheet\" Target=\"sheet.xml\"/>\
         <Relationship Id=\"rId2\" Type=\"{types}/sharedStrings\" Target=\"strings.xml\"/></Relationships>"
    );
    let book =
        "<workbook><sheets><sheet name=\"S\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>";
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    for (name, pieces) in [
        ("_rels/.rels", &[(root.as_str(), 1)][..]),
        ("xl/_rels/workbook.xml.rels", &[(parts.as_str(), 1)]),
        ("xl/workbook.xml", &[(book, 1)]),
        ("xl/strings.xml", strings),
        ("xl/sheet.xml", sheet),
    ] {
        zip.start_file(name, SimpleFileOptions::default()).unwrap();
        for (piece, times) in pieces {
            for _ in 0..*times {
                zip.write_all(piece.as_bytes()).unwrap();
            }
        }
    }
    zip.finish().unwrap().into_inner()
}

/// A schedule as people have it: at each of so many joints twelve columns that are read, and eight of the project's own.
fn schedule(joints: usize) -> Vec<u8> {
    const COLUMNS: [(&str, &str); 12] = [
        ("joint", "J-"),
        ("mark", "HW1"),
        ("storey", "Level 2"),
        ("grid", "C/2-4"),
        ("length", "27 ft 6 in."),
        ("joint.width", "7/8 in."),
        ("packing.product", "Ulmeregg Mineral Fibre | Ulmerpad 4"),
        ("packing.density", "4 pcf"),
        ("packing.compression", "33 %"),
        ("packing.flush", "yes"),
        ("board.layers", "2"),
        ("stud.gauge", "20"),
    ];
    let own: Vec<String> = (0..8).map(|at| format!("# own {at}")).collect();
    let cells = |row: usize| {
        let of_column = |(column, (heading, text)): (usize, &(&str, &str))| match (row, column) {
            (0, _) => (*heading).to_owned(),
            (_, 0) => format!("{text}{row:05}"),
            _ => (*text).to_owned(),
        };
        let read = COLUMNS.iter().enumerate().map(of_column);
        let apart = own.iter().map(|heading| {
            if row == 0 {
                heading.clone()
            } else {
                "as found".to_owned()
            }
        });
        let cells = read.chain(apart).fold(String::from("<row>"), |row, text| {
            row + "<c t=\"inlineStr\"><is><t>" + &text + "</t></is></c>"
        });
        cells + "</row>"
    };
    let rows: Vec<String> = (0..=joints).map(cells).collect();
    let mut sheet = vec![("<worksheet><sheetData>", 1)];
    sheet.extend(rows.iter().map(|row| (row.as_str(), 1)));
    sheet.push(("</sheetData></worksheet>", 1));
    workbook(&[("<sst/>", 1)], &sheet)
}

fn refused_within(what: &str, bytes: &[u8], most: f32, says: &str) {
    let (peak, done) = reading(&[("s.xlsx", bytes)]);
    println!("{what}: {} kB, {peak:.1} MB at most", bytes.len() >> 10);
    let refusal = done.unwrap_err();
    assert!(refusal.contains(says), "{what}: {refusal}");
    assert!(peak < most, "{what}: {peak} MB");
}

/// A zipped file of nothing but a directory: so many members in it, and so many that it claims to have.
fn directory(members: usize, claimed: u64) -> Vec<u8> {
    let mut entry = b"PK\x01\x02".to_vec();
    entry.resize(46, 0);
    // The name has one byte.
    entry[28] = 1;
    entry.push(b'a');
    let mut bytes = b"PK\x03\x04".to_vec();
    bytes.resize(1 << 20, 0);
    let begins = bytes.len() as u64;
    bytes.extend(entry.repeat(members));
    let ends = bytes.len() as u64;
    bytes.extend(b"PK\x06\x06");
    bytes.extend(44_u64.to_le_bytes());
    bytes.extend([0; 12]);
    for number in [claimed, claimed, ends - begins, begins] {
        bytes.extend(number.to_le_bytes());
    }
    bytes.extend(b"PK\x06\x07\0\0\0\0");
    bytes.extend(ends.to_le_bytes());
    bytes.extend([1, 0, 0, 0]);
    bytes.extend(b"PK\x05\x06\0\0\0\0");
    bytes.extend([0xff; 12]);
    bytes.extend([0, 0]);
    bytes
}

/// One test, as the allocator counts what all of the program takes.
#[test]
fn little_doesn_t_become_much() {
    let blanks = " ".repeat(1 << 16);
    let long = "x".repeat(32_000);
    let text = workbook(&[("<sst><si><t>", 1), (&blanks, 40)], &[]);
    refused_within("one text without end", &text, 8.0, "no cell");
    let many = workbook(&[("<sst>", 1), ("<si><t>x</t></si>", 1_400_000)], &[]);
    refused_within("texts without number", &many, 150.0, "MB of cells");
    let runs = format!("<r><t>{blanks}</t></r>");
    let runs = workbook(&[("<sst><si>", 1), (&runs, 5000)], &[]);
    refused_within("a text of runs", &runs, 8.0, "256 MB");
    let tag = workbook(&[("<sst a=\"", 1), (&blanks, 40)], &[]);
    refused_within("a tag without end", &tag, 8.0, "no cell");
    let shared = format!("<sst><si><t>{long}</t></si></sst>");
    let cells = [
        ("<worksheet><sheetData><row>", 1),
        ("<c t=\"s\"><v>0</v></c>", 900),
        ("</row><row>", 1),
    ];
    let rows: Vec<_> = cells.iter().copied().cycle().take(12).collect();
    let sheet = workbook(&[(&shared, 1)], &rows);
    refused_within("one text in every cell", &sheet, 150.0, "MB of cells");
    let empty = [("<worksheet><sheetData>", 1), ("<row/>", 1_000_000)];
    refused_within(
        "rows of nothing",
        &workbook(&[("<sst/>", 1)], &empty),
        8.0,
        "",
    );
    let many = directory(600_000, 600_000);
    refused_within("parts without number", &many, 2.0, "more than 10000 parts");
    let said = directory(1, 1_000_000);
    refused_within(
        "parts that aren't there",
        &said,
        2.0,
        "more than 10000 parts",
    );
    // As comma-separated text each byte is there; a table of nothing but short cells takes many times its size.
    let row = format!("{}\n", "x,".repeat(999));
    let table = row.repeat((8 << 20) / row.len());
    let (peak, done) = reading(&[("s.csv", table.as_bytes())]);
    println!(
        "short cells: {} MB, {peak:.1} MB at most",
        table.len() >> 20
    );
    assert!(done.unwrap_err().contains("MB of cells"));
    assert!(peak < 200.0, "{peak} MB");

    // What is known of joints takes more than its cells.
    let columns: String = (1..990).fold(String::new(), |all, at| {
        all + "," + &at.to_string() + ":board.layers"
    });
    let mut table = format!("joint,mark{columns}\n");
    for row in 0..1300 {
        write!(table, "J{row},M").unwrap();
        table.extend(std::iter::repeat_n(",2", 989));
        table.push('\n');
    }
    let (peak, done) = reading(&[("s.csv", table.as_bytes())]);
    println!("facts: {} kB, {peak:.1} MB at most", table.len() >> 10);
    assert!(done.unwrap_err().contains("1000000 properties"));
    assert!(peak < 150.0, "{peak} MB");

    // Honest ones are read, and don't take much either.
    let joints = 20_000;
    let honest = schedule(joints);
    let (peak, done) = reading(&[("s.xlsx", &honest)]);
    println!(
        "{joints} joints: {} kB, {peak:.1} MB at most",
        honest.len() >> 10
    );
    assert_eq!(done, Ok(joints));
    assert!(peak < 250.0, "{peak} MB");
}
