use super::{Finding, Sentence};
use crate::model::Relation;

/// How many words may stand between a number and the word that qualifies it.
const REACH: usize = 5;

/// Words that end the search.
const BREAKS: &[&str] = &["and", "with", "for", "in", "on", "by", "onto", "from", "into", "to", "when", "where", "if", "that", "which", "shall", "is", "are", "than", "below", "above"];

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let last = sentence.amount(index)?.last;
    let mut at = sentence.skip_parentheses_but(last);
    for _ in 0..=REACH {
        if let Some(relation) = closing_word(sentence, at) {
            return Some(Finding::sure(relation, sentence.amount(index)?.first));
        }
        if sentence.is_word(at, "on") && sentence.word(at + 1).starts_with("cent") {
            at += 2;
            continue;
        }
        if sentence.is_sign(at, ',') && sentence.is_any(at + 1, &["not", "no"]) {
            let ends = sentence.is_stop(at + 3) || sentence.is_sign(at + 3, '.') || sentence.token(at + 3).is_none();
            let relation = or_more(&sentence.word(at + 2)).filter(|_| ends)?;
            let opposite = if relation == Relation::AtLeast { Relation::AtMost } else { Relation::AtLeast };
            return Some(Finding::sure(opposite, sentence.amount(index)?.first));
        }
        if sentence.is_sign(at, ',') && sentence.is_any(at + 1, &["or", "min", "minimum", "max", "maximum"]) {
            at += 1;
            continue;
        }
        let goes_on = sentence.token(at).is_some_and(|token| token.word().is_some()) && !sentence.is_any(at, BREAKS);
        if !goes_on || sentence.amount_at(at).is_some() {
            return None;
        }
        at = sentence.skip_parentheses_but(at + 1);
    }
    None
}

/// The relation that the words at a token give to the number before them.
fn closing_word(sentence: &Sentence<'_>, at: usize) -> Option<Relation> {
    let word = sentence.word(at);
    if word == "at" {
        let most = if sentence.is_word(at + 1, "the") { at + 2 } else { at + 1 };
        return match sentence.word(most).as_ref() {
            "most" | "latest" => Some(Relation::AtMost),
            "least" | "earliest" if sentence.amount_at(most + 1).is_none() => Some(Relation::AtLeast),
            _ => None,
        };
    }
    if word == "or" || word == "and" {
        return or_more(&sentence.word(at + 1)).filter(|_| {
            // `or thicker board` names a thing; `or thicker` closes the number.
            !sentence.is_word(at + 2, "than") && word == "or" || matches!(sentence.word(at + 1).as_ref(), "over" | "above" | "under" | "up")
        });
    }
    let relation = match word.as_ref() {
        "min" | "minimum" => Relation::AtLeast,
        "max" | "maximum" => Relation::AtMost,
        "nominal" | "nom" => Relation::Nominal,
        _ => return None,
    };
    // `min` before another number, or before a noun with its own number, belongs to that one.
    let opens_next = sentence.amount_at(at + 1).is_some()
        || (sentence.is_word(at + 1, "of") && (sentence.amount_at(at + 2).is_some() || sentence.amount_at(at + 3).is_some()))
        || (sentence.amount_at(at + 2).is_some() && !sentence.is_sign(at + 1, '(') && !sentence.is_sign(at + 1, '[') && !sentence.is_stop(at + 1) && !sentence.is_any(at + 1, &["to", "and"]) && !sentence.is_sign(at + 1, '.') && !sentence.is_sign(at + 1, ')'));
    (!opens_next).then_some(relation)
}

/// The relation of "or more", "or heavier", "or less".
pub(super) fn or_more(word: &str) -> Option<Relation> {
    Some(match word {
        "more" | "greater" | "heavier" | "thicker" | "wider" | "larger" | "longer" | "deeper" | "higher" | "over"
        | "above" | "denser" | "taller" | "bigger" | "up" | "warmer" | "later" | "upward" | "upwards" | "farther" | "further" | "beyond" => Relation::AtLeast,
        "less" | "fewer" | "smaller" | "lighter" | "thinner" | "narrower" | "shorter" | "shallower" | "lower" | "under"
        | "below" | "closer" | "cooler" | "colder" | "sooner" | "earlier" | "nearer" => Relation::AtMost,
        _ => return None,
    })
}
