//! Numbers in words.

use measure::Number;

/// The number that a word counts: `two`, `single`, `twelve`, `seventy-two`.
pub(crate) fn count_word(word: &str) -> Option<i32> {
    if let Some((tens, ones)) = word.split_once('-') {
        let tens = count_word(tens).filter(|tens| (20..=90).contains(tens) && tens % 10 == 0)?;
        let ones = count_word(ones).filter(|ones| (1..=9).contains(ones))?;
        return Some(tens + ones);
    }
    let number = match word {
        "one" | "single" => 1,
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
        "thirteen" => 13,
        "fourteen" => 14,
        "fifteen" => 15,
        "sixteen" => 16,
        "seventeen" => 17,
        "eighteen" => 18,
        "nineteen" => 19,
        "twenty" => 20,
        "thirty" => 30,
        "forty" => 40,
        "fifty" => 50,
        "sixty" => 60,
        "seventy" => 70,
        "eighty" => 80,
        "ninety" => 90,
        _ => return None,
    };
    Some(number)
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
