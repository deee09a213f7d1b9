//! Counts: `two layers`, `not fewer than 2 coats`, `one or more`, `four minimum per side`.

mod labels;
mod pointing;
mod several;
mod things;

use measure::notation::{self, NumeralStyle};
use measure::{Number, Unit};

use super::amounts::{Amount, Shape};
use super::lex::{Token, TokenKind, is_any};
use super::words::fraction_word;
use crate::model::Span;
use labels::{counts_cycles, is_labelled_count, is_number_of};
use pointing::{doubles_a_part, is_both_faces, is_label, refers_back};
use several::{bracketed_count, goes_on_counting};
pub(super) use things::is_done;
use things::{COUNTED_SINGLY, NOT_COUNTED, QUALIFIERS};

pub(super) use several::{count_list_at, count_range_at};

/// The count that begins at a token.
pub(super) fn count_at(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    if let Some(amount) = bracketed_count(tokens, at) {
        return Some(amount);
    }
    let token = tokens.get(at)?;
    if is_pair(tokens, at) || is_both_faces(tokens, at) {
        return Some(count(2, at..at + 1, token.span, token.span));
    }
    if token.is_word("doubled") && doubles_a_part(tokens, at) {
        return Some(count(2, at..at + 1, token.span, token.span));
    }
    let (number, digits) = match &token.kind {
        TokenKind::Word("once" | "Once" | "ONCE") if compared(tokens, at) => (1, false),
        TokenKind::Word("twice" | "Twice" | "TWICE") if compared(tokens, at) => (2, false),
        TokenKind::Word(_) => (token.count?, false),
        TokenKind::Number(numeral)
            if numeral.style == NumeralStyle::Whole
                && (numeral.value <= 100 || counts_cycles(tokens, at)) =>
        {
            (i32::try_from(numeral.value.numerator()).ok()?, true)
        }
        _ => return None,
    };
    // `W/ 2 PCS`
    let with = at > 1
        && is_any(tokens, at - 2, &["w"])
        && tokens.get(at - 1).is_some_and(|slash| slash.is_sign('/'));
    if digits
        && !with
        && at
            .checked_sub(1)
            .and_then(|before| tokens.get(before))
            .is_some_and(|before| is_label(before, token))
    {
        return None;
    }
    // `two layers of 15 board`: how thick each is.
    let of_layers = at > 1
        && is_any(tokens, at - 1, &["of"])
        && is_any(
            tokens,
            at - 2,
            &["layer", "layers", "thickness", "thicknesses"],
        );
    if digits && of_layers {
        return None;
    }
    // `not one splice may lie ...`: none of them.
    if !digits && number == 1 && at > 0 && is_any(tokens, at - 1, &["not"]) {
        return None;
    }
    // `EI 60 applies`: a class code.
    if digits
        && at.checked_sub(1).is_some_and(|before| {
            is_any(tokens, before, &["ei", "ew", "rei", "eiw", "frl", "e", "r"])
        })
    {
        return None;
    }
    if is_part_of_another(tokens, at, digits) || refers_back(tokens, at, number) {
        return None;
    }
    if is_number_of(tokens, at) || is_labelled_count(tokens, at) {
        return Some(count(number, at..at + 1, token.span, token.span));
    }
    if goes_on_counting(tokens, at) {
        return Some(count(number, at..at + 1, token.span, token.span));
    }
    let mut next = at + 1;
    // `two (2) layers`
    if tokens.get(next).is_some_and(|token| token.is_sign('('))
        && tokens.get(next + 1).is_some_and(Token::is_numeric)
        && tokens.get(next + 2).is_some_and(|token| token.is_sign(')'))
    {
        next += 3;
    }
    if is_unit_with_power(tokens, next) {
        return None;
    }
    let bounds = |at: usize| {
        tokens
            .get(at)
            .is_some_and(|token| QUALIFIERS.contains(&token.lower))
    };
    // `at least three`, `a minimum of three`
    let qualified = at.checked_sub(1).is_some_and(|before| {
        let of = is_any(tokens, before, &["of", "a"]);
        bounds(before) || (of && before > 0 && bounds(before - 1))
    });
    // `only one of the two walls may be`
    let only = at > 0 && (is_any(tokens, at - 1, &["only"]) || qualified);
    let of_several = is_any(tokens, next, &["of"])
        && is_any(tokens, next + 1, &["the", "these", "those", "its", "their"]);
    if only && of_several && !digits {
        return Some(count(number, at..next, token.span, token.span));
    }
    (counted(tokens, next, number, digits, qualified) || is_a_single_thing(tokens, at))
        .then(|| count(number, at..next, token.span, token.span))
}

/// `a single block`: of a thing that comes in pieces "a single" says how many, where "one" may only name it.
fn is_a_single_thing(tokens: &[Token<'_>], at: usize) -> bool {
    const PIECES: &[&str] = &[
        "block", "pad", "sheet", "gasket", "panel", "mat", "slab", "roll", "tube",
    ];
    let article = at > 0 && is_any(tokens, at - 1, &["a"]);
    article && is_any(tokens, at, &["single"]) && is_any(tokens, at + 1, PIECES)
}

/// `one hundred and fifty`: no part of a greater number counts by itself.
fn is_part_of_another(tokens: &[Token<'_>], at: usize, digits: bool) -> bool {
    let greater = |at: usize| is_any(tokens, at, &["hundred", "thousand"]);
    greater(at + 1)
        || at > 0 && greater(at - 1)
        || at > 1 && is_any(tokens, at - 1, &["and"]) && greater(at - 2)
        || !digits && tokens.get(at + 1).is_some_and(|next| next.count.is_some())
        || !digits && names_parts(tokens, at + 1)
        || !digits
            && at > 0
            && tokens
                .get(at - 1)
                .is_some_and(|before| before.count.is_some())
}

/// The "eighths" of `three eighths`: a number in words before it counts nothing.
fn names_parts(tokens: &[Token<'_>], at: usize) -> bool {
    tokens
        .get(at)
        .is_some_and(|token| token.lower.ends_with('s') && fraction_word(token.lower).is_some())
}

/// `3 ft³`: what stands behind a number is a unit, though none that is known, and no thing.
fn is_unit_with_power(tokens: &[Token<'_>], at: usize) -> bool {
    let word = tokens.get(at).and_then(Token::word).unwrap_or_default();
    let unit = word.trim_end_matches(notation::is_note_mark);
    unit.len() < word.len() && notation::unit_at(unit, 0).is_some_and(|(_, end)| end == unit.len())
}

/// `a pair of angles`, `in pairs at 4 ft centres`: two of what is named. The pair that was spoken of before counts nothing.
fn is_pair(tokens: &[Token<'_>], at: usize) -> bool {
    let before = |words: &[&str]| at > 0 && is_any(tokens, at - 1, words);
    let of =
        is_any(tokens, at, &["pair"]) && before(&["a", "one"]) && is_any(tokens, at + 1, &["of"]);
    // `in pairs, one on either side`: what follows says it anew.
    let each = tokens.get(at + 1).is_some_and(|token| token.is_sign(','))
        && is_any(tokens, at + 2, &["one", "with"]);
    let joined = at > 1 && is_any(tokens, at - 2, &["together", "joined", "tied", "bound"]);
    of || is_any(tokens, at, &["pairs"]) && before(&["in"]) && !each && !joined
}

/// A count on tokens, its number on one span and all of it on another.
fn count(number: i32, tokens: core::ops::Range<usize>, at: Span, whole: Span) -> Amount {
    Amount {
        lo: Number::whole(number),
        hi: None,
        unit: Unit::Count,
        shape: Shape::Single,
        step: Number::ONE,
        second: None,
        first: tokens.start,
        last: tokens.end,
        at,
        whole,
    }
}

/// Whether "least", "than" or the like stands just before a token: `at least once per room`.
fn compared(tokens: &[Token<'_>], at: usize) -> bool {
    at > 0 && is_any(tokens, at - 1, &["least", "than", "most"])
}

/// Whether what follows a number is something counted.
fn counted(tokens: &[Token<'_>], at: usize, number: i32, digits: bool, qualified: bool) -> bool {
    let Some(after) = tokens.get(at) else {
        // `exactly one` ends a cell.
        return qualified && !digits;
    };
    let word = |offset: usize| {
        let token = tokens.get(at + offset)?;
        token.word().map(|_| token.lower)
    };
    let Some(first) = word(0) else {
        // `at least two, the second after 4 h`: what is counted stands before.
        if qualified && !digits && matches!(after.kind, TokenKind::Sign(',' | '.' | ';')) {
            return true;
        }
        // `two 1/4 in. dia anchors`, `two 0.145 in. pins`
        let thing_follows = (at..at + 9).filter_map(|at| tokens.get(at)).any(|token| {
            COUNTED_SINGLY
                .iter()
                .any(|thing| token.lower.starts_with(thing))
        });
        return !digits && after.is_numeric() && (number > 1 || thing_follows);
    };
    // `five at most per metre`
    if !digits && first == "at" && word(1).is_some_and(|second| matches!(second, "most" | "least"))
    {
        return true;
    }
    if !digits && is_said_to_be(tokens, at) {
        return true;
    }
    // `one within 2 in. of each end`
    let each_end = || {
        (at..at + 9)
            .any(|at| is_any(tokens, at, &["of"]) && is_any(tokens, at + 1, &["each", "every"]))
    };
    if !digits && first == "within" && each_end() {
        return true;
    }
    if !digits && first == "to" && is_to_each(tokens, at) {
        return true;
    }
    // `four times a year`
    if first == "times"
        && word(1).is_some_and(|second| matches!(second, "a" | "per" | "each" | "every"))
    {
        return true;
    }
    // `1 no. behind`, `4 nos`, as quantities are written in schedules
    if digits
        && matches!(first, "no" | "nos" | "off")
        && !tokens.get(at + 1).is_some_and(Token::is_numeric)
    {
        return true;
    }
    if !digits && is_spread(tokens, at, number, !NOT_COUNTED.contains(&first)) {
        return true;
    }
    if first == "or" {
        return word(1).is_some_and(|second| matches!(second, "more" | "fewer" | "less"));
    }
    if matches!(first, "minimum" | "min" | "maximum" | "max") {
        // `3 max in any notch`
        let each = || word(2).is_some_and(|third| matches!(third, "any" | "each" | "every" | "a"));
        return word(1).is_none_or(|second| {
            second == "per" || matches!(second, "in" | "on" | "at" | "to" | "for") && each()
        });
    }
    if first == "per" && digits {
        // `2 per panel`; but `6 per Table 2` refers, and `10 per minute` is a rate.
        const REFERRED: &[&str] = &[
            "minute",
            "second",
            "table",
            "item",
            "note",
            "the",
            "section",
            "manufacturer",
        ];
        let measured = tokens.get(at + 1).is_some_and(Token::is_numeric);
        return measured || word(1).is_some_and(|second| !REFERRED.contains(&second));
    }
    // `two such layers`
    if first == "such"
        && word(1).is_some_and(|noun| COUNTED_SINGLY.iter().any(|thing| noun.starts_with(thing)))
    {
        return true;
    }
    // `no fewer than two on each floor`, `at least one in any 25 ft`
    if qualified
        && matches!(first, "on" | "in" | "at" | "to" | "for" | "along")
        && word(1).is_some_and(|second| matches!(second, "each" | "every" | "any" | "a"))
    {
        return true;
    }
    if NOT_COUNTED.contains(&first) || word(1).is_some_and(|second| is_done(first, second)) {
        return false;
    }
    let nouns = [Some(first), word(1), word(2)];
    let singly = nouns
        .iter()
        .flatten()
        .any(|noun| COUNTED_SINGLY.contains(noun));
    if digits {
        return qualified || singly || first.ends_with('s') && first.len() > 3;
    }
    if number == 1 {
        return singly || (qualified && !NOT_COUNTED.contains(&first));
    }
    true
}

/// `six being the least number for one board`: what is counted is told by what follows.
fn is_said_to_be(tokens: &[Token<'_>], at: usize) -> bool {
    const EXTREMES: &[&str] = &[
        "least", "fewest", "most", "smallest", "greatest", "minimum", "maximum",
    ];
    is_any(tokens, at, &["being"])
        && is_any(tokens, at + 1, &["the"])
        && is_any(tokens, at + 2, EXTREMES)
}

/// `one at every fastener`, `one cut for every 200 feet`, `one plug of S on each storey`: counted for each of many. `thing` says whether what
/// follows may be a thing.
fn is_spread(tokens: &[Token<'_>], at: usize, number: i32, thing: bool) -> bool {
    let spread = |at: usize| {
        is_any(tokens, at, &["every", "each"])
            || is_any(tokens, at, &["at", "for", "in", "on", "per"])
                && (is_any(tokens, at, &["per"]) || is_any(tokens, at + 1, &["every", "each"]))
    };
    let soon = || {
        (at + 1..at + 5)
            .take_while(|at| tokens.get(*at).is_some_and(|token| token.word().is_some()))
            .any(spread)
    };
    spread(at) || number == 1 && thing && soon()
}

/// `two to each batt`, `three to a board`: so many to each of what was named.
fn is_to_each(tokens: &[Token<'_>], to: usize) -> bool {
    is_any(tokens, to + 1, &["each", "every", "a", "an", "either"])
        && tokens
            .get(to + 2)
            .is_some_and(|token| token.word().is_some())
        && !is_any(tokens, to + 2, &["third", "half", "quarter"])
}
