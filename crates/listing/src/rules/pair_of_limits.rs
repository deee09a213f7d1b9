use super::measured::measure;
use super::respective::share;
use super::word_before::qualifier;
use super::{Finding, Sentence};
use crate::model::Relation;

/// How many words may stand between the pair and its first number.
const REACH: usize = 9;

/// Two limits named before their numbers: where they stand, what each asks, and which of the two numbers this one is.
struct Pair {
    from: usize,
    limits: [Relation; 2],
    second: bool,
    /// Both numbers, where the second stands joined to the first.
    numbers: Option<[usize; 2]>,
}

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let pair = pair(sentence, index)?;
    let [first, second] = pair.numbers?;
    let (one, other) = (sentence.amount(first)?, sentence.amount(second)?);
    let rising = pair.limits == [Relation::AtLeast, Relation::AtMost];
    let ordered = if rising {
        one.lo <= other.lo
    } else {
        other.lo <= one.lo
    };
    let alike = one.unit == other.unit && one.hi.is_none() && other.hi.is_none();
    let [first, second] = pair.limits;
    (alike && ordered).then(|| Finding::sure(if pair.second { second } else { first }, pair.from))
}

/// Whether a number is one of two that stand for two limits or two measures: of which, only the rule can say, where it dares.
pub(super) fn is_one_of_a_pair(sentence: &Sentence<'_>, index: usize) -> bool {
    pair(sentence, index).is_some()
        || share(sentence, index).is_none() && is_respective(sentence, index)
        || follows_stroke(sentence, index)
        || follows_stroke_before(sentence, index)
}

/// `Min depth/max recess of 4 in./1/2 in.`: a limit that a stroke joins to another's name.
fn follows_stroke(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    let lowest = sentence
        .floor(index)
        .max(amount.first.saturating_sub(REACH));
    let limit = |word: &str| ["min", "max", "minimum", "maximum"].contains(&word);
    (lowest..amount.first).any(|at| {
        sentence
            .word(at)
            .split_once('/')
            .is_some_and(|(one, other)| limit(one) != limit(other) || limit(one) && limit(other))
    })
}

/// The same of the second number of the two.
fn follows_stroke_before(sentence: &Sentence<'_>, index: usize) -> bool {
    index > 0 && is_joined(sentence, index - 1) && follows_stroke(sentence, index - 1)
}

/// The pair of limits that a number belongs to: `min and max widths are 1/2 in. and 2 in.`
fn pair(sentence: &Sentence<'_>, index: usize) -> Option<Pair> {
    let numbers = |first: usize| is_joined(sentence, first).then_some([first, first + 1]);
    if let Some((from, limits)) = limits_before(sentence, index) {
        return Some(Pair {
            from,
            limits,
            second: false,
            numbers: numbers(index),
        });
    }
    let before = index
        .checked_sub(1)
        .filter(|before| is_joined(sentence, *before))?;
    let (from, limits) = limits_before(sentence, before)?;
    Some(Pair {
        from,
        limits,
        second: true,
        numbers: numbers(before),
    })
}

/// `min and max`, `max/min` a few words before a number, and no other number or limit between.
fn limits_before(sentence: &Sentence<'_>, index: usize) -> Option<(usize, [Relation; 2])> {
    let first = sentence.amount(index)?.first;
    let lowest = sentence.floor(index).max(first.saturating_sub(REACH));
    let limit = |at: usize| {
        qualifier(sentence.word(at))
            .filter(|limit| matches!(limit, Relation::AtLeast | Relation::AtMost))
    };
    let last = (lowest..first)
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .find(|at| limit(*at).is_some())?;
    let from = last.checked_sub(2).filter(|from| *from >= lowest)?;
    let joined = sentence.is_any(last - 1, &["and", "or"])
        || sentence.is_sign(last - 1, '&')
        || sentence.is_sign(last - 1, '/');
    let limits = [limit(from)?, limit(last)?];
    (joined && limits[0] != limits[1]).then_some((from, limits))
}

/// Whether the next number is joined to this one with nothing else between: `1/2 in. and 2 in.`
fn is_joined(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some((own, next)) = sentence.amount(index).zip(sentence.amount(index + 1)) else {
        return false;
    };
    let joint = sentence.skip_parentheses(own.last);
    let signs = ['&', '/', ',']
        .iter()
        .any(|sign| sentence.is_sign(joint, *sign));
    next.first == joint + 1 && (sentence.is_any(joint, &["and", "or"]) || signs)
}

/// `max width and min depth: 2 in. and 4 in., respectively`: numbers that are given out to measures named before.
fn is_respective(sentence: &Sentence<'_>, index: usize) -> bool {
    let listed = |one: usize| is_joined(sentence, one);
    let mut first = index;
    while first > 0 && listed(first - 1) {
        first -= 1;
    }
    let mut last = index;
    while listed(last) {
        last += 1;
    }
    let Some((one, end)) = sentence.amount(first).zip(sentence.amount(last)) else {
        return false;
    };
    let start = one.first.saturating_sub(REACH + 3);
    let mut measures: Vec<&str> = (start..one.first)
        .filter_map(|at| measure(sentence.word(at)))
        .collect();
    measures.dedup();
    // `wet and dry thickness 1/8 and 1/16 in. respectively`
    let films = sentence.has_any(start, one.first, &["wet"])
        && sentence.has_any(start, one.first, &["dry"]);
    let given_out = sentence.has_any(end.last, end.last + 4, &["respectively"])
        || is_said_of_both(sentence, start, one.first, measures.len());
    first < last
        && (measures.len() > 1 || films)
        && sentence.has_any(start, one.first, &["and"])
        && given_out
}

/// `min depth and max recess are 4 in. and 1/2 in.`: two measures, each with its limit, are all that leads to two numbers.
fn is_said_of_both(sentence: &Sentence<'_>, start: usize, first: usize, measures: usize) -> bool {
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum"];
    let verb = first
        .checked_sub(1)
        .filter(|at| sentence.is_any(*at, &["are", "be", "of"]));
    let parted = |at: usize| {
        sentence.is_stop(at) || sentence.is_sign(at, '.') || sentence.amount_at(at).is_some()
    };
    let start = (start..first)
        .rev()
        .find(|at| parted(*at))
        .map_or(start, |at| at + 1);
    let limits = (start..first)
        .filter(|at| sentence.is_any(*at, LIMITS))
        .count();
    verb.is_some() && measures == 2 && limits == 2
}
