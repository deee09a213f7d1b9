//! Counts: `two layers`, `not fewer than 2 coats`, `one or more`, `four minimum per side`.

use measure::notation::NumeralStyle;
use measure::{Number, Unit};

use super::amounts::{Amount, Shape};
use super::lex::{Token, TokenKind};
use crate::model::Span;

/// Words after a number that show it counts nothing here.
const NOT_COUNTED: &[&str] = &[
    "of",
    "and",
    "or",
    "to",
    "in",
    "on",
    "at",
    "by",
    "side",
    "sides",
    "another",
    "end",
    "such",
    "half",
    "way",
    "ways",
    "time",
    "times",
    "the",
    "a",
    "an",
    "for",
    "is",
    "are",
    "shall",
    "may",
    "be",
    "if",
    "with",
    "from",
    "where",
    "when",
    "that",
    "which",
    "only",
    "side-by-side",
    "direction",
    "directions",
    "part",
    "parts",
    "third",
    "quarter",
    "fifth",
    "fourth",
    "hand",
    "as",
    "not",
    "set",
    "kind",
    "type",
    "page",
    "pages",
];

/// Things of which a listing counts even one.
const COUNTED_SINGLY: &[&str] = &[
    "layer",
    "layers",
    "lyr",
    "lyrs",
    "lift",
    "lifts",
    "coat",
    "coats",
    "pass",
    "passes",
    "ply",
    "plies",
    "piece",
    "pieces",
    "strip",
    "strips",
    "screw",
    "fastener",
    "anchor",
    "pin",
    "clip",
    "splice",
    "row",
    "rows",
    "stud",
    "bead",
    "bolt",
    "batt",
    "turn",
    "wrap",
    "thickness",
    "course",
    "strand",
    "weld",
    "rivet",
    "nail",
    "staple",
    "tie",
    "seam",
    "blanket",
    "angle",
    "board",
    "boards",
    "plug",
    "plugs",
    "sample",
    "cut",
    "place",
    "location",
    "operation",
    "point",
    "spot",
    "face",
    "faces",
    "anchors",
    "joint",
    "runner",
    "pipe",
    "opening",
    "section",
];

/// Words that bound a count when they stand before it.
const QUALIFIERS: &[&str] = &[
    "least", "than", "min", "minimum", "max", "maximum", "exactly", "most",
];

/// The count that begins at a token.
pub(super) fn count_at(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    if let Some(amount) = bracketed_count(tokens, at) {
        return Some(amount);
    }
    let token = tokens.get(at)?;
    let (number, digits) = match &token.kind {
        TokenKind::Word("once" | "Once" | "ONCE") if compared(tokens, at) => (1, false),
        TokenKind::Word("twice" | "Twice" | "TWICE") if compared(tokens, at) => (2, false),
        TokenKind::Word(_) => (token.count?, false),
        TokenKind::Number(numeral)
            if numeral.style == NumeralStyle::Whole
                && (numeral.value <= 100 || is_any(tokens, at + 1, &["cycles"])) =>
        {
            (i32::try_from(numeral.value.numerator()).ok()?, true)
        }
        _ => return None,
    };
    if digits
        && at
            .checked_sub(1)
            .and_then(|before| tokens.get(before))
            .is_some_and(|before| is_label(before, token))
    {
        return None;
    }
    // `one hundred and fifty`: no part of a greater number counts by itself.
    let greater = |at: usize| is_any(tokens, at, &["hundred", "thousand"]);
    let part_of_another = greater(at + 1)
        || at > 0 && greater(at - 1)
        || at > 1 && is_any(tokens, at - 1, &["and"]) && greater(at - 2)
        || !digits && tokens.get(at + 1).is_some_and(|next| next.count.is_some())
        || !digits
            && at > 0
            && tokens
                .get(at - 1)
                .is_some_and(|before| before.count.is_some());
    if part_of_another || refers_back(tokens, at, number) {
        return None;
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
    let bounds = |at: usize| {
        tokens
            .get(at)
            .is_some_and(|token| QUALIFIERS.contains(&token.lower))
    };
    // `at least three`, `a minimum of three`
    let qualified = at.checked_sub(1).is_some_and(|before| {
        bounds(before) || (is_any(tokens, before, &["of"]) && before > 0 && bounds(before - 1))
    });
    counted(tokens, next, number, digits, qualified)
        .then(|| count(number, at..next, token.span, token.span))
}

/// Whether a number counts what an earlier one counted, for another rating: `two layers for 1 Hr and three for 2 Hr`, `four plies for two
/// hours and six for that of three`.
fn goes_on_counting(tokens: &[Token<'_>], at: usize) -> bool {
    const BACK: usize = 16;
    const AHEAD: usize = 6;
    let joined = at.checked_sub(1).is_some_and(|before| {
        is_any(tokens, before, &["and", "or"])
            || tokens
                .get(before)
                .is_some_and(|token| token.is_sign(',') || token.is_sign(';'))
    });
    let rated = |token: &Token<'_>| matches!(&token.kind, TokenKind::Quantity(stated) if matches!(stated.unit, Unit::Hour | Unit::Minute));
    let for_rating = is_any(tokens, at + 1, &["for", "at"])
        && tokens
            .get(at + 2..)
            .unwrap_or_default()
            .iter()
            .take(AHEAD)
            .any(rated);
    let earlier = tokens.get(at.saturating_sub(BACK)..at).unwrap_or_default();
    let counted = earlier.windows(2).any(|pair| {
        let [number, noun] = pair else { return false };
        let counts = number.count.is_some() || matches!(&number.kind, TokenKind::Number(_));
        counts
            && COUNTED_SINGLY
                .iter()
                .any(|thing| noun.lower.starts_with(thing))
    });
    joined && for_rating && counted && earlier.iter().any(rated)
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

/// `one, two or three layers`: a count for each, of what stands after the last.
pub(super) fn count_list_at(tokens: &[Token<'_>], at: usize) -> Option<Vec<Amount>> {
    let number = |at: usize| {
        let token = tokens.get(at)?;
        match &token.kind {
            TokenKind::Number(numeral)
                if numeral.style == NumeralStyle::Whole && numeral.value <= 20 =>
            {
                i32::try_from(numeral.value.numerator()).ok()
            }
            _ => token.count,
        }
    };
    let joins = |at: usize| {
        is_any(tokens, at, &["or", "and"]) || tokens.get(at).is_some_and(|token| token.is_sign(','))
    };
    if !joins(at + 1) {
        return None;
    }
    number(at)?;
    let mut places = vec![at];
    while let Some(last) = places.last()
        && joins(last + 1)
        && number(last + 2).is_some()
    {
        places.push(last + 2);
    }
    let (last, earlier) = places.split_last()?;
    let closing = count_at(tokens, *last).filter(|_| !earlier.is_empty())?;
    let mut counts: Vec<Amount> = earlier
        .iter()
        .filter_map(|at| {
            let span = tokens.get(*at)?.span;
            Some(Amount {
                lo: Number::whole(number(*at)?),
                first: *at,
                last: at + 1,
                at: span,
                whole: span,
                ..closing.clone()
            })
        })
        .collect();
    counts.push(closing);
    Some(counts)
}

/// `(2) LAYERS`, `W/ (2) 0.157" PINS`: a count in brackets, as drawings write it. A bracketed number after a noun is a reference, so one
/// counts only where a list or a preposition leads to it.
fn bracketed_count(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    const LEADS: &[&str] = &[
        "with", "w", "of", "at", "by", "and", "or", "using", "use", "provide", "install", "min",
        "max",
    ];
    let sign = |at: usize, sign: char| tokens.get(at).is_some_and(|token| token.is_sign(sign));
    if !(sign(at, '(') && sign(at + 2, ')')) {
        return None;
    }
    let led = at.checked_sub(1).is_none_or(|before| {
        [',', ';', ':', '/'].iter().any(|stop| sign(before, *stop)) || is_any(tokens, before, LEADS)
    });
    let TokenKind::Number(numeral) = &tokens.get(at + 1)?.kind else {
        return None;
    };
    let number = i32::try_from(numeral.value.numerator()).ok()?;
    let whole = numeral.style == NumeralStyle::Whole && (1..=50).contains(&number);
    let things = counted(tokens, at + 3, number, false, true) || is_any(tokens, at + 3, &["every"]);
    let (first, last) = (tokens.get(at)?.span, tokens.get(at + 2)?.span);
    let digits = tokens.get(at + 1).map_or(first, |token| token.span);
    (led && whole && things).then(|| count(number, at..at + 3, digits, first.join(last)))
}

/// Whether "least", "than" or the like stands just before a token: `at least once per room`.
fn compared(tokens: &[Token<'_>], at: usize) -> bool {
    at > 0 && is_any(tokens, at - 1, &["least", "than", "most"])
}

fn is_any(tokens: &[Token<'_>], at: usize, words: &[&str]) -> bool {
    tokens
        .get(at)
        .is_some_and(|token| words.iter().any(|word| token.is_word(word)))
}

/// Whether a number only points at things already spoken of: `the two walls`, `between two walls`, `no single strip`, `in one layer`,
/// `to one angle only`.
fn refers_back(tokens: &[Token<'_>], at: usize, number: i32) -> bool {
    // `in one pass` says how many; `in one corner` points.
    const DONE: &[&str] = &[
        "pass",
        "coat",
        "layer",
        "ply",
        "piece",
        "lift",
        "operation",
        "course",
    ];
    let Some(before) = at.checked_sub(1).and_then(|before| tokens.get(before)) else {
        return false;
    };
    let word = |at: usize, words: &[&str]| is_any(tokens, at, words);
    let pointed = [
        "the", "these", "those", "between", "both", "which", "no", "any", "every", "either",
    ]
    .iter()
    .any(|word| before.is_word(word));
    let done = before.is_word("in") && word(at + 1, DONE);
    // `at one place in every 10 m` counts; `at one place` points.
    let spread = (at + 1..at + 4).any(|at| word(at, &["in"]) && word(at + 1, &["every", "each"]));
    let placed = number == 1
        && !spread
        && !done
        && ["in", "to", "from", "on", "onto", "at", "of", "than"]
            .iter()
            .any(|word| before.is_word(word))
        && !word(at + 1, &["or"])
        && !before.is_word("than");
    let only = number == 1 && (word(at + 2, &["only"]) || word(at + 3, &["only"]));
    pointed || placed || only
}

/// Whether what follows a number is something counted.
fn counted(tokens: &[Token<'_>], at: usize, number: i32, digits: bool, qualified: bool) -> bool {
    let Some(after) = tokens.get(at) else {
        return false;
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
    // `1 no. behind`, `4 nos`, as quantities are written in schedules
    if digits
        && matches!(first, "no" | "nos" | "off")
        && !tokens.get(at + 1).is_some_and(Token::is_numeric)
    {
        return true;
    }
    // `one at every fastener`, `one cut for every 200 feet`
    let spread = |at: usize| {
        is_any(tokens, at, &["every", "each"])
            || is_any(tokens, at, &["at", "for", "in", "on", "per"])
                && (is_any(tokens, at, &["per"]) || is_any(tokens, at + 1, &["every", "each"]))
    };
    // `one movement stop in each run`, `one plug of S on each storey`
    let spread_soon = |at: usize| {
        (at..at + 4)
            .take_while(|at| tokens.get(*at).is_some_and(|token| token.word().is_some()))
            .any(spread)
    };
    let thing = !NOT_COUNTED.contains(&first);
    if number == 1 && !digits && (spread(at) || (thing && spread_soon(at + 1))) {
        return true;
    }
    if first == "or" {
        return word(1).is_some_and(|second| matches!(second, "more" | "fewer" | "less"));
    }
    if matches!(first, "minimum" | "min" | "maximum" | "max") {
        return word(1).is_none_or(|second| second == "per");
    }
    if first == "per" && digits {
        // `2 per panel`; but `6 per Table 2` refers.
        const REFERRED: &[&str] = &["table", "item", "note", "the", "section", "manufacturer"];
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
    if NOT_COUNTED.contains(&first) {
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

/// Whether a token makes a label of the number after it, as the hyphen in `A-1` does.
fn is_label(token: &Token<'_>, number: &Token<'_>) -> bool {
    match &token.kind {
        TokenKind::Sign('.') => token.span.end() == number.span.start(),
        TokenKind::Sign(sign) => matches!(sign, '-' | '/' | '[' | '"' | '“'),
        TokenKind::Word(word) => {
            word.starts_with(char::is_uppercase)
                && word.chars().skip(1).any(char::is_lowercase)
                && !is_opening_word(word)
        }
        _ => false,
    }
}

/// Capitalised words that only open a sentence.
fn is_opening_word(word: &str) -> bool {
    matches!(
        word.to_lowercase().as_str(),
        "min"
            | "minimum"
            | "max"
            | "maximum"
            | "use"
            | "provide"
            | "with"
            | "install"
            | "apply"
            | "nom"
            | "nominal"
            | "the"
            | "each"
            | "at"
    )
}
