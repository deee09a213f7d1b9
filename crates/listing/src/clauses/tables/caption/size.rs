//! The size that a caption names for columns that only say where or for which joints: `Depth of sealant (mm, min.)`.

use measure::Unit;

use super::super::heading::{Heading, Sense, heading, unit_of};
use super::super::statements::without_mark;
use super::count;
use super::limit::without_limit;
use super::unit::units_at_the_end;
use crate::model::Relation;
use crate::naming::components_in;
use crate::rules::qualifier;

impl Heading {
    /// "Least thickness of fireproofing, in. (mm)" over columns that only name places: what each of them measures, and in which units.
    pub(super) fn measure_as(&mut self, caption: &str, lower: &str) {
        const LENGTHS: &[&str] = &[
            "thickness",
            "depth",
            "lap",
            "overlap",
            "recess",
            "spacing",
            "width",
            "length",
        ];
        let is_place = self.unit.is_none() && self.relation.is_none() && self.names_no_measure();
        let said = size_in_units(without_mark(lower));
        if let Some((size, unit)) = said.filter(|_| is_place) {
            self.unit = Some(unit);
            self.sense = Sense::AtPlace;
            self.words = format!("{size} at {}", self.words);
            return;
        }
        if let Some((size, limit)) = size_alone(lower).filter(|_| is_place) {
            self.relation = limit;
            self.sense = Sense::AtPlace;
            self.words = format!("{size} at {}", self.words);
            return;
        }
        if let Some(said) = size_in_brackets(lower).filter(|_| is_place) {
            self.unit = Some(said.unit);
            self.relation = said.limit;
            self.words.insert_str(0, &format!("{} ", said.size));
            self.words.truncate(self.words.trim_end().len());
            return;
        }
        let of_cases_alone = is_place && self.words.is_empty();
        if let Some(said) = size_of_a_piece(lower).filter(|_| of_cases_alone) {
            self.unit = said.unit;
            self.second_unit = said.second_unit;
            self.relation = said.relation;
            self.words = said.words;
            return;
        }
        let measures = count(LENGTHS, lower) == 1 && count(ATTRIBUTES, lower) == 1;
        let (lower, limit) = without_limit(lower);
        let caption = caption.get(..lower.len()).unwrap_or(caption);
        let in_words = || {
            let (_, unit) = lower.rsplit_once(", in ")?;
            Some((unit_of(unit.trim())?, None))
        };
        let units = units_at_the_end(lower).or_else(in_words);
        if let Some((unit, second)) = units.filter(|_| is_place && measures) {
            self.unit = Some(unit);
            self.second_unit = second;
            self.relation = limit;
            let said = caption.rsplit_once(',').map_or(caption, |(said, _)| said);
            // "Joint to 4 in., glass" only tells for which joints the overlap is.
            let tells_joints = components_in(&self.words)
                .iter()
                .any(|(own, ..)| own.name == "joint");
            if tells_joints {
                self.sense = Sense::AtPlace;
                self.words = format!("{said} at {}", self.words);
            } else if !self.names_another_part(caption) {
                self.words = format!("{said} {}", self.words);
            }
        }
    }

    /// Whether it names a part that the caption doesn't, while the caption names one: a row "Sealant" under "Depth of packing" is no packing's.
    pub(super) fn names_another_part(&self, caption: &str) -> bool {
        let captioned = components_in(caption);
        !captioned.is_empty()
            && components_in(&self.words)
                .iter()
                .any(|(own, ..)| captioned.iter().all(|(other, ..)| other.name != own.name))
    }

    /// Whether it names a place or a part, or a rating alone, and nothing that is measured or counted there.
    pub(super) fn names_no_measure(&self) -> bool {
        const COUNTED: &[&str] = &[
            "no", "number", "qty", "clips", "screws", "layers", "coats", "plies", "ga", "gauge",
            "density", "percent", "class", "rating", "option", "passes", "mark", "ref",
        ];
        let words = self.words.to_lowercase();
        self.selects.is_none()
            && self.rating.is_some() == words.is_empty()
            && !words.contains('%')
            && count(ATTRIBUTES, &words) + count(COUNTED, &words) == 0
    }
}

/// What a caption says that is a size and no more: `Minimum thickness:` over columns that name places.
fn size_alone(caption: &str) -> Option<(&'static str, Option<Relation>)> {
    const SIZES: [&str; 4] = ["thickness", "depth", "length", "lap"];
    let mut words = caption.trim_end_matches([':', '.', ' ']).split(' ');
    let size = words.next_back()?;
    let size = SIZES.iter().find(|own| **own == size)?;
    let limit = words.next().map(qualifier);
    let whole = words.next().is_none() && limit != Some(None);
    whole.then_some((*size, limit.flatten()))
}

/// What a caption says that is a size, with its limit and its unit in brackets.
pub(super) struct Bracketed {
    size: String,
    unit: Unit,
    limit: Option<Relation>,
}

/// `Depths (minimum, mm):`, `Depth of sealant (mm, min.)`
pub(super) fn size_in_brackets(caption: &str) -> Option<Bracketed> {
    let caption = caption.trim_end_matches([':', '.', ' ']);
    let (name, said) = caption.strip_suffix(')')?.split_once(" (")?;
    let mut unit = None;
    let mut limit = None;
    for piece in said.split(',').map(str::trim) {
        if let Some(relation) = qualifier(piece.trim_end_matches('.')) {
            limit = Some(relation).filter(|_| limit.is_none());
        } else {
            unit = Some(unit_of(piece)?).filter(|_| unit.is_none());
        }
    }
    let words = name.split(' ').map(|word| match word.strip_suffix('s') {
        Some(one) if ATTRIBUTES.contains(&one) => one,
        _ => word,
    });
    let size = words.collect::<Vec<_>>().join(" ");
    let measured = count(ATTRIBUTES, &size) == 1 && !name.contains([',', ';', ':']);
    Some(Bracketed {
        size,
        unit: unit.filter(|_| measured)?,
        limit,
    })
}

/// What the one piece of a caption says that names a size with its unit, of columns that only say for which joints they are: "Strip in wall joints: least
/// depth, mm (in.). One piece.", "Minimum depth of sealant in mm, each face", "Recess, max:". One with a number may limit that.
pub(super) fn size_of_a_piece(caption: &str) -> Option<Heading> {
    const MOST_WORDS: usize = 8;
    let pieces = pieces(without_mark(caption.trim_end_matches([':', '.', ' '])));
    let last = pieces.last().copied();
    let mut sizes = pieces.iter().filter_map(|piece| {
        let said = heading(piece);
        let lower = *piece;
        let of_length = said
            .unit
            .is_some_and(|unit| unit.dimension() == measure::Dimension::Length);
        // "Depth of packing (not more than):" over cells with units of their own.
        let limited = said.unit.is_none()
            && said.is_limited()
            && last == Some(*piece)
            && piece.split_whitespace().count() <= MOST_WORDS;
        let plain = said.selects.is_none()
            && said.rating.is_none()
            && !said.unit_unknown
            && said.sense == Sense::Value
            && !piece.contains(|c: char| c.is_ascii_digit());
        let one = count(ATTRIBUTES, lower) == 1;
        let words = naming(piece).filter(|_| (of_length || limited) && plain && one)?;
        Some(Heading {
            words: words.to_owned(),
            ..said
        })
    });
    sizes.next().filter(|_| sizes.next().is_none())
}

/// The words of a piece of a caption, in small letters, that name the size in it: from its limit on, or else from the last comma before it. None where
/// there are two limits, or one that may be of something else.
fn naming(piece: &str) -> Option<&str> {
    const FARTHEST: usize = 4;
    let mut words = Vec::new();
    let mut at = 0;
    for word in piece.split(|c: char| !c.is_alphabetic()) {
        words.push((at, word));
        at += word.len()
            + piece
                .get(at + word.len()..)
                .and_then(|rest| rest.chars().next())
                .map_or(0, char::len_utf8);
    }
    let size = words
        .iter()
        .position(|(_, word)| ATTRIBUTES.contains(word))?;
    let limits: Vec<usize> = (0..words.len())
        .filter(|at| {
            words
                .get(*at)
                .is_some_and(|(_, word)| qualifier(word).is_some())
        })
        .collect();
    let place = |word: usize| words.get(word).map(|(at, _)| *at);
    let to_size = |from: usize| piece.get(from..place(size)?);
    match limits[..] {
        [limit] if limit < size => {
            let near = size - limit <= FARTHEST && !to_size(place(limit)?)?.contains([',', '(']);
            piece.get(place(limit)?..).filter(|_| near)
        }
        [_] | [] => {
            let before = to_size(0)?;
            let own = piece.get(before.len()..)?;
            // "wall joints depth of sealant"
            if own.split(' ').nth(1) == Some("of") {
                return Some(own);
            }
            let behind = before.rfind([',', '(']).map_or(0, |at| at + 1);
            let words = piece.get(behind..)?;
            Some(words.trim_start_matches(|c: char| !c.is_alphabetic()))
        }
        _ => None,
    }
}

/// Whether a caption names a size that isn't the column's: what is the least of it is none of the column's. "Least depth, mm, and the plate that carries it"
/// says of a column of depths by rating, and beside it of `Steel plate`.
pub(in crate::clauses::tables) fn sizes_another(caption: &str, column: &Heading) -> bool {
    let heading = column.words.to_lowercase();
    let shares = |size: &Heading| {
        let mut both = ATTRIBUTES.iter();
        both.any(|own| size.words.contains(own) && heading.contains(own))
    };
    column.rating.is_none()
        && size_of_a_piece(&caption.to_lowercase()).is_some_and(|size| !shares(&size))
}

/// The pieces of a caption, each of which says a thing of its own.
pub(super) fn pieces(caption: &str) -> Vec<&str> {
    let ends = |at: usize, sign: &str| match sign {
        "." => {
            let (before, behind) = caption.split_at(at);
            let word = before.rsplit([' ', '(']).next().unwrap_or_default();
            behind.starts_with(". ") && unit_of(word).is_none() && qualifier(word).is_none()
        }
        "," => caption
            .get(at..)
            .is_some_and(|rest| rest.starts_with(", and ")),
        _ => true,
    };
    let mut pieces = Vec::new();
    let mut start = 0;
    for (at, sign) in caption.match_indices(['.', ';', ':', ',']) {
        // `mm (in.). Strip`
        let closed = sign == "."
            && caption
                .get(..at)
                .is_some_and(|before| before.ends_with(')'));
        if closed || ends(at, sign) {
            pieces.extend(caption.get(start..at));
            start = at + 1;
        }
    }
    pieces.extend(caption.get(start..));
    pieces.into_iter().map(str::trim).collect()
}

/// What a caption that is a size and its unit alone says: "thicknesses in inches".
fn size_in_units(caption: &str) -> Option<(&'static str, Unit)> {
    const SIZES: &[(&str, &str)] = &[
        ("thicknesses", "thickness"),
        ("depths", "depth"),
        ("lengths", "length"),
        ("laps", "lap"),
    ];
    let caption = caption.trim_end_matches(['.', ':', ' ']);
    let (sizes, unit) = caption.rsplit_once(" in ")?;
    let sizes = sizes.trim().trim_start_matches("all ");
    let (_, size) = SIZES
        .iter()
        .find(|(many, one)| [*many, *one].contains(&sizes))?;
    let unit = match unit {
        "inches" | "in" => Unit::Inch,
        "mm" | "millimetres" | "millimeters" => Unit::Millimetre,
        _ => return None,
    };
    Some((size, unit))
}

/// Attributes as captions name them.
pub(in crate::clauses::tables) const ATTRIBUTES: &[&str] = &[
    "depth",
    "thickness",
    "width",
    "spacing",
    "lap",
    "overlap",
    "layers",
    "recess",
    "compression",
    "density",
    "length",
    "coats",
    "number",
];
