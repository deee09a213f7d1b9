use super::prefixed::limits_precede;
use super::word_after::{closes_adjacent, labels_a_case};
use super::{Finding, Sentence};
use crate::model::Relation;

/// Words that end the search: they begin another phrase, in which the number then stands.
const BREAKS: &[&str] = &[
    "and", "or", "with", "for", "in", "on", "by", "onto", "from", "into", "when", "where", "if",
    "that", "which", "than", "is", "are", "be", "shall", "must", "to", "but", "between", "through",
    "using", "under", "over", "above", "below", "per", "unless", "except",
    // `2 PINS MIN WITHIN 3" OF EACH END`: the word closed the pins.
    "within", "w/in",
];

/// What letters name, so that "c" before a number is one of them.
const LETTERED: &[&str] = &[
    "type",
    "class",
    "category",
    "option",
    "item",
    "deck",
    "configuration",
    "config",
    "case",
    "alternate",
];

/// How many words may stand between the qualifier and the number: `min total wet film thickness of 1/8 in.`
const REACH: usize = 7;

#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    // `1/2 in. min` and on the next line `3 hr: three layers`
    if index > 0 && labels_a_case(sentence, index) {
        return None;
    }
    // `max joint width + 1 in.` bounds the sum, not the inch.
    if sentence.is_sign(first, '+') {
        return None;
    }
    // `dia. c. 1.25 in.`
    let circa = |at: usize| {
        sentence
            .token(at)
            .is_some_and(|token| matches!(token.span.of(sentence.text), "c" | "c."))
            && !(at > 0 && sentence.is_any(at - 1, LETTERED))
    };
    let stopped = first > floor + 1 && sentence.is_sign(first - 1, '.') && circa(first - 2);
    if first > floor && circa(first - 1) || stopped {
        return Some(Finding::sure(Relation::About, first - 1));
    }
    if rises_from(sentence, first) || begins_at(sentence, index) {
        return Some(Finding::sure(Relation::AtLeast, first - 1));
    }
    // `As a minimum, 5 percent of the length is opened.`
    let led = first > floor + 2
        && sentence.is_sign(first - 1, ',')
        && sentence.is_any(first - 3, &["a", "the"]);
    if led
        && (first == 4 && sentence.is_word(0, "as")
            || first > 4 && sentence.is_word(first - 4, "as"))
    {
        return qualifier(sentence.word(first - 2))
            .map(|relation| Finding::sure(relation, first - 2));
    }
    // `Minimum thickness of slab, 4-5/8 in. for the 2 hr rating`
    if first > floor && sentence.is_sign(first - 1, ',') && names_size(sentence, first - 1) {
        return headed(sentence, first - 1, floor, false);
    }
    if let Some(relation) = opens_size(sentence, index) {
        return Some(Finding::sure(relation, 0));
    }
    for (steps, at) in (floor..first).rev().enumerate() {
        // `all min. two passes` closed what came before.
        let closed = qualifier(sentence.word(at)).is_some()
            && closes_adjacent(sentence, at)
            && !limits_precede(sentence, index);
        if sentence.is_word(at, "plus") || gathered(sentence, at) || closed {
            return None;
        }
        // `4000 psi min at 28 days` says when the first is reached.
        let timed = sentence.is_any(at + 1, &["at", "after", "within"])
            && sentence
                .amounts
                .iter()
                .any(|amount| amount.last == at || sentence.skip_parentheses(amount.last) == at);
        if timed {
            return None;
        }
        // `around the angles carry the fill 1/2 in. past them` says where, and `about` what of: only right before a number they are of it.
        let apart = (at + 1..first).any(|at| !sentence.is_any(at, &["a", "an", "the", "of"]));
        if apart && sentence.is_any(at, &["around", "about", "some"]) {
            return None;
        }
        if let Some(relation) = qualifier(sentence.word(at)) {
            if stands_between(sentence, index, at) || is_of_a_place(sentence, at, first, floor) {
                return None;
            }
            // `Minimum  Maximum  Unit` heads columns.
            let ends_amount = |at: usize| {
                sentence
                    .amounts
                    .iter()
                    .any(|amount| amount.last == at || sentence.skip_parentheses(amount.last) == at)
            };
            if at + 1 < first
                && at > floor
                && !ends_amount(at - 1)
                && !sentence.words(at - 1, at).contains('.')
                && qualifier(sentence.word(at - 1)).is_some_and(|other| other != relation)
            {
                return None;
            }
            // `min nominal 4 in.`: a limit of the nominal size.
            if relation == Relation::Nominal && at > floor && !ends_amount(at - 1) {
                let limit = qualifier(sentence.word(at - 1))
                    .filter(|limit| matches!(limit, Relation::AtLeast | Relation::AtMost));
                if let Some(limit) = limit {
                    return Some(Finding::sure(limit, at - 1));
                }
            }
            // `24 in. max 3 in. from the end`: the word may close the amount before; it opens this one.
            return Some(Finding::sure(relation, at));
        }
        if at > floor
            && (sentence.is_word(at, "like") && sentence.is_word(at - 1, "something")
                || sentence.is_word(at, "of") && sentence.is_word(at - 1, "order"))
        {
            return Some(Finding::sure(Relation::About, at - 1));
        }
        let joins = matches!(sentence.word(at), "of" | "a" | "an" | "the" | "at" | "=");
        // `Joint width (max) ...... 2 in.`
        let leads = sentence.is_sign(at, '.') && sentence.is_stop(at);
        if sentence.is_sign(at, ':') || leads {
            let each_before = limits_precede(sentence, index);
            return headed(sentence, at, floor, each_before);
        }
        // `1/8 in. wet min -- gauge it every 10 ft`
        if at + 1 < first
            && (sentence.is_sign(at, '-') && sentence.is_sign(at + 1, '-')
                || sentence.is_sign(at, '–')
                || sentence.is_sign(at, '—'))
        {
            return None;
        }
        // `@ 16" O.C. MAX W/ (2) #10 SCREWS`
        if sentence.is_any(at, &["w", "c"]) && sentence.is_sign(at + 1, '/') {
            return None;
        }
        // `6" WIDE MIN @ 24" O.C.`
        if sentence
            .token(at)
            .is_some_and(|token| token.span.of(sentence.text) == "@")
        {
            return None;
        }
        let near_break =
            sentence.is_any(at, BREAKS) || sentence.is_stop(at) || sentence.is_sign(at, '.');
        let copula = steps < 2
            && sentence.is_any(at, &["is", "are", "be", "to", "shall"])
            && qualifies_noun(sentence, at, floor);
        if (near_break && !joins && !copula) || steps >= REACH {
            return None;
        }
    }
    None
}

/// `The minimum depth at the max rating is 3 in.`: behind a preposition a qualifier says where, and limits nothing of what the subject "is".
pub(super) fn is_of_a_place(
    sentence: &Sentence<'_>,
    qualifier: usize,
    first: usize,
    floor: usize,
) -> bool {
    const PLACES: &[&str] = &[
        "at", "for", "in", "of", "with", "to", "on", "under", "over", "from", "by", "within",
        "across", "along", "through",
    ];
    let article = qualifier > floor && sentence.is_any(qualifier - 1, &["the", "a", "an", "its"]);
    let before = qualifier.checked_sub(1 + usize::from(article));
    let placed = before.is_some_and(|at| at >= floor && sentence.is_any(at, PLACES));
    placed && (qualifier + 1..first).any(|at| sentence.is_any(at, &["is", "are", "be"]))
}

/// `Depth 4 in. min recess 1/2 in.`: right behind a number that nothing limits and before the name of the next, a limit may be either's.
fn stands_between(sentence: &Sentence<'_>, index: usize, at: usize) -> bool {
    let Some(before) = index.checked_sub(1) else {
        return false;
    };
    let Some((own, next)) = sentence.amount(before).zip(sentence.amount(index)) else {
        return false;
    };
    let adjacent = own.last == at || sentence.skip_parentheses(own.last) == at;
    let limits = qualifier(sentence.word(at))
        .is_some_and(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost));
    let named = at + 1 < next.first && (at + 1..next.first).all(|at| sentence.has_word(at));
    let measures = own.unit != measure::Unit::Count && next.unit != measure::Unit::Count;
    adjacent
        && limits
        && named
        && measures
        && sentence.is_bound(before)
        && !limits_precede(sentence, index)
        && read(sentence, before).is_none()
}

/// `Maximum length before tooling: 15 ft`, `Thickness, min: 4 in.`, `Width (max): 40 mm`: a label that opens with the qualifier, or ends in it
/// apart from what it names. Behind a number a label begins only where every limit stands before its own.
fn headed(
    sentence: &Sentence<'_>,
    colon: usize,
    floor: usize,
    each_before: bool,
) -> Option<Finding> {
    const MOST_WORDS: usize = 6;
    let colon = without_unit(sentence, colon, floor);
    let parts = |at: &usize| [';', '.'].iter().any(|sign| sentence.is_sign(*at, *sign));
    // `Spacing (max): 12 in. OC; width (min): 1 in.`
    let start = (floor..colon).rev().find(parts).map_or(floor, |at| at + 1);
    // A bullet heads nothing.
    let bullet = sentence
        .token(0)
        .is_some_and(|token| token.word().is_none() && !token.is_numeric());
    let start = start + usize::from(start == 0 && bullet);
    // A colon that nothing stands before heads nothing either.
    let words = colon.checked_sub(start)?;
    let opens = (start == 0 || start > floor || each_before) && words <= MOST_WORDS;
    let are_words = |to: usize| (start..to).all(|at| sentence.has_word(at));
    let bracketed = colon > start + 3 && sentence.closing(colon - 3) == Some(colon - 1);
    let apart = colon > start + 2 && sentence.is_sign(colon - 2, ',');
    let set_off = bracketed
        .then(|| (colon - 2, colon - 3))
        .or(apart.then(|| (colon - 1, colon - 2)));
    if let Some((at, named)) = set_off {
        let relation = qualifier(sentence.word(at)).filter(|_| opens && are_words(named))?;
        return Some(Finding::sure(relation, at));
    }
    let plain = are_words(colon);
    let relation = qualifier(sentence.word(start)).filter(|_| opens && plain)?;
    Some(Finding::sure(relation, start))
}

/// Where a label ends before its unit: `Min depth (in.): 3`, `Min depth, in.: 3`.
fn without_unit(sentence: &Sentence<'_>, colon: usize, floor: usize) -> usize {
    const MOST_TOKENS: usize = 4;
    let from = colon.saturating_sub(MOST_TOKENS).max(floor);
    let is_unit = |at: usize| {
        let word = sentence.word(at);
        measure::notation::unit_at(word, 0).is_some_and(|(_, end)| end == word.len())
            && qualifier(word).is_none()
    };
    (from..colon)
        .rev()
        .find(|at| sentence.closing(*at) == Some(colon - 1) || sentence.is_sign(*at, ','))
        .filter(|at| is_unit(at + 1))
        .unwrap_or(colon)
}

/// Whether a limit of a size opens the sentence and leads to a comma: `Minimum thickness of slab, `
fn names_size(sentence: &Sentence<'_>, comma: usize) -> bool {
    const SIZES: &[&str] = &[
        "thickness",
        "width",
        "depth",
        "height",
        "density",
        "weight",
        "length",
        "spacing",
        "overlap",
        "compression",
    ];
    let of = sentence.is_word(2, "of") && (4..=6).contains(&comma);
    qualifier(sentence.word(0)).is_some() && sentence.is_any(1, SIZES) && (of || comma == 2)
}

/// `Min concrete thickness over top of units 2-1/2 in.`: the limit of a size opens the sentence, says where it is taken and ends in its number.
fn opens_size(sentence: &Sentence<'_>, index: usize) -> Option<Relation> {
    const SIZES: &[&str] = &["thickness", "depth", "height", "width", "length", "cover"];
    const PLACES: &[&str] = &["over", "above", "at", "on", "in", "below", "under"];
    const LONGEST: usize = 9;
    let amount = sentence.amount(index).filter(|amount| {
        index == 0
            && (4..=LONGEST).contains(&amount.first)
            && amount.unit.dimension() == measure::Dimension::Length
    })?;
    let relation = qualifier(sentence.word(0))
        .filter(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost))?;
    let size = (1..=3).find(|at| sentence.is_any(*at, SIZES))?;
    let placed = sentence.is_any(size + 1, PLACES) && size + 2 < amount.first;
    let plain = (1..amount.first).all(|at| {
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_some() && token.count.is_none())
    });
    let broken = (size + 2..amount.first).any(|at| sentence.is_any(at, BREAKS));
    let next = sentence.skip_parentheses(amount.last);
    let ends = sentence.token(next).is_none()
        || ['.', ';'].iter().any(|sign| sentence.is_sign(next, *sign));
    (placed && plain && !broken && ends).then_some(relation)
}

/// `from 200 mm thickness and 550 kg/m3 upward`: the first number of what rises from it.
fn rises_from(sentence: &Sentence<'_>, first: usize) -> bool {
    const STRETCH: usize = 14;
    // "from 300 mm below the slab upwards" is a place.
    let place = sentence
        .amounts
        .iter()
        .find(|amount| amount.first == first)
        .is_some_and(|amount| {
            sentence.is_any(
                sentence.skip_parentheses(amount.last),
                &["below", "above", "beneath", "from", "under", "over"],
            )
        });
    first > 0
        && !place
        && sentence.is_word(first - 1, "from")
        && (first..first + STRETCH)
            .take_while(|at| !sentence.is_stop(*at) && !sentence.is_word(*at, "to"))
            .any(|at| {
                sentence.is_any(at, &["upward", "upwards", "onward", "onwards"])
                    || sentence.is_word(at, "up")
                        && !sentence.is_any(at + 1, &["to", "the", "a", "onto", "into", "against"])
            })
}

/// `steel sheet, thickness from 0.6 mm`, `usable from −5 °C`: a size or a temperature with no end.
fn begins_at(sentence: &Sentence<'_>, index: usize) -> bool {
    const SIZES: &[&str] = &[
        "thickness",
        "width",
        "depth",
        "height",
        "density",
        "weight",
        "length",
    ];
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    let after = sentence.skip_parentheses(amount.last);
    // `walls from 100 mm thick`
    let measured = sentence.is_any(after, &["thick", "deep", "wide", "high", "long"]);
    let after = after + usize::from(measured);
    let ends = sentence.token(after).is_none()
        || sentence.is_stop(after)
        || sentence.is_sign(after, '.')
        || sentence.is_sign(after, ')');
    let warm = amount.unit.dimension() == measure::Dimension::Temperature;
    let of_size = measured
        || amount.first > 1
            && (sentence.is_any(amount.first - 2, SIZES)
                || warm
                    && sentence
                        .is_any(amount.first - 2, &["usable", "used", "applied", "workable"]));
    amount.first > 0
        && sentence.is_word(amount.first - 1, "from")
        && of_size
        && ends
        && amount.hi.is_none()
}

/// Whether a qualifier closes a list before it.
fn gathered(sentence: &Sentence<'_>, at: usize) -> bool {
    at > 0 && sentence.is_any(at - 1, &["all", "both"]) && qualifier(sentence.word(at)).is_some()
}

/// `min depth is 4 in.`, `max spacing shall be 24 in.`: a qualified noun and its verb.
fn qualifies_noun(sentence: &Sentence<'_>, at: usize, floor: usize) -> bool {
    (floor..at)
        .rev()
        .take(5)
        .any(|before| qualifier(sentence.word(before)).is_some())
}

/// The relation that a word before a number or noun names.
pub(crate) fn qualifier(word: &str) -> Option<Relation> {
    Some(match word {
        "min" | "minimum" | "mini" | "minimally" | "nlt" | "n/l/t" | "n.l.t" | "shortest"
        | "smallest" | "least" | "thinnest" | "narrowest" | "lightest" | "shallowest" => {
            Relation::AtLeast
        }
        "max" | "maximum" | "maximally" | "nmt" | "n/m/t" | "n.m.t" | "nte" | "n.t.e" | "n/t/e"
        | "longest" | "largest" | "greatest" | "thickest" | "widest" | "heaviest" | "deepest" => {
            Relation::AtMost
        }
        "nom" | "nominal" | "nominally" => Relation::Nominal,
        "exactly" | "precisely" => Relation::Exactly,
        "approximately" | "approx" | "abt" | "about" | "some" | "roughly" | "circa" | "ca"
        | "approximate" | "around" => Relation::About,
        _ => return None,
    })
}
