use super::shared_qualifier::is_spaced;
use super::{Finding, Sentence, bounded_alone};
use crate::model::Relation;
use crate::phrase::Shape;

/// The most tokens between two amounts that are said alike.
const REACH: usize = 16;

/// Words that open the place for which a number holds.
const PLACES: &[&str] = &[
    "in", "on", "at", "onto", "to", "along", "within", "over", "under", "above", "below",
    "beneath", "beyond", "behind", "from", "with",
];

/// What is measured, and so no place: "6 in. in depth".
const MEASURED: &[&str] = &[
    "width",
    "depth",
    "thickness",
    "height",
    "length",
    "diameter",
    "diam",
    "dia",
    "size",
];

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    if let Some(finding) = spaced_elsewhere(sentence, index) {
        return Some(finding);
    }
    let before = said_alike(sentence, index)?;
    let (finding, rule) = bounded_alone(sentence, before)?;
    let limits = matches!(finding.relation, Relation::AtLeast | Relation::AtMost);
    // `no longer than 26 in. in length and 10 in. in width` says nothing of the width.
    let measured = sentence
        .amount(index)
        .is_some_and(|own| sentence.is_any(sentence.skip_parentheses(own.last) + 1, MEASURED));
    let of_one = |at: usize| {
        sentence.is_any(
            at,
            &[
                "longer",
                "shorter",
                "wider",
                "narrower",
                "deeper",
                "shallower",
                "thicker",
                "thinner",
                "taller",
                "higher",
            ],
        )
    };
    if measured
        && sentence
            .amount(before)
            .is_some_and(|amount| (finding.from..amount.first).any(of_one))
    {
        return None;
    }
    let stands_before = sentence
        .amount(before)
        .is_some_and(|amount| finding.from < amount.first);
    (limits && stands_before && rule != "bare value").then_some(finding)
}

/// The limit of a spacing that is said for the rest of the same thing: `max 12 in. OC at the perimeter, 24 in. elsewhere`, `8 in. OC max at the edges, 12 in. in the
/// field`.
fn spaced_elsewhere(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let before = index.checked_sub(1)?;
    let (own, previous) = (sentence.amount(index)?, sentence.amount(before)?);
    let between = previous.last..own.first;
    let plain =
        own.unit == previous.unit && own.shape == Shape::Single && previous.shape == Shape::Single;
    let parted = between.len() > 1
        && (sentence.is_sign(own.first - 1, ',') || sentence.is_word(own.first - 1, "and"));
    let one_statement = between.len() <= REACH
        && !between.clone().any(|at| {
            sentence.is_sign(at, ';') || sentence.is_sign(at, ':') || sentence.is_sign(at, '.')
        });
    let rest = sentence.skip_parentheses(own.last);
    let the = usize::from(sentence.is_any(rest + 1, &["the"]));
    let elsewhere = sentence.is_any(rest, &["elsewhere", "otherwise"])
        || sentence.is_any(rest, &["in", "at", "along"])
            && sentence.is_any(
                rest + 1 + the,
                &[
                    "field",
                    "perimeter",
                    "edges",
                    "ends",
                    "center",
                    "middle",
                    "remainder",
                    "interior",
                ],
            );
    let spaced = is_spaced(sentence, previous.last) && !closed_late(sentence, own.last);
    if !(plain && parted && one_statement && elsewhere && spaced) {
        return None;
    }
    let (finding, rule) = bounded_alone(sentence, before)?;
    (finding.relation == Relation::AtMost && rule != "bare value").then_some(finding)
}

/// Whether a place is followed by a qualifier of its own, or is another of the same: "12 in. from the corner at most", "from each other".
fn closed_late(sentence: &Sentence<'_>, last: usize) -> bool {
    const STRETCH: usize = 7;
    (last..last + STRETCH)
        .take_while(|at| !sentence.is_stop(*at))
        .any(|at| {
            sentence.is_any(
                at,
                &["min", "minimum", "max", "maximum", "other", "another"],
            ) || sentence.is_word(at, "at") && sentence.is_any(at + 1, &["most", "least"])
        })
}

/// The amount before, when the two are said alike, each with its place: `12 in. apart in the face layer and 16 in. in the base layer`.
fn said_alike(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let before = sentence.bound_before(index)?;
    let (own, previous) = (sentence.amount(index)?, sentence.amount(before)?);
    let between = previous.last..own.first;
    let joined = own.first > previous.last && sentence.is_any(own.first - 1, &["and", "or", "nor"]);
    let plain =
        own.unit == previous.unit && own.shape == Shape::Single && previous.shape == Shape::Single;
    if is_spaced(sentence, own.last) && !is_spaced(sentence, previous.last)
        || closed_late(sentence, own.last)
    {
        return None;
    }
    if !(joined && plain)
        || between.len() > REACH
        || between
            .clone()
            .any(|at| sentence.is_sign(at, ';') || sentence.is_sign(at, ':'))
    {
        return None;
    }
    let place = sentence.skip_parentheses(own.last);
    let opens_place = |at: usize| {
        sentence.is_any(at, PLACES)
            && !sentence.is_any(at + 1, MEASURED)
            && sentence.amount_at(at + 1).is_none()
    };
    if measured_alike(sentence, previous.last, own.last) {
        return Some(before);
    }
    let same_word = |at: usize| {
        sentence.word(at) == sentence.word(place)
            || is_opposite(sentence.word(at), sentence.word(place))
    };
    let extent = |at: usize| {
        sentence.is_any(
            at,
            &["to", "onto", "above", "below", "beyond", "behind", "over"],
        )
    };
    let extends = sentence.has_any(
        previous.first.saturating_sub(8),
        previous.first,
        &[
            "extend",
            "extends",
            "extending",
            "reach",
            "reaches",
            "reaching",
            "carried",
            "continued",
            "grouted",
            "filled",
        ],
    );
    if extends
        && extent(place)
        && extent(sentence.skip_parentheses(previous.last))
        && between.clone().all(|at| !sentence.is_stop(at))
    {
        return Some(before);
    }
    let verb = between
        .clone()
        .any(|at| sentence.is_any(at, &["is", "are", "shall", "must", "be", "has", "have"]));
    (opens_place(place) && !verb && between.clone().any(|at| same_word(at) && opens_place(at)))
        .then_some(before)
}

/// Whether each of two numbers says what it measures: `26 in. in length and 10 in. in width`.
fn measured_alike(sentence: &Sentence<'_>, one: usize, other: usize) -> bool {
    let measured = |last: usize| {
        let place = sentence.skip_parentheses(last);
        (sentence.is_word(place, "in") && sentence.is_any(place + 1, MEASURED)).then_some(place + 2)
    };
    measured(one)
        .zip(measured(other))
        .is_some_and(|(end, _)| sentence.is_any(end, &["and", "or", "nor"]))
}

/// Whether two places lie on two sides of one thing: `16 in. below and 8 in. above the floor line`.
fn is_opposite(one: &str, other: &str) -> bool {
    matches!(
        (one, other),
        ("below" | "beneath" | "under", "above" | "over")
            | ("above" | "over", "below" | "beneath" | "under")
    )
}
