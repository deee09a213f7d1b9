//! Where a condition's phrase ends: at a stop, at the main clause, or where another bound begins.

mod swallowed;

use measure::Dimension;

use super::super::width::skip_attribute;
use super::OPENERS;
use crate::phrase::{Amount, Token};
use crate::rules::Sentence;

/// Words that limit the number before them.
const LIMITS: &[&str] = &["min", "minimum", "max", "maximum"];

/// Words that make the number before them a spacing.
const SPACED: &[&str] = &["oc", "o.c", "apart", "c/c"];

/// The phrase goes to the comma, semicolon or full stop after it; to "then"; or to the main verb of the sentence it opens.
pub(super) fn end(sentence: &Sentence<'_>, at: usize) -> usize {
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
        "occurs",
        "occur",
        "indicated",
        "noted",
        "applies",
    ];
    if sentence.is_word(at + 1, "in") && sentence.is_any(at + 2, &["place", "position"]) {
        return at + 3;
    }
    if sentence.is_any(at + 1, ALONE)
        && !sentence.is_any(
            at + 2,
            &[
                "in",
                "on",
                "with",
                "for",
                "by",
                "at",
                "to",
                "and",
                "or",
                "alone",
                "together",
                "thickness",
                "depth",
                "film",
                "density",
                "from",
            ],
        )
    {
        return at + 2;
    }
    let mut depth = 0;
    let mut aside_until = 0;
    for index in at + 1..sentence.tokens.len() {
        if let Some(close) = aside(sentence, index).filter(|_| depth == 0 && index > aside_until) {
            aside_until = close;
        }
        if index <= aside_until {
            continue;
        }
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
                || bounds_another_place(sentence, at, index)
                || demands_of_another_kind(sentence, index)
                || begins_main_clause(sentence, at, index)
                || sentence.is_word(index, "nor") && sentence.is_any(index + 1, OPENERS)
                || sentence.is_word(index, "then")
                || begins_denial(sentence, index))
        {
            return swallowed::end_before(sentence, at, index).unwrap_or(index);
        }
    }
    let stop = sentence.tokens.len().saturating_sub(1);
    let last = stop + usize::from(!sentence.is_sign(stop, '.'));
    swallowed::end(sentence, at).unwrap_or(last)
}

/// `when the air is, or within eight hours is expected to be, below 40 °F`: where words between commas end that only step in after the verb.
fn aside(sentence: &Sentence<'_>, comma: usize) -> Option<usize> {
    const REACH: usize = 14;
    let opens = sentence.is_sign(comma, ',')
        && comma > 0
        && sentence.is_any(comma - 1, &["is", "are"])
        && sentence.is_any(comma + 1, &["or", "and"]);
    let close = (comma + 2..comma + REACH).find(|at| sentence.is_sign(*at, ','))?;
    (opens && sentence.is_any(close - 1, &["be", "is", "are"])).then_some(close)
}

/// The end of a condition in two halves: "where the joint exceeds 2 in., *or the rating is 3 h*, min 3 coats".
pub(super) fn second_half(sentence: &Sentence<'_>, end: usize) -> usize {
    if !(sentence.is_sign(end, ',') && sentence.is_any(end + 1, &["or", "and"])) {
        return end;
    }
    let next = (end + 1..sentence.tokens.len()).find(|at| sentence.is_stop(*at));
    // `where it is rated 1 hour, and 1-3/8 in. thick where it is rated 2 hours`
    if begins_parallel(sentence, end + 1) {
        return end;
    }
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
    let passive = participle && sentence.has_any(opener + 1, at, &["is", "are", "has", "have"]);
    verb && subject && (passive || stands_alone(word))
}

/// Verbs that say all of a thing by themselves: "gaps where plates *butt* are no greater than ...".
fn stands_alone(word: &str) -> bool {
    matches!(
        word,
        "butt" | "meet" | "meets" | "cross" | "end" | "ends" | "overlap" | "join" | "stop" | "abut"
    )
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
    // "where the joint is wider than 2 in. *not less than* 5 in."
    let bounds = sentence.is_any(at, &["not", "no", "at"])
        && sentence.is_any(at + 1, &["less", "more", "fewer", "least", "most"]);
    // "and where the joint exceeds 2 in. *min 30 percent*, with ..."
    let limited = sentence.is_any(at, &["min", "minimum", "max", "maximum"])
        && sentence.amount_at(at + 1).is_some();
    // "where the joint is wider than 2 in. *two clips* are used"
    let counts = sentence
        .amount_at(at)
        .and_then(|index| sentence.amount(index))
        .is_some_and(|amount| {
            amount.unit == measure::Unit::Count && amount.lo > measure::Number::ONE
        });
    if (bounds || limited || counts) && after_whole_number(sentence, at)
        || commands_soon(sentence, opener, at)
    {
        return true;
    }
    let article = sentence.is_any(
        at,
        &["the", "a", "an", "each", "every", "no", "all", "they", "it"],
    );
    article && (after_whole_number(sentence, at) || is_second_statement(sentence, opener, at))
}

/// Whether a command with its number follows a whole statement: "where board is scribed to fireproofing *leave 3/8 in.*"
fn commands_soon(sentence: &Sentence<'_>, opener: usize, at: usize) -> bool {
    const LEAVE: &[&str] = &[
        "leave", "use", "provide", "apply", "install", "hold", "keep", "add",
    ];
    const STATING: &[&str] = &[
        "is", "are", "meets", "meet", "runs", "run", "crosses", "occurs", "occur",
    ];
    const LEADS: &[&str] = &[
        "to", "shall", "must", "of", "in", "and", "or", "for", "the", "a",
    ];
    let amount_soon = (at + 1..at + 4).any(|at| sentence.amount_at(at).is_some());
    let stated = sentence.has_any(opener + 1, at.saturating_sub(1), STATING);
    let led = at > 0 && sentence.is_any(at - 1, LEADS);
    sentence.is_any(at, LEAVE) && amount_soon && stated && !led
}

/// `not where the wall encloses a stair and not at any temperature under 45 °F`: one more thing that is not to be.
fn begins_denial(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["and", "nor", "or"])
        && sentence.is_any(at + 1, &["not", "never"])
        && sentence.is_any(
            at + 2,
            &["at", "in", "on", "for", "during", "under", "below"],
        )
        && sentence.is_any(at + 3, &["any", "a", "the"])
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
        "bears", "bear", "ends", "changes", "applies", "apply", "stops", "turns", "carries",
        "needs", "can", "cannot",
    ];
    const LEADING: &[&str] = &[
        "of", "at", "in", "to", "by", "from", "with", "than", "and", "or", "for", "on", "over",
        "under", "above", "below", "into", "onto", "between", "against", "is", "are", "meets",
        "meet", "crosses", "cross", "exceeds", "exceed", "abuts", "abut", "has", "have", "along",
        "through", "within", "per", "as", "where", "when", "if",
    ];
    const REACH: usize = 10;
    // "when sealed from above the depth is 20 mm"
    let done = sentence.is_any(opener, &["when", "where"])
        && sentence.word(opener + 1).ends_with("ed")
        && opener + 1 < at;
    let stated = done || sentence.has_any(opener + 1, at, FINITE);
    // "where two lengths meet *they are* crowded together"
    if sentence.is_any(at, &["they", "it"]) {
        return at > opener + 1
            && stands_alone(sentence.word(at - 1))
            && sentence.is_any(at + 1, &["is", "are", "shall", "must"]);
    }
    let led = at > 0 && sentence.is_any(at - 1, LEADING);
    let verb = (at + 1..at + 1 + REACH)
        .take_while(|next| !sentence.is_stop(*next))
        .any(|next| {
            sentence.is_any(
                next,
                &[
                    "is", "are", "shall", "must", "may", "need", "needs", "overlap", "overlaps",
                    "becomes", "become", "extends", "extend", "projects", "project",
                ],
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
        || names_the_rest(sentence, at + 1)
        || is_for_hours(sentence, at + 1);
    joint && bounds && another
}

/// Whether "and" leads to a limit of a kind that no joint and no place is told by: "where the joint is over 1 in. wide *and min 4 pcf*", "when rated 2 hr *and compressed
/// min 25 percent*".
fn demands_of_another_kind(sentence: &Sentence<'_>, at: usize) -> bool {
    if !sentence.is_word(at, "and") {
        return false;
    }
    let participle = usize::from(sentence.word(at + 1).ends_with("ed"));
    let limit = at + 1 + participle;
    let limits = sentence.is_any(limit, &["min", "minimum", "max", "maximum"]);
    let amount = sentence
        .amount_at(limit + 1)
        .and_then(|index| sentence.amount(index));
    let of_material = amount.is_some_and(|amount| {
        matches!(
            amount.unit.dimension(),
            Dimension::Density | Dimension::Fraction | Dimension::Gauge
        )
    });
    let verb = (limit + 2..sentence.tokens.len())
        .any(|later| sentence.is_any(later, &["is", "are", "shall", "must", "may"]));
    limits && of_material && !verb
}

/// Whether a limit is for another rating: "..., and *not less than 11/16 in. for the 1 hour rating*".
fn is_for_hours(sentence: &Sentence<'_>, at: usize) -> bool {
    const LEAD: usize = 4;
    const REACH: usize = 5;
    let amount = (at..at + LEAD)
        .find_map(|at| sentence.amount_at(at))
        .and_then(|index| sentence.amount(index));
    amount.is_some_and(|amount| {
        let after = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
        let after = after + usize::from(sentence.is_any(after, LIMITS));
        let hours = |at: usize| {
            let amount = sentence.amount_at(at).and_then(|at| sentence.amount(at));
            amount.is_some_and(|amount| amount.unit.dimension() == Dimension::Time)
        };
        sentence.is_any(after, &["for", "at", "in"]) && (after + 1..after + REACH).any(hours)
    })
}

/// Whether "and" or "or" leads to a spacing, or to a number with its limit, of another place, where the phrase before has no such number: "where the joint is exposed
/// to traffic *and 24 in. OC in the field*".
fn bounds_another_place(sentence: &Sentence<'_>, opener: usize, at: usize) -> bool {
    const PLACES: &[&str] = &[
        "in",
        "at",
        "on",
        "over",
        "along",
        "onto",
        "for",
        "elsewhere",
    ];
    const MEASURES: &[&str] = &["width", "depth", "height", "length", "thickness"];
    let next = sentence
        .amount_at(at + 1)
        .and_then(|index| sentence.amount(index));
    let Some(next) = next.filter(|_| sentence.is_any(at, &["and", "or"])) else {
        return false;
    };
    let alike = |amount: &Amount| {
        amount.first > opener
            && amount.last <= at
            && amount.unit.dimension() == next.unit.dimension()
    };
    let after = skip_attribute(sentence, sentence.skip_parentheses(next.last));
    let said = (after..sentence.tokens.len())
        .take_while(|at| sentence.is_any(*at, LIMITS) || sentence.is_any(*at, SPACED))
        .count();
    let place = after + said;
    said > 0
        && sentence.is_any(place, PLACES)
        && !sentence.is_any(place + 1, MEASURES)
        && !sentence.amounts.iter().any(alike)
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
