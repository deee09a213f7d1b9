//! The paragraphs of an item, one after another: what each leads to, heads or says of those below it.

use std::collections::BTreeSet;

use super::last_case;
use super::left_out;
use super::limit_heads::LimitHeads;
use super::nested::Lead;
use super::{Around, Carried, Yield, cells, entries, named, other_subjects, read_text, tables};
use super::{carried, denies_below};
use crate::conditions::{
    Place, headed_configuration, headed_offer, headed_variant, heads, heads_list,
};
use crate::layout::{Flow, LIST_SIGNS, is_rule};
use crate::model::{Condition, Relation, Span};
use crate::naming::Subject;
use crate::outline::Paragraph;
use crate::rules::{Sentence, qualifier};

/// Reads an item's paragraphs.
pub(crate) fn read(source: &str, paragraphs: &[Paragraph], around: &Around) -> Yield {
    let mut reading = Reading::of(source, paragraphs, around);
    let fields = read_fields(source, paragraphs, around, &mut reading.found);
    let others = paragraphs.iter().enumerate();
    for (index, paragraph) in others.filter(|(index, _)| !fields.contains(index)) {
        reading.take(index, paragraph);
    }
    let mut found = reading.found;
    named::settle(source, around, &mut found);
    found
}

/// What the paragraphs so far say of those below them.
struct Reading<'a> {
    source: &'a str,
    paragraphs: &'a [Paragraph],
    around: &'a Around,
    found: Yield,
    /// What is spoken of.
    subject: Subject,
    /// The words of the last paragraph, which may caption a table or lead to cases.
    caption: String,
    /// The limit that leads to the lines of a list.
    lead: Option<Carried>,
    /// Whether a list of what must not be is open.
    denied: bool,
    /// The configuration that the paragraph or the bullets below it are headed with.
    headed: Option<String>,
    /// The condition that leads to a list.
    list: Option<Condition>,
    /// The variant that those farther in are of, and how far in its head is.
    variant: Option<(Condition, usize)>,
    /// Whether the bullets hold where the item isn't built: below "When clips are not used:".
    without: bool,
    /// The part that nested lines are led by.
    over: Option<Lead>,
}

impl<'a> Reading<'a> {
    fn of(source: &'a str, paragraphs: &'a [Paragraph], around: &'a Around) -> Self {
        let caption = if !around.led_to.is_empty() {
            around.led_to.clone()
        } else if around.item.starts_with("Table ") {
            format!("{} {}", around.item, around.subject.title)
        } else {
            String::new()
        };
        Self {
            source,
            paragraphs,
            around,
            found: Yield::default(),
            subject: around.subject.clone(),
            caption,
            lead: None,
            denied: false,
            headed: None,
            list: None,
            variant: None,
            without: false,
            over: None,
        }
    }

    fn take(&mut self, index: usize, paragraph: &Paragraph) {
        let (source, around) = (self.source, self.around);
        self.lead = self
            .lead
            .filter(|_| !leaves_list(source, self.paragraphs, index));
        match paragraph {
            Paragraph::Text(pieces) => self.text(index, pieces),
            Paragraph::Entry(entry) => {
                entries::read(source, entry, around, &mut self.subject, &mut self.found);
            }
            Paragraph::Cell { heading, text } => {
                let (subject, found) = (&mut self.subject, &mut self.found);
                cells::read(source, heading, text, around, subject, found);
            }
            Paragraph::Case { case, text } => self.case(index, case, text),
            Paragraph::Table(table) => {
                let said = tables::Said {
                    before: leading_sentence(&self.caption),
                    of_all: said_behind(source, self.paragraphs.get(index + 1)),
                    behind: &text_behind(source, self.paragraphs, index),
                    elsewhere: &around.table_limits,
                };
                tables::read(source, table, &said, around, &mut self.found);
            }
        }
    }

    fn text(&mut self, index: usize, pieces: &[Span]) {
        let source = self.source;
        let mut listed = self.around.under(self.lead);
        listed.denied |= self.denied;
        let flow = Flow::of(source, pieces.iter().copied());
        // The bullets below a headed paragraph are about its configuration, too.
        let bullet = flow.text().starts_with(LIST_SIGNS);
        self.without &= bullet;
        if self.without {
            listed.options.retain(|option| *option != self.around.item);
        }
        self.headed = headed_configuration(&flow).or(self.headed.take().filter(|_| bullet));
        if let Some(configuration) = &self.headed {
            self.found.configurations.push(configuration.clone());
            listed.options.push(configuration.clone());
            listed.headed = Some(configuration.clone());
        }
        self.list = self.list.take().filter(|_| bullet);
        let column = column(source, pieces);
        self.variant = headed_variant(&flow, beginnings(source, self.paragraphs, index))
            .or_else(|| headed_offer(&flow).filter(|_| index > 0))
            .filter(|_| self.headed.is_none())
            .map(|condition| (condition, column))
            .or(self.variant.take().filter(|(_, head)| column > *head));
        self.over = self.over.take().filter(|lead| lead.leads(bullet, column));
        let read = self.found.clauses.len();
        if let Some(lead) = &self.over {
            listed.subject = lead.subject(&listed.subject);
            let mut own = listed.subject.clone();
            read_text(source, pieces, &listed, &mut own, &mut self.found);
            lead.put_over(source, read, &mut self.found);
        } else {
            let subject = &mut self.subject;
            read_text(source, pieces, &listed, subject, &mut self.found);
        }
        self.put_under_heads(&flow, read);
        // A title may stand on the line before.
        let below_title = || Flow::of(source, pieces.last().copied());
        self.list = self
            .list
            .take()
            .or_else(|| leads_list(&flow))
            .or_else(|| leads_list(&below_title()));
        self.over = Lead::of(&flow, bullet, column).or(self.over.take());
        self.lead_on(&flow);
    }

    /// Puts what a paragraph yielded under the case that it is headed with, that leads to its list, and that of its variant.
    fn put_under_heads(&mut self, flow: &Flow, read: usize) {
        let (source, found) = (self.source, &mut self.found);
        if let Some(condition) = headed_by(flow) {
            let others = other_subjects(flow, &self.around.subject.title);
            found.put_under(&condition, source, read.., &others);
        } else if let Some(condition) = &self.list {
            found.put_under(condition, source, read.., &[]);
        }
        if let Some((condition, _)) = &self.variant {
            found.put_under(condition, source, read.., &[]);
        }
    }

    /// Takes what a paragraph leads to.
    fn lead_on(&mut self, flow: &Flow) {
        flow.text().clone_into(&mut self.caption);
        let leading = leading_sentence(&self.caption);
        let leads = leading.trim_end().ends_with(':');
        self.without |= leads && left_out::without_own_option(self.around, leading).is_some();
        // A list goes on in its next bullet.
        let listed = self.caption.starts_with(LIST_SIGNS) || is_label(&self.caption);
        self.denied = denies_below(&self.caption) || self.denied && listed;
        self.lead = carried(&self.caption)
            .or_else(|| LimitHeads::of(flow).left_open(flow))
            .or(self.lead.filter(|_| listed));
    }

    fn case(&mut self, index: usize, case: &[Span], text: &[Span]) {
        let source = self.source;
        if limits_cases(&self.caption) {
            self.caption.push(':');
            self.lead = carried(&self.caption);
        }
        let listed = self.around.under(self.lead);
        let (asked, rest) = last_case::parted(source, self.paragraphs, index, text);
        let words = lead_of(&self.caption);
        let (subject, found) = (&mut self.subject, &mut self.found);
        cells::read_case(source, case, &asked, words, &listed, subject, found);
        read_text(source, &rest, &listed, subject, found);
    }
}

/// Reads the makers and products that two paragraphs state as fields, one below the other; says which paragraphs these are.
fn read_fields(
    source: &str,
    paragraphs: &[Paragraph],
    around: &Around,
    found: &mut Yield,
) -> BTreeSet<usize> {
    let whole = |at: usize| {
        let pieces = paragraphs.get(at).map(Paragraph::pieces)?;
        pieces.into_iter().reduce(Span::join)
    };
    let mut read = BTreeSet::new();
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

/// The last sentence of a text, where it leads to what stands below: `Minimum thickness:`. The whole text where it does not.
pub(crate) fn leading_sentence(text: &str) -> &str {
    if !text.trim_end().ends_with(':') {
        return text;
    }
    let last = crate::sentences::sentences(text).pop();
    last.and_then(|last| text.get(last)).unwrap_or(text)
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
    pieces.first().map_or(0, |piece| piece.column(source))
}

/// The words by which a text leads to the cases below it, without those that say what tells them apart: `Depth` of "... Depth by joint width:".
fn lead_of(text: &str) -> Option<&str> {
    const BY: [&str; 7] = [
        " by ",
        " per ",
        " for ",
        " according",
        " depending",
        " as follows",
        " at the joint",
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

/// Whether a paragraph is a label with its value: "Wet film: 1/8 in.", "Concrete wall ....... 120 mm".
fn is_label(words: &str) -> bool {
    is_led_to(words) || is_behind_colon(words)
}

/// Whether a line leads from a label to its value: `Concrete wall ....... 120 mm ....... 2200 kg/m3`.
fn is_led_to(words: &str) -> bool {
    let led = ["....", ". . . .", "____"]
        .iter()
        .find_map(|leader| words.split_once(leader));
    led.is_some_and(|(label, value)| {
        let value = value.trim_start_matches(['.', '_', ' ']);
        label.starts_with(char::is_alphabetic)
            && !label.contains(". ")
            && value.starts_with(|c: char| c.is_ascii_digit())
    })
}

fn is_behind_colon(words: &str) -> bool {
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

/// The paragraph behind a table, where it doesn't lead to the next one.
fn text_behind(source: &str, paragraphs: &[Paragraph], table: usize) -> String {
    let leads = matches!(paragraphs.get(table + 2), Some(Paragraph::Table(_)));
    match (paragraphs.get(table), paragraphs.get(table + 1)) {
        (_, Some(Paragraph::Text(pieces))) if !leads => {
            Flow::of(source, pieces.iter().copied()).text().to_owned()
        }
        (Some(Paragraph::Table(table)), None) => lines_behind(source, table.span.end()),
        _ => String::new(),
    }
}

/// The lines right behind the last table of an item, which are of the item around it: no caption or heading of what follows.
fn lines_behind(source: &str, end: usize) -> String {
    let mut lines = source.get(end..).unwrap_or_default().lines().skip(1);
    let blank = |line: &&str| line.trim().is_empty();
    let first = lines.by_ref().find(|line| !blank(line)).unwrap_or_default();
    let more: Vec<&str> = lines.by_ref().take_while(|line| !blank(line)).collect();
    let next = lines.find(|line| !blank(line)).unwrap_or_default();
    let words = first.trim();
    let captions = words.to_lowercase().starts_with("table") || is_rule(next);
    let ruled = more.iter().any(|line| is_rule(line));
    if captions || ruled || !words.starts_with(char::is_alphabetic) {
        return String::new();
    }
    let lines = more.iter().map(|line| line.trim());
    [words]
        .into_iter()
        .chain(lines)
        .collect::<Vec<_>>()
        .join(" ")
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
