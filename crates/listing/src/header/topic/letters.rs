//! The letters that ratings are named by, where several stand together: `F/T/L ratings: 2 hr / 1 hr / <1`, `RATING   F 2 h   T 1 h`.

use super::{Topic, gap};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// What a letter names.
fn named(letter: &str) -> Option<Topic> {
    match letter {
        "f" => Some(Topic::Rating),
        "ft" | "fh" | "fth" => Some(Topic::OtherRating),
        "t" | "w" => Some(Topic::HeatRating),
        "l" => Some(Topic::Leakage),
        _ => None,
    }
}

/// What hours state that a letter of their own labels, right before them or in the place of theirs in a row; `Some(None)` where nobody can tell.
#[expect(clippy::option_option, reason = "a row of letters may leave it open")]
pub(super) fn labelled(sentence: &Sentence<'_>, amount: &Amount) -> Option<Option<Topic>> {
    right_before(sentence, amount)
        .map(Some)
        .or_else(|| in_a_row(sentence, amount))
}

/// `RATING   F 2 h   T 1 h`: a capital letter that stands apart from what is before it, or behind the name of a rating.
fn right_before(sentence: &Sentence<'_>, amount: &Amount) -> Option<Topic> {
    const APART: usize = 2;
    let at = amount.first.checked_sub(1)?;
    let before = at.checked_sub(1)?;
    let written = sentence.token(at)?.span.of(sentence.text);
    let topic = named(sentence.word(at)).filter(|_| written.chars().all(char::is_uppercase))?;
    // `Fire-resistance rating: FH 1 h and 2 h`: of the fire first of all.
    if topic == Topic::OtherRating {
        return None;
    }
    let parted = gap(sentence, before) >= APART
        || sentence.begins_line(at)
        || [',', ';', ':', '/', '(']
            .iter()
            .any(|sign| sentence.is_sign(before, *sign));
    (parted && gap(sentence, at) < APART).then_some(topic)
}

/// `F/T/L ratings: 2 hr / 1 hr / <1`: as many values as letters, each for its own.
#[expect(clippy::option_option, reason = "a row of letters may leave it open")]
fn in_a_row(sentence: &Sentence<'_>, amount: &Amount) -> Option<Option<Topic>> {
    const REACH: usize = 24;
    let from = amount.first.saturating_sub(REACH);
    let rating = (from..amount.first)
        .rev()
        .find(|at| sentence.is_any(*at, &["rating", "ratings"]))?;
    let letters = before(sentence, rating);
    // `F/T rating: 1 and 2 hr` parts no values: they are of all.
    let strokes = |first: usize, last: usize| {
        (first..last)
            .filter(|at| sentence.is_sign(*at, '/') && sentence.amount_at(*at).is_none())
            .count()
    };
    let end = (amount.last..amount.last + REACH)
        .find(|at| sentence.begins_line(*at) || sentence.token(*at).is_none())
        .unwrap_or(amount.last);
    if letters.len() < 2 || strokes(rating, end) == 0 {
        return None;
    }
    let told = strokes(rating, end) + 1 == letters.len();
    let own = letters.get(strokes(rating, amount.first)).copied();
    Some(own.filter(|_| told))
}

/// The ratings that letters with strokes between name right before a word.
fn before(sentence: &Sentence<'_>, rating: usize) -> Vec<Topic> {
    let Some(last) = rating.checked_sub(1) else {
        return Vec::new();
    };
    let written: Vec<&str> = sentence.word(last).split('/').collect();
    let each: Option<Vec<Topic>> = written.into_iter().map(named).collect();
    let Some(mut letters) = each else {
        return Vec::new();
    };
    // `F / T / L`
    if let Some(stroke) = last.checked_sub(1)
        && sentence.is_sign(stroke, '/')
    {
        letters.splice(0..0, before(sentence, stroke));
    }
    letters
}

/// Whether F is named beside the letter right before a word: `F and T ratings`, `F & T Rating`.
pub(super) fn of_fire_too(sentence: &Sentence<'_>, rating: usize) -> bool {
    let mut at = rating.saturating_sub(1);
    while at >= 2 {
        let joined = sentence.is_any(at - 1, &["and", "or"])
            || ['/', '&', ',']
                .iter()
                .any(|sign| sentence.is_sign(at - 1, *sign));
        if !joined || named(sentence.word(at - 2)).is_none() {
            return false;
        }
        if sentence.is_word(at - 2, "f") {
            return true;
        }
        at -= 2;
    }
    false
}

/// Whether a letter of heat or water stands in brackets right before a word: `Insulation (T) rating`.
pub(super) fn in_brackets(sentence: &Sentence<'_>, rating: usize) -> bool {
    rating >= 3
        && sentence.is_sign(rating - 1, ')')
        && sentence.is_sign(rating - 3, '(')
        && sentence.is_any(rating - 2, &["t", "w"])
}

#[cfg(test)]
mod tests {
    use crate::header::tests::rated;

    #[test]
    fn a_rating_by_heat_alone_is_none() {
        for (text, expected) in [
            ("T-Rating: 1 hr", ""),
            ("T Rating - 1 hr", ""),
            ("Insulation Rating - 1/2 Hr", ""),
            ("Integrity Rating - 2 Hr\nInsulation Rating - 1/2 Hr", "2"),
            ("F rating 2 hours; insulation (T) rating 1 hour", "2"),
            ("FTH Rating 1 h", "1"),
        ] {
            assert_eq!(rated(text), expected, "{text}");
        }
    }

    #[test]
    fn letters_name_the_hours_behind_them() {
        for (text, expected) in [
            ("F - 2 Hr; T - 1 Hr", "2"),
            ("RATING   F 2 h   T 1 h", "2"),
            ("F/T/L ratings: 2 hr / 1 hr / <1", "2"),
            ("F / T ratings: 2 hr / 1 hr", "2"),
            ("T/F ratings: 1 hr / 2 hr", "2"),
            // Not as many values as letters.
            ("F/T ratings: 2 hr / 1 hr / 1/2 hr", ""),
            ("F and T Ratings - 2 Hr", "2"),
            ("F/T Rating: 1 and 2 hr", "1 2"),
            ("Fire-Resistance Rating: FH 1 h and 2 h", "1 2"),
        ] {
            assert_eq!(rated(text), expected, "{text}");
        }
    }
}
