//! The points that the head of a listing makes.

use listing::{Header, Movement, Span};
use vocabulary::Designation;

use super::{Placed, Point, Slot, Tells, Topic, What};
use crate::checklist::Checklist;
use crate::header::{CHECKS, property_of};

pub(super) struct OfHead {
    pub(super) placed: Vec<Placed>,
    pub(super) may_ask_more: bool,
}

/// What is checked of the head whatever options are built; where a check hangs on them, that more may be asked.
pub(super) fn all(checklist: &Checklist<'_>) -> OfHead {
    let header = &checklist.reading.header;
    let differs_by_option = header.movement.iter().any(|one| one.option.is_some());
    let placed = CHECKS.iter().filter(|topic| match topic {
        Topic::Width => header.width.is_some(),
        Topic::Compression | Topic::Extension | Topic::Shear => !differs_by_option,
        _ => true,
    });
    let placed = placed.map(|topic| {
        let property = property_of(*topic);
        Placed {
            point: Point(What::Head(*topic, Box::new(what_counts(*topic, header)))),
            slot: Slot::Always,
            is_parted: false,
            tells: Tells::Nothing,
            property: property.to_owned(),
            trade: vocabulary::vocabulary()
                .property(property)
                .map(|property| property.trade),
        }
    });
    OfHead {
        placed: placed.collect(),
        may_ask_more: differs_by_option || header.width.is_none(),
    }
}

/// What of the head a check looks at, without its places.
fn what_counts(topic: Topic, header: &Header) -> Header {
    let bare = Header::default();
    match topic {
        Topic::Kind => Header {
            designation: convention(&header.designation),
            ..bare
        },
        Topic::Rating => Header {
            ratings_hr: header.ratings_hr.clone(),
            differs: header.differs.clone(),
            ..bare
        },
        Topic::Width => Header {
            width: header.width.clone().map(|mut width| {
                width.span = Span::default();
                width
            }),
            differs: header.differs.clone(),
            ..bare
        },
        Topic::Compression | Topic::Extension | Topic::Shear => Header {
            designation: convention(&header.designation),
            movement: header.movement.iter().map(placeless).collect(),
            ..bare
        },
        Topic::LeakageAmbient | Topic::LeakageElevated => Header {
            leakage: header
                .leakage
                .iter()
                .cloned()
                .map(|mut leakage| {
                    leakage.span = Span::default();
                    leakage
                })
                .collect(),
            standards: header.standards.clone(),
            ..bare
        },
    }
}

/// What a designation says of kind and motion: the number stands for widths, which other checks look at.
fn convention(designation: &str) -> String {
    let read = Designation::parse_decorated(designation.trim());
    read.map(|(_, read)| Designation { number: 0, ..read }.to_string())
        .unwrap_or_default()
}

fn placeless(movement: &Movement) -> Movement {
    Movement {
        span: Span::default(),
        ..movement.clone()
    }
}
