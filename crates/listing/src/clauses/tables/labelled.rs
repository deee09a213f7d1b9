//! A cell that its row's label speaks of: `Leg | 3 | 2-1/2 will do where the joint is 1/2 or less`.
//!
//! A cell of one amount takes its unit from the label, or from the document where the label is of a size. One of several words is read as a
//! text that begins with the label.

use measure::Unit;

use super::heading::Heading;
use crate::layout::{Flow, UsualUnits};

/// Words of a label whose bare numbers are no lengths.
const COUNTED: &[&str] = &[
    "number",
    "no",
    "nos",
    "qty",
    "quantity",
    "layers",
    "layer",
    "coats",
    "passes",
    "strips",
    "plies",
    "faces",
    "sides",
    "screws",
    "fasteners",
    "fixings",
    "anchors",
    "clips",
    "pieces",
    "rows",
    "butts",
    "readings",
    "class",
    "type",
    "grade",
    "rating",
    "period",
    "movement",
    "cycles",
    "gauge",
    "temperature",
    "time",
    "wait",
    "cure",
    "share",
    "ratio",
    "density",
    "weight",
    "compression",
    "humidity",
    "edition",
    "issue",
    "squeeze",
    "sheets",
    "boards",
    "pins",
    "samples",
    "%",
];

/// Words of a label that are sizes, whatever else it names: "Screw spacing".
const SIZES: &[&str] = &[
    "thickness",
    "width",
    "depth",
    "height",
    "length",
    "spacing",
    "centres",
    "centers",
    "pitch",
    "lap",
    "overlap",
    "gap",
    "clearance",
    "diameter",
    "distance",
    "setback",
    "recess",
    "embedment",
    "film",
];

/// Words after which a label says no more of what it names, but where that is or of what.
const PLACES: &[&str] = &[
    "of", "on", "onto", "to", "in", "into", "per", "below", "above", "between", "for", "at",
    "from", "beyond", "past", "under", "beneath",
];

/// Words after which a label names what it only measures from.
const MEASURED_FROM: &[&str] = &[
    "below", "above", "from", "beyond", "past", "under", "beneath",
];

/// Words of a heading whose cells remark on what the label names.
const REMARKS: &[&str] = &[
    "remark",
    "remarks",
    "note",
    "notes",
    "comment",
    "comments",
    "see",
    "exception",
    "exceptions",
    "condition",
    "conditions",
];

/// Words of a heading whose cells number the rows.
const NUMBERS: &[&str] = &[
    "ref",
    "ref.",
    "reference",
    "no",
    "no.",
    "item",
    "row",
    "line",
    "#",
    "id",
    "key",
    "pos",
    "pos.",
    "clause",
    "cl.",
];

/// Whether a heading's cells remark on what the label names.
pub(super) fn heads_remarks(heading: &Heading) -> bool {
    REMARKS.contains(&heading.words.to_lowercase().as_str())
}

/// Whether a heading's cells number the rows.
pub(super) fn heads_numbers(heading: &Heading) -> bool {
    NUMBERS.contains(&heading.words.to_lowercase().as_str())
}

/// The unit of a cell's bare number: the label's, or the document's where the label is of a density or a size.
pub(super) fn unit_of(label: &Heading, flow: &Flow) -> Option<Unit> {
    let usual = flow.usual_units();
    let of_density = label.words.to_lowercase().contains("density");
    label.unit.or(if of_density {
        usual.density
    } else {
        usual.length.filter(|_| is_size(&label.words))
    })
}

/// The label and a cell of several words as one text.
pub(super) fn text(label: &Heading, words: &Flow, cell: &Flow) -> Flow {
    let units = UsualUnits {
        bare: unit_of(label, cell),
        ..cell.usual_units()
    };
    words.joined(": ", cell).with_usual_units(units)
}

/// Whether words name a size, and count nothing.
pub(super) fn names_size(words: &str) -> bool {
    let lower = words.to_lowercase();
    let words = || lower.split(|c: char| !(c.is_alphabetic() || c == '%'));
    words().any(|word| {
        SIZES.contains(&word) || ["wet", "dry", "leg", "thick", "wide", "deep"].contains(&word)
    }) && !words().any(|word| ["number", "no", "nos", "per", "qty", "%", "percent"].contains(&word))
}

/// Whether nothing that a label names speaks against a length.
fn is_size(label: &str) -> bool {
    let head = head(label, PLACES).to_lowercase();
    let words = || head.split(|c: char| !(c.is_alphabetic() || c == '%'));
    words().any(|word| SIZES.contains(&word)) || !words().any(|word| COUNTED.contains(&word))
}

/// Whether what a label names lies at a distance from a part, and is no size of that part: `Topmost screw below track leg`.
pub(super) fn is_distance(label: &str) -> bool {
    let head = head(label, MEASURED_FROM);
    let sized = head
        .to_lowercase()
        .split(|c: char| !c.is_alphabetic())
        .any(|word| SIZES.contains(&word));
    let measured = label
        .split(' ')
        .any(|word| MEASURED_FROM.contains(&word.to_lowercase().as_str()));
    measured && !sized
}

/// Whether a label counts things over a length, and no more than that: `Pieces of packing per 3 m of joint` are no layers.
pub(super) fn is_rate(label: &str) -> bool {
    let lower = label.to_lowercase();
    [" per ", " in any ", " in each ", " in every ", " every "]
        .iter()
        .any(|over| {
            let after = lower.split(over).skip(1);
            after
                .into_iter()
                .any(|after| after.starts_with(|c: char| c.is_ascii_digit()))
        })
}

/// A label's words before the first of some, or before a comma.
fn head<'a>(label: &'a str, words: &[&str]) -> &'a str {
    let label = label.trim();
    let mut end = label.find(',').unwrap_or(label.len());
    for (at, _) in label.match_indices(' ') {
        let next = label.get(at + 1..).and_then(|rest| rest.split(' ').next());
        if next.is_some_and(|next| words.contains(&next.to_lowercase().as_str())) {
            end = end.min(at);
        }
    }
    label.get(..end).unwrap_or(label)
}
