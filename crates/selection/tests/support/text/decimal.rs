//! Metric first, decimal numbers, makers in notes.

use super::super::spec::{Built, Part, Spec};
use super::amounts::{First, Voice, hours};
use super::lines::paragraph;
use super::sentences::makers;

const VOICE: Voice = Voice {
    first: First::Metric,
    at_least: "not less than",
    at_most: "not more than",
    nominal: "nominal",
    hour: "h",
    percent: "%",
};

const WIDTH: usize = 90;

pub fn lines(spec: &Spec) -> Vec<String> {
    let mut lines = vec![
        "Ondrastel Proving House | Joint Systems Volume".to_owned(),
        String::new(),
        format!("System {}", spec.designation()),
        String::new(),
        "Standard:               UL 2079".to_owned(),
        format!("Assembly rating:        {}", hours(spec.ratings, "h")),
        format!("Joint width:            max {}", VOICE.length(spec.width)),
        format!(
            "Movement:               Class {}, {} % compression, {} % extension",
            spec.movement.class, spec.movement.compression, spec.movement.extension
        ),
        String::new(),
    ];
    let mut notes = Vec::new();
    for (at, part) in spec.parts.iter().enumerate() {
        item(part, &format!("{}", at + 1), 0, &mut notes, &mut lines);
    }
    lines.extend(notes);
    lines
}

fn item(
    part: &Part,
    number: &str,
    set_in: usize,
    notes: &mut Vec<String>,
    lines: &mut Vec<String>,
) {
    let note = if part.products.is_empty() {
        String::new()
    } else {
        let note = format!("[{}]", notes.len() + 1);
        notes.push(format!("{note}  {}.", makers(part, ": ", ", ", "")));
        format!(" {note}")
    };
    let built = match (part.built, number.rsplit_once('.')) {
        (Built::Always, _) => String::new(),
        (Built::Optional, _) => " (optional)".to_owned(),
        (Built::InPlace, Some((outer, last))) => {
            let before: usize = last.parse().unwrap();
            format!(" (alternate to {outer}.{})", before - 1)
        }
        (Built::InPlace, None) => panic!("nothing stands before {number}"),
    };
    let head = format!("{}{number}  ", " ".repeat(set_in));
    let words = format!("{}{note}{built}. {}", part.title, VOICE.in_list(part));
    lines.extend(paragraph(&head, &words, set_in + 6, WIDTH));
    lines.push(String::new());
    for (at, inner) in part.within.iter().enumerate() {
        item(
            inner,
            &format!("{number}.{}", at + 1),
            set_in + 2,
            notes,
            lines,
        );
    }
}
