use measure::{Dimension, Unit};

use super::word_after::{or_more, stretch_of_a_slope};
use super::{Finding, Sentence};
use crate::model::Relation;
use crate::phrase::Amount;

/// How far after the number "or smaller" may stand, in tokens.
const REACH: usize = 5;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    // `3-5/8 by 1-1/4 in. or larger` is said of both.
    let by = sentence.is_any(amount.last, &["by", "x"]) || sentence.is_sign(amount.last, '×');
    let next = sentence
        .amount(index + 1)
        .filter(|next| by && next.first == amount.last + 1);
    if let Some(finding) = next.and_then(|next| of_three(sentence, amount, next, index)) {
        return Some(finding);
    }
    if let Some(next) = next.filter(|next| sentence.is_word(next.last, "or")) {
        let size = sentence.is_any(next.last + 1, &["larger", "greater", "smaller"]);
        return size
            .then(|| read(sentence, index + 1))
            .flatten()
            .map(|finding| Finding::sure(finding.relation, amount.first));
    }
    // `one splice per 1 m or fewer` limits the splices.
    let fewer = |amount: &Amount| {
        sentence.is_word(amount.last, "or") && sentence.is_word(amount.last + 1, "fewer")
    };
    if amount.unit != Unit::Count && fewer(amount) {
        return None;
    }
    let rate = sentence.amount(index + 1).filter(|rate| {
        rate.first > amount.last && sentence.is_word(rate.first - 1, "per") && fewer(rate)
    });
    if amount.unit == Unit::Count && rate.is_some() {
        return Some(Finding::sure(Relation::AtMost, amount.first));
    }
    // What is said of a slope is said of its rise: `1/4 in. in 10 ft or less`.
    if index > 0 && stretch_of_a_slope(sentence, index - 1) == Some(amount.last) {
        return None;
    }
    for at in amount.last..amount.last + REACH {
        if sentence.is_sign(at, '(')
            && sentence.is_word(at + 1, "or")
            && sentence.is_sign(at + 3, ')')
        {
            let relation = or_more(sentence.word(at + 2))?;
            return Some(Finding::sure(relation, amount.first));
        }
        // `max 600 mm for EI 60 or higher`, `min 80 mm (-/60/60 or lower)`: that is said of the class.
        let bracketed = sentence.is_sign(at, '(') && sentence.amount_at(at + 1).is_none();
        let of_class = sentence.is_any(at, &["class", "classes", "ei", "rei", "frl", "frls"]);
        if sentence.in_condition(at) || sentence.is_word(at, "for") || bracketed || of_class {
            return None;
        }
        // `80 percent of that value, or more`
        let closes = sentence.is_sign(at, ',')
            && sentence.is_word(at + 1, "or")
            && sentence.is_any(at + 2, &["more", "greater", "less", "fewer"])
            && (sentence.token(at + 3).is_none()
                || sentence.is_sign(at + 3, '.')
                || sentence.is_stop(at + 3));
        if closes {
            return or_more(sentence.word(at + 2))
                .map(|relation| Finding::sure(relation, amount.first));
        }
        let place = at > 0
            && sentence.is_any(
                at - 1,
                &["above", "below", "over", "under", "up", "down", "beyond"],
            );
        // `below 5 °C or above 40 °C` compares another number.
        let another = sentence.is_any(at + 1, &["above", "over", "under", "below"])
            && sentence.amount_at(at + 2).is_some();
        // `3 in. wide or up to 4 in. when dynamic` offers more.
        let offers = sentence.is_word(at + 1, "up") && sentence.is_word(at + 2, "to");
        if sentence.is_word(at, "or") && (another || offers) {
            return None;
        }
        if sentence.is_word(at, "or")
            && !place
            && !sentence.is_any(at + 2, &["the", "a", "its", "than"])
            && (at == amount.last || sentence.amount_at(at + 1).is_none())
        {
            return or_more(sentence.word(at + 1))
                .map(|relation| Finding::sure(relation, amount.first));
        }
        if sentence.amount_at(at).is_some() || sentence.is_stop(at) || sentence.token(at).is_none()
        {
            return None;
        }
    }
    None
}

/// `1-1/2 by 1-1/2 in. by 0.055 in. (38 by 38 by 1.4 mm) or heavier`: of a section whose legs and thickness are given together, each is limited; of one
/// that may be thicker, only the thickness.
fn of_three(
    sentence: &Sentence<'_>,
    amount: &Amount,
    next: &Amount,
    index: usize,
) -> Option<Finding> {
    let by = |at: usize| sentence.is_any(at, &["by", "x"]) || sentence.is_sign(at, '×');
    let begins = amount.first == 0 || !by(amount.first - 1);
    let (second, third) = if begins {
        (next, sentence.amount(index + 2)?)
    } else {
        (amount, next)
    };
    let chained = by(second.last) && third.first == second.last + 1;
    let lengths = [amount, second, third]
        .iter()
        .all(|one| one.unit.dimension() == Dimension::Length && one.hi.is_none());
    let or = sentence.skip_parentheses(third.last);
    let heavier =
        sentence.is_word(or, "or") && sentence.is_any(or + 1, &["heavier", "larger", "greater"]);
    let ends = !sentence.has_word(or + 2);
    let relation =
        or_more(sentence.word(or + 1)).filter(|_| chained && lengths && heavier && ends)?;
    Some(Finding::sure(relation, amount.first))
}
