//! Columns headed by the members that their cells are for: `W8x28 to W12x26 | W14x30 and heavier`. Such a heading is a case, and names nothing that is
//! measured.

use super::heading::Heading;
use super::rating::Rating;
use crate::model::Expr;

/// Makes columns that are headed by sections columns for these cases.
pub(super) fn as_cases(headings: &mut [Heading]) {
    for heading in headings.iter_mut().skip(1) {
        if heading.rating.is_none() && heading.selects.is_none() && names_sections(&heading.words) {
            let words = core::mem::take(&mut heading.words);
            *heading = Heading::for_case(Rating {
                expr: Expr::Words(words.clone()),
                words,
            });
        }
    }
}

/// Names the cells that nothing else names by the sections that they are for.
pub(super) fn name_the_rest(headings: &mut [Heading]) {
    for heading in headings
        .iter_mut()
        .filter(|heading| heading.words.is_empty())
    {
        let case = heading
            .rating
            .as_ref()
            .filter(|case| names_sections(&case.words));
        if let Some(case) = case {
            heading.words.clone_from(&case.words);
        }
    }
}

/// Whether words are sizes of members and nothing besides: `W8x28 to W10x49`, `IPE 200 or larger`, `W12x50 and heavier`.
fn names_sections(words: &str) -> bool {
    const BESIDE: &[&str] = &[
        "to", "through", "and", "or", "heavier", "lighter", "larger", "smaller", "over", "up",
        "beam", "beams", "column", "columns", "girder", "girders",
    ];
    const SERIES: &[&str] = &["IPE", "HEA", "HEB", "HEM", "UB", "UC"];
    let words: Vec<&str> = words
        .split([' ', ',', '–'])
        .filter(|word| !word.is_empty())
        .collect();
    let is_series = |word: &str| SERIES.contains(&word);
    let numbered = |word: &str| word.bytes().all(|byte| byte.is_ascii_digit());
    let is_size = |at: usize, word: &str| {
        let behind_series = at
            .checked_sub(1)
            .and_then(|before| words.get(before))
            .is_some_and(|before| is_series(before));
        is_section(word) || numbered(word) && behind_series
    };
    let named = words.iter().enumerate().any(|(at, word)| is_size(at, word));
    named
        && words.iter().enumerate().all(|(at, word)| {
            is_size(at, word) || is_series(word) || BESIDE.contains(&word.to_lowercase().as_str())
        })
}

/// Whether a word is the designation of a section: `W8x28`, `HSS6x6`, `HEB200`.
fn is_section(word: &str) -> bool {
    const LONGEST_SERIES: usize = 3;
    let letters = word.bytes().take_while(u8::is_ascii_uppercase).count();
    let sizes = word.get(letters..).unwrap_or_default();
    let mut parts = sizes.split(['x', 'X', '×']);
    let numbered = |part: &str| {
        part.starts_with(|c: char| c.is_ascii_digit())
            && part
                .bytes()
                .all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'/'))
    };
    (1..=LONGEST_SERIES).contains(&letters) && parts.clone().count() >= 2 && parts.all(numbered)
}

#[cfg(test)]
mod tests {
    use super::names_sections;

    #[test]
    fn sizes_of_members_alone_are_cases() {
        for words in [
            "W8x28 to W10x49",
            "W12x50 and heavier",
            "IPE 200 or larger",
            "HSS6x6x1/4",
            "W8x28, W8x31",
        ] {
            assert!(names_sections(words), "{words}");
        }
        for words in [
            "W8x28 flange tip",
            "Depth, W8x28",
            "Beams",
            "200 to 300",
            "EI 90",
            "W 10 to 30",
            "A4",
        ] {
            assert!(!names_sections(words), "{words}");
        }
    }
}
