//! Items that say of themselves that they may be left out, and that the document asks for all the same: "Item 4 is required where the joint is over
//! 2 in.", "Joints over 2 in. require Item 4", "Support clips (Optional) ... Required where the joint is wider than 2 in."
//!
//! Such an item is no option. Where one sentence asks for it, and says for which joints, whether the joint is one of them is for a person to say; else
//! it stays required. What declines: a sentence that says what goes with the item where it is used ("When Item 4 is used, ..."), or how it is built
//! ("Item 4 shall be spaced 12 in. apart").

use core::ops::Range;
use std::collections::{BTreeMap, BTreeSet};

use aho_corasick::AhoCorasick;

use super::ItemOption;
use super::cited::{Citation, cited};
use super::paths::Paths;
use crate::layout::Flow;
use crate::model::Span;
use crate::outline::{OutlineItem, Paragraph};
use crate::sentences::sentences;

/// Said where an item that may be left out is asked for.
const ASKED_FOR: &str = "the words ask for an item that is called optional; all of it stays required until a person decides";

/// What plainly asks for the thing named before it.
const ASKING: [&str; 8] = [
    "is required",
    "are required",
    "is mandatory",
    "are mandatory",
    "is needed",
    "are needed",
    "shall be required",
    "becomes mandatory",
];

/// What lets the thing named before it be left out in some joints, and so asks for it in the rest.
const EXCUSING: [&str; 6] = [
    "is not required",
    "are not required",
    "is not needed",
    "are not needed",
    "may be omitted",
    "may be left out",
];

/// What comes before being used, built and the like, and asks for it.
const TOLD_TO_BE: [&str; 5] = [
    "shall be ",
    "must be ",
    "is to be ",
    "are to be ",
    "should be ",
];

const USED: [&str; 9] = [
    "used",
    "installed",
    "provided",
    "present",
    "fitted",
    "added",
    "included",
    "built",
    "placed",
];

/// What asks for the thing named behind it.
const NEEDING: [&str; 5] = ["require", "requires", "requiring", "need", "needs"];

/// What tells to use the thing named behind it, at the beginning of a sentence or behind a comma.
const TELLING: [&str; 6] = ["use", "install", "provide", "add", "fit", "include"];

/// Makes no option of an item that may be left out and is asked for in some sentence.
pub(super) fn keep_what_is_asked_for(
    source: &str,
    items: &[OutlineItem],
    options: &mut [ItemOption],
) {
    if !options.iter().any(may_be_left) {
        return;
    }
    let paths = &Paths::of(items.iter().map(|item| item.path.clone()));
    let flows: Vec<(usize, Flow)> = items
        .iter()
        .enumerate()
        .flat_map(|(index, item)| {
            let texts = item
                .paragraphs
                .iter()
                .filter(|paragraph| !matches!(paragraph, Paragraph::Table(_)));
            texts.map(move |text| (index, Flow::of(source, text.pieces())))
        })
        .collect();
    // Looked for once: a long document has many such items.
    let asking_sentences: Vec<Asking<'_>> = flows
        .iter()
        .flat_map(|(place, flow)| {
            let ranges = sentences(flow.text()).into_iter();
            ranges.filter_map(|range| Asking::of(*place, flow, range, paths))
        })
        .collect();
    let near = Near::of(source, items, options, &asking_sentences);
    for (index, item) in items.iter().enumerate() {
        let Some(option) = options.get_mut(index).filter(|option| may_be_left(option)) else {
            continue;
        };
        let opening = opening_of(source, item);
        let sentences = near
            .sentences(index)
            .filter_map(|at| asking_sentences.get(at));
        let asking: Vec<(Span, bool)> = sentences
            .filter_map(|sentence| {
                let words = Words {
                    said: sentence,
                    own: sentence.place == index,
                    within: is_within(items, sentence.place, index),
                    opening: &opening,
                };
                let asked = words.asks_for(item, paths)?;
                Some((sentence.span, asked))
            })
            .collect();
        let Some((words, _)) = asking.first().copied() else {
            continue;
        };
        option.optional = false;
        option.labelled = false;
        option.doubt = Some((words, ASKED_FOR.to_owned()));
        if let [(words, true)] = asking.as_slice() {
            option.offered = Some(*words);
        }
    }
}

/// Whether an item may be left out, and for no other.
fn may_be_left(option: &ItemOption) -> bool {
    option.optional && option.replaces.is_empty()
}

/// The first line of an item's text, in small letters.
fn opening_of(source: &str, item: &OutlineItem) -> String {
    let first = item.paragraphs.first().map(Paragraph::pieces);
    let first = first.and_then(|pieces| pieces.first().copied());
    first.map_or_else(String::new, |line| line.of(source).to_lowercase())
}

/// Whether a sentence has any of the words that ask for a thing or let it be left out.
fn may_ask(lower: &str) -> bool {
    let stems = [
        "requir",
        "mandatory",
        "need",
        "req'd",
        "omitted",
        "left out",
    ];
    let has = |words: &[&str]| words.iter().any(|word| lower.contains(word));
    has(&stems) || has(&TOLD_TO_BE) || has(&TELLING)
}

/// Whether an item is another one or a part of it.
fn is_within(items: &[OutlineItem], place: usize, around: usize) -> bool {
    let mut at = Some(place);
    while let Some(index) = at {
        if index == around {
            return true;
        }
        at = items.get(index).and_then(|item| item.parent);
    }
    false
}

/// A sentence that may ask for some item.
struct Asking<'s> {
    /// The item in whose text it stands.
    place: usize,
    span: Span,
    text: &'s str,
    lower: &'s str,
    /// Whether it speaks of some joints only.
    conditional: bool,
    /// Where it cites items, and which, as an item without brackets in its label would.
    cited: Vec<(usize, Citation)>,
}

impl<'s> Asking<'s> {
    fn of(place: usize, flow: &'s Flow, range: Range<usize>, paths: &Paths) -> Option<Self> {
        let lower = flow
            .lower()
            .get(range.clone())
            .filter(|lower| may_ask(lower))?;
        let text = flow.text().get(range.clone())?;
        Some(Self {
            place,
            span: flow.span(range.start, range.end),
            text,
            lower,
            conditional: says_when(lower),
            cited: citations("", text, lower, paths),
        })
    }
}

/// What an item is called by its title, or where it has none by the opening of its text, in small letters, as one of it.
fn name_of(item: &OutlineItem, opening: &str) -> String {
    let title = item.title.to_lowercase();
    // `(Optional) Pins, min 3 mm dia`
    let title = title.replace("(optional)", " ").replace("(opt.)", " ");
    let title = if title.trim().is_empty() {
        opening.replace("(optional)", " ")
    } else {
        title
    };
    let name = title
        .split(['(', ',', ':', '*', '–', '—', '.'])
        .find(|part| part.contains(char::is_alphabetic))
        .unwrap_or_default();
    let name = name.trim().trim_start_matches("optional ");
    name.trim_end_matches('s').to_owned()
}

/// Whether a name is that of one thing wherever it stands: a word alone may be another thing.
fn says_enough(name: &str) -> bool {
    name.len() > 3 && name.contains(' ')
}

/// The sentences that may speak of each item that may be left out, so that not every one is read beside every item.
struct Near {
    by_item: BTreeMap<usize, BTreeSet<usize>>,
}

impl Near {
    fn of(
        source: &str,
        items: &[OutlineItem],
        options: &[ItemOption],
        asking: &[Asking<'_>],
    ) -> Self {
        let mut near = Self {
            by_item: BTreeMap::new(),
        };
        let left = items.iter().zip(options).enumerate();
        let left = left.filter(|(_, (_, option))| may_be_left(option));
        let left: Vec<(usize, &OutlineItem)> =
            left.map(|(index, (item, _))| (index, item)).collect();
        let names = left
            .iter()
            .map(|(index, item)| (*index, name_of(item, &opening_of(source, item))));
        let names: Vec<(usize, String)> = names.filter(|(_, name)| says_enough(name)).collect();
        let spoken = AhoCorasick::new(names.iter().map(|(_, name)| name)).ok();
        let mut by_path: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
        for (index, item) in &left {
            by_path.entry(&item.path).or_default().push(*index);
        }
        for (at, sentence) in asking.iter().enumerate() {
            near.add(sentence.place, at);
            for found in spoken
                .iter()
                .flat_map(|spoken| spoken.find_overlapping_iter(sentence.lower))
            {
                if let Some((index, _)) = names.get(found.pattern().as_usize()) {
                    near.add(*index, at);
                }
            }
            let cited = sentence.cited.iter().flat_map(|(_, found)| &found.items);
            for path in cited {
                let ends = path.char_indices().map(|(end, c)| end + c.len_utf8());
                let around = ends.filter_map(|end| by_path.get(path.get(..end)?));
                for index in around.flatten() {
                    near.add(*index, at);
                }
            }
            // In such an item `(1)` is another one than elsewhere.
            if sentence.lower.contains("item") {
                for (index, _) in left.iter().filter(|(_, item)| item.path.contains('(')) {
                    near.add(*index, at);
                }
            }
        }
        near
    }

    fn add(&mut self, item: usize, sentence: usize) {
        self.by_item.entry(item).or_default().insert(sentence);
    }

    /// The sentences near an item, in the order of the document.
    fn sentences(&self, item: usize) -> impl Iterator<Item = usize> {
        self.by_item.get(&item).into_iter().flatten().copied()
    }
}

/// Where the words of an item cite others, and which.
fn citations(own: &str, text: &str, lower: &str, paths: &Paths) -> Vec<(usize, Citation)> {
    let words = lower.match_indices("item").map(|(at, word)| {
        let from = at + word.len();
        let plural = lower.get(from..).is_some_and(|rest| rest.starts_with('s'));
        (at, cited(own, text, from + usize::from(plural), paths))
    });
    words.collect()
}

/// A sentence beside an item that it may ask for.
struct Words<'s> {
    said: &'s Asking<'s>,
    /// Whether it is a sentence of the item itself.
    own: bool,
    /// Whether it stands in the item or a part of it.
    within: bool,
    /// The first line of the item's own text, in small letters.
    opening: &'s str,
}

impl Words<'_> {
    /// Whether the sentence asks for an item, and if so whether only in some joints.
    fn asks_for(&self, item: &OutlineItem, paths: &Paths) -> Option<bool> {
        let conditional = self.said.conditional;
        let cited = self.citations(item, paths);
        let named = self.names(item);
        let is_told = cited.iter().any(|place| self.is_told(*place, conditional));
        // What a thing of the same name is built like says less than an item that is cited.
        let said = || named.iter().any(|place| self.is_told(*place, conditional));
        if is_told || said() || self.own && opens_required(self.said.lower) {
            return Some(conditional);
        }
        // Those words tell the joints where it is not asked for, and are no condition of it.
        let mut places = cited.iter().chain(&named);
        let excused = conditional && places.any(|(_, end)| self.is_excused_behind(*end));
        excused.then_some(false)
    }

    /// Where the item is cited, or from outside a part of it.
    fn citations(&self, item: &OutlineItem, paths: &Paths) -> Vec<(usize, usize)> {
        let is_it =
            |path: &String| *path == item.path || !self.within && path.starts_with(&item.path);
        let own;
        // Within `2A(3)`, `(1)` is `2A(1)`.
        let found = if item.path.contains('(') {
            own = citations(&item.path, self.said.text, self.said.lower, paths);
            &own
        } else {
            &self.said.cited
        };
        found
            .iter()
            .filter(|(_, found)| found.items.iter().any(is_it))
            .map(|(at, found)| (*at, found.end))
            .collect()
    }

    /// Where the thing that the item's title names is named; one word alone may be another thing where it doesn't stand in the item.
    fn names(&self, item: &OutlineItem) -> Vec<(usize, usize)> {
        if self.within && !self.own {
            return Vec::new();
        }
        let whole = &name_of(item, self.opening);
        let last = whole.rsplit(' ').next().unwrap_or_default();
        let called = if self.own { last } else { whole };
        let long = called.len() > 3 && (self.own || says_enough(called));
        // `Pins are required`: a short word counts where it is one.
        let short = called.len() == 3 && self.own;
        let begins = |at: usize| {
            let before = self.said.lower.get(..at).unwrap_or_default();
            !before.ends_with(char::is_alphanumeric)
        };
        let places = self.said.lower.match_indices(called);
        let places = places.filter(|(at, _)| long || short && begins(*at));
        let own = ["it ", "they "]
            .iter()
            .filter(|word| self.own && self.said.lower.starts_with(**word));
        places
            .map(|(at, word)| {
                let plural = self.said.lower.get(at + word.len()..).unwrap_or_default();
                let letters = plural
                    .find(|c: char| !c.is_alphabetic())
                    .unwrap_or(plural.len());
                (at, at + word.len() + letters)
            })
            .chain(own.map(|word| (0, word.len())))
            .collect()
    }

    /// Whether the sentence asks for what stands at a place.
    fn is_told(&self, (start, end): (usize, usize), conditional: bool) -> bool {
        let before = self.said.lower.get(..start).unwrap_or_default().trim_end();
        let last = before
            .rsplit(' ')
            .find(|word| !matches!(*word, "the" | "an" | "a"));
        if last.is_some_and(|word| matches!(word, "if" | "where" | "when" | "unless" | "whether")) {
            return false;
        }
        self.is_asked_behind(end, conditional) || is_asked_before(before)
    }

    /// `Item 4 is not required in joints under 2 in.`
    fn is_excused_behind(&self, end: usize) -> bool {
        let after = self.said.lower.get(end..).unwrap_or_default();
        let after = after.trim_start_matches([')', ' ']);
        // "The plate is not required for the fire rating" lets it be left out in every joint; "for the rating of 1 hr" does not.
        let for_rating = |rest: &str| {
            const PURPOSES: [&str; 2] = ["for the fire rating", "for fire rating"];
            let rest = rest.trim_start();
            let behind = PURPOSES.iter().find_map(|words| rest.strip_prefix(words));
            behind.is_some_and(|behind| {
                let ends = behind.is_empty() || behind.starts_with(['.', ',', ';', ' ']);
                let goes_on =
                    behind.trim_start().starts_with(['.', ',', ';']) || behind.starts_with(" and ");
                ends && (behind.is_empty() || goes_on) && !self.said.lower.contains("joints")
            })
        };
        let mut excusing = EXCUSING
            .iter()
            .filter_map(|words| after.strip_prefix(words));
        excusing.any(|rest| !for_rating(rest))
    }

    /// `Item 4 is required`, `support clips (Item 4) must be installed`.
    fn is_asked_behind(&self, end: usize, conditional: bool) -> bool {
        const NEAR: usize = 30;
        let after = self.said.lower.get(end..).unwrap_or_default();
        let after = after
            .replace(" also ", " ")
            .replace(" then ", " ")
            .replace(" always ", " ");
        let stop = after.find(['.', ',', ';', ':']).unwrap_or(after.len());
        let near = |words: &str| {
            let at = after.get(..stop)?.find(words).filter(|at| *at <= NEAR)?;
            after.get(at + words.len()..)
        };
        let plainly = ASKING
            .iter()
            .filter_map(|words| near(words))
            .any(|rest| !rest.starts_with(" to "));
        // "The clips shall be installed where the studs are" says how, and not whether.
        let of_joints = !self.own
            || ["joint", "rating", "hr", "hour"]
                .iter()
                .any(|word| self.said.lower.contains(word));
        let told = TOLD_TO_BE.iter().filter_map(|words| near(words));
        let mut used = told.filter(|rest| USED.iter().any(|word| rest.starts_with(word)));
        plainly || conditional && of_joints && used.next().is_some()
    }
}

/// `Joints over 2 in. require the support clips of`, `Use`, `in all other joints, install`.
fn is_asked_before(before: &str) -> bool {
    const MOST: usize = 7;
    let start = before.rfind([';', '(']).map_or(0, |at| at + 1);
    let words: Vec<&str> = before
        .get(start..)
        .unwrap_or_default()
        .split_whitespace()
        .collect();
    let near = words.len().saturating_sub(MOST);
    (near..words.len()).any(|at| {
        let word = words.get(at).copied().unwrap_or_default();
        let last = at.checked_sub(1).and_then(|at| words.get(at)).copied();
        let parted = words
            .get(at..)
            .is_some_and(|rest| rest.iter().any(|word| word.ends_with([',', '.'])));
        let denied = last.is_some_and(|word| matches!(word, "not" | "never" | "no" | "to"));
        let opens = last.is_none_or(|word| word.ends_with([',', ':', '.']) || word == "and");
        !parted && !denied && (NEEDING.contains(&word) || TELLING.contains(&word) && opens)
    })
}

/// `Required where the joint is wider than 2 in.`
fn opens_required(sentence: &str) -> bool {
    const ASKED: [&str; 4] = ["required ", "mandatory ", "needed ", "req'd "];
    const WHEN: [&str; 8] = [
        "where ", "when ", "if ", "in ", "for ", "at ", "over ", "with ",
    ];
    let words = sentence.trim_start_matches(['-', '–', '—', '•', ' ']);
    let mut asked = ASKED.iter().filter_map(|word| words.strip_prefix(word));
    asked.any(|rest| {
        let rest = rest.strip_prefix("only ").unwrap_or(rest);
        WHEN.iter().any(|word| rest.starts_with(word))
    })
}

/// Whether a sentence speaks of some joints.
fn says_when(sentence: &str) -> bool {
    const WHEN: [&str; 8] = [
        "where ", "when ", "if ", "in ", "for ", "over ", "under ", "with ",
    ];
    let joints = sentence.contains("joints ") || sentence.contains("walls ");
    joints
        || WHEN.iter().any(|word| {
            sentence.match_indices(word).any(|(at, _)| {
                sentence
                    .get(..at)
                    .is_some_and(|before| !before.ends_with(char::is_alphanumeric))
            })
        })
}
