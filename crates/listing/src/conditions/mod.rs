//! When a clause applies: "for the 2 h rating", "where the joint is wider than 4 in.", "in Configuration A".
//!
//! A number in such words triggers a condition and bounds nothing. A condition that is taken for a bound would fail a
//! good joint; one that is read but attached to the wrong clause would excuse a bad one. So a condition is attached only
//! as far as its place in the sentence makes sure, and words that no rule can test stay words, for a person.

mod aside;
mod attach;
mod bands;
mod bracket;
mod brought;
mod built_of;
mod chain;
mod cited_parts;
mod classes;
mod configuration;
mod confined;
mod contrast;
mod denied_rating;
mod ending;
mod exception;
mod following;
mod forbidden;
mod grounds;
mod halves;
mod headed_offer;
mod heading;
mod kinds;
mod labels;
mod led;
mod meant;
mod offers;
mod only_in_some;
mod only_with;
mod opening;
mod own_rating;
mod parallel;
mod parted;
mod permitted;
mod phrase;
mod places;
mod rating;
mod rating_labels;
mod respectively;
mod side_cases;
mod spelled;
mod things;
mod undecided;
mod variants;
mod where_there_is;
mod which_joints;
mod whichever;
mod width;
mod with_item;

use measure::Quantity;

use crate::model::{Expr, Test};
use crate::rules::{Sentence, bounded_by_its_words};

pub(crate) use attach::{Attached, attach};
pub(crate) use brought::{
    asks_for_item, brings, goes_on_about, is_needed_in, may_ask_for_item, may_be_absent,
    only_measures, only_says_for_which, only_says_where,
};
pub(crate) use configuration::{
    Mentioned, RunningHead, configurations, headed_configuration, is_roman, is_said_of_all,
    lettered, letters,
};
pub(crate) use confined::{keep_required, keep_scope};
pub(crate) use exception::{end_of_exclusion, exceptive};
pub(crate) use following::opens;
pub(crate) use forbidden::{Forbidden, not_yet};
pub(crate) use headed_offer::headed_offer;
pub(crate) use heading::{Place, heads, heads_joints, heads_list, heads_rating, is_case_of_joints};
pub(crate) use kinds::kinds;
pub(crate) use offers::{is_offer, offers};
pub(crate) use only_in_some::{in_bracket, only_in_some};
pub(crate) use permitted::{Permitted, permitted};
pub(crate) use variants::{OF_WHAT, headed_variant, is_small_word};
pub(crate) use which_joints::tells_which_joints;

/// A condition found in a sentence.
#[derive(Debug, Clone)]
pub(crate) struct Found {
    /// Tokens `[first, last)`.
    pub(crate) first: usize,
    pub(crate) last: usize,
    pub(crate) expr: Expr,
    /// The amounts that trigger it.
    pub(crate) triggers: Vec<usize>,
    /// The ratings or configurations it lists, for "respectively".
    pub(crate) parts: Vec<Expr>,
}

/// The conditions of a sentence, in order, and the states in which it forbids something, which are none.
#[derive(Debug, Default)]
pub(crate) struct Conditions {
    pub(crate) found: Vec<Found>,
    pub(crate) forbidden: Vec<Forbidden>,
}

/// Finds the conditions of a sentence.
pub(crate) fn conditions(sentence: &Sentence<'_>) -> Conditions {
    let mut found = phrase::phrases(sentence);
    found.retain(|condition| !exception::states_limit(sentence, condition));
    let mut taken: Vec<usize> = found
        .iter()
        .flat_map(|condition| condition.triggers.clone())
        .collect();
    for condition in width::widths(sentence, &taken) {
        taken.extend(&condition.triggers);
        found.push(condition);
    }
    for condition in rating::ratings(sentence, &taken) {
        taken.extend(&condition.triggers);
        found.push(condition);
    }
    let mut named = classes::classes(sentence);
    named.extend(spelled::spelled(sentence));
    named.extend(places::places(sentence));
    named.extend(grounds::grounds(sentence));
    named.extend(variants::variants(sentence));
    named.extend(parallel::parallels(sentence));
    named.extend(only_with::only_with(sentence));
    named.extend(with_item::with_item(sentence));
    named.extend(cited_parts::cited_parts(sentence));
    named.extend(built_of::built_of(sentence));
    named.extend(whichever::whichever(sentence));
    for condition in named {
        let apart = |other: &Found| other.last <= condition.first || condition.last <= other.first;
        if found.iter().all(apart) {
            found.push(condition);
        }
    }
    found.sort_by_key(|condition| condition.first);
    contrast::contrasts(sentence, &mut found);
    found.sort_by_key(|condition| condition.first);
    let mut forbidden: Vec<Forbidden> = Vec::new();
    for condition in &found {
        forbidden.extend(forbidden::forbidden(sentence, condition, &forbidden));
    }
    found.retain(|condition| !forbidden.iter().any(|state| state.first == condition.first));
    for condition in &mut found {
        denied_rating::keep_denial(sentence, condition);
    }
    exception::turn_exceptions(sentence, &mut found);
    for condition in &mut found {
        leave_unfinished(sentence, condition);
    }
    chain::join(sentence, &mut found);
    halves::take_the_other_half(sentence, &mut found);
    for condition in &mut found {
        undecided::leave_for_a_person(sentence, condition);
    }
    Conditions { found, forbidden }
}

/// A rating that goes on in words which no rule took, "for EI 60 and all higher classes", "2 hr plus", "EI 60 to EI 120", is more than the one that was
/// read: for a person to say.
fn leave_unfinished(sentence: &Sentence<'_>, condition: &mut Found) {
    const ON: &[&str] = &[
        "to", "through", "thru", "up", "upward", "upwards", "plus", "min", "minimum", "max",
        "maximum",
    ];
    const MORE: &[&str] = &[
        "all", "any", "higher", "better", "more", "over", "above", "up", "upwards", "greater",
        "less", "lower", "below", "under", "longer",
    ];
    let last = condition.last;
    let of_ratings = |expr: &Expr| matches!(expr, Expr::Test(test) if test.property == "joint.rating" && test.relation == crate::model::Relation::Exactly);
    let exact = match &condition.expr {
        Expr::Any(parts) => parts.iter().all(of_ratings),
        expr => of_ratings(expr),
    };
    let number = |at: usize| {
        sentence
            .token(at)
            .is_some_and(|token| matches!(token.kind, crate::phrase::TokenKind::Number(_)))
    };
    let joined = sentence.is_any(last, &["and", "or"])
        || ['&', ',', '+', '/']
            .iter()
            .any(|sign| sentence.is_sign(last, *sign));
    // "for the 3 hr rating min 8 pcf": the word is the next number's.
    let goes_on = sentence.is_any(last, ON) && sentence.amount_at(last + 1).is_none()
        || sentence.is_sign(last, '+')
        || ['-', '–'].iter().any(|sign| sentence.is_sign(last, *sign)) && number(last + 1)
        || joined
            && (sentence.is_any(last + 1, MORE)
                || number(last + 1) && sentence.amount_at(last + 1).is_none());
    let compared = sentence.has_any(
        condition.first,
        last,
        &["more", "greater", "less", "higher"],
    );
    if exact && (goes_on || compared) {
        let end = last + usize::from(goes_on) + usize::from(goes_on && joined);
        let words = sentence.words(condition.first, end);
        condition.expr = Expr::Words(words.trim_end_matches([',', ';', '.', ' ']).to_owned());
        condition.parts.clear();
    }
}

/// A test of a property against an amount of the sentence, as the words around the amount bound it.
fn test(sentence: &Sentence<'_>, index: usize, property: &str) -> Option<Expr> {
    use crate::model::Relation;
    let amount = sentence.amount(index)?;
    let quantity = |number| Quantity::new(number, amount.unit);
    let bounded = || {
        let (finding, _) = bounded_by_its_words(sentence, index)?;
        // "Depth min (1 hr: 4 in.)": what stands before a bracket is said of another number than the rating in it.
        let bracketed = (finding.from..amount.first).any(|at| sentence.is_sign(at, '('));
        // "1/4 in. for 1 hr and 1/2 in. for 2 hr minimum": what closes a list of cases is said of its numbers.
        let closes = finding.from >= amount.first && is_last_of_cases(sentence, index);
        Some(if (bracketed || closes) && property == "joint.rating" {
            Relation::Exactly
        } else {
            finding.relation
        })
    };
    let relation = loose_relation(sentence, index).or_else(bounded)?;
    let (lo, hi) = match (relation, amount.hi) {
        (Relation::Between, hi) => (Some(quantity(amount.lo)), hi.map(quantity)),
        (Relation::AtMost | Relation::LessThan, _) => (None, Some(quantity(amount.lo))),
        _ => (Some(quantity(amount.lo)), None),
    };
    let relation = match relation {
        Relation::Nominal | Relation::About => Relation::Exactly,
        other => other,
    };
    Some(Expr::Test(Test {
        property: property.to_owned(),
        relation,
        lo,
        hi,
        lo_excluded: false,
    }))
}

/// Whether hours stand behind others, and each behind a number of its own: "1/4 in. for *1 hr* and 1/2 in. for *2 hr*".
fn is_last_of_cases(sentence: &Sentence<'_>, index: usize) -> bool {
    let timed = |index: usize| {
        sentence
            .amount(index)
            .is_some_and(|amount| amount.unit.dimension() == measure::Dimension::Time)
    };
    index >= 3 && timed(index - 2) && !timed(index - 1) && !timed(index - 3)
}

/// Whether the words before an amount compare with it: "over", "colder than".
fn compared(sentence: &Sentence<'_>, index: usize) -> bool {
    use crate::model::Relation;
    let relation = loose_relation(sentence, index)
        .or_else(|| bounded_by_its_words(sentence, index).map(|(finding, _)| finding.relation));
    matches!(relation, Some(Relation::LessThan | Relation::MoreThan))
}

/// In a condition "over", "above", "under" and "below" compare, with or without "than".
fn loose_relation(sentence: &Sentence<'_>, index: usize) -> Option<crate::model::Relation> {
    use crate::model::Relation;
    let amount = sentence.amount(index)?;
    let at = amount.first.checked_sub(1)?;
    let negated = at > 0 && sentence.is_any(at - 1, &["not", "no", "never"]);
    let relation = if sentence.is_any(
        at,
        &["over", "above", "exceeding", "exceeds", "beyond", "exceed"],
    ) {
        Relation::MoreThan
    } else if sentence.is_any(at, &["to", "through", "thru"])
        && at > 0
        && sentence.is_any(at - 1, &["width", "widths", "joints", "gaps", "openings"])
    {
        return Some(Relation::AtMost);
    } else if sentence.is_any(at, &["under", "below"]) {
        Relation::LessThan
    } else {
        return than(sentence, at).filter(|_| amount.hi.is_none());
    };
    if amount.hi.is_some() {
        return None;
    }
    if negated {
        relation.negated()
    } else {
        Some(relation)
    }
}

/// "Wider than" and "not narrower than", by the words right before the number alone: a "not" farther off is said of something else.
fn than(sentence: &Sentence<'_>, than: usize) -> Option<crate::model::Relation> {
    use crate::model::Relation;
    const MORE: &[&str] = &[
        "wider", "more", "greater", "larger", "taller", "higher", "longer", "deeper", "thicker",
    ];
    const LESS: &[&str] = &[
        "narrower", "less", "smaller", "shorter", "lower", "thinner", "fewer",
    ];
    let word = than
        .checked_sub(1)
        .filter(|_| sentence.is_word(than, "than"))?;
    let relation = if sentence.is_any(word, MORE) {
        Relation::MoreThan
    } else if sentence.is_any(word, LESS) {
        Relation::LessThan
    } else {
        return None;
    };
    let negated = word > 0 && sentence.is_any(word - 1, &["not", "no", "never"]);
    if negated {
        relation.negated()
    } else {
        Some(relation)
    }
}
