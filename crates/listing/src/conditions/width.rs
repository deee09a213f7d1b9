//! Lengths that say which joints are meant: "joints wider than 4 in.", "for widths up to 50 mm", "Spalls deeper than 10 mm".

mod compared;
mod denied;
mod introduced;
mod subject;

pub(super) use self::compared::{
    compares, is_comparing, is_joint_noun, is_statement_end, joint_property,
};
pub(super) use self::subject::REQUIRES;
pub(super) use super::meant::{found, skip_attribute};

use self::introduced::introduced;
use self::subject::{listed, subject};
use super::bands::{
    banded, before_joint, from_width, labelled_again, labels, leads_to_value, lettered, two_sided,
};
use super::{Found, things};
use crate::rules::{Sentence, is_ruled_out};

/// Verbs after the number that show that the words before it were the subject.
const VERBS: &[&str] = &[
    "shall", "must", "is", "are", "may", "require", "requires", "need", "needs", "use", "provide",
    "to", "will", "can", "should", "have", "has", "the", "a", "two", "one", "install", "take",
    "takes", "call", "calls", "receive", "receives", "get", "gets", "want", "wants",
];

pub(super) fn widths(sentence: &Sentence<'_>, taken: &[usize]) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    for index in (0..sentence.amounts.len()).filter(|index| !taken.contains(index)) {
        if is_ruled_out(sentence, index) {
            continue;
        }
        let own = introduced(sentence, index)
            .or_else(|| subject(sentence, index))
            .or_else(|| listed(sentence, index, &found))
            .or_else(|| labels(sentence, index))
            .or_else(|| leads_to_value(sentence, index))
            .or_else(|| labelled_again(sentence, index, &found))
            .or_else(|| from_width(sentence, index))
            .or_else(|| lettered(sentence, index))
            .or_else(|| before_joint(sentence, index))
            .or_else(|| banded(sentence, index))
            .or_else(|| things::things(sentence, index));
        found.extend(own.map(|own| two_sided(sentence, index, own)));
    }
    let mut taken = 0;
    // What a condition of two limits holds is no condition of its own.
    found.retain(|own| {
        let apart = own.first >= taken;
        taken = taken.max(own.last);
        apart
    });
    found
}
