//! A runner through its range, worked by hand.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

mod common;

use common::{known, n, readings};
use engineering::Standing;
use engineering::movement::{End, RunnerAsked, runner};

fn slotted() -> RunnerAsked {
    RunnerAsked {
        slot: Some(readings("1-1/2 in.", None)),
        screw_at: None,
        screw_diameter: Some(known("1/8 in.")),
        leg: readings("2-1/2 in.", None),
        stud_gap: readings("3/4 in.", None),
        board_gap: readings("3/4 in.", None),
        top_screw: None,
        least_overlap: Some(known("3/4 in.")),
        down: known("1/2 in."),
        up: known("1/4 in."),
    }
}

#[test]
fn a_slotted_runner_through_its_range() {
    let found = runner(&slotted()).unwrap();
    assert_eq!(found.worked.standing(), Standing::Met);
    // A screw of 1/8 in. in the middle of 1-1/2 in. has 11/16 in. each way, which ends before the gaps of 3/4 in. do.
    assert!(found.value.down[0].what.contains("screws"));
    assert_eq!(found.value.down[0].at.low, n("11/16"));
    assert_eq!(found.value.up[0].at.low, n("11/16"));
    let mut much = slotted();
    much.down = known("3/4 in.");
    let found = runner(&much).unwrap();
    assert_eq!(found.worked.standing(), Standing::NotMet);
    assert!(
        found.worked.findings[0].words.contains("jam at 11/16 in."),
        "{}",
        found.worked.findings[0].words
    );
    assert_eq!(
        found
            .value
            .down
            .iter()
            .filter(|end| end.standing == Standing::NotMet)
            .count(),
        1
    );
}

#[test]
fn a_screw_set_low_jams_late_and_pulls_early() {
    let mut low = slotted();
    low.screw_at = Some(readings("1/4 in.", None));
    let found = runner(&low).unwrap();
    assert_eq!(found.value.up[0].at.low, n("3/16"));
    assert_eq!(found.value.up[0].standing, Standing::NotMet);
    low.screw_at = Some(readings("1/32 in.", None));
    assert!(
        runner(&low)
            .unwrap_err()
            .to_string()
            .contains("the place of the screw")
    );
}

#[test]
fn legs_come_down_on_the_screws_of_the_board() {
    let mut close = slotted();
    // Legs of 2-1/2 in. and screws at 2-3/4 in. leave 1/4 in., and 1/2 in. is to come down.
    close.top_screw = Some(readings("2-3/4 in.", None));
    let found = runner(&close).unwrap();
    assert_eq!(found.value.down[0].at.low, n("1/4"));
    assert_eq!(found.value.down[0].standing, Standing::NotMet);
    close.top_screw = Some(readings("2-1/4 in.", None));
    let through_the_leg = runner(&close).unwrap();
    let words = &through_the_leg.worked.findings[0].words;
    assert!(
        words.contains("before anything moves: by 1/4 in."),
        "{words}"
    );
    close.top_screw = Some(readings("3-1/4 in.", None));
    assert_eq!(runner(&close).unwrap().worked.standing(), Standing::Met);
}

/// Studs engage both runners (ASTM C754, 5.3.1.3): an end that is level with the legs engages nothing.
#[test]
fn studs_unlap() {
    let mut short = slotted();
    short.slot = None;
    short.least_overlap = None;
    short.leg = readings("1-1/4 in.", None);
    let at = |short: &RunnerAsked, up: &str| {
        let asked = RunnerAsked {
            up: known(up),
            ..short.clone()
        };
        let found = runner(&asked).unwrap().value;
        assert_eq!(found.up[0].what, "the studs slip out of the legs");
        (found.up[0].at.low, found.up[0].standing)
    };
    assert_eq!(at(&short, "1/2 in."), (n("1/2"), Standing::NotMet));
    assert_eq!(at(&short, "7/16 in."), (n("1/2"), Standing::Met));
    // Legs and gap both read to 1/16 in. leave 1/16 in. of their difference open either way.
    short.leg = readings("1-1/4 in.", Some("1/16 in."));
    short.stud_gap = readings("3/4 in.", Some("1/16 in."));
    assert_eq!(at(&short, "7/16 in."), (n("7/16"), Standing::Open));
    assert_eq!(at(&short, "3/8 in."), (n("7/16"), Standing::Met));
    short.stud_gap = readings("1-1/4 in.", None);
    let refused = runner(&short).unwrap_err().to_string();
    assert!(refused.contains("less than the legs"), "{refused}");
}

/// Of several readings along the run the place with the least room decides, each way.
#[test]
fn the_tightest_place_along_the_run_decides() {
    let mut uneven = slotted();
    uneven.slot = None;
    uneven.least_overlap = None;
    uneven.stud_gap = readings("3/4 in.; 1/2 in.; 1 in.", None);
    uneven.top_screw = Some(readings("3-1/4 in.; 3 in.", None));
    let found = runner(&uneven).unwrap().value;
    let at = |ends: &[End], what: &str| {
        let end = ends.iter().find(|end| end.what.contains(what));
        end.unwrap().at.low
    };
    assert_eq!(at(&found.down, "reach the web"), n("1/2"));
    assert_eq!(at(&found.down, "uppermost screws"), n("1/2"));
    assert_eq!(at(&found.up, "slip out"), n("3/2"));
}
