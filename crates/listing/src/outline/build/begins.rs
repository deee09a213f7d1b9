//! Where an item begins: its marker, and where it stands among the others.

use super::super::marker::{Close, Marker, Part, bare_marker};
use super::super::sequence::Placement;
use super::{Builder, Paragraph};
use crate::layout::Line;
use crate::model::Span;

impl Builder<'_> {
    /// Where an item stands that names itself the alternate of the one with its label: `(g) alternate: foam strip`.
    pub(super) fn alternate(&self, marker: &Marker, words: &str) -> Option<Placement> {
        let rest = words.get(marker.len..)?.to_lowercase();
        let named = ["alternate", "alternative"]
            .iter()
            .find_map(|word| rest.strip_prefix(word))?;
        let offers = [":", " - ", " – ", " — ", ". "];
        let told = offers.iter().any(|sign| named.starts_with(sign));
        told.then(|| self.sequence.alternate(marker))?
    }

    /// Opens the item whose marker a stretch of a line begins with, and the part that begins in it, if one does.
    pub(super) fn begin_item(
        &mut self,
        at: usize,
        marker: &Marker,
        placement: &Placement,
        indent: usize,
        content: Span,
    ) {
        self.parts.enter();
        let heading = Span::new(content.start(), content.start() + marker.len);
        // A schedule within an item ends where the next item stands apart from its rows.
        if self.gap && self.scheduled.is_some() {
            self.schedule = None;
            self.scheduled = None;
        }
        let index = self.push_item(placement.path.clone(), placement.parent, heading);
        self.sequence.enter(marker, placement, indent, index);
        self.open.retain(|(around, _)| *around < indent);
        self.open.push((indent, index));
        let rest = Span::new(heading.end(), content.end());
        // `T   JOINT SCHEDULE` captions the columns below it.
        let title = rest.of(self.source).to_lowercase();
        if title.ends_with("schedule") || title.ends_with("table") {
            self.captioned = Some(index);
        }
        let Some((first, part)) = self.first_part(at, rest) else {
            if !rest.is_empty() {
                self.add_text(rest, true);
            }
            return;
        };
        if let Some(placement) = self.sequence.place(&first.marker, first.indent) {
            self.add_text(Span::new(rest.start(), part.start()), true);
            self.begin_item(at, &first.marker, &placement, first.indent, part);
        } else {
            self.add_text(rest, true);
        }
    }

    /// The marker of a part that the first line of an item around it names: `3A Sealant` under `3  FACE SEAL (one of 3A, 3B)`.
    pub(super) fn announced_part(&self, words: &str) -> Option<Marker> {
        let marker = bare_marker(words)?;
        let names = |(_, index): &(usize, usize)| {
            let item = self.outline.items.get(*index);
            let first = item.and_then(|item| match item.paragraphs.first() {
                Some(Paragraph::Text(pieces)) => pieces.first(),
                _ => None,
            });
            let first = first.map_or("", |first| first.of(self.source));
            let mut labels = first.split(|c: char| !c.is_alphanumeric());
            labels.any(|label| label == marker.label)
        };
        self.open.iter().any(names).then_some(marker)
    }

    /// Where a marker stands whose number is several beyond the last: `5. Packing - ...` behind `2. Clips - ...`. What follows it must look like an item's title.
    pub(super) fn leap(&self, marker: &Marker, line: &Line<'_>, words: &str) -> Option<Placement> {
        const LONGEST_TITLE: usize = 60;
        let rest = words.get(marker.len..)?;
        let end = [" - ", " – ", " — ", ": ", "* ", ". "]
            .iter()
            .filter_map(|sign| rest.find(sign))
            .min()?;
        let title = rest.get(..end)?;
        let titled = title.starts_with(char::is_uppercase)
            && title.len() <= LONGEST_TITLE
            && !title.contains(|c: char| c.is_ascii_digit() || c == ';');
        let begins = self.gap || self.last_sentence_ended();
        (titled && begins).then(|| self.sequence.leap(marker, line.indent))?
    }

    /// A marker without punctuation, or one that a sentence may cite ("as Article 2. directs"), may begin an item only after a gap or at the
    /// very start.
    pub(super) fn may_begin(&self, marker: &Marker, words: &str) -> bool {
        let cited = ["article", "paragraph", "chapter"].iter().any(|word| {
            words
                .get(..word.len())
                .is_some_and(|head| head.eq_ignore_ascii_case(word))
        });
        let bare = marker.close == Close::Nothing
            && matches!(
                marker.parts.as_slice(),
                [Part::Number(_) | Part::Letters(_)]
            );
        // `Item 02 - Packing: ...` is no item that a sentence cites.
        let rest = words.get(marker.len..).unwrap_or_default();
        let titled = ["- ", "– ", "— "].iter().any(|dash| {
            let name = rest.strip_prefix(dash);
            name.is_some_and(|name| name.starts_with(char::is_uppercase))
        });
        self.gap || !(bare || cited) || marker.introduced && titled && !cited
    }
}
