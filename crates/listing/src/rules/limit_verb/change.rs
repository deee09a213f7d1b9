//! How far something may or must change: `may be reduced to 6 in.`, `shall be raised to 1 in.`

use super::super::Sentence;
use crate::model::Relation;

/// `may be reduced to 6 in.`, `may be cut back to`, `a reduction to 3 in. is allowed`: how far a change may go. "Shall be reduced to 6 in." says
/// what it becomes, and limits nothing.
pub(super) fn allowed_change(sentence: &Sentence<'_>, to: usize) -> Option<Relation> {
    const DOWN: &[&str] = &[
        "reduced",
        "decreased",
        "lowered",
        "narrowed",
        "shortened",
        "thinned",
        "dropped",
    ];
    const UP: &[&str] = &[
        "increased",
        "raised",
        "extended",
        "widened",
        "lengthened",
        "enlarged",
    ];
    const REACH: usize = 8;
    let verb = if sentence.is_any(to.checked_sub(1)?, &["back", "down"])
        && sentence.is_any(to.checked_sub(2)?, &["cut", "brought", "taken", "set"])
    {
        to - 2
    } else {
        to - 1
    };
    let may = || {
        sentence.is_word(verb.saturating_sub(1), "be")
            && sentence.is_any(verb.saturating_sub(2), &["may", "can"])
    };
    let allowed = || {
        let stretch = (to + 1..to + 1 + REACH).take_while(|at| !sentence.is_stop(*at));
        stretch.into_iter().any(|at| {
            sentence.is_any(at, &["is", "are"])
                && sentence.is_any(
                    at + 1,
                    &[
                        "allowed",
                        "permitted",
                        "accepted",
                        "acceptable",
                        "admissible",
                    ],
                )
        })
    };
    let down = verb < to - 1 || sentence.is_any(verb, DOWN);
    if (down && may()) || (sentence.is_word(verb, "reduction") && allowed()) {
        Some(Relation::AtLeast)
    } else if (sentence.is_any(verb, UP) && may())
        || (sentence.is_word(verb, "increase") && allowed())
    {
        Some(Relation::AtMost)
    } else {
        None
    }
}

/// `the lap shall be raised to 1 in.`, `reduce the spacing to 300 mm`: what must be more becomes the least, what must be closer or less the most. A
/// depth that is reduced, or a spacing that is increased, becomes just that, and so does a time.
pub(super) fn demanded_change(
    sentence: &Sentence<'_>,
    to: usize,
    floor: usize,
) -> Option<Relation> {
    const UP: &[&str] = &[
        "increased",
        "raised",
        "doubled",
        "deepened",
        "thickened",
        "increase",
        "raise",
        "double",
        "goes",
        "go",
        "rises",
        "rise",
    ];
    const DOWN: &[&str] = &[
        "reduced",
        "decreased",
        "lowered",
        "reduce",
        "decrease",
        "lower",
        "falls",
        "fall",
        "drops",
        "drop",
        "cut",
    ];
    // What is the worse for being more.
    const APART: &[&str] = &[
        "spacing",
        "spaced",
        "spacings",
        "centres",
        "centers",
        "interval",
        "intervals",
        "movement",
        "shear",
        "distance",
        "gap",
        "width",
        "height",
        "rating",
        "class",
        "time",
    ];
    const REACH: usize = 6;
    let verb = (floor.max(to.saturating_sub(REACH))..to)
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ';') && !sentence.is_sign(*at, ':'))
        .find(|at| sentence.is_any(*at, UP) || sentence.is_any(*at, DOWN))?;
    let between_plain = (verb + 1..to).all(|at| {
        sentence.is_any(
            at,
            &["the", "a", "up", "back", "down", "its", "their", "each"],
        ) || sentence.is_any(at, APART)
            || sentence.is_sign(at, ',')
            || sentence.is_any(
                at,
                &[
                    "depth",
                    "thickness",
                    "lap",
                    "overlap",
                    "embedment",
                    "density",
                ],
            )
    });
    let start = (0..verb)
        .rev()
        .find(|at| sentence.is_sign(*at, ';'))
        .map_or(0, |at| at + 1);
    // "Where the joint width exceeds 2 in., increase to 4 in.": the case is no part of what is changed.
    let worse = (start..to).any(|at| sentence.is_any(at, APART) && !sentence.in_condition(at));
    let may = sentence.has_any(start, verb, &["may", "can", "not", "never"]);
    let timed = sentence.amounts.iter().any(|amount| {
        amount.first > to
            && amount.first <= to + 4
            && amount.unit.dimension() == measure::Dimension::Time
    });
    // `the packing goes down to 4 in. above the floor` says where it ends.
    let down = sentence.has_any(verb + 1, to, &["down", "back"]);
    if !between_plain || may || timed || down && sentence.is_any(verb, UP) {
        return None;
    }
    match (sentence.is_any(verb, UP), worse) {
        (true, false) => Some(Relation::AtLeast),
        (false, true) => Some(Relation::AtMost),
        _ => None,
    }
}
