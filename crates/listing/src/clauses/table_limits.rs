//! What a sentence anywhere in the document says of columns of a table that it names by its mark: "Depths of sealant and backing shall be not less than those
//! of Table 1", "Minimum packing depth as Table A".
//!
//! The sentence must say nothing else: with a number in it ("half of those of Table 1"), or words of some joints only ("in floors"), it limits nothing here.
//! What it would misread: a second table of the same mark.

use super::unmarked_values::unmarked_values;
use crate::layout::Flow;
use crate::model::{Relation, Span};
use crate::outline::{OutlineItem, Paragraph};
use crate::rules::qualifier;
use crate::sentences::sentences;

/// The limits that a document sets for columns of its tables.
#[derive(Debug, Default)]
pub(crate) struct TableLimits {
    of_columns: Vec<TableLimit>,
    /// How values without a sign of their own are meant.
    unmarked: Option<Relation>,
}

/// A limit of some columns of one table.
#[derive(Debug, PartialEq, Eq)]
struct TableLimit {
    /// `table 1`
    table: String,
    /// The names of the columns, each with what is measured: "depth of sealant".
    columns: Vec<String>,
    relation: Relation,
}

/// What columns measure, in both numbers.
const MEASURES: &[&str] = &[
    "depth",
    "depths",
    "thickness",
    "thicknesses",
    "width",
    "widths",
    "spacing",
    "spacings",
    "lap",
    "laps",
    "overlap",
    "overlaps",
    "density",
    "densities",
    "compression",
    "length",
    "lengths",
];

impl TableLimits {
    /// The limits that sentences of items set, none of which is one of several or for some joints only.
    pub(crate) fn of<'p>(text: &str, items: impl Iterator<Item = &'p OutlineItem>) -> Self {
        let texts = items.flat_map(|item| {
            let led = |at: usize| {
                let before = at.checked_sub(1).and_then(|at| item.paragraphs.get(at));
                let last = before.and_then(|before| before.pieces().last().copied());
                last.is_some_and(|piece| piece.of(text).trim_end().ends_with(':'))
            };
            let paragraphs = item.paragraphs.iter().enumerate();
            paragraphs.filter_map(move |(at, paragraph)| match paragraph {
                // What words lead to may be for some joints only.
                Paragraph::Text(pieces) => Some(pieces).filter(|_| !led(at)),
                _ => None,
            })
        });
        let limits = texts.flat_map(|pieces| limits_in(text, pieces));
        Self {
            of_columns: limits.collect(),
            unmarked: unmarked_values(text),
        }
    }

    /// How values without a sign of their own are meant, where the document says it.
    pub(super) const fn unmarked(&self) -> Option<Relation> {
        self.unmarked
    }

    /// How the column under a heading is limited in the table whose caption begins with its mark. Of two limits that differ, none is.
    pub(super) fn of_column(
        &self,
        caption: &str,
        is_named: impl Fn(&str) -> bool,
    ) -> Option<Relation> {
        let table = mark(caption)?;
        let own = self.of_columns.iter().filter(|limit| limit.table == table);
        let mut relations = own
            .filter(|limit| limit.columns.iter().any(|name| is_named(name)))
            .map(|limit| limit.relation);
        let first = relations.next()?;
        relations.all(|other| other == first).then_some(first)
    }
}

fn limits_in(text: &str, pieces: &[Span]) -> Vec<TableLimit> {
    let flow = Flow::of(text, pieces.iter().copied());
    let lower = flow.lower();
    if !lower.contains("table") {
        return Vec::new();
    }
    let sentences = sentences(flow.text()).into_iter();
    sentences
        .filter_map(|range| limit(lower.get(range)?))
        .collect()
}

/// The mark of a table that a caption begins with: `table 1` of "Table 1   Sealant and backing".
fn mark(caption: &str) -> Option<String> {
    let mut words = caption.split_whitespace();
    let named = words.next()?.eq_ignore_ascii_case("table");
    let mark = words.next().filter(|_| named)?;
    let mark = mark.trim_matches(|c: char| !c.is_alphanumeric());
    is_mark(mark).then(|| format!("table {}", mark.to_lowercase()))
}

fn is_mark(word: &str) -> bool {
    const LONGEST: usize = 5;
    let counts = word.contains(|c: char| c.is_ascii_digit()) || word.chars().count() == 1;
    counts && word.len() <= LONGEST
}

/// The limit that a sentence in small letters sets for columns of one table.
fn limit(sentence: &str) -> Option<TableLimit> {
    let (said, table) = sentence.trim().rsplit_once(" table ")?;
    let table = table.trim_end_matches(['.', ' ']);
    let table = table
        .strip_suffix(" below")
        .or_else(|| table.strip_suffix(" above"))
        .unwrap_or(table);
    if !is_mark(table) || said.contains(|c: char| c.is_ascii_digit() || ";:(".contains(c)) {
        return None;
    }
    let words: Vec<&str> = said
        .split(|c: char| !c.is_alphanumeric() && c != '-')
        .filter(|word| !word.is_empty())
        .collect();
    let (names, relation) = limited_as_in(&words).or_else(|| behind_qualifier(&words))?;
    Some(TableLimit {
        table: format!("table {table}"),
        columns: columns(names)?,
        relation,
    })
}

/// "names shall be not less than those given in": the names, and the limit.
fn limited_as_in<'w>(words: &'w [&'w str]) -> Option<(&'w [&'w str], Relation)> {
    const VERBS: &[&str] = &["shall", "must", "should", "is", "are", "to", "be"];
    let verb = words.iter().position(|word| VERBS.contains(word))?;
    let (names, said) = words.split_at_checked(verb)?;
    let said: Vec<&str> = said
        .iter()
        .copied()
        .filter(|word| !VERBS.contains(word))
        .collect();
    let (relation, behind) = match said.as_slice() {
        [
            "not" | "no",
            "less" | "smaller" | "lower",
            "than",
            behind @ ..,
        ]
        | ["at", "least", behind @ ..]
        | ["not", "below" | "under", behind @ ..]
        | ["equal", "or", "exceed", behind @ ..] => (Relation::AtLeast, behind),
        [
            "not" | "no",
            "more" | "greater" | "larger" | "higher",
            "than",
            behind @ ..,
        ]
        | ["at", "most", behind @ ..]
        | [
            "not",
            "above" | "over" | "exceed" | "exceeding",
            behind @ ..,
        ] => (Relation::AtMost, behind),
        _ => return None,
    };
    refers(behind).then_some((names, relation))
}

/// "minimum names as given in": the names, and the limit.
fn behind_qualifier<'w>(words: &'w [&'w str]) -> Option<(&'w [&'w str], Relation)> {
    let words = words.strip_prefix(&["the"]).unwrap_or(words);
    let (first, rest) = words.split_first()?;
    let relation = qualifier(first)?;
    let end = rest.iter().position(|word| {
        matches!(
            *word,
            "as" | "see" | "is" | "are" | "per" | "in" | "from" | "to" | "shall"
        )
    })?;
    let (names, behind) = rest.split_at_checked(end)?;
    let limits = matches!(relation, Relation::AtLeast | Relation::AtMost);
    (limits && refers(behind)).then_some((names, relation))
}

/// Whether words only lead to a table's mark: "those given in", "as per".
fn refers(words: &[&str]) -> bool {
    const LEADING: &[&str] = &[
        "those",
        "that",
        "the",
        "value",
        "values",
        "figure",
        "figures",
        "given",
        "stated",
        "shown",
        "listed",
        "set",
        "out",
        "required",
        "specified",
        "tabulated",
        "as",
        "per",
        "of",
        "in",
        "by",
        "from",
        "to",
        "see",
        "is",
        "are",
        "shall",
        "be",
    ];
    words
        .iter()
        .all(|word| LEADING.contains(word) || MEASURES.contains(word))
}

/// The names of columns, each with what is measured: "depths of sealant" and "depths backing" of "depths of sealant and backing".
fn columns(names: &[&str]) -> Option<Vec<String>> {
    const MOST_WORDS: usize = 9;
    /// Words by which a sentence speaks of some joints only, or of a part of a measure.
    const CONFINING: &[&str] = &[
        "in",
        "for",
        "if",
        "where",
        "when",
        "with",
        "at",
        "on",
        "under",
        "half",
        "third",
        "quarter",
        "otherwise",
        "except",
        "but",
        "or",
        "not",
        "no",
        "remaining",
        "other",
        "any",
        "total",
    ];
    let measured: Vec<&&str> = names
        .iter()
        .filter(|word| MEASURES.contains(word))
        .collect();
    let confined = |word: &&str| CONFINING.contains(word) || qualifier(word).is_some();
    let [measure] = measured.as_slice() else {
        return None;
    };
    if names.iter().any(confined) {
        return None;
    }
    let parts = names.split(|word| *word == "and");
    let own_names = parts.map(|part| {
        let part = part.join(" ");
        let own = part.split(' ').any(|word| MEASURES.contains(&word));
        if own {
            part
        } else {
            format!("{measure} {part}")
        }
    });
    (names.len() <= MOST_WORDS).then(|| own_names.collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(sentence: &str) -> Option<(String, Vec<String>, Relation)> {
        limit(sentence).map(|limit| (limit.table, limit.columns, limit.relation))
    }

    #[test]
    fn sentences_that_limit_columns_of_a_table() {
        for (sentence, columns, relation) in [
            (
                "depths of sealant and backing shall be not less than those of table 1.",
                &["depths of sealant", "depths backing"][..],
                Relation::AtLeast,
            ),
            (
                "the sealant depth shall not be less than that given in table 1.",
                &["the sealant depth"],
                Relation::AtLeast,
            ),
            (
                "packing depth is to be at least as stated in table 1 below.",
                &["packing depth"],
                Relation::AtLeast,
            ),
            (
                "minimum depth of wool as table 1.",
                &["depth of wool"],
                Relation::AtLeast,
            ),
            (
                "spacing of clips must not exceed the values of table 1",
                &["spacing of clips"],
                Relation::AtMost,
            ),
        ] {
            let expected = (
                "table 1".to_owned(),
                columns.iter().map(|name| (*name).to_owned()).collect(),
                relation,
            );
            assert_eq!(said(sentence), Some(expected), "{sentence}");
        }
    }

    #[test]
    fn sentences_that_say_more_limit_nothing() {
        for sentence in [
            "depths shall be not less than half of those of table 1.",
            "depths shall be not less than 80 % of those of table 1.",
            "in floors depths shall be not less than those of table 1.",
            "depths of sealant shall be as table 1.",
            "depths may be less than those of table 1.",
            "depths shall be less than those of table 1.",
            "depths shall be not less than those of table 1 of the annex.",
            "depths and densities shall be not less than those of table 1.",
            "joints not less than those of table 1.",
            "minimum and maximum depth as table 1.",
            "the total depth of sealant and backing shall be not less than that of table 1.",
        ] {
            assert_eq!(said(sentence), None, "{sentence}");
        }
    }
}
