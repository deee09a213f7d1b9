use measure::Quantity;

use super::behaviour::Behaviour;
use super::part::{Component, Look, Material, Part, Shape};
use crate::known::Length;
use crate::plane::{Box2, Outline, Point, pt};

/// A section at one state of movement: parts, measures and troubles, in millimetres of the building. Of a head of wall the
/// underside of what is above lies at y = 0, and the middle of the wall at x = 0.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// What the movement makes of the joint.
    pub behaviour: Behaviour,
    /// The parts, those behind first.
    pub parts: Vec<Part>,
    /// What is dimensioned, the most important first.
    pub measures: Vec<Measure>,
    /// Where parts jam, or leave a gap.
    pub troubles: Vec<Trouble>,
    /// What is worth saying of how it is drawn.
    pub notes: Vec<String>,
    /// What of it is shown.
    pub frame: Box2,
}

/// Where a measure is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// To the right of the section, upright.
    Right,
    /// Below the section, level.
    Below,
    /// In the section at the measure itself, level, the words under the line.
    Under,
    /// The same, the words over the line.
    Over,
}

/// A length that is dimensioned.
#[derive(Debug, Clone, PartialEq)]
pub struct Measure {
    /// What it is the length of.
    pub what: &'static str,
    /// From here.
    pub from: Point,
    /// To here.
    pub to: Point,
    /// Where it is written.
    pub side: Side,
    /// The length itself.
    pub length: Quantity,
    /// Whether the joint itself is known to be so.
    pub is_known: bool,
}

/// A place where parts jam, or leave a gap.
#[derive(Debug, Clone, PartialEq)]
pub struct Trouble {
    /// Where.
    pub at: Point,
    /// What, in a few words.
    pub words: String,
}

impl Scene {
    pub(crate) fn new(behaviour: Behaviour, frame: Box2) -> Self {
        Self {
            behaviour,
            parts: Vec::new(),
            measures: Vec::new(),
            troubles: Vec::new(),
            notes: Vec::new(),
            frame,
        }
    }

    /// Adds a part that is cut, as far as it lies in the frame.
    pub(crate) fn cut(
        &mut self,
        component: Component,
        material: Material,
        outline: &Outline,
        is_known: bool,
    ) {
        self.add(component, material, Look::Cut, outline, is_known);
    }

    /// Adds a part that is seen beyond.
    pub(super) fn beyond(
        &mut self,
        component: Component,
        material: Material,
        outline: &Outline,
        is_known: bool,
    ) {
        self.add(component, material, Look::Beyond, outline, is_known);
    }

    fn add(
        &mut self,
        component: Component,
        material: Material,
        look: Look,
        outline: &Outline,
        is_known: bool,
    ) {
        if let Some(outline) = outline.within(self.frame) {
            self.parts.push(Part {
                component,
                shape: Shape::Area(outline),
                material,
                look,
                is_known,
            });
        }
    }

    /// Adds what is too thin to have an area.
    pub(super) fn line(
        &mut self,
        component: Component,
        look: Look,
        points: impl IntoIterator<Item = Point>,
        is_known: bool,
    ) {
        let points: Vec<Point> = points.into_iter().collect();
        let frame = self.frame;
        if points
            .iter()
            .all(|point| frame.holds(Box2::of(*point, *point)))
        {
            self.parts.push(Part {
                component,
                shape: Shape::Line(points),
                material: Material::SheetSteel,
                look,
                is_known,
            });
        }
    }

    /// Dimensions a length.
    pub(crate) fn measure(
        &mut self,
        what: &'static str,
        side: Side,
        from: Point,
        to: Point,
        length: &Length,
    ) {
        self.measure_of(
            what,
            side,
            from,
            to,
            (length.quantity, length.from.is_fact()),
        );
    }

    /// Dimensions a length that is worked out.
    pub(super) fn measure_of(
        &mut self,
        what: &'static str,
        side: Side,
        from: Point,
        to: Point,
        (length, is_known): (Quantity, bool),
    ) {
        // What lies outside the frame is cut off in the drawing and can't be dimensioned.
        let frame = self.frame.grown(1e-6);
        if frame.holds(Box2::of(from, to)) {
            self.measures.push(Measure {
                what,
                from,
                to,
                side,
                length,
                is_known,
            });
        }
    }

    /// Marks a trouble.
    pub(super) fn trouble(&mut self, at: Point, words: String) {
        let Box2 { min, max } = self.frame;
        let at = pt(at.x.clamp(min.x, max.x), at.y.clamp(min.y, max.y));
        self.troubles.push(Trouble { at, words });
    }

    /// The parts of a component.
    pub fn parts_of(&self, component: Component) -> impl Iterator<Item = &Part> {
        self.parts
            .iter()
            .filter(move |part| part.component == component)
    }

    /// The same section with what is above below.
    #[must_use]
    pub(super) fn upside_down(mut self) -> Self {
        let turned = |point: Point| pt(point.x, -point.y);
        for part in &mut self.parts {
            part.shape = match &part.shape {
                Shape::Area(outline) => Shape::Area(outline.map(turned)),
                Shape::Line(points) => Shape::Line(points.iter().copied().map(turned).collect()),
            };
        }
        for measure in &mut self.measures {
            (measure.from, measure.to) = (turned(measure.from), turned(measure.to));
        }
        for trouble in &mut self.troubles {
            trouble.at = turned(trouble.at);
        }
        self.frame = Box2::of(turned(self.frame.min), turned(self.frame.max));
        self
    }
}

/// The components of a section, in the order of their kind.
pub type Kinds = std::collections::BTreeSet<Component>;

impl Scene {
    /// Draws a deck whose flutes run out of the section, a valley in the middle of it, with the concrete on it.
    pub(crate) fn deck_along(&mut self, floor: &crate::known::Deck) {
        super::deck::along(self, floor);
        self.notes.clear();
        self.measures.clear();
    }

    /// A detail of it: what lies in a smaller frame.
    pub(crate) fn detail(&self, frame: Box2) -> Self {
        let mut detail = Self::new(self.behaviour.clone(), frame);
        for part in &self.parts {
            match &part.shape {
                Shape::Area(outline) => detail.add(
                    part.component,
                    part.material,
                    part.look,
                    outline,
                    part.is_known,
                ),
                Shape::Line(points) => detail.line(
                    part.component,
                    part.look,
                    points.iter().copied(),
                    part.is_known,
                ),
            }
        }
        let width = self
            .measures
            .iter()
            .find(|measure| measure.what == "joint width");
        detail.measures.extend(width.cloned());
        for trouble in &self.troubles {
            detail.trouble(trouble.at, trouble.words.clone());
        }
        detail
    }

    /// Which components it has.
    pub fn components(&self) -> Kinds {
        self.parts.iter().map(|part| part.component).collect()
    }
}
