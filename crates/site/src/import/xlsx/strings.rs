//! The texts that a workbook's cells share.

use std::io::BufRead;

use super::package::Package;
use super::workbook::Workbook;
use super::xml::{Piece, Pieces};
use crate::import::limits::MOST_IN_CELL;
use crate::import::problem::Wrong;
use crate::import::room::Room;

/// The shared texts, by number.
pub(super) fn read(
    package: &mut Package<'_>,
    workbook: &Workbook,
    room: &mut Room,
) -> Result<Vec<String>, Wrong> {
    let mut pieces = match &workbook.strings {
        Some(path) => package.part(path)?,
        None => return Ok(Vec::new()),
    };
    let mut strings = Vec::new();
    while let Some(piece) = pieces.next()? {
        if matches!(&piece, Piece::Start(element) if element.name == "si") {
            let text = rich_text(&mut pieces, "si")?;
            room.keep(&text)?;
            strings.push(text);
        }
    }
    Ok(strings)
}

/// The text of an element that begins here: its runs joined, without the phonetic reading some have. Of one that is longer than a cell may
/// be, so much that this shows.
pub(super) fn rich_text(pieces: &mut Pieces<'_, impl BufRead>, end: &str) -> Result<String, Wrong> {
    let mut text = String::new();
    let (mut in_text, mut in_reading) = (false, false);
    while let Some(piece) = pieces.next()? {
        match piece {
            Piece::Start(element) if element.name == "t" => in_text = true,
            Piece::Start(element) if element.name == "rPh" => in_reading = true,
            Piece::End(name) if name == "t" => in_text = false,
            Piece::End(name) if name == "rPh" => in_reading = false,
            Piece::End(name) if name == end => break,
            Piece::Text(part) if in_text && !in_reading => add(&mut text, &part),
            _ => {}
        }
    }
    Ok(unescaped(&text))
}

/// Adds to a cell's text, until it is longer than a cell may be.
pub(super) fn add(text: &mut String, part: &str) {
    if text.len() <= MOST_IN_CELL {
        text.push_str(part);
    }
}

/// The text with its `_x000D_` escapes read (ECMA-376 part 1, 22.9.2.19).
fn unescaped(text: &str) -> String {
    let mut read = String::new();
    let mut left = text;
    while let Some((before, after)) = left.split_once("_x") {
        read.push_str(before);
        let escape = after.split_at_checked(4).and_then(|(digits, rest)| {
            let character = char::from_u32(u32::from_str_radix(digits, 16).ok()?)?;
            Some((character, rest.strip_prefix('_')?))
        });
        if let Some((character, rest)) = escape {
            read.push(character);
            left = rest;
        } else {
            read.push_str("_x");
            left = after;
        }
    }
    read + left
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn escapes_and_what_only_looks_like_one() {
        for (text, expected) in [
            ("a_x000D_b", "a\rb"),
            ("_x005F_x000D_", "_x000D_"),
            ("max_xyz_", "max_xyz_"),
            ("_x00", "_x00"),
            ("plain", "plain"),
        ] {
            assert_eq!(unescaped(text), expected);
        }
    }

    #[test]
    fn runs_are_joined_and_readings_left_out() {
        let xml = "<si><r><t>2-1/2</t></r><r><rPr/><t xml:space=\"preserve\"> in.</t></r><rPh><t>x</t></rPh></si>";
        let mut left = u64::MAX;
        let mut pieces = Pieces::of(xml.as_bytes(), &mut left);
        pieces.next().unwrap();
        assert_eq!(rich_text(&mut pieces, "si").unwrap(), "2-1/2 in.");
    }
}
