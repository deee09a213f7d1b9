//! How far what is said of an item, and the options that it lies in, reach within it.

use super::Reader;
use super::standing::{self, speaks_of_choice};
use crate::clauses::{Yield, other_subjects};
use crate::conditions::may_be_absent;
use crate::layout::Flow;
use crate::model::{Condition, Span};
use crate::naming::{component_of_title, components_in};
use crate::outline::{OutlineItem, Paragraph};

impl Reader<'_> {
    /// The stretches of an item that what it says of itself doesn't reach. What its title says, or an item around it, reaches all of it.
    pub(super) fn others_in(&self, item: &OutlineItem, standing: &Condition) -> Vec<Span> {
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

    /// Takes the options of an item, and of those around it, from the clauses behind a heading that is no part of it.
    pub(super) fn leave_options(&self, index: usize, found: &mut Yield) {
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
    pub(super) fn titled(&self, place: Span) -> Option<&'static str> {
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
}
