//! The work at one joint.

use conformance::goes_by;
use engineering::{Error, Worked};
use listing::Reading;
use measure::Quantity;
use schemars::JsonSchema;
use serde::Serialize;
use site::FactsFor;

use crate::asks::Asks;
use crate::facts::{counted, in_words, is_as_found, packing_product, product, readings};
use crate::flutes::{self, Flutes};
use crate::framing::{self, Range, Screws};
use crate::rows::{self, Row};
use crate::{AtHand, Checked, fills, fireproofing, packing};

/// The work at one joint.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct JointWork {
    /// The joint.
    pub joint: String,
    /// Where it is.
    pub place: String,
    /// Its length.
    pub length: Option<Quantity>,
    /// Its width as found or drawn, in words.
    pub width: String,
    /// Whether somebody has seen or measured that width; else it is the one that is meant to be built.
    pub is_width_as_found: bool,
    /// Strips to lay.
    pub strips: Vec<Strip>,
    /// Whether the schedule says how thick the packing is, all strips together; else they are chosen.
    pub is_scheduled: bool,
    /// How wide the strips are cut: the depth of the packing.
    pub cut_width: Option<Quantity>,
    /// The least distance of butt joints.
    pub butts_apart: Option<Quantity>,
    /// The packing worked out.
    pub packing: Option<Worked>,
    /// Wet film of the coating, at least.
    pub wet: Option<Quantity>,
    /// Band of the coating, on one face.
    pub band: Option<Quantity>,
    /// Volume of the coating for all faces, loss included.
    pub coating_volume: Option<Quantity>,
    /// The coating worked out.
    pub coating: Option<Worked>,
    /// Sprayed fireproofing at the joint as measured, against what the listing asks there.
    pub fireproofing: Option<Worked>,
    /// Depth of the sealant, at least.
    pub sealant_depth: Option<Quantity>,
    /// Area of the bead of sealant.
    pub bead_area: Option<Quantity>,
    /// Diameter of a round bead of sealant that is laid once along the run, at least.
    pub bead_diameter: Option<Quantity>,
    /// Area of that bead.
    pub round_bead_area: Option<Quantity>,
    /// Faces that are coated or sealed; one where nobody says.
    pub faces: u64,
    /// Whether somebody says how many faces are coated or sealed.
    pub are_faces_stated: bool,
    /// Runners along the run, each with what the schedule says of it.
    pub profiles: Vec<String>,
    /// Fasteners and clips: what, at which spacing, how many.
    pub fasteners: Vec<Row>,
    /// The runner through its range, at a head of wall that moves.
    pub runner: Option<Range>,
    /// The board's screws.
    pub screws: Option<Screws>,
    /// The preformed seal as recorded, and what the listing asks of its size.
    pub seal: Option<String>,
    /// The flutes of the deck over the wall.
    pub flutes: Option<Flutes>,
    /// The packing's product and density, where the schedule names them.
    pub packing_product: Option<String>,
    /// The coating's product.
    pub coating_product: Option<String>,
    /// The sealant's product.
    pub sealant_product: Option<String>,
    /// What isn't met as things stand, and is put right first.
    pub not_met: Vec<String>,
    /// What couldn't be worked out, and what it needs.
    pub gaps: Vec<String>,
}

impl JointWork {
    /// Everything that was worked out for it.
    pub fn worked(&self) -> impl Iterator<Item = &Worked> {
        let of_runner = self.runner.as_ref().map(|range| &range.worked);
        self.packing
            .iter()
            .chain(&self.coating)
            .chain(&self.fireproofing)
            .chain(of_runner)
    }

    /// What was found; else what kept it from being worked out is a gap.
    fn or_gap<T>(&mut self, found: Result<T, Error>) -> Option<T> {
        found.map_err(|error| self.gap(&error)).ok()
    }

    /// One value may keep several things from being worked out, and is told once.
    fn gap(&mut self, error: &Error) {
        let words = format!("not worked out: {error}");
        if !self.gaps.contains(&words) {
            self.gaps.push(words);
        }
    }

    /// Says at the product that it isn't what the listing asks for, so that nobody brings it unwarned.
    pub(super) fn mark_what_is_not_listed(&mut self, not_met: &[&str]) {
        let mark = |product: &mut Option<String>| {
            if let Some(product) = product {
                product.push_str(" (✗ not what the listing asks for)");
            }
        };
        let of_packing = ["packing.product", "packing.density", "packing.material"];
        if of_packing.iter().any(|property| not_met.contains(property)) {
            mark(&mut self.packing_product);
        }
        if not_met.contains(&"coating.product") {
            mark(&mut self.coating_product);
        }
        if not_met.contains(&"sealant.product") {
            mark(&mut self.sealant_product);
        }
    }
}

/// Strips of one thickness, side by side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Strip {
    /// How many.
    pub count: u64,
    /// How thick.
    pub thickness: Quantity,
}

/// Works out one joint. What can't be worked out of it is among its gaps, and keeps nothing else from being worked out.
pub(super) fn work(
    checked: &Checked<'_>,
    reading: &Reading,
    asks: &Asks<'_>,
    at_hand: &AtHand,
) -> JointWork {
    let joint = checked.joint;
    let facts = &checked.facts.for_listing(&goes_by(reading));
    let width_fact = facts.get("joint.width");
    let width = width_fact.and_then(readings);
    let stated = facts
        .get("coating.faces")
        .or_else(|| facts.get("sealant.faces"));
    let mut made = JointWork {
        joint: joint.name.clone(),
        place: checked.place.clone(),
        length: joint.length,
        width: width
            .as_ref()
            .map_or_else(|| "not known".to_owned(), in_words),
        is_width_as_found: width_fact.is_none_or(is_as_found),
        strips: Vec::new(),
        is_scheduled: false,
        cut_width: None,
        butts_apart: asks
            .least("packing.splice_spacing")
            .map(|known| known.quantity),
        packing: None,
        wet: None,
        band: None,
        coating_volume: None,
        coating: None,
        fireproofing: None,
        sealant_depth: None,
        bead_area: None,
        bead_diameter: None,
        round_bead_area: None,
        faces: stated.and_then(counted).unwrap_or(1),
        are_faces_stated: stated.is_some(),
        profiles: Vec::new(),
        fasteners: Vec::new(),
        runner: None,
        screws: None,
        seal: framing::seal(asks, facts),
        flutes: None,
        packing_product: packing_product(facts, asks.last_item_of("packing.compression")),
        coating_product: product(facts, None, "coating.product"),
        sealant_product: product(facts, None, "sealant.product"),
        not_met: Vec::new(),
        gaps: Vec::new(),
    };
    let found = fireproofing::at_joint(asks, facts);
    made.fireproofing = made.or_gap(found).flatten();
    let found = framing::screws(asks, facts, joint.length);
    made.screws = made.or_gap(found).flatten();
    let Some(width) = width else {
        made.gaps
            .push("the width isn't known: read it along the run before anything is cut".to_owned());
        return made;
    };
    if joint.length.is_none() {
        made.gaps
            .push("the length isn't known: quantities are left out".to_owned());
    }
    let found = packing::of_packing(&mut made, &width, asks, facts, at_hand);
    made.or_gap(found);
    let found = fills::of_coating(&mut made, &width, asks, at_hand);
    made.or_gap(found);
    let found = fills::of_sealant(&mut made, &width, asks, at_hand);
    made.or_gap(found);
    rows::of_profiles(&mut made, reading, asks, facts);
    let found = rows::of_fasteners(&mut made, asks, facts);
    made.or_gap(found);
    match framing::range(asks, facts, &width) {
        Ok(Ok(range)) => made.runner = range,
        Ok(Err(gap)) => made.gaps.push(gap),
        Err(error) => made.gap(&error),
    }
    let found = of_flutes(&mut made, asks, facts);
    made.or_gap(found);
    made
}

/// The flutes over the joint; the strips and the band below them leave them out.
fn of_flutes(work: &mut JointWork, asks: &Asks<'_>, facts: &FactsFor<'_>) -> Result<(), Error> {
    match flutes::flutes(asks, facts, work.length)? {
        Ok(found) => work.flutes = found,
        Err(gap) => work.gaps.push(gap),
    }
    if work.flutes.is_some() {
        let words = "flutes: what fills them, and the coating over it and on their flanks, is in neither volume: measure the ribs and add it";
        work.gaps.push(words.to_owned());
    }
    Ok(())
}
