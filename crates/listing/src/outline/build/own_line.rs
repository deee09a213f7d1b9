//! A title that nothing ends but its line: `3. Support clips`, and the text below it, farther in.
//!
//! Only where the line was ended though the next word had room on it, and where that word begins with a capital or a number: `3. Galvanized steel` above `clips, 18 ga`
//! is one sentence.
//!
//! What it would misread: a sentence set in lines that break by its sense, each begun with a capital.

use super::closing::Setting;
use crate::conditions::is_small_word;
use crate::model::Span;
use crate::outline::title::title_len;

/// How many bytes of an item's running text are a title on a line of its own; none where it has no such title.
pub(super) fn title(source: &str, heading: Span, pieces: &[Span], setting: Setting) -> usize {
    let [first, second, ..] = pieces else {
        return 0;
    };
    let (words, next) = (first.of(source), second.of(source).trim_start());
    let same_line = |from: usize, to: usize| !Span::new(from, to).of(source).contains('\n');
    let beside_number = same_line(heading.start(), first.start());
    let below =
        !same_line(first.end(), second.start()) && second.column(source) > heading.column(source);
    let has_room =
        end_of_line(source, *first) + next.split_whitespace().next().unwrap_or_default().len() + 1
            < setting.widest;
    if beside_number && below && has_room && names(words) && begins(next) {
        words.len() + 1
    } else {
        0
    }
}

/// Whether a title says what the packing is of, and so is text as well.
pub(super) fn names_material(title: &str) -> bool {
    let title = title.to_lowercase();
    let material = vocabulary::vocabulary().property("packing.material");
    let values = material
        .into_iter()
        .flat_map(vocabulary::Property::text_values);
    values
        .flat_map(|value| &value.synonyms)
        .any(|synonym| title.contains(synonym.as_str()))
}

/// Whether words name a thing, and are complete.
fn names(words: &str) -> bool {
    const LONGEST: usize = 5;
    let words = words.trim();
    let last = words.rsplit(' ').next().unwrap_or_default();
    words.starts_with(char::is_uppercase)
        && words.ends_with(|c: char| c.is_alphabetic() || matches!(c, ')' | '*'))
        && words.split_whitespace().count() <= LONGEST
        && words.matches('(').count() == words.matches(')').count()
        && !is_small_word(&last.to_uppercase())
        && title_len(words) == words.len()
}

/// Whether a line begins a text: with a capital or a number.
fn begins(line: &str) -> bool {
    line.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
}

/// How far from the edge a piece ends.
fn end_of_line(source: &str, piece: Span) -> usize {
    piece.column(source) + piece.len()
}
