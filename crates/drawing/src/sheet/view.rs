//! A section on paper.

use super::scale::Scale;
use crate::plane::{Box2, Edge, Outline, Point, pt};
use crate::section::{Component, Look, Material, Part, Scene, Shape};
use crate::svg::{Fill, Group, Ink, Pen};

/// A section on paper: where and how large.
#[derive(Debug, Clone, Copy)]
pub(super) struct View<'a> {
    /// What it shows.
    pub(super) scene: &'a Scene,
    /// At which scale.
    pub(super) scale: Scale,
    /// Where the upper left corner of its frame is on paper.
    pub(super) origin: Point,
}

impl View<'_> {
    /// A point of the building on paper.
    pub(super) fn on_paper(&self, point: Point) -> Point {
        let of_paper = self.scale.of_paper();
        let Box2 { min, .. } = self.scene.frame;
        pt(
            self.origin.x + (point.x - min.x) * of_paper,
            self.origin.y + (point.y - min.y) * of_paper,
        )
    }

    /// What it takes on paper.
    pub(super) fn bounds(&self) -> Box2 {
        Box2::of(
            self.on_paper(self.scene.frame.min),
            self.on_paper(self.scene.frame.max),
        )
    }

    /// Its parts, a group a component, what is beyond first.
    pub(super) fn groups(&self, id: &str, title: impl Fn(Component) -> String) -> Vec<Group> {
        let mut groups: Vec<Group> = Vec::new();
        let beyond = self
            .scene
            .parts
            .iter()
            .filter(|part| part.look == Look::Beyond);
        let cut = self
            .scene
            .parts
            .iter()
            .filter(|part| part.look == Look::Cut);
        // Lines lie on top of areas: screws and beads would vanish under what they are in.
        let is_line = |part: &&Part| matches!(part.shape, Shape::Line(_));
        let (lines, areas): (Vec<&Part>, Vec<&Part>) = cut.partition(is_line);
        for (layer, parts) in [beyond.collect(), areas, lines].into_iter().enumerate() {
            let mut components: Vec<Component> = parts.iter().map(|part| part.component).collect();
            components.dedup();
            components.sort_unstable();
            components.dedup();
            for component in components {
                let ink = parts
                    .iter()
                    .filter(|part| part.component == component)
                    .flat_map(|part| self.part(part))
                    .collect();
                groups.push(Group {
                    id: format!(
                        "{id}-{layer}-{}",
                        component.title().to_lowercase().replace(' ', "-")
                    ),
                    title: title(component),
                    ink,
                });
            }
        }
        groups
    }

    fn part(&self, part: &Part) -> Vec<Ink> {
        match &part.shape {
            Shape::Line(points) => {
                let points = points.iter().map(|point| self.on_paper(*point)).collect();
                let pen = match (part.component, part.look) {
                    (_, Look::Beyond) => Pen::Beyond,
                    (Component::Fastener | Component::Screw, _) => Pen::CutThin,
                    _ => Pen::Frame,
                };
                vec![Ink::Line {
                    points,
                    closed: false,
                    pen,
                    dashed: !part.is_known,
                }]
            }
            Shape::Area(outline) => self.area(part, outline),
        }
    }

    fn area(&self, part: &Part, outline: &Outline) -> Vec<Ink> {
        let points: Vec<Point> = outline.points().map(|point| self.on_paper(point)).collect();
        let mut ink = vec![Ink::Area(points.clone(), Fill::White)];
        let dashed = !part.is_known;
        let is_sheet = part.material == Material::SheetSteel;
        if part.look == Look::Cut && !(is_sheet && dashed) {
            ink.push(Ink::Area(points, Fill::Material(part.material)));
        }
        let pen = match (part.look, part.material) {
            (Look::Beyond, _) => Pen::Beyond,
            (
                _,
                Material::SheetSteel
                | Material::Gap
                | Material::Coating
                | Material::Gypsum
                | Material::Sealant,
            ) => Pen::CutThin,
            _ => Pen::Cut,
        };
        ink.extend(self.edges(outline, pen, dashed));
        ink
    }

    /// The outline: faces with the pen, runs of them in one; where the part goes on, a break line.
    fn edges(&self, outline: &Outline, pen: Pen, dashed: bool) -> Vec<Ink> {
        let mut ink = Vec::new();
        let mut run: Vec<Point> = Vec::new();
        for (from, to, edge) in outline.edges() {
            let (from, to) = (self.on_paper(from), self.on_paper(to));
            if edge == Edge::Face {
                if run.is_empty() {
                    run.push(from);
                }
                run.push(to);
                continue;
            }
            flush(&mut ink, &mut run, pen, dashed);
            ink.push(Ink::path(broken(from, to), Pen::Thin));
        }
        flush(&mut ink, &mut run, pen, dashed);
        ink
    }
}

fn flush(ink: &mut Vec<Ink>, run: &mut Vec<Point>, pen: Pen, dashed: bool) {
    if run.len() > 1 {
        let closed = run.first() == run.last() && run.len() > 3;
        ink.push(Ink::Line {
            points: core::mem::take(run),
            closed,
            pen,
            dashed,
        });
    }
    run.clear();
}

/// A break line (ISO 128-2, line 01.1.19: thin, with zigzags): one zigzag in its middle where it is long enough.
fn broken(from: Point, to: Point) -> Vec<Point> {
    let long = from.distance(to);
    if long < 6.0 {
        return vec![from, to];
    }
    let (along, across) = (
        pt((to.x - from.x) / long, (to.y - from.y) / long),
        pt(-(to.y - from.y) / long, (to.x - from.x) / long),
    );
    let middle = from.towards(to, 0.5);
    let at = |forward: f64, aside: f64| {
        pt(
            middle.x + along.x * forward + across.x * aside,
            middle.y + along.y * forward + across.y * aside,
        )
    };
    vec![
        from,
        at(-1.2, 0.0),
        at(-0.5, 1.0),
        at(0.5, -1.0),
        at(1.2, 0.0),
        to,
    ]
}

/// Where a call-out points at a part: the middle of the widest place at a level of the leftmost area of the component.
pub(super) fn anchor(view: &View<'_>, component: Component) -> Option<Point> {
    let leftmost = view
        .scene
        .parts_of(component)
        .filter(|part| part.material != Material::Gap)
        .min_by(|one, other| left_of(one).total_cmp(&left_of(other)))?;
    let point = match &leftmost.shape {
        Shape::Line(points) => {
            let (first, last) = (points.first()?, points.last()?);
            first.towards(*last, 0.3)
        }
        Shape::Area(outline) => outline.inside_at(level(component))?,
    };
    Some(view.on_paper(point))
}

fn left_of(part: &Part) -> f64 {
    part.shape
        .points()
        .iter()
        .map(|point| point.x)
        .fold(f64::INFINITY, f64::min)
}

/// At which part of its height a component is called out, so that neighbours aren't called out side by side.
const fn level(component: Component) -> f64 {
    match component {
        Component::Concrete => 0.4,
        Component::Runner | Component::Stud => 0.8,
        Component::Board => 0.62,
        Component::Liner | Component::Wall => 0.72,
        Component::Coating => 0.85,
        _ => 0.5,
    }
}
