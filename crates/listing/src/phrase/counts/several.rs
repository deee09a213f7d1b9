//! Several counts in a row, and counts as drawings write them.

use measure::notation::NumeralStyle;
use measure::{Number, Unit};

use super::super::amounts::{Amount, Shape};
use super::super::lex::is_any;
use super::super::lex::{Token, TokenKind};
use super::pointing::is_label;
use super::things::COUNTED_SINGLY;
use super::{count, count_at, counted};

/// `one, two or three layers`: a count for each, of what stands after the last.
pub(crate) fn count_list_at(tokens: &[Token<'_>], at: usize) -> Option<Vec<Amount>> {
    let number = |at: usize| small_number(tokens, at);
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

/// `four to six screws`, `4 to 6 screws`: from one count to another of what stands after the second.
pub(crate) fn count_range_at(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
    let low = small_number(tokens, at)?;
    let to = (at + 1..at + 4).take_while(|at| {
        // "two-to-three" is written with hyphens.
        tokens
            .get(*at)
            .is_some_and(|token| token.is_word("to") || token.is_sign('-') || token.is_sign('–'))
    });
    let next = at + 1 + to.count();
    let is_range = (at + 1..next).any(|at| is_any(tokens, at, &["to"])) || next == at + 2;
    let labelled = at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .zip(tokens.get(at))
        .is_some_and(|(before, token)| is_label(before, token));
    let high = count_at(tokens, next).filter(|_| is_range && next > at + 1 && !labelled)?;
    let from = tokens.get(at)?.span;
    (Number::whole(low) < high.lo).then(|| Amount {
        lo: Number::whole(low),
        hi: Some(high.lo),
        shape: Shape::Range,
        first: at,
        at: from.join(high.at),
        whole: from.join(high.whole),
        ..high
    })
}

/// A small whole number, in digits or in words.
fn small_number(tokens: &[Token<'_>], at: usize) -> Option<i32> {
    let token = tokens.get(at)?;
    match &token.kind {
        TokenKind::Number(numeral)
            if numeral.style == NumeralStyle::Whole && numeral.value <= 20 =>
        {
            i32::try_from(numeral.value.numerator()).ok()
        }
        _ => token.count,
    }
}

/// Whether a number counts what an earlier one counted, for another rating: `two layers for 1 Hr and three for 2 Hr`, `four plies for two
/// hours and six for that of three`.
pub(super) fn goes_on_counting(tokens: &[Token<'_>], at: usize) -> bool {
    const BACK: usize = 16;
    const AHEAD: usize = 6;
    let joined = at.checked_sub(1).is_some_and(|before| {
        is_any(tokens, before, &["and", "or"])
            || tokens
                .get(before)
                .is_some_and(|token| token.is_sign(',') || token.is_sign(';'))
    });
    let rated = |token: &Token<'_>| matches!(&token.kind, TokenKind::Quantity(stated) if matches!(stated.unit, Unit::Hour | Unit::Minute));
    let bracketed = tokens.get(at + 1).is_some_and(|token| token.is_sign('('));
    let for_rating = (bracketed || is_any(tokens, at + 1, &["for", "at"]))
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
    // `Number of layers: 1 (1 hr), 2 (2 hr)`
    let listed = bracketed
        && earlier
            .iter()
            .any(|token| COUNTED_SINGLY.contains(&token.lower) && token.lower.ends_with('s'))
        && earlier
            .iter()
            .any(|token| token.is_sign(':') || token.is_sign('.') && token.span.len() >= 3);
    // `one layer in a 1 h wall, two in a 2 h wall`
    let in_rated = is_any(tokens, at + 1, &["in", "on"])
        && is_any(tokens, at + 2, &["a", "the", "any", "every"])
        && tokens.get(at + 3).is_some_and(rated);
    let of_another = (for_rating || in_rated) && earlier.iter().any(rated);
    joined && of_another && (counted || listed) || counted && is_case_of_one(tokens, at)
}

/// `carried by one screw at each end, or by two where the stiffener is longer`: so many in another case.
fn is_case_of_one(tokens: &[Token<'_>], at: usize) -> bool {
    let joint = |before: usize| is_any(tokens, before, &["or", "and", "but"]);
    let led = at > 1 && is_any(tokens, at - 1, &["by", "with", "of"]) && joint(at - 2);
    let case = is_any(tokens, at + 1, &["where", "when", "if"]);
    let worded = tokens.get(at).is_some_and(|token| token.count.is_some());
    worded && case && (led || at > 0 && joint(at - 1))
}

/// `(2) LAYERS`, `W/ (2) 0.157" PINS`: a count in brackets, as drawings write it. A bracketed number after a noun is a reference, so one
/// counts only where a list or a preposition leads to it.
pub(super) fn bracketed_count(tokens: &[Token<'_>], at: usize) -> Option<Amount> {
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
    // `125 mm min (1)` ends in the mark of a note.
    let limited = at > 0 && is_any(tokens, at - 1, &["min", "max"]);
    let goes_on = limited
        || tokens
            .get(at + 3)
            .is_some_and(|next| next.word().is_some() || next.is_numeric() || next.is_sign('#'));
    let closes = at > 1
        && is_any(tokens, at - 1, &["min", "max"])
        && tokens.get(at - 2).is_some_and(Token::is_numeric);
    let things = counted(tokens, at + 3, number, false, true) && !closes
        || is_any(tokens, at + 3, &["every"]);
    let (first, last) = (tokens.get(at)?.span, tokens.get(at + 2)?.span);
    let digits = tokens.get(at + 1).map_or(first, |token| token.span);
    (led && whole && goes_on && things).then(|| count(number, at..at + 3, digits, first.join(last)))
}
