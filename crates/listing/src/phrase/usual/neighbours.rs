//! What the words beside a number say of it: that it is a length, that it counts, that it only limits.

use super::super::counts::is_done;
use super::super::lex::{Token, TokenKind};

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
    "longer",
    "wider",
    "deeper",
    "thicker",
    "shorter",
    "narrower",
    "thinner",
    "wet",
    "dry",
    "onto",
    "beyond",
    "into",
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
    "gaps",
    "slack",
    "breadth",
    "play",
    "laps",
    "clearances",
    "distances",
    "embedded",
    "recessed",
    "lapping",
    "protruding",
    "projecting",
    "Ø",
    "ø",
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

pub(super) fn is_length(tokens: &[Token<'_>], at: usize) -> bool {
    is_followed_by_size(tokens, at)
        || is_said_to_go_on(tokens, at)
        || is_of_layers(tokens, at)
        || is_at_intervals(tokens, at)
        || (!counts(tokens, at) && follows_size(tokens, at))
        || is_in_chain(tokens, at)
}

/// What a length is said to be in: `175 or more in thickness`.
const DIMENSIONS: &[&str] = &[
    "thickness",
    "width",
    "depth",
    "height",
    "length",
    "diameter",
];

/// `120 thick`, `75 min. leg`, `600 on centre`, `175 or more in thickness`.
pub(super) fn is_followed_by_size(tokens: &[Token<'_>], at: usize) -> bool {
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
    let or_more = word(at + 1) == "or"
        && ["more", "less", "greater", "over", "under"].contains(&word(at + 2))
        && word(at + 3) == "in"
        && DIMENSIONS.contains(&word(at + 4));
    on_centre
        || film
        || or_more
        || AFTER.contains(&word(next)) && !(qualifier && word(at + 1) == "or")
}

/// Whether a word that is counted follows: `4 screws`, `2 each side`. A limit or the end of the phrase is none.
pub(super) fn counts(tokens: &[Token<'_>], at: usize) -> bool {
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
        "nor",
        "but",
        "elsewhere",
        "otherwise",
        "throughout",
        "wet",
        "dry",
        "up",
        "down",
    ];
    let word = |at: usize| {
        let token = tokens.get(at).filter(|token| token.word().is_some());
        token.map(|token| token.lower.trim_end_matches('.'))
    };
    let next = || word(at + 2).unwrap_or_default();
    word(at + 1).is_some_and(|word| !NONE.contains(&word) && !is_done(word, next()))
}

/// `two layers of 15 board`
fn is_of_layers(tokens: &[Token<'_>], at: usize) -> bool {
    const LAYERS: &[&str] = &["layer", "layers", "thickness", "thicknesses"];
    let word = |back: usize| at.checked_sub(back).and_then(|at| tokens.get(at));
    word(1).is_some_and(|token| token.is_word("of"))
        && word(2).is_some_and(|token| LAYERS.contains(&token.lower))
}

/// `screws @ 600 max.`, `fixed to slab only at 600, leaving ...`: how far apart things are.
fn is_at_intervals(tokens: &[Token<'_>], at: usize) -> bool {
    const FIXED: &[&str] = &[
        "fixed",
        "fix",
        "fastened",
        "screwed",
        "nailed",
        "pinned",
        "anchored",
        "secured",
        "bolted",
        "stapled",
        "welded",
        "held",
        "screws",
        "studs",
        "anchors",
        "pins",
        "clips",
        "fasteners",
        "nails",
        "bolts",
        "brackets",
        "fixings",
        "staples",
        "straps",
        "noggings",
    ];
    const LIMITS: &[&str] = &[
        "max", "max.", "min", "min.", "maximum", "minimum", "nominal", "nom.",
    ];
    let behind = |word: &str| at > 0 && tokens.get(at - 1).is_some_and(|token| token.is_word(word));
    let near = tokens.get(at.saturating_sub(REACH)..at).unwrap_or_default();
    let fixed = near.iter().any(|token| FIXED.contains(&token.lower));
    let ends = tokens
        .get(at + 1)
        .is_none_or(|token| token.word().is_none() || LIMITS.contains(&token.lower));
    // `@` is read as "at".
    let sign = at > 0
        && tokens
            .get(at - 1)
            .is_some_and(|token| token.span.len() == 1);
    behind("at") && (fixed || sign) && ends
}

/// `carried 50 on to floor and 75 up the wall`
fn is_said_to_go_on(tokens: &[Token<'_>], at: usize) -> bool {
    let word = |at: usize| tokens.get(at).map_or("", |token| token.lower);
    let on_to = word(at + 1) == "on" && word(at + 2) == "to";
    let along =
        ["up", "down"].contains(&word(at + 1)) && ["the", "each", "both"].contains(&word(at + 2));
    on_to || along
}

/// `lap of not less than 25`, `Thickness: 12.5`, `spaced max 600`.
pub(super) fn follows_size(tokens: &[Token<'_>], at: usize) -> bool {
    follows(tokens, at, BEFORE)
}

/// Whether one of some words stands before a number, and nothing between them but words of limit.
pub(super) fn follows(tokens: &[Token<'_>], at: usize, words: &[&str]) -> bool {
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

/// `reinforced concrete, 175 minimum`: too many for a count whose things aren't named.
fn is_limited_behind(tokens: &[Token<'_>], at: usize) -> bool {
    const MOST_COUNTED: i32 = 24;
    let many = tokens.get(at).is_some_and(
        |token| matches!(&token.kind, TokenKind::Number(numeral) if numeral.value > MOST_COUNTED),
    );
    let limit = tokens.get(at + 1).is_some_and(|token| {
        ["minimum", "maximum"]
            .iter()
            .any(|word| token.is_word(word))
    });
    many && limit && !counts(tokens, at + 1)
}

/// `out of line by not more than 8`: a limit without a thing that it would count.
pub(super) fn is_compared(tokens: &[Token<'_>], at: usize) -> bool {
    const LIMITS: &[&str] = &["than", "least", "most", "exceed", "exceeding", "within"];
    // "never below 10 nor over 25", where a size is spoken of
    const SIDES: &[&str] = &["below", "over", "above", "under", "beyond"];
    const COUNTED: &[&str] = &[
        "number",
        "layers",
        "coats",
        "pieces",
        "screws",
        "fasteners",
        "anchors",
        "fixings",
        "pins",
        "clips",
        "studs",
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
    let before = |back: usize| at.checked_sub(back).and_then(|before| tokens.get(before));
    let is_one = |back: usize, words: &[&str]| {
        before(back).is_some_and(|token| words.contains(&token.lower))
    };
    let limited = is_one(1, LIMITS)
        || is_one(1, SIDES) && is_one(2, &["never", "not", "nor", "nowhere", "be", "go", "goes"])
        || is_limited_behind(tokens, at);
    let counted = tokens
        .get(at.saturating_sub(REACH)..at)
        .unwrap_or_default()
        .iter()
        .any(|token| COUNTED.contains(&token.lower));
    // "Butts no closer together than 600" are no 600 butts.
    let apart = at >= 2
        && tokens.get(at.saturating_sub(3)..at).is_some_and(|near| {
            let words = [
                "closer", "nearer", "together", "apart", "further", "farther",
            ];
            near.iter().any(|token| words.contains(&token.lower))
        });
    limited && (apart || !counted) && !counts(tokens, at)
}
