//! Ratios in words: `one in twelve`, `three times the joint width`, `half the joint width`, `one part to three parts`,
//! `compressed by more than one half`.

use measure::notation::NumeralStyle;
use measure::{Number, Unit};

use super::amounts::{Amount, Shape};
use super::lex::{Token, TokenKind, is_any};
use super::words::fraction_word;

/// The ratio that begins at a token.
pub(super) fn ratio_at(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    one_in_many(tokens, at)
        .or_else(|| part_of_span(tokens, at))
        .or_else(|| one_thing_in_many(tokens, at))
        .or_else(|| parts_to_parts(tokens, at))
        .or_else(|| share_range(tokens, at))
        .or_else(|| times_something(tokens, at))
        .or_else(|| share(tokens, at))
        .or_else(|| share_in_figures(tokens, at))
}

fn amount(
    tokens: &[Token<'_>],
    at: usize,
    next: usize,
    number: Number,
    unit: Unit,
) -> Option<Amount> {
    let span = tokens
        .get(at)?
        .span
        .join(tokens.get(next.checked_sub(1)?)?.span);
    Some(Amount {
        lo: number,
        hi: None,
        unit,
        shape: Shape::Single,
        step: number,
        second: None,
        first: at,
        last: next,
        at: span,
        whole: span,
    })
}

/// A number in digits or words.
fn number(tokens: &[Token<'_>], at: usize) -> Option<Number> {
    let token = tokens.get(at)?;
    match &token.kind {
        TokenKind::Number(numeral) => Some(numeral.value),
        _ => token.count.map(Number::whole),
    }
}

/// `one in twelve`, `1 in 12`, `1:12`, `a ratio of 2 to 1`.
fn one_in_many(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    // `1 in 25` begins as an inch would.
    if let TokenKind::Quantity(stated) = &tokens.get(at)?.kind
        && stated.unit == Unit::Inch
        && stated.number == Number::ONE
        && let TokenKind::Number(under) = &tokens.get(at + 1)?.kind
        && under.value.is_whole()
        && under.value > 1
        && !is_size_beside_count(tokens, at)
    {
        return amount(
            tokens,
            at,
            at + 2,
            stated.number.over(under.value)?,
            Unit::Ratio,
        );
    }
    let over = number(tokens, at)?;
    let colon = tokens.get(at + 1)?.is_sign(':');
    let to = is_any(tokens, at + 1, &["to"]) && is_said_of_two(tokens, at);
    let is_in = is_any(tokens, at + 1, &["in"]);
    let joined = is_in || colon || to;
    // `one in every ten`
    let every = usize::from(is_in && is_any(tokens, at + 2, &["every", "each"]));
    let under = joined.then(|| number(tokens, at + 2 + every))??;
    // `3:1` is three to one; `10:30` would be a time.
    let steep = (colon || to) && under == Number::ONE && over <= 20;
    let next = at + 3 + every;
    (over < under || steep).then(|| amount(tokens, at, next, over.over(under)?, Unit::Ratio))?
}

/// `span/360`, `L/240`: a part of the length that bends.
fn part_of_span(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    const LENGTHS: &[&str] = &["span", "l", "length", "height", "h"];
    const STEEPEST: i32 = 50;
    let (length, under) = tokens.get(at)?.lower.split_once('/')?;
    let under: i32 = under.trim_end_matches('.').parse().ok()?;
    let one_of_many = LENGTHS.contains(&length) && under >= STEEPEST;
    let part = Number::ONE.over(Number::whole(under))?;
    one_of_many.then(|| amount(tokens, at, at + 1, part, Unit::Ratio))?
}

/// `> 1 in    2 strips`: a width, and beside it what is counted.
fn is_size_beside_count(tokens: &[Token<'_>], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|before| tokens.get(before));
    let compared = before.is_some_and(|token| {
        ['>', '<', '≤', '≥', '=']
            .iter()
            .any(|sign| token.is_sign(*sign))
    });
    let counted = tokens.get(at + 2).and_then(Token::word);
    compared
        || counted
            .is_some_and(|word| word.len() > 4 && word.ends_with('s') && !word.ends_with("ss"))
}

/// `width to depth 2 to 1`, `ratio of 2 to 1`: whether the words before are of two measures.
fn is_said_of_two(tokens: &[Token<'_>], at: usize) -> bool {
    const REACH: usize = 8;
    let near = tokens.get(at.saturating_sub(REACH)..at).unwrap_or_default();
    let measure = |token: &Token<'_>| ["width", "depth"].iter().any(|word| token.is_word(word));
    near.iter().any(|token| token.is_word("ratio"))
        || near.windows(3).any(|words| {
            matches!(words, [one, to, other] if measure(one) && to.is_word("to") && measure(other))
        })
}

/// `one joint in ten`, `1 clip in 20`, `one joint in every twenty be opened`: a share of the things, and no number of them.
fn one_thing_in_many(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    const GO_ON: &[&str] = &[
        "be", "is", "are", "shall", "must", "should", "will", "may", "to", "at", "on", "before",
        "after", "and", "by", "with", "per",
    ];
    let over = number(tokens, at)?;
    tokens.get(at + 1)?.word()?;
    let under = is_any(tokens, at + 2, &["in", "of", "out"]).then(|| {
        let of = usize::from(is_any(tokens, at + 3, &["of", "every"]));
        Some((number(tokens, at + 3 + of)?, at + 4 + of))
    })??;
    let (under, next) = under;
    let ends = is_any(tokens, next, GO_ON)
        || tokens
            .get(next)
            .is_none_or(|token| token.word().is_none() && !token.is_numeric());
    let counts = over.is_whole() && under.is_whole() && over < under;
    (counts && ends).then(|| amount(tokens, at, next, over.over(under)?, Unit::Ratio))?
}

/// `one part water to three parts product`.
fn parts_to_parts(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    let over = number(tokens, at)?;
    if !is_any(tokens, at + 1, &["part", "parts"]) {
        return None;
    }
    let to = (at + 2..at + 7).find(|index| is_any(tokens, *index, &["to", "and"]))?;
    let under = number(tokens, to + 1)?;
    is_any(tokens, to + 2, &["part", "parts", "of"])
        .then(|| amount(tokens, at, to + 3, over.over(under)?, Unit::Ratio))?
}

/// `three times the joint width`, `twice the joint width`, `half the joint width`, `1.5 x joint width`, `1.3 to 1.45 times the joint width`.
fn times_something(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    times_range(tokens, at).or_else(|| times_one(tokens, at))
}

/// The same with one factor.
fn times_one(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    let (factor, next) = mixed_factor(tokens, at)
        .or_else(|| fraction_of_joint(tokens, at))
        .or_else(|| plain_factor(tokens, at))?;
    let after = tokens.get(next..(next + 6).min(tokens.len()))?;
    let says = |word: &str| after.iter().any(|token| token.is_word(word));
    // `1.25 times the gap`
    let gap = is_any(tokens, next, &["the"])
        && is_any(tokens, next + 1, &["gap", "opening"])
        && !is_any(tokens, next + 2, &["depth", "length", "height"]);
    if gap && !says("joint") && is_any(tokens, next - 1, &["times", "twice", "half"]) {
        let width = usize::from(is_any(tokens, next + 2, &["width"]));
        return amount(tokens, at, next + 2 + width, factor, Unit::TimesJointWidth);
    }
    let of_joint = says("joint") && (says("width") || says("wide"));
    if of_joint {
        // `half the joint width where the joint is 20 mm wide`: the first of each names it.
        let first = |words: &[&str]| {
            let mut tokens = after.iter();
            tokens.position(|token| words.iter().any(|word| token.is_word(word)))
        };
        let end = first(&["joint"])?.max(first(&["width", "wide"])?);
        return amount(tokens, at, next + end + 1, factor, Unit::TimesJointWidth);
    }
    // `cycled 500 times`, `four times a year`: how often, and a multiple of nothing.
    let yearly = is_any(tokens, next, &["a", "per", "each", "every"])
        && is_any(
            tokens,
            next + 1,
            &["year", "day", "week", "month", "quarter", "shift", "hour"],
        );
    let ends = tokens
        .get(next)
        .is_none_or(|token| token.word().is_none() && !token.is_numeric() && !token.is_sign('('));
    let often = yearly
        || (ends
            || is_any(
                tokens,
                next,
                &["through", "between", "before", "in", "without"],
            ))
            && tokens
                .get(at.saturating_sub(6)..at)?
                .iter()
                .any(|token| OFTEN.contains(&token.lower));
    if often && factor.is_whole() {
        return amount(tokens, at, next, factor, Unit::Count);
    }
    let times = is_any(tokens, at, &["twice"]) || is_any(tokens, next - 1, &["times"]);
    times.then(|| amount(tokens, at, next, factor, Unit::Times))?
}

/// What is done a number of times.
const OFTEN: &[&str] = &[
    "cycled",
    "inspected",
    "checked",
    "tested",
    "moved",
    "opened",
    "closed",
    "stirred",
    "repeated",
    "measured",
    "read",
    "washed",
    "brushed",
    "compressed",
];

/// `1.3 to 1.45 times the joint width`.
fn times_range(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    let low = number(tokens, at)?;
    let between = at > 0 && is_any(tokens, at - 1, &["between"]);
    let joined = is_any(tokens, at + 1, &["to"]) || (between && is_any(tokens, at + 1, &["and"]));
    joined.then_some(())?;
    let high = times_one(tokens, at + 2).filter(|high| low < high.lo)?;
    let span = tokens.get(at)?.span.join(high.at);
    Some(Amount {
        lo: low,
        hi: Some(high.lo),
        shape: Shape::Range,
        first: at,
        at: span,
        whole: span,
        ..high
    })
}

/// `one and one half times`, `two and a half times`: the factor, and the token after "times".
fn mixed_factor(tokens: &[Token<'_>], at: usize) -> Option<(Number, usize)> {
    let whole = number(tokens, at)?;
    is_any(tokens, at + 1, &["and"]).then_some(())?;
    let part_at = at + 2 + usize::from(is_any(tokens, at + 2, &["one", "a"]));
    let part = fraction_word(tokens.get(part_at)?.word()?)?;
    let times = is_any(tokens, part_at + 1, &["times"]);
    times.then_some((whole.plus(part)?, part_at + 2))
}

/// `3/4 of the joint width`, `one-eighth of the joint width`, `1/2 the joint width`: the fraction, and the token after "the".
fn fraction_of_joint(tokens: &[Token<'_>], at: usize) -> Option<(Number, usize)> {
    let (part, next) = match &tokens.get(at)?.kind {
        TokenKind::Number(numeral) if numeral.value < Number::ONE => (numeral.value, at + 1),
        TokenKind::Word(word) => {
            if let Some(part) = fraction_word(word) {
                (part, at + 1)
            } else {
                // `three quarters of the joint width`
                let parts = tokens.get(at).and_then(|token| token.count)?;
                let part = fraction_word(tokens.get(at + 1)?.word()?)?;
                (part.times(Number::whole(parts))?, at + 2)
            }
        }
        _ => return None,
    };
    let of = usize::from(is_any(tokens, next, &["of"]));
    let article = usize::from(is_any(tokens, next + of, &["the"]));
    let joint = next + of + article;
    // "1/2 joint depth" is another measure.
    let of_joint =
        is_any(tokens, joint, &["joint"]) && (of > 0 || is_any(tokens, joint + 1, &["width"]));
    of_joint.then_some((part, joint))
}

/// `twice`, `half`, `three times`, `1.5 x`: the factor, and the token after.
fn plain_factor(tokens: &[Token<'_>], at: usize) -> Option<(Number, usize)> {
    if is_any(tokens, at, &["twice"]) {
        return Some((Number::whole(2), at + 1));
    }
    if is_any(tokens, at, &["half", "one-half"]) {
        return Some((Number::new(1, 2)?, at + 1));
    }
    if is_any(tokens, at, &["one"]) && is_any(tokens, at + 1, &["half"]) {
        return Some((Number::new(1, 2)?, at + 2));
    }
    let factor = number(tokens, at)?;
    let times = is_any(tokens, at + 1, &["times"])
        || (is_any(tokens, at + 1, &["x"]) || tokens.get(at + 1)?.is_sign('×'))
            && is_any(tokens, at + 2, &["the", "joint"]);
    times.then_some((factor, at + 2))
}

/// `at 2/3 of its height`, `1/2 of the slab thickness`, `2/3 the wall thickness`: a share in figures, in percent. A share of the joint is none of a thing, and what is compressed to a
/// share is compressed by the rest.
fn share_in_figures(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    let TokenKind::Number(numeral) = &tokens.get(at)?.kind else {
        return None;
    };
    let part = numeral.style == NumeralStyle::Fraction && numeral.value < 1;
    let of = usize::from(is_any(tokens, at + 1, &["of"]));
    let its =
        of > 0 && is_any(tokens, at + 2, &["its", "their"]) && is_any(tokens, at + 3, MEASURES);
    let thing = is_measure_of_a_thing(tokens, at + 1 + of);
    let squeezed = || {
        let mut before = tokens.iter().take(at);
        before.any(|token| {
            ["compress", "squeez"]
                .iter()
                .any(|begins| token.lower.starts_with(begins))
        })
    };
    (part && (its || thing) && !squeezed()).then(|| {
        amount(
            tokens,
            at,
            at + 1,
            numeral.value.times(Number::whole(100))?,
            Unit::Percent,
        )
    })?
}

const MEASURES: &[&str] = &["thickness", "depth", "height", "width", "length"];

/// `the slab thickness`, `a stud width`.
fn is_measure_of_a_thing(tokens: &[Token<'_>], at: usize) -> bool {
    const THINGS: &[&str] = &["slab", "wall", "board", "floor", "stud", "batt", "wool"];
    is_any(tokens, at, &["the", "a"])
        && is_any(tokens, at + 1, THINGS)
        && is_any(tokens, at + 2, MEASURES)
}

/// `half the batt depth`: of a part that is no joint. Half of it with something added is no share of it.
fn is_half_of_a_part(tokens: &[Token<'_>], at: usize) -> bool {
    const PARTS: &[&str] = &[
        "slab",
        "wall",
        "board",
        "floor",
        "stud",
        "batt",
        "wool",
        "packing",
        "safing",
        "insulation",
    ];
    is_any(tokens, at, &["half"])
        && is_any(tokens, at + 1, &["the"])
        && is_any(tokens, at + 2, PARTS)
        && is_any(tokens, at + 3, &["thickness", "depth", "height"])
        && !is_any(tokens, at + 4, &["plus", "less", "minus", "and"])
}

/// `between one half and three quarters of its depth`: a range of shares, in percent.
fn share_range(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    let (low, next) = part_in_words(tokens, at)?;
    let between = at > 0 && is_any(tokens, at - 1, &["between", "from"]);
    let joint = is_any(tokens, next, &["and", "to"]);
    let high = (between && joint).then(|| share(tokens, next + 1))??;
    let low = low.times(Number::whole(100))?;
    let span = tokens.get(at)?.span.join(high.at);
    (low < high.lo).then_some(Amount {
        lo: low,
        hi: Some(high.lo),
        shape: Shape::Range,
        first: at,
        at: span,
        whole: span,
        ..high
    })
}

/// `one half`, `three quarters`, `a third`: a part in words, and the token after it.
fn part_in_words(tokens: &[Token<'_>], at: usize) -> Option<(Number, usize)> {
    let parts = if is_any(tokens, at, &["a"]) {
        Some(1)
    } else {
        tokens.get(at)?.count.filter(|count| *count < 10)
    };
    let of_next = parts.and_then(|parts| {
        let part = fraction_word(tokens.get(at + 1)?.word()?)?;
        Some((part.times(Number::whole(parts))?, at + 2))
    });
    of_next.or_else(|| Some((fraction_word(tokens.get(at)?.word()?)?, at + 1)))
}

/// `compressed by more than one half`, `compressed a third`, `one fifth of its free thickness`: a share, in percent.
fn share(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    let counts =
        is_any(tokens, at, &["a"]) || tokens.get(at)?.count.is_some_and(|count| count < 10);
    let (over, next) = if counts
        && tokens
            .get(at + 1)
            .and_then(Token::word)
            .is_some_and(|word| fraction_word(word).is_some())
    {
        (tokens.get(at)?.count.unwrap_or(1), at + 1)
    } else {
        (1, at)
    };
    let part = fraction_word(tokens.get(next)?.word()?)?;
    // `two thirds` counts thirds; `two-thirds` and `halves` have counted already.
    let share = part.times(Number::whole(over))?;
    let near = tokens.get(at.saturating_sub(8)..(next + 6).min(tokens.len()))?;
    let squeezes = |token: &Token<'_>| {
        ["compress", "squeez"]
            .iter()
            .any(|begins| token.lower.starts_with(begins))
    };
    // "squeezed by at least 30 percent ..., or by one quarter where ...": the verb may stand far before a "by".
    let by = at > 0
        && is_any(tokens, at - 1, &["by", "least", "than"])
        && tokens.get(..at)?.iter().any(squeezes);
    let compressed = by || near.iter().any(squeezes);
    // `two-thirds of the slab thickness`, `one half of its width`, `one-quarter higher than the flute`
    let half_its = is_any(tokens, next, &["half"])
        && is_any(tokens, next + 1, &["its", "that", "their"])
        && is_any(
            tokens,
            next + 2,
            &["width", "thickness", "depth", "height", "length"],
        );
    let half_its = half_its || is_half_of_a_part(tokens, next);
    // "half the wall thickness plus 1 in." is no share.
    let part_of_it = !is_any(tokens, next, &["half"]) && is_measure_of_a_thing(tokens, next + 1);
    let of_something = half_its
        || part_of_it
        || is_any(tokens, next + 1, &["of"])
            && is_any(
                tokens,
                next + 2,
                &["the", "its", "their", "a", "that", "wall", "slab", "board"],
            );
    let compared = fraction_word(tokens.get(next)?.word()?).is_some()
        && is_any(
            tokens,
            next + 1,
            &[
                "higher", "larger", "wider", "thicker", "greater", "longer", "more", "less",
                "thinner", "smaller",
            ],
        )
        && is_any(tokens, next + 2, &["than"]);
    (compressed || of_something || compared).then(|| {
        amount(
            tokens,
            at,
            next + 1,
            share.times(Number::whole(100))?,
            Unit::Percent,
        )
    })?
}
