//! Step 5 put together: an item's sentences and tables become clauses.

mod against_nature;
mod bounds;
mod carried;
mod cells;
mod classes;
mod column_limits;
mod confine;
mod context;
mod counter_case;
mod denied_list;
mod draft;
mod elliptic;
mod entries;
mod general_notes;
mod governing;
mod introduced;
mod kind_clauses;
mod kinds;
mod last_case;
mod lead_in;
mod left_out;
mod leftover;
mod limit_heads;
mod named;
mod nested;
mod other_subject;
mod paragraphs;
mod prose;
mod reference;
mod sentence;
mod sorts;
mod table_limits;
mod tables;
mod told;
mod unclaimed;
mod unmarked_values;

use std::sync::Arc;

pub(crate) use self::column_limits::ColumnLimits;
use self::introduced::Introduced;
use self::limit_heads::LimitHeads;
pub(crate) use self::table_limits::TableLimits;
use crate::conditions::RunningHead;
use crate::layout::{Flow, UsualUnits};
use crate::model::Span;
use crate::naming::Subject;
use crate::rules::Sentence;

pub(crate) use carried::{Carried, carried, carried_by_title};
pub(crate) use classes::{MINUTES, level_parts};
pub(crate) use confine::confine;
pub(crate) use denied_list::denies_below;
pub(crate) use draft::{Draft, Reach, Yield, holds_always, limit};
pub(crate) use introduced::FirstSaid;
pub(crate) use limit_heads::heads as limit_alone;
pub(crate) use named::{Key, KeyedRow, Ordinary, keyed_rows, read_row};
pub(crate) use other_subject::other_subjects;
pub(crate) use paragraphs::{leading_sentence, read};

/// What stands around an item's paragraphs.
#[derive(Debug, Clone, Default)]
pub(crate) struct Around {
    /// The item's path; empty before the first item.
    pub(crate) item: String,
    /// What the item is about.
    pub(crate) subject: Subject,
    /// A qualifier that the item around carries over its list: "Minimum depth:".
    pub(crate) carried: Option<Carried>,
    /// The sentence that leads to it, where it is a table without a title: "Depths (minimum, mm):" over "TABLE 1".
    pub(crate) led_to: String,
    /// Whether it stands in a list of what must not be: "Do not:".
    pub(crate) denied: bool,
    /// The options that the whole item belongs to.
    pub(crate) options: Vec<String>,
    /// The configuration that the paragraph is headed with, which is among the options.
    pub(crate) headed: Option<String>,
    /// The units that the document states for all its numbers.
    pub(crate) usual_units: UsualUnits,
    /// Where the item's marker and title stand.
    pub(crate) heading: Span,
    /// Where in the document each word stands first.
    pub(crate) first_said: Arc<FirstSaid>,
    /// The values of the document that stand in columns of limits.
    pub(crate) column_limits: Arc<ColumnLimits>,
    /// The limits that sentences of the document set for columns of its tables.
    pub(crate) table_limits: Arc<TableLimits>,
    /// The words that the document writes small.
    pub(crate) ordinary: Arc<Ordinary>,
    /// The letters by which the head of the document names configurations.
    pub(crate) configuration_letters: Arc<[String]>,
    /// The labels by which its tables name variants.
    pub(crate) variants: Arc<[String]>,
}

impl Around {
    /// The same in a list that words lead to.
    fn under(&self, lead: Option<Carried>) -> Self {
        Self {
            carried: lead.or(self.carried),
            ..self.clone()
        }
    }

    /// The same under the configuration of a sentence in place of the one that its paragraph is headed with.
    fn headed_with(&self, configuration: Option<String>) -> Self {
        let mut own = self.clone();
        own.options
            .retain(|option| Some(option) != self.headed.as_ref());
        own.options.extend(configuration.clone());
        own.headed = configuration;
        own
    }
}

fn read_text(
    source: &str,
    pieces: &[Span],
    around: &Around,
    subject: &mut Subject,
    found: &mut Yield,
) {
    let runs = named::runs(source, pieces, &around.ordinary);
    let runs = runs.unwrap_or_else(|| vec![named::Run::Text(pieces.to_vec())]);
    for run in runs {
        match run {
            named::Run::Entries(span, listed) => {
                named::push_list(source, span, listed, around, subject, found);
            }
            named::Run::Text(pieces) => {
                let flow = Flow::of(source, pieces)
                    .with_usual_units(around.usual_units)
                    .with_variants(around.variants.clone());
                if !tables::keyed_list(source, &flow, around, found) {
                    read_sentences(source, &flow, around, subject, found);
                }
            }
        }
    }
}

fn read_sentences(
    source: &str,
    flow: &Flow,
    around: &Around,
    subject: &mut Subject,
    found: &mut Yield,
) {
    let mut introduced = Introduced::default();
    let heads = LimitHeads::of(flow);
    let mut running = around.headed.clone().map(RunningHead::new);
    let notes = general_notes::begin(source, flow, around.heading);
    let mut of_notes = Subject {
        title: "notes".to_owned(),
        parts: around.subject.parts.clone(),
        ..Subject::default()
    };
    let among_notes = Around {
        subject: of_notes.clone(),
        ..around.clone()
    };
    for range in crate::sentences::sentences(flow.text()) {
        let words = flow.text().get(range.clone()).unwrap_or_default();
        let span = flow.span(range.start, range.end);
        let listed = named::listed(words, &around.ordinary)
            .filter(|listed| named::stand_in_lines(from_line_start(source, span), listed));
        if let Some(listed) = listed {
            named::push_list(source, span, listed, around, subject, found);
        } else {
            let own = running.as_mut().map(|running| {
                let sentence = Sentence::new(flow, range.clone());
                around.headed_with(running.of(&sentence))
            });
            let is_note = notes.is_some_and(|notes| notes <= range.start);
            // What one note is about the next needn't be.
            of_notes.before = None;
            let (around, subject) = if is_note {
                (&among_notes, &mut of_notes)
            } else {
                (own.as_ref().unwrap_or(around), &mut *subject)
            };
            let without = left_out::without_own_option(around, words);
            let set = sentence::Set {
                around: without.as_ref().unwrap_or(around),
                heads: &heads,
            };
            sentence::read(flow, range, &set, subject, &mut introduced, found);
            named::push_within(span, words, around, subject, found);
        }
    }
}

/// A stretch of text with what stands before it on its first line.
fn from_line_start(source: &str, span: Span) -> &str {
    let before = source.get(..span.start()).unwrap_or_default();
    let start = before.rfind('\n').map_or(0, |end| end + 1);
    source.get(start..span.end()).unwrap_or_default()
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
