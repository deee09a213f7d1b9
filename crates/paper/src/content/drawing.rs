//! Lines, shapes and pictures.

use hayro_font::kurbo::{Affine, Point};

use super::Work;
use crate::model::Rect;

/// A line or shape is a rule when it is no thicker than this, in points.
const RULE: f64 = 2.5;
/// How far off level a rule may run, in points.
const OFF_LEVEL: f64 = 0.75;

/// The path under way, in the coordinates that it is given in.
#[derive(Debug, Default)]
pub(super) struct Path {
    parts: Vec<Part>,
}

/// A connected part of a path.
#[derive(Debug)]
struct Part {
    points: Vec<(f64, f64)>,
    is_curved: bool,
}

impl Path {
    pub(super) fn move_to(&mut self, x: f64, y: f64) {
        self.parts.push(Part {
            points: vec![(x, y)],
            is_curved: false,
        });
    }

    pub(super) fn line_to(&mut self, x: f64, y: f64) {
        if let Some(part) = self.parts.last_mut() {
            part.points.push((x, y));
        }
    }

    pub(super) fn curve(&mut self, points: &[(f64, f64)]) {
        if let Some(part) = self.parts.last_mut() {
            part.points.extend(points);
            part.is_curved = true;
        }
    }

    pub(super) fn close(&mut self) {
        if let Some(part) = self.parts.last_mut()
            && let Some(first) = part.points.first().copied()
        {
            part.points.push(first);
        }
    }

    pub(super) fn rectangle(&mut self, x: f64, y: f64, width: f64, height: f64) {
        self.move_to(x, y);
        self.line_to(x + width, y);
        self.line_to(x + width, y + height);
        self.line_to(x, y + height);
        self.close();
    }

    pub(super) fn clear(&mut self) {
        self.parts.clear();
    }
}

impl Work<'_> {
    /// Paints the path: filled, or its outline drawn.
    pub(super) fn paint(&mut self, filled: bool) {
        let matrix = self.states.now().matrix;
        let hidden = self.marked.hides();
        let path = core::mem::take(&mut self.path);
        for part in path.parts.iter().filter(|_| !hidden) {
            self.paint_part(part, matrix, filled);
        }
    }

    fn paint_part(&mut self, part: &Part, matrix: Affine, filled: bool) {
        let points: Vec<Point> = part
            .points
            .iter()
            .map(|(x, y)| matrix * Point::new(*x, *y))
            .collect();
        let Some(bounds) = points.iter().map(|point| spot(*point)).reduce(Rect::join) else {
            return;
        };
        let Some(bounds) = self.on_page(bounds) else {
            return;
        };
        let thin = bounds.width().min(bounds.height()) <= RULE;
        if filled && thin {
            self.shown.rules.push(bounds);
            return;
        }
        let straight = |pair: &[Point]| match pair {
            [a, b] => (a.x - b.x).abs() <= OFF_LEVEL || (a.y - b.y).abs() <= OFF_LEVEL,
            _ => true,
        };
        if part.is_curved || !points.windows(2).all(straight) {
            self.shown.drawn.push(bounds);
        } else if !filled {
            let sides = points
                .windows(2)
                .filter_map(|pair| pair.iter().map(|point| spot(*point)).reduce(Rect::join));
            for side in sides {
                if let Some(side) = self.on_page(side) {
                    self.shown.rules.push(side);
                }
            }
        }
        // A filled rectangle is a tint behind text: it says nothing.
    }

    /// A picture, which fills the unit square of its coordinates.
    pub(super) fn image(&mut self) {
        let matrix = self.states.now().matrix;
        let corners = [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)];
        let bounds = corners
            .into_iter()
            .map(|(x, y)| spot(matrix * Point::new(x, y)))
            .reduce(Rect::join);
        if let Some(bounds) = bounds.and_then(|bounds| self.on_page(bounds))
            && !self.marked.hides()
        {
            self.shown.images.push(bounds);
        }
    }

    /// The part of a rectangle that lies on the page.
    fn on_page(&self, rect: Rect) -> Option<Rect> {
        let rect = Rect {
            x0: rect.x0.max(0.0),
            y0: rect.y0.max(0.0),
            x1: rect.x1.min(self.size.width),
            y1: rect.y1.min(self.size.height),
        };
        let is_there = [rect.x0, rect.y0, rect.x1, rect.y1]
            .iter()
            .all(|edge| edge.is_finite());
        (is_there && rect.x0 <= rect.x1 && rect.y0 <= rect.y1).then_some(rect)
    }
}

const fn spot(point: Point) -> Rect {
    Rect {
        x0: point.x,
        y0: point.y,
        x1: point.x,
        y1: point.y,
    }
}
