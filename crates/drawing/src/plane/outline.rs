use super::point::{Box2, Point, pt};

/// What an edge of an outline is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edge {
    /// The face of a part.
    Face,
    /// Where the drawing stops and the part goes on.
    Torn,
}

/// A closed outline: each point with the edge that leads from it to the next.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    corners: Vec<(Point, Edge)>,
}

impl Outline {
    /// An outline of faces.
    pub(crate) fn of(points: impl IntoIterator<Item = Point>) -> Self {
        Self {
            corners: points
                .into_iter()
                .map(|point| (point, Edge::Face))
                .collect(),
        }
    }

    /// A rectangle between two corners.
    pub(crate) fn rectangle(one: Point, other: Point) -> Self {
        let Box2 { min, max } = Box2::of(one, other);
        Self::of([min, pt(max.x, min.y), max, pt(min.x, max.y)])
    }

    /// The same outline, torn along an upright line.
    pub(crate) fn torn_at_x(self, x: f64) -> Self {
        self.torn_where(|point| (point.x - x).abs() < 1e-9)
    }

    /// The same outline, torn along a level line.
    pub(crate) fn torn_at_y(self, y: f64) -> Self {
        self.torn_where(|point| (point.y - y).abs() < 1e-9)
    }

    /// The same outline, torn where an edge lies along a line.
    fn torn_where(mut self, is_on: impl Fn(Point) -> bool) -> Self {
        let ends: Vec<Point> = self.points().collect();
        let next = ends.iter().cycle().skip(1);
        for ((point, edge), next) in self.corners.iter_mut().zip(next) {
            if is_on(*point) && is_on(*next) {
                *edge = Edge::Torn;
            }
        }
        self
    }

    /// The corners in order.
    pub fn points(&self) -> impl DoubleEndedIterator<Item = Point> + Clone + '_ {
        self.corners.iter().map(|(point, _)| *point)
    }

    /// The edges in order, with what they are.
    pub fn edges(&self) -> impl Iterator<Item = (Point, Point, Edge)> + '_ {
        let next = self.points().cycle().skip(1);
        self.corners
            .iter()
            .zip(next)
            .map(|((from, edge), to)| (*from, to, *edge))
    }

    /// The same outline with every point moved.
    pub(crate) fn map(&self, to: impl Fn(Point) -> Point) -> Self {
        Self {
            corners: self
                .corners
                .iter()
                .map(|(point, edge)| (to(*point), *edge))
                .collect(),
        }
    }

    /// Its area, in square millimetres (the surveyor's formula).
    pub fn area(&self) -> f64 {
        let twice: f64 = self
            .edges()
            .map(|(from, to, _)| from.x * to.y - to.x * from.y)
            .sum();
        twice.abs() / 2.0
    }

    /// The smallest rectangle around it.
    pub fn bounds(&self) -> Option<Box2> {
        Box2::around(self.points())
    }

    /// A point inside it at a share of its height: the middle of the widest place there.
    pub(crate) fn inside_at(&self, share: f64) -> Option<Point> {
        let bounds = self.bounds()?;
        let level = bounds.min.y + bounds.height() * share;
        let spans = super::common::spans(self, level);
        let wide = spans.chunks_exact(2).filter_map(|pair| match pair {
            [from, to] => Some((*from, *to)),
            _ => None,
        });
        let (from, to) = wide.reduce(|widest, next| {
            if next.1 - next.0 > widest.1 - widest.0 + 1e-9 {
                next
            } else {
                widest
            }
        })?;
        Some(pt(f64::midpoint(from, to), level))
    }

    /// The part of it within a rectangle, torn where it was cut off; none when nothing is left.
    ///
    /// Sutherland and Hodgman's clipping, one side after the other.
    pub(crate) fn within(&self, frame: Box2) -> Option<Self> {
        let sides: [fn(Point, Box2) -> f64; 4] = [
            |point, frame| point.x - frame.min.x,
            |point, frame| frame.max.x - point.x,
            |point, frame| point.y - frame.min.y,
            |point, frame| frame.max.y - point.y,
        ];
        let mut corners = self.corners.clone();
        for inside in sides {
            corners = cut(&corners, |point| inside(point, frame));
        }
        let outline = Self { corners };
        (outline.area() > 1e-6).then_some(outline)
    }
}

/// What lies on the side of a line where `inside` is not negative; the edge along the line is torn.
fn cut(corners: &[(Point, Edge)], inside: impl Fn(Point) -> f64) -> Vec<(Point, Edge)> {
    let mut kept = Vec::with_capacity(corners.len() + 2);
    let next = corners.iter().cycle().skip(1);
    for ((from, edge), (to, _)) in corners.iter().zip(next) {
        let (here, there) = (inside(*from), inside(*to));
        if here >= 0.0 {
            kept.push((*from, *edge));
        }
        if (here < 0.0) != (there < 0.0) && here.abs() > 1e-12 && there.abs() > 1e-12 {
            let crossing = from.towards(*to, here / (here - there));
            let edge = if here >= 0.0 { Edge::Torn } else { *edge };
            kept.push((crossing, edge));
        } else if here >= 0.0 && there < 0.0 {
            // The corner itself lies on the line: what leaves it runs along the line.
            if let Some(last) = kept.last_mut() {
                last.1 = Edge::Torn;
            }
        }
    }
    kept
}
