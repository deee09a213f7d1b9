//! Notes of a drawing, in capitals.

use super::super::spec::{Built, Part, Spec};
use super::amounts::{First, Voice, hours};
use super::lines::paragraph;
use super::sentences::makers;

const VOICE: Voice = Voice {
    first: First::Inches,
    at_least: "min.",
    at_most: "max.",
    nominal: "nom.",
    hour: "hr",
    percent: "%",
};

const WIDTH: usize = 84;

pub fn lines(spec: &Spec) -> Vec<String> {
    let mut lines = vec![
        "ONDRASTEL PROVING HOUSE".to_owned(),
        format!(
            "DETAIL {}    {}",
            spec.designation(),
            spec.kind.title().to_uppercase()
        ),
        "TESTED TO UL 2079".to_owned(),
        format!("ASSEMBLY RATING: {}", hours(spec.ratings, "HR")),
        format!(
            "JOINT WIDTH: MAX. {}",
            VOICE.length(spec.width).to_uppercase()
        ),
        format!(
            "MOVEMENT: CLASS {}, {}% COMPRESSION, {}% EXTENSION",
            spec.movement.class, spec.movement.compression, spec.movement.extension
        ),
        String::new(),
        "NOTES".to_owned(),
        String::new(),
    ];
    let mut before = 0;
    let row = spec.parts.iter().flat_map(|part| {
        let row = part.in_one_row();
        let first = before + 1;
        before += row.len();
        row.into_iter()
            .map(move |(one, replaced)| (one, first + replaced))
    });
    for (at, (part, replaced)) in row.enumerate() {
        let number = at + 1;
        let built = match part.built {
            Built::Always => String::new(),
            Built::Optional => " (optional)".to_owned(),
            Built::InPlace => format!(" (alternate to note {replaced})"),
        };
        let products = if part.products.is_empty() {
            String::new()
        } else {
            format!(" {}.", makers(part, ": ", ", ", ""))
        };
        let words = format!("{}{built}: {}", part.title, words(part));
        let words = words.to_uppercase() + &products;
        lines.extend(paragraph(&format!("{number}. "), &words, 4, WIDTH));
        lines.push(String::new());
    }
    lines
}

fn words(part: &Part) -> String {
    VOICE.in_list(part)
}
