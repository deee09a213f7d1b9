//! Inches first, numbered items with letters and numbers under them, makers in capitals.

use super::super::spec::products::by_maker;
use super::super::spec::{Part, Spec};
use super::amounts::{First, Voice, hours};
use super::lines::paragraph;
use super::sentences::in_brackets;

const VOICE: Voice = Voice {
    first: First::Inches,
    at_least: "min",
    at_most: "max",
    nominal: "nominal",
    hour: "Hr",
    percent: "percent",
};

const WIDTH: usize = 78;

pub fn lines(spec: &Spec) -> Vec<String> {
    let mut lines = vec![
        "ONDRASTEL PROVING HOUSE -- Directory of Joint Systems".to_owned(),
        "=".repeat(WIDTH),
        String::new(),
        format!(
            "                          System No. {}",
            spec.designation()
        ),
        "                           September 14, 2015".to_owned(),
        String::new(),
        "                          STANDARD -- UL 2079".to_owned(),
        format!(
            "              ASSEMBLY RATINGS -- {}",
            hours(spec.ratings, "Hr")
        ),
        format!("         JOINT WIDTH -- Max {}", VOICE.length(spec.width)),
        format!(
            "      CLASS {} MOVEMENT -- {} Percent Compression",
            spec.movement.class, spec.movement.compression
        ),
        format!(
            "      CLASS {} MOVEMENT -- {} Percent Extension",
            spec.movement.class, spec.movement.extension
        ),
        String::new(),
    ];
    for (at, part) in spec.parts.iter().enumerate() {
        item(part, &format!("{}", at + 1), ".", 0, None, &mut lines);
        let mut letters = 'A'..='Z';
        let mut base = String::new();
        let mut others = 0;
        for inner in &part.within {
            let path = format!("{}{base}", at + 1);
            match in_brackets(inner, &path).filter(|_| !base.is_empty()) {
                Some(words) if words.starts_with("As") => {
                    others += 1;
                    item(
                        inner,
                        &format!("{base}{others}"),
                        ".",
                        6,
                        Some(&words),
                        &mut lines,
                    );
                }
                words => {
                    base = letters.next().unwrap().to_string();
                    others = 0;
                    item(inner, &base, ".", 3, words.as_deref(), &mut lines);
                }
            }
        }
    }
    lines.push("* Bearing the mark of the Ondrastel Directory.".to_owned());
    lines
}

fn item(
    part: &Part,
    marker: &str,
    dot: &str,
    set_in: usize,
    brackets: Option<&str>,
    lines: &mut Vec<String>,
) {
    let star = if part.products.is_empty() { "" } else { "*" };
    let brackets = brackets.map_or_else(String::new, |words| format!("({words}) -- "));
    let head = format!("{}{marker}{dot} ", " ".repeat(set_in));
    let words = format!(
        "{}{star} -- {brackets}{}",
        part.title.to_uppercase(),
        VOICE.in_list(part)
    );
    lines.extend(paragraph(&head, &words, set_in + 3, WIDTH));
    lines.push(String::new());
    for (maker, products) in by_maker(&part.products) {
        let words = format!("{} -- {}", maker.to_uppercase(), products.join(", "));
        lines.extend(paragraph(
            &" ".repeat(set_in + 3),
            &words,
            set_in + 6,
            WIDTH,
        ));
    }
    if !part.products.is_empty() {
        lines.push(String::new());
    }
    // What is described under a part of a part.
    for (at, inner) in part.within.iter().enumerate().filter(|_| set_in > 0) {
        item(
            inner,
            &format!("{marker}{}", at + 1),
            ".",
            set_in + 3,
            None,
            lines,
        );
    }
}
