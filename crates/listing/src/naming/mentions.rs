//! Where a sentence mentions the components that the vocabulary knows.

use std::sync::LazyLock;

use aho_corasick::{AhoCorasick, MatchKind};
use rustc_hash::FxHashMap;
use vocabulary::{Component, Property, vocabulary};

use super::Subject;
use crate::rules::Sentence;

/// A component mentioned in a sentence.
#[derive(Debug, Clone)]
pub(crate) struct Mention {
    pub(crate) component: &'static Component,
    /// The words, in small letters.
    pub(crate) words: String,
    /// Tokens `[first, last)`.
    pub(crate) first: usize,
    pub(crate) last: usize,
    weak: bool,
}

impl Mention {
    /// The components that single words of the phrase name: concrete, of a concrete floor. A phrase that may name several things as a whole names none by its
    /// words: "fill material" is no packing, as "fill" alone may be.
    pub(crate) fn inner(&self) -> &'static [&'static Component] {
        if self.weak {
            return &[];
        }
        INNER.get(self.words.as_str()).map_or(&[], Vec::as_slice)
    }

    /// The mention, of what the titles around it name where its words may be of that too: the "legs" under "Angle" are an angle's.
    pub(crate) fn meant(self, subject: &Subject) -> Self {
        let titled = subject
            .titles
            .iter()
            .map(|(component, _)| *component)
            .find(|component| component.weak_nouns.contains(&self.words))
            .filter(|_| self.weak);
        let fill = || {
            vocabulary()
                .component("other")
                .filter(|_| self.is_titled_fill(subject))
        };
        Self {
            component: titled.or_else(fill).unwrap_or(self.component),
            ..self
        }
    }

    /// Whether it is the fill of an item that is called so, "Fill": the seal of the joint, whatever kind, and never what is packed behind it.
    fn is_titled_fill(&self, subject: &Subject) -> bool {
        let mut titled = subject.title.split(|c: char| !c.is_alphabetic());
        self.weak && self.words == "fill" && titled.any(|word| word.eq_ignore_ascii_case("fill"))
    }

    /// Whether its words may name another component too: "legs".
    pub(crate) const fn is_weak(&self) -> bool {
        self.weak
    }

    /// Whether it is the fill that a property of the packing is not of: "fill material" in an item about what is packed behind it.
    pub(super) fn is_fill_of(&self, property: &Property) -> bool {
        property.component == "packing" && self.words.starts_with("fill material")
    }

    /// What a mention loses for words that may name another component too.
    pub(crate) const fn penalty(&self) -> i32 {
        if self.weak { 3 } else { 0 }
    }
}

struct Nouns {
    automaton: Option<AhoCorasick>,
    places: Vec<(&'static Component, bool)>,
}

static NOUNS: LazyLock<Nouns> = LazyLock::new(|| {
    let mut words = Vec::new();
    let mut places = Vec::new();
    for noun in vocabulary().nouns() {
        let Some(component) = vocabulary().component(&noun.component.name) else {
            continue;
        };
        words.push(noun.words);
        places.push((component, noun.weak));
    }
    let automaton = AhoCorasick::builder()
        .match_kind(MatchKind::LeftmostLongest)
        .ascii_case_insensitive(true)
        .kind(Some(aho_corasick::AhoCorasickKind::ContiguousNFA))
        .build(words)
        .ok();
    Nouns { automaton, places }
});

/// For each phrase of several words, the components that its single words name.
static INNER: LazyLock<FxHashMap<&'static str, Vec<&'static Component>>> = LazyLock::new(|| {
    let phrases = vocabulary()
        .nouns()
        .map(|noun| noun.words)
        .filter(|words| words.contains(' '));
    phrases
        .map(|phrase| {
            let single = phrase
                .split(' ')
                .flat_map(components_in)
                .map(|(component, ..)| component);
            (phrase, single.collect())
        })
        .collect()
});

/// The components that a text names, longest phrase first at each place, in order.
pub(crate) fn components_in(
    text: &str,
) -> Vec<(&'static Component, bool, core::ops::Range<usize>)> {
    let Some(automaton) = &NOUNS.automaton else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(hit) = automaton.find(aho_corasick::Input::new(text).range(at..)) {
        let whole = is_whole_word(text, hit.start(), hit.end());
        if whole && let Some((component, weak)) = NOUNS.places.get(hit.pattern().as_usize()) {
            found.push((*component, *weak, hit.start()..hit.end()));
            at = hit.end();
        } else {
            // A longer phrase that ends inside a word may hide a shorter one that doesn't.
            at = next_word(text, hit.start());
        }
        if at >= text.len() {
            break;
        }
    }
    found
}

fn is_whole_word(text: &str, start: usize, end: usize) -> bool {
    let before = text.get(..start).and_then(|head| head.chars().next_back());
    let after = text.get(end..).and_then(|tail| tail.chars().next());
    !before.is_some_and(char::is_alphanumeric) && !after.is_some_and(char::is_alphanumeric)
}

fn next_word(text: &str, at: usize) -> usize {
    let tail = text.get(at..).unwrap_or_default();
    let word = tail
        .find(|c: char| !c.is_alphanumeric())
        .unwrap_or(tail.len());
    let gap = tail
        .get(word..)
        .and_then(|rest| rest.chars().next())
        .map_or(0, char::len_utf8);
    (at + word + gap).max(at + 1)
}

/// The components that a sentence mentions, by tokens.
pub(crate) fn mentions(sentence: &Sentence<'_>) -> Vec<Mention> {
    components_in(sentence.text)
        .into_iter()
        .filter_map(|(component, weak, range)| {
            let first = sentence
                .tokens
                .iter()
                .position(|token| token.span.end() > range.start)?;
            let last = sentence
                .tokens
                .iter()
                .rposition(|token| token.span.start() < range.end)?
                + 1;
            let words = sentence.lower.get(range)?.to_owned();
            Some(Mention {
                component,
                words,
                first,
                last,
                weak,
            })
        })
        .collect()
}
