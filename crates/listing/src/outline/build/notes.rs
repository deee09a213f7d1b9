//! Notes whose marks stand behind words elsewhere: `(a) Max 2 in.`, `* In walls 6 in. thick.`, `Note 1: Both sides.` They are of no item, wherever they
//! stand: below an optional part one would fall away with it, though it may limit another.

use super::super::marker::{Close, marker};
use crate::layout::Line;

/// The signs that mark notes.
const SIGNS: &[char] = &[
    '*', '†', '‡', '§', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹', '⁰',
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
                mark.trim_matches(['(', ')', ':', '.', ' '])
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
    let mut above: Vec<&Line<'_>> = Vec::new();
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
    fn is_of_notes(&self, lines: &[Line<'_>], above: &[&Line<'_>], margin: usize) -> bool {
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
            lettered.all(|(_, mark)| is_cited(above, *mark, false))
                && any.any(|(_, mark)| is_cited(above, *mark, false))
        };
        let closes = || {
            self.notes
                .iter()
                .any(|(_, mark)| is_cited(above, *mark, true))
        };
        let led = above
            .iter()
            .rev()
            .find(|line| !line.is_blank())
            .is_some_and(|line| line.text.trim_end().ends_with(':') && !heads_notes(line.text));
        let named = self
            .notes
            .iter()
            .all(|(_, mark)| matches!(mark, Mark::Named(_)));
        let open = self
            .notes
            .iter()
            .any(|(_, mark)| matches!(mark, Mark::Open(_)));
        self.notes.len() <= MOST_NOTES
            && !above.is_empty()
            && once()
            && (ends && at_margin && !open && all_cited()
                || at_margin && named
                || !led && (at_margin || !open) && closes())
    }
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

/// `Note 1:`, `NOTE A.`
fn named_mark(line: &str) -> Option<Mark<'_>> {
    const NAME: &str = "note ";
    let named = line
        .get(..NAME.len())
        .is_some_and(|name| name.eq_ignore_ascii_case(NAME));
    let own = marker(line).filter(|_| named)?;
    let closed = matches!(own.close, Close::Colon | Close::Dot);
    let mark = line.get(..own.len)?.trim_end();
    (closed && own.parts.len() == 1 && own.len < line.len()).then_some(Mark::Named(mark))
}

/// Whether a mark stands behind words, and nowhere as the number of a part: `see (a)`, `Item 3(a)`. It may have to close what it stands behind: `two (2)
/// layers` cites no note.
fn is_cited(above: &[&Line<'_>], mark: Mark<'_>, closing: bool) -> bool {
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
    let citation = mark.citation();
    let mut cited = false;
    for line in above {
        let text = line.text;
        if let Mark::Named(_) = mark {
            let lower = text.to_lowercase();
            cited |= lower.match_indices(&citation).any(|(at, _)| {
                let behind = lower.get(at + citation.len()..).unwrap_or_default();
                at > 0 && !behind.starts_with(char::is_alphanumeric)
            });
            continue;
        }
        for (at, _) in text.match_indices(&citation) {
            let before = text.get(..at).unwrap_or_default();
            let behind = text.get(at + citation.len()..).unwrap_or_default();
            if let Mark::Sign(_) = mark {
                let is_other = |c: char| SIGNS.contains(&c);
                let own = !before.ends_with(is_other) && !behind.starts_with(is_other);
                cited |= own && before.ends_with(|c: char| !c.is_whitespace());
                continue;
            }
            let word = before.rsplit([' ', '(']).find(|word| !word.is_empty());
            let word = word.unwrap_or_default().to_lowercase();
            if before.trim().is_empty()
                || LEADS.contains(&word.as_str())
                || before.ends_with(|c: char| c.is_ascii_digit())
            {
                return false;
            }
            let attached = before.ends_with(|c: char| !c.is_whitespace());
            cited |= !closing || attached || closes_words(behind);
        }
    }
    cited
}

/// Whether words end before a place.
fn closes_words(behind: &str) -> bool {
    let behind = behind.trim_start();
    behind.is_empty() || behind.starts_with([',', ';', '.', ')', ':', '-', '–', '—', '('])
}
