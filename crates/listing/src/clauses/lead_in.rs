//! Sentences that only lead to what follows: "shall include the following construction features:".

/// Whether a sentence only leads to the items after it.
pub(super) fn is_lead_in(words: &str) -> bool {
    let lower = words.trim().to_lowercase();
    let short = lower.split_whitespace().count() <= 5;
    let leads = lower.ends_with(':')
        && (short
            || [
                "following",
                "as follows",
                "below",
                "include",
                "includes",
                "consist of",
                "used",
            ]
            .iter()
            .any(|word| lower.contains(word)));
    let capitals = words.split_whitespace().count() <= 6
        && words.chars().any(char::is_alphabetic)
        && words
            .chars()
            .filter(|c| c.is_alphabetic())
            .all(char::is_uppercase);
    let note = lower.strip_prefix("note").is_some_and(|rest| {
        rest.trim_matches(|c: char| c.is_ascii_digit() || ". :()s".contains(c))
            .is_empty()
    });
    if note {
        return true;
    }
    let leads = leads || capitals;
    let holds_number = words.chars().any(|c| c.is_ascii_digit());
    leads && !holds_number
}
