//! Headings between items that are no part of any of them: `SCHEDULE (depths are minimums)`, `DETAIL A -- WALL PARALLEL TO FLUTES`. The outline leaves
//! them in the text of the item before, but what stands behind one that is no farther in than an item belongs to that item no more: it has none of its
//! options and stands under none of its conditions.
//!
//! A heading of one of several kinds, "DETAIL A" in a document that heads others "DETAIL B", says for what all is that stands under it.

use std::collections::{BTreeMap, BTreeSet};

use super::standing::heads_notes;
use crate::conditions::{headed_variant, is_small_word};
use crate::layout::Flow;
use crate::model::{Condition, Expr, Span};
use crate::outline::{Outline, OutlineItem, Paragraph, heads_all, is_rating};

/// The headings of a document that are no items, in order.
#[derive(Debug, Default)]
pub(super) struct Headings {
    headings: Vec<Heading>,
    /// Where each of them begins, and each line at the margin that ends the option before it and heads nothing, with how far from the edge; in order.
    ends: Vec<(usize, usize)>,
}

#[derive(Debug)]
struct Heading {
    line: Span,
    /// How far from the edge it begins.
    column: usize,
    /// The kind that all under it is of.
    kind: Option<Condition>,
    /// Whether it says for which joints the text under it is.
    band: bool,
    /// The item in whose text it stands.
    item: Option<usize>,
}

impl Headings {
    pub(super) fn of(text: &str, outline: &Outline) -> Self {
        let mut lines: Vec<Span> = Vec::new();
        let mut within: BTreeMap<usize, usize> = BTreeMap::new();
        let mut sure: BTreeSet<Span> = BTreeSet::new();
        let opening = || outline.head.iter().flatten();
        let kinds = opening().filter(|line| names_kind(line.of(text)));
        // Several before the first item are a list of what there is.
        let heads_items = kinds.count() == 1;
        let heads =
            |line: &&Span| outline.bands.contains(line) || heads_items && names_kind(line.of(text));
        lines.extend(opening().filter(heads));
        for (index, item) in outline.items.iter().enumerate() {
            if item.path.starts_with("Table ") {
                sure.insert(item.heading);
                lines.push(item.heading);
            }
            // What is said of the whole joint is of none of the kinds before it.
            if heads_notes(&item.title) {
                sure.insert(item.heading);
                lines.push(item.heading);
            }
            let bands = item.paragraphs.iter().filter_map(|paragraph| {
                let first = paragraph.pieces().first().copied()?;
                outline.bands.contains(&first).then_some((first, true))
            });
            let beside = beside(text, item).into_iter();
            let mut beside: Vec<(Span, bool)> = beside
                .filter(|(line, _)| !outline.bands.contains(line))
                .chain(bands)
                .collect();
            beside.sort_by_key(|(line, _)| line.start());
            for (line, is_heading) in beside {
                sure.extend(is_heading.then_some(line));
                lines.push(line);
                within.entry(line.start()).or_insert(index);
            }
        }
        let mut named: BTreeMap<String, BTreeSet<&str>> = BTreeMap::new();
        for line in &lines {
            let words = kind_of(text, *line).of(text);
            named.entry(first_word(words)).or_default().insert(words);
        }
        let sent = sent_to(text);
        let headings = lines.iter().map(|line| {
            let own = kind_of(text, *line);
            // Only what begins like it can be of its sort.
            let others = named.get(&first_word(own.of(text)));
            let others = others.into_iter().flatten().copied();
            let is_band = outline.bands.contains(line);
            Heading {
                line: *line,
                column: line.column(text),
                kind: if is_band {
                    Some(band(text, *line))
                } else {
                    headed_variant(&Flow::of(text, [own]), others)
                        .or_else(|| is_sent_to(text, own, &sent))
                },
                band: is_band,
                item: within.get(&line.start()).copied(),
            }
        });
        // A line that may name a kind heads something only where another of its sort does.
        let heads = |heading: &Heading| heading.kind.is_some() || sure.contains(&heading.line);
        let headings: Vec<Heading> = headings.filter(heads).collect();
        let closing = outline.closing.iter();
        let closing = closing.map(|line| (line.start(), line.column(text)));
        let own = headings
            .iter()
            .map(|heading| (heading.line.start(), heading.column));
        let mut ends: Vec<(usize, usize)> = own.chain(closing).collect();
        ends.sort_unstable();
        Self { headings, ends }
    }

    /// Where an item ends in a heading that is no part of it; what stands behind belongs to it no more.
    pub(super) fn end(&self, text: &str, item: &OutlineItem) -> Option<usize> {
        let own = item.heading.column(text);
        let start = item.heading.start();
        let behind = self.ends.partition_point(|(end, _)| *end <= start);
        let mut behind = self.ends.iter().skip(behind);
        behind
            .find(|(_, column)| *column <= own)
            .map(|(end, _)| *end)
    }

    /// The lines that say for which joints the text under them is.
    pub(super) fn bands(&self) -> impl Iterator<Item = Span> + '_ {
        let bands = self.headings.iter().filter(|heading| heading.band);
        bands.map(|heading| heading.line)
    }

    /// The kinds that headings name, each with the stretch that is of it: as far as the next heading that stands no farther in. Where one item holds two of
    /// them they tell its own text apart, and the item behind it is of neither.
    pub(super) fn kinds(&self, text: &str, items: &[OutlineItem]) -> Vec<(Condition, Span)> {
        let mut holding: BTreeSet<usize> = BTreeSet::new();
        let mut kinds = Vec::new();
        for (at, heading) in self.headings.iter().enumerate() {
            let Some(kind) = &heading.kind else {
                continue;
            };
            let mut next = self.headings.iter().skip(at + 1);
            let next = next.find(|next| next.column <= heading.column);
            let end = next.map_or(text.len(), |next| next.line.start());
            let shared = heading.item.filter(|item| !holding.insert(*item));
            let end = shared.map_or(end, |item| end.min(end_of_item(text, items, item)));
            // A band within an item says nothing of the items behind it.
            let behind = items.partition_point(|item| item.heading.start() <= heading.line.end());
            let around = items.iter().skip(behind).filter(|_| heading.band);
            let mut around = around.map(|item| item.heading);
            let around = around.find(|next| next.column(text) < heading.column);
            let end = around.map_or(end, |next| end.min(next.start()));
            kinds.push((kind.clone(), Span::new(heading.line.end(), end)));
        }
        kinds
    }
}

/// What a band is for: whether a joint is of it is for a person to say.
fn band(text: &str, line: Span) -> Condition {
    let words = line.of(text).trim_end_matches([':', ' ']).to_owned();
    Condition {
        also: Vec::new(),
        expr: Expr::Words(words.clone()),
        words,
        span: line,
    }
}

/// What a document may send some joints to.
const SENT_TO: [&str; 6] = [
    "detail",
    "option",
    "method",
    "variant",
    "alternative",
    "alternate",
];

/// The names to which a document sends some joints, in small letters: "If it does not, use *Detail B*".
fn sent_to(text: &str) -> BTreeSet<String> {
    let lower = text.to_lowercase();
    let told = lower.split("use ").skip(1).filter_map(|behind| {
        let mut words = behind.split(|c: char| !c.is_alphanumeric());
        let (sort, label) = (words.next()?, words.next()?);
        (SENT_TO.contains(&sort) && (1..=2).contains(&label.len()))
            .then(|| format!("{sort} {label}"))
    });
    told.collect()
}

/// The kind that a heading names where the document sends some joints to it, whatever others it has.
fn is_sent_to(text: &str, heading: Span, sent: &BTreeSet<String>) -> Option<Condition> {
    let mut parts = heading.of(text).splitn(3, ' ');
    let (sort, label) = (parts.next()?, parts.next()?.trim_end_matches(':'));
    let name = format!("{sort} {label}");
    sent.contains(&name.to_lowercase()).then(|| Condition {
        also: Vec::new(),
        span: Span::new(heading.start(), heading.start() + name.len()),
        expr: Expr::Words(name.clone()),
        words: name,
    })
}

/// The first word of a line, in small letters.
fn first_word(line: &str) -> String {
    let mut words = line.split(|c: char| !(c.is_alphanumeric() || c == '/'));
    let first = words.find(|word| !word.is_empty()).unwrap_or_default();
    first.to_lowercase()
}

/// Where the next item begins that isn't farther in than one.
fn end_of_item(text: &str, items: &[OutlineItem], item: usize) -> usize {
    let own = items.get(item).map_or(0, |item| item.heading.column(text));
    let mut behind = items.iter().skip(item + 1);
    behind
        .find(|other| other.heading.column(text) <= own)
        .map_or(text.len(), |other| other.heading.start())
}

/// The headings in the text of an item that are no part of it, and whether each is one by its looks alone.
fn beside(text: &str, item: &OutlineItem) -> Vec<(Span, bool)> {
    let own = item.heading.column(text);
    let mut found = Vec::new();
    for (at, paragraph) in item.paragraphs.iter().enumerate() {
        let Paragraph::Text(pieces) = paragraph else {
            continue;
        };
        let ends = |line: &&Span| heads_notes(line.of(text)) || heads_all(line.of(text));
        let notes = pieces.iter().filter(ends);
        found.extend(notes.map(|line| (*line, true)));
        let Some(first) = pieces.first() else {
            continue;
        };
        let table = matches!(item.paragraphs.get(at + 1), Some(Paragraph::Table(_)));
        let alone = match pieces.get(1) {
            Some(second) => second.column(text) > first.column(text),
            None => true,
        };
        if first.column(text) > own || !(alone || table) {
            continue;
        }
        let looks = is_apart(text, *first)
            && (is_heading(first.of(text), table) || is_set_apart(text, pieces));
        if (looks || names_kind(first.of(text))) && !ends(&first) {
            found.push((*first, looks));
        }
    }
    found
}

/// Whether a line may be the name of a kind and nothing more: `System A`, `Type HW:`.
fn names_kind(line: &str) -> bool {
    const LONGEST: usize = 3;
    let words = kind_alone(line.trim()).trim_end_matches([':', '.']);
    let label = words.rsplit(' ').next().unwrap_or_default();
    let short = (1..=2).contains(&label.len())
        && label
            .chars()
            .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit());
    let count = words.split_whitespace().count();
    words.starts_with(char::is_uppercase)
        && short
        && !is_small_word(label)
        && (2..=LONGEST).contains(&count)
}

/// The name of a kind without the few words that say which it is: `CONFIGURATION A - FLOOR TO FLOOR`.
fn kind_alone(line: &str) -> &str {
    const MOST_WORDS: usize = 8;
    let parted = [" - ", " – ", " — "]
        .iter()
        .find_map(|dash| line.split_once(dash));
    let plain = |said: &str| {
        said.split_whitespace().count() <= MOST_WORDS
            && (is_rating(said)
                || !said.contains(|c: char| c.is_ascii_digit() || matches!(c, '.' | ';' | ':')))
    };
    parted
        .filter(|(_, said)| plain(said))
        .map_or(line, |(name, _)| name)
}

/// A heading without its number, `4.2 System A - sealant`, and without the thing of which it names one of several: `FLUTED DECK - OPTION P (PLUGS)`.
fn kind_of(text: &str, line: Span) -> Span {
    let words = line.of(text);
    let name = words.trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | ' '));
    if let Some(kind) = in_brackets(name) {
        let end = line.end() - 1;
        return Span::new(end - kind.len(), end);
    }
    let name = behind_thing(name).unwrap_or(name);
    Span::new(line.end() - name.len(), line.end())
}

/// What fills brackets behind the name of a thing, where that is the name of a kind: `FIRE BLANKET (OPTION A)`.
fn in_brackets(name: &str) -> Option<&str> {
    let (thing, kind) = name.strip_suffix(')')?.split_once(" (")?;
    (is_plain_name(thing) && names_option(kind)).then_some(kind)
}

/// What stands behind the name of a thing and a dash, where that is the name of a kind.
fn behind_thing(name: &str) -> Option<&str> {
    let mut dashes = [" - ", " – ", " — ", ": "].into_iter();
    let (thing, kind) = dashes.find_map(|dash| name.split_once(dash))?;
    let kind = kind.trim_start();
    (is_plain_name(thing) && names_option(kind)).then_some(kind)
}

/// Whether words are a short name without numbers.
fn is_plain_name(thing: &str) -> bool {
    const MOST_WORDS: usize = 4;
    thing.starts_with(char::is_alphabetic)
        && thing
            .chars()
            .all(|c| c.is_alphabetic() || c == ' ' || c == '-')
        && thing.split_whitespace().count() <= MOST_WORDS
}

/// Whether words begin with the name of one of several kinds.
fn names_option(kind: &str) -> bool {
    const KINDS: [&str; 6] = [
        "option ",
        "variant ",
        "alternative ",
        "alternate ",
        "method ",
        "version ",
    ];
    let lower = kind.to_lowercase();
    KINDS.iter().any(|own| lower.starts_with(own))
}

/// Whether a line is a heading: in capitals but for what stands in brackets, right above a table, or numbered as the parts of a document are.
fn is_heading(line: &str, above_table: bool) -> bool {
    const LONGEST: usize = 9;
    let line = line.trim();
    let numbered = line
        .split_once(' ')
        .filter(|(number, _)| {
            number.contains('.') && number.chars().all(|c| c.is_ascii_digit() || c == '.')
        })
        .map(|(_, name)| name.trim_start());
    let above_table = above_table || numbered.is_some();
    let line = numbered.unwrap_or(line);
    let name = line.split('(').next().unwrap_or_default().trim_end();
    let capitals = !name.contains(char::is_lowercase)
        && name.chars().filter(|c| c.is_alphabetic()).count() > 3;
    let short = name.split_whitespace().count() <= LONGEST;
    line.starts_with(char::is_uppercase)
        && !name.ends_with(['.', ';', ','])
        && short
        && (capitals || above_table && !name.contains(". "))
}

/// Whether a paragraph is a few words alone between blank lines: `Installation of the strip`.
fn is_set_apart(text: &str, pieces: &[Span]) -> bool {
    const LONGEST: usize = 6;
    let [line] = pieces else { return false };
    let behind = text.get(line.end()..).unwrap_or_default();
    let mut lines = behind.lines();
    let alone = lines.next().is_none_or(|rest| rest.trim().is_empty())
        && lines.next().is_some_and(|next| next.trim().is_empty());
    let words = line.of(text).trim();
    let plain = |c: char| c.is_alphabetic() || matches!(c, ' ' | '-' | '/' | '&');
    alone
        && words.starts_with(char::is_uppercase)
        && words.chars().all(plain)
        && words.split_whitespace().count() <= LONGEST
}

/// Whether a piece is the first on its line, behind a line that is blank.
fn is_apart(text: &str, piece: Span) -> bool {
    let before = text.get(..piece.start()).unwrap_or_default();
    let above = before.trim_end_matches([' ', '\t', '\r']);
    let Some(above) = above.strip_suffix('\n') else {
        return above.is_empty();
    };
    let above = above.trim_end_matches([' ', '\t', '\r']);
    above.is_empty() || above.ends_with('\n')
}
