//! Numbers without a unit behind them that what stands beside them says are measured: a comparison, a measure that leads to them, a limit behind
//! them, a stroke between several, a bracket between a number and its unit. The second pass shows those that nothing holds.
//!
//! What it shows for nothing: a count that a limit stands beside, and that no clause holds either.

use measure::notation::{Numeral, NumeralStyle, numeral_at, quantity_at, unit_at};
use measure::{Number, Unit};

use crate::model::Span;
use crate::phrase::lists_behind_unit;

/// Words that compare with the number behind them.
const COMPARING: &[&str] = &[
    "than",
    "least",
    "most",
    "exceed",
    "exceeds",
    "exceeding",
    "under",
    "below",
    "above",
    "over",
];

/// Words for what is measured.
const MEASURES: &[&str] = &[
    "depth",
    "width",
    "thickness",
    "height",
    "length",
    "diameter",
    "compression",
    "extension",
    "shear",
    "density",
    "spacing",
    "overlap",
    "lap",
    "recess",
    "embedment",
    "gap",
];

/// Words that bound a number.
const LIMITS: &[&str] = &["min", "max", "minimum", "maximum"];

/// Words that may stand between a measure and its number.
const LINKS: &[&str] = &["of", "is", "be", "shall", "to", "percent", "nominal", "nom"];

/// Every number of a stretch that has no unit behind it, and is measured all the same.
pub(super) fn bare_numbers(text: &str, within: Span) -> Vec<Span> {
    let mut found = Vec::new();
    let mut next = within.start();
    for (at, c) in within.of(text).char_indices() {
        let at = within.start() + at;
        if at < next || !(c.is_ascii_digit() || matches!(c, '¼'..='¾' | '⅐'..='⅞')) {
            continue;
        }
        let Some((numeral, end)) = numeral_at(text, at) else {
            continue;
        };
        next = end;
        let (before, behind) = (text.get(..at), text.get(end..));
        let (Some(before), Some(behind)) = (before, behind) else {
            continue;
        };
        if is_inside(before) {
            continue;
        }
        if let Some(end) = parted_by_strokes(text, at).or_else(|| parted_by_a_bracket(text, end)) {
            next = end;
            found.push(Span::new(at, end));
        } else if !has_unit(text, at)
            && !runs_on(behind)
            && !is_said_again(before)
            && !is_in_angles(before, behind)
            && (is_led(before)
                || is_limited(behind)
                || is_a_part(&numeral, Span::new(at, end).of(text), before, behind))
        {
            found.push(Span::new(at, end));
        }
    }
    found
}

/// Whether what stands before a digit is part of the same number or name: `A4`, `1.5`, `HW-4`.
fn is_inside(before: &str) -> bool {
    let mut before = before.chars().rev();
    before.next().is_some_and(|c| {
        c.is_alphanumeric()
            || matches!(c, '.' | '/' | '#' | '§')
            || c == ',' && before.next().is_some_and(|c| c.is_ascii_digit())
            || c == '-' && before.next().is_some_and(char::is_alphanumeric)
    })
}

/// Whether letters, or a stop and a further digit, make a name of a number: `4x`, `3A`, `2.1.4`.
fn runs_on(behind: &str) -> bool {
    let mut behind = behind.chars();
    behind.next().is_some_and(|c| {
        c.is_alphanumeric()
            || matches!(c, '.' | '-' | '/') && behind.next().is_some_and(char::is_alphanumeric)
    })
}

/// Whether a number has a unit of its own, so that it is looked for elsewhere.
fn has_unit(text: &str, at: usize) -> bool {
    quantity_at(text, at).is_some_and(|stated| stated.unit != Unit::Count)
}

/// Whether a bracket with nothing but numbers is open: `(13/16 to 1-3/16 in.)`, `(32 ± 6)` say in another unit what stands before them.
fn is_said_again(before: &str) -> bool {
    let line = before.rsplit('\n').next().unwrap_or(before);
    line.rfind(['(', '['])
        .and_then(|open| line.get(open + 1..))
        .is_some_and(|inner| {
            inner.split(' ').all(|word| {
                ["x", "by", "to", "and"].contains(&word) || !word.contains(char::is_alphabetic)
            }) && !inner.contains([')', ']'])
        })
}

/// `<3>`: the name of an item.
fn is_in_angles(before: &str, behind: &str) -> bool {
    before.ends_with('<') && behind.starts_with('>')
}

/// `≤ 25`, `@ 600`, `Ø 1.25`, `less than 25`, `extension 10`, `Compression, percent min: 25`: what leads to a number measures it.
fn is_led(before: &str) -> bool {
    let line = before.rsplit('\n').next().unwrap_or(before);
    let near = line.trim_end_matches(' ');
    // `Depth (in.): 3, 4, 6`
    if lists_behind_unit(line) {
        return true;
    }
    if near.ends_with(['≤', '≥', '<', '>', '@', 'Ø', 'ø', '⌀', '±'])
        || near.ends_with("<=")
        || near.ends_with(">=")
    {
        return true;
    }
    // What wraps goes on in the next line.
    let word = last_word(before.trim_end());
    if is_any(word, COMPARING) && line.len() - near.len() <= 1 {
        return true;
    }
    is_measured(near)
}

/// Whether a measure leads to a number on the same line, with nothing but links, limits and a unit in brackets between.
fn is_measured(line: &str) -> bool {
    const MOST: usize = 5;
    let mut rest = line;
    for _ in 0..MOST {
        rest = rest.trim_end_matches([' ', ':', '=', ',']);
        if let Some((head, inner)) = rest.strip_suffix(')').and_then(|r| r.rsplit_once('(')) {
            if inner.len() > 10 {
                return false;
            }
            rest = head;
            continue;
        }
        let word = last_word(rest);
        if is_any(word, MEASURES) {
            return true;
        }
        if !(is_any(word, LINKS) || is_any(word, LIMITS)) {
            return false;
        }
        rest = rest.strip_suffix(word).unwrap_or_default();
    }
    false
}

/// `600 max.`, `25 minimum`, `10 ≤ b`, `4 pieces/m`: what stands behind a number bounds it, or says of how much it is.
fn is_limited(behind: &str) -> bool {
    let near = behind.trim_start_matches(' ');
    if near.starts_with(['≤', '≥', '<', '>']) {
        return true;
    }
    let word = near
        .split(|c: char| c.is_whitespace() || matches!(c, '.' | ',' | ';' | ')' | '('))
        .next()
        .unwrap_or_default();
    let per = word.split_once('/').is_some_and(|(thing, per)| {
        thing.len() > 2
            && thing.chars().all(char::is_alphabetic)
            && ["m", "ft", "m2"].contains(&per)
    });
    is_any(word, LIMITS) || per
}

/// `1/4 - 3/8 on floors`: a part of an inch, though nothing says so. The number of a page is none.
fn is_a_part(numeral: &Numeral, written: &str, before: &str, behind: &str) -> bool {
    const NAMES: &[&str] = &[
        "p", "page", "sh", "sheet", "part", "fig", "no", "item", "type",
    ];
    let unders = [2, 4, 8, 16, 32];
    let usual = unders
        .iter()
        .any(|under| numeral.value.denominator() == *under)
        && Number::new(1, numeral.value.denominator()) == Some(numeral.step);
    let word = last_word(before.trim_end().trim_end_matches('.'));
    let ends_its_line = behind.trim_start_matches(' ').starts_with('\n') || behind.is_empty();
    let pages = ends_its_line && (before.ends_with("   ") || before.ends_with('\n'));
    // `7/02` is a month.
    let part = numeral.value < Number::ONE || written.contains(['-', ' ', '½', '¼', '¾']);
    numeral.style == NumeralStyle::Fraction && part && usual && !pages && !is_any(word, NAMES)
}

/// Where several numbers end that strokes part, the last with a unit: `25/12.5 percent`, `4/6/8 pcf`. One stroke makes a fraction where it can.
fn parted_by_strokes(text: &str, at: usize) -> Option<usize> {
    let mut end = at;
    let mut strokes = 0;
    loop {
        let rest = text.get(end..)?;
        let len = rest.len()
            - rest
                .trim_start_matches(|c: char| c.is_ascii_digit() || c == '.')
                .len();
        if len == 0 {
            return None;
        }
        end += len;
        let Some(next) = text.get(end..)?.strip_prefix('/') else {
            break;
        };
        if !next.starts_with(|c: char| c.is_ascii_digit()) {
            return None;
        }
        strokes += 1;
        end += 1;
    }
    let (unit, unit_end) = unit_at(text, end)?;
    let fraction = quantity_at(text, at).is_some_and(|stated| stated.span.end == unit_end);
    (strokes > 0 && !matches!(unit, Unit::Count | Unit::Awg) && !fraction).then_some(unit_end)
}

/// Where the unit of a number ends that a bracket with no words parts from it: `20 (-5, +10) mm`, `25 (+5/-0) mm`.
fn parted_by_a_bracket(text: &str, end: usize) -> Option<usize> {
    const LONGEST: usize = 24;
    let rest = text.get(end..)?;
    let inner = rest.trim_start_matches(' ').strip_prefix('(')?;
    let (inside, _) = inner.split_once(')')?;
    let signed = inside.starts_with(['+', '-', '−', '±']);
    if !signed || inside.len() > LONGEST || inside.contains(char::is_alphabetic) {
        return None;
    }
    let close = end + (rest.len() - inner.len()) + inside.len() + 1;
    let (_, unit_end) = unit_at(text, close)?;
    Some(unit_end)
}

fn last_word(before: &str) -> &str {
    before
        .rsplit(|c: char| !c.is_alphabetic())
        .next()
        .unwrap_or_default()
}

fn is_any(word: &str, words: &[&str]) -> bool {
    words.iter().any(|own| own.eq_ignore_ascii_case(word))
}
