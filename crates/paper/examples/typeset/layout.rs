//! From the text of a listing to lines on pages.

use crate::face::{Face, Widths};

/// How a listing is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Manner {
    /// One column, head and foot between rules.
    Plain,
    /// The statements at the head side by side.
    Block,
    /// Justified, words broken, powers raised, fractions built.
    Fine,
}

impl Manner {
    pub(crate) fn named(name: &str) -> Option<Self> {
        match name {
            "plain" => Some(Self::Plain),
            "block" => Some(Self::Block),
            "fine" => Some(Self::Fine),
            _ => None,
        }
    }

    pub(crate) const fn face(self) -> Face {
        match self {
            Self::Plain | Self::Fine => Face::Times,
            Self::Block => Face::Helvetica,
        }
    }

    pub(crate) const fn size(self) -> f64 {
        match self {
            Self::Plain => 11.0,
            Self::Block => 9.5,
            Self::Fine => 11.5,
        }
    }
}

/// Width and height of a sheet, and its margins, in points.
pub(crate) const SHEET: (f64, f64) = (612.0, 792.0);
const LEFT: f64 = 66.0;
const RIGHT: f64 = 546.0;
const TOP: f64 = 60.0;
/// Characters to a full line of the text.
const FULL: f64 = 78.0;
/// A line of the text at least this long goes on in the next.
const GOES_ON: usize = 60;

/// What is put on a page.
pub(crate) enum Mark {
    /// Words, their left end and base line.
    Words {
        text: String,
        x: f64,
        y: f64,
        size: f64,
    },
    /// A level rule.
    Rule { x0: f64, x1: f64, y: f64 },
}

/// The pages of a listing.
pub(crate) fn pages(text: &str, manner: Manner) -> Vec<Vec<Mark>> {
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    let mut pages = Vec::new();
    let mut page = Vec::new();
    for line in lines {
        page.push(line);
        if is_foot(line) {
            pages.push(core::mem::take(&mut page));
        }
    }
    if page.iter().any(|line| !line.is_empty()) {
        pages.push(page);
    }
    pages
        .iter()
        .map(|lines| Setter::new(manner).page(lines))
        .collect()
}

/// Whether a line ends a page: it counts the page.
fn is_foot(line: &str) -> bool {
    let line = line.trim();
    let of = line
        .rsplit_once("Page ")
        .is_some_and(|(_, count)| count.contains(" of "));
    let leaf = line.starts_with("Leaf ") && line.ends_with('-');
    let slashed = line.rsplit_once("   ").is_some_and(|(_, count)| {
        count
            .split_once('/')
            .is_some_and(|(a, b)| a.parse::<u8>().is_ok() && b.parse::<u8>().is_ok())
    });
    of || leaf || slashed
}

fn is_rule(line: &str) -> bool {
    let line = line.trim();
    line.len() >= 4 && line.chars().all(|c| matches!(c, '-' | '=' | ' '))
}

struct Setter {
    manner: Manner,
    right: f64,
    widths: Widths,
    size: f64,
    y: f64,
    marks: Vec<Mark>,
}

impl Setter {
    fn new(manner: Manner) -> Self {
        Self {
            manner,
            // A narrow column, so that words are broken.
            right: if manner == Manner::Fine {
                RIGHT - 110.0
            } else {
                RIGHT
            },
            widths: manner.face().widths(),
            size: manner.size(),
            y: TOP,
            marks: Vec::new(),
        }
    }

    fn page(mut self, lines: &[&str]) -> Vec<Mark> {
        let mut at = 0;
        while let Some(line) = lines.get(at) {
            let rest = lines.get(at..).unwrap_or_default();
            let block = statements(rest);
            if line.is_empty() {
                self.y += 0.75 * self.leading();
                at += 1;
            } else if is_rule(line) {
                self.rule(line);
                at += 1;
            } else if self.manner == Manner::Block && block.len() > 3 {
                self.side_by_side(&block);
                at += block.len();
            } else if is_spaced(line) || is_centred(line) {
                self.spaced(line);
                at += 1;
            } else {
                at += self.paragraph(rest);
            }
        }
        self.marks
    }

    fn leading(&self) -> f64 {
        1.22 * self.size
    }

    /// Where a column of characters is on the sheet.
    fn column(column: usize) -> f64 {
        LEFT + (RIGHT - LEFT) / FULL * f64::from(u16::try_from(column).unwrap_or(u16::MAX))
    }

    fn rule(&mut self, line: &str) {
        let y = self.y - 0.25 * self.size;
        for (column, part) in parts(line, "  ") {
            let x1 = Self::column(column + part.len());
            self.marks.push(Mark::Rule {
                x0: Self::column(column),
                x1: x1.min(RIGHT),
                y,
            });
        }
        self.y += 0.6 * self.leading();
    }

    /// A line whose parts keep their columns; a part that ends at the right edge ends there, and one in the middle stays there.
    fn spaced(&mut self, line: &str) {
        let parts = parts(line, "   ");
        let alone = parts.len() == 1;
        for (column, part) in parts {
            let width = self.widths.of(part, self.size);
            let end = column + part.chars().count();
            let x = if alone && is_centred(line) {
                f64::midpoint(LEFT, RIGHT) - width / 2.0
            } else if column > 30 && end >= 76 {
                RIGHT - width
            } else {
                Self::column(column)
            };
            self.words(part, x, self.size);
        }
        self.y += self.leading();
    }

    /// Statements side by side: the first half on the left.
    fn side_by_side(&mut self, block: &[&str]) {
        let half = block.len().div_ceil(2);
        let middle = f64::midpoint(LEFT, RIGHT) + 20.0;
        let (first, second) = block.split_at(half);
        for row in 0..half {
            for (line, x) in [(first.get(row), LEFT), (second.get(row), middle)] {
                if let Some((label, value)) = line.and_then(|line| line.split_once(':')) {
                    let text = format!("{label}: {}", value.trim());
                    self.words(&text, x, self.size);
                }
            }
            self.y += self.leading();
        }
    }

    /// A paragraph, its lines broken anew. How many lines of the text it takes.
    fn paragraph(&mut self, lines: &[&str]) -> usize {
        let indent = |line: &str| line.len() - line.trim_start().len();
        let mut taken = 1;
        while let (Some(above), Some(below)) = (lines.get(taken - 1), lines.get(taken))
            && above.chars().count() >= GOES_ON
            && !below.is_empty()
            && !is_rule(below)
            && !is_spaced(below)
            && !below.starts_with('[')
        {
            taken += 1;
        }
        let held = lines.get(..taken).unwrap_or_default();
        let first = held.first().map_or(0, |line| indent(line));
        let others = held.get(1).map_or(first, |line| indent(line));
        let mut text = String::new();
        for line in held {
            let line = line.trim();
            let broken = text.ends_with('-')
                && text.chars().rev().nth(1).is_some_and(char::is_lowercase)
                && line.starts_with(char::is_lowercase);
            if broken {
                text.pop();
            } else if !text.is_empty() && !text.ends_with('-') {
                text.push(' ');
            }
            text.push_str(line);
        }
        // A marker keeps its distance from its words.
        let (marker, words) = match text.split_once("  ") {
            Some((marker, words)) if marker.len() <= 6 => {
                (Some(marker.to_owned()), words.trim().to_owned())
            }
            _ => (None, text),
        };
        if let Some(marker) = &marker {
            self.words(marker, Self::column(first), self.size);
        }
        let start = match &marker {
            Some(marker) => others.max(first + marker.len() + 2),
            None => first,
        };
        self.broken(&words, Self::column(start), Self::column(others));
        taken
    }

    /// Words broken into lines.
    fn broken(&mut self, text: &str, first: f64, others: f64) {
        let mut line: Vec<String> = Vec::new();
        let mut left = first;
        let words: Vec<&str> = text.split_whitespace().collect();
        for word in words {
            let mut word = word.to_owned();
            loop {
                let mut with = line.clone();
                with.push(word.clone());
                let fits = self.widths.of(&with.join(" "), self.size) <= self.right - left;
                if fits || line.is_empty() {
                    line = with;
                    break;
                }
                let room = self.right - left - self.widths.of(&(line.join(" ") + " "), self.size);
                let rest = self.part_that_fits(&word, room).map(|at| {
                    let rest = word.split_off(at);
                    line.push(format!("{word}-"));
                    rest
                });
                self.line(&line, left, self.manner == Manner::Fine);
                line.clear();
                left = others;
                if let Some(rest) = rest {
                    word = rest;
                }
            }
        }
        self.line(&line, left, false);
    }

    /// Where a word may be broken so that its first part fits: before a consonant and a vowel, letters on both sides.
    fn part_that_fits(&self, word: &str, room: f64) -> Option<usize> {
        if self.manner != Manner::Fine || !word.bytes().all(|b| b.is_ascii_lowercase()) {
            return None;
        }
        let vowel = |at: usize| word.get(at..=at).is_some_and(|c| "aeiouy".contains(c));
        (2..word.len().saturating_sub(2))
            .rev()
            .filter(|at| !vowel(*at) && vowel(at + 1))
            .find(|at| {
                self.widths.of(
                    &format!("{}-", word.get(..*at).unwrap_or_default()),
                    self.size,
                ) <= room
            })
    }

    fn line(&mut self, words: &[String], left: f64, justified: bool) {
        let natural: f64 = words.iter().map(|word| self.width(word)).sum();
        let gaps = f64::from(u16::try_from(words.len().saturating_sub(1)).unwrap_or(u16::MAX));
        let blank = self.widths.of(" ", self.size);
        let gap = if justified && gaps > 0.0 {
            ((self.right - left - natural) / gaps).min(2.5 * blank)
        } else {
            blank
        };
        let mut x = left;
        let mut run = String::new();
        let mut start = x;
        for word in words {
            if justified {
                self.words(word, x, self.size);
            } else {
                if run.is_empty() {
                    start = x;
                } else {
                    run.push(' ');
                }
                run.push_str(word);
            }
            x += self.width(word) + gap;
        }
        if !justified {
            self.words(&run, start, self.size);
        }
        self.y += self.leading();
    }

    fn width(&self, text: &str) -> f64 {
        self.pieces(text)
            .iter()
            .map(|(piece, size, _)| self.widths.of(piece, *size))
            .sum()
    }

    fn words(&mut self, text: &str, x: f64, _size: f64) {
        let mut x = x;
        for (piece, size, rise) in self.pieces(text) {
            let width = self.widths.of(&piece, size);
            self.marks.push(Mark::Words {
                text: piece,
                x,
                y: self.y - rise,
                size,
            });
            x += width;
        }
    }

    /// Words as they are set: their pieces, how large each is, and how far it is raised.
    fn pieces(&self, text: &str) -> Vec<(String, f64, f64)> {
        let level = |text: &str| (text.to_owned(), self.size, 0.0);
        if self.manner != Manner::Fine {
            return vec![level(text)];
        }
        let small = 0.62 * self.size;
        let mut pieces: Vec<(String, f64, f64)> = Vec::new();
        let mut rest = text;
        while let Some(at) = rest.find('/') {
            let (before, after) = rest.split_at(at);
            let after = after.get(1..).unwrap_or_default();
            let top = before.len() - before.trim_end_matches(|c: char| c.is_ascii_digit()).len();
            let foot = after.len() - after.trim_start_matches(|c: char| c.is_ascii_digit()).len();
            let (head, numerator) = before.split_at(before.len() - top);
            if top > 0 && foot > 0 {
                let (denominator, tail) = after.split_at(foot);
                pieces.push(level(head));
                pieces.push((numerator.to_owned(), small, 0.36 * self.size));
                pieces.push(level("/"));
                pieces.push((denominator.to_owned(), small, -0.08 * self.size));
                rest = tail;
            } else if let Some(tail) = after.strip_prefix("m3") {
                pieces.push(level(&format!("{before}/m")));
                pieces.push(("3".to_owned(), small, 0.36 * self.size));
                rest = tail;
            } else {
                pieces.push(level(&format!("{before}/")));
                rest = after;
            }
        }
        pieces.push(level(rest));
        pieces.retain(|(piece, ..)| !piece.is_empty());
        pieces
    }
}

/// The parts of a line between gaps, each with the column that it begins in.
fn parts<'l>(line: &'l str, gap: &str) -> Vec<(usize, &'l str)> {
    let mut found = Vec::new();
    let mut at = 0;
    for part in line.split(gap) {
        let blanks = part.len() - part.trim_start().len();
        if !part.trim().is_empty() {
            let column = line.get(..at + blanks).unwrap_or_default().chars().count();
            found.push((column, part.trim()));
        }
        at += part.len() + gap.len();
    }
    found
}

fn is_spaced(line: &str) -> bool {
    parts(line, "   ").len() > 1
}

fn is_centred(line: &str) -> bool {
    let indent = line.len() - line.trim_start().len();
    let middle = indent + line.trim().chars().count() / 2;
    indent >= 3 && (36..=42).contains(&middle) && line.trim().len() < 66
}

/// The statements that begin here, `Label:   value`, one below the other.
fn statements<'l>(lines: &[&'l str]) -> Vec<&'l str> {
    let is_one = |line: &&&str| {
        line.split_once(':').is_some_and(|(label, value)| {
            label.len() < 30 && !label.contains('.') && value.starts_with("  ")
        })
    };
    lines.iter().take_while(is_one).copied().collect()
}
