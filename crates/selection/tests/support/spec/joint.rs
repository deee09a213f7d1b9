//! What stands in the joint: packing, coating, sealant, and the steel that holds them.

use super::construction::Draw;
use super::part::{Built, Part};
use super::products::{COATINGS, PACKINGS, SEALANTS, some};
use super::statement::Amount::{Count, Density, Fahrenheit, Gauge, Hours, Length, Percent};
use super::statement::Ask::{AtLeast, AtMost, Between, Nominal};
use super::statement::When;
use super::{Above, Kind, Movement, remarks};

impl Draw<'_> {
    /// The joint, with what stands in it.
    pub fn joint(&mut self, movement: Movement) -> Part {
        let says = self.remarks(remarks::JOINT);
        let mut joint = Part::new("joint", "Joint system", "")
            .asks("joint.width", AtMost(Length(self.width)))
            .asks(
                "joint.movement_compression",
                AtMost(Percent(movement.compression)),
            )
            .asks(
                "joint.movement_extension",
                AtMost(Percent(movement.extension)),
            )
            .says(says)
            .with(self.packing());
        if self.seed.percent(30) {
            joint = joint.with(self.other_packing());
        }
        if self.width > 128 {
            joint = joint.with(self.clips());
        }
        joint = joint.with(self.coating());
        if self.seed.percent(50) {
            joint = joint.with(self.sealant());
        }
        if !self.kind.has_studs() {
            joint = joint.with(self.cover());
        } else if self.seed.percent(40) {
            joint = joint.with(self.angles());
        }
        joint
    }

    fn packing(&mut self) -> Part {
        let pcf = Density(self.seed.one(&[4, 4, 6, 8]));
        let density = if self.seed.percent(60) {
            Nominal(pcf)
        } else {
            AtLeast(pcf)
        };
        let recess = self.length(&[8, 16, 32]);
        let seams = self.length(&[1536, 1920, 3072]);
        let says = self.remarks(remarks::PACKING);
        let mut packing = Part::new("packing", "Packing", "Mineral wool batt")
            .asks("packing.density", density)
            .made_by(some(self.seed, PACKINGS))
            .says(says);
        packing = self.compressed(packing);
        packing = self.deep(packing);
        if self.seed.percent(60) {
            packing = packing.asks("packing.recess", AtMost(recess));
        }
        let stagger = self.length(&[384, 768]);
        packing
            .asks("packing.splice_spacing", AtLeast(seams))
            .asks("packing.splice_stagger", AtLeast(stagger))
    }

    /// Compressed alike at every width, or more in wide joints.
    fn compressed(&mut self, packing: Part) -> Part {
        let percent = self.seed.one(&[25, 30, 33, 40]);
        if self.width < 96 || self.seed.percent(50) {
            return packing.asks("packing.compression", AtLeast(Percent(percent)));
        }
        let band = self.width / 2;
        packing
            .asks_when(
                "packing.compression",
                AtLeast(Percent(percent)),
                When::UpTo(band),
            )
            .asks_when(
                "packing.compression",
                AtLeast(Percent(percent + 10)),
                When::Over(band),
            )
    }

    fn deep(&mut self, mut packing: Part) -> Part {
        let first = self.seed.one(&[64, 80, 128, 192, 256]);
        if self.ratings.len() == 1 {
            return packing.asks("packing.depth", AtLeast(Length(first)));
        }
        for (place, rating) in self.ratings.iter().enumerate() {
            let deep = AtLeast(Length(first + 16 * place));
            packing = packing.asks_when("packing.depth", deep, When::Rating(*rating));
        }
        packing
    }

    fn other_packing(&mut self) -> Part {
        let pcf = Density(self.seed.one(&[4, 6, 8]));
        let percent = Percent(self.seed.one(&[20, 33, 50]));
        let deep = self.length(&[64, 128, 192]);
        Part::new("packing", "Packing", "Foil-faced mineral wool batt")
            .built(Built::InPlace)
            .asks("packing.density", Nominal(pcf))
            .asks("packing.compression", AtLeast(percent))
            .asks("packing.depth", AtLeast(deep))
            .made_by(vec![self.seed.one(PACKINGS)])
            .says(self.remarks(remarks::PACKING))
    }

    fn clips(&mut self) -> Part {
        let gauge = Gauge(self.seed.one(&[20, 18]));
        let wide = self.length(&[64, 96, 128]);
        let apart = self.length(&[768, 1024, 1536]);
        let lap = self.length(&[96, 128]);
        Part::new("clip", "Support clips", "Z-shaped galv steel clips")
            .asks("clip.gauge", AtLeast(gauge))
            .asks("clip.width", AtLeast(wide))
            .asks("clip.overlap", AtLeast(lap))
            .asks("clip.spacing", AtMost(apart))
            .says(self.remarks(remarks::STEEL))
    }

    fn coating(&mut self) -> Part {
        let wet = self.seed.one(&[8, 10, 12, 16]);
        let says = self.remarks(remarks::FILL);
        let mut coating = Part::new("coating", "Coating", "Joint spray")
            .asks("coating.wet_thickness", AtLeast(Length(wet)))
            .made_by(some(self.seed, COATINGS))
            .says(says);
        if self.seed.percent(60) {
            coating = coating.asks("coating.dry_thickness", AtLeast(Length(wet / 2)));
        }
        if self.seed.percent(40) {
            coating = coating.asks("coating.coats", AtLeast(Count(2)));
        }
        let lap = self.length(&[32, 48, 64, 96, 128]);
        if self.kind.has_studs() {
            coating = coating.asks("coating.overlap_board", AtLeast(lap));
        }
        let lap = self.length(&[32, 64, 96, 128]);
        let onto = match (self.kind, self.above) {
            (Kind::HeadOfWall, Above::Deck) => "coating.overlap_deck",
            (Kind::HeadOfWall, Above::Beam) => "coating.overlap_fireproofing",
            _ => "coating.overlap_concrete",
        };
        let low = Fahrenheit(self.seed.one(&[32, 41, 50]));
        let high = Fahrenheit(self.seed.one(&[95, 104, 122]));
        let cured = Hours(self.seed.one(&[24, 48, 72]));
        coating
            .asks(onto, AtLeast(lap))
            .asks("coating.application_temperature", Between(low, high))
            .asks("coating.cure_time", AtLeast(cured))
    }

    fn sealant(&mut self) -> Part {
        let first = self.seed.one(&[16, 32, 40]);
        let says = self.remarks(remarks::FILL);
        let mut sealant = Part::new("sealant", "Sealant", "Sealant tooled flush with the faces")
            .built(Built::InPlace)
            .made_by(some(self.seed, SEALANTS))
            .says(says);
        if self.ratings.len() == 1 {
            return sealant.asks("sealant.depth", AtLeast(Length(first)));
        }
        for (place, rating) in self.ratings.iter().enumerate() {
            let deep = AtLeast(Length(first + 8 * place));
            sealant = sealant.asks_when("sealant.depth", deep, When::Rating(*rating));
        }
        sealant
    }

    fn cover(&mut self) -> Part {
        let gauge = Gauge(self.seed.one(&[22, 20, 18]));
        let wide = self.length(&[256, 384, 512]);
        let apart = self.length(&[512, 768, 1024]);
        let lap = self.length(&[96, 128]);
        Part::new("strip", "Steel strips", "Galv steel strips")
            .built(Built::Optional)
            .asks("strip.gauge", AtLeast(gauge))
            .asks("strip.width", AtLeast(wide))
            .asks("strip.overlap", AtLeast(lap))
            .asks("strip.spacing", AtMost(apart))
            .says(self.remarks(remarks::STEEL))
    }

    /// What holds of the whole.
    pub fn general(&mut self) -> Part {
        Part::new("other", "Conditions of use", "").says(self.remarks(remarks::GENERAL))
    }

    fn angles(&mut self) -> Part {
        let gauge = Gauge(self.seed.one(&[22, 20]));
        let leg = self.length(&[64, 96, 128]);
        let apart = self.length(&[512, 768, 1024]);
        Part::new("angle", "Steel angles", "Galv steel angles")
            .built(Built::Optional)
            .asks("angle.gauge", AtLeast(gauge))
            .asks("angle.leg_length", AtLeast(leg))
            .asks("angle.fastener_spacing", AtMost(apart))
            .says(self.remarks(remarks::STEEL))
    }
}
