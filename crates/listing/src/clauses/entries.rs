//! Entries of a data sheet to clauses: the label gives the unit and the property, the value how it is bounded and when.

use super::tables::{Heading, heading, rating_of, read_cell};
use super::{Around, Yield, read_sentences};
use crate::conditions::conditions;
use crate::layout::Flow;
use crate::model::{Condition, Expr};
use crate::naming::Subject;
use crate::outline::{Entry, name_of_label};
use crate::phrase::cell;
use crate::rules::Sentence;
use crate::sentences::sentences;

/// Reads one stretch of an entry's value.
pub(super) fn read(
    source: &str,
    entry: &Entry,
    around: &Around,
    subject: &mut Subject,
    found: &mut Yield,
) {
    found.covered.extend(entry.pieces());
    let label = Label {
        words: label_words(source, entry),
        entry,
    };
    let key = entry.key.map(|key| Condition {
        also: Vec::new(),
        words: key.of(source).to_owned(),
        span: key,
        expr: rating_of(key.of(source))
            .unwrap_or_else(|| Expr::Words(key.of(source).trim().to_owned())),
    });
    let flow = Flow::of(source, entry.value.iter().copied()).with_usual_units(around.usual_units);
    for range in sentences(flow.text()) {
        let words = flow.text().get(range.clone()).unwrap_or_default();
        let mut from = range.start;
        for part in words.split_inclusive(';') {
            let part_flow = piece(source, &flow, from, from + part.len());
            from += part.len();
            if !label.read(source, &part_flow, key.as_ref(), around, found) {
                read_sentences(source, &part_flow, around, subject, found);
            }
        }
    }
}

/// The words of the label, its unit left out.
fn label_words(source: &str, entry: &Entry) -> String {
    let words = entry
        .label
        .iter()
        .map(|piece| name_of_label(piece.of(source)));
    words.collect::<Vec<_>>().join(" ")
}

/// A stretch of a running text as a text of its own, without white space and stops around it.
fn piece(source: &str, flow: &Flow, from: usize, to: usize) -> Flow {
    const AROUND: [char; 4] = [' ', ';', ',', '.'];
    let words = flow.text().get(from..to).unwrap_or_default();
    let lead = words.len() - words.trim_start_matches(AROUND).len();
    // The stop of "max." is its own.
    let kept = words.trim_end_matches([' ', ';', ',']).len().max(lead);
    Flow::of(source, [flow.span(from + lead, from + kept)]).with_usual_units(flow.usual_units())
}

struct Label<'a> {
    words: String,
    entry: &'a Entry,
}

impl Label<'_> {
    /// What the label says of a value, with more words that stand before it.
    fn heading(&self, more: &str) -> Heading {
        let mut heading = heading(&format!("{} {more}", self.words)).requiring();
        heading.unit = Some(self.entry.unit);
        heading.second_unit = None;
        heading
    }

    fn holds(&self, words: &str) -> bool {
        cell(words, Some(self.entry.unit), None).is_some_and(|cell| !cell.goes_on)
    }

    /// Reads a part that is a value, alone or with its condition or the place that it is for; says whether it is one.
    fn read(
        &self,
        source: &str,
        part: &Flow,
        key: Option<&Condition>,
        around: &Around,
        found: &mut Yield,
    ) -> bool {
        let text = part.text();
        if self.holds(text) {
            read_cell(&self.heading(""), part, key, around, found);
            return true;
        }
        if let Some((condition, value)) = self.conditioned(source, part) {
            let both = match key {
                Some(key) => key.clone().and(condition),
                None => condition,
            };
            read_cell(&self.heading(""), &value, Some(&both), around, found);
            return true;
        }
        // `onto concrete, 25 minimum`
        let Some(comma) = text.rfind(", ") else {
            return false;
        };
        let (before, value) = (text.get(..comma), piece(source, part, comma, text.len()));
        let plain = before.filter(|words| !words.contains(|c: char| c.is_ascii_digit()));
        let Some(before) = plain.filter(|_| self.holds(value.text())) else {
            return false;
        };
        read_cell(&self.heading(before), &value, key, around, found);
        true
    }

    /// A value with one condition before or after it: `min. 125 for 60 and 90 minutes`, `in joints wider than 50 mm, 40 minimum`.
    fn conditioned(&self, source: &str, part: &Flow) -> Option<(Condition, Flow)> {
        let text = part.text();
        let sentence = Sentence::new(part, 0..text.len());
        let conditions = conditions(&sentence).found;
        let [only] = conditions.as_slice() else {
            return None;
        };
        let span = sentence.tokens_span(only.first, only.last);
        let value = if span.start() == 0 {
            piece(source, part, span.end(), text.len())
        } else if text.get(span.end()..)?.trim().is_empty() {
            piece(source, part, 0, span.start())
        } else {
            return None;
        };
        let condition = Condition {
            also: Vec::new(),
            words: span.of(text).to_owned(),
            span: sentence.source(span),
            expr: only.expr.clone(),
        };
        self.holds(value.text()).then_some((condition, value))
    }
}
