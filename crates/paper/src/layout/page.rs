//! A page written out as text.

use super::blocks::{Block, blocks, with_cells_parted};
use super::frames::with_frames;
use super::lines::{Line, Segment};
use super::{Measures, Sheet};
use crate::model::{Note, NoteKind, PagePlace, Rect};
use crate::numbers::whole;
use crate::text::Text;

/// What stands in the text for a figure. It holds no number, so that none is read out of it.
const FIGURE: &str = "[Figure: to be looked at on the page.]";
/// What stands in the text for the text of a scanned page.
const SCAN: &str = "[This page is a picture: its text must be supplied.]";
/// A vertical gap wider than this is a blank line, in lines.
const BLANK_LINE: f64 = 1.35;
/// How far above the base line the middle of small letters is, in sizes.
const MIDDLE: f64 = 0.25;
/// How far below its base line the line under a word runs, in sizes.
const UNDERLINE: f64 = 0.25;

/// Writes a page.
pub(super) fn write(
    sheet: &Sheet,
    number: usize,
    measures: Measures,
    text: &mut Text,
    notes: &mut Vec<Note>,
) {
    let mut writer = Writer {
        text,
        measures,
        left: measures
            .left
            .get((number + 1) % 2)
            .copied()
            .unwrap_or_default(),
        above: None,
        begun: false,
    };
    let mut flows = sheet.flows.iter();
    let first = flows.next().map(Vec::as_slice).unwrap_or_default();
    let mut lines = without_broken_words(first);
    if sheet.is_level {
        let pictures = &sheet.pictures;
        lines = with_frames(&lines, &pictures.uprights, &pictures.rules);
        lines = with_cells_parted(lines);
    }
    writer.flow(&lines, sheet, |words, rect| {
        notes.push(Note {
            kind: NoteKind::Columns,
            place: PagePlace {
                page: number,
                rect: rect.rounded(),
            },
            words,
        });
    });
    if sheet.pictures.is_scan {
        let whole = Rect {
            x0: 0.0,
            y0: 0.0,
            x1: sheet.size.width,
            y1: sheet.size.height,
        };
        writer.paragraph(SCAN, whole);
    }
    for lines in flows {
        let lines = without_broken_words(lines);
        let left = lines
            .iter()
            .flat_map(|line| &line.segments)
            .map(|segment| segment.x0)
            .fold(f64::INFINITY, f64::min);
        writer.left = left;
        writer.above = None;
        writer.blank_line();
        for line in &lines {
            writer.line(line, |segment| whole((segment.x0 - left) / measures.letter));
        }
    }
}

struct Writer<'t> {
    text: &'t mut Text,
    measures: Measures,
    left: f64,
    /// The base line and size of the line above.
    above: Option<(f64, f64)>,
    /// Whether the page has a line yet.
    begun: bool,
}

impl Writer<'_> {
    /// Lines with the rules and figures between them.
    fn flow(&mut self, lines: &[Line], sheet: &Sheet, mut note: impl FnMut(String, Rect)) {
        let pictures = &sheet.pictures;
        let mut marks: Vec<(f64, Mark)> = Vec::new();
        // Where the text runs across the page, rules run along it and say nothing of its lines.
        let rules = pictures
            .rules
            .iter()
            .filter(|_| sheet.is_level)
            .filter(|rule| !is_underline(**rule, lines));
        marks.extend(rules.map(|rule| (rule.y0, Mark::Rule(*rule))));
        let bottom = |figure: &Rect| if sheet.is_level { figure.y1 } else { f64::MAX };
        marks.extend(
            pictures
                .figures
                .iter()
                .map(|figure| (bottom(figure), Mark::Figure(*figure))),
        );
        marks.sort_by(|(a, _), (b, _)| a.total_cmp(b));
        let mut marks = marks.into_iter().peekable();
        for block in blocks(lines, self.measures.leading) {
            let held = lines.get(block.lines.clone()).unwrap_or_default();
            if block.is_running(lines) {
                self.marks_above(held.first(), &mut marks);
                let rect = held
                    .iter()
                    .flat_map(|line| &line.segments)
                    .map(Segment::rect)
                    .reduce(Rect::join);
                let words = "two columns of running text were read one after the other; see that no row belongs together";
                note(words.to_owned(), rect.unwrap_or_default());
                self.running(&block, held);
                continue;
            }
            let starts = block.starts(lines, self.left, self.measures.letter);
            let letter = self.measures.letter;
            for line in held {
                self.marks_above(Some(line), &mut marks);
                self.line(line, |segment| {
                    let column = block.column_of(segment);
                    let indent = whole((segment.x0 - block.left_of(column)) / letter);
                    starts.get(column).copied().unwrap_or(0) + indent
                });
            }
        }
        self.marks_above(None, &mut marks);
    }

    /// Rules and figures above a line, or all that are left.
    fn marks_above(
        &mut self,
        line: Option<&Line>,
        marks: &mut core::iter::Peekable<std::vec::IntoIter<(f64, Mark)>>,
    ) {
        let limit = line.map_or(f64::INFINITY, |line| line.base - 0.25 * line.size);
        let mut row: Vec<Rect> = Vec::new();
        while let Some((at, mark)) = marks.next_if(|(at, _)| *at < limit) {
            match mark {
                Mark::Rule(rule) => {
                    if row.first().is_some_and(|first| at - first.y0 > 4.0) {
                        self.rules(&core::mem::take(&mut row));
                    }
                    row.push(rule);
                }
                Mark::Figure(figure) => {
                    self.rules(&core::mem::take(&mut row));
                    self.paragraph(FIGURE, figure);
                }
            }
        }
        self.rules(&row);
    }

    /// Rules side by side, as strokes.
    fn rules(&mut self, row: &[Rect]) {
        let mut row: Vec<Rect> = row.to_vec();
        row.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        let letter = self.measures.letter;
        if let Some(first) = row.first() {
            // A rule stands for a line whose letters it runs through the middle of.
            let size = self.above.map_or(letter * 2.0, |(_, size)| size);
            self.gap_above(first.y0 + MIDDLE * size, size);
            self.above = Some((first.y0 + MIDDLE * size, size));
        }
        let mut written = false;
        let mut reached = f64::NEG_INFINITY;
        for rule in row {
            // The second of a double rule lies beneath the first.
            if rule.x1 <= reached + 1.0 {
                continue;
            }
            reached = reached.max(rule.x1);
            let start = whole((rule.x0 - self.left) / letter);
            let end = whole((rule.x1 - self.left) / letter).max(start + 4);
            self.text.blanks_to(start, 2, rule);
            self.text.add(&"-".repeat(end - start), rule);
            written = true;
        }
        if written {
            self.text.end_line();
            self.begun = true;
        }
    }

    /// Two columns of running text, one after the other.
    fn running(&mut self, block: &Block, lines: &[Line]) {
        for column in 0..block.width() {
            if column > 0 {
                self.blank_line();
                self.above = None;
            }
            let x0 = block.left_of(column);
            let start = whole((block.left_of(0) - self.left) / self.measures.letter);
            let letter = self.measures.letter;
            for line in lines {
                let segments: Vec<Segment> = line
                    .segments
                    .iter()
                    .filter(|segment| block.column_of(segment) == column)
                    .cloned()
                    .collect();
                if !segments.is_empty() {
                    let own = Line { segments, ..*line };
                    self.line(&own, |segment| start + whole((segment.x0 - x0) / letter));
                }
            }
        }
    }

    /// A line, its segments each at a column of characters; a blank line before it where the page leaves one.
    fn line(&mut self, line: &Line, at: impl Fn(&Segment) -> usize) {
        self.gap_above(line.base, line.size);
        for segment in &line.segments {
            self.text.blanks_to(at(segment), 2, segment.rect());
            write_segment(self.text, segment);
        }
        self.text.end_line();
        self.begun = true;
        self.above = Some((line.base, line.size));
    }

    /// A line of its own between blank lines.
    fn paragraph(&mut self, words: &str, rect: Rect) {
        self.blank_line();
        self.text.add(words, rect);
        self.text.end_line();
        self.begun = true;
        self.blank_line();
    }

    /// A blank line before what has this base line, where the page leaves one.
    fn gap_above(&mut self, base: f64, size: f64) {
        if let Some((above, above_size)) = self.above
            && base - above > BLANK_LINE * self.measures.leading * size.max(above_size)
        {
            self.blank_line();
        }
    }

    fn blank_line(&mut self) {
        if self.begun && !self.text.written.ends_with("\n\n") {
            self.text.end_line();
        }
    }
}

/// What stands between lines.
enum Mark {
    Rule(Rect),
    Figure(Rect),
}

fn write_segment(text: &mut Text, segment: &Segment) {
    let ends = segment
        .marks
        .iter()
        .skip(1)
        .map(|(at, _)| *at)
        .chain([segment.text.len()]);
    for ((start, rect), end) in segment.marks.iter().zip(ends) {
        match segment.text.get(*start..end) {
            Some("\u{ad}") => text.add("-", *rect),
            Some(" ") => text.blank(*rect),
            Some(words) => text.add(words, *rect),
            None => {}
        }
    }
}

/// Whether a rule is the line under a word, and not one between lines.
fn is_underline(rule: Rect, lines: &[Line]) -> bool {
    let after = lines.partition_point(|line| line.base <= rule.y1);
    let near = lines
        .get(after.saturating_sub(3)..after)
        .unwrap_or_default();
    near.iter().any(|line| {
        rule.y0 - line.base <= UNDERLINE * line.size
            && line
                .segments
                .iter()
                .any(|segment| segment.x0 - 2.0 <= rule.x0 && rule.x1 <= segment.x1 + 2.0)
    })
}

/// Lines with each word that a soft hyphen broke put together on its first line.
fn without_broken_words(lines: &[Line]) -> Vec<Line> {
    let mut lines = lines.to_vec();
    for at in 0..lines.len() {
        let Some((above, below)) = lines.split_at_mut_checked(at + 1) else {
            continue;
        };
        let (Some(line), Some(next)) = (above.last_mut(), below.first_mut()) else {
            continue;
        };
        for segment in line
            .segments
            .iter_mut()
            .filter(|segment| segment.text.ends_with('\u{ad}'))
        {
            let beneath = next
                .segments
                .iter_mut()
                .find(|other| other.x0 < segment.x1 && segment.x0 < other.x1);
            if let Some(beneath) = beneath {
                segment.take_first_word(beneath);
            }
        }
        next.segments.retain(|segment| !segment.text.is_empty());
    }
    lines.retain(|line| !line.segments.is_empty());
    lines
}

impl Segment {
    /// Puts the first word of another segment in the place of the soft hyphen that ends this one.
    fn take_first_word(&mut self, other: &mut Self) {
        let end = other.text.find(' ').unwrap_or(other.text.len());
        if !other.text.starts_with(char::is_alphanumeric) {
            return;
        }
        self.text.pop();
        self.length -= 1;
        self.marks.pop();
        let from = self.text.len();
        for (at, place) in other.marks.iter().take_while(|(at, _)| *at < end) {
            self.marks.push((from + at, *place));
        }
        let word: String = other.text.drain(..end).collect();
        let blanks = other.text.len() - other.text.trim_start().len();
        other.text.drain(..blanks);
        let gone = end + blanks;
        other.marks.retain(|(at, _)| *at >= gone);
        for (at, _) in &mut other.marks {
            *at -= gone;
        }
        other.length = other.text.chars().count();
        if let Some((_, first)) = other.marks.first() {
            other.x0 = other.x0.max(first.x0);
        }
        self.length += word.chars().count();
        self.text.push_str(&word);
    }
}
