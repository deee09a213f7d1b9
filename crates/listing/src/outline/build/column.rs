//! Bare numbers that count the items in a column, line under line: `1   Wall     min 175 mm concrete`, `2   Floor    min 150 mm concrete`.
//!
//! Such a number may as well begin a line of running text, or name a part in the key to a figure. So there must be at least three that count from one, most
//! of their lines must hold a number besides, and nothing else may stand as far out between them.

use super::super::marker::{Close, Marker, Part, marker};
use super::notes::heads_notes;
use crate::layout::Line;

/// The fewest that make a column.
const FEWEST: usize = 3;

/// The lines whose bare numbers count the items of a document; none where it numbers its items otherwise.
pub(super) fn counted(lines: &[Line<'_>]) -> Vec<usize> {
    let Some(first) = lines.iter().position(|line| bare(line) == Some(1)) else {
        return Vec::new();
    };
    let column = lines.get(first).map_or(0, |line| line.indent);
    let mut found = Vec::new();
    let mut holding = 0;
    for (at, line) in lines.iter().enumerate().skip(first) {
        if line.is_blank() || line.indent > column || is_part(line) {
            continue;
        }
        let next = u32::try_from(found.len() + 1).ok();
        if line.indent < column || bare(line).is_none() || bare(line) != next {
            break;
        }
        holding += usize::from(holds_number(line));
        found.push(at);
    }
    let numbered_otherwise = lines.iter().enumerate().any(|(at, line)| {
        let begins = own_marker(line)
            .is_some_and(|own| own.close == Close::Dot && own.parts == [Part::Number(1)]);
        begins && !stands_in_notes(lines, at)
    });
    let counts = found.len() >= FEWEST && holding * 2 > found.len() && !numbered_otherwise;
    if counts { found } else { Vec::new() }
}

fn own_marker(line: &Line<'_>) -> Option<Marker> {
    marker(line.text.trim())
}

/// The bare number that a line begins with.
fn bare(line: &Line<'_>) -> Option<u32> {
    let own = own_marker(line).filter(|own| own.close == Close::Nothing && !own.introduced)?;
    match own.parts.as_slice() {
        [Part::Number(number)] => Some(*number),
        _ => None,
    }
}

/// `3.1 Infill   stone wool`
fn is_part(line: &Line<'_>) -> bool {
    own_marker(line).is_some_and(|own| {
        own.close == Close::Nothing
            && own.parts.len() > 1
            && own.parts.iter().all(|part| matches!(part, Part::Number(_)))
    })
}

/// Whether a line holds a number behind its own.
fn holds_number(line: &Line<'_>) -> bool {
    let words = line.text.trim();
    let len = marker(words).map_or(0, |own| own.len);
    words
        .get(len..)
        .is_some_and(|rest| rest.contains(|c: char| c.is_ascii_digit()))
}

/// Whether a heading of notes stands above a line.
fn stands_in_notes(lines: &[Line<'_>], at: usize) -> bool {
    let mut above = lines.iter().take(at);
    above.any(|line| {
        let words = line.text.trim();
        let name = own_marker(line).and_then(|own| words.get(own.len..));
        heads_notes(name.unwrap_or(words))
    })
}
