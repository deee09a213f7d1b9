//! What a document says that its values without a sign are: "Unmarked values are minimums", "No mark before a value: smallest value accepted."
//!
//! One sentence must say it, of values, and of one limit alone. What it would misread: a sentence that is of some of the tables only and doesn't say which.

use crate::model::Relation;

/// How values without a sign of their own are meant, where the document says it once.
pub(super) fn unmarked_values(text: &str) -> Option<Relation> {
    let mut found = paragraphs(text).flat_map(|paragraph| {
        paragraph
            .split(['.', ';'])
            .filter_map(said)
            .collect::<Vec<_>>()
    });
    let first = found.next()?;
    found.all(|other| other == first).then_some(first)
}

/// The paragraphs that may say it, in small letters and without line breaks.
fn paragraphs(text: &str) -> impl Iterator<Item = String> {
    text.split("\n\n").filter_map(|paragraph| {
        let lower = paragraph.to_lowercase();
        let unmarked = lower.contains("mark") || lower.contains("sign");
        unmarked.then(|| lower.split_whitespace().collect::<Vec<_>>().join(" "))
    })
}

/// What a sentence says of unmarked values.
fn said(sentence: &str) -> Option<Relation> {
    const UNMARKED: &[&str] = &[
        "unmarked",
        "no mark",
        "no sign",
        "without a mark",
        "without mark",
        "without a sign",
        "without sign",
        "not marked",
        "unless marked",
    ];
    const SOME: &[&str] = &["if", "when", "except", "not", "nor", "table", "some"];
    let words = || {
        sentence
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| !word.is_empty())
    };
    let says = |among: &[&str]| words().any(|word| among.contains(&word));
    let unmarked = UNMARKED.iter().any(|mark| sentence.contains(mark));
    let of_values = says(&[
        "value",
        "values",
        "figure",
        "figures",
        "dimension",
        "dimensions",
    ]);
    let least = says(&["smallest", "least", "minimum", "minimums", "minima", "min"]);
    let most = says(&[
        "largest", "greatest", "maximum", "maximums", "maxima", "max",
    ]);
    let denied = words().any(|word| SOME.contains(&word)) && !sentence.contains("not marked");
    match (unmarked && of_values && !denied, least, most) {
        (true, true, false) => Some(Relation::AtLeast),
        (true, false, true) => Some(Relation::AtMost),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_sentence_says_what_unmarked_values_are() {
        for said in [
            "Values are for inspection. No mark in front of a value of column F1: smallest\nvalue accepted.",
            "Unmarked values are minimums.",
            "Figures without a sign are least values.",
        ] {
            assert_eq!(unmarked_values(said), Some(Relation::AtLeast), "{said}");
        }
        assert_eq!(
            unmarked_values("Unless marked otherwise values are maximum."),
            Some(Relation::AtMost)
        );
        for silent in [
            "Mark each joint at least every 10 ft.",
            "Unmarked values are minimum or maximum as the drawing shows.",
            "If unmarked, values are minimum in floors.",
            "Unmarked values are minimum.\n\nValues without a sign are maximum.",
            "Values are minimum.",
        ] {
            assert_eq!(unmarked_values(silent), None, "{silent}");
        }
    }
}
