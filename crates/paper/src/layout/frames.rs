//! Tables in frames: cells between uprights and level rules.

use core::ops::Range;

use super::lines::{Line, Segment};
use crate::model::Rect;

/// How near to one another uprights are one, in points.
const ONE_UPRIGHT: f64 = 3.0;
/// A gap this wide between words may hold an upright, in points.
const LEAST_GAP: f64 = 2.0;

/// Lines with the rows of framed tables written as a typist would: an upright between cells, and the lines of each cell from the top
/// of its row, wherever in the row they are set.
pub(super) fn with_frames(lines: &[Line], uprights: &[Rect], rules: &[Rect]) -> Vec<Line> {
    let mut written = Vec::with_capacity(lines.len());
    let mut at = 0;
    while at < lines.len() {
        let columns = lines
            .get(at)
            .map(|line| uprights_at(line, uprights))
            .unwrap_or_default();
        if columns.len() < 2 {
            written.extend(lines.get(at).cloned());
            at += 1;
            continue;
        }
        let end = row_end(lines, at, &columns, uprights, rules);
        written.extend(row(lines.get(at..end).unwrap_or_default(), &columns));
        at = end;
    }
    written
}

/// Where uprights cross a line, from left to right.
fn uprights_at(line: &Line, uprights: &[Rect]) -> Vec<f64> {
    let middle = line.base - 0.3 * line.size;
    let mut found: Vec<f64> = uprights
        .iter()
        .filter(|upright| (upright.y0..=upright.y1).contains(&middle))
        .map(|upright| f64::midpoint(upright.x0, upright.x1))
        .collect();
    found.sort_by(f64::total_cmp);
    found.dedup_by(|next, first| *next - *first < ONE_UPRIGHT);
    found
}

/// The line after the last of the row of cells that begins at a line: up to a rule, or to where the uprights are others.
fn row_end(
    lines: &[Line],
    start: usize,
    columns: &[f64],
    uprights: &[Rect],
    rules: &[Rect],
) -> usize {
    let (Some(left), Some(right)) = (columns.first(), columns.last()) else {
        return start + 1;
    };
    let is_parted = |range: Range<f64>| {
        rules.iter().any(|rule| {
            range.contains(&rule.y0)
                && rule.x0 < left + ONE_UPRIGHT
                && rule.x1 > right - ONE_UPRIGHT
        })
    };
    let mut end = start + 1;
    while let (Some(above), Some(line)) = (lines.get(end - 1), lines.get(end)) {
        let own = uprights_at(line, uprights);
        let alike = own.len() == columns.len()
            && own
                .iter()
                .zip(columns)
                .all(|(a, b)| (a - b).abs() < ONE_UPRIGHT);
        if !alike || is_parted(above.base - 0.3 * above.size..line.base - 0.3 * line.size) {
            break;
        }
        end += 1;
    }
    end
}

/// A row of cells: its first line holds the first line of each cell, and so on.
fn row(lines: &[Line], columns: &[f64]) -> Vec<Line> {
    let cells = columns.len().saturating_sub(1);
    let mut held: Vec<Vec<Segment>> = vec![Vec::new(); cells];
    let mut beside: Vec<Vec<Segment>> = vec![Vec::new(); lines.len()];
    for (line, beside) in lines.iter().zip(&mut beside) {
        let parts = line
            .segments
            .iter()
            .flat_map(|segment| parted(segment.clone(), columns));
        for part in parts {
            let middle = f64::midpoint(part.x0, part.x1);
            let cell = columns.partition_point(|x| *x < middle);
            match cell.checked_sub(1).and_then(|cell| held.get_mut(cell)) {
                Some(cell) => cell.push(part),
                None => beside.push(part),
            }
        }
    }
    let rows = held.iter().map(Vec::len).max().unwrap_or(0).max(1);
    let mut written = Vec::with_capacity(rows);
    for index in 0..rows {
        // Where a cell has more parts than the row has lines, the rest go on below its last.
        let Some(line) = lines.get(index).or(lines.last()) else {
            break;
        };
        let mut segments = Vec::with_capacity(2 * columns.len());
        for (column, x) in columns.iter().enumerate() {
            segments.push(upright(*x, line));
            segments.extend(held.get(column).and_then(|cell| cell.get(index)).cloned());
        }
        segments.extend(
            beside
                .get_mut(index)
                .map(core::mem::take)
                .unwrap_or_default(),
        );
        segments.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        written.push(Line { segments, ..*line });
    }
    written
}

/// A segment parted where an upright runs between its words.
fn parted(segment: Segment, columns: &[f64]) -> Vec<Segment> {
    let crossed = |blank: &Rect| {
        columns
            .iter()
            .any(|x| blank.x0 - 1.0 <= *x && *x <= blank.x1 + 1.0)
    };
    let mut parts = Vec::new();
    let mut rest = segment;
    while let Some((end, next)) = rest.marks.windows(2).find_map(|pair| match pair {
        [(end, blank), (next, _)] => (rest.text.get(*end..*next) == Some(" ")
            && blank.width() >= LEAST_GAP
            && crossed(blank))
        .then_some((*end, *next)),
        _ => None,
    }) {
        let after = rest.split_off(end, next);
        parts.push(core::mem::replace(&mut rest, after));
    }
    parts.push(rest);
    parts
}

/// An upright beside the words of a line.
fn upright(x: f64, line: &Line) -> Segment {
    let rect = Rect {
        x0: x - 0.5,
        y0: line.base - 0.75 * line.size,
        x1: x + 0.5,
        y1: line.base + 0.25 * line.size,
    };
    Segment {
        x0: rect.x0,
        x1: rect.x1,
        text: "|".to_owned(),
        length: 1,
        marks: vec![(0, rect)],
    }
}
