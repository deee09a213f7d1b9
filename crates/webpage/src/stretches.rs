//! A text cut where anything begins or ends: each stretch is of one kind throughout.

use listing::{Clause, Condition, PlaceKind, Reading, Span, WarningKind};

use crate::clauses::firmness;
use crate::rows::Row;

/// The most clauses that a stretch names beside those that begin in it: no sentence of a listing holds as many.
const MOST_NAMED: usize = 24;

/// A stretch of text of one kind.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Stretch {
    pub(crate) span: Span,
    pub(crate) kind: Kind,
    /// The clauses it is part of, by their place in the reading.
    pub(crate) clauses: Vec<usize>,
    /// The clauses whose number it is part of.
    pub(crate) numbers: Vec<usize>,
    /// Whether it is part of a clause's condition.
    pub(crate) is_condition: bool,
    /// The warning of a number that was not read.
    pub(crate) unread: Option<usize>,
    /// The clauses that begin with it.
    pub(crate) begins: Vec<usize>,
    /// The warnings that begin with it.
    pub(crate) warned: Vec<usize>,
}

/// What a stretch is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Kind {
    /// Words that a clause was read from.
    Read,
    /// Words that a clause was read from with a doubt.
    Doubtful,
    /// Words left for a person.
    Prose,
    /// An item's marker and title.
    Heading,
    /// The head of the document.
    Head,
    /// Page heads and feet, rules.
    Furniture,
    /// White space.
    Space,
}

impl Kind {
    /// Every kind that is marked, in the order in which they are shown.
    pub(crate) const MARKED: [Self; 6] = [
        Self::Read,
        Self::Doubtful,
        Self::Prose,
        Self::Heading,
        Self::Head,
        Self::Furniture,
    ];

    /// The name that the page's style knows it by.
    pub(crate) const fn class(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Doubtful => "unsure",
            Self::Prose => "prose",
            Self::Heading => "heading",
            Self::Head => "head",
            Self::Furniture => "furniture",
            Self::Space => "space",
        }
    }

    /// What it is, in words.
    pub(crate) const fn words(self) -> &'static str {
        match self {
            Self::Read => "read by rule",
            Self::Doubtful => "read with a doubt",
            Self::Prose => "left for a person",
            Self::Heading => "headings",
            Self::Head => "the head",
            Self::Furniture => "page heads and feet",
            Self::Space => "white space",
        }
    }
}

/// The stretches of a whole text, in order; together they are the text, and each lies in one row.
pub(crate) fn stretches(text: &str, reading: &Reading, rows: &[Row<'_>]) -> Vec<Stretch> {
    let cuts = cuts(text, reading, rows);
    let mut clauses = Open::new(spans_of_clauses(reading));
    let mut numbers = Open::new(spans_of_numbers(reading));
    let mut conditions = Open::new(spans_of_conditions(reading));
    let mut warnings = Open::new(spans_of_warnings(reading));
    let mut places = reading.places.iter().peekable();
    let mut found = Vec::with_capacity(cuts.len());
    for (start, end) in cuts.iter().zip(cuts.iter().skip(1)) {
        let span = Span::new(*start, *end);
        while places.next_if(|place| place.span.end() <= *start).is_some() {}
        let begins = clauses.advance(*start);
        numbers.advance(*start);
        conditions.advance(*start);
        let warned = warnings.advance(*start);
        let is_any_firm = any(reading, &clauses.open, |clause| firmness(clause) == "firm");
        let is_any_doubtful = any(reading, &clauses.open, |clause| {
            firmness(clause) == "doubtful" && (!is_any_firm || clause.bound().is_none())
        });
        // A number is as firm as the clause that was read from it, whatever else stands in its sentence.
        let is_doubtful = if numbers.open.is_empty() {
            is_any_doubtful
        } else {
            any(reading, &numbers.open, |clause| {
                firmness(clause) == "doubtful"
            })
        };
        let kind = match places.peek().map(|place| place.kind) {
            Some(PlaceKind::Clause) if is_doubtful => Kind::Doubtful,
            Some(PlaceKind::Clause)
                if clauses.open.is_empty() || is_any_firm || !numbers.open.is_empty() =>
            {
                Kind::Read
            }
            Some(PlaceKind::Clause) => Kind::Prose,
            Some(PlaceKind::Heading) => Kind::Heading,
            Some(PlaceKind::Header) => Kind::Head,
            Some(PlaceKind::Furniture) => Kind::Furniture,
            Some(PlaceKind::Space) | None => Kind::Space,
        };
        let is_unread = |index: &usize| {
            reading
                .warnings
                .get(*index)
                .is_some_and(|warning| warning.kind == WarningKind::UnreadNumber)
        };
        found.push(Stretch {
            span,
            kind,
            clauses: clauses.named(&begins),
            numbers: numbers.open.iter().map(|(index, _)| *index).collect(),
            is_condition: !conditions.open.is_empty(),
            unread: warnings
                .open
                .iter()
                .map(|(index, _)| *index)
                .find(is_unread),
            begins,
            warned,
        });
    }
    found
}

/// Whether any of the clauses that are open is of a kind.
fn any(reading: &Reading, open: &[(usize, Span)], is: impl Fn(&Clause) -> bool) -> bool {
    open.iter()
        .filter_map(|(index, _)| reading.clauses.get(*index))
        .any(is)
}

/// Every place where anything begins or ends.
fn cuts(text: &str, reading: &Reading, rows: &[Row<'_>]) -> Vec<usize> {
    let spans = spans_of_clauses(reading)
        .chain(spans_of_numbers(reading))
        .chain(spans_of_conditions(reading))
        .chain(spans_of_warnings(reading))
        .map(|(_, span)| span)
        .chain(reading.places.iter().map(|place| place.span))
        .chain(rows.iter().map(|row| row.span));
    let mut cuts: Vec<usize> = spans
        .flat_map(|span| [span.start(), span.end()])
        .chain(line_ends(text))
        .chain([0, text.len()])
        .filter(|at| text.is_char_boundary(*at))
        .collect();
    cuts.sort_unstable();
    cuts.dedup();
    cuts
}

/// Where a line, its words and their end stand, so that an indent is a stretch of its own.
fn line_ends(text: &str) -> impl Iterator<Item = usize> + '_ {
    let mut at = 0;
    text.split_inclusive('\n').flat_map(move |line| {
        let start = at;
        at += line.len();
        let indent = line.len() - line.trim_start().len();
        [
            start,
            start + indent,
            start + line.trim_end().len().max(indent),
        ]
    })
}

fn spans_of_clauses(reading: &Reading) -> impl Iterator<Item = (usize, Span)> {
    let all = reading.clauses.iter().enumerate();
    all.map(|(index, clause)| (index, clause.span))
}

fn spans_of_numbers(reading: &Reading) -> impl Iterator<Item = (usize, Span)> {
    let all = reading.clauses.iter().enumerate();
    all.filter_map(|(index, clause)| Some((index, clause.bound()?.at)))
        .filter(|(_, span)| !span.is_empty())
}

fn spans_of_conditions(reading: &Reading) -> impl Iterator<Item = (usize, Span)> {
    let all = reading.clauses.iter().enumerate();
    all.flat_map(|(index, clause)| {
        let conditions = clause.condition.iter();
        conditions
            .flat_map(Condition::spans)
            .filter_map(|span| beside_the_number(clause, span))
            .map(move |span| (index, span))
    })
}

/// A condition's words without the number that it is the condition of: the row of a table says what its cells are about, and only where
/// nothing else is their condition when they apply.
fn beside_the_number(clause: &Clause, span: Span) -> Option<Span> {
    let at = clause.bound().map_or(clause.span, |bound| bound.at);
    if at.start() < span.start() || at.end() > span.end() || span == clause.span {
        return Some(span);
    }
    let is_only = clause.condition.as_ref()?.also.is_empty();
    let end = at.start().min(clause.span.start()).max(span.start());
    let before = Span::new(span.start(), end);
    (is_only && !before.is_empty()).then_some(before)
}

fn spans_of_warnings(reading: &Reading) -> impl Iterator<Item = (usize, Span)> {
    let all = reading.warnings.iter().enumerate();
    all.map(|(index, warning)| (index, warning.span))
        .filter(|(_, span)| !span.is_empty())
}

/// Spans of which some are open at a place that only goes forward.
struct Open {
    /// Those to come, the next one last.
    waiting: Vec<(usize, Span)>,
    /// Those that the place lies in.
    open: Vec<(usize, Span)>,
}

impl Open {
    fn new(spans: impl Iterator<Item = (usize, Span)>) -> Self {
        let mut waiting: Vec<(usize, Span)> = spans.collect();
        waiting.sort_by_key(|(index, span)| core::cmp::Reverse((span.start(), *index)));
        Self {
            waiting,
            open: Vec::new(),
        }
    }

    /// Goes to a place; answers which begin there.
    fn advance(&mut self, at: usize) -> Vec<usize> {
        self.open.retain(|(_, span)| at < span.end());
        let mut begin = Vec::new();
        while let Some((index, span)) = self.waiting.pop_if(|(_, span)| span.start() <= at) {
            begin.push(index);
            if at < span.end() {
                self.open.push((index, span));
            }
        }
        begin
    }

    /// Those open that a stretch names: those that begin with it, and as many others as it may, the shortest first.
    fn named(&self, begins: &[usize]) -> Vec<usize> {
        let mut others: Vec<(usize, usize)> = self
            .open
            .iter()
            .filter(|(index, _)| !begins.contains(index))
            .map(|(index, span)| (span.len(), *index))
            .collect();
        if others.len() > MOST_NAMED {
            others.sort_unstable();
            others.truncate(MOST_NAMED);
        }
        let mut named: Vec<usize> = begins
            .iter()
            .copied()
            .chain(others.into_iter().map(|(_, index)| index))
            .collect();
        named.sort_unstable();
        named
    }
}
