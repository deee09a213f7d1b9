//! Numbers of the joint itself: its width, its rating by a letter, and what stands at a joint and is neither.

use measure::Dimension;
use vocabulary::{Property, vocabulary};

use crate::phrase::Amount;
use crate::rules::Sentence;

/// The joint's width where the words right before a length name it, whatever the sentence is about: "25 percent of the joint width of up to 4 in."
pub(in crate::naming) fn joint_width(
    sentence: &Sentence<'_>,
    amount: &Amount,
) -> Option<&'static Property> {
    const LEADS: &[&str] = &[
        "of",
        "is",
        "up",
        "to",
        "not",
        "no",
        "over",
        "under",
        "exceeds",
        "exceeding",
        "exceed",
        "than",
        "at",
        "most",
        "least",
    ];
    // "the joint width less 1/2 in." takes something from it.
    let compares = |at: usize| {
        sentence.is_any(at, &["less", "more", "greater"]) && sentence.is_word(at + 1, "than")
    };
    let width = (0..amount.first).rev().find(|at| {
        !sentence.is_any(*at, LEADS)
            && !compares(*at)
            && !super::super::cues::is_comparing(sentence, *at)
    })?;
    let joint = width.checked_sub(1)?;
    let led = joint
        .checked_sub(1)
        .is_some_and(|led| sentence.is_any(led, &["the", "of", "to", "provided", "where", "a"]));
    let is_named = sentence.is_word(width, "width") && sentence.is_word(joint, "joint") && led;
    let length = amount.unit.dimension() == Dimension::Length;
    (is_named && length && width + 1 < amount.first)
        .then(|| vocabulary().property("joint.width"))?
}

/// The rating of the joint that its letter names, whatever else the sentence speaks of: `achieved an F rating of 2 hours`.
pub(in crate::naming) fn lettered_rating(
    sentence: &Sentence<'_>,
    amount: &Amount,
) -> Option<&'static Property> {
    const REACH: usize = 8;
    if amount.unit.dimension() != Dimension::Time {
        return None;
    }
    let floor = amount.first.saturating_sub(REACH);
    let rating = (floor..amount.first).rev().find(|at| {
        sentence.is_any(
            *at,
            &[
                "rating",
                "f-rating",
                "t-rating",
                "ft-rating",
                "fh-rating",
                "fth-rating",
            ],
        )
    })?;
    let plain = (rating..amount.first).all(|at| !sentence.is_stop(at) || sentence.is_sign(at, ':'));
    let letters = match sentence.word(rating).strip_suffix("-rating") {
        Some(letters) => letters,
        None => sentence.word(rating.checked_sub(1)?),
    };
    let known = plain && ["f", "t", "ft", "fh", "fth"].contains(&letters);
    known.then(|| vocabulary().property(&format!("joint.{letters}_rating")))?
}

/// Whether a length is of something at the joint, and no width of it: "compressed together by 10 mm at every joint", "differences in level of the
/// flanges shall not exceed 3/8 in. in joints up to 2 in. wide".
pub(super) fn is_no_joint_width(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
) -> bool {
    const REACH: usize = 12;
    const WIDTHS: &[&str] = &[
        "width", "widths", "wide", "opening", "openings", "gap", "gaps",
    ];
    const OTHERS: &[&str] = &[
        "compress", "bond", "level", "stagger", "offset", "lap", "overlap", "recess", "project",
        "deep", "depth", "thick", "high", "height", "batten",
    ];
    if property.name != "joint.width" {
        return false;
    }
    let stops = |at: &usize| sentence.is_stop(*at) || sentence.is_sign(*at, '.');
    let before = (amount.first.saturating_sub(REACH)..amount.first)
        .rev()
        .take_while(|at| !stops(at) && sentence.amount_at(*at).is_none());
    let after = (amount.last..amount.last + REACH)
        .take_while(|at| !stops(at) && sentence.amount_at(*at).is_none());
    let near: Vec<usize> = before
        .chain(after)
        .filter(|at| !sentence.in_condition(*at))
        .collect();
    // `1/2 in. depth into max 2 in. joint`
    let behind = sentence.skip_parentheses(amount.last);
    let of_joint = sentence.is_any(behind, &["joint", "joints"]) && !sentence.has_word(behind + 1);
    let widths = of_joint || near.iter().any(|at| sentence.is_any(*at, WIDTHS));
    let others = near.iter().any(|at| {
        let word = sentence.word(*at);
        OTHERS.iter().any(|begins| word.starts_with(begins))
    });
    others && !widths || is_of_another_joint(sentence, amount)
}

/// Whether the joint named last before a number is none, or only a place or a measure: "butt joints", "joint cover", "fixed across the joint", "larger than
/// the joint".
fn is_of_another_joint(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const SORTS: &[&str] = &[
        "butt", "mortar", "saw-cut", "sawcut", "bed", "lap", "mitre", "miter",
    ];
    const THINGS: &[&str] = &[
        "cover", "covers", "compound", "tape", "side", "strip", "strips", "sealant", "filler",
    ];
    const PLACES: &[&str] = &["across", "over", "bridging", "than", "beside", "along"];
    let Some(joint) = (0..amount.first)
        .rev()
        .find(|at| sentence.is_any(*at, &["joint", "joints"]))
    else {
        return false;
    };
    let before = (0..joint)
        .rev()
        .find(|at| !sentence.is_any(*at, &["the", "a", "each", "every"]));
    before.is_some_and(|at| sentence.is_any(at, SORTS) || sentence.is_any(at, PLACES))
        || sentence.is_any(joint + 1, THINGS)
}
