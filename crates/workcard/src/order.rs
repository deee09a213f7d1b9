//! What all the joints of a mark take together.

use engineering::Error;
use engineering::takeoff::{
    Coating, Fasteners, Kind, MarkAsked, Order, Packing, Profile, Run, Sealant, Stock, take_off,
};
use measure::{Number, Quantity, Unit};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{AtHand, JointWork};

/// One thing to bring.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Ordered {
    /// What kind of thing it is.
    pub kind: Kind,
    /// What.
    pub what: String,
    /// How much ends up in the building.
    pub net: Quantity,
    /// How much is brought.
    pub brought: Quantity,
    /// Batts or packages.
    pub pieces: Option<u64>,
    /// No way of cutting takes fewer.
    pub at_least: Option<u64>,
}

/// What the joints take; those without a length are left out.
pub(super) fn orders(joints: &[JointWork], at_hand: &AtHand) -> Result<Vec<Ordered>, Error> {
    let mut marks = Vec::new();
    let mut runs = Vec::new();
    for joint in joints {
        let Some(length) = joint.length.and_then(inches) else {
            continue;
        };
        runs.push(Run {
            mark: marks.len(),
            storey: String::new(),
            length,
        });
        marks.push(asked(joint, &joint.joint, at_hand));
    }
    let found = take_off(&marks, &runs)?.value;
    Ok(found.orders.into_iter().map(Ordered::from).collect())
}

impl From<Order> for Ordered {
    fn from(order: Order) -> Self {
        Self {
            kind: order.kind,
            what: order.what,
            net: order.net,
            brought: order.bought,
            pieces: order.pieces,
            at_least: order.at_least,
        }
    }
}

/// What the joint takes, as the library is asked for it, under the name of a mark.
pub(super) fn asked(joint: &JointWork, mark: &str, at_hand: &AtHand) -> MarkAsked {
    let part = at_hand
        .loss
        .number
        .over(Number::from(100))
        .unwrap_or(Number::ZERO);
    let batt = inches(at_hand.batt.1).zip(inches(at_hand.batt.0));
    let packing = joint
        .cut_width
        .and_then(inches)
        .zip(batt)
        .map(|(cut_width, (length, width))| {
            let strips = joint.strips.iter().filter_map(|strip| {
                Some(Packing {
                    product: named(joint.packing_product.as_ref(), "packing"),
                    thickness: inches(strip.thickness)?,
                    strips: strip.count * joint.faces,
                    cut_width,
                    stock: Stock {
                        length,
                        width,
                        kerf: Number::ZERO,
                    },
                    butts_apart: joint.butts_apart.and_then(inches).unwrap_or(Number::ZERO),
                })
            });
            strips.collect()
        });
    let coating = joint
        .band
        .and_then(inches)
        .zip(joint.wet.and_then(inches))
        .map(|(band, wet)| Coating {
            product: named(joint.coating_product.as_ref(), "coating"),
            band,
            wet,
            faces: joint.faces,
            loss: part,
        });
    let beads = [(joint.bead_area, joint.faces), (joint.round_bead_area, 1)];
    let sealants = beads.into_iter().filter_map(|(area, faces)| {
        Some(Sealant {
            product: named(joint.sealant_product.as_ref(), "sealant"),
            area: area?.to(Unit::SquareInch)?.number,
            faces,
            package: at_hand.package.to(Unit::CubicInch)?.number,
            loss: part,
        })
    });
    let profiles = joint.profiles.iter().map(|what| Profile {
        what: what.clone(),
        rows: 1,
    });
    let rows = joint.fasteners.iter().filter_map(|row| {
        Some(Fasteners {
            what: row.what.clone(),
            spacing: inches(row.spacing)?,
            end: row.end.and_then(inches).unwrap_or(Number::ZERO),
            at_each: row.at_each,
        })
    });
    MarkAsked {
        mark: mark.to_owned(),
        packing: packing.unwrap_or_default(),
        coatings: coating.into_iter().collect(),
        sealants: sealants.collect(),
        profiles: profiles.collect(),
        fasteners: rows.collect(),
    }
}

/// What is ordered, with its product where that is known.
fn named(product: Option<&String>, what: &str) -> String {
    product.map_or_else(|| what.to_owned(), |product| format!("{what}: {product}"))
}

/// A length in inches.
pub(super) fn inches(length: Quantity) -> Option<Number> {
    length.to(Unit::Inch).map(|length| length.number)
}
