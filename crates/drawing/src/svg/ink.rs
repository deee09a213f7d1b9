//! What stands on a page, in millimetres of paper.

use conformance::Verdict;

use crate::layout::width;
use crate::plane::{Box2, Point, pt};
use crate::section::Material;

/// A page.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// Its width.
    pub width: f64,
    /// Its height.
    pub height: f64,
    /// What it shows, in a line.
    pub title: String,
    /// What it shows, in words for those who can't see it.
    pub description: String,
    /// What stands on it, the lowest first.
    pub groups: Vec<Group>,
}

/// Things that belong together.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// Its name among the page's, unique.
    pub id: String,
    /// What it is, in a line; empty where it needs no words.
    pub title: String,
    /// What stands in it.
    pub ink: Vec<Ink>,
}

/// One thing on a page.
#[derive(Debug, Clone, PartialEq)]
pub enum Ink {
    /// A filled area without an outline.
    Area(Vec<Point>, Fill),
    /// A line, or a closed outline.
    Line {
        /// Its points.
        points: Vec<Point>,
        /// Whether its end is joined to its beginning.
        closed: bool,
        /// What it is drawn with.
        pen: Pen,
        /// Whether it is dashed.
        dashed: bool,
    },
    /// A call-out's leader: a line that ends in a dot on the part.
    Leader(Point, Point),
    /// A dot.
    Dot(Point, f64),
    /// Words.
    Words(Words),
    /// The mark of a verdict, about its middle.
    Mark(Point, Verdict),
}

/// A line of words.
#[derive(Debug, Clone, PartialEq)]
pub struct Words {
    /// Where its baseline begins, has its middle or ends.
    pub at: Point,
    /// Which of these.
    pub anchor: Anchor,
    /// The size of the letters: the font size.
    pub size: f64,
    /// Whether they are bold.
    pub bold: bool,
    /// The words.
    pub words: String,
}

/// Which part of a line of words is at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// How an area is filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fill {
    /// White.
    White,
    /// As a material is drawn.
    Material(Material),
}

/// What a line is drawn with. Widths after ISO 128-2: one group of widths, each about half or double the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pen {
    /// The outline of what the section cuts.
    Cut,
    /// The outline of a thin part that it cuts.
    CutThin,
    /// What is seen beyond.
    Beyond,
    /// Dimensions, leaders, break lines.
    Thin,
    /// The frame of the sheet.
    Frame,
}

impl Pen {
    /// Its width in millimetres.
    pub const fn width(self) -> f64 {
        match self {
            Self::Cut => 0.5,
            Self::CutThin => 0.35,
            Self::Beyond => 0.18,
            Self::Thin => 0.13,
            Self::Frame => 0.7,
        }
    }
}

impl Words {
    /// The box that it takes.
    pub fn bounds(&self) -> Box2 {
        let wide = self.length();
        let left = match self.anchor {
            Anchor::Start => self.at.x,
            Anchor::Middle => self.at.x - wide / 2.0,
            Anchor::End => self.at.x - wide,
        };
        // From the top of a capital to the bottom of a g, in Liberation Sans.
        Box2::of(
            pt(left, self.at.y - self.size * 0.73),
            pt(left + wide, self.at.y + self.size * 0.21),
        )
    }

    /// How wide it is.
    pub fn length(&self) -> f64 {
        width(&self.words, self.size, self.bold)
    }
}

impl Ink {
    /// A line from one point to another.
    pub(crate) fn line(from: Point, to: Point, pen: Pen) -> Self {
        Self::path([from, to], pen)
    }

    /// A line through points.
    pub(crate) fn path(points: impl IntoIterator<Item = Point>, pen: Pen) -> Self {
        Self::Line {
            points: points.into_iter().collect(),
            closed: false,
            pen,
            dashed: false,
        }
    }

    /// A rectangle's outline.
    pub(crate) fn frame(frame: Box2, pen: Pen) -> Self {
        let Box2 { min, max } = frame;
        let points = vec![min, pt(max.x, min.y), max, pt(min.x, max.y)];
        Self::Line {
            points,
            closed: true,
            pen,
            dashed: false,
        }
    }

    /// Words from a place on.
    pub(crate) fn words(at: Point, size: f64, words: impl Into<String>) -> Self {
        Self::Words(Words {
            at,
            anchor: Anchor::Start,
            size,
            bold: false,
            words: words.into(),
        })
    }

    /// The same, bold.
    pub(crate) fn bold(at: Point, size: f64, words: impl Into<String>) -> Self {
        Self::Words(Words {
            at,
            anchor: Anchor::Start,
            size,
            bold: true,
            words: words.into(),
        })
    }

    /// Words about a place.
    pub(crate) fn centred(at: Point, size: f64, words: impl Into<String>) -> Self {
        Self::Words(Words {
            at,
            anchor: Anchor::Middle,
            size,
            bold: false,
            words: words.into(),
        })
    }
}

impl Page {
    /// Every line of words on it.
    pub fn words(&self) -> impl Iterator<Item = &Words> {
        self.groups
            .iter()
            .flat_map(|group| &group.ink)
            .filter_map(|ink| match ink {
                Ink::Words(words) => Some(words),
                _ => None,
            })
    }

    /// Every leader on it.
    pub fn leaders(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        self.groups
            .iter()
            .flat_map(|group| &group.ink)
            .filter_map(|ink| match ink {
                Ink::Leader(from, to) => Some((*from, *to)),
                _ => None,
            })
    }
}
