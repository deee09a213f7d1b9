//! Numbers that say which things are meant, other than joints: "for walls over 12 ft high", "in slabs less than 6 in. thick", "at beams deeper than
//! 12 in.", "over 50 mm, use clips", "within 12 in. of a corner".
//!
//! Only a phrase that opens its stretch, with a comparison and with what it is said for after it, or one that closes a stretch with a number of
//! its own, says which. "With screws not less than 25 mm long" says how long they are, and "in no case less than 4 in." is a limit.

use measure::Dimension;

use super::width::{is_statement_end, skip_attribute};
use super::{Found, test};
use crate::model::Expr;
use crate::rules::{NEGATIONS, Sentence};

/// Parts that a wall or floor is built of, or stands beside: a number after them tells one from another.
const PARTS: &[&str] = &[
    "wall",
    "walls",
    "partition",
    "partitions",
    "slab",
    "slabs",
    "floor",
    "floors",
    "deck",
    "decks",
    "beam",
    "beams",
    "column",
    "columns",
    "stud",
    "studs",
    "plank",
    "planks",
    "ceiling",
    "ceilings",
    "runs",
    "spans",
    "panel",
    "panels",
    "opening",
    "openings",
    "pipes",
    "ducts",
    "boards",
    "board",
];

/// Comparatives that tell things apart with "than" or alone.
const APART: &[&str] = &[
    "wider",
    "narrower",
    "deeper",
    "longer",
    "shorter",
    "thicker",
    "thinner",
    "larger",
    "smaller",
    "greater",
    "less",
    "more",
    "over",
    "above",
    "under",
    "below",
    "exceeding",
    "higher",
    "taller",
    "heavier",
    "lighter",
    "beyond",
    "shallower",
];

/// Words of a place that every joint has.
const EVERYWHERE: &[&str] = &["each", "every", "both", "either", "all", "end", "ends"];

/// A number that says which things are meant.
pub(super) fn things(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let measured = matches!(
        sentence.amount(index)?.unit.dimension(),
        Dimension::Length | Dimension::Gauge | Dimension::Density
    );
    let weather = sentence.amount(index)?.unit.dimension() == Dimension::Temperature;
    if weather {
        return alone(sentence, index).or_else(|| timed(sentence, index));
    }
    measured.then_some(())?;
    parts(sentence, index).or_else(|| alone(sentence, index))
}

/// `For walls over 12 ft high, `, `24 in. o.c. for walls not more than 10 ft high`
fn parts(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    const REACH: usize = 9;
    let amount = sentence.amount(index)?;
    let floor = sentence
        .floor(index)
        .max(amount.first.saturating_sub(REACH));
    let noun = (floor..amount.first).find(|at| sentence.is_any(*at, PARTS))?;
    if let Some(own) = bracketed(sentence, index, noun) {
        return Some(own);
    }
    let opener = (floor..noun)
        .rev()
        .take(3)
        .find(|at| sentence.is_any(*at, &["for", "at", "in", "on", "with"]))?;
    // "In walls at least 8 in. thick, 1/4 in. deep, elsewhere 1/2 in.": what is said of the others shows that the limit tells a case.
    let told_from_others = opener == 0
        && sentence.is_sign(
            skip_attribute(sentence, sentence.skip_parentheses(amount.last)),
            ',',
        )
        && (amount.last..sentence.tokens.len()).any(|at| {
            sentence.is_any(at, &["elsewhere", "otherwise"])
                && !sentence.is_word(at.saturating_sub(1), "unless")
        });
    let plain = (opener + 1..amount.first).all(|at| {
        sentence.has_word(at)
            && !sentence.is_any(
                at,
                &[
                    "shall", "must", "is", "are", "be", "may", "by", "from", "and", "minimum",
                    "min", "maximum", "max",
                ],
            )
            && (told_from_others || !sentence.is_any(at, &["least", "most"]))
    });
    let between = || noun + 1..amount.first;
    let compared = told_from_others || between().any(|at| sentence.is_any(at, APART));
    let denied = between().any(|at| sentence.is_any(at, NEGATIONS));
    // `slabs 6 in. thick or more`, `walls of 200 mm or more`
    let attribute = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    let or_more = [attribute, sentence.skip_parentheses(amount.last)]
        .into_iter()
        .find(|at| {
            sentence.is_word(*at, "or")
                && sentence.is_any(
                    at + 1,
                    &[
                        "more", "greater", "over", "thicker", "wider", "higher", "taller", "less",
                        "under", "thinner",
                    ],
                )
        });
    let from_noun = between().all(|at| sentence.is_any(at, &["of", "a", "with"]));
    let tells = compared || or_more.is_some() && from_noun;
    let end = or_more.map_or(attribute, |or| skip_attribute(sentence, or + 2));
    let opens = opener == 0 || sentence.is_stop(opener - 1) || sentence.is_sign(opener - 1, '.');
    let closes = opener > 0
        && (0..opener)
            .rev()
            .take_while(|at| !sentence.is_stop(*at))
            .any(|at| sentence.amount_at(at).is_some())
        && (is_statement_end(sentence, end) || sentence.is_word(end, "only"));
    // "in studs not lighter than 20 gauge" asks that of the studs.
    let of_walls =
        sentence.is_word(opener, "for") || opens && sentence.is_any(opener, &["at", "on", "in"]);
    // "pipe in slabs 8 in. or less in thickness" asks that of the slabs; "24 in. OC in walls 8 ft high or less" tells of which walls.
    let closes = closes
        && (compared || sentence.is_word(opener, "for") || tells_height(sentence, noun, end));
    let leads = opens && (sentence.is_stop(end) || begins_statement(sentence, end));
    let tells_which = if denied {
        of_walls
    } else {
        !sentence.is_word(opener, "with") || opens || closes
    };
    (plain && tells && tells_which && (leads || closes))
        .then(|| found(sentence, index, opener, end, noun))
}

/// `Brace clips (walls over 12 ft high only)`: brackets that hold nothing but the parts meant and the limit that tells them.
fn bracketed(sentence: &Sentence<'_>, index: usize, noun: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let open = noun
        .checked_sub(1)
        .filter(|open| sentence.is_sign(*open, '('))?;
    let compared = (noun + 1..amount.first)
        .all(|at| sentence.is_any(at, APART) || sentence.is_word(at, "than"));
    let end = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    let close = end + usize::from(sentence.is_word(end, "only"));
    let closes = sentence.closing(open) == Some(close);
    (compared && noun + 1 < amount.first && closes).then(|| found(sentence, index, noun, end, noun))
}

/// `Over 50 mm, use clips`, `Within 12 in. of a corner the anchors are 8 in. apart`: a comparison that opens the sentence.
fn alone(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let up_to = amount.first == 2 && sentence.is_word(0, "up") && sentence.is_word(1, "to");
    let compared = amount.first == 1
        && sentence.is_any(0, &["over", "above", "under", "below", "beyond", "within"]);
    (index == 0 && (up_to || compared)).then_some(())?;
    let mut end = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    end += usize::from(sentence.is_any(end, &["width", "depth", "wide", "height"]));
    let place = sentence.is_any(end, &["of", "from"]);
    if place {
        // The place that a distance is from goes to the comma, or to the article that opens the main clause.
        end = (end + 2..end + 7)
            .find(|at| sentence.is_stop(*at) || begins_statement(sentence, *at))?;
    }
    let within = sentence.is_word(0, "within");
    // "Within 1 in. of each end one pin": every joint has ends.
    if place && sentence.has_any(amount.last, end, EVERYWHERE) {
        return None;
    }
    let leads = sentence.is_stop(end) || (place || !up_to) && begins_statement(sentence, end);
    let denied = sentence.has_any(end, sentence.tokens.len(), NEGATIONS);
    // `Within 3 in. of the joint, remove curing compound.`
    let of_something = !within || sentence.amounts.iter().any(|amount| amount.first >= end);
    // `Within 1 in. of each end one pin` says where the pin is.
    let mut behind = sentence.amounts.iter().filter(|amount| amount.first >= end);
    let at_ends = within && sentence.has_any(0, end, &["end", "ends"]);
    if at_ends && behind.all(|amount| amount.unit == measure::Unit::Count) {
        return None;
    }
    (leads && within == (place && within) && of_something && !denied)
        .then(|| found(sentence, index, 0, end, 0))
}

/// `seven days under 50 °F`, `48 h at temperatures above 50 °F`, `24 h, below 10 °C no less than 48 h`: the weather in which a time must pass.
fn timed(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    const COMPARING: &[&str] = &["below", "above", "under", "over"];
    let amount = sentence.amount(index).filter(|own| own.hi.is_none())?;
    let word = amount.first.checked_sub(1)?;
    let is_time = |index: usize| {
        let amount = sentence.amount(index);
        amount.filter(|amount| amount.unit.dimension() == Dimension::Time)
    };
    let temperatures = word > 1
        && sentence.is_any(word - 1, &["temperatures", "temperature"])
        && sentence.is_any(word - 2, &["at", "in"]);
    let first = if temperatures { word - 2 } else { word };
    let end = sentence.skip_parentheses(amount.last);
    let behind = index
        .checked_sub(1)
        .and_then(is_time)
        .is_some_and(|time| sentence.skip_parentheses(time.last) == first);
    let opens =
        first > 0 && (sentence.is_stop(first - 1) || sentence.is_any(first - 1, &["and", "but"]));
    let leads = is_time(index + 1).is_some_and(|time| {
        (end..time.first).all(|at| {
            sentence.is_sign(at, ',')
                || sentence.is_any(
                    at,
                    &["not", "no", "less", "than", "at", "least", "min", "minimum"],
                )
        })
    });
    // "7 days at 15 °C or above, 14 days otherwise": without the other time it must be as warm as that.
    let told_apart = (index + 1..sentence.amounts.len()).any(|index| is_time(index).is_some())
        && sentence.has_any(
            end,
            sentence.tokens.len(),
            &["otherwise", "cooler", "colder", "below", "under"],
        );
    let or_beyond = told_apart
        && sentence.is_word(word, "at")
        && sentence.is_any(end, &["or", "and"])
        && sentence.is_any(
            end + 1,
            &[
                "above", "over", "higher", "more", "warmer", "below", "lower", "colder",
            ],
        );
    let end = end + if or_beyond { 2 } else { 0 };
    let another = || (0..index.saturating_sub(1)).any(|index| is_time(index).is_some());
    let ends = is_statement_end(sentence, end) || sentence.is_sign(end, ')') && another();
    let tells = behind && ends || opens && leads && !or_beyond;
    (tells && (sentence.is_any(word, COMPARING) || or_beyond))
        .then(|| found(sentence, index, first, end, first))
}

/// Whether a main clause begins at a token.
fn begins_statement(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(
        at,
        &[
            "the", "a", "an", "each", "every", "all", "they", "it", "use", "provide", "install",
            "leave", "add", "fix", "fasten", "space", "brace", "one", "two", "three", "allow",
            "wait", "cure", "extend", "double", "increase", "reduce",
        ],
    )
}

/// Whether a phrase says how high walls are.
fn tells_height(sentence: &Sentence<'_>, noun: usize, last: usize) -> bool {
    sentence.is_any(noun, &["wall", "walls", "partition", "partitions"])
        && sentence.has_any(noun, last, &["high", "height", "taller", "higher", "tall"])
}

fn found(sentence: &Sentence<'_>, index: usize, first: usize, last: usize, noun: usize) -> Found {
    let height = tells_height(sentence, noun, last);
    let words = Expr::Words(sentence.words(first, last).to_owned());
    let expr = height
        .then(|| test(sentence, index, "wall.height"))
        .flatten()
        .unwrap_or(words);
    Found {
        first,
        last,
        expr,
        triggers: vec![index],
        parts: Vec::new(),
    }
}
