//! From comma-separated text to a sheet.

use std::collections::BTreeMap;

use super::limits::{MOST_COLUMNS, MOST_IN_CELL, MOST_ROWS};
use super::problem::{Findings, Wrong, quoted};
use super::room::Room;
use super::sheet::{Row, Sheet, clean};

/// A line that is added to every file. A quote that is left open swallows it, and so shows.
const LAST_LINE: &str = "\n#end of file\n";

/// Reads separated text: by commas, or by the semicolons or tabs that spreadsheets in some countries write.
/// Too large a table is a problem, and gives no sheet.
pub(crate) fn sheet(
    file: &str,
    text: &str,
    room: &mut Room,
    findings: &mut Findings,
) -> Option<Sheet> {
    let mut sheet = Sheet {
        file: file.to_owned(),
        name: None,
        rows: Vec::new(),
        merged: Vec::new(),
    };
    match rows(text, room) {
        Ok(rows) => sheet.rows = rows,
        Err(Unreadable { row, column, wrong }) => {
            let row = Row {
                number: row,
                cells: BTreeMap::new(),
                width: None,
            };
            let place = match column {
                Some(column) => sheet.cell(&row, column),
                None => sheet.row_place(&row),
            };
            findings.problem(place, "", wrong);
            return None;
        }
    }
    Some(sheet)
}

struct Unreadable {
    row: usize,
    column: Option<usize>,
    wrong: Wrong,
}

fn rows(text: &str, room: &mut Room) -> Result<Vec<Row>, Unreadable> {
    let text = text.replace("\r\n", "\n").replace('\r', "\n") + LAST_LINE;
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator(&text))
        .from_reader(text.as_bytes());
    let mut rows = Vec::new();
    let mut record = csv::StringRecord::new();
    // The lines inside quoted cells, which a spreadsheet doesn't count as rows.
    let mut lines_in_cells = 0;
    while reader
        .read_record(&mut record)
        .map_err(|error| not_separated(&error))?
    {
        let next = line(reader.position());
        let within: usize = record.iter().map(|cell| cell.matches('\n').count()).sum();
        let number = next.saturating_sub(1 + within + lines_in_cells);
        lines_in_cells += within;
        if record.iter().any(|cell| cell.ends_with(LAST_LINE)) {
            // No line end closes the row, so the next line's number is one short.
            let column = record.len().checked_sub(1);
            return Err(Unreadable {
                row: number + 1,
                column,
                wrong: quote_left_open(),
            });
        }
        if let Some((column, wrong)) = too_large(&record, rows.len()) {
            return Err(Unreadable {
                row: number,
                column,
                wrong,
            });
        }
        for cell in record.iter().filter(|cell| !cell.is_empty()) {
            room.keep(cell).map_err(|wrong| Unreadable {
                row: number,
                column: None,
                wrong,
            })?;
        }
        let row = row(number, &record);
        if !row.cells.is_empty() {
            rows.push(row);
        }
    }
    // The line that was added.
    rows.pop();
    Ok(rows)
}

fn line(position: &csv::Position) -> usize {
    usize::try_from(position.line()).unwrap_or(usize::MAX)
}

fn row(number: usize, record: &csv::StringRecord) -> Row {
    let cells = record
        .iter()
        .map(clean)
        .enumerate()
        .filter(|(_, text)| !text.is_empty());
    Row {
        number,
        cells: cells.collect(),
        width: Some(record.len()),
    }
}

/// What in a record is more than a table may have.
fn too_large(record: &csv::StringRecord, rows: usize) -> Option<(Option<usize>, Wrong)> {
    if rows >= MOST_ROWS {
        let message = format!("the table has more than {MOST_ROWS} rows");
        return Some((None, Wrong::new(message, "split it into several files")));
    }
    if record.len() > MOST_COLUMNS {
        let message = format!(
            "the row has {} cells, more than {MOST_COLUMNS}",
            record.len()
        );
        return Some((
            None,
            Wrong::new(
                message,
                "check that the file is a table with one row a line",
            ),
        ));
    }
    let column = record.iter().position(|cell| cell.len() > MOST_IN_CELL)?;
    let start: String = record.get(column)?.chars().take(40).collect();
    let message = format!(
        "the cell that begins with {} is longer than {MOST_IN_CELL} bytes",
        quoted(&start)
    );
    Some((
        Some(column),
        Wrong::new(message, "check that no quote is left open before it"),
    ))
}

fn quote_left_open() -> Wrong {
    Wrong::new(
        "a quote that opens here is never closed",
        "close it; inside a quoted cell write an inch mark twice, as `\"2-1/2\"\"\"`, or write `in.`",
    )
}

fn not_separated(error: &csv::Error) -> Unreadable {
    let row = error.position().map_or(0, line);
    let wrong = Wrong::new(
        format!("the row can't be read: {error}"),
        "save the table as CSV in UTF-8",
    );
    Unreadable {
        row,
        column: None,
        wrong,
    }
}

/// The separator: whichever of comma, semicolon and tab the first line that isn't blank has most of.
fn separator(text: &str) -> u8 {
    let heading = text
        .lines()
        .find(|line| !line.trim().is_empty())
        .unwrap_or_default();
    let unquoted: String = heading.split('"').step_by(2).collect();
    let count = |separator: u8| unquoted.bytes().filter(|byte| *byte == separator).count();
    // Of several with the same count the last is the greatest; a comma comes last.
    [b'\t', b';', b',']
        .into_iter()
        .max_by_key(|separator| count(*separator))
        .unwrap_or(b',')
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::import::problem::Problem;

    #[track_caller]
    fn check(text: &str, expected: &[(usize, &[&str])]) {
        let sheet = sheet(
            "a.csv",
            text,
            &mut Room::default(),
            &mut Findings::default(),
        )
        .unwrap();
        let found: Vec<(usize, Vec<&str>)> = sheet
            .rows
            .iter()
            .map(|row| {
                let width = row.width.unwrap();
                (
                    row.number,
                    (0..width).map(|at| row.text(at).unwrap_or("")).collect(),
                )
            })
            .collect();
        let expected: Vec<(usize, Vec<&str>)> = expected
            .iter()
            .map(|(number, cells)| (*number, cells.to_vec()))
            .collect();
        assert_eq!(found, expected, "{text:?}");
    }

    #[test]
    fn rows_are_numbered_as_a_spreadsheet_does() {
        check("a,b\n1,2\n", &[(1, &["a", "b"]), (2, &["1", "2"])]);
        check("\n\na,b\r\n\r\n1,2", &[(3, &["a", "b"]), (5, &["1", "2"])]);
        check(
            "a,b\n\"1\nx\",2\n3,4\n",
            &[(1, &["a", "b"]), (2, &["1 x", "2"]), (3, &["3", "4"])],
        );
        check("a,b\n,,\n3,4\n", &[(1, &["a", "b"]), (3, &["3", "4"])]);
        check("", &[]);
        check("\n , \n", &[]);
    }

    #[test]
    fn separators_and_inch_marks() {
        check(
            "a;b\n2,5 mm;3\n",
            &[(1, &["a", "b"]), (2, &["2,5 mm", "3"])],
        );
        check("a\tb\n1\t2\n", &[(1, &["a", "b"]), (2, &["1", "2"])]);
        check(
            "a,b\n2-1/2\",\"3 \"\"\"\n",
            &[(1, &["a", "b"]), (2, &["2-1/2\"", "3 \""])],
        );
    }

    #[track_caller]
    fn check_unreadable(text: &str, place: &str, part: &str) {
        let mut findings = Findings::default();
        assert_eq!(
            sheet("a.csv", text, &mut Room::default(), &mut findings),
            None
        );
        let problems = findings.finish().unwrap_err().problems;
        let [Problem { cell, message, .. }] = &problems[..] else {
            panic!("{problems:?}")
        };
        assert_eq!(cell.to_string(), place);
        assert!(message.contains(part), "{message}");
    }

    #[test]
    fn what_is_no_table() {
        check_unreadable("a,b\n1,\"2\n3,4\n", "a.csv, cell B2", "never closed");
        check_unreadable("a,b\n1,2\n3,\"4", "a.csv, cell B3", "never closed");
        check_unreadable(
            "a,b\n1,\"x\n\n5,6\n\"7\n9,\"",
            "a.csv, cell B3",
            "never closed",
        );
        check_unreadable(&",".repeat(2000), "a.csv, row 1", "2001 cells");
        check_unreadable(&"x".repeat(40_000), "a.csv, cell A1", "longer than");
        check_unreadable(
            &format!("a,b\n\n1,{}\n", "x".repeat(40_000)),
            "a.csv, cell B3",
            "longer than",
        );
    }
}
