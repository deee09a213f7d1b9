//! The beginning of a text, for what never stands farther in: a text may be one line without end.

/// At most so many bytes from the beginning of a text, to the end of a character.
pub(crate) fn beginning(text: &str, most: usize) -> &str {
    if text.len() <= most {
        return text;
    }
    let end = (0..=most).rev().find(|at| text.is_char_boundary(*at));
    text.get(..end.unwrap_or_default()).unwrap_or_default()
}
