//! Air through the joints of each smoke barrier, from the heads of their listings and their lengths.
//!
//! Whether a listing's leakage counts at a joint is what the check says of it; only the sums are made here.

use conformance::Standing::Provisional;
use conformance::{JointResult, Verdict};
use engineering::leakage::{JointLeakage, JointsAsked, barrier_leakage, joints::code_limit};
use engineering::worked::{Finding, Standing};
use engineering::{Known, Worked};
use listing::LeakageTemperature;
use measure::{Dimension, Quantity};
use schemars::JsonSchema;
use serde::Serialize;
use site::import::Import;
use site::{Barrier, Joint};

use crate::checking;
use crate::fault::{Fault, Faults};
use crate::shelf::{Held, Shelf};

/// The leakage of a project's smoke barriers.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Leakages {
    /// The building's name; empty where none was given.
    pub(crate) building: String,
    /// The most that a joint may leak for its length.
    pub(crate) limit: Known,
    /// The smoke barriers, in the project's order.
    pub(crate) barriers: Vec<BarrierLeakage>,
    /// Joints in them whose listing's reading nobody has confirmed.
    pub(crate) provisional: Vec<String>,
    /// Barriers of which nobody says whether they are smoke barriers.
    pub(crate) not_known: Vec<String>,
    /// Joints of which the schedule doesn't say in which barrier they lie.
    pub(crate) without_barrier: Vec<String>,
}

/// The leakage of a barrier.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct BarrierLeakage {
    /// The barrier.
    pub(crate) barrier: String,
    /// What it separates, in words.
    pub(crate) title: String,
    /// Its joints in the schedule.
    pub(crate) joints: Vec<Leaks>,
    /// The sum at ambient temperature, of the joints that count.
    pub(crate) ambient: Option<Quantity>,
    /// The sum at elevated temperature, of the joints that count.
    pub(crate) elevated: Option<Quantity>,
    /// What it comes to.
    pub(crate) standing: Standing,
    /// What isn't met or is open, joint by joint.
    pub(crate) findings: Vec<Finding>,
    /// The sums worked out; none where no joint has a length.
    pub(crate) worked: Option<Worked>,
}

/// A joint in a smoke barrier.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub(crate) struct Leaks {
    /// The joint.
    pub(crate) joint: String,
    /// Its length.
    pub(crate) length: Option<Quantity>,
    /// Its listing, by the file's name without the ending.
    pub(crate) listing: Option<String>,
    /// Its L rating at ambient temperature, where it counts.
    pub(crate) ambient: Option<Known>,
    /// Its L rating at elevated temperature, where it counts.
    pub(crate) elevated: Option<Known>,
}

/// The two temperatures, and the check on the head of a listing for each.
const TEMPERATURES: [(LeakageTemperature, &str); 2] = [
    (LeakageTemperature::Ambient, "header/leakage-ambient"),
    (LeakageTemperature::Elevated, "header/leakage-elevated"),
];

/// Sums the leakage of every smoke barrier.
///
/// # Errors
/// As a check does; and when a length can't be computed with.
pub(crate) fn leakages(import: &Import, shelf: &Shelf) -> Result<Leakages, Faults> {
    let project = &import.project;
    let checked = checking::check(import, shelf)?;
    let held = shelf.by_stem();
    let mut made = Leakages {
        building: project.building.name.clone(),
        limit: code_limit(),
        barriers: Vec::new(),
        provisional: Vec::new(),
        not_known: Vec::new(),
        without_barrier: Vec::new(),
    };
    for barrier in &project.barriers {
        match barrier.smoke_barrier() {
            Some(false) => {}
            None => made.not_known.push(barrier.name.clone()),
            Some(true) => {
                let mut gathered = Gathered::default();
                for (joint, checked) in project.joints.iter().zip(&checked.joints) {
                    if joint.barrier.as_deref() == Some(barrier.name.as_str()) {
                        let held = checked.listing.as_deref().and_then(|stem| held.get(stem));
                        let result = checked.result.as_ref();
                        if result.is_some_and(|result| result.standing == Provisional) {
                            made.provisional.push(joint.name.clone());
                        }
                        gathered.add(joint, result, held.copied());
                    }
                }
                made.barriers.push(gathered.summed(barrier)?);
            }
        }
    }
    let without = project
        .joints
        .iter()
        .filter(|joint| joint.barrier.is_none());
    made.without_barrier = without.map(|joint| joint.name.clone()).collect();
    Ok(made)
}

/// The joints of a barrier, and what is to be said of them.
#[derive(Default)]
struct Gathered {
    joints: Vec<Leaks>,
    findings: Vec<Finding>,
}

impl Gathered {
    fn add(&mut self, joint: &Joint, result: Option<&JointResult>, held: Option<&Held>) {
        let ratings = TEMPERATURES.map(|(at, check)| {
            let (result, held) = result.zip(held)?;
            let finding = result.finding(check)?;
            let (standing, counts) = match finding.verdict {
                Verdict::Met | Verdict::Judged => (None, true),
                Verdict::NotMet => (Some(Standing::NotMet), true),
                Verdict::Open | Verdict::NotApplicable => (Some(Standing::Open), false),
            };
            if let Some(standing) = standing {
                self.say(
                    standing,
                    format!("{}: {}", joint.name, finding.explanation.sentence),
                );
            }
            counts.then(|| rating(held, at)).flatten()
        });
        if result.is_none() {
            self.say(
                Standing::Open,
                format!(
                    "{}: there is no listing to build it to, so nothing is known of its leakage",
                    joint.name
                ),
            );
        }
        if joint.length.is_none() {
            self.say(
                Standing::Open,
                format!(
                    "{}: the schedule doesn't state its length, so the sums leave it out",
                    joint.name
                ),
            );
        }
        let [ambient, elevated] = ratings;
        self.joints.push(Leaks {
            joint: joint.name.clone(),
            length: joint.length,
            listing: held.map(|held| held.stem.clone()),
            ambient,
            elevated,
        });
    }

    fn say(&mut self, standing: Standing, words: String) {
        self.findings.push(Finding { standing, words });
    }

    fn summed(mut self, barrier: &Barrier) -> Result<BarrierLeakage, Faults> {
        if self.joints.is_empty() {
            self.say(
                Standing::Open,
                "the schedule has no joint in it, so nothing is shown of its leakage".to_owned(),
            );
        }
        let with_length = self.joints.iter().filter_map(|joint| {
            Some(JointLeakage {
                name: joint.joint.clone(),
                length: Known::new(joint.length?, "schedule"),
                ambient: joint.ambient.clone(),
                elevated: joint.elevated.clone(),
            })
        });
        let asked = JointsAsked {
            joints: with_length.collect(),
            limit: code_limit(),
        };
        let summed = if asked.joints.is_empty() {
            None
        } else {
            let summed = barrier_leakage(&asked);
            Some(summed.map_err(|error| Fault::of_command(format!("{}: {error}", barrier.name)))?)
        };
        let of_check = self.findings.iter().map(|finding| finding.standing);
        let of_sums = summed.iter().flat_map(|summed| &summed.worked.findings);
        let standing = of_check
            .chain(of_sums.map(|finding| finding.standing))
            .fold(Standing::Met, Standing::and);
        Ok(BarrierLeakage {
            barrier: barrier.name.clone(),
            title: barrier.title.clone(),
            joints: self.joints,
            ambient: summed.as_ref().map(|summed| summed.value.ambient),
            elevated: summed.as_ref().map(|summed| summed.value.elevated),
            standing,
            findings: self.findings,
            worked: summed.map(|summed| summed.worked),
        })
    }
}

/// The leakiest of what a listing's head states at a temperature for each length of joint.
fn rating(held: &Held, at: LeakageTemperature) -> Option<Known> {
    let stated = held.reading().header.leakage.iter();
    let stated = stated.filter(|leakage| {
        leakage.at == at && leakage.unit.dimension() == Dimension::LeakagePerLength
    });
    let worst = stated
        .map(|leakage| Quantity::new(leakage.value, leakage.unit))
        .reduce(|worst, other| {
            let leakier = other.compare(worst);
            if leakier.is_some_and(core::cmp::Ordering::is_gt) {
                other
            } else {
                worst
            }
        })?;
    Some(Known::new(worst, format!("{}, head", held.stem)))
}
