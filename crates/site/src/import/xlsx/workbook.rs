//! Which sheets a workbook has, and where its parts stand.

use std::collections::BTreeMap;

use super::package::{Package, damaged};
use super::xml::Piece;
use crate::import::problem::Wrong;
use crate::import::room::Room;

/// A workbook's contents.
pub(super) struct Workbook {
    /// Worksheets by name, each with its part, in their order.
    pub sheets: Vec<(String, String)>,
    /// Whether dates count from 1904.
    pub from_1904: bool,
    /// The part of the shared strings.
    pub strings: Option<String>,
    /// The part of the cell formats.
    pub styles: Option<String>,
}

/// Where a relationship leads, and of what kind it is.
struct Relationship {
    kind: String,
    target: String,
}

/// Finds the workbook and its parts.
pub(super) fn read(package: &mut Package<'_>, room: &mut Room) -> Result<Workbook, Wrong> {
    let of_package = relationships(package, "", room)?;
    let main = of_package.values().find(|one| one.kind == "officeDocument");
    let main = main
        .map(|one| one.target.clone())
        .filter(|path| path.rsplit('.').next() == Some("xml"));
    let main = main.ok_or_else(|| damaged(&"it holds no worksheets that can be read"))?;
    let parts = relationships(package, &main, room)?;
    let part = |kind: &str| {
        parts
            .values()
            .find(|one| one.kind == kind)
            .map(|one| one.target.clone())
    };
    let mut workbook = Workbook {
        sheets: Vec::new(),
        from_1904: false,
        strings: part("sharedStrings"),
        styles: part("styles"),
    };
    let mut pieces = package.part(&main)?;
    while let Some(piece) = pieces.next()? {
        match piece {
            Piece::Start(element) if element.name == "workbookPr" => {
                workbook.from_1904 = element.flag("date1904");
            }
            Piece::Start(element) if element.name == "sheet" => {
                let (name, id) = (element.attribute("name"), element.attribute("id"));
                let (Some(name), Some(id)) = (name, id) else {
                    return Err(damaged(&"a sheet has no name or part"));
                };
                let target = parts.get(id);
                let target = target
                    .ok_or_else(|| damaged(&format_args!("sheet `{name}` leads to no part")))?;
                if target.kind == "worksheet" {
                    room.keep(name)?;
                    workbook
                        .sheets
                        .push((name.to_owned(), target.target.clone()));
                }
            }
            _ => {}
        }
    }
    Ok(workbook)
}

/// The relationships of a part, by id; those of the package for an empty path.
fn relationships(
    package: &mut Package<'_>,
    of: &str,
    room: &mut Room,
) -> Result<BTreeMap<String, Relationship>, Wrong> {
    let (folder, name) = of.rsplit_once('/').unwrap_or(("", of));
    let path = joined(folder, &format!("_rels/{name}.rels"));
    let mut found = BTreeMap::new();
    let mut pieces = package.part(&path)?;
    while let Some(piece) = pieces.next()? {
        let Piece::Start(element) = piece else {
            continue;
        };
        if element.name != "Relationship" {
            continue;
        }
        let attribute = |name| element.attribute(name).unwrap_or_default();
        let kind = attribute("Type")
            .rsplit('/')
            .next()
            .unwrap_or_default()
            .to_owned();
        let target = joined(folder, attribute("Target"));
        room.keep(&target)?;
        found.insert(attribute("Id").to_owned(), Relationship { kind, target });
    }
    Ok(found)
}

/// A path as seen from a folder of the package.
fn joined(folder: &str, path: &str) -> String {
    if let Some(absolute) = path.strip_prefix('/') {
        return absolute.to_owned();
    }
    let mut parts: Vec<&str> = folder.split('/').filter(|part| !part.is_empty()).collect();
    for part in path.split('/') {
        match part {
            "" | "." => {}
            ".." => drop(parts.pop()),
            part => parts.push(part),
        }
    }
    parts.join("/")
}

#[cfg(test)]
mod tests {
    use super::joined;

    #[test]
    fn paths_are_seen_from_their_folder() {
        for (folder, path, expected) in [
            ("", "xl/workbook.xml", "xl/workbook.xml"),
            ("xl", "worksheets/sheet1.xml", "xl/worksheets/sheet1.xml"),
            ("xl", "/xl/styles.xml", "xl/styles.xml"),
            ("xl/a", "../styles.xml", "xl/styles.xml"),
        ] {
            assert_eq!(joined(folder, path), expected);
        }
    }
}
