//! Glyphs written one after the other on one base line.

use crate::content::Glyph;
use crate::numbers::median;

/// A gap wider than this parts columns, in sizes: wider than two blanks of a typewriter's face, narrower than three.
pub(super) const COLUMN_GAP: f64 = 1.35;
/// A gap wider than this is a blank, in sizes: narrower than the blank of any common face, wider than any pair is moved apart.
pub(super) const BLANK: f64 = 0.17;

/// How glyphs stand to the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stand {
    /// On it.
    Level,
    /// Raised above it, smaller.
    Raised,
    /// Lowered below it, smaller.
    Lowered,
}

/// A glyph, and whether a blank stands before it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Letter<'g> {
    pub(super) glyph: &'g Glyph,
    pub(super) after_blank: bool,
}

/// Glyphs written one after the other on one base line, of one size.
#[derive(Debug, Clone)]
pub(super) struct Chunk<'g> {
    pub(super) letters: Vec<Letter<'g>>,
    pub(super) x0: f64,
    pub(super) x1: f64,
    pub(super) base: f64,
    pub(super) size: f64,
    pub(super) stand: Stand,
}

impl Chunk<'_> {
    /// Its text, without blanks.
    pub(super) fn text(&self) -> String {
        let mut text = String::new();
        for letter in &self.letters {
            letter.glyph.push_to(&mut text);
        }
        text
    }

    /// Whether it is written on the line, small as the figures of a fraction are.
    pub(super) fn is_smaller_than(&self, size: f64) -> bool {
        self.size < 0.87 * size
    }
}

/// Puts glyphs together, in the order in which they are written.
pub(super) fn chunks<'g>(glyphs: &[&'g Glyph]) -> Vec<Chunk<'g>> {
    let mut chunks: Vec<Chunk<'g>> = Vec::new();
    let mut blank = false;
    for glyph in glyphs {
        if glyph.is_blank() {
            blank = true;
            continue;
        }
        let letter = Letter {
            glyph,
            after_blank: core::mem::take(&mut blank),
        };
        match chunks.last_mut() {
            Some(chunk) if continues(chunk, glyph) => {
                chunk.x1 = chunk.x1.max(glyph.x1);
                chunk.letters.push(letter);
            }
            _ => chunks.push(Chunk {
                letters: vec![letter],
                x0: glyph.x0,
                x1: glyph.x1,
                base: glyph.base,
                size: glyph.size,
                stand: if glyph.raised {
                    Stand::Raised
                } else {
                    Stand::Level
                },
            }),
        }
    }
    for chunk in &mut chunks {
        find_blanks(chunk);
    }
    chunks
}

/// Whether a glyph goes on where a chunk ends.
fn continues(chunk: &Chunk<'_>, glyph: &Glyph) -> bool {
    let gap = glyph.x0 - chunk.x1;
    let was_raised = chunk
        .letters
        .last()
        .is_some_and(|letter| letter.glyph.raised);
    (chunk.size - glyph.size).abs() <= 0.03 * chunk.size
        && (chunk.base - glyph.base).abs() <= 0.03 * chunk.size
        && (-0.5 * chunk.size..=COLUMN_GAP * chunk.size).contains(&gap)
        && was_raised == glyph.raised
}

/// Tells blanks by their width, where none is written. Letters that are all spaced out are told from words by what is usual.
fn find_blanks(chunk: &mut Chunk<'_>) {
    let gaps: Vec<f64> = chunk
        .letters
        .windows(2)
        .map(|pair| match pair {
            [a, b] => b.glyph.x0 - a.glyph.x1,
            _ => 0.0,
        })
        .collect();
    let usual = median(gaps.clone()).unwrap_or(0.0);
    let least = if gaps.len() >= 4 && usual > 0.1 * chunk.size {
        usual * 1.8
    } else {
        BLANK * chunk.size
    };
    for (letter, gap) in chunk.letters.iter_mut().skip(1).zip(gaps) {
        letter.after_blank |= gap > least;
    }
}
