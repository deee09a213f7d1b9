//! The words that close a number: `min`, `or more`, `at most`, `being the least`.

use measure::{Dimension, Unit};

use super::super::Sentence;
use super::label::may_open_a_label;
use super::whose::opens_next;
use crate::model::Relation;

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
pub(super) fn closing_word(sentence: &Sentence<'_>, at: usize) -> Option<Relation> {
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
    if is_not_exceeded(sentence, at) {
        return Some(Relation::AtMost);
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

/// `10 % shall not be exceeded`, `40 mm is never to be exceeded`
fn is_not_exceeded(sentence: &Sentence<'_>, at: usize) -> bool {
    const MODALS: &[&str] = &["shall", "must", "may", "should", "can", "is", "are"];
    const MORE: &[&str] = &["in", "at", "for", "on", "under", "anywhere"];
    let denied = sentence.is_any(at, MODALS) && sentence.is_any(at + 1, &["not", "never"]);
    let be = at + 2 + usize::from(sentence.is_word(at + 2, "to"));
    let exceeded = sentence.is_word(be, "be") && sentence.is_word(be + 1, "exceeded");
    let ends = ends_stretch(sentence, be + 2) || sentence.is_any(be + 2, MORE);
    denied && exceeded && ends
}

/// `and not an inch more`, `and not a hair less`
pub(super) fn not_a_jot(sentence: &Sentence<'_>, at: usize) -> Option<Relation> {
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

pub(super) fn ends_stretch(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.token(at).is_none() || sentence.is_stop(at) || sentence.is_sign(at, '.')
}

/// The relation of "or more", "or heavier", "or less".
pub(in crate::rules) fn or_more(word: &str) -> Option<Relation> {
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
