//! Ratings that head columns: `EI 90`, `2 hr`.

use measure::{Number, Quantity, Unit};

use crate::clauses::classes::level_parts;
use crate::model::{Expr, Relation, Test};
use crate::phrase::{Token, TokenKind, lex};

/// A rating that heads a column.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rating {
    pub(super) words: String,
    pub(super) expr: Expr,
}

/// A heading's own words, and the rating that stands among them: `Depth, mm (min.) EI 90`, `F = 1 h floor`, `2 hr`.
pub(super) fn split_rating(text: &str) -> (String, Option<Rating>) {
    const SPOILS: &[&str] = &["and", "or", "to", "up", "over", "under", "after", "within"];
    if let Some(several) = split_several(text) {
        return several;
    }
    if let Some(level) = level(text) {
        return (String::new(), Some(level));
    }
    if let Some((case, words)) = named_case(text) {
        return (words, Some(case));
    }
    let lower = text.to_ascii_lowercase();
    let tokens = lex(text, &lower);
    let Some((at, stated)) = (0..tokens.len()).find_map(|at| Some((at, rating_at(&tokens, at)?)))
    else {
        return (text.to_owned(), None);
    };
    // "1 and 2 hr", "up to 2 hr", "EI 60 / EI 90", "after 1 hr" are not one plain rating.
    let spoils = |token: Option<&Token<'_>>| {
        token.is_some_and(|token| {
            SPOILS.iter().any(|word| token.is_word(word))
                || ['/', '-', '–', ','].iter().any(|sign| token.is_sign(*sign))
        })
    };
    let before = (0..at).rev().find(|before| {
        !tokens
            .get(*before)
            .is_some_and(|token| matches!(token.word(), Some("EI" | "REI" | "E")))
    });
    if spoils(
        before
            .and_then(|before| tokens.get(before))
            .filter(|token| !token.is_sign(',')),
    ) || (spoils(tokens.get(at + 1)) && !only_a_unit(&tokens, at + 1))
    {
        return (text.to_owned(), None);
    }
    // What leads to the rating goes with it: `EI 90`, `F = 1 h`, `at 2 hr`.
    let leads = |token: &Token<'_>| {
        token.is_sign('=')
            || ["ei", "rei", "e", "f", "t", "frl", "for", "at"]
                .iter()
                .any(|word| token.is_word(word))
    };
    let first = (0..at)
        .rev()
        .take_while(|before| tokens.get(*before).is_some_and(leads))
        .last()
        .unwrap_or(at);
    let start = tokens.get(first).map_or(0, |token| token.span.start());
    let end = tokens.get(at).map_or(text.len(), |token| token.span.end());
    let own = |range: core::ops::Range<usize>| text.get(range).unwrap_or_default().trim();
    let behind = own(end..text.len()).trim_start_matches([',', ' ']);
    let words = format!("{} {behind}", own(0..start));
    let expr = Expr::Test(Test {
        property: "joint.rating".to_owned(),
        relation: Relation::Exactly,
        lo: Some(stated),
        hi: None,
        lo_excluded: false,
    });
    let rating = Rating {
        words: own(start..end).to_owned(),
        expr,
    };
    (words.trim().to_owned(), Some(rating))
}

/// The fire resistance level that a heading is (AS 1530.4), `-/60/60`, `FRL -/120/120`. To which rating of the joint its figures come, a person says.
fn level(text: &str) -> Option<Rating> {
    let text = text.trim();
    let figures = text.strip_prefix("FRL").map_or(text, str::trim_start);
    level_parts(figures).map(|_| Rating {
        words: text.to_owned(),
        expr: Expr::Words(text.to_owned()),
    })
}

/// The named case that a heading begins with, its rating in brackets, and what else it says: `Assembly 1 (2 hr) Drape, min.`
fn named_case(text: &str) -> Option<(Rating, String)> {
    const NAMES: &[&str] = &[
        "assembly", "system", "type", "option", "case", "design", "variant",
    ];
    const LONGEST_MARK: usize = 3;
    let (name, behind) = text.split_once(" (")?;
    let (inner, words) = behind.split_once(')')?;
    let (word, mark) = name.trim().split_once(' ')?;
    let named = NAMES.contains(&word.to_lowercase().as_str())
        && mark.len() <= LONGEST_MARK
        && mark.chars().all(char::is_alphanumeric);
    let (rest, rating) = split_rating(inner);
    let rating = rating.filter(|_| named && rest.is_empty())?;
    let case = Rating {
        words: text.get(..name.len() + inner.len() + 3)?.to_owned(),
        expr: Expr::All(vec![Expr::Words(name.trim().to_owned()), rating.expr]),
    };
    Some((case, words.trim().to_owned()))
}

/// A heading's own words, and the ratings that stand together among them: `Shear, % max, 3 and 4 hr`, `1, 2 and 3 hr`.
fn split_several(text: &str) -> Option<(String, Option<Rating>)> {
    const SPOILS: &[&str] = &[
        "to", "up", "over", "under", "after", "within", "than", "every",
    ];
    let lower = text.to_ascii_lowercase();
    let tokens = lex(text, &lower);
    let (last, unit) = tokens
        .iter()
        .enumerate()
        .find_map(|(at, token)| match &token.kind {
            TokenKind::Quantity(stated) if stated.unit == Unit::Hour => Some((at, stated.unit)),
            _ => None,
        })?;
    let number = |at: usize| match &tokens.get(at)?.kind {
        TokenKind::Number(numeral) => Some(numeral.value),
        TokenKind::Quantity(stated) if at == last => Some(stated.number),
        _ => None,
    };
    let joins = |at: usize| {
        tokens.get(at).is_some_and(|token| {
            token.is_word("and")
                || token.is_word("or")
                || [',', '&', '/'].iter().any(|sign| token.is_sign(*sign))
        })
    };
    let mut numbers = vec![number(last)?];
    let mut first = last;
    while let Some(join) = first.checked_sub(1).filter(|at| joins(*at)) {
        let before = if joins(join) && join > 0 && joins(join - 1) {
            join - 2
        } else {
            join.checked_sub(1)?
        };
        let Some(value) = number(before) else { break };
        numbers.push(value);
        first = before;
    }
    numbers.reverse();
    let rising = numbers.windows(2).all(|two| two.first() < two.last());
    let ratings = numbers.len() >= 2 && rising && numbers.iter().all(|number| *number <= 4);
    let spoiled = first
        .checked_sub(1)
        .and_then(|at| tokens.get(at))
        .is_some_and(|token| SPOILS.iter().any(|word| token.is_word(word)));
    if !ratings || spoiled {
        return None;
    }
    let tests = numbers.iter().map(|number| {
        Expr::Test(Test {
            property: "joint.rating".to_owned(),
            relation: Relation::Exactly,
            lo: Some(Quantity::new(*number, unit)),
            hi: None,
            lo_excluded: false,
        })
    });
    let start = tokens.get(first).map_or(0, |token| token.span.start());
    let end = tokens
        .get(last)
        .map_or(text.len(), |token| token.span.end());
    let own = |range: core::ops::Range<usize>| text.get(range).unwrap_or_default().trim();
    let before = own(0..start).trim_end_matches("for").trim_end();
    let rating = Rating {
        words: own(start..end).to_owned(),
        expr: Expr::Any(tests.collect()),
    };
    let words = format!("{before} {}", own(end..text.len()));
    Some((words.trim().to_owned(), Some(rating)))
}

/// The rating at a token: hours to four, minutes alone, or the minutes of a class.
fn rating_at(tokens: &[Token<'_>], at: usize) -> Option<Quantity> {
    match &tokens.get(at)?.kind {
        TokenKind::Quantity(stated) => {
            let hours = stated.unit == Unit::Hour && stated.number <= 4;
            // Minutes beside other words may be any time: "Cure 30 minutes".
            let alone = stated.unit == Unit::Minute && at == 0 && only_a_unit(tokens, 1);
            let minutes = alone && is_minutes(stated.number);
            (hours || minutes).then(|| Quantity::new(stated.number, stated.unit))
        }
        TokenKind::Number(numeral) => {
            let before = tokens.get(at.checked_sub(1)?)?;
            let class = matches!(before.word(), Some("EI" | "REI" | "E"));
            (class && is_minutes(numeral.value)).then(|| Quantity::new(numeral.value, Unit::Minute))
        }
        _ => None,
    }
}

/// Whether nothing stands from a token on but the unit of the numbers below: `60 min, mm`, `2 hr (in.)`.
fn only_a_unit(tokens: &[Token<'_>], from: usize) -> bool {
    let rest = tokens.get(from..).unwrap_or_default();
    let is_sign = |token: &Token<'_>| [',', '(', ')'].iter().any(|sign| token.is_sign(*sign));
    let is_unit = |token: &Token<'_>| {
        let unit = token.word().and_then(super::heading::unit_of);
        unit.is_some_and(|unit| unit.dimension() == Unit::Millimetre.dimension())
    };
    let (signs, words): (Vec<_>, Vec<_>) = rest.iter().partition(|token| is_sign(token));
    words.iter().all(|token| is_unit(token))
        && (rest.is_empty() || words.len() == 1)
        && signs.len() <= 2
}

/// Whether minutes are those of a rating.
fn is_minutes(number: Number) -> bool {
    const MINUTES: [i32; 9] = [15, 20, 30, 45, 60, 90, 120, 180, 240];
    MINUTES
        .iter()
        .any(|minutes| number == Number::whole(*minutes))
}
