//! What people have corrected, as cases for the reader's tests.

use core::fmt::Write;

use super::{corrected, evened, line, lines, number};
use crate::confirm::read_as;
use crate::model::{Clause, Item, Reading, Requirement, Span};
use crate::reader::read_text;

/// What stands at the head of a page of corrections.
const HEAD: &str = "\
# Read wrongly, and what is right

The listing quoted here belongs to its holder: keep this page as you keep the listing, and don't publish it. To show a fault to
others, put it into words of your own first.
";

/// What people have corrected, as cases.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cases {
    /// The page.
    pub page: String,
    /// How many corrections it holds.
    pub held: usize,
    /// The ids of corrected clauses of which no case can be made: the reader makes no statement about them that could be compared.
    pub left: Vec<String>,
}

/// A case for each clause that a person has corrected: its item's words, or the whole listing where those alone read otherwise, and what is
/// right of it.
///
/// `as_read` is the reading before the corrections were laid over it.
pub fn of_corrections(text: &str, as_read: &Reading, overlaid: &Reading) -> Cases {
    let mut page = HEAD.to_owned();
    let mut held = 0;
    let mut left = Vec::new();
    for right in corrected(overlaid) {
        let read_as = read_as(&right.id);
        let Some(wrong) = as_read.clauses.iter().find(|clause| clause.id == read_as) else {
            continue;
        };
        match case(text, as_read, wrong, right) {
            Some(case) => {
                page.push_str(&case);
                held += 1;
            }
            None => left.push(right.id.clone()),
        }
    }
    Cases { page, held, left }
}

fn case(text: &str, as_read: &Reading, wrong: &Clause, right: &Clause) -> Option<String> {
    let stretch = stretch(text, as_read, wrong)?;
    let right_line = match (&right.requirement, wrong.bound()) {
        (Requirement::Prose, Some(bound)) => {
            format!(
                "{} unread",
                number_within(text, &stretch, bound.at.start(), bound.at.of(text))?
            )
        }
        _ => shifted(text, &stretch, right)?,
    };
    let read = shifted(text, &stretch, wrong).unwrap_or_else(|| "words for a person".to_owned());
    let mut case = format!(
        "\n## {}: {}\n\nRead as: {read}\n\n",
        wrong.id,
        evened(&wrong.words)
    );
    for line in stretch.words(text).lines() {
        let _ = writeln!(case, "{}", format!("> {line}").trim_end());
    }
    let _ = write!(case, "\n- {right_line}\n");
    Some(case)
}

/// A stretch of the text: some of its parts one after the other.
struct Stretch {
    parts: Vec<Span>,
}

impl Stretch {
    fn words(&self, text: &str) -> String {
        self.parts.iter().map(|part| part.of(text)).collect()
    }

    /// Where a place of the text stands in the stretch.
    fn place(&self, at: usize) -> Option<usize> {
        let mut before = 0;
        for part in &self.parts {
            if part.start() <= at && at <= part.end() {
                return Some(before + at - part.start());
            }
            before += part.len();
        }
        None
    }
}

/// The least stretch that reads as the whole does: the item with the first lines of those around it, those with the first lines of the items
/// before them, by which a numbering is told, else everything.
fn stretch(text: &str, as_read: &Reading, wrong: &Clause) -> Option<Stretch> {
    let whole = Stretch {
        parts: vec![Span::new(0, text.len())],
    };
    [
        of_item(text, as_read, wrong, false),
        of_item(text, as_read, wrong, true),
        Some(whole),
    ]
    .into_iter()
    .flatten()
    .find(|stretch| reads_alike(text, stretch, wrong))
}

fn reads_alike(text: &str, stretch: &Stretch, wrong: &Clause) -> bool {
    let words = stretch.words(text);
    let reading = read_text("case", &words);
    match shifted(text, stretch, wrong) {
        Some(line) => lines(&words, &reading).contains(&line),
        None => reading.clauses.iter().any(|clause| {
            clause.requirement == Requirement::Prose
                && clause.property == wrong.property
                && evened(&clause.words) == evened(&wrong.words)
        }),
    }
}

/// An item's own lines, after the first line of each item that it is nested in, and of those before them if asked for.
fn of_item(text: &str, as_read: &Reading, wrong: &Clause, numbered: bool) -> Option<Stretch> {
    let by_path = |path: &str| as_read.items.iter().find(|item| item.path == path);
    let item = by_path(&wrong.item)?;
    let own = own_lines(text, as_read, item);
    let mut parts = vec![own];
    let mut next = Some(item);
    while let Some(inner) = next {
        next = inner.parent.as_deref().and_then(by_path);
        let before = as_read.items.iter().filter(|other| {
            numbered && other.parent == inner.parent && other.span.start() < inner.span.start()
        });
        parts.extend(
            before
                .chain(next)
                .map(|item| first_line(text, item.span.start())),
        );
    }
    parts.retain(|part| *part == own || part.end() <= own.start());
    parts.sort_unstable();
    parts.dedup();
    Some(Stretch { parts })
}

/// The lines of an item up to those of the next.
fn own_lines(text: &str, as_read: &Reading, item: &Item) -> Span {
    let start = first_line(text, item.span.start()).start();
    let next = as_read
        .items
        .iter()
        .map(|other| other.span.start())
        .filter(|at| *at > item.span.start())
        .min()
        .map(|at| first_line(text, at).start());
    let end = first_line(text, item.span.end().saturating_sub(1)).end();
    Span::new(start, next.map_or(end, |next| next.min(end)))
}

/// The line that a place stands on, its end included.
fn first_line(text: &str, at: usize) -> Span {
    let before = text.get(..at).unwrap_or_default();
    let after = text.get(at..).unwrap_or_default();
    let start = before.rfind('\n').map_or(0, |end| end + 1);
    let end = at + after.find('\n').map_or(after.len(), |end| end + 1);
    Span::new(start, end)
}

/// A clause's line as it stands in a stretch.
fn shifted(text: &str, stretch: &Stretch, clause: &Clause) -> Option<String> {
    let mut clause = clause.clone();
    if let Requirement::Bound(bound) = &mut clause.requirement
        && !bound.at.is_empty()
    {
        let at = stretch.place(bound.at.start())?;
        bound.at = Span::new(at, at + bound.at.len());
    }
    line(&stretch.words(text), &clause)
}

fn number_within(text: &str, stretch: &Stretch, at: usize, words: &str) -> Option<String> {
    let at = stretch.place(at)?;
    Some(number(
        &stretch.words(text),
        Span::new(at, at + words.len()),
    ))
}
