//! Where the marks of footnotes stand, so that a note speaks of what the item speaks of that cites it.

use std::collections::BTreeMap;

use crate::outline::{OutlineItem, Paragraph};

/// The items that cite each footnote first, by its mark as it is written there.
#[derive(Debug, Default)]
pub(super) struct FootnoteMarks {
    in_titles: BTreeMap<String, usize>,
    in_texts: BTreeMap<String, usize>,
    /// Footnotes whose own mark stands in round brackets, as `[a]`.
    round: Vec<String>,
}

impl FootnoteMarks {
    pub(super) fn of(text: &str, items: &[OutlineItem]) -> Self {
        let is_footnote = |item: &&OutlineItem| item.path.starts_with('[');
        let mut marks = Self::default();
        let longest = items.iter().filter(is_footnote);
        let Some(longest) = longest.map(|item| item.path.len()).max() else {
            return marks;
        };
        let mut seen: BTreeMap<&str, bool> = BTreeMap::new();
        for (index, item) in items.iter().enumerate() {
            if is_footnote(&item) {
                let round = item.heading.of(text) == rounded(&item.path);
                seen.entry(&item.path).or_insert(round);
                continue;
            }
            for mark in bracketed(&item.title, longest) {
                marks.in_titles.entry(mark.to_owned()).or_insert(index);
            }
            for piece in item.paragraphs.iter().flat_map(Paragraph::pieces) {
                for mark in bracketed(piece.of(text), longest) {
                    marks.in_texts.entry(mark.to_owned()).or_insert(index);
                }
            }
        }
        let round = seen.into_iter().filter(|(_, round)| *round);
        marks.round = round.map(|(path, _)| path.to_owned()).collect();
        marks
    }

    /// The first item that cites a footnote, in its title or else in its text.
    pub(super) fn citing(&self, footnote: &str) -> Option<usize> {
        let is_round = self.round.iter().any(|path| path == footnote);
        let mark = if is_round {
            rounded(footnote)
        } else {
            footnote.to_owned()
        };
        let places = [&self.in_titles, &self.in_texts];
        places
            .into_iter()
            .find_map(|places| places.get(&mark).copied())
    }
}

/// `(a)` for `[a]`.
fn rounded(mark: &str) -> String {
    mark.replace('[', "(").replace(']', ")")
}

/// What stands in brackets in words, brackets included, and is no longer than a mark may be.
fn bracketed(words: &str, longest: usize) -> impl Iterator<Item = &str> {
    words
        .match_indices(['[', '('])
        .filter_map(move |(at, open)| {
            let close = if open == "[" { ']' } else { ')' };
            let behind = words.get(at..)?;
            let mut near = behind.char_indices().take_while(|(end, _)| *end < longest);
            let (end, _) = near.find(|(_, c)| *c == close)?;
            behind.get(..=end)
        })
}
