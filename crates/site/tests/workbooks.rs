//! Workbooks: the same data give the same project as from CSV.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a failed expectation is the point of a test"
)]

mod common;

use std::io::{Cursor, Read, Write};

use common::{imported, known};
use proptest::prelude::*;
use rust_xlsxwriter::{ExcelDateTime, Format, Formula, Workbook};
use site::{Fact, File, Import, ImportError, Project};

const MARKS: &str = "\
mark,title,packing.density,packing.product,stud.gauge
#source,,submittal 07 84 43-03,submittal 07 84 43-03,drawing A-610
HW1,Head of wall,4 pcf,Brandolf Wool | Brandmat 4,20
";

const JOINTS: &str = "\
joint,mark,grid,length,joint.width,packing.compression,board.layers,packing.flush
#source,,,drawing A-801,\"measured: tape, 1/16 in.\",witnessed,,witnessed
J-1,HW1,C/2-4,27 ft 6 in.,\"7/8 in. [readings 3/4 in., 7/8 in.; 2026-03-14]\",33 %,2,yes
J-2,HW1,,,2½ in.,12.5 %,1,no

J-3,HW1,,,?,-,,
";

const JUDGMENTS: &str = "\
joint_or_mark,item,words,decision,by,when,basis
J-1,3,Sound and dry.,accepted,R. Example,2026-03-14,seen
";

/// A workbook with a sheet for each CSV table, its cells as a person would have typed them: numbers as numbers,
/// percentages as percentages, dates as dates, yes and no as truth values.
fn workbook(tables: &[(&str, &str)]) -> Vec<u8> {
    let mut workbook = Workbook::new();
    let percent = Format::new().set_num_format("0.0%");
    let date = Format::new().set_num_format("yyyy-mm-dd");
    for (name, table) in tables {
        let sheet = workbook.add_worksheet();
        sheet.set_name(*name).unwrap();
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .from_reader(table.as_bytes());
        let lines = table
            .lines()
            .enumerate()
            .filter(|(_, line)| !line.is_empty());
        for (record, (row, _)) in reader.records().zip(lines) {
            let record = record.unwrap();
            let row = u32::try_from(row).unwrap();
            for (column, text) in record.iter().enumerate() {
                let column = u16::try_from(column).unwrap();
                let percentage = text
                    .strip_suffix(" %")
                    .and_then(|number| number.parse::<f64>().ok());
                match (
                    text,
                    text.parse::<f64>(),
                    percentage,
                    ExcelDateTime::parse_from_str(text),
                ) {
                    ("", ..) => continue,
                    ("yes" | "no", ..) => sheet.write_boolean(row, column, text == "yes"),
                    (_, Ok(number), ..) => sheet.write_number(row, column, number),
                    (_, _, Some(share), _) => {
                        sheet.write_with_format(row, column, share / 100.0, &percent)
                    }
                    (_, _, _, Ok(day)) if text.len() == 10 => {
                        sheet.write_with_format(row, column, &day, &date)
                    }
                    _ => sheet.write_string(row, column, text),
                }
                .unwrap();
            }
        }
    }
    workbook.save_to_buffer().unwrap()
}

fn import(bytes: &[u8]) -> Result<Import, ImportError> {
    site::import::import(&[File {
        name: "project.xlsx",
        bytes,
    }])
}

/// A project without the cells its facts were read from.
fn without_cells(mut project: Project) -> Project {
    let strip = |facts: &mut std::collections::BTreeMap<String, Fact>| {
        for fact in facts.values_mut() {
            fact.cell = None;
        }
    };
    project
        .barriers
        .iter_mut()
        .for_each(|barrier| strip(&mut barrier.facts));
    project
        .marks
        .iter_mut()
        .for_each(|mark| strip(&mut mark.facts));
    project
        .joints
        .iter_mut()
        .for_each(|joint| strip(&mut joint.facts));
    project
}

const TABLES: &[(&str, &str)] = &[
    ("Marks", MARKS),
    ("Schedule", JOINTS),
    ("Judgments", JUDGMENTS),
];

#[test]
fn a_workbook_gives_the_same_project_as_csv() {
    let from_workbook = import(&workbook(TABLES)).unwrap_or_else(|error| panic!("{error}"));
    let from_csv = imported(TABLES);
    assert_eq!(
        known(&from_csv.project, "J-2", "packing.compression"),
        "12.5 % (witnessed)"
    );
    let cell = from_workbook.project.joints[2]
        .facts
        .values()
        .next()
        .map(|fact| &fact.cell);
    assert_eq!(cell, None);
    let cell = from_workbook.project.joints[1]
        .facts
        .get("joint.width")
        .and_then(|fact| fact.cell.clone());
    assert_eq!(
        cell.unwrap().to_string(),
        "project.xlsx, sheet Schedule, cell E4"
    );
    assert_eq!(
        without_cells(from_workbook.project),
        without_cells(from_csv.project)
    );
}

#[test]
fn a_workbook_and_csv_number_rows_alike() {
    let wrong = [("Schedule", "joint,joint.width\n\nJ-1,2.5\n")];
    let place = |error: ImportError| {
        (
            error.problems[0].cell.row,
            error.problems[0].cell.column.clone(),
        )
    };
    let from_workbook = place(import(&workbook(&wrong)).unwrap_err());
    let from_csv = place(common::import(&wrong).unwrap_err());
    assert_eq!(from_workbook, (3, "B".to_owned()));
    assert_eq!(from_csv, from_workbook);
}

#[track_caller]
fn check_problem(bytes: &[u8], place: &str, part: &str) {
    let error = import(bytes).unwrap_err();
    let [problem] = &error.problems[..] else {
        panic!("{error}")
    };
    assert_eq!(problem.cell.to_string(), place, "{problem}");
    assert!(problem.to_string().contains(part), "{problem}");
}

#[test]
fn cells_that_a_spreadsheet_made_something_else_of() {
    let schedule = |write: fn(&mut rust_xlsxwriter::Worksheet)| {
        let mut workbook = Workbook::new();
        let sheet = workbook.add_worksheet();
        for (column, heading) in [(0, "joint"), (1, "joint.width"), (2, "board.layers")] {
            sheet.write_string(0, column, heading).unwrap();
        }
        sheet.write_string(1, 0, "J-1").unwrap();
        write(sheet);
        workbook.save_to_buffer().unwrap()
    };
    let place = "project.xlsx, sheet Sheet1, cell B2";
    // 3/4 typed into a spreadsheet becomes the fourth of March, or the third of April.
    let date = schedule(|sheet| {
        let format = Format::new().set_num_format("d\\-mmm");
        let day = ExcelDateTime::from_ymd(2026, 4, 3).unwrap();
        sheet.write_with_format(1, 1, &day, &format).unwrap();
    });
    check_problem(&date, place, "`2026-04-03` is a date");
    let bare = schedule(|sheet| {
        sheet.write_number(1, 1, 2.5).unwrap();
    });
    check_problem(&bare, place, "`2.5` has no unit");
    // What a format shows after the number is how it looks.
    let shown = schedule(|sheet| {
        let format = Format::new().set_num_format("0.0\" in.\"");
        sheet.write_with_format(1, 1, 2.5, &format).unwrap();
    });
    check_problem(&shown, place, "`2.5` has no unit");
    let percent = schedule(|sheet| {
        let format = Format::new().set_num_format("0%");
        sheet.write_with_format(1, 1, 0.5, &format).unwrap();
    });
    check_problem(&percent, place, "`50 %` is a percentage");
    let failed = schedule(|sheet| {
        sheet
            .write_formula(1, 1, Formula::new("=NA()").set_result("#N/A"))
            .unwrap();
    });
    check_problem(&failed, place, "formula's error");
    let truth = schedule(|sheet| {
        sheet.write_boolean(1, 1, true).unwrap();
    });
    check_problem(&truth, place, "`yes` has no number");
    let merged = schedule(|sheet| {
        let format = Format::new();
        sheet.merge_range(1, 1, 3, 1, "1 in.", &format).unwrap();
        sheet.write_string(2, 0, "J-2").unwrap();
        sheet.write_string(3, 0, "J-3").unwrap();
    });
    check_problem(&merged, place, "the cells B2:B4 are merged");
    let stray = schedule(|sheet| {
        sheet.write_string(1, 5, "x").unwrap();
    });
    check_problem(
        &stray,
        "project.xlsx, sheet Sheet1, row 2",
        "6 cells where the headings have 3",
    );
}

#[test]
fn formulas_give_their_last_result() {
    let mut workbook = Workbook::new();
    let sheet = workbook.add_worksheet();
    for (column, heading) in [(0, "joint"), (1, "joint.width"), (2, "packing.compression")] {
        sheet.write_string(0, column, heading).unwrap();
    }
    sheet.write_string(1, 0, "J-1").unwrap();
    let width = Formula::new("=\"3/4\"&\" in.\"").set_result("3/4 in.");
    sheet.write_formula(1, 1, width).unwrap();
    let percent = Format::new().set_num_format("0%");
    let share = Formula::new("=(12-7)/12").set_result("0.41666666666666669");
    sheet
        .write_formula_with_format(1, 2, share, &percent)
        .unwrap();
    let project = import(&workbook.save_to_buffer().unwrap())
        .unwrap_or_else(|error| panic!("{error}"))
        .project;
    assert_eq!(
        known(&project, "J-1", "joint.width"),
        "3/4 in. (no source stated)"
    );
    let compression = project.joints[0].facts["packing.compression"].value.clone();
    let site::Value::Quantity(compression) = compression else {
        panic!("{compression:?}")
    };
    assert_eq!(compression.number.to_decimal(10), "41.6666666667");
}

#[test]
fn sheets_that_are_no_tables() {
    let notes = ("Notes", "to do\nask the foreman\n");
    let bytes = workbook(&[TABLES[0], TABLES[1], notes]);
    let notices: Vec<_> = import(&bytes)
        .unwrap()
        .notices
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(
        notices,
        [
            "project.xlsx, sheet Notes, row 1: the sheet isn't a table of the project and wasn't read"
        ]
    );
    let slip = ("Schedule", "jiont,mark x\nJ-1,HW1\n");
    check_problem(
        &workbook(&[slip]),
        "project.xlsx, sheet Schedule, row 1",
        "the nearest is `joint`",
    );
    let no_key = ("Schedule", "tag,joint.width\nJ-1,1 in.\n");
    check_problem(
        &workbook(&[no_key]),
        "project.xlsx, sheet Schedule, row 1",
        "none of the columns",
    );
}

/// A workbook with one of its parts changed.
fn changed(part: &str, change: impl Fn(String) -> String) -> Vec<u8> {
    let bytes = workbook(TABLES);
    let mut archive = zip::ZipArchive::new(Cursor::new(bytes)).unwrap();
    let mut writer = zip::ZipWriter::new(Cursor::new(Vec::new()));
    for index in 0..archive.len() {
        let mut file = archive.by_index(index).unwrap();
        let mut text = String::new();
        file.read_to_string(&mut text).unwrap();
        let text = if file.name() == part {
            change(text)
        } else {
            text
        };
        writer
            .start_file(file.name(), zip::write::SimpleFileOptions::default())
            .unwrap();
        writer.write_all(text.as_bytes()).unwrap();
    }
    writer.finish().unwrap().into_inner()
}

#[test]
fn damaged_workbooks() {
    let strings = changed("xl/sharedStrings.xml", |_| "<sst/>".to_owned());
    check_problem(&strings, "project.xlsx, sheet Marks", "no shared text 0");
    let cut = changed("xl/worksheets/sheet2.xml", |text| {
        text.chars().take(700).collect()
    });
    check_problem(
        &cut,
        "project.xlsx, sheet Schedule",
        "the workbook can't be read",
    );
    let no_book = changed("_rels/.rels", |_| "<Relationships/>".to_owned());
    check_problem(&no_book, "project.xlsx", "no worksheets that can be read");
    let entity = changed("xl/sharedStrings.xml", |_| {
        "<sst><si><t>&x;</t></si></sst>".to_owned()
    });
    check_problem(&entity, "project.xlsx", "the workbook can't be read");
    let bomb = changed("xl/sharedStrings.xml", |_| {
        format!("<sst><si><t>{}", " ".repeat(257 << 20))
    });
    assert!(bomb.len() < 1 << 20);
    check_problem(
        &bomb,
        "project.xlsx",
        "a text of more than 1 MB, which is no cell",
    );
}

#[test]
fn empty_shared_texts_keep_their_place() {
    let shifted = changed("xl/sharedStrings.xml", |text| {
        text.replacen("<si><t>HW1</t></si>", "<si/>", 1)
    });
    let error = import(&shifted).unwrap_err();
    assert!(
        error
            .problems
            .iter()
            .all(|problem| problem.message.contains("no `mark`")),
        "{error}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]
    #[test]
    fn no_damage_makes_it_panic(changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..8)) {
        let mut bytes = workbook(&TABLES[..1]);
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        let _ = import(&bytes);
    }

    #[test]
    fn no_damaged_sheet_makes_it_panic(at in any::<prop::sample::Index>(), text in "[<>/a-zA-Z0-9\"= ]{0,12}") {
        let bytes = changed("xl/worksheets/sheet2.xml", |xml| {
            let at = (0..=at.index(xml.len())).rev().find(|at| xml.is_char_boundary(*at)).unwrap();
            format!("{}{text}{}", &xml[..at], &xml[at..])
        });
        let _ = import(&bytes);
    }
}
