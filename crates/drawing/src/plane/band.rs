//! Layers that follow a path: coatings, sprayed fireproofing, sheet steel.

use super::outline::Outline;
use super::point::{Point, pt};

/// A layer of even thickness that lies on the right-hand side of a path, looking along it (with y downwards): its corners are
/// mitred, and its ends are square to the path. None when the path has no length.
pub(crate) fn band(path: &[Point], thickness: f64) -> Option<Outline> {
    let path = without_repeats(path);
    let outer = offset(&path, thickness)?;
    Some(Outline::of(path.into_iter().chain(outer.into_iter().rev())))
}

/// The far side of such a layer, in the path's own direction.
pub(crate) fn offset(path: &[Point], thickness: f64) -> Option<Vec<Point>> {
    let path = without_repeats(path);
    let normals: Vec<Point> = path
        .windows(2)
        .filter_map(|pair| match pair {
            [from, to] => Some(normal(*from, *to)),
            _ => None,
        })
        .collect();
    let first = *normals.first()?;
    let last = *normals.last()?;
    let before = core::iter::once(first).chain(normals.iter().copied());
    let after = normals.iter().copied().chain([last]);
    let shifted = path
        .iter()
        .zip(before.zip(after))
        .map(|(point, (before, after))| {
            let shift = mitre(before, after, thickness);
            pt(point.x + shift.x, point.y + shift.y)
        });
    Some(shifted.collect())
}

fn without_repeats(path: &[Point]) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::with_capacity(path.len());
    for point in path {
        if kept.last().is_none_or(|last| last.distance(*point) > 1e-6) {
            kept.push(*point);
        }
    }
    kept
}

/// The unit normal to the right of a stretch.
fn normal(from: Point, to: Point) -> Point {
    let length = from.distance(to);
    pt(-(to.y - from.y) / length, (to.x - from.x) / length)
}

/// The shift of a corner between two stretches so that both lie `thickness` off.
fn mitre(before: Point, after: Point, thickness: f64) -> Point {
    let sum = pt(before.x + after.x, before.y + after.y);
    let square = sum.x * sum.x + sum.y * sum.y;
    // A path that turns straight back has no mitre.
    if square < 1e-6 {
        return pt(after.x * thickness, after.y * thickness);
    }
    let by = 2.0 * thickness / square;
    pt(sum.x * by, sum.y * by)
}

/// The beginning of a path, so long; all of it when it is shorter.
pub(crate) fn part_of(path: &[Point], long: f64) -> Vec<Point> {
    let mut left = long;
    let mut part: Vec<Point> = path.first().copied().into_iter().collect();
    for pair in path.windows(2) {
        let [from, to] = pair else { continue };
        let stretch = from.distance(*to);
        if stretch >= left {
            part.push(from.towards(*to, if stretch > 0.0 { left / stretch } else { 0.0 }));
            return part;
        }
        left -= stretch;
        part.push(*to);
    }
    part
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(path: &[Point]) -> f64 {
        path.windows(2).map(|pair| pair[0].distance(pair[1])).sum()
    }

    #[test]
    fn a_band_has_the_area_of_its_length_and_mitres() {
        // An L of two legs of 100, 10 thick inside the corner: 100 x 10 + 100 x 10 - 10 x 10.
        let path = [pt(0.0, 100.0), pt(0.0, 0.0), pt(100.0, 0.0)];
        let area = band(&path, 10.0).map(|outline| outline.area());
        assert_eq!(area, Some(1900.0));
    }

    #[test]
    fn a_part_of_a_path_is_as_long_as_asked() {
        let path = [pt(0.0, 0.0), pt(3.0, 4.0), pt(3.0, 10.0)];
        assert!((length(&part_of(&path, 7.0)) - 7.0).abs() < 1e-12);
        assert!((length(&part_of(&path, 70.0)) - 11.0).abs() < 1e-12);
    }
}
