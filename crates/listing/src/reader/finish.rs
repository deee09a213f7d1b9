//! The reading put together from all that was found: clauses numbered, warnings sorted, every byte accounted for.

use super::Reader;
use super::contradictions::{contradicting, contradictions};
use super::kinds::Kinds;
use super::numbering::{items, number};
use super::second_pass::unread_numbers;
use super::{column_gaps, column_heads, footnotes};
use crate::clauses;
use crate::model::{Accounted, Confidence, PlaceKind, Reading, Source, Span, Warning, WarningKind};
use crate::options::groups;

impl Reader<'_> {
    pub(super) fn finish(mut self, source: Source, header: crate::model::Header) -> Reading {
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
