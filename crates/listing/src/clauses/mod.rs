//! Step 5 put together: an item's sentences and tables become clauses.

mod classes;
mod draft;
mod leftover;
mod lead_in;
mod named;
mod reference;
mod sentence;
mod tables;

use crate::layout::Flow;
use crate::model::Span;
use crate::naming::Subject;
use crate::outline::Paragraph;

pub(crate) use draft::{Draft, Yield};

/// What stands around an item's paragraphs.
#[derive(Debug, Clone, Default)]
pub(crate) struct Around {
    /// The item's path; empty before the first item.
    pub(crate) item: String,
    /// What the item is about.
    pub(crate) subject: Subject,
    /// The options that the whole item belongs to.
    pub(crate) options: Vec<String>,
}

/// Reads an item's paragraphs.
pub(crate) fn read(source: &str, paragraphs: &[Paragraph], around: &Around) -> Yield {
    let mut found = Yield::default();
    let mut subject = around.subject.clone();
    for paragraph in paragraphs {
        match paragraph {
            Paragraph::Text(pieces) => read_text(source, pieces, around, &mut subject, &mut found),
            Paragraph::Table(table) => tables::read(source, table, around, &mut found),
        }
    }
    found
}

fn read_text(source: &str, pieces: &[Span], around: &Around, subject: &mut Subject, found: &mut Yield) {
    let flow = Flow::of(source, pieces.iter().copied());
    for range in crate::sentences::sentences(flow.text()) {
        let words = flow.text().get(range.clone()).unwrap_or_default();
        if let Some(names) = named::products(words) {
            named::push(flow.span(range.start, range.end), names, around, subject, found);
        } else {
            sentence::read(&flow, range, around, subject, found);
        }
    }
}

/// Words that stand in no item and no head.
pub(crate) fn words_of_no_item(span: Span, words: &str) -> Draft {
    Draft {
        span,
        property: draft::local_property("", words),
        component: String::new(),
        attribute: "words".to_owned(),
        requirement: crate::model::Requirement::Prose,
        condition: None,
        options: Vec::new(),
        read_by: vec!["left as words".to_owned()],
        confidence: crate::model::Confidence::Prose,
    }
}
