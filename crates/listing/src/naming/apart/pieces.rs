//! Numbers of a part, a piece or a layer of a thing, or of one among others.

use measure::{Dimension, Unit};
use vocabulary::{Property, vocabulary};

use super::super::{Mention, Subject, components_in};
use super::plausible::is_size;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether the word right before or after a number names a part that the property isn't of: "flange 50 mm thick".
pub(super) fn is_of_a_part(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const PARTS: &[(&str, &[&str])] = &[
        ("flange", &["flange", "leg"]),
        ("flanges", &["flange", "leg"]),
        ("stem", &["stem"]),
        ("stems", &["stem"]),
        ("web", &["web"]),
        ("lip", &["lip"]),
        ("lips", &["lip"]),
        ("hole", &["hole"]),
        ("holes", &["hole"]),
        ("slot", &["slot"]),
        ("slots", &["slot"]),
        ("overlap", &["lap"]),
        ("lap", &["lap"]),
    ];
    const BOUNDING: &[&str] = &[
        "min", "minimum", "max", "maximum", "nom", "nominal", "not", "no", "never", "less", "more",
        "than", "at", "least", "most", "of", "is", "are", "a",
    ];
    let floor = amount.first.saturating_sub(5);
    let before = (floor..amount.first)
        .rev()
        .find(|at| !sentence.is_any(*at, BOUNDING))
        .map(|at| sentence.word(at));
    let named = PARTS.iter().find(|(part, _)| before == Some(*part));
    named.is_some_and(|(_, attributes)| {
        !attributes
            .iter()
            .any(|part| property.attribute.contains(part))
    })
}

/// Whether a number is how far one thing touches another, and no size of it: "adhesion width on both flanks at least 10 mm".
pub(super) fn is_of_contact(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const CONTACT: &[&str] = &[
        "adhesion", "adhesive", "bond", "bonding", "bonded", "contact", "bearing",
    ];
    const MEASURES: &[&str] = &["width", "depth", "length", "thickness", "height"];
    const REACH: usize = 8;
    let of_contact = |word: &str| property.attribute.contains(word.trim_end_matches("ing"));
    let right_before = amount.first > 0
        && is_size(property)
        && sentence.is_any(amount.first - 1, &["bonded", "adhered", "bearing"]);
    right_before
        || (amount.first.saturating_sub(REACH)..amount.first)
            .rev()
            .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
            .any(|at| {
                at > 0
                    && sentence.is_any(at, MEASURES)
                    && sentence.is_any(at - 1, CONTACT)
                    && !of_contact(sentence.word(at - 1))
            })
}

/// Whether a number is how much of a thing there is, and no distance: "at splices at least 10 mm sealant".
pub(super) fn is_how_much_of_another(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
) -> bool {
    const LAID: &[&str] = &[
        "sealant",
        "coating",
        "mastic",
        "caulk",
        "wool",
        "fireproofing",
    ];
    let placing =
        property.attribute.ends_with("spacing") || property.attribute.ends_with("distance");
    placing
        && sentence.is_any(amount.last, LAID)
        && !sentence.has_any(
            amount.last + 1,
            amount.last + 3,
            &["spacing", "centers", "centres", "joints"],
        )
}

/// The length of a screw behind its size: `No. 8 by 1/2 in. pan head screw`.
pub(in crate::naming) fn screw_length(
    sentence: &Sentence<'_>,
    index: usize,
) -> Option<&'static Property> {
    let before = sentence.amount(index.checked_sub(1)?)?;
    let own = sentence.amount(index)?;
    let sized = before.unit == Unit::ScrewNumber && own.unit.dimension() == Dimension::Length;
    let by = own.first == before.last + 1
        && (sentence.is_any(before.last, &["by", "x"]) || sentence.is_sign(before.last, '×'));
    (sized && by).then(|| vocabulary().property("fastener.length"))?
}

/// Whether only a word that may mean a piece of anything names what a property is about: "supplied in lengths of 10 ft".
pub(in crate::naming) fn of_any_piece(
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    const PIECES: &[&str] = &[
        "length", "lengths", "piece", "pieces", "flange", "flanges", "web", "webs",
    ];
    let mut named = mentions
        .iter()
        .filter(|mention| mention.component.name == property.component)
        .peekable();
    !subject.is_about(&property.component)
        && named.peek().is_some()
        && named.all(|mention| PIECES.contains(&mention.words.as_str()))
}

/// Whether layers are said to be of another thing than the property's: "three layers of wool" beside a board.
pub(super) fn is_layered_of_another(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
) -> bool {
    const REACH: usize = 4;
    const LAYERS: &[&str] = &["layer", "layers", "ply", "plies"];
    if property.attribute != "layers" {
        return false;
    }
    let behind = (amount.last..amount.last + REACH)
        .take_while(|at| !sentence.is_stop(*at))
        .find(|at| sentence.is_any(*at, LAYERS));
    let before = amount.first.saturating_sub(REACH)..amount.first;
    let before = before.rev().find(|at| sentence.is_any(*at, LAYERS));
    let of = |layers: usize| {
        let of = sentence.is_word(layers + 1, "of");
        (of && sentence.amount_at(layers + 2).is_none())
            .then(|| sentence.words(layers + 2, layers + 2 + REACH))
    };
    let words = match (behind, before) {
        (Some(layers), _) => of(layers).unwrap_or_else(|| sentence.words(amount.last, layers)),
        (None, Some(layers)) => {
            of(layers).unwrap_or_else(|| sentence.words(layers.saturating_sub(2), layers))
        }
        (None, None) => return false,
    };
    let lower = words.to_lowercase();
    let first = lower
        .split([',', ';', '.', ':', '('])
        .next()
        .unwrap_or_default();
    let named = components_in(first);
    let is_wool = property.component == "board" && names_wool(first);
    is_wool
        || !named.is_empty()
            && named
                .iter()
                .all(|(component, ..)| component.name != property.component)
}

/// Whether words name wool or the like, of which no board is made.
pub(in crate::naming) fn names_wool(words: &str) -> bool {
    let lower = words.to_lowercase();
    ["wool", "batt", "insulation"]
        .iter()
        .any(|wool| lower.contains(wool))
}

/// Whether a number is of each of several pieces, "depth 2 x 50 mm", and so no depth of them all.
pub(super) fn is_of_one_piece(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
) -> bool {
    let times = amount
        .first
        .checked_sub(1)
        .is_some_and(|at| sentence.is_word(at, "x") || sentence.is_sign(at, '×'));
    let counted = sentence
        .amounts
        .iter()
        .any(|other| other.unit == Unit::Count && other.last == amount.first);
    let whole = property.attribute == "depth"
        || property.attribute == "thickness" && property.component != "board";
    times && counted && whole
}
