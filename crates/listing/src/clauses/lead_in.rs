//! Sentences that only lead to what follows: "shall include the following construction features:".

/// Whether a sentence only leads to the items after it.
pub(super) fn is_lead_in(words: &str) -> bool {
    let lower = words.trim().to_lowercase();
    let leads = lower.ends_with(':') && ["following", "as follows", "below", "include", "includes", "consist of", "used"].iter().any(|word| lower.contains(word));
    let holds_number = words.chars().any(|c| c.is_ascii_digit());
    leads && !holds_number
}
