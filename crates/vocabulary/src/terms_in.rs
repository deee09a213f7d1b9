//! Which words of the trade stand in a text.

use crate::glossary::Entry;
use crate::vocabulary::Vocabulary;

/// The most words that a term has.
const MOST_WORDS: usize = 4;

/// Shorter words are letters and units, which mean too many things.
const FEWEST_LETTERS: usize = 4;

impl Vocabulary {
    /// The terms, components, standards, movement classes and limits that a text names, in its order, each once. Of a term within another
    /// the longer counts: "deflection track" and not "track".
    pub fn terms_in(&self, text: &str) -> Vec<Entry<'_>> {
        let words: Vec<&str> = text
            .split(|c: char| !(c.is_alphanumeric() || matches!(c, '-' | '\u{2010}' | '\u{2011}')))
            .filter(|word| !word.is_empty())
            .collect();
        let mut found: Vec<Entry<'_>> = Vec::new();
        let mut at = 0;
        while at < words.len() {
            let (taken, entries) = self.longest(words.get(at..).unwrap_or_default());
            for entry in entries {
                if !found.contains(&entry) {
                    found.push(entry);
                }
            }
            at += taken;
        }
        found
    }

    /// What the longest term that a text begins with means, and how many words it takes; one word and nothing, where it begins with none.
    fn longest(&self, words: &[&str]) -> (usize, Vec<Entry<'_>>) {
        for count in (1..=MOST_WORDS.min(words.len())).rev() {
            let term = words.get(..count).unwrap_or_default().join(" ");
            if term.len() < FEWEST_LETTERS {
                continue;
            }
            let entries: Vec<Entry<'_>> =
                [term.as_str(), term.strip_suffix('s').unwrap_or_default()]
                    .into_iter()
                    .flat_map(|term| self.entries(term))
                    .filter(|entry| {
                        !matches!(
                            entry,
                            Entry::Property(_) | Entry::Attribute(_) | Entry::Rating(_)
                        )
                    })
                    .collect();
            if !entries.is_empty() {
                return (count, entries);
            }
        }
        (1, Vec::new())
    }
}

#[cfg(test)]
mod tests {
    use crate::vocabulary;

    #[test]
    fn the_longer_term_counts_and_each_once() {
        let titles = |text: &str| -> Vec<String> {
            let found = vocabulary().terms_in(text);
            found
                .iter()
                .map(|entry| entry.title().to_lowercase())
                .collect()
        };
        let found =
            titles("Deflection track, min 25 MSG. Deflection tracks are fastened to the deck.");
        // A deflection track is a runner; a listing says either.
        assert_eq!(found, ["runner", "steel deck"]);
        assert!(titles("in. of a 2 h").is_empty());
        assert_eq!(titles(""), Vec::<String>::new());
    }
}
