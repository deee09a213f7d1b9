//! Joints of a barrier.

use measure::{Number, Quantity, Unit};

use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, number_in};
use crate::worked::{Computed, Standing, Worked, both};

/// A joint with its ratings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JointLeakage {
    /// Its name.
    pub name: String,
    /// Its length.
    pub length: Known,
    /// Its L rating at ambient temperature, if it has one.
    pub ambient: Option<Known>,
    /// Its L rating at the elevated temperature, 400 °F (204 °C), if it has one.
    pub elevated: Option<Known>,
}

/// What is asked of a barrier.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JointsAsked {
    /// The joints.
    pub joints: Vec<JointLeakage>,
    /// The most that a joint may leak for its length: 5 cfm/ft in the IBC's smoke barriers.
    pub limit: Known,
}

/// The leakage of a barrier's joints.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Leakage {
    /// The sum at ambient temperature of the joints that are rated.
    pub ambient: Quantity,
    /// The sum at the elevated temperature.
    pub elevated: Quantity,
    /// Joints above the limit at either temperature.
    pub failing: Vec<String>,
    /// Joints without a rating at either temperature.
    pub unrated: Vec<String>,
}

/// The code's limit on joints in smoke barriers: 5 cfm/ft at 0.30 in. of water, at both temperatures (IBC 2018, 715.6).
pub fn code_limit() -> Known {
    Known::new(
        Quantity::new(Number::whole(5), Unit::CfmPerFoot),
        "IBC 2018, 715.6: 0.30 in. water, ambient and elevated temperature",
    )
}

/// Sums L rating times length over the joints of a barrier, and holds each joint to the limit.
///
/// # Errors
/// A length that isn't above zero, a negative rating, a rating by area, no joint.
pub fn barrier_leakage(asked: &JointsAsked) -> Result<Computed<Leakage>, Error> {
    let limit = asked.limit.above_zero("the limit", Unit::CfmPerFoot)?;
    if asked.joints.is_empty() {
        return Err(Error::missing(
            "the joints",
            "give at least one joint with its length and L rating",
        ));
    }
    let what = "the leakage";
    let mut worked = Worked::of("Air leakage of a barrier's joints");
    worked.given("limit for each length", &asked.limit);
    worked.formula(
        "Q = Σ L × length, at ambient and at elevated temperature",
        "definition of the L rating, UL 2079: air for each length of joint at 0.30 in. water",
    );
    let mut sums = [exact(0), exact(0)];
    let mut failing = Vec::new();
    let mut unrated = Vec::new();
    for joint in &asked.joints {
        let length = joint
            .length
            .above_zero(&format!("the length of {}", joint.name), Unit::Foot)?;
        let mut shown = Vec::new();
        let mut fails = false;
        let mut lacks = false;
        for ((rating, sum), at) in [&joint.ambient, &joint.elevated]
            .into_iter()
            .zip(&mut sums)
            .zip(["ambient", "elevated"])
        {
            let Some(rating) = rating else {
                lacks = true;
                shown.push(format!("{at}: no rating"));
                continue;
            };
            let rate = number_in(
                &format!("the L rating of {}", joint.name),
                rating.quantity,
                Unit::CfmPerFoot,
            )?;
            if rate.is_negative() {
                return Err(Error::range(
                    &format!("the L rating of {}", joint.name),
                    rating.quantity,
                    "0 or more",
                ));
            }
            let flow = (exact(rate) * length).get(what)?;
            *sum = *sum + flow;
            fails |= rate > limit;
            shown.push(format!(
                "{at}: {} × {} = {}",
                rating.quantity,
                joint.length.quantity,
                both(flow, Unit::Cfm)
            ));
        }
        worked.step(format!("{}: {}", joint.name, shown.join("; ")));
        if fails {
            failing.push(joint.name.clone());
        }
        if lacks {
            unrated.push(joint.name.clone());
        }
    }
    let [ambient, elevated] = sums;
    let [ambient, elevated] = [ambient.get(what)?, elevated.get(what)?];
    worked.result("ambient, rated joints together", ambient, Unit::Cfm);
    worked.result("elevated, rated joints together", elevated, Unit::Cfm);
    find(&failing, &unrated, limit, &mut worked);
    Ok(worked.with(Leakage {
        ambient: Quantity::new(ambient, Unit::Cfm),
        elevated: Quantity::new(elevated, Unit::Cfm),
        failing,
        unrated,
    }))
}

fn find(failing: &[String], unrated: &[String], limit: Number, worked: &mut Worked) {
    if !failing.is_empty() {
        worked.find(
            Standing::NotMet,
            format!(
                "above {} for their length: {}",
                both(limit, Unit::CfmPerFoot),
                failing.join(", ")
            ),
        );
    }
    if !unrated.is_empty() {
        worked.find(
            Standing::Open,
            format!(
                "without a rating at both temperatures, so the sums leave them out: {}",
                unrated.join(", ")
            ),
        );
    }
    if failing.is_empty() && unrated.is_empty() {
        worked.find(
            Standing::Met,
            format!(
                "every joint leaks at most {} at both temperatures",
                both(limit, Unit::CfmPerFoot)
            ),
        );
    }
}
