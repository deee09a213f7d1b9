//! Counts: in words, from one number to another, and where only the words about them say that they require. The wordings are invented; what
//! they mean is common practice.

mod common;

use common::check;

#[test]
fn a_count_goes_from_one_number_to_another() {
    check(
        "1. SCREWS - Four to six screws per stud.\n",
        &["fastener.count: between 4 to 6 count"],
    );
    check(
        "1. SCREWS - Fix each clip with 4 to 6 screws.\n",
        &["fastener.count: between 4 to 6 count"],
    );
    // Steps are no screws.
    check("1. SCREWS - See Steps 4 to 6.\n", &[]);
}

#[test]
fn the_ones_that_lie_nearest_are_counted() {
    let grouted = |words: &str| format!("1. WALL - Masonry. {words}\n");
    for words in [
        "The two courses nearest the joint shall be grouted solid.",
        "Grout the two cells next to the joint.",
        "The two courses adjoining the joint are filled.",
    ] {
        let clauses = common::clauses(&grouted(words));
        assert!(
            clauses
                .iter()
                .any(|clause| clause.ends_with(": exactly 2 count")),
            "{words} {clauses:?}"
        );
    }
    // What is only pointed at counts nothing.
    check("1. WALL - The two walls meet at the joint.\n", &[]);
    check("1. WALL - The two layers overlap.\n", &[]);
}

#[test]
fn what_is_doubled_is_two() {
    for words in [
        "The stud nearest the joint is doubled.",
        "Studs are doubled at the joint.",
        "Steel studs, doubled at the joint.",
    ] {
        let clauses = common::clauses(&format!("1. STUDS - {words}\n"));
        assert!(
            clauses
                .iter()
                .any(|clause| clause.ends_with(": exactly 2 count")),
            "{words} {clauses:?}"
        );
    }
    // A measure that is doubled is no two of anything.
    check(
        "1. STUDS - The spacing of the studs is doubled at openings.\n",
        &[],
    );
    check("1. STUDS - The load on studs is doubled there.\n", &[]);
}

#[test]
fn a_class_code_alone_is_read_where_the_words_speak_of_a_class() {
    check(
        "1. JOINT - The class of the joint is EI 90.\n",
        &["joint.rating: nominal 90 min"],
    );
    check(
        "1. JOINT - The joint reaches EI 60 at the most.\n",
        &["joint.rating: at most 60 min"],
    );
    // Of what the code is, or for what it holds, isn't said.
    check(
        "1. JOINT - For flexible walls the class is raised to EI 90.\n",
        &[],
    );
    check("1. WALL - A rigid wall EI 120 stands on the slab.\n", &[]);
}
