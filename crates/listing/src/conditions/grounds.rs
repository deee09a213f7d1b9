//! Labels of sentences that say of which part of the building, or of which sort of joint, they are: "Walls: min 4 in. Floors: min 6 in.", "Curved joints: radius
//! 20 ft minimum", "Stone floors: inlay max 22 mm".
//!
//! Walls and floors count only where the text labels another sentence, or another part of one, with the other: a label alone may name what is described. Of
//! sorts of joints and grounds only those count that are no rule, as curved joints and parking decks. Whether a joint is one, the words say, for a person.
//! What it would misread: a joint between a floor and a wall of which both are described in one paragraph; so words of how they are built decline, and other
//! numbers are open.

use super::Found;
use super::places::found;
use crate::rules::Sentence;

/// Parts of the building that a text may set against each other, where the words are alike.
const PARTS: &[&[&str]] = &[
    &["walls", "floors", "roofs"],
    &["wall joints", "floor joints", "roof joints"],
    &["in walls", "in floors", "in roofs"],
    &["for walls", "for floors", "for roofs"],
    &["in wall joints", "in floor joints"],
    &["for wall joints", "for floor joints"],
];

/// What sets a sort of joint or ground apart from the usual.
const SORTS: &[&str] = &[
    "curved",
    "curving",
    "radiused",
    "skewed",
    "inclined",
    "sloped",
    "sloping",
    "parking",
    "stone",
    "tiled",
    "existing",
    "old",
    "porous",
    "chipped",
    "damaged",
    "defective",
];

/// Words that say how walls and floors are built: a joint between both has both.
const BUILT: &[&str] = &[
    "thick",
    "thickness",
    "density",
    "concrete",
    "masonry",
    "block",
    "gypsum",
    "board",
    "studs",
    "rated",
    "rating",
    "ratings",
    "weight",
];

/// What is of such a sort.
const OF_SORT: &[&str] = &[
    "joint", "joints", "deck", "decks", "floor", "floors", "wall", "walls", "slab", "slabs",
    "edge", "edges", "face", "faces", "surface", "surfaces", "length", "lengths",
];

pub(super) fn grounds(sentence: &Sentence<'_>) -> Vec<Found> {
    let begins = |at: &usize| *at == 0 || sentence.is_sign(*at - 1, ';');
    (0..sentence.tokens.len())
        .filter(begins)
        .filter_map(|first| labelled(sentence, first))
        .chain(spoken_of(sentence))
        .collect()
}

/// `Porous faces primed, one coat`, `Chipped edges are lapped 5 mm`: a sort of ground as the subject of a sentence that says what is done there.
fn spoken_of(sentence: &Sentence<'_>) -> Option<Found> {
    const VERBS: &[&str] = &["is", "are", "shall", "must", "need", "needs", "get", "take"];
    const FOUND: &[&str] = &[
        "porous",
        "chipped",
        "damaged",
        "defective",
        "curved",
        "skewed",
    ];
    let of_sort = sentence.is_any(0, FOUND) && sentence.is_any(1, OF_SORT);
    let done = sentence.is_any(2, VERBS) || sentence.word(2).ends_with("ed");
    let denied = sentence.has_any(0, sentence.tokens.len(), crate::rules::NEGATIONS);
    (of_sort && done && !denied).then(|| found(sentence, 0, 2))
}

fn labelled(sentence: &Sentence<'_>, first: usize) -> Option<Found> {
    const LONGEST: usize = 3;
    let colon = (first + 1..=first + LONGEST).find(|at| sentence.is_sign(*at, ':'))?;
    let plain = (first..colon).all(|at| sentence.has_word(at));
    let words = sentence.words(first, colon);
    let of_sort =
        colon == first + 2 && sentence.is_any(first, SORTS) && sentence.is_any(first + 1, OF_SORT);
    let told = of_sort
        || labels_another(sentence.running_text(), &words.to_lowercase())
            && !sentence.has_any(colon, sentence.tokens.len(), BUILT);
    (plain && told).then(|| found(sentence, first, colon))
}

/// Whether a text in small letters labels something with another part of the building than `own` is, in the same way.
fn labels_another(text: &str, own: &str) -> bool {
    let Some(parts) = PARTS.iter().find(|parts| parts.contains(&own)) else {
        return false;
    };
    parts.iter().filter(|part| **part != own).any(|part| {
        let mut places = text.match_indices(part);
        places.any(|(at, _)| {
            let before = text.get(..at).unwrap_or_default().trim_end();
            let begins = before.is_empty() || before.ends_with(['.', ';', '-', '–', '—']);
            let behind = text.get(at + part.len()..).unwrap_or_default();
            begins && behind.starts_with(':')
        })
    })
}
