//! What is said of one of several things by the label of its item: "Under floor A2 there are two anchors per rib", "WITH CLIPS I.D, 3/4 IN. MAX", "Ribs
//! (floor A2 only)". It holds where that item is built, which is for a person to say.
//!
//! Only of an item that isn't built in every joint, and only where the noun before the label is one of its own, or of the item around it.

use crate::layout::Flow;
use crate::model::{Condition, Expr, Span};
use crate::options::{ItemOption, Paths, items_cited};
use crate::outline::{OutlineItem, Paragraph};
use crate::sentences::sentences;

/// Words that lead to the thing at the beginning of a sentence.
const LEADS: [&str; 7] = ["with", "under", "over", "for", "at", "in", "on"];

/// Nouns that name one of several whatever its item is called.
const KINDS: [&str; 5] = [
    "item",
    "construction",
    "variant",
    "alternative",
    "alternate",
];

/// Words by which a sentence says something of the other joints as well.
const OTHERS: [&str; 6] = [
    "otherwise",
    "without",
    "in all",
    "in every",
    "else",
    "in other",
];

/// Signs and abbreviations behind which a sentence may speak of something else.
const STOPS: [&str; 6] = [";", "max. ", "min. ", "nom. ", "typ. ", "approx. "];

/// The longest label, `III.C1`.
const LONGEST: usize = 8;

/// The stretches of a document that are said of an item which needn't be built, each with the words that say so.
pub(super) fn where_built(
    text: &str,
    items: &[OutlineItem],
    options: &[ItemOption],
    standing: &[Option<Condition>],
) -> Vec<(Condition, Span)> {
    let document = Document {
        text,
        items,
        options,
        standing,
        paths: Paths::of(items.iter().map(|item| item.path.clone())),
    };
    if !(0..items.len()).any(|index| document.may_be_absent(index)) {
        return Vec::new();
    }
    let stretches = items.iter().enumerate().flat_map(|(index, item)| {
        let titled = document.confined(index, item);
        titled.into_iter().chain(document.said(index, item))
    });
    stretches.collect()
}

struct Document<'d> {
    text: &'d str,
    items: &'d [OutlineItem],
    options: &'d [ItemOption],
    standing: &'d [Option<Condition>],
    paths: Paths,
}

impl Document<'_> {
    /// Whether a joint may be built without an item.
    fn may_be_absent(&self, index: usize) -> bool {
        let path = self.items.get(index).map(|item| &item.path);
        let own = self
            .options
            .get(index)
            .is_some_and(|option| option.is_choice() || option.offered.is_some());
        let replaced = || {
            let mut options = self.options.iter();
            options.any(|option| option.replaces.iter().any(|base| Some(base) == path))
        };
        own || replaced() || self.standing.get(index).is_some_and(Option::is_some)
    }

    /// The sentences of an item that begin with the thing that they are said of.
    fn said(&self, index: usize, item: &OutlineItem) -> Vec<(Condition, Span)> {
        let flows = item
            .paragraphs
            .iter()
            .filter_map(|paragraph| match paragraph {
                Paragraph::Text(pieces) => Some(Flow::of(self.text, pieces.iter().copied())),
                _ => None,
            });
        let said = flows.flat_map(|flow| {
            let ranges = sentences(flow.text()).into_iter();
            let said = ranges.filter_map(|range| {
                let sentence = flow.lower().get(range.clone())?;
                let (lead, rest) = sentence.split_once(' ')?;
                let others = OTHERS.iter().any(|words| rest.contains(words));
                if !LEADS.contains(&lead) || others {
                    return None;
                }
                let from = range.start + lead.len() + 1;
                let end = self.thing(index, &flow, from)?;
                // "4 in. MAX. OFFSET ..." may be two sentences.
                let stops = STOPS
                    .iter()
                    .filter_map(|stop| Some(rest.find(stop)? + stop.len()));
                let stop = stops.min().map_or(range.end, |at| from + at);
                let words = flow.span(range.start, end);
                Some((condition(self.text, words), flow.span(range.start, stop)))
            });
            said.collect::<Vec<_>>()
        });
        said.collect()
    }

    /// What an item as a whole is confined to in brackets behind its name, with all that it holds.
    fn confined(&self, index: usize, item: &OutlineItem) -> Option<(Condition, Span)> {
        const NAME: usize = 5;
        if self.options.get(index).is_some_and(ItemOption::is_choice) {
            return None;
        }
        let pieces = item.paragraphs.first().map(Paragraph::pieces);
        let opening = pieces.into_iter().flatten().take(2);
        let flow = Flow::of(self.text, core::iter::once(item.heading).chain(opening));
        let lower = flow.lower();
        let open = lower.find(" (")?;
        let name = lower.get(..open)?;
        let plain = name.split_whitespace().count() <= NAME && !name.contains([':', ';', ',']);
        let close = open + lower.get(open..)?.find(')')?;
        let within = lower.get(open + 2..close)?;
        let led = ["for ", "with ", "under ", "used with "]
            .iter()
            .find(|lead| within.starts_with(**lead));
        let from = open + 2 + led.map_or(0, |lead| lead.len());
        let end = self.thing(index, &flow, from)?;
        let only = lower.get(end..close)?.trim();
        let whole = only == "only" || only.is_empty() && led.is_some();
        let behind = self.items.iter().enumerate().skip(index + 1);
        let mut behind = behind.filter(|(other, _)| !self.holds(index, *other));
        let last = behind
            .next()
            .map_or(self.text.len(), |(_, other)| other.heading.start());
        let stretch = Span::new(item.heading.start(), last);
        (plain && whole).then(|| (condition(self.text, flow.span(open + 2, close)), stretch))
    }

    /// Whether an item lies in another.
    fn holds(&self, outer: usize, item: usize) -> bool {
        let mut above = self.items.get(item).and_then(|item| item.parent);
        while let Some(index) = above {
            if index == outer {
                return true;
            }
            above = self.items.get(index).and_then(|item| item.parent);
        }
        false
    }

    /// Where the name and label of a thing end that needn't be built: "floor A2", "clips I.D".
    fn thing(&self, own: usize, flow: &Flow, from: usize) -> Option<usize> {
        let lower = flow.lower();
        let words = lower.get(from..)?;
        let the = words.strip_prefix("the ").map_or(0, |_| "the ".len());
        let mut at = from + the;
        let mut noun = "";
        // One or two words, and the label.
        for _ in 0..2 {
            let word = lower.get(at..)?.split(' ').next()?;
            if !word.chars().all(|c| c.is_alphabetic() || c == '-') || word.len() < 3 {
                break;
            }
            noun = word;
            at += word.len() + 1;
        }
        let label = lower.get(at..)?.split([' ', ',', ';', ':']).next()?;
        let label = label.strip_suffix('.').unwrap_or(label);
        let label = if label.contains('(') {
            label
        } else {
            label.trim_end_matches(')')
        };
        if noun.is_empty() || !is_label(label) {
            return None;
        }
        let cited = items_cited(flow.text(), at, &self.paths);
        let [path] = cited.as_slice() else {
            return None;
        };
        let index = self.items.iter().position(|item| item.path == *path)?;
        let apart = index != own && !self.holds(index, own);
        (apart && self.may_be_absent(index) && self.is_named(index, noun))
            .then_some(at + label.len())
    }

    /// Whether a noun is one of an item's name, or of that of the item around it.
    fn is_named(&self, index: usize, noun: &str) -> bool {
        let noun = noun.strip_suffix('s').unwrap_or(noun);
        if KINDS.contains(&noun) {
            return true;
        }
        let item = self.items.get(index);
        let around = item.and_then(|item| self.items.get(item.parent?));
        let mut names = item.into_iter().chain(around);
        names.any(|item| {
            let title = name_of(self.text, item).to_lowercase();
            let mut words = title.split(|c: char| !c.is_alphanumeric());
            words.any(|word| word.strip_suffix('s').unwrap_or(word) == noun)
        })
    }
}

/// The title of an item, or the few words that its text begins with.
fn name_of(text: &str, item: &OutlineItem) -> String {
    const WORDS: usize = 4;
    if !item.title.is_empty() {
        return item.title.clone();
    }
    let pieces = item.paragraphs.first().map(Paragraph::pieces);
    let first = pieces.and_then(|pieces| pieces.first().copied());
    let words = first.map_or("", |first| first.of(text));
    words
        .split_whitespace()
        .take(WORDS)
        .collect::<Vec<_>>()
        .join(" ")
}

/// `a2`, `i.d`, `1(b)`: a letter beside a number or another letter.
fn is_label(word: &str) -> bool {
    let letters = word.chars().filter(|c| c.is_alphabetic()).count();
    let digits = word.contains(|c: char| c.is_ascii_digit());
    let plain = word
        .chars()
        .all(|c| c.is_ascii_alphanumeric() || matches!(c, '.' | '-' | '(' | ')'));
    let joined = digits && (1..=3).contains(&letters) || word.contains('.') && letters > 1;
    plain && joined && word.len() <= LONGEST
}

fn condition(text: &str, span: Span) -> Condition {
    let words = span
        .of(text)
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    Condition {
        also: Vec::new(),
        expr: Expr::Words(words.clone()),
        words,
        span,
    }
}
