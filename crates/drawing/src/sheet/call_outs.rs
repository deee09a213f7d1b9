//! Call-outs beside a view.

use super::view::{View, anchor};
use crate::callout::Callout;
use crate::layout::{Label, assign, wrapped};
use crate::plane::{Box2, Point, pt};
use crate::svg::{Group, Ink};

/// The size of a call-out's first line.
const TITLE: f64 = 2.7;
/// The size of the rest.
const BODY: f64 = 2.4;
/// From one line to the next.
const STEP: f64 = 3.1;
/// The room between two call-outs.
const BETWEEN: f64 = 2.6;

/// A call-out broken into lines.
struct Lines<'a> {
    callout: &'a Callout,
    title: Vec<String>,
    measures: Vec<String>,
    standing: Vec<String>,
}

impl<'a> Lines<'a> {
    fn of(callout: &'a Callout, wide: f64, (measures, standing): (usize, usize)) -> Self {
        let words = callout
            .standing
            .as_ref()
            .map_or("", |standing| &standing.words);
        Self {
            title: wrapped(&callout.title, TITLE, true, wide, 1),
            measures: wrapped(&callout.measures, BODY, false, wide, measures),
            standing: wrapped(words, BODY, false, wide - 3.4, standing),
            callout,
        }
    }

    fn height(&self) -> f64 {
        let lines = 1 + self.measures.len() + self.standing.len();
        STEP * f64::from(u32::try_from(lines).unwrap_or(1)) + BETWEEN
    }
}

/// Puts the call-outs of a view in a column, with leaders that don't cross.
pub(super) fn call_outs(view: &View<'_>, callouts: &[Callout], column: Box2) -> Vec<Group> {
    let wide = column.width() - 2.0;
    let anchored: Vec<(&Callout, Point)> = callouts
        .iter()
        .filter_map(|callout| Some((callout, anchor(view, callout.component)?)))
        .collect();
    let anchors: Vec<Point> = anchored.iter().map(|(_, anchor)| *anchor).collect();
    let count = f64::from(u32::try_from(anchors.len().max(1)).unwrap_or(1));
    // The more parts, the fewer lines for each.
    let fitting = [(3, 2), (2, 2), (2, 1), (1, 1)]
        .into_iter()
        .find_map(|most| {
            let lines: Vec<Lines<'_>> = anchored
                .iter()
                .map(|(callout, _)| Lines::of(callout, wide, most))
                .collect();
            let height = lines.iter().map(Lines::height).fold(0.0, f64::max);
            (height * count <= column.height() || most == (1, 1)).then_some((lines, height))
        });
    let Some((lines, height)) = fitting else {
        return Vec::new();
    };
    let height = height.min(column.height() / count);
    // Not much lower than the view, where there is room: leaders then stay clear of what is written under it.
    let foot = column
        .max
        .y
        .min((view.bounds().max.y + 26.0).max(column.min.y + height * count));
    let labels = assign(&anchors, column.max.x, (column.min.y, foot), height);
    lines
        .iter()
        .zip(labels)
        .map(|(lines, label)| one(lines, label, column.min.x))
        .collect()
}

fn one(lines: &Lines<'_>, label: Label, left: f64) -> Group {
    let callout = lines.callout;
    let mut ink = vec![Ink::Leader(label.start, label.anchor)];
    let mut y = label.top + 2.7;
    for line in &lines.title {
        ink.push(Ink::bold(pt(left, y), TITLE, line.clone()));
    }
    for line in &lines.measures {
        y += STEP;
        ink.push(Ink::words(pt(left, y), BODY, line.clone()));
    }
    if let Some(standing) = &callout.standing {
        ink.push(Ink::Mark(pt(left + 1.2, y + STEP - 0.9), standing.verdict));
        for line in &lines.standing {
            y += STEP;
            ink.push(Ink::words(pt(left + 3.4, y), BODY, line.clone()));
        }
    }
    let id = callout.component.title().to_lowercase().replace(' ', "-");
    Group {
        id: format!("call-out-{id}"),
        title: callout.words(),
        ink,
    }
}
