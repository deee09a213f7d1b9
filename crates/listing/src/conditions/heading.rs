//! The condition that everything under a heading stands under: "Support clips (required only where the joint is wider than 3 in.)", "Clips, for
//! joints over 75 mm:", "STRIPS, WHERE THE WALL RUNS PARALLEL TO THE FLUTES:".
//!
//! Only a heading says so that names a thing and its condition, and nothing besides. "Packing - For joints over 2 in., depth 5 in. Compressed 25
//! percent" goes on after a comma, and says no more than the depth. "Depth, for joints over 3 in.: 5 in. Recess 1/2 in." names what is measured, and
//! not a thing that is there or isn't. An upper limit, "foam (joints up to 2 in. only)", says where the thing may be used: as a condition it
//! would excuse whoever uses it in a wider joint. So would "(1 h only)". They count only where the heading says that the thing is required there.
//!
//! What it would misread: a thing that has two items, one of them so headed, where the writer means both to hold; nothing of the headed one is
//! then asked for where its condition fails.

use measure::Unit;

use super::bands::only_joints;
use super::variants::names_case;
use super::where_there_is::says_there_is_one;
use super::{Found, conditions};
use crate::model::{Condition, Expr, Relation, Test};
use crate::rules::Sentence;

/// Words that say that a thing is required.
const REQUIRED: &[&str] = &["required", "needed", "necessary", "reqd", "req'd"];

/// Words of a heading that say something else than under which condition a thing is asked for.
const SPOILING: &[&str] = &[
    "not",
    "no",
    "none",
    "never",
    "nor",
    "except",
    "unless",
    "other",
    "optional",
    "option",
    "options",
    "alternate",
    "alternative",
    "alternatively",
    "alt",
    "lieu",
    "instead",
    "place",
    "variant",
    "shall",
    "must",
    "may",
    "permitted",
    "allowed",
    "limited",
    "tested",
    "suitable",
    "with",
    "leave",
    "left",
    "omit",
    "omitted",
    "skip",
    "delete",
];

/// Where words stand that may head what follows them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Place {
    /// In a title.
    Title,
    /// At the beginning of a text.
    Text,
    /// At the beginning of a text whose title names a thing, so that they need no name of their own.
    TextOfThing,
}

/// The condition that the opening of a sentence sets to all that follows it.
pub(crate) fn heads(sentence: &Sentence<'_>, place: Place) -> Option<Condition> {
    let found = conditions(sentence).found;
    let (first, rest) = found.split_first()?;
    let opening = Opening::of(sentence, first)?;
    let end = closed(sentence, first, &opening, place)?;
    // "Backer rod (if used) 1 in. in diameter, and the runner ...": the sentence goes on of the rod, and the next may be of another thing.
    let goes_on = place != Place::Title && sentence.token(end).is_some();
    if goes_on && opening.bracketed && says_there_is_one(sentence, first) {
        return None;
    }
    let named = place == Place::TextOfThing;
    // "Joints over 1 in.: depth 4 in. All joints: 4 pcf": behind a colon a case reaches as far as its sentence, and no heading stands alone.
    let in_sentence = first.first == 0
        && place != Place::Title
        && sentence.is_sign(end - 1, ':')
        && sentence.token(end).is_some();
    if in_sentence {
        return None;
    }
    let more = rest.iter().any(|other| other.first < end);
    let case = is_case(first);
    let unnamed = !named && opening.name == 0 && !case;
    let tells = opening.required && !is_duration(sentence, first)
        || case && place == Place::Title
        || !names_attribute(sentence, first)
            && (sets_apart(&first.expr) || lets_off(sentence, first))
            && !first.expr.is_of_rating();
    if more || unnamed || !tells {
        return None;
    }
    let last = if opening.bracketed {
        behind_reference(sentence, first.last)
    } else {
        first.last
    };
    let span = sentence.tokens_span(first.first, last);
    let words = span.of(sentence.text).to_owned();
    // What is referred to may say of more joints, which a person looks up.
    let expr = if last > first.last {
        Expr::Words(words.clone())
    } else {
        first.expr.clone()
    };
    Some(Condition {
        also: Vec::new(),
        words,
        span: sentence.source(span),
        expr,
    })
}

/// The condition that a sentence is, and nothing besides, where it leads to a list: "In joints over 2 in.:", "For the 2 Hr rating:".
pub(crate) fn heads_list(sentence: &Sentence<'_>) -> Option<Condition> {
    let found = conditions(sentence).found;
    let [only] = found.as_slice() else {
        return None;
    };
    // "At the 2-hour partition, pack the gap first:"
    let led = sentence.is_sign(only.last, ',')
        && sentence.amounts.len() == only.triggers.len()
        && sentence.is_sign(sentence.tokens.len().saturating_sub(1), ':');
    let leads = only.first == 0
        && (led || sentence.is_sign(only.last, ':') && only.last + 1 == sentence.tokens.len());
    leads.then(|| Condition {
        also: Vec::new(),
        words: sentence.words(only.first, only.last).to_owned(),
        span: sentence.source_of(only.first, only.last),
        expr: only.expr.clone(),
    })
}

/// The rating that a title is, and nothing besides: "2 Hr walls".
pub(crate) fn heads_rating(sentence: &Sentence<'_>) -> Option<Condition> {
    let found = conditions(sentence).found;
    let [only] = found.as_slice() else {
        return None;
    };
    let rated = only.expr.is_of_rating()
        || matches!(&only.expr, Expr::Any(parts) if parts.iter().all(Expr::is_of_rating));
    let whole = (0..sentence.tokens.len()).all(|at| {
        only.first <= at && at < only.last
            || sentence
                .token(at)
                .is_some_and(|token| token.word().is_none() && !token.is_numeric())
    });
    (rated && whole).then(|| Condition {
        also: Vec::new(),
        words: sentence.words(only.first, only.last).to_owned(),
        span: sentence.source_of(only.first, only.last),
        expr: only.expr.clone(),
    })
}

/// The joints that a title is, and nothing besides: "Joints over 25 mm and up to 50 mm".
pub(crate) fn heads_joints(sentence: &Sentence<'_>) -> Option<Condition> {
    let own = only_joints(sentence)?;
    Some(Condition {
        also: Vec::new(),
        words: sentence.words(own.first, own.last).to_owned(),
        span: sentence.source_of(own.first, own.last),
        expr: own.expr,
    })
}

/// The case that words are, and nothing besides, where they name the joints by an introduction of their own: "For widths to 2 in.", "Joints 2 in. or less".
pub(crate) fn is_case_of_joints(sentence: &Sentence<'_>) -> Option<Condition> {
    let found = conditions(sentence).found;
    let [only] = found.as_slice() else {
        return None;
    };
    let signs = (only.last..sentence.tokens.len()).all(|at| {
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_none())
    });
    let whole = only.first == 0 && signs && only.triggers.len() == sentence.amounts.len();
    whole.then(|| Condition {
        also: Vec::new(),
        words: sentence.words(only.first, only.last).to_owned(),
        span: sentence.source_of(only.first, only.last),
        expr: only.expr.clone(),
    })
}

/// The words before the condition of a heading.
struct Opening {
    /// How many words name something.
    name: usize,
    /// Whether it says that the thing is required.
    required: bool,
    /// Whether the condition stands in a bracket that they open.
    bracketed: bool,
}

impl Opening {
    fn of(sentence: &Sentence<'_>, condition: &Found) -> Option<Self> {
        const LONGEST: usize = 8;
        let before = 0..condition.first;
        // "(Optional, required for joints over 3 in.)"
        let spoils = |at: usize| {
            let asked = sentence.is_any(at, &["optional"])
                && sentence.is_sign(at + 1, ',')
                && sentence.is_any(at + 2, REQUIRED);
            sentence.is_any(at, SPOILING) && !asked
        };
        let numbered = before
            .clone()
            .any(|at| sentence.amount_at(at).is_some() || spoils(at));
        let depth = before.clone().fold(0, |depth, at| {
            depth + i32::from(sentence.is_sign(at, '(')) - i32::from(sentence.is_sign(at, ')'))
        });
        // A bracket that the condition itself begins with.
        let own = sentence.is_sign(condition.first, '(');
        let required = before.clone().find(|at| sentence.is_any(*at, REQUIRED));
        let verb = before
            .clone()
            .find(|at| sentence.is_any(*at, &["is", "are", "be", "has", "have", "to"]));
        // "Clips are required only where": nothing else may be said of them.
        let said = verb.is_none_or(|verb| {
            required.is_some_and(|required| {
                (verb + 1..condition.first)
                    .all(|at| at == required || sentence.is_any(at, &["only", "be", "also"]))
            })
        });
        let name = before
            .filter(|at| {
                sentence.has_word(*at)
                    && !sentence.is_any(*at, REQUIRED)
                    && !sentence.is_any(*at, &["only", "are", "is", "the", "and"])
            })
            .count();
        (!numbered && said && name <= LONGEST).then_some(Self {
            name,
            required: required.is_some(),
            bracketed: depth > 0 || own,
        })
    }
}

/// The token behind the condition and what closes it; none where the sentence goes on with what it began.
fn closed(
    sentence: &Sentence<'_>,
    condition: &Found,
    opening: &Opening,
    place: Place,
) -> Option<usize> {
    let mut at = condition.last;
    let only_after = sentence.is_word(at, "only");
    let only = only_after || sentence.has_any(0, condition.first, &["only"]);
    at += usize::from(only_after);
    // "Wear a mask when you cut wool." is a sentence like any other.
    let labelled = condition.first > 0 && sentence.is_sign(condition.first - 1, ':');
    // "Support clips - For joints wider than 2 in. Min 20 MSG."
    let whole = place == Place::TextOfThing && condition.first == 0;
    let alone = place == Place::Title || opening.required || only || labelled || whole;
    let mut bracket = !opening.bracketed;
    let mut closed = false;
    if opening.bracketed {
        at = behind_reference(sentence, at);
    }
    while sentence.token(at).is_some() {
        let sign = |sign| sentence.is_sign(at, sign);
        if sign(')') {
            bracket = true;
            closed |= opening.bracketed;
        } else if sign(',') && opening.bracketed && place == Place::Title && is_case(condition) {
            // "(Option S, not for 3 hours)"
            return Some(at);
        } else if sign(':') || ['-', '–', '—'].into_iter().any(sign) && bracket {
            closed = true;
        } else if !(sign('.') || sign('*')) {
            break;
        }
        at += 1;
    }
    let ends = sentence.token(at).is_none();
    (bracket && (closed || ends && alone)).then_some(at)
}

/// The token behind words that only refer elsewhere, up to the end of their bracket: "(where exposed to impact; *see also Note a*)".
fn behind_reference(sentence: &Sentence<'_>, at: usize) -> usize {
    const LONGEST: usize = 6;
    const REFERS: &[&str] = &["see", "refer", "ref", "as"];
    const PLACES: &[&str] = &[
        "see", "refer", "ref", "also", "to", "note", "notes", "figure", "figures", "fig", "figs",
        "item", "items", "sheet", "detail", "details", "drawing", "table", "per", "as", "shown",
        "in", "and", "or",
    ];
    let parted = sentence.is_sign(at, ';') || sentence.is_sign(at, ',');
    let close = (at + 1..=at + 1 + LONGEST).find(|at| sentence.is_sign(*at, ')'));
    // A place by its number or letter.
    let label = |at: usize| {
        sentence.token(at).is_some_and(|token| {
            token.span.len() <= 3 && token.word().is_none_or(|word| word.len() == 1)
        }) && sentence.is_any(at - 1, PLACES)
    };
    let refers = |close: usize| {
        sentence.is_any(at + 1, REFERS)
            && close > at + 2
            && (at + 1..close)
                .all(|at| sentence.is_any(at, PLACES) || label(at) || sentence.is_sign(at, '.'))
    };
    close.filter(|close| parted && refers(*close)).unwrap_or(at)
}

/// Whether a heading lets the narrow joints or low walls off, so that the thing is for the others: "(Not required for joints 2 in. or less)".
fn lets_off(sentence: &Sentence<'_>, condition: &Found) -> bool {
    const UPPER: &[&str] = &[
        "less", "up", "under", "below", "narrower", "lower", "smaller",
    ];
    let not_over = |at: usize| {
        sentence.is_word(at, "not") && sentence.is_any(at + 1, &["over", "wider", "higher"])
    };
    let upper =
        (condition.first + 2..condition.last).any(|at| sentence.is_any(at, UPPER) || not_over(at));
    sentence.is_word(condition.first, "not")
        && sentence.is_any(condition.first + 1, REQUIRED)
        && !condition.triggers.is_empty()
        && upper
}

/// Whether a condition names a case by itself.
fn is_case(condition: &Found) -> bool {
    matches!(&condition.expr, Expr::Words(words) if names_case(words))
}

/// Whether a condition tells some joints from the rest by more than an upper limit: a lower limit, or words that only a person can test.
pub(super) fn sets_apart(expr: &Expr) -> bool {
    match expr {
        Expr::All(parts) => parts.iter().any(sets_apart),
        Expr::Any(parts) => parts.iter().all(sets_apart),
        Expr::Test(Test {
            property, relation, ..
        }) => {
            matches!(property.as_str(), "joint.width" | "wall.height")
                && matches!(relation, Relation::MoreThan | Relation::AtLeast)
        }
        Expr::Words(words) => {
            const OPENERS: &[&str] = &["where", "when", "if", "wherever"];
            const UPPER: &[&str] = &[
                "up", "less", "under", "below", "narrower", "smaller", "shorter", "lower",
                "thinner", "not", "no", "within", "<", "≤", "only",
            ];
            const LOWER: &[&str] = &[
                "over",
                "above",
                "more",
                "exceeding",
                "exceeds",
                "wider",
                "taller",
                "higher",
                "longer",
                "deeper",
                "greater",
                ">",
                "≥",
                "thicker",
            ];
            let lower = words.to_lowercase();
            let ends = ['.', ',', ';', ')'];
            let has = |list: &[&str]| {
                lower
                    .split_whitespace()
                    .any(|word| list.contains(&word.trim_end_matches(ends)))
            };
            let opens = lower
                .split_whitespace()
                .next()
                .is_some_and(|word| OPENERS.contains(&word));
            (opens || has(LOWER)) && !has(UPPER)
        }
        Expr::Not(_) => false,
    }
}

/// Whether the words before a condition name what is measured: "Depth, for joints over 3 in.".
fn names_attribute(sentence: &Sentence<'_>, condition: &Found) -> bool {
    (0..condition.first).any(|at| {
        let word = sentence.word(at);
        // An angle is a thing as well.
        !word.is_empty()
            && word != "angle"
            && vocabulary::vocabulary()
                .attribute(word.trim_end_matches('s'))
                .is_some()
    })
}

/// Whether hours of a condition may be a time that passes: "required after 24 hours".
fn is_duration(sentence: &Sentence<'_>, condition: &Found) -> bool {
    condition.triggers.iter().any(|index| {
        sentence
            .amount(*index)
            .is_some_and(|amount| matches!(amount.unit, Unit::Day | Unit::Minute | Unit::Hour))
    }) && !condition.expr.is_of_rating()
}
