//! Notes whose marks stand behind words elsewhere: `(a) Max 2 in.`, `* In walls 6 in. thick.`, `Note 1: Both sides.` They are of no item, wherever they
//! stand: below an optional part one would fall away with it, though it may limit another.

use std::collections::{BTreeMap, BTreeSet};

use super::super::marker::{Close, marker};
use crate::layout::Line;

/// The signs that mark notes.
const SIGNS: &[char] = &[
    '*', '†', '‡', '§', '#', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹', '⁰', '⁽', '⁾',
];

/// More of them are lists, in which nothing is looked for.
const MOST_RUNS: usize = 400;

/// More lines in one column are a list.
const MOST_NOTES: usize = 60;

/// Lines that stand in one column, each begun with a mark.
struct Run<'l> {
    first: usize,
    /// The line behind it.
    end: usize,
    notes: Vec<(usize, Mark<'l>)>,
}

/// What a note begins with, as printed and without what closes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Mark<'l> {
    /// `*`
    Sign(&'l str),
    /// `(a)`, `(12)`
    Round(&'l str),
    /// `a)`, cited as `(a)`
    Open(&'l str),
    /// `Note 1:`
    Named(&'l str),
}

impl<'l> Mark<'l> {
    /// How many bytes of the line it takes.
    pub(super) const fn len(self) -> usize {
        match self {
            Self::Sign(mark) | Self::Round(mark) | Self::Open(mark) | Self::Named(mark) => {
                mark.len()
            }
        }
    }

    /// What tells it from the other marks.
    pub(super) fn label(self) -> &'l str {
        match self {
            Self::Sign(mark) | Self::Round(mark) | Self::Open(mark) | Self::Named(mark) => {
                mark.trim_matches(['(', ')', ':', '.', ' ', '-', '–', '—'])
            }
        }
    }

    /// How other words cite it.
    fn citation(self) -> String {
        match self {
            Self::Sign(mark) => mark.to_owned(),
            Self::Round(_) | Self::Open(_) => format!("({})", self.label()),
            Self::Named(_) => self.label().to_lowercase(),
        }
    }
}

/// The lines that notes begin with.
pub(super) fn begin(lines: &[Line<'_>]) -> Vec<usize> {
    let written = || lines.iter().filter(|line| !line.is_blank());
    let Some(margin) = written().map(|line| line.indent).min() else {
        return Vec::new();
    };
    let mut found = Vec::new();
    // What stands above a run, but for the notes before it.
    let mut above = Above::default();
    let mut at = 0;
    for _ in 0..MOST_RUNS {
        let Some(run) = run_from(lines, at) else {
            break;
        };
        above.extend(lines.get(at..run.first).unwrap_or_default());
        if run.is_of_notes(lines, &above, margin) {
            found.extend(run.notes.iter().map(|(at, _)| *at));
        } else {
            above.extend(lines.get(run.first..run.end).unwrap_or_default());
        }
        at = run.end;
    }
    found
}

/// The next run of marked lines.
fn run_from<'l>(lines: &[Line<'l>], from: usize) -> Option<Run<'l>> {
    let marked = |at: usize| lines.get(at).and_then(|line| mark_of(line.text));
    let first = (from..lines.len()).find(|at| marked(*at).is_some())?;
    let column = lines.get(first)?.indent;
    let mut notes = Vec::new();
    let mut end = first;
    let mut goes_on = false;
    for (at, line) in lines.iter().enumerate().skip(first) {
        let text = line.text.trim();
        match mark_of(text).filter(|_| line.indent == column) {
            Some(mark) => notes.push((at, mark)),
            None if line.is_blank() || line.indent > column => {}
            // The rest of a sentence may stand right below the mark.
            None if line.indent == column && goes_on && text.starts_with(char::is_lowercase) => {}
            None => break,
        }
        goes_on = !text.is_empty() && !text.ends_with('.');
        end = at + 1;
    }
    Some(Run { first, end, notes })
}

impl Run<'_> {
    /// Whether its lines are notes, by where their marks stand behind words above.
    fn is_of_notes(&self, lines: &[Line<'_>], above: &Above<'_>, margin: usize) -> bool {
        let at_margin = lines
            .get(self.first)
            .is_some_and(|line| line.indent == margin);
        let once = || {
            self.notes.iter().all(|(at, mark)| {
                let mut others = self.notes.iter().filter(|(other, _)| other != at);
                others.all(|(_, other)| other.citation() != mark.citation())
            })
        };
        let ends = lines.iter().skip(self.end).all(Line::is_blank);
        let all_cited = || {
            let mut lettered = self
                .notes
                .iter()
                .filter(|(_, mark)| !matches!(mark, Mark::Sign(_)));
            let mut any = self.notes.iter();
            lettered.all(|(_, mark)| above.cites(*mark, false))
                && any.any(|(_, mark)| above.cites(*mark, false))
        };
        let closes = || self.notes.iter().any(|(_, mark)| above.cites(*mark, true));
        let led = above
            .last
            .is_some_and(|line| line.trim_end().ends_with(':') && !heads_notes(line));
        let named = self
            .notes
            .iter()
            .all(|(_, mark)| matches!(mark, Mark::Named(_)));
        let open = self
            .notes
            .iter()
            .any(|(_, mark)| matches!(mark, Mark::Open(_)));
        // What a sign means is said of all that bear it: no part falls away with it, and it is asked of the item that it stands in.
        let explains = self.notes.iter().all(|(at, mark)| {
            let line = lines.get(*at).map_or("", |line| line.text);
            matches!(mark, Mark::Sign(_)) && explains_sign(line)
        });
        self.notes.len() <= MOST_NOTES
            && above.lines > 0
            && once()
            && (ends && at_margin && !open && all_cited()
                || at_margin && named
                || !led && !explains && (at_margin || !open) && closes())
    }
}

/// Whether a line says what a sign means: `* Items so marked carry the label`.
fn explains_sign(line: &str) -> bool {
    let words = line.trim_start().trim_start_matches(SIGNS).trim_start();
    let lower = words.to_lowercase();
    [
        "items so marked",
        "items marked",
        "bears ",
        "bearing ",
        "marked ",
    ]
    .iter()
    .any(|opening| lower.starts_with(opening))
}

/// Whether a line heads notes.
pub(super) fn heads_notes(line: &str) -> bool {
    let line = line.trim().trim_end_matches(':').to_lowercase();
    matches!(line.as_str(), "note" | "notes" | "footnotes" | "remarks")
}

/// The mark that a line begins with.
pub(super) fn mark_of(line: &str) -> Option<Mark<'_>> {
    const LONGEST: usize = 2;
    let line = line.trim_start();
    if let Some(named) = named_mark(line) {
        return Some(named);
    }
    if is_signed_marker(line) {
        return None;
    }
    let (mark, rest) = line.split_once(' ')?;
    let is_short = |label: &str| {
        (1..=LONGEST).contains(&label.len()) && label.chars().all(|c| c.is_ascii_alphanumeric())
    };
    let found = if !mark.is_empty() && mark.chars().all(|c| SIGNS.contains(&c)) {
        Mark::Sign(mark)
    } else {
        let label = mark.strip_suffix(')')?;
        match label.strip_prefix('(') {
            Some(label) => is_short(label).then_some(Mark::Round(mark))?,
            None => is_short(label).then_some(Mark::Open(mark))?,
        }
    };
    (!rest.trim().is_empty()).then_some(found)
}

/// Whether a line begins an item with the sign of a note before its number: `** 1A. Strap`.
fn is_signed_marker(line: &str) -> bool {
    line.starts_with(SIGNS) && marker(line).is_some()
}

/// `Note 1 - `, `NOTE A – `
fn dashed_mark(line: &str) -> Option<Mark<'_>> {
    let (mark, rest) = line.split_once(' ').and_then(|(_, rest)| {
        let (label, rest) = rest.split_once(' ')?;
        let dash = rest
            .chars()
            .next()
            .filter(|c| matches!(c, '-' | '–' | '—'))?;
        let rest = rest.get(dash.len_utf8()..)?;
        let short = label.len() <= 2 && label.chars().all(|c| c.is_ascii_alphanumeric());
        let mark = line.get(..line.len() - rest.len())?;
        (short && rest.starts_with(' ')).then_some((mark, rest))
    })?;
    (!rest.trim().is_empty()).then_some(Mark::Named(mark))
}

/// `Note 1:`, `NOTE A.`
fn named_mark(line: &str) -> Option<Mark<'_>> {
    const NAME: &str = "note ";
    let named = line
        .get(..NAME.len())
        .is_some_and(|name| name.eq_ignore_ascii_case(NAME));
    if let Some(dashed) = dashed_mark(line).filter(|_| named) {
        return Some(dashed);
    }
    let own = marker(line).filter(|_| named)?;
    let closed = matches!(own.close, Close::Colon | Close::Dot);
    let mark = line.get(..own.len)?.trim_end();
    (closed && own.parts.len() == 1 && own.len < line.len()).then_some(Mark::Named(mark))
}

/// How a letter or number in brackets stands in the words above.
#[derive(Debug, Clone, Copy, Default)]
struct Stands {
    behind_words: bool,
    /// Where it closes what it stands behind: `two (2) layers` cites no note.
    closing: bool,
    /// As the number of a part: `see (a)`, `Item 3(a)`.
    as_part: bool,
}

/// The lines above a run of marked lines, and the marks that stand in them; each line is looked through once.
#[derive(Debug, Default)]
struct Above<'l> {
    lines: usize,
    /// The last that isn't blank.
    last: Option<&'l str>,
    signs: BTreeSet<&'l str>,
    round: BTreeMap<&'l str, Stands>,
    named: BTreeSet<String>,
}

impl<'l> Above<'l> {
    fn extend(&mut self, lines: &[Line<'l>]) {
        for line in lines {
            self.lines += 1;
            if !line.is_blank() {
                self.last = Some(line.text);
            }
            self.add_signs(line.text);
            self.add_round(line.text);
            self.add_named(line.text);
        }
    }

    /// Whether a mark stands behind words, and nowhere as the number of a part. It may have to close what it stands behind.
    fn cites(&self, mark: Mark<'_>, closing: bool) -> bool {
        match mark {
            Mark::Sign(sign) => self.signs.contains(sign),
            Mark::Named(_) => self.named.contains(&mark.label().to_lowercase()),
            Mark::Round(_) | Mark::Open(_) => {
                let stands = self.round.get(mark.label()).copied().unwrap_or_default();
                let cited = if closing {
                    stands.closing
                } else {
                    stands.behind_words
                };
                cited && !stands.as_part
            }
        }
    }

    /// `depth*`
    fn add_signs(&mut self, text: &'l str) {
        let mut from = 0;
        while let Some(at) = text.get(from..).and_then(|rest| rest.find(SIGNS)) {
            let start = from + at;
            let run = text.get(start..).unwrap_or_default();
            let run = run.len() - run.trim_start_matches(SIGNS).len();
            let before = text.get(..start).unwrap_or_default();
            let sign = text.get(start..start + run);
            // A raised figure that a raised bracket closes is a mark wherever it stands behind words: `material ¹⁾`.
            let closed = !before.trim().is_empty() && sign.is_some_and(|sign| sign.ends_with('⁾'));
            if closed || before.ends_with(|c: char| !c.is_whitespace()) {
                self.signs.extend(sign);
            }
            from = start + run;
        }
    }

    /// `depth (a)`
    fn add_round(&mut self, text: &'l str) {
        for (at, _) in text.match_indices('(') {
            let inside = text.get(at + 1..).unwrap_or_default();
            let Some(label) = short_label(inside) else {
                continue;
            };
            let before = text.get(..at).unwrap_or_default();
            let behind = inside.get(label.len() + 1..).unwrap_or_default();
            let stands = self.round.entry(label).or_default();
            if is_number_of_part(before) {
                stands.as_part = true;
            } else {
                let attached = before.ends_with(|c: char| !c.is_whitespace());
                stands.behind_words = true;
                stands.closing |= attached || closes_words(behind);
            }
        }
    }

    /// `as in Note 1`
    fn add_named(&mut self, text: &str) {
        const NAME: &str = "note ";
        let lower = text.to_lowercase();
        for (at, name) in lower.match_indices(NAME).filter(|(at, _)| *at > 0) {
            let behind = lower.get(at + name.len()..).unwrap_or_default();
            let label = behind.split(|c: char| !c.is_alphanumeric()).next();
            let label = label.filter(|label| !label.is_empty());
            self.named
                .extend(label.map(|label| format!("{name}{label}")));
        }
    }
}

/// The letters or digits that words begin with and a bracket closes, if few.
fn short_label(words: &str) -> Option<&str> {
    const LONGEST: usize = 2;
    let end = words.find(|c: char| !c.is_ascii_alphanumeric())?;
    let closed = words.get(end..)?.starts_with(')');
    ((1..=LONGEST).contains(&end) && closed).then(|| words.get(..end))?
}

/// Whether a letter in brackets behind words is the number of a part.
fn is_number_of_part(before: &str) -> bool {
    const LEADS: &[&str] = &[
        "in",
        "item",
        "items",
        "of",
        "and",
        "or",
        "to",
        "see",
        "per",
        "with",
        "under",
        "by",
        "option",
        "options",
        "method",
        "detail",
        "type",
        "configuration",
        "system",
        "alternate",
        "paragraph",
        "clause",
        "section",
        "part",
        "step",
    ];
    let word = before.rsplit([' ', '(']).find(|word| !word.is_empty());
    let word = word.unwrap_or_default().to_lowercase();
    before.trim().is_empty()
        || LEADS.contains(&word.as_str())
        || before.ends_with(|c: char| c.is_ascii_digit())
}

/// Whether words end before a place.
fn closes_words(behind: &str) -> bool {
    let behind = behind.trim_start();
    behind.is_empty() || behind.starts_with([',', ';', '.', ')', ':', '-', '–', '—', '('])
}
