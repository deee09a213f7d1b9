//! Putting a sheet together: an A3 page (ISO 216) with a frame and a binding margin (ISO 5457).

use measure::Unit;

use super::heading::Heading;
use super::scale::Scale;
use super::view::{View, anchor, trouble_mark, troubles};
use super::{chart, conventions, profile, title};
use crate::callout::{Callout, callouts};
use crate::known::{Condition, Kind, Known, Undrawable};
use crate::layout::{Label, Occupied, assign, place, width, wrapped};
use crate::plane::{Box2, Point, pt};
use crate::section::{Component, Measure, Scene, Side, State, both};
use crate::svg::{Anchor, Group, Ink, Page, Pen, Words};

const PAGE: (f64, f64) = (420.0, 297.0);
/// The frame of the sheet.
const FRAME: Box2 = Box2 { min: pt(20.0, 10.0), max: pt(410.0, 287.0) };
/// Where views stand.
const FOOT: f64 = 241.0;
/// The column of call-outs.
const LABELS: (f64, f64) = (23.0, 80.0);
/// The place of the main view with its dimensions.
const MAIN: Box2 = Box2 { min: pt(87.0, 16.0), max: pt(264.0, FOOT) };
/// The place beside it.
const ASIDE: Box2 = Box2 { min: pt(270.0, 16.0), max: pt(407.0, FOOT) };

/// The sheet of a joint.
///
/// # Errors
/// When too little is known of the joint for a section.
pub fn sheet(known: &Known<'_>, heading: &Heading) -> Result<Page, Undrawable> {
    let condition = Condition::of(known)?;
    Ok(compose(&condition, heading, |scene| callouts(&scene.components(), &condition, known)))
}

/// The sheet of a joint as it is drawn, with its call-outs.
pub fn compose(condition: &Condition, heading: &Heading, call: impl Fn(&Scene) -> Vec<Callout>) -> Page {
    let Some(found) = Scene::of(condition, State::AsFound) else {
        // A joint as found has always a width, so that there is always a scene.
        return Page { width: PAGE.0, height: PAGE.1, title: String::new(), description: String::new(), groups: Vec::new() };
    };
    let callouts = call(&found);
    let mut groups = vec![Group {
        id: "frame".to_owned(),
        title: String::new(),
        ink: vec![Ink::frame(FRAME, Pen::Frame)],
    }];
    let scale = main(&mut groups, condition, &found, &callouts);
    let below = moved(&mut groups, condition, &found);
    extras(&mut groups, condition, &found, below);
    groups.push(title::cautions(Box2::of(pt(20.0, 243.0), pt(142.0, 287.0))));
    groups.push(conventions::key(Box2::of(pt(142.0, 243.0), pt(268.0, 287.0)), &found));
    groups.push(title::block(Box2::of(pt(268.0, 243.0), pt(410.0, 287.0)), heading, condition, scale.words));
    Page {
        width: PAGE.0,
        height: PAGE.1,
        title: format!("Section of joint {}, mark {}: {}", heading.joint, heading.mark, condition.kind.words()),
        description: described(condition, &found, &callouts),
        groups,
    }
}

/// The joint as found, with call-outs and dimensions.
fn main(groups: &mut Vec<Group>, condition: &Condition, scene: &Scene, callouts: &[Callout]) -> Scale {
    let caption = caption_lines(condition, scene);
    let lanes = (46.0, 27.0);
    let room = pt(MAIN.width() - lanes.0, MAIN.height() - lanes.1 - caption_height(&caption));
    let scale = Scale::fitting(scene.frame, room.x, room.y);
    let size = pt(scene.frame.width() * scale.of_paper(), scene.frame.height() * scale.of_paper());
    let view = View {
        scene,
        scale,
        origin: pt(MAIN.min.x + (room.x - size.x) / 2.0, MAIN.min.y + (room.y - size.y) / 2.0),
    };
    groups.extend(view.groups("as-found", |component| title_of(component, callouts)));
    let mut occupied = Occupied::default();
    mark_troubles(groups, &view, "as-found", &mut occupied);
    label(groups, &view, callouts, &mut occupied);
    dimension(groups, &view, "as-found", &scene.measures, &mut occupied);
    let at = pt(MAIN.min.x + room.x / 2.0, view.bounds().max.y + lanes.1 + 4.0);
    groups.push(caption_group("as-found", at, scale, scene, &caption));
    scale
}

fn title_of(component: Component, callouts: &[Callout]) -> String {
    callouts
        .iter()
        .find(|callout| callout.component == component)
        .map_or_else(|| component.title().to_owned(), Callout::words)
}

fn mark_troubles(groups: &mut Vec<Group>, view: &View<'_>, id: &str, occupied: &mut Occupied) {
    let mut ink = Vec::new();
    for (at, trouble) in troubles(view.scene).into_iter().enumerate() {
        let mut place = view.on_paper(trouble.at);
        // Marks stand clear of one another.
        while occupied.texts.iter().any(|other| other.overlaps(trouble_mark(place, 1).1)) {
            place.y += 2.0;
        }
        let (mark, bounds) = trouble_mark(place, at + 1);
        ink.extend(mark);
        occupied.texts.push(bounds);
    }
    if !ink.is_empty() {
        groups.push(Group { id: format!("{id}-troubles"), title: "Where parts jam or leave a gap".to_owned(), ink });
    }
}

/// The most lines of measures in a call-out.
const MEASURE_LINES: usize = 2;

fn label(groups: &mut Vec<Group>, view: &View<'_>, callouts: &[Callout], occupied: &mut Occupied) {
    let wide = LABELS.1 - LABELS.0 - 2.0;
    let anchored: Vec<(&Callout, Point)> = callouts
        .iter()
        .filter_map(|callout| Some((callout, anchor(view, callout.component)?)))
        .collect();
    let anchors: Vec<Point> = anchored.iter().map(|(_, anchor)| *anchor).collect();
    let room = (MAIN.min.y - 2.0, FOOT - 2.0);
    let count = u32::try_from(anchors.len().max(1)).unwrap_or(1);
    let height = ((room.1 - room.0) / f64::from(count)).min(17.5);
    let labels = assign(&anchors, LABELS.1, room, height);
    for ((callout, _), label) in anchored.into_iter().zip(labels) {
        occupied.lines.push((label.start, label.anchor));
        groups.push(one_label(callout, label, wide, height));
    }
}

fn one_label(callout: &Callout, label: Label, wide: f64, height: f64) -> Group {
    let left = LABELS.0;
    let mut ink = vec![Ink::Leader(label.start, label.anchor)];
    let mut y = label.top + 2.7;
    for line in wrapped(&callout.title, 2.7, true, wide, 1) {
        ink.push(Ink::bold(pt(left, y), 2.7, line));
    }
    // Fewer lines of measures where many parts are called out.
    let lines = if height < 13.5 { 1 } else { MEASURE_LINES };
    for line in wrapped(&callout.measures, 2.4, false, wide, lines) {
        y += 3.1;
        ink.push(Ink::words(pt(left, y), 2.4, line));
    }
    if let Some(standing) = &callout.standing {
        y += 3.3;
        ink.push(Ink::Mark(pt(left + 1.2, y - 0.9), standing.verdict));
        let lines = if height < 16.8 { 1 } else { 2 };
        for line in wrapped(&standing.words, 2.4, false, wide - 3.4, lines) {
            ink.push(Ink::words(pt(left + 3.4, y), 2.4, line));
            y += 3.0;
        }
    }
    let id = callout.component.title().to_lowercase().replace(' ', "-");
    Group { id: format!("call-out-{id}"), title: callout.words(), ink }
}

/// Dimensions, the most important first; what finds no place stands in the call-outs.
fn dimension(groups: &mut Vec<Group>, view: &View<'_>, id: &str, measures: &[Measure], occupied: &mut Occupied) {
    let mut ink = Vec::new();
    for measure in measures {
        let (from, to) = (view.on_paper(measure.from), view.on_paper(measure.to));
        let words = dimension_words(measure);
        let Some(placed) = place(from, to, measure.side, &words, view.bounds(), occupied) else {
            continue;
        };
        for (start, end) in placed.extensions.iter().chain([&placed.line]) {
            ink.push(Ink::line(*start, *end, Pen::Thin));
        }
        // Oblique strokes end a dimension line (ISO 129-1).
        for end in [placed.line.0, placed.line.1] {
            ink.push(Ink::line(pt(end.x - 0.8, end.y + 0.8), pt(end.x + 0.8, end.y - 0.8), Pen::CutThin));
        }
        for (at, words) in placed.words {
            ink.push(Ink::centred(at, 2.3, words));
        }
    }
    groups.push(Group { id: format!("{id}-dimensions"), title: "Dimensions".to_owned(), ink });
}

/// A length in both systems, one under the other; in brackets where the joint itself isn't known to be so.
fn dimension_words(measure: &Measure) -> Vec<String> {
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

/// What is written under a view.
fn caption_lines(condition: &Condition, scene: &Scene) -> Vec<String> {
    let mut lines = scene.behaviour.lines(condition);
    for (at, trouble) in troubles(scene).into_iter().enumerate() {
        lines.push(format!("{}: {}", at + 1, trouble.words));
    }
    lines
}

fn caption_height(lines: &[String]) -> f64 {
    8.0 + 3.2 * f64::from(u32::try_from(lines.len()).unwrap_or(0))
}

fn caption_group(id: &str, at: Point, scale: Scale, scene: &Scene, lines: &[String]) -> Group {
    let state = scene.behaviour.state.words();
    let words = format!("{state}, {}", scene.behaviour.width_words());
    let mut ink = vec![Ink::Words(Words { at, anchor: Anchor::Middle, size: 3.4, bold: true, words })];
    let mut y = at.y + 3.6;
    ink.push(Ink::centred(pt(at.x, y), 2.4, scale.words));
    for line in lines {
        y += 3.2;
        ink.push(Ink::centred(pt(at.x, y), 2.4, line.clone()));
    }
    Group { id: format!("{id}-caption"), title: String::new(), ink }
}

/// The joint closed and open, side by side; of a joint that doesn't move, a detail. Gives where they end.
fn moved(groups: &mut Vec<Group>, condition: &Condition, found: &Scene) -> f64 {
    let states = [State::Closed, State::Open].map(|state| Scene::of(condition, state));
    let scenes: Vec<Scene> = states.into_iter().flatten().collect();
    let (wide, high) = (ASIDE.width() / 2.0 - 2.0, 112.0);
    if scenes.is_empty() {
        return detail(groups, condition, found);
    }
    let mut below = ASIDE.min.y;
    for (at, scene) in scenes.iter().enumerate() {
        let lines: Vec<String> = caption_lines(condition, scene)
            .iter()
            .flat_map(|line| wrapped(line, 2.4, false, wide - 2.0, 2))
            .collect();
        let scale = Scale::fitting(scene.frame, wide - 14.0, high - 28.0);
        let size = pt(scene.frame.width() * scale.of_paper(), scene.frame.height() * scale.of_paper());
        let left = ASIDE.min.x + (wide + 4.0) * f64::from(u32::try_from(at).unwrap_or(0));
        let view = View { scene, scale, origin: pt(left + (wide - 14.0 - size.x) / 2.0, ASIDE.min.y) };
        let id = if scene.behaviour.state == State::Closed { "closed" } else { "open" };
        groups.extend(view.groups(id, |component| component.title().to_owned()));
        let mut occupied = Occupied::default();
        mark_troubles(groups, &view, id, &mut occupied);
        let measures: Vec<Measure> = scene.measures.iter().take(1).cloned().collect();
        dimension(groups, &view, id, &measures, &mut occupied);
        let at = pt(left + wide / 2.0, ASIDE.min.y + high - 15.0);
        groups.push(caption_group(id, at, scale, scene, &lines));
        below = below.max(at.y + caption_height(&lines));
    }
    below + 4.0
}

/// A detail of a joint that doesn't move.
fn detail(groups: &mut Vec<Group>, condition: &Condition, found: &Scene) -> f64 {
    let Some(at) = found.measures.first() else {
        return ASIDE.min.y;
    };
    let middle = at.from.towards(at.to, 0.5);
    let around = (condition.width.mm() / 2.0 + 34.0).max(52.0);
    let frame = Box2::of(middle, middle).grown(around);
    let frame = Box2::of(
        pt(frame.min.x.max(found.frame.min.x), frame.min.y.max(found.frame.min.y)),
        pt(frame.max.x.min(found.frame.max.x), frame.max.y.min(found.frame.max.y)),
    );
    let scene = found.detail(frame);
    let scale = Scale::fitting(frame, ASIDE.width() - 20.0, 112.0);
    let left = ASIDE.min.x + (ASIDE.width() - 16.0 - frame.width() * scale.of_paper()) / 2.0;
    let view = View { scene: &scene, scale, origin: pt(left, ASIDE.min.y) };
    groups.extend(view.groups("detail", |component| component.title().to_owned()));
    let mut occupied = Occupied::default();
    dimension(groups, &view, "detail", &scene.measures, &mut occupied);
    let y = view.bounds().max.y + 18.0;
    let at = pt(f64::midpoint(ASIDE.min.x, ASIDE.max.x), y);
    let words = "Detail".to_owned();
    let why = if condition.motion.closing.is_none() && condition.motion.opening.is_none() {
        "the joint isn't known to move"
    } else {
        ""
    };
    let ink = vec![
        Ink::Words(Words { at, anchor: Anchor::Middle, size: 3.4, bold: true, words }),
        Ink::centred(pt(at.x, at.y + 3.6), 2.4, scale.words),
        Ink::centred(pt(at.x, at.y + 6.8), 2.4, why),
    ];
    groups.push(Group { id: "detail-caption".to_owned(), title: String::new(), ink });
    y + 12.0
}

/// What stands below: the deck's profile along the wall, the readings along the run, notes.
fn extras(groups: &mut Vec<Group>, condition: &Condition, found: &Scene, from: f64) {
    let mut y = from;
    if let Some(scene) = profile::along_the_wall(condition, &found.behaviour) {
        let scale = Scale::fitting(scene.frame, ASIDE.width(), 26.0);
        let size = pt(scene.frame.width() * scale.of_paper(), scene.frame.height() * scale.of_paper());
        let view = View { scene: &scene, scale, origin: pt(ASIDE.min.x + (ASIDE.width() - size.x) / 2.0, y) };
        groups.extend(view.groups("along", |component| component.title().to_owned()));
        dimension(groups, &view, "along", &scene.measures, &mut Occupied::default());
        y = view.bounds().max.y + 14.0;
        let words = format!("Along the wall, {}", scale.words);
        groups.push(Group {
            id: "along-caption".to_owned(),
            title: String::new(),
            ink: vec![Ink::centred(pt(f64::midpoint(ASIDE.min.x, ASIDE.max.x), y), 2.6, words)],
        });
        y += 5.0;
    }
    let high = 36.0_f64;
    if let Some(chart) = chart::chart(Box2::of(pt(ASIDE.min.x, y), pt(ASIDE.max.x, y + high)), condition)
        && y + high < FOOT
    {
        groups.push(chart);
        y += high + 5.0;
    }
    notes(groups, condition, found, y);
}

fn notes(groups: &mut Vec<Group>, condition: &Condition, found: &Scene, from: f64) {
    let mut notes = found.notes.clone();
    for (share, words) in [(&condition.motion.closing, "closes"), (&condition.motion.opening, "opens")] {
        if let Some(share) = share {
            let whence = match &share.from {
                crate::known::Origin::Fact(provenance) => provenance.clone(),
                _ => "as the listing was tested; what is needed isn't recorded".to_owned(),
            };
            notes.push(format!("Movement: {words} by {} of its width ({whence}).", share.percent));
        }
    }
    if condition.kind == Kind::HeadOfWall && condition.fill.is_empty() {
        notes.push("Nothing is known of what fills the joint.".to_owned());
    }
    if condition.width.quantity.unit == Unit::Millimetre {
        notes.push("Inches in dimensions are rounded to 1/32 in.".to_owned());
    } else {
        notes.push("Millimetres in dimensions are rounded to 0.1 mm.".to_owned());
    }
    let mut ink = Vec::new();
    let mut y = from + 2.8;
    ink.push(Ink::bold(pt(ASIDE.min.x, y), 2.8, "Notes"));
    for (at, note) in notes.iter().enumerate() {
        let number = format!("{}.", at + 1);
        let lines = wrapped(note, 2.4, false, ASIDE.width() - 6.0, 3);
        let high = 3.1 * f64::from(u32::try_from(lines.len()).unwrap_or(0));
        if y + high + 1.0 > FOOT {
            break;
        }
        let indent = 1.2 + width(&number, 2.4, false);
        for (at, line) in lines.into_iter().enumerate() {
            y += 3.1;
            if at == 0 {
                ink.push(Ink::words(pt(ASIDE.min.x, y), 2.4, number.clone()));
            }
            ink.push(Ink::words(pt(ASIDE.min.x + indent.max(4.0), y), 2.4, line));
        }
        y += 0.6;
    }
    groups.push(Group { id: "notes".to_owned(), title: "Notes".to_owned(), ink });
}

/// The sheet in words, for those who can't see it.
fn described(condition: &Condition, found: &Scene, callouts: &[Callout]) -> String {
    let mut sentences = vec![format!(
        "A {} joint, {} wide as found",
        condition.kind.words(),
        found.behaviour.width_words()
    )];
    for state in [State::AsFound, State::Closed, State::Open] {
        if let Some(scene) = Scene::of(condition, state) {
            let mut said = vec![format!("{}: {}", state.words(), scene.behaviour.width_words())];
            said.extend(caption_lines(condition, &scene));
            sentences.push(said.join("; "));
        }
    }
    sentences.extend(callouts.iter().map(Callout::words));
    sentences.join(". ") + "."
}
