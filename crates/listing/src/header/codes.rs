//! The widths and movements in class codes of the head: `EI 120 - H - M 25 - B - W 10 to 50` (EN 13501-2, 7.5.9: orientation, movement in percent, splices, widths
//! in millimetres).

use core::ops::Range;

use measure::{Number, Unit};

use super::HeaderRead;
use super::classes::is_of_another;
use crate::layout::Flow;
use crate::model::{Relation, Span, WarningKind, WidthLimit};

/// What a code says besides its period.
pub(super) struct Code {
    /// The least and the greatest width.
    width: (Number, Number),
    width_at: Span,
    movement: Option<(Number, Span)>,
}

/// The codes of a paragraph.
pub(super) fn codes(flow: &Flow) -> Vec<Code> {
    let parts = parts(flow.text());
    let begins = |at: &usize| {
        let class = parts.get(*at).map(|(word, _)| *word).unwrap_or_default();
        let minutes = class.trim_start_matches(['(', '"', 'R']).strip_prefix("EI");
        minutes.is_some_and(|minutes| minutes.is_empty() || whole(minutes).is_some())
    };
    let starts = (0..parts.len()).filter(begins);
    let found = starts.filter_map(|at| {
        let (class, place) = parts.get(at)?;
        let before = flow.text().get(..place.start)?;
        let before: Vec<&str> = before.split_whitespace().collect();
        let period = usize::from(!class.contains(|c: char| c.is_ascii_digit()));
        let of_joint = !is_of_another(&before);
        of_joint.then(|| code(flow, parts.get(at + 1 + period..)?))?
    });
    found.collect()
}

/// A code behind its period.
fn code(flow: &Flow, parts: &[(&str, Range<usize>)]) -> Option<Code> {
    let mut movement = None;
    let mut rest = parts.iter();
    while let Some((word, place)) = rest.next() {
        match *word {
            "H" | "V" | "T" | "X" | "F" | "B" => {}
            "M" => {
                // The next may be the letter of prefabricated splices.
                let mut ahead = rest.clone();
                if let Some((percent, end)) = ahead.next().and_then(number) {
                    movement = Some((percent, flow.span(place.start, end)));
                    rest = ahead;
                }
            }
            "W" => {
                let (lo, start) = rest
                    .next()
                    .and_then(|part| Some((whole(part.0)?, part.1.start)))?;
                let next = rest.next()?;
                let last = if next.0 == "to" { rest.next()? } else { next };
                let digits = last.0.trim_end_matches([',', ';', '.', ')']);
                let hi = whole(digits)?;
                let end = last.1.start + digits.len();
                return (lo < hi).then(|| Code {
                    width: (lo, hi),
                    width_at: flow.span(start, end),
                    movement,
                });
            }
            _ => return None,
        }
    }
    None
}

/// `7,5`
fn number(part: &(&str, Range<usize>)) -> Option<(Number, usize)> {
    let (whole_part, tenth) = part.0.split_once([',', '.']).unwrap_or((part.0, "0"));
    let tenths = whole(whole_part)?.times(Number::from(10))?;
    let tenth = whole(tenth).filter(|_| tenth.len() == 1)?;
    let number = tenths.plus(tenth)?.times(Number::new(1, 10)?)?;
    Some((number, part.1.end))
}

fn whole(digits: &str) -> Option<Number> {
    const MOST_DIGITS: usize = 4;
    let plain = digits.len() <= MOST_DIGITS && digits.bytes().all(|c| c.is_ascii_digit());
    let number: i32 = digits.parse().ok().filter(|_| plain)?;
    Some(Number::from(number))
}

/// What blanks and dashes part.
fn parts(text: &str) -> Vec<(&str, Range<usize>)> {
    let each = text
        .split([' ', '-', '–', '—'])
        .filter(|part| !part.is_empty());
    let place = |part: &str| part.as_ptr().addr() - text.as_ptr().addr();
    each.map(|part| (part, place(part)..place(part) + part.len()))
        .collect()
}

/// Takes the width of the codes where they agree on one and nothing else states it. Which of several holds, and which way a joint moves, no code says.
pub(super) fn take(codes: &[Code], read: &mut HeaderRead) {
    let agreed = codes
        .first()
        .filter(|first| codes.iter().all(|code| code.width == first.width));
    if read.header.width.is_none()
        && let Some(code) = agreed
    {
        read.header.width = Some(WidthLimit {
            relation: Relation::Between,
            lo: Some(code.width.0),
            hi: Some(code.width.1),
            unit: Unit::Millimetre,
            strictest_hi: None,
            span: code.width_at,
        });
    } else {
        let untold = codes.iter().filter(|code| !is_within(code, read));
        let untold: Vec<Span> = untold.map(|code| code.width_at).collect();
        read.warnings.extend(untold.into_iter().map(|at| {
            let message = "the head states this width of one of its classes alone".to_owned();
            (WarningKind::UnreadNumber, at, message)
        }));
    }
    for (percent, at) in codes.iter().filter_map(|code| code.movement) {
        let told = read
            .header
            .movement
            .iter()
            .any(|held| held.percent == percent);
        if !told {
            read.warnings.push((
                WarningKind::UnreadNumber,
                at,
                "a class names no direction of its movement; what it allows must be confirmed"
                    .to_owned(),
            ));
        }
    }
}

/// Whether the width that the head states otherwise covers that of a code.
fn is_within(code: &Code, read: &HeaderRead) -> bool {
    read.header.width.as_ref().is_some_and(|width| {
        width.unit == Unit::Millimetre
            && width.lo.is_none_or(|lo| lo <= code.width.0)
            && width.hi.is_some_and(|hi| hi >= code.width.1)
    })
}

#[cfg(test)]
mod tests {
    use crate::header::tests::{read, warned};

    fn width(text: &str) -> String {
        let width = read(text).width;
        width.map_or_else(String::new, |width| {
            let end = |number: Option<measure::Number>| {
                number.map(|number| number.to_string()).unwrap_or_default()
            };
            format!("{}..{} {:?}", end(width.lo), end(width.hi), width.unit)
        })
    }

    #[test]
    fn a_class_tells_the_widths() {
        for (text, expected) in [
            ("EI 120 - H - M 25 - B - W 10 to 50", "10..50 Millimetre"),
            ("EI 120-V-X-F-W 20 to 100", "20..100 Millimetre"),
            (
                "Class: EI120 – V – M 7,5 – F – W 08–80;",
                "8..80 Millimetre",
            ),
            ("EI 60 - V - X - M - W 20 to 100", "20..100 Millimetre"),
            // Twice the same.
            (
                "EI 90 - V - X - F - W 10 to 50\nEI 120 - H - X - F - W 10 to 50",
                "10..50 Millimetre",
            ),
            // What is stated comes first.
            (
                "Joint width: 10 mm to 40 mm\nEI 90 - V - X - F - W 10 to 50",
                "10..40 Millimetre",
            ),
            // One length, another thing's class, no class.
            ("EI 90 - V - X - F - W 10", ""),
            ("Wall: EI 90 - V - X - F - W 10 to 50", ""),
            ("Not classified EI 90 - V - X - F - W 10 to 50", ""),
            ("EI 90, page W 10 to 50", ""),
            ("EI 90 - V - X - F - W 50 to 10", ""),
        ] {
            assert_eq!(width(text), expected, "{text}");
        }
    }

    #[test]
    fn classes_of_several_widths_are_left() {
        let text = "EI 90 - V - X - F - W 10 to 50\nEI 120 - H - X - F - W 10 to 30";
        assert_eq!(width(text), "");
        assert_eq!(warned(text), "10 to 50 | 10 to 30");
        let wider = "Joint width: 10 mm to 40 mm\nEI 90 - V - X - F - W 10 to 50";
        assert_eq!(warned(wider), "10 to 50");
    }

    #[test]
    fn a_class_names_no_direction() {
        assert_eq!(warned("EI 120 - H - M 25 - B - W 10 to 50"), "M 25");
        assert_eq!(
            warned("Movement: 25 % compression\nEI 120 - H - M 25 - B - W 10 to 50"),
            ""
        );
    }
}
