//! The cells of one worksheet.

use std::collections::BTreeMap;
use std::io::BufRead;

use jiff::Span;
use jiff::civil::Date;

use super::decimal::written;
use super::package::damaged;
use super::strings::{add, rich_text};
use super::styles::Format;
use super::xml::{Element, Piece, Pieces};
use crate::import::limits::{MOST_COLUMNS, MOST_IN_CELL, MOST_ROWS};
use crate::import::problem::Wrong;
use crate::import::room::Room;
use crate::import::sheet::{Merged, clean, letters};

/// The cells that aren't empty: by row from 1, then by column from 0.
type Cells = BTreeMap<usize, BTreeMap<usize, String>>;

/// A workbook's own limit of rows (ECMA-376 leaves it open; this is what spreadsheets have).
const LAST_ROW: usize = 1 << 20;

/// What a workbook's sheets share.
#[derive(Debug, Default)]
pub(super) struct Book {
    /// The texts that cells name by number.
    pub strings: Vec<String>,
    /// The formats that cells name by number.
    pub formats: Vec<Format>,
    /// Whether dates count from 1904.
    pub from_1904: bool,
}

/// What stands in a worksheet.
#[derive(Debug, Default)]
pub(super) struct Worksheet {
    pub cells: Cells,
    pub merged: Vec<Merged>,
}

/// Reads a worksheet.
pub(super) fn read(
    mut pieces: Pieces<'_, impl BufRead>,
    book: &Book,
    room: &mut Room,
) -> Result<Worksheet, Wrong> {
    let mut sheet = Worksheet::default();
    let (mut row, mut column) = (0_usize, 0_usize);
    while let Some(piece) = pieces.next()? {
        match piece {
            Piece::Start(element) if element.name == "row" => {
                row = element.number("r", row.saturating_add(1))?;
                column = 0;
            }
            Piece::Start(element) if element.name == "c" => {
                if let Some(reference) = element.attribute("r") {
                    (row, column) = place(reference)?;
                }
                if row == 0 || row > LAST_ROW {
                    return Err(damaged(&format_args!("it has a cell in row {row}")));
                }
                let text = clean(&text(&element, &mut pieces, book)?);
                put(&mut sheet.cells, row, column, text, room)?;
                column += 1;
            }
            Piece::Start(element) if element.name == "mergeCell" => {
                let range = element.attribute("ref").unwrap_or_default();
                if let Some((first, last)) =
                    range.split_once(':').filter(|(first, last)| first != last)
                {
                    place(last)?;
                    let (row, column) = place(first)?;
                    room.keep(range)?;
                    sheet.merged.push(Merged {
                        row,
                        column,
                        range: range.to_owned(),
                    });
                }
            }
            _ => {}
        }
    }
    Ok(sheet)
}

fn put(
    cells: &mut Cells,
    row: usize,
    column: usize,
    text: String,
    room: &mut Room,
) -> Result<(), Wrong> {
    if text.is_empty() {
        return Ok(());
    }
    let reference = || format!("{}{row}", letters(column));
    if column >= MOST_COLUMNS {
        let message = format!(
            "cell {} is beyond the {MOST_COLUMNS} columns a table may have",
            reference()
        );
        return Err(Wrong::new(message, "delete what stands there"));
    }
    if text.len() > MOST_IN_CELL {
        let message = format!("cell {} is longer than {MOST_IN_CELL} bytes", reference());
        return Err(Wrong::new(message, "shorten it"));
    }
    room.keep(&text)?;
    if cells.entry(row).or_default().insert(column, text).is_some() {
        return Err(damaged(&format_args!("it has cell {} twice", reference())));
    }
    if cells.len() > MOST_ROWS {
        let message = format!("the sheet has more than {MOST_ROWS} rows");
        return Err(Wrong::new(message, "split it into several"));
    }
    Ok(())
}

/// The row from 1 and column from 0 of a reference such as `B3`.
fn place(reference: &str) -> Result<(usize, usize), Wrong> {
    let wrong = || damaged(&format_args!("`{reference}` isn't a cell"));
    let digits = reference
        .find(|c: char| c.is_ascii_digit())
        .ok_or_else(wrong)?;
    let (column, row) = reference.split_at_checked(digits).ok_or_else(wrong)?;
    let row = row.parse().map_err(|_| wrong())?;
    let mut number = 0_usize;
    for letter in column.bytes() {
        if !letter.is_ascii_uppercase() || number > MOST_COLUMNS * 26 {
            return Err(wrong());
        }
        number = number * 26 + usize::from(letter - b'A') + 1;
    }
    Ok((row, number.checked_sub(1).ok_or_else(wrong)?))
}

/// The text of a cell that begins here, as a person would have typed it.
fn text(
    cell: &Element,
    pieces: &mut Pieces<'_, impl BufRead>,
    book: &Book,
) -> Result<String, Wrong> {
    let (inline, stored) = contents(pieces)?;
    if let Some(inline) = inline {
        return Ok(inline);
    }
    if stored.is_empty() {
        return Ok(stored);
    }
    match cell.attribute("t").unwrap_or("n") {
        "n" => {
            let format = book
                .formats
                .get(cell.number("s", 0)?)
                .copied()
                .unwrap_or_default();
            Ok(number(&stored, format, book.from_1904))
        }
        "s" => {
            let shared = stored
                .parse()
                .ok()
                .and_then(|at: usize| book.strings.get(at));
            shared
                .cloned()
                .ok_or_else(|| damaged(&format_args!("it has no shared text {stored}")))
        }
        "b" => Ok(if stored == "0" { "no" } else { "yes" }.to_owned()),
        // ISO 8601, of which a date at midnight is a date.
        "d" => Ok(stored
            .strip_suffix("T00:00:00")
            .unwrap_or(&stored)
            .to_owned()),
        "str" | "e" => Ok(stored),
        other => Err(damaged(&format_args!(
            "it has a cell of the unknown type `{other}`"
        ))),
    }
}

/// What a cell holds up to its end: inline text, or a stored value.
fn contents(pieces: &mut Pieces<'_, impl BufRead>) -> Result<(Option<String>, String), Wrong> {
    let (mut inline, mut stored, mut in_value) = (None, String::new(), false);
    while let Some(piece) = pieces.next()? {
        match piece {
            Piece::Start(element) if element.name == "is" => {
                inline = Some(rich_text(pieces, "is")?);
            }
            Piece::Start(element) if element.name == "v" => in_value = true,
            Piece::End(name) if name == "v" => in_value = false,
            Piece::End(name) if name == "c" => break,
            Piece::Text(text) if in_value => add(&mut stored, &text),
            _ => {}
        }
    }
    Ok((inline, stored))
}

/// A stored number in its format; as it stands when it can't be written out, for the cell's reader to judge.
fn number(stored: &str, format: Format, from_1904: bool) -> String {
    let text = match format {
        Format::Number => written(stored, 0),
        Format::Percent => written(stored, 2).map(|number| format!("{number} %")),
        Format::Date => written(stored, 0).map(|days| date(&days, from_1904).unwrap_or(days)),
    };
    text.unwrap_or_else(|| stored.to_owned())
}

/// A whole number of days as a date; none for a time, which no column takes.
fn date(days: &str, from_1904: bool) -> Option<String> {
    let days: i64 = days.parse().ok()?;
    let day_zero = match (from_1904, days) {
        (true, _) => jiff::civil::date(1904, 1, 1),
        // Day 60 is 29 February 1900, a day that spreadsheets count and the calendar doesn't have.
        (false, ..60) => jiff::civil::date(1899, 12, 31),
        (false, 60) => return None,
        (false, _) => jiff::civil::date(1899, 12, 30),
    };
    let span: Span = Span::new().try_days(days).ok()?;
    day_zero
        .checked_add(span)
        .ok()
        .map(|date: Date| date.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read_all(xml: &str, book: &Book) -> Result<Worksheet, Wrong> {
        let mut left = u64::MAX;
        let pieces = Pieces::of(xml.as_bytes(), &mut left);
        read(pieces, book, &mut Room::default())
    }

    fn sheet(rows: &str) -> Result<Worksheet, Wrong> {
        let xml = format!("<worksheet><sheetData>{rows}</sheetData></worksheet>");
        let book = Book {
            strings: vec!["HW1".to_owned(), String::new(), "4 pcf".to_owned()],
            formats: vec![Format::Number, Format::Percent, Format::Date],
            from_1904: false,
        };
        read_all(&xml, &book)
    }

    #[track_caller]
    fn check(cell: &str, expected: &str) {
        let cells = sheet(&format!("<row r=\"2\">{cell}</row>")).unwrap();
        let found = cells
            .cells
            .get(&2)
            .and_then(|row| row.get(&1))
            .map_or("", String::as_str);
        assert_eq!(found, expected, "{cell}");
    }

    #[test]
    fn cells_read_as_a_person_would_have_typed_them() {
        check("<c r=\"B2\"><v>2.5</v></c>", "2.5");
        check("<c r=\"B2\" s=\"1\"><v>0.33</v></c>", "33 %");
        check("<c r=\"B2\" s=\"1\"><f>1/4</f><v>0.25</v></c>", "25 %");
        check("<c r=\"B2\" s=\"2\"><v>46095</v></c>", "2026-03-14");
        check("<c r=\"B2\" s=\"2\"><v>1</v></c>", "1900-01-01");
        check("<c r=\"B2\" s=\"2\"><v>0.75</v></c>", "0.75");
        check(
            "<c r=\"B2\" t=\"d\"><v>2026-03-14T00:00:00</v></c>",
            "2026-03-14",
        );
        check("<c r=\"B2\" t=\"s\"><v>2</v></c>", "4 pcf");
        check("<c r=\"B2\" t=\"s\"><v>1</v></c>", "");
        check("<c r=\"B2\" t=\"b\"><v>1</v></c>", "yes");
        check("<c r=\"B2\" t=\"e\"><v>#N/A</v></c>", "#N/A");
        check(
            "<c r=\"B2\" t=\"inlineStr\"><is><t>a</t><r><t> b</t></r></is></c>",
            "a b",
        );
        check("<c r=\"B2\" s=\"1\"/>", "");
        check("<c r=\"B2\" s=\"1\"><v>5e-30</v></c>", "5e-30");
        check("<c/><c><v>7</v></c>", "7");
    }

    #[track_caller]
    fn check_wrong(rows: &str, part: &str) {
        let wrong = sheet(rows).unwrap_err();
        assert!(wrong.message.contains(part), "{rows}: {wrong:?}");
    }

    #[test]
    fn damaged_sheets() {
        check_wrong(
            "<row r=\"2\"><c r=\"B2\" t=\"s\"><v>3</v></c></row>",
            "no shared text 3",
        );
        check_wrong(
            "<row r=\"2\"><c r=\"2B\"><v>3</v></c></row>",
            "isn't a cell",
        );
        check_wrong(
            "<row r=\"2\"><c r=\"ZZZZZZZZZZZZZZZZ2\"><v>3</v></c></row>",
            "isn't a cell",
        );
        check_wrong(
            "<row r=\"2\"><c r=\"B99999999999999999999\"><v>3</v></c></row>",
            "isn't a cell",
        );
        check_wrong("<row r=\"2\"><c r=\"B0\"><v>3</v></c></row>", "row 0");
        check_wrong("<row r=\"x\"/>", "not a number");
        check_wrong(
            "<row r=\"2\"><c r=\"BZZ2\"><v>3</v></c></row>",
            "beyond the 1000 columns",
        );
        check_wrong(
            "<row><c r=\"B2\"><v>3</v></c><c r=\"B2\"><v>4</v></c></row>",
            "B2 twice",
        );
        check_wrong("<row><c t=\"?\"><v>3</v></c></row>", "unknown type");
        check_wrong("<row><c><v>3", "ill-formed");
    }

    #[test]
    fn a_sheet_cut_short() {
        let wrong =
            read_all("<worksheet><sheetData><row><c><v>3</v>", &Book::default()).unwrap_err();
        assert!(wrong.message.contains("cut short"), "{wrong:?}");
    }

    #[test]
    fn dates_may_count_from_1904() {
        // ECMA-376 part 1, 18.17.4.1: in the 1904 system 1 January 1904 is day 0.
        assert_eq!(date("0", true).as_deref(), Some("1904-01-01"));
        assert_eq!(date("44633", true).as_deref(), Some("2026-03-14"));
        assert_eq!(date("60", false), None);
        assert_eq!(date("61", false).as_deref(), Some("1900-03-01"));
    }
}
