//! What printers and keyboards put for plain characters: soft hyphens, digits of full width, small raised and lowered figures.

/// One character of the source, and what it stands for in running text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Plain {
    /// Where it begins in the words given.
    pub(crate) at: usize,
    /// How many bytes it has there.
    pub(crate) len: usize,
    /// What it stands for; nothing for what only says where a word may break.
    pub(crate) c: Option<char>,
}

/// Whether words hold a character that stands for another.
pub(crate) fn is_disguised(words: &str) -> bool {
    !words.is_ascii()
        && plain(words)
            .any(|plain| words.get(plain.at..).and_then(|rest| rest.chars().next()) != plain.c)
}

/// The characters of some words as what they stand for.
pub(crate) fn plain(words: &str) -> impl Iterator<Item = Plain> + '_ {
    words.char_indices().map(|(at, c)| {
        let end = at + c.len_utf8();
        Plain {
            at,
            len: c.len_utf8(),
            c: meant(
                c,
                words.get(..at).unwrap_or_default(),
                words.get(end..).unwrap_or_default(),
            ),
        }
    })
}

fn meant(c: char, before: &str, after: &str) -> Option<char> {
    let digit_before = before.ends_with(|c: char| digit(c).is_some());
    let digit_after = after.starts_with(|c: char| digit(c).is_some());
    match c {
        // A soft hyphen that ends a line breaks a word as a hyphen does.
        '\u{ad}' if after.is_empty() && before.ends_with(char::is_alphabetic) => Some('-'),
        '\u{ad}' | '\u{200b}'..='\u{200d}' | '\u{2060}' | '\u{feff}' => None,
        '\u{ff01}'..='\u{ff5e}' => char::from_u32(u32::from(c) - 0xfee0),
        // `0·5 mm`
        '·' if digit_before && digit_after => Some('.'),
        // `³⁄₈ in.`
        _ if raised(c).is_some()
            && parted(after.trim_start_matches(|c| raised(c).is_some()), lowered) =>
        {
            raised(c)
        }
        _ if lowered(c).is_some() && parted_before(before) => lowered(c),
        _ => Some(c),
    }
}

fn digit(c: char) -> Option<char> {
    match c {
        '０'..='９' => char::from_u32(u32::from(c) - 0xfee0),
        _ => Some(c).filter(char::is_ascii_digit),
    }
}

/// Whether the stroke of a fraction stands here, a figure of its kind behind it.
fn parted(after: &str, figure: fn(char) -> Option<char>) -> bool {
    after
        .strip_prefix(['/', '\u{2044}', '\u{2215}'])
        .is_some_and(|rest| rest.starts_with(|c| figure(c).is_some()))
}

fn parted_before(before: &str) -> bool {
    let over = before
        .trim_end_matches(|c| lowered(c).is_some())
        .strip_suffix(['/', '\u{2044}', '\u{2215}']);
    over.is_some_and(|over| over.ends_with(|c| raised(c).is_some()))
}

fn raised(c: char) -> Option<char> {
    place(c, &['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'])
}

fn lowered(c: char) -> Option<char> {
    place(c, &['₀', '₁', '₂', '₃', '₄', '₅', '₆', '₇', '₈', '₉'])
}

/// The digit that a figure is, by its place in a row of them.
fn place(c: char, row: &[char]) -> Option<char> {
    let place = row.iter().position(|figure| *figure == c)?;
    char::from_digit(u32::try_from(place).ok()?, 10)
}
