//! The words beside a number, and how well they name an attribute.

use core::ops::Range;

use measure::Dimension;

use super::heard::longest_cue;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// The words on either side of a number, in small letters.
#[derive(Debug, Default)]
pub(super) struct Context {
    /// Before it, nearest last, to the number or stop before.
    before: String,
    /// How many of those words are left when the qualifiers between cue and number are: "drying" of "drying to min".
    bare: usize,
    /// After it, to the number or stop after.
    after: String,
    /// The rest of the stretch after it.
    beyond: String,
    /// Whether the sentence speaks of a lap before the number.
    pub(super) laps: bool,
}

/// The beginnings of words that speak of a lap.
const LAPS: &[&str] = &["lap", "overlap", "exten", "carried", "onto"];

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
        let length = amount.unit.dimension() == Dimension::Length;
        // "sprayed to the same thickness for at least 12 in.": a new phrase begins.
        let start = (start..amount.first)
            .rev()
            .find(|at| {
                sentence.is_any(*at, &["with", "having"])
                    || (length && sentence.is_word(*at, "for"))
            })
            .map_or(start, |at| at + 1);
        let before = words(
            sentence,
            start.max(amount.first.saturating_sub(11)),
            amount.first,
        );
        let qualifying = before
            .iter()
            .rev()
            .take_while(|word| QUALIFYING.contains(word))
            .count();
        let bare = before.len() - qualifying;
        let next = sentence
            .amounts
            .iter()
            .find(|other| other.first >= amount.last)
            .map_or(sentence.tokens.len(), |other| other.first);
        let next = (amount.last..next)
            .find(|at| sentence.in_condition(*at))
            .unwrap_or(next);
        let after_start = sentence.skip_parentheses(amount.last);
        // A new phrase speaks of something else: "0.033 in. with its longer leg".
        let comma = (after_start..next)
            .find(|at| {
                sentence.is_stop(*at)
                    || sentence.is_sign(*at, '.')
                    || sentence.is_any(*at, &["with", "having", "and", "but", "while"])
            })
            .unwrap_or(next);
        let after = words(sentence, after_start, comma);
        let beyond_end = (after_start + 12).min(sentence.tokens.len());
        Self {
            before: before.join(" "),
            bare,
            after: after.join(" "),
            beyond: words(sentence, after_start, beyond_end).join(" "),
            laps: (amount.first.saturating_sub(16)..amount.first).any(|at| {
                let word = sentence.word(at);
                LAPS.iter().any(|begins| word.starts_with(begins))
            }),
        }
    }

    /// The words of a table's heading: any of them may be the cue, those given left out.
    pub(super) fn of_heading(heading: &str, nouns: &[Range<usize>]) -> Self {
        let words = heading_words(&outside(heading, nouns));
        Self {
            bare: words.split(' ').count(),
            before: words.clone(),
            after: words,
            beyond: String::new(),
            laps: false,
        }
    }

    /// Whether two words are joined by "or" or "and" after the number.
    pub(super) fn joins(&self, first: &str, second: &str) -> bool {
        ["or", "and"].iter().any(|joint| {
            find_words(&self.after, &format!("{first} {joint} in {second}")).is_some()
                || find_words(&self.after, &format!("{first} {joint} {second}")).is_some()
                || find_words(&self.after, &format!("{second} {joint} {first}")).is_some()
        })
    }

    /// Whether the words after the number say onto what.
    pub(super) fn is_placed(&self) -> bool {
        ["on ", "onto ", "over "]
            .iter()
            .any(|word| self.after.starts_with(word))
    }

    /// Whether a word beside the number begins with the given one: `legs` with `leg`, `drying` with `dry`.
    pub(super) fn has_word_like(&self, word: &str) -> bool {
        let top = word == "top";
        // `fastened` is like `fastener`.
        let stem = word.get(..word.len().min(5)).unwrap_or(word);
        [&self.before, &self.after].into_iter().any(|near| {
            begins_a_word(near, stem)
                || (top
                    && ["uppermost", "upper", "topmost"]
                        .iter()
                        .any(|upper| begins_a_word(near, upper)))
        })
    }

    /// A few of the listing's own words that tell what the number is, for what the vocabulary can't name.
    pub(super) fn own_words(&self) -> String {
        let before: Vec<&str> = self.before.split(' ').take(self.bare).collect();
        let tail = before
            .get(before.len().saturating_sub(3)..)
            .unwrap_or_default();
        let head: Vec<&str> = self.after.split(' ').take(3).collect();
        format!("{} {}", tail.join(" "), head.join(" "))
            .trim()
            .to_owned()
    }

    /// Takes the words after the number, each run of them with how many words lie between.
    pub(super) fn runs_after(&self, take: impl FnMut(&Run<'_>)) {
        runs(&self.after, |first, _| first, take);
    }

    /// Takes the words before the number likewise; none lie between where only qualifiers do.
    pub(super) fn runs_before(&self, take: impl FnMut(&Run<'_>)) {
        let count = self.before.split(' ').count();
        let bare = self.bare;
        runs(
            &self.before,
            |_, last| if last >= bare { 0 } else { count - last },
            take,
        );
    }

    /// Takes the words after the number past the next stop, too.
    pub(super) fn runs_beyond(&self, take: impl FnMut(&Run<'_>)) {
        runs(&self.beyond, |first, _| first, take);
    }
}

/// A run of words beside a number.
#[derive(Debug, Clone, Copy)]
pub(super) struct Run<'a> {
    pub(super) words: &'a str,
    /// How many words the run has.
    pub(super) length: usize,
    /// How many words stand between it and the number, qualifiers apart.
    pub(super) between: usize,
    /// Where it begins, in bytes.
    pub(super) at: usize,
}

/// Takes every run of words of a text that may be a cue: none longer than the longest cue that begins with its first word.
fn runs(text: &str, between: impl Fn(usize, usize) -> usize, mut take: impl FnMut(&Run<'_>)) {
    let mut starts = vec![0];
    starts.extend(text.match_indices(' ').map(|(at, _)| at + 1));
    starts.push(text.len() + 1);
    for (first, window) in starts.windows(2).enumerate() {
        let (Some(at), Some(next)) = (window.first().copied(), window.last().copied()) else {
            continue;
        };
        let longest = longest_cue(text.get(at..next - 1).unwrap_or_default());
        for (length, end) in starts.iter().skip(first + 1).take(longest).enumerate() {
            let Some(words) = text.get(at..end - 1) else {
                continue;
            };
            let last = first + length + 1;
            take(&Run {
                words,
                length: length + 1,
                between: between(first, last),
                at,
            });
        }
    }
}

fn words<'s>(sentence: &'s Sentence<'_>, first: usize, last: usize) -> Vec<&'s str> {
    (first..last)
        .filter_map(|at| {
            let word = sentence.word(at);
            if !word.is_empty() {
                return Some(word);
            }
            ["≥", "≤", ">", "<", "="]
                .into_iter()
                .find(|sign| sentence.is_sign(at, sign.chars().next().unwrap_or(' ')))
        })
        .collect()
}

/// Whether a word of a text begins so.
fn begins_a_word(text: &str, stem: &str) -> bool {
    let (text, stem) = (text.as_bytes(), stem.as_bytes());
    text.starts_with(stem)
        || text.iter().enumerate().any(|(at, byte)| {
            *byte == b' '
                && text
                    .get(at + 1..)
                    .is_some_and(|rest| rest.starts_with(stem))
        })
}

/// Where whole words stand in a text.
fn find_words(text: &str, words: &str) -> Option<usize> {
    text.match_indices(words)
        .map(|(at, _)| at)
        .find(|at| is_whole(text, *at, words))
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

/// Whether a heading says that its cells are spacings.
pub(super) fn is_spacing(heading: &str) -> bool {
    const CUES: [&str; 5] = ["o.c", "oc", "o/c", "c/c", "c.c"];
    let words = heading_words(heading);
    words.split(' ').any(|word| CUES.contains(&word)) || words.contains("on cent")
}

/// A heading without its nouns.
fn outside(heading: &str, nouns: &[Range<usize>]) -> String {
    let mut kept = String::new();
    let mut at = 0;
    for noun in nouns {
        kept.push_str(heading.get(at..noun.start).unwrap_or_default());
        at = noun.end;
    }
    kept.push_str(heading.get(at..).unwrap_or_default());
    kept
}

/// The words of a heading in small letters; "o.c." keeps its inner stop.
fn heading_words(heading: &str) -> String {
    let words: Vec<String> = heading
        .split(|c: char| !(c.is_alphanumeric() || matches!(c, '-' | '.' | '/')))
        .map(|word| word.trim_matches(['.', '/']))
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    words.join(" ")
}
