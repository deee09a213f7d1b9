//! Words that name the other joints than those before: "in joints to 50 mm 12 mm, and 20 mm in wider ones", "beyond that", "above this width",
//! "otherwise".
//!
//! They turn round the one width that was tested before them in the sentence, and only that: after two tests, or after words, what is the rest is for a
//! person to say. "Elsewhere" may mean other places, and is for a person, too.

use super::Found;
use super::width::skip_attribute;
use crate::model::{Expr, Relation, Test};
use crate::rules::Sentence;

/// Adds the conditions that only name the rest.
pub(super) fn contrasts(sentence: &Sentence<'_>, found: &mut Vec<Found>) {
    let mut own = Vec::new();
    for at in 0..sentence.tokens.len() {
        let Some((last, upwards)) = names_the_rest(sentence, at) else {
            continue;
        };
        let taken = |other: &Found| other.first <= at && at < other.last;
        if found.iter().chain(&own).any(taken) {
            continue;
        }
        let before: Vec<&Found> = found.iter().filter(|other| other.last <= at).collect();
        let words = || Expr::Words(sentence.words(at, last).to_owned());
        let alone = before.len() == 1 && !found.iter().any(|other| other.first >= last);
        let expr = match before.last().map(|nearest| &nearest.expr) {
            Some(Expr::Test(test)) if alone && can_be_turned(test, upwards) => {
                Expr::Not(Box::new(Expr::Test(test.clone())))
            }
            Some(Expr::Test(test)) if alone && upwards.is_some() && is_one_rating(test) => {
                rating_beyond(test, upwards == Some(true))
            }
            Some(_) => words(),
            // What a sentence before set apart, it names itself.
            None if sentence.is_word(at + 1, "all") || names_widths(sentence, at) => words(),
            None => continue,
        };
        own.push(Found {
            first: at,
            last,
            expr,
            triggers: Vec::new(),
            parts: Vec::new(),
        });
    }
    found.extend(own);
}

/// `at larger widths`, `in wider joints`: the joints that they leave need no number of their own.
fn names_widths(sentence: &Sentence<'_>, at: usize) -> bool {
    side(sentence, at + 1).is_some()
        && sentence.is_any(at + 2, &["joints", "gaps", "openings", "widths"])
}

/// Whether the rest lies on the side that the words say: wider joints than those up to 50 mm.
fn can_be_turned(test: &Test, upwards: Option<bool>) -> bool {
    let rest_is_wider = match test.relation {
        Relation::AtMost | Relation::LessThan => true,
        Relation::AtLeast | Relation::MoreThan => false,
        _ => return false,
    };
    match upwards {
        Some(upwards) => {
            const SIZED: [&str; 2] = ["joint.width", "joint.rating"];
            SIZED.contains(&test.property.as_str()) && upwards == rest_is_wider
        }
        None => true,
    }
}

/// Whether a test is of one rating just so: "for 1 h".
fn is_one_rating(test: &Test) -> bool {
    test.property == "joint.rating" && test.relation == Relation::Exactly && test.lo.is_some()
}

/// The ratings longer or shorter than the one before: of "24 in. for 1 h and 16 in. for longer periods" those over 1 h.
fn rating_beyond(test: &Test, upwards: bool) -> Expr {
    let (relation, lo, hi) = if upwards {
        (Relation::MoreThan, test.lo, None)
    } else {
        (Relation::LessThan, None, test.lo)
    };
    Expr::Test(Test {
        relation,
        lo,
        hi,
        ..test.clone()
    })
}

/// The token after words that name the rest, and whether it lies above what was tested; none where they say only that it is the rest.
fn names_the_rest(sentence: &Sentence<'_>, at: usize) -> Option<(usize, Option<bool>)> {
    const THINGS: &[&str] = &[
        "joints", "joint", "gaps", "gap", "openings", "ones", "widths", "cases",
    ];
    // "for anything wider", "; wider: 5 in."
    if let Some((last, upwards)) = side_alone(sentence, at) {
        return Some((last, Some(upwards)));
    }
    let opened = sentence.is_any(at, &["in", "for", "at", "across", "over", "along"]);
    let the = usize::from(sentence.is_any(at + 1, &["the", "any"]));
    if opened
        && let Some(upwards) = side(sentence, at + 1 + the)
        && sentence.is_any(at + 2 + the, THINGS)
    {
        return Some((at + 3 + the, Some(upwards)));
    }
    if opened
        && let Some(own) =
            for_longer(sentence, at + 1 + the).or_else(|| for_wider(sentence, at + 1))
    {
        return Some(own);
    }
    // "for all other joints", "in all other cases", "in other cases"
    let all = usize::from(sentence.is_word(at + 1, "all"));
    let others =
        opened && sentence.is_word(at + all + 1, "other") && sentence.is_any(at + all + 2, THINGS);
    if others {
        return Some((at + all + 3, None));
    }
    // "in joints beyond that"
    if opened
        && sentence.is_any(at + 1, THINGS)
        && sentence.is_any(at + 2, &["above", "beyond", "over"])
        && sentence.is_any(at + 3, &["this", "that"])
    {
        return Some((at + 4, Some(true)));
    }
    if sentence.is_any(at, &["above", "beyond", "over"]) {
        let that = sentence.is_any(at + 1, &["this", "that"]);
        if that && (sentence.is_word(at + 2, "width") || sentence.amount_at(at + 2).is_some()) {
            let last = at + 2 + usize::from(sentence.is_word(at + 2, "width"));
            return Some((last, Some(true)));
        }
        // "2-1/2 in. up to a 1 in. joint; over that, 3 in.", "100 mm up to EI 120 and 150 mm above that"
        let ends = sentence.token(at + 2).is_none()
            || sentence.is_stop(at + 2)
            || sentence.is_sign(at + 2, '.');
        if that && ends {
            return Some((at + 2, Some(true)));
        }
    }
    let ends = (at + 1..sentence.tokens.len()).all(|at| sentence.is_sign(at, '.'));
    let alone = sentence.is_any(at, &["otherwise", "else"])
        && at > 0
        && (sentence.is_stop(at - 1) || sentence.is_any(at - 1, &["and", "but"]) || ends);
    alone.then_some((at + 1, None))
}

/// `for longer periods`, `for higher ratings`: the ratings beyond the one before.
fn for_longer(sentence: &Sentence<'_>, at: usize) -> Option<(usize, Option<bool>)> {
    const RATINGS: &[&str] = &["periods", "period", "ratings", "rating", "durations"];
    let upwards = if sentence.is_any(at, &["longer", "higher", "greater"]) {
        true
    } else if sentence.is_any(at, &["shorter", "lower", "lesser"]) {
        false
    } else {
        return None;
    };
    sentence
        .is_any(at + 1, RATINGS)
        .then_some((at + 2, Some(upwards)))
}

/// `20 % for gaps up to 30 mm, 30 % for wider`: the side of the rest alone, where it ends what is said.
fn for_wider(sentence: &Sentence<'_>, at: usize) -> Option<(usize, Option<bool>)> {
    let ends = sentence.token(at + 1).is_none()
        || sentence.is_stop(at + 1)
        || ['.', ')']
            .iter()
            .any(|sign| sentence.is_sign(at + 1, *sign));
    let upwards = side(sentence, at).filter(|_| ends)?;
    Some((at + 1, Some(upwards)))
}

/// Whether a word says on which side of the width before it the rest lies.
fn side(sentence: &Sentence<'_>, at: usize) -> Option<bool> {
    if sentence.is_any(at, &["wider", "larger", "greater"]) {
        Some(true)
    } else if sentence.is_any(at, &["narrower", "smaller", "lesser"]) {
        Some(false)
    } else {
        None
    }
}

/// `for anything wider`, `; wider: 5 in.`: the side of the rest alone, where a number follows or precedes that nothing else is said of.
fn side_alone(sentence: &Sentence<'_>, at: usize) -> Option<(usize, bool)> {
    let anything = sentence.is_any(at, &["for", "in"])
        && sentence.is_any(at + 1, &["anything", "all", "any", "those"]);
    if anything {
        return side(sentence, at + 2).map(|upwards| (at + 3, upwards));
    }
    let begins = at > 0
        && [';', '.']
            .iter()
            .any(|sign| sentence.is_sign(at - 1, *sign));
    let labels = [':', ',']
        .iter()
        .any(|sign| sentence.is_sign(at + 1, *sign));
    side(sentence, at)
        .filter(|_| begins && labels)
        .map(|upwards| (at + 1, upwards))
}

/// Whether a condition only names the rest of what was tested before it.
pub(super) fn is_contrast(sentence: &Sentence<'_>, condition: &Found) -> bool {
    names_the_rest(sentence, condition.first).is_some()
}

/// Whether what is said of the rest follows: "and in wider ones 20 mm".
pub(super) fn leads_to_the_rest(sentence: &Sentence<'_>, condition: &Found) -> bool {
    // "12 mm in joints up to 50 mm and 20 mm in wider ones, tolerance +3 mm": the number stands before it.
    let told = condition.first.checked_sub(1).is_some_and(|before| {
        sentence.amounts.iter().any(|amount| {
            amount.last <= before + 1
                && skip_attribute(sentence, sentence.skip_parentheses(amount.last))
                    == condition.first
        })
    });
    is_contrast(sentence, condition)
        && !told
        && (condition.last..sentence.tokens.len())
            .take_while(|at| !sentence.is_sign(*at, ';') && !sentence.is_sign(*at, '.'))
            .any(|at| sentence.amount_at(at).is_some())
}
