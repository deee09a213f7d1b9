//! Terse tables in columns of text: parts in a box, what differs by rating or width in captioned tables.

use super::super::spec::{Amount, Ask};
use super::super::spec::{Built, Part, Spec, Statement, When};
use super::amounts::{First, Voice, hours, inches, millimetres};
use super::lines::boxed;
use super::phrases::phrase;
use super::places::mark;
use super::sentences::makers;

const VOICE: Voice = Voice {
    first: First::Inches,
    at_least: "min",
    at_most: "max",
    nominal: "nom",
    hour: "Hr",
    percent: "%",
};

pub fn lines(spec: &Spec) -> Vec<String> {
    let mut lines = vec![
        format!(
            "ONDRASTEL PROVING HOUSE -- JOINTS -- SHEET {}",
            spec.designation()
        ),
        String::new(),
        format!(
            "SYSTEM   {}          {}          STANDARD  UL 2079",
            spec.designation(),
            spec.kind.title().to_uppercase()
        ),
        format!(
            "RATING   {}                  WIDTH  Max {}",
            hours(spec.ratings, "Hr"),
            VOICE.length(spec.width)
        ),
        format!(
            "MOVEMENT Class {}, {}% compression, {}% extension",
            spec.movement.class, spec.movement.compression, spec.movement.extension
        ),
        String::new(),
    ];
    let mut rows = Vec::new();
    let mut cases = Vec::new();
    for (at, part) in spec.parts.iter().enumerate() {
        let letter = char::from(b'A' + u8::try_from(at).unwrap());
        let mut before = String::new();
        for (place, one) in part.all().into_iter().enumerate() {
            let code = format!("{letter}{}", place + 1);
            rows.push(row(one, &code, &before));
            cases.extend(one.statements.iter().filter(|one| one.when != When::Always));
            before = code;
        }
    }
    lines.extend(boxed(&[3, 16, 74], &rows, true));
    lines.push(String::new());
    by_rating(spec, &cases, &mut lines);
    by_width(&cases, &mut lines);
    lines
}

fn row(part: &Part, code: &str, before: &str) -> Vec<String> {
    let plain = Part {
        statements: part.always().copied().collect(),
        ..part.clone()
    };
    let built = match part.built {
        Built::Always => String::new(),
        Built::InPlace => format!("Alternate to {before}. "),
        Built::Optional => "Optional. ".to_owned(),
    };
    let products = if part.products.is_empty() {
        String::new()
    } else {
        format!(" {}.", makers(part, ": ", ", ", ""))
    };
    vec![
        code.to_owned(),
        part.title.to_uppercase(),
        format!("{built}{}{products}", VOICE.in_list(&plain)),
    ]
}

/// The table of what differs by rating: a row a rating, a column a property.
fn by_rating(spec: &Spec, cases: &[&Statement], lines: &mut Vec<String>) {
    let of = |rating: usize| -> Vec<&Statement> {
        let ours = |one: &&&Statement| one.when == When::Rating(rating);
        cases.iter().filter(ours).copied().collect()
    };
    let rows = spec
        .ratings
        .iter()
        .map(|rating| (format!("{rating} Hr"), of(*rating)));
    table(
        "TABLE 1 -- BY RATING",
        "Rating",
        &rows.collect::<Vec<_>>(),
        lines,
    );
}

/// The table of what differs by the width of the joint.
fn by_width(cases: &[&Statement], lines: &mut Vec<String>) {
    let mut rows: Vec<(String, Vec<&Statement>)> = Vec::new();
    for one in cases {
        let band = match one.when {
            When::UpTo(width) => format!(
                "up to {} ({})",
                inches(width).replace(" in.", ""),
                millimetres(width)
            ),
            When::Over(width) => format!(
                "over {} ({})",
                inches(width).replace(" in.", ""),
                millimetres(width)
            ),
            _ => continue,
        };
        rows.push((band, vec![one]));
    }
    table(
        "TABLE 2 -- BY JOINT WIDTH",
        "Joint width, in. (mm)",
        &rows,
        lines,
    );
}

fn table(caption: &str, first: &str, rows: &[(String, Vec<&Statement>)], lines: &mut Vec<String>) {
    let Some((_, statements)) = rows
        .first()
        .filter(|(_, statements)| !statements.is_empty())
    else {
        return;
    };
    let mut head = vec![first.to_owned()];
    head.extend(statements.iter().map(|one| heading(one)));
    let mut cells = vec![head];
    for (label, statements) in rows {
        let mut row = vec![label.clone()];
        row.extend(statements.iter().map(|one| cell(one)));
        cells.push(row);
    }
    let widths: Vec<usize> = cells[0].iter().map(|words| words.len().max(16)).collect();
    lines.push(caption.to_owned());
    lines.extend(boxed(&widths, &cells, false));
    lines.push(String::new());
}

/// "Packing depth, min in. (mm)"
fn heading(one: &Statement) -> String {
    let label = phrase(one.property).label;
    let (word, amount) = bound(one);
    let unit = match amount {
        Amount::Length(_) => " in. (mm)",
        Amount::Percent(_) => " %",
        _ => "",
    };
    match word {
        "" => format!("{label}{unit}"),
        word => format!("{label}, {word}{unit}"),
    }
}

fn cell(one: &Statement) -> String {
    let words = match bound(one).1 {
        Amount::Length(length) => format!(
            "{} ({})",
            inches(length).replace(" in.", ""),
            millimetres(length)
        ),
        Amount::Percent(number) | Amount::Count(number) => number.to_string(),
        other => VOICE.amount(other),
    };
    format!("{}{words}", mark(one.id))
}

fn bound(one: &Statement) -> (&'static str, Amount) {
    match one.ask {
        Ask::AtLeast(amount) => ("min", amount),
        Ask::AtMost(amount) => ("max", amount),
        Ask::Nominal(amount) => ("nom", amount),
        Ask::Exactly(amount) | Ask::Between(amount, _) => ("", amount),
    }
}
