//! A stretch of the source text.

use core::fmt;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Bytes `[start, end)` of the UTF-8 source. The start never passes the end.
#[derive(
    Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default, Serialize, Deserialize, JsonSchema,
)]
#[serde(from = "(usize, usize)", into = "(usize, usize)")]
pub struct Span {
    start: usize,
    end: usize,
}

impl Span {
    /// The bytes from `start` to `end`; empty at `start` when `end` comes before it.
    pub const fn new(start: usize, end: usize) -> Self {
        Self {
            start,
            end: if end < start { start } else { end },
        }
    }

    /// The first byte.
    pub const fn start(self) -> usize {
        self.start
    }

    /// The byte after the last.
    pub const fn end(self) -> usize {
        self.end
    }

    /// How many bytes.
    pub const fn len(self) -> usize {
        self.end - self.start
    }

    /// Whether there are none.
    pub const fn is_empty(self) -> bool {
        self.end == self.start
    }

    /// Whether an offset lies inside.
    pub const fn contains(self, at: usize) -> bool {
        self.start <= at && at < self.end
    }

    /// Whether the whole of another span lies inside.
    pub const fn covers(self, other: Self) -> bool {
        self.start <= other.start && other.end <= self.end
    }

    /// Whether any byte is in both.
    pub const fn overlaps(self, other: Self) -> bool {
        self.start < other.end && other.start < self.end
    }

    /// The shortest span around both.
    #[must_use]
    pub fn join(self, other: Self) -> Self {
        Self::new(self.start.min(other.start), self.end.max(other.end))
    }

    /// How far from the edge of its line it begins.
    pub(crate) fn column(self, text: &str) -> usize {
        let before = text.get(..self.start).unwrap_or_default();
        before.len() - before.rfind('\n').map_or(0, |line| line + 1)
    }

    /// The words here; nothing when the span doesn't fit the text.
    pub fn of(self, text: &str) -> &str {
        text.get(self.start..self.end).unwrap_or_default()
    }
}

impl From<(usize, usize)> for Span {
    fn from((start, end): (usize, usize)) -> Self {
        Self::new(start, end)
    }
}

impl From<Span> for (usize, usize) {
    fn from(span: Span) -> Self {
        (span.start, span.end)
    }
}

impl fmt::Debug for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}..{}", self.start, self.end)
    }
}
