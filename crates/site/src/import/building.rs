//! The building's file.

use std::collections::BTreeSet;

use serde::Deserialize;
use toml::Spanned;

use super::limits::MOST_IN_BUILDING;
use super::problem::{Findings, Wrong, quoted};
use super::reading::any_quantity;
use super::sheet::clean;
use super::{File, encoding};
use crate::model::{Building, Cell, Storey};
use measure::Dimension;

/// The building as its file states it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Stated {
    name: Spanned<String>,
    code_edition: Option<String>,
    note: Option<String>,
    #[serde(default)]
    storeys: Vec<StatedStorey>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StatedStorey {
    name: Spanned<String>,
    elevation: Option<Spanned<String>>,
}

/// Reads the building from its files, of which there may be one; with none it is a building without a name.
pub(crate) fn of_files(files: &[&File<'_>], findings: &mut Findings) -> Building {
    for extra in files.iter().skip(1) {
        let wrong = Wrong::new(
            "there is a second building file",
            "a project has one building; leave one file out",
        );
        findings.problem(place(extra, 0), "", wrong);
    }
    match files.first() {
        Some(file) => {
            findings.begin(place(file, 0));
            read(file, findings).unwrap_or_default()
        }
        None => Building::default(),
    }
}

fn read(file: &File<'_>, findings: &mut Findings) -> Option<Building> {
    if file.bytes.len() > MOST_IN_BUILDING {
        let message = format!("the file is larger than {} kB", MOST_IN_BUILDING >> 10);
        findings.problem(
            place(file, 0),
            "",
            Wrong::new(message, "a building file is a page or two"),
        );
        return None;
    }
    let text = encoding::text(file.bytes).and_then(|text| {
        let not_utf8 = || Wrong::new("the file isn't in UTF-8", "save it in UTF-8");
        (!text.assumed).then_some(text.text).ok_or_else(not_utf8)
    });
    let text = text
        .map_err(|wrong| findings.problem(place(file, 0), "", wrong))
        .ok()?;
    let stated: Result<Stated, _> = toml::from_str(&text);
    match stated {
        Ok(stated) => Some(building(file, &text, stated, findings)),
        Err(error) => {
            let at = error.span().map_or(0, |span| line(&text, span.start));
            let words = error
                .span()
                .and_then(|span| text.get(span))
                .unwrap_or_default();
            let help = "a building has `name`, `code_edition`, `note`, and `[[storeys]]` with `name` and \
                        `elevation`, each a text in double quotes";
            findings.problem(
                place(file, at),
                words,
                Wrong::new(error.message().replace('\n', " "), help),
            );
            None
        }
    }
}

fn building(file: &File<'_>, text: &str, stated: Stated, findings: &mut Findings) -> Building {
    let mut check = |spanned: &Spanned<String>, wrong: Option<Wrong>| {
        if let Some(wrong) = wrong {
            findings.problem(
                place(file, line(text, spanned.span().start)),
                spanned.get_ref(),
                wrong,
            );
        }
    };
    check(&stated.name, no_name(stated.name.get_ref(), "the building"));
    let mut storeys = Vec::new();
    let mut seen = BTreeSet::new();
    for storey in stated.storeys {
        let name = clean(storey.name.get_ref());
        let twice = !seen.insert(name.clone());
        let twice = twice.then(|| {
            Wrong::new(
                format!("storey {} stands twice", quoted(&name)),
                "give each its own name",
            )
        });
        check(&storey.name, no_name(&name, "a storey").or(twice));
        let elevation = storey.elevation.map(|spanned| {
            let read = elevation(spanned.get_ref());
            check(&spanned, read.as_ref().err().cloned());
            read
        });
        storeys.push(Storey {
            name,
            elevation: elevation.and_then(Result::ok),
        });
    }
    Building {
        name: clean(stated.name.get_ref()),
        code_edition: stated.code_edition,
        storeys,
        note: stated.note,
    }
}

fn no_name(name: &str, of: &str) -> Option<Wrong> {
    let none = name.trim().is_empty();
    none.then(|| {
        Wrong::new(
            format!("{of} has an empty name"),
            "write what the drawings call it",
        )
    })
}

fn elevation(text: &str) -> Result<measure::Quantity, Wrong> {
    let length = any_quantity(text).filter(|read| read.dimension() == Dimension::Length);
    length.ok_or_else(|| {
        let message = format!("the elevation {} isn't a length", quoted(text));
        Wrong::new(message, "write for example `31 ft 6 in.` or `9.6 m`")
    })
}

fn place(file: &File<'_>, line: usize) -> Cell {
    Cell {
        file: file.name.to_owned(),
        sheet: None,
        row: line,
        column: String::new(),
    }
}

/// The line that a byte offset is in, from 1.
fn line(text: &str, at: usize) -> usize {
    text.get(..at)
        .map_or(0, |before| before.matches('\n').count() + 1)
}
