//! What a table's caption says of its columns: units and a qualifier.

use measure::Unit;

use super::heading::{Heading, Sense, heading, unit_of};

use super::statements::{Stated, without_mark};
use crate::clauses::limit_heads::heads;
use crate::model::Relation;
use crate::naming::components_in;
use crate::rules::qualifier;

impl Heading {
    /// A unit or qualifier that the caption gives holds for every column that has none of its own: "All measures in mm",
    /// "Number of layers (minimum)".
    pub(super) fn take_from_caption(&mut self, caption: &str) {
        let lower = caption.to_lowercase();
        let unit = [
            ("in mm", Unit::Millimetre),
            ("millimetres", Unit::Millimetre),
            ("in inches", Unit::Inch),
            ("in in.", Unit::Inch),
            (", in.", Unit::Inch),
            ("(in.)", Unit::Inch),
            ("(mm)", Unit::Millimetre),
            (", mm", Unit::Millimetre),
        ];
        let measures = |words: &str| {
            [
                "width",
                "depth",
                "thickness",
                "wall",
                "height",
                "lap",
                "length",
                "spacing",
                "overlap",
                "recess",
                "slab",
                "floor",
                "diameter",
                "film",
                "wet",
                "dry",
                "clearance",
            ]
            .iter()
            .any(|word| words.contains(word))
        };
        let one_system = !((lower.contains("mm") || lower.contains("millimetres"))
            && (lower.contains("inches") || lower.contains("in in.")));
        if self.unit.is_none() && one_system && measures(&self.words.to_lowercase()) {
            self.unit = unit
                .iter()
                .find(|(words, _)| lower.contains(words))
                .map(|(_, unit)| *unit);
        }
        self.unit = self
            .unit
            .or_else(|| named_unit(&lower, &self.words.to_lowercase()));
        self.take_percent(&lower);
        self.measure_as(caption, &lower);
        self.take_limit_of_all(&lower);
        if self.selects.is_none() && self.relation.is_none() {
            let heading = self.words.to_lowercase();
            let stated = Stated::of(&lower);
            let of_each =
                || caption_qualifier(&lower, &heading).filter(|_| each_is_limited(&lower));
            self.relation = stated
                .by_name(&heading)
                .or_else(of_each)
                .or_else(|| stated.beside(&heading));
        }
        let sized =
            super::labelled::names_size(&self.words) || self.words.to_lowercase().contains("per ");
        if self.selects.is_none() && self.unit.is_none() && !sized && lower.contains("layers") {
            self.words = format!("{caption} {}", self.words);
        }
    }
}

impl Heading {
    /// "MOVEMENT, % OF INSTALLED WIDTH" over columns of movements.
    fn take_percent(&mut self, caption: &str) {
        const MOVEMENTS: &[&str] = &["compression", "extension", "shear", "movement"];
        let moves = count(MOVEMENTS, &self.words.to_lowercase()) > 0;
        if self.unit.is_none() && self.selects.is_none() && moves && in_percent(caption) {
            self.unit = Some(Unit::Percent);
        }
    }

    /// "all min." limits every column that has no limit of its own; how it is meant of one that it makes no sense of, nobody knows.
    fn take_limit_of_all(&mut self, caption: &str) {
        let Some(relation) = limit_of_all(caption) else {
            return;
        };
        if self.selects.is_some() || self.relation.is_some() {
            return;
        }
        let heading = self.words.to_lowercase();
        let own = Stated::of(caption).by_name(&heading);
        if own.is_some() {
            self.relation = own;
        } else if suits(relation, &self.words) && !Stated::excepts(caption, &heading) {
            self.relation = Some(relation);
        } else {
            self.limit_unknown = true;
        }
    }

    /// "Least thickness of fireproofing, in. (mm)" over columns that only name places: what each of them measures, and in which units.
    fn measure_as(&mut self, caption: &str, lower: &str) {
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

    /// A row's label that only names a part, under "Minimum lap of joint spray": what is measured there stands in the caption. `column` is what
    /// the labels are headed with: "Onto".
    pub(super) fn named_by(&mut self, caption: &str, column: &str) {
        const ONTO: &[&str] = &[
            "onto",
            "on",
            "over",
            "to",
            "surface",
            "substrate",
            "lap onto",
            "laps onto",
            "against",
        ];
        let lower = caption.to_lowercase();
        let onto = ONTO.contains(&column.trim().to_lowercase().as_str());
        let measures = captions(caption) && count(ATTRIBUTES, &lower) == 1;
        if measures && self.names_no_measure() && (onto || !self.names_another_part(caption)) {
            let joint = if onto { " onto " } else { ", " };
            self.words = format!("{caption}{joint}{}", self.words);
        }
    }

    /// Whether it names a part that the caption doesn't, while the caption names one: a row "Sealant" under "Depth of packing" is no packing's.
    fn names_another_part(&self, caption: &str) -> bool {
        let captioned = components_in(caption);
        !captioned.is_empty()
            && components_in(&self.words)
                .iter()
                .any(|(own, ..)| captioned.iter().all(|(other, ..)| other.name != own.name))
    }

    /// Whether it names a place or a part, or a rating alone, and nothing that is measured or counted there.
    fn names_no_measure(&self) -> bool {
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

/// The limit that a short caption sets for all of its table: "all min.", "(minimum values)", "all dimensions in mm, minimum".
fn limit_of_all(caption: &str) -> Option<Relation> {
    const MOST_WORDS: usize = 16;
    const ALL: &[&str] = &["all", "values", "figures", "dimensions"];
    const UNITS: &[&str] = &["in", "mm", "inch", "inches", "millimetres", "millimeters"];
    if caption.split_whitespace().count() > MOST_WORDS {
        return None;
    }
    // "(min. values)"
    let caption = caption.replace("min. ", "min ").replace("max. ", "max ");
    let pieces: Vec<Vec<&str>> = caption
        .split([',', ';', ':', '(', ')', '.'])
        .map(|piece| {
            piece
                .split(|c: char| !c.is_alphabetic())
                .filter(|word| !word.is_empty())
                .collect()
        })
        .collect();
    let is_of_all = |words: &[&str]| words.iter().any(|word| ALL.contains(word));
    // "all min. or all max.": what another piece limits nobody knows.
    let is_limited = |words: &&Vec<&str>| words.iter().any(|word| qualifier(word).is_some());
    if pieces.iter().filter(is_limited).count() > 1 {
        return None;
    }
    let mut found = pieces.iter().enumerate().filter_map(|(at, words)| {
        let relation = heads(&words.join(" ")).or_else(|| extreme(words))?;
        // "all dimensions in mm, minimum" names no size that the limit could be of alone.
        let before = at.checked_sub(1).and_then(|before| pieces.get(before));
        let behind_all = words.len() == 1
            && before.is_some_and(|before| {
                before.first() == Some(&"all")
                    && before
                        .iter()
                        .all(|word| ALL.contains(word) || UNITS.contains(word))
            });
        (is_of_all(words) || behind_all).then_some(relation)
    });
    found.next().filter(|_| found.next().is_none())
}

/// A caption without the limit that it ends in, and the limit: "Overlap, in inches, *not less than*".
fn without_limit(caption: &str) -> (&str, Option<Relation>) {
    const ENDINGS: &[(&str, Relation)] = &[
        (", not less than", Relation::AtLeast),
        (", not more than", Relation::AtMost),
        (", not exceeding", Relation::AtMost),
    ];
    let caption = caption.trim_end_matches([':', '.', ' ']);
    let limited = ENDINGS
        .iter()
        .find_map(|(ending, relation)| Some((caption.strip_suffix(ending)?, Some(*relation))));
    limited.unwrap_or((caption, None))
}

/// The limit that values are where they are the least or the greatest: "least values".
fn extreme(words: &[&str]) -> Option<Relation> {
    match words {
        ["least" | "lowest" | "smallest", _] => Some(Relation::AtLeast),
        ["greatest" | "largest" | "highest" | "most", _] => Some(Relation::AtMost),
        _ => None,
    }
}

/// The unit that a caption gives the column by its name: "thickness in in., density in pcf".
fn named_unit(caption: &str, heading: &str) -> Option<Unit> {
    let pieces = caption.split([',', ';', ':', '(', ')']);
    let mut units = pieces.filter_map(|piece| {
        let (name, unit) = piece.trim().rsplit_once(" in ")?;
        let unit = unit_of(unit.trim())?;
        let named = heading.trim() == name.trim();
        named.then_some(unit)
    });
    units.next().filter(|_| units.next().is_none())
}

/// Whether a caption says that movements are in percent.
fn in_percent(caption: &str) -> bool {
    caption.contains("movement")
        && [", % of", "(% of", "(%)", ", percent of", "in percent of"]
            .iter()
            .any(|words| caption.contains(words))
}

/// How many of a text's words are among others.
fn count(among: &[&str], text: &str) -> usize {
    text.split(|c: char| !c.is_alphabetic())
        .filter(|word| among.contains(word))
        .count()
}

/// The unit that closes a caption behind a comma, and the second one in parentheses.
fn units_at_the_end(caption: &str) -> Option<(Unit, Option<Unit>)> {
    let (_, end) = caption.trim_end_matches(['.', ':', ' ']).rsplit_once(',')?;
    Some(match end.trim() {
        "in. (mm" | "in. (mm)" | "inches (mm)" | "in (mm)" => (Unit::Inch, Some(Unit::Millimetre)),
        "mm (in.)" | "mm (in.)." | "mm (in" | "mm (inches)" => (Unit::Millimetre, Some(Unit::Inch)),
        "in" | "inches" | "in inches" => (Unit::Inch, None),
        "mm" | "in mm" | "millimetres" => (Unit::Millimetre, None),
        _ => return None,
    })
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
struct Bracketed {
    size: String,
    unit: Unit,
    limit: Option<Relation>,
}

/// `Depths (minimum, mm):`, `Depth of sealant (mm, min.)`
fn size_in_brackets(caption: &str) -> Option<Bracketed> {
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
fn size_of_a_piece(caption: &str) -> Option<Heading> {
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
pub(super) fn sizes_another(caption: &str, column: &Heading) -> bool {
    let heading = column.words.to_lowercase();
    let shares = |size: &Heading| {
        let mut both = ATTRIBUTES.iter();
        both.any(|own| size.words.contains(own) && heading.contains(own))
    };
    column.rating.is_none()
        && size_of_a_piece(&caption.to_lowercase()).is_some_and(|size| !shares(&size))
}

/// The pieces of a caption, each of which says a thing of its own.
fn pieces(caption: &str) -> Vec<&str> {
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
pub(super) const ATTRIBUTES: &[&str] = &[
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

/// What a column counts that a caption seldom means.
const COUNTED: &[&str] = &["faces", "sides", "rows", "beads", "passes", "lifts"];

/// The qualifier that a caption gives a column: "Minimum packing depth", "Number of layers (minimum)". A caption that names several attributes
/// says it of one of them, nobody knows which.
pub(super) fn caption_qualifier(caption: &str, heading: &str) -> Option<Relation> {
    const LONGEST: usize = 12;
    let words = || {
        caption
            .split(|c: char| !c.is_alphabetic())
            .filter(|word| !word.is_empty())
    };
    let attributes: Vec<&str> = words().filter(|word| ATTRIBUTES.contains(word)).collect();
    let short = (each_is_limited(caption) || words().count() <= LONGEST)
        && !caption.contains(" shall ")
        && !caption.contains(" applies ");
    let of_another = ATTRIBUTES
        .iter()
        .chain(COUNTED)
        .any(|attribute| heading.contains(attribute) && !attributes.contains(attribute));
    let one =
        each_is_limited(caption) || attributes.len() <= 1 || attributes == ["number", "layers"];
    // "All dimensions in mm, minimum values" names none, and means them all.
    let of_all = each_is_limited(caption) && attributes.is_empty();
    // Of "at most the minimum" nobody can say which it is; and "min 4 pcf" limits its own number.
    let free = without_numbers(caption);
    let free = free
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty());
    let mut limits = free.filter_map(qualifier);
    let limit = limits.next();
    let agreed = limits.all(|other| Some(other) == limit);
    limit
        .filter(|_| short && one && agreed && (of_all || !of_another))
        .filter(|relation| !of_all || suits(*relation, heading))
}

/// A caption without the numbers in it and the words right beside them.
fn without_numbers(caption: &str) -> String {
    let words: Vec<&str> = caption.split_whitespace().collect();
    let is_number = |at: usize| {
        let word = words.get(at);
        word.is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit()))
    };
    let kept = words
        .iter()
        .enumerate()
        .filter(|(at, _)| !is_number(*at) && !is_number(at + 1));
    kept.map(|(_, word)| *word).collect::<Vec<_>>().join(" ")
}

/// "thickness and depth are minimum values" says it of each.
fn each_is_limited(caption: &str) -> bool {
    ["minimum values", "maximum values"]
        .iter()
        .any(|words| caption.contains(words))
}

/// What a sentence behind a table says of all its values: "All values are minimums." One that names what it is about, "All clip spacings are
/// maximums", is not about the others.
pub(in crate::clauses) fn said_of_all(sentence: &str) -> Option<Relation> {
    const GENERIC: &[&str] = &[
        "all",
        "the",
        "these",
        "values",
        "figures",
        "dimensions",
        "numbers",
        "entries",
        "given",
        "shown",
        "above",
        "stated",
        "table",
        "in",
        "of",
    ];
    let lower = sentence.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty())
        .collect();
    let verb = words
        .iter()
        .position(|word| matches!(*word, "are" | "being"))?;
    let (about, said) = (words.get(..verb)?, words.get(verb + 1..)?);
    let generic =
        about.iter().all(|word| GENERIC.contains(word)) && about.iter().any(|word| *word != "the");
    // "Values are minimum unless marked otherwise": what is marked says so itself.
    let said = match said {
        [
            limit @ ..,
            "unless",
            "otherwise",
            "marked" | "noted" | "stated" | "shown" | "indicated",
        ]
        | [
            limit @ ..,
            "unless",
            "marked" | "noted" | "stated" | "shown" | "indicated",
            "otherwise",
        ] => limit,
        said => said,
    };
    match said {
        ["minimum" | "minimums" | "minima"] | ["minimum", "values"] => Some(Relation::AtLeast),
        ["maximum" | "maximums" | "maxima"] | ["maximum", "values"] => Some(Relation::AtMost),
        ["nominal"] => Some(Relation::Nominal),
        _ => None,
    }
    .filter(|_| generic)
}

/// Whether a limit makes sense of what a heading names: a least spacing or gap, and a most depth, lap or thickness, are something else's.
pub(super) fn suits(relation: Relation, heading: &str) -> bool {
    const APART: &[&str] = &[
        "spacing", "centres", "centers", "o.c", "gap", "pitch", "distance", "interval", "apart",
        "movement", "width",
    ];
    const LARGE: &[&str] = &[
        "depth",
        "lap",
        "overlap",
        "thickness",
        "thick",
        "density",
        "compression",
        "film",
        "wet",
        "dry",
        "embedment",
        "bond",
        "layers",
        "coats",
    ];
    let lower = heading.to_lowercase();
    let names = |words: &[&str]| words.iter().any(|word| lower.contains(word));
    match relation {
        Relation::AtLeast => !names(APART),
        Relation::AtMost => !names(LARGE),
        _ => true,
    }
}

/// Whether a caption sets a limit that no number of its own takes: "minimum values by width", and not "joints up to 4 in. max".
pub(super) fn sets_a_limit(caption: &str) -> bool {
    let words: Vec<&str> = caption
        .split(|c: char| c.is_whitespace() || matches!(c, '(' | ')' | ',' | ';' | ':'))
        .filter(|word| !word.is_empty())
        .collect();
    let is_number = |at: usize| {
        let word = words.get(at);
        word.is_some_and(|word| word.contains(|c: char| c.is_ascii_digit()))
    };
    let limits = |word: &&str| {
        matches!(
            word.trim_end_matches('.').to_lowercase().as_str(),
            "min" | "minimum" | "minimums" | "minima" | "max" | "maximum" | "maximums" | "maxima"
        )
    };
    words.iter().enumerate().any(|(at, word)| {
        let near = at.saturating_sub(2)..=at + 2;
        limits(word) && !near.into_iter().any(is_number)
    })
}

/// Whether a paragraph before a table speaks of the table.
pub(super) fn captions(caption: &str) -> bool {
    let lower = caption.to_lowercase();
    lower.starts_with("table")
        || lower.contains("in mm")
        || lower.contains("in inches")
        || lower.contains("dimensions")
        || lower.contains("all dims in ")
        || lower.starts_with("min")
        || lower.starts_with("max")
        || units_at_the_end(&lower).is_some()
        || size_in_brackets(&lower).is_some()
        || size_of_a_piece(&lower).is_some()
        || in_percent(&lower)
        || limit_of_all(&lower).is_some()
        || !Stated::of(&lower).is_nothing()
}
