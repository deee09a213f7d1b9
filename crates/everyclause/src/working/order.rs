//! What all the joints of a mark take together.

use engineering::Error;
use engineering::takeoff::{Coating, Fasteners, MarkAsked, Packing, Run, Sealant, Stock, take_off};
use measure::{Number, Quantity, Unit};
use schemars::JsonSchema;
use serde::Serialize;

use super::{AtHand, JointWork};

/// One thing to bring.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub(crate) struct Ordered {
    /// What.
    pub(crate) what: String,
    /// How much ends up in the building.
    pub(crate) net: Quantity,
    /// How much is brought.
    pub(crate) brought: Quantity,
    /// Batts or packages.
    pub(crate) pieces: Option<u64>,
    /// No way of cutting takes fewer.
    pub(crate) at_least: Option<u64>,
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
        marks.push(asked(joint, at_hand));
    }
    let found = take_off(&marks, &runs)?.value;
    let orders = found.orders.into_iter().map(|order| Ordered {
        what: order.what,
        net: order.net,
        brought: order.bought,
        pieces: order.pieces,
        at_least: order.at_least,
    });
    Ok(orders.collect())
}

fn asked(joint: &JointWork, at_hand: &AtHand) -> MarkAsked {
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
            product: named(joint.fill_product.as_ref(), "coating"),
            band,
            wet,
            faces: joint.faces,
            loss: part,
        });
    let sealant = joint
        .bead_area
        .and_then(|area| area.to(Unit::SquareInch))
        .zip(at_hand.package.to(Unit::CubicInch))
        .map(|(area, package)| Sealant {
            product: named(joint.fill_product.as_ref(), "sealant"),
            area: area.number,
            faces: joint.faces,
            package: package.number,
            loss: part,
        });
    let rows = joint.fasteners.iter().filter_map(|row| {
        Some(Fasteners {
            what: row.what.clone(),
            spacing: inches(row.spacing)?,
            end: row.end.and_then(inches).unwrap_or(Number::ZERO),
            at_each: 1,
        })
    });
    MarkAsked {
        mark: joint.joint.clone(),
        packing: packing.unwrap_or_default(),
        coatings: coating.into_iter().collect(),
        sealants: sealant.into_iter().collect(),
        fasteners: rows.collect(),
    }
}

/// What is ordered, with its product where that is known.
fn named(product: Option<&String>, what: &str) -> String {
    product.map_or_else(|| what.to_owned(), |product| format!("{what}: {product}"))
}

fn inches(length: Quantity) -> Option<Number> {
    length.to(Unit::Inch).map(|length| length.number)
}
