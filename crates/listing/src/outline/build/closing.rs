//! Where an item ends without a gap: at a number back at the margin, at a sentence no farther in than the part above it, and below an optional part at text
//! that is of the item around it.

use super::Builder;
use crate::conditions::is_small_word;
use crate::layout::{Flow, Line};
use crate::model::Span;
use crate::naming::components_in;
use crate::outline::build::{OutlineItem, Paragraph};
use crate::outline::marker::{Close, Marker, Part, marker};

/// Words that make a part optional.
const OPTIONAL: &[&str] = &[
    "option",
    "alternat",
    "in lieu of",
    "instead of",
    "in place of",
    "substitut",
    "may replace",
];

impl Builder<'_> {
    /// Whether a bare number without a gap before it stands where an earlier item's does, left of the text above it, and a name follows: `2 Joint. Nominal
    /// width ...` below the text of 1.3.
    pub(super) fn returns_to_margin(
        &self,
        at: usize,
        line: &Line<'_>,
        marker: &Marker,
        words: &str,
    ) -> bool {
        let numbered = matches!(marker.parts.as_slice(), [Part::Number(_)]);
        let name = words.get(marker.len..).unwrap_or_default().trim_start();
        let above = at.checked_sub(1).and_then(|above| self.lines.get(above));
        let margin = self
            .open
            .first()
            .is_some_and(|(indent, _)| *indent == line.indent);
        numbered
            && marker.close == Close::Nothing
            && margin
            && self.open.len() > 1
            && above.is_some_and(|above| above.indent > line.indent)
            && name.starts_with(char::is_uppercase)
            && self.last_sentence_ended()
    }

    /// Whether a line begins a sentence no farther in than the marker of the part above it, whose own lines hang: `Edges: plumb` below the text of `c)`.
    pub(super) fn falls_back(&self, at: usize, line: &Line<'_>, words: &str) -> bool {
        let above = at.checked_sub(1).and_then(|above| self.lines.get(above));
        let part = self.open.last().filter(|_| self.open.len() > 1);
        part.is_some_and(|(indent, _)| line.indent <= *indent)
            && above.is_some_and(|above| above.indent > line.indent)
            && words.starts_with(char::is_uppercase)
            && self.last_sentence_ended()
    }

    /// Whether a line is a sentence of its own below a part that is optional or for some joints, of which it is none: `Packing shall be min 4 in. deep` no
    /// farther in than `A1.`
    pub(super) fn leaves_option(&self, at: usize, line: &Line<'_>, words: &str) -> bool {
        let left = self
            .open
            .iter()
            .skip(1)
            .filter(|(indent, _)| *indent >= line.indent);
        let left = left.filter_map(|(_, index)| self.outline.items.get(*index));
        let mut left = left.filter(|item| {
            self.is_optional(item) || self.is_for_some(item) || self.is_one_of_several(item)
        });
        words.starts_with(char::is_uppercase)
            && left.any(|item| {
                self.stands_for_itself(at, line, words) || self.turns_to_another(at, words, item)
            })
    }

    /// Whether a line begins a sentence about another thing than the part above it, behind a line that ended early: `The packing shall be recessed` below
    /// `B. Spray ... no pinholes left.`
    fn turns_to_another(&self, at: usize, words: &str, item: &OutlineItem) -> bool {
        const SUBJECT: usize = 3;
        let above = at.checked_sub(1).and_then(|above| self.lines.get(above));
        let subject: Vec<&str> = words.split(' ').take(SUBJECT).collect();
        let subject = subject.join(" ");
        let of_subject = components_in(&subject);
        let Some((named, ..)) = of_subject.first() else {
            return false;
        };
        let pieces = item.paragraphs.iter().flat_map(Paragraph::pieces);
        let said = Flow::of(self.source, core::iter::once(item.heading).chain(pieces));
        let other = components_in(said.text())
            .iter()
            .all(|(component, ..)| component.name != named.name);
        other && above.is_some_and(|above| self.setting.ends_early(above, words))
    }

    /// Whether a line at the margin is a sentence of its own below an optional item of the first level.
    pub(super) fn leaves_outermost_option(&self, at: usize, line: &Line<'_>, words: &str) -> bool {
        let outermost = self
            .open
            .first()
            .filter(|(indent, _)| line.indent <= *indent)
            .and_then(|(_, index)| self.outline.items.get(*index));
        words.starts_with(char::is_uppercase)
            && outermost.is_some_and(|item| {
                let left = self.is_optional(item) || self.is_one_of_several(item);
                left && !item.paragraphs.is_empty()
            })
            && (self.gap && self.ends_item(at, line) || self.stands_for_itself(at, line, words))
            && !self.is_set_flush()
    }

    /// Whether a line no farther in than the part above it says that it holds for all of the parts: `All splices are staggered 12 in. in both cases.`
    pub(super) fn speaks_of_all_parts(&self, at: usize, line: &Line<'_>, words: &str) -> bool {
        const OF_ALL: &[&str] = &[
            "in both cases",
            "in all cases",
            "in either case",
            "in every case",
            "for all options",
            "for both options",
            "for either option",
            "for all alternates",
            "for both alternates",
            "with either option",
            "with all options",
        ];
        let part = self.open.last().filter(|_| self.open.len() > 1);
        let above = at.checked_sub(1).and_then(|above| self.lines.get(above));
        let lower = words.to_lowercase();
        part.is_some_and(|(indent, _)| line.indent <= *indent)
            && words.starts_with(char::is_uppercase)
            && OF_ALL.iter().any(|of_all| lower.contains(of_all))
            && (self.gap
                || self.last_sentence_ended()
                || above.is_some_and(|above| self.setting.breaks_off(above, words)))
    }

    /// Whether a line begins anew below a note, no farther in.
    pub(super) fn leaves_note(&self, at: usize, line: &Line<'_>, words: &str) -> bool {
        let above = at.checked_sub(1).and_then(|above| self.lines.get(above));
        let note = self.open.last().filter(|(indent, index)| {
            let own = self.outline.items.get(*index);
            line.indent <= *indent && own.is_some_and(|own| own.path.starts_with('['))
        });
        note.is_some()
            && words.starts_with(char::is_uppercase)
            && (self.last_sentence_ended()
                || above.is_some_and(|above| self.setting.breaks_off(above, words)))
    }

    /// Whether nothing farther in than a line follows it up to the next number.
    fn ends_item(&self, at: usize, line: &Line<'_>) -> bool {
        const FARTHEST: usize = 40;
        let below = self.lines.iter().skip(at + 1);
        let mut below = below
            .take(FARTHEST)
            .filter(|below| !below.is_blank())
            .take_while(|below| marker(below.content().of(self.source)).is_none());
        below.all(|below| below.indent <= line.indent)
    }

    fn is_optional(&self, item: &OutlineItem) -> bool {
        const BEGINNING: usize = 4;
        let own = item
            .paragraphs
            .iter()
            .take(BEGINNING)
            .flat_map(Paragraph::pieces);
        let own = own.take(BEGINNING);
        let said = own.fold(String::new(), |said, piece| said + piece.of(self.source));
        let said = said.to_lowercase();
        OPTIONAL.iter().any(|word| said.contains(word))
    }

    /// Whether the text of the item around a part says that one of the parts is built.
    fn is_one_of_several(&self, item: &OutlineItem) -> bool {
        const ONE_OF: &[&str] = &[
            "one of the following",
            "one of these",
            "either of the",
            "any one of",
            "use one",
            "one of:",
            "either of:",
            "one of these",
            "either:",
        ];
        let around = item
            .parent
            .and_then(|parent| self.outline.items.get(parent));
        let Some(around) = around else { return false };
        let last = match around.paragraphs.last() {
            Some(Paragraph::Text(pieces)) => pieces.as_slice(),
            _ => &[],
        };
        let pieces = core::iter::once(around.heading).chain(last.iter().copied());
        let said = Flow::of(self.source, pieces);
        ONE_OF.iter().any(|words| said.lower().contains(words))
    }

    /// Whether an item says for which joints it is before anything else: `b) Joints over 2 in.: two layers`.
    fn is_for_some(&self, item: &OutlineItem) -> bool {
        const OPENINGS: &[&str] = &[
            "joints ",
            "joint width ",
            "gaps ",
            "for joints",
            "for gaps",
            "in joints",
            "for widths",
            "widths ",
        ];
        let first = item.paragraphs.first().map(Paragraph::pieces);
        let opening = first.and_then(|pieces| pieces.first().copied());
        let said = format!(
            "{} {}",
            item.title,
            opening.map_or("", |piece| piece.of(self.source))
        );
        let said = said.trim_start().to_lowercase();
        OPENINGS.iter().any(|opening| said.starts_with(opening))
            && said.contains(|c: char| c.is_ascii_digit())
    }

    /// Whether a line begins a sentence and doesn't go on with the line above.
    fn stands_for_itself(&self, at: usize, line: &Line<'_>, words: &str) -> bool {
        let above = at.checked_sub(1).and_then(|above| self.lines.get(above));
        let Some(above) = above else { return false };
        let begins = above.content();
        // The line above is farther in, or the one that a number begins.
        let hangs = above.indent > line.indent
            || marker(begins.of(self.source)).is_some() && !self.setting.wraps_flush;
        hangs && (self.last_sentence_ended() || self.setting.breaks_off(above, words))
    }

    /// Whether the text of an item before the last stands no farther in than its number: then nothing tells it from what is of no item.
    fn is_set_flush(&self) -> bool {
        let outermost = self.open.first().map_or(0, |(_, index)| *index);
        let before = self.outline.items.iter().take(outermost);
        before.into_iter().any(|item| {
            let own = item.heading.column(self.source);
            let mut pieces = item.paragraphs.iter().flat_map(|paragraph| {
                let pieces = paragraph.pieces().into_iter().enumerate();
                pieces.map(|(place, piece)| (place > 0, piece))
            });
            pieces.any(|(goes_on, piece)| {
                let (line, apart) = begins_line(self.source, piece);
                line && (goes_on || apart) && piece.column(self.source) <= own
            })
        })
    }
}

/// How the lines of a document are set, looked for once.
#[derive(Debug, Clone, Copy)]
pub(super) struct Setting {
    /// How many bytes the longest line has.
    pub(super) widest: usize,
    /// Whether lines that go on with a part's first stand right below its number.
    wraps_flush: bool,
}

impl Setting {
    pub(super) fn of(lines: &[Line<'_>]) -> Self {
        Self {
            widest: widest(lines),
            wraps_flush: wraps_flush(lines),
        }
    }

    /// Whether the line above was ended where the next word would still have had room, and its words are complete.
    pub(super) fn breaks_off(self, above: &Line<'_>, words: &str) -> bool {
        let own = above.text.trim_end();
        let next = words.split_whitespace().next().unwrap_or_default();
        let last = own.rsplit(' ').next().unwrap_or_default();
        let complete = last
            .ends_with(|c: char| c.is_alphanumeric() || matches!(c, ')' | '%' | '"'))
            && !is_small_word(&last.to_uppercase())
            && own.matches('(').count() == own.matches(')').count();
        complete && own.len() + next.len() < self.widest
    }

    /// Whether the sentence of the line above ended where the next word would still have had room.
    pub(super) fn ends_early(self, above: &Line<'_>, words: &str) -> bool {
        let own = above.text.trim_end();
        let next = words.split_whitespace().next().unwrap_or_default();
        own.ends_with(['.', ';', ':']) && own.len() + 1 + next.len() < self.widest
    }
}

/// Whether lines that go on with a part's first stand right below its number anywhere.
fn wraps_flush(lines: &[Line<'_>]) -> bool {
    lines.windows(2).any(|pair| {
        let [first, second] = pair else { return false };
        let goes_on = second
            .text
            .trim_start()
            .starts_with(|c: char| c.is_lowercase() || c.is_ascii_digit());
        let numbered = |line: &Line<'_>| marker(line.text.trim()).is_some();
        first.indent > 0
            && second.indent == first.indent
            && goes_on
            && numbered(first)
            && !numbered(second)
    })
}

/// How many bytes the longest line has.
fn widest(lines: &[Line<'_>]) -> usize {
    let widths = lines.iter().map(|line| line.text.trim_end().len());
    widths.max().unwrap_or_default()
}

/// Whether a piece is the first on its line, and whether a blank line is above it.
fn begins_line(text: &str, piece: Span) -> (bool, bool) {
    let before = text.get(..piece.start()).unwrap_or_default();
    let above = before.trim_end_matches([' ', '\t', '\r']);
    let apart = above
        .strip_suffix('\n')
        .is_some_and(|above| above.trim_end_matches([' ', '\t', '\r']).ends_with('\n'));
    (above.ends_with('\n'), apart)
}
