//! Numbers in words.

use measure::Number;

/// The number that a word counts: `two`, `single`, `twelve`.
pub(crate) fn count_word(word: &str) -> Option<i32> {
    Some(match word {
        "no" | "none" | "zero" => return None,
        "one" | "single" | "a single" => 1,
        "two" | "double" | "twin" => 2,
        "three" | "triple" => 3,
        "four" => 4,
        "five" => 5,
        "six" => 6,
        "seven" => 7,
        "eight" => 8,
        "nine" => 9,
        "ten" => 10,
        "eleven" => 11,
        "twelve" => 12,
        "fifteen" => 15,
        "sixteen" => 16,
        "twenty" => 20,
        "twenty-four" => 24,
        "thirty" => 30,
        _ => return None,
    })
}

/// The share that a word names: `half`, `one-third`, `quarter`.
pub(crate) fn fraction_word(word: &str) -> Option<Number> {
    let (over, under) = match word {
        "half" | "one-half" | "halves" => (1, 2),
        "third" | "one-third" => (1, 3),
        "two-thirds" | "thirds" => (2, 3),
        "quarter" | "one-quarter" | "one-fourth" | "fourth" => (1, 4),
        "three-quarters" | "three-fourths" => (3, 4),
        "fifth" | "one-fifth" => (1, 5),
        "two-fifths" => (2, 5),
        "sixth" | "one-sixth" => (1, 6),
        "eighth" | "one-eighth" => (1, 8),
        "tenth" | "one-tenth" => (1, 10),
        _ => return None,
    };
    Number::new(over, under)
}
