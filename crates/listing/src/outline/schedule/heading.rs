//! What the headings of a schedule say: which columns hold text, and which are for a rating.

use crate::layout::Line;
use crate::model::Span;

/// Whether headings are words alone: no number, rule, leader or label. A stop may shorten `No.` and the like.
pub(super) fn is_plain(headings: &str) -> bool {
    const SHORTENED: &[&str] = &["No.", "NO.", "Nos.", "Ref.", "REF.", "Pos.", "POS."];
    headings
        .split_whitespace()
        .filter(|word| !SHORTENED.contains(word))
        .all(|word| !word.contains(|c: char| c.is_ascii_digit() || matches!(c, '|' | '.' | ':')))
}

/// The headings of the last columns that are ratings, each alone: `1 hr`, `1-1/2 hr`, `EI 90`.
pub(super) fn ratings(heading: &Line<'_>, starts: &[usize]) -> Vec<Span> {
    let places: Vec<usize> = heading.text.char_indices().map(|(at, _)| at).collect();
    let offset = |place: usize| places.get(place).copied().unwrap_or(heading.text.len());
    let mut found: Vec<Span> = (0..starts.len())
        .rev()
        .map_while(|column| {
            let from = offset(*starts.get(column)?);
            let end = starts
                .get(column + 1)
                .map_or(heading.text.len(), |end| offset(*end));
            let words = heading.text.get(from..end)?.trim_end();
            let begin = heading.span.start() + from;
            is_rating(words).then(|| Span::new(begin, begin + words.len()))
        })
        .collect();
    found.reverse();
    found
}

/// Whether the last cell of a line is a fire-resistance class: `K1   wall   20 - 60   EI 120 - V - M 20 - B - W 20 to 60`.
pub(super) fn ends_in_class(line: &str) -> bool {
    // What stands in line with a longer class is parted from its letters: `EI 60  - V - X`.
    let mut cells = line.trim_end().rsplit("  ").map(str::trim);
    let cell = cells.find(|cell| !cell.is_empty() && !cell.starts_with(['-', '–']));
    let mut words = cell.unwrap_or_default().split_whitespace();
    let lettered = matches!(words.next(), Some("E" | "EI" | "EW" | "REI"));
    lettered
        && words
            .next()
            .is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit()))
}

fn is_rating(words: &str) -> bool {
    let (number, unit) = match words.split_once(' ') {
        Some(("EI" | "E", minutes)) => (minutes, "min"),
        Some(parts) => parts,
        None => return false,
    };
    let numbered = number.starts_with(|c: char| c.is_ascii_digit())
        && number
            .chars()
            .all(|c| c.is_ascii_digit() || matches!(c, '-' | '/' | '.'));
    let unit = unit.trim_end_matches('.').to_lowercase();
    numbered && ["hr", "h", "hrs", "hour", "hours", "min", "minutes"].contains(&unit.as_str())
}

/// Whether a line holds a word that heads lists of requirements.
pub(in crate::outline) fn names_columns(heading: &str) -> bool {
    const NAMES: &[&str] = &[
        "parameter",
        "property",
        "characteristic",
        "requirement",
        "requirements",
        "permitted",
        "limit",
        "limits",
        "value",
        "remarks",
        "part",
        "item",
        "component",
        "element",
        "description",
    ];
    heading
        .split_whitespace()
        .any(|word| NAMES.contains(&word.to_lowercase().as_str()))
}

/// Whether a column holds the units of the values in another: a table's rows, each a value.
pub(super) fn has_units(heading: &str) -> bool {
    heading
        .split("  ")
        .any(|words| ["unit", "units", "uom"].contains(&words.trim().to_lowercase().as_str()))
}

/// Whether the first column, or the second behind one that numbers the rows, is headed as the labels of a table are.
pub(in crate::outline) fn names_property(heading: &str) -> bool {
    const NAMES: &[&str] = &[
        "property",
        "characteristic",
        "parameter",
        "feature",
        "attribute",
    ];
    heading
        .split("  ")
        .map(str::trim)
        .filter(|words| !words.is_empty())
        .take(2)
        .any(|words| NAMES.contains(&words.to_lowercase().as_str()))
}

/// Whether a heading names a size, as those of tables of values do: `Depth`, `Width, mm`.
pub(super) fn names_sizes(heading: &str) -> bool {
    const SIZES: &[&str] = &[
        "width",
        "depth",
        "thickness",
        "height",
        "length",
        "spacing",
        "density",
        "mm",
        "min",
        "max",
        "class",
    ];
    heading
        .split(|c: char| !c.is_alphabetic())
        .any(|word| SIZES.contains(&word.to_lowercase().as_str()))
}
