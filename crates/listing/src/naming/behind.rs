//! Sizes of what a thing reaches: the 6 in. of "sealant lapped onto wall at least 6 in. thick" are the wall's, and none of the sealant's.
//!
//! What it would misread: a size of the thing itself that is said right behind where it goes, "sealant applied to walls min 3 in. thick".

use measure::Dimension;
use vocabulary::Property;

use super::{Mention, Subject, apart};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// How many words may stand between the preposition and the noun: "in *2 hr rated* floors".
const WORDS_BETWEEN: usize = 4;

/// What a thing itself is laid or cut in: "in plies one inch thick".
const SHAPES: &[&str] = &[
    "ply", "plies", "layer", "layers", "coat", "coats", "batt", "batts", "strip", "strips",
];

/// What a building stands of.
const STANDING: &[&str] = &[
    "wall", "floor", "concrete", "beam", "stud", "board", "joint",
];

/// The thing behind a preposition that a number stands right behind as its size, where a property of another thing would be taken.
pub(super) fn sized(
    sentence: &Sentence<'_>,
    amount: &Amount,
    taken: &Property,
    subject: &Subject,
) -> Option<Mention> {
    let measured = measure(sentence, amount)?;
    // "in 2 hr rated floors" may be a condition, and its floors are mentioned all the same.
    let meant = super::mentions(sentence).into_iter();
    let mentions: &Vec<Mention> = &meant.map(|mention| mention.meant(subject)).collect();
    let place = mentions
        .iter()
        .rev()
        .find(|mention| mention.last <= amount.first)?;
    let near = (place.last..amount.first).all(|at| is_bounding(sentence, at));
    let other = taken.component != place.component.name
        && !SHAPES.contains(&place.words.as_str())
        && !carries_its_own(place, taken, measured, mentions)
        && !subject.is_about(&place.component.name)
        && place
            .inner()
            .iter()
            .all(|inner| inner.name != taken.component);
    (near && other && is_led(sentence, place, mentions)).then(|| place.clone())
}

/// The property that the size of a thing is, where one is known and plausible. What covers a thing is said to be on it as well, so that only the
/// sizes of what a building stands of are told by their place alone.
pub(super) fn size_of(
    sentence: &Sentence<'_>,
    amount: &Amount,
    place: &Mention,
) -> Option<&'static Property> {
    let attribute = measure(sentence, amount)?;
    let stands = STANDING.contains(&place.component.name.as_str());
    let property = place.component.property(attribute).filter(|_| stands)?;
    let fits = !place.is_weak() && !apart::is_no_size_of(sentence, amount, property);
    fits.then_some(property)
}

/// Whether a part of the building stands right before where it is, or a joint, which has no depth of its own, is what is filled: "slab over the wall 5
/// in. thick", "packing in joint 4 in. deep".
fn carries_its_own(
    place: &Mention,
    taken: &Property,
    measured: &str,
    mentions: &[Mention],
) -> bool {
    let slab = mentions.iter().any(|mention| {
        mention.last < place.first
            && place.first <= mention.last + 2
            && mention.component.name == taken.component
    });
    let joint = place.component.name == "joint" && taken.attribute != "width";
    let stands = |component: &str| STANDING.contains(&component);
    // "Sealant over packing min 1/2 in. deep" says by the sealant's own word what it measures.
    let own_word = !stands(&place.component.name) && taken.attribute == measured;
    joint || slab && (own_word || stands(&taken.component))
}

/// The mentions that a number may be about: none that is only a place whose own size is told before the verb, "around a beam at least 8 in. deep shall
/// be 4 in. deep".
pub(super) fn still_spoken_of(
    sentence: &Sentence<'_>,
    amount: &Amount,
    mentions: &[Mention],
) -> Vec<Mention> {
    const VERBS: &[&str] = &["shall", "must", "should", "is", "are"];
    const REACH: usize = 2;
    let done = |mention: &Mention| {
        sentence.amounts.iter().any(|size| {
            size.first >= mention.last
                && size.last < amount.first
                && (mention.last..size.first).all(|at| is_bounding(sentence, at))
                && measure(sentence, size).is_some()
                && sentence.has_any(size.last, size.last + REACH, VERBS)
        }) && is_led(sentence, mention, mentions)
    };
    let open = mentions.iter().filter(|mention| !done(mention));
    open.cloned().collect()
}

/// Whether a number with its adjective stands before another thing, which it is of: "3/8 in. thick plate" in an item about sealant.
pub(super) fn is_before_another(
    sentence: &Sentence<'_>,
    amount: &Amount,
    taken: &Property,
    mentions: &[Mention],
) -> bool {
    const ADJECTIVES: &[&str] = &["thick", "thk", "deep", "wide", "high", "tall", "long"];
    let adjective = sentence.skip_parentheses(amount.last);
    let provided = is_provided(sentence, amount);
    let another = |mention: &Mention| {
        mention.first == adjective + 1
            && mention.component.name != taken.component
            && !is_said_of(taken, mention)
            && (provided || !SHAPES.contains(&mention.words.as_str()))
            && mention
                .inner()
                .iter()
                .all(|inner| inner.name != taken.component)
    };
    sentence.is_any(adjective, ADJECTIVES) && mentions.iter().any(another)
}

/// `lined with a 2 in. wide strip`: whether a number is of what something else is provided with.
fn is_provided(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const PROVIDED: &[&str] = &[
        "lined",
        "faced",
        "covered",
        "capped",
        "topped",
        "edged",
        "backed",
        "wrapped",
        "fitted",
        "provided",
        "protected",
        "sealed",
        "closed",
    ];
    let with = (0..amount.first)
        .rev()
        .find(|at| !is_bounding(sentence, *at));
    with.is_some_and(|at| {
        at > 0 && sentence.is_word(at, "with") && sentence.is_any(at - 1, PROVIDED)
    })
}

/// Whether a property is one that is said of what a mention names, as the length of its screws is of a board.
fn is_said_of(property: &Property, mention: &Mention) -> bool {
    let mut parts = property.attribute.split('_');
    parts.any(|part| part.len() > 3 && mention.words.contains(part))
}

/// The attribute that the words behind a number, or its unit, say it is.
fn measure(sentence: &Sentence<'_>, amount: &Amount) -> Option<&'static str> {
    const MEASURES: &[(&str, &[&str])] = &[
        ("thickness", &["thick", "thk", "thickness"]),
        ("depth", &["deep", "depth"]),
        ("width", &["wide", "width"]),
        ("height", &["high", "tall", "height"]),
        ("length", &["long", "length"]),
    ];
    match amount.unit.dimension() {
        Dimension::Gauge => Some("gauge"),
        Dimension::Length => {
            let mut at = sentence.skip_parentheses(amount.last);
            while sentence.is_any(at, &["min", "minimum", "max", "maximum", "nom", "in"]) {
                at += 1;
            }
            let told = MEASURES
                .iter()
                .find(|(_, words)| sentence.is_any(at, words))?;
            Some(told.0)
        }
        _ => None,
    }
}

/// Whether a preposition leads to a thing, behind other words: "onto wall", "in 2 hr rated floors", "in joint of block wall".
fn is_led(sentence: &Sentence<'_>, place: &Mention, mentions: &[Mention]) -> bool {
    const LEADS: &[&str] = &[
        "onto", "over", "to", "in", "into", "around", "through", "within", "against", "under",
        "beneath", "across", "on", "upon",
    ];
    let ends = |at: &usize| sentence.is_stop(*at) || sentence.is_sign(*at, '(');
    let lead = (0..place.first)
        .rev()
        .take(WORDS_BETWEEN)
        .take_while(|at| !ends(at))
        .find(|at| sentence.is_any(*at, LEADS) || sentence.is_word(*at, "of"));
    // "Over packing 4 in. deep, sealant ..." goes on with what lies there.
    let opens = |lead: usize| {
        (lead == 0 || sentence.is_stop(lead - 1))
            && sentence.is_any(
                lead,
                &["over", "around", "under", "beneath", "on", "against"],
            )
    };
    let Some(lead) = lead.filter(|lead| !opens(*lead)) else {
        return false;
    };
    if sentence.is_any(lead, LEADS) {
        return true;
    }
    // "clips of steel" are no steel's: only what a place is part of is one itself.
    let head = mentions.iter().rev().find(|head| head.last == lead);
    head.is_some_and(|head| is_led(sentence, head, mentions))
}

fn is_bounding(sentence: &Sentence<'_>, at: usize) -> bool {
    let bounds =
        super::cues::is_bounding(sentence.word(at)) || super::cues::is_comparing(sentence, at);
    bounds && !sentence.is_any(at, &["in", "by", "to", "is", "are", "be"])
}
