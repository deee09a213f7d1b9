//! The underside of what is above a wall, as a path that coatings and packing follow.

use crate::plane::{Point, pt};

/// The underside of what is above a wall, the same on both sides of it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Soffit {
    /// From the middle of the wall outwards.
    right: Vec<Point>,
    /// Where along it the structure itself begins: up to there it is the face of packing in a flute.
    packed: f64,
}

impl Soffit {
    /// A path from the middle of the wall outwards.
    pub(super) const fn of(right: Vec<Point>) -> Self {
        Self { right, packed: 0.0 }
    }

    /// The same path, packing up to a point along it.
    pub(super) const fn packed_for(mut self, length: f64) -> Self {
        self.packed = length;
        self
    }

    /// The path from the first place that lies so far out, with how much of it is the face of packing. Where none lies so far out, from
    /// its end.
    pub(super) fn from(&self, x: f64) -> (Vec<Point>, f64) {
        let mut passed = 0.0;
        for (at, pair) in self.right.windows(2).enumerate() {
            let [from, to] = pair else { continue };
            if from.x <= x && x < to.x {
                let start = from.towards(*to, (x - from.x) / (to.x - from.x));
                let rest = self.right.iter().skip(at + 1).copied();
                let passed = passed + from.distance(start);
                return (
                    core::iter::once(start).chain(rest).collect(),
                    (self.packed - passed).max(0.0),
                );
            }
            passed += from.distance(*to);
        }
        (self.right.last().copied().into_iter().collect(), 0.0)
    }

    /// The path between two distances from the middle of the wall; it goes on level where it ends earlier.
    pub(super) fn between(&self, inner: f64, outer: f64) -> Vec<Point> {
        let (path, _) = self.from(inner);
        let mut part: Vec<Point> = Vec::new();
        for point in path {
            if let Some(last) = part.last()
                && (point.x >= outer || point.x < last.x)
            {
                if point.x > last.x {
                    part.push(last.towards(point, (outer - last.x) / (point.x - last.x)));
                }
                break;
            }
            part.push(if part.is_empty() {
                pt(inner, point.y)
            } else {
                point
            });
        }
        if let Some(last) = part.last().copied()
            && last.x < outer - 1e-9
        {
            part.push(pt(outer, last.y));
        }
        part
    }

    /// Whether it lies over a wall so wide.
    pub(super) fn covers(&self, x: f64) -> bool {
        self.right.windows(2).any(|pair| match pair {
            [from, to] => from.x <= x && x < to.x,
            _ => false,
        })
    }
}
