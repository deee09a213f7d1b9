//! Framing, board screws and flutes of a work card.

use workcard::{JointWork, words};

use super::table;
use super::words::on_one_line;

/// A table of the joints of which something is known; only the columns that something stands in.
pub(crate) fn framing(joints: &[JointWork]) -> String {
    let rows: Vec<[String; 6]> = joints
        .iter()
        .map(|joint| {
            let range = joint.runner.as_ref();
            [
                on_one_line(&joint.joint),
                range.map_or_else(String::new, |range| words::moved(&range.down)),
                range.map_or_else(String::new, |range| words::moved(&range.up)),
                words::screws(joint),
                joint.seal.clone().unwrap_or_default(),
                joint
                    .flutes
                    .as_ref()
                    .map_or_else(String::new, words::flutes),
            ]
        })
        .filter(|[_, rest @ ..]| rest.iter().any(|cell| !cell.is_empty()))
        .collect();
    if rows.is_empty() {
        return String::new();
    }
    let headings = [
        "joint",
        "structure comes down",
        "structure goes up",
        "board screws",
        "preformed seal",
        "flutes to fill",
    ];
    let made = table::of_used_columns(&headings, &rows);
    format!("\n{}", table::set(&made))
}
