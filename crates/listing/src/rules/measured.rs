//! What two numbers of a list say that they measure, and so whether one qualifier reaches both: "max 1/2 in. *recess*, 4 in. *depth*".
//!
//! Only words right beside a number are heard. "Max 2 in., 4 in. deep" in an item about recesses says nothing of what the 2 in. are; the 4 in. are then read
//! as a plain value.

use super::Sentence;
use crate::phrase::Amount;

/// Whether the second of two numbers measures something else.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Apart {
    No,
    Another,
    /// Something else, which is the worse for being more: a recess, a gap.
    Worse,
}

/// What is the worse for being more.
const WORSE: &[&str] = &["recess", "gap", "spacing"];

/// How two numbers of a list differ in what they measure.
pub(super) fn measured_apart(sentence: &Sentence<'_>, previous: &Amount, own: &Amount) -> Apart {
    let joint = own.first.saturating_sub(1);
    let and = sentence.is_any(joint, &["and", "or"]);
    let Some(second) =
        measured_behind(sentence, own).or_else(|| before(sentence, previous.last, own.first))
    else {
        return Apart::No;
    };
    let first = measured_behind(sentence, previous).or_else(|| before(sentence, 0, previous.first));
    // `1/2 in. and 1 in. wide`: the measure is said of both.
    let shared = first.is_none() && and && joint == sentence.skip_parentheses(previous.last);
    if shared || first == Some(second) {
        Apart::No
    } else if first.is_some() && WORSE.contains(&second) {
        Apart::Worse
    } else {
        Apart::Another
    }
}

/// The measure that the words right behind a number name: `deep`, `wet thickness`, `sealant depth`.
pub(crate) fn measured_behind(sentence: &Sentence<'_>, amount: &Amount) -> Option<&'static str> {
    const REACH: usize = 3;
    let start = sentence.skip_parentheses(amount.last);
    if super::is_spaced(sentence, amount.last) {
        return Some("spacing");
    }
    let words =
        (start..start + REACH).take_while(|at| sentence.has_word(*at) && !is_joint(sentence, *at));
    words.into_iter().find_map(|at| measure(sentence.word(at)))
}

/// The measure that the words right before a number name: `recess of`, `recessed max`.
fn before(sentence: &Sentence<'_>, floor: usize, first: usize) -> Option<&'static str> {
    const REACH: usize = 3;
    let words = (floor.max(first.saturating_sub(REACH))..first).rev();
    let words = words
        .take_while(|at| sentence.has_word(*at) && !sentence.is_any(*at, &["and", "or", "with"]));
    words.into_iter().find_map(|at| measure(sentence.word(at)))
}

fn is_joint(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.amount_at(at).is_some()
        || sentence.is_any(
            at,
            &[
                "and", "or", "in", "for", "at", "on", "with", "of", "to", "over", "onto", "into",
                "by", "when", "where", "if", "from",
            ],
        )
}

/// The measure that a word names.
pub(super) fn measure(word: &str) -> Option<&'static str> {
    Some(match word {
        "thick" | "thk" | "thickness" | "thicknesses" => "thickness",
        "deep" | "depth" | "depths" => "depth",
        "wide" | "width" | "widths" | "joint" | "joints" => "width",
        "long" | "length" | "lengths" => "length",
        "high" | "height" | "tall" => "height",
        "recess" | "recessed" => "recess",
        "gap" | "gaps" => "gap",
        "spacing" | "spacings" | "spaced" | "apart" | "oc" | "o.c" => "spacing",
        "embedment" | "embedded" | "embed" => "embedment",
        "overlap" | "lap" | "lapped" | "laps" => "overlap",
        "diameter" | "diam" | "dia" => "diameter",
        "leg" | "legs" => "leg",
        "flange" | "flanges" => "flange",
        "penetration" => "penetration",
        "bearing" => "bearing",
        _ => return None,
    })
}
