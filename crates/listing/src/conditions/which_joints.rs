//! Words that are nothing but the joints that a thing is asked for in: "joints over 50 mm only", "joints of 80 mm or more in walls higher than 4 m only". Whether
//! a joint is such a one, a person says.
//!
//! An upper limit, "joints up to 2 in. only", says where the thing may be used: as a condition it would excuse whoever uses it in a wider joint.

/// Whether words say of which wide joints or high walls alone a thing is.
pub(crate) fn tells_which_joints(words: &str) -> bool {
    const SPOILING: &[&str] = &[
        "not", "no", "never", "unless", "except", "optional", "may", "lieu", "instead", "up", "to",
        "less", "under", "below", "narrower", "max", "maximum", "shall", "must", "is", "are",
    ];
    const MEANT: &[&str] = &["joints", "gaps", "openings", "widths", "walls"];
    const LOWER: &[&str] = &[
        "over",
        "above",
        "more",
        "exceeding",
        "wider",
        "higher",
        "greater",
        "taller",
        "beyond",
        ">",
        "≥",
    ];
    let lower = words.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| !(c.is_alphanumeric() || matches!(c, '>' | '≥')))
        .filter(|word| !word.is_empty())
        .collect();
    let has = |list: &[&str]| words.iter().any(|word| list.contains(word));
    let numbered = words
        .iter()
        .any(|word| word.starts_with(|c: char| c.is_ascii_digit()));
    let meant = words.first().is_some_and(|word| MEANT.contains(word));
    let only = words.last() == Some(&"only");
    meant && only && numbered && has(LOWER) && !has(SPOILING)
}

#[cfg(test)]
mod tests {
    use super::tells_which_joints;

    #[test]
    fn what_tells_which() {
        for words in [
            "joints over 50 mm only",
            "Joints of 80 mm or more in walls higher than 4 m only.",
            "walls > 12 ft only",
        ] {
            assert!(tells_which_joints(words), "{words}");
        }
        for words in [
            "joints up to 50 mm only",
            "joints of 2 in. or less only",
            "joints over 50 mm",
            "joints over 50 mm are filled only",
        ] {
            assert!(!tells_which_joints(words), "{words}");
        }
    }
}
