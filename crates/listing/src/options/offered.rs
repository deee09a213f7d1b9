//! Items that are offered as one of several, where which others they stand against can't be told: "Sealant instead (small gaps)", "or block",
//! "Deck alt.:", "Method 1, spray", "Flexible wall". Whether such an item is built, only a person can say: nothing falls away by itself, and a
//! number that isn't kept is open.
//!
//! Only the name of an item offers it so: its title, or where it has none the words before the first number, colon or stop. What it would
//! misread: a thing whose name holds such a word for another reason, as "Alternate spacing"; and a method, type or wall that is built beside
//! the other one of its kind in the same joint.

use super::document::{Document, HEADED_KINDS, WALL_KINDS, is_label, label_behind, label_of_wall};
use super::head::Head;

/// Words of a name that offer the thing as one of several.
const OFFERING: [&str; 8] = [
    "alternate",
    "alternative",
    "alternatively",
    "alt",
    "instead",
    "variant",
    "optional",
    "opt",
];

/// Things of which every second one differs: "alternate studs".
const EVERY_SECOND: [&str; 12] = [
    "side", "sides", "stud", "studs", "flute", "flutes", "face", "faces", "course", "row", "layer",
    "layers",
];

/// Words with a label behind them that tell one of several from the others.
const LABELLED: [&str; 10] = [
    "option",
    "variant",
    "variation",
    "method",
    "choice",
    "version",
    "alternate",
    "alternative",
    "alt",
    "case",
];

/// More such words, which name whole joints, or sorts of things besides; they count in brackets, and with another label elsewhere.
const IN_BRACKETS: [&str; 3] = ["joint", "type", "kit"];

/// Sorts of wall that stand beside others in a document; the first words of a name.
const WALLS: [&str; 10] = [
    "flexible wall",
    "flexible walls",
    "stud wall",
    "stud partition",
    "steel stud wall",
    "framed wall",
    "shaft wall",
    "shaft walls",
    "gypsum wall",
    "gypsum board wall",
];

/// The words of a name that offer the item, or the part of one, as one of several, whichever the others are.
pub(super) fn offered(
    head: &Head,
    document: &Document<'_>,
    is_part: bool,
) -> Option<(usize, usize)> {
    if let Some(words) = framed_wall(head, document, is_part)
        .or_else(|| wall_of_a_type(head, document))
        .or_else(|| walls_by_type(head, document))
        .or_else(|| headed_kind(head, document))
        .or_else(|| varies(head))
        .or_else(|| named_where_used(head, document))
    {
        return Some(words);
    }
    let (start, end) = name(head)?;
    let words = head.part(start, end);
    let tokens = tokens(words, start);
    let denied = |at: usize| {
        let mut before = tokens.iter().filter(|(place, _)| *place < at);
        before.any(|(_, word)| matches!(*word, "not" | "no" | "never" | "without"))
    };
    alternative(&tokens)
        .map(|(from, _)| {
            let opens = tokens.first().is_some_and(|(first, _)| *first == from);
            let end = head
                .bracket(from)
                .map_or(end, |_| head.end_of_phrase(from, true));
            (if opens { start } else { from }, end)
        })
        .or_else(|| labelled(head, &tokens, document))
        .filter(|(from, _)| !denied(*from))
}

/// Where the name of an item stands: its title, or what stands before the first number, colon or stop of its text.
fn name(head: &Head) -> Option<(usize, usize)> {
    const LONGEST: usize = 12;
    let words = head.words();
    let titled = head.title_start + 1 < head.title_end;
    let start = head.title_start;
    let all = words.get(start..)?;
    let start = start + (all.len() - all.trim_start().len());
    let all = all.trim_start();
    let end = if titled {
        head.title_end
    } else {
        let ends = all.char_indices().find(|(at, c)| {
            let rest = all.get(*at..).unwrap_or_default();
            c.is_ascii_digit() && !all.get(..*at).is_some_and(ends_in_label)
                || *c == ':'
                || *c == '.'
                    && (rest.starts_with(". ") || rest.len() == 1)
                    && !all.get(..*at).is_some_and(|before| before.ends_with("alt"))
                || rest.starts_with(" - ")
        });
        start + ends.map_or(all.len(), |(at, _)| at)
    };
    let short = head.part(start, end).split_whitespace().count() <= LONGEST;
    (start < end && short).then_some((start, end))
}

/// Whether words end in one that a label follows.
fn ends_in_label(words: &str) -> bool {
    let last = words.trim_end().rsplit(' ').next().unwrap_or_default();
    let last = last.trim_matches(|c: char| !c.is_alphanumeric());
    LABELLED.contains(&last)
}

/// The words with their places.
fn tokens(words: &str, start: usize) -> Vec<(usize, &str)> {
    words
        .split(|c: char| !(c.is_alphanumeric() || matches!(c, '-' | '/')))
        .filter(|word| word.chars().any(char::is_alphanumeric))
        .map(|word| (start + word.as_ptr().addr() - words.as_ptr().addr(), word))
        .collect()
}

/// `or block`, `sealant instead`, `deck alt.`: a word of the name.
fn alternative(tokens: &[(usize, &str)]) -> Option<(usize, usize)> {
    let span = |(at, word): &(usize, &str)| (*at, at + word.len());
    let or = tokens
        .first()
        .filter(|(_, word)| *word == "or" && tokens.len() > 1);
    let offering = tokens.iter().enumerate().find_map(|(place, token)| {
        let next = tokens.get(place + 1).map(|(_, word)| *word);
        let second = next.is_some_and(|word| EVERY_SECOND.contains(&word));
        (OFFERING.contains(&token.1) && !second).then_some(token)
    });
    or.or(offering).map(span)
}

/// `Method 1, spray`, `Spray, option S`, `Floor slab (Joint B only)`: a label, where the document has another of its kind.
fn labelled(
    head: &Head,
    tokens: &[(usize, &str)],
    document: &Document<'_>,
) -> Option<(usize, usize)> {
    tokens.windows(2).enumerate().find_map(|(place, pair)| {
        let [(at, word), (own, label)] = pair else {
            return None;
        };
        let bracketed = head.bracket(*at).is_some_and(|open| open + 1 == *at);
        let named = LABELLED.contains(word)
            && (place == 0 || bracketed || head.part(0, *at).trim_end().ends_with([',', '-']));
        let whole = place == 0 && tokens.len() == 2;
        let of_joint = IN_BRACKETS.contains(word) && (bracketed || whole);
        let parted = own - (at + word.len()) == 1;
        let counts = parted
            && is_label(label)
            && (named || of_joint)
            && document.labels_another(word, label);
        counts.then_some((*at, own + label.len()))
    })
}

/// `Filling A is a sealant`: the first words of an item without a title name one of several things, of which the document says where each is used:
/// "13 mm where Filling A is used and 3 mm where Filling B is used".
fn named_where_used(head: &Head, document: &Document<'_>) -> Option<(usize, usize)> {
    let untitled = head.title_end <= head.title_start + 1;
    let all = head.written().get(head.title_start..)?;
    let start = head.title_start + all.len() - all.trim_start().len();
    let mut words = all.trim_start().split(' ');
    let (noun, label) = (words.next()?, words.next()?);
    let plain = noun.len() > 3
        && noun.starts_with(char::is_uppercase)
        && noun.chars().all(char::is_alphabetic)
        && matches!(label.as_bytes(), [b'A'..=b'Z' | b'1'..=b'9']);
    if !(untitled && plain) {
        return None;
    }
    let used = document.labels_where_used(noun);
    let told = used.contains(label) && used.len() > 1;
    told.then(|| (start, start + noun.len() + 1 + label.len()))
}

/// `Slotted runner - As Item 2A, except legs 2-1/2 in.`: an item that is another one, changed.
fn varies(head: &Head) -> Option<(usize, usize)> {
    const LEADS: [&str; 12] = [
        "as item ",
        "same as item ",
        "as ",
        "same as ",
        "as for item ",
        "as in item ",
        "as described in item ",
        "as described for item ",
        "identical to item ",
        "identical with item ",
        "similar to item ",
        "like item ",
    ];
    let text = head.part(head.title_end, head.words().len());
    let opening = text.trim_start_matches([' ', '-', '–', '—', ':', '.', '*']);
    let start = head.title_end + text.len() - opening.len();
    LEADS.iter().find_map(|lead| {
        let rest = opening.strip_prefix(lead)?;
        let label = rest.split([',', ';', ' ']).next()?;
        let numbered = label.starts_with(|c: char| c.is_ascii_digit()) && label.len() <= 5;
        let end = lead.len() + label.len();
        let after = opening.get(end..)?.trim_start_matches([',', ';', ' ']);
        let changed = after.starts_with("except ") || after.starts_with("but ");
        (numbered && changed).then_some((start, start + end))
    })
}

/// The name of a framed wall that an item begins with, in a document that knows solid ones: "Flexible wall: ...", "A stud wall shall have". Beside
/// another item of a joint between two walls it is the other side, and built; as a part of one it is a sort of wall.
fn framed_wall(head: &Head, document: &Document<'_>, is_part: bool) -> Option<(usize, usize)> {
    let all = head.words().get(head.title_start..)?;
    let lead = all.trim_start();
    let lead = ["a ", "the "]
        .iter()
        .find_map(|article| lead.strip_prefix(article))
        .unwrap_or(lead);
    let start = head.title_start + all.len() - lead.len();
    let named = WALLS.iter().find(|wall| {
        lead.strip_prefix(**wall)
            .is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
    })?;
    let other_side = !is_part && document.joins_walls();
    (document.knows_solid_walls() && !other_side).then_some((start, start + named.len()))
}

/// `Wall Type B - Framed`, `Wall Assembly A: concrete`: a wall by its label, where the document has another of the kind and the joint isn't between two.
fn wall_of_a_type(head: &Head, document: &Document<'_>) -> Option<(usize, usize)> {
    let all = head.words().get(head.title_start..)?;
    let lead = all.trim_start();
    let start = head.title_start + all.len() - lead.len();
    let (kind, label) = WALL_KINDS
        .iter()
        .find_map(|kind| Some((kind, label_of_wall(lead.strip_prefix(kind)?)?)))?;
    let another = document
        .walls(kind)
        .any(|own| own != label && own.is_alphabetic() == label.is_alphabetic());
    (another && !document.joins_walls()).then_some((start, start + kind.len() + 1))
}

/// `Walls - Type 1. Precast panel`: walls by the label that their text begins with, where the document heads others with another.
fn walls_by_type(head: &Head, document: &Document<'_>) -> Option<(usize, usize)> {
    let title = head.part(head.title_start, head.title_end);
    let title = title.trim_matches(|c: char| !c.is_alphabetic());
    if !matches!(title, "wall" | "walls") {
        return None;
    }
    let text = head.part(head.title_end, head.words().len());
    let opening = text.trim_start_matches([' ', '-', '–', '—', ':', '.']);
    let start = head.title_end + text.len() - opening.len();
    let label = label_behind("type ", opening)?;
    let another = document.types_of_walls().any(|other| other != label);
    let end = start + "type ".len() + label.len();
    (another && !document.joins_walls()).then_some((start, end))
}

/// `System X (sealant)`, `Seal Type 1 – static joints`: a title with a label, where the document has another line headed so.
fn headed_kind(head: &Head, document: &Document<'_>) -> Option<(usize, usize)> {
    let all = head.words().get(head.title_start..)?;
    let lead = all.trim_start();
    let start = head.title_start + all.len() - lead.len();
    let (kind, label) = HEADED_KINDS
        .iter()
        .find_map(|kind| Some((kind, label_behind(kind, lead)?)))?;
    let another = document.heads(kind).any(|other| other != label);
    another.then(|| (start, start + kind.len() + label.len()))
}
