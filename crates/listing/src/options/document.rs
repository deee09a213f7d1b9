//! A document as it is looked through for every item: what is looked for is looked for once.

use core::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};

/// Words for walls of the other sort.
const SOLID: [&str; 6] = [
    "masonry",
    "block",
    "blockwork",
    "cmu",
    "concrete wall",
    "rigid wall",
];

/// Words with the label of a wall behind them.
pub(super) const WALL_KINDS: [&str; 3] = ["wall type ", "wall assembly type ", "wall assembly "];

/// Words with the label of one of several behind them, at the beginning of a heading.
pub(super) const HEADED_KINDS: [&str; 7] = [
    "system ",
    "seal type ",
    "joint type ",
    "type ",
    "execution ",
    "detail ",
    "variation ",
];

/// Labels that stand behind each of some words.
type Labels<W, L> = BTreeMap<W, BTreeSet<L>>;

/// The text of a document, with what was found in it.
#[derive(Debug)]
pub(super) struct Document<'d> {
    text: &'d str,
    lower: String,
    joins_walls: OnceCell<bool>,
    knows_solid_walls: OnceCell<bool>,
    labels: OnceCell<Labels<String, &'d str>>,
    used: OnceCell<Labels<&'d str, &'d str>>,
    walls: OnceCell<Labels<&'static str, char>>,
    types_of_walls: OnceCell<BTreeSet<String>>,
    headed: OnceCell<Labels<&'static str, String>>,
}

impl<'d> Document<'d> {
    pub(super) fn of(text: &'d str) -> Self {
        Self {
            text,
            lower: text.to_lowercase(),
            joins_walls: OnceCell::new(),
            knows_solid_walls: OnceCell::new(),
            labels: OnceCell::new(),
            used: OnceCell::new(),
            walls: OnceCell::new(),
            types_of_walls: OnceCell::new(),
            headed: OnceCell::new(),
        }
    }

    /// Whether its opening lines say that the joint lies between two walls, in words or by its designation, and name no floor or slab besides.
    pub(super) fn joins_walls(&self) -> bool {
        *self.joins_walls.get_or_init(|| joins_walls(&self.lower))
    }

    /// Whether it speaks of walls that aren't framed.
    pub(super) fn knows_solid_walls(&self) -> bool {
        let knows = || SOLID.iter().any(|solid| self.lower.contains(solid));
        *self.knows_solid_walls.get_or_init(knows)
    }

    /// Whether it has another label behind the same word, in small letters: `Method 2` for `method` and `1`.
    pub(super) fn labels_another(&self, word: &str, label: &str) -> bool {
        let labels = self.labels.get_or_init(|| labels(self.text)).get(word);
        labels.is_some_and(|labels| labels.iter().any(|own| !own.eq_ignore_ascii_case(label)))
    }

    /// The labels behind a noun by which it says where a thing is used: "13 mm *where Filling A is used*".
    pub(super) fn labels_where_used(&self, noun: &str) -> BTreeSet<&'d str> {
        let used = self.used.get_or_init(|| used(self.text));
        used.get(noun).cloned().unwrap_or_default()
    }

    /// The labels of walls behind some of the words for them.
    pub(super) fn walls(&self, kind: &str) -> impl Iterator<Item = char> {
        let walls = self.walls.get_or_init(|| walls(&self.lower)).get(kind);
        walls.into_iter().flatten().copied()
    }

    /// The labels by which its lines name walls: `Walls - Type 1.`
    pub(super) fn types_of_walls(&self) -> impl Iterator<Item = &str> {
        let types = self
            .types_of_walls
            .get_or_init(|| types_of_walls(&self.lower));
        types.iter().map(String::as_str)
    }

    /// The labels by which its numbered headings name one of several.
    pub(super) fn heads(&self, kind: &str) -> impl Iterator<Item = &str> {
        let headed = self.headed.get_or_init(|| headed(&self.lower)).get(kind);
        headed.into_iter().flatten().map(String::as_str)
    }
}

/// The labels behind each word, a word in small letters.
fn labels(text: &str) -> Labels<String, &str> {
    let mut words = text
        .split(|c: char| !(c.is_alphanumeric() || matches!(c, '-' | '/')))
        .filter(|word| !word.is_empty())
        .peekable();
    let mut behind: Labels<String, &str> = BTreeMap::new();
    while let Some(word) = words.next() {
        let label = words.peek().filter(|next| {
            next.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
                && is_label(&next.to_lowercase())
        });
        if let Some(label) = label {
            behind.entry(word.to_lowercase()).or_default().insert(label);
        }
    }
    behind
}

/// `A`, `1`, `S2`, `D/M`.
pub(super) fn is_label(word: &str) -> bool {
    const LONGEST: usize = 3;
    let all = word.chars().all(|c| c.is_alphanumeric() || c == '/');
    let short = word.chars().count() <= LONGEST;
    let letters = word.chars().filter(|c| c.is_alphabetic()).count();
    all && short
        && letters <= 2
        && !matches!(word, "of" | "to" | "in" | "is" | "or" | "for" | "at" | "as")
}

fn joins_walls(document: &str) -> bool {
    const OPENING: usize = 20;
    let opening = document.lines().take(OPENING);
    let is_item = |line: &&str| line.trim_start().starts_with("1.");
    let opening: Vec<&str> = opening.take_while(|line| !is_item(line)).collect();
    let says = |words: &str| opening.iter().any(|line| line.contains(words));
    let designated = opening
        .iter()
        .flat_map(|line| line.split_whitespace())
        .any(|word| word.starts_with("ww-"));
    (designated || says("wall-to-wall") || says("wall to wall")) && !says("floor") && !says("slab")
}

/// The one capital or digit behind each noun of which is said where it is used or applied.
fn used(text: &str) -> Labels<&str, &str> {
    const LEADS: [&str; 4] = ["where", "when", "if", "with"];
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut used: Labels<&str, &str> = BTreeMap::new();
    for said in words.windows(5) {
        if let [lead, noun, label, "is", done] = said
            && LEADS.iter().any(|word| lead.ends_with(word))
            && (done.starts_with("used") || done.starts_with("applied"))
            && matches!(label.as_bytes(), [b'A'..=b'Z' | b'1'..=b'9'])
        {
            used.entry(noun).or_default().insert(label);
        }
    }
    used
}

fn walls(lower: &str) -> Labels<&'static str, char> {
    let mut walls: Labels<&'static str, char> = BTreeMap::new();
    for kind in WALL_KINDS {
        let behind = lower.match_indices(kind).filter_map(|(at, _)| {
            let rest = lower.get(at + kind.len()..)?;
            label_of_wall(rest)
        });
        walls.entry(kind).or_default().extend(behind);
    }
    walls
}

/// The one letter or digit that words begin with, and that no more is written on to.
pub(super) fn label_of_wall(words: &str) -> Option<char> {
    let mut chars = words.chars();
    let label = chars.next().filter(char::is_ascii_alphanumeric)?;
    let ends = chars.next().is_none_or(|c| !c.is_alphanumeric());
    ends.then_some(label)
}

fn types_of_walls(lower: &str) -> BTreeSet<String> {
    let labels = lower.lines().flat_map(|line| {
        line.match_indices("type ").filter_map(|(at, _)| {
            let walls = line.get(..at)?;
            let walls = walls.trim_end_matches(|c: char| !c.is_alphabetic());
            let names = walls.ends_with("walls") || walls.ends_with("wall");
            let label = label_behind("type ", line.get(at..)?)?;
            names.then(|| label.to_owned())
        })
    });
    labels.collect()
}

fn headed(lower: &str) -> Labels<&'static str, String> {
    let mut headed: Labels<&'static str, String> = BTreeMap::new();
    let numbered = lower
        .lines()
        .filter(|line| line.trim_start().starts_with(|c: char| c.is_ascii_digit()));
    for line in numbered {
        let heading = line.trim_start_matches(|c: char| !c.is_alphabetic());
        for kind in HEADED_KINDS {
            if let Some(label) = label_behind(kind, heading) {
                headed.entry(kind).or_default().insert(label.to_owned());
            }
        }
    }
    headed
}

/// The one letter or digit behind a word, with a sign behind it that parts it from what it names: `type 1.`, `system x (`.
pub(super) fn label_behind<'w>(word: &str, words: &'w str) -> Option<&'w str> {
    let rest = words.strip_prefix(word)?;
    let label = rest.get(..1)?;
    let behind = rest.get(1..)?.trim_start();
    let parted = behind.is_empty() || behind.starts_with(['.', ',', ':', '(', '-', '–', '—']);
    let alone = !rest.get(1..)?.starts_with(char::is_alphanumeric);
    (label.starts_with(|c: char| c.is_ascii_alphanumeric()) && parted && alone).then_some(label)
}
