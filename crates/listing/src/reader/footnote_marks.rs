//! Where the marks of footnotes stand, so that a note speaks of what the item speaks of that cites it.

use std::collections::{BTreeMap, BTreeSet};

use crate::outline::{OutlineItem, Paragraph};

/// The items that cite each footnote, by its mark as it is written there.
#[derive(Debug, Default)]
pub(super) struct FootnoteMarks {
    in_titles: BTreeMap<String, Vec<usize>>,
    /// Those that don't in their titles.
    in_texts: BTreeMap<String, Vec<usize>>,
    /// The items that cite each note by its name, as "see Note 1", by the note's path in small letters.
    named: BTreeMap<String, Vec<usize>>,
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
                let own = item.heading.of(text).trim_start_matches('(');
                let round = own == rounded(&item.path).trim_start_matches('(');
                seen.entry(&item.path).or_insert(round);
                continue;
            }
            let titled: BTreeSet<&str> = bracketed(&item.title, longest).collect();
            let pieces = item.paragraphs.iter().flat_map(Paragraph::pieces);
            let told = pieces.flat_map(|piece| bracketed(piece.of(text), longest));
            let told: BTreeSet<&str> = told.filter(|mark| !titled.contains(mark)).collect();
            for (marked, places) in [(titled, &mut marks.in_titles), (told, &mut marks.in_texts)] {
                for mark in marked {
                    places.entry(mark.to_owned()).or_default().push(index);
                }
            }
        }
        marks.named = named_notes(text, items);
        let round = seen.into_iter().filter(|(_, round)| *round);
        marks.round = round.map(|(path, _)| path.to_owned()).collect();
        marks
    }

    /// The items that cite a footnote: those that do in their titles, then those that do in their texts.
    /// Of several that cite a note by its name nobody knows which it speaks of.
    pub(super) fn citing(&self, footnote: &str) -> impl Iterator<Item = usize> {
        let named = self.named.get(&footnote.to_lowercase());
        let named = named.filter(|items| items.len() == 1);
        let is_round = self.round.iter().any(|path| path == footnote);
        let mark = if is_round {
            rounded(footnote)
        } else {
            footnote.to_owned()
        };
        let places = [self.in_titles.get(&mark), self.in_texts.get(&mark)];
        let places = places.into_iter().chain([named]);
        places.flatten().flatten().copied()
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

/// The items whose words name each note, by its path in small letters.
fn named_notes(text: &str, items: &[OutlineItem]) -> BTreeMap<String, Vec<usize>> {
    let mut named: BTreeMap<String, Vec<usize>> = BTreeMap::new();
    let of_items = items.iter().enumerate();
    for (index, item) in of_items.filter(|(_, item)| !item.path.starts_with('[')) {
        let pieces = item.paragraphs.iter().flat_map(Paragraph::pieces);
        let told = pieces.map(|piece| piece.of(text));
        for words in told.chain([item.title.as_str()]) {
            for note in notes_in(&words.to_lowercase()) {
                let places = named.entry(note).or_default();
                if places.last() != Some(&index) {
                    places.push(index);
                }
            }
        }
    }
    named
}

/// The paths of the notes that words in small letters name: `[note 1]` of "see note 1".
fn notes_in(lower: &str) -> impl Iterator<Item = String> + '_ {
    const NAME: &str = "note ";
    lower.match_indices(NAME).filter_map(|(at, name)| {
        let behind = lower.get(at + name.len()..)?;
        let label = behind.split(|c: char| !c.is_alphanumeric()).next()?;
        (!label.is_empty()).then(|| format!("[{NAME}{label}]"))
    })
}
