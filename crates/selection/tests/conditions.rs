//! Joints of which the same is known are one condition.

#![allow(
    clippy::unwrap_used,
    reason = "what isn't as it should be fails the test"
)]

use selection::{Index, conditions};
use site::Project;
use site::import::{File, import};

fn project(schedule: &str) -> Project {
    let file = File {
        name: "schedule.csv",
        bytes: schedule.as_bytes(),
    };
    import(&[file]).unwrap().project
}

#[test]
fn joints_of_equal_facts_are_told_once() {
    let project = project(
        "joint,mark,length,joint.width,packing.density\n\
         #source,,drawing A-1,drawing A-1,submittal 3\n\
         J-1,HW1,10 ft,1 in.,4 pcf\n\
         J-2,HW1,20 ft,1 in.,4 pcf\n\
         J-3,HW2,10 ft,1 in.,4 pcf\n\
         J-4,HW1,10 ft,1 in.,6 pcf\n\
         J-5,HW1,10 ft,\"1 in. [measured: tape, 1/16 in.]\",4 pcf\n",
    );
    let index = Index::default();
    let found = conditions(&project, &index);
    let joints: Vec<Vec<&str>> = found
        .iter()
        .map(|one| one.joints.iter().map(|joint| joint.name.as_str()).collect())
        .collect();
    // How long a run is makes no condition; another value or another source does.
    assert_eq!(
        joints,
        [vec!["J-1", "J-2", "J-3"], vec!["J-4"], vec!["J-5"]]
    );
    let marks = found.first().unwrap().joints.iter();
    let marks: Vec<&str> = marks.map(|joint| joint.mark.as_str()).collect();
    assert_eq!(marks, ["HW1", "HW1", "HW2"]);
}
