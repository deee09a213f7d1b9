//! Chunks on one base line, and what is raised or lowered beside them.

use super::chunks::{Chunk, Stand, chunks};
use super::spelling::spell;
use crate::content::Glyph;
use crate::model::{NoteKind, Rect};

/// A line: what stands on one base line, from left to right.
#[derive(Debug, Clone)]
pub(super) struct Line {
    /// Its base line, downwards, in the frame of its direction.
    pub(super) base: f64,
    /// The size of its largest letters.
    pub(super) size: f64,
    pub(super) segments: Vec<Segment>,
}

/// A part of a line between gaps as wide as those between columns.
#[derive(Debug, Clone, Default)]
pub(super) struct Segment {
    pub(super) x0: f64,
    pub(super) x1: f64,
    pub(super) text: String,
    /// How many characters it has.
    pub(super) length: usize,
    /// For each character or group drawn as one: its first byte, and where it stands on the page.
    pub(super) marks: Vec<(usize, Rect)>,
}

impl Segment {
    /// Parts it: it ends at one byte, and what begins at another is given back. What lies between is dropped.
    pub(super) fn split_off(&mut self, end: usize, next: usize) -> Self {
        let text = self.text.split_off(next);
        self.text.truncate(end);
        let from = self.marks.partition_point(|(at, _)| *at < next);
        let marks: Vec<(usize, Rect)> = self
            .marks
            .split_off(from)
            .into_iter()
            .map(|(at, rect)| (at - next, rect))
            .collect();
        self.marks.retain(|(at, _)| *at < end);
        let after = Self {
            x0: marks.first().map_or(self.x1, |(_, rect)| rect.x0),
            x1: self.x1,
            length: text.chars().count(),
            text,
            marks,
        };
        self.x1 = self.marks.last().map_or(self.x0, |(_, rect)| rect.x1);
        self.length = self.text.chars().count();
        after
    }

    /// Around all of it.
    pub(super) fn rect(&self) -> Rect {
        self.marks
            .iter()
            .map(|(_, rect)| *rect)
            .reduce(Rect::join)
            .unwrap_or_default()
    }
}

/// Chunks near one base line.
struct Row<'g> {
    base: f64,
    size: f64,
    /// From left to right.
    chunks: Vec<Chunk<'g>>,
}

/// Among how many lines above and below a raised or lowered figure looks for its own.
const REACH: usize = 6;

/// The lines that glyphs of one direction make, from top to bottom.
pub(super) fn lines_of(
    glyphs: &[&Glyph],
    page: usize,
    note: &mut impl FnMut(NoteKind, Rect, String),
) -> Vec<Line> {
    let mut rows = rows(chunks(glyphs));
    // Once for what stands beside level text, once for what stands beside that: the foot of a fraction.
    attach(&mut rows);
    attach(&mut rows);
    rows.into_iter()
        .filter(|row| !row.chunks.is_empty())
        .map(|row| Line {
            base: row.base,
            size: row.size,
            segments: spell(&row.chunks, page, note),
        })
        .filter(|line| !line.segments.is_empty())
        .collect()
}

/// Chunks sorted into rows.
fn rows(mut chunks: Vec<Chunk<'_>>) -> Vec<Row<'_>> {
    chunks.sort_by(|a, b| a.base.total_cmp(&b.base).then(a.x0.total_cmp(&b.x0)));
    let mut rows: Vec<Row<'_>> = Vec::new();
    for chunk in chunks {
        match rows.last_mut() {
            Some(row) if chunk.base - row.base <= 0.2 * chunk.size.min(row.size) => {
                row.size = row.size.max(chunk.size);
                row.chunks.push(chunk);
            }
            _ => rows.push(Row {
                base: chunk.base,
                size: chunk.size,
                chunks: vec![chunk],
            }),
        }
    }
    for row in &mut rows {
        row.chunks.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        drop_doubles(&mut row.chunks);
    }
    rows
}

/// Drops what is written twice in one place to look bold.
fn drop_doubles(chunks: &mut Vec<Chunk<'_>>) {
    chunks.dedup_by(|next, first| {
        (next.x0 - first.x0).abs() < 0.15 * first.size
            && (next.x1 - first.x1).abs() < 0.15 * first.size
            && next.text() == first.text()
    });
}

/// Moves small chunks to the row beside whose text they stand raised or lowered.
fn attach(rows: &mut [Row<'_>]) {
    let mut moves: Vec<(usize, usize, usize, Stand)> = Vec::new();
    for (at, row) in rows.iter().enumerate() {
        let near = at.saturating_sub(REACH)..(at + REACH + 1).min(rows.len());
        // What has found its line stays there.
        let level = |(_, chunk): &(usize, &Chunk<'_>)| chunk.stand == Stand::Level;
        for (index, chunk) in row.chunks.iter().enumerate().filter(level) {
            let home = near
                .clone()
                .filter(|other| *other != at)
                .filter_map(|other| {
                    let row = rows.get(other)?;
                    Some((other, stands_by(chunk, row)?, (row.base - chunk.base).abs()))
                })
                // The nearest: a figure lowered below one line is no raised one of the next.
                .min_by(|(.., a), (.., b)| a.total_cmp(b))
                .map(|(home, stand, _)| (home, stand));
            if let Some((home, stand)) = home {
                moves.push((at, index, home, stand));
            }
        }
    }
    // From the back, so that what is still to be moved keeps its index.
    let mut taken: Vec<(usize, Chunk<'_>)> = Vec::new();
    for (from, index, to, stand) in moves.into_iter().rev() {
        if let Some(row) = rows.get_mut(from)
            && index < row.chunks.len()
        {
            let mut chunk = row.chunks.remove(index);
            chunk.stand = stand;
            taken.push((to, chunk));
        }
    }
    let mut touched: Vec<usize> = taken.iter().map(|(to, _)| *to).collect();
    for (to, chunk) in taken {
        if let Some(row) = rows.get_mut(to) {
            row.chunks.push(chunk);
        }
    }
    touched.dedup();
    for at in touched {
        if let Some(row) = rows.get_mut(at) {
            row.chunks.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        }
    }
}

/// How a chunk stands to a row, when it is raised or lowered beside some of its text.
fn stands_by(chunk: &Chunk<'_>, row: &Row<'_>) -> Option<Stand> {
    if !chunk.is_smaller_than(row.size) || chunk.letters.len() > 8 {
        return None;
    }
    let raise = row.base - chunk.base;
    if raise.abs() > 0.85 * row.size {
        return None;
    }
    let after = row.chunks.partition_point(|other| other.x0 <= chunk.x0);
    let near = row
        .chunks
        .get(after.saturating_sub(2)..(after + 2).min(row.chunks.len()))?;
    near.iter().find_map(|other| {
        let level = other.stand == Stand::Level;
        let larger = chunk.is_smaller_than(other.size);
        let alike = !level && (other.size - chunk.size).abs() < 0.15 * chunk.size;
        if !(level && larger || alike) {
            return None;
        }
        let reach = if level { other.size } else { row.size };
        let behind = (chunk.x0 - other.x1) / reach;
        let before = (other.x0 - chunk.x1) / reach;
        let stacked = alike && chunk.x0 < other.x1 && other.x0 < chunk.x1;
        let touches = (-0.25..=0.4).contains(&behind) || (-0.2..=0.3).contains(&before) || stacked;
        let share = raise / reach;
        match () {
            () if !touches => None,
            () if (0.12..=0.8).contains(&share) => Some(Stand::Raised),
            () if (-0.6..=-0.05).contains(&share) => Some(Stand::Lowered),
            () => None,
        }
    })
}
