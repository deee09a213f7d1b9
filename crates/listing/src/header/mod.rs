//! The head of a listing: title, designation, standards, ratings, width, movement, leakage.
//!
//! A number of the head belongs to the nearest words before it that name what it states, whatever the layout: `ASSEMBLY RATINGS -- 1
//! and 2 Hr`, `Joint Width: 3/4 to 6 in.`, `MOVEMENT   Class I, 7.5% comp. or ext.` Two columns that say the same in two units are
//! one statement.

mod classes;
mod codes;
mod columns;
mod identity;
mod label_units;
mod leakage;
mod movement;
mod ratings;
#[cfg(test)]
mod tests;
mod topic;
mod width;

use measure::{Dimension, Number, Unit};

use self::identity::{check_designation, designation, edition, standards, title};
use self::ratings::{Found, in_hours_and_minutes, is_end_of_hours, is_short, rating, untold_times};
use self::topic::{Topic, topic};
use crate::conditions::{Mentioned, configurations};
use crate::layout::{Flow, LIST_SIGNS};
use crate::model::{Header, HeaderTopic, Span, WarningKind};
use crate::phrase::Amount;
use crate::rules::Sentence;
use crate::sentences::stretches;

/// The head as read, with what a person should look at.
pub(crate) struct HeaderRead {
    pub(crate) header: Header,
    pub(crate) warnings: Vec<(WarningKind, Span, String)>,
    /// The numbers with a unit that state nothing that a head is read for: whether a clause holds them, or nothing does, is told elsewhere.
    pub(crate) unread: Vec<Span>,
    /// The numbers without a unit that a label gives one: they are read, or else among the unread.
    pub(crate) bare: Vec<Span>,
}

/// Reads the head from its paragraphs.
pub(crate) fn header(source: &str, paragraphs: &[Vec<Span>]) -> HeaderRead {
    let mut read = HeaderRead {
        header: Header::default(),
        warnings: Vec::new(),
        unread: Vec::new(),
        bare: Vec::new(),
    };
    let mut times = Vec::new();
    let mut found = Found::default();
    let mut of_classes = Vec::new();
    let mut coded = Vec::new();
    let columns = |pieces: &Vec<Span>| columns::columns(source, pieces);
    for pieces in paragraphs.iter().flat_map(columns) {
        let flow = Flow::of(source, pieces.iter().copied());
        // A paragraph of running sentences, or a line of a list, says things of its items, not of the head.
        if is_prose(flow.text()) || flow.text().starts_with(LIST_SIGNS) {
            continue;
        }
        of_classes.extend(classes::ratings(flow.text()));
        coded.extend(codes::codes(&flow));
        for range in stretches(flow.text()) {
            let mut sentence = Sentence::new(&flow, range);
            read.bare.extend(label_units::give(&mut sentence));
            read_paragraph(&sentence, &mut read, &mut found);
            times.extend(untold_times(&sentence));
        }
    }
    codes::take(&coded, &mut read);
    for other in [found.unnamed, of_classes, found.beyond_fire] {
        if read.header.ratings_hr.is_empty() {
            read.header.ratings_hr = other;
        }
    }
    // How long the heat is held back says nothing of how long the fire is.
    if read.header.ratings_hr.is_empty() {
        read.unread.extend(found.by_heat);
    }
    // "2 HR HEAD-OF-WALL JOINT" over "Rating - 2 Hr" says it again.
    let of_rating = |hours: &Number| read.header.ratings_hr.contains(hours);
    let untold = times.into_iter().filter(|(hours, _)| !of_rating(hours));
    read.unread.extend(untold.map(|(_, span)| span));
    // Nothing else looks for a number without a unit.
    let lost = |span: &&Span| read.unread.contains(span);
    let bare: Vec<Span> = read.bare.iter().filter(lost).copied().collect();
    read.warnings.extend(bare.into_iter().map(|span| {
        let message = "the head states nothing that this is of".to_owned();
        (WarningKind::UnreadNumber, span, message)
    }));
    read.unread
        .sort_unstable_by_key(|span| (span.start(), span.end()));
    read.header.ratings_hr.sort_unstable();
    read.header.ratings_hr.dedup();
    let whole: String = paragraphs
        .iter()
        .flatten()
        .map(|span| span.of(source))
        .collect::<Vec<_>>()
        .join("\n");
    read.header.standards = standards(&whole);
    read.header.title = title(source, paragraphs);
    // A running head may carry the designation, and nothing else of the document.
    read.header.designation = designation(&whole)
        .or_else(|| designation(first_lines(source)))
        .unwrap_or_default();
    read.header.edition = edition(source);
    check_designation(&mut read);
    read
}

/// Whether a paragraph is made of sentences.
pub(crate) fn is_prose(text: &str) -> bool {
    let words = text.split_whitespace().count();
    let lower = text.to_lowercase();
    let verb = [
        " shall ",
        " is ",
        " are ",
        " applies ",
        " apply ",
        " covers ",
        " may ",
        " must ",
    ]
    .iter()
    .any(|verb| lower.contains(verb));
    words >= 6 && verb && text.trim_end().ends_with(['.', ':', ';'])
}

fn read_paragraph(sentence: &Sentence<'_>, read: &mut HeaderRead, found: &mut Found) {
    let held = read.header.ratings_hr.clone();
    let named = configurations(sentence);
    for (index, amount) in sentence.amounts.iter().enumerate() {
        let topic = topic(sentence, amount);
        let whole = in_hours_and_minutes(sentence, index);
        let amount = whole.as_ref().unwrap_or(amount);
        match (amount.unit.dimension(), topic) {
            (Dimension::Time, _) if is_end_of_hours(sentence, index) => {}
            // `Rating 5 min` is of something else.
            (Dimension::Time, Some(_)) if is_short(amount) => {
                read.unread.push(sentence.source(amount.at));
            }
            (Dimension::Time, Some(Topic::Rating)) => rating(amount, &mut read.header.ratings_hr),
            (Dimension::Time, Some(Topic::OtherRating)) => rating(amount, &mut found.beyond_fire),
            (Dimension::Time, Some(Topic::Unnamed)) => rating(amount, &mut found.unnamed),
            (Dimension::Time, Some(Topic::HeatRating)) => {
                found.by_heat.push(sentence.source(amount.at));
            }
            (Dimension::Length, Some(Topic::Width)) => {
                width::width(sentence, index, amount, &named, &mut read.header);
            }
            (Dimension::Fraction, Some(Topic::Movement | Topic::Width)) => {
                movement::movement(sentence, index, amount, &named, read);
            }
            (Dimension::LeakagePerLength | Dimension::LeakagePerArea, _) => {
                leakage::leakage(sentence, index, amount, read);
            }
            (Dimension::Time, _) | (_, Some(Topic::Leakage)) => {}
            (Dimension::Temperature, _) if states_leakage(sentence) => {}
            _ if amount.unit == Unit::Count => {}
            _ => read.unread.push(sentence.source(amount.at)),
        }
    }
    // "1 hr (Configuration A), 2 hr (Configuration B)": neither holds for both.
    let by_configuration = sentence.amounts.iter().any(|amount| {
        amount.unit.dimension() == Dimension::Time && for_configuration(&named, amount)
    });
    if by_configuration && read.header.ratings_hr.len() > held.len().max(1) {
        differs(&mut read.header, HeaderTopic::Rating);
    }
}

/// Whether a paragraph states a leakage, for which a temperature is named.
fn states_leakage(sentence: &Sentence<'_>) -> bool {
    let mut dimensions = sentence
        .amounts
        .iter()
        .map(|amount| amount.unit.dimension());
    dimensions.any(|own| matches!(own, Dimension::LeakagePerLength | Dimension::LeakagePerArea))
}

/// How many words may stand between an amount and the case it is stated for.
const BESIDE: usize = 4;

/// Whether tokens `[first, last)` stand beside an amount.
fn beside(amount: &Amount, first: usize, last: usize) -> bool {
    let after = first >= amount.last && first - amount.last <= BESIDE;
    let before = last <= amount.first && amount.first - last <= BESIDE;
    after || before
}

/// Whether a configuration is named beside an amount.
fn for_configuration(named: &[Mentioned], amount: &Amount) -> bool {
    let after = named.partition_point(|mention| mention.last <= amount.first);
    let around = named.get(after.saturating_sub(1)..(after + 2).min(named.len()));
    let mut around = around.unwrap_or_default().iter();
    around.any(|mention| beside(amount, mention.first, mention.last))
}

/// Notes that the head states a topic differently for different cases.
fn differs(header: &mut Header, topic: HeaderTopic) {
    if !header.differs.contains(&topic) {
        header.differs.push(topic);
        header.differs.sort_unstable();
    }
}

/// Whether two numbers differ by no more than the one part in so many of the first.
fn near(value: Number, other: Number, parts: i128) -> bool {
    let allowed = Number::new(1, parts).and_then(|part| value.abs().times(part));
    value
        .minus(other)
        .zip(allowed)
        .is_some_and(|(apart, allowed)| apart.abs() <= allowed)
}

/// How many lines at a document's beginning may be a running head.
const HEAD_LINES: usize = 4;

fn first_lines(source: &str) -> &str {
    let end = source
        .match_indices('\n')
        .nth(HEAD_LINES - 1)
        .map_or(source.len(), |(end, _)| end);
    source.get(..end).unwrap_or_default()
}
