mod bare_noun;
mod change;
mod limited;

use self::bare_noun::{ends_or_is_wide, opens_with_movement, stands_ungoverned};
use self::change::{allowed_change, demanded_change};
use self::limited::{
    ends_by_then, exceed_by, goes_on_from_a_limit, is_of_an_opening, limited_to_a, limiting_verb,
    only_allowed,
};
use super::changes::ends_a_change;
use super::counted_back::is_counted_back;
use super::{Finding, Sentence};
use crate::model::Relation;

#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    if let Some(limited) = limited_to_a(sentence, first) {
        return Some(Finding::sure(Relation::AtMost, limited));
    }
    if let Some(only) = only_allowed(sentence, index) {
        return Some(Finding::sure(Relation::AtMost, only));
    }
    let at = skip_articles(sentence, first, floor)?;
    let finding = |relation, from| Some(Finding::sure(relation, from));
    let word = |back: usize| {
        at.checked_sub(back)
            .map(|at| sentence.word(at))
            .unwrap_or_default()
    };
    match (word(1), word(0)) {
        // `shall be raised to 1 in.`, `goes up to 3-1/4 in. for lightweight`
        (_, "to") if demanded_change(sentence, at, floor).is_some() => {
            finding(demanded_change(sentence, at, floor)?, at)
        }
        ("up", "to")
            if matches!(
                word(2),
                "goes"
                    | "go"
                    | "rises"
                    | "rise"
                    | "increases"
                    | "brought"
                    | "built"
                    | "raised"
                    | "taken"
                    | "increased"
                    | "thickened"
                    | "topped"
            ) =>
        {
            None
        }
        // `at the latest 14 days before the work`
        ("the", "latest" | "earliest") if is_counted_back(sentence, sentence.amount(index)?) => {
            finding(
                if word(0) == "latest" {
                    Relation::AtLeast
                } else {
                    Relation::AtMost
                },
                at.checked_sub(1)?,
            )
        }
        // `the certificate lapses in any event after 60 months`
        (_, "after") if ends_by_then(sentence, index, at, floor) => finding(Relation::AtMost, at),
        ("limited" | "restricted" | "confined" | "up", "to")
        | ("upto", _)
        | ("at", "most")
        | ("the", "latest")
        | ("latest", "after") => finding(Relation::AtMost, at.checked_sub(1)?),
        // `the joint is held to 3/4 in. and movement to 25 %`
        ("held" | "kept", "to") if is_of_an_opening(sentence, at, floor) => {
            finding(Relation::AtMost, at.checked_sub(1)?)
        }
        (_, "to") if goes_on_from_a_limit(sentence, index, at) => finding(Relation::AtMost, at),
        // `the spray must reach 13 pcf`; how far something reaches is a place.
        (modal, "reach" | "attain")
            if matches!(modal, "must" | "shall" | "should" | "to")
                && sentence.amount(index)?.unit.dimension() != measure::Dimension::Length =>
        {
            finding(Relation::AtLeast, at)
        }
        (_, "to") if limiting_verb(sentence, at, floor).is_some() => {
            finding(Relation::AtMost, limiting_verb(sentence, at, floor)?)
        }
        // `the joint is limited to 1 in. and the rating to 2 hr`
        ("rating" | "ratings", "to") if sentence.has_any(0, at, &["limited", "restricted"]) => {
            finding(Relation::AtMost, at)
        }
        // `joints to 1 in.`; but `pack joints to 4 in. deep` says how deep.
        ("joints" | "widths" | "gaps" | "lengths" | "openings", "to")
            if stands_ungoverned(sentence, at - 1) && ends_or_is_wide(sentence, index) =>
        {
            finding(Relation::AtMost, at)
        }
        // `vertical shear to 15 mm`
        ("shear" | "movement" | "deflection" | "displacement" | "settlement", "to")
            if opens_with_movement(sentence, at - 1) && ends_or_is_wide(sentence, index) =>
        {
            finding(Relation::AtMost, at)
        }
        // `RH to 90 pct`
        ("rh" | "humidity", "to") => finding(Relation::AtMost, at),
        ("down", "to")
            if matches!(
                word(2),
                "covered"
                    | "permitted"
                    | "allowed"
                    | "accepted"
                    | "widths"
                    | "joints"
                    | "gaps"
                    | "openings"
                    | "thicknesses"
                    | "sizes"
                    | "depths"
                    | "densities"
            ) =>
        {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        ("down", "to")
            if matches!(
                sentence.amount(index)?.unit,
                measure::Unit::Celsius | measure::Unit::Fahrenheit
            ) =>
        {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        // `the sill may come down to 24 in.`
        ("down", "to")
            if matches!(word(2), "come" | "go" | "drop") && matches!(word(3), "may" | "can") =>
        {
            finding(Relation::AtLeast, at.checked_sub(3)?)
        }
        (_, "to") if ends_a_change(sentence, at).is_some() => {
            finding(ends_a_change(sentence, at)?, at - 1)
        }
        // `200 mm, reducible to 100 mm`, `shift may reach 4 in.`
        ("reducible", "to") => finding(Relation::AtLeast, at.checked_sub(1)?),
        ("may" | "can", "reach") => finding(Relation::AtMost, at.checked_sub(1)?),
        ("at", "least") | ("the", "earliest") | ("earliest", "after" | "at") => {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        // `may be reduced to 6 in.` sets the least, `may be widened to 6 in.` the most.
        (_, "to") if allowed_change(sentence, at).is_some() => {
            finding(allowed_change(sentence, at)?, at.checked_sub(1)?)
        }
        ("and", "including") if word(2) == "to" => finding(Relation::AtMost, at.checked_sub(3)?),
        (extreme, "as") if word(2) == "as" => {
            let relation = match extreme {
                "little" | "short" | "low" | "thin" | "narrow" | "small" | "few" | "close"
                | "near" | "shallow" => Relation::AtLeast,
                "much" | "long" | "high" | "thick" | "wide" | "large" | "many" | "far"
                | "great" | "deep" => Relation::AtMost,
                _ => return None,
            };
            finding(relation, at.checked_sub(2)?)
        }
        _ => exceed_by(sentence, at, floor),
    }
}

/// The token before any articles and fillers that stand before an amount.
fn skip_articles(sentence: &Sentence<'_>, first: usize, floor: usize) -> Option<usize> {
    let mut at = first.checked_sub(1)?;
    while at > floor
        && sentence.is_any(
            at,
            &["a", "an", "the", "some", "same", "total", "of", "however"],
        )
        && first - at < 4
    {
        at -= 1;
    }
    Some(at)
}
