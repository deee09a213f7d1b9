//! What is written under a view.

use super::scale::Scale;
use super::troubles::troubles;
use crate::known::Condition;
use crate::layout::wrapped;
use crate::plane::{Point, pt};
use crate::section::Scene;
use crate::svg::{Anchor, Group, Ink, Words};

/// What is written at a state: what the movement makes of it, then its troubles by number.
pub(super) fn lines(condition: &Condition, scene: &Scene) -> Vec<String> {
    let mut lines = scene.behaviour.lines(condition);
    for (at, trouble) in troubles(scene).into_iter().enumerate() {
        lines.push(format!("({}) {}", at + 1, trouble.words));
    }
    lines
}

/// How high a caption is.
pub(super) fn height(lines: &[String]) -> f64 {
    5.0 + 3.2 * f64::from(u32::try_from(lines.len()).unwrap_or(0))
}

/// Lines broken to a width.
pub(super) fn fitted(lines: &[String], wide: f64) -> Vec<String> {
    lines
        .iter()
        .flat_map(|line| wrapped(line, 2.4, false, wide, 3))
        .collect()
}

/// A caption about a place.
pub(super) fn caption(id: &str, at: Point, title: String, scale: Scale, lines: &[String]) -> Group {
    let mut ink = vec![Ink::Words(Words {
        at,
        anchor: Anchor::Middle,
        size: 3.2,
        bold: true,
        words: title,
    })];
    let mut y = at.y + 3.6;
    ink.push(Ink::centred(pt(at.x, y), 2.4, scale.words));
    for line in lines {
        y += 3.2;
        ink.push(Ink::centred(pt(at.x, y), 2.4, line.clone()));
    }
    Group {
        id: format!("{id}-caption"),
        title: String::new(),
        ink,
    }
}

/// The title of a state's view.
pub(super) fn title(scene: &Scene) -> String {
    format!(
        "{}, {}",
        scene.behaviour.state.words(),
        scene.behaviour.width_words()
    )
}
