//! The ratings that classes in the head stand for: `EI 120` is two hours (EN 13501-2, 7.5.9), and so is `-/120/120` (AS 1530.4: structural adequacy, integrity and
//! insulation, in minutes). Of two periods the shorter counts; a class of integrity alone, `E 120`, is none of the joint's ratings.

use measure::Number;

use crate::clauses::{MINUTES, level_parts};
use crate::rules::NEGATIONS;

/// The hours that the classes of a text stand for, in the order written.
pub(super) fn ratings(text: &str) -> Vec<Number> {
    let mut found = Vec::new();
    let words: Vec<&str> = text.split_whitespace().collect();
    for (at, word) in words.iter().enumerate() {
        if is_of_another(words.get(..at).unwrap_or_default()) {
            continue;
        }
        let letters = word.trim_start_matches(['(', '"']);
        if matches!(letters, "EI" | "REI")
            && let Some(next) = words.get(at + 1)
        {
            found.extend(hours(digits(next)));
        }
        let joined = letters.strip_prefix("REI").or(letters.strip_prefix("EI"));
        found.extend(joined.and_then(|rest| hours(digits(rest))));
        found.extend(of_three(word));
    }
    found
}

/// Whether the words before a class deny it, or say that it is of something else than the joint: `Fire resistance of the separating element EI 180`.
pub(super) fn is_of_another(before: &[&str]) -> bool {
    const NEAR: usize = 6;
    const OTHERS: [&str; 14] = [
        "wall",
        "walls",
        "floor",
        "floors",
        "slab",
        "slabs",
        "element",
        "elements",
        "construction",
        "constructions",
        "partition",
        "beam",
        "structure",
        "barrier",
    ];
    let is_other = |word: &str| {
        let word = word
            .trim_matches(|c: char| !c.is_alphabetic())
            .to_lowercase();
        OTHERS.contains(&word.as_str())
    };
    let near = before
        .get(before.len().saturating_sub(NEAR)..)
        .unwrap_or_default();
    // `EI 60, EI 120` stand side by side.
    let class = near
        .iter()
        .rposition(|word| word.contains(|c: char| c.is_ascii_digit()));
    let near = near.get(class.map_or(0, |at| at + 1)..).unwrap_or_default();
    let of = near.iter().position(|word| *word == "of");
    let told = of.is_some_and(|of| near.iter().skip(of + 1).any(|word| is_other(word)));
    // `Wall: EI 120`
    let labelled = near
        .last()
        .is_some_and(|word| is_other(word) && !word.ends_with(')'));
    let ended = near.iter().any(|word| word.ends_with('.'));
    let denied = near
        .iter()
        .any(|word| NEGATIONS.contains(&word.to_lowercase().as_str()));
    labelled || denied || told && !ended
}

/// `-/120/90`
fn of_three(word: &str) -> Option<Number> {
    let word = word.trim_matches(|c: char| matches!(c, ',' | ';' | '.' | '(' | ')' | ':'));
    let [_, integrity, insulation] = level_parts(word)?;
    Number::new(integrity.min(insulation)?.into(), 60)
}

fn digits(word: &str) -> &str {
    let end = word
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(word.len());
    word.get(..end).unwrap_or_default()
}

/// A period of the standards, in hours.
fn hours(minutes: &str) -> Option<Number> {
    let minutes: i32 = minutes.parse().ok()?;
    MINUTES
        .contains(&minutes)
        .then(|| Number::new(minutes.into(), 60))?
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn classes_are_hours() {
        let shown = |text: &str| {
            let hours = ratings(text).into_iter().map(|hours| hours.to_string());
            hours.collect::<Vec<_>>().join(" ")
        };
        assert_eq!(shown("Classes EI 60, EI 90 and REI 120-V"), "1 3/2 2");
        assert_eq!(shown("EI120 - H - X - F - W 10 to 50"), "2");
        assert_eq!(shown("FRL -/120/60, –/240/240"), "1 4");
        // Integrity alone, a product and a page are none.
        assert_eq!(shown("E 240; EI-seal 120; page EI 7"), "");
        assert_eq!(shown("Not tested to EI 120; no -/60/60 without boards"), "");
        // Nor is what another thing is of.
        assert_eq!(
            shown("Fire resistance of the separating element EI 180. Wall: EI 120. Joint: EI 90"),
            "3/2"
        );
    }
}
