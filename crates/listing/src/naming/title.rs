//! What an item's title says of the property that a number in it bounds.

use core::ops::Range;

use vocabulary::Property;

use super::score::concept;

/// A title in small letters, with where its words stand.
#[derive(Debug)]
pub(super) struct Title {
    text: String,
    words: Vec<Range<usize>>,
}

impl Title {
    /// The title that parts make, one after another.
    pub(super) fn of(parts: &[&str]) -> Self {
        let text = parts.join(" ").to_lowercase();
        let mut words = Vec::new();
        for word in text.split(|c: char| !c.is_alphabetic()) {
            let start = word.as_ptr().addr() - text.as_ptr().addr();
            if !word.is_empty() {
                words.push(start..start + word.len());
            }
        }
        Self { text, words }
    }

    fn words(&self) -> impl Iterator<Item = &str> {
        self.words
            .iter()
            .filter_map(|range| self.text.get(range.clone()))
    }

    /// Whether it names the property: "Width of the seal before placing", "Depth of packing".
    pub(super) fn names(&self, property: &Property) -> bool {
        let concept = concept(property);
        self.words()
            .any(|word| word == concept || word == property.attribute)
            && (property.attribute == concept
                || property
                    .attribute
                    .split('_')
                    .all(|word| self.text.contains(word)))
    }

    /// Whether it holds the word that tells a property from others of its attribute: "Splices: spaced min 48 in."
    pub(super) fn tells(&self, property: &Property) -> bool {
        let concept = concept(property);
        let mut telling = property
            .attribute
            .split('_')
            .filter(|part| *part != concept && part.len() > 3);
        telling.any(|part| {
            self.words()
                .any(|word| word.strip_suffix('s').unwrap_or(word) == part)
        })
    }
}
