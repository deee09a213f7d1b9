//! Numbers in words.

use measure::Number;

/// The number that a word counts, whatever its capitals: `two`, `single`, `twelve`, `seventy-two`.
pub(crate) fn count_word(word: &str) -> Option<i32> {
    // Most words are no numbers; their first letter and length tell.
    let begins = word.starts_with([
        'o', 't', 'f', 's', 'e', 'n', 'd', 'O', 'T', 'F', 'S', 'E', 'N', 'D',
    ]);
    if !begins || !(3..=14).contains(&word.len()) {
        return None;
    }
    if let Some((tens, ones)) = word.split_once('-') {
        let tens = count_word(tens).filter(|tens| (20..=90).contains(tens) && tens % 10 == 0)?;
        let ones = count_word(ones).filter(|ones| (1..=9).contains(ones))?;
        return Some(tens + ones);
    }
    let known = NUMBERS
        .iter()
        .find(|(name, _)| name.eq_ignore_ascii_case(word));
    known.map(|(_, number)| *number)
}

const NUMBERS: &[(&str, i32)] = &[
    ("one", 1),
    ("single", 1),
    ("two", 2),
    ("double", 2),
    ("twin", 2),
    ("three", 3),
    ("triple", 3),
    ("four", 4),
    ("five", 5),
    ("six", 6),
    ("seven", 7),
    ("eight", 8),
    ("nine", 9),
    ("ten", 10),
    ("eleven", 11),
    ("twelve", 12),
    ("thirteen", 13),
    ("fourteen", 14),
    ("fifteen", 15),
    ("sixteen", 16),
    ("seventeen", 17),
    ("eighteen", 18),
    ("nineteen", 19),
    ("twenty", 20),
    ("thirty", 30),
    ("forty", 40),
    ("fifty", 50),
    ("sixty", 60),
    ("seventy", 70),
    ("eighty", 80),
    ("ninety", 90),
];

/// The share that a word names, whatever its capitals: `half`, `one-third`, `quarter`.
pub(crate) fn fraction_word(word: &str) -> Option<Number> {
    if !word.starts_with([
        'h', 'o', 't', 'q', 'f', 's', 'e', 'H', 'O', 'T', 'Q', 'F', 'S', 'E',
    ]) || word.len() < 4
    {
        return None;
    }
    let known = FRACTIONS
        .iter()
        .find(|(name, ..)| name.eq_ignore_ascii_case(word));
    known.and_then(|(_, over, under)| Number::new(*over, *under))
}

const FRACTIONS: &[(&str, i128, i128)] = &[
    ("half", 1, 2),
    ("one-half", 1, 2),
    ("third", 1, 3),
    ("one-third", 1, 3),
    ("two-thirds", 2, 3),
    ("thirds", 1, 3),
    ("quarter", 1, 4),
    ("one-quarter", 1, 4),
    ("one-fourth", 1, 4),
    ("fourth", 1, 4),
    ("quarters", 1, 4),
    ("three-quarters", 3, 4),
    ("three-fourths", 3, 4),
    ("fifth", 1, 5),
    ("one-fifth", 1, 5),
    ("fifths", 1, 5),
    ("two-fifths", 2, 5),
    ("sixth", 1, 6),
    ("one-sixth", 1, 6),
    ("eighth", 1, 8),
    ("one-eighth", 1, 8),
    ("tenth", 1, 10),
    ("one-tenth", 1, 10),
];
