//! The band of nominal widths that the designation's number stands for. Where the listing's own text states a width,
//! that governs and the band doesn't (common practice).

use listing::{Bound, Relation};
use measure::{Quantity, Unit};

use super::width::PROPERTY;
use super::{Context, Head};
use crate::assessment::Assessment;
use crate::decide;
use crate::evidence::property;
use crate::verdict::{Reason, Verdict};

/// The joint's width against the band, where nothing better is stated.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> Option<Head<'a>> {
    let designation = context.designation?;
    let band = designation.width_band()?;
    let stated = context.checklist.reading.header.width.is_some()
        || context.width_clauses().next().is_some();
    let found = if stated {
        Assessment::plain(Verdict::NotApplicable, Reason::AsksNothing).saying(
            format!("a nominal width of {band}"),
            format!(
                "The number of {designation} stands for nominal widths of {band}; the width in the listing's text governs."
            ),
        )
    } else {
        let inches = |limit: Option<Quantity>| Some(limit?.to(Unit::Inch)?.number);
        let bound = Bound {
            relation: match (band.over, band.up_to) {
                (Some(_), Some(_)) => Relation::Between,
                (Some(_), None) => Relation::MoreThan,
                _ => Relation::AtMost,
            },
            lo: inches(band.over),
            hi: inches(band.up_to),
            unit: Unit::Inch,
            lo_excluded: true,
            bare: false,
            at: listing::Span::default(),
            second: None,
        };
        decide::bound(&bound, PROPERTY, property(PROPERTY), context.subject)
    };
    Some(Head {
        id: "header/band",
        property: PROPERTY,
        span: None,
        found,
    })
}
