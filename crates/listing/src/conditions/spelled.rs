//! Ratings in words that are no quantities: "for the one-hour rating", "in the three-hour wall", "for -/60/60", "64 mm (FRL -/60/60)".

use measure::{Number, Quantity, Unit};

use super::Found;
use super::classes::or_beyond;
use crate::model::{Expr, Relation, Test};
use crate::phrase::count_word;
use crate::rules::Sentence;

/// What may have a rating.
const RATED: &[&str] = &[
    "rating",
    "ratings",
    "wall",
    "walls",
    "joint",
    "joints",
    "partition",
    "partitions",
    "assembly",
    "assemblies",
    "system",
    "systems",
];

/// Words that introduce the case.
const INTRODUCE: &[&str] = &["for", "in", "at", "under"];

pub(super) fn spelled(sentence: &Sentence<'_>) -> Vec<Found> {
    let mut found = hours(sentence);
    found.extend(levels(sentence));
    found
}

/// "For the one-hour rating", and "for a two-hour or three-hour wall".
fn hours(sentence: &Sentence<'_>) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    for at in 0..sentence.tokens.len() {
        if found.last().is_some_and(|last| at < last.last) || hour_word(sentence, at).is_none() {
            continue;
        }
        let mut parts = Vec::new();
        let mut last = at;
        while let Some(part) = hour_word(sentence, last) {
            parts.push(part);
            last += 1;
            if sentence.is_any(last, &["and", "or"]) && hour_word(sentence, last + 1).is_some() {
                last += 1;
            }
        }
        let article = at > 0 && sentence.is_any(at - 1, &["the", "a", "any", "each"]);
        let before = at.checked_sub(1 + usize::from(article));
        let Some(opener) = before.filter(|before| introduces(sentence, *before)) else {
            continue;
        };
        if !sentence.is_any(last, RATED) {
            continue;
        }
        last += 1;
        let expr = match parts.as_slice() {
            [one] => one.clone(),
            _ => Expr::Any(parts.clone()),
        };
        found.push(Found {
            first: opener,
            last,
            expr,
            triggers: Vec::new(),
            parts,
        });
    }
    found
}

/// The rating that a word is: "three-hour".
fn hour_word(sentence: &Sentence<'_>, at: usize) -> Option<Expr> {
    const MOST: i32 = 4;
    let word = sentence.word(at);
    let number = word
        .strip_suffix("-hour")
        .or_else(|| word.strip_suffix("-hr"))?;
    let hours = count_word(number).filter(|hours| *hours <= MOST)?;
    Some(Expr::Test(Test {
        property: "joint.rating".to_owned(),
        relation: Relation::Exactly,
        lo: Some(Quantity::new(Number::whole(hours), Unit::Hour)),
        hi: None,
        lo_excluded: false,
    }))
}

/// How many levels stand in brackets of their own: "64 mm (FRL -/60/60) or 92 mm (FRL to -/120/120)". One alone is a wall's or a floor's own, unless the
/// words behind it say what is asked for otherwise.
fn are_bracketed_cases(text: &str) -> bool {
    let mut brackets = text
        .match_indices('(')
        .filter_map(|(open, _)| {
            let rest = text.get(open + 1..)?;
            let end = rest.find(')')?;
            Some((rest.get(..end)?, rest.get(end..)?))
        })
        .filter(|(words, _)| holds_levels(words));
    let Some((words, behind)) = brackets.next() else {
        return false;
    };
    let otherwise = || {
        let behind = behind.to_lowercase();
        is_banded(words)
            && behind
                .split_once("otherwise")
                .is_some_and(|(_, rest)| has_number(rest))
    };
    brackets.next().is_some() || otherwise()
}

fn has_number(words: &str) -> bool {
    words.contains(|c: char| c.is_ascii_digit())
}

/// Whether a bracket holds levels alone: "FRL -/60/60", "FRL up to -/120/120", "-/180/180 and -/240/240", "FRL -/60/60 or lower".
fn holds_levels(words: &str) -> bool {
    let named = words.trim();
    let named = named.split_once(" or ").map_or(named, |(named, _)| named);
    let mut words = named.split([' ', ',']).filter(|word| !word.is_empty());
    let leads = |word: &str| LEADING.contains(&word.to_lowercase().as_str());
    words.clone().any(is_level) && words.all(|word| is_level(word) || leads(word))
}

/// Whether a bracket takes in all levels to one side: "FRL up to -/120/120".
fn is_banded(words: &str) -> bool {
    let lower = words.to_lowercase();
    let mut words = lower.split_whitespace();
    words.any(|word| {
        matches!(
            word,
            "to" | "above" | "over" | "below" | "less" | "higher" | "lower"
        )
    })
}

/// What may stand between what introduces a level and the level: "for FRLs up to and including".
const LEADING: &[&str] = &[
    "frl",
    "frls",
    "the",
    "an",
    "all",
    "levels",
    "up",
    "to",
    "and",
    "including",
    "above",
    "over",
    "of",
];

/// "For -/60/60" (AS 1530.4): three figures, of which only a person can say to which rating of the joint they come.
fn levels(sentence: &Sentence<'_>) -> Vec<Found> {
    let mut found = Vec::new();
    let mut at = 0;
    let several = are_bracketed_cases(sentence.text);
    let labels = labelling_levels(sentence.text);
    for word in sentence.text.split(' ') {
        let level = word.trim_matches(|c: char| matches!(c, '.' | ',' | ';' | ':' | '(' | ')'));
        let from = at + word.find(level).unwrap_or_default();
        at += word.len() + 1;
        if !is_level(level) {
            continue;
        }
        let within = |at: &usize| {
            sentence.token(*at).is_some_and(|token| {
                from <= token.span.start() && token.span.end() <= from + level.len()
            })
        };
        let Some(first) = (0..sentence.tokens.len()).find(within) else {
            continue;
        };
        let last = first + (first..sentence.tokens.len()).take_while(within).count();
        // "(-/180/180 and -/240/240)": the first of them is met already.
        if found.last().is_some_and(|held: &Found| first < held.last) {
            continue;
        }
        // "-/60/60 or higher"
        let beyond = or_beyond(sentence, last).is_some();
        // "-/90/90 to -/180/180"
        let through = sentence.is_any(last, &["to", "through"]);
        let ends = |at: &usize| {
            sentence.is_stop(*at) || sentence.is_sign(*at, '.') || sentence.token(*at).is_none()
        };
        let open = first
            .checked_sub(1)
            .is_some_and(|before| sentence.is_sign(before, '('));
        let joined = open && sentence.is_any(last, &["and", "or"]);
        let closes = (last..sentence.tokens.len()).find(|at| sentence.is_sign(*at, ')'));
        let end = match (beyond, through) {
            _ if joined && several => closes.unwrap_or(last),
            (true, _) => last + 2,
            (_, true) => (last..=sentence.tokens.len()).find(ends).unwrap_or(last),
            _ => last,
        };
        let mut named = first;
        while named > 0 && sentence.is_any(named - 1, LEADING) {
            named -= 1;
        }
        let bracketed = several && sentence.is_sign(end, ')');
        let labelled = labels_value(sentence, named, end) && labels > 1;
        let opener = named.checked_sub(1).and_then(|before| {
            if labelled {
                Some(named)
            } else if introduces(sentence, before) {
                Some(before)
            } else {
                (bracketed && sentence.is_sign(before, '(')).then_some(named)
            }
        });
        let opener = opener.or_else(|| labelled.then_some(named));
        let Some(opener) = opener else { continue };
        found.push(Found {
            first: opener,
            last: end,
            expr: Expr::Words(sentence.words(opener, end).to_owned()),
            triggers: (0..sentence.amounts.len())
                .filter(|index| {
                    sentence
                        .amount(*index)
                        .is_some_and(|amount| first <= amount.first && amount.first < last)
                })
                .collect(),
            parts: Vec::new(),
        });
    }
    found
}

/// How many levels stand where labels do: "FRL -/60/60, 1 x 16 mm; FRL -/90/90, 2 x 13 mm". One alone may be what the joint is rated.
fn labelling_levels(text: &str) -> usize {
    let labels = |part: &str| {
        let part = part.rsplit(": ").find(|words| {
            let named = words.trim_start();
            is_level(level_of(named))
        });
        part.is_some()
    };
    text.split(';').filter(|part| labels(part)).count()
}

/// The first word behind "FRL".
fn level_of(words: &str) -> &str {
    let words = words.strip_prefix("FRL").unwrap_or(words).trim_start();
    let end = words.find([',', ':', ' ']).unwrap_or(words.len());
    words.get(..end).unwrap_or_default()
}

/// Whether a level opens a stretch and leads to its value behind a comma or colon.
fn labels_value(sentence: &Sentence<'_>, first: usize, end: usize) -> bool {
    const REACH: usize = 2;
    let opens = first.checked_sub(1).is_none_or(|before| {
        [';', ':']
            .iter()
            .any(|sign| sentence.is_sign(before, *sign))
    });
    let led = sentence.is_sign(end, ',') || sentence.is_sign(end, ':');
    let valued = (end + 1..end + 1 + REACH).any(|at| sentence.amount_at(at).is_some());
    opens && led && valued
}

/// Whether a word introduces a case. "Not for the three-hour rating" says where something may not be used.
fn introduces(sentence: &Sentence<'_>, at: usize) -> bool {
    let denied = at > 0 && sentence.is_any(at - 1, &["not", "nor", "never"]);
    sentence.is_any(at, INTRODUCE) && !denied
}

fn is_level(word: &str) -> bool {
    const MINUTES: &[&str] = &["-", "–", "30", "60", "90", "120", "180", "240"];
    let mut parts = word.split('/');
    let three = parts.clone().count() == 3;
    three && parts.all(|part| MINUTES.contains(&part))
}
