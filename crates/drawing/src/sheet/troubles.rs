//! Where parts jam or leave a gap: a numbered mark at the place, its words under the view.

use super::view::View;
use crate::layout::Occupied;
use crate::plane::{Box2, Point, pt};
use crate::section::{Scene, Trouble};
use crate::svg::{Fill, Group, Ink, Pen};

/// Marks the troubles of a view.
pub(super) fn marks(view: &View<'_>, id: &str, occupied: &mut Occupied) -> Option<Group> {
    let mut ink = Vec::new();
    for (at, trouble) in troubles(view.scene).into_iter().enumerate() {
        let there = view.on_paper(trouble.at);
        // In a view too crowded for its mark, a trouble stands in the caption alone.
        let Some(place) = free_place(there, room(view), occupied) else {
            continue;
        };
        if place != there {
            ink.push(Ink::line(there, place, Pen::CutThin));
            ink.push(Ink::Dot(there, 0.7));
        }
        let (mark, bounds) = mark(place, at + 1);
        ink.extend(mark);
        occupied.texts.push(bounds);
    }
    (!ink.is_empty()).then(|| Group {
        id: format!("{id}-troubles"),
        title: "Where parts jam or leave a gap".to_owned(),
        ink,
    })
}

/// Where the marks of a view may stand: near it, and on the sheet above its foot.
fn room(view: &View<'_>) -> Box2 {
    let Box2 { min, max } = view.bounds();
    Box2::of(
        pt((min.x - 4.0).max(21.0), (min.y - 5.0).max(11.0)),
        pt((max.x + 4.0).min(409.0), (max.y + 2.0).min(242.0)),
    )
}

/// The nearest place to a point that is clear of other marks and of leaders, to its right first.
fn free_place(there: Point, room: Box2, occupied: &Occupied) -> Option<Point> {
    let mut tries: Vec<Point> = Vec::new();
    for right in 0..18_u8 {
        for down in -10..=10_i8 {
            tries.push(pt(f64::from(right) * 2.2, f64::from(down) * 2.2));
        }
    }
    tries.sort_by(|one, other| {
        let far = |point: &Point| point.x * point.x + point.y * point.y;
        far(one).total_cmp(&far(other))
    });
    tries
        .into_iter()
        .map(|by| pt(there.x + by.x, there.y + by.y))
        .find(|place| {
            let (_, bounds) = mark(*place, 1);
            let bounds = bounds.grown(0.4);
            room.holds(bounds)
                && !occupied.texts.iter().any(|other| other.overlaps(bounds))
                && !occupied
                    .lines
                    .iter()
                    .any(|(from, to)| bounds.is_crossed_by(*from, *to))
        })
}

/// A triangle with a number.
fn mark(at: Point, number: usize) -> ([Ink; 3], Box2) {
    let corners = vec![
        pt(at.x, at.y - 3.2),
        pt(at.x + 3.1, at.y + 2.0),
        pt(at.x - 3.1, at.y + 2.0),
    ];
    let bounds = Box2::of(pt(at.x - 3.1, at.y - 3.2), pt(at.x + 3.1, at.y + 2.0));
    let number = Ink::centred(pt(at.x, at.y + 1.5), 2.6, number.to_string());
    let outline = Ink::Line {
        points: corners.clone(),
        closed: true,
        pen: Pen::CutThin,
        dashed: false,
    };
    ([Ink::Area(corners, Fill::White), outline, number], bounds)
}

/// The troubles of a scene, those that say the same once, in order.
pub(super) fn troubles(scene: &Scene) -> Vec<&Trouble> {
    let mut said: Vec<&Trouble> = Vec::new();
    for trouble in &scene.troubles {
        if !said.iter().any(|one| one.words == trouble.words) {
            said.push(trouble);
        }
    }
    said
}
