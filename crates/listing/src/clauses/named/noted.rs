//! Entries whose names have a number with a unit in brackets behind them: `MAKER - Product 4, Product 8 (8 pcf)`, `Product (joints to 2 in.)`.
//!
//! The number is read where it stands. The list is in doubt, and what the brackets say is left beside it for a person.

use super::entry::{Listed, Reader};
use super::limits::{denies_in_brackets, holds_measure, restricts};
use super::lines;

/// The entries that a sentence is, each with what its brackets say of a name.
pub(super) fn noted(words: &str, reader: Reader<'_>) -> Option<Vec<Listed>> {
    let body = lines::without_marks(words);
    let (bare, notes) = without_measures(body)?;
    if restricts(&bare) {
        return None;
    }
    let mut listed = reader.all(&bare)?;
    let made = |own: &Listed| own.names.iter().all(|name| !name.maker.is_empty());
    if !listed.iter().all(made) {
        return None;
    }
    listed.last_mut()?.limits.extend(notes);
    Some(listed)
}

/// Words without the brackets that hold a number with a unit, and these with the name before each.
fn without_measures(words: &str) -> Option<(String, Vec<String>)> {
    let mut bare = String::new();
    let mut notes = Vec::new();
    let mut rest = words;
    while let Some(open) = rest.find(" (") {
        let close = open + rest.get(open..)?.find(')')?;
        let (before, note) = (rest.get(..open)?, rest.get(open + 2..close)?);
        bare.push_str(before);
        if holds_measure(note) {
            if denies_in_brackets(note) {
                return None;
            }
            let name = before.rsplit([',', ';', '-', ':']).next()?.trim();
            notes.push(format!("{name} {note}"));
        } else {
            bare.push_str(rest.get(open..=close)?);
        }
        rest = rest.get(close + 1..)?;
    }
    bare.push_str(rest);
    (!notes.is_empty()).then_some((bare, notes))
}
