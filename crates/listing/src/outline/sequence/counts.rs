//! Outlines whose numbers show by their zeros how deep they stand.

use super::super::marker::{Marker, Part};
use super::{Counting, Sequence};

impl Sequence {
    /// The depth of a number of three digits in an outline that counts `100`, `110`, `111`, `120`, `200`: as deep as its last digit that is
    /// no zero, and after the open ones.
    pub(super) fn hundreds(&self, marker: &Marker) -> Option<usize> {
        let (first, [Part::Number(number)]) = (self.open.first()?, marker.parts.as_slice()) else {
            return None;
        };
        let hundreds =
            |parts: &[Part]| matches!(parts, [Part::Number(n)] if (100..1000).contains(n));
        let last = self
            .open
            .iter()
            .rev()
            .find_map(|open| match open.parts.as_slice() {
                [Part::Number(last)] if *last >= 100 => Some(*last),
                _ => None,
            })?;
        let next = *number > last && number / 100 - last / 100 <= 3;
        if !(hundreds(&first.parts) && hundreds(&marker.parts) && next) {
            return None;
        }
        let depth = match (number % 100, number % 10) {
            (0, _) => 0,
            (_, 0) => 1,
            _ => 2,
        };
        Some(depth.min(self.open.len()))
    }

    /// The depth of a number of two digits in an outline that counts `10`, `11`, `12`, `20`.
    pub(super) fn tens(&self, marker: &Marker) -> Option<usize> {
        let [Part::Number(number)] = marker.parts.as_slice() else {
            return None;
        };
        let numbers = self
            .open
            .iter()
            .rev()
            .filter_map(|open| match open.parts.as_slice() {
                [Part::Number(last)] => Some(*last),
                _ => None,
            });
        let last = numbers.max()?;
        let next = (10..100).contains(number) && *number > last && number / 10 - last / 10 <= 2;
        (self.counting == Counting::InTens && next)
            .then(|| usize::from(number % 10 != 0).min(self.open.len()))
    }
}
