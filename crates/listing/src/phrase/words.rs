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
    let mut small = [0; LONGEST];
    let small = in_small_letters(word, &mut small)?;
    if small.contains(&b'-') {
        let (tens, ones) = word.split_once('-')?;
        let tens = count_word(tens).filter(|tens| (20..=90).contains(tens) && tens % 10 == 0)?;
        let ones = count_word(ones).filter(|ones| (1..=9).contains(ones))?;
        return Some(tens + ones);
    }
    Some(match small {
        b"one" | b"single" => 1,
        b"two" | b"double" | b"twin" => 2,
        b"three" | b"triple" => 3,
        b"four" => 4,
        b"five" => 5,
        b"six" => 6,
        b"seven" => 7,
        b"eight" => 8,
        b"nine" => 9,
        b"ten" => 10,
        b"eleven" => 11,
        b"twelve" => 12,
        b"thirteen" => 13,
        b"fourteen" => 14,
        b"fifteen" => 15,
        b"sixteen" => 16,
        b"seventeen" => 17,
        b"eighteen" => 18,
        b"nineteen" => 19,
        b"twenty" => 20,
        b"thirty" => 30,
        b"forty" => 40,
        b"fifty" => 50,
        b"sixty" => 60,
        b"seventy" => 70,
        b"eighty" => 80,
        b"ninety" => 90,
        _ => return None,
    })
}

/// The longest word that is looked at, in bytes.
const LONGEST: usize = 24;

/// A word's bytes with ASCII letters made small; none when it is too long.
fn in_small_letters<'b>(word: &str, buffer: &'b mut [u8; LONGEST]) -> Option<&'b [u8]> {
    let small = buffer.get_mut(..word.len())?;
    small.copy_from_slice(word.as_bytes());
    small.make_ascii_lowercase();
    Some(small)
}

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
    let mut small = [0; LONGEST];
    let small = in_small_letters(part, &mut small)?;
    let under = match small.strip_suffix(b"s").unwrap_or(small) {
        b"half" | b"halve" => 2,
        b"third" => 3,
        b"quarter" | b"fourth" => 4,
        b"fifth" => 5,
        b"sixth" => 6,
        b"eighth" => 8,
        b"tenth" => 10,
        b"twelfth" => 12,
        b"sixteenth" => 16,
        b"thirty-second" => 32,
        _ => return None,
    };
    Number::new(i128::from(over), under)
}
