//! A listing as numbers and names.

use super::seed::Seed;

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

    pub const fn has_floor(self) -> bool {
        !matches!(self, Self::WallToWall)
    }

    pub const fn has_studs(self) -> bool {
        matches!(self, Self::HeadOfWall | Self::BottomOfWall)
    }
}

/// A product with its maker.
pub type Product = (&'static str, &'static str);

pub const PACKINGS: &[Product] = &[
    ("Vostrika Fibre Works", "Vostmat 40"),
    ("Vostrika Fibre Works", "Vostmat 60"),
    ("Ulmeregg Mineral Fibre", "Ulmerpad 4"),
    ("Ulmeregg Mineral Fibre", "Ulmerpad 6"),
    ("Tarrowfen Wools", "Tarrowbatt 4"),
    ("Tarrowfen Wools", "Tarrowbatt 8"),
];
pub const COATINGS: &[Product] = &[
    ("Sevrandel Coatings", "Sevraspray 20"),
    ("Sevrandel Coatings", "Sevraspray 20 LT"),
    ("Zelmarrick Sealants", "Zelmaspray J"),
    ("Quillbrook Seals", "Quillcoat S"),
    ("Quillbrook Seals", "Quillcoat W"),
];
pub const BOARDS: &[Product] = &[
    ("Ivrandine Board Company", "Ivraboard X"),
    ("Ivrandine Board Company", "Ivraboard XC"),
    ("Maddoran Gypsum", "Maddorock 58"),
];

/// A listing as numbers and names: lengths in 64ths of an inch.
#[derive(Debug, Clone)]
pub struct Spec {
    pub number: usize,
    pub kind: Kind,
    pub style: usize,
    pub ratings: &'static [usize],
    pub width: usize,
    pub class: &'static str,
    pub compression: usize,
    pub extension: usize,
    pub floor: usize,
    pub density: (usize, usize),
    pub wall: usize,
    pub runner_gauge: usize,
    pub runner_leg: usize,
    pub runner_spacing: usize,
    pub stud_width: usize,
    pub stud_spacing: usize,
    pub screw: usize,
    pub packing_density: usize,
    pub density_is_nominal: bool,
    pub packing_compression: usize,
    /// For the first rating; a quarter inch more for each that follows.
    pub depth: usize,
    pub packings: Vec<Product>,
    pub splice: Option<usize>,
    pub wet: usize,
    pub overlap_board: usize,
    pub overlap_concrete: usize,
    pub coatings: Vec<Product>,
    pub boards: Vec<Product>,
    /// A second packing in place of the first, with its own density.
    pub alternate: Option<(Product, usize)>,
    pub optional_angles: bool,
    pub words: Vec<&'static str>,
}

const WORDS: &[&str] = &[
    "The packing is cut clean and left without voids.",
    "Surfaces that the coating laps onto are sound, dry and free of dust.",
    "Where the joint meets one in another plane, the coating is carried round without a break.",
    "Work stops where the surfaces are wet or frozen.",
    "The assembly is to be inspected before it is concealed.",
];

/// Some of the products; the house style of notes has one maker a note.
fn some(seed: &mut Seed, of: &[Product], style: usize) -> Vec<Product> {
    let mut chosen: Vec<Product> = of.iter().copied().filter(|_| seed.percent(40)).collect();
    if chosen.is_empty() {
        chosen.push(seed.one(of));
    }
    if style == 1 {
        let maker = chosen[0].0;
        chosen.retain(|(other, _)| *other == maker);
    }
    chosen
}

impl Spec {
    /// The listing of that number.
    pub fn of(number: usize, seed: &mut Seed) -> Self {
        let kind = seed.one(&[
            Kind::HeadOfWall,
            Kind::HeadOfWall,
            Kind::HeadOfWall,
            Kind::BottomOfWall,
            Kind::FloorToFloor,
            Kind::WallToWall,
        ]);
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
        let words = (0..seed.one(&[0, 0, 1, 2, 3])).map(|_| seed.one(WORDS));
        let words: Vec<&str> = words.collect();
        let style = seed.below(3);
        Self {
            number,
            kind,
            style,
            ratings: seed.one(&[&[1], &[2], &[1, 2], &[1, 2], &[2, 3], &[1, 2, 3]]),
            width: seed.one(&[32, 40, 48, 64, 80, 96, 128, 160, 192, 256]),
            class,
            compression,
            extension,
            floor: seed.one(&[160, 208, 256, 288, 320, 384]),
            density: seed.one(&[(100, 155), (107, 150), (110, 150), (140, 150)]),
            wall: seed.one(&[256, 288, 320, 384]),
            runner_gauge: seed.one(&[25, 22, 20, 18]),
            runner_leg: seed.one(&[80, 96, 128, 160, 192]),
            runner_spacing: seed.one(&[8, 12, 16, 24]),
            stud_width: seed.one(&[160, 224, 232, 384]),
            stud_spacing: seed.one(&[12, 16, 24]),
            screw: seed.one(&[128, 160, 192, 256]),
            packing_density: seed.one(&[4, 4, 6, 8]),
            density_is_nominal: seed.percent(60),
            packing_compression: seed.one(&[25, 30, 33, 40, 50]),
            depth: seed.one(&[32, 48, 64, 80, 128, 192, 256]),
            packings: some(seed, PACKINGS, style),
            splice: seed.percent(40).then(|| seed.one(&[24, 30, 48])),
            wet: seed.one(&[8, 10, 12, 16]),
            overlap_board: seed.one(&[32, 48, 64]),
            overlap_concrete: seed.one(&[32, 64, 96, 128]),
            coatings: some(seed, COATINGS, style),
            boards: some(seed, BOARDS, style),
            alternate: seed
                .percent(25)
                .then(|| (seed.one(PACKINGS), seed.one(&[4, 6, 8]))),
            optional_angles: seed.percent(20),
            words,
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

    /// The depth of packing for a rating.
    pub fn depth_for(&self, rating: usize) -> usize {
        let place = self.ratings.iter().position(|one| *one >= rating);
        self.depth + 16 * place.unwrap_or(0)
    }
}
