//! Which markers continue the outline: sequence and nesting decide, not one pattern.

mod counts;
mod next;
#[cfg(test)]
mod tests;

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
#[derive(Debug, Clone, Default)]
pub(crate) struct Sequence {
    open: Vec<Open>,
    /// Those that were open before notes in brackets began: the outline goes on behind the notes.
    before_notes: Vec<Open>,
    counting: Counting,
}

/// What an outline counts from.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
enum Counting {
    /// From one up.
    #[default]
    FromOne,
    /// `10`, `11`, `12`, `20`.
    InTens,
    /// From any number up: the pages before it are missing.
    Midway,
}

/// Whether a marker is a number of an item and a sign that closes it: `3.`
fn is_plain_number(marker: &Marker) -> bool {
    const HIGHEST: u32 = 40;
    let plain = matches!(marker.parts.as_slice(), [Part::Number(number)] if *number <= HIGHEST);
    plain && marker.close != Close::Nothing
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
            counting: Counting::InTens,
            ..Self::default()
        }
    }

    /// An outline whose first items stand on pages before it.
    pub(crate) fn midway() -> Self {
        Self {
            counting: Counting::Midway,
            ..Self::default()
        }
    }

    /// An outline that counts alike, from the beginning.
    pub(crate) fn afresh(&self) -> Self {
        Self {
            counting: self.counting,
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
                counting: self.counting,
            };
            (!outer.open.is_empty()).then(|| outer.continues(marker, indent))?
        })
    }

    /// Where a marker continues what is open.
    fn continues(&self, marker: &Marker, indent: usize) -> Option<Placement> {
        // `.1` is a part of what stands above it.
        if self.open.is_empty() && marker.close == Close::LedByDot {
            return None;
        }
        if self.open.is_empty() {
            let starts = marker.parts.iter().all(Part::is_first)
                || starts_lettered(&marker.parts)
                || marker.parts == [Part::Number(100)]
                || self.counting == Counting::InTens && marker.parts == [Part::Number(10)]
                || self.counting == Counting::Midway && is_plain_number(marker);
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
            .or_else(|| self.next_chapter(marker, indent))
            .or_else(|| self.next_letter(marker, indent))
            .or_else(|| self.counts_anew(marker, indent));
        if let Some(depth) = next {
            return Some(self.placement(marker, depth));
        }
        let new_scheme = marker.parts.len() == 1
            && marker.parts.iter().all(Part::is_first)
            && self.open.iter().all(|open| {
                !same_scheme(open, marker)
                    || is_roman_within(open, marker, indent)
                    || is_lettered_within(open, marker, indent)
            });
        if new_scheme {
            // `1. Deck` at the margin, below the note `(a) 25% where ...` that stands in the head.
            let plain = matches!(marker.parts.as_slice(), [Part::Number(_)]);
            let of_head = |open: &Open| open.close == Close::Parens && open.indent > indent;
            if plain && marker.close != Close::Parens && self.open.iter().all(of_head) {
                return Some(self.placement(marker, 0));
            }
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

    /// The place of an alternate that has the label of what it may replace: `(g) alternate: strip` behind `(g) Wool`.
    pub(crate) fn alternate(&self, marker: &Marker) -> Option<Placement> {
        let depth = self
            .open
            .iter()
            .rposition(|open| open.parts == marker.parts && open.close == marker.close)?;
        let own = self.open.get(depth)?;
        Some(Placement {
            path: format!("{} alternate", own.path),
            ..self.placement(marker, depth)
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
        // `J-2` is the first, and `J-2(b)` the second.
        let second = marker.label.ends_with("(b)");
        (last.is_first() || second) && !head.is_empty() && (head == open.parts || whole)
    }

    fn placement(&self, marker: &Marker, depth: usize) -> Placement {
        let parent = depth.checked_sub(1).and_then(|above| self.open.get(above));
        Placement {
            path: path(
                parent.map(|open| (open.parts.as_slice(), open.path.as_str())),
                marker,
                if self.counting == Counting::InTens {
                    10
                } else {
                    100
                },
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

/// Whether a marker counts in letters within an item of a Roman numeral: `A.` set in below `II.`.
fn is_lettered_within(open: &Open, marker: &Marker, indent: usize) -> bool {
    let is = |parts: &[Part], test: fn(&Part) -> bool| matches!(parts, [part] if test(part));
    let lettered = is(
        &marker.parts,
        |part| matches!(part, Part::Letters(letters) if matches!(letters.as_str(), "a" | "A")),
    );
    is(&open.parts, Part::is_roman) && lettered && open.indent < indent
}

/// Whether two markers close alike; a missing dot is forgiven.
fn compatible(open: &Open, marker: &Marker) -> bool {
    let loose = |close: Close| match close {
        Close::Dot | Close::Nothing | Close::Colon | Close::Dash => 0,
        Close::Paren => 1,
        Close::Parens => 2,
        Close::Brackets => 3,
        Close::Angles => 4,
        Close::LedByDot => 5,
    };
    open.introduced == marker.introduced
        && (open.introduced || loose(open.close) == loose(marker.close))
}
