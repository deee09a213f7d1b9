//! The head of a listing states what it is, and may demand something besides. The wordings are invented.

mod common;

use common::clauses;

/// The clauses of a head with one line more.
fn with(line: &str) -> Vec<String> {
    clauses(&format!(
        "System HW-9\nJoint width - max 2 in.\n{line}\n\n1. WALL - A wall of masonry.\n"
    ))
}

#[test]
fn a_head_that_commands_something_of_a_part_demands_it() {
    for line in [
        "Sealant must be kept from movement for at least 24 hours",
        "Supports shall stand at least 6 in. from any opening",
        "Walls must be at least 6 in. thick in this design",
    ] {
        let found = with(line);
        assert!(
            found.iter().any(|clause| clause.contains("at least")),
            "{line} {found:?}"
        );
    }
}

#[test]
fn what_a_head_states_of_the_joint_is_no_clause_of_its_own() {
    for line in [
        "The joint width shall not exceed 2 in",
        "Movement must not exceed 25 percent",
        "Openings shall be at most 2 in. wide",
    ] {
        assert_eq!(with(line), Vec::<String>::new(), "{line}");
    }
}
