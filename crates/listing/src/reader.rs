//! The reading of a document, from its bytes to its clauses.

use std::collections::BTreeMap;

use vocabulary::Component;

use crate::clauses::{self, Around, Draft, Yield};
use crate::header::{header, is_prose};
use crate::layout::{DecodeError, Flow, decode, lines};
use crate::model::{
    Accounted, Clause, Confidence, Item, PlaceKind, Reading, Relation, Requirement, Source, Span,
    Status, Warning, WarningKind, sha256,
};
use crate::naming::{Subject, components_in, named_part};
use crate::options::{ItemOption, groups, item_option};
use crate::outline::{Outline, OutlineItem, Paragraph, outline};
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
    let outline = outline(text, &lines);
    let (stated, demanded) = split_head(text, &outline.head);
    let head = header(text, &stated);
    let mut reader = Reader::new(text, &outline);
    reader.warnings.extend(head.warnings);
    reader.head(&stated, &demanded);
    for index in 0..outline.items.len() {
        reader.item(index);
    }
    let pages = 1 + lines.iter().filter(|line| line.after_page_break).count();
    let source = Source {
        name: name.to_owned(),
        sha256: sha256(text.as_bytes()),
        bytes: text.len(),
        pages,
    };
    reader.finish(source, head.header)
}

/// The paragraphs of the head, and apart from them the lines that demand something: "For use only beneath floors not less than 6 in.
/// thick" states nothing of the joint, and must be met. A line that goes on in small letters belongs to the one before it.
fn split_head(text: &str, head: &[Vec<Span>]) -> (Vec<Vec<Span>>, Vec<Vec<Span>>) {
    let mut stated = Vec::new();
    let mut demanded: Vec<Vec<Span>> = Vec::new();
    for pieces in head {
        let flow = Flow::of(text, pieces.iter().copied());
        if is_prose(flow.text()) {
            stated.push(pieces.clone());
            continue;
        }
        let mut kept = Vec::new();
        let mut demanding = false;
        for piece in pieces {
            let words = piece.of(text).trim_start();
            let goes_on = demanding && words.starts_with(char::is_lowercase);
            demanding = goes_on || demands(words);
            match demanded.last_mut().filter(|_| goes_on) {
                Some(last) => last.push(*piece),
                None if demanding => demanded.push(vec![*piece]),
                None => kept.push(*piece),
            }
        }
        if !kept.is_empty() {
            stated.push(kept);
        }
    }
    (stated, demanded)
}

/// Whether a line of the head demands something, and names none of the things that a head states.
fn demands(line: &str) -> bool {
    const DEMANDS: &[&str] = &[
        "shall ",
        "must ",
        "for use ",
        "only ",
        "not less than",
        "no less than",
        "not to be",
        "not permitted",
        "limited to",
        "do not ",
        "required",
    ];
    const STATED: &[&str] = &[
        "rating", "width", "movement", "leakage", "class ", "opening", "design",
    ];
    let lower = line.to_lowercase();
    DEMANDS.iter().any(|words| lower.contains(words))
        && !STATED.iter().any(|words| lower.contains(words))
}

struct Reader<'a> {
    text: &'a str,
    outline: &'a Outline,
    options: Vec<ItemOption>,
    drafts: Vec<(String, Draft)>,
    warnings: Vec<(WarningKind, Span, String)>,
    configurations: Vec<String>,
    places: Places<'a>,
}

impl<'a> Reader<'a> {
    fn new(text: &'a str, outline: &'a Outline) -> Self {
        let paths: Vec<String> = outline.items.iter().map(|item| item.path.clone()).collect();
        let options = outline
            .items
            .iter()
            .map(|item| item_option(&item.title, &opening(text, item), &paths))
            .collect();
        let mut places = Places::new(text);
        for span in &outline.furniture {
            places.mark(*span, PlaceKind::Furniture);
        }
        Self {
            text,
            outline,
            options,
            drafts: Vec::new(),
            warnings: Vec::new(),
            configurations: Vec::new(),
            places,
        }
    }

    /// The paragraphs before the first item: sentences and demands become clauses, the rest is the head.
    fn head(&mut self, stated: &[Vec<Span>], demanded: &[Vec<Span>]) {
        // From the first sentence or bullet on, what stands before the first item is text like any other.
        let mut body = false;
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
        let found = clauses::read(self.text, &paragraph, &Around::default());
        self.take("", found);
    }

    fn item(&mut self, index: usize) {
        let Some(item) = self.outline.items.get(index) else {
            return;
        };
        self.places.mark(item.heading, PlaceKind::Heading);
        for span in &item.more_heading {
            self.places.mark(*span, PlaceKind::Heading);
        }
        let around = self.around(index, item);
        let found = clauses::read(self.text, &item.paragraphs, &around);
        self.take(&item.path, found);
    }

    fn take(&mut self, path: &str, found: Yield) {
        for span in found.lead_ins {
            self.places.mark(span, PlaceKind::Heading);
        }
        for span in found.covered {
            self.places.mark(span, PlaceKind::Clause);
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
        let mut options = Vec::new();
        // A footnote speaks of what the item that cites it speaks of.
        let mut above = Some(if item.path.starts_with('[') {
            self.citing(&item.path).unwrap_or(index)
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
                (false, false) => 2,
            };
            if let Some(option) = self.options.get(index) {
                if !option.replaces.is_empty() || option.optional {
                    options.push(outer.path.clone());
                }
                options.extend(option.configurations.iter().cloned());
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
            before: None,
        };
        Around {
            item: item.path.clone(),
            carried: item
                .parent
                .and_then(|parent| self.carried(parent, item.heading.start())),
            subject,
            options,
        }
    }

    /// The qualifier that an item's words carry over the items in it: the last before them end in a colon and hold no number.
    fn carried(&self, index: usize, before: usize) -> Option<clauses::Carried> {
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
                Paragraph::Table(table) => (table.span.start() < before).then_some(None),
            });
        let words = match last {
            Some(words) => words?,
            None => item.heading.of(self.text).to_owned(),
        };
        clauses::carried(&words)
    }

    /// The component named just before a footnote's mark in the text that cites it: "Sealant [c] at the ends".
    fn cited_component(&self, path: &str) -> Option<&'static Component> {
        if !path.starts_with('[') {
            return None;
        }
        let item = self
            .citing(path)
            .and_then(|index| self.outline.items.get(index))?;
        if item.title.contains(path) {
            return None;
        }
        let piece = item
            .paragraphs
            .iter()
            .find_map(|paragraph| match paragraph {
                Paragraph::Text(pieces) => pieces
                    .iter()
                    .map(|piece| piece.of(self.text))
                    .find(|words| words.contains(path)),
                Paragraph::Table(_) => None,
            })?;
        let before = piece.get(..piece.find(path)?)?;
        components_in(before)
            .last()
            .map(|(component, ..)| *component)
    }

    /// The first item that cites a footnote, in its title or in its text.
    fn citing(&self, footnote: &str) -> Option<usize> {
        let items = || {
            self.outline
                .items
                .iter()
                .enumerate()
                .filter(|(_, item)| !item.path.starts_with('['))
        };
        items()
            .find(|(_, item)| item.title.contains(footnote))
            .or_else(|| {
                items().find(|(_, item)| {
                    item.paragraphs.iter().any(|paragraph| match paragraph {
                        Paragraph::Text(pieces) => pieces
                            .iter()
                            .any(|piece| piece.of(self.text).contains(footnote)),
                        Paragraph::Table(_) => false,
                    })
                })
            })
            .map(|(index, _)| index)
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
        warnings.sort_by_key(|warning| (warning.span, warning.kind));
        let items = items(&self.outline.items, &self.options);
        let places = self.places.finish();
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

/// Whether a title names an attribute, or nothing: what stands under it is about the item around. "Bridging plates" names a thing.
fn names_attribute(title: &str) -> bool {
    let lower = title.to_lowercase();
    let words = || {
        lower
            .split(|c: char| !c.is_alphabetic())
            .filter(|word| !word.is_empty())
    };
    words().next().is_none()
        || words().any(|word| {
            vocabulary::vocabulary()
                .attribute(word.trim_end_matches('s'))
                .is_some()
        })
}

/// The first words of an item's text.
fn opening(text: &str, item: &OutlineItem) -> String {
    match item.paragraphs.first() {
        Some(Paragraph::Text(pieces)) => Flow::of(text, pieces.iter().copied().take(3))
            .text()
            .to_owned(),
        _ => String::new(),
    }
}

/// Gives each clause its id: the item's path and the clause's place in it.
fn number(text: &str, drafts: Vec<(String, Draft)>) -> Vec<Clause> {
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    drafts
        .into_iter()
        .map(|(item, draft)| {
            let count = counts.entry(item.clone()).or_default();
            *count += 1;
            let id = if item.is_empty() {
                format!("head/{count}")
            } else {
                format!("{item}/{count}")
            };
            Clause {
                id,
                item,
                span: draft.span,
                words: draft.span.of(text).to_owned(),
                property: draft.property,
                component: draft.component,
                attribute: draft.attribute,
                requirement: draft.requirement,
                condition: draft.condition,
                option: (!draft.options.is_empty()).then(|| draft.options.join(" & ")),
                read_by: draft.read_by,
                confidence: draft.confidence,
                status: Status::Draft,
            }
        })
        .collect()
}

fn items(items: &[OutlineItem], options: &[ItemOption]) -> Vec<Item> {
    items
        .iter()
        .zip(options)
        .map(|(item, option)| {
            let end = item
                .paragraphs
                .iter()
                .map(|paragraph| match paragraph {
                    Paragraph::Text(pieces) => pieces.last().map_or(0, |span| span.end()),
                    Paragraph::Table(table) => table.span.end(),
                })
                .max()
                .unwrap_or(0);
            let own = (!option.replaces.is_empty() || option.optional).then(|| item.path.clone());
            let configuration = option.configurations.first().cloned();
            Item {
                path: item.path.clone(),
                title: item.title.clone(),
                span: Span::new(item.heading.start(), end.max(item.heading.end())),
                option: own.or(configuration),
                parent: item
                    .parent
                    .and_then(|parent| items.get(parent))
                    .map(|parent| parent.path.clone()),
            }
        })
        .collect()
}

/// Pairs of clauses that bound one property of the vocabulary in one item, under the same option and condition, and can't both
/// hold, or name different values: the words must tell them apart in a way that no rule has seen.
fn contradicting(clauses: &[Clause]) -> Vec<(usize, usize)> {
    let mut pairs = Vec::new();
    let mut first: BTreeMap<(&str, &str, Option<&str>, String), usize> = BTreeMap::new();
    for (index, clause) in clauses.iter().enumerate() {
        let Requirement::Bound(bound) = &clause.requirement else {
            continue;
        };
        let condition = clause
            .condition
            .as_ref()
            .map(|condition| condition.expr.to_string())
            .unwrap_or_default();
        let key = (
            clause.item.as_str(),
            clause.property.as_str(),
            clause.option.as_deref(),
            condition,
        );
        match first.get(&key) {
            Some(earlier) => {
                let other = clauses.get(*earlier).and_then(Clause::bound);
                let opposite = other.is_some_and(|other| {
                    let ends = (other.relation, bound.relation);
                    let open_range = matches!(
                        ends,
                        (Relation::AtLeast, Relation::AtMost)
                            | (Relation::AtMost, Relation::AtLeast)
                    );
                    !open_range
                        && (other.lo, other.hi, other.unit) != (bound.lo, bound.hi, bound.unit)
                });
                if opposite {
                    pairs.push((*earlier, index));
                }
            }
            None => {
                first.insert(key, index);
            }
        }
    }
    pairs
}

fn contradictions(clauses: &[Clause], pairs: &[(usize, usize)]) -> Vec<Warning> {
    pairs
        .iter()
        .filter_map(|(earlier, later)| {
            let (earlier, later) = (clauses.get(*earlier)?, clauses.get(*later)?);
            earlier.is_in_vocabulary().then(|| Warning {
                kind: WarningKind::Contradiction,
                span: later.span,
                words: later.words.clone(),
                message: format!(
                    "item {} bounds {} twice ({} and {}); what tells the two apart must be confirmed",
                    later.item, later.property, earlier.id, later.id
                ),
            })
        })
        .collect()
}
