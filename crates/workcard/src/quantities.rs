//! What all the joints of a project take, by mark and storey, and what is left out of that and why.

use std::collections::BTreeMap;

use conformance::Standing;
use engineering::takeoff::{Kind, MarkAsked, Run, take_off};
use engineering::{Error, Worked};
use measure::Quantity;
use schemars::JsonSchema;
use serde::Serialize;
use site::Project;

use crate::asks::Asks;
use crate::order::{asked, inches};
use crate::{AtHand, Checked, JointWork, Ordered, joint};

/// The quantities of a whole schedule.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Quantities {
    /// The building's name; empty where none was given.
    pub building: String,
    /// How many joints the schedule has.
    pub joints: usize,
    /// How many of them something was taken off for.
    pub taken_off: usize,
    /// How many of those have a listing whose reading isn't confirmed.
    pub provisional: usize,
    /// Quantities by mark and storey, in the order of the marks and of the building.
    pub lines: Vec<Line>,
    /// What to bring, the whole schedule together.
    pub orders: Vec<Ordered>,
    /// What is in none of the quantities, and why.
    pub left_out: Vec<LeftOut>,
    /// What the quantities rest on.
    pub basis: Vec<String>,
    /// The calculation.
    pub worked: Worked,
}

/// A quantity of a mark on a storey.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Line {
    /// The mark.
    pub mark: String,
    /// The storey; empty where the schedule names none.
    pub storey: String,
    /// What kind of thing it is.
    pub kind: Kind,
    /// What it is.
    pub what: String,
    /// How much: strips and runners by length, coating and sealant with their loss, the rest by number.
    pub amount: Quantity,
    /// Of packing: the volume of the uncompressed strips, without what cutting loses.
    pub volume: Option<Quantity>,
}

/// Something that is in none of the quantities.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LeftOut {
    /// What, and why.
    pub why: String,
    /// The joints it concerns, in the order of the schedule.
    pub joints: Vec<String>,
}

/// Takes off a project, from its joints in the order of the schedule.
///
/// # Errors
/// When a value of the schedule can't be computed with.
pub fn quantities<'c>(
    project: &Project,
    joints: impl IntoIterator<Item = Checked<'c>>,
    at_hand: &AtHand,
) -> Result<Quantities, Error> {
    let mut taken = Taken::default();
    for checked in joints {
        taken.add(&checked, at_hand);
    }
    let found = take_off(&taken.marks, &taken.runs)?;
    let lines = found.value.lines.into_iter().map(|line| Line {
        mark: line.mark,
        storey: line.storey,
        kind: line.kind,
        what: line.what,
        amount: line.amount,
        volume: line.volume,
    });
    let mut lines: Vec<Line> = lines.collect();
    let places = Places::of(project);
    lines.sort_by_cached_key(|line| places.of_line(line));
    Ok(Quantities {
        building: project.building.name.clone(),
        joints: project.joints.len(),
        taken_off: taken.runs.len(),
        provisional: taken.provisional,
        lines,
        orders: found.value.orders.into_iter().map(Ordered::from).collect(),
        left_out: taken.left_out,
        basis: basis(at_hand),
        worked: found.worked,
    })
}

#[derive(Default)]
struct Taken {
    marks: Vec<MarkAsked>,
    runs: Vec<Run>,
    provisional: usize,
    left_out: Vec<LeftOut>,
}

impl Taken {
    fn add(&mut self, checked: &Checked<'_>, at_hand: &AtHand) {
        let joint = checked.joint;
        let name = &joint.name;
        let Some(built_to) = checked.built_to else {
            self.leave_out("everything: there is no listing to build it to", name);
            return;
        };
        let Some(length) = joint.length.and_then(inches) else {
            self.leave_out("everything: the schedule doesn't state the length", name);
            return;
        };
        let asks = Asks::of(built_to.result, built_to.reading);
        let mut made = joint::work(checked, built_to.reading, &asks, at_hand);
        self.leave_out_of(&mut made);
        self.provisional += usize::from(built_to.result.standing == Standing::Provisional);
        self.runs.push(Run {
            mark: self.marks.len(),
            storey: joint.storey.clone().unwrap_or_default(),
            length,
        });
        self.marks.push(asked(&made, &joint.mark, at_hand));
    }

    /// Takes out of the work at a joint what would rest on a guess, and names it.
    fn leave_out_of(&mut self, made: &mut JointWork) {
        let name = made.joint.clone();
        for gap in &made.gaps {
            self.leave_out(gap, &name);
        }
        if made.are_faces_stated {
            return;
        }
        let rests_on_faces = [
            ("packing", !made.strips.is_empty()),
            ("coating", made.band.is_some()),
            ("sealant", made.bead_area.is_some()),
        ];
        for (what, _) in rests_on_faces.iter().filter(|(_, has)| *has) {
            self.leave_out(
                &format!("{what}: the schedule doesn't state on how many faces (coating.faces or sealant.faces)"),
                &name,
            );
        }
        made.strips.clear();
        made.band = None;
        made.bead_area = None;
    }

    fn leave_out(&mut self, why: &str, joint: &str) {
        match self.left_out.iter_mut().find(|one| one.why == why) {
            Some(one) => one.joints.push(joint.to_owned()),
            None => self.left_out.push(LeftOut {
                why: why.to_owned(),
                joints: vec![joint.to_owned()],
            }),
        }
    }
}

/// The order of marks and storeys: of the project's files, then of the schedule.
struct Places {
    marks: BTreeMap<String, usize>,
    storeys: BTreeMap<String, usize>,
}

impl Places {
    fn of(project: &Project) -> Self {
        let marks = project.marks.iter().map(|mark| mark.name.as_str());
        let of_joints = project.joints.iter().map(|joint| joint.mark.as_str());
        let storeys = project.building.storeys.iter();
        let storeys = storeys.map(|storey| storey.name.as_str());
        let of_schedule = project.joints.iter();
        let of_schedule = of_schedule.filter_map(|joint| joint.storey.as_deref());
        Self {
            marks: in_order(marks.chain(of_joints)),
            storeys: in_order(storeys.chain(of_schedule)),
        }
    }

    fn of_line(&self, line: &Line) -> (Option<usize>, Option<usize>, Kind, String) {
        (
            self.marks.get(&line.mark).copied(),
            self.storeys.get(&line.storey).copied(),
            line.kind,
            line.what.clone(),
        )
    }
}

fn in_order<'a>(names: impl Iterator<Item = &'a str>) -> BTreeMap<String, usize> {
    let mut places = BTreeMap::new();
    for name in names {
        let next = places.len();
        places.entry(name.to_owned()).or_insert(next);
    }
    places
}

fn basis(at_hand: &AtHand) -> Vec<String> {
    let (wide, long) = at_hand.batt;
    let (loss, package) = (at_hand.loss, at_hand.package);
    let [of_batt, of_loss, of_package] =
        ["--batt", "--loss", "--package"].map(|name| at_hand.option(name));
    vec![
        "What the listing asks at each joint, with its least thickness, depth and overlap and its greatest spacing, at the widest width as found, whether or not the joint conforms as it is.".to_owned(),
        "Packing by the thickness that the schedule states, all strips together, on as many faces as are coated or sealed. Its volume is that of the uncompressed strips.".to_owned(),
        "A round bead of sealant is laid once along the run. Runners are those that the listing names, at either end of the wall; studs, boards and their screws are the wall's, and aren't taken off.".to_owned(),
        format!("Taken to be so: batts {wide} × {long}{of_batt}, {loss} of coating and sealant lost{of_loss}, sealant in packages of {package}{of_package}."),
    ]
}
