//! The units of numbers in the head that have none of their own: the label's, `Ratings (h): 1, 2 and 3`, `Linear opening, in.    8 max`, an hourly rating's, or
//! that of the movement before them, `15 % compression, 10 extension`.

use measure::notation::Stated;
use measure::{Dimension, Number, Unit};

use super::topic::{COLUMN, gap};
use crate::model::Span;
use crate::phrase::{TokenKind, amounts};
use crate::rules::Sentence;

/// Gives them their units, and tells where they stand.
pub(super) fn give(sentence: &mut Sentence<'_>) -> Vec<Span> {
    let labelled = (0..sentence.tokens.len()).filter_map(|at| {
        let (unit, next) = unit_of_label(sentence, at)?;
        Some((numbers(sentence, next, unit), unit))
    });
    let mut found: Vec<(usize, Unit)> = labelled
        .flat_map(|(numbers, unit)| numbers.into_iter().map(move |at| (at, unit)))
        .collect();
    let further = (0..sentence.tokens.len()).filter(|at| is_further_movement(sentence, *at));
    found.extend(further.map(|at| (at, Unit::Percent)));
    let mut given = Vec::new();
    for (at, unit) in found {
        let Some(token) = sentence.tokens.get_mut(at) else {
            continue;
        };
        let TokenKind::Number(numeral) = &token.kind else {
            continue;
        };
        token.kind = TokenKind::Quantity(Stated {
            number: numeral.value,
            unit,
            step: numeral.step,
            style: numeral.style,
            span: token.span.start()..token.span.end(),
        });
        given.push(sentence.source_of(at, at + 1));
    }
    if !given.is_empty() {
        sentence.amounts = amounts(&sentence.tokens);
    }
    given
}

/// The unit that a label holds, and the token behind it: `Rating (hours)`, `Joint width, in.`, `Hourly rating`.
fn unit_of_label(sentence: &Sentence<'_>, at: usize) -> Option<(Unit, usize)> {
    let rating = sentence.is_any(at, &["rating", "ratings", "resistance", "endurance"]);
    if rating && at > 0 && sentence.is_word(at - 1, "hourly") {
        return Some((Unit::Hour, at + 1));
    }
    let length = sentence.is_any(at, &["width", "widths", "opening", "gap", "joint"]);
    let movement = sentence.is_any(at, &["movement", "movements"]);
    let bracketed = sentence.is_sign(at + 1, '(') && sentence.is_sign(at + 3, ')');
    if !(bracketed || sentence.is_sign(at + 1, ',')) {
        return None;
    }
    let unit = match sentence.word(at + 2) {
        "h" | "hr" | "hrs" | "hour" | "hours" if rating => Unit::Hour,
        "min" | "mins" if rating && bracketed => Unit::Minute,
        "minutes" if rating => Unit::Minute,
        "in" | "inch" | "inches" if length => Unit::Inch,
        "mm" if length => Unit::Millimetre,
        "percent" | "pct" if movement => Unit::Percent,
        _ if movement && sentence.is_sign(at + 2, '%') => Unit::Percent,
        _ => return None,
    };
    Some((unit, at + if bracketed { 4 } else { 3 }))
}

/// The numbers behind a label, which nothing but more of them and signs may follow.
fn numbers(sentence: &Sentence<'_>, from: usize, unit: Unit) -> Vec<usize> {
    /// `1, 2, and 3`
    const MOST_JOINTS: usize = 2;
    const LEADS: &[&str] = &[
        "max", "maximum", "min", "minimum", "nominal", "nom", "up", "to", "from",
    ];
    const LIMITS: &[&str] = &["max", "maximum", "min", "minimum", "nominal", "nom", "wide"];
    let is_number = |at: usize| {
        sentence
            .token(at)
            .is_some_and(|token| matches!(token.kind, TokenKind::Number(_)))
    };
    let leads = |at: usize| {
        sentence.is_any(at, LEADS)
            || [':', '-', '–', '—', '=', '.', '|', '≤', '<']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
    };
    let joins = |at: usize| {
        sentence.is_any(at, &["and", "or", "to"])
            || [',', '&', '/', '-', '–']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
    };
    let mut at = from;
    while leads(at) {
        at += 1;
    }
    let mut found = Vec::new();
    while is_number(at) {
        found.push(at);
        let next = (at + 1..=at + MOST_JOINTS + 1).find(|next| !joins(*next));
        let Some(next) = next.filter(|next| *next > at + 1 && is_number(*next)) else {
            at += 1;
            break;
        };
        at = next;
    }
    let moves = unit == Unit::Percent
        && ["comp", "ext", "shear"]
            .iter()
            .any(|start| sentence.word(at).starts_with(start));
    let closed = sentence.token(at).is_none()
        || sentence.begins_line(at)
        || at > 0 && gap(sentence, at - 1) >= COLUMN
        || sentence.is_any(at, LIMITS)
        || ['.', ';', ',', '|', '·', '(']
            .iter()
            .any(|sign| sentence.is_sign(at, *sign));
    let usual = found.iter().all(|at| is_usual(sentence, *at, unit));
    if (closed || moves) && usual {
        found
    } else {
        Vec::new()
    }
}

/// Whether a joint may be rated for so long: `Rating (min): 2` are no minutes.
fn is_usual(sentence: &Sentence<'_>, at: usize, unit: Unit) -> bool {
    let number = match sentence.token(at).map(|token| &token.kind) {
        Some(TokenKind::Number(numeral)) => numeral.value,
        _ => return false,
    };
    match unit {
        Unit::Hour => number > Number::whole(0) && number <= Number::whole(4),
        Unit::Minute => number >= Number::whole(15) && number <= Number::whole(240),
        _ => true,
    }
}

/// Whether a number is the next of movements in percent: the 10 of `Movement: 15 % compression, 10 extension`.
fn is_further_movement(sentence: &Sentence<'_>, at: usize) -> bool {
    let directed = |at: usize| {
        ["comp", "ext", "shear"]
            .iter()
            .any(|start| sentence.word(at).starts_with(start))
    };
    let Some(before) = at.checked_sub(2) else {
        return false;
    };
    let joined = sentence.is_sign(at - 1, ',') || sentence.is_word(at - 1, "and");
    let percent = sentence
        .amounts
        .iter()
        .any(|amount| amount.unit.dimension() == Dimension::Fraction && amount.last == before);
    joined && directed(before) && percent && directed(at + 1)
}

#[cfg(test)]
mod tests {
    use crate::header::tests::{rated, read, unread, warned};

    #[test]
    fn hours_have_the_unit_of_their_label() {
        for (text, expected) in [
            ("Ratings (h): 1, 2 and 3", "1 2 3"),
            ("Ratings, hours: 1 and 2", "1 2"),
            ("Rating (minutes): 60, 90", "1 3/2"),
            ("Hourly rating ............ 1 and 2", "1 2"),
            (
                "Hourly rating     1, 2, 3 or 4 (the rating of the wall)",
                "1 2 3 4",
            ),
            (
                "F rating, hr             2\nT rating, hr             1/2",
                "2",
            ),
            ("Rating, hr - 1, 2\nSealant, in. - 3", "1 2"),
            // Another's, too long, and what isn't alone.
            ("Wall rating (h): 2", ""),
            ("Rating (min): 2", ""),
            ("Hourly rating, 48", ""),
            ("Hourly rating   2 layers", ""),
        ] {
            assert_eq!(rated(text), expected, "{text}");
        }
    }

    #[test]
    fn widths_and_movements_have_the_unit_of_theirs() {
        let width = |text: &str| {
            let width = read(text).width;
            width
                .and_then(|width| width.hi.or(width.lo))
                .map(|hi| hi.to_string())
        };
        assert_eq!(width("Joint width, in. - 3").as_deref(), Some("3"));
        assert_eq!(
            width("Linear opening, in.      8 max").as_deref(),
            Some("8")
        );
        assert_eq!(width("Sealant depth, in.      8 max"), None);
        let movements = |text: &str| {
            let each = read(text).movement.into_iter();
            let each = each.map(|own| own.percent.to_string());
            each.collect::<Vec<_>>().join(" ")
        };
        assert_eq!(
            movements("Movement (%): 15 compression, 10 extension"),
            "15 10"
        );
        assert_eq!(
            movements("Movement - 25 percent compression, 10 extension"),
            "25 10"
        );
        assert_eq!(
            movements("Movement - 25 percent compression, 10 layers"),
            "25"
        );
    }

    #[test]
    fn a_number_of_another_topic_is_shown() {
        let text = "Gap, in. - 4, and sealant 1 in.";
        assert_eq!(unread(text), "4 | 1 in.");
        assert_eq!(warned(text), "4");
    }
}
