use super::comparison_before::negation;
use super::{Finding, Sentence};
use crate::model::Relation;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    let at = skip_articles(sentence, first, floor)?;
    let finding = |relation, from| Some(Finding::sure(relation, from));
    let word = |back: usize| at.checked_sub(back).map(|at| sentence.word(at)).unwrap_or_default();
    match (word(1), word(0)) {
        // `goes up to 3-1/4 in. for lightweight` says what it becomes.
        ("up", "to") if matches!(word(2), "goes" | "go" | "rises" | "rise" | "increases" | "brought" | "built" | "raised") => None,
        ("limited" | "restricted" | "confined" | "up", "to")
        | ("upto", _)
        | ("at", "most")
        | ("the", "latest")
        | ("latest", "after") => finding(Relation::AtMost, at.checked_sub(1)?),
        // `joints to 1 in.`; but `pack joints to 4 in. deep` says how deep.
        ("joints" | "widths" | "gaps" | "lengths", "to") if stands_ungoverned(sentence, at - 1) && ends_or_is_wide(sentence, index) => {
            finding(Relation::AtMost, at)
        }
        ("down", "to") if matches!(word(2), "covered" | "permitted" | "allowed" | "accepted") => finding(Relation::AtLeast, at.checked_sub(1)?),
        ("down", "to") if matches!(sentence.amount(index)?.unit, measure::Unit::Celsius | measure::Unit::Fahrenheit) => {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        ("at", "least") | ("the", "earliest") | ("earliest", "after" | "at") => {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        // "may be reduced to 6 in." sets the least; "shall be reduced to 6 in." says what it becomes.
        ("reduced" | "decreased", "to") if word(2) == "be" && matches!(word(3), "may" | "can") => {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        ("and", "including") if word(2) == "to" => finding(Relation::AtMost, at.checked_sub(3)?),
        (extreme, "as") if word(2) == "as" => {
            let relation = match extreme {
                "little" | "short" | "low" | "thin" | "narrow" | "small" | "few" | "close" | "near" | "shallow" => Relation::AtLeast,
                "much" | "long" | "high" | "thick" | "wide" | "large" | "many" | "far" | "great" | "deep" => Relation::AtMost,
                _ => return None,
            };
            finding(relation, at.checked_sub(2)?)
        }
        _ => exceed_by(sentence, at, floor),
    }
}

/// Whether a noun is nothing's object: "*fill* joints to 4 in." says how far they are filled.
fn stands_ungoverned(sentence: &Sentence<'_>, noun: usize) -> bool {
    noun == 0
        || sentence.token(noun - 1).is_none_or(|token| token.word().is_none())
        || sentence.is_any(noun - 1, &["for", "in", "of", "all", "at"])
}

/// Whether nothing follows a number in its stretch but "wide".
fn ends_or_is_wide(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        let after = sentence.skip_parentheses(amount.last);
        sentence.token(after).is_none_or(|token| token.word().is_none())
            || sentence.is_any(after, &["wide", "only"])
    })
}

/// The token before any articles and fillers that stand before an amount.
fn skip_articles(sentence: &Sentence<'_>, first: usize, floor: usize) -> Option<usize> {
    let mut at = first.checked_sub(1)?;
    while at > floor && sentence.is_any(at, &["a", "an", "the", "some", "total", "of", "however"]) && first - at < 4 {
        at -= 1;
    }
    Some(at)
}

/// `shall not exceed the box by more than` is read elsewhere; here `not exceed ... by 2 in.`
fn exceed_by(sentence: &Sentence<'_>, at: usize, floor: usize) -> Option<Finding> {
    if !sentence.is_word(at, "by") {
        return None;
    }
    let exceed = (floor..at).rev().take(8).find(|at| sentence.is_any(*at, &["exceed", "exceeding"]))?;
    negation(sentence, exceed, floor).map(|from| Finding::sure(Relation::AtMost, from))
}
