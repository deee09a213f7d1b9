//! Lines that share columns.

use core::ops::Range;

use super::lines::{Line, Segment};
use crate::numbers::{count, whole};

/// Lines that share columns.
#[derive(Debug, Clone)]
pub(super) struct Block {
    /// Which lines.
    pub(super) lines: Range<usize>,
    /// From left to right: where each column begins and ends on the page, in points.
    columns: Vec<(f64, f64)>,
}

/// How many lines running columns have at least.
const FEWEST_LINES: usize = 6;
/// How long the lines of running text are at least, in characters.
const SHORTEST: f64 = 24.0;
/// How much of a column's width its lines fill at least, on the whole.
const FILLED: f64 = 0.7;
/// Vertical gaps wider than this part blocks, in lines.
const PART: f64 = 2.6;

/// Sorts lines into blocks.
pub(super) fn blocks(lines: &[Line], leading: f64) -> Vec<Block> {
    let mut blocks: Vec<Block> = Vec::new();
    for (index, line) in lines.iter().enumerate() {
        let near = index
            .checked_sub(1)
            .and_then(|above| lines.get(above))
            .is_some_and(|above| {
                line.base - above.base < PART * leading * line.size.max(above.size)
            });
        let joined = blocks
            .last()
            .filter(|_| near)
            .and_then(|block| block.with(&line.segments));
        match (joined, blocks.last_mut()) {
            (Some(columns), Some(block)) => {
                block.columns = columns;
                block.lines.end = index + 1;
            }
            _ => blocks.push(Block {
                lines: index..index + 1,
                columns: line
                    .segments
                    .iter()
                    .map(|segment| (segment.x0, segment.x1))
                    .collect(),
            }),
        }
    }
    blocks
}

/// A gap this wide may part the cells of a table, in sizes, where other lines have a column begin after it.
const CELL_GAP: f64 = 0.55;
/// How near to one another the left edges of a column's cells are, in points.
const ONE_EDGE: f64 = 1.5;
/// How many lines above and below tell where columns begin.
const ROWS_NEAR: usize = 3;

/// Parts cells that stand close together where lines nearby have a column begin.
pub(super) fn with_cells_parted(mut lines: Vec<Line>) -> Vec<Line> {
    // Twice, so that what one line has learnt from its neighbours goes on to theirs.
    for _ in 0..2 {
        for at in 0..lines.len() {
            let near = at.saturating_sub(ROWS_NEAR)..(at + ROWS_NEAR + 1).min(lines.len());
            let edges: Vec<f64> = lines
                .get(near)
                .unwrap_or_default()
                .iter()
                .flat_map(|line| line.segments.iter().skip(1).map(|segment| segment.x0))
                .collect();
            if let Some(line) = lines.get_mut(at).filter(|_| !edges.is_empty()) {
                let gap = CELL_GAP * line.size;
                let segments = core::mem::take(&mut line.segments);
                line.segments = segments
                    .into_iter()
                    .flat_map(|segment| parted(segment, gap, &edges))
                    .collect();
            }
        }
    }
    lines
}

/// A segment parted at each gap after which a column begins.
fn parted(segment: Segment, gap: f64, edges: &[f64]) -> Vec<Segment> {
    let begins = |x: f64| edges.iter().any(|edge| (edge - x).abs() <= ONE_EDGE);
    let mut parts = Vec::new();
    let mut rest = segment;
    while let Some((end, next)) = rest.marks.windows(2).find_map(|pair| match pair {
        [(end, blank), (next, after)] => {
            (rest.text.get(*end..*next) == Some(" ") && blank.width() >= gap && begins(after.x0))
                .then_some((*end, *next))
        }
        _ => None,
    }) {
        let after = rest.split_off(end, next);
        parts.push(core::mem::replace(&mut rest, after));
    }
    parts.push(rest);
    parts
}

impl Block {
    /// Its columns with the segments of one more line; none when those don't fit into columns.
    fn with(&self, segments: &[Segment]) -> Option<Vec<(f64, f64)>> {
        // Single lines make no columns: each stands for itself.
        if self.columns.len() < 2 && segments.len() < 2 {
            return None;
        }
        let mut columns = self.columns.clone();
        let mut taken: Vec<usize> = Vec::new();
        for segment in segments {
            let over = |(x0, x1): &(f64, f64)| segment.x0 < *x1 && *x0 < segment.x1;
            let mut touched = columns
                .iter()
                .enumerate()
                .filter(|(_, column)| over(column));
            let first = touched.next().map(|(at, _)| at);
            if touched.next().is_some() {
                return None;
            }
            let at = if let Some(at) = first {
                at
            } else {
                let at = columns.partition_point(|(x0, _)| *x0 < segment.x0);
                columns.insert(at, (segment.x0, segment.x1));
                for held in &mut taken {
                    *held += usize::from(*held >= at);
                }
                at
            };
            if taken.contains(&at) {
                return None;
            }
            taken.push(at);
            if let Some(column) = columns.get_mut(at) {
                *column = (column.0.min(segment.x0), column.1.max(segment.x1));
            }
        }
        // A column that has grown into the next is none.
        let apart = columns.windows(2).all(|pair| match pair {
            [a, b] => a.1 <= b.0,
            _ => true,
        });
        apart.then_some(columns)
    }

    /// Which of the columns a segment stands in.
    pub(super) fn column_of(&self, segment: &Segment) -> usize {
        self.columns
            .iter()
            .position(|(x0, x1)| segment.x0 < *x1 + 0.01 && *x0 < segment.x1 + 0.01)
            .unwrap_or(0)
    }

    /// How many columns there are.
    pub(super) const fn width(&self) -> usize {
        self.columns.len()
    }

    /// Where a column begins on the page.
    pub(super) fn left_of(&self, column: usize) -> f64 {
        self.columns.get(column).map_or(0.0, |(x0, _)| *x0)
    }

    /// In which column of characters each column begins: where it would by its place, or further on where what stands before takes
    /// more room.
    pub(super) fn starts(&self, lines: &[Line], left: f64, letter: f64) -> Vec<usize> {
        let mut widths = vec![0_usize; self.columns.len()];
        for line in lines.get(self.lines.clone()).unwrap_or_default() {
            for segment in &line.segments {
                let column = self.column_of(segment);
                let indent = whole((segment.x0 - self.left_of(column)) / letter);
                if let Some(width) = widths.get_mut(column) {
                    *width = (*width).max(indent + segment.length);
                }
            }
        }
        let mut starts = Vec::with_capacity(widths.len());
        let mut least = 0;
        for ((x0, _), width) in self.columns.iter().zip(widths) {
            let start = whole((x0 - left) / letter).max(least);
            starts.push(start);
            least = start + width + 2;
        }
        starts
    }

    /// Whether it is columns of running text, each to be read from top to bottom before the next.
    pub(super) fn is_running(&self, lines: &[Line]) -> bool {
        if self.columns.len() != 2 {
            return false;
        }
        (0..self.columns.len()).all(|column| {
            let (x0, x1) = self.columns.get(column).copied().unwrap_or_default();
            let segments: Vec<&Segment> = lines
                .get(self.lines.clone())
                .unwrap_or_default()
                .iter()
                .flat_map(|line| &line.segments)
                .filter(|segment| self.column_of(segment) == column)
                .collect();
            let lines = count(segments.len().max(1));
            let length = segments
                .iter()
                .map(|segment| count(segment.length))
                .sum::<f64>()
                / lines;
            let filled = segments
                .iter()
                .map(|segment| segment.x1 - segment.x0)
                .sum::<f64>()
                / lines;
            segments.len() >= FEWEST_LINES && length >= SHORTEST && filled >= FILLED * (x1 - x0)
        })
    }
}
