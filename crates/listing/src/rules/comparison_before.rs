mod case;
mod negation;
mod placed;
mod refused;
mod relation;
mod waiting;
mod words;

pub(super) use self::negation::negation;
pub(crate) use self::refused::is_refused;
pub(super) use self::relation::is_held_under;
pub(crate) use self::words::{NEGATIONS, compares_down, compares_up};

use measure::Dimension;

use self::case::names_a_case;
use self::negation::{after_nor, neither};
use self::placed::{above_or_below, is_gone_past, is_placed};
use self::refused::work_stops;
use self::relation::{alone, at_or, than, than_plus};
use self::waiting::{kept_from, not_before};
use super::denied::{carried_negation, denied_deviation, second_verb_denied};
use super::ruled_out::is_ruled_out;
use super::turned_down::{is_taken_away, is_turned_down};
use super::{Finding, Sentence};
use crate::model::Relation;

#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    let mut at = first.checked_sub(1)?;
    // `Depth of packing not less than: 100 mm`
    if sentence.is_sign(at, ':') && at > floor && sentence.is_word(at - 1, "than") {
        at -= 1;
    }
    // `not less than a total of 4 in.`, `of not over the 2 in.`
    while at > floor
        && (sentence.is_any(at, &["of", "a", "an", "the", "total", "about"])
            || sentence.is_sign(at, '+'))
        && at > first.saturating_sub(4)
    {
        at -= 1;
    }
    // `jointed no closer than every 900 mm`
    if at > floor && sentence.is_any(at, &["every", "each"]) && sentence.is_word(at - 1, "than") {
        at -= 1;
    }
    if let Some(finding) = not_before(sentence, index).or_else(|| kept_from(sentence, index)) {
        return Some(finding);
    }
    if let Some(from) = neither(sentence, at) {
        return Some(Finding::sure(Relation::Exactly, from));
    }
    if let Some(finding) = after_nor(sentence, at) {
        return Some(finding);
    }
    if is_placed(sentence, index, at, floor) || is_gone_past(sentence, at, floor) {
        return None;
    }
    let (relation, from) = above_or_below(sentence, index, at, floor)
        .or_else(|| than(sentence, at, floor))
        .or_else(|| than_plus(sentence, at, floor))
        .or_else(|| alone(sentence, at, first))?;
    if relation == Relation::AtLeast && sentence.is_word(from, "at") {
        return Some(Finding::sure(relation, from));
    }
    // "may be walked on after 3 days"
    let near = from.saturating_sub(7).max(floor);
    // "Paint after 72 hours."
    let told =
        sentence.is_any(0, &["paint", "overcoat", "recoat", "load", "walk", "sand"]) && near == 0;
    let allowed =
        sentence.is_word(from, "after") && (told || sentence.has_any(near, from, &["may", "can"]));
    if allowed {
        return Some(Finding::sure(Relation::AtLeast, from));
    }
    if matches!(sentence.word(from), "before" | "after") {
        return negation(sentence, from, floor)
            .and_then(|at| Some(Finding::sure(relation.negated()?, at)));
    }
    if let Some((relation, from)) = at_or(sentence, at) {
        return Some(Finding::sure(relation, from));
    }
    if let Some(negation) = second_verb_denied(sentence, index, from) {
        return Some(Finding::sure(relation.negated()?, negation));
    }
    let strict = matches!(relation, Relation::MoreThan | Relation::LessThan);
    if strict && is_taken_away(sentence, index) && !is_refused(sentence, index) {
        return None;
    }
    if strict
        && (is_refused(sentence, index)
            || is_ruled_out(sentence, index)
            || is_turned_down(sentence, index))
    {
        return Some(Finding::sure(relation.negated()?, from));
    }
    if let Some(negation) = sentence.forbidding(first) {
        return Some(Finding::sure(relation.negated()?, negation));
    }
    if strict && work_stops(sentence, index, from) {
        return Some(Finding::sure(relation.negated()?, from));
    }
    if let Some(negation) = negation(sentence, from, floor)
        .or_else(|| carried_negation(sentence, index, from, floor))
        .or_else(|| denied_deviation(sentence, from))
    {
        return Some(Finding::sure(relation.negated()?, negation));
    }
    if strict && names_a_case(sentence, index, from, floor) {
        return None;
    }
    // `The wall may be taller than 4 m provided ...` limits nothing.
    let free = strict
        && (from.saturating_sub(4).max(floor)..from).any(|at| {
            sentence.is_any(at, &["may", "can"]) && sentence.is_any(at + 1, &["be", "have"])
        });
    if free {
        return None;
    }
    let place_or_size = matches!(
        sentence.amount(index)?.unit.dimension(),
        Dimension::Length | Dimension::Count | Dimension::Gauge
    );
    if !place_or_size {
        return Some(Finding::sure(relation, from));
    }
    // `over 1 in. of packing` may be the preposition; without a negation, only a comparative with "than" is sure.
    let named =
        at > floor && sentence.is_any(at - 1, &["length", "width", "depth", "thickness", "height"]);
    let stays = at > floor && sentence.is_any(at - 1, &["stay", "stays", "remain", "remains"]);
    if named
        || stays
        || sentence.is_word(at, "than")
        || sentence.is_any(at, &["exceeding", "exceeds", "exceed", "excess"])
        || sentence.is_word(at, "to")
    {
        return Some(Finding::sure(relation, from));
    }
    None
}
