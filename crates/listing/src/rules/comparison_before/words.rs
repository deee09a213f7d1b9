//! Words that compare, and words that turn a comparison round.

/// Comparatives that point up: a thing compared so is more than the number.
pub(super) const UP: &[&str] = &[
    "more", "greater", "thicker", "wider", "deeper", "longer", "higher", "farther", "further",
    "larger", "heavier", "later", "taller", "denser", "bigger", "coarser", "older", "stronger",
    "steeper", "broader", "warmer", "hotter", "slower", "better", "damper", "wetter",
];

/// Comparatives that point down.
pub(super) const DOWN: &[&str] = &[
    "less",
    "fewer",
    "thinner",
    "narrower",
    "shallower",
    "shorter",
    "lower",
    "closer",
    "smaller",
    "lighter",
    "sooner",
    "earlier",
    "nearer",
    "finer",
    "cooler",
    "colder",
    "slimmer",
    "faster",
    "younger",
    "drier",
];

/// Words that compare without "than".
pub(super) const UP_ALONE: &[&str] = &[
    "over",
    "above",
    "exceeding",
    "exceeds",
    "exceed",
    "beyond",
    "pass",
    "passes",
    "surpass",
    "excess",
];

pub(super) const DOWN_ALONE: &[&str] = &["under", "below"];

/// Words that turn a comparison round.
pub(crate) const NEGATIONS: &[&str] = &[
    "not",
    "no",
    "never",
    "nor",
    "neither",
    "nowhere",
    "cannot",
    "none",
    "nothing",
    "without",
    "don't",
    "don’t",
    "doesn't",
    "doesn’t",
    "won't",
    "won’t",
    "can't",
    "can’t",
    "mustn't",
    "mustn’t",
    "shouldn't",
    "shouldn’t",
    "isn't",
    "isn’t",
    "aren't",
    "aren’t",
];

/// Whether a word compares upwards: "thicker".
pub(crate) fn compares_up(word: &str) -> bool {
    UP.contains(&word)
}

/// Whether a word compares downwards: "thinner".
pub(crate) fn compares_down(word: &str) -> bool {
    DOWN.contains(&word)
}
