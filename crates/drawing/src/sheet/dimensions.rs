//! The dimensions of a view.

use super::view::View;
use crate::layout::{LANE, Occupied, SIZE, place};
use crate::plane::pt;
use crate::section::{Measure, both};
use crate::svg::{Group, Ink, Pen};

/// Draws dimensions, the most important first, as far right as `most`; what finds no place stands in the call-outs. Gives how far down
/// they go.
pub(super) fn dimension(
    view: &View<'_>,
    id: &str,
    measures: &[Measure],
    most: f64,
    occupied: &mut Occupied,
) -> (Group, f64) {
    let mut ink = Vec::new();
    let bounds = view.bounds();
    let mut foot = bounds.max.y;
    let mut lanes = 0;
    while lanes < 4 && bounds.max.x + 4.0 + LANE * f64::from(lanes + 1) <= most {
        lanes += 1;
    }
    for measure in measures {
        let (from, to) = (view.on_paper(measure.from), view.on_paper(measure.to));
        let words = words(measure);
        let Some(placed) = place(from, to, measure.side, &words, bounds, lanes, occupied) else {
            continue;
        };
        for (start, end) in placed.extensions.iter().chain([&placed.line]) {
            ink.push(Ink::line(*start, *end, Pen::Thin));
        }
        // Oblique strokes end a dimension line (ISO 129-1).
        for end in [placed.line.0, placed.line.1] {
            ink.push(Ink::line(
                pt(end.x - 0.8, end.y + 0.8),
                pt(end.x + 0.8, end.y - 0.8),
                Pen::CutThin,
            ));
        }
        for (at, words) in placed.words {
            foot = foot.max(at.y + 0.6);
            ink.push(Ink::centred(at, SIZE, words));
        }
    }
    let group = Group {
        id: format!("{id}-dimensions"),
        title: "Dimensions".to_owned(),
        ink,
    };
    (group, foot)
}

/// A length in both systems, one under the other; in brackets where the joint itself isn't known to be so.
fn words(measure: &Measure) -> Vec<String> {
    let words = both(measure.length);
    let lines: Vec<String> = match words.split_once(" (") {
        Some((own, other)) => vec![own.to_owned(), other.trim_end_matches(')').to_owned()],
        None => vec![words],
    };
    if measure.is_known {
        lines
    } else {
        lines.into_iter().map(|line| format!("[{line}]")).collect()
    }
}
