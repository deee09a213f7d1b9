//! What cases that stand side by side may be, besides walls and floors: joints that move and joints that don't, "25 % for static joints, 33 % for moving
//! joints", and layers in their order, "1 in. for the first layer and 1-5/8 in. for the second".
//!
//! Each counts only beside another of its kind, each with a number of its own. "Through the first layer" alone says where a screw goes.

use crate::rules::Sentence;

/// The token behind joints that move, or don't, or of a place in the building: `for static joints`, `in exterior joints`.
pub(super) fn of_movement(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const SORTS: &[&str] = &[
        "static",
        "moving",
        "dynamic",
        "non-moving",
        "nonmoving",
        "non-movement",
        "movement",
        "exterior",
        "interior",
    ];
    let reads = sentence.is_any(at, &["for", "in"])
        && sentence.is_any(at + 1, SORTS)
        && sentence.is_any(at + 2, &["joint", "joints", "gaps"]);
    reads.then_some(at + 3)
}

/// The token behind a layer that is told by its place: `for the first layer`, `through the second`, or as the label of what follows, `second layer,`.
pub(super) fn of_layer(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const PLACES: &[&str] = &[
        "first", "second", "third", "fourth", "1st", "2nd", "3rd", "4th", "base", "face", "inner",
        "outer", "middle",
    ];
    const LAYERS: &[&str] = &["layer", "ply"];
    let the = usize::from(sentence.is_any(at + 1, &["the", "a"]));
    let place = at + 1 + the;
    let introduced =
        sentence.is_any(at, &["for", "in", "through"]) && sentence.is_any(place, PLACES);
    if introduced && sentence.is_any(place + 1, LAYERS) {
        return Some(place + 2);
    }
    // "41 mm through the second", behind "25 mm through the first layer"
    let again = introduced
        && the == 1
        && (0..at).any(|before| of_layer(sentence, before).is_some())
        && sentence
            .token(place + 1)
            .is_none_or(|token| token.word().is_none_or(goes_on));
    if again {
        return Some(place + 1);
    }
    let begins = at == 0 || sentence.is_sign(at - 1, ';') || sentence.is_sign(at - 1, ':');
    let labels = begins && sentence.is_any(at, PLACES) && sentence.is_any(at + 1, LAYERS);
    let told = sentence.is_sign(at + 2, ',')
        || sentence.is_sign(at + 2, ':')
        || sentence.amount_at(at + 2).is_some();
    (labels && told).then_some(at + 2)
}

/// Whether a word goes on behind a layer that is left unsaid: "through the second *at* 12 in."
fn goes_on(word: &str) -> bool {
    ["at", "and", "or", "to", "with", "but", "min", "max", "o.c"]
        .contains(&word.to_lowercase().as_str())
}
