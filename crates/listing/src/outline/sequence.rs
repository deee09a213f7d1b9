//! Which markers continue the outline: sequence and nesting decide, not one pattern.

mod next;

use super::marker::{Close, Marker, Part};
use super::path::path;

/// An item that is open where the reading stands: the current one and those it is nested in.
#[derive(Debug, Clone)]
struct Open {
    parts: Vec<Part>,
    close: Close,
    introduced: bool,
    path: String,
    indent: usize,
    item: usize,
}

/// The chain of open items.
#[derive(Debug, Default)]
pub(crate) struct Sequence {
    open: Vec<Open>,
    /// Those that were open before notes in brackets began: the outline goes on behind the notes.
    before_notes: Vec<Open>,
    /// Whether the outline counts `10`, `11`, `12`, `20`.
    in_tens: bool,
}

/// Where a marker belongs.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Placement {
    /// The path as people cite it.
    pub(crate) path: String,
    /// The item it is nested in.
    pub(crate) parent: Option<usize>,
    depth: usize,
}

impl Sequence {
    /// An outline that counts in tens.
    pub(crate) fn in_tens() -> Self {
        Self {
            in_tens: true,
            ..Self::default()
        }
    }

    /// Where a marker continues the outline; none when it doesn't, and so is only text.
    pub(crate) fn place(&self, marker: &Marker, indent: usize) -> Option<Placement> {
        if marker.close == Close::Brackets {
            // `[6A]` is a part of `[6]`.
            let above = self.open.iter().rposition(|open| {
                open.close == Close::Brackets
                    && marker.parts.len() == open.parts.len() + 1
                    && marker.parts.starts_with(&open.parts)
            });
            return Some(Placement {
                path: format!("[{}]", marker.label),
                parent: above.and_then(|above| Some(self.open.get(above)?.item)),
                depth: above.map_or(0, |above| above + 1),
            });
        }
        self.continues(marker, indent).or_else(|| {
            // `3. SEAL` behind `[a] Clips required` goes on after `2. PACKING`.
            let outer = Self {
                open: self.before_notes.clone(),
                before_notes: Vec::new(),
                in_tens: self.in_tens,
            };
            (!outer.open.is_empty()).then(|| outer.continues(marker, indent))?
        })
    }

    /// Where a marker continues what is open.
    fn continues(&self, marker: &Marker, indent: usize) -> Option<Placement> {
        if self.open.is_empty() {
            let starts = marker.parts.iter().all(Part::is_first)
                || starts_lettered(&marker.parts)
                || marker.parts == [Part::Number(100)]
                || (self.in_tens && marker.parts == [Part::Number(10)]);
            return starts.then(|| self.placement(marker, 0));
        }
        if let Some(depth) = self.hundreds(marker).or_else(|| self.tens(marker)) {
            return Some(self.placement(marker, depth));
        }
        if let Some(depth) = self.sibling(marker, indent) {
            return Some(self.placement(marker, depth));
        }
        let parent = (0..self.open.len())
            .rev()
            .find(|depth| self.extends(*depth, marker));
        if let Some(depth) = parent {
            return Some(self.placement(marker, depth + 1));
        }
        let next = self
            .introduced_next(marker)
            .or_else(|| self.next_without_plain(marker))
            .or_else(|| self.counts_anew(marker, indent));
        if let Some(depth) = next {
            return Some(self.placement(marker, depth));
        }
        let new_scheme = marker.parts.len() == 1
            && marker.parts.iter().all(Part::is_first)
            && self
                .open
                .iter()
                .all(|open| !same_scheme(open, marker) || is_roman_within(open, marker, indent));
        if new_scheme {
            let above = self.open.iter().rposition(|open| open.indent < indent);
            let depth = above.map_or(self.open.len(), |depth| depth + 1);
            return Some(self.placement(marker, depth));
        }
        // `F1` after `W1`: a new letter with its own count.
        let first = self.open.first()?;
        let regroup = starts_lettered(&marker.parts)
            && starts_lettered(&first.parts)
            && marker.parts.len() == first.parts.len();
        // Notes of their own count at the end: `N1.` after `<7>`.
        let notes = matches!(marker.parts.as_slice(), [Part::Letters(_), Part::Number(1)])
            && indent <= first.indent
            && marker.close != Close::Nothing;
        (regroup || notes).then(|| self.placement(marker, 0))
    }

    /// The depth of an introduced letter that follows another, one of them with a number: `PART D1` after `PART C`, `PART E` after `PART D2`.
    fn introduced_next(&self, marker: &Marker) -> Option<usize> {
        let [first @ Part::Letters(_), rest @ ..] = marker.parts.as_slice() else {
            return None;
        };
        (0..self.open.len()).rev().find(|depth| {
            self.open.get(*depth).is_some_and(|open| {
                let lettered = matches!(
                    open.parts.as_slice(),
                    [Part::Letters(_)] | [Part::Letters(_), Part::Number(_)]
                );
                marker.introduced
                    && open.introduced
                    && lettered
                    && matches!(rest, [] | [Part::Number(1)])
                    && open
                        .parts
                        .first()
                        .is_some_and(|before| first.follows(before))
            })
        })
    }

    /// A place of its own, outermost, for a marker that stands in a column of markers but doesn't continue the outline.
    pub(crate) fn unplaced(&self, marker: &Marker) -> Placement {
        self.placement(marker, 0)
    }

    /// Opens an item at its placement, closing what it isn't nested in.
    pub(crate) fn enter(
        &mut self,
        marker: &Marker,
        placement: &Placement,
        indent: usize,
        item: usize,
    ) {
        let in_notes = |open: &[Open]| {
            open.first()
                .is_some_and(|open| open.close == Close::Brackets)
        };
        if marker.close == Close::Brackets && !in_notes(&self.open) {
            self.before_notes = core::mem::take(&mut self.open);
        } else if in_notes(&self.open)
            && marker.close != Close::Brackets
            && self.continues(marker, indent).as_ref() != Some(placement)
        {
            self.open = core::mem::take(&mut self.before_notes);
        }
        self.open.truncate(placement.depth);
        self.open.push(Open {
            parts: marker.parts.clone(),
            close: marker.close,
            introduced: marker.introduced,
            path: placement.path.clone(),
            indent,
            item,
        });
    }

    /// The depth of a number of three digits in an outline that counts `100`, `110`, `111`, `120`, `200`: as deep as its last digit that is
    /// no zero, and after the open ones.
    fn hundreds(&self, marker: &Marker) -> Option<usize> {
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
    fn tens(&self, marker: &Marker) -> Option<usize> {
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
        (self.in_tens && next).then(|| usize::from(number % 10 != 0).min(self.open.len()))
    }

    fn is_sibling(&self, depth: usize, marker: &Marker) -> bool {
        let Some(open) = self.open.get(depth) else {
            return false;
        };
        let same_length = open.parts.len() == marker.parts.len();
        let split = |parts: &[Part]| {
            parts
                .split_last()
                .map(|(last, head)| (head.to_vec(), last.clone()))
        };
        same_length
            && compatible(open, marker)
            && split(&open.parts)
                .zip(split(&marker.parts))
                .is_some_and(|((a, x), (b, y))| a == b && y.follows(&x))
    }

    fn extends(&self, depth: usize, marker: &Marker) -> bool {
        let Some(open) = self.open.get(depth) else {
            return false;
        };
        let Some((last, head)) = marker.parts.split_last() else {
            return false;
        };
        // `3B.1` below `B.` of `3.` cites the whole of its way.
        let way: Vec<&Part> = self
            .open
            .get(..=depth)
            .unwrap_or_default()
            .iter()
            .flat_map(|open| &open.parts)
            .collect();
        let whole =
            depth > 0 && head.len() == way.len() && head.iter().zip(way).all(|(a, b)| a == b);
        last.is_first() && !head.is_empty() && (head == open.parts || whole)
    }

    fn placement(&self, marker: &Marker, depth: usize) -> Placement {
        let parent = depth.checked_sub(1).and_then(|above| self.open.get(above));
        Placement {
            path: path(
                parent.map(|open| (open.parts.as_slice(), open.path.as_str())),
                marker,
                if self.in_tens { 10 } else { 100 },
            ),
            parent: parent.map(|open| open.item),
            depth,
        }
    }
}

/// Whether a label is a letter followed by a number: `W1`, `A-1`.
fn starts_lettered(parts: &[Part]) -> bool {
    matches!(parts, [Part::Letters(_), Part::Number(_), ..])
}

fn same_scheme(open: &Open, marker: &Marker) -> bool {
    let kind = |parts: &[Part]| (parts.len(), parts.last().map(Part::kind));
    kind(&open.parts) == kind(&marker.parts) && compatible(open, marker)
}

/// Whether a marker counts in Roman numerals within a lettered item: `(i)` set in below `(a)`. One that followed `(h)` would be its sibling.
fn is_roman_within(open: &Open, marker: &Marker, indent: usize) -> bool {
    let lettered = matches!(open.parts.as_slice(), [.., Part::Letters(letters)] if !matches!(letters.as_str(), "i" | "I"));
    let roman = matches!(marker.parts.as_slice(), [Part::Letters(letters)] if matches!(letters.as_str(), "i" | "I"));
    lettered && roman && open.indent < indent
}

/// Whether two markers close alike; a missing dot is forgiven.
fn compatible(open: &Open, marker: &Marker) -> bool {
    let loose = |close: Close| match close {
        Close::Dot | Close::Nothing | Close::Colon | Close::Dash => 0,
        Close::Paren => 1,
        Close::Parens => 2,
        Close::Brackets => 3,
        Close::Angles => 4,
    };
    open.introduced == marker.introduced
        && (open.introduced || loose(open.close) == loose(marker.close))
}

#[cfg(test)]
mod tests {
    use super::super::marker::marker;
    use super::*;

    /// Places each line in turn; lines that are no items are marked `-`.
    fn check(lines: &[&str], expected: &[&str]) {
        check_in(Sequence::default(), lines, expected);
    }

    fn check_in(mut sequence: Sequence, lines: &[&str], expected: &[&str]) {
        let mut found = Vec::new();
        for (index, line) in lines.iter().enumerate() {
            let text = line.trim_start();
            let indent = line.len() - text.len();
            let placed = marker(text).and_then(|m| sequence.place(&m, indent).map(|p| (m, p)));
            if let Some((marker, placement)) = placed {
                found.push(placement.path.clone());
                sequence.enter(&marker, &placement, indent, index);
            } else {
                found.push("-".to_owned());
            }
        }
        assert_eq!(found, expected);
    }

    #[test]
    fn tens() {
        let lines = [
            "10  SLABS",
            "11  Thickness",
            "14  Levels",
            "20  JOINT",
            "21  Width",
            "12  Bolts",
        ];
        check_in(
            Sequence::in_tens(),
            &lines,
            &["10", "11", "14", "20", "21", "-"],
        );
        check(&lines, &["-"; 6]);
    }

    #[test]
    fn articles() {
        let lines = [
            "Article 1.  THE FLOOR.",
            "Article 2.  THE WALL.",
            "  (a) The blocks",
        ];
        check(&lines, &["1", "2", "2(a)"]);
    }

    #[test]
    fn hundreds() {
        check(
            &[
                "100  FLOOR",
                "110  Slab",
                "111  Edge",
                "120  Deck",
                "200  JOINT",
                "210  Width",
                "400 mm wide",
            ],
            &["100", "110", "111", "120", "200", "210", "-"],
        );
    }

    #[test]
    fn parts_that_cite_their_whole_way() {
        check(
            &[
                "1. JOINT",
                "   A. Wool",
                "   B. Seal",
                "      1B.1 Wet",
                "      1B.2 Self-levelling",
                "   C. Cover",
                "2. WALL",
            ],
            &["1", "1A", "1B", "1B.1", "1B.2", "1C", "2"],
        );
    }

    #[test]
    fn roman_numerals_within_letters() {
        check(
            &[
                "1. WALL",
                "  (a) Studs",
                "      (i) Steel",
                "      (ii) Wood",
                "  (b) Board",
                "2. JOINT",
                "  (a) Wool",
                "  (i) of it",
            ],
            &["1", "1(a)", "1(a)(i)", "1(a)(ii)", "1(b)", "2", "2(a)", "-"],
        );
    }

    #[test]
    fn numbers_with_letters() {
        check(
            &[
                "1. FLOOR",
                " A. STEEL",
                " B. CONCRETE",
                "2. WALL",
                "  A. RUNNERS",
                "    A1. SLOTTED",
                "  B. STUDS",
                "3. JOINT",
                "  A. FORM",
                "    A1. PLUG",
                "  B. FILL",
            ],
            &[
                "1", "1A", "1B", "2", "2A", "2A1", "2B", "3", "3A", "3A1", "3B",
            ],
        );
        check(
            &[
                "1. Beam",
                " 1.1 Fire",
                "2. Att",
                " 2A. Clips",
                " 2B. Angle",
                "  2B.1 Butted",
                " 2C. Direct",
                "3. Shaft",
                " a. J",
                " b. Studs",
            ],
            &["1", "1.1", "2", "2A", "2B", "2B.1", "2C", "3", "3a", "3b"],
        );
    }

    #[test]
    fn decimals_and_sections() {
        check(
            &[
                "1 SUPPORT",
                " 1.1 Floor",
                "  1.1.1 Spalled",
                " 1.2 Hollow",
                "3.1.3 is increased",
                "2 THE",
            ],
            &["1", "1.1", "1.1.1", "1.2", "-", "2"],
        );
        check(
            &[
                "§ 1. The",
                " (a) The",
                " (b) Where",
                "§ 2. Wall",
                " (a) The",
            ],
            &["§1", "§1(a)", "§1(b)", "§2", "§2(a)"],
        );
        check(
            &[
                "A.  RATED",
                "  A-1   Reinf",
                "  A-2   Block",
                "B.  CURTAIN",
                "  B-1   Fram",
                "  B-2   Span",
                "   (i)  Glass",
                "   (ii) Alum",
                "  B-3  In",
            ],
            &[
                "A", "A-1", "A-2", "B", "B-1", "B-2", "B-2(i)", "B-2(ii)", "B-3",
            ],
        );
        check(
            &[
                "I.   SUPP",
                "  (i)  Floor",
                "  (ii) Wall",
                "II.  PEN",
                "  (a)  PVC",
            ],
            &["I", "I(i)", "I(ii)", "II", "II(a)"],
        );
        check(
            &["1.0  WALL", " 1.1  Studs", "2.0  OPEN"],
            &["1", "1.1", "2"],
        );
        check(
            &[
                "Item 1: Floor",
                "Item 1-a) Slab",
                "Item 1-b) Deck",
                "Item 2: Wall",
            ],
            &["1", "1-a", "1-b", "2"],
        );
    }
}
