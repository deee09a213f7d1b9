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
    /// The same without qualifiers between cue and number: "a min", "not less than".
    before_bare: String,
    /// After it, to the number or stop after.
    after: String,
    /// The rest of the stretch after it.
    beyond: String,
}

/// Words between a cue and its number that say how the number is bounded.
const QUALIFYING: &[&str] = &[
    "a", "an", "the", "of", "min", "minimum", "max", "maximum", "nom", "nominal", "not", "no", "less", "more", "greater", "than", "to",
    "be", "shall", "is", "are", "at", "least", "most", "exceed", "exceeding", "over", "under", "approximately", "about", "exactly",
    "up", "≥", "≤", ">", "<", "fewer", "by", "some", "=", "total", "between", "from", "in", "excess", "limited", "within", "has", "have", "having", "measuring", "measures", "increased", "reduced", "becomes",
];

impl Context {
    pub(super) fn of(sentence: &Sentence<'_>, amount: &Amount) -> Self {
        let stops = |at: usize| sentence.is_sign(at, ';') || sentence.is_sign(at, ':');
        let index = sentence.amounts.iter().position(|other| other.first == amount.first).unwrap_or(0);
        let floor = sentence.floor(index);
        let start = (floor..amount.first).rev().find(|at| stops(*at)).map_or(floor, |at| at + 1);
        let before = words(sentence, start.max(amount.first.saturating_sub(14)), amount.first);
        let mut bare = before.clone();
        while let Some(last) = bare.last()
            && QUALIFYING.contains(&last.as_str())
        {
            bare.pop();
        }
        let next = sentence.amounts.iter().find(|other| other.first >= amount.last).map_or(sentence.tokens.len(), |other| other.first);
        let after_start = sentence.skip_parentheses(amount.last);
        let comma = (after_start..next).find(|at| sentence.is_stop(*at) || sentence.is_sign(*at, '.')).unwrap_or(next);
        let after = words(sentence, after_start, comma);
        let beyond_end = (after_start + 12).min(sentence.tokens.len());
        Self {
            before: before.join(" "),
            before_bare: bare.join(" "),
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
        Self { before: words.clone(), before_bare: words.clone(), after: words, beyond: String::new() }
    }

    /// A few of the listing's own words that tell what the number is, for what the vocabulary can't name.
    pub(super) fn own_words(&self) -> String {
        let tail: Vec<&str> = self.before_bare.split(' ').rev().take(3).collect();
        let head: Vec<&str> = self.after.split(' ').take(3).collect();
        let tail: Vec<&str> = tail.into_iter().rev().collect();
        format!("{} {}", tail.join(" "), head.join(" ")).trim().to_owned()
    }
}

fn words(sentence: &Sentence<'_>, first: usize, last: usize) -> Vec<String> {
    (first..last)
        .filter_map(|at| {
            let word = sentence.word(at);
            if !word.is_empty() {
                return Some(word);
            }
            ["≥", "≤", ">", "<", "="].iter().find(|sign| sentence.is_sign(at, sign.chars().next().unwrap_or(' '))).map(|sign| (*sign).to_owned())
        })
        .collect()
}

/// How well a cue after the number names it: at once after it best, later in the stretch less.
pub(super) fn after_score(cues: &[String], context: &Context) -> i32 {
    cues.iter()
        .filter_map(|cue| {
            let at = find_words(&context.after, cue)?;
            let between = context.after.get(..at).unwrap_or_default().split_whitespace().count();
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

/// How well a cue before the number names it: directly before it best, qualifiers apart.
pub(super) fn before_score(cues: &[String], context: &Context) -> i32 {
    cues.iter()
        .filter_map(|cue| {
            let length = i32::try_from(cue.split(' ').count()).unwrap_or(1).min(4);
            if ends_with_words(&context.before, cue) || ends_with_words(&context.before_bare, cue) {
                return Some(7 + length);
            }
            let at = rfind_words(&context.before, cue)?;
            let between = context.before.get(at + cue.len()..).unwrap_or_default().split_whitespace().count();
            match between {
                0..=4 => Some(5 + length),
                5..=7 => Some(3 + length),
                _ => Some(2),
            }
        })
        .max()
        .unwrap_or(0)
}

/// Whether the words after the number say that it reaches onto one of the nouns.
pub(super) fn onto_score(nouns: &[String], context: &Context) -> i32 {
    let near = nouns.iter().filter_map(|noun| find_words(&context.after, noun).or_else(|| find_words(&context.beyond, noun).map(|at| at + 8))).min();
    match near {
        Some(0..=16) => 5,
        Some(17..=40) => 3,
        Some(_) => 1,
        None => i32::from(nouns.iter().any(|noun| find_words(&context.before, noun).is_some())) * 2,
    }
}

/// The shared attribute that the words beside a number name.
pub(super) fn shared_attribute(dimension: Dimension, context: &Context) -> Option<String> {
    vocabulary()
        .attributes()
        .iter()
        .filter(|attribute| attribute.dimensions.contains(&dimension))
        .map(|attribute| {
            let score = after_score(&attribute.cues.after, context).max(before_score(&attribute.cues.before, context));
            (score, attribute)
        })
        .filter(|(score, _)| *score >= 5)
        .max_by(|(a, x), (b, y)| a.cmp(b).then_with(|| y.name.cmp(&x.name)))
        .map(|(_, attribute)| attribute.title.to_lowercase())
}

/// Where whole words stand in a text.
fn find_words(text: &str, words: &str) -> Option<usize> {
    text.match_indices(words).map(|(at, _)| at).find(|at| is_whole(text, *at, words))
}

fn rfind_words(text: &str, words: &str) -> Option<usize> {
    text.rmatch_indices(words).map(|(at, _)| at).find(|at| is_whole(text, *at, words))
}

fn ends_with_words(text: &str, words: &str) -> bool {
    text.ends_with(words) && is_whole(text, text.len() - words.len(), words)
}

fn is_whole(text: &str, at: usize, words: &str) -> bool {
    let before = text.get(..at).is_none_or(|head| head.is_empty() || head.ends_with(' '));
    let after = text.get(at + words.len()..).is_none_or(|tail| tail.is_empty() || tail.starts_with(' '));
    before && after
}
