//! Joints of a mark in words: the mark alone where they are all of it.

use crate::show::words::{in_runs, on_one_line};

/// Joints of a mark.
pub(in crate::show) struct OfMark<'a> {
    pub(in crate::show) mark: &'a str,
    pub(in crate::show) joints: &'a [String],
    pub(in crate::show) is_whole_mark: bool,
}

impl OfMark<'_> {
    /// `HW1`, or `HW1: J-004, J-007 to J-009`.
    pub(in crate::show) fn in_words(&self) -> String {
        let joints: Vec<&str> = self.joints.iter().map(String::as_str).collect();
        if self.is_whole_mark || joints == [self.mark] {
            return on_one_line(self.mark);
        }
        on_one_line(&format!("{}: {}", self.mark, in_runs(&joints)))
    }
}

/// Those of several marks: `HW1; HW2: J-004`.
pub(in crate::show) fn in_marks<'a>(each: impl Iterator<Item = OfMark<'a>>) -> String {
    let words: Vec<String> = each.map(|one| one.in_words()).collect();
    words.join("; ")
}
