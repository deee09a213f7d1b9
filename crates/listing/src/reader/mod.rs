//! The reading of a document, from its bytes to its clauses.

mod around;
mod asked;
mod bare_numbers;
mod case_headings;
mod column_gaps;
mod column_heads;
mod column_numbers;
mod contradictions;
mod finish;
mod footnote_marks;
mod footnotes;
mod head;
mod headings;
mod kind_titles;
mod kinds;
mod numbering;
mod product_lists;
mod reach;
mod second_pass;
mod side_by_side;
mod spelled_numbers;
mod standing;
mod variant_labels;
mod where_built;

use std::collections::BTreeMap;
use std::sync::Arc;
use vocabulary::Component;

use self::around::{configuration_letters, parts};
use self::footnote_marks::FootnoteMarks;
use self::head::split_head;
use self::headings::Headings;
use self::product_lists::outline_and_rows;
use self::side_by_side::side_by_side;
use self::standing::standing;
use self::variant_labels::variant_labels;
use self::where_built::where_built;
use crate::clauses::{
    self, Around, ColumnLimits, Draft, FirstSaid, Ordinary, Reach, TableLimits, Yield,
};
use crate::header::{header, is_prose};
use crate::layout::{DecodeError, Flow, UsualUnits, decode, lines};
use crate::model::{Condition, PlaceKind, Reading, Source, Span, Warning, WarningKind, sha256};
use crate::options::{ItemOption, item_options};
use crate::outline::{Outline, OutlineItem, Paragraph};
use crate::phrase::usual_units;
use crate::places::Places;

/// Reads a document into clauses. Reading never fails on text: what can't be read becomes prose with a warning, and every byte
/// is accounted for.
///
/// # Errors
/// When the bytes are no text at all.
///
/// ```
/// let read = listing::read("sample.txt", b"1. Packing - Min 4 in. (102 mm) deep.\n").unwrap();
/// assert_eq!(read.clauses[0].property, "packing.depth");
/// assert_eq!(read.accounted.bytes, read.accounted.of);
/// ```
pub fn read(name: &str, bytes: &[u8]) -> Result<Reading, DecodeError> {
    let decoded = decode(bytes)?;
    let mut reading = read_text(name, &decoded.text);
    reading.source.sha256 = sha256(bytes);
    if let Some(note) = decoded.note {
        let span = Span::new(0, 0);
        reading.warnings.insert(
            0,
            Warning {
                kind: WarningKind::Encoding,
                span,
                words: String::new(),
                message: note,
            },
        );
    }
    Ok(reading)
}

/// Reads a text that is UTF-8 already.
pub fn read_text(name: &str, text: &str) -> Reading {
    let lines = lines(text);
    let ordinary = Arc::new(Ordinary::of(text));
    let (outline, product_rows) = outline_and_rows(text, &lines, &ordinary);
    let (stated, demanded) = split_head(text, &outline.head);
    let head = header(text, &stated);
    let mut reader = Reader::new(text, &outline, ordinary);
    reader.warnings.extend(head.warnings);
    reader.unread_in_head = head.unread;
    reader.bare_in_head = head.bare;
    reader.head(&stated, &demanded);
    let items: Vec<&OutlineItem> = outline.items.iter().collect();
    let found = side_by_side(&items, |index, item| reader.item(index, item));
    for (item, found) in items.into_iter().zip(found) {
        reader.take_item(item, found);
    }
    reader.product_rows(&product_rows);
    let pages = 1 + lines.iter().filter(|line| line.after_page_break).count();
    let source = Source {
        name: name.to_owned(),
        sha256: sha256(text.as_bytes()),
        bytes: text.len(),
        pages,
    };
    reader.finish(source, head.header)
}

struct Reader<'a> {
    text: &'a str,
    outline: &'a Outline,
    options: Vec<ItemOption>,
    /// The headings that are no items.
    headings: Headings,
    /// The kinds that they name, each with the stretch that is of it.
    kinds: Vec<(Condition, Span)>,
    /// What is said of items that needn't be built, each with its stretch.
    built: Vec<(Condition, Span)>,
    /// Where footnotes are cited.
    footnote_marks: FootnoteMarks,
    /// The condition that each item as a whole stands under.
    standing: Vec<Option<Condition>>,
    drafts: Vec<(String, Draft)>,
    warnings: Vec<(WarningKind, Span, String)>,
    configurations: Vec<String>,
    places: Places<'a>,
    /// The units that the document states for all its numbers.
    usual_units: UsualUnits,
    /// The part that the title of each item names.
    parts: Arc<BTreeMap<String, &'static Component>>,
    /// Where each word stands first.
    first_said: Arc<FirstSaid>,
    column_limits: Arc<ColumnLimits>,
    table_limits: Arc<TableLimits>,
    /// The words that the document writes small.
    ordinary: Arc<Ordinary>,
    /// The letters by which the head names configurations.
    configuration_letters: Arc<[String]>,
    /// The labels by which its tables name variants.
    variants: Arc<[String]>,
    /// Numbers of the head that state nothing that a head is read for.
    unread_in_head: Vec<Span>,
    /// Numbers of the head that have the unit of their label.
    bare_in_head: Vec<Span>,
}

/// The limits of tables that are said of all joints: by items that are built in each of them.
fn table_limits(
    text: &str,
    outline: &Outline,
    options: &[ItemOption],
    standing: &[Option<Condition>],
) -> TableLimits {
    let always = |index: usize| {
        let option = options.get(index);
        let chosen = option.is_some_and(|option| {
            option.is_choice() || option.offered.is_some() || !option.configurations.is_empty()
        });
        !chosen && matches!(standing.get(index), Some(None) | None)
    };
    let items = outline.items.iter().enumerate();
    let items = items.filter(|(index, _)| always(*index));
    TableLimits::of(text, items.map(|(_, item)| item))
}

impl<'a> Reader<'a> {
    fn new(text: &'a str, outline: &'a Outline, ordinary: Arc<Ordinary>) -> Self {
        let options = item_options(text, &outline.items);
        let usual_units = usual_units(text);
        let headings = Headings::of(text, outline);
        let mut places = Places::new(text);
        for span in &outline.furniture {
            places.mark(*span, PlaceKind::Furniture);
        }
        for case in &outline.cases {
            places.mark(case.line, PlaceKind::Heading);
        }
        let standing = standing(text, outline, &options, &headings, usual_units);
        Self {
            text,
            outline,
            built: where_built(text, &outline.items, &options, &standing),
            table_limits: Arc::new(table_limits(text, outline, &options, &standing)),
            standing,
            options,
            kinds: headings.kinds(text, &outline.items),
            headings,
            footnote_marks: FootnoteMarks::of(text, &outline.items),
            drafts: Vec::new(),
            warnings: Vec::new(),
            configurations: Vec::new(),
            places,
            usual_units,
            parts: Arc::new(parts(&outline.items)),
            first_said: Arc::new(FirstSaid::of(text)),
            column_limits: Arc::new(ColumnLimits::of(text)),
            ordinary,
            configuration_letters: configuration_letters(text, outline).into(),
            variants: variant_labels(text, outline).into(),
            unread_in_head: Vec::new(),
            bare_in_head: Vec::new(),
        }
    }

    /// The paragraphs before the first item: sentences and demands become clauses, the rest is the head.
    fn head(&mut self, stated: &[Vec<Span>], demanded: &[Vec<Span>]) {
        // From the first sentence or bullet on, what stands before the first item is text like any other; so is all of it where the head stands on a page
        // that is missing.
        let mut body = self.outline.midway;
        for pieces in stated {
            let flow = Flow::of(self.text, pieces.iter().copied());
            body |= is_prose(flow.text()) || flow.text().starts_with(['•', '–', '-']);
            if body {
                self.head_text(pieces);
            } else {
                for piece in pieces {
                    self.places.mark(*piece, PlaceKind::Header);
                }
            }
        }
        for pieces in demanded {
            self.head_text(pieces);
        }
    }

    fn head_text(&mut self, pieces: &[Span]) {
        let paragraph = [Paragraph::Text(pieces.to_vec())];
        let found = clauses::read(
            self.text,
            &paragraph,
            &Around {
                usual_units: self.usual_units,
                first_said: self.first_said.clone(),
                column_limits: self.column_limits.clone(),
                table_limits: self.table_limits.clone(),
                ordinary: self.ordinary.clone(),
                configuration_letters: self.configuration_letters.clone(),
                variants: self.variants.clone(),
                ..Around::default()
            },
        );
        self.take("", found);
    }

    /// Reads an item, which may be done while others are read.
    fn item(&self, index: usize, item: &OutlineItem) -> Yield {
        let around = self.around(index, item);
        let mut found = clauses::read(self.text, &item.paragraphs, &around);
        if let Some(Some(standing)) = self.standing.get(index) {
            let end = standing::end(self.text, item);
            let end = self
                .headings
                .end(self.text, item)
                .map_or(end, |own| own.min(end));
            if standing::is_only_joints(self.text, standing, self.usual_units) {
                found.leave_case(standing.span);
            }
            let others = self.others_in(item, standing);
            let reach = Reach { end, but: &others };
            found.put_under_before(standing, self.titled(standing.span), self.text, &reach);
        }
        for band in self.headings.bands() {
            found.leave_heading(band, self.text);
        }
        for (kind, under) in &self.kinds {
            found.put_under_within(kind, self.text, *under);
        }
        for (built, said) in &self.built {
            found.put_under_said(built, self.text, *said);
        }
        self.leave_options(index, &mut found);
        if let Some(option) = self.options.get(index) {
            clauses::confine(self.text, &option.limits, &around, &mut found);
            let doubt = option.doubt.iter().cloned();
            let doubt = doubt.map(|(span, why)| (WarningKind::OptionNotPlaced, span, why));
            found.warnings.extend(doubt);
        }
        found
    }

    fn take_item(&mut self, item: &OutlineItem, found: Yield) {
        self.places.mark(item.heading, PlaceKind::Heading);
        for span in &item.more_heading {
            self.places.mark(*span, PlaceKind::Heading);
        }
        self.take(&item.path, found);
    }

    fn take(&mut self, path: &str, found: Yield) {
        for span in found.covered {
            self.places.mark(span, PlaceKind::Clause);
        }
        for span in found.lead_ins {
            self.places.mark(span, PlaceKind::Heading);
        }
        self.warnings.extend(found.warnings);
        self.configurations.extend(found.configurations);
        self.drafts.extend(
            found
                .clauses
                .into_iter()
                .map(|draft| (path.to_owned(), draft)),
        );
    }
}
