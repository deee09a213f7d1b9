//! A second, independent and much simpler pass: every number with a unit that stands in the source must stand in a clause's bound, in a
//! condition, in a product's name or in the head. What stands in none is shown as an unread number.
//!
//! The pass knows no grammar: it shares nothing with the rules but the notation of quantities, so that a rule that loses a number is found
//! out by something that can't lose it the same way.

use measure::notation::{Stated, is_note_mark, quantity_at};
use measure::{Number, Unit};

use super::bare_numbers::bare_numbers;
use super::column_numbers::column_numbers;
use super::spelled_numbers::{bare_lengths, spelled_numbers};
use crate::layout::{is_disguised, plain};
use crate::model::{Clause, Condition, Place, PlaceKind, Requirement, Span, Warning, WarningKind};

/// How far behind a number its second value may stand, in bytes.
const REACH: usize = 160;

/// The numbers of a source that nothing holds.
pub(super) fn unread_numbers(
    text: &str,
    clauses: &[Clause],
    places: &[Place],
    unread_in_head: &[Span],
    bare_in_head: &[Span],
    warnings: &[Warning],
) -> Vec<Warning> {
    // In the head, too, a number of a column states nothing, but where its label tells what it is.
    let in_clauses = held(text, clauses, &[], &[], warnings);
    let held = held(text, clauses, places, unread_in_head, warnings);
    let seconds = seconds(clauses);
    let mut found: Vec<Span> = gaps(&held, text.len())
        .flat_map(|gap| numbers(text, gap))
        .filter(|number| {
            let deviates = text
                .get(..number.span.start)
                .is_some_and(|before| before.trim_end().ends_with(['±', '-', '−']));
            !is_second(&seconds, number, deviates)
        })
        .map(|number| span_of(&number))
        .chain(gaps(&held, text.len()).flat_map(|gap| odd_numbers(text, gap)))
        .chain(gaps(&held, text.len()).flat_map(|gap| disguised_numbers(text, gap)))
        .chain(gaps(&held, text.len()).flat_map(|gap| spelled_numbers(text, gap)))
        .chain(gaps(&held, text.len()).flat_map(|gap| bare_lengths(text, gap)))
        .collect();
    let bare: Vec<Span> = gaps(&held, text.len())
        .flat_map(|gap| bare_numbers(text, gap))
        .filter(|bare| !found.iter().any(|span| overlap(span, bare)))
        .collect();
    found.extend(bare);
    let columns: Vec<Span> = column_numbers(text)
        .into_iter()
        .filter(|number| {
            !found
                .iter()
                .chain(&in_clauses)
                .chain(bare_in_head)
                .any(|span| overlap(span, number))
        })
        .collect();
    found.extend(columns);
    found
        .into_iter()
        .map(|span| {
            let words = span.of(text).to_owned();
            let message = format!("no clause, condition or name holds `{words}`");
            Warning {
                kind: WarningKind::UnreadNumber,
                span,
                words,
                message,
            }
        })
        .collect()
}

fn overlap(one: &Span, other: &Span) -> bool {
    one.start() < other.end() && other.start() < one.end()
}

fn span_of(stated: &Stated) -> Span {
    Span::new(stated.span.start, stated.span.end)
}

/// The stretches between others that are in order.
fn gaps(held: &[Span], len: usize) -> impl Iterator<Item = Span> + '_ {
    let starts = core::iter::once(0).chain(held.iter().map(|span| span.end()));
    let ends = held.iter().map(|span| span.start()).chain([len]);
    starts
        .zip(ends)
        .filter(|(start, end)| start < end)
        .map(|(start, end)| Span::new(start, end))
}

/// Every number with a unit that begins in a stretch, in order.
fn numbers(text: &str, within: Span) -> impl Iterator<Item = Stated> + '_ {
    let mut next = 0;
    // `½ in.` begins with a fraction that is one character.
    let begins_number = |c: char| c.is_ascii_digit() || matches!(c, '¼'..='¾' | '⅐'..='⅞');
    let places = within
        .of(text)
        .char_indices()
        .filter(move |(_, c)| begins_number(*c))
        .map(move |(at, _)| within.start() + at);
    places.filter_map(move |at| {
        let begins = at >= next;
        let before = text.get(..at).and_then(|before| before.chars().next_back());
        let apart = before.is_none_or(|before| {
            !before.is_alphanumeric() && !matches!(before, '.' | '-' | '/')
                || before == '/' && is_parted(text, at)
                || is_label_of_its_own(before)
                || matches!(before, 'Ø' | 'ø')
                || before == '.' && is_behind_a_word(text, at)
        });
        if !begins || is_inside(text, at) {
            return None;
        }
        let stated = apart.then(|| stated_at(text, at)).flatten();
        // A number without a unit is passed over whole.
        next = stated.as_ref().map_or_else(
            || {
                let rest = text.get(at..).unwrap_or_default();
                at + rest.len() - rest.trim_start_matches(|c: char| c.is_ascii_digit()).len()
            },
            |stated| stated.span.end,
        );
        stated.filter(|stated| stated.unit != Unit::Count && !is_name(text, stated))
    })
}

/// The quantity at a place. What labels it, `¹6 mm`, is none of it.
fn stated_at(text: &str, at: usize) -> Option<Stated> {
    let labelled = text.get(..at)?.ends_with(is_label_of_its_own);
    if !labelled {
        return quantity_at(text, at);
    }
    quantity_at(text.get(at..)?, 0).map(|stated| Stated {
        span: at + stated.span.start..at + stated.span.end,
        ..stated
    })
}

/// Whether a character that stands for another, or for nothing, joins a digit to the digits before it: `1\u{ad}00 mm`, `0·5 mm`.
fn is_inside(text: &str, at: usize) -> bool {
    let mut before = text.get(..at).unwrap_or_default().chars().rev();
    let joins = matches!(
        before.next(),
        Some('·' | '\u{ad}' | '\u{200b}'..='\u{200d}' | '\u{2060}')
    );
    joins && before.next().is_some_and(|c| c.is_ascii_digit())
}

/// Whether a character is the mark of a note or a number in a ring, and no part of the number behind it.
fn is_label_of_its_own(c: char) -> bool {
    is_note_mark(c) || matches!(c, '①'..='⓿')
}

/// Whether the stop before a number ends a word: `approx.6 mm`, `min.6 mm`.
fn is_behind_a_word(text: &str, at: usize) -> bool {
    let before = text.get(..at).and_then(|before| before.strip_suffix('.'));
    before.is_some_and(|before| {
        before
            .chars()
            .rev()
            .take(2)
            .filter(|c| c.is_alphabetic())
            .count()
            == 2
    })
}

/// Every number in a stretch that is written in other characters than its own: `１０ mm`, `³⁄₈ in.`, `0·5 mm`. What the notation of quantities reads as
/// it is written is no such number.
fn disguised_numbers(text: &str, within: Span) -> Vec<Span> {
    let words = within.of(text);
    if !is_disguised(words) {
        return Vec::new();
    }
    let mut as_meant = String::with_capacity(words.len());
    // Where each byte of what is meant begins in the source, and where that character ends.
    let mut sources: Vec<Span> = Vec::with_capacity(words.len());
    for plain in plain(words) {
        let Some(c) = plain.c else { continue };
        let start = within.start() + plain.at;
        as_meant.push(c);
        sources.resize(as_meant.len(), Span::new(start, start + plain.len));
    }
    let all = Span::new(0, as_meant.len());
    numbers(&as_meant, all)
        .filter_map(|stated| {
            let first = sources.get(stated.span.start)?;
            let last = sources.get(stated.span.end.checked_sub(1)?)?;
            let written = first.join(*last);
            is_disguised(written.of(text)).then_some(written)
        })
        .collect()
}

/// Every number in a stretch whose unit the notation of quantities doesn't know, or that is parted from its unit: `3.4 lb/sq yd`, `4 (min) pcf`.
fn odd_numbers(text: &str, within: Span) -> impl Iterator<Item = Span> + '_ {
    const UNITS: &[&str] = &[
        "lb", "lbs", "pound", "pounds", "oz", "ounce", "ounces", "g", "gm", "grams", "kg", "cpm",
        "psf", "plf", "kips", "cfm", "n", "nm", "kn", "knm", "lbf",
    ];
    const LIMITS: &[&str] = &[
        "(min)",
        "(max)",
        "(min.)",
        "(max.)",
        "(nom)",
        "(nominal)",
        "(minimum)",
        "(maximum)",
    ];
    let bytes = within.of(text).bytes().enumerate();
    let digits = bytes.filter(|(_, byte)| byte.is_ascii_digit());
    digits.filter_map(move |(at, _)| {
        let start = within.start() + at;
        let before = text.get(..start)?.chars().next_back();
        if before.is_some_and(|c| c.is_alphanumeric() || matches!(c, '.' | '-' | '/' | ',' | '#')) {
            return None;
        }
        let rest = text.get(start..)?;
        let digits = rest.len()
            - rest
                .trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | '/'))
                .len();
        let behind = rest.get(digits..)?.trim_start_matches(' ');
        let word: String = behind.chars().take_while(|c| c.is_alphabetic()).collect();
        let unit = UNITS.contains(&word.to_lowercase().as_str());
        let lower = behind
            .get(..behind.len().min(10))
            .unwrap_or_default()
            .to_lowercase();
        // A mass for a volume is spelled out: `96 kg per cubic meter`.
        let unit = unit
            && !behind
                .get(word.len()..)
                .is_some_and(|rest| rest.starts_with(" per cubic"));
        let limited = LIMITS.iter().any(|limit| lower.starts_with(limit))
            || is_marked(behind)
            || is_compound(behind)
            || is_powered(behind);
        let known = quantity_at(text, start).is_some_and(|stated| stated.unit != Unit::Count);
        let len = rest.len() - behind.len() + if unit { word.len() } else { 0 };
        let span = Span::new(start, start + if unit { len } else { digits });
        ((unit || limited) && !known).then_some(span)
    })
}

/// Whether a stroke makes a known unit one that the notation doesn't know: `1.5 L/m`, `3 mm/m`.
fn is_compound(behind: &str) -> bool {
    let unit = behind.split_once('/').map(|(unit, _)| unit);
    unit.filter(|unit| !unit.is_empty() && unit.chars().all(char::is_alphabetic))
        .and_then(|unit| quantity_at(&format!("1 {unit}"), 0))
        .is_some_and(|stated| stated.unit != Unit::Count)
        && quantity_at(&format!("1 {behind}"), 0).is_none()
}

/// Whether a raised figure makes a unit one that the notation doesn't know: `3 ft³`, `4 in.²`
fn is_powered(behind: &str) -> bool {
    let ends = |c: char| c.is_whitespace() || is_note_mark(c);
    let Some((unit, rest)) = behind.find(ends).and_then(|at| behind.split_at_checked(at)) else {
        return false;
    };
    rest.starts_with(is_note_mark)
        && quantity_at(&format!("1 {unit}"), 0)
            .is_some_and(|stated| stated.unit != Unit::Count && stated.span.end == unit.len() + 2)
}

/// Whether the mark of a note parts a number from its unit, or a dash that is no hyphen does: `4* in.`, `4¹ in.`, `6—mm`
fn is_marked(behind: &str) -> bool {
    let mark =
        |c: char| matches!(c, '*' | '†' | '‡' | '§' | '¶' | '–' | '—' | '−') || is_note_mark(c);
    let rest = behind.trim_start_matches(mark);
    rest.len() < behind.len()
        && quantity_at(&format!("1 {}", rest.trim_start()), 0)
            .is_some_and(|stated| stated.unit != Unit::Count)
}

/// Whether the stroke before a number parts it from another with its own unit, and makes no fraction: `12 in. max./6 in. min.`, `(edges)/12 in.`
fn is_parted(text: &str, at: usize) -> bool {
    let before = text.get(..at.saturating_sub(1)).unwrap_or_default();
    before
        .chars()
        .next_back()
        .is_some_and(|c| !c.is_ascii_digit() && !c.is_whitespace())
}

/// Whether what looks like a quantity is part of a name: `Item 3C`, `"Carromat 8"`.
fn is_name(text: &str, stated: &Stated) -> bool {
    let words = text.get(stated.span.clone()).unwrap_or_default();
    let lettered = matches!(
        stated.unit,
        Unit::Celsius | Unit::Fahrenheit | Unit::KelvinRise
    ) && !words.contains([' ', '°', '\u{a0}']);
    lettered || (words.ends_with('"') && stands_in_quotes(text, stated.span.start))
}

/// Whether a quote that was opened before a place on its line, not far off, is still open there. A mark behind a digit is an inch mark.
fn stands_in_quotes(text: &str, place: usize) -> bool {
    let before = text.get(..place).unwrap_or_default();
    let mut marks = 0;
    let mut chars = before.chars().rev().take(REACH).peekable();
    while let Some(c) = chars.next().filter(|c| *c != '\n') {
        let inches = chars.peek().is_some_and(char::is_ascii_digit);
        marks += usize::from(c == '"' && !inches);
    }
    marks % 2 == 1
}

/// The stretches in which a number is accounted for, in order and without overlap.
fn held(
    text: &str,
    clauses: &[Clause],
    places: &[Place],
    unread_in_head: &[Span],
    warnings: &[Warning],
) -> Vec<Span> {
    let of_clauses = clauses.iter().flat_map(|clause| {
        let own = match &clause.requirement {
            Requirement::Bound(bound) => Some(bound.at),
            Requirement::Named { .. } | Requirement::Reference { .. } => Some(clause.span),
            _ => None,
        };
        let condition = clause.condition.iter().flat_map(Condition::spans);
        own.into_iter().chain(condition)
    });
    let of_places = places
        .iter()
        .filter(|place| match place.kind {
            PlaceKind::Header | PlaceKind::Furniture => true,
            PlaceKind::Heading => !limits(place.span.of(text)),
            _ => false,
        })
        .flat_map(|place| without(place.span, unread_in_head));
    let warned = warnings
        .iter()
        .filter(|warning| warning.kind == WarningKind::UnreadNumber)
        .map(|warning| warning.span);
    let mut spans: Vec<Span> = of_clauses.chain(of_places).chain(warned).collect();
    spans.sort_unstable_by_key(|span| (span.start(), span.end()));
    let mut merged: Vec<Span> = Vec::new();
    for span in spans {
        match merged.last_mut().filter(|last| span.start() <= last.end()) {
            Some(last) => *last = last.join(span),
            None => merged.push(span),
        }
    }
    merged
}

/// What is left of a stretch without others, which are in order.
fn without(whole: Span, others: &[Span]) -> impl Iterator<Item = Span> {
    let mut inside: Vec<Span> = others
        .iter()
        .copied()
        .filter(|other| overlap(&whole, other))
        .collect();
    inside.sort_unstable();
    let starts = core::iter::once(whole.start()).chain(inside.clone().into_iter().map(Span::end));
    let ends = inside.into_iter().map(Span::start).chain([whole.end()]);
    let left: Vec<Span> = starts
        .zip(ends)
        .filter(|(start, end)| start < end)
        .map(|(start, end)| Span::new(start, end))
        .collect();
    left.into_iter()
}

/// Whether a heading limits something: `PACKING (density 4 pcf min)`. What only names or cites holds no limit.
fn limits(heading: &str) -> bool {
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum", "least", "most", "than"];
    heading
        .split(|c: char| !c.is_alphabetic())
        .any(|word| LIMITS.iter().any(|limit| limit.eq_ignore_ascii_case(word)))
}

/// The second values of the bounds, by where the first stands.
fn seconds(clauses: &[Clause]) -> Vec<(usize, Number, Unit)> {
    let mut seconds: Vec<(usize, Number, Unit)> = clauses
        .iter()
        .filter_map(|clause| match &clause.requirement {
            Requirement::Bound(bound) => Some((bound.at, bound.second.as_ref()?)),
            _ => None,
        })
        .flat_map(|(at, second)| {
            let values = [second.lo, second.hi];
            values
                .into_iter()
                .flatten()
                .map(move |value| (at.end(), value, second.unit))
        })
        .collect();
    seconds.sort_unstable_by_key(|(at, ..)| *at);
    seconds
}

/// Whether a number is the second value of a bound just before it, or the deviation that such a value is stated with: `(19 ± 3 mm)`.
fn is_second(seconds: &[(usize, Number, Unit)], number: &Stated, deviates: bool) -> bool {
    let start = number.span.start;
    let from = seconds.partition_point(|(at, ..)| at + REACH < start);
    seconds
        .get(from..)
        .unwrap_or_default()
        .iter()
        .take_while(|(at, ..)| *at <= start)
        .any(|(_, value, unit)| *unit == number.unit && (deviates || *value == number.number))
}
