//! Joints by their names, and those of a mark.

use crate::text::on_one_line;

/// Names in the order given, with runs that count up written as a run: `J-001 to J-003, J-007`.
pub fn in_runs(names: &[&str]) -> String {
    let mut runs: Vec<(&str, &str, usize)> = Vec::new();
    for name in names {
        match runs.last_mut() {
            Some((_, last, length)) if follows(last, name) => {
                *last = name;
                *length += 1;
            }
            _ => runs.push((name, name, 1)),
        }
    }
    let words: Vec<String> = runs
        .iter()
        .map(|(first, last, length)| match length {
            1 => (*first).to_owned(),
            2 => format!("{first}, {last}"),
            _ => format!("{first} to {last}"),
        })
        .collect();
    words.join(", ")
}

/// Whether a name is the next after another: `J-004` after `J-003`.
fn follows(before: &str, after: &str) -> bool {
    let split = |name: &str| {
        let stem = name.trim_end_matches(|c: char| c.is_ascii_digit()).len();
        let (stem, digits) = name.split_at_checked(stem)?;
        Some((stem.to_owned(), digits.len(), digits.parse::<u64>().ok()?))
    };
    match (split(before), split(after)) {
        (Some((stem, width, number)), Some((stem_after, width_after, next))) => {
            stem == stem_after && width == width_after && number.checked_add(1) == Some(next)
        }
        _ => false,
    }
}

/// Joints of a mark.
#[derive(Debug, Clone, Copy)]
pub struct OfMark<'a> {
    /// The mark.
    pub mark: &'a str,
    /// The joints.
    pub joints: &'a [String],
    /// Whether they are all joints of the mark.
    pub is_whole_mark: bool,
}

impl OfMark<'_> {
    /// The mark alone where they are all of it: `HW1`, or `HW1: J-004, J-007 to J-009`.
    pub fn in_words(&self) -> String {
        let joints: Vec<&str> = self.joints.iter().map(String::as_str).collect();
        if self.is_whole_mark || joints == [self.mark] {
            return on_one_line(self.mark);
        }
        on_one_line(&format!("{}: {}", self.mark, in_runs(&joints)))
    }
}

/// Those of several marks: `HW1; HW2: J-004`.
pub fn in_marks<'a>(each: impl Iterator<Item = OfMark<'a>>) -> String {
    let words: Vec<String> = each.map(|one| one.in_words()).collect();
    words.join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_of_names() {
        let check = |names: &[&str], expected: &str| assert_eq!(in_runs(names), expected);
        check(
            &["J-001", "J-002", "J-003", "J-007"],
            "J-001 to J-003, J-007",
        );
        check(&["J-009", "J-010"], "J-009, J-010");
        check(&["A", "B"], "A, B");
        check(&[], "");
    }

    #[test]
    fn a_mark_stands_for_all_its_joints() {
        let joints = ["J-004", "J-005", "J-006"].map(str::to_owned);
        let of = |mark, joints, is_whole_mark| OfMark {
            mark,
            joints,
            is_whole_mark,
        };
        let whole = of("HW1", joints.as_slice(), true);
        let part = of("HW2", joints.as_slice(), false);
        assert_eq!(
            in_marks([whole, part].into_iter()),
            "HW1; HW2: J-004 to J-006"
        );
    }
}
