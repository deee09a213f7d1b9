//! Call-outs in a column beside a drawing, their leaders straight and never crossing.

use crate::plane::{Point, crossing, pt};

/// Where a label goes: its upper left corner, and its leader from there to the part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Label {
    /// The upper edge.
    pub(crate) top: f64,
    /// Where the leader begins.
    pub(crate) start: Point,
    /// What it points at.
    pub(crate) anchor: Point,
}

/// Puts labels of one height in a column, one for each anchor, in the anchors' order.
///
/// The slots are fixed first: as near to the anchors as their heights allow. Whose slot is whose is settled by swapping any two whose
/// leaders cross. Each swap makes the leaders shorter in all (two sides of a triangle are longer than the third), so that it ends.
pub(crate) fn assign(
    anchors: &[Point],
    column: f64,
    (from, to): (f64, f64),
    height: f64,
) -> Vec<Label> {
    let starts = |top: f64| pt(column, top + 1.9);
    let mut by_height: Vec<(usize, Point)> = anchors.iter().copied().enumerate().collect();
    by_height
        .sort_by(|(_, one), (_, other)| one.y.total_cmp(&other.y).then(one.x.total_cmp(&other.x)));
    let wanted: Vec<f64> = by_height.iter().map(|(_, anchor)| anchor.y - 1.9).collect();
    let slots = spread(&wanted, (from, to), height);
    let mut places: Vec<(usize, Label)> = by_height
        .into_iter()
        .zip(slots)
        .map(|((at, anchor), top)| {
            (
                at,
                Label {
                    top,
                    start: starts(top),
                    anchor,
                },
            )
        })
        .collect();
    while uncross(&mut places) {}
    places.sort_by_key(|(at, _)| *at);
    places.into_iter().map(|(_, label)| label).collect()
}

/// Swaps the slots of the first two labels whose leaders cross; false when none do.
fn uncross(places: &mut [(usize, Label)]) -> bool {
    for one in 0..places.len() {
        let (before, after) = places.split_at_mut(one + 1);
        let Some((_, first)) = before.last_mut() else {
            continue;
        };
        for (_, second) in after {
            let crosses =
                crossing(first.start, first.anchor, second.start, second.anchor).is_some();
            let now = first.start.distance(first.anchor) + second.start.distance(second.anchor);
            let then = second.start.distance(first.anchor) + first.start.distance(second.anchor);
            // Leaders that only touch, at one anchor, gain nothing.
            if crosses && then < now - 1e-9 {
                core::mem::swap(&mut first.top, &mut second.top);
                core::mem::swap(&mut first.start, &mut second.start);
                return true;
            }
        }
    }
    false
}

/// Slots of one height, as near to where they are wanted as order and room allow.
fn spread(wanted: &[f64], (from, to): (f64, f64), height: f64) -> Vec<f64> {
    let mut slots = Vec::with_capacity(wanted.len());
    let mut least = from;
    for top in wanted {
        let top = top.max(least);
        slots.push(top);
        least = top + height;
    }
    let mut most = to;
    for top in slots.iter_mut().rev() {
        *top = top.min(most - height);
        most = *top;
    }
    slots
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn leaders_never_cross_and_labels_never_overlap(
            places in proptest::collection::vec((90.0..210.0_f64, 20.0..200.0_f64), 1..15)
        ) {
            let anchors: Vec<Point> = places.into_iter().map(|(x, y)| pt(x, y)).collect();
            let labels = assign(&anchors, 80.0, (14.0, 240.0), 14.0);
            prop_assert_eq!(labels.len(), anchors.len());
            for (at, one) in labels.iter().enumerate() {
                prop_assert_eq!(one.anchor, anchors[at]);
                prop_assert!(one.top >= 14.0 - 1e-9 && one.top + 14.0 <= 240.0 + 1e-9);
                for other in labels.iter().skip(at + 1) {
                    prop_assert!((one.top - other.top).abs() >= 14.0 - 1e-9);
                    let crossed = crossing(one.start, one.anchor, other.start, other.anchor);
                    prop_assert!(crossed.is_none());
                }
            }
        }
    }
}
