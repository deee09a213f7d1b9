//! Numbers that are none of the properties their words bring to mind: what is added to something, what is left of something, how far a thing varies,
//! the size of a part of it.

use measure::{Dimension, Number, Quantity, Unit};
use vocabulary::{Property, vocabulary};

use super::{Mention, Subject, components_in, movements};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether the words about a number say that it is no property at all, whatever they name.
pub(super) fn stands_apart(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        is_alternative(sentence, index)
            || is_apart(sentence, amount.first)
            || counts_a_measure(sentence, amount)
            || is_left(sentence, amount)
            || is_variation(sentence, amount)
            || movements::is_one_of_several(sentence, amount)
    })
}

/// Whether a number is none that the property could have, or of a part of the thing: "flange 50 mm thick" of a slab.
pub(super) fn is_no_size_of(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    !is_plausible(amount.lo, amount.hi, amount.unit, property)
        || is_film(sentence, amount, property)
        || is_added(sentence, amount, property)
        || is_no_sheet(amount, property)
        || is_no_wall(amount, property)
        || is_in_mils(amount, property)
        || is_of_a_part(sentence, amount, property)
        || is_no_joint_width(sentence, amount, property)
        || is_per_measure(sentence, amount, property)
        || is_rate(sentence, amount, property)
        || is_how_near(sentence, amount, property)
        || is_layered_of_another(sentence, amount, property)
        || is_of_one_piece(sentence, amount, property)
        || is_of_contact(sentence, amount, property)
        || is_how_much_of_another(sentence, amount, property)
}

/// Whether a number is one that a property has in some building: a wall of 1/16 in. and wool of 110 pcf are something else's.
pub(crate) fn is_plausible(
    lo: Number,
    hi: Option<Number>,
    unit: Unit,
    property: &Property,
) -> bool {
    is_of_its_dimension(unit, property)
        && property.is_plausible(Quantity::new(hi.unwrap_or(lo), unit))
}

/// Whether a property may be said in a unit: hours are no joint's width. A length may be said as a share of the joint's.
fn is_of_its_dimension(unit: Unit, property: &Property) -> bool {
    let (own, said) = (property.dimension(), unit.dimension());
    own.is_none_or(|own| own == said || own == Dimension::Length && said == Dimension::JointWidths)
}

/// Whether a property is a size that a thing has by itself, wherever it stands.
pub(super) fn is_size(property: &Property) -> bool {
    const SIZES: &[&str] = &[
        "width",
        "thickness",
        "steel_thickness",
        "length",
        "leg_length",
        "gauge",
        "height",
        "diameter",
    ];
    SIZES.contains(&property.attribute.as_str())
}

/// Whether a property is of what things stand in or are made of, and not of a thing that is carried.
pub(super) fn is_of_place(property: &Property) -> bool {
    ["joint", "floor", "wall", "concrete"].contains(&property.component.as_str())
}

/// Whether a number is what is added to something else or taken from it, "the thickness of the material plus 1/8 in.", "full depth less 1 in.", and
/// no length beyond it.
fn is_added(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let added = amount
        .first
        .checked_sub(1)
        .is_some_and(|at| sentence.is_any(at, &["plus", "less", "minus"]));
    added && !property.attribute.contains("beyond")
}

/// Whether a number is of a film, wet or dry, and the property of nothing that is laid on wet: "over the forming material to 1/8 in. wet".
fn is_film(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const LAID_WET: &[&str] = &["coating", "sealant", "fireproofing", "primer", "barrier"];
    let after = sentence.skip_parentheses(amount.last);
    let wet = |at: usize| sentence.is_any(at, &["wet", "dry"]);
    let film = amount.first + 1 < amount.last && wet(amount.first + 1)
        || wet(amount.last)
        || wet(after)
        || sentence.is_any(after, &["in", "when", "of"]) && wet(after + 1);
    film && amount.unit.dimension() == Dimension::Length
        && !LAID_WET.contains(&property.component.as_str())
}

/// Whether a number says how much a thing may vary, and not how large it is: "shall not vary by more than 1/8 in."
fn is_variation(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const VARY: &[&str] = &[
        "vary",
        "varies",
        "varying",
        "deviate",
        "deviates",
        "depart",
        "departs",
        "differ",
        "differs",
        "variation",
        "deviation",
    ];
    const REACH: usize = 10;
    // "shall not vary from 4 in. by more than 1/8 in."
    let measures = |at: usize| {
        let other = sentence
            .amount_at(at)
            .and_then(|index| sentence.amount(index));
        other.is_some_and(|other| other.first == 0 || !sentence.is_word(other.first - 1, "from"))
    };
    (amount.first.saturating_sub(REACH)..amount.first)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && !measures(*at))
        .any(|at| sentence.is_any(at, VARY))
}

/// Whether the word right before or after a number names a part that the property isn't of: "flange 50 mm thick".
fn is_of_a_part(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const PARTS: &[(&str, &[&str])] = &[
        ("flange", &["flange", "leg"]),
        ("flanges", &["flange", "leg"]),
        ("stem", &["stem"]),
        ("stems", &["stem"]),
        ("web", &["web"]),
        ("lip", &["lip"]),
        ("lips", &["lip"]),
        ("hole", &["hole"]),
        ("holes", &["hole"]),
        ("slot", &["slot"]),
        ("slots", &["slot"]),
        ("overlap", &["lap"]),
        ("lap", &["lap"]),
    ];
    const BOUNDING: &[&str] = &[
        "min", "minimum", "max", "maximum", "nom", "nominal", "not", "no", "never", "less", "more",
        "than", "at", "least", "most", "of", "is", "are", "a",
    ];
    let floor = amount.first.saturating_sub(5);
    let before = (floor..amount.first)
        .rev()
        .find(|at| !sentence.is_any(*at, BOUNDING))
        .map(|at| sentence.word(at));
    let named = PARTS.iter().find(|(part, _)| before == Some(*part));
    named.is_some_and(|(_, attributes)| {
        !attributes
            .iter()
            .any(|part| property.attribute.contains(part))
    })
}

/// Whether a number is how far one thing touches another, and no size of it: "adhesion width on both flanks at least 10 mm".
fn is_of_contact(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const CONTACT: &[&str] = &[
        "adhesion", "adhesive", "bond", "bonding", "bonded", "contact", "bearing",
    ];
    const MEASURES: &[&str] = &["width", "depth", "length", "thickness", "height"];
    const REACH: usize = 8;
    let of_contact = |word: &str| property.attribute.contains(word.trim_end_matches("ing"));
    let right_before = amount.first > 0
        && is_size(property)
        && sentence.is_any(amount.first - 1, &["bonded", "adhered", "bearing"]);
    right_before
        || (amount.first.saturating_sub(REACH)..amount.first)
            .rev()
            .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
            .any(|at| {
                at > 0
                    && sentence.is_any(at, MEASURES)
                    && sentence.is_any(at - 1, CONTACT)
                    && !of_contact(sentence.word(at - 1))
            })
}

/// Whether a number is how much of a thing there is, and no distance: "at splices at least 10 mm sealant".
fn is_how_much_of_another(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const LAID: &[&str] = &[
        "sealant",
        "coating",
        "mastic",
        "caulk",
        "wool",
        "fireproofing",
    ];
    let placing =
        property.attribute.ends_with("spacing") || property.attribute.ends_with("distance");
    placing
        && sentence.is_any(amount.last, LAID)
        && !sentence.has_any(
            amount.last + 1,
            amount.last + 3,
            &["spacing", "centers", "centres", "joints"],
        )
}

/// The length of a screw behind its size: `No. 8 by 1/2 in. pan head screw`.
pub(super) fn screw_length(sentence: &Sentence<'_>, index: usize) -> Option<&'static Property> {
    let before = sentence.amount(index.checked_sub(1)?)?;
    let own = sentence.amount(index)?;
    let sized = before.unit == Unit::ScrewNumber && own.unit.dimension() == Dimension::Length;
    let by = own.first == before.last + 1
        && (sentence.is_any(before.last, &["by", "x"]) || sentence.is_sign(before.last, '×'));
    (sized && by).then(|| vocabulary().property("fastener.length"))?
}

/// Whether a number says how near something must be, which is no length or width of it: "a pin inside the last 3 in."
fn is_how_near(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const SIZES: &[&str] = &["length", "width", "depth", "thickness", "height"];
    let near = (amount.first.saturating_sub(3)..amount.first)
        .any(|at| sentence.is_any(at, &["within", "inside"]))
        || (amount.first.saturating_sub(5)..amount.first)
            .any(|at| sentence.is_any(at, &["bearing", "bear", "bears", "lying"]));
    near && SIZES.contains(&property.attribute.as_str())
}

/// The joint's width where the words right before a length name it, whatever the sentence is about: "25 percent of the joint width of up to 4 in."
pub(super) fn joint_width(sentence: &Sentence<'_>, amount: &Amount) -> Option<&'static Property> {
    const LEADS: &[&str] = &[
        "of",
        "is",
        "up",
        "to",
        "not",
        "no",
        "over",
        "under",
        "exceeds",
        "exceeding",
        "exceed",
        "than",
        "at",
        "most",
        "least",
    ];
    // "the joint width less 1/2 in." takes something from it.
    let compares = |at: usize| {
        sentence.is_any(at, &["less", "more", "greater"]) && sentence.is_word(at + 1, "than")
    };
    let width = (0..amount.first).rev().find(|at| {
        !sentence.is_any(*at, LEADS) && !compares(*at) && !super::cues::is_comparing(sentence, *at)
    })?;
    let joint = width.checked_sub(1)?;
    let led = joint
        .checked_sub(1)
        .is_some_and(|led| sentence.is_any(led, &["the", "of", "to", "provided", "where", "a"]));
    let is_named = sentence.is_word(width, "width") && sentence.is_word(joint, "joint") && led;
    let length = amount.unit.dimension() == Dimension::Length;
    (is_named && length && width + 1 < amount.first)
        .then(|| vocabulary().property("joint.width"))?
}

/// The rating of the joint that its letter names, whatever else the sentence speaks of: `achieved an F rating of 2 hours`.
pub(super) fn lettered_rating(
    sentence: &Sentence<'_>,
    amount: &Amount,
) -> Option<&'static Property> {
    const REACH: usize = 8;
    if amount.unit.dimension() != Dimension::Time {
        return None;
    }
    let floor = amount.first.saturating_sub(REACH);
    let rating = (floor..amount.first).rev().find(|at| {
        sentence.is_any(
            *at,
            &[
                "rating",
                "f-rating",
                "t-rating",
                "ft-rating",
                "fh-rating",
                "fth-rating",
            ],
        )
    })?;
    let plain = (rating..amount.first).all(|at| !sentence.is_stop(at) || sentence.is_sign(at, ':'));
    let letters = match sentence.word(rating).strip_suffix("-rating") {
        Some(letters) => letters,
        None => sentence.word(rating.checked_sub(1)?),
    };
    let known = plain && ["f", "t", "ft", "fh", "fth"].contains(&letters);
    known.then(|| vocabulary().property(&format!("joint.{letters}_rating")))?
}

/// Whether a number is another way to say the one before it, in another measure: `25 percent of the width, or 5/16 in., whichever is less`.
fn is_alternative(sentence: &Sentence<'_>, index: usize) -> bool {
    const REACH: usize = 10;
    let before = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before));
    let Some((own, before)) = sentence.amount(index).zip(before) else {
        return false;
    };
    let offered = own.first > 0 && sentence.is_word(own.first - 1, "or");
    offered
        && own.unit.dimension() != before.unit.dimension()
        && sentence.has_any(own.last, own.last + REACH, &["whichever"])
}

/// Whether a number is no property of what it stands beside: the stretch that something is done on ("every 8 ft", "in each 20 ft"), or what is
/// added to something else ("the joint width + 60 mm").
fn is_apart(sentence: &Sentence<'_>, first: usize) -> bool {
    let Some(before) = first.checked_sub(1) else {
        return sentence.is_sign(first, '+');
    };
    let measured = sentence
        .amounts
        .iter()
        .any(|amount| amount.first == first && amount.unit.dimension() == Dimension::Length);
    let stretch = measured && sentence.is_any(before, &["every", "each", "per"]);
    stretch || sentence.is_sign(first, '+') || sentence.is_sign(before, '+')
}

/// Whether a count is of a measure taken from things, and of none of them: "offset at least one stud space", "five bolt diameters".
fn counts_a_measure(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const MEASURES: &[&str] = &[
        "space",
        "spaces",
        "bay",
        "bays",
        "diameter",
        "diameters",
        "width",
        "widths",
    ];
    // "two to each batt" counts what was spoken of before.
    let to_each = sentence.is_word(amount.last, "to");
    amount.unit == Unit::Count
        && (to_each || sentence.has_any(amount.last, amount.last + 2, MEASURES))
}

/// Whether a share is what is left of a thing that is squeezed, and no compression: "compressed *to* two-thirds of its free thickness".
fn is_left(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const REACH: usize = 7;
    const BEFORE_SHARE: &[&str] = &[
        "between",
        "a",
        "an",
        "the",
        "about",
        "at",
        "no",
        "not",
        "min",
        "minimum",
        "max",
        "maximum",
        "approximately",
        "approx",
        "nominally",
        "nominal",
        "from",
        "roughly",
        "less",
        "more",
        "under",
        "below",
        "over",
        "above",
    ];
    let before = amount.first.saturating_sub(REACH)..amount.first;
    let mut before = before
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && !sentence.is_word(*at, "by"));
    let to = before.find(|at| sentence.is_any(*at, &["to", "below", "under"]));
    // "compressed to fit" is followed by no share.
    let to = to.filter(|to| to + 1 == amount.first || sentence.is_any(to + 1, BEFORE_SHARE));
    // "to the extent of 25 percent" is how far it is squeezed.
    let how_far = |to: usize| sentence.has_any(to, amount.first, &["extent", "compression"]);
    let squeezed = to.filter(|to| !how_far(*to)).is_some_and(|to| {
        (to.saturating_sub(3)..to).any(|at| {
            let word = sentence.word(at);
            word.starts_with("compress") || word.starts_with("squeez")
        })
    });
    let of_it = sentence.is_word(sentence.skip_parentheses(amount.last), "of");
    let fraction = (amount.first..amount.last).any(|at| {
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_some())
    });
    // "compressed to 60 percent" says not of what, and is more than wool is squeezed by.
    let more_than_half = amount.lo >= 50;
    amount.unit == Unit::Percent && (fraction || of_it || more_than_half) && squeezed
}

/// Whether only a word that may mean a piece of anything names what a property is about: "supplied in lengths of 10 ft".
pub(super) fn of_any_piece(property: &Property, subject: &Subject, mentions: &[Mention]) -> bool {
    const PIECES: &[&str] = &[
        "length", "lengths", "piece", "pieces", "flange", "flanges", "web", "webs",
    ];
    let mut named = mentions
        .iter()
        .filter(|mention| mention.component.name == property.component)
        .peekable();
    !subject.is_about(&property.component)
        && named.peek().is_some()
        && named.all(|mention| PIECES.contains(&mention.words.as_str()))
}

/// Whether a thickness is more than any sheet's: an inch and over.
fn is_no_sheet(amount: &Amount, property: &Property) -> bool {
    property.attribute == "steel_thickness"
        && Quantity::new(amount.lo, amount.unit)
            .to(Unit::Inch)
            .is_none_or(|thickness| thickness.number >= 1)
}

/// Whether a thickness is less than any wall's or slab's: that of a mullion's or a pipe's wall.
fn is_no_wall(amount: &Amount, property: &Property) -> bool {
    const PARTS: &[&str] = &["wall", "floor", "concrete"];
    property.attribute == "thickness"
        && PARTS.contains(&property.component.as_str())
        && amount.hi.is_none()
        && Quantity::new(amount.lo, amount.unit)
            .to(Unit::Inch)
            .is_some_and(|thickness| thickness.number < 1)
}

/// Whether a length is of something at the joint, and no width of it: "compressed together by 10 mm at every joint", "differences in level of the
/// flanges shall not exceed 3/8 in. in joints up to 2 in. wide".
fn is_no_joint_width(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const REACH: usize = 12;
    const WIDTHS: &[&str] = &[
        "width", "widths", "wide", "opening", "openings", "gap", "gaps",
    ];
    const OTHERS: &[&str] = &[
        "compress", "bond", "level", "stagger", "offset", "lap", "overlap", "recess", "project",
        "deep", "depth", "thick", "high", "height", "batten",
    ];
    if property.name != "joint.width" {
        return false;
    }
    let stops = |at: &usize| sentence.is_stop(*at) || sentence.is_sign(*at, '.');
    let before = (amount.first.saturating_sub(REACH)..amount.first)
        .rev()
        .take_while(|at| !stops(at) && sentence.amount_at(*at).is_none());
    let after = (amount.last..amount.last + REACH)
        .take_while(|at| !stops(at) && sentence.amount_at(*at).is_none());
    let near: Vec<usize> = before
        .chain(after)
        .filter(|at| !sentence.in_condition(*at))
        .collect();
    // `1/2 in. depth into max 2 in. joint`
    let behind = sentence.skip_parentheses(amount.last);
    let of_joint = sentence.is_any(behind, &["joint", "joints"])
        && sentence
            .token(behind + 1)
            .is_none_or(|token| token.word().is_none());
    let widths = of_joint || near.iter().any(|at| sentence.is_any(*at, WIDTHS));
    let others = near.iter().any(|at| {
        let word = sentence.word(*at);
        OTHERS.iter().any(|begins| word.starts_with(begins))
    });
    others && !widths || is_of_another_joint(sentence, amount)
}

/// Whether the joint named last before a number is none, or only a place or a measure: "butt joints", "joint cover", "fixed across the joint", "larger than
/// the joint".
fn is_of_another_joint(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const SORTS: &[&str] = &[
        "butt", "mortar", "saw-cut", "sawcut", "bed", "lap", "mitre", "miter",
    ];
    const THINGS: &[&str] = &[
        "cover", "covers", "compound", "tape", "side", "strip", "strips", "sealant", "filler",
    ];
    const PLACES: &[&str] = &["across", "over", "bridging", "than", "beside", "along"];
    let Some(joint) = (0..amount.first)
        .rev()
        .find(|at| sentence.is_any(*at, &["joint", "joints"]))
    else {
        return false;
    };
    let before = (0..joint)
        .rev()
        .find(|at| !sentence.is_any(*at, &["the", "a", "each", "every"]));
    before.is_some_and(|at| sentence.is_any(at, SORTS) || sentence.is_any(at, PLACES))
        || sentence.is_any(joint + 1, THINGS)
}

/// Whether a count of parts is one for each stretch, and no number of them: "one per 4 ft max".
fn is_rate(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let stretch = sentence
        .amounts
        .iter()
        .any(|other| other.first == amount.last + 1 && other.unit.dimension() == Dimension::Length);
    property.attribute == "count"
        && sentence.is_any(amount.last, &["per", "every", "each"])
        && stretch
}

/// Whether a number is so much for each measure of something, and no size of it: "a sag of 3/4 in. per inch of width".
fn is_per_measure(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    is_size(property) && sentence.is_word(sentence.skip_parentheses(amount.last), "per")
}

/// Whether layers are said to be of another thing than the property's: "three layers of wool" beside a board.
fn is_layered_of_another(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const REACH: usize = 4;
    const LAYERS: &[&str] = &["layer", "layers", "ply", "plies"];
    if property.attribute != "layers" {
        return false;
    }
    let behind = (amount.last..amount.last + REACH)
        .take_while(|at| !sentence.is_stop(*at))
        .find(|at| sentence.is_any(*at, LAYERS));
    let before = amount.first.saturating_sub(REACH)..amount.first;
    let before = before.rev().find(|at| sentence.is_any(*at, LAYERS));
    let of = |layers: usize| {
        let of = sentence.is_word(layers + 1, "of");
        (of && sentence.amount_at(layers + 2).is_none())
            .then(|| sentence.words(layers + 2, layers + 2 + REACH))
    };
    let words = match (behind, before) {
        (Some(layers), _) => of(layers).unwrap_or_else(|| sentence.words(amount.last, layers)),
        (None, Some(layers)) => {
            of(layers).unwrap_or_else(|| sentence.words(layers.saturating_sub(2), layers))
        }
        (None, None) => return false,
    };
    let lower = words.to_lowercase();
    let first = lower
        .split([',', ';', '.', ':', '('])
        .next()
        .unwrap_or_default();
    let named = components_in(first);
    let is_wool = property.component == "board" && names_wool(first);
    is_wool
        || !named.is_empty()
            && named
                .iter()
                .all(|(component, ..)| component.name != property.component)
}

/// Whether words name wool or the like, of which no board is made.
pub(super) fn names_wool(words: &str) -> bool {
    let lower = words.to_lowercase();
    ["wool", "batt", "insulation"]
        .iter()
        .any(|wool| lower.contains(wool))
}

/// Whether a number is of each of several pieces, "depth 2 x 50 mm", and so no depth of them all.
fn is_of_one_piece(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    let times = amount
        .first
        .checked_sub(1)
        .is_some_and(|at| sentence.is_word(at, "x") || sentence.is_sign(at, '×'));
    let counted = sentence
        .amounts
        .iter()
        .any(|other| other.unit == Unit::Count && other.last == amount.first);
    let whole = property.attribute == "depth"
        || property.attribute == "thickness" && property.component != "board";
    times && counted && whole
}

/// Whether mils are taken for a width or the like: `3-5/8 in. x 18 mil studs`.
fn is_in_mils(amount: &Amount, property: &Property) -> bool {
    const LARGE: &[&str] = &[
        "width",
        "depth",
        "height",
        "length",
        "leg_length",
        "spacing",
    ];
    amount.unit == Unit::Mil && LARGE.contains(&property.attribute.as_str())
}
