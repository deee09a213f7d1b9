//! Metric alone, bounds as signs, and a table of the field of application.

use super::super::spec::{Amount, Ask, Built, Spec};
use super::amounts::{First, Voice, hours, millimetres};
use super::lines::{boxed, paragraph};
use super::phrases::phrase;
use super::sentences::makers;

const VOICE: Voice = Voice {
    first: First::MetricAlone,
    at_least: "\u{2265}",
    at_most: "\u{2264}",
    nominal: "nominal",
    hour: "h",
    percent: "%",
};

const WIDTH: usize = 90;

pub fn lines(spec: &Spec) -> Vec<String> {
    let mut lines = vec![
        "ONDRASTEL PROVING HOUSE                                    Extract of a test report"
            .to_owned(),
        format!(
            "Classification of a linear joint seal                       System {}",
            spec.designation()
        ),
        "-".repeat(WIDTH),
        "Test standard:    UL 2079".to_owned(),
        format!("Assembly rating:  {}", hours(spec.ratings, "h")),
        format!("Joint width:      max {}", VOICE.length(spec.width)),
        format!(
            "Movement:         Class {}, {} % compression, {} % extension",
            spec.movement.class, spec.movement.compression, spec.movement.extension
        ),
        "-".repeat(WIDTH),
        String::new(),
    ];
    let mut number = 0;
    for part in &spec.parts {
        number += 1;
        lines.push(format!("{number} {}", part.title));
        lines.push(String::new());
        let letters: Vec<char> = ('a'..='z').collect();
        for (at, (one, replaced)) in part.in_one_row().into_iter().enumerate() {
            let (letter, replaced) = (letters[at], letters[replaced]);
            let built = match one.built {
                Built::Always => String::new(),
                Built::Optional => " (optional)".to_owned(),
                Built::InPlace => format!(" (alternate to {number} {replaced}))"),
            };
            let words = format!("{}{built}: {}", one.title, VOICE.in_list(one));
            lines.extend(paragraph(&format!("    {letter}) "), &words, 7, WIDTH));
            lines.push(String::new());
        }
    }
    field(spec, number + 1, &mut lines);
    products(spec, number + 2, &mut lines);
    lines
}

/// What may differ from what was tested: bounds of the description said again, without marks.
fn field(spec: &Spec, number: usize, lines: &mut Vec<String>) {
    lines.push(format!("{number} Field of direct application"));
    lines.push(String::new());
    let mut rows = Vec::new();
    for part in spec.all_parts() {
        for one in part.always() {
            let (Ask::AtLeast(Amount::Length(length)) | Ask::AtMost(Amount::Length(length))) =
                one.ask
            else {
                continue;
            };
            let way = if matches!(one.ask, Ask::AtLeast(_)) {
                "may be increased but shall not be reduced"
            } else {
                "may be reduced but shall not be increased"
            };
            rows.push(vec![
                format!("{number}.{}", rows.len() + 1),
                format!(
                    "{}, {}",
                    part.title,
                    phrase(one.property).label.to_lowercase()
                ),
                format!("{} mm as tested; {way}", millimetres(length)),
            ]);
        }
    }
    rows.truncate(6);
    lines.extend(boxed(&[4, 34, 42], &rows, true));
    lines.push(String::new());
}

fn products(spec: &Spec, number: usize, lines: &mut Vec<String>) {
    lines.push(format!("{number} Products"));
    lines.push(String::new());
    let mut letters = 'a'..='z';
    for part in spec.all_parts() {
        if part.products.is_empty() {
            continue;
        }
        let letter = letters.next().unwrap();
        let words = format!("{}: {}.", part.title, makers(part, ", ", " and ", ""));
        lines.extend(paragraph(&format!("    {letter}) "), &words, 7, WIDTH));
        lines.push(String::new());
    }
}
