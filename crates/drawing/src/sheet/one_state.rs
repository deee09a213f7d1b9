//! One view of a joint that has moved so far, for a screen: no call-outs, no title block, the same scale at every state.

use super::dimensions::dimension;
use super::scale::Scale;
use super::view::View;
use super::{caption, troubles};
use crate::known::Condition;
use crate::layout::Occupied;
use crate::plane::{Box2, pt};
use crate::section::{Moved, Scene};
use crate::svg::Page;

const WIDTH: f64 = 200.0;
const HEIGHT: f64 = 150.0;
/// What is left free around the view.
const MARGIN: f64 = 6.0;
/// The room for dimensions to the right, and for those and the caption below.
const LANES: (f64, f64) = (46.0, 44.0);

/// The section of a joint that has moved so far; none where it doesn't move that way.
pub fn at_one_state(condition: &Condition, moved: Moved) -> Option<Page> {
    let scene = Scene::moved(condition, moved)?;
    let found = Scene::as_found(condition);
    let room = pt(
        WIDTH - LANES.0 - 2.0 * MARGIN,
        HEIGHT - LANES.1 - 2.0 * MARGIN,
    );
    // Of all states, so that a joint doesn't seem to grow as it moves.
    let ends = [-100, 100].map(|percent| Scene::moved(condition, Moved::percent(percent)));
    let frames = ends.iter().flatten().chain([&found]);
    let frame = Box2::around(frames.flat_map(|scene| [scene.frame.min, scene.frame.max]))?;
    let scale = Scale::fitting(frame, room.x, room.y);
    let wide = scene.frame.width() * scale.of_paper();
    let view = View {
        scene: &scene,
        scale,
        origin: pt(
            MARGIN + ((room.x - wide) / 2.0).max(0.0),
            MARGIN + (scene.frame.min.y - frame.min.y) * scale.of_paper(),
        ),
    };
    let mut groups = view.groups("moved", |component| component.title().to_owned());
    let mut occupied = Occupied::default();
    let (dimensions, foot) = dimension(
        &view,
        "moved",
        &scene.measures,
        WIDTH - MARGIN,
        &mut occupied,
    );
    groups.push(dimensions);
    groups.extend(troubles::marks(&view, "moved", &mut occupied));
    let lines = caption::fitted(&caption::lines(condition, &scene), WIDTH - 4.0 * MARGIN);
    let title = caption::title(&scene);
    let at = pt(
        WIDTH / 2.0,
        (foot + 8.0).min(HEIGHT - caption::height(&lines) - 2.0),
    );
    groups.push(caption::caption("moved", at, title.clone(), scale, &lines));
    let mut described = vec![title.clone()];
    described.extend(lines);
    Some(Page {
        width: WIDTH,
        height: HEIGHT,
        title,
        description: described.join("; ") + ".",
        groups,
    })
}
