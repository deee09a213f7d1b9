//! Cases in a text all in capitals, behind the stop of a shortened unit: whether they close the number before them or lead to the one behind their comma.

use listing::Confidence;

/// Checks each bound of a text: its number as written, when it holds, and whether it is in doubt.
#[track_caller]
fn check(text: &str, expected: &[(&str, &str, bool)]) {
    let reading = listing::read_text("capitals.txt", text);
    let found: Vec<(String, String, bool)> = reading
        .clauses
        .iter()
        .filter_map(|clause| {
            let condition = clause.condition.as_ref();
            Some((
                clause.bound()?.at.of(text).to_owned(),
                condition
                    .map(|own| own.expr.to_string())
                    .unwrap_or_default(),
                clause.confidence == Confidence::WithDoubt,
            ))
        })
        .collect();
    let found: Vec<(&str, &str, bool)> = found
        .iter()
        .map(|(at, condition, doubt)| (at.as_str(), condition.as_str(), *doubt))
        .collect();
    assert_eq!(found, expected, "{text}");
}

#[test]
fn a_case_before_a_statement_leads_to_it() {
    check(
        "1. CLIPS - MAX 16 IN. OC. IF WALL EXCEEDS 12 FT. HIGH, CLIPS ARE MIN 18 GA.\n",
        &[
            ("16 IN.", "", false),
            ("18 GA.", "wall.height > 12 ft", false),
        ],
    );
    check(
        "1. SEALANT - MIN 1/4 IN. IF JOINT IS WIDER THAN 3/4 IN., MIN 1/2 IN.\n",
        &[
            ("1/4 IN.", "", false),
            ("1/2 IN.", "joint.width > 3/4 in.", false),
        ],
    );
}

#[test]
fn a_case_that_nothing_follows_closes_the_number_before_it() {
    check(
        "1. SEALANT - MIN 1/2 IN. WHERE THE WALL IS BLOCK.\n",
        &[("1/2 IN.", "\"WHERE THE WALL IS BLOCK\"", false)],
    );
    check(
        "1. PACKING - MIN 4 IN. FOR 2 HR, MIN 6 IN. FOR 3 HR.\n",
        &[
            ("4 IN.", "joint.rating = 2 hr", false),
            ("6 IN.", "joint.rating = 3 hr", false),
        ],
    );
}

#[test]
fn where_both_may_be_meant_neither_number_is_excused() {
    check(
        "1. STUDS - MAX 24 IN. OC. FOR 2 HR WALLS, BOARD MIN 2 LAYERS. RUNNERS MIN 25 GA.\n",
        &[
            ("24 IN.", "", true),
            ("2", "\"FOR 2 HR WALLS\"", true),
            ("25 GA.", "", false),
        ],
    );
    check(
        "1. SEALANT - MIN 1/4 IN. IF JOINT IS 3/4 IN. OR LESS, MIN 1/2 IN.\n",
        &[
            ("1/4 IN.", "", true),
            ("1/2 IN.", "\"IF JOINT IS 3/4 IN. OR LESS\"", true),
        ],
    );
    check(
        "1. BOARD - MIN 5/8 IN. WHERE 2 HR RATING IS REQUIRED, 2 LAYERS.\n",
        &[("5/8 IN.", "", true), ("2", "\"WHERE 2 HR RATING\"", true)],
    );
}
