//! From the text of one cell to what it says.

mod dimension;
mod fact;
mod quantity;
mod source;
mod value;

pub(crate) use fact::fact;
pub(crate) use quantity::any_quantity;
pub(crate) use source::{Source, date, source};

/// The spellings by which a cell says that nothing is known.
const NOT_KNOWN: &[&str] = &[
    "-", "\u{2013}", "\u{2014}", "n/a", "na", "?", "tbd", "unknown",
];

/// Whether a cell says that nothing is known: `-`, `n/a`, `?`, `TBD`, `unknown`, in any capitals.
pub(crate) fn says_not_known(text: &str) -> bool {
    let text = text.trim().to_lowercase();
    NOT_KNOWN.contains(&text.as_str())
}

/// What a spreadsheet shows where a formula failed.
pub(crate) fn is_spreadsheet_error(text: &str) -> bool {
    matches!(
        text,
        "#N/A"
            | "#REF!"
            | "#DIV/0!"
            | "#VALUE!"
            | "#NAME?"
            | "#NUM!"
            | "#NULL!"
            | "#SPILL!"
            | "#CALC!"
    )
}
