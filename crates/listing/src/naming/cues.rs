//! The words beside a number, and how well they name an attribute.

use core::ops::Range;

use measure::Dimension;

use super::laps::{places_before_number, speaks_of_a_lap};
use super::misheard::is_of_another_thing;
use super::run::{Run, Words};
use crate::phrase::{Amount, Shape};
use crate::rules::{Sentence, measured_behind};

/// The words on either side of a number, in small letters.
#[derive(Debug, Default)]
pub(super) struct Context {
    /// Before it, nearest last, to the number or stop before.
    before: Words,
    /// How many of those words are left when the qualifiers between cue and number are: "drying" of "drying to min".
    bare: usize,
    /// After it, to the number or stop after.
    after: Words,
    /// The rest of the stretch after it.
    beyond: Words,
    /// Whether the sentence speaks of a lap before the number.
    pub(super) laps: bool,
    /// Whether what a lap is onto stands between it and the number: "laps wall 1 in., deck 2 in."
    pub(super) placed_before: bool,
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

/// `25 percent compression and extension`: a number that is said of both.
fn joins_movements(sentence: &Sentence<'_>, and: usize) -> bool {
    const MOVEMENTS: &[&str] = &["compression", "extension"];
    let number_follows = (and + 2..and + 5).any(|at| sentence.amount_at(at).is_some());
    sentence.is_word(and, "and")
        && and > 0
        && sentence.is_any(and - 1, MOVEMENTS)
        && sentence.is_any(and + 1, MOVEMENTS)
        && !number_follows
}

impl Context {
    pub(super) fn of(sentence: &Sentence<'_>, amount: &Amount) -> Self {
        // `voids: ≤ 3 mm` is named by its label.
        let labels = |at: usize| {
            sentence.is_sign(at, ':')
                && (at + 1..amount.first)
                    .all(|at| QUALIFYING.contains(&sentence.word(at)) || is_comparing(sentence, at))
        };
        let stops =
            |at: usize| sentence.is_sign(at, ';') || sentence.is_sign(at, ':') && !labels(at);
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
        let start = start.max(after_a_parallel(sentence, floor, amount));
        // "max 12 ft height, 5 in. thickness": what stands behind the number before is its own.
        let own_measure = floor > 0
            && measured_behind(sentence, amount).is_some_and(|measure| measure != "spacing");
        let start = (start..amount.first)
            .rev()
            .find(|at| own_measure && sentence.is_sign(*at, ','))
            .map_or(start, |at| at + 1);
        let from = start.max(amount.first.saturating_sub(11));
        let before = Words::of(words(sentence, from, amount.first));
        let qualifying = words(sentence, from, amount.first)
            .rev()
            .take_while(|word| QUALIFYING.contains(word))
            .count();
        let bare = before.count() - qualifying;
        let next = sentence
            .amounts
            .iter()
            .find(|other| other.first >= amount.last)
            .map_or(sentence.tokens.len(), |other| other.first);
        let next = (amount.last..next)
            .find(|at| sentence.in_condition(*at))
            .unwrap_or(next);
        let after_start = sentence.skip_parentheses(amount.last);
        let limit = crate::rules::ends_at_limit(sentence, index);
        let next = limit.map_or(next, |limit| next.min(limit));
        // "wet 125 mils / dry 60 mils": past the slash the next number is named.
        let numbered = next < sentence.tokens.len();
        let slash = |at: usize| {
            sentence.is_sign(at, '/') && numbered && !sentence.is_any(at + 1, &["c", "c."])
        };
        // A new phrase speaks of something else: "0.033 in. with its longer leg".
        let comma = (after_start..next)
            .find(|at| {
                sentence.is_stop(*at)
                    || sentence.is_sign(*at, '.')
                    || slash(*at)
                    || sentence.is_any(*at, &["with", "having", "and", "but", "while"])
                        && !joins_movements(sentence, *at)
                    // "shall be 4 in. provided the joint width exceeds 2 in."
                    || sentence.is_any(*at, &["provided", "providing"])
                    || sentence.is_word(*at, "subject") && sentence.is_word(*at + 1, "to")
                    || sentence.is_any(*at, &["so", "as"]) && sentence.is_word(*at + 1, "long")
            })
            .unwrap_or(next);
        // Past a semicolon another statement begins: "lap on floor min 1 in.; lap on board 1/2 in."
        let beyond_end = (after_start + 12).min(limit.unwrap_or(sentence.tokens.len()));
        let beyond_end = (after_start..beyond_end)
            .find(|at| sentence.is_sign(*at, ';'))
            .unwrap_or(beyond_end);
        Self {
            before,
            bare,
            after: Words::of(measured_within(sentence, amount).chain(words(
                sentence,
                after_start,
                comma,
            ))),
            beyond: Words::of(words(sentence, after_start, beyond_end)),
            laps: speaks_of_a_lap(sentence, amount.first),
            placed_before: places_before_number(sentence, index),
        }
    }

    /// The words of a table's heading: any of them may be the cue, those given left out.
    pub(super) fn of_heading(heading: &str, nouns: &[Range<usize>]) -> Self {
        let heading = heading_words(&outside(heading, nouns));
        let words = || Words::of(heading.split(' '));
        Self {
            before: words(),
            bare: words().count(),
            after: words(),
            beyond: Words::default(),
            laps: false,
            placed_before: false,
        }
    }

    /// Whether two words are joined by "or" or "and" beside the number.
    pub(super) fn joins(&self, first: &str, second: &str) -> bool {
        ["or", "and"].iter().any(|joint| {
            let ways = [
                format!("{first} {joint} in {second}"),
                format!("{first} {joint} {second}"),
                format!("{second} {joint} {first}"),
            ];
            let before = self.before.between(0, self.bare);
            ways.iter().any(|words| {
                find_words(self.after.text(), words).is_some() || before.ends_with(words.as_str())
            })
        })
    }

    /// Whether the words after the number say onto what.
    pub(super) fn is_placed(&self) -> bool {
        ["on ", "onto ", "over "]
            .iter()
            .any(|word| self.after.text().starts_with(word))
    }

    /// Whether the words right behind the number say onto what, and those further off onto what else.
    pub(super) fn is_placed_elsewhere(&self) -> bool {
        const SIDES: &[&str] = &["on each ", "on either ", "on both ", "on all "];
        let after = self.after.text();
        let further = self.beyond.text().get(after.len()..).unwrap_or_default();
        self.is_placed()
            && self.after.count() > 1
            && !SIDES.iter().any(|side| after.starts_with(side))
            && ["onto ", " on "].iter().any(|word| further.contains(word))
    }

    /// Whether a word beside the number begins with the given one: `legs` with `leg`, `drying` with `dry`.
    pub(super) fn has_word_like(&self, word: &str) -> bool {
        let top = word == "top";
        // `fastened` is like `fastener`.
        let stem = word.get(..word.len().min(5)).unwrap_or(word);
        [&self.before, &self.after].into_iter().any(|near| {
            near.begin_with(stem)
                || (top
                    && ["uppermost", "upper", "topmost"]
                        .iter()
                        .any(|upper| near.begin_with(upper)))
        })
    }

    /// A few of the listing's own words that tell what the number is, for what the vocabulary can't name.
    pub(super) fn own_words(&self) -> String {
        let tail = self.before.between(self.bare.saturating_sub(3), self.bare);
        let head = self.after.between(0, 3);
        format!("{tail} {head}").trim().to_owned()
    }

    /// Takes the words after the number, each run of them with how many words lie between.
    pub(super) fn runs_after(&self, take: impl FnMut(&Run<'_>)) {
        self.after.runs(|first, _| first, take);
    }

    /// Takes the words before the number likewise; none lie between where only qualifiers do.
    pub(super) fn runs_before(&self, take: impl FnMut(&Run<'_>)) {
        let count = self.before.count();
        let bare = self.bare;
        self.before
            .runs(|_, last| if last >= bare { 0 } else { count - last }, take);
    }

    /// Takes the words after the number past the next stop, too.
    pub(super) fn runs_beyond(&self, take: impl FnMut(&Run<'_>)) {
        self.beyond.runs(|first, _| first, take);
    }
}

/// Where the words of a number begin whose like stands before it with words of its own: `100 percent in shear, *50 percent in compression*`.
fn after_a_parallel(sentence: &Sentence<'_>, floor: usize, amount: &Amount) -> usize {
    let Some(parting) = amount.first.checked_sub(1).filter(|at| *at > floor) else {
        return floor;
    };
    let parted = sentence.is_sign(parting, ',') || sentence.is_any(parting, &["and", "or"]);
    let opens = sentence.word(floor);
    let alike = matches!(opens, "in" | "at" | "on" | "onto" | "for")
        && sentence.word(sentence.skip_parentheses(amount.last)) == opens;
    if floor > 0 && parted && alike {
        amount.first
    } else {
        floor
    }
}

/// Whether a word only says how a number is bounded.
pub(super) fn is_bounding(word: &str) -> bool {
    QUALIFYING.contains(&word)
}

pub(super) fn is_comparing(sentence: &Sentence<'_>, at: usize) -> bool {
    ['≥', '≤', '⩾', '⩽', '>', '<', '=']
        .iter()
        .any(|sign| sentence.is_sign(at, *sign))
}

/// What is measured by a number, where the words of it stand within: "1/2 in. *deep*, +1/8, -0 in."
fn measured_within<'a>(
    sentence: &'a Sentence<'_>,
    amount: &Amount,
) -> impl DoubleEndedIterator<Item = &'a str> {
    const MEASURES: &[&str] = &["deep", "wide", "thick", "long", "high", "wet", "dry"];
    // "62 *dry* mils"
    let film = sentence.is_any(amount.first + 1, &["wet", "dry"]);
    let within = amount.shape == Shape::Tolerance || film && amount.first + 1 < amount.last;
    let last = if within { amount.last } else { amount.first };
    words(sentence, amount.first, last).filter(|word| MEASURES.contains(word))
}

/// The words among tokens `[first, last)`, and signs that compare.
fn words<'s>(
    sentence: &'s Sentence<'_>,
    first: usize,
    last: usize,
) -> impl DoubleEndedIterator<Item = &'s str> {
    (first..last).filter_map(|at| {
        let word = sentence.word(at);
        if !word.is_empty() {
            return (!is_of_another_thing(sentence, at)).then_some(word);
        }
        [("≥", '≥'), ("≤", '≤'), (">", '>'), ("<", '<'), ("=", '=')]
            .into_iter()
            .find(|(_, sign)| sentence.is_sign(at, *sign))
            .map(|(word, _)| word)
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
