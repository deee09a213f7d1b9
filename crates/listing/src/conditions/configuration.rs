//! Configurations named in a sentence: "In Configuration A", "(Configuration B)", "for Config A and B".

use crate::layout::Flow;
use crate::rules::Sentence;
use crate::sentences::stretches;

/// A mention of configurations.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Mentioned {
    /// Tokens `[first, last)`.
    pub(crate) first: usize,
    pub(crate) last: usize,
    /// The names, as `Configuration A`.
    pub(crate) names: Vec<String>,
}

/// Words that are followed by a configuration's letter.
const WORDS: &[&str] = &[
    "configuration",
    "configurations",
    "config",
    "configs",
    "condition",
    "arrangement",
    "case",
    "scheme",
];

/// The configurations that a sentence names, in order.
pub(crate) fn configurations(sentence: &Sentence<'_>) -> Vec<Mentioned> {
    let mut found: Vec<Mentioned> = Vec::new();
    for at in 0..sentence.tokens.len() {
        let taken = found.last().is_some_and(|last| at < last.last);
        if !taken && let Some(mention) = mention_at(sentence, at) {
            found.push(mention);
        }
    }
    found
}

/// The letters by which the head of a document names configurations; none where it names but one.
pub(crate) fn letters<'a>(head: impl Iterator<Item = &'a Flow>) -> Vec<String> {
    let mut names: Vec<String> = head
        .flat_map(|flow| {
            let stretches = stretches(flow.text()).into_iter();
            stretches.flat_map(|range| configurations(&Sentence::new(flow, range)))
        })
        .flat_map(|mention| mention.names)
        .collect();
    names.sort();
    names.dedup();
    if names.len() < 2 {
        return Vec::new();
    }
    let letter = |name: &String| name.rsplit(' ').next().map(str::to_owned);
    names.iter().filter_map(letter).collect()
}

/// The configurations that a sentence names by their letters alone, of a document whose head names them: `6" min. (A), 7" min. (B)`, `or, in A, 4 pcf`.
/// In brackets only right behind a number and its qualifier.
pub(crate) fn lettered(sentence: &Sentence<'_>, letters: &[String]) -> Vec<Mentioned> {
    let named = |at: usize| {
        let own = sentence.token(at)?.span.of(sentence.text);
        let name = letters.iter().find(|letter| *letter == own)?;
        Some(format!("Configuration {name}"))
    };
    let mention = |at: usize| {
        let name = named(at)?;
        let before = at.checked_sub(1)?;
        let bracketed = sentence.is_sign(before, '(')
            && sentence.is_sign(at + 1, ')')
            && follows_number(sentence, before);
        let opens = before == 0 || sentence.is_stop(before - 1);
        let placed = opens
            && sentence.is_word(before, "in")
            && (sentence.is_sign(at + 1, ',') || sentence.amount_at(at + 1).is_some());
        (bracketed || placed).then(|| Mentioned {
            first: at,
            last: at + 1,
            names: vec![name],
        })
    };
    (0..sentence.tokens.len()).filter_map(mention).collect()
}

/// Whether nothing but a qualifier or a measure stands between a number and the token behind it.
fn follows_number(sentence: &Sentence<'_>, at: usize) -> bool {
    const BETWEEN: &[&str] = &[
        "min", "minimum", "max", "maximum", "nom", "nominal", "thick", "thk", "deep", "wide",
        "long", "high", "oc", "o.c", "or", "more", "less",
    ];
    sentence.amounts.iter().any(|amount| {
        amount.last <= at
            && (amount.last..at).all(|at| sentence.is_any(at, BETWEEN) || sentence.is_sign(at, '.'))
    })
}

/// `Configuration A`, `Config A and B`, `Configurations A, B or C`.
fn mention_at(sentence: &Sentence<'_>, first: usize) -> Option<Mentioned> {
    if !sentence.is_any(first, WORDS) {
        return None;
    }
    let mut last = first + 1;
    let mut names = vec![label(sentence, last)?];
    last += 1;
    while is_joint(sentence, last)
        && let Some(label) = label(sentence, last + 1)
    {
        names.push(label);
        last += 2;
    }
    let names = names
        .iter()
        .map(|label| format!("Configuration {label}"))
        .collect();
    Some(Mentioned { first, last, names })
}

fn is_joint(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["and", "or"]) || sentence.is_sign(at, ',') || sentence.is_sign(at, '&')
}

/// A capital letter, a Roman numeral, or a small number, that names a configuration.
fn label(sentence: &Sentence<'_>, at: usize) -> Option<String> {
    let span = sentence.token(at)?.span;
    let text = span.of(sentence.text);
    let capital = text.len() == 1 && text.chars().all(|c| c.is_ascii_uppercase());
    let numeral = text.len() == 1
        && text.chars().all(|c| c.is_ascii_digit())
        && sentence.amount_at(at).is_none();
    (capital || numeral || is_roman(text)).then(|| text.to_owned())
}

/// Whether a word in capitals is a Roman numeral as documents number a few things: II to XII.
pub(crate) fn is_roman(word: &str) -> bool {
    const NUMERALS: &[&str] = &["II", "III", "IV", "VI", "VII", "VIII", "IX", "XI", "XII"];
    NUMERALS.contains(&word)
}

/// The configuration that a paragraph is headed with, and so is about: `CONFIGURATION A - Floor to floor, 2 Hr.`
pub(crate) fn headed_configuration(flow: &Flow) -> Option<String> {
    const HEADING: usize = 32;
    let text = flow.text();
    let word = text.split([' ', '.']).next()?;
    if !WORDS.iter().any(|own| own.eq_ignore_ascii_case(word)) {
        return None;
    }
    let end = text
        .char_indices()
        .nth(HEADING)
        .map_or(text.len(), |(at, _)| at);
    heading_of(&Sentence::new(flow, 0..end))
}

/// The configuration that a sentence is headed with: "Configuration B: min 2 in. deep."
fn heading_of(sentence: &Sentence<'_>) -> Option<String> {
    let mention = mention_at(sentence, 0)?;
    let parted = [':', '-', '–', '—', '.']
        .iter()
        .any(|sign| sentence.is_sign(mention.last, *sign));
    match mention.names.as_slice() {
        [one] if parted => Some(one.clone()),
        _ => None,
    }
}

/// The configuration of which each sentence of a headed paragraph is said: that which it is headed with, or the sentence before it.
#[derive(Debug)]
pub(crate) struct RunningHead {
    /// The configurations so far, each with how many sentences are said of it.
    said: Vec<(String, usize)>,
}

impl RunningHead {
    /// Of a paragraph that is headed with a configuration.
    pub(crate) fn new(first: String) -> Self {
        Self {
            said: vec![(first, 0)],
        }
    }

    /// The configuration of which the next sentence is said; none where it is said of all. Where several in turn were named with a sentence each, a further
    /// one that names none is taken to be said of all.
    pub(crate) fn of(&mut self, sentence: &Sentence<'_>) -> Option<String> {
        if let Some(own) = heading_of(sentence) {
            if self.said.iter().all(|(held, _)| *held != own) {
                self.said.push((own.clone(), 0));
            }
            if let Some((_, count)) = self.said.iter_mut().find(|(held, _)| *held == own) {
                *count += 1;
            }
            return Some(own);
        }
        let (last, earlier) = self.said.split_last_mut()?;
        let in_turn = !earlier.is_empty() && earlier.iter().all(|(_, count)| *count <= 1);
        if in_turn && last.1 > 0 || is_said_of_all(sentence, 0) {
            return None;
        }
        last.1 += 1;
        Some(last.0.clone())
    }
}

/// Whether words are said of all configurations: "Both configurations: ...", "All: ...", "In either case, ...".
pub(crate) fn is_said_of_all(sentence: &Sentence<'_>, first: usize) -> bool {
    const ALL: &[&str] = &["both", "all", "each", "either", "any", "every"];
    let led = usize::from(sentence.is_any(first, &["in", "for", "with", "of", "under", "at"]));
    let all = first + led;
    let the = usize::from(sentence.is_any(all + 1, &["the", "of"]));
    let the = the + usize::from(sentence.is_word(all + 1 + the, "the"));
    let named = sentence.is_any(all + 1 + the, WORDS)
        || sentence.is_any(
            all + 1 + the,
            &["cases", "conditions", "arrangements", "schemes"],
        );
    let alone = [':', '-', '–', '—']
        .iter()
        .any(|sign| sentence.is_sign(all + 1, *sign));
    sentence.is_any(all, ALL) && (named || alone)
}
