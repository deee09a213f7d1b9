//! The reading of a document, from its bytes to its clauses.

mod asked;
mod bare_numbers;
mod case_headings;
mod column_gaps;
mod column_heads;
mod column_numbers;
mod contradictions;
mod footnote_marks;
mod footnotes;
mod head;
mod headings;
mod kind_titles;
mod kinds;
mod numbering;
mod product_lists;
mod second_pass;
mod side_by_side;
mod spelled_numbers;
mod standing;
mod where_built;

use std::collections::BTreeMap;
use std::sync::Arc;

use vocabulary::{Component, vocabulary};

use self::contradictions::{contradicting, contradictions};
use self::footnote_marks::FootnoteMarks;
use self::head::split_head;
use self::headings::Headings;
use self::kinds::Kinds;
use self::numbering::{items, number};
use self::product_lists::outline_and_rows;
use self::second_pass::unread_numbers;
use self::side_by_side::side_by_side;
use self::standing::{names_attribute, speaks_of_choice, standing};
use self::where_built::where_built;
use crate::clauses::{
    self, Around, ColumnLimits, Draft, FirstSaid, Ordinary, Reach, Yield, other_subjects,
};
use crate::conditions::{letters, may_be_absent};
use crate::header::{header, is_prose};
use crate::layout::{DecodeError, Flow, UsualUnits, decode, lines};
use crate::model::{
    Accounted, Condition, Confidence, PlaceKind, Reading, Source, Span, Warning, WarningKind,
    sha256,
};
use crate::naming::{Subject, component_of_title, components_in, named_part};
use crate::options::{ItemOption, groups, item_options};
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
    /// The words that the document writes small.
    ordinary: Arc<Ordinary>,
    /// The letters by which the head names configurations.
    configuration_letters: Arc<[String]>,
    /// Numbers of the head that state nothing that a head is read for.
    unread_in_head: Vec<Span>,
    /// Numbers of the head that have the unit of their label.
    bare_in_head: Vec<Span>,
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
                ordinary: self.ordinary.clone(),
                configuration_letters: self.configuration_letters.clone(),
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

    /// The stretches of an item that what it says of itself doesn't reach. What its title says, or an item around it, reaches all of it.
    fn others_in(&self, item: &OutlineItem, standing: &Condition) -> Vec<Span> {
        // What the place of a part of every joint is taken by has more than that part.
        let replaces = speaks_of_choice(&standing.words) && !may_be_absent(&item.title);
        if standing.span.start() < item.heading.end() || replaces {
            return Vec::new();
        }
        let texts = item
            .paragraphs
            .iter()
            .filter_map(|paragraph| match paragraph {
                Paragraph::Text(pieces) => Some(Flow::of(self.text, pieces.iter().copied())),
                _ => None,
            });
        texts
            .flat_map(|flow| other_subjects(&flow, &item.title))
            .collect()
    }

    fn take_item(&mut self, item: &OutlineItem, found: Yield) {
        self.places.mark(item.heading, PlaceKind::Heading);
        for span in &item.more_heading {
            self.places.mark(*span, PlaceKind::Heading);
        }
        self.take(&item.path, found);
    }

    /// Takes the options of an item, and of those around it, from the clauses behind a heading that is no part of it.
    fn leave_options(&self, index: usize, found: &mut Yield) {
        let mut above = Some(index);
        while let Some((index, outer)) =
            above.and_then(|index| Some((index, self.outline.items.get(index)?)))
        {
            let end = self.headings.end(self.text, outer);
            let option = self.options.get(index);
            if let Some((end, option)) = end.zip(option) {
                let own = option.is_choice().then(|| outer.path.clone());
                for name in own.into_iter().chain(option.configuration()) {
                    found.leave_option_from(&name, end);
                }
            }
            above = outer.parent;
        }
    }

    /// The component that the title around a place names; none where the place is in no title. Where a number keeps the title of an item in its text,
    /// "Clips (joints over 3 in.)", what stands before the place is the title.
    fn titled(&self, place: Span) -> Option<&'static str> {
        let holds = |piece: &Span| piece.start() <= place.start() && place.end() <= piece.end();
        let after = self
            .outline
            .items
            .partition_point(|item| item.heading.start() <= place.start());
        let item = after.checked_sub(1);
        let item = item.and_then(|item| self.outline.items.get(item))?;
        let text = item.paragraphs.iter().take(1).flat_map(Paragraph::pieces);
        let headings = core::iter::once(item.heading).chain(item.more_heading.iter().copied());
        if !headings.chain(text).any(|piece| holds(&piece)) {
            return None;
        }
        let start = place.start().max(item.heading.end());
        let before = Span::new(item.heading.end(), start).of(self.text);
        if !item.title.is_empty() {
            let headed = holds(&item.heading) || item.more_heading.iter().any(holds);
            // "Support clips. Required where the joint is wider than 3 in." speaks of the one thing that the title names.
            let said = before.trim_start_matches([' ', '-', '–', '(', '\n']);
            let in_brackets = before.trim_end().ends_with('(') || said.trim() == "only";
            let required = (in_brackets || standing::says_required(said))
                && components_in(&item.title).len() == 1;
            return component_of_title(&item.title).filter(|_| headed || required);
        }
        component_of_title(before).filter(|_| !before.trim_start().contains(['.', ';', ':', '\n']))
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

    /// What stands around an item: its titles' components, innermost first, and the options it lies in.
    fn around(&self, index: usize, item: &OutlineItem) -> Around {
        let mut titles: Vec<(&'static Component, usize)> = Vec::new();
        let mut depth = 0;
        let mut options: Vec<(usize, String)> = Vec::new();
        // A footnote speaks of what the item that cites it speaks of.
        let mut above = Some(if item.path.starts_with('[') {
            let citing = self.footnote_marks.citing(&item.path).next();
            citing.unwrap_or(index)
        } else {
            index
        });
        while let Some(index) = above {
            let Some(outer) = self.outline.items.get(index) else {
                break;
            };
            let level = titles.len();
            // Inside "Bridging plates" nothing is about what stands around them.
            if !titles.iter().any(|(component, _)| component.is_other()) {
                for (component, weak, _) in components_in(named_part(&outer.title)) {
                    if !weak && !titles.iter().any(|(held, _)| held.name == component.name) {
                        titles.push((component, depth));
                    }
                }
            }
            depth += match (titles.len() > level, names_attribute(&outer.title)) {
                (true, _) => 1,
                (false, true) => 0,
                // A thing that the vocabulary doesn't know is not the thing that it stands under.
                (false, false) => 3,
            };
            // Notes below an optional part are about the whole, and of none of the options that stand before them.
            let notes = standing::heading_of_notes(self.text, outer)
                .filter(|notes| notes.end() <= item.heading.start());
            if let Some(notes) = notes {
                options.retain(|(start, _)| *start >= notes.end());
            }
            // A note at the end of all may be just about what holds without the option that leads to it.
            let is_footnote = item.path.starts_with('[')
                && item.heading.of(self.text).starts_with('[')
                && self.footnote_marks.citing(&item.path).nth(1).is_none();
            let is_part = is_footnote || item.path.starts_with(&outer.path);
            let option = self.options.get(index);
            if let Some(option) = option.filter(|_| is_part && notes.is_none()) {
                let start = outer.heading.start();
                let own = option.is_choice().then(|| outer.path.clone());
                let named = own.into_iter().chain(option.configuration());
                options.extend(named.map(|name| (start, name)));
            }
            above = outer.parent;
        }
        if let Some(component) = self.cited_component(&item.path) {
            titles.retain(|(held, _)| held.name != component.name);
            titles.insert(0, (component, 0));
        }
        let subject = Subject {
            titles,
            title: item.title.clone(),
            parts: self.parts.clone(),
            before: None,
        };
        let opening = item
            .parent
            .and_then(|parent| self.opening(parent, item.heading.start()))
            .unwrap_or_default();
        Around {
            item: item.path.clone(),
            carried: clauses::carried(&opening).or_else(|| clauses::carried_by_title(&item.title)),
            led_to: led_to(item, &opening),
            denied: clauses::denies_below(&opening),
            subject,
            options: options.into_iter().map(|(_, name)| name).collect(),
            headed: None,
            usual_units: self.usual_units,
            heading: item.heading,
            first_said: self.first_said.clone(),
            column_limits: self.column_limits.clone(),
            ordinary: self.ordinary.clone(),
            configuration_letters: self.configuration_letters.clone(),
        }
    }

    /// What an item's words say of the items in it: those before them, if text, or its heading.
    fn opening(&self, index: usize, before: usize) -> Option<String> {
        let item = self.outline.items.get(index)?;
        let last = item
            .paragraphs
            .iter()
            .rev()
            .find_map(|paragraph| match paragraph {
                Paragraph::Text(pieces) => pieces
                    .first()
                    .is_some_and(|piece| piece.start() < before)
                    .then(|| {
                        Some(
                            Flow::of(self.text, pieces.iter().copied())
                                .text()
                                .to_owned(),
                        )
                    }),
                Paragraph::Cell { text, .. } | Paragraph::Case { text, .. } => {
                    (text.first()?.start() < before).then_some(None)
                }
                Paragraph::Table(table) => (table.span.start() < before).then_some(None),
                Paragraph::Entry(entry) => {
                    let opens = entry.pieces().next()?.start() < before;
                    opens.then_some(None)
                }
            });
        match last {
            Some(words) => words,
            None => Some(item.heading.of(self.text).to_owned()),
        }
    }

    /// The component named just before a footnote's mark in the text that cites it: "Sealant [c] at the ends".
    fn cited_component(&self, path: &str) -> Option<&'static Component> {
        if !path.starts_with('[') {
            return None;
        }
        let item = self
            .footnote_marks
            .citing(path)
            .next()
            .and_then(|index| self.outline.items.get(index))?;
        if item.title.contains(path) {
            return None;
        }
        let piece = item
            .paragraphs
            .iter()
            .flat_map(Paragraph::pieces)
            .map(|piece| piece.of(self.text))
            .find(|words| words.contains(path))?;
        let before = piece.get(..piece.find(path)?)?;
        components_in(before)
            .last()
            .map(|(component, ..)| *component)
    }

    fn finish(mut self, source: Source, header: crate::model::Header) -> Reading {
        // A net under everything above: visible words that nothing has taken become prose.
        for span in self.places.unmarked() {
            let words = span.of(self.text);
            self.places.mark(span, PlaceKind::Clause);
            if words.chars().any(char::is_alphanumeric) {
                self.drafts
                    .push((String::new(), clauses::words_of_no_item(span, words)));
            }
        }
        let kinds = Kinds::of(self.text, self.drafts.iter().map(|(_, draft)| draft));
        for (_, draft) in &mut self.drafts {
            kinds.choose(draft);
        }
        self.configurations.extend(kinds.names());
        let doubts = footnotes::limit_marked(self.text, &mut self.drafts);
        self.warnings.extend(doubts);
        let parted = column_gaps::leave_parted(self.text, &mut self.drafts);
        self.warnings.extend(parted);
        let unplaced = column_heads::leave_unplaced(self.text, self.outline, &mut self.drafts);
        self.warnings.extend(unplaced);
        let options = groups(&self.outline.items, &self.options, &self.configurations);
        let clauses = number(self.text, self.drafts);
        let mut warnings: Vec<Warning> = self
            .warnings
            .into_iter()
            .map(|(kind, span, message)| Warning {
                kind,
                span,
                words: span.of(self.text).to_owned(),
                message,
            })
            .collect();
        let contradicting = contradicting(&clauses);
        warnings.extend(contradictions(&clauses, &contradicting));
        if self.outline.items.is_empty() {
            let message = "no numbered items were found; is this a listing?".to_owned();
            warnings.push(Warning {
                kind: WarningKind::NotAListing,
                span: Span::new(0, 0),
                words: String::new(),
                message,
            });
        }
        let items = items(&self.outline.items, &self.options);
        let places = self.places.finish();
        let unread = unread_numbers(
            self.text,
            &clauses,
            &places,
            &self.unread_in_head,
            &self.bare_in_head,
            &warnings,
        );
        warnings.extend(unread);
        warnings.sort_by_key(|warning| (warning.span, warning.kind));
        let covered = places.iter().map(|place| place.span.len()).sum();
        let accounted = Accounted {
            bytes: covered,
            of: source.bytes,
        };
        let mut reading = Reading {
            source,
            header,
            items,
            options,
            clauses,
            places,
            accounted,
            warnings,
        };
        // Until a person has looked at their words.
        for index in contradicting
            .iter()
            .flat_map(|(earlier, later)| [*earlier, *later])
        {
            if let Some(clause) = reading.clauses.get_mut(index) {
                clause.confidence = Confidence::WithDoubt;
            }
        }
        reading
    }
}

/// The letters by which the head of a document names configurations.
fn configuration_letters(text: &str, outline: &Outline) -> Vec<String> {
    let head: Vec<Flow> = outline
        .head
        .iter()
        .map(|pieces| Flow::of(text, pieces.iter().copied()))
        .collect();
    letters(head.iter())
}

/// The part that the title of each item names, by the item's number. Of a number that several items have nobody knows which is meant.
fn parts(items: &[OutlineItem]) -> BTreeMap<String, &'static Component> {
    let mut parts = BTreeMap::new();
    for item in items {
        let name = component_of_title(&item.title);
        let part = name.and_then(|name| vocabulary().component(name));
        let several = parts.insert(item.path.clone(), part).is_some();
        if several {
            parts.insert(item.path.clone(), None);
        }
    }
    let known = parts.into_iter();
    known
        .filter_map(|(path, part)| Some((path, part?)))
        .collect()
}

/// The sentence that leads to a table without a title.
fn led_to(item: &OutlineItem, opening: &str) -> String {
    let untitled = item.path.starts_with("Table ") && item.title.is_empty();
    let leading = clauses::leading_sentence(opening);
    let leads = untitled && leading.trim_end().ends_with(':');
    if leads {
        leading.to_owned()
    } else {
        String::new()
    }
}
