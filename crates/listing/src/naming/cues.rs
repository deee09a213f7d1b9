//! The words beside a number, and how well they name an attribute.

use measure::Dimension;
use vocabulary::vocabulary;

use crate::phrase::Amount;
use crate::rules::Sentence;

/// The words on either side of a number, in small letters.
#[derive(Debug, Default)]
pub(super) struct Context {
    /// Before it, nearest last, to the number or stop before.
    before: String,
    /// The same, each time with one more qualifier left out between cue and number: "drying to min", "drying to", "drying".
    before_forms: Vec<String>,
    /// After it, to the number or stop after.
    after: String,
    /// The rest of the stretch after it.
    beyond: String,
}

/// Words between a cue and its number that say how the number is bounded.
const QUALIFYING: &[&str] = &[
    "a",
    "an",
    "the",
    "of",
    "min",
    "minimum",
    "max",
    "maximum",
    "nom",
    "nominal",
    "not",
    "no",
    "less",
    "more",
    "greater",
    "than",
    "to",
    "be",
    "shall",
    "is",
    "are",
    "at",
    "least",
    "most",
    "exceed",
    "exceeding",
    "over",
    "under",
    "approximately",
    "about",
    "exactly",
    "up",
    "≥",
    "≤",
    ">",
    "<",
    "fewer",
    "by",
    "some",
    "=",
    "total",
    "between",
    "from",
    "in",
    "excess",
    "limited",
    "within",
    "has",
    "have",
    "having",
    "measuring",
    "measures",
    "increased",
    "reduced",
    "becomes",
];

impl Context {
    pub(super) fn of(sentence: &Sentence<'_>, amount: &Amount) -> Self {
        let stops = |at: usize| sentence.is_sign(at, ';') || sentence.is_sign(at, ':');
        let index = sentence
            .amounts
            .iter()
            .position(|other| other.first == amount.first)
            .unwrap_or(0);
        let floor = sentence.floor(index);
        let start = (floor..amount.first)
            .rev()
            .find(|at| stops(*at))
            .map_or(floor, |at| at + 1);
        let start = (start..amount.first)
            .rev()
            .find(|at| sentence.in_condition(*at))
            .map_or(start, |at| at + 1);
        let before = words(
            sentence,
            start.max(amount.first.saturating_sub(14)),
            amount.first,
        );
        let mut bare = before.clone();
        let mut before_forms = vec![bare.join(" ")];
        while let Some(last) = bare.last()
            && QUALIFYING.contains(&last.as_str())
        {
            bare.pop();
            before_forms.push(bare.join(" "));
        }
        let next = sentence
            .amounts
            .iter()
            .find(|other| other.first >= amount.last)
            .map_or(sentence.tokens.len(), |other| other.first);
        let next = (amount.last..next)
            .find(|at| sentence.in_condition(*at))
            .unwrap_or(next);
        let after_start = sentence.skip_parentheses(amount.last);
        let comma = (after_start..next)
            .find(|at| sentence.is_stop(*at) || sentence.is_sign(*at, '.'))
            .unwrap_or(next);
        let after = words(sentence, after_start, comma);
        let beyond_end = (after_start + 12).min(sentence.tokens.len());
        Self {
            before: before.join(" "),
            before_forms,
            after: after.join(" "),
            beyond: words(sentence, after_start, beyond_end).join(" "),
        }
    }

    /// The words of a table's heading: any of them may be the cue.
    pub(super) fn of_heading(heading: &str) -> Self {
        let words: Vec<String> = heading
            .split(|c: char| !(c.is_alphanumeric() || c == '-'))
            .filter(|word| !word.is_empty())
            .map(str::to_lowercase)
            .collect();
        let words = words.join(" ");
        Self {
            before: words.clone(),
            before_forms: vec![words.clone()],
            after: words,
            beyond: String::new(),
        }
    }

    /// Whether two words are joined by "or" or "and" after the number.
    pub(super) fn joins(&self, first: &str, second: &str) -> bool {
        ["or", "and"].iter().any(|joint| {
            find_words(&self.after, &format!("{first} {joint} {second}")).is_some()
                || find_words(&self.after, &format!("{second} {joint} {first}")).is_some()
        })
    }

    /// Whether a word beside the number begins with the given one: `legs` with `leg`, `drying` with `dry`.
    pub(super) fn has_word_like(&self, word: &str) -> bool {
        let top = word == "top";
        let near = self.before.split(' ').chain(self.after.split(' '));
        // `fastened` is like `fastener`.
        let stem = word.get(..word.len().min(5)).unwrap_or(word);
        near.filter(|own| !own.is_empty()).any(|own| {
            own.starts_with(stem) || (top && matches!(own, "uppermost" | "upper" | "topmost"))
        })
    }

    /// A few of the listing's own words that tell what the number is, for what the vocabulary can't name.
    pub(super) fn own_words(&self) -> String {
        let bare = self.before_forms.last().map_or("", String::as_str);
        let tail: Vec<&str> = bare.split(' ').rev().take(3).collect();
        let head: Vec<&str> = self.after.split(' ').take(3).collect();
        let tail: Vec<&str> = tail.into_iter().rev().collect();
        format!("{} {}", tail.join(" "), head.join(" "))
            .trim()
            .to_owned()
    }
}

fn words(sentence: &Sentence<'_>, first: usize, last: usize) -> Vec<String> {
    (first..last)
        .filter_map(|at| {
            let word = sentence.word(at);
            if !word.is_empty() {
                return Some(word);
            }
            ["≥", "≤", ">", "<", "="]
                .iter()
                .find(|sign| sentence.is_sign(at, sign.chars().next().unwrap_or(' ')))
                .map(|sign| (*sign).to_owned())
        })
        .collect()
}

/// How well a cue after the number names it: at once after it best, later in the stretch less.
pub(super) fn after_score(cues: &[String], context: &Context) -> i32 {
    cues.iter()
        .filter_map(|cue| {
            let cue = cue.trim_end_matches('.');
            let at = find_words(&context.after, cue)?;
            let between = context
                .after
                .get(..at)
                .unwrap_or_default()
                .split_whitespace()
                .count();
            let length = i32::try_from(cue.split(' ').count()).unwrap_or(1).min(4);
            match between {
                0 => Some(7 + length),
                1 => Some(6 + length),
                2 | 3 => Some(4 + length),
                _ => Some(2),
            }
        })
        .max()
        .unwrap_or(0)
}

/// The shared attribute whose cue stands best beside a number, and how well.
pub(super) fn shared_concept(
    dimension: Dimension,
    context: &Context,
) -> Option<(&'static str, i32)> {
    vocabulary()
        .attributes()
        .iter()
        .filter(|attribute| attribute.dimensions.contains(&dimension))
        .map(|attribute| {
            let score = after_score(&attribute.cues.after, context)
                .max(before_score(&attribute.cues.before, context));
            (attribute.name.as_str(), score)
        })
        .filter(|(_, score)| *score >= 7)
        .max_by(|(x, a), (y, b)| a.cmp(b).then_with(|| y.cmp(x)))
}

/// How well a cue before the number names it: directly before it best, qualifiers apart.
pub(super) fn before_score(cues: &[String], context: &Context) -> i32 {
    cues.iter()
        .filter_map(|cue| {
            let length = i32::try_from(cue.split(' ').count()).unwrap_or(1).min(4);
            if context
                .before_forms
                .iter()
                .any(|form| ends_with_words(form, cue))
            {
                // "a gap of" says what the number is; words after it may only say where.
                return Some(if cue.ends_with(" of") {
                    9 + length
                } else {
                    7 + length
                });
            }
            let at = rfind_words(&context.before, cue)?;
            let between = context
                .before
                .get(at + cue.len()..)
                .unwrap_or_default()
                .split_whitespace()
                .count();
            match between {
                0..=2 => Some(5 + length),
                3..=5 => Some(4 + length),
                6 | 7 => Some(3 + length),
                _ => Some(2),
            }
        })
        .max()
        .unwrap_or(0)
}

/// Whether the words after the number say that it reaches onto one of the nouns.
pub(super) fn onto_score(nouns: &[String], context: &Context) -> i32 {
    let near = nouns
        .iter()
        .filter_map(|noun| {
            find_words(&context.after, noun)
                .or_else(|| find_words(&context.beyond, noun).map(|at| at + 8))
        })
        .min();
    match near {
        Some(0..=16) => 5,
        Some(17..=40) => 3,
        Some(_) => 1,
        None => {
            i32::from(
                nouns
                    .iter()
                    .any(|noun| find_words(&context.before, noun).is_some()),
            ) * 2
        }
    }
}

/// The shared attribute that the words beside a number name.
pub(super) fn shared_attribute(dimension: Dimension, context: &Context) -> Option<String> {
    vocabulary()
        .attributes()
        .iter()
        .filter(|attribute| attribute.dimensions.contains(&dimension))
        .map(|attribute| {
            let score = after_score(&attribute.cues.after, context)
                .max(before_score(&attribute.cues.before, context));
            (score, attribute)
        })
        .filter(|(score, _)| *score >= 5)
        .max_by(|(a, x), (b, y)| a.cmp(b).then_with(|| y.name.cmp(&x.name)))
        .map(|(_, attribute)| attribute.title.to_lowercase())
}

/// Where whole words stand in a text.
fn find_words(text: &str, words: &str) -> Option<usize> {
    text.match_indices(words)
        .map(|(at, _)| at)
        .find(|at| is_whole(text, *at, words))
}

fn rfind_words(text: &str, words: &str) -> Option<usize> {
    text.rmatch_indices(words)
        .map(|(at, _)| at)
        .find(|at| is_whole(text, *at, words))
}

fn ends_with_words(text: &str, words: &str) -> bool {
    text.ends_with(words) && is_whole(text, text.len() - words.len(), words)
}

fn is_whole(text: &str, at: usize, words: &str) -> bool {
    let before = text
        .get(..at)
        .is_none_or(|head| head.is_empty() || head.ends_with(' '));
    let after = text
        .get(at + words.len()..)
        .is_none_or(|tail| tail.is_empty() || tail.starts_with(' '));
    before && after
}
