//! A noun alone before "to": `joints to 1 in.`, `vertical shear to 15 mm`.

use super::super::Sentence;

/// Whether a noun is nothing's object: "*fill* joints to 4 in." says how far they are filled.
pub(super) fn stands_ungoverned(sentence: &Sentence<'_>, noun: usize) -> bool {
    noun == 0
        || !sentence.has_word(noun - 1)
        || sentence.is_any(noun - 1, &["for", "in", "of", "all", "at"])
}

/// Whether a movement opens its statement with nothing before it but the way it goes: "vertical shear".
pub(super) fn opens_with_movement(sentence: &Sentence<'_>, noun: usize) -> bool {
    const WAYS: &[&str] = &[
        "vertical",
        "horizontal",
        "lateral",
        "longitudinal",
        "transverse",
        "in-plane",
        "out-of-plane",
        "differential",
        "relative",
    ];
    let start = (0..noun)
        .rev()
        .find(|at| !sentence.is_any(*at, WAYS))
        .map_or(0, |at| at + 1);
    start == 0 || sentence.is_stop(start - 1) || sentence.is_sign(start - 1, '.')
}

/// Whether nothing follows a number in its stretch but "wide".
pub(super) fn ends_or_is_wide(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        let after = sentence.skip_parentheses(amount.last);
        !sentence.has_word(after) || sentence.is_any(after, &["wide", "only", "may", "can"])
    })
}
