//! Dimensions in lanes beside a view, so that no text meets another text or a line.

use super::text::width;
use crate::plane::{Box2, Point, pt};
use crate::section::Side;

/// What is taken already: texts, and lines that no text may meet.
#[derive(Debug, Clone, Default)]
pub(crate) struct Occupied {
    /// Boxes of texts and marks.
    pub(crate) texts: Vec<Box2>,
    /// Lines.
    pub(crate) lines: Vec<(Point, Point)>,
    /// Dimension lines, which may not lie on one another.
    along: Vec<Box2>,
}

/// A dimension in its place.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Placed {
    /// The dimension line.
    pub(crate) line: (Point, Point),
    /// From the part to the dimension line.
    pub(crate) extensions: Vec<(Point, Point)>,
    /// The words, one under the other, and where each line's middle and baseline are.
    pub(crate) words: Vec<(Point, String)>,
}

/// The size of a dimension's letters.
pub(crate) const SIZE: f64 = 2.3;
/// From one line of words to the next.
const STEP: f64 = 2.8;

/// From one lane beside a view to the next.
pub(crate) const LANE: f64 = 15.5;

/// Finds a place for a dimension and takes it, in one of so many lanes beside the view; none when every place is taken.
pub(crate) fn place(
    from: Point,
    to: Point,
    side: Side,
    words: &[String],
    view: Box2,
    lanes: u8,
    occupied: &mut Occupied,
) -> Option<Placed> {
    let widest = words
        .iter()
        .map(|line| width(line, SIZE, false))
        .fold(0.0, f64::max);
    let tall = STEP * f64::from(u32::try_from(words.len()).unwrap_or(1));
    let room = (widest, tall);
    let found = match side {
        Side::Right => (0..lanes)
            .flat_map(|lane| right(from, to, room, view, lane))
            .find(|one| fits(one, occupied)),
        Side::Below => (0..2_u8)
            .flat_map(|lane| below(from, to, room, view, lane))
            .find(|one| fits(one, occupied)),
        Side::Under | Side::Over => inside(from, to, room, view, side)
            .into_iter()
            .find(|one| fits(one, occupied)),
    }?;
    let placed = Placed {
        words: lines_in(found.text, words),
        line: found.line,
        extensions: found.extensions.clone(),
    };
    occupied.texts.push(found.text);
    occupied.lines.extend(found.extensions);
    occupied.lines.push(found.line);
    occupied
        .along
        .push(Box2::of(found.line.0, found.line.1).grown(0.4));
    Some(placed)
}

struct Candidate {
    line: (Point, Point),
    extensions: Vec<(Point, Point)>,
    text: Box2,
}

fn right(
    from: Point,
    to: Point,
    (wide, tall): (f64, f64),
    view: Box2,
    place: u8,
) -> Vec<Candidate> {
    let x = view.max.x + 4.0 + f64::from(place) * LANE;
    let (top, foot) = (from.y.min(to.y), from.y.max(to.y));
    let line = (pt(x, top), pt(x, foot));
    let start = |point: Point| point.x.max(view.min.x) + 1.0;
    let extensions = vec![
        (pt(start(from), from.y), pt(x + 1.0, from.y)),
        (pt(start(to), to.y), pt(x + 1.0, to.y)),
    ];
    let middle = f64::midpoint(top, foot);
    // Beside the line; else just above its upper end, or below its lower one.
    [middle, top - tall / 2.0 - 0.6, foot + tall / 2.0 + 0.6]
        .into_iter()
        .map(|y| Candidate {
            line,
            extensions: extensions.clone(),
            text: Box2::of(
                pt(x + 1.0, y - tall / 2.0),
                pt(x + 1.0 + wide, y + tall / 2.0),
            ),
        })
        .collect()
}

fn below(
    from: Point,
    to: Point,
    (wide, tall): (f64, f64),
    view: Box2,
    place: u8,
) -> Vec<Candidate> {
    let y = view.max.y + 4.0 + f64::from(place) * 8.5;
    let (left, right) = (from.x.min(to.x), from.x.max(to.x));
    let line = (pt(left, y), pt(right, y));
    let extensions = vec![
        (pt(from.x, view.max.y + 1.0), pt(from.x, y + 1.0)),
        (pt(to.x, view.max.y + 1.0), pt(to.x, y + 1.0)),
    ];
    let middle = f64::midpoint(left, right);
    [middle, right + wide / 2.0 + 1.0, left - wide / 2.0 - 1.0]
        .into_iter()
        .map(|x| Candidate {
            line,
            extensions: extensions.clone(),
            text: Box2::of(
                pt(x - wide / 2.0, y + 0.7),
                pt(x + wide / 2.0, y + 0.7 + tall),
            ),
        })
        .collect()
}

/// In the view itself, as far as there is room.
fn inside(
    from: Point,
    to: Point,
    (wide, tall): (f64, f64),
    view: Box2,
    side: Side,
) -> Option<Candidate> {
    let (left, right) = (from.x.min(to.x), from.x.max(to.x));
    let start = if right - left >= wide {
        f64::midpoint(left, right) - wide / 2.0
    } else {
        left + 0.5
    };
    let y = from.y;
    let top = if side == Side::Over {
        y - 0.8 - tall
    } else {
        y + 0.8
    };
    let foot = top + tall;
    let text = Box2::of(pt(start, top), pt(start + wide, foot));
    view.holds(text).then_some(Candidate {
        line: (pt(left, y), pt(right, y)),
        extensions: Vec::new(),
        text,
    })
}

fn fits(one: &Candidate, occupied: &Occupied) -> bool {
    let text = one.text.grown(0.3);
    let mut new = one.extensions.iter().chain(core::iter::once(&one.line));
    let along = Box2::of(one.line.0, one.line.1).grown(0.4);
    !occupied.texts.iter().any(|other| other.overlaps(text))
        && !occupied.lines.iter().any(|(from, to)| text.is_crossed_by(*from, *to))
        && !new.any(|(from, to)| occupied.texts.iter().any(|other| other.is_crossed_by(*from, *to)))
        && !occupied.along.iter().any(|other| other.overlaps(along))
        // A text that sits at an end of its own line must not be struck by its own extensions.
        && !one.extensions.iter().any(|(from, to)| one.text.is_crossed_by(*from, *to))
}

fn lines_in(text: Box2, words: &[String]) -> Vec<(Point, String)> {
    let middle = f64::midpoint(text.min.x, text.max.x);
    let mut baseline = text.min.y + SIZE * 0.86;
    let mut lines = Vec::new();
    for line in words {
        lines.push((pt(middle, baseline), line.clone()));
        baseline += STEP;
    }
    lines
}
