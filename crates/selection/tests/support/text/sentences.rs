//! A part of the construction in sentences, as a voice says them.

use super::super::spec::products::by_maker;
use super::super::spec::{Built, Part, Statement};
use super::amounts::Voice;
use super::lines::{capital, listed};
use super::phrases::{filled, phrase};

impl Voice {
    /// "Galv steel studs, min 3-5/8 in. (92 mm) wide, spaced max 24 in. (610 mm) o.c. Packing depth min 3 in. for the 1 Hr rating, ..."
    pub fn in_list(&self, part: &Part) -> String {
        let always: Vec<String> = part
            .always()
            .map(|one| filled(phrase(one.property).in_list, &self.ask(one)))
            .collect();
        let first = match (part.of, always.as_slice()) {
            ("", []) => String::new(),
            ("", phrases) => capital(&ended(phrases.join(", "))),
            (of, []) => ended(of.to_owned()),
            (of, phrases) => ended(format!("{of}, {}", phrases.join(", "))),
        };
        let cases = part.by_case();
        let cases = cases.iter().map(|cases| self.cases_in_list(cases));
        with_remarks(core::iter::once(first).chain(cases), part)
    }

    fn cases_in_list(&self, cases: &[&Statement]) -> String {
        let property = cases[0].property;
        let each: Vec<String> = cases
            .iter()
            .map(|one| format!("{}{}", self.case(one), self.when(one.when)))
            .collect();
        if property == "board.layers" {
            return format!("{}.", capital(&each.join(", ")));
        }
        format!("{} {}.", phrase(property).label, each.join(", "))
    }

    /// A bound of one case; layers are named with their number.
    fn case(&self, one: &Statement) -> String {
        let bound = self.ask(one);
        match one.property {
            "board.layers" if bound.ends_with("one") => format!("{bound} layer each side"),
            "board.layers" => format!("{bound} layers each side"),
            _ => bound,
        }
    }

    /// "The studs shall be not less than 3-5/8 in. (92 mm) wide and be spaced not more than 24 in. (610 mm) on center. ..."
    pub fn narrated(&self, part: &Part) -> String {
        let subject = subject(part);
        let mut sentences = Vec::new();
        if !part.of.is_empty() {
            sentences.push(capital(&format!(
                "{subject} shall be of {}.",
                small(part.of)
            )));
        }
        let always: Vec<&Statement> = part.always().collect();
        for some in always.chunks(2) {
            let phrases: Vec<String> = some
                .iter()
                .map(|one| filled(phrase(one.property).shall, &self.ask(one)))
                .collect();
            sentences.push(capital(&format!(
                "{subject} shall {}.",
                listed(&phrases, "and")
            )));
        }
        let cases = part.by_case();
        sentences.extend(cases.iter().map(|cases| self.cases_narrated(cases)));
        with_remarks(sentences.into_iter(), part)
    }

    fn cases_narrated(&self, cases: &[&Statement]) -> String {
        let property = cases[0].property;
        let each: Vec<String> = cases
            .iter()
            .map(|one| format!("{}{}", self.case(one), self.when(one.when)))
            .collect();
        let each = listed(&each, "and");
        if property == "board.layers" {
            return format!("The board shall consist of {each}.");
        }
        let label = phrase(property).label;
        format!("The {} shall be {each}.", small(label))
    }
}

/// The sentences with the part's remarks behind them.
fn with_remarks(sentences: impl Iterator<Item = String>, part: &Part) -> String {
    let remarks = part.remarks.iter().map(|remark| (*remark).to_owned());
    let all: Vec<String> = sentences
        .filter(|one| !one.is_empty())
        .chain(remarks)
        .collect();
    all.join(" ")
}

/// A sentence with its stop; an abbreviation at its end has one already.
fn ended(words: String) -> String {
    if words.ends_with('.') {
        words
    } else {
        words + "."
    }
}

/// The part as the subject of a sentence.
pub fn subject(part: &Part) -> String {
    format!("the {}", small(part.title))
}

/// The first letter small.
pub fn small(words: &str) -> String {
    let mut letters = words.chars();
    let first: String = letters
        .next()
        .into_iter()
        .flat_map(char::to_lowercase)
        .collect();
    if words.starts_with("Type X") || words.starts_with("Z-") {
        return words.to_owned();
    }
    first + letters.as_str()
}

/// "(As an alternate to Item 3A)", "(Optional)".
pub fn in_brackets(part: &Part, before: &str) -> Option<String> {
    match part.built {
        Built::Always => None,
        Built::InPlace => Some(format!("As an alternate to Item {before}")),
        Built::Optional => Some("Optional".to_owned()),
    }
}

/// "Vostrika Fibre Works: Vostmat 40, Vostmat 60; ..."
pub fn makers(part: &Part, between: &str, each: &str, quote: &str) -> String {
    let makers: Vec<String> = by_maker(&part.products)
        .iter()
        .map(|(maker, products)| {
            let quoted: Vec<String> = products
                .iter()
                .map(|one| format!("{quote}{one}{quote}"))
                .collect();
            format!("{maker}{between}{}", quoted.join(each))
        })
        .collect();
    makers.join("; ")
}
