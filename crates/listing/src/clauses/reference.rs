//! References: "as described in the individual Wall and Partition Design", "complying with ASTM C1396", "see Item 3".

use std::sync::LazyLock;

use aho_corasick::AhoCorasick;

use crate::rules::Sentence;

/// Words that refer to how something is built.
const REFERS: [&str; 10] = [
    "described in",
    "in accordance with",
    "as specified in",
    "specified in",
    "as described by",
    "complying with",
    "conforming to",
    "built as",
    "listed in",
    "according to",
];

/// The same, looked for all at once.
static REFERRING: LazyLock<Option<AhoCorasick>> = LazyLock::new(|| AhoCorasick::new(REFERS).ok());

/// What a sentence refers to as its whole requirement: the assembly design or standard that describes how the thing is built.
pub(super) fn reference(sentence: &Sentence<'_>) -> Option<String> {
    let at = REFERRING.as_ref()?.find(sentence.lower)?.end();
    let after = sentence.text.get(at..)?.trim();
    let named = [
        "design",
        "directory",
        "volume",
        "astm",
        "ansi",
        "standard",
        "ul ",
        "en ",
        "iso ",
        "report",
        "drawings",
        "manufacturer",
    ]
    .iter()
    .any(|word| after.to_lowercase().contains(word));
    let end = after
        .find(" and shall")
        .or_else(|| after.find([',', ';', '.', ':']))
        .unwrap_or(after.len());
    let to = after.get(..end)?.trim();
    (named && !to.is_empty()).then(|| to.to_owned())
}
