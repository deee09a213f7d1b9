//! The words of a sentence that no bound, condition or product accounts for: they become prose, for a person.

use crate::rules::Sentence;

/// A stretch of tokens `[first, last)` between commas, semicolons, colons and conjunctions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Segment {
    pub(super) first: usize,
    pub(super) last: usize,
}

/// Splits a sentence into segments; parentheses and amounts stay whole.
pub(super) fn segments(sentence: &Sentence<'_>) -> Vec<Segment> {
    let mut segments = Vec::new();
    let mut first = 0;
    let mut at = 0;
    while at < sentence.tokens.len() {
        if let Some(amount) = sentence
            .amount_at(at)
            .and_then(|index| sentence.amount(index))
        {
            at = amount.last.max(at + 1);
            continue;
        }
        if let Some(close) = sentence.closing(at) {
            // A parenthesis with several words stands for itself; a short one belongs to what it follows.
            at = close + 1;
            continue;
        }
        if sentence.in_condition(at) {
            at += 1;
            continue;
        }
        if sentence.is_stop(at) {
            push(&mut segments, first, at);
            first = at + 1;
        } else if sentence.is_any(at, &["and", "but", "except"])
            && !goes_on(sentence, at)
            && at > first
        {
            push(&mut segments, first, at);
            first = at;
        }
        at += 1;
    }
    push(&mut segments, first, sentence.tokens.len());
    segments
}

/// Whether "and" joins no other statement: `up to and including 100 mm`, `13 mm, and never less`.
fn goes_on(sentence: &Sentence<'_>, and: usize) -> bool {
    let closes = sentence.token(and + 3).is_none()
        || sentence.is_stop(and + 3)
        || sentence.is_sign(and + 3, '.');
    let never_less = sentence.is_any(and + 1, &["not", "no", "never"])
        && sentence.is_any(and + 2, &["less", "more"])
        && closes;
    let included =
        and > 0 && sentence.is_word(and + 1, "including") && sentence.is_word(and - 1, "to");
    included || never_less
}

fn push(segments: &mut Vec<Segment>, first: usize, last: usize) {
    if first < last {
        segments.push(Segment { first, last });
    }
}

/// Words that carry no requirement of their own.
const EMPTY: &[&str] = &[
    "a",
    "an",
    "the",
    "of",
    "and",
    "or",
    "but",
    "to",
    "in",
    "on",
    "at",
    "for",
    "with",
    "by",
    "as",
    "is",
    "are",
    "be",
    "shall",
    "that",
    "which",
    "each",
    "this",
    "from",
    "respectively",
    "it",
    "its",
    "also",
    "only",
    "when",
    "where",
    "if",
    "than",
    "both",
    "either",
    "extension",
    "compression",
    "o.c",
    "oc",
    "width",
    "thick",
    "wide",
    "deep",
    "long",
    "depth",
    "thickness",
    "max",
    "min",
    "nom",
    "maximum",
    "minimum",
    "nominal",
    "except",
];

/// What a segment is to the clauses of its sentence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// It holds a number that bounds something.
    Bound,
    /// It leads to the first number of the sentence.
    Lead,
    /// It says something of its own.
    Prose,
    /// A single word, which belongs to its neighbour.
    Word,
    /// It says nothing.
    Empty,
}

/// The role of each segment. A single word beside prose is part of it: "straight, sound and free of loose matter".
pub(super) fn roles(
    sentence: &Sentence<'_>,
    segments: &[Segment],
    holds_bound: impl Fn(&Segment) -> bool,
    skip: impl Fn(usize) -> bool,
) -> Vec<Role> {
    let first_bound = segments.iter().position(&holds_bound).unwrap_or(0);
    let mut roles: Vec<Role> = segments
        .iter()
        .enumerate()
        .map(|(index, segment)| {
            if holds_bound(segment) {
                return Role::Bound;
            }
            let refers = segments.get(index + 1).is_some_and(|next| {
                sentence.is_any(next.first, &["except", "but"]) && refers(sentence, *segment)
            });
            if index < first_bound && first_bound <= 1 && !refers {
                return Role::Lead;
            }
            match meaning(sentence, *segment, &skip) {
                0 => Role::Empty,
                1 => Role::Word,
                _ => Role::Prose,
            }
        })
        .collect();
    for _ in 0..2 {
        let mut beside = Role::Empty;
        for role in &mut roles {
            if (*role, beside) == (Role::Word, Role::Prose) {
                *role = Role::Prose;
            }
            beside = *role;
        }
        roles.reverse();
    }
    roles
}

/// Whether a stretch says that what another item says holds here too: "As Item 1A".
fn refers(sentence: &Sentence<'_>, segment: Segment) -> bool {
    let cited = (segment.first..segment.last).find(|at| sentence.is_any(*at, &["item", "items"]));
    cited.is_some_and(|item| {
        sentence.has_any(
            segment.first,
            item,
            &["as", "same", "like", "per", "similar", "identical"],
        )
    })
}

/// How many words of a stretch carry meaning; two or more are enough for a requirement.
fn meaning(sentence: &Sentence<'_>, segment: Segment, skip: impl Fn(usize) -> bool) -> usize {
    (segment.first..segment.last)
        .filter(|at| {
            let word = sentence.word(*at);
            !skip(*at) && word.len() > 1 && !EMPTY.contains(&word)
        })
        .count()
}
