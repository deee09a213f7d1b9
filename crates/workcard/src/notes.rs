//! What a card takes to be so, and what it leaves out.

use crate::framing::Range;
use crate::{AtHand, JointWork};

/// The notes of a card, each only where it bears on one of the joints.
pub(super) fn notes(joints: &[JointWork], at_hand: &AtHand) -> Vec<String> {
    let any = |of: fn(&JointWork) -> bool| joints.iter().any(of);
    let mut notes = Vec::new();
    if any(|joint| !joint.is_width_as_found) {
        notes.push("a width that nobody has measured is the one drawn: read it along the run before anything is cut".to_owned());
    }
    let mut taken = Vec::new();
    if any(|joint| !joint.strips.is_empty() && !joint.is_scheduled) {
        let stock: Vec<String> = at_hand.stock.iter().map(ToString::to_string).collect();
        taken.push(format!(
            "packing {}{}",
            stock.join(", "),
            at_hand.option("--stock")
        ));
    }
    if any(|joint| !joint.strips.is_empty()) {
        let (width, length) = at_hand.batt;
        let option = at_hand.option("--batt");
        taken.push(format!("batts {width} × {length}{option}"));
    }
    if any(|joint| joint.bead_area.is_some()) {
        taken.push(format!(
            "packages of {}{}",
            at_hand.package,
            at_hand.option("--package")
        ));
    }
    if !taken.is_empty() {
        notes.push(format!("taken to be at hand: {}", taken.join("; ")));
    }
    if any(|joint| joint.wet.is_some() || joint.bead_area.is_some()) {
        notes.push(format!(
            "a loss of {} is in the volumes at each joint and in what to bring{}",
            at_hand.loss,
            at_hand.option("--loss")
        ));
    }
    if any(|joint| joint.packing.is_some()) {
        notes.push(
            "compression is given from least to most where what the width was read with leaves that much open"
                .to_owned(),
        );
    }
    if any(|joint| joint.fasteners.iter().any(|row| row.end.is_some())) {
        notes.push("fasteners are counted as for one length from end to end: where the run is of several lengths, each has two ends of its own, and takes more".to_owned());
    }
    if any(|joint| joint.runner.is_some()) {
        notes.push(
            "movement is reckoned on the widest reading; room is what the readings leave at least"
                .to_owned(),
        );
    }
    if any(|joint| joint.runner.as_ref().is_some_and(|range| range.is_slotted)) {
        notes.push(
            "the screw in a slot is taken to be a No. 10, as its diameter isn't recorded"
                .to_owned(),
        );
    }
    let is_place_taken = |range: &Range| range.is_slotted && !range.is_place_recorded;
    if joints
        .iter()
        .any(|joint| joint.runner.as_ref().is_some_and(is_place_taken))
    {
        notes.push("screws are taken to be in the middle of their slots where nobody recorded where they are: look".to_owned());
    }
    if any(|joint| joint.screws.is_some()) {
        notes.push("uppermost board screws are counted as one at each stud, layer and side; doubled studs and openings take more".to_owned());
    }
    notes
}
