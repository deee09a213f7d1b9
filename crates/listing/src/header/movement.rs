//! The movement capabilities of the head.

use core::ops::Range;

use measure::Dimension;

use super::HeaderRead;
use crate::conditions::Mentioned;
use crate::model::{Movement, MovementDirection, WarningKind};
use crate::phrase::{Amount, Token};
use crate::rules::Sentence;

/// Adds the movement that a percentage states. A percentage with no direction beside it is no capability: it could be either, and is
/// left to a person.
pub(super) fn movement(
    sentence: &Sentence<'_>,
    index: usize,
    amount: &Amount,
    named: &[Mentioned],
    read: &mut HeaderRead,
) {
    let previous = index
        .checked_sub(1)
        .and_then(|before| sentence.amounts.get(before))
        .filter(|before| before.unit.dimension() == Dimension::Fraction)
        .map_or(0, |before| before.last);
    let next = sentence
        .amounts
        .get(index + 1)
        .map_or(sentence.tokens.len(), |next| next.first);
    let mut classes = classes(sentence, previous, amount.first);
    // `Class II; max 30 % compression, max 20 % extension`: the classes hold for what follows, too.
    if classes.is_empty() && previous > 0 {
        classes = read
            .header
            .movement
            .last()
            .map(|last| last.classes.clone())
            .unwrap_or_default();
    }
    let mut directions = beside(sentence, previous, amount, next);
    let words = amount.at.of(sentence.text);
    let signed = words.starts_with('±')
        || amount.first > previous && sentence.is_sign(amount.first - 1, '±');
    if directions.is_empty() && signed {
        directions.push(MovementDirection::CompressionOrExtension);
    }
    if directions.is_empty() {
        read.warnings.push((
            WarningKind::UnreadNumber,
            sentence.source(amount.at),
            "this movement names no direction that was tested; what it allows must be confirmed"
                .to_owned(),
        ));
    }
    let option = option(sentence, amount, named, previous..next);
    for direction in directions {
        let entry = Movement {
            classes: classes.clone(),
            direction,
            percent: amount.hi.unwrap_or(amount.lo),
            option: option.clone(),
            span: sentence.source(amount.at),
        };
        let again = read.header.movement.iter().any(|held| {
            held.classes == entry.classes
                && held.direction == entry.direction
                && held.percent == entry.percent
                && held.option == entry.option
        });
        if !again {
            read.header.movement.push(entry);
        }
    }
}

/// The directions beside a percentage: those after it up to a comma, else those before it, else those past the comma.
fn beside(
    sentence: &Sentence<'_>,
    previous: usize,
    amount: &Amount,
    next: usize,
) -> Vec<MovementDirection> {
    let next = next.min(amount.last + 10);
    let mut depth = 0_i32;
    // A comma in parentheses divides nothing: `25 % (lateral, extension and compression)`.
    let divides = |at: &usize| {
        depth += i32::from(sentence.is_sign(*at, '(')) - i32::from(sentence.is_sign(*at, ')'));
        depth <= 0 && (sentence.is_sign(*at, ',') || sentence.is_sign(*at, ';'))
    };
    let comma = (amount.last..next).find(divides).unwrap_or(next);
    let after = directions(sentence, amount.last, comma);
    if !after.is_empty() {
        return after;
    }
    let before = directions(sentence, previous, amount.first);
    if !before.is_empty() {
        return before;
    }
    directions(sentence, comma, next)
}

/// The configuration that a movement is stated for: the label before it, `Configuration A: 25 %`, or the one named after it.
fn option(
    sentence: &Sentence<'_>,
    amount: &Amount,
    named: &[Mentioned],
    within: Range<usize>,
) -> Option<String> {
    let place = |token: usize| named.partition_point(|mention| mention.first < token);
    let mentions = named.get(place(within.start)..place(within.end));
    let mentions = mentions.unwrap_or_default();
    let labels = |last: usize| {
        [':', '-', '–', '—']
            .iter()
            .any(|sign| sentence.is_sign(last, *sign))
    };
    let label = mentions
        .iter()
        .rev()
        .find(|mention| mention.last <= amount.first && labels(mention.last));
    let found = label.or_else(|| {
        mentions
            .iter()
            .find(|mention| mention.first >= amount.last && !labels(mention.last))
    });
    found.map(|mention| mention.names.join(" or "))
}

/// The Roman numerals after "Class" among tokens.
fn classes(sentence: &Sentence<'_>, first: usize, last: usize) -> Vec<String> {
    let start = (first..last)
        .rev()
        .find(|at| sentence.is_any(*at, &["class", "classes"]));
    let Some(start) = start else {
        return Vec::new();
    };
    let mut classes = Vec::new();
    for at in start + 1..last {
        let word = sentence.token(at).and_then(Token::word).unwrap_or_default();
        match word {
            "I" | "II" | "III" | "IV" => classes.push(word.to_owned()),
            "and" | "or" | "AND" | "OR" | "Class" | "CLASS" | "class" => {}
            _ if sentence.is_sign(at, ',')
                || sentence.is_sign(at, '&')
                || sentence.is_sign(at, '/') => {}
            _ => break,
        }
    }
    classes
}

/// The directions that tokens name, but for those they deny: "no extension", "extension not tested".
fn directions(sentence: &Sentence<'_>, first: usize, last: usize) -> Vec<MovementDirection> {
    const DENIALS: &[&str] = &["no", "not", "none", "without", "nil"];
    let denied = |at: usize| {
        let around = at.saturating_sub(2).max(first)..(at + 3).min(last);
        around.into_iter().any(|near| {
            // "compression only, no extension": a denial reaches over no comma.
            let between = near.min(at)..near.max(at);
            sentence.is_any(near, DENIALS)
                && !between
                    .into_iter()
                    .any(|at| sentence.is_sign(at, ',') || sentence.is_sign(at, ';'))
        })
    };
    let says = |starts: &[&str]| {
        (first..last).any(|at| {
            let word = sentence.word(at);
            starts.iter().any(|start| word.starts_with(start)) && !denied(at)
        })
    };
    let compression = says(&["comp", "clos"]);
    let extension = says(&["ext", "open"]);
    let shear = says(&["shear", "lateral"]);
    let mut directions = Vec::new();
    match (compression, extension) {
        (true, true) => directions.push(MovementDirection::CompressionOrExtension),
        (true, false) => directions.push(MovementDirection::Compression),
        (false, true) => directions.push(MovementDirection::Extension),
        (false, false) => {}
    }
    if shear {
        directions.push(MovementDirection::Shear);
    }
    directions
}
