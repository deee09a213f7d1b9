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

/// The share that a word names, whatever its capitals: `half`, `one-third`, `quarter`, `three-sixteenths`.
pub(crate) fn fraction_word(word: &str) -> Option<Number> {
    // Most words name no share; their length and letters tell.
    let begins = word.starts_with([
        'h', 'q', 'o', 't', 'f', 's', 'e', 'n', 'H', 'Q', 'O', 'T', 'F', 'S', 'E', 'N',
    ]);
    let ends = word.ends_with(['f', 'd', 'r', 'h', 's', 'F', 'D', 'R', 'H', 'S']);
    if !begins || !ends || !(4..=24).contains(&word.len()) || !word.is_ascii() {
        return None;
    }
    let (over, part) = match word.split_once('-') {
        Some((over, part)) if count_word(over).is_some() => (count_word(over)?, part),
        _ => (1, word),
    };
    let known = PARTS.iter().find(|(name, _)| {
        let plural = part.len() == name.len() + 1 && part.ends_with(['s', 'S']);
        let singular = if plural {
            part.get(..name.len())
        } else {
            Some(part)
        };
        singular.is_some_and(|part| part.eq_ignore_ascii_case(name))
    });
    let halves = part.eq_ignore_ascii_case("halves").then_some(2);
    let under = known.map(|(_, under)| *under).or(halves)?;
    Number::new(i128::from(over), under)
}

const PARTS: &[(&str, i128)] = &[
    ("half", 2),
    ("third", 3),
    ("quarter", 4),
    ("fourth", 4),
    ("fifth", 5),
    ("sixth", 6),
    ("eighth", 8),
    ("tenth", 10),
    ("twelfth", 12),
    ("sixteenth", 16),
    ("thirty-second", 32),
];
