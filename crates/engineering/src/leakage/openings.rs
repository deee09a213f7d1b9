//! Penetrations of a barrier: air by area of the open hole.

use measure::{Number, Quantity, Unit};

use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, number_in};
use crate::worked::{Computed, Standing, Worked, both};

/// An opening with its rating.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Opening {
    /// Its name.
    pub name: String,
    /// The area of the open hole.
    pub area: Known,
    /// Its L rating: air for each area of opening.
    pub rating: Known,
}

/// What is asked of the openings in a part of a barrier.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpeningsAsked {
    /// The openings in that part.
    pub openings: Vec<Opening>,
    /// The area of the wall or floor they are in, 100 sq ft at most.
    pub within: Known,
}

/// The leakage of the openings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Openings {
    /// All of them together.
    pub total: Quantity,
    /// Whether each keeps the limit by area.
    pub each: Standing,
    /// Whether they keep the limit together.
    pub together: Standing,
}

const SOURCE: &str = "IBC 2018, 714.5.4: at most 5.0 cfm for each sq ft of each opening, or at most 50 cfm in all in any 100 sq ft, at 0.30 in. water";

/// Openings in a smoke barrier: either each keeps 5 cfm/sq ft, or all in 100 sq ft keep 50 cfm together.
///
/// # Errors
/// An area that isn't above zero or is over 100 sq ft, a negative rating, a rating by length.
pub fn opening_leakage(asked: &OpeningsAsked) -> Result<Computed<Openings>, Error> {
    let within = asked
        .within
        .above_zero("the area of barrier", Unit::SquareFoot)?;
    if within > Number::whole(100) {
        return Err(Error::range(
            "the area of barrier",
            asked.within.quantity,
            "at most 100 sq ft, as the limit is for any 100 sq ft",
        ));
    }
    let mut worked = Worked::of("Air leakage of openings");
    worked.given("area of barrier", &asked.within);
    worked.formula("Q = Σ L × area of the open hole", SOURCE);
    let mut sum = exact(0);
    let mut each = Standing::Met;
    for opening in &asked.openings {
        let area = opening
            .area
            .above_zero(&format!("the area of {}", opening.name), Unit::SquareFoot)?;
        let input = format!("the L rating of {}", opening.name);
        let rate = number_in(&input, opening.rating.quantity, Unit::CfmPerSquareFoot)?;
        if rate.is_negative() {
            return Err(Error::range(&input, opening.rating.quantity, "0 or more"));
        }
        let flow = (exact(rate) * area).get("the leakage")?;
        sum = sum + flow;
        if rate > Number::whole(5) {
            each = Standing::NotMet;
        }
        worked.step(format!(
            "{}: {} × {} = {}",
            opening.name,
            opening.rating.quantity,
            both(area, Unit::SquareFoot),
            both(flow, Unit::Cfm)
        ));
    }
    let total = sum.get("the leakage")?;
    let together = if total <= Number::whole(50) {
        Standing::Met
    } else {
        Standing::NotMet
    };
    worked.result("openings together", total, Unit::Cfm);
    let either = each.min(together);
    let words = match (each, together) {
        (Standing::Met, _) => "each opening keeps 5.0 cfm/sq ft",
        (_, Standing::Met) => "not each opening keeps 5.0 cfm/sq ft, but all together keep 50 cfm",
        _ => "neither each opening keeps 5.0 cfm/sq ft nor all together 50 cfm",
    };
    worked.find(either, words);
    Ok(worked.with(Openings {
        total: Quantity::new(total, Unit::Cfm),
        each,
        together,
    }))
}
