//! The work at one joint.

use engineering::films::{self, RunAsked};
use engineering::packing::{self, Direction, Layer, PackingAsked, Rule, Stack};
use engineering::{Error, Known, Readings, Worked};
use measure::{Dimension, Number, Quantity, Unit};
use schemars::JsonSchema;
use serde::Serialize;
use site::{Facts, Joint};

use super::AtHand;
use super::asks::Asks;
use super::facts::{
    Moves, counted, in_words, known, movement, packing_product, product, readings, widest,
};
use super::flutes::{self, Flutes};
use super::framing::{self, Range, Screws};
use super::rows::{self, Row};

/// The work at one joint.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct JointWork {
    /// The joint.
    pub(crate) joint: String,
    /// Where it is.
    pub(crate) place: String,
    /// Its length.
    pub(crate) length: Option<Quantity>,
    /// Its width as found or drawn, in words.
    pub(crate) width: String,
    /// Strips to lay.
    pub(crate) strips: Vec<Strip>,
    /// Whether the schedule says how thick the packing is, all strips together; else they are chosen.
    pub(crate) is_scheduled: bool,
    /// How wide the strips are cut: the depth of the packing.
    pub(crate) cut_width: Option<Quantity>,
    /// The least distance of butt joints.
    pub(crate) butts_apart: Option<Quantity>,
    /// The packing worked out.
    pub(crate) packing: Option<Worked>,
    /// Wet film of the coating, at least.
    pub(crate) wet: Option<Quantity>,
    /// Band of the coating, on one face.
    pub(crate) band: Option<Quantity>,
    /// Volume of the coating for all faces, loss included.
    pub(crate) coating_volume: Option<Quantity>,
    /// The coating worked out.
    pub(crate) coating: Option<Worked>,
    /// Depth of the sealant, at least.
    pub(crate) sealant_depth: Option<Quantity>,
    /// Area of the bead of sealant.
    pub(crate) bead_area: Option<Quantity>,
    /// Faces that are coated or sealed.
    pub(crate) faces: u64,
    /// Fasteners and clips: what, at which spacing, how many.
    pub(crate) fasteners: Vec<Row>,
    /// The runner through its range, at a head of wall that moves.
    pub(crate) runner: Option<Range>,
    /// The board's screws.
    pub(crate) screws: Option<Screws>,
    /// The preformed seal as recorded, and what the listing asks of its size.
    pub(crate) seal: Option<String>,
    /// The flutes of the deck over the wall.
    pub(crate) flutes: Option<Flutes>,
    /// The packing's product and density, where the schedule names them.
    pub(crate) packing_product: Option<String>,
    /// The coating's or the sealant's product.
    pub(crate) fill_product: Option<String>,
    /// What isn't met as things stand, and is put right first.
    pub(crate) not_met: Vec<String>,
    /// What couldn't be worked out, and what it needs.
    pub(crate) gaps: Vec<String>,
}

impl JointWork {
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
        let of_fill = ["coating.product", "sealant.product"];
        if of_fill.iter().any(|property| not_met.contains(property)) {
            mark(&mut self.fill_product);
        }
    }
}

/// Strips of one thickness, side by side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub(crate) struct Strip {
    /// How many.
    pub(crate) count: u64,
    /// How thick.
    pub(crate) thickness: Quantity,
}

/// Works out one joint.
pub(super) fn work(
    joint: &Joint,
    at: &str,
    asks: &Asks<'_>,
    facts: &Facts<'_>,
    at_hand: &AtHand,
) -> Result<JointWork, Error> {
    let width = facts.get("joint.width").and_then(readings);
    let stated = facts
        .get("coating.faces")
        .or_else(|| facts.get("sealant.faces"));
    let mut made = JointWork {
        joint: joint.name.clone(),
        place: at.to_owned(),
        length: joint.length,
        width: width
            .as_ref()
            .map_or_else(|| "not known".to_owned(), in_words),
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
        sealant_depth: None,
        bead_area: None,
        faces: stated.and_then(counted).unwrap_or(1),
        fasteners: Vec::new(),
        runner: None,
        screws: framing::screws(asks, facts, joint.length)?,
        seal: framing::seal(asks, facts),
        flutes: None,
        packing_product: packing_product(facts, asks.last_item_of("packing.compression")),
        fill_product: product(facts, None, "coating.product")
            .or_else(|| product(facts, None, "sealant.product")),
        not_met: Vec::new(),
        gaps: Vec::new(),
    };
    if stated.is_none() {
        let words = "how many faces are coated or sealed isn't stated: one is counted";
        made.gaps.push(words.to_owned());
    }
    let Some(width) = width else {
        made.gaps
            .push("the width isn't known: read it along the run before anything is cut".to_owned());
        return Ok(made);
    };
    if joint.length.is_none() {
        made.gaps
            .push("the length isn't known: quantities are left out".to_owned());
    }
    of_packing(&mut made, &width, asks, facts, at_hand)?;
    of_coating(&mut made, &width, asks, at_hand)?;
    of_sealant(&mut made, &width, asks, at_hand)?;
    made.fasteners = rows::fasteners_and_clips(joint.length, asks)?;
    match framing::range(asks, facts, &width)? {
        Ok(range) => made.runner = range,
        Err(gap) => made.gaps.push(gap),
    }
    of_flutes(&mut made, asks, facts)?;
    Ok(made)
}

/// The flutes over the joint; the strips and the band below them leave them out.
fn of_flutes(work: &mut JointWork, asks: &Asks<'_>, facts: &Facts<'_>) -> Result<(), Error> {
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

fn of_packing(
    work: &mut JointWork,
    width: &Readings,
    asks: &Asks<'_>,
    facts: &Facts<'_>,
    at_hand: &AtHand,
) -> Result<(), Error> {
    let compression = Rule {
        least: asks.least("packing.compression"),
        most: asks.most("packing.compression"),
        nominal: asks.nominal("packing.compression"),
    };
    if compression == Rule::default() {
        if asks
            .properties()
            .any(|(property, _)| property.starts_with("packing."))
        {
            work.gaps.push("packing: the listing states no compression that a program could read; see its words below".to_owned());
        }
        return Ok(());
    }
    let Some(depth) = asks.least("packing.depth") else {
        work.gaps.push(
            "packing: the listing states no depth that a program could read; see its words below"
                .to_owned(),
        );
        return Ok(());
    };
    // The schedule's thickness is of all strips together.
    let scheduled = facts
        .get("packing.thickness")
        .and_then(|fact| known(fact, Dimension::Length));
    let proposed = scheduled.as_ref().map(|all| {
        let layer = Layer {
            strips: 1,
            thickness: all.quantity,
        };
        Stack::of(vec![layer], all.quantity.unit)
    });
    work.is_scheduled = scheduled.is_some();
    work.cut_width = Some(depth.quantity);
    let asked = PackingAsked {
        width: width.clone(),
        depth,
        compression,
        stock: at_hand.stock.clone(),
        density: facts
            .get("packing.density")
            .and_then(|fact| known(fact, Dimension::Density)),
        direction: Direction::ThroughThickness,
        closing: movement(facts, width, Moves::Closing),
        opening: movement(facts, width, Moves::Opening),
        proposed: proposed.transpose()?,
    };
    let found = packing::packing(&asked)?;
    work.strips = found
        .value
        .stack
        .layers
        .iter()
        .map(|layer| Strip {
            count: layer.strips,
            thickness: layer.thickness,
        })
        .collect();
    work.packing = Some(
        found
            .worked
            .serving("packing.compression and packing.depth"),
    );
    Ok(())
}

fn of_coating(
    work: &mut JointWork,
    width: &Readings,
    asks: &Asks<'_>,
    at_hand: &AtHand,
) -> Result<(), Error> {
    let Some(wet) = asks.least("coating.wet_thickness") else {
        return Ok(());
    };
    work.wet = Some(wet.quantity);
    let Some(widest) = widest(width) else {
        return Ok(());
    };
    let mut overlaps: Vec<Known> = Vec::new();
    let mut seen: Vec<&str> = Vec::new();
    for (property, _) in asks
        .properties()
        .filter(|(property, _)| property.starts_with("coating.overlap"))
    {
        if !seen.contains(&property) {
            seen.push(property);
            overlaps.extend(asks.least(property));
        }
    }
    // One overlap that names no surface is for both sides of the joint.
    if let [one] = overlaps.as_slice() {
        let other = one.clone();
        overlaps.push(other);
    }
    let length = work
        .length
        .unwrap_or_else(|| Quantity::new(Number::ONE, Unit::Foot));
    let asked = RunAsked {
        length: Known::new(length, "schedule"),
        width: Known::new(widest, "widest reading"),
        overlaps,
        wet,
        faces: work.faces,
        loss: Some(Known::new(at_hand.loss, "as given")),
    };
    let found = films::run_coating(&asked)?;
    work.band = Some(found.value.band);
    if work.length.is_some() {
        work.coating_volume = Some(found.value.volume);
        work.coating = Some(
            found
                .worked
                .serving("coating.wet_thickness and coating.overlap"),
        );
    }
    Ok(())
}

fn of_sealant(
    work: &mut JointWork,
    width: &Readings,
    asks: &Asks<'_>,
    at_hand: &AtHand,
) -> Result<(), Error> {
    let (Some(depth), Some(widest)) = (asks.least("sealant.depth"), widest(width)) else {
        return Ok(());
    };
    work.sealant_depth = Some(depth.quantity);
    if work.seal.is_some() {
        let words = "sealant: a preformed seal fills the joint; where sealant goes beside it stands in the listing's words, and how much isn't worked out";
        work.gaps.push(words.to_owned());
        return Ok(());
    }
    let section = films::Section::Rectangle {
        width: Known::new(widest, "widest reading"),
        depth,
    };
    let bead = films::bead(&films::BeadAsked {
        section,
        length: None,
        package: None,
        loss: Some(Known::new(at_hand.loss, "as given")),
    })?;
    let unit = if widest.unit.system() == measure::unit::System::Metric {
        Unit::SquareMillimetre
    } else {
        Unit::SquareInch
    };
    work.bead_area = Some(Quantity::new(bead.value.area.high, unit));
    Ok(())
}
