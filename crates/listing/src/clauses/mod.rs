//! Step 5 put together: an item's sentences and tables become clauses.

mod against_nature;
mod bounds;
mod carried;
mod cells;
mod classes;
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
mod leftover;
mod limit_heads;
mod named;
mod nested;
mod other_subject;
mod prose;
mod reference;
mod sentence;
mod sorts;
mod tables;
mod told;
mod unclaimed;

use std::sync::Arc;

use self::introduced::Introduced;
use self::limit_heads::LimitHeads;
use self::nested::Lead;
use crate::conditions::{
    Place, RunningHead, headed_configuration, headed_variant, heads, heads_list,
};
use crate::layout::{Flow, LIST_SIGNS, UsualUnits};
use crate::model::{Condition, Relation, Span};
use crate::naming::Subject;
use crate::outline::{Paragraph, Table};
use crate::rules::{Sentence, qualifier};

pub(crate) use carried::{Carried, carried, carried_by_title};
pub(crate) use classes::{MINUTES, level_parts};
pub(crate) use confine::confine;
pub(crate) use denied_list::denies_below;
pub(crate) use draft::{Draft, Reach, Yield, holds_always, limit};
pub(crate) use introduced::FirstSaid;
pub(crate) use limit_heads::heads as limit_alone;
pub(crate) use named::{Key, KeyedRow, Ordinary, keyed_rows, read_row};
pub(crate) use other_subject::other_subjects;

/// What stands around an item's paragraphs.
#[derive(Debug, Clone, Default)]
pub(crate) struct Around {
    /// The item's path; empty before the first item.
    pub(crate) item: String,
    /// What the item is about.
    pub(crate) subject: Subject,
    /// A qualifier that the item around carries over its list: "Minimum depth:".
    pub(crate) carried: Option<Carried>,
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
    /// The words that the document writes small.
    pub(crate) ordinary: Arc<Ordinary>,
    /// The letters by which the head of the document names configurations.
    pub(crate) configuration_letters: Arc<[String]>,
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

/// Reads an item's paragraphs.
pub(crate) fn read(source: &str, paragraphs: &[Paragraph], around: &Around) -> Yield {
    let mut found = Yield::default();
    let mut subject = around.subject.clone();
    let mut caption = if around.item.starts_with("Table ") {
        format!("{} {}", around.item, around.subject.title)
    } else {
        String::new()
    };
    let mut lead = None;
    let mut denied = false;
    let mut headed: Option<String> = None;
    let mut list: Option<Condition> = None;
    let mut variant: Option<(Condition, usize)> = None;
    let mut over: Option<Lead> = None;
    let fields = read_fields(source, paragraphs, around, &mut found);
    let others = paragraphs.iter().enumerate();
    for (index, paragraph) in others.filter(|(index, _)| !fields.contains(index)) {
        lead = lead.filter(|_| !leaves_list(source, paragraphs, index));
        match paragraph {
            Paragraph::Text(pieces) => {
                let mut listed = around.under(lead);
                listed.denied |= denied;
                let flow = Flow::of(source, pieces.iter().copied());
                // The bullets below a headed paragraph are about its configuration, too.
                let bullet = flow.text().starts_with(LIST_SIGNS);
                headed = headed_configuration(&flow).or(headed.filter(|_| bullet));
                if let Some(configuration) = &headed {
                    found.configurations.push(configuration.clone());
                    listed.options.push(configuration.clone());
                    listed.headed = Some(configuration.clone());
                }
                list = list.filter(|_| bullet);
                let column = column(source, pieces);
                variant = headed_variant(&flow, beginnings(source, paragraphs, index))
                    .filter(|_| headed.is_none())
                    .map(|condition| (condition, column))
                    .or(variant.filter(|(_, head)| column > *head));
                over = over.filter(|lead| lead.leads(bullet, column));
                let read = found.clauses.len();
                if let Some(lead) = &over {
                    listed.subject = lead.subject(&listed.subject);
                    let mut own = listed.subject.clone();
                    read_text(source, pieces, &listed, &mut own, &mut found);
                    lead.put_over(source, read, &mut found);
                } else {
                    read_text(source, pieces, &listed, &mut subject, &mut found);
                }
                if let Some(condition) = headed_by(&flow) {
                    let others = other_subjects(&flow, &around.subject.title);
                    found.put_under(&condition, source, read.., &others);
                } else if let Some(condition) = &list {
                    found.put_under(condition, source, read.., &[]);
                }
                if let Some((condition, _)) = &variant {
                    found.put_under(condition, source, read.., &[]);
                }
                // A title may stand on the line before.
                let below_title = || Flow::of(source, pieces.last().copied());
                list = list
                    .or_else(|| leads_list(&flow))
                    .or_else(|| leads_list(&below_title()));
                over = Lead::of(&flow, bullet, column).or(over);
                flow.text().clone_into(&mut caption);
                // A list goes on in its next bullet.
                let listed = caption.starts_with(LIST_SIGNS) || is_label(&caption);
                denied = denies_below(&caption) || denied && listed;
                lead = carried(&caption)
                    .or_else(|| LimitHeads::of(&flow).left_open(&flow))
                    .or(lead.filter(|_| listed));
            }
            Paragraph::Entry(entry) => {
                entries::read(source, entry, around, &mut subject, &mut found);
            }
            Paragraph::Cell { heading, text } => {
                cells::read(source, heading, text, around, &mut subject, &mut found);
            }
            Paragraph::Case { case, text } => {
                if limits_cases(&caption) {
                    caption.push(':');
                    lead = carried(&caption);
                }
                let listed = around.under(lead);
                let (asked, rest) = last_case::parted(source, paragraphs, index, text);
                let words = lead_of(&caption);
                cells::read_case(
                    source,
                    case,
                    &asked,
                    words,
                    &listed,
                    &mut subject,
                    &mut found,
                );
                read_text(source, &rest, &listed, &mut subject, &mut found);
            }
            Paragraph::Table(table) => {
                let behind = paragraphs.get(index + 1);
                read_table(source, table, &caption, behind, around, &mut found);
            }
        }
    }
    named::settle(source, around, &mut found);
    found
}

/// Reads a table below its caption, with what the paragraph behind it says of all its values.
fn read_table(
    source: &str,
    table: &Table,
    caption: &str,
    behind: Option<&Paragraph>,
    around: &Around,
    found: &mut Yield,
) {
    let said = tables::Said {
        before: caption,
        of_all: said_behind(source, behind),
    };
    tables::read(source, table, &said, around, found);
}

/// Reads the makers and products that two paragraphs state as fields, one below the other; says which paragraphs these are.
fn read_fields(
    source: &str,
    paragraphs: &[Paragraph],
    around: &Around,
    found: &mut Yield,
) -> Vec<usize> {
    let whole = |at: usize| {
        let pieces = paragraphs.get(at).map(Paragraph::pieces)?;
        pieces.into_iter().reduce(Span::join)
    };
    let mut read = Vec::new();
    for index in 0..paragraphs.len() {
        if !read.contains(&index)
            && let Some((one, next)) = whole(index).zip(whole(index + 1))
            && let Some(listed) = named::fields(one.of(source), next.of(source), &around.ordinary)
        {
            let span = one.join(next);
            named::push_list(source, span, listed, around, &around.subject, found);
            read.extend([index, index + 1]);
        }
    }
    read
}

/// Whether a paragraph stands below a list of bullets or of cases and is none of it: what leads to the list doesn't lead to it.
fn leaves_list(source: &str, paragraphs: &[Paragraph], own: usize) -> bool {
    let is_bullet = |pieces: &[Span]| {
        pieces
            .first()
            .is_some_and(|piece| piece.of(source).starts_with(LIST_SIGNS))
    };
    let before = own.checked_sub(1).and_then(|before| paragraphs.get(before));
    match (before, paragraphs.get(own)) {
        (Some(Paragraph::Text(before)), Some(Paragraph::Text(own))) => {
            is_bullet(before) && !is_bullet(own) && column(source, own) <= column(source, before)
        }
        (Some(Paragraph::Case { .. }), Some(Paragraph::Text(_))) => true,
        _ => false,
    }
}

/// How the other paragraphs begin.
fn beginnings<'s>(
    source: &'s str,
    paragraphs: &'s [Paragraph],
    own: usize,
) -> impl Iterator<Item = &'s str> {
    let others = paragraphs.iter().enumerate();
    others.filter_map(move |(index, paragraph)| match paragraph {
        Paragraph::Text(pieces) if index != own => {
            let first = pieces.first()?.of(source);
            Some(first.trim_start_matches(|c| c == ' ' || LIST_SIGNS.contains(&c)))
        }
        _ => None,
    })
}

/// How far from the edge the first line of a paragraph begins; what belongs to a heading stands farther in.
fn column(source: &str, pieces: &[Span]) -> usize {
    let start = pieces.first().map_or(0, |piece| piece.start());
    let before = source.get(..start).unwrap_or_default();
    start - before.rfind('\n').map_or(0, |line| line + 1)
}

/// The words by which a text leads to the cases below it, without those that say what tells them apart: `Depth` of "... Depth by joint width:".
fn lead_of(text: &str) -> Option<&str> {
    const BY: [&str; 6] = [
        " by ",
        " per ",
        " for ",
        " according",
        " depending",
        " as follows",
    ];
    let text = text.trim_end();
    let words = text.strip_suffix(':').or(text.strip_suffix(" -"))?;
    let last = crate::sentences::sentences(words).pop()?;
    let words = words.get(last)?;
    let end = BY.iter().filter_map(|by| words.find(by)).min();
    words.get(..end.unwrap_or(words.len()))
}

/// Whether a text ends with a limit that leads to the cases below it, and with no sign: "Min depth".
fn limits_cases(text: &str) -> bool {
    const MOST_WORDS: usize = 5;
    let last = crate::sentences::sentences(text)
        .pop()
        .and_then(|last| text.get(last));
    let words = last.unwrap_or_default().trim();
    let limits = words
        .split(' ')
        .next()
        .is_some_and(|word| qualifier(word.to_lowercase().trim_end_matches('.')).is_some());
    limits
        && words.ends_with(char::is_alphabetic)
        && words.split_whitespace().count() <= MOST_WORDS
        && !words.contains(|c: char| c.is_ascii_digit())
}

/// Whether a paragraph is a label with its value: "Wet film: 1/8 in."
fn is_label(words: &str) -> bool {
    const LONGEST: usize = 10;
    let labelled = words
        .split_once(": ")
        .filter(|(label, _)| !label.contains(|c: char| c.is_ascii_digit()));
    words.split_whitespace().count() <= LONGEST
        && labelled.is_some_and(|(_, value)| value.contains(|c: char| c.is_ascii_digit()))
}

/// What the first sentence of the paragraph behind a table says of all its values.
fn said_behind(source: &str, behind: Option<&Paragraph>) -> Option<Relation> {
    let Some(Paragraph::Text(pieces)) = behind else {
        return None;
    };
    let flow = Flow::of(source, pieces.iter().copied());
    let first = crate::sentences::sentences(flow.text())
        .into_iter()
        .next()?;
    tables::said_of_all(flow.text().get(first)?)
}

/// The condition that a paragraph is headed with: "Clips: in joints exceeding 80 mm. Flat steel 2 mm thick."
fn headed_by(flow: &Flow) -> Option<Condition> {
    let first = crate::sentences::sentences(flow.text())
        .into_iter()
        .next()?;
    heads(&Sentence::new(flow, first), Place::Text)
}

/// The condition that a paragraph leads to a list with: "In joints over 2 in.:".
fn leads_list(flow: &Flow) -> Option<Condition> {
    let text = flow.text().trim_end();
    let short = text.ends_with(':') && crate::sentences::sentences(text).len() == 1;
    short.then(|| heads_list(&Sentence::new(flow, 0..text.len())))?
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
                let flow = Flow::of(source, pieces).with_usual_units(around.usual_units);
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
            let set = sentence::Set {
                around,
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
