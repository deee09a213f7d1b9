use measure::{Dimension, Unit};

use super::denied::is_denied_both_ways;
use super::prefixed::limits_precede;
use super::word_before::qualifier;
use super::{Finding, Sentence};
use crate::model::Relation;
use crate::phrase::Amount;

/// How many words may stand between a number and the word that qualifies it.
const REACH: usize = 5;

/// Words that end the search.
const BREAKS: &[&str] = &[
    "and", "with", "for", "in", "on", "by", "onto", "from", "into", "to", "when", "where", "if",
    "that", "which", "having", "shall", "is", "are", "than", "below", "above",
];

#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    let last = amount.last;
    if limits_precede(sentence, index) || is_limited_right_before(sentence, index) {
        return None;
    }
    // `three every 20 ft minimum`: the word is said of the count, not of the stretch it is counted on.
    if amount.first > 0
        && sentence.is_any(amount.first - 1, &["every", "per"])
        && sentence
            .bound_before(index)
            .and_then(|before| sentence.amount(before))
            .is_some_and(|before| {
                before.last + 1 == amount.first
                    && !(is_one(before)
                        && (sentence.is_word(before.last, "every") || names_fasteners(sentence)))
            })
    {
        return None;
    }
    // `one splice per 1 m or fewer`: nor is "fewer".
    let rate = amount.first > 0 && sentence.is_any(amount.first - 1, &["every", "per"]);
    if rate
        && amount.unit != measure::Unit::Count
        && sentence.is_word(last, "or")
        && sentence.is_word(last + 1, "fewer")
    {
        return None;
    }
    if index > 0 && counted_stretch(sentence, index - 1) == Some(last) {
        return None;
    }
    // `1/4 in. in 10 ft or better`: the flatter, the better.
    if let Some(end) = stretch_of_a_slope(sentence, index)
        && sentence.is_word(end, "or")
        && sentence.is_word(end + 1, "better")
    {
        return Some(Finding::sure(Relation::AtMost, amount.first));
    }
    let last = counted_stretch(sentence, index)
        .or_else(|| stretch_of_a_slope(sentence, index))
        .unwrap_or(last);
    if index > 0 && stretch_of_a_slope(sentence, index - 1).is_some() {
        return None;
    }
    let mut at = sentence.skip_parentheses_but(last);
    // `4 HRS. MIN.`: the stop shortens the unit.
    if sentence.is_sign(at, '.') && closing_word(sentence, at + 1).is_some() {
        at += 1;
    }
    if let Some(relation) = set_off(sentence, last)
        .or_else(|| place_closed(sentence, last))
        .or_else(|| closes_stretch(sentence, index, last))
    {
        return Some(Finding::sure(relation, sentence.amount(index)?.first));
    }
    // `1/8 in. wet (1/16 in. dry) min.`
    if sentence.is_any(at, &["wet", "dry"])
        && sentence.is_sign(at + 1, ')')
        && closing_word(sentence, at + 2).is_some()
    {
        at += 2;
    }
    for _ in 0..=REACH {
        if opens_a_statement(sentence, at) && closing_word(sentence, at).is_some() {
            return None;
        }
        if let Some(relation) = closing_word(sentence, at) {
            return Some(Finding::sure(relation, sentence.amount(index)?.first));
        }
        // `two per length of packing as a minimum`
        if sentence.is_word(at, "as")
            && let Some((relation, end)) = set_off_qualifier(sentence, at)
            && ends_stretch(sentence, end)
        {
            return Some(Finding::sure(relation, amount.first));
        }
        if sentence.is_word(at, "on") && sentence.word(at + 1).starts_with("cent") {
            at += 2;
            continue;
        }
        if sentence.is_sign(at, ',')
            && let Some(relation) = not_a_jot(sentence, at + 1)
        {
            return Some(Finding::sure(relation, sentence.amount(index)?.first));
        }
        // `13 mm (1/2 in.), and never less`
        let denied = at + 1 + usize::from(sentence.is_any(at + 1, &["and", "but"]));
        if sentence.is_sign(at, ',') && sentence.is_any(denied, &["not", "no", "never"]) {
            let ends = sentence.is_stop(denied + 2)
                || sentence.is_sign(denied + 2, '.')
                || sentence.token(denied + 2).is_none();
            let relation = or_more(sentence.word(denied + 1))
                .filter(|_| ends && !is_denied_both_ways(sentence, denied))?;
            let opposite = if relation == Relation::AtLeast {
                Relation::AtMost
            } else {
                Relation::AtLeast
            };
            return Some(Finding::sure(opposite, sentence.amount(index)?.first));
        }
        let closes_late = sentence.is_word(at + 1, "at")
            && sentence.is_any(at + 2, &["most", "least"])
            && ends_stretch(sentence, at + 3);
        if sentence.is_sign(at, ',')
            && (closes_late || sentence.is_any(at + 1, &["or", "min", "minimum", "max", "maximum"]))
        {
            at += 1;
            continue;
        }
        // `33 percent at joint width max`: the state of the joint, and no limit of the share.
        if sentence.is_any(at, &["at", "in"])
            && sentence.has_any(
                at + 1,
                at + 4,
                &["joint", "width", "opening", "extension", "gap"],
            )
        {
            return None;
        }
        // `20 percent of the nominal width`: another thing's qualifier.
        if sentence.is_word(at, "of") && sentence.is_any(at + 1, &["the", "its", "their", "that"]) {
            return None;
        }
        // `12 in. below it (minimum)`
        let aside = (at..at + 4).find(|at| {
            sentence.is_sign(*at, '(')
                && sentence.is_sign(at + 2, ')')
                && closing_word(sentence, at + 1).is_some()
        });
        if let Some(aside) = aside.filter(|aside| {
            (at..*aside).all(|at| {
                sentence
                    .token(at)
                    .is_some_and(|token| token.word().is_some())
            })
        }) {
            return Some(Finding::sure(
                closing_word(sentence, aside + 1)?,
                sentence.amount(index)?.first,
            ));
        }
        if let Some(relation) = alternatives_closed(sentence, index, at) {
            return Some(Finding::sure(relation, sentence.amount(index)?.first));
        }
        let goes_on = sentence
            .token(at)
            .is_some_and(|token| token.word().is_some())
            && !sentence.is_any(at, BREAKS);
        if !goes_on || sentence.amount_at(at).is_some() {
            return None;
        }
        at = sentence.skip_parentheses_but(at + 1);
    }
    None
}

/// `max 24 in. OC` and on the next line `Minimum G60 galvanized`: a number whose own limit stands right before it is closed by none behind it.
fn is_limited_right_before(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some(limit) = sentence
        .amount(index)
        .and_then(|amount| amount.first.checked_sub(1))
    else {
        return false;
    };
    // Behind another number in the same stretch it may have closed that: `24" O.C. MAX 25 GA MIN`.
    let floor = sentence.floor(index);
    let own = index == 0 || (floor..limit).any(|at| sentence.is_stop(at));
    own && sentence.is_any(limit, &["min", "minimum", "max", "maximum"])
}

/// `2 in. wide` and on the next line `Max G90 coated`: a limit in a capital that goes on opens another statement.
fn opens_a_statement(sentence: &Sentence<'_>, at: usize) -> bool {
    let printed = |at: usize| {
        sentence
            .token(at)
            .map_or("", |token| token.span.of(sentence.text))
    };
    let titled =
        printed(at).starts_with(char::is_uppercase) && printed(at).contains(char::is_lowercase);
    let small = at > 0 && printed(at - 1).ends_with(char::is_lowercase);
    let goes_on = sentence
        .token(at + 1)
        .is_some_and(|token| token.word().is_some() || token.is_numeric());
    titled && small && goes_on
}

/// `3 mm wet or 1.5 mm dry as a minimum`: two statements of one thing, closed together.
fn alternatives_closed(sentence: &Sentence<'_>, index: usize, at: usize) -> Option<Relation> {
    let (own, next) = (sentence.amount(index)?, sentence.amount(index + 1)?);
    let alternatives = sentence.is_word(at, "or")
        && next.first == at + 1
        && next.unit.dimension() == own.unit.dimension();
    let closing = alternatives.then(|| {
        (next.last..next.last + REACH)
            .find(|at| sentence.is_word(*at, "as") && sentence.is_word(at + 1, "a"))
    })??;
    qualifier(sentence.word(closing + 2))
}

/// `1/8 in. thick when wet, as a minimum`, `3-1/4 in. above flutes, min`, `3 in., not deeper`: a qualifier that a comma sets off behind a number and a
/// few words about it. Another number between, or a verb, and it may be said of something else.
fn set_off(sentence: &Sentence<'_>, last: usize) -> Option<Relation> {
    const MOST_WORDS: usize = 7;
    const VERBS: &[&str] = &[
        "shall", "must", "is", "are", "may", "with", "and", "or", "but",
    ];
    let start = sentence.skip_parentheses(last);
    let measured = (start..start + MOST_WORDS).find(|at| {
        sentence.is_word(*at, "measured")
            && sentence.is_any(at + 1, &["from", "above", "over", "at", "along"])
    });
    let comma = (start..=measured.map_or(start, |at| at + 1) + MOST_WORDS)
        .find(|at| sentence.is_sign(*at, ','))?;
    let plain = (start..comma).all(|at| {
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_some())
            && sentence.amount_at(at).is_none()
            && !sentence.is_any(at, VERBS)
    });
    let (relation, end) = set_off_qualifier(sentence, comma + 1)?;
    (plain
        && (ends_stretch(sentence, end)
            || stops_short(sentence, end)
            || sentence.is_any(end, &["and", "over", "on", "onto"])
                && sentence.amount_at(end + 1).is_none()))
    .then_some(relation)
}

/// What begins an order, and is no name of what has a limit: `A 3/8 IN. BEAD, MIN. TOOL WITHIN 10 MIN.`
const ORDERS: &[&str] = &[
    "tool", "apply", "install", "fasten", "attach", "secure", "remove", "clean", "smooth",
    "trowel", "wipe", "insert",
];

/// `1-1/2" ONTO DECK, MIN. MASK ADJACENT FINISHES`: whether the stop of a shortened qualifier ends the stretch, with no number near behind.
fn stops_short(sentence: &Sentence<'_>, end: usize) -> bool {
    let stopped = end
        .checked_sub(1)
        .and_then(|at| sentence.token(at))
        .is_some_and(|token| token.span.of(sentence.text).ends_with('.'));
    // A noun of measure behind it is what it limits: `LAP 1-1/2" ONTO DECK, MAX. JOINT IN ANY WALL IS 2"`.
    let placed = sentence.is_any(end, &["at", "on", "in", "for"]);
    let mut later = (end..sentence.tokens.len())
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .filter_map(|at| sentence.amount_at(at))
        .peekable();
    stopped
        && (sentence.is_any(end, ORDERS)
            || later
                .peek()
                .is_none_or(|next| placed && closes_itself(sentence, *next)))
}

/// The relation of a qualifier that stands for itself, and the token after it: `min`, `as a minimum`, `at the least`, `not deeper`.
fn set_off_qualifier(sentence: &Sentence<'_>, at: usize) -> Option<(Relation, usize)> {
    let lead = if sentence.is_word(at, "as") && sentence.is_any(at + 1, &["a", "the"]) {
        2
    } else if sentence.is_word(at, "at") {
        1 + usize::from(sentence.is_word(at + 1, "the"))
    } else {
        0
    };
    let word = sentence.word(at + lead);
    // `48 hours, not before`
    if lead == 0 && sentence.is_word(at, "not") && sentence.is_word(at + 1, "before") {
        return Some((Relation::AtLeast, at + 2));
    }
    if lead == 0
        && sentence.is_any(at, &["not", "no", "never"])
        && !is_denied_both_ways(sentence, at)
    {
        let opposite = match or_more(sentence.word(at + 1))? {
            Relation::AtLeast => Relation::AtMost,
            _ => Relation::AtLeast,
        };
        return Some((opposite, at + 2));
    }
    let relation = match word {
        "least" => Relation::AtLeast,
        "most" => Relation::AtMost,
        "tops" if lead == 0 => Relation::AtMost,
        _ => qualifier(word).filter(|relation| {
            matches!(
                relation,
                Relation::AtLeast | Relation::AtMost | Relation::Nominal
            )
        })?,
    };
    Some((relation, at + lead + 1))
}

/// `2 in. from ends, max.`: a distance from a place, closed by its qualifier.
fn place_closed(sentence: &Sentence<'_>, last: usize) -> Option<Relation> {
    const MOST_WORDS: usize = 4;
    let from = sentence.skip_parentheses(last);
    if !sentence.is_word(from, "from") {
        return None;
    }
    // `2 in. from ends max.`
    let closing = (from + 2..from + 2 + MOST_WORDS)
        .find(|at| sentence.is_any(*at, &["max", "maximum", "min", "minimum"]));
    let near = closing.filter(|at| {
        (from + 1..*at).all(|at| {
            sentence
                .token(at)
                .is_some_and(|token| token.word().is_some())
                && sentence.amount_at(at).is_none()
        })
    });
    if let Some(at) = near.filter(|at| ends_stretch(sentence, at + 1)) {
        return qualifier(sentence.word(at));
    }
    let comma = (from + 2..from + 2 + MOST_WORDS).find(|at| sentence.is_sign(*at, ','))?;
    let plain = (from + 1..comma).all(|at| {
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_some())
    });
    let closes = sentence.is_any(comma + 2, &["and"]) || ends_stretch(sentence, comma + 2);
    qualifier(sentence.word(comma + 1)).filter(|_| plain && closes)
}

/// `1/2" LAP ON BD. MIN.`: a qualifier that ends a stretch of one number and a few words about it.
fn closes_stretch(sentence: &Sentence<'_>, index: usize, last: usize) -> Option<Relation> {
    const MOST_WORDS: usize = 5;
    const VERBS: &[&str] = &[
        "shall",
        "must",
        "is",
        "are",
        "may",
        "with",
        "and",
        "or",
        "but",
        "of",
        "than",
        "as",
        "at",
        "in",
        "joint",
        "width",
        "opening",
        "extension",
        "gap",
    ];
    let start = sentence.skip_parentheses(last);
    let closing = (start..=start + MOST_WORDS)
        .find(|at| sentence.is_any(*at, &["min", "minimum", "max", "maximum"]))?;
    let plain = (start..closing).all(|at| {
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_some())
            && sentence.amount_at(at).is_none()
            && !sentence.is_any(at, VERBS)
    });
    let opens = index == 0
        || sentence.amount(index - 1).is_none_or(|before| {
            (before.last..sentence.amounts.get(index).map_or(0, |own| own.first))
                .any(|at| sentence.is_stop(at) || sentence.is_sign(at, '.'))
        });
    (plain && opens && ends_stretch(sentence, closing + 1) && !may_open_a_label(sentence, closing))
        .then(|| qualifier(sentence.word(closing)))?
}

/// The end of the length that a deviation is taken over, with the same in other units: `6 mm in 3 m (1/4 in. in 10 ft) max.`
pub(super) fn stretch_of_a_slope(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let (amount, next) = (sentence.amount(index)?, sentence.amount(index + 1)?);
    let over =
        next.first == amount.last + 1 && sentence.is_any(amount.last, &["in", "over", "per"]);
    let lengths = [amount, next]
        .iter()
        .all(|amount| amount.unit.dimension() == measure::Dimension::Length);
    let longer = matches!(next.unit, Unit::Metre | Unit::Foot) && next.unit != amount.unit;
    (over && lengths && longer).then_some(next.last)
}

/// Whether a sentence speaks of what fastens or carries something, and so of how far apart that stands.
fn names_fasteners(sentence: &Sentence<'_>) -> bool {
    const THINGS: &[&str] = &[
        "fastener", "anchor", "screw", "clip", "pin", "bolt", "weld", "hanger", "nail", "staple",
        "bracket", "tie", "rivet",
    ];
    (0..sentence.tokens.len()).any(|at| {
        THINGS
            .iter()
            .any(|thing| sentence.word(at).trim_end_matches('s') == *thing)
    })
}

fn is_one(amount: &Amount) -> bool {
    amount.unit == Unit::Count && amount.lo == 1 && amount.hi.is_none()
}

/// The end of the stretch that a count is taken on: `three every 20 ft`.
fn counted_stretch(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    const PARTED: &[&str] = &[
        "splice", "splices", "joint", "joints", "butt", "butts", "seam", "seams",
    ];
    let amount = sentence.amount(index)?;
    let next = sentence.amount(index + 1)?;
    let on = next.first.checked_sub(1)?;
    // Of `one every 500 mm at most` the distance is limited.
    let directly = on == amount.last
        && sentence.is_any(on, &["every", "per"])
        && !(is_one(amount) && sentence.is_word(on, "every"));
    // `ONE SPLICE PER 4 FT MAX`
    let thing = on == amount.last + 1
        && sentence.is_word(on, "per")
        && sentence.is_any(amount.last, PARTED);
    // `one fastener per 4 ft max` limits how far apart they stand.
    let fasteners =
        is_one(amount) && sentence.word(amount.last) == "per" && names_fasteners(sentence);
    let counts = amount.unit == Unit::Count
        && !fasteners
        && (directly || thing && next.unit.dimension() == measure::Dimension::Length);
    // `(2) #10 SCREWS EACH END MIN.`
    let sized =
        amount.unit == Unit::Count && next.unit == Unit::ScrewNumber && next.first == amount.last;
    (counts || sized).then_some(next.last)
}

/// `being the least`, `the most permitted`: the extreme that a value is said to be.
fn said_to_be(sentence: &Sentence<'_>, at: usize) -> Option<Relation> {
    const ALLOWED: &[&str] = &["permitted", "allowed", "accepted", "acceptable", "admitted"];
    if sentence.is_word(at, "as")
        && sentence.is_any(at + 1, &["the", "a"])
        && sentence.is_word(at + 2, "limit")
        && ends_stretch(sentence, at + 3)
    {
        return Some(Relation::AtMost);
    }
    // `10 % is enough`; of things, one that is enough is one.
    let measured = sentence
        .amounts
        .iter()
        .any(|amount| amount.last == at && amount.unit != Unit::Count);
    let enough = sentence.is_any(at, &["is", "are"])
        && sentence.is_any(at + 1, &["enough", "sufficient"])
        || sentence.is_any(at, &["suffices", "suffice"]);
    if measured && enough {
        return Some(Relation::AtLeast);
    }
    let being = usize::from(sentence.is_any(at, &["being", "is", "are"]));
    let the = usize::from(sentence.is_any(at + being, &["the", "a"]));
    let word = at + being + the;
    let ends = ends_stretch(sentence, word + 1) || sentence.is_any(word + 1, &["and", "or"]);
    let allowed = sentence.is_any(word + 1, ALLOWED);
    // `is the least that is allowed`
    let allowed = allowed
        || sentence.is_word(word + 1, "that")
            && sentence.is_any(word + 2, &["is", "are", "may", "can", "will"]);
    // `three screws being the fewest in any length`, `six being the least number for one board`
    // `is the most you may leave`, `is the least we accept`
    let person = sentence.is_any(word + 1, &["you", "we", "one"])
        && sentence.is_any(
            word + 2,
            &["may", "can", "accept", "allow", "permit", "admit"],
        );
    let allowed = allowed || person;
    let counted = word + 1 + usize::from(sentence.is_word(word + 1, "number"));
    let spread = sentence.is_word(at, "being")
        && the == 1
        && sentence.is_any(
            counted,
            &["in", "for", "on", "to", "per", "at", "along", "of"],
        );
    let allowed = allowed || spread;
    let said =
        (being == 1 && (ends || allowed) && (allowed || the == 1 || sentence.is_word(at, "being")))
            || (the == 1 && allowed);
    let relation = match sentence.word(word) {
        // `24 in. is the limit`: how far one may go. Cold and age have their limit below as well.
        "limit" if the == 1 && ends && !said_of_heat_or_time(sentence, at) => Relation::AtMost,
        "least" | "minimum" | "smallest" | "fewest" => Relation::AtLeast,
        "most" | "maximum" | "greatest" | "largest" => Relation::AtMost,
        _ => return None,
    };
    said.then_some(relation)
}

/// Whether the number that ends at a token is one whose limit may as well be the lowest.
fn said_of_heat_or_time(sentence: &Sentence<'_>, at: usize) -> bool {
    const EITHER: &[Dimension] = &[
        Dimension::Temperature,
        Dimension::Time,
        Dimension::CalendarTime,
        Dimension::Density,
        Dimension::Gauge,
    ];
    let mut ending = sentence
        .amounts
        .iter()
        .filter(|amount| sentence.skip_parentheses(amount.last) == at);
    ending.any(|amount| EITHER.contains(&amount.unit.dimension()))
}

/// The relation that the words at a token give to the number before them.
fn closing_word(sentence: &Sentence<'_>, at: usize) -> Option<Relation> {
    let word = sentence.word(at);
    // `8 pcf +`
    if sentence.is_sign(at, '+') && ends_stretch(sentence, at + 1) {
        return Some(Relation::AtLeast);
    }
    if word == "at" {
        let most = if sentence.is_word(at + 1, "the") {
            at + 2
        } else {
            at + 1
        };
        // `12 in. at the outside.`; `at the outside of the wall` and `at the outside, 8 in. at the inside` are places.
        let places = (0..sentence.tokens.len()).any(|at| {
            sentence.is_any(
                at,
                &[
                    "inside", "inner", "interior", "face", "faces", "side", "sides",
                ],
            )
        });
        if most == at + 2
            && sentence.is_word(most, "outside")
            && ends_stretch(sentence, most + 1)
            && !places
        {
            return Some(Relation::AtMost);
        }
        return match sentence.word(most) {
            // `screws spaced at most 12 in.`: the word is said of the number behind it.
            "most" | "latest" if sentence.amount_at(most + 1).is_some() => None,
            "most" | "latest" | "thickest" | "widest" | "deepest" | "longest" => {
                Some(Relation::AtMost)
            }
            "thinnest" | "narrowest" | "shallowest" | "shortest" => Some(Relation::AtLeast),
            "least" | "earliest" if sentence.amount_at(most + 1).is_none() => {
                Some(Relation::AtLeast)
            }
            _ => None,
        };
    }
    // `... and under no circumstances`
    if matches!(word, "and" | "or") && sentence.is_any(at + 2, &["no", "any"]) {
        return None;
    }
    // `16 in., or up to 24 in. if ...` offers more, and limits nothing before it.
    if word == "or" && sentence.is_word(at + 1, "up") && sentence.is_word(at + 2, "to") {
        return None;
    }
    // `every 9 inches or so`
    if word == "or" && sentence.is_word(at + 1, "so") {
        return Some(Relation::About);
    }
    // `6 pcf or >`
    if word == "or" && ends_stretch(sentence, at + 2) {
        let signed = [('>', Relation::AtLeast), ('<', Relation::AtMost)]
            .into_iter()
            .find(|(sign, _)| sentence.is_sign(at + 1, *sign));
        if let Some((_, relation)) = signed {
            return Some(relation);
        }
    }
    // `walls 4-1/2 in. and thicker`, `floors of 200 mm and more only`, `40 F and rising`
    if word == "and"
        && (ends_stretch(sentence, at + 2)
            || sentence.is_word(at + 2, "only") && ends_stretch(sentence, at + 3))
    {
        return match sentence.word(at + 1) {
            "rising" => Some(Relation::AtLeast),
            "falling" => Some(Relation::AtMost),
            other => or_more(other),
        };
    }
    if let Some(relation) = not_a_jot(sentence, at) {
        return Some(relation);
    }
    // `down 12.5% and up 12.5%`: what a number follows is said of that.
    if word == "and" && sentence.amount_at(at + 2).is_some() {
        return None;
    }
    if word == "or" || word == "and" {
        return or_more(sentence.word(at + 1)).filter(|_| {
            // `or thicker board` names a thing; `or thicker` closes the number.
            !sentence.is_word(at + 2, "than") && word == "or"
                || matches!(sentence.word(at + 1), "over" | "above" | "under" | "up")
        });
    }
    if let Some(relation) = said_to_be(sentence, at) {
        return Some(relation);
    }
    let relation = match word {
        "min" | "minimum" => Relation::AtLeast,
        "max" | "maximum" | "nte" | "n.t.e" | "n/t/e" => Relation::AtMost,
        "nominal" | "nom" => Relation::Nominal,
        // `5/8 in. least`, `200 mm thickness upwards`, `150 mm greatest`
        "least" | "smallest" | "fewest" | "upward" | "upwards" | "onward" | "onwards"
            if ends_stretch(sentence, at + 1) =>
        {
            Relation::AtLeast
        }
        "most" | "greatest" | "largest" if ends_stretch(sentence, at + 1) => Relation::AtMost,
        "exactly" | "precisely" if ends_stretch(sentence, at + 1) => Relation::Exactly,
        "approx" | "approximately" if ends_stretch(sentence, at + 1) => Relation::About,
        _ => return None,
    };
    // `min` before another number, or before a noun with its own number, belongs to that one.
    (!opens_next(sentence, at) && !may_open_a_label(sentence, at)).then_some(relation)
}

/// `and not an inch more`, `and not a hair less`
fn not_a_jot(sentence: &Sentence<'_>, at: usize) -> Option<Relation> {
    const JOTS: &[&str] = &[
        "inch",
        "hair",
        "bit",
        "fraction",
        "jot",
        "millimetre",
        "millimeter",
        "minute",
        "day",
        "hour",
        "pound",
        "ounce",
        "thread",
    ];
    let not = at + usize::from(sentence.is_any(at, &["and", "but"]));
    let said = sentence.is_word(not, "not")
        && sentence.is_any(not + 1, &["a", "an", "one"])
        && sentence.is_any(not + 2, JOTS)
        && ends_stretch(sentence, not + 4);
    match or_more(sentence.word(not + 3)).filter(|_| said)? {
        Relation::AtLeast => Some(Relation::AtMost),
        _ => Some(Relation::AtLeast),
    }
}

fn ends_stretch(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.token(at).is_none() || sentence.is_stop(at) || sentence.is_sign(at, '.')
}

/// Whether the qualifier at a token opens the next amount, or a noun with its own amount, rather than closing the one before.
fn opens_next(sentence: &Sentence<'_>, at: usize) -> bool {
    /// Words that lead to another amount without being qualified themselves.
    const LEADS: &[&str] = &[
        "nlt", "nmt", "not", "no", "to", "and", "in", "above", "below", "from", "at", "where",
        "when", "if", "for", "on", "over", "under", "between", "per", "every", "each", "within",
        "into", "with", "by", "x",
    ];
    // `density 4 pcf. maximum: recess 1/2 in.`, `with 8 pcf wool the min depth`
    let heads = qualifier(sentence.word(at)).is_some()
        && sentence.is_sign(at + 1, ':')
        && sentence
            .token(at + 2)
            .is_some_and(|token| token.word().is_some());
    let articled = at > 1
        && sentence.is_word(at - 1, "the")
        && !sentence.is_any(at - 2, &["at", "as", "is", "are", "be", "being"])
        && sentence
            .token(at + 1)
            .is_some_and(|token| token.word().is_some());
    if heads || articled {
        return true;
    }
    if closes_adjacent(sentence, at) {
        return false;
    }
    // `4 IN. DEEP, MAX. COMPRESSION OF IT WHEN PLACED IN THE JOINT 50%`
    let noun = sentence
        .token(at + 1)
        .is_some_and(|token| token.word().is_some())
        && !sentence.is_any(at + 1, LEADS)
        && qualifier(sentence.word(at + 1)).is_none()
        && !sentence.is_any(
            at + 1,
            &[
                "or", "of", "a", "the", "wide", "deep", "thick", "long", "high", "o.c", "oc",
            ],
        );
    let later = (at + 2..sentence.tokens.len())
        .take_while(|next| !sentence.is_stop(*next))
        .any(|next| sentence.amount_at(next).is_some());
    if at > 0 && sentence.is_sign(at - 1, ',') && noun && later {
        return true;
    }
    if let Some(next) = sentence.amount_at(at + 1) {
        if labels_a_case(sentence, next) {
            return false;
        }
        // `o.c. max. 2 h: 406 mm`: hours that only say when.
        return sentence.is_bound(next) && !closes_itself(sentence, next);
    }
    let amount_at = |at: usize| sentence.amount_at(at).is_some();
    if sentence.is_word(at + 1, "of") {
        return amount_at(at + 2) || amount_at(at + 3);
    }
    // `a minimum penetration of 3/4 in.`
    let of_amount = [at + 3, at + 4]
        .into_iter()
        .find_map(|at| sentence.amount_at(at))
        .and_then(|index| sentence.amount(index));
    let before = sentence
        .amounts
        .iter()
        .rev()
        .find(|amount| amount.last <= at);
    if sentence.is_word(at + 2, "of")
        && of_amount
            .zip(before)
            .is_some_and(|(next, own)| next.unit.dimension() == own.unit.dimension())
    {
        return true;
    }
    let parted = sentence.is_stop(at + 1)
        || ['(', '[', '.', ')', '/', '×']
            .iter()
            .any(|sign| sentence.is_sign(at + 1, *sign));
    let next_closed = sentence
        .amount_at(at + 2)
        .is_some_and(|next| closes_itself(sentence, next));
    amount_at(at + 2) && !parted && !sentence.is_any(at + 1, LEADS) && !next_closed
}

/// `1/2 in. min` and on the next line `3 hr: three layers`: hours before a colon that parts them from another amount only say for which rating that is.
pub(super) fn labels_a_case(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        amount.unit == Unit::Hour
            && sentence.is_sign(amount.last, ':')
            && sentence.amount_at(amount.last + 1).is_some()
    })
}

/// Whether a limit may as well open the label behind it, so that nobody can say whose it is: `4 in. Max Recess: 1/2 in.`, `2 in. Max: 4 in.`, `3 in. min. lap
/// 1 in.` A number behind that has a limit of its own leaves this one to the number before.
fn may_open_a_label(sentence: &Sentence<'_>, at: usize) -> bool {
    const MOST_WORDS: usize = 4;
    let named = (at + 1..=at + MOST_WORDS)
        .take_while(|at| names_a_label(sentence, *at))
        .count();
    let end = sentence.skip_parentheses(at + 1 + named);
    let titled = named > 0 && (at..=at + named).all(|at| is_capitalized(sentence, at));
    let comma = titled && sentence.is_sign(end, ',');
    let parted = comma
        || [':', '=', '-', '–']
            .iter()
            .any(|sign| sentence.is_sign(end, *sign));
    let next = sentence.amount_at(end + usize::from(parted));
    // In capitals, and before one, the stop ends what it closes.
    let goes_on = is_stopped(sentence, at)
        && (titled
            || sentence
                .words(at + 1, at + 2)
                .starts_with(char::is_lowercase));
    let opens = parted || named > 0 && (end > at + 1 + named || goes_on);
    opens && next.is_some_and(|next| sentence.is_bound(next) && !is_closed(sentence, next))
}

/// Whether a number has a limit just after it that can't open the label behind.
fn is_closed(sentence: &Sentence<'_>, index: usize) -> bool {
    closes_itself(sentence, index)
        && sentence.amount(index).is_some_and(|amount| {
            !may_open_a_label(sentence, sentence.skip_parentheses(amount.last))
        })
}

/// Whether a word is printed as in a title: `Max Recess`.
fn is_capitalized(sentence: &Sentence<'_>, at: usize) -> bool {
    let printed = sentence.words(at, at + 1);
    printed.starts_with(char::is_uppercase) && printed.contains(char::is_lowercase)
}

/// Whether a word may stand in a label: none of those that go on with a measure or lead elsewhere.
fn names_a_label(sentence: &Sentence<'_>, at: usize) -> bool {
    const ELSEWHERE: &[&str] = &[
        "at", "to", "from", "with", "and", "or", "by", "for", "in", "into", "onto", "over",
        "under", "between", "per", "every", "each", "within", "where", "when", "if", "is", "are",
        "shall", "must", "may", "above", "below", "not", "no", "than", "o.c", "oc",
    ];
    let word = sentence
        .token(at)
        .is_some_and(|token| token.word().is_some());
    word && sentence.amount_at(at).is_none()
        && !sentence.is_any(at, ELSEWHERE)
        && !goes_on_measuring(sentence, at)
        && qualifier(sentence.word(at)).is_none()
}

/// Whether a word goes on with the measure before it: `3 in. min spaced 12 in. OC`, `1 in. max wide`.
fn goes_on_measuring(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(
        at,
        &[
            "spaced", "wide", "deep", "thick", "thk", "long", "high", "apart", "dense", "centres",
            "centers",
        ],
    )
}

fn is_stopped(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence
        .token(at)
        .is_some_and(|token| token.span.of(sentence.text).ends_with('.'))
}

/// Whether a qualifier with a stop stands right behind a number: `0.76 mm (22 ga.) min. 38 mm deep`. The stop ends what it closes, and so does
/// a word that goes on with the measure.
pub(super) fn closes_adjacent(sentence: &Sentence<'_>, at: usize) -> bool {
    let stopped = is_stopped(sentence, at) || goes_on_measuring(sentence, at + 1);
    // `62 MIL DRY MIN.`: what is measured may stand between.
    let measured = at > 0
        && sentence.is_any(
            at - 1,
            &[
                "dry",
                "wet",
                "deep",
                "thick",
                "thk",
                "wide",
                "long",
                "high",
                "dp",
                "o.c",
                "oc",
                "locations",
                "places",
                "points",
            ],
        );
    let end = at - usize::from(measured);
    stopped
        && sentence.amounts.iter().any(|amount| {
            amount.last == end
                || (amount.last < end && sentence.skip_parentheses(amount.last) == end)
        })
}

/// Whether an amount has a qualifier of its own just after it: `1-1/2 in. max. 8 pcf min`.
fn closes_itself(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        let after = sentence.skip_parentheses(amount.last);
        sentence.is_any(after, &["min", "minimum", "max", "maximum", "min.", "max."])
    })
}

/// The relation of "or more", "or heavier", "or less".
pub(super) fn or_more(word: &str) -> Option<Relation> {
    Some(match word {
        "more" | "greater" | "heavier" | "hvr" | "hvy" | "thicker" | "thkr" | "wider"
        | "larger" | "longer" | "deeper" | "higher" | "over" | "above" | "denser" | "taller"
        | "bigger" | "up" | "warmer" | "better" | "later" | "older" | "upward" | "upwards"
        | "farther" | "further" | "beyond" | "stronger" | "harder" | "tougher" | "stiffer" => {
            Relation::AtLeast
        }
        "less" | "fewer" | "smaller" | "lighter" | "thinner" | "narrower" | "shorter"
        | "shallower" | "lower" | "under" | "below" | "closer" | "cooler" | "colder" | "sooner"
        | "earlier" | "nearer" | "younger" | "weaker" | "softer" => Relation::AtMost,
        _ => return None,
    })
}
