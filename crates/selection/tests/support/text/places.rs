//! Where in a text each statement's number stands: marks of the private use area, one before each number, which are taken out of the
//! finished text.

/// The first letter of the private use area.
const FIRST: u32 = 0xe000;

/// The mark of a statement.
pub fn mark(id: usize) -> char {
    char::from_u32(FIRST + u32::try_from(id).unwrap()).unwrap()
}

fn marked(letter: char) -> Option<usize> {
    let number = u32::from(letter);
    ('\u{e000}'..='\u{f8ff}')
        .contains(&letter)
        .then(|| usize::try_from(number - FIRST).unwrap())
}

/// How many letters a text shows.
pub fn shown(text: &str) -> usize {
    text.chars()
        .filter(|letter| marked(*letter).is_none())
        .count()
}

/// The text without its marks, and where each mark stood, in bytes.
pub fn taken_out(text: &str) -> (String, Vec<(usize, usize)>) {
    let mut plain = String::with_capacity(text.len());
    let mut places = Vec::new();
    for letter in text.chars() {
        match marked(letter) {
            Some(id) => places.push((id, plain.len())),
            None => plain.push(letter),
        }
    }
    (plain, places)
}
