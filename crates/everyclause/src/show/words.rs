//! Words of other people's files, made fit to be shown.

use measure::unit::System;
use measure::{Number, Quantity, Unit, print};

/// The words on one line: white space evened, control characters taken out.
pub(crate) fn on_one_line(words: &str) -> String {
    printable(&words.split_whitespace().collect::<Vec<_>>().join(" "))
}

/// The words without control characters, which could drive a terminal; line ends stay, tabs become spaces.
pub(crate) fn printable(words: &str) -> String {
    words
        .chars()
        .filter(|c| *c != '\r')
        .map(|c| match c {
            '\n' => c,
            '\t' => ' ',
            c if c.is_control() || is_bidi_control(c) => '\u{fffd}',
            c => c,
        })
        .collect()
}

/// Characters that turn the direction of writing, and could make words look like others.
const fn is_bidi_control(c: char) -> bool {
    matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// At most so many characters of the words, cut at a space where one is near.
pub(crate) fn shortened(words: &str, most: usize) -> String {
    if words.chars().count() <= most {
        return words.to_owned();
    }
    let kept: String = words.chars().take(most.saturating_sub(2)).collect();
    let kept = kept
        .rsplit_once(' ')
        .map_or(kept.as_str(), |(kept, _)| kept);
    format!("{} …", kept.trim_end_matches([',', ';', ':', ' ']))
}

/// "1 joint", "2 joints".
pub(crate) fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// "a, b and c".
pub(crate) fn listed<T: AsRef<str>>(names: &[T]) -> String {
    match names {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [rest @ .., last] => {
            let rest: Vec<&str> = rest.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", rest.join(", "), last.as_ref())
        }
    }
}

/// Names in the order given, with runs that count up written as a run: `J-001 to J-003, J-007`.
pub(crate) fn in_runs(names: &[&str]) -> String {
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

/// A quantity to a hundredth, in both systems.
pub(crate) fn to_a_hundredth(quantity: Quantity) -> String {
    let near = Number::new(1, 100).and_then(|step| quantity.number.nearest(step));
    let shown = Quantity::new(near.unwrap_or(quantity.number), quantity.unit);
    let mark = if shown == quantity { "" } else { "≈ " };
    format!("{mark}{}", print::both(shown))
}

/// A length as a tape is read: `27 ft 6 in.`.
pub(crate) fn feet_and_inches(length: Quantity) -> String {
    let foot = Number::whole(12);
    let Some(inches) = length
        .to(Unit::Inch)
        .filter(|_| length.unit.system() == System::Customary)
    else {
        return print::both(length);
    };
    let feet = inches.number.numerator() / (inches.number.denominator() * 12);
    let rest = i32::try_from(feet)
        .ok()
        .and_then(|feet| inches.number.minus(Number::whole(feet).times(foot)?));
    match rest {
        Some(rest) if feet > 0 && rest.is_zero() => format!("{feet} ft"),
        Some(rest) if feet > 0 => {
            format!(
                "{feet} ft {}",
                print::trade(Quantity::new(rest, Unit::Inch))
            )
        }
        _ => print::trade(length),
    }
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
    fn shows_no_control_characters() {
        assert_eq!(
            on_one_line("a\u{1b}[31m\r\n b\u{9b}\u{202e}"),
            "a\u{fffd}[31m b\u{fffd}\u{fffd}"
        );
    }

    #[test]
    fn shortens_at_a_space() {
        assert_eq!(shortened("one two three", 9), "one …");
        assert_eq!(shortened("one", 9), "one");
    }
}
