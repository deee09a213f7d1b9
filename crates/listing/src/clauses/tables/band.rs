//! Widths that head columns: `Joint 1 in. or less`, `over 1 to 2 in. wide`. Its cells are for joints of that width; the heading limits nothing.

use std::collections::BTreeMap;

use super::columns::test;
use super::heading::{Heading, heading};
use super::rating::Rating;
use crate::model::Expr;
use crate::phrase::{cell, count_word};

/// Words for the joint and its width, in headings.
const WIDTHS: &[&str] = &[
    "joint", "joints", "width", "widths", "gap", "gaps", "opening", "openings", "wide", "nominal",
    "in", "of",
];

/// A heading that is a width of joints and nothing else; none where it may be anything else.
pub(super) fn width_band(text: &str) -> Option<Heading> {
    let text = text.trim();
    let lead = leading(text);
    let rest = text.get(lead..)?.trim_start_matches([' ', ',', ':']);
    let tail = rest.trim_end_matches(|c: char| c.is_alphabetic() || c == ' ');
    // "1 in. wide", "1 in. or less": only words for the width may be left off behind.
    let behind = rest.get(tail.len()..)?;
    let plain = behind
        .split_whitespace()
        .all(|word| WIDTHS.contains(&word.to_lowercase().as_str()));
    let value = if plain { tail } else { rest };
    let amount = cell(value, None, None).filter(|cell| {
        cell.unit
            .is_some_and(|unit| unit.dimension() == measure::Dimension::Length)
            && !cell.goes_on
    })?;
    // A "width" alone may be a board's or a strip's.
    let of_joint = text.to_lowercase().contains("joint");
    let compares = amount.relation.is_some() || amount.hi.is_some();
    let expr = of_joint
        .then(|| test("joint.width", &amount, None))
        .flatten()
        .unwrap_or_else(|| Expr::Words(text.to_owned()));
    compares.then(|| {
        Heading::for_case(Rating {
            words: text.to_owned(),
            expr,
        })
    })
}

/// Columns of widths under one heading that stands over the middle of them: `Joint width, nominal` over `to 1 in. | over 1 to 3 in. | over 3 in.`, which
/// a reader of columns finds over one of them alone. By column, what each heads.
pub(super) fn bands_together(headings: &[String]) -> BTreeMap<usize, Heading> {
    const FEWEST: usize = 2;
    let none = BTreeMap::new();
    let named = |words: &str| {
        let named = words.get(..leading(words)).unwrap_or_default();
        let lower = named.to_lowercase();
        lower.contains("joint") && lower.contains("width")
    };
    let mut over = headings.iter().skip(1).filter(|words| named(words));
    let Some(shared) = over.next().filter(|_| over.next().is_none()) else {
        return none;
    };
    let shared = shared.get(..leading(shared)).unwrap_or_default().trim();
    let value = |words: &str| {
        let own = words.strip_prefix(shared).unwrap_or(words);
        own.trim_start_matches([' ', ',', ':']).to_owned()
    };
    let first = headings
        .iter()
        .rposition(|words| band(&value(words)).is_none());
    let first = first.map_or(0, |last| last + 1);
    let under = headings.get(first..).unwrap_or_default();
    let held = under.iter().any(|words| named(words));
    if first == 0 || under.len() < FEWEST || !held {
        return none;
    }
    let heads = under.iter().enumerate().filter_map(|(at, words)| {
        let value = value(words);
        let case = Rating {
            words: format!("{shared}: {value}"),
            expr: band(&value)?,
        };
        Some((first + at, Heading::for_case(case)))
    });
    heads.collect()
}

/// The widths of joints that a value is: `over 1 to 3 in.`, `to 1 in.`
fn band(value: &str) -> Option<Expr> {
    let upward = value.strip_prefix("to ").map(|end| format!("up to {end}"));
    let value = upward.as_deref().unwrap_or(value);
    let amount = cell(value, None, None).filter(|amount| !amount.goes_on)?;
    let length = amount.unit?.dimension() == measure::Dimension::Length;
    let compares = amount.relation.is_some() || amount.hi.is_some();
    test("joint.width", &amount, None).filter(|_| length && compares)
}

/// Makes columns headed by numbers of one thing, `1 layer | 2 layers`, columns for these cases: their cells are of what the caption names, and no
/// number of layers.
pub(super) fn count_cases(headings: &mut [Heading], caption: &str) {
    let counted: Vec<(usize, String)> = headings
        .iter()
        .enumerate()
        .filter_map(|(column, heading)| {
            let thing = counted_thing(&heading.words)?;
            heading.rating.is_none().then_some((column, thing))
        })
        .collect();
    let alike = counted
        .windows(2)
        .all(|two| matches!(two, [(_, one), (_, other)] if one == other));
    if counted.len() < 2 || !alike || counted.iter().any(|(column, _)| *column == 0) {
        return;
    }
    let said = caption
        .strip_prefix("Table ")
        .and_then(|rest| rest.split_once(' '))
        .map_or(caption, |(_, said)| said);
    for (column, _) in counted {
        let Some(own) = headings.get_mut(column) else {
            continue;
        };
        let case = Rating {
            words: own.words.clone(),
            expr: Expr::Words(own.words.clone()),
        };
        *own = Heading {
            rating: Some(case),
            selects: None,
            ..heading(said)
        };
    }
}

/// The thing that a heading is a number of, in the singular: `2 layers`, `one coat`.
fn counted_thing(words: &str) -> Option<String> {
    let (number, thing) = words.trim().split_once(' ')?;
    let counted = number.parse::<u8>().is_ok() || count_word(number).is_some();
    let thing = thing.trim().to_lowercase();
    let plain = thing.chars().all(char::is_alphabetic) && !thing.is_empty();
    let rated = ["hr", "h", "hrs", "hour", "hours", "min", "minutes"].contains(&thing.as_str());
    let unit = measure::notation::unit_at(&format!("1 {thing}"), 1).is_some();
    (counted && plain && !rated && !unit).then(|| thing.trim_end_matches('s').to_owned())
}

/// How many bytes of a heading are words for the joint and its width.
fn leading(text: &str) -> usize {
    let mut end = 0;
    for word in text.split_inclusive(' ') {
        let bare = word
            .trim_matches(|c: char| !c.is_alphanumeric())
            .to_lowercase();
        if !WIDTHS.contains(&bare.as_str()) {
            break;
        }
        end += word.len();
    }
    end
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_width_alone_is_a_case() {
        for text in [
            "Joint 1 in. or less",
            "Joint over 1 in.",
            "over 20 to 50 mm",
            "Joint width up to 50 mm",
            "25 to 50 mm wide",
        ] {
            let heading = width_band(text).unwrap();
            assert_eq!(heading.rating.unwrap().words, text);
            assert!(
                heading.words.is_empty() && heading.relation.is_none(),
                "{text}"
            );
        }
        for text in [
            "Depth over 1 in. joints",
            "Joint width, in.",
            "2 hr",
            "1 in.",
            "Lap on board, 1/2 in. min",
            "Width",
        ] {
            assert!(width_band(text).is_none(), "{text}");
        }
    }
}
