use super::word_after::or_more;
use super::{Finding, Sentence};

/// How far after the number "or smaller" may stand, in tokens.
const REACH: usize = 5;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    for at in amount.last..amount.last + REACH {
        if sentence.is_sign(at, '(') && sentence.is_word(at + 1, "or") && sentence.is_sign(at + 3, ')') {
            let relation = or_more(sentence.word(at + 2))?;
            return Some(Finding::sure(relation, amount.first));
        }
        let place = at > 0 && sentence.is_any(at - 1, &["above", "below", "over", "under", "up", "down", "beyond"]);
        if sentence.is_word(at, "or") && !place && !sentence.is_any(at + 2, &["the", "a", "its", "than"]) && (at == amount.last || sentence.amount_at(at + 1).is_none()) {
            return or_more(sentence.word(at + 1)).map(|relation| Finding::sure(relation, amount.first));
        }
        if sentence.amount_at(at).is_some() || sentence.is_stop(at) || sentence.token(at).is_none() {
            return None;
        }
    }
    None
}
