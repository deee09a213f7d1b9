//! From what pages show to text.

mod blocks;
mod chunks;
mod figures;
mod frames;
mod lines;
mod page;
mod spelling;

use crate::content::{Glyph, Shown};
use crate::error::PaperError;
use crate::model::{Note, NoteKind, PagePlace, PageSize, Paper, Rect};
use crate::numbers::{count, median, quantile};
use crate::text::Text;
use figures::Pictures;
use lines::{Line, lines_of};

/// Characters to a typed line.
const TYPED: f64 = 80.0;

/// What is the same for the whole document.
#[derive(Debug, Clone, Copy)]
struct Measures {
    /// How wide a column of characters is, in points.
    letter: f64,
    /// From one line of a paragraph to the next, in sizes of its letters.
    leading: f64,
    /// The left edge of the text on odd and on even pages.
    left: [f64; 2],
}

/// A page taken apart.
struct Sheet {
    /// Its lines, those of the direction that most of it runs in first.
    flows: Vec<Vec<Line>>,
    pictures: Pictures,
    size: PageSize,
    /// Whether most of the text runs level across the page.
    is_level: bool,
}

/// The text of a document.
///
/// # Errors
/// When no page has any, be it that they are pictures or that they are damaged.
pub(crate) fn lay_out(shown: &[Shown]) -> Result<Paper, PaperError> {
    let has_text = |page: &Shown| page.glyphs.iter().any(|glyph| !glyph.is_blank());
    if !shown.iter().any(has_text) {
        let is_broken = |page: &Shown| !page.faults.is_empty() && page.images.is_empty();
        if shown.iter().any(is_broken) {
            return Err(PaperError::Damaged);
        }
        return Err(PaperError::NoText { pages: shown.len() });
    }
    let mut notes = Vec::new();
    let emblems = figures::emblems(shown);
    let sheets: Vec<Sheet> = shown
        .iter()
        .enumerate()
        .map(|(index, page)| sheet(page, index + 1, &emblems, &mut notes))
        .collect();
    let measures = Measures::of(&sheets);
    let mut text = Text::default();
    for (index, sheet) in sheets.iter().enumerate() {
        text.begin_page(index + 1);
        page::write(sheet, index + 1, measures, &mut text, &mut notes);
    }
    notes.sort_by_key(|note| note.place.page);
    let (text, pieces) = text.finish();
    Ok(Paper {
        text,
        pages: sheets.iter().map(|sheet| sheet.size).collect(),
        notes,
        pieces,
    })
}

/// Takes a page apart, and notes what of it is no text.
fn sheet(page: &Shown, number: usize, emblems: &[Rect], notes: &mut Vec<Note>) -> Sheet {
    let size = page.size.unwrap_or(PageSize {
        width: 0.0,
        height: 0.0,
    });
    let whole = Rect {
        x0: 0.0,
        y0: 0.0,
        x1: size.width,
        y1: size.height,
    };
    let mut note = |kind: NoteKind, rect: Rect, words: String| {
        notes.push(Note {
            kind,
            place: PagePlace {
                page: number,
                rect: rect.rounded(),
            },
            words,
        });
    };
    for fault in &page.faults {
        note(NoteKind::Damaged, whole, fault.clone());
    }
    if let Some((count, rect)) = page.hidden {
        let words = format!("{count} characters don't show on the page and were not read");
        note(NoteKind::Hidden, rect, words);
    }
    let unknown: Vec<&Glyph> = page
        .glyphs
        .iter()
        .filter(|glyph| glyph.meaning.is_none())
        .collect();
    if let Some(rect) = unknown.iter().map(|glyph| glyph.rect).reduce(Rect::join) {
        let words = format!(
            "{} characters have no meaning in the file and stand as \u{fffd}: read them on the page",
            unknown.len()
        );
        note(NoteKind::UnknownCharacters, rect, words);
    }
    let (mut flows, turned, is_level) = flows(&page.glyphs, number, &mut note);
    for rect in turned {
        let words =
            "text runs in another direction than the rest of the page; it stands at the page's end"
                .to_owned();
        note(NoteKind::Turned, rect, words);
    }
    let pictures = figures::pictures(page, whole, emblems, &mut flows, &mut note);
    Sheet {
        flows,
        pictures,
        size,
        is_level,
    }
}

/// The lines of each direction that text runs in, the most written first; where those after the first stand; and whether the first is
/// level.
fn flows(
    glyphs: &[Glyph],
    number: usize,
    note: &mut impl FnMut(NoteKind, Rect, String),
) -> (Vec<Vec<Line>>, Vec<Rect>, bool) {
    let mut turns: Vec<(i32, Vec<&Glyph>)> = Vec::new();
    for glyph in glyphs {
        let turn = turn_of(glyph);
        match turns.iter_mut().find(|(held, _)| *held == turn) {
            Some((_, held)) => held.push(glyph),
            None => turns.push((turn, vec![glyph])),
        }
    }
    turns.retain(|(_, glyphs)| glyphs.iter().any(|glyph| !glyph.is_blank()));
    turns.sort_by_key(|(_, glyphs)| core::cmp::Reverse(glyphs.len()));
    let turned = turns
        .iter()
        .skip(1)
        .filter_map(|(_, glyphs)| glyphs.iter().map(|glyph| glyph.rect).reduce(Rect::join))
        .collect();
    let is_level = turns.first().is_none_or(|(turn, _)| *turn == 0);
    let flows = turns
        .into_iter()
        .map(|(_, glyphs)| lines_of(&glyphs, number, note))
        .collect();
    (flows, turned, is_level)
}

/// The direction of a glyph in whole degrees.
#[expect(
    clippy::cast_possible_truncation,
    reason = "an angle between -180 and 180 degrees"
)]
fn turn_of(glyph: &Glyph) -> i32 {
    glyph.turn.round() as i32
}

impl Measures {
    fn of(sheets: &[Sheet]) -> Self {
        let flows = || sheets.iter().filter_map(|sheet| sheet.flows.first());
        let segments = || flows().flatten().flat_map(|line| &line.segments);
        let width = |least: usize| {
            let long = segments().filter(|segment| segment.length >= least);
            median(
                long.map(|segment| (segment.x1 - segment.x0) / count(segment.length))
                    .collect(),
            )
        };
        // So narrow that a full line of the widest page is as long as a typed one: narrow letters make no wider gaps.
        let ends = segments()
            .map(|segment| segment.x1)
            .fold(f64::NEG_INFINITY, f64::max);
        let begins = segments()
            .map(|segment| segment.x0)
            .fold(f64::INFINITY, f64::min);
        let letter = width(20)
            .or_else(|| width(1))
            .unwrap_or(6.0)
            .max((ends - begins) / TYPED)
            .clamp(1.0, 60.0);
        let mut steps = Vec::new();
        for lines in flows() {
            for pair in lines.windows(2) {
                if let [above, below] = pair {
                    let step = (below.base - above.base) / below.size.max(above.size).max(1.0);
                    if (0.8..2.2).contains(&step) {
                        steps.push(step);
                    }
                }
            }
        }
        // The lower fifth: where paragraphs are short, most steps are those between them.
        let leading = quantile(steps, 5).unwrap_or(1.2);
        let edge = |parity: usize| {
            sheets
                .iter()
                .skip(parity)
                .step_by(2)
                .filter_map(|sheet| sheet.flows.first())
                .flatten()
                .flat_map(|line| &line.segments)
                .map(|segment| segment.x0)
                .fold(f64::INFINITY, f64::min)
        };
        let (odd, even) = (edge(0), edge(1));
        let left = if (odd - even).abs() <= 6.0 {
            [odd.min(even); 2]
        } else {
            [odd, even]
        };
        Self {
            letter,
            leading,
            left,
        }
    }
}
