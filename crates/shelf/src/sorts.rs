//! Files of other sorts, known by how they begin.

/// What bytes begin with, and what such a file is.
const SORTS: &[(&[u8], &str)] = &[
    (b"PK\x03\x04", "a Word document or another packed file"),
    (b"PK\x05\x06", "a packed file"),
    (
        b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1",
        "an older Word document or workbook",
    ),
    (b"\x7fELF", "a program"),
    (b"MZ\x90\x00", "a program"),
    (b"\x89PNG\r\n", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"II*\x00", "a picture"),
    (b"MM\x00*", "a picture"),
    (b"\x1f\x8b", "a packed file"),
    (b"7z\xbc\xaf\x27\x1c", "a packed file"),
    (b"SQLite format 3\x00", "a database"),
];

/// What text of a marked-up sort begins with, and what such a file is.
const MARKUPS: &[(&str, &str)] = &[
    ("<?xml", "marked-up text (XML, or a drawing)"),
    ("<svg", "a drawing (SVG)"),
    ("<!doctype html", "a web page (HTML)"),
    ("<html", "a web page (HTML)"),
    ("<head", "a web page (HTML)"),
    ("<body", "a web page (HTML)"),
    ("{\\rtf", "a word processor's document (RTF)"),
];

/// What a file is that begins with these bytes, when it is no text.
pub(crate) fn of_bytes(bytes: &[u8]) -> Option<&'static str> {
    let mut sorts = SORTS.iter();
    sorts
        .find(|(start, _)| bytes.starts_with(start))
        .map(|(_, sort)| *sort)
}

/// What a text is that begins so, when its marks aren't words.
pub(crate) fn of_markup(text: &str) -> Option<&'static str> {
    let start = text.trim_start_matches(|c: char| c.is_whitespace() || c == '\u{feff}');
    let head: String = start.chars().take(20).collect::<String>().to_lowercase();
    let mut markups = MARKUPS.iter();
    markups
        .find(|(mark, _)| head.starts_with(mark))
        .map(|(_, markup)| *markup)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_listing_is_called_by_its_name() {
        assert_eq!(
            of_bytes(b"PK\x03\x04\x14\x00"),
            Some("a Word document or another packed file")
        );
        assert_eq!(of_bytes(b"System HW-D-0190"), None);
        assert_eq!(of_markup("\n<!DOCTYPE html><p>"), Some("a web page (HTML)"));
        assert_eq!(of_markup("<1/2 in. of wool"), None);
    }
}
