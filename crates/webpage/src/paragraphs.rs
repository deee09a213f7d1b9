//! A row's stretches put together to paragraphs: where the page is too narrow for the lines as they stand, the breaks that only keep
//! prose to a width flow, and the paragraph keeps its indent.

use listing::Span;
use maud::{Markup, html};

use crate::stretches::Stretch;
use crate::words::words;

/// The deepest indent that a paragraph keeps where it flows, in letters; what is set farther in was set to the middle.
const DEEPEST: usize = 12;

/// The indent of what was set to the middle of the page, and how much farther in the second line of a lone line stands.
const SHALLOW: usize = 2;

/// A paragraph of a row.
struct Paragraph<'s> {
    stretches: &'s [Stretch],
    /// How far in its first line stands.
    lead: usize,
    /// How far in the others do.
    hang: usize,
}

/// The words of a row that is no table, of which the widest line has so many letters.
pub(crate) fn paragraphs(
    text: &str,
    stretches: &[Stretch],
    widest: usize,
    page: &mut usize,
) -> Markup {
    let end = stretches.last().map_or(0, |last| last.span.end());
    let row = Lines { text, end, widest };
    let mut rest = stretches;
    html! {
        @while !rest.is_empty() {
            @let paragraph = row.first(&mut rest);
            span.para style=[indents(&paragraph)] {
                @for stretch in paragraph.stretches { (words(text, stretch, row.is_soft(stretch), page)) }
            }
        }
    }
}

/// The lines of a row.
#[derive(Clone, Copy)]
struct Lines<'t> {
    text: &'t str,
    /// Where the row ends.
    end: usize,
    /// How many letters the widest of them has.
    widest: usize,
}

/// Lines that are all shorter than this weren't broken to keep prose to a width.
const NARROWEST: usize = 45;

impl Lines<'_> {
    /// The first paragraph of what is left.
    fn first<'s>(self, rest: &mut &'s [Stretch]) -> Paragraph<'s> {
        let breaks = |stretch: &Stretch| stretch.span.of(self.text).contains('\n');
        let ends = |stretch: &Stretch| breaks(stretch) && !self.is_soft(stretch);
        let length = rest.iter().position(ends).map_or(rest.len(), |end| end + 1);
        let (stretches, after) = rest.split_at(length);
        *rest = after;
        let first = stretches.first();
        let lead = first.map_or(0, |first| self.indent(first.span.start()));
        let second = stretches.iter().find(|stretch| breaks(stretch));
        let second = second.filter(|stretch| self.is_soft(stretch));
        let hang = second.map_or(lead + SHALLOW, |second| self.indent(second.span.end()));
        let (lead, hang) = if lead.max(hang) > DEEPEST {
            (SHALLOW, SHALLOW)
        } else {
            (lead, hang)
        };
        Paragraph {
            stretches,
            lead,
            hang,
        }
    }

    /// How many blanks stand from a place on.
    fn indent(self, at: usize) -> usize {
        let line = self.text.get(at..).unwrap_or_default();
        line.chars().take_while(|c| *c == ' ').count()
    }

    /// Whether white space may flow: an indent, or one line break that only keeps prose to a width.
    fn is_soft(self, stretch: &Stretch) -> bool {
        let space = stretch.span.of(self.text);
        if !space.trim().is_empty() || space.contains('\u{c}') {
            return false;
        }
        match space.matches('\n').count() {
            0 => self.is_at_line_start(stretch.span),
            1 => stretch.span.end() < self.end && self.is_flowing(stretch),
            _ => false,
        }
    }

    fn is_at_line_start(self, span: Span) -> bool {
        let before = self.text.get(..span.start()).unwrap_or_default();
        before.is_empty() || before.ends_with('\n')
    }

    /// Whether a line break stands within a clause, or only because the next word would have passed the widest line.
    fn is_flowing(self, stretch: &Stretch) -> bool {
        let before = self.text.get(..stretch.span.start()).unwrap_or_default();
        let line = before.rsplit('\n').next().unwrap_or_default().trim_end();
        let after = self.text.get(stretch.span.end()..).unwrap_or_default();
        let next = after.split('\n').next().unwrap_or_default();
        let Some(word) = next.split_whitespace().next() else {
            return false;
        };
        if line.is_empty() {
            return false;
        }
        let length = line.chars().count() + 1 + word.chars().count();
        !stretch.clauses.is_empty() || (length > self.widest && self.widest >= NARROWEST)
    }
}

fn indents(paragraph: &Paragraph<'_>) -> Option<String> {
    let Paragraph { lead, hang, .. } = paragraph;
    (lead + hang > 0).then(|| format!("--l:{lead};--h:{hang}"))
}
