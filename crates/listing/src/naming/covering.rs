//! Widths of what covers a joint, which are no width of the joint: "Steel pan min 8 in. wide", "Steel Cover - Min 18 ga, min 6 in. wide".

use vocabulary::Property;

use super::Subject;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// What covers a joint or lies in it, and has a width of its own.
const THINGS: &[&str] = &[
    "cover",
    "covers",
    "pan",
    "pans",
    "plate",
    "plates",
    "sheet",
    "sheets",
    "flashing",
    "flashings",
    "strip",
    "strips",
    "tape",
    "tapes",
    "blanket",
    "blankets",
    "membrane",
    "closure",
    "angle",
    "angles",
    "bar",
    "bars",
];

/// Words for the joint itself.
const JOINT: &[&str] = &[
    "joint",
    "joints",
    "gap",
    "gaps",
    "opening",
    "openings",
    "void",
    "voids",
    "separation",
    "width",
    "widths",
    "space",
];

/// Whether a number that was taken for the joint's width is that of a thing named in front of it, or by the item's title where the sentence names no joint.
pub(super) fn is_of_a_cover(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
) -> bool {
    if property.name != "joint.width" {
        return false;
    }
    let start = (0..amount.first)
        .rev()
        .find(|at| sentence.is_sign(*at, ';') || sentence.is_sign(*at, ':'))
        .map_or(0, |at| at + 1);
    let joint = sentence.has_any(start, amount.first, JOINT);
    let last = (start..amount.first)
        .rev()
        .find(|at| sentence.is_any(*at, JOINT) || sentence.is_any(*at, THINGS));
    let behind = sentence.skip_parentheses(amount.last);
    let of_joint = sentence.has_any(behind, behind + 2, JOINT);
    // "Joints filled with the strip are not narrower than 30 mm" says it of the joints.
    let said_of_joint = |thing: usize| {
        sentence.has_any(start, thing, JOINT)
            && sentence.has_any(thing, amount.first, &["is", "are", "shall", "must"])
    };
    let told = last.is_some_and(|at| sentence.is_any(at, THINGS) && !said_of_joint(at));
    let led = sentence.is_any(start, &["cover", "strip", "tape"]) && joint;
    !of_joint && !led && (told || !joint && heads_with_thing(&subject.title))
}

/// Whether a title's last word before what says where names such a thing: "Steel Cover", "Expansion joint cover pan".
fn heads_with_thing(title: &str) -> bool {
    let lower = super::named_part(title).to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphabetic());
    let last = words.rfind(|word| THINGS.contains(word) || JOINT.contains(word));
    last.is_some_and(|word| THINGS.contains(&word))
}
