//! What a number of the head states: told by the nearest words before it that name a topic, or by those right behind it.

mod letters;

use measure::{Dimension, Number, Quantity, Unit};

use crate::phrase::Amount;
use crate::rules::Sentence;

/// What the words beside a number name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Topic {
    Rating,
    /// A rating of the joint by more than fire: FT, FH, FTH.
    OtherRating,
    /// A rating by heat or water alone, which says nothing of the fire: T, W, insulation.
    HeatRating,
    /// Hours that stand alone: a rating where the head names none.
    Unnamed,
    /// A rating that isn't the joint's: the wall's, the barrier's, a thermal barrier's.
    ForeignRating,
    Width,
    Movement,
    Leakage,
}

/// What a rating may be of that isn't the joint.
const FOREIGN: &[&str] = &[
    "wall",
    "walls",
    "barrier",
    "floor",
    "roof",
    "deck",
    "beam",
    "column",
    "partition",
    "ceiling",
    "thermal",
    "hose",
    "stream",
    "temperature",
    "acoustic",
    "sound",
    "impact",
    "class",
    "c",
    "stc",
    "noise",
    "construction",
    "supporting",
    "element",
    "slab",
    "test",
    "exposure",
    "cure",
    "curing",
];

/// How many words before a number may name its topic.
const REACH: usize = 40;

/// What an amount states.
pub(super) fn topic(sentence: &Sentence<'_>, amount: &Amount) -> Option<Topic> {
    if let Some(topic) = behind(sentence, amount) {
        return Some(topic);
    }
    let named = leading(sentence, amount);
    named.or_else(|| stands_alone(sentence, amount).then_some(Topic::Unnamed))
}

/// Whether a statement, a line or a column is nothing but hours that a joint may be rated for: `1 HR & 2 HR; JOINT 1" MAX`.
fn stands_alone(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const LONGEST_HOURS: i32 = 4;
    const SHORTEST_MINUTES: i32 = 15;
    let hours = Quantity::new(amount.lo, amount.unit).to(Unit::Hour);
    let plausible = hours.is_some_and(|hours| {
        let shortest = Number::new(i128::from(SHORTEST_MINUTES), 60);
        hours.number <= Number::from(LONGEST_HOURS)
            && shortest.is_some_and(|shortest| hours.number >= shortest)
    });
    let joins = |at: usize| {
        sentence.is_any(at, &["and", "or"])
            || [',', '&', '/']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
    };
    // The first and the last of the hours that stand side by side.
    let (mut first, mut last) = (amount.first, amount.last);
    for other in sentence
        .amounts
        .iter()
        .rev()
        .filter(|other| other.last <= amount.first)
    {
        if other.unit.dimension() == Dimension::Time && (other.last..first).all(joins) {
            first = other.first;
        }
    }
    for other in sentence
        .amounts
        .iter()
        .filter(|other| other.first >= amount.last)
    {
        if other.unit.dimension() == Dimension::Time && (last..other.first).all(joins) {
            last = other.last;
        }
    }
    let labelled = first > 0 && sentence.is_sign(first - 1, ':');
    // `1 HOUR AND 2 HOURS (SAME AS THE WALL)`
    let behind = sentence.skip_parentheses(last);
    let closed = sentence.token(behind).is_none()
        || behind > last && sentence.is_sign(behind, '-')
        || behind > last && sentence.begins_line(behind)
        || gap(sentence, last - 1) >= COLUMN
        || sentence.begins_line(last)
        || ['.', ';', '|', ',', '·']
            .iter()
            .any(|sign| sentence.is_sign(last, *sign));
    // `Hose Stream` over `1 hr`
    let under_another = first > 0 && sentence.is_any(first - 1, FOREIGN);
    plausible && opens(sentence, first) && !labelled && !under_another && closed
}

/// Words of a size.
const SIZES: &[&str] = &[
    "nominal",
    "nom",
    "max",
    "maximum",
    "min",
    "minimum",
    "largest",
    "widest",
    "to",
    "up",
    "from",
    "of",
    "at",
    "rest",
    "not",
    "no",
    "over",
    "wider",
    "than",
    "exceeding",
    "more",
    "less",
    "between",
    "installed",
    "wide",
    "and",
    "or",
    "width",
];

/// More words that may stand between the name of hours or of a width and the number.
const BETWEEN: &[&str] = &[
    "for",
    "in",
    "is",
    "are",
    "the",
    "under",
    "greater",
    "least",
    "most",
    "exceed",
    "within",
    "only",
    "each",
    "see",
    "note",
    "item",
    "items",
    "hr",
    "hrs",
    "h",
    "hour",
    "hours",
    "fire",
    "narrower",
    "measured",
    "joint",
    "joints",
    "configuration",
    "configurations",
    "config",
    "configs",
    "system",
    "systems",
    "option",
    "options",
    "type",
    "types",
    "arrangement",
    "f",
    "t",
    "ft",
    "fh",
    "fth",
    "assembly",
    "installation",
    "time",
    "obtained",
    "assessed",
    "sought",
    "listing",
    "part",
    "pt",
    "void",
    "all",
    "head",
    "base",
    "sr",
    "assemblies",
    "listed",
    "size",
    "range",
    "thru",
    "through",
    "either",
    "as",
    "minute",
    "minutes",
    "inches",
    "mm",
];

/// The topic that the nearest words before an amount name. Between a word for hours or a width and the number stands nothing that is said of something else:
/// "Hose stream 30 min" below "Rating - 2 hr" is no rating, and "Sealant depth 4 in." below "Joint width 2 in." no width.
fn leading(sentence: &Sentence<'_>, amount: &Amount) -> Option<Topic> {
    let of_time = amount.unit.dimension() == Dimension::Time;
    if of_time && let Some(topic) = letters::labelled(sentence, amount) {
        return topic;
    }
    let strict = of_time || amount.unit.dimension() == Dimension::Length;
    let mut bracket = amount.first;
    for at in (0..amount.first).rev().take(REACH) {
        // `1 hour (framed walls), 2 hours (concrete walls)`: what stands in brackets is said of the amount before them.
        if at >= bracket {
            continue;
        }
        if let Some(open) = bracket_of_another(sentence, at) {
            bracket = open;
            continue;
        }
        if let Some(topic) = named(sentence, at, amount) {
            return Some(topic);
        }
        let token = sentence.token(at)?;
        let written = token.span.of(sentence.text);
        // The name of a configuration or a product: `2 hr (RS-20), 3 hr (RS-40)`.
        let label = written.len() == 1 || written.contains(|c: char| c.is_ascii_digit());
        let passes = token.word().is_none()
            || label
            || sentence.amount_at(at).is_some()
            || sentence.is_any(at, SIZES)
            || sentence.is_any(at, BETWEEN) && !(of_time && sentence.is_word(at, "time"));
        if strict && !passes {
            return None;
        }
    }
    None
}

/// Whether a token is of an amount that counts nothing: `one layer` measures none.
pub(super) fn measures(sentence: &Sentence<'_>, at: usize) -> bool {
    let amount = sentence
        .amount_at(at)
        .and_then(|index| sentence.amount(index));
    amount.is_some_and(|amount| amount.unit != Unit::Count)
}

/// Where a bracket opens that a token closes, if it stands behind one amount of a list and before the next: `1 in. (one layer) or 2 in.`
fn bracket_of_another(sentence: &Sentence<'_>, close: usize) -> Option<usize> {
    const LONGEST: usize = 12;
    let listed = sentence.is_any(close + 1, &["or", "and"])
        || [',', ';', '/']
            .iter()
            .any(|sign| sentence.is_sign(close + 1, *sign));
    if !listed || !sentence.is_sign(close, ')') {
        return None;
    }
    let open = (close.saturating_sub(LONGEST)..close)
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ')'))
        .find(|at| sentence.is_sign(*at, '('))?;
    let before = open.checked_sub(1)?;
    let numbered = (open..close).any(|at| measures(sentence, at));
    let of_amount = sentence.amount_at(before).is_some() || sentence.is_any(before, SIZES);
    (of_amount && !numbered).then_some(open)
}

/// The topic that a word before an amount names.
fn named(sentence: &Sentence<'_>, at: usize, amount: &Amount) -> Option<Topic> {
    let word = sentence.word(at);
    let before = at
        .checked_sub(1)
        .map(|at| sentence.word(at))
        .unwrap_or_default();
    let of_time = amount.unit.dimension() == Dimension::Time;
    match word {
        "rating" | "ratings" | "rtg" | "rtgs" | "f-rating" | "f-ratings" | "resistance"
        | "fire-rating" => Some(match before {
            "t" | "w" if letters::of_fire_too(sentence, at) => Topic::Rating,
            "insulation" if with_integrity(sentence, at - 1) => Topic::Rating,
            "t" | "w" | "insulation" => Topic::HeatRating,
            "ft" | "fth" | "fh" => Topic::OtherRating,
            _ if letters::in_brackets(sentence, at) => Topic::HeatRating,
            "l" => Topic::Leakage,
            _ if is_of_another(sentence, at) => Topic::ForeignRating,
            _ => Topic::Rating,
        }),
        "frr" | "f.r.r" if of_time => Some(Topic::Rating),
        "endurance" | "duration" | "period" | "periods"
            if of_time && (before == "fire" || opens(sentence, at)) =>
        {
            Some(Topic::Rating)
        }
        "f" if of_time && is_label(sentence, at) => Some(Topic::Rating),
        "ft" | "fth" | "fh" if of_time && is_label(sentence, at) => Some(Topic::OtherRating),
        "t" | "w" if of_time && is_label(sentence, at) => Some(Topic::HeatRating),
        "ft-rating" | "fth-rating" | "fh-rating" => Some(Topic::OtherRating),
        "t-rating" | "t-ratings" | "w-rating" | "w-ratings" => Some(Topic::HeatRating),
        "insulation" if of_time && with_integrity(sentence, at) => Some(Topic::Rating),
        "integrity/insulation" if of_time && !is_of_another(sentence, at) => Some(Topic::Rating),
        "result" | "results" if of_time && opens(sentence, at) => {
            sentence.is_sign(at + 1, ':').then_some(Topic::Rating)
        }
        "rated" if opens(sentence, at) => Some(Topic::Rating),
        "rated" => Some(Topic::ForeignRating),
        _ if names_width(sentence, at, amount) => Some(Topic::Width),
        "l-rating" | "l-ratings" | "leakage" => Some(Topic::Leakage),
        "width" | "widths" | "opening" | "opng" => Some(Topic::Width),
        "movement" | "movements" | "mvmt" | "mvt" | "cyclic" | "cycling" | "cycled" | "moves"
        | "compression" | "extension" | "shear" => Some(Topic::Movement),
        _ => None,
    }
}

/// Whether integrity is named together with insulation, which makes a fire resistance: `Integrity and insulation 60 minutes`.
fn with_integrity(sentence: &Sentence<'_>, insulation: usize) -> bool {
    let joined = insulation.checked_sub(2).filter(|_| {
        sentence.is_any(insulation - 1, &["and"]) || sentence.is_sign(insulation - 1, '/')
    });
    joined.is_some_and(|integrity| {
        sentence.is_word(integrity, "integrity") && !is_of_another(sentence, integrity)
    })
}

/// Whether the words right before "rating" name another thing than the joint: `Wall assembly rating`.
fn is_of_another(sentence: &Sentence<'_>, rating: usize) -> bool {
    const QUALIFYING: &[&str] = &["assembly", "fire", "fire-resistance", "resistance"];
    let Some(before) = rating
        .checked_sub(1)
        .filter(|_| !sentence.begins_line(rating))
    else {
        return false;
    };
    let qualified = sentence.is_any(before, QUALIFYING) && !sentence.begins_line(before);
    let named = before - usize::from(qualified).min(before);
    sentence.is_any(before, FOREIGN) || qualified && sentence.is_any(named, FOREIGN)
}

/// The topic that the words right behind an amount name: `2 h rating`, `1-1/2 in. maximum joint width`, `50 % compression or extension`.
fn behind(sentence: &Sentence<'_>, amount: &Amount) -> Option<Topic> {
    const NEAR: usize = 3;
    const LIMITS: &[&str] = &["max", "maximum", "nom", "nominal", "min", "minimum"];
    let from = sentence.skip_parentheses(amount.last);
    match amount.unit.dimension() {
        Dimension::Fraction => {
            let ends = |at: &usize| sentence.is_stop(*at) || sentence.amount_at(*at).is_some();
            let mut near = (from..from + NEAR).take_while(|at| !ends(at));
            let directed = near.any(|at| {
                let word = sentence.word(at);
                ["comp", "ext", "shear", "lateral"]
                    .iter()
                    .any(|start| word.starts_with(start))
            });
            directed.then_some(Topic::Movement)
        }
        Dimension::Length => {
            let first = (from..from + 2).find(|at| !sentence.is_any(*at, LIMITS))?;
            let limited = first > from && sentence.is_any(first, &["joint"]);
            let ends = sentence.is_word(first + 1, "width")
                || sentence
                    .token(first + 1)
                    .is_none_or(|next| next.word().is_none());
            (limited && ends).then_some(Topic::Width)
        }
        Dimension::Time => {
            // `F Rating - 2 Hr   T Rating - 1/2 Hr`: each stands behind its own name.
            let labelled = amount.first.checked_sub(1).is_some_and(|before| {
                [':', '-', '–', '—', '=']
                    .iter()
                    .any(|sign| sentence.is_sign(before, *sign))
                    || sentence.is_any(before, &["rating", "ratings", "and", "or", "to"])
            });
            let label = from + usize::from(sentence.is_any(from, &["fire", "f", "t"]));
            let rating = sentence.is_any(label, &["rating", "ratings"])
                && !labelled
                && !is_name_of_next_line(sentence, from)
                && gap(sentence, from.saturating_sub(1)) < COLUMN;
            let of_heat = sentence.is_word(from, "t");
            rating.then_some(if of_heat {
                Topic::HeatRating
            } else {
                Topic::Rating
            })
        }
        _ => None,
    }
}

/// Whether a token begins a line with a capital: a name of its own.
fn is_name_of_next_line(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.begins_line(at)
        && sentence
            .token(at)
            .is_some_and(|token| token.span.of(sentence.text).starts_with(char::is_uppercase))
}

/// How many blanks part two columns at least.
pub(super) const COLUMN: usize = 3;

/// How many bytes of the source stand between a token and the next.
pub(super) fn gap(sentence: &Sentence<'_>, at: usize) -> usize {
    let place = |at: usize| Some(sentence.source(sentence.token(at)?.span));
    let ends = place(at).zip(place(at + 1));
    ends.map_or(0, |(own, next)| next.start().saturating_sub(own.end()))
}

/// Whether a word is the first of a paragraph, a statement or a column: `Floor to Floor          Rated 2, 3 or 4 h`.
fn opens(sentence: &Sentence<'_>, at: usize) -> bool {
    let Some(before) = at.checked_sub(1) else {
        return true;
    };
    let parted = gap(sentence, before) >= COLUMN || sentence.begins_line(at);
    let stopped = ['.', ';', '|', ':', '·']
        .iter()
        .any(|sign| sentence.is_sign(before, *sign));
    stopped || parted && !sentence.is_any(before, &["and", "or", "walls", "wall"])
}

/// Whether a letter labels what follows: `F: 2 & 3 HR`, `F   2 h`, `F, FT, FH, FTH    2 h`.
fn is_label(sentence: &Sentence<'_>, at: usize) -> bool {
    let listed = |at: usize| sentence.is_any(at, &["f", "t", "ft", "fh", "fth", "w"]);
    let mut first = at;
    while first >= 2 && sentence.is_sign(first - 1, ',') && listed(first - 2) {
        first -= 2;
    }
    let capital = sentence
        .token(at)
        .is_some_and(|token| token.span.of(sentence.text).starts_with(char::is_uppercase));
    let dashed = ['-', '–', '—', '=']
        .iter()
        .any(|sign| sentence.is_sign(at + 1, *sign))
        && sentence.amount_at(at + 2).is_some();
    let apart = gap(sentence, at) + 1 >= COLUMN || sentence.is_sign(at + 1, ':') || dashed;
    capital && opens(sentence, first) && apart
}

/// Whether a word for a joint stands before the size of it, with nothing but words of a size between: `Joint: 2 in. or less`, `JOINT 1/2" TO 6"`, `Largest gap, 100
/// mm`.
fn names_width(sentence: &Sentence<'_>, at: usize, amount: &Amount) -> bool {
    const JOINTS: &[&str] = &["joint", "joints", "jt", "gap", "gaps"];
    const LIMITS: &[&str] = &[
        "nominal", "nom", "max", "maximum", "min", "minimum", "largest", "widest", "head",
    ];
    let deviates = amount.at.of(sentence.text).starts_with(['±', '+', '-']);
    let of_length = amount.unit.dimension() == Dimension::Length && !deviates;
    if !of_length || !sentence.is_any(at, JOINTS) {
        return false;
    }
    let limited = at
        .checked_sub(1)
        .filter(|before| sentence.is_any(*before, LIMITS));
    let opening =
        limited.is_some() || opens(sentence, at) || at > 0 && sentence.is_sign(at - 1, ',');
    let behind = sentence.skip_parentheses(amount.last);
    let other = sentence.is_any(
        behind,
        &["deep", "thick", "long", "high", "depth", "thickness"],
    );
    let sized = (at + 1..amount.first).all(|between| {
        sentence.is_any(between, SIZES)
            || [':', '-', '–', '—', '=', ',', '.', '|']
                .iter()
                .any(|sign| sentence.is_sign(between, *sign))
            || sentence
                .token(between)
                .is_some_and(|token| token.word().is_none())
    });
    opening && sized && !other
}
