//! A row of chunks spelled out: blanks, fractions, raised and lowered figures.

use super::chunks::{BLANK, COLUMN_GAP, Chunk, Letter, Stand};
use super::lines::Segment;
use crate::model::{NoteKind, Rect};

/// What stands between the figures of a fraction.
const SOLIDUS: [char; 3] = ['/', '\u{2044}', '\u{2215}'];

/// The most columns that a line has; gaps beyond that are blanks.
const MOST_SEGMENTS: usize = 48;

/// Spells a row out, from left to right.
pub(super) fn spell(
    chunks: &[Chunk<'_>],
    page: usize,
    note: &mut impl FnMut(NoteKind, Rect, String),
) -> Vec<Segment> {
    let mut speller = Speller {
        segments: Vec::new(),
        end: f64::NEG_INFINITY,
        size: 0.0,
    };
    let mut at = 0;
    while let Some(chunk) = chunks.get(at) {
        let rest = chunks.get(at..).unwrap_or_default();
        if let Some(used) = speller.fraction(rest) {
            at += used;
            continue;
        }
        speller.gap_before(chunk);
        match chunk.stand {
            Stand::Raised => speller.raised(chunk, chunks.get(at + 1), page, note),
            Stand::Level | Stand::Lowered => speller.letters(&chunk.letters, note),
        }
        speller.reach(chunk);
        at += 1;
    }
    speller
        .segments
        .into_iter()
        .filter(|segment| !segment.text.trim().is_empty())
        .collect()
}

struct Speller {
    segments: Vec<Segment>,
    /// Where the last chunk ended.
    end: f64,
    /// The size of the last level chunk.
    size: f64,
}

impl Speller {
    /// The blank or the gap that parts a chunk from what stands before it.
    fn gap_before(&mut self, chunk: &Chunk<'_>) {
        let size = chunk.size.max(self.size);
        let gap = chunk.x0 - self.end;
        let told = chunk
            .letters
            .first()
            .is_some_and(|letter| letter.after_blank);
        let is_column = gap > COLUMN_GAP * size && self.segments.len() < MOST_SEGMENTS;
        if self.segments.is_empty() || is_column {
            self.segments.push(Segment {
                x0: chunk.x0,
                ..Segment::default()
            });
        } else if gap > BLANK * size || (told && gap > 0.05 * size) {
            self.blank(chunk.letters.first().map(|letter| letter.glyph.rect));
        }
    }

    fn reach(&mut self, chunk: &Chunk<'_>) {
        if chunk.stand == Stand::Level {
            self.size = chunk.size;
        }
        self.end = self.end.max(chunk.x1);
        let end = self.end;
        if let Some(segment) = self.segments.last_mut() {
            segment.x1 = end;
        }
    }

    /// A blank, just before what stands at a place.
    fn blank(&mut self, next: Option<Rect>) {
        let Some(segment) = self.segments.last_mut() else {
            return;
        };
        if segment.text.is_empty() || segment.text.ends_with(' ') {
            return;
        }
        let before = segment.marks.last().map(|(_, rect)| *rect);
        let (before, next) = match (before, next) {
            (Some(before), Some(next)) => (before, next),
            (Some(one), None) | (None, Some(one)) => (one, one),
            (None, None) => return,
        };
        let rect = Rect {
            x0: before.x1.min(next.x0),
            x1: next.x0.max(before.x1),
            ..before
        };
        self.add(" ", rect);
    }

    fn add(&mut self, text: &str, rect: Rect) {
        if let Some(segment) = self.segments.last_mut() {
            segment.marks.push((segment.text.len(), rect));
            segment.text.push_str(text);
            segment.length += text.chars().count();
        }
    }

    fn last_char(&self) -> Option<char> {
        self.segments.last()?.text.chars().next_back()
    }

    fn letters(&mut self, letters: &[Letter<'_>], note: &mut impl FnMut(NoteKind, Rect, String)) {
        let mut held = String::new();
        for (index, letter) in letters.iter().enumerate() {
            let glyph = letter.glyph;
            if index > 0 && letter.after_blank {
                self.blank(Some(glyph.rect));
            }
            held.clear();
            match glyph.only() {
                // A hyphen that shows only where a line ends in it.
                Some('\u{ad}') if index + 1 < letters.len() => continue,
                Some('\u{2044}' | '\u{2215}') => {
                    self.unclear_fraction(note);
                    held.push('/');
                }
                _ => glyph.push_to(&mut held),
            }
            self.add(&held, glyph.rect);
        }
    }

    /// Notes that the figures before a solidus are a numerator or a whole number with one, and that nothing tells which.
    fn unclear_fraction(&mut self, note: &mut impl FnMut(NoteKind, Rect, String)) {
        let Some(segment) = self.segments.last() else {
            return;
        };
        let figures = segment
            .text
            .chars()
            .rev()
            .take_while(char::is_ascii_digit)
            .count();
        if figures > 1
            && let Some((_, rect)) = segment.marks.last()
        {
            let words = "a fraction's figures can't be told from the whole number before it: read it on the page";
            note(NoteKind::UnclearFraction, *rect, words.to_owned());
        }
    }

    /// A fraction set with raised and lowered figures: `2 1/2`. How many chunks it takes.
    fn fraction(&mut self, chunks: &[Chunk<'_>]) -> Option<usize> {
        let [top, rest @ ..] = chunks else {
            return None;
        };
        if top.stand != Stand::Raised {
            return None;
        }
        let top_text = top.text();
        let figures = |text: &str| {
            !text.is_empty() && text.len() <= 3 && text.bytes().all(|b| b.is_ascii_digit())
        };
        let next = rest.first()?;
        let next_text = next.text();
        let close = |a: &Chunk<'_>, b: &Chunk<'_>| b.x0 - a.x1 < 0.35 * self.size.max(a.size);
        let bottom: (&Chunk<'_>, usize, usize) = if let Some(numerator) =
            top_text.strip_suffix(SOLIDUS)
        {
            if !figures(numerator) || !figures(&next_text) {
                return None;
            }
            (next, 0, 2)
        } else if !figures(&top_text) {
            return None;
        } else if next.stand == Stand::Lowered && figures(&next_text) && next.x0 < top.x1 {
            // One above the other.
            (next, 0, 2)
        } else if let Some(denominator) = next_text.strip_prefix(SOLIDUS) {
            if !close(top, next) {
                return None;
            }
            if figures(denominator) {
                (next, 1, 2)
            } else {
                let last = rest.get(1)?;
                let small = last.stand == Stand::Lowered || last.is_smaller_than(self.size);
                if !denominator.is_empty() || !figures(&last.text()) || !close(next, last) || !small
                {
                    return None;
                }
                (last, 0, 3)
            }
        } else {
            return None;
        };
        let (bottom, skip, used) = bottom;
        self.gap_before(top);
        if self.last_char().is_some_and(|c| c.is_ascii_digit()) {
            self.blank(top.letters.first().map(|letter| letter.glyph.rect));
        }
        let is_figure =
            |letter: &&Letter<'_>| letter.glyph.only().is_some_and(|c| c.is_ascii_digit());
        for letter in top.letters.iter().filter(is_figure) {
            self.add_letter(letter);
        }
        let bar = top
            .letters
            .last()
            .map(|letter| letter.glyph.rect)
            .unwrap_or_default();
        let foot = bottom
            .letters
            .first()
            .map(|letter| letter.glyph.rect)
            .unwrap_or_default();
        self.add("/", bar.join(foot));
        for letter in bottom.letters.iter().skip(skip) {
            self.add_letter(letter);
        }
        for chunk in chunks.iter().take(used) {
            self.end = self.end.max(chunk.x1);
        }
        let end = self.end;
        if let Some(segment) = self.segments.last_mut() {
            segment.x1 = end;
        }
        Some(used)
    }

    fn add_letter(&mut self, letter: &Letter<'_>) {
        let mut held = String::new();
        letter.glyph.push_to(&mut held);
        self.add(&held, letter.glyph.rect);
    }

    /// What is raised: a power, a degree, an ordinal's ending, or the mark of a footnote.
    fn raised(
        &mut self,
        chunk: &Chunk<'_>,
        next: Option<&Chunk<'_>>,
        page: usize,
        note: &mut impl FnMut(NoteKind, Rect, String),
    ) {
        let text = chunk.text();
        let rect = chunk
            .letters
            .iter()
            .map(|letter| letter.glyph.rect)
            .reduce(Rect::join)
            .unwrap_or_default();
        let before = self
            .segments
            .last()
            .map(|segment| segment.text.as_str())
            .unwrap_or_default();
        let after_number = before.ends_with(|c: char| c.is_ascii_digit());
        let touches = chunk.x0 - self.end < 0.4 * self.size;
        let next_letter = next
            .and_then(|chunk| chunk.letters.first())
            .and_then(|l| l.glyph.only());
        let of_figures = text
            .chars()
            .all(|c| c.is_ascii_digit() || matches!(c, '-' | '\u{2212}' | '+'));
        if matches!(text.as_str(), "o" | "º" | "O" | "0") && matches!(next_letter, Some('C' | 'F'))
        {
            self.add("°", rect);
        } else if of_figures && touches && (after_number || ends_in_unit(before)) {
            if after_number {
                let words = format!(
                    "a raised `{text}` follows a number on page {page}: a power, or the mark of a footnote"
                );
                note(NoteKind::RaisedAfterNumber, rect, words);
            }
            let power: String = text.chars().map(superscript).collect();
            self.add(&power, rect);
        } else if of_figures || (text.len() == 1 && text.bytes().all(|b| b.is_ascii_alphabetic())) {
            self.blank(Some(rect));
            self.add(&format!("[{text}]"), rect);
            if next.is_some_and(|next| next.x0 - chunk.x1 < COLUMN_GAP * next.size)
                && next_letter.is_some_and(char::is_alphanumeric)
            {
                self.blank(Some(rect));
            }
        } else {
            self.letters(&chunk.letters, note);
        }
    }
}

/// Whether a text ends in a unit that is squared or cubed: `m`, `kg/m`, `mm`, `ft`, `in.`
fn ends_in_unit(text: &str) -> bool {
    let word = text
        .rsplit(|c: char| c.is_whitespace() || c == '(')
        .next()
        .unwrap_or_default();
    let unit = word.rsplit('/').next().unwrap_or_default();
    let unit = unit.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
    matches!(
        unit,
        "m" | "mm" | "cm" | "dm" | "km" | "ft" | "in" | "in." | "yd" | "s"
    )
}

/// A figure as the raised one.
const fn superscript(figure: char) -> char {
    match figure {
        '0' => '⁰',
        '1' => '¹',
        '2' => '²',
        '3' => '³',
        '4' => '⁴',
        '5' => '⁵',
        '6' => '⁶',
        '7' => '⁷',
        '8' => '⁸',
        '9' => '⁹',
        '-' | '\u{2212}' => '⁻',
        '+' => '⁺',
        other => other,
    }
}
