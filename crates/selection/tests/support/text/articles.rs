//! Sentences under articles.

use super::super::spec::{Built, Spec};
use super::amounts::{First, Voice, hours};
use super::lines::paragraph;
use super::sentences::{makers, small};

const VOICE: Voice = Voice {
    first: First::Inches,
    at_least: "no less than",
    at_most: "no more than",
    nominal: "nominal",
    hour: "hour",
    percent: "percent",
};

const WIDTH: usize = 72;

pub fn lines(spec: &Spec) -> Vec<String> {
    let mut lines = vec![
        "ONDRASTEL PROVING HOUSE                         REGISTER OF JOINTS".to_owned(),
        format!(
            "                                                     {}",
            spec.designation()
        ),
        String::new(),
        "Proved to UL 2079 in October 2003".to_owned(),
        format!("Rating of the joint: {}", hours(spec.ratings, "hours")),
        format!("Width of the joint: not over {}", VOICE.length(spec.width)),
        format!(
            "Movement: Class {}; {} percent in compression, {} percent in extension",
            spec.movement.class, spec.movement.compression, spec.movement.extension
        ),
        String::new(),
    ];
    let mut number = 0;
    for part in &spec.parts {
        number += 1;
        lines.push(format!("Art. {number}. {}.", part.title));
        lines.push(String::new());
        let letters: Vec<char> = ('a'..='z').collect();
        for (at, (one, replaced)) in part.in_one_row().into_iter().enumerate() {
            let (letter, replaced) = (letters[at], letters[replaced]);
            let built = match one.built {
                Built::Always => String::new(),
                Built::Optional => format!("Where wanted, {} may be added. ", small(one.title)),
                Built::InPlace => format!("As an alternate to Art. {number}({replaced}): "),
            };
            let words = format!("{built}{}", VOICE.narrated(one));
            lines.extend(paragraph(&format!("   ({letter}) "), &words, 0, WIDTH));
            lines.push(String::new());
        }
    }
    materials(spec, number + 1, &mut lines);
    lines
}

fn materials(spec: &Spec, number: usize, lines: &mut Vec<String>) {
    lines.push(format!("Art. {number}. Materials that were proved."));
    lines.push(String::new());
    let mut letters = 'a'..='z';
    for part in spec.all_parts() {
        if part.products.is_empty() {
            continue;
        }
        let letter = letters.next().unwrap();
        let words = format!("{}: {}.", part.title, makers(part, ", ", " or ", "\""));
        lines.extend(paragraph(&format!("   ({letter}) "), &words, 6, WIDTH));
        lines.push(String::new());
    }
}
