//! Small steps over text by byte offset; none of them can panic.

/// The text from an offset on; empty when the offset is out of the text or inside a character.
pub(super) fn rest(text: &str, at: usize) -> &str {
    text.get(at..).unwrap_or_default()
}

/// The character before an offset.
pub(super) fn before(text: &str, at: usize) -> Option<char> {
    text.get(..at)?.chars().next_back()
}

/// The offset after any white space.
pub(super) fn skip_space(text: &str, at: usize) -> usize {
    let tail = rest(text, at);
    at + (tail.len() - tail.trim_start().len())
}

/// The offset after as many ASCII digits as stand here.
pub(super) fn skip_digits(text: &str, at: usize) -> usize {
    at + rest(text, at)
        .bytes()
        .take_while(u8::is_ascii_digit)
        .count()
}

/// Whether a character is a raised or lowered figure or letter, as marks of notes are: `4 pcf¹`, `25 %⁽²⁾`.
pub fn is_note_mark(c: char) -> bool {
    matches!(c, '¹' | '²' | '³' | '⁰' | '⁴'..='⁹' | '⁽' | '⁾' | 'ᵃ'..='ᵏ')
}
