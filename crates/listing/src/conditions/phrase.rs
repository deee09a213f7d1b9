//! Phrases that open with "where", "when", "if", "unless": whatever number stands in them is a trigger.

use measure::{Dimension, Unit};

use super::width::skip_attribute;
use super::{Found, test};
use crate::model::Expr;
use crate::naming::mentions;
use crate::phrase::Token;
use crate::rules::Sentence;

/// Words that open such a phrase.
const OPENERS: &[&str] = &[
    "where", "when", "whenever", "if", "unless", "wherever", "should",
];

/// Words in it that show that it is no condition but states a requirement itself.
const STATES: &[&str] = &["shall", "must"];

pub(super) fn phrases(sentence: &Sentence<'_>) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    let mut spoken_of = None;
    let mut at = 0;
    while at < sentence.tokens.len() {
        let end = if opens(sentence, at) {
            second_half(sentence, end(sentence, at))
        } else {
            at
        };
        if end > at + 1 && !states(sentence, at, end) && !is_state(sentence, at, end) {
            let (condition, property) = phrase(sentence, at, end, spoken_of);
            spoken_of = property.or(spoken_of);
            found.push(condition);
            at = end;
        } else {
            at += 1;
        }
    }
    found
}

/// Whether the words after an opener state a requirement themselves: they hold "shall", or say of a number that it is required or
/// will do, or follow the condition that they speak of ("in the 4-hour joint, where the depth is 5/8 in.").
fn states(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    let holds_number = sentence
        .amounts
        .iter()
        .any(|amount| amount.first >= first && amount.last <= last);
    let suffices = sentence.has_any(
        first,
        last,
        &[
            "required",
            "suffices",
            "suffice",
            "sufficient",
            "acceptable",
            "enough",
            "will",
            "needed",
        ],
    );
    // "may cross the joint if they are spaced at least 4 ft apart" requires the spacing of what it permits.
    let permits = allows_provided(sentence, first, last)
        || sentence.has_any(0, first, &["may", "permitted", "allowed"])
            && sentence.is_word(first, "if")
            && sentence.is_any(first + 1, &["they", "it"])
            && sentence.is_any(first + 2, &["is", "are"])
            && !sentence.has_any(
                0,
                first,
                &[
                    "omitted",
                    "left",
                    "waived",
                    "reduced",
                    "increased",
                    "replaced",
                    "deleted",
                    "dispensed",
                    "skipped",
                ],
            );
    let allowed =
        permits || first > 0 && sentence.is_any(first - 1, &["acceptable", "permitted", "allowed"]);
    sentence.has_any(first, last, STATES)
        || (holds_number && is_work_when(sentence, first, last))
        || (holds_number && (suffices || allowed || follows_condition(sentence, first)))
}

/// `Planks may be used if the cores are grouted solid for 6 in.`: what the permission rests on is required. A comparison would say which
/// planks are meant.
fn allows_provided(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    let may = sentence.has_any(0, first, &["may", "permitted", "allowed"]);
    let closes = last + 1 >= sentence.tokens.len();
    let built = sentence.has_any(first, last, &["is", "are"]);
    let compared = (0..sentence.amounts.len())
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.first >= first)
        })
        .any(|index| super::compared(sentence, index));
    let widths = (first..last).any(|at| {
        sentence.is_any(
            at,
            &["joint", "joints", "width", "gap", "opening", "rating"],
        )
    });
    may && sentence.is_word(first, "if")
        && closes
        && built
        && !compared
        && !widths
        && !sentence.has_any(
            0,
            first,
            &[
                "omitted",
                "reduced",
                "left",
                "waived",
                "increased",
                "deleted",
            ],
        )
}

/// `Poured when the concrete is at 5 °C to 35 °C`: the sentence bounds nothing but the state in which the work is done.
fn is_work_when(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    let done = first > 0
        && first <= 3
        && sentence.is_any(first, &["when", "where"])
        && sentence.is_any(first - 1, super::forbidden::DOING);
    let mut own = sentence
        .amounts
        .iter()
        .filter(|amount| first <= amount.first && amount.last <= last);
    let weather = |unit: Unit| {
        matches!(
            unit.dimension(),
            Dimension::Temperature | Dimension::Time | Dimension::CalendarTime
        ) || unit == Unit::Percent
    };
    let alone = own.all(|amount| weather(amount.unit))
        && !sentence.amounts.iter().any(|amount| amount.first < first);
    let free = sentence.has_any(0, first, &["may", "need", "not"]);
    done && alone && !free
}

/// "when installed", "when dry", "when measured": the state in which the number holds, which is part of what it is.
fn is_state(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    const STATES: &[&str] = &[
        "installed",
        "dry",
        "dried",
        "wet",
        "cured",
        "measured",
        "placed",
        "made",
        "applied",
        "compressed",
        "set",
    ];
    let opened = sentence.is_any(first, &["when", "where"]);
    let in_place = last == first + 3
        && sentence.is_word(first + 1, "in")
        && sentence.is_any(first + 2, &["place", "position"]);
    opened && (in_place || (last == first + 2 && sentence.is_any(first + 1, STATES)))
}

fn follows_condition(sentence: &Sentence<'_>, first: usize) -> bool {
    let Some(comma) = first.checked_sub(1).filter(|at| sentence.is_sign(*at, ',')) else {
        return false;
    };
    let start = (0..comma)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map_or(0, |at| at + 1);
    let excepts = sentence.is_any(start, &["save", "except", "in", "and", "for"]);
    excepts
        && sentence
            .amounts
            .iter()
            .any(|amount| amount.first >= start && amount.last <= comma)
}

fn opens(sentence: &Sentence<'_>, at: usize) -> bool {
    let where_meaning_place =
        sentence.is_word(at, "where") && at > 0 && sentence.is_any(at - 1, &["except"]);
    // "should" opens only at the start: "should the joint exceed ...".
    let plain = sentence.is_any(at, OPENERS) && (!sentence.is_word(at, "should") || at == 0);
    plain || where_meaning_place
}

/// The phrase goes to the comma, semicolon or full stop after it; to "then"; or to the main verb of the sentence it opens.
fn end(sentence: &Sentence<'_>, at: usize) -> usize {
    const ALONE: &[&str] = &[
        "dry",
        "wet",
        "cured",
        "installed",
        "placed",
        "made",
        "applied",
        "measured",
        "used",
        "required",
        "necessary",
        "possible",
        "specified",
        "applicable",
        "present",
        "needed",
        "shown",
    ];
    if sentence.is_word(at + 1, "in") && sentence.is_any(at + 2, &["place", "position"]) {
        return at + 3;
    }
    if sentence.is_any(at + 1, ALONE)
        && !sentence.is_any(
            at + 2,
            &["in", "on", "with", "for", "by", "at", "to", "and", "or"],
        )
    {
        return at + 2;
    }
    let mut depth = 0;
    for index in at + 1..sentence.tokens.len() {
        if sentence.is_sign(index, '(') || sentence.is_sign(index, '[') {
            depth += 1;
        } else if sentence.is_sign(index, ')') || sentence.is_sign(index, ']') {
            depth -= 1;
            if depth < 0 {
                return index;
            }
        } else if depth == 0
            && (sentence.is_stop(index)
                || is_second_verb(sentence, at, index)
                || begins_parallel(sentence, index)
                || begins_main_clause(sentence, at, index)
                || sentence.is_word(index, "nor") && sentence.is_any(index + 1, OPENERS)
                || sentence.is_word(index, "then")
                || (sentence.is_sign(index, '.') && index + 1 == sentence.tokens.len()))
        {
            return index;
        }
    }
    sentence.tokens.len()
}

/// The end of a condition in two halves: "where the joint exceeds 2 in., *or the rating is 3 h*, min 3 coats".
fn second_half(sentence: &Sentence<'_>, end: usize) -> usize {
    if !(sentence.is_sign(end, ',') && sentence.is_any(end + 1, &["or", "and"])) {
        return end;
    }
    let next = (end + 1..sentence.tokens.len()).find(|at| sentence.is_stop(*at));
    let half = next.filter(|next| {
        sentence.has_any(
            end,
            *next,
            &["is", "are", "exceeds", "exceed", "has", "have"],
        ) && !sentence.has_any(
            end,
            *next,
            &["shall", "must", "min", "minimum", "max", "maximum", "may"],
        )
    });
    half.unwrap_or(end)
}

/// Whether a verb goes on with the main clause: "the width when the packing is installed *is between* ...".
fn is_second_verb(sentence: &Sentence<'_>, opener: usize, at: usize) -> bool {
    let verb = sentence.is_any(at, &["is", "are", "shall", "must", "may", "will"]);
    let word = at
        .checked_sub(1)
        .map(|before| sentence.word(before))
        .unwrap_or_default();
    let participle =
        word.ends_with("ed") || matches!(word, "made" | "set" | "built" | "dry" | "wet" | "place");
    // The subject of the main clause stands before the opener: "the width when ...".
    let subject = opener > 0 && !sentence.is_stop(opener - 1);
    verb && participle && subject && sentence.has_any(opener + 1, at, &["is", "are", "has", "have"])
}

/// Whether the main clause begins with no comma before it: "where the joint is over 2 in. wide *the packing is held by clips ...*".
fn begins_main_clause(sentence: &Sentence<'_>, opener: usize, at: usize) -> bool {
    // "where the wall is taller than 14 ft *use* 16 ga angles"
    const COMMANDS: &[&str] = &[
        "use", "provide", "install", "apply", "fill", "reduce", "increase", "add", "place", "omit",
        "pack", "cut", "fasten", "fix",
    ];
    if sentence.is_any(at, COMMANDS) && after_whole_number(sentence, at) {
        return true;
    }
    let article = sentence.is_any(at, &["the", "a", "an", "each", "every", "no", "all"]);
    article && (after_whole_number(sentence, at) || is_second_statement(sentence, opener, at))
}

fn after_whole_number(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.amounts.iter().any(|amount| {
        amount.last <= at && skip_attribute(sentence, sentence.skip_parentheses(amount.last)) == at
    })
}

/// Whether an article begins a second statement after a whole one: "where it meets fireproofing *the lap is increased ...*".
fn is_second_statement(sentence: &Sentence<'_>, opener: usize, at: usize) -> bool {
    const FINITE: &[&str] = &[
        "is", "are", "meets", "meet", "crosses", "cross", "exceeds", "exceed", "stands", "stand",
        "lies", "runs", "run", "abuts", "abut", "occurs", "occur", "has", "have", "passes",
        "bears", "bear", "ends", "changes",
    ];
    const LEADING: &[&str] = &[
        "of", "at", "in", "to", "by", "from", "with", "than", "and", "or", "for", "on", "over",
        "under", "above", "below", "into", "onto", "between", "against", "is", "are", "meets",
        "meet", "crosses", "cross", "exceeds", "exceed", "abuts", "abut", "has", "have", "along",
        "through", "within", "per", "as", "where", "when", "if",
    ];
    const REACH: usize = 10;
    let stated = sentence.has_any(opener + 1, at, FINITE);
    let led = at > 0 && sentence.is_any(at - 1, LEADING);
    let verb = (at + 1..at + 1 + REACH)
        .take_while(|next| !sentence.is_stop(*next))
        .any(|next| {
            sentence.is_any(
                next,
                &["is", "are", "shall", "must", "may", "need", "needs"],
            )
        });
    stated && !led && verb
}

/// Whether "and" or "or" begins another bound with a condition of its own: "no less than 1/2 in. where ..., *and no less than* 3/4 in.
/// where ...".
fn begins_parallel(sentence: &Sentence<'_>, at: usize) -> bool {
    let joint = sentence.is_any(at, &["and", "or"]);
    // "is 2 in. or 3 in. wide", "between 1 in. and 2 in.": the same measure goes on.
    let before = sentence
        .amounts
        .iter()
        .find(|amount| sentence.skip_parentheses(amount.last) == at || amount.last == at);
    let next = sentence
        .amount_at(at + 1)
        .and_then(|index| sentence.amount(index));
    let goes_on = before.zip(next).is_some_and(|(before, next)| {
        let between = before.first > 0 && sentence.is_word(before.first - 1, "between");
        let after = sentence.skip_parentheses(next.last);
        let measured = skip_attribute(sentence, after) > after;
        let rated = next.unit.dimension() == Dimension::Time;
        before.unit.dimension() == next.unit.dimension() && (between || measured || rated)
    });
    let bare = sentence.token(at + 1).is_some_and(Token::is_numeric) && next.is_none();
    if goes_on || bare {
        return false;
    }
    let bounds = sentence.is_any(
        at + 1,
        &["no", "not", "at", "min", "minimum", "max", "maximum", "a"],
    ) || sentence.amount_at(at + 1).is_some();
    let another = (at + 2..sentence.tokens.len()).any(|later| sentence.is_any(later, OPENERS))
        || names_the_rest(sentence, at + 1);
    joint && bounds && another
}

/// Whether an amount is for all the rest: "..., and *3-1/4 in. flanges for all other joints*".
fn names_the_rest(sentence: &Sentence<'_>, at: usize) -> bool {
    const REACH: usize = 9;
    let amount = sentence
        .amount_at(at)
        .and_then(|index| sentence.amount(index));
    amount.is_some_and(|amount| {
        (amount.last..amount.last + REACH)
            .take_while(|at| !sentence.is_stop(*at))
            .any(|at| sentence.is_any(at, &["other", "others", "otherwise", "elsewhere"]))
    })
}

fn phrase(
    sentence: &Sentence<'_>,
    first: usize,
    last: usize,
    spoken_of: Option<&'static str>,
) -> (Found, Option<&'static str>) {
    let within = |index: &usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| amount.first >= first && amount.last <= last)
    };
    let triggers: Vec<usize> = (0..sentence.amounts.len()).filter(within).collect();
    // "... where it is over 2 in.": it is what the phrase before tested.
    let again = spoken_of.filter(|_| sentence.is_any(first + 1, &["it", "they"]));
    let named: Vec<&'static str> = triggers
        .iter()
        .filter_map(|index| property(sentence, *index, first).or(again))
        .collect();
    let tested: Vec<Expr> = triggers
        .iter()
        .zip(&named)
        .filter_map(|(index, property)| test(sentence, *index, property))
        .collect();
    // A phrase is tested only when every number in it is, and no word in it turns or splits what it says.
    let turned = (first..last).any(|at| {
        sentence.is_any(at, &["and", "or", "but"])
            || (sentence.is_word(at, "not") && !compares(sentence, at + 1))
    });
    let plain = tested.len() == triggers.len() && !triggers.is_empty() && !turned;
    let expr = match tested.as_slice() {
        [one] if plain && sentence.is_word(first, "unless") => Expr::Not(Box::new(one.clone())),
        [one] if plain => one.clone(),
        _ => Expr::Words(sentence.words(first, last).to_owned()),
    };
    let found = Found {
        first,
        last,
        expr,
        triggers,
        parts: Vec::new(),
    };
    (found, named.last().copied().filter(|_| plain))
}

/// Whether a word compares, so that a "not" before it belongs to the comparison.
fn compares(sentence: &Sentence<'_>, at: usize) -> bool {
    const COMPARING: &[&str] = &[
        "over",
        "above",
        "under",
        "below",
        "more",
        "less",
        "greater",
        "exceeding",
        "exceed",
        "wider",
        "narrower",
        "smaller",
        "larger",
    ];
    sentence.is_any(at, COMPARING)
}

/// The property that a number in a condition tests, where its words leave no doubt: nothing may stand between the opener and the number but
/// the thing, its attribute and a comparison. "Where the joint is at a beam deeper than 12 in." tests no width.
fn property(sentence: &Sentence<'_>, index: usize, first: usize) -> Option<&'static str> {
    const COMMON: &[&str] = &[
        "the",
        "a",
        "an",
        "is",
        "are",
        "be",
        "of",
        "not",
        "no",
        "than",
        "more",
        "less",
        "greater",
        "over",
        "above",
        "under",
        "below",
        "exceeds",
        "exceed",
        "exceeding",
        "up",
        "to",
        "or",
        "equal",
        "at",
        "least",
        "most",
        "does",
        "do",
        "nominal",
        "has",
        "have",
        "installed",
        "it",
        "they",
        "by",
        "one",
        "within",
        "between",
    ];
    let amount = sentence.amount(index)?;
    let only = |own: &[&str]| {
        (first + 1..amount.first).all(|at| {
            let sign = sentence
                .token(at)
                .is_some_and(|token| token.word().is_none() && !token.is_numeric());
            sign || sentence.is_any(at, COMMON) || sentence.is_any(at, own)
        })
    };
    let says = |words: &[&str]| sentence.has_any(first, amount.first, words);
    let after = |words: &[&str]| sentence.has_any(amount.last, amount.last + 3, words);
    match amount.unit {
        Unit::Hour
            if only(&[
                "rating", "ratings", "rated", "joint", "assembly", "fire", "hourly", "required",
                "sought", "wall", "system",
            ]) && (says(&["rating", "rated"]) || after(&["rating", "rated"])) =>
        {
            Some("joint.rating")
        }
        Unit::Percent
            if only(&[
                "compressed",
                "compression",
                "packing",
                "batt",
                "wool",
                "nominally",
            ]) && says(&["compressed", "compression"]) =>
        {
            Some("packing.compression")
        }
        Unit::Count if after(&["layer", "layers"]) && names(sentence, "board") => {
            Some("board.layers")
        }
        unit if unit.dimension() == Dimension::Length => {
            let joint = says(&["joint", "joints"])
                || (says(&["width", "widths"]) && !says(&["wall", "board"]));
            let width = only(&[
                "joint", "joints", "width", "widths", "wide", "wider", "narrower", "opening", "gap",
            ]);
            let wall = says(&["wall"])
                && (says(&["height", "higher", "taller"]) || after(&["high", "height"]));
            let height = only(&[
                "wall", "walls", "height", "high", "higher", "taller", "clear",
            ]);
            if joint && width && !after(&["deep", "long", "thick", "high"]) {
                Some("joint.width")
            } else if wall && height {
                Some("wall.height")
            } else {
                None
            }
        }
        _ => None,
    }
}

fn names(sentence: &Sentence<'_>, component: &str) -> bool {
    mentions(sentence)
        .iter()
        .any(|mention| mention.component.name == component)
}
