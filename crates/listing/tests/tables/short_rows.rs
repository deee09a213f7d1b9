//! Rows that leave columns blank, and those whose first cell stands on two lines. The wordings are invented.

use super::{bounds, check};

#[test]
fn a_last_row_may_leave_the_last_columns_blank() {
    let text = |last: &str| {
        format!(
            "Sheet PR-1\n\n1. SEALANT - See Table 1.\n\nTABLE 1  Sealant depth, mm\n\n\
             Joint width   60 min   90 min   120 min\n\
             up to 10      6        8        10\n\
             10 to 20      10       12       15\n\
             20 to 30      12       {last}\n"
        )
    };
    for last in ["15", "15       -", ""] {
        let found = bounds(&text(last));
        let expected = if last.is_empty() { 7 } else { 8 };
        assert_eq!(found.len(), expected, "{last}: {found:?}");
        assert!(
            found
                .iter()
                .all(|one| one.starts_with("sealant.depth: nominal")),
            "{found:?}"
        );
    }
}

#[test]
fn units_below_the_ratings_and_a_short_last_row() {
    let found = bounds(
        "Sheet PR-1\n\n1. SEALANT - Acrylic.\n\n\
         Joint width   60 min   90 min   120 min\n\
         mm            mm       mm       mm\n\
         up to 10      6        8        10\n\
         10 to 20      10       12       15\n\
         20 to 30      12       15\n",
    );
    assert_eq!(found.len(), 8, "{found:?}");
    // The ratings head columns, and are no times that anything takes.
    assert!(
        !found.iter().any(|one| one.contains("nominal 90 min")),
        "{found:?}"
    );
}

#[test]
fn a_line_of_text_below_the_rows_is_none_of_them() {
    let found = bounds(
        "Sheet PR-1\n\n1. PACKING - Wool.\n\n\
         Joint width, mm   Depth, mm   Lap, mm   Recess, mm\n\
         up to 10          6           8         10\n\
         10 to 20          10          12        15\n\
         Clips             2 in. wide at least, 12 in. apart\n",
    );
    let of_table = found
        .iter()
        .filter(|one| one.contains("Joint width"))
        .count();
    assert_eq!(of_table, 6, "{found:?}");
}

#[test]
fn a_range_of_widths_on_two_lines() {
    check(
        "Sheet PR-1\n\n1. SAFING AND SPRAY\n\n\
         \x20     Joint width   Compression   Depth      Spray, wet   Recess    \n\
         \x20                   not less      not less   not less     not more\n\
         \x20                   than          than       than         than\n\
         \x20     -----------   -----------   --------   ----------   ------------\n\
         \x20     Up to 2 in.   25 percent    4 in.      1/8 in.      1/2 in.\n\
         \x20     Over 2 in.,\n\
         \x20     to 4 in.      30 percent    4-1/2 in.  3/16 in.     1 in.\n",
        &[
            "packing.compression: at least 25 % [Joint width: Up to 2 in.]",
            "packing.depth: at least 4 in. [Joint width: Up to 2 in.]",
            "coating.wet_thickness: at least 1/8 in. [Joint width: Up to 2 in.]",
            "packing.recess: at most 1/2 in. [Joint width: Up to 2 in.]",
            "packing.compression: at least 30 % [Joint width: Over 2 in., to 4 in.]",
            "packing.depth: at least 4-1/2 in. [Joint width: Over 2 in., to 4 in.]",
            "coating.wet_thickness: at least 3/16 in. [Joint width: Over 2 in., to 4 in.]",
            "packing.recess: at most 1 in. [Joint width: Over 2 in., to 4 in.]",
        ],
    );
}
