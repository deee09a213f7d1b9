//! Units that a label holds for the number behind it, or that the last of several labelled numbers holds for all.

use measure::Unit;
use measure::notation::{self, Stated};

use super::{Token, TokenKind};

/// `Depth (in.): 4`, `density (pcf): min 6`, `compression (%) = 25`: the unit stands in the label. A letter alone is the name of something, and "min" a
/// minimum.
pub(super) fn labelled_unit(text: &str, at: usize) -> Option<(Stated, usize)> {
    let numeral = text.get(at..)?.starts_with(|c: char| c.is_ascii_digit());
    if !numeral {
        return None;
    }
    let before = text.get(..at)?;
    let label = first_bound_passed(before).unwrap_or_else(|| bounds_passed(before));
    let unit = unit_of_label(label.strip_suffix([':', '='])?)?;
    let own = notation::quantity_at(text, at)
        .is_some_and(|own| !matches!(own.unit, Unit::Minute | Unit::Count));
    let (numeral, end) = notation::numeral_at(text, at)?;
    let runs_on = text
        .get(end..)?
        .starts_with(|c: char| c.is_alphanumeric() || c == '/');
    // Which of several is meant, nobody knows.
    let several = is_list(text.get(end..)?);
    (!own && !runs_on && !several).then(|| {
        let stated = Stated {
            number: numeral.value,
            unit,
            step: numeral.step,
            style: numeral.style,
            span: at..end,
        };
        (stated, end)
    })
}

/// The unit that a label has for what stands behind it: `Depth (in.)`, `Min depth, in.`
fn unit_of_label(label: &str) -> Option<Unit> {
    let label = label.trim_end_matches(' ');
    let inner = match label.strip_suffix(')') {
        Some(inner) => inner.rsplit_once('(')?.1,
        None => behind_comma(label)?,
    };
    let inner = inner.trim();
    let (unit, unit_end) = notation::unit_at(inner, 0)?;
    let is_letter = inner.len() == 1 && inner.starts_with(char::is_alphabetic);
    let whole = unit_end == inner.len() && !is_letter;
    Some(unit).filter(|unit| whole && !matches!(unit, Unit::Minute | Unit::Count))
}

/// A text without two bounds and the number of the first: `Depth (in.): min 3, max`.
fn first_bound_passed(before: &str) -> Option<&str> {
    let limited = bounds_passed(before);
    let number = limited
        .strip_suffix(',')
        .filter(|_| limited.len() < before.trim_end().len())?;
    let first =
        number.trim_end_matches(|c: char| c.is_ascii_digit() || matches!(c, '/' | '-' | '.'));
    let label = bounds_passed(first);
    (first.len() < number.len() && label.len() < first.trim_end().len()).then_some(label)
}

/// What stands behind the comma of a label: the unit of `Min depth, in.`
fn behind_comma(label: &str) -> Option<&str> {
    const MOST_WORDS: usize = 5;
    let (name, unit) = label.rsplit_once(", ")?;
    let words = name.split_whitespace().rev().take(MOST_WORDS);
    words
        .map(|word| word.trim_matches(['(', ')', ',']))
        .take_while(|word| word.chars().all(|c| c.is_alphabetic() || c == '-'))
        .any(measures)
        .then_some(unit)
}

/// Whether a word names what is measured.
pub(crate) fn measures(word: &str) -> bool {
    const MEASURES: &[&str] = &[
        "depth",
        "width",
        "thickness",
        "height",
        "length",
        "spacing",
        "density",
        "overlap",
        "lap",
        "recess",
        "embedment",
        "clearance",
        "compression",
        "extension",
        "gap",
        "diameter",
    ];
    MEASURES.contains(&word.to_lowercase().as_str())
}

/// Whether more bare numbers follow behind commas: `, 2, 4` and then nothing or another sign than a unit's.
fn is_list(behind: &str) -> bool {
    let Some(next) = behind.strip_prefix(", ") else {
        return false;
    };
    let Some((_, end)) = notation::numeral_at(next, 0) else {
        return false;
    };
    notation::quantity_at(next, 0).is_none()
        && !next
            .get(end..)
            .is_some_and(|rest| rest.starts_with(|c: char| c.is_alphanumeric()))
}

/// Whether a text ends in a label with a unit, and numbers behind it if any: `Depth (in.): 3, 4, `, `Min depth, in. - `. The next is one of them.
pub(crate) fn lists_behind_unit(before: &str) -> bool {
    const DASHES: &[&str] = &[" -", " –", " —"];
    let is_of_list = |c: char| c.is_ascii_digit() || matches!(c, ' ' | ',' | '/' | '.');
    let label = bounds_passed(before.trim_end_matches(is_of_list));
    let label = label
        .strip_suffix([':', '='])
        .or_else(|| DASHES.iter().find_map(|dash| label.strip_suffix(dash)));
    label.and_then(unit_of_label).is_some()
}

/// A text without the words that bound the number behind it: `Depth (in.): min`.
fn bounds_passed(before: &str) -> &str {
    const BOUNDS: &[&str] = &[
        " min.",
        " min",
        " max.",
        " max",
        " minimum",
        " maximum",
        "≥",
        "≤",
        " at least",
        " at most",
    ];
    let before = before.trim_end_matches(' ');
    let bound = BOUNDS.iter().find_map(|bound| before.strip_suffix(bound));
    bound.unwrap_or(before).trim_end_matches(' ')
}

/// `compression 25, extension 10, shear 0 percent`: the last of several measures that a number stands behind has the unit of all.
pub(super) fn share_labelled_units(tokens: &mut [Token<'_>]) {
    const MEASURES: &[&str] = &[
        "compression",
        "extension",
        "shear",
        "closing",
        "opening",
        "contraction",
        "expansion",
    ];
    let is_measure =
        |token: Option<&Token<'_>>| token.is_some_and(|token| MEASURES.contains(&token.lower));
    for last in (0..tokens.len()).rev() {
        let TokenKind::Quantity(stated) =
            tokens.get(last).map_or(&TokenKind::Sign(' '), |t| &t.kind)
        else {
            continue;
        };
        let unit = stated.unit;
        let label = last.checked_sub(1);
        let Some(label) = label.filter(|label| is_measure(tokens.get(*label))) else {
            continue;
        };
        let joint = |at: usize| {
            tokens
                .get(at)
                .is_some_and(|token| token.is_sign(',') || token.is_word("and"))
        };
        let Some(number) = (0..label)
            .rev()
            .find(|at| !joint(*at))
            .filter(|at| at + 1 < label)
        else {
            continue;
        };
        if !number
            .checked_sub(1)
            .is_some_and(|label| is_measure(tokens.get(label)))
        {
            continue;
        }
        if let Some(token) = tokens.get_mut(number)
            && let TokenKind::Number(numeral) = &token.kind
        {
            token.kind = TokenKind::Quantity(Stated {
                number: numeral.value,
                unit,
                step: numeral.step,
                style: numeral.style,
                span: token.span.start()..token.span.end(),
            });
        }
    }
}
