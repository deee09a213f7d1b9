//! Tables of classes and of minutes: each row's class is read exactly, under the row's own case. The wordings are invented.

#![allow(
    clippy::unwrap_used,
    reason = "what was set up is there; where it isn't, the test fails"
)]

mod common;

use common::check;
use listing::{Requirement, read_text};

/// Every bound with the words of its condition.
fn bounds(text: &str) -> Vec<String> {
    let reading = read_text("sample", text);
    let bounds = reading.clauses.iter().filter_map(|clause| {
        let Requirement::Bound(bound) = &clause.requirement else {
            return None;
        };
        let condition = clause.condition.as_ref();
        let condition = condition.map_or_else(String::new, |it| format!(" [{}]", it.words));
        Some(format!("{}: {bound}{condition}", clause.property))
    });
    bounds.collect()
}

#[test]
fn columns_of_integrity_and_insulation_are_minutes_and_no_minimum() {
    for (integrity, insulation) in [
        ("Integrity", "Insulation"),
        ("Integrity,", "Insulation,"),
        ("Integrity", "Insul- "),
    ] {
        let found = bounds(&format!(
            "Certificate KC-9\n\n1. Strip - Mineral fibre, laminated.\n\n2. Fire resistance is as in the table.\n\n\
             \x20  TABLE 1\n\
             \x20  =====================================================\n\
             \x20                  Gap width     {integrity:<11}  {insulation}\n\
             \x20  Situation       mm            min          min\n\
             \x20  =====================================================\n\
             \x20  Wall to wall    10 to 60      120          60\n\
             \x20  Floor edge      25 to 100     90           90 (i)\n\
             \x20  =====================================================\n\
             \x20   (i)  With a top coat.\n\n3. Label the seal.\n"
        ));
        let integral = found
            .iter()
            .filter(|one| one.starts_with("joint.integrity"));
        assert_eq!(integral.count(), 2, "{found:#?}");
        assert!(
            found.iter().all(|one| !one.contains("integrity: at least")),
            "{found:#?}"
        );
        let insulated = found
            .iter()
            .filter(|one| one.starts_with("joint.rating: nominal"));
        let read = usize::from(insulation.starts_with("Insulation")) * 2;
        assert_eq!(insulated.count(), read, "{found:#?}");
    }
}

/// Insulation is a depth where no column of integrity stands beside it, and a column with another number than minutes is none.
#[test]
fn insulation_may_be_a_part() {
    let read = |heading: &str, (first, second): (&str, &str)| {
        bounds(&format!(
            "Sheet KC-9\n\n1. Joint\n\n\
             \x20  Joint width, mm     {heading:<22}Density, kg/m3\n\
             \x20  ---------------------------------------------------------\n\
             \x20  up to 25            {first:<22}60\n\
             \x20  over 25 to 60       {second:<22}80\n\
             \x20  ---------------------------------------------------------\n"
        ))
    };
    for (heading, values) in [
        ("Insulation depth, mm", ("60", "120")),
        ("Insulation, mm", ("60", "120")),
        ("Insulation min (mm)", ("60", "120")),
    ] {
        let found = read(heading, values);
        assert!(
            found.iter().all(|one| !one.starts_with("joint.rating")),
            "{found:#?}"
        );
    }
}

#[test]
fn a_table_of_classes_needs_no_rule() {
    let of = |headings: &str, first: &str, second: &str| {
        bounds(&format!(
            "Report KC-9\n\n1. Seal - Acrylic.\n\n2. Summary\n\n     {headings}\n     {first}\n     {second}\n\n3. Label the seal.\n"
        ))
    };
    assert_eq!(
        of(
            "System   Element                      FRL",
            "1        Concrete or masonry wall     -/120/120",
            "2        Slab, 150 mm                 -/180/90",
        ),
        [
            "joint.integrity: nominal 120 min [System: 1; Element: Concrete or masonry wall]",
            "joint.rating: nominal 120 min [System: 1; Element: Concrete or masonry wall]",
            "joint.integrity: nominal 180 min [System: 2; Element: Slab, 150 mm]",
            "joint.rating: nominal 90 min [System: 2; Element: Slab, 150 mm]",
        ]
    );
    assert_eq!(
        of(
            "Variant  Situation         Class",
            "V1       wall, rigid       EI 60 - V - X - F - W 10 to 30",
            "V2       floor             EI 120 - H - M 25 - F - W 20 to 50",
        )
        .len(),
        5
    );
    // How it is sealed is asked for, and no case.
    let sealed = of(
        "Variant  Sealed            Class",
        "V1       both sides        EI 60 - V - X - F - W 10 to 30",
        "V2       top side          EI 120 - H - M 25 - F - W 20 to 50",
    );
    assert!(
        sealed.iter().all(|one| !one.contains("Sealed")),
        "{sealed:#?}"
    );
    // A row that goes on below isn't whole.
    let broken = of(
        "System   Element                      FRL",
        "1        Concrete or masonry wall     -/120/120",
        "2        Slab of hollow units,        -/180/90\n              150 mm thick",
    );
    assert!(
        broken.iter().all(|one| !one.contains("System:")),
        "{broken:#?}"
    );
}

#[test]
fn rows_that_share_an_element_have_its_words_together() {
    check(
        "Report KC-9\n\n1. Seal - Acrylic.\n\nTable 1 - Joints\n\n\
         Ref.     Element              Joint width    Sealant depth    Backing          FRL\n\
         -----------------------------------------------------------------------------------------\n\
         C1       Concrete wall,       10-20 mm       15 mm            PE rod           -/120/120\n\
         \x20        both faces           21-50 mm       25 mm            PE rod           -/120/90\n\
         -----------------------------------------------------------------------------------------\n",
        &[
            "sealant.depth: nominal 15 mm if \"Ref.: C1\" and joint.width from 10 mm to 20 mm",
            "joint.integrity: nominal 120 min if \"Ref.: C1\" and joint.width from 10 mm to 20 mm",
            "joint.rating: nominal 120 min if \"Ref.: C1\" and joint.width from 10 mm to 20 mm",
            "sealant.depth: nominal 25 mm if \"Ref.: C1\" and joint.width from 21 mm to 50 mm",
            "joint.integrity: nominal 120 min if \"Ref.: C1\" and joint.width from 21 mm to 50 mm",
            "joint.rating: nominal 90 min if \"Ref.: C1\" and joint.width from 21 mm to 50 mm",
        ],
    );
}

#[test]
fn a_level_that_isn_t_exceeded_is_the_most() {
    for words in [
        "not above",
        "not over",
        "no higher than",
        "not exceeding",
        "no greater than",
    ] {
        let found = bounds(&format!(
            "1. Panel walls - min 75 mm thick, FRL {words} -/90/60.\n"
        ));
        assert_eq!(
            found.get(1..),
            Some(
                &[
                    "joint.integrity: at most 90 min".to_owned(),
                    "joint.rating: at most 60 min".to_owned()
                ][..]
            ),
            "{words}"
        );
    }
    let least = bounds("1. Panel walls - min 75 mm thick, FRL not below -/90/60.\n");
    assert!(
        least.iter().skip(1).all(|one| one.contains("at least")),
        "{least:#?}"
    );
}

#[test]
fn levels_in_brackets_are_cases_where_another_is_asked_for() {
    assert_eq!(
        bounds(
            "1. Masonry walls - min 110 mm thick (FRL up to -/120/120), otherwise min 175 mm.\n"
        )
        .first()
        .unwrap(),
        "wall.thickness: at least 110 mm [FRL up to -/120/120]"
    );
    let both = bounds(
        "1. Concrete walls - a thickness of not less than 120 mm (FRL to -/120/120) or 175 mm (-/180/180 and -/240/240).\n",
    );
    assert_eq!(
        both,
        [
            "wall.thickness: at least 120 mm [FRL to -/120/120]",
            "wall.thickness: at least 175 mm [-/180/180 and -/240/240]",
        ]
    );
    // Alone it may be the wall's own.
    let alone = bounds("1. Masonry walls - min 110 mm thick (FRL up to -/120/120).\n");
    assert_eq!(alone.first().unwrap(), "wall.thickness: at least 110 mm");
}

#[test]
fn layers_of_boards_are_counted_before_the_board_is_named() {
    let found = bounds(
        "1. Partitions - lined each side with 1 x 16 mm (FRL -/60/60) or 2 x 13 mm (FRL -/90/90) or 2 x 16 mm (FRL -/120/120) fire grade board.\n",
    );
    assert!(
        found.iter().all(|one| !one.contains("2 mm [")),
        "{found:#?}"
    );
    assert_eq!(
        found
            .iter()
            .filter(|one| one.contains("exactly 2 "))
            .count(),
        2,
        "{found:#?}"
    );
    let steel = bounds("1. Angles - 2 x 13 mm or 3 x 16 mm steel angle, 40 mm long.\n");
    assert!(
        steel.iter().all(|one| !one.contains("exactly")),
        "{steel:#?}"
    );
}
