//! Columns of cases under one heading that they share, beside columns of their own. The wordings are invented.

use super::{bounds, check};

/// A table of depths by width and rating, whose last column says what stands behind.
fn by_rating(caption: &str, over: &str) -> String {
    format!(
        "Sheet PS-1\n\n1. SEALANT - See Table 1.\n\nTABLE 1 - WALL JOINTS\n  {caption}\n\
  +------------------+-----------------------+------------+\n\
  |                  |  {over:<19}  |            |\n\
  |  Joint width,    +-----------+-----------+  Backing   |\n\
  |  mm              |    60     |    120    |            |\n\
  +------------------+-----------+-----------+------------+\n\
  |  up to 10        |     6     |    10     |  foam rod  |\n\
  +------------------+-----------+-----------+------------+\n\
  |  over 10 to 30   |    12     |    not    |  wool      |\n\
  |                  |           |    rated  |            |\n\
  +------------------+-----------+-----------+------------+\n"
    )
}

#[test]
fn ratings_under_one_heading() {
    for (caption, over) in [
        (
            "Minimum depth of sealant in mm, each face",
            "Rating, minutes",
        ),
        ("Depth of sealant, min., in mm", "Fire period, min"),
    ] {
        check(
            &by_rating(caption, over),
            &[
                "sealant.depth: at least 6 mm [Joint width, mm: up to 10; OVER: 60]",
                "sealant.depth: at least 10 mm [Joint width, mm: up to 10; OVER: 120]",
                "sealant.depth: at least 12 mm [Joint width, mm: over 10 to 30; OVER: 60]",
            ]
            .map(|line| line.replace("OVER", over))
            .each_ref()
            .map(String::as_str),
        );
    }
}

#[test]
fn widths_in_two_units_under_one_heading() {
    let text = "Sheet PS-1\n\n1. STRIP - See Table 2.\n\n\
        TABLE 2   Strip in wall joints: least depth, mm (in.). Strip in one\n             piece.\n\n\
        \x20              Rating  |  Width of joint as built, mm (in.) |\n\
        \x20                      |  25 - 50   |  > 50 - 100          |\n\
        \x20                      |  (1 - 2)   |  (> 2 - 4)           |\n\
        \x20              --------+------------+----------------------+\n\
        \x20              1 h     |  50 (2)    |  65 (2.5) b          |\n\
        \x20              2 h     |  75 (3)    |  100 (4)             |\n\
        \x20              --------+------------+----------------------+\n";
    let found = bounds(text);
    let depths: Vec<&String> = found
        .iter()
        .filter(|one| one.contains("at least"))
        .collect();
    assert_eq!(depths.len(), 4, "{found:?}");
    let reading = listing::read_text("sample", text);
    let noted = reading
        .clauses
        .iter()
        .find(|clause| clause.words.contains("65 (2.5)"))
        .unwrap();
    // What the note says of it isn't known.
    assert_eq!(noted.confidence, listing::Confidence::WithDoubt);
    let condition = noted.condition.as_ref().unwrap();
    assert!(
        condition.words.contains("> 50 - 100"),
        "{}",
        condition.words
    );
}

#[test]
fn what_the_caption_does_not_name_keeps_its_own() {
    // The least is the depth's, and not the plate's or the bearing's.
    let text = "Sheet PS-1\n\n1. STRIP - See Table 3.\n\n\
        TABLE 3   Strip in floor joints: least depth, mm (in.), and the plate\n             that carries it (thickness, and bearing on each side).\n\n\
        \x20  Width, mm (in.)       1 h        2 h        Steel      Bearing,\n\
        \x20                                              plate      each side\n\
        \x20  -------------------------------------------------------------------\n\
        \x20  25 - 50 (1 - 2)       65 (2.5)   90 (3.5)   none       -\n\
        \x20  > 50 - 100 (2 - 4)    75 (3)     115 (4.5)  1.5 mm     38 mm\n\
        \x20                                              (16 ga.)\n\
        \x20  > 100 - 150 (4 - 6)   100 (4)    n/a        2.5 mm     50 mm\n\
        \x20  -------------------------------------------------------------------\n";
    let found = bounds(text);
    let depths = found.iter().filter(|one| one.contains("at least"));
    assert_eq!(depths.count(), 5, "{found:?}");
    let plates: Vec<&String> = found.iter().filter(|one| one.contains("nominal")).collect();
    assert_eq!(plates.len(), 4, "{found:?}");
}

#[test]
fn a_rating_below_what_is_measured_is_no_minimum() {
    let text = "Sheet PS-1\n\n1. STRIP\n\n\
        WIDTH OF JOINT     DEPTH OF STRIP, mm        BRACKETS\n\
        \x20                  60 min      120 min       c/c\n\
        ==========================================================\n\
        15 - 30            50          75            -\n\
        31 - 50            60          100           600 mm\n\
        51 - 75            75          2 x 75        400 mm\n\
        ==========================================================\n";
    let found = bounds(text);
    let strips: Vec<&String> = found.iter().filter(|one| one.contains("depth")).collect();
    assert_eq!(strips.len(), 5, "{found:?}");
    for strip in strips {
        assert!(
            strip.contains("nominal") && strip.contains(" min]"),
            "{strip}"
        );
    }
    // Two pieces are no side of 2 mm.
    assert!(
        !found.iter().any(|one| one.contains("nominal 2 mm")),
        "{found:?}"
    );
}

#[test]
fn a_rating_or_a_minimum_is_left_open() {
    // Alone, `60 min` may be either.
    let text = "Sheet PS-1\n\n1. STRIP\n\n\
        Width of joint, mm | Depth, mm 60 min | Lap, mm\n\
        -------------------|------------------|--------\n\
        15 - 30            | 50               | 20\n\
        31 - 50            | 60               | 30\n";
    let found = bounds(text);
    assert!(!found.iter().any(|one| one.contains("epth")), "{found:?}");
}
