//! Which words can be a product's name.

use super::entry::{JOINTS, Listed, Reader};
use super::limits::{holds_measure, says_limit};
use super::makers::{is_firm_end, split_outside};
use crate::model::ProductName;

impl Reader<'_> {
    /// The products of a list, each of which has to look like one.
    pub(super) fn products(self, list: &str, maker: &str) -> Option<Listed> {
        let mut listed = Listed::default();
        let mut all_typed = false;
        for part in split_outside(list) {
            let (name, notes) = without_brackets(&part);
            let quoted = name.trim().starts_with(['"', '“', '„', '«']);
            let name = name
                .trim()
                .trim_matches([
                    '"', '“', '”', '„', '«', '»', '.', ';', ' ', ',', '*', '†', '‡', '#',
                ])
                .trim();
            let typed = ["Types ", "Type ", "TYPES ", "TYPE ", "types ", "type "]
                .iter()
                .find_map(|kind| name.strip_prefix(kind));
            all_typed |= typed.is_some();
            let name = without_generic(typed.unwrap_or(name));
            if is_colour(name) && !listed.names.is_empty() {
                continue;
            }
            let told = quoted
                || all_typed && name.contains(|c: char| c.is_uppercase() || c.is_ascii_digit());
            let plain = told && is_short(name) && !says_limit_outside(name) && !holds_measure(name);
            // `Sponsor: Orrindale Coatings Ltd`
            let ends_firm = !quoted && is_firm_end(name);
            if name.is_empty() || ends_firm || !(self.is_product(name) || plain) {
                return None;
            }
            for note in notes {
                if says_limit(&note) {
                    listed.limits.push(format!("{name} {note}"));
                }
            }
            listed.names.push(ProductName {
                maker: maker.to_owned(),
                product: name.to_owned(),
            });
        }
        (!listed.names.is_empty()).then_some(listed)
    }

    /// Whether words can be a product's name: short, begun with a capital or a digit, with a coined word, a code or a number, and saying nothing else.
    pub(super) fn is_product(self, words: &str) -> bool {
        let count = words.split_whitespace().count();
        // `Brennafug 200 hvit`: at most one word at the end is small.
        let mut small = words
            .split_whitespace()
            .skip(1)
            .enumerate()
            .filter(|(_, word)| word.chars().all(char::is_lowercase));
        let small = small.all(|(at, _)| at + 2 == count);
        let code = words.split_whitespace().any(|word| {
            let letters = word.chars().filter(|c| c.is_alphabetic()).count();
            let digits = word.chars().any(|c| c.is_ascii_digit());
            let capitals = word
                .chars()
                .filter(|c| c.is_alphabetic())
                .all(char::is_uppercase);
            let head = word.split('-').next().unwrap_or_default();
            let coded = word.contains('-')
                && (2..=4).contains(&head.len())
                && head.chars().all(char::is_uppercase);
            letters >= 2 && capitals && !self.is_plain(word) || coded || digits
        });
        is_short(words)
            && (1..=6).contains(&count)
            && words.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
            && words.chars().any(char::is_alphabetic)
            && !tells_of_document(words)
            && small
            && !says_limit_outside(words)
            && !holds_measure(words)
            && (code || self.ordinary.coins_one(words))
    }

    /// Whether a name begins with a coined word or a code, as one does that stands right behind its maker.
    pub(super) fn opens(self, name: &str) -> bool {
        let first = name.split(' ').next().unwrap_or_default();
        is_coded(first) || self.ordinary.coins_one(first)
    }

    /// Whether a word is coined.
    pub(super) fn coins(self, word: &str) -> bool {
        self.ordinary.is_coined(word) || word.contains(|c: char| c.is_ascii_digit())
    }

    /// Whether a word in capitals is only a word in capitals.
    fn is_plain(self, word: &str) -> bool {
        let letters = word.chars().filter(|c| c.is_alphabetic()).count();
        letters >= 3 && !self.ordinary.coins_one(word)
    }
}

/// Whether a word of several is a code, as a product's name has and a maker's hasn't: `FX`, `40`.
pub(super) fn is_coded(words: &str) -> bool {
    words.split_whitespace().any(|word| {
        let capitals =
            |part: &str| (1..=3).contains(&part.len()) && part.chars().all(char::is_uppercase);
        let short = word.split('-').all(capitals);
        short || word.contains(|c: char| c.is_ascii_digit())
    })
}

/// Whether words name a document or a part of one.
fn tells_of_document(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "page",
        "guide",
        "bulletin",
        "leaflet",
        "manual",
        "brochure",
        "listing",
        "entry",
        "report",
        "design",
        "edition",
        "file",
        "issue",
        "rev",
        "revision",
        "sheet",
        "detail",
        "case",
        "register",
        "drawing",
        "certificate",
        "clause",
        "step",
        "item",
        "items",
        "note",
        "notes",
        "figure",
        "table",
    ];
    words.contains(" / ")
        || words.matches('/').count() > 1
        || words
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| SAYING.contains(&word.to_lowercase().as_str()))
}

/// A name without the words for what it is: `Palliflex 330 joint spray`.
fn without_generic(words: &str) -> &str {
    const GENERIC: [&str; 6] = [
        " joint spray",
        " spray",
        " sealant",
        " coating",
        " mastic",
        " caulk",
    ];
    GENERIC
        .iter()
        .find_map(|generic| words.strip_suffix(generic))
        .filter(|rest| rest.contains(' '))
        .unwrap_or(words)
}

fn is_colour(words: &str) -> bool {
    const COLOURS: &[&str] = &[
        "white", "grey", "gray", "red", "black", "green", "blue", "beige",
    ];
    COLOURS.contains(&words.to_lowercase().as_str())
}

/// Whether words are no more than a name.
fn is_short(words: &str) -> bool {
    const LONGEST: usize = 48;
    let joined = JOINTS.iter().any(|joint| words.contains(joint));
    words.len() <= LONGEST && !joined && !words.contains(['"', '|', '='])
}

/// Small words that say more than a name does.
fn says_limit_outside(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "for", "in", "where", "when", "with", "to", "at", "over", "under", "up", "if", "on",
        "only", "is", "are", "be", "shall", "must", "may", "per", "of",
    ];
    // `Caulk IS` is a name, and `CAULK FOR FLOORS` is more than one.
    let capitals = !words.contains(char::is_lowercase);
    words.split(|c: char| !c.is_alphanumeric()).any(|word| {
        let small = word.to_lowercase();
        let names = ["IS", "IF", "UP", "BE"].contains(&word);
        SAYING.contains(&small.as_str()) && (small == word || capitals && !names)
    })
}

/// A name without what stands in brackets behind it, and that.
pub(super) fn without_brackets(words: &str) -> (String, Vec<String>) {
    let mut name = String::new();
    let mut notes: Vec<String> = Vec::new();
    let mut depth = 0_u32;
    for c in words.chars() {
        match c {
            '(' | '[' => {
                depth += 1;
                if depth == 1 {
                    notes.push(String::new());
                }
            }
            ')' | ']' => depth = depth.saturating_sub(1),
            _ if depth > 0 => {
                if let Some(note) = notes.last_mut() {
                    note.push(c);
                }
            }
            _ => name.push(c),
        }
    }
    (name.split_whitespace().collect::<Vec<_>>().join(" "), notes)
}
