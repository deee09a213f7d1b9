//! Numbers without a unit in a document that states one for all its dimensions: `120 thick`, `at 400 centres`, `50 x 70 x 0.9`.
//!
//! Only a number that its neighbours say is a length takes the unit: a word of size right after it, or right before it with nothing but
//! words of limit between. A count, a date, a designation or a share takes none.

use measure::notation::{self, Numeral, Stated};
use measure::{Dimension, Unit};

use super::lex::{Token, TokenKind};
use super::names::{follows_name, names_something};
use crate::layout::UsualUnits;
use crate::model::Span;

/// Words of size that follow a length.
const AFTER: &[&str] = &[
    "thick",
    "wide",
    "deep",
    "high",
    "long",
    "apart",
    "centres",
    "centers",
    "c/c",
    "crs",
    "o.c",
    "o.c.",
    "oc",
    "centre",
    "lap",
    "overlap",
    "leg",
    "legs",
    "diameter",
    "dia",
    "clear",
    "clearance",
];

/// Words of size that a length follows.
const BEFORE: &[&str] = &[
    "thickness",
    "thick",
    "width",
    "widths",
    "wide",
    "depth",
    "depths",
    "deep",
    "height",
    "high",
    "length",
    "lengths",
    "long",
    "spacing",
    "spacings",
    "spaced",
    "centres",
    "centers",
    "crs",
    "pitch",
    "lap",
    "lapped",
    "overlap",
    "overlaps",
    "overlapped",
    "leg",
    "legs",
    "gap",
    "clearance",
    "diameter",
    "setback",
    "distance",
    "embedment",
    "penetration",
    "cover",
    "engagement",
    "projection",
    "return",
    "returns",
    "flange",
    "flanges",
    "web",
    "intervals",
    "bearing",
    "tolerance",
    "recess",
];

/// Words that may stand between a word of size and its number.
const BETWEEN: &[&str] = &[
    "of",
    "at",
    "is",
    "are",
    "be",
    "shall",
    "must",
    "to",
    "not",
    "no",
    "less",
    "more",
    "than",
    "least",
    "most",
    "exceed",
    "exceeding",
    "min",
    "minimum",
    "max",
    "maximum",
    "nominal",
    "nom",
    "up",
    "over",
    "under",
    "above",
    "below",
    "about",
    "approximately",
    "by",
    "every",
    "a",
    "the",
    "from",
    "between",
    "thinner",
    "narrower",
    "wider",
    "thicker",
    "shallower",
    "deeper",
    "shorter",
    "longer",
    "closer",
];

/// How far back a word of size may stand.
const REACH: usize = 8;

/// Gives the lengths among the numbers without a unit the unit that the document states for all of them.
pub(crate) fn with_usual<'a>(tokens: &mut Vec<Token<'a>>, text: &'a str, usual: UsualUnits) {
    part_minimums(tokens, text, usual);
    let units: Vec<Option<Unit>> = (0..tokens.len())
        .map(|at| {
            is_bare(tokens, at)
                .then(|| unit_at(tokens, at, usual))
                .flatten()
        })
        .collect();
    for (at, unit) in units.into_iter().enumerate() {
        if let Some(unit) = unit {
            take(tokens, at, unit);
        }
    }
    let usual = [usual.length, usual.density, usual.bare];
    for unit in usual.into_iter().flatten() {
        for at in 0..tokens.len() {
            if goes_with(tokens, at, unit) {
                take(tokens, at, unit);
            }
        }
    }
}

/// The unit of a number that has none.
fn unit_at(tokens: &[Token<'_>], at: usize, usual: UsualUnits) -> Option<Unit> {
    if usual.density.is_some()
        && !counts(tokens, at)
        && follows(tokens, at, &["density", "densities"])
    {
        return usual.density;
    }
    let length = || is_length(tokens, at) || is_compared(tokens, at);
    usual
        .length
        .filter(|_| length())
        .or(usual.bare.filter(|_| !counts(tokens, at)))
}

/// `out of line by not more than 8`: a limit without a thing that it would count.
fn is_compared(tokens: &[Token<'_>], at: usize) -> bool {
    const LIMITS: &[&str] = &["than", "least", "most", "exceed", "exceeding", "within"];
    const COUNTED: &[&str] = &[
        "number",
        "layers",
        "coats",
        "pieces",
        "screws",
        "strips",
        "fewer",
        "cycles",
        "readings",
        "butts",
        "times",
        "ratio",
        "share",
        "percent",
        "compression",
    ];
    let limited = at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .is_some_and(|before| LIMITS.contains(&before.lower));
    let counted = tokens
        .get(at.saturating_sub(REACH)..at)
        .unwrap_or_default()
        .iter()
        .any(|token| COUNTED.contains(&token.lower));
    limited && !counted && !counts(tokens, at)
}

/// Parts `75 min` in two where it is a length and its limit, and no time: `leg 75 min`; and `25 in height` where it is no length.
fn part_minimums<'a>(tokens: &mut Vec<Token<'a>>, text: &'a str, usual: UsualUnits) {
    let mut at = 0;
    while at < tokens.len() {
        if let Some((number, limit)) = minimum_at(tokens, at, text, usual)
            && let Some(token) = tokens.get_mut(at)
        {
            *token = number;
            tokens.insert(at + 1, limit);
        }
        at += 1;
    }
}

fn minimum_at<'a>(
    tokens: &[Token<'a>],
    at: usize,
    text: &'a str,
    usual: UsualUnits,
) -> Option<(Token<'a>, Token<'a>)> {
    let is_place = |tokens: &[Token<'_>], at: usize| {
        const PLACES: &[&str] = &[
            "height", "width", "depth", "length", "any", "each", "every", "all", "the",
        ];
        tokens
            .get(at)
            .is_some_and(|token| PLACES.contains(&token.lower))
    };
    let token = tokens.get(at)?;
    let TokenKind::Quantity(stated) = &token.kind else {
        return None;
    };
    let words = token.span.of(text);
    let bare = words.trim_end_matches('.');
    let stop = words.len() - bare.len();
    let word = match stated.unit {
        Unit::Minute
            if usual.bare.is_some()
                || follows_size(tokens, at)
                || is_followed_by_size(tokens, at) =>
        {
            "min"
        }
        // `25 in height` of a percentage
        Unit::Inch
            if usual
                .bare
                .or(usual.length)
                .is_some_and(|unit| unit != Unit::Inch)
                && stop == 0
                && is_place(tokens, at + 1) =>
        {
            " in"
        }
        _ => return None,
    };
    bare.strip_suffix(word)?;
    let from = token.span.end() - stop - word.trim_start().len();
    let number_end = token.span.start() + text.get(token.span.start()..from)?.trim_end().len();
    let number = Token {
        kind: TokenKind::Number(Numeral {
            value: stated.number,
            step: stated.step,
            style: stated.style,
        }),
        span: Span::new(token.span.start(), number_end),
        ..token.clone()
    };
    let word = text.get(from..from + word.trim_start().len())?;
    let limit = Token {
        kind: TokenKind::Word(word),
        lower: word,
        count: None,
        span: Span::new(from, token.span.end()),
    };
    Some((number, limit))
}

fn take(tokens: &mut [Token<'_>], at: usize, unit: Unit) {
    let Some(token) = tokens.get_mut(at) else {
        return;
    };
    if let TokenKind::Number(numeral) = &token.kind {
        token.kind = TokenKind::Quantity(Stated {
            number: numeral.value,
            unit,
            step: numeral.step,
            style: numeral.style,
            span: token.span.start()..token.span.end(),
        });
    }
}

/// Whether a number stands here with neither unit nor name.
fn is_bare(tokens: &[Token<'_>], at: usize) -> bool {
    let number = tokens
        .get(at)
        .is_some_and(|token| matches!(token.kind, TokenKind::Number(_)));
    let named = at
        .checked_sub(1)
        .is_some_and(|before| names_something(tokens, before))
        || follows_name(tokens.get(..at).unwrap_or_default());
    // `gauge 20`, `No. 8`
    let sized = at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .is_some_and(|before| {
            ["gauge", "gage", "ga", "no", "no.", "nos"]
                .iter()
                .any(|word| before.is_word(word))
                || before.is_sign('#')
        });
    let share = tokens.get(at + 1).is_some_and(|token| token.is_sign('%'));
    number && !named && !sized && !share
}

fn is_length(tokens: &[Token<'_>], at: usize) -> bool {
    is_followed_by_size(tokens, at)
        || (!counts(tokens, at) && follows_size(tokens, at))
        || is_in_chain(tokens, at)
}

/// `120 thick`, `75 min. leg`, `600 on centre`.
fn is_followed_by_size(tokens: &[Token<'_>], at: usize) -> bool {
    let word = |at: usize| {
        tokens
            .get(at)
            .map_or("", |token| token.lower)
            .trim_end_matches('.')
    };
    let qualifier =
        ["min", "max", "minimum", "maximum", "nominal", "nom", "or"].contains(&word(at + 1));
    let next = if qualifier { at + 2 } else { at + 1 };
    let on_centre = word(next) == "on" && word(next + 1).starts_with("cent");
    let film =
        ["wet", "dry"].contains(&word(next)) && ["thickness", "film"].contains(&word(next + 1));
    on_centre || film || AFTER.contains(&word(next)) && !(qualifier && word(at + 1) == "or")
}

/// Whether a word that is counted follows: `4 screws`, `2 each side`. A limit or the end of the phrase is none.
fn counts(tokens: &[Token<'_>], at: usize) -> bool {
    const NONE: &[&str] = &[
        "min",
        "minimum",
        "max",
        "maximum",
        "nominal",
        "nom",
        "or",
        "and",
        "to",
        "at",
        "on",
        "in",
        "from",
        "onto",
        "below",
        "above",
        "over",
        "past",
        "beyond",
        "into",
        "with",
        "by",
        "x",
        "for",
        "measured",
        "when",
        "where",
        "unless",
        "either",
        "vertically",
        "horizontally",
        "will",
        "shall",
        "is",
        "are",
        "may",
        "must",
        "can",
        "if",
        "does",
        "suffices",
        "overall",
        "of",
    ];
    tokens
        .get(at + 1)
        .and_then(Token::word)
        .is_some_and(|word| !NONE.contains(&word.to_lowercase().trim_end_matches('.')))
}

/// `lap of not less than 25`, `Thickness: 12.5`, `spaced max 600`.
fn follows_size(tokens: &[Token<'_>], at: usize) -> bool {
    follows(tokens, at, BEFORE)
}

/// Whether one of some words stands before a number, and nothing between them but words of limit.
fn follows(tokens: &[Token<'_>], at: usize, words: &[&str]) -> bool {
    for before in (at.saturating_sub(REACH)..at).rev() {
        let Some(token) = tokens.get(before) else {
            return false;
        };
        match token.kind {
            TokenKind::Word(_) => {
                let word = token.lower.trim_end_matches('.');
                if words.contains(&word) {
                    return true;
                }
                if !BETWEEN.contains(&word) {
                    return false;
                }
            }
            TokenKind::Sign(':' | '=' | '≥' | '≤' | '<' | '>' | '.' | '±') => {}
            _ => return false,
        }
    }
    false
}

/// `50 x 70 x 0.9`: a number among sizes that are multiplied. Of two, a small first one counts: `2 x 12.5`.
fn is_in_chain(tokens: &[Token<'_>], at: usize) -> bool {
    let times = |at: usize| {
        tokens
            .get(at)
            .is_some_and(|token| token.is_sign('×') || token.is_word("x"))
    };
    let number = |at: usize| tokens.get(at).is_some_and(Token::is_numeric);
    let after = times(at + 1) && number(at + 2);
    let before = at >= 2 && times(at - 1) && number(at - 2);
    let small = tokens
        .get(at)
        .is_some_and(|token| matches!(&token.kind, TokenKind::Number(numeral) if numeral.value.is_whole() && numeral.value <= 4));
    let first_of_two = after && !before && !times(at + 3);
    (after || before) && !(first_of_two && small)
}

/// The other end of a range, or a tolerance: `20 to 60`, `150 ± 5`.
fn goes_with(tokens: &[Token<'_>], at: usize, unit: Unit) -> bool {
    let length = |at: usize| {
        tokens.get(at).is_some_and(
            |token| matches!(&token.kind, TokenKind::Quantity(stated) if stated.unit == unit),
        )
    };
    let joins = at >= 2
        && tokens.get(at - 1).is_some_and(|token| {
            ["to", "and"].iter().any(|word| token.is_word(word))
                || ['±', '-', '–'].iter().any(|sign| token.is_sign(*sign))
        });
    joins && length(at - 2) && is_bare(tokens, at) && !counts(tokens, at)
}

/// The units that a document states for all its numbers: `All dimensions are in millimetres unless noted otherwise. Densities in kg/m3.` None where it
/// states none, or two.
pub(crate) fn usual_units(text: &str) -> UsualUnits {
    const LENGTHS: &[&str] = &["dimensions", "measurements", "lengths", "sizes"];
    UsualUnits {
        length: stated(text, LENGTHS, Dimension::Length),
        density: stated(text, &["densities"], Dimension::Density),
        bare: None,
    }
}

fn stated(text: &str, nouns: &[&str], dimension: Dimension) -> Option<Unit> {
    let mut found = None;
    let begins = |c: char| {
        nouns
            .iter()
            .any(|noun| noun.starts_with(c.to_ascii_lowercase()))
    };
    for (at, _) in text.match_indices(begins) {
        let Some(unit) = statement_at(text, at, nouns, dimension) else {
            continue;
        };
        if found.is_some_and(|held| held != unit) {
            return None;
        }
        found = Some(unit);
    }
    found
}

/// The unit of a statement whose noun begins here: `dimensions are in mm`, `dimensions in inches unless`.
fn statement_at(text: &str, at: usize, nouns: &[&str], dimension: Dimension) -> Option<Unit> {
    const BETWEEN: &[&str] = &[
        "are",
        "is",
        "given",
        "stated",
        "shown",
        "quoted",
        "expressed",
        "as",
        "and",
        "in",
        "card",
        "document",
        "drawing",
        "listing",
        "report",
        "schedule",
        "table",
        "entry",
        "on",
        "this",
        "sheet",
        "thicknesses",
        "lengths",
        "widths",
        "all",
        "herein",
        "listed",
    ];
    const MOST_WORDS: usize = 8;
    let starts_word = !text.get(..at)?.ends_with(char::is_alphanumeric);
    let rest = text.get(at..)?;
    let noun = nouns.iter().find(|noun| {
        rest.get(..noun.len())
            .is_some_and(|head| head.eq_ignore_ascii_case(noun))
    })?;
    if !starts_word {
        return None;
    }
    let mut says_in = false;
    for word in rest.get(noun.len()..)?.split_whitespace().take(MOST_WORDS) {
        let bare = word
            .trim_matches(|c: char| !c.is_alphanumeric())
            .to_lowercase();
        // `in` alone is a word here, and no inch.
        let unit = (bare != "in")
            .then(|| notation::unit_at(&format!("1 {bare}"), 1))
            .flatten();
        if let Some((unit, end)) = unit
            && end == bare.len() + 2
            && unit.dimension() == dimension
        {
            return says_in.then_some(unit);
        }
        if !BETWEEN.contains(&bare.as_str()) {
            return None;
        }
        says_in |= ["in", "are", "as"].contains(&bare.as_str());
    }
    None
}

#[cfg(test)]
mod tests {
    use super::super::amounts::amounts;
    use super::super::lex::lex;
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &[&str]) {
        let lower = text.to_ascii_lowercase();
        let mut tokens = lex(text, &lower);
        with_usual(
            &mut tokens,
            text,
            UsualUnits {
                length: Some(Unit::Millimetre),
                ..UsualUnits::default()
            },
        );
        let found: Vec<_> = amounts(&tokens)
            .iter()
            .map(|amount| {
                let hi = amount.hi.map_or(String::new(), |hi| format!("..{hi}"));
                format!("{}{hi} {}", amount.lo, amount.unit)
            })
            .collect();
        assert_eq!(found, expected, "{text}");
    }

    #[test]
    fn what_its_neighbours_call_a_length_takes_the_unit() {
        check("slab min 120 thick", &["120 mm"]);
        check(
            "studs 92 wide, spaced max 600 on centre",
            &["92 mm", "600 mm"],
        );
        check("leg 75 min, fastened at 400 centres", &["75 mm", "400 mm"]);
        check("lap not less than 25 onto each side", &["25 mm"]);
        check("angle 50 x 70 x 0.9", &["50 mm", "70 mm", "9/10 mm"]);
        check("width from 20 to 60", &["20..60 mm"]);
        check("75 to 100 thick", &["75..100 mm"]);
        check("thickness: 150 ± 5", &["145..155 mm"]);
    }

    #[test]
    fn a_count_a_name_or_a_share_takes_none() {
        check("leg with 2 screws", &["2 count"]);
        check("see Table 4 for the width", &[]);
        check("width reduced by 25 %", &["25 percent"]);
        check("2 layers, each 15 thick", &["2 count", "15 mm"]);
        check("edition of 2019", &[]);
    }

    #[test]
    fn the_unit_is_stated_once_for_all() {
        assert_eq!(
            usual_units("General: All dimensions are in millimetres unless stated.").length,
            Some(Unit::Millimetre)
        );
        assert_eq!(
            usual_units("(Dimensions in mm)").length,
            Some(Unit::Millimetre)
        );
        assert_eq!(
            usual_units("all dimensions\nin inches unless noted").length,
            Some(Unit::Inch)
        );
        assert_eq!(
            usual_units("Unless noted, dimensions are millimetres.").length,
            Some(Unit::Millimetre)
        );
        assert_eq!(usual_units("sizes up to 40 mm in width").length, None);
        assert_eq!(
            usual_units("dimensions in mm. Dimensions in inches.").length,
            None
        );
    }
}
