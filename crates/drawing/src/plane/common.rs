//! What two outlines have in common.

use super::outline::Outline;
use super::point::{Point, pt};

/// The area that two outlines have in common, in square millimetres; the outlines don't cross themselves.
///
/// Both are cut into trapezoids between every level at which either has a corner, or one's edge meets the other's; between two
/// such levels no edges cross, so that the common width changes evenly and the area is exact but for rounding.
pub fn common_area(one: &Outline, other: &Outline) -> f64 {
    let (Some(a), Some(b)) = (one.bounds(), other.bounds()) else {
        return 0.0;
    };
    if !a.overlaps(b) {
        return 0.0;
    }
    let levels = levels(one, other);
    levels
        .windows(2)
        .map(|pair| match pair {
            [top, bottom] => {
                let at = |share: f64| {
                    let level = top + (bottom - top) * share;
                    shared(&spans(one, level), &spans(other, level))
                };
                // Even change: the mean of two levels within stands for the whole.
                (bottom - top) * f64::midpoint(at(0.25), at(0.75))
            }
            _ => 0.0,
        })
        .sum()
}

fn levels(one: &Outline, other: &Outline) -> Vec<f64> {
    let mut levels: Vec<f64> = one
        .points()
        .chain(other.points())
        .map(|point| point.y)
        .collect();
    for (from, to, _) in one.edges() {
        for (start, end, _) in other.edges() {
            levels.extend(crossing(from, to, start, end).map(|point| point.y));
        }
    }
    levels.sort_by(f64::total_cmp);
    levels.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    levels
}

/// Where two stretches cross, if they do.
pub(crate) fn crossing(from: Point, to: Point, start: Point, end: Point) -> Option<Point> {
    let (a, b) = (
        pt(to.x - from.x, to.y - from.y),
        pt(end.x - start.x, end.y - start.y),
    );
    let cross = a.x * b.y - a.y * b.x;
    if cross.abs() < 1e-12 {
        return None;
    }
    let gap = pt(start.x - from.x, start.y - from.y);
    let along = (gap.x * b.y - gap.y * b.x) / cross;
    let across = (gap.x * a.y - gap.y * a.x) / cross;
    let within = |share: f64| (0.0..=1.0).contains(&share);
    (within(along) && within(across)).then(|| from.towards(to, along))
}

/// Where a level lies inside an outline: pairs of x, in order.
pub(super) fn spans(outline: &Outline, level: f64) -> Vec<f64> {
    let mut crossed: Vec<f64> = outline
        .edges()
        .filter(|(from, to, _)| (from.y <= level) != (to.y <= level))
        .map(|(from, to, _)| from.x + (to.x - from.x) * (level - from.y) / (to.y - from.y))
        .collect();
    crossed.sort_by(f64::total_cmp);
    crossed
}

fn shared(one: &[f64], other: &[f64]) -> f64 {
    let pairs = |spans: &[f64]| -> Vec<(f64, f64)> {
        spans
            .chunks_exact(2)
            .filter_map(|pair| match pair {
                [from, to] => Some((*from, *to)),
                _ => None,
            })
            .collect()
    };
    let mut total = 0.0;
    for (from, to) in pairs(one) {
        for (start, end) in pairs(other) {
            total += (to.min(end) - from.max(start)).max(0.0);
        }
    }
    total
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_squares_share_their_corner() {
        let one = Outline::rectangle(pt(0.0, 0.0), pt(10.0, 10.0));
        let other = Outline::rectangle(pt(6.0, 7.0), pt(20.0, 20.0));
        assert!((common_area(&one, &other) - 12.0).abs() < 1e-9);
    }

    #[test]
    fn a_square_and_a_triangle_share_half() {
        let one = Outline::rectangle(pt(0.0, 0.0), pt(10.0, 10.0));
        let other = Outline::of([pt(0.0, 0.0), pt(10.0, 0.0), pt(0.0, 10.0)]);
        assert!((common_area(&one, &other) - 50.0).abs() < 1e-9);
    }

    #[test]
    fn what_only_touches_shares_nothing() {
        let one = Outline::rectangle(pt(0.0, 0.0), pt(10.0, 10.0));
        let other = Outline::rectangle(pt(10.0, 0.0), pt(20.0, 10.0));
        assert!(common_area(&one, &other) < 1e-9);
    }
}
