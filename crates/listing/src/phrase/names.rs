//! Numbers that are names, and quantities that mean something else: `Item 2`, `Table 1`, a size that is no screw's.

use measure::Unit;

use super::amounts::Spread;
use super::lex::{Token, TokenKind};

/// Words before a number that make a name of it, not an amount: `Item 2`, `Table 1`, `Class II`, `Type 4`.
const NAMING: &[&str] = &[
    "item",
    "items",
    "table",
    "tables",
    "note",
    "notes",
    "fig",
    "figure",
    "figures",
    "section",
    "sections",
    "class",
    "classes",
    "type",
    "types",
    "configuration",
    "configurations",
    "config",
    "design",
    "page",
    "grade",
    "series",
    "part",
    "step",
    "alternate",
    "alternates",
    "option",
    "options",
    "sheet",
    "rev",
    "revision",
    "edition",
    "astm",
    "ul",
    "en",
    "iso",
    "ansi",
    "aws",
    "nfpa",
    "ibc",
    "din",
    "bs",
    "see",
    "row",
    "rows",
    "column",
    "columns",
    "detail",
    "volume",
    "vol",
    "article",
    "art",
    "clause",
    "paragraph",
    "paragraphs",
    "para",
    "annex",
    "appendix",
    "subclause",
    "level",
    "group",
    "drawing",
];

/// Whether a token names something together with the number after it.
pub(super) fn names_something(tokens: &[Token<'_>], at: usize) -> bool {
    let Some(next) = tokens.get(at + 1) else {
        return false;
    };
    let number = matches!(next.kind, TokenKind::Number(_));
    // `alternative to 110`
    if at > 0 && number && tokens.get(at).is_some_and(|token| token.is_word("to")) {
        return ["alternative", "alternate"]
            .iter()
            .any(|word| tokens.get(at - 1).is_some_and(|token| token.is_word(word)));
    }
    let section = tokens.get(at).is_some_and(|token| token.is_sign('§'));
    if section {
        return number || next.is_numeric() || next.is_sign('(');
    }
    // `first row 2 to 3 in. below the track`
    let ranges = tokens
        .get(at)
        .is_some_and(|token| ["row", "level"].iter().any(|word| token.is_word(word)))
        && tokens.get(at + 2).is_some_and(|token| token.is_word("to"))
        && tokens
            .get(at + 3)
            .is_some_and(|token| matches!(token.kind, TokenKind::Quantity(_)));
    number
        && !ranges
        && tokens
            .get(at)
            .is_some_and(|token| NAMING.contains(&token.lower))
}

/// Whether the next token would name something together with the last word: `Item`, `Items 1 and`.
pub(super) fn follows_name(tokens: &[Token<'_>]) -> bool {
    tokens
        .iter()
        .rev()
        .find(|token| {
            let listed = matches!(token.kind, TokenKind::Number(_))
                || token.is_sign(',')
                || ["and", "or", "to"].iter().any(|word| token.is_word(word));
            !listed
        })
        .is_some_and(|token| NAMING.contains(&token.lower))
}

/// The token after a name and the numbers listed with it: `Items 2, 3A and 4`.
pub(super) fn skip_name(tokens: &[Token<'_>], at: usize) -> usize {
    let mut next = at + 1;
    while let Some(token) = tokens.get(next) {
        let listed = matches!(token.kind, TokenKind::Number(_));
        let joins = (token.is_sign(',')
            || token.is_sign('-')
            || token.is_sign('–')
            || token.is_word("and")
            || token.is_word("or")
            || token.is_word("to")
            || token.is_sign('&'))
            && tokens.get(next + 1).is_some_and(|after| {
                matches!(after.kind, TokenKind::Number(_))
                    && !tokens.get(next + 2).is_some_and(Token::is_numeric)
            });
        if !(listed || joins) {
            break;
        }
        next += 1;
    }
    next
}

/// Whether a quantity means what its unit says: a screw size needs a screw near it.
pub(super) fn is_meant(tokens: &[Token<'_>], at: usize, spread: &Spread, unit: Unit) -> bool {
    match unit {
        Unit::ScrewNumber => {
            const THINGS: [&str; 6] = ["screw", "fastener", "drill", "anchor", "bolt", "nail"];
            let near = tokens
                .get(at.saturating_sub(3)..)
                .unwrap_or_default()
                .iter()
                .take(14);
            near.filter(|token| token.word().is_some())
                .any(|token| THINGS.iter().any(|thing| token.lower.contains(thing)))
        }
        // `2 C` and `3 F` are labels more often than temperatures.
        Unit::Celsius | Unit::Fahrenheit => {
            spread.lo.abs() > 3
                || spread.span.len() > 4
                || spread.hi.is_some()
                || spread.lo.is_zero()
        }
        _ => true,
    }
}
