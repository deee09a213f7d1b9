//! Numbers and names as the terminal shows them.

use measure::unit::System;
use measure::{Number, Quantity, Unit, print};

pub(crate) use wording::text::{counted, listed, on_one_line, printable, shortened};

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
}
