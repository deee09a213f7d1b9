//! The words beside a number that say of what kind a thing is: "4 in. of *normal weight* concrete", "5/8 in. *Type X* gypsum board". The number
//! is no more than half of what they ask: a board of that thickness and another type doesn't match.

use std::sync::LazyLock;

use aho_corasick::{AhoCorasick, MatchKind};
use vocabulary::{Property, TextValue, vocabulary};

use crate::naming::Mention;
use crate::rules::{NEGATIONS, Sentence};

/// The properties whose values listings write beside numbers.
const SPOKEN: &[&str] = &[
    "concrete.kind",
    "board.kind",
    "packing.material",
    "packing.facing",
];

/// Words that say too many other things to be taken for a kind.
const UNSURE: &[&str] = &[
    "regular", "plain", "foil", "foam", "liner", "type n", "type s", "type a", "nw", "lw",
];

/// A kind that a sentence speaks of.
#[derive(Debug, Clone)]
pub(super) struct Kind<'a> {
    pub(super) property: &'static Property,
    /// The vocabulary's value.
    pub(super) value: &'static TextValue,
    /// The listing's words.
    pub(super) words: &'a str,
    /// Tokens `[first, last)`.
    pub(super) first: usize,
    pub(super) last: usize,
    /// Whether the words deny it.
    pub(super) denied: bool,
}

struct Index {
    automaton: Option<AhoCorasick>,
    kinds: Vec<(&'static Property, &'static TextValue)>,
}

static INDEX: LazyLock<Index> = LazyLock::new(|| {
    let mut words: Vec<&str> = Vec::new();
    let mut kinds = Vec::new();
    for property in SPOKEN.iter().filter_map(|name| vocabulary().property(name)) {
        for value in property.text_values() {
            for synonym in value
                .synonyms
                .iter()
                .filter(|words| !UNSURE.contains(&words.as_str()))
            {
                words.push(synonym);
                kinds.push((property, value));
            }
        }
    }
    let automaton = AhoCorasick::builder()
        .match_kind(MatchKind::LeftmostLongest)
        .build(words)
        .ok();
    Index { automaton, kinds }
});

/// The kinds that a sentence speaks of, each of a component that it mentions.
pub(super) fn kinds<'a>(sentence: &Sentence<'a>, mentions: &[Mention]) -> Vec<Kind<'a>> {
    let Some(automaton) = &INDEX.automaton else {
        return Vec::new();
    };
    automaton
        .find_iter(sentence.lower)
        .filter_map(|hit| {
            let (property, value) = *INDEX.kinds.get(hit.pattern().as_usize())?;
            let first = sentence
                .tokens
                .iter()
                .position(|token| token.span.start() == hit.start())?;
            let last = sentence
                .tokens
                .iter()
                .rposition(|token| token.span.end() == hit.end())?
                + 1;
            let mentioned = mentions.iter().any(|mention| {
                let inner = mention.inner().iter().copied();
                inner
                    .chain([mention.component])
                    .any(|component| component.name == property.component)
            });
            (mentioned && !sentence.is_supposed(first)).then(|| Kind {
                property,
                value,
                words: sentence.words(first, last),
                first,
                last,
                denied: is_denied(sentence, first, last),
            })
        })
        .collect()
}

/// Whether the words before a kind turn it round, or make it one of more than a list can hold.
fn is_denied(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    const REACH: usize = 4;
    const TURNING: &[&str] = &[
        "than",
        "except",
        "without",
        "unless",
        "any",
        "similar",
        "equivalent",
    ];
    // "no packing" says what is not there.
    let itself = sentence.is_any(first, NEGATIONS);
    itself
        || (first.saturating_sub(REACH)..first)
            .any(|at| sentence.is_any(at, NEGATIONS) || sentence.is_any(at, TURNING))
        || sentence.is_any(last, &["or"])
            && sentence.is_any(
                last + 1,
                &["equal", "equivalent", "better", "similar", "other"],
            )
}
