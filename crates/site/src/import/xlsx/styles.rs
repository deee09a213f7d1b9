//! Which cells are shown as percentages and which as dates.

use std::collections::BTreeMap;

use super::package::Package;
use super::workbook::Workbook;
use super::xml::Piece;
use crate::import::problem::Wrong;
use crate::import::room::Room;

/// What a number's format makes of it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) enum Format {
    /// A number.
    #[default]
    Number,
    /// A percentage: 0.33 is 33 %.
    Percent,
    /// A date or a time.
    Date,
}

/// The formats of a workbook's cells, by the number that a cell gives.
pub(super) fn read(
    package: &mut Package<'_>,
    workbook: &Workbook,
    room: &mut Room,
) -> Result<Vec<Format>, Wrong> {
    let mut pieces = match &workbook.styles {
        Some(path) => package.part(path)?,
        None => return Ok(Vec::new()),
    };
    let mut codes = BTreeMap::new();
    let mut formats = Vec::new();
    let mut in_cells = false;
    while let Some(piece) = pieces.next()? {
        match piece {
            Piece::Start(element) if element.name == "numFmt" => {
                let code = element.attribute("formatCode").unwrap_or_default();
                room.keep("")?;
                codes.insert(element.number("numFmtId", 0)?, by_code(code));
            }
            Piece::Start(element) if element.name == "cellXfs" => in_cells = true,
            Piece::End(name) if name == "cellXfs" => in_cells = false,
            Piece::Start(element) if element.name == "xf" && in_cells => {
                let id = element.number("numFmtId", 0)?;
                room.keep("")?;
                formats.push(codes.get(&id).copied().unwrap_or_else(|| built_in(id)));
            }
            _ => {}
        }
    }
    Ok(formats)
}

/// The formats that every workbook has (ECMA-376 part 1, 18.8.30).
fn built_in(id: usize) -> Format {
    match id {
        9 | 10 => Format::Percent,
        14..=22 | 27..=36 | 45..=47 | 50..=58 => Format::Date,
        _ => Format::Number,
    }
}

/// What a format code makes of a positive number: a percent sign or a letter of dates and times, outside quotes,
/// escapes and brackets.
fn by_code(code: &str) -> Format {
    let mut chars = code.chars();
    while let Some(c) = chars.next() {
        match c {
            '"' => drop(chars.by_ref().find(|c| *c == '"')),
            '\\' | '_' | '*' => drop(chars.next()),
            '[' => {
                let inside: String = chars.by_ref().take_while(|c| *c != ']').collect();
                let elapsed = !inside.is_empty() && inside.chars().all(|c| "hmsHMS".contains(c));
                if elapsed {
                    return Format::Date;
                }
            }
            // The next section, or the rest of `General`.
            ';' | 'G' | 'g' => break,
            '%' => return Format::Percent,
            'd' | 'm' | 'y' | 'h' | 's' | 'D' | 'M' | 'Y' | 'H' | 'S' => return Format::Date,
            _ => {}
        }
    }
    Format::Number
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn format_codes_as_spreadsheets_write_them() {
        for (code, expected) in [
            ("General", Format::Number),
            ("0.00", Format::Number),
            ("0%", Format::Percent),
            ("0.0\\ %", Format::Percent),
            ("# ?/?", Format::Number),
            ("0.00\" in. dia\"", Format::Number),
            ("0.00\\m\\m", Format::Number),
            ("[Red]0.0", Format::Number),
            ("[$-409]d\\-mmm", Format::Date),
            ("yyyy-mm-dd", Format::Date),
            ("[h]:mm:ss", Format::Date),
            ("#,##0;[Red]-0%", Format::Number),
        ] {
            assert_eq!(by_code(code), expected, "{code}");
        }
    }
}
