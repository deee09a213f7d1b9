//! What a gap lies between: "a gap of 1/4 in. between boards and runner" is no joint's width, and "a separation between floor units and top of board" is one.
//!
//! A gap is the joint's where one side is a floor or what spans as one and the other a wall or its board, or where both are floors or both walls. It isn't where
//! a part of the assembly is one of the two, or boards alone are.

use vocabulary::Property;

use crate::phrase::Amount;
use crate::rules::Sentence;

/// How many tokens before or behind a number the two things may stand.
const REACH: usize = 16;

/// Whether a property is the joint's width or the gap above a board, and the number's gap lies between other things than the two sides of the joint.
pub(super) fn is_between_parts(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
) -> bool {
    const PARTS: &[&str] = &[
        "runner",
        "runners",
        "track",
        "tracks",
        "stud",
        "studs",
        "clip",
        "clips",
        "angle",
        "angles",
        "channel",
        "channels",
        "bracket",
        "brackets",
        "strip",
        "strips",
        "batt",
        "batts",
        "pipe",
        "pipes",
        "sealant",
        "sleeve",
        "fastener",
        "fasteners",
        "plate",
        "plates",
        "layers",
    ];
    const SIDES: &[&str] = &[
        "floor",
        "floors",
        "slab",
        "slabs",
        "deck",
        "roof",
        "ceiling",
        "wall",
        "walls",
        "structure",
        "underside",
        "soffit",
        "beam",
        "beams",
        "fireproofing",
        "units",
        "concrete",
        "parapet",
        "partition",
        "joint",
    ];
    if !["joint.width", "board.gap"].contains(&property.name.as_str()) {
        return false;
    }
    let Some(between) = gap_between(sentence, amount) else {
        return false;
    };
    let named = || (between + 1..between + REACH).take_while(|at| !ends(sentence, *at));
    let two = named().any(|at| sentence.is_any(at, &["and", "&"]));
    let has = |words: &[&str]| named().any(|at| sentence.is_any(at, words));
    has(PARTS) && two || !has(SIDES)
}

/// The "between" that says where a number's gap lies.
fn gap_between(sentence: &Sentence<'_>, amount: &Amount) -> Option<usize> {
    const GAPS: &[&str] = &[
        "gap",
        "gaps",
        "separation",
        "clearance",
        "space",
        "spacing",
        "opening",
    ];
    let before = (amount.first.saturating_sub(REACH)..amount.first)
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ';') && sentence.amount_at(*at).is_none());
    let behind = (amount.last..amount.last + REACH).take_while(|at| {
        !sentence.is_sign(*at, ';')
            && sentence.amount_at(*at).is_none()
            && sentence.token(*at).is_some()
    });
    let near: Vec<usize> = before.chain(behind).collect();
    let between = near
        .iter()
        .copied()
        .find(|at| sentence.is_word(*at, "between"))?;
    near.iter()
        .any(|at| sentence.is_any(*at, GAPS))
        .then_some(between)
}

/// Whether the two things end at a token: a number, a verb or a sign.
fn ends(sentence: &Sentence<'_>, at: usize) -> bool {
    let word = sentence.has_word(at);
    !word
        || sentence.amount_at(at).is_some()
        || sentence.is_any(
            at,
            &[
                "is", "are", "shall", "must", "may", "not", "max", "min", "maximum", "minimum",
                "for", "where",
            ],
        )
}
