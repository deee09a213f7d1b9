//! Remarks that only say when the requirement beside them holds.

/// Whether a remark is a rating alone, or only compares something with a number: `2 h`, `joints over 75 mm`. One that demands something of its own
/// is none.
pub(in crate::outline) fn is_case(remark: &str) -> bool {
    const COMPARES: &[&str] = &[
        "over",
        "under",
        "above",
        "below",
        "exceeding",
        "up",
        "than",
        "<",
        ">",
    ];
    const LEADS: &[&str] = &[
        "in", "for", "where", "when", "if", "at", "joint", "joints", "width", "widths", "gap",
        "gaps", "only", "wide", "to", "less", "more", "greater",
    ];
    let lower = remark.trim().to_lowercase();
    let words: Vec<&str> = lower.split_whitespace().collect();
    let is_number = |word: &&str| word.starts_with(|c: char| c.is_ascii_digit());
    if let [number, unit] = words.as_slice() {
        let hours = ["h", "hr", "hrs", "hour", "hours"].contains(&unit.trim_end_matches('.'));
        if hours && is_number(number) {
            return true;
        }
    }
    let numbers = words.iter().filter(|word| is_number(word)).count();
    let units = ["mm", "m", "in.", "in", "ft", "cm"];
    let codes = |word: &&str| {
        word.len() <= 5 && word.contains(|c: char| c.is_ascii_digit()) && !is_number(word)
    };
    let plain = words.iter().all(|word| {
        COMPARES.contains(word)
            || LEADS.contains(word)
            || units.contains(word)
            || is_number(word)
            || codes(word)
    });
    let compared = words.iter().filter(|word| COMPARES.contains(word)).count();
    plain && compared == 1 && (1..=2).contains(&numbers)
}
