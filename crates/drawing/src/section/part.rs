use crate::known::Fibres;
use crate::plane::{Outline, Point};

/// What a part is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Component {
    /// A flat slab, or the concrete on a deck.
    Concrete,
    /// The steel deck.
    Deck,
    /// A beam.
    Beam,
    /// Sprayed fireproofing.
    Fireproofing,
    /// A clip.
    Clip,
    /// A wall of concrete or masonry.
    Wall,
    /// The runner.
    Runner,
    /// A stud.
    Stud,
    /// Gypsum board.
    Board,
    /// The liner panel of a shaft wall.
    Liner,
    /// What fastens the runner or a clip.
    Fastener,
    /// A screw through board or runner into a stud.
    Screw,
    /// Packing in the flutes of a deck.
    FlutePacking,
    /// Packing.
    Packing,
    /// Coating.
    Coating,
    /// Sealant at a face.
    Sealant,
    /// A bead of sealant under the runner.
    Bead,
    /// A preformed seal.
    Seal,
    /// Tape in the runner.
    Tape,
}

impl Component {
    /// Its name, to begin a line.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Concrete => "Concrete",
            Self::Deck => "Steel deck",
            Self::Beam => "Beam",
            Self::Fireproofing => "Fireproofing",
            Self::Clip => "Clip",
            Self::Wall => "Wall",
            Self::Runner => "Runner",
            Self::Stud => "Stud",
            Self::Board => "Gypsum board",
            Self::Liner => "Liner panel",
            Self::Fastener => "Fastener",
            Self::Screw => "Screws",
            Self::FlutePacking => "Packing in the flutes",
            Self::Packing => "Packing",
            Self::Coating => "Coating",
            Self::Sealant => "Sealant",
            Self::Bead => "Bead of sealant",
            Self::Seal => "Preformed seal",
            Self::Tape => "Tape",
        }
    }

    /// The components of the vocabulary whose clauses speak of it.
    pub const fn spoken_of_as(self) -> &'static [&'static str] {
        match self {
            Self::Concrete => &["floor", "concrete"],
            Self::Deck => &["deck"],
            Self::Beam => &["beam"],
            Self::Fireproofing => &["fireproofing"],
            Self::Clip => &["clip"],
            Self::Wall => &["wall"],
            Self::Runner => &["runner"],
            Self::Stud => &["stud"],
            Self::Board | Self::Screw => &["board"],
            Self::Liner => &[],
            Self::Fastener => &["fastener", "runner"],
            Self::FlutePacking | Self::Packing => &["packing"],
            Self::Coating => &["coating"],
            Self::Sealant | Self::Bead => &["sealant"],
            Self::Seal => &["seal"],
            Self::Tape => &["tape"],
        }
    }
}

/// What a part is made of, as far as it is drawn otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Material {
    /// Cast concrete.
    Concrete,
    /// Masonry units.
    Masonry,
    /// Rolled steel.
    RolledSteel,
    /// Sheet steel, too thin to hatch.
    SheetSteel,
    /// Gypsum board.
    Gypsum,
    /// Mineral wool with its fibres level in the drawing.
    WoolLevel,
    /// Mineral wool with its fibres upright in the drawing.
    WoolUpright,
    /// Mineral wool with its fibres along the run, or no one knows how.
    Wool,
    /// Sprayed fireproofing.
    Sprayed,
    /// Coating.
    Coating,
    /// Sealant.
    Sealant,
    /// A preformed seal.
    Foam,
    /// Nothing: a slot in a part.
    Gap,
}

impl Material {
    /// Mineral wool with its fibres so; `joint_is_level` where the faces of the joint lie level in the drawing.
    pub(crate) const fn wool(fibres: Option<Fibres>, joint_is_level: bool) -> Self {
        match (fibres, joint_is_level) {
            (Some(Fibres::AlongFaces), true) | (Some(Fibres::AcrossJoint), false) => {
                Self::WoolLevel
            }
            (Some(Fibres::AlongFaces), false) | (Some(Fibres::AcrossJoint), true) => {
                Self::WoolUpright
            }
            (Some(Fibres::AlongRun) | None, _) => Self::Wool,
        }
    }

    /// Its name in the key.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Concrete => "concrete",
            Self::Masonry => "masonry",
            Self::RolledSteel => "rolled steel",
            Self::SheetSteel => "sheet steel, fasteners",
            Self::Gypsum => "gypsum board",
            Self::WoolLevel | Self::WoolUpright => "mineral wool, lines as the fibres run",
            Self::Wool => "mineral wool",
            Self::Sprayed => "fireproofing",
            Self::Coating => "coating",
            Self::Sealant => "sealant",
            Self::Foam => "preformed seal",
            Self::Gap => "slot",
        }
    }
}

/// Whether the section cuts a part, or shows it beyond.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Look {
    /// The section cuts it.
    Cut,
    /// It is seen beyond the section.
    Beyond,
}

/// The form of a part.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// An area.
    Area(Outline),
    /// A line: what is too thin to have an area, such as a screw.
    Line(Vec<Point>),
}

impl Shape {
    /// Its points.
    pub fn points(&self) -> Vec<Point> {
        match self {
            Self::Area(outline) => outline.points().collect(),
            Self::Line(points) => points.clone(),
        }
    }
}

/// A part in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// What it is.
    pub component: Component,
    /// Its form.
    pub shape: Shape,
    /// What it is made of.
    pub material: Material,
    /// Whether it is cut.
    pub look: Look,
    /// Whether the joint itself is known to be so; otherwise it is drawn from the listing or from what is usual, and dashed.
    pub is_known: bool,
}
