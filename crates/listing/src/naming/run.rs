//! Words beside a number, and the runs of them that may be a cue.

use super::heard::longest_cue;

/// Words parted by one space, and where each begins.
#[derive(Debug, Default)]
pub(super) struct Words {
    text: String,
    /// Where each word begins, in bytes.
    starts: Vec<usize>,
}

/// A run of words beside a number.
#[derive(Debug, Clone, Copy)]
pub(super) struct Run<'a> {
    pub(super) words: &'a str,
    /// How many words the run has.
    pub(super) length: usize,
    /// How many words stand between it and the number, qualifiers apart.
    pub(super) between: usize,
    /// Where it begins, in bytes.
    pub(super) at: usize,
}

impl Words {
    /// Words one after another.
    pub(super) fn of<'w>(words: impl Iterator<Item = &'w str>) -> Self {
        let mut joined = Self::default();
        for word in words {
            if !joined.starts.is_empty() {
                joined.text.push(' ');
            }
            joined.starts.push(joined.text.len());
            joined.text.push_str(word);
        }
        joined
    }

    pub(super) fn text(&self) -> &str {
        &self.text
    }

    /// How many words there are.
    pub(super) fn count(&self) -> usize {
        self.starts.len()
    }

    /// The words `[first, last)`, as many of them as there are.
    pub(super) fn between(&self, first: usize, last: usize) -> &str {
        let Some(start) = self.starts.get(first).filter(|_| first < last) else {
            return "";
        };
        self.text.get(*start..self.end(last)).unwrap_or_default()
    }

    /// Where the words before a place end.
    fn end(&self, last: usize) -> usize {
        self.starts
            .get(last)
            .map_or(self.text.len(), |next| next - 1)
    }

    /// Whether a word begins so.
    pub(super) fn begin_with(&self, stem: &str) -> bool {
        let text = self.text.as_bytes();
        let begins = |at: &usize| {
            text.get(*at..)
                .is_some_and(|rest| rest.starts_with(stem.as_bytes()))
        };
        self.starts.iter().any(begins)
    }

    /// Takes every run of words that may be a cue: none longer than the longest cue that begins with its first word. `between` says how many
    /// words lie between the number and the words `[first, last)`.
    pub(super) fn runs(
        &self,
        between: impl Fn(usize, usize) -> usize,
        mut take: impl FnMut(&Run<'_>),
    ) {
        for (first, at) in self.starts.iter().copied().enumerate() {
            let longest = longest_cue(self.between(first, first + 1));
            for length in 1..=longest.min(self.count() - first) {
                let last = first + length;
                take(&Run {
                    words: self.between(first, last),
                    length,
                    between: between(first, last),
                    at,
                });
            }
        }
    }
}
