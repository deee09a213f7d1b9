//! From an XLSX workbook (ECMA-376) to sheets.
//!
//! A cell becomes the text that a person would have typed: a number is written out in decimals, a number shown as a
//! percentage with its `%`, a date as `2026-03-14`, a truth value as `yes` or `no`, a formula as its last result.
//! A number carries no unit whatever its format shows, since a format is how it looks, not what it is.
//!
//! The parts are read here rather than by a general spreadsheet reader because the number format decides whether 0.33
//! is 33 %, and because a damaged workbook must give an error, never a neighbour's text.

mod cells;
mod decimal;
mod package;
mod strings;
mod styles;
mod workbook;
mod xml;

use super::problem::{Findings, Wrong};
use super::room::Room;
use super::sheet::{Row, Sheet};
use crate::model::Cell;
use cells::Book;
use package::Package;

/// Reads every worksheet of a workbook. One that can't be read is a problem.
pub(crate) fn sheets(
    file: &str,
    bytes: &[u8],
    room: &mut Room,
    findings: &mut Findings,
) -> Vec<Sheet> {
    let mut sheets = Vec::new();
    let whole = Cell {
        file: file.to_owned(),
        sheet: None,
        row: 0,
        column: String::new(),
    };
    if let Err((sheet, wrong)) = read(file, bytes, room, &mut sheets) {
        findings.problem(Cell { sheet, ..whole }, "", wrong);
        return Vec::new();
    }
    sheets
}

/// Reads the worksheets; an error comes with the name of the sheet it is in.
fn read(
    file: &str,
    bytes: &[u8],
    room: &mut Room,
    sheets: &mut Vec<Sheet>,
) -> Result<(), (Option<String>, Wrong)> {
    let whole = |wrong| (None, wrong);
    let mut package = Package::open(bytes).map_err(whole)?;
    let workbook = workbook::read(&mut package, room).map_err(whole)?;
    let book = Book {
        strings: strings::read(&mut package, &workbook, room).map_err(whole)?,
        formats: styles::read(&mut package, &workbook, room).map_err(whole)?,
        from_1904: workbook.from_1904,
    };
    for (name, path) in workbook.sheets {
        let sheet = package
            .part(&path)
            .and_then(|pieces| cells::read(pieces, &book, room));
        let sheet = sheet.map_err(|wrong| (Some(name.clone()), wrong))?;
        let rows = sheet.cells.into_iter();
        sheets.push(Sheet {
            file: file.to_owned(),
            name: Some(name),
            rows: rows
                .map(|(number, cells)| Row {
                    number,
                    cells,
                    width: None,
                })
                .collect(),
            merged: sheet.merged,
        });
    }
    Ok(())
}
