//! Putting a sheet together: an A3 page (ISO 216) with a frame and a binding margin (ISO 5457).

use super::call_outs::call_outs;
use super::dimensions::dimension;
use super::heading::Heading;
use super::scale::Scale;
use super::view::View;
use super::{aside, caption, key, notes, title, troubles};
use crate::callout::{Callout, callouts};
use crate::known::{Condition, Known, Undrawable};
use crate::layout::Occupied;
use crate::plane::{Box2, pt};
use crate::section::{Component, Scene, State};
use crate::svg::{Group, Ink, Page, Pen};

const WIDTH: f64 = 420.0;
const HEIGHT: f64 = 297.0;
/// The frame of the sheet.
const FRAME: Box2 = Box2 {
    min: pt(20.0, 10.0),
    max: pt(410.0, 287.0),
};
/// The column of call-outs.
const LABELS: Box2 = Box2 {
    min: pt(23.0, 14.0),
    max: pt(82.0, 239.0),
};
/// The place of the main view with its dimensions.
const MAIN: Box2 = Box2 {
    min: pt(88.0, 16.0),
    max: pt(277.0, 240.0),
};
/// The place beside it.
const ASIDE: Box2 = Box2 {
    min: pt(282.0, 16.0),
    max: pt(407.0, 240.0),
};
/// The room that the main view leaves for dimensions to its right and below it.
const LANES: (f64, f64) = (44.0, 22.0);

/// The sheet of a joint.
///
/// # Errors
/// When too little is known of the joint for a section.
pub fn sheet(known: &Known<'_>, heading: &Heading) -> Result<Page, Undrawable> {
    let condition = Condition::of(known)?;
    Ok(compose(&condition, heading, |scene| {
        callouts(&scene.components(), &condition, known)
    }))
}

/// The sheet of a joint as it is drawn, with its call-outs.
pub fn compose(
    condition: &Condition,
    heading: &Heading,
    call: impl Fn(&Scene) -> Vec<Callout>,
) -> Page {
    let found = Scene::as_found(condition);
    let callouts = call(&found);
    let mut groups = vec![Group {
        id: "frame".to_owned(),
        title: String::new(),
        ink: vec![Ink::frame(FRAME, Pen::Frame)],
    }];
    let scale = main(&mut groups, condition, &found, &callouts);
    let below = aside::beside(&mut groups, condition, &found, ASIDE);
    let rest = Box2::of(pt(ASIDE.min.x, below + 4.0), ASIDE.max);
    notes::below(&mut groups, condition, &found, heading, rest);
    groups.push(title::cautions(Box2::of(pt(20.0, 243.0), pt(142.0, 287.0))));
    groups.push(key::key(
        Box2::of(pt(142.0, 243.0), pt(268.0, 287.0)),
        &found,
    ));
    groups.push(title::block(
        Box2::of(pt(268.0, 243.0), pt(410.0, 287.0)),
        heading,
        condition,
        scale.words,
    ));
    Page {
        width: WIDTH,
        height: HEIGHT,
        title: format!(
            "Section of joint {}, mark {}: {}",
            heading.joint,
            heading.mark,
            condition.kind.words()
        ),
        description: described(condition, &found, &callouts),
        groups,
    }
}

/// The joint as found, with call-outs and dimensions.
fn main(
    groups: &mut Vec<Group>,
    condition: &Condition,
    scene: &Scene,
    callouts: &[Callout],
) -> Scale {
    let lines = caption::fitted(&caption::lines(condition, scene), MAIN.width() - LANES.0);
    let under = caption::height(&lines) + 8.0;
    let room = pt(MAIN.width() - LANES.0, MAIN.height() - LANES.1 - under);
    let scale = Scale::fitting(scene.frame, room.x, room.y);
    let size = pt(
        scene.frame.width() * scale.of_paper(),
        scene.frame.height() * scale.of_paper(),
    );
    let view = View {
        scene,
        scale,
        origin: pt(
            MAIN.min.x + (room.x - size.x) * 0.3,
            MAIN.min.y + (room.y - size.y) / 2.0,
        ),
    };
    groups.extend(view.groups("as-found", |component| title_of(component, callouts)));
    let mut occupied = Occupied::default();
    let labels = call_outs(&view, callouts, LABELS);
    for ink in labels.iter().flat_map(|group| &group.ink) {
        if let Ink::Leader(from, to) = ink {
            occupied.lines.push((*from, *to));
        }
    }
    // The joint's width comes first, then what is amiss, then the rest.
    let (width, rest) = scene.measures.split_at(scene.measures.len().min(1));
    let most = MAIN.max.x;
    let (of_width, foot) = dimension(&view, "as-found-width", width, most, &mut occupied);
    let marks = troubles::marks(&view, "as-found", &mut occupied);
    let (dimensions, lower) = dimension(&view, "as-found", rest, most, &mut occupied);
    let foot = foot.max(lower);
    groups.push(of_width);
    groups.push(dimensions);
    groups.extend(labels);
    groups.extend(marks);
    let bounds = view.bounds();
    let middle = f64::midpoint(bounds.min.x, bounds.max.x).max(MAIN.min.x + 50.0);
    let title = caption::title(scene);
    let group =
        |x: f64| caption::caption("as-found", pt(x, foot + 8.0), title.clone(), scale, &lines);
    // Clear of leaders: further to the right, where one would strike it.
    let clear = (0..12_u8)
        .map(|step| group(middle + f64::from(step) * 6.0))
        .find(|group| !is_struck(group, &occupied));
    groups.push(clear.unwrap_or_else(|| group(middle)));
    scale
}

/// Whether a line strikes the words of a group.
fn is_struck(group: &Group, occupied: &Occupied) -> bool {
    let mut boxes = group.ink.iter().filter_map(|ink| match ink {
        Ink::Words(words) => Some(words.bounds()),
        _ => None,
    });
    boxes.any(|bounds| {
        let mut lines = occupied.lines.iter();
        lines.any(|(from, to)| bounds.is_crossed_by(*from, *to))
    })
}

fn title_of(component: Component, callouts: &[Callout]) -> String {
    callouts
        .iter()
        .find(|callout| callout.component == component)
        .map_or_else(|| component.title().to_owned(), Callout::words)
}

/// The sheet in words, for those who can't see it.
fn described(condition: &Condition, found: &Scene, callouts: &[Callout]) -> String {
    let mut sentences = vec![format!("A {} joint", condition.kind.words())];
    let others = [State::Closed, State::Open].map(|state| Scene::of(condition, state));
    for scene in core::iter::once(found).chain(others.iter().flatten()) {
        let mut said = vec![caption::title(scene)];
        said.extend(caption::lines(condition, scene));
        sentences.push(said.join("; "));
    }
    sentences.extend(callouts.iter().map(Callout::words));
    sentences.join(". ") + "."
}
