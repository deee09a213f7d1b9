//! Parts of a document whose items are numbered anew: `SYSTEM B` over `1. PACKING`, behind the items 1 to 5 of `SYSTEM A`.
//!
//! A number that doesn't go on from the items before counts from where the first of the parts began, and its path names the part: `System B-1`. Only the
//! name of a kind that stands alone above a marker heads such a part, so that a number in a sentence never begins one.

use super::super::marker::{Marker, marker};
use super::super::sequence::{Placement, Sequence};
use super::{Builder, bands, labels};
use crate::layout::Line;

/// Where the reading stands among a document's parts.
#[derive(Debug, Default)]
pub(super) struct Parts {
    /// The outline as it stood where the first part began.
    before: Option<Sequence>,
    /// The part that the lines stand in.
    name: Option<String>,
    /// Whether no item of the part has been read yet.
    opening: bool,
    /// Whether the part counts anew.
    anew: bool,
}

impl Builder<'_> {
    /// Takes note of a line that heads a part.
    pub(super) fn note_part(&mut self, at: usize, words: &str) {
        let below = self.lines.iter().skip(at + 1);
        let numbered = below
            .map(|line| line.text.trim())
            .find(|line| !line.is_empty())
            .is_some_and(|line| marker(line).is_some());
        let at_margin = self
            .open
            .first()
            .zip(self.lines.get(at))
            .is_none_or(|((own, _), line)| line.indent <= *own);
        // What stands under "Both configurations" is of neither part.
        if labels::heads_all(words) && at_margin {
            self.parts.name = None;
        }
        let band = || bands::name_of(words).filter(|_| self.bands.contains(&at));
        let name = labels::part_named(words).or_else(band);
        let Some(name) = name.filter(|_| numbered && at_margin) else {
            return;
        };
        if self.parts.before.is_none() {
            self.parts.before = Some(self.sequence.clone());
        }
        self.parts.name = Some(name.to_owned());
        self.parts.opening = true;
        self.parts.anew = false;
    }

    /// Where a marker stands in the outline, or in that of the part which it is the first item of.
    pub(super) fn place(&mut self, marker: &Marker, line: &Line<'_>) -> Option<Placement> {
        let mut placement = self.sequence.place(marker, line.indent);
        if self.parts.opening && placement.is_none() {
            let before = self.parts.before.clone()?;
            // What has nothing before it counts from one.
            let afresh = before.afresh();
            for sequence in [before, afresh] {
                let own = sequence.place(marker, line.indent);
                placement = own.filter(|placement| placement.parent.is_none());
                if placement.is_some() {
                    self.sequence = sequence;
                    self.parts.anew = true;
                    break;
                }
            }
        }
        let mut placement = placement?;
        if let Some(name) = self.parts.name.as_ref().filter(|_| self.parts.anew)
            && placement.parent.is_none()
            && !placement.path.starts_with('[')
        {
            placement.path = format!("{name}-{}", placement.path);
        }
        Some(placement)
    }
}

impl Parts {
    /// An item has been read.
    pub(super) const fn enter(&mut self) {
        self.opening = false;
    }
}
