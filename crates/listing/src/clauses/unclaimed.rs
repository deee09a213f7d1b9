//! A word of limit that no number took: the value beside it is no bare value, whatever the limit is said of.

use measure::Unit;

use crate::phrase::TokenKind;
use crate::rules::{Finding, Sentence};

/// Words that set a limit wherever they stand.
const LIMITS: &[&str] = &[
    "min",
    "minimum",
    "minimums",
    "minima",
    "max",
    "maximum",
    "maximums",
    "maxima",
    "nlt",
    "nmt",
    "nte",
    "least",
    "atleast",
    "upto",
    "upward",
    "upwards",
    "exceed",
    "exceeds",
    "exceeding",
    "approx",
    "approximately",
    "abt",
    "lo",
    "hi",
];

/// Words that compare, and limit a value after "or", "and", "no" or "not".
const COMPARING: &[&str] = &[
    "more",
    "less",
    "greater",
    "fewer",
    "smaller",
    "larger",
    "bigger",
    "heavier",
    "lighter",
    "thicker",
    "thinner",
    "wider",
    "narrower",
    "deeper",
    "shallower",
    "longer",
    "shorter",
    "taller",
    "higher",
    "lower",
    "denser",
    "older",
    "younger",
    "closer",
    "nearer",
    "farther",
    "further",
    "warmer",
    "colder",
    "cooler",
    "hotter",
    "sooner",
    "later",
    "earlier",
    "over",
    "above",
    "below",
    "under",
    "up",
    "beyond",
];

/// Words before one that compares.
const BEFORE_COMPARING: &[&str] = &["or", "and", "no", "not", "never", "nothing", "&"];

/// How many words a label may have behind its limit.
const LABEL: usize = 8;

/// Signs that compare.
const SIGNS: &[char] = &['<', '>', '≤', '≥', '⩽', '⩾', '~', '≈'];

/// The limits of a sentence that no number took.
pub(super) struct Unclaimed {
    /// Their tokens, in order.
    at: Vec<usize>,
}

impl Unclaimed {
    pub(super) fn of(
        sentence: &Sentence<'_>,
        findings: &[Option<(Finding, &'static str)>],
    ) -> Self {
        let mut at: Vec<usize> = (0..sentence.tokens.len())
            .filter(|at| is_limit(sentence, *at) && !sentence.in_condition(*at))
            .collect();
        for (index, finding) in findings.iter().enumerate() {
            let (Some(amount), Some((finding, rule))) = (sentence.amount(index), finding) else {
                continue;
            };
            if *rule == "bare value" {
                continue;
            }
            if finding.from < amount.first {
                at.retain(|at| *at < finding.from || *at >= amount.first);
            } else if let Some(closing) = at.iter().position(|at| *at >= amount.last) {
                // What closes a number is the first behind it.
                at.remove(closing);
            }
        }
        Self { at }
    }

    /// `not exceeding that of the track plus 1/4 in.`: a sum that a verb limits, and no difference that is just so.
    fn exceeds_a_sum(&self, sentence: &Sentence<'_>, start: usize, first: usize) -> bool {
        let added = first > 0
            && (sentence.is_any(first - 1, &["plus", "less", "minus"])
                || sentence.is_sign(first, '+'));
        let stretch = (start..first).rev().take_while(|at| !sentence.is_stop(*at));
        added
            && stretch.into_iter().any(|at| {
                self.at.contains(&at)
                    && sentence.is_any(at, &["exceed", "exceeds", "exceeding", "least", "most"])
            })
    }

    /// Whether a bare value shares its stretch of words with one of them.
    pub(super) fn is_beside(&self, sentence: &Sentence<'_>, index: usize) -> bool {
        let Some(own) = sentence.amount(index) else {
            return false;
        };
        // The number of a screw is a name rather than a measure.
        if own.unit == Unit::ScrewNumber {
            return false;
        }
        let start = sentence.floor(index);
        if is_difference(sentence, own.first) {
            return self.exceeds_a_sum(sentence, start, own.first);
        }
        let end = sentence
            .amount(index + 1)
            .map_or(sentence.tokens.len(), |next| next.first);
        // `is 4 in. thick; yours may be thicker, but not thinner`: behind a semicolon, words without a number are about the one before.
        let is_last = sentence.amount(index + 1).is_none();
        let ends = |at: usize| {
            sentence.is_sign(at, ';') && !is_last
                || sentence.is_sign(at, ':')
                || sentence.is_sign(at, '.')
        };
        if is_left_open(sentence, own.last) || is_not_alone(sentence, own.first) {
            return true;
        }
        // `4 in. Max Recess: 1/2 in.`: the label of the number begins where the one before ends.
        let label = (start..own.first)
            .rev()
            .find(|at| sentence.is_sign(*at, ':'));
        let labelled = label.is_some_and(|colon| {
            colon - start <= LABEL && (start..=start + 1).any(|at| self.at.contains(&at))
        });
        if labelled {
            return true;
        }
        let in_front = (start..own.first).rev().take_while(|at| !ends(*at));
        let behind = (own.last..end).take_while(|at| !ends(*at));
        in_front.chain(behind).any(|at| self.at.contains(&at))
    }
}

/// `not only over 1 in. wide`: a number that is one case of several, and limits nothing.
fn is_not_alone(sentence: &Sentence<'_>, first: usize) -> bool {
    const REACH: usize = 6;
    let near = first.saturating_sub(REACH)..first;
    let stretch = near.rev().take_while(|at| !sentence.is_stop(*at));
    stretch.into_iter().any(|at| {
        sentence.is_word(at, "not") && sentence.is_any(at + 1, &["only", "just", "merely"])
    })
}

/// `18 ga. (or hvr.)`, `4 in. plus`: a number that a word closes in a way that no rule reads.
fn is_left_open(sentence: &Sentence<'_>, last: usize) -> bool {
    const NO_LIMIT: &[&str] = &["equal", "eq", "equiv", "sim", "appr"];
    let at = sentence.skip_parentheses_but(last);
    // `4 in. plus.`, `4 in. tops`
    let closed = sentence.is_any(at, &["plus", "tops"])
        && sentence
            .token(at + 1)
            .is_none_or(|token| token.word().is_none() && !token.is_numeric());
    if closed {
        return true;
    }
    let word = sentence.token(at + 1).and_then(|token| {
        token
            .word()
            .map(|word| (word, token.span.of(sentence.text)))
    });
    let compares = word.is_some_and(|(word, printed)| {
        (printed.ends_with('.') || word.ends_with("er") || word.ends_with("ER"))
            && !NO_LIMIT.contains(&sentence.word(at + 1))
    });
    sentence.is_word(at, "or") && compares && ends_stretch(sentence, at + 2)
}

/// `the joint width plus 2 in.`, `exceeds the opening by 1 in.`: a difference, with whose other side the limit goes.
fn is_difference(sentence: &Sentence<'_>, first: usize) -> bool {
    const SIGNS: &[char] = &['+', '-', '−'];
    let signed = |at: usize| SIGNS.iter().any(|sign| sentence.is_sign(at, *sign));
    signed(first)
        || first > 0 && (sentence.is_any(first - 1, &["plus", "less", "by"]) || signed(first - 1))
}

fn is_limit(sentence: &Sentence<'_>, at: usize) -> bool {
    if limits_another_number(sentence, at) {
        return false;
    }
    // `not a bit less`
    let bit = at > 2 && sentence.is_any(at - 1, &["bit", "whit", "hair", "fraction"]);
    let before = at.saturating_sub(if bit { 3 } else { 1 });
    let compares = at > 0
        && sentence.is_any(at, COMPARING)
        && (sentence.is_any(before, BEFORE_COMPARING) || sentence.is_sign(before, '&'));
    let at_most = at > 0 && sentence.is_word(at, "most") && sentence.is_word(at - 1, "at");
    at_most
        || sentence.is_any(at, LIMITS)
        || SIGNS.iter().any(|sign| sentence.is_sign(at, *sign))
        || compares && ends_stretch(sentence, at + 1)
}

/// `not less than 40`, `<2.1>`, `for ratings not exceeding 2 h`: a number that is no amount, or triggers a condition, has the limit to itself.
fn limits_another_number(sentence: &Sentence<'_>, at: usize) -> bool {
    let next = at + 1 + usize::from(sentence.is_any(at + 1, &["than", "of"]));
    match sentence.amount_at(next) {
        Some(amount) => !sentence.is_bound(amount),
        None => sentence
            .token(next)
            .is_some_and(|token| matches!(token.kind, TokenKind::Number(_))),
    }
}

fn ends_stretch(sentence: &Sentence<'_>, at: usize) -> bool {
    !sentence.has_word(at)
}
