//! Which open item a marker goes on from, where its label alone doesn't say so.

use super::super::marker::{Close, Marker, Part};
use super::{Placement, Sequence, compatible, same_scheme};

impl Sequence {
    /// The depth of the open item that a marker follows; of several the one as far in, `4.` after `3. A. 1.` and `2.`, else the innermost.
    pub(super) fn sibling(&self, marker: &Marker, indent: usize) -> Option<usize> {
        let follows = |depth: &usize| self.is_sibling(*depth, marker);
        let as_far_in = |depth: &usize| {
            self.open
                .get(*depth)
                .is_some_and(|open| open.indent == indent)
        };
        let depths = || (0..self.open.len()).rev().filter(follows);
        depths().find(as_far_in).or_else(|| depths().next())
    }

    /// The depth of `2A` after `1`, and of `3` after `2B`, where no plain `2` stands.
    pub(super) fn next_without_plain(&self, marker: &Marker) -> Option<usize> {
        let number = |parts: &[Part]| match parts {
            [number @ Part::Number(_)] => Some((number.clone(), false)),
            [number @ Part::Number(_), Part::Letters(_)] => Some((number.clone(), true)),
            _ => None,
        };
        let (own, lettered) = number(&marker.parts)?;
        let first = !lettered || marker.parts.last().is_some_and(Part::is_first);
        let open = self.open.first().filter(|open| compatible(open, marker))?;
        let (before, open_lettered) = number(&open.parts)?;
        (first && (lettered || open_lettered) && own.follows(&before)).then_some(0)
    }

    /// The depth of `2.1` behind `1.3`, where the outline counts in two numbers and no plain `1` or `2` heads them.
    pub(super) fn next_chapter(&self, marker: &Marker, indent: usize) -> Option<usize> {
        let open = self.open.first()?;
        let ([Part::Number(_), Part::Number(_)], [own @ Part::Number(_), first @ Part::Number(_)]) =
            (open.parts.as_slice(), marker.parts.as_slice())
        else {
            return None;
        };
        let follows = open.parts.first().is_some_and(|before| own.follows(before));
        (follows && first.is_first() && compatible(open, marker) && open.indent == indent)
            .then_some(0)
    }

    /// Where a number stands that is several beyond the last of the outline's own, as far in and closed alike: `5.` behind `2.`
    pub(crate) fn leap(&self, marker: &Marker, indent: usize) -> Option<Placement> {
        const FARTHEST: u32 = 10;
        let open = self.open.first()?;
        let ([Part::Number(before)], [Part::Number(own)]) =
            (open.parts.as_slice(), marker.parts.as_slice())
        else {
            return None;
        };
        let beyond = own
            .checked_sub(*before)
            .is_some_and(|far| (3..=FARTHEST).contains(&far));
        let alike = open.close == marker.close && open.introduced == marker.introduced;
        let closed = marker.close != Close::Nothing || marker.introduced;
        (beyond && alike && closed && open.indent == indent).then(|| self.placement(marker, 0))
    }

    /// The depth of `1B` behind `4A`, and of `2B` behind that, where the outline counts anew for each letter.
    pub(super) fn next_letter(&self, marker: &Marker, indent: usize) -> Option<usize> {
        let open = self.open.first()?;
        let ([last @ Part::Number(_), before], [number @ Part::Number(_), own]) =
            (open.parts.as_slice(), marker.parts.as_slice())
        else {
            return None;
        };
        let lettered = matches!(own, Part::Letters(_));
        let anew = own.follows(before) && number.is_first() && !last.is_first();
        let next = own == before && number.follows(last);
        let alike = open.close == marker.close && open.indent == indent;
        let closed = marker.close != Close::Nothing;
        (lettered && (anew || next) && alike && closed && compatible(open, marker)).then_some(0)
    }

    /// The depth of a `1.` farther in than the `A.` above it, which is farther in than the outline's own numbers: a count of its own.
    pub(super) fn counts_anew(&self, marker: &Marker, indent: usize) -> Option<usize> {
        let last = self.open.last()?;
        let first = matches!(marker.parts.as_slice(), [Part::Number(1)]);
        let farther_in = self
            .open
            .iter()
            .zip(self.open.iter().skip(1))
            .all(|(outer, inner)| outer.indent < inner.indent);
        let nested = last.indent < indent && farther_in && self.open.len() > 1;
        (first && nested && !same_scheme(last, marker)).then_some(self.open.len())
    }
}
