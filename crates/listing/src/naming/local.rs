//! Names of the item's own, in the listing's words.

use measure::Dimension;

use super::Name;
use super::another::has_label;
use super::mentions::Mention;
use super::subject::Subject;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// The words that open a sentence before its first comma or number, when the number stands further on: "Width when installed, measured
/// between ..., max 1 in." A number with a label of its own behind another number is not what they name.
pub(super) fn opening<'a>(sentence: &Sentence<'a>, index: usize) -> &'a str {
    const OWN_MEASURES: &[&str] = &[
        "depth",
        "width",
        "thickness",
        "height",
        "length",
        "recess",
        "overlap",
        "lap",
        "spacing",
        "density",
        "compression",
    ];
    let first = sentence.amount(index).map_or(0, |amount| amount.first);
    if index > 0 && has_label(sentence, sentence.floor(index), first) {
        return "";
    }
    let end = (0..first).find(|at| sentence.is_stop(*at) || sentence.amount_at(*at).is_some());
    // "Joint width over 2 in.: min 4 in.": the case names nothing of the number.
    let sized = |other: &Amount| {
        other.last <= first
            && other.unit.dimension() == Dimension::Length
            && sentence.in_condition(other.first)
    };
    let begins = (0..first).find(|at| sentence.has_word(*at));
    if begins.is_some_and(|at| sentence.in_condition(at)) && sentence.amounts.iter().any(sized) {
        return "";
    }
    // "Min depth 3 in.; max recess for 1 hr, 1/2 in.": what stands behind the semicolon has a measure of its own.
    let semicolon = (0..first).rev().find(|at| sentence.is_sign(*at, ';'));
    let anew = |at: usize| {
        sentence.is_any(at, &["min", "minimum", "max", "maximum"])
            && sentence.is_any(at + 1, OWN_MEASURES)
    };
    if semicolon.is_some_and(|at| (at..first).any(anew)) {
        return "";
    }
    sentence.words(0, end.unwrap_or(first).min(8))
}

/// How many words of a title stand in a name of the item's own.
const TITLE: usize = 4;

/// A name of the item's own, in the listing's words.
pub(super) fn local(attribute: String, subject: &Subject, mention: Option<&Mention>) -> Name {
    let component = match (mention, subject.titles.first()) {
        (Some(mention), _) => mention.words.clone(),
        (None, Some((component, _))) if !component.is_other() => component.title.to_lowercase(),
        // A caption's words would leave none of the attribute's in the property.
        (None, _) => {
            let words = subject.title.split_whitespace().take(TITLE);
            words.collect::<Vec<_>>().join(" ").to_lowercase()
        }
    };
    Name {
        property: None,
        also: None,
        component,
        attribute,
        doubtful: false,
    }
}
