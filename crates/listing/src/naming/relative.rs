//! Numbers that are measured against something else: "1 in. thicker than the floor", "1/2 in. per inch of joint width", "exceeds the joint width by 1 in."
//! None of them is a size of the thing itself; each stands under the listing's own words for what it is measured against.
//!
//! What this would misread: a size that a comparison follows without a comma, "strips 4 in. wider than needed are cut".

use measure::{Dimension, Unit};
use vocabulary::Property;

use crate::phrase::Amount;
use crate::rules::{Sentence, compares_down, compares_up};

/// How many words of the listing name such a number.
const WORDS: usize = 8;

/// Whether a property is itself what one thing has more or less than another, or so much for each measure: "cut 25 percent wider than the joint" is an
/// oversize.
pub(super) fn is_relative(property: &Property) -> bool {
    const RELATIVE: &[&str] = &[
        "oversize",
        "beyond",
        "gap",
        "offset",
        "difference",
        "spread_rate",
        "weight",
        "leakage",
        "slope",
        "ratio",
        "dilution",
    ];
    RELATIVE
        .iter()
        .any(|relative| property.attribute.contains(relative))
}

/// The listing's own words for what a number is measured against; none where it stands for itself.
pub(super) fn measured_against(sentence: &Sentence<'_>, amount: &Amount) -> Option<String> {
    let (first, last) = compared(sentence, amount)
        .or_else(|| past_a_measure(sentence, amount))
        .or_else(|| rate_behind(sentence, amount))
        .or_else(|| rate_before(sentence, amount))
        .or_else(|| by_how_much(sentence, amount))?;
    let words =
        (first..last.min(first + WORDS)).map(|at| sentence.words(at, at + 1).to_lowercase());
    Some(words.collect::<Vec<_>>().join(" "))
}

/// `1 in. thicker than the floor`, `25 mm (1 in.) min wider`, `2 in. in excess of the joint width`.
fn compared(sentence: &Sentence<'_>, amount: &Amount) -> Option<(usize, usize)> {
    const REACH: usize = 7;
    const NO_SIZES: &[&str] = &[
        "more", "less", "greater", "closer", "nearer", "later", "sooner", "further", "farther",
    ];
    let mut at = sentence.skip_parentheses(amount.last);
    at += usize::from(sentence.is_any(at, &["min", "minimum", "max", "maximum"]));
    let closes = sentence.is_any(at, &["or", "at"]) && compares(sentence, at + 2);
    at += if closes { 2 } else { 0 };
    let end = stretch_end(sentence, at);
    let excess = sentence.is_word(at, "in")
        && sentence.is_word(at + 1, "excess")
        && sentence.is_word(at + 2, "of");
    if excess && sentence.amount_at(at + 3).is_none() {
        return Some((at, end));
    }
    if !compares(sentence, at) {
        return None;
    }
    let than = (at + 1..end.min(at + REACH)).find(|at| sentence.is_word(*at, "than"));
    // `4 in. more than 2 in. from the edge` places, and compares two numbers.
    let another = than.is_some_and(|than| sentence.amount_at(than + 1).is_none());
    // `2 in. lower legs` names a part.
    let closes = at + 1 >= end || sentence.is_any(at + 1, &["in", "on", "all", "each", "at"]);
    let sized = !sentence.is_any(at, NO_SIZES) && amount.unit.dimension() == Dimension::Length;
    let alone = than.is_none() && closes && sized;
    (another || alone).then_some((at, end))
}

/// `1 in. over the flute depth`, `2 in. beyond flange width`, `1 in. over width of joint`: past another thing's measure.
fn past_a_measure(sentence: &Sentence<'_>, amount: &Amount) -> Option<(usize, usize)> {
    const MOST_WORDS: usize = 3;
    let mut at = sentence.skip_parentheses(amount.last);
    at += usize::from(sentence.is_any(at, &["min", "minimum", "max", "maximum"]));
    let past = sentence.is_any(at, &["over", "above", "beyond", "past"]);
    let end = stretch_end(sentence, at);
    let measure = (at + 1..end.min(at + 3 + MOST_WORDS))
        .find(|at| sentence.is_any(*at, &["depth", "width", "thickness", "height", "length"]));
    // "over packing depth of 4 in." has a number of its own.
    let sized = measure.is_some_and(|measure| {
        sentence.is_word(measure + 1, "of") && sentence.amount_at(measure + 2).is_some()
    });
    (past && measure.is_some() && !sized).then_some((at, end))
}

fn compares(sentence: &Sentence<'_>, at: usize) -> bool {
    compares_up(sentence.word(at)) || compares_down(sentence.word(at))
}

/// `1/2 in. deep per inch of joint width`, `25 mm for each 30 minutes of rating`, `1 mm/mm of width`.
fn rate_behind(sentence: &Sentence<'_>, amount: &Amount) -> Option<(usize, usize)> {
    const REACH: usize = 5;
    let start = sentence.skip_parentheses(amount.last);
    let end = stretch_end(sentence, start);
    let rate = (start..end.min(start + REACH)).find(|at| opens_rate(sentence, *at).is_some())?;
    (amount.unit != Unit::Count)
        .then(|| (start, end.max(opens_rate(sentence, rate).unwrap_or(end))))
}

/// `Depth per inch of width: min 1/2 in.`, `For each hour of rating provide 1 in.`: before the first number of a sentence.
fn rate_before(sentence: &Sentence<'_>, amount: &Amount) -> Option<(usize, usize)> {
    let (at, end) = (0..amount.first).find_map(|at| Some((at, opens_rate(sentence, at)?)))?;
    let leads = at == 0 || sentence.is_sign(stretch_end(sentence, end), ':');
    let numbered = sentence.amounts.iter().any(|other| {
        let of_the_rate = at <= other.first && other.first < end;
        other.first < amount.first && !of_the_rate
    });
    let own = at <= amount.first && amount.first < end;
    (leads && !numbered && !own && amount.unit != Unit::Count)
        .then(|| (at, stretch_end(sentence, end)))
}

/// The token behind the measure that something is said for each of, where the words at a token open that: `per inch`, `for every 30 minutes`.
fn opens_rate(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const MEASURES: &[&str] = &[
        "in",
        "inch",
        "mm",
        "cm",
        "millimetre",
        "millimeter",
        "centimetre",
        "centimeter",
        "metre",
        "meter",
        "foot",
        "ft",
        "yard",
        "hour",
        "hr",
        "h",
        "minute",
        "percent",
        "degree",
    ];
    let each = sentence.is_word(at, "for") && sentence.is_any(at + 1, &["each", "every"]);
    let measure = if each {
        at + 2
    } else if sentence.is_word(at, "per") || sentence.is_sign(at, '/') {
        at + 1
    } else {
        return None;
    };
    let measure = measure
        + usize::from(sentence.is_any(
            measure,
            &[
                "linear",
                "lineal",
                "running",
                "full",
                "whole",
                "additional",
                "extra",
                "further",
                "added",
            ],
        ));
    let index = sentence
        .amount_at(measure)
        .filter(|_| !sentence.is_sign(at, '/'));
    let counted = index
        .and_then(|index| sentence.amount(index))
        .filter(|amount| amount.unit != Unit::Count);
    if let Some(counted) = counted {
        return Some(counted.last);
    }
    sentence.is_any(measure, MEASURES).then_some(measure + 1)
}

/// `exceeds the joint width by at least 1 in.`, `wider than the joint by 25 mm`, `oversized by 1/2 in.`
fn by_how_much(sentence: &Sentence<'_>, amount: &Amount) -> Option<(usize, usize)> {
    const BOUNDING: &[&str] = &[
        "min",
        "minimum",
        "max",
        "maximum",
        "at",
        "least",
        "most",
        "not",
        "no",
        "less",
        "more",
        "than",
        "a",
        "an",
        "of",
        "about",
        "some",
        "up",
        "to",
        "another",
        "additional",
        "further",
    ];
    const CHANGES: &[&str] = &[
        "oversized",
        "undersized",
        "oversize",
        "undersize",
        "increased",
        "reduced",
        "decreased",
        "enlarged",
        "widened",
        "deepened",
        "thickened",
        "increase",
        "increases",
        "reduce",
        "decrease",
        "enlarge",
        "widen",
        "deepen",
        "thicken",
    ];
    const REACH: usize = 10;
    let by = (0..amount.first)
        .rev()
        .find(|at| !sentence.is_any(*at, BOUNDING))
        .filter(|at| sentence.is_word(*at, "by"))?;
    // A thickness reduced by 25 percent is a compression.
    let is_length = amount.unit != Unit::Percent;
    let floor = by.saturating_sub(REACH);
    let before = (floor..by)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none());
    let mut before =
        before.filter(|_| !sentence.word(by.saturating_sub(1)).starts_with("compress"));
    let said = before.find(|at| {
        sentence.word(*at).starts_with("exceed")
            || is_length && sentence.is_any(*at, CHANGES) && by <= at + 6
            || compares(sentence, *at) && sentence.has_any(*at, by, &["than"])
    })?;
    Some((said, by + 1))
}

/// Where the stretch of words ends that a token stands in: at a stop, an amount, or a condition.
fn stretch_end(sentence: &Sentence<'_>, at: usize) -> usize {
    let ends = |at: &usize| {
        sentence.is_stop(*at)
            || sentence.is_sign(*at, '.')
            || sentence.amount_at(*at).is_some()
            || sentence.in_condition(*at)
    };
    (at..sentence.tokens.len())
        .find(ends)
        .unwrap_or(sentence.tokens.len())
}
