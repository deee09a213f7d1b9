//! A listing as numbers and names: the truth that its text is written from.

pub mod construction;
mod joint;
pub mod part;
pub mod products;
mod remarks;
pub mod statement;

use super::seed::Seed;
use construction::Draw;
pub use part::{Built, Part};
pub use products::Product;
pub use statement::{Amount, Ask, Statement, When};

/// What the joint lies between.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    HeadOfWall,
    BottomOfWall,
    FloorToFloor,
    WallToWall,
}

impl Kind {
    pub const fn code(self) -> &'static str {
        match self {
            Self::HeadOfWall => "HW",
            Self::BottomOfWall => "BW",
            Self::FloorToFloor => "FF",
            Self::WallToWall => "WW",
        }
    }

    pub const fn name(self) -> &'static str {
        match self {
            Self::HeadOfWall => "head-of-wall",
            Self::BottomOfWall => "bottom-of-wall",
            Self::FloorToFloor => "floor-to-floor",
            Self::WallToWall => "wall-to-wall",
        }
    }

    /// In words, as a heading has it.
    pub const fn title(self) -> &'static str {
        match self {
            Self::HeadOfWall => "Head of wall",
            Self::BottomOfWall => "Bottom of wall",
            Self::FloorToFloor => "Floor to floor",
            Self::WallToWall => "Wall to wall",
        }
    }

    pub const fn has_studs(self) -> bool {
        matches!(self, Self::HeadOfWall | Self::BottomOfWall)
    }
}

/// What a head of wall lies under.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Above {
    Slab,
    Deck,
    /// A beam with sprayed fireproofing.
    Beam,
}

/// The house styles that listings are written in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Style {
    /// Inches first, capitals and letters.
    Directory,
    /// Metric first, decimal numbers, makers in notes.
    Decimal,
    /// Sentences under articles.
    Articles,
    /// Tables in columns of text.
    Columns,
    /// Metric alone, with tables of what may differ.
    Classification,
    /// Notes of a drawing, in capitals.
    Notes,
}

impl Style {
    pub const ALL: [Self; 6] = [
        Self::Directory,
        Self::Decimal,
        Self::Articles,
        Self::Columns,
        Self::Classification,
        Self::Notes,
    ];
}

/// What the joint was cycled through.
#[derive(Debug, Clone, Copy)]
pub struct Movement {
    pub class: &'static str,
    pub compression: usize,
    pub extension: usize,
}

/// A listing as numbers and names: lengths in 64ths of an inch.
#[derive(Debug, Clone)]
pub struct Spec {
    pub number: usize,
    pub kind: Kind,
    pub above: Above,
    pub style: Style,
    pub ratings: &'static [usize],
    pub width: usize,
    pub movement: Movement,
    pub parts: Vec<Part>,
}

impl Spec {
    /// The listing of that number.
    pub fn of(number: usize, seed: &mut Seed) -> Self {
        use Kind::{BottomOfWall, FloorToFloor, HeadOfWall, WallToWall};
        let kinds = [
            HeadOfWall,
            HeadOfWall,
            HeadOfWall,
            BottomOfWall,
            FloorToFloor,
            WallToWall,
        ];
        let kind = seed.one(&kinds);
        let (class, compression, extension) = seed.one(&[
            ("I", 5, 5),
            ("I", 10, 10),
            ("II", 10, 10),
            ("II", 15, 10),
            ("II", 20, 20),
            ("II", 25, 25),
            ("II", 50, 25),
            ("III", 20, 10),
        ]);
        let movement = Movement {
            class,
            compression,
            extension,
        };
        let style = Style::ALL[number % Style::ALL.len()];
        let ratings = seed.one(&[&[1][..], &[2], &[1, 2], &[1, 2], &[2, 3], &[1, 2, 3]]);
        let width = seed.one(&[32, 40, 48, 64, 80, 96, 128, 160, 192, 256]);
        let above = seed.one(&[Above::Slab, Above::Slab, Above::Deck, Above::Beam]);
        let talk = talk(style, kind, seed);
        let mut draw = Draw {
            seed,
            kind,
            above,
            ratings,
            width,
            talk,
        };
        let mut parts = draw.construction();
        parts.push(draw.joint(movement));
        parts.push(draw.general());
        // Where notes have the makers in a row, the reader takes the second for a product of the first.
        if matches!(style, Style::Decimal | Style::Columns | Style::Notes) {
            Part::of_one_maker(&mut parts);
        }
        Part::number(&mut parts, &mut 0);
        Self {
            number,
            kind,
            above,
            style,
            ratings,
            width,
            movement,
            parts,
        }
    }

    /// A library of so many listings.
    pub fn library(size: usize, seed: u64) -> Vec<Self> {
        let mut seed = Seed(seed);
        (0..size)
            .map(|number| Self::of(number, &mut seed))
            .collect()
    }

    /// Its designation: the numbers stand for widths, so that each kind has its own series.
    pub fn designation(&self) -> String {
        let inches = self.width.div_ceil(64);
        let series = match inches {
            0..=2 => 0,
            3..=6 => 1000,
            _ => 2000,
        };
        format!("{}-D-{:04}", self.kind.code(), series + self.number % 1000)
    }

    pub fn file(&self) -> String {
        format!("{}-{:05}.txt", self.kind.code().to_lowercase(), self.number)
    }

    /// Every part, in order.
    pub fn all_parts(&self) -> Vec<&Part> {
        self.parts.iter().flat_map(Part::all).collect()
    }
}

/// How many remarks in a hundred are made: fewer where boxes take the room, more where little else is said.
fn talk(style: Style, kind: Kind, seed: &mut Seed) -> usize {
    let usual = seed.one(&[30, 40, 50, 60]);
    match (style, kind.has_studs()) {
        (Style::Columns, _) => usual / 2,
        (_, true) => usual,
        (_, false) => usual + 30,
    }
}
