//! What a page shows beside text: scans, figures, emblems, rules.

use super::lines::Line;
use crate::content::Shown;
use crate::model::{NoteKind, Rect};
use crate::numbers::whole;

/// What is smaller either way is a bullet or an ornament, in points.
const SMALLEST: f64 = 18.0;
/// What is smaller either way is no drawing that says anything, in points.
const SMALLEST_DRAWING: f64 = 36.0;
/// A picture over more of the page than this is the page itself.
const SCAN: f64 = 0.6;
/// Pictures over more of a page than this are what the page is there for, when it holds nothing else.
const PICTURE: f64 = 0.1;
/// A page with a picture of itself and fewer characters than this beside is a scan with something stamped on it.
const STAMPED: usize = 300;
/// What is lower is no side of a cell, in points.
const SHORTEST_UPRIGHT: f64 = 8.0;
/// The most sides of cells that a page has; what is drawn of more is no table.
const MOST_UPRIGHTS: usize = 600;
/// The most level rules of a page; what is drawn of more is a pattern.
const MOST_RULES: usize = 1000;
/// The most figures of a page, and emblems of a document; pictures beyond that are parts of a pattern.
const MOST_FIGURES: usize = 100;
/// The longest lettering that a figure has, in characters.
const LONGEST_LETTERING: usize = 30;

/// What a page shows beside text.
#[derive(Debug, Default)]
pub(super) struct Pictures {
    /// Level rules, from top to bottom.
    pub(super) rules: Vec<Rect>,
    /// Upright rules.
    pub(super) uprights: Vec<Rect>,
    /// Figures.
    pub(super) figures: Vec<Rect>,
    /// Whether the page is a picture of itself, without its text.
    pub(super) is_scan: bool,
}

/// Pictures that stand on several pages in one place: a maker's emblem, not a figure.
pub(super) fn emblems(pages: &[Shown]) -> Vec<Rect> {
    let mut places: Vec<(Rect, usize)> = pages
        .iter()
        .enumerate()
        .flat_map(|(page, shown)| shown.images.iter().map(move |rect| (*rect, page)))
        .collect();
    places.sort_by(|(a, _), (b, _)| a.y0.total_cmp(&b.y0).then(a.x0.total_cmp(&b.x0)));
    let mut emblems: Vec<Rect> = Vec::new();
    for pair in places.windows(2) {
        if let [(a, one), (b, other)] = pair
            && one != other
            && alike(*a, *b)
            && emblems.last().is_none_or(|last| !alike(*last, *a))
        {
            emblems.push(*a);
        }
    }
    emblems.truncate(MOST_FIGURES);
    emblems
}

fn alike(a: Rect, b: Rect) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < 3.0;
    near(a.x0, b.x0) && near(a.y0, b.y0) && near(a.x1, b.x1) && near(a.y1, b.y1)
}

/// The picture that a page is: one over most of it, or what its pictures cover when it holds nothing else.
fn scan(shown: &Shown, area: f64, seen: usize) -> Option<Rect> {
    let covers = |rect: &Rect, share: f64| rect.width() * rect.height() > share * area;
    let whole = shown.images.iter().find(|rect| covers(rect, SCAN)).copied();
    whole.or_else(|| {
        let pictures = shown.images.iter().copied().reduce(Rect::join);
        pictures.filter(|rect| seen == 0 && covers(rect, PICTURE))
    })
}

/// Sorts what a page shows beside text, and takes the lettering of its figures out of its lines.
pub(super) fn pictures(
    shown: &Shown,
    page: Rect,
    emblems: &[Rect],
    flows: &mut Vec<Vec<Line>>,
    note: &mut impl FnMut(NoteKind, Rect, String),
) -> Pictures {
    let area = page.width() * page.height();
    let covers = |rect: &&Rect| rect.width() * rect.height() > SCAN * area;
    let seen = shown
        .glyphs
        .iter()
        .filter(|glyph| !glyph.is_blank() && !glyph.invisible)
        .count();
    let scan = scan(shown, area, seen);
    let invisible = shown
        .glyphs
        .iter()
        .any(|glyph| glyph.invisible && !glyph.is_blank());
    let mut found = Pictures::default();
    match scan {
        Some(rect) if seen < STAMPED && !invisible => {
            found.is_scan = true;
            let words = "the page is a picture: its text isn't in the file, and must be supplied";
            note(NoteKind::Scanned, rect, words.to_owned());
        }
        Some(rect) if invisible => {
            let words =
                "a machine read the text from the picture of the page: compare it with the picture";
            note(NoteKind::BehindScan, rect, words.to_owned());
        }
        Some(rect) => {
            let words = "a picture lies behind the text of the page: look at it";
            note(NoteKind::Figure, rect, words.to_owned());
        }
        None if invisible => {
            let words = "some of the text doesn't show on the page, and was read all the same";
            note(NoteKind::Hidden, page, words.to_owned());
        }
        None if seen == 0 && shown.images.is_empty() => {
            note(NoteKind::Empty, page, "the page holds no text".to_owned());
        }
        None => {}
    }
    let mut small = 0;
    let is_picture = found.is_scan && seen == 0;
    let others = shown
        .images
        .iter()
        .filter(|image| !covers(image) && !is_picture);
    for image in others {
        if image.width() < SMALLEST || image.height() < SMALLEST {
            small += 1;
        } else if emblems.iter().any(|emblem| alike(*emblem, *image)) {
            let words = "a picture that stands on other pages too; it isn't in the text";
            note(NoteKind::Emblem, *image, words.to_owned());
        } else {
            found.figures.push(*image);
        }
    }
    let (drawings, stray) = drawings(&shown.drawn, page);
    found.figures.extend(drawings);
    small += stray;
    found.figures = joined(found.figures);
    small += found.figures.len().saturating_sub(MOST_FIGURES);
    found.figures.truncate(MOST_FIGURES);
    if small > 0 {
        let words = format!("{small} small pictures or drawn marks are not in the text");
        note(NoteKind::Emblem, page, words);
    }
    found
        .figures
        .sort_by(|a, b| a.y1.total_cmp(&b.y1).then(a.x0.total_cmp(&b.x0)));
    for figure in &found.figures {
        note(
            NoteKind::Figure,
            *figure,
            "a figure: look at it on the page".to_owned(),
        );
        // Over so much of the page a drawing is a ground that text stands on.
        if figure.width() * figure.height() <= SCAN * area {
            take_lettering(*figure, flows, note);
        }
    }
    let inside = |rule: &Rect| {
        let (x, y) = (
            f64::midpoint(rule.x0, rule.x1),
            f64::midpoint(rule.y0, rule.y1),
        );
        found.figures.iter().any(|figure| figure.holds(x, y))
    };
    let is_upright = |rule: &&Rect| rule.width() <= 2.5 && rule.height() >= SHORTEST_UPRIGHT;
    let upright = shown
        .rules
        .iter()
        .filter(is_upright)
        .filter(|rule| !inside(rule));
    let uprights: Vec<Rect> = upright.take(MOST_UPRIGHTS).copied().collect();
    let level = shown
        .rules
        .iter()
        .filter(|rule| rule.height() <= 2.5 && rule.width() >= SMALLEST);
    let mut rules = joined_rules(level.filter(|rule| !inside(rule)).copied().collect());
    rules.truncate(MOST_RULES);
    found.rules = rules;
    found.uprights = uprights;
    found
}

/// Regions of a page that are drawn into, and how many marks are too small to be one.
fn drawings(drawn: &[Rect], page: Rect) -> (Vec<Rect>, usize) {
    const ACROSS: f64 = 80.0;
    const NEAR: f64 = 6.0;
    let side = (page.width().max(page.height()) / ACROSS).max(1.0);
    let columns = whole(page.width() / side) + 1;
    let rows = whole(page.height() / side) + 1;
    let cell = |at: f64| whole((at / side).floor());
    // How many drawings touch each cell: counted at corners first, then summed.
    let mut sums = vec![vec![0_i32; columns + 2]; rows + 2];
    let mut add = |row: usize, column: usize, by: i32| {
        if let Some(sum) = sums
            .get_mut(row.min(rows + 1))
            .and_then(|row| row.get_mut(column.min(columns + 1)))
        {
            *sum += by;
        }
    };
    for rect in drawn {
        let (left, right) = (cell(rect.x0 - NEAR), cell(rect.x1 + NEAR) + 1);
        let (top, bottom) = (cell(rect.y0 - NEAR), cell(rect.y1 + NEAR) + 1);
        add(top, left, 1);
        add(top, right, -1);
        add(bottom, left, -1);
        add(bottom, right, 1);
    }
    let mut above = vec![0_i32; columns + 2];
    for row in &mut sums {
        let mut along = 0;
        for (sum, above) in row.iter_mut().zip(&mut above) {
            along += *sum;
            *above += along;
            *sum = *above;
        }
    }
    let regions = regions(&sums);
    let mut counts = vec![(0_usize, None::<Rect>); regions.count];
    for rect in drawn {
        let (row, column) = (cell(rect.y0), cell(rect.x0));
        let region = regions
            .of
            .get(row)
            .and_then(|row| row.get(column))
            .copied()
            .flatten();
        if let Some((count, bounds)) = region.and_then(|region| counts.get_mut(region)) {
            *count += 1;
            *bounds = Some(bounds.map_or(*rect, |bounds| bounds.join(*rect)));
        }
    }
    let mut found = Vec::new();
    let mut stray = 0;
    for (count, bounds) in counts {
        match bounds {
            Some(bounds)
                // One shape alone is a frame around what it holds.
                if count > 1
                    && bounds.width() >= SMALLEST_DRAWING && bounds.height() >= SMALLEST_DRAWING =>
            {
                found.push(bounds);
            }
            _ => stray += count,
        }
    }
    (found, stray)
}

/// Which connected region each cell of a grid belongs to.
struct Regions {
    of: Vec<Vec<Option<usize>>>,
    count: usize,
}

fn regions(cells: &[Vec<i32>]) -> Regions {
    let mut of: Vec<Vec<Option<usize>>> = cells.iter().map(|row| vec![None; row.len()]).collect();
    let mut count = 0;
    for row in 0..cells.len() {
        let columns = cells.get(row).map_or(0, Vec::len);
        for column in 0..columns {
            let mut open = vec![(row, column)];
            let mut used = false;
            while let Some((row, column)) = open.pop() {
                let drawn = cells
                    .get(row)
                    .and_then(|cells| cells.get(column))
                    .is_some_and(|sum| *sum > 0);
                let Some(slot) = of.get_mut(row).and_then(|cells| cells.get_mut(column)) else {
                    continue;
                };
                if !drawn || slot.is_some() {
                    continue;
                }
                *slot = Some(count);
                used = true;
                open.extend([
                    (row + 1, column),
                    (row.wrapping_sub(1), column),
                    (row, column + 1),
                    (row, column.wrapping_sub(1)),
                ]);
            }
            count += usize::from(used);
        }
    }
    Regions { of, count }
}

/// Figures that overlap, as one. There are few.
fn joined(figures: Vec<Rect>) -> Vec<Rect> {
    const MOST: usize = 200;
    let mut joined: Vec<Rect> = Vec::new();
    for figure in figures {
        let mut figure = figure;
        if joined.len() < MOST {
            while let Some(at) = joined.iter().position(|other| {
                other.x0 <= figure.x1
                    && figure.x0 <= other.x1
                    && other.y0 <= figure.y1
                    && figure.y0 <= other.y1
            }) {
                figure = figure.join(joined.swap_remove(at));
            }
        }
        joined.push(figure);
    }
    joined
}

/// Rules on one line that touch, as one; from top to bottom.
fn joined_rules(mut rules: Vec<Rect>) -> Vec<Rect> {
    rules.sort_by(|a, b| {
        (a.y0 / 3.0)
            .floor()
            .total_cmp(&(b.y0 / 3.0).floor())
            .then(a.x0.total_cmp(&b.x0))
    });
    let mut joined: Vec<Rect> = Vec::new();
    for rule in rules {
        match joined.last_mut() {
            Some(last) if (last.y0 - rule.y0).abs() <= 3.0 && rule.x0 <= last.x1 + 3.0 => {
                last.x1 = last.x1.max(rule.x1);
            }
            _ => joined.push(rule),
        }
    }
    joined.sort_by(|a, b| a.y0.total_cmp(&b.y0).then(a.x0.total_cmp(&b.x0)));
    joined
}

/// Takes the lettering of a figure out of the lines and into a note, unless it is running text that a drawing lies around.
fn take_lettering(
    figure: Rect,
    flows: &mut Vec<Vec<Line>>,
    note: &mut impl FnMut(NoteKind, Rect, String),
) {
    let inside = |rect: Rect| {
        figure.holds(
            f64::midpoint(rect.x0, rect.x1),
            f64::midpoint(rect.y0, rect.y1),
        )
    };
    let within: Vec<(&str, Rect, usize)> = flows
        .iter()
        .flatten()
        .flat_map(|line| &line.segments)
        .map(|segment| (segment.text.as_str(), segment.rect(), segment.length))
        .filter(|(_, rect, _)| inside(*rect))
        .collect();
    let is_lettering = within
        .iter()
        .all(|(_, _, length)| *length <= LONGEST_LETTERING);
    let Some(around) = within.iter().map(|(_, rect, _)| *rect).reduce(Rect::join) else {
        return;
    };
    if !is_lettering {
        return;
    }
    let words: Vec<&str> = within.iter().map(|(text, ..)| text.trim()).collect();
    let words = format!(
        "lettering of the figure, which isn't in the text: {}",
        words.join("; ")
    );
    note(NoteKind::Lettering, around, words);
    for line in flows.iter_mut().flatten() {
        line.segments.retain(|segment| !inside(segment.rect()));
    }
    for lines in flows.iter_mut() {
        lines.retain(|line| !line.segments.is_empty());
    }
    flows.retain(|lines| !lines.is_empty());
}
