//! Schedules with columns "Minimum" and "Maximum" whose rows are items or text: a value is bounded by the column that it stands in. The schedules are invented.

mod common;

use common::clauses;

const HEAD: &str =
    "No.  Component            Property              Minimum     Maximum     Notes\n";

/// What was read of a schedule's numbers.
fn read(rows: &str) -> Vec<String> {
    clauses(&format!("{HEAD}{rows}"))
}

fn has(found: &[String], words: &str) -> bool {
    found.iter().any(|clause| clause.contains(words))
}

#[test]
fn a_value_is_bounded_by_the_column_that_it_stands_in() {
    let found = read(concat!(
        "--------------------------------------------------------------------------------\n",
        "1    FLOOR\n",
        "1.1  Concrete             Thickness             4.5 in.     -           NW or LW\n",
        "1.2  Hollow core          Thickness             8 in.       -           grouted\n",
        "                          Unit weight           110 pcf     150 pcf\n",
        "2    WALL\n",
        "2.1  Wall edge            Out of square         -           0.25 in.    per ft\n",
    ));
    for words in [
        "at least 9/2 in",
        "at least 8 in",
        "between 110 to 150 pcf",
        "at most 1/4 in",
    ] {
        assert!(has(&found, words), "{words}: {found:?}");
    }
}

#[test]
fn a_value_of_another_column_and_text_below_the_schedule_are_not() {
    let found = read(concat!(
        "1    FLOOR\n",
        "1.1  Concrete             Thickness             4.5 in.     2 layers    6 in. at edges\n",
        "2    CLIPS. Steel, 16 ga, and 2 in. wide, to be fixed to the face of the slab at 12 in.\n",
        "     centers                                    3 in.\n",
    ));
    assert!(has(&found, "at least 9/2 in"), "{found:?}");
    for words in ["at least 6 in", "at least 3 in", "at least 2 in"] {
        assert!(!has(&found, words), "{words}: {found:?}");
    }
}

#[test]
fn an_empty_column_is_no_dash_of_a_range() {
    let found = read(concat!(
        "1    FLOOR\n",
        "1.1  Concrete             Thickness             4.5 in.     -           5 in. at edges\n",
    ));
    assert!(!has(&found, "between"), "{found:?}");
}

#[test]
fn where_the_blanks_between_columns_were_lost_nothing_is_bounded_by_them() {
    // The maximum has come to stand under "Minimum".
    let found = read(concat!(
        "1    FLOOR\n",
        "1.1  Concrete             Recess                -     0.5 in.    from the top\n",
        "1.2  Concrete             Recess of the wool      0.5 in.           from the top\n",
    ));
    assert!(!has(&found, "at least"), "{found:?}");
}

#[test]
fn a_value_beside_one_out_of_its_column_may_be_out_of_its_own() {
    let found = read(concat!(
        "1    FLOOR\n",
        "1.1  Concrete             Recess                0.5 in.  -\n",
    ));
    assert!(!has(&found, "at least"), "{found:?}");
}
