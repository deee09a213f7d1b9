//! What the joint lies between: floors, decks, beams with their fireproofing, walls.

use super::super::seed::Seed;
use super::part::{Built, Part};
use super::products::{BOARDS, FIREPROOFINGS, RUNNERS, some};
use super::statement::Amount::{Count, Density, Gauge, Length, Weight};
use super::statement::Ask::{AtLeast, AtMost, Between, Exactly, Nominal};
use super::statement::{Amount, When};
use super::{Above, Kind, remarks};

/// What the parts are drawn from.
pub struct Draw<'s> {
    pub seed: &'s mut Seed,
    pub kind: Kind,
    pub above: Above,
    pub ratings: &'static [usize],
    pub width: usize,
    /// How many remarks in a hundred are made.
    pub talk: usize,
}

impl Draw<'_> {
    pub(super) fn remarks(&mut self, of: &[&'static str]) -> Vec<&'static str> {
        remarks::some(self.seed, of, self.talk)
    }

    pub(super) fn length(&mut self, of: &[usize]) -> Amount {
        Length(self.seed.one(of))
    }

    /// The parts that the joint lies between.
    pub fn construction(&mut self) -> Vec<Part> {
        let mut parts = match (self.kind, self.above) {
            (Kind::WallToWall, _) => return vec![self.masonry()],
            (Kind::HeadOfWall, Above::Deck) => vec![self.deck()],
            (Kind::HeadOfWall, Above::Beam) => vec![self.deck(), self.beam()],
            _ => vec![self.slab()],
        };
        if self.kind.has_studs() {
            parts.push(self.wall());
        }
        parts
    }

    fn slab(&mut self) -> Part {
        let (low, high) = self
            .seed
            .one(&[(100, 155), (107, 150), (110, 150), (140, 150)]);
        let thick = self.length(&[160, 208, 256, 288, 320, 384]);
        let says = self.remarks(remarks::FLOOR);
        Part::new("floor", "Floor", "Reinforced concrete")
            .asks("concrete.thickness", AtLeast(thick))
            .asks("concrete.density", Between(Density(low), Density(high)))
            .says(says)
    }

    fn deck(&mut self) -> Part {
        let depth = self.length(&[96, 128, 192]);
        let apart = self.length(&[384, 512, 768]);
        let gauge = Gauge(self.seed.one(&[22, 20, 18]));
        let over = self.length(&[128, 160, 208]);
        let (low, high) = self.seed.one(&[(107, 115), (110, 150), (140, 150)]);
        let says = self.remarks(remarks::DECK);
        let concrete = Part::new(
            "concrete",
            "Concrete",
            "Structural concrete over the crests",
        )
        .asks("concrete.thickness", AtLeast(over))
        .asks("concrete.density", Between(Density(low), Density(high)))
        .says(self.remarks(remarks::FLOOR));
        Part::new("deck", "Steel deck", "Fluted galv steel units")
            .asks("deck.depth", AtMost(depth))
            .asks("deck.gauge", AtLeast(gauge))
            .asks("deck.flute_spacing", Nominal(apart))
            .says(says)
            .with(concrete)
    }

    fn beam(&mut self) -> Part {
        let weight = Weight(self.seed.one(&[18, 22, 26, 31]));
        let depth = self.length(&[512, 640, 768]);
        let wide = self.length(&[256, 336, 368]);
        let density = Density(self.seed.one(&[13, 15, 17, 22]));
        let says = self.remarks(remarks::BEAM);
        let mut sprayed = Part::new(
            "fireproofing",
            "Fireproofing",
            "Sprayed fire resistive material",
        )
        .asks("fireproofing.density", AtLeast(density))
        .made_by(some(self.seed, FIREPROOFINGS))
        .says(self.remarks(remarks::FIREPROOFING));
        let first = self.seed.one(&[36, 44, 56]);
        for (place, rating) in self.ratings.iter().enumerate() {
            let thick = AtLeast(Length(first + 20 * place));
            sprayed = sprayed.asks_when("fireproofing.thickness", thick, When::Rating(*rating));
        }
        Part::new("beam", "Beam", "Wide flange steel beam")
            .asks("beam.weight", AtLeast(weight))
            .asks("beam.depth", AtLeast(depth))
            .asks("beam.flange_width", AtLeast(wide))
            .says(says)
            .with(sprayed)
    }

    fn masonry(&mut self) -> Part {
        let thick = self.length(&[256, 288, 320, 384]);
        let (low, high) = self.seed.one(&[(100, 155), (110, 150), (140, 150)]);
        let says = self.remarks(remarks::FLOOR);
        Part::new("wall", "Walls", "Reinforced concrete")
            .asks("concrete.thickness", AtLeast(thick))
            .asks("concrete.density", Between(Density(low), Density(high)))
            .says(says)
    }

    fn wall(&mut self) -> Part {
        let says = self.remarks(remarks::WALL);
        let runner = self.runner();
        let mut wall = Part::new("wall", "Wall", "Gypsum board on steel studs")
            .says(says)
            .with(runner);
        if self.seed.percent(35) {
            wall = wall.with(self.slotted());
        }
        if self.seed.percent(25) {
            wall = wall.with(self.floor_runner());
        }
        wall.with(self.studs()).with(self.board())
    }

    fn runner(&mut self) -> Part {
        let leg = self.length(&[80, 96, 128, 160, 192]);
        let gauge = Gauge(self.seed.one(&[25, 22, 20, 18]));
        let apart = self.length(&[512, 768, 1024, 1536]);
        let end = self.length(&[128, 192, 256]);
        Part::new("runner", "Runner", "Galv steel channel")
            .asks("runner.gauge", AtLeast(gauge))
            .asks("runner.leg_length", AtLeast(leg))
            .asks("runner.fastener_spacing", AtMost(apart))
            .says(self.remarks(remarks::RUNNER))
            .with(self.fasteners(end))
    }

    fn fasteners(&mut self, end: Amount) -> Part {
        let long = self.length(&[80, 96, 128]);
        let deep = self.length(&[48, 64]);
        Part::new("fastener", "Fasteners", "Steel pins or masonry anchors")
            .asks("fastener.length", AtLeast(long))
            .asks("fastener.embedment", AtLeast(deep))
            .asks("fastener.end_distance", AtMost(end))
            .says(self.remarks(remarks::FASTENER))
    }

    /// A second runner beside the first, so that a fact which names neither shows nothing of either.
    fn floor_runner(&mut self) -> Part {
        let leg = self.length(&[80, 96]);
        let gauge = Gauge(self.seed.one(&[25, 22, 20]));
        let apart = self.length(&[768, 1024, 1536]);
        Part::new("runner", "Floor runner", "Galv steel channel")
            .asks("runner.gauge", AtLeast(gauge))
            .asks("runner.leg_length", AtLeast(leg))
            .asks("runner.fastener_spacing", AtMost(apart))
    }

    fn slotted(&mut self) -> Part {
        let leg = self.length(&[160, 192]);
        let slots = self.length(&[96, 128, 160]);
        let apart = self.length(&[768, 1024, 1536]);
        Part::new(
            "runner",
            "Slotted runner",
            "Galv steel channel with slotted legs",
        )
        .built(Built::InPlace)
        .asks("runner.leg_length", AtLeast(leg))
        .asks("runner.slot_length", AtLeast(slots))
        .asks("runner.fastener_spacing", AtMost(apart))
        .made_by(some(self.seed, RUNNERS))
    }

    fn studs(&mut self) -> Part {
        let wide = self.length(&[160, 224, 232, 384]);
        let gauge = Gauge(self.seed.one(&[25, 22, 20]));
        let apart = self.length(&[768, 1024, 1536]);
        let flange = self.length(&[80, 104]);
        let short = self.seed.one(&[24, 32, 48]);
        let mut studs = Part::new("stud", "Studs", "Galv steel studs")
            .asks("stud.width", AtLeast(wide))
            .asks("stud.gauge", AtLeast(gauge))
            .asks("stud.spacing", AtMost(apart))
            .asks("stud.flange_width", AtLeast(flange));
        if self.kind == Kind::HeadOfWall {
            let gap = Between(Length(short), Length(short + 16));
            studs = studs.asks("stud.end_gap", gap);
        }
        studs.says(self.remarks(remarks::STUD))
    }

    fn board(&mut self) -> Part {
        let screws = self.length(&[512, 768]);
        let offset = self.length(&[768, 1024, 1536]);
        let says = self.remarks(remarks::BOARD);
        let mut board = Part::new("board", "Gypsum board", "Type X board")
            .asks("board.thickness", Nominal(Length(40)))
            .asks("board.screw_spacing", AtMost(screws))
            .asks("board.joint_offset", AtLeast(offset))
            .made_by(some(self.seed, BOARDS))
            .says(says);
        if self.kind == Kind::HeadOfWall {
            let down = self.length(&[128, 160, 192, 256]);
            board = board
                .asks("board.gap", AtMost(Length(self.width)))
                .asks("board.top_screw_distance", AtLeast(down));
        }
        for (place, rating) in self.ratings.iter().enumerate() {
            let layers = Exactly(Count(place + 1));
            board = board.asks_when("board.layers", layers, When::Rating(*rating));
        }
        board
    }
}
