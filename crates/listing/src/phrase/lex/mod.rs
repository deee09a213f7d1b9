//! A sentence as tokens: words, signs, numbers and quantities.

mod labelled;
mod meant;
mod spelled;

use measure::Unit;
use measure::notation::{self, Numeral, NumeralStyle, Stated};

use self::labelled::{labelled_unit, share_labelled_units};
pub(crate) use self::labelled::{lists_behind_unit, measures};
use self::meant::{give_gauges_their_inches, give_sheets_their_unit, name_gauges, name_minerals};
use self::spelled::{spelled_in_figures, spelled_quantity};
use super::names::follows_name;
use super::words::count_word;
use crate::model::Span;

/// A token of a running text.
#[derive(Debug, Clone)]
pub(crate) struct Token<'a> {
    pub(crate) kind: TokenKind<'a>,
    /// The word in small letters; empty for what is none.
    pub(crate) lower: &'a str,
    /// The number that the word counts: `two`.
    pub(crate) count: Option<i32>,
    /// Bytes of the running text.
    pub(crate) span: Span,
}

/// What a token is.
#[derive(Debug, Clone)]
pub(crate) enum TokenKind<'a> {
    /// A word, as printed.
    Word(&'a str),
    /// A number with its unit.
    Quantity(Stated),
    /// A number with none.
    Number(Numeral),
    /// Anything else.
    Sign(char),
}

impl Token<'_> {
    /// Whether this is the given word, whatever its capitals; the word is given in small letters.
    pub(crate) fn is_word(&self, word: &str) -> bool {
        self.lower == word
    }

    /// The word, if this is one.
    pub(crate) fn word(&self) -> Option<&str> {
        match self.kind {
            TokenKind::Word(word) => Some(word),
            _ => None,
        }
    }

    /// Whether this is the given sign.
    pub(crate) fn is_sign(&self, sign: char) -> bool {
        matches!(self.kind, TokenKind::Sign(own) if own == sign)
    }

    /// Whether this is a number, with a unit or without.
    pub(crate) fn is_numeric(&self) -> bool {
        matches!(self.kind, TokenKind::Quantity(_) | TokenKind::Number(_))
    }
}

/// Whether a token is one of some words.
pub(super) fn is_any(tokens: &[Token<'_>], at: usize, words: &[&str]) -> bool {
    tokens
        .get(at)
        .is_some_and(|token| words.iter().any(|word| token.is_word(word)))
}

/// Splits a running text into tokens.
///
/// A word keeps its inner hyphens and apostrophes (`on-center`, `floor-to-floor`); a stop that shortens a word is left
/// out (`max.`). A number glued to letters is part of the word (`W8x28`, `T1`, `C-H`). The text is given in small letters, too.
pub(crate) fn lex<'a>(text: &'a str, lower: &'a str) -> Vec<Token<'a>> {
    let mut tokens: Vec<Token<'a>> = Vec::with_capacity(text.len() / 4 + 2);
    let mut at = 0;
    let mut quote_open = false;
    while let Some(c) = text.get(at..).and_then(|rest| rest.chars().next()) {
        if c.is_whitespace() {
            at += c.len_utf8();
            continue;
        }
        // `4 pcf² min`: the mark of a note says nothing here.
        let follows = tokens
            .last()
            .is_some_and(|token| token.is_numeric() && noted_end(text, token.span.end()) > at);
        if notation::is_note_mark(c) && follows {
            at += c.len_utf8();
            continue;
        }
        let (kind, end) = next(text, at, c, quote_open, &tokens);
        if matches!(kind, TokenKind::Sign('"' | '“' | '”')) {
            quote_open = c != '”' && !quote_open;
        }
        let (lower, count) = match kind {
            TokenKind::Word("at") => ("at", None),
            TokenKind::Word(word) => {
                let small = lower.get(at..at + word.len()).unwrap_or_default();
                (small, count_word(small))
            }
            _ => ("", None),
        };
        tokens.push(Token {
            kind,
            lower,
            count,
            span: Span::new(at, end),
        });
        // Whatever a notation says of its end, the reading goes forward.
        at = end.max(at + c.len_utf8());
    }
    name_minerals(&mut tokens);
    name_gauges(&mut tokens);
    give_gauges_their_inches(&mut tokens);
    give_sheets_their_unit(&mut tokens);
    share_labelled_units(&mut tokens);
    tokens
}

fn next<'a>(
    text: &'a str,
    at: usize,
    c: char,
    quote_open: bool,
    before: &[Token<'_>],
) -> (TokenKind<'a>, usize) {
    if let Some(crossed) = crossed(text, at, before) {
        return crossed;
    }
    if let Some((stated, end)) = labelled_unit(text, at) {
        return (TokenKind::Quantity(stated), end);
    }
    let numeric = c.is_ascii_digit()
        || c == '.'
        || (!c.is_ascii() && !c.is_alphabetic() && notation::numeral_at(text, at).is_some());
    if let Some(date) = date(text, at) {
        return (TokenKind::Word(date), at + date.len());
    }
    if (numeric || prefixes_number(text, at, c))
        && let Some(stated) = quantity(text, at, quote_open, before)
    {
        let end = stated.span.end;
        return (TokenKind::Quantity(stated), end);
    }
    if numeric && let Some(stated) = fraction_of_an_inch(text, at) {
        let end = stated.span.end;
        return (TokenKind::Quantity(stated), end);
    }
    if numeric && let Some((stated, end)) = mixed_by_and(text, at, before) {
        return (TokenKind::Quantity(stated), end);
    }
    if numeric
        && let Some((numeral, end)) = notation::numeral_at(text, at)
        && (!continues_word(text, end) || crosses(text, end))
    {
        return (TokenKind::Number(numeral), end);
    }
    let joins = before
        .last()
        .is_some_and(|token| token.is_numeric() && token.span.end() == at);
    if matches!(c, 'x' | 'X') && joins && crosses(text, at) {
        return (
            TokenKind::Word(text.get(at..at + 1).unwrap_or_default()),
            at + 1,
        );
    }
    // `Ø3 mm`: the sign of a diameter is a letter, and no part of the number.
    let leads = text
        .get(at + c.len_utf8()..)
        .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()));
    if matches!(c, 'Ø' | 'ø') && leads {
        return (
            TokenKind::Word(text.get(at..at + c.len_utf8()).unwrap_or_default()),
            at + c.len_utf8(),
        );
    }
    if c.is_alphanumeric() {
        let end = word_end(text, at);
        if let Some((stated, end)) = spelled_quantity(text, at, end) {
            return (TokenKind::Quantity(stated), end);
        }
        if let Some((numeral, end)) = spelled_in_figures(text, at, end) {
            return (TokenKind::Number(numeral), end);
        }
        let word = text.get(at..end).unwrap_or_default();
        // The stop of an abbreviation belongs to its word, so that it parts nothing: `min. 98 mm`.
        let shortened = text.get(end..).is_some_and(|rest| rest.starts_with('.'))
            && crate::sentences::is_abbreviation(word);
        return (TokenKind::Word(word), if shortened { end + 1 } else { end });
    }
    // Drawings write `@` for "at".
    if c == '@' {
        return (TokenKind::Word("at"), at + 1);
    }
    let leader = leader_len(text, at);
    (TokenKind::Sign(c), at + leader.unwrap_or(c.len_utf8()))
}

/// A date, `2018-11-30`: none of its numbers measures anything.
fn date(text: &str, at: usize) -> Option<&str> {
    const LENGTH: usize = 10;
    let date = text.get(at..at + LENGTH)?;
    let apart = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric() && c != '-');
    let stands_alone = apart(text.get(..at)?.chars().next_back())
        && apart(text.get(at + LENGTH..)?.chars().next());
    let mut parts = date.split('-');
    let mut part = |digits: usize, within: core::ops::RangeInclusive<u16>| {
        let part = parts.next().filter(|part| part.len() == digits);
        part.and_then(|part| part.parse::<u16>().ok())
            .is_some_and(|number| within.contains(&number))
    };
    (stands_alone && part(4, 1900..=2199) && part(2, 1..=12) && part(2, 1..=31)).then_some(date)
}

/// The length of a row of dots that leads the eye from a label to its value, as one sign: `......`, `. . . .`
fn leader_len(text: &str, at: usize) -> Option<usize> {
    let rest = text.get(at..)?;
    let len = rest.len() - rest.trim_start_matches(['.', ' ']).len();
    let dots = rest.get(..len)?.matches('.').count();
    (dots >= 3).then_some(rest.get(..len)?.trim_end().len())
}

/// A quantity here, unless its inch mark is really the closing quote of a name, `"Woolly 6"`, its inches a preposition, `Item 4 in joints`, or
/// it is a name itself, `kit 40-C`, `Vindoflex 2K`.
fn quantity(text: &str, at: usize, quote_open: bool, before: &[Token<'_>]) -> Option<Stated> {
    let stated = notation::quantity_at(text, at)?;
    let words = text.get(stated.span.clone())?;
    let closes_quote = quote_open && words.ends_with(['"', '”']);
    let preposition = words.ends_with(" In") || words.ends_with(" in") && follows_name(before);
    let preposition = preposition
        || words.ends_with(" in")
            && names_other_joints(text.get(..at)?, text.get(stated.span.end..)?);
    let lettered = match stated.unit {
        Unit::Celsius | Unit::Fahrenheit => {
            words.contains('-') || !words.contains([' ', '°']) && stated.number < 10
        }
        // `2 MIN. PER PIECE` counts, and lasts no minutes.
        Unit::Minute => {
            let after = text.get(stated.span.end..)?.trim_start_matches(['.', ' ']);
            let counts = follows_counting_label(before) && after.is_empty();
            // `Clause 1.1` over `Min depth 3 in.`
            let limit = after
                .split(|c: char| !c.is_alphabetic())
                .next()
                .is_some_and(measures);
            // `3-5/8 MIN` is no time.
            let fraction = stated.style == NumeralStyle::Fraction;
            words.to_ascii_lowercase().ends_with("min")
                && (counts
                    || fraction
                    || limit
                    || ["per ", "ea ", "ea.", "each "].iter().any(|each| {
                        after
                            .get(..each.len())
                            .is_some_and(|head| head.eq_ignore_ascii_case(each))
                    }))
        }
        // `Item 3H`
        Unit::Hour => words.ends_with('H') && !words.contains(' ') && follows_item(before),
        Unit::KelvinRise => !words.contains(' ') && stated.number < 20,
        _ => false,
    };
    let fraction = !is_stroke(words, stated.unit) && !is_torque(text, &stated);
    (!closes_quote && !preposition && !lettered && fraction).then_some(stated)
}

/// Whether words go on with other joints, so that the "in" before them is no inch: `6 in wider joints`.
fn names_other_joints(before: &str, behind: &str) -> bool {
    let mut each = behind.split_whitespace();
    let other = each.next().is_some_and(|word| match word {
        "wider" | "narrower" | "larger" | "smaller" | "other" | "such" => true,
        // `4 in. in narrow joints and 6 in wide joints`
        "wide" => before.contains(" in narrow "),
        "narrow" => before.contains(" in wide "),
        _ => false,
    });
    let noun = each.next().unwrap_or_default();
    let noun = noun.trim_end_matches(['.', ',', ';', ')']);
    behind.starts_with(' ') && other && ["joints", "gaps", "openings", "ones"].contains(&noun)
}

/// Whether the last word names an item, or one of several: `Item`, `Items 2H and`.
fn follows_item(before: &[Token<'_>]) -> bool {
    let lettered = |token: &Token<'_>| token.lower.starts_with(|c: char| c.is_ascii_digit());
    let named = before.iter().rev().find(|token| {
        !(lettered(token)
            || matches!(token.kind, TokenKind::Number(_))
            || token.is_sign(',')
            || ["and", "or", "to"].iter().any(|word| token.is_word(word)))
    });
    named.is_some_and(|token| ["item", "items", "note", "detail"].contains(&token.lower))
}

/// `25 ft-lb`, `60 in.-lb`: how tight, and no length.
fn is_torque(text: &str, stated: &Stated) -> bool {
    let rest = text.get(stated.span.end..).unwrap_or_default();
    let force = rest.trim_start_matches(['.', '-', '·', ' ']);
    let length = matches!(stated.unit, Unit::Inch | Unit::Foot);
    length
        && force.len() < rest.len()
        && ["lb", "pound"].iter().any(|pound| force.starts_with(pound))
}

/// `2 and 1/2 in.`: a whole number and a part of one, which no list has in that order.
fn mixed_by_and(text: &str, at: usize, before: &[Token<'_>]) -> Option<(Stated, usize)> {
    const LEADING: &[&str] = &[
        "than",
        "least",
        "most",
        "of",
        "be",
        "is",
        "min",
        "max",
        "minimum",
        "maximum",
        "exceed",
        "exceeding",
        "to",
        "nominal",
        "within",
    ];
    let led = before.last().is_none_or(|token| {
        LEADING.contains(&token.lower) || token.is_sign(':') || token.is_sign('-')
    });
    if !led || follows_name(before) {
        return None;
    }
    let (whole, end) = notation::numeral_at(text, at)?;
    let start = text
        .get(end..)?
        .strip_prefix(" and ")
        .map(|_| end + " and ".len())?;
    let (part, _) = notation::numeral_at(text, start)?;
    let stated = notation::quantity_at(text, start)?;
    let mixed = whole.style == NumeralStyle::Whole
        && part.style == NumeralStyle::Fraction
        && part.value < measure::Number::ONE
        && matches!(stated.unit, Unit::Inch | Unit::Foot | Unit::Hour)
        && !is_stroke(text.get(stated.span.clone())?, stated.unit);
    let number = whole.value.plus(part.value).filter(|_| mixed)?;
    let end = stated.span.end;
    let span = at..end;
    Some((
        Stated {
            number,
            span,
            ..stated
        },
        end,
    ))
}

/// `LAP 1/2 IN EACH SIDE`: a fraction counts nothing, so that what stands behind it is the unit.
fn fraction_of_an_inch(text: &str, at: usize) -> Option<Stated> {
    let (numeral, end) = notation::numeral_at(text, at)?;
    let rest = text.get(end..)?;
    let unit = rest
        .trim_start()
        .get(..2)
        .filter(|unit| unit.eq_ignore_ascii_case("in"))?;
    let end = end + (rest.len() - rest.trim_start().len()) + unit.len();
    let whole = !text.get(end..)?.starts_with(char::is_alphanumeric);
    let words = text.get(at..end)?;
    let fraction = numeral.style == NumeralStyle::Fraction && !is_stroke(words, Unit::Inch);
    (whole && fraction).then_some(Stated {
        number: numeral.value,
        unit: Unit::Inch,
        step: numeral.step,
        style: numeral.style,
        span: at..end,
    })
}

/// Whether a number is the first of several that an "x" joins without spaces, the last with a unit: `2x50 mm`, `40x40x3 mm`. Without a unit it is a name,
/// `2x4 stud`.
fn crosses(text: &str, end: usize) -> bool {
    const MOST: usize = 3;
    let mut at = end;
    for _ in 0..MOST {
        let rest = text.get(at..).unwrap_or_default();
        let Some(next) = rest
            .strip_prefix(['x', 'X', '×'])
            .map(|_| at + rest.chars().next().map_or(1, char::len_utf8))
        else {
            return false;
        };
        let rest = text.get(next..).unwrap_or_default();
        let Some((_, after)) = notation::numeral_at(rest, 0) else {
            return false;
        };
        if notation::quantity_at(rest, 0).is_some() {
            return true;
        }
        at = next + after;
    }
    false
}

/// The number behind an "x" without a space: `50 mm` of `2x50 mm`.
fn crossed<'a>(text: &str, at: usize, before: &[Token<'_>]) -> Option<(TokenKind<'a>, usize)> {
    let joint = before
        .last()
        .filter(|token| token.is_word("x") && token.span.end() == at)?;
    before
        .get(before.len().checked_sub(2)?)
        .filter(|token| token.is_numeric() && token.span.end() == joint.span.start())?;
    let rest = text.get(at..)?;
    if let Some(stated) = notation::quantity_at(rest, 0) {
        let span = at + stated.span.start..at + stated.span.end;
        let end = span.end;
        return Some((TokenKind::Quantity(Stated { span, ..stated }), end));
    }
    let (numeral, end) = notation::numeral_at(rest, 0)?;
    Some((TokenKind::Number(numeral), at + end))
}

/// Whether a label that counts stands right before, `Coats:`, so that `2 min` are no minutes.
fn follows_counting_label(before: &[Token<'_>]) -> bool {
    const COUNTED: &[&str] = &[
        "coats",
        "layers",
        "passes",
        "screws",
        "clips",
        "strips",
        "plies",
        "rows",
        "fasteners",
        "anchors",
        "pins",
    ];
    let colon = before.last().is_some_and(|token| token.is_sign(':'));
    let label = before
        .first()
        .is_some_and(|token| COUNTED.contains(&token.lower));
    colon && label && before.len() <= 5
}

/// Whether the stroke between two numbers parts them, and makes no fraction: `50/75 mm`, `12/16 in.` A fraction is in lowest terms, less than
/// one, and of an inch or an hour.
fn is_stroke(words: &str, unit: Unit) -> bool {
    let Some((over, under)) = words.split_once('/') else {
        return false;
    };
    let digits = |words: &str, from_end: bool| -> Option<i64> {
        let digits: String = if from_end {
            let tail = words.len() - words.trim_end_matches(|c: char| c.is_ascii_digit()).len();
            words.get(words.len() - tail..)?.to_owned()
        } else {
            words.chars().take_while(char::is_ascii_digit).collect()
        };
        digits.parse().ok()
    };
    let (Some(over), Some(under)) = (digits(over, true), digits(under, false)) else {
        return false;
    };
    let lowest = over % 2 == 1 || under % 2 == 1;
    let usual = [2, 3, 4, 8, 16, 32, 64].contains(&under);
    let metric = matches!(unit, Unit::Millimetre | Unit::Centimetre | Unit::Metre);
    over >= under || !lowest || !usual || metric
}

/// Whether a word here may be the name of a numbered size: `No. 25 MSG`, `Schedule 40`, `#10`.
fn prefixes_number(text: &str, at: usize, c: char) -> bool {
    let second = text.as_bytes().get(at + 1).map(u8::to_ascii_lowercase);
    let starts = match c {
        '#' => true,
        'N' | 'n' => second == Some(b'o'),
        'S' | 's' => second == Some(b'c'),
        'A' => second == Some(b'w'),
        _ => false,
    };
    starts
        && !text
            .get(..at)
            .and_then(|head| head.chars().next_back())
            .is_some_and(char::is_alphanumeric)
}

/// Whether a number runs on into letters or raised figures: `4x`, `3A`, `2nd`, `4¹ in.`
fn continues_word(text: &str, end: usize) -> bool {
    text.get(end..).is_some_and(|rest| {
        rest.starts_with(|c: char| c.is_alphabetic() && c != '×' || notation::is_note_mark(c))
    })
}

/// The end of the marks of notes that stand here.
fn noted_end(text: &str, at: usize) -> usize {
    let rest = text.get(at..).unwrap_or_default();
    at + rest.len() - rest.trim_start_matches(notation::is_note_mark).len()
}

fn word_end(text: &str, at: usize) -> usize {
    let rest = text.get(at..).unwrap_or_default();
    let mut end = at;
    let mut chars = rest.char_indices().peekable();
    while let Some((offset, c)) = chars.next() {
        let joins = matches!(c, '-' | '\'' | '’' | '/' | '.' | '®' | '™')
            && offset > 0
            && chars.peek().is_some_and(|(_, next)| next.is_alphanumeric());
        // `in./ft` and `o.c` hold inner stops; a stop before a capital word would be a sentence's end.
        if !(c.is_alphanumeric() || joins || matches!(c, '®' | '™')) {
            break;
        }
        end = at + offset + c.len_utf8();
    }
    end
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: &[&str]) {
        let lower = text.to_ascii_lowercase();
        let found: Vec<_> = lex(text, &lower)
            .iter()
            .map(|token| {
                let mark = match token.kind {
                    TokenKind::Quantity(_) => "q:",
                    TokenKind::Number(_) => "n:",
                    TokenKind::Sign(_) => "s:",
                    TokenKind::Word(_) => "",
                };
                format!("{mark}{}", token.span.of(text))
            })
            .collect();
        assert_eq!(found, expected);
    }

    #[test]
    fn tokens() {
        check(
            "Max 3 in. (76 mm) deep",
            &["Max", "q:3 in.", "s:(", "q:76 mm", "s:)", "deep"],
        );
        check("1/2 to 3/4 in.", &["n:1/2", "to", "q:3/4 in."]);
        check(
            "W8x28 beam, Item 2A1 only",
            &["W8x28", "beam", "s:,", "Item", "2A1", "only"],
        );
        check(
            "named \"Woolly 6\"; 6\" wide",
            &[
                "named", "s:\"", "Woolly", "n:6", "s:\"", "s:;", "q:6\"", "wide",
            ],
        );
        check(
            "formed of No. 25 MSG steel",
            &["formed", "of", "q:No. 25 MSG", "steel"],
        );
        check("on-center, ≥ 2½\"", &["on-center", "s:,", "s:≥", "q:2½\""]);
        check(
            "24 in. OC. No splice, min. 4",
            &["q:24 in.", "OC.", "No", "splice", "s:,", "min.", "n:4"],
        );
    }
}
