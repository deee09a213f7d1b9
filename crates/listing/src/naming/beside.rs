//! Things that are named beside a number and of which it is not: what its measure is likened to in brackets, "5/8 in. deep (*full board thickness*)", what
//! makes no difference, "with or without *packing*, lap min 1 in.", what the subject of the sentence has, "pieces shall have tight *joints* and be min 24 in.
//! long", and what only a condition behind the number speaks of.
//!
//! What it would misread: a subject that is named for the first time in brackets, "min 4 in. (wool depth)".

use super::Mention;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether a thing is only named beside a number.
pub(super) fn is_beside(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    is_likened(sentence, amount, mention)
        || makes_no_difference(sentence, amount, mention)
        || is_had(sentence, amount, mention)
        || is_provided_for(sentence, amount, mention)
        || is_the_other_of_two(sentence, amount, mention)
}

/// `the joint width or 1/2 in., whichever is greater`: the number stands beside another measure, and is none of that.
fn is_the_other_of_two(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    const MEASURES: &[&str] = &["thickness", "width", "depth", "height", "length"];
    let or = mention.last + usize::from(sentence.is_any(mention.last, MEASURES));
    let chosen = (amount.last..amount.last + 4).any(|at| sentence.is_word(at, "whichever"));
    chosen && sentence.is_word(or, "or") && or + 1 == amount.first
}

/// `max 4 in. wide provided that packing is min 6 in. deep, or max 2 in. wide`: what is provided for is spoken of to its comma.
fn is_provided_for(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    const REACH: usize = 3;
    let start = mention.first.saturating_sub(REACH);
    let provided = sentence.has_any(start, mention.first, &["provided", "providing"]);
    let or = amount.first.saturating_sub(REACH)..amount.first;
    let other = or
        .clone()
        .find(|at| sentence.is_sign(*at, ',') && sentence.is_word(at + 1, "or"));
    let told = sentence
        .amounts
        .iter()
        .any(|own| own.first >= mention.last && other.is_some_and(|other| own.last <= other));
    provided && told
}

/// `5/8 in. min depth (full board thickness)`: how another thing measures, in brackets without a number.
fn is_likened(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    const MEASURES: &[&str] = &["thickness", "width", "depth", "height", "length"];
    if mention.first < amount.last || !sentence.is_any(mention.last, MEASURES) {
        return false;
    }
    let open = (amount.last..mention.first)
        .rev()
        .find(|at| sentence.is_sign(*at, '('));
    let closed = open.and_then(|open| Some((open, sentence.closing(open)?)));
    closed.is_some_and(|(open, close)| {
        close > mention.last && (open..close).all(|at| sentence.amount_at(at).is_none())
    })
}

/// `regardless of joint width, min 1/2 in. deep`, `with or without packing, lap min 1 in.`
fn makes_no_difference(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    const ARTICLES: &[&str] = &["the", "a", "an", "any"];
    if mention.last > amount.first {
        return false;
    }
    let lead = (0..mention.first)
        .rev()
        .find(|at| !sentence.is_any(*at, ARTICLES));
    let leads = lead.is_some_and(|at| {
        let before = |words: &[&str]| at > 0 && sentence.is_any(at - 1, words);
        let whatever = sentence.is_word(at, "of")
            && before(&["regardless", "irrespective", "independent", "independently"]);
        whatever || sentence.is_word(at, "without") && before(&["or"])
    });
    let parted = (mention.last..amount.first).any(|at| sentence.is_sign(at, ','));
    leads && parted
}

/// `shall have tight joints and be min 24 in. long`: the verb behind the "and" is the subject's again.
fn is_had(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    const REACH: usize = 3;
    let and = mention.last;
    let goes_on = sentence.is_word(and, "and")
        && sentence.is_any(and + 1, &["be", "is", "are", "shall"])
        && and < amount.first;
    let had = mention.first.saturating_sub(REACH)..mention.first;
    goes_on && sentence.has_any(had.start, had.end, &["have", "has", "having"])
}
