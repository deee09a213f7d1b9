//! What a sentence offers in the place of something, or as something that may be built besides: "In lieu of sealant, a coating may be sprayed in two
//! coats", "Drilled anchors may take the place of pins: 1/4 in. diameter", "A steel angle of 40 mm may be fitted over the seal". And what it says of one
//! of several constructions: "Flexible walls shall be 100 mm thick".
//!
//! Its numbers hold for whoever builds it. Whether it is built, only a person can say, so the words stay words: nothing falls away by itself, and a
//! number that isn't kept is open. What is offered in place of something governs the rest of its stretch, to the next semicolon, and where a thing "may
//! take the place" of another what stands before it, too; what stands before "in lieu of" is the base, and required.
//!
//! What it would misread: "alternatively" before a second way to do the same, which a joint may have beside the first; and a permission that everybody
//! makes use of.

use super::Found;
use crate::clauses::holds_always;
use crate::layout::LIST_SIGNS;
use crate::model::Expr;
use crate::rules::{NEGATIONS, Sentence};

/// What stands in the place of something, word by word.
const IN_PLACE: &[&[&str]] = &[
    &["in", "lieu", "of"],
    &["in", "place", "of"],
    &["in", "the", "place", "of"],
    &["instead", "of"],
    &["as", "an", "alternate"],
    &["as", "an", "alternative"],
    &["as", "alternative", "to"],
    &["as", "alternate", "to"],
];

/// Words that let a thing stand for another, behind the thing.
const MAY_REPLACE: &[&[&str]] = &[
    &["may", "take", "the", "place"],
    &["may", "replace"],
    &["may", "be", "substituted"],
    &["may", "instead", "be"],
    &["may", "be", "used", "instead"],
];

/// What is done with a thing that is added.
const ADDED: &[&str] = &[
    "fitted",
    "laid",
    "placed",
    "installed",
    "added",
    "provided",
    "used",
    "applied",
    "attached",
    "fixed",
    "set",
    "gunned",
    "employed",
];

/// Words of what isn't added but measured.
const MEASURED: &[&str] = &[
    "joint",
    "joints",
    "gap",
    "gaps",
    "opening",
    "openings",
    "maximum",
    "minimum",
    "max",
    "min",
    "tolerance",
    "deviation",
    "total",
    "rate",
    "distance",
    "spacing",
    "depth",
    "width",
    "length",
    "compression",
    "overlap",
    "recess",
    "height",
    "reduction",
    "movement",
];

/// Words that name a framed wall, which stands for a solid one.
const FRAMED: &[&str] = &["flexible"];

/// The words by which a sentence offers something.
pub(crate) fn offers(sentence: &Sentence<'_>) -> Vec<Found> {
    offer(sentence)
        .map(|offer| Found {
            first: offer.first,
            last: offer.last,
            expr: Expr::Words(sentence.words(offer.first, offer.last).to_owned()),
            triggers: Vec::new(),
            parts: Vec::new(),
        })
        .into_iter()
        .collect()
}

/// The amounts that an offer governs; none where the condition isn't one.
pub(super) fn governed(sentence: &Sentence<'_>, condition: &Found) -> Option<Vec<usize>> {
    let own = offer(sentence)?;
    let is_own =
        condition.triggers.is_empty() && own.first == condition.first && own.last == condition.last;
    // A line that is labelled "Alternate:" is about it to its end.
    let labels = own.first == 0 && sentence.is_sign(own.last, ':');
    let end = (own.last..sentence.tokens.len())
        .find(|at| sentence.is_sign(*at, ';') && !labels)
        .unwrap_or(sentence.tokens.len());
    let within = |index: &usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| own.from <= amount.first && amount.first < end)
    };
    is_own.then(|| (0..sentence.amounts.len()).filter(within).collect())
}

/// Whether a condition is an offer.
pub(crate) fn is_offer(sentence: &Sentence<'_>, condition: &Found) -> bool {
    governed(sentence, condition).is_some()
}

/// An offer: its words, and the token from which on it governs.
struct Offer {
    first: usize,
    last: usize,
    from: usize,
}

fn offer(sentence: &Sentence<'_>) -> Option<Offer> {
    if holds_always(sentence.text) {
        return None;
    }
    in_place(sentence)
        .or_else(|| may_replace(sentence))
        .or_else(|| may_be_added(sentence))
        .or_else(|| framed(sentence))
}

/// The length of the words of a list that stand at a token.
fn phrase_at(sentence: &Sentence<'_>, at: usize, list: &[&[&str]]) -> Option<usize> {
    list.iter().find_map(|phrase| {
        let whole = phrase
            .iter()
            .enumerate()
            .all(|(offset, word)| sentence.is_word(at + offset, word));
        whole.then_some(phrase.len())
    })
}

/// `In lieu of sealant, `, `, or alternatively `.
fn in_place(sentence: &Sentence<'_>) -> Option<Offer> {
    const NEAR: usize = 6;
    // Behind its bullet.
    let begun = usize::from(LIST_SIGNS.iter().any(|bullet| sentence.is_sign(0, *bullet)));
    let (first, length) = (0..sentence.tokens.len()).find_map(|at| {
        let phrase = phrase_at(sentence, at, IN_PLACE);
        let alone = at == begun
            && (sentence.is_any(at, &["alternatively", "alternately"])
                || sentence.is_word(at, "or") && sentence.is_sign(at + 1, ','));
        // "Option: an aluminum plate", "Alternate - one strip"
        let labels = at == 0
            && sentence.is_any(at, &["option", "alternate", "alternative"])
            && [':', '-', '–', '—']
                .iter()
                .any(|sign| sentence.is_sign(at + 1, *sign));
        let length = phrase.or((alone || labels).then_some(1))?;
        Some((at, length))
    })?;
    let cast = first > 0 && sentence.is_any(first - 1, &["cast", "poured", "held", "fixed"]);
    let from = opening_of(sentence, first);
    let denied = sentence.has_any(first.saturating_sub(NEAR), first, NEGATIONS);
    let opens = from == first || first == begun;
    let grants = (from..sentence.tokens.len())
        .any(|at| sentence.is_any(at, &["may", "can"]) && !sentence.is_any(at + 1, NEGATIONS))
        || sentence.has_any(
            from,
            sentence.tokens.len(),
            &["permitted", "accepted", "acceptable", "allowed"],
        );
    // `may be used in lieu of pins` offers what stands before it.
    let behind = (from..first).any(|at| sentence.is_any(at, &["may", "can"]));
    let taken = !cast && !denied && (opens || grants);
    taken.then_some(Offer {
        first,
        last: first + length,
        from: if behind { from } else { first },
    })
}

/// `Drilled anchors may take the place of pins`.
fn may_replace(sentence: &Sentence<'_>) -> Option<Offer> {
    let (first, length) = (1..sentence.tokens.len())
        .find_map(|at| Some((at, phrase_at(sentence, at, MAY_REPLACE)?)))?;
    Some(Offer {
        first,
        last: first + length,
        from: opening_of(sentence, first),
    })
}

/// `A steel angle of 40 mm x 40 mm may be fitted over the seal`: a thing that wasn't spoken of, and is no measure.
fn may_be_added(sentence: &Sentence<'_>) -> Option<Offer> {
    const PLURAL: usize = 6;
    const SPOKEN_OF: &[&str] = &[
        "the", "these", "both", "all", "such", "they", "it", "no", "other",
    ];
    let first = (1..sentence.tokens.len()).find(|at| {
        sentence.is_word(*at, "may")
            && sentence.is_word(at + 1, "be")
            && sentence.is_any(at + 2, ADDED)
    })?;
    let from = opening_of(sentence, first);
    // "Hollow-core units may be used provided that they are no less than 8 in. deep"
    let on_terms = sentence.is_any(first + 2, &["used", "employed", "substituted"])
        && sentence.is_any(first + 3, &["provided", "if"])
        && first - from <= PLURAL
        && sentence.word(first - 1).ends_with('s')
        && !sentence.is_any(from, SPOKEN_OF);
    let new = on_terms || sentence.is_any(from, &["a", "an"]);
    let measured = (from..first).any(|at| sentence.is_any(at, MEASURED));
    let denied = sentence.has_any(from, first, &["no", "not", "only", "where", "when", "if"]);
    (new && !measured && !denied).then_some(Offer {
        first,
        last: first + 3,
        from,
    })
}

/// `Flexible walls shall be 100 mm thick`, `Flexible wall: thickness 100 mm`.
fn framed(sentence: &Sentence<'_>) -> Option<Offer> {
    let named = sentence.is_any(0, FRAMED)
        && sentence.is_any(1, &["wall", "walls"])
        && !sentence.is_any(2, &["and", "or", "by"]);
    named.then_some(Offer {
        first: 0,
        last: 2,
        from: 0,
    })
}

/// Where the stretch begins in which a token stands: behind a semicolon, or at the beginning.
fn opening_of(sentence: &Sentence<'_>, at: usize) -> usize {
    let begun = (0..at)
        .rev()
        .find(|before| sentence.is_sign(*before, ';'))
        .map_or(0, |before| before + 1);
    // A bullet, "or", "but" and the like open nothing.
    (begun..at)
        .find(|first| {
            sentence
                .token(*first)
                .is_some_and(|token| token.word().is_some() || token.is_numeric())
                && !sentence.is_any(*first, &["or", "but", "and", "however"])
        })
        .unwrap_or(at)
}
