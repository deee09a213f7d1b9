//! Schedules and sheets of columns as makers and engineers print them: labels beside ratings, a heading with more at the end of its line, a caption that
//! limits two columns at once. The wordings are invented.

mod common;

use common::check;

#[test]
fn a_column_of_parts_labels_what_is_required_beside_it() {
    check(
        "1   DECK\n\
         \x20   Part               Required                            Remark\n\
         \x20   ---------------    --------------------------------    ---------------------\n\
         \x20   Deck depth         1-1/2 in to 3 in                    as shown\n\
         \x20   Deck gauge         22 ga min                           0.0295 in\n\
         \x20   Stud spacing       24 in max                           see drawing\n",
        &[
            "deck.depth: between 3/2 to 3 in",
            "deck.gauge: at least 22 gauge",
            "1:steel_deck_deck_gauge: nominal 59/2000 in",
            "stud.spacing: at most 24 in",
        ],
    );
}

#[test]
fn what_limits_a_cell_doesnt_limit_the_one_beside_it() {
    check(
        "1   DECK AND SLAB\n\
         \x20   Part               Required                            Remark\n\
         \x20   ---------------    --------------------------------    ------------------------------\n\
         \x20   Deck depth         1-1/2 in to 3 in                    any flute pitch <= 12 in\n\
         \x20   Deck gauge         22 ga min                           0.0295 in\n\
         \x20   Topping            >= 2-1/2 in over crests             145 +/- 5 pcf\n\
         \x20   Topping, LW        >= 3-1/4 in over crests             105-115 pcf\n\
         \x20   Bare roof deck     not permitted                       see 6\n",
        &[
            "deck.depth: between 3/2 to 3 in",
            "deck.flute_spacing: at most 12 in",
            "deck.gauge: at least 22 gauge",
            "1:steel_deck: nominal 59/2000 in",
            "1:topping_topping_over_crests: at least 5/2 in",
            "concrete.density: between 140 to 150 pcf",
            "1:topping_topping_lw_over_crests: at least 13/4 in",
            "concrete.density: between 105 to 115 pcf",
        ],
    );
}

#[test]
fn a_column_for_a_rated_wall_is_a_rating() {
    check(
        "1   FLOOR - 5 in. thick min.\n\n2   WALL\n\
         \x20   Part               1 hr wall                           2 hr wall\n\
         \x20   ---------------    --------------------------------    ------------------------------\n\
         \x20   Stud depth         3-5/8 in min                        3-5/8 in min\n\
         \x20   Stud spacing       24 in max                           16 in max\n\
         \x20   Track leg          2-1/2 in                            3 in\n",
        &[
            "floor.thickness: at least 5 in",
            "stud.width: at least 29/8 in if joint.rating = 1 hr",
            "stud.width: at least 29/8 in if joint.rating = 2 hr",
            "stud.spacing: at most 24 in if joint.rating = 1 hr",
            "stud.spacing: at most 16 in if joint.rating = 2 hr",
            "runner.leg_length: nominal 5/2 in if joint.rating = 1 hr",
            "runner.leg_length: nominal 3 in if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn a_numbered_heading_in_capitals_is_no_row_of_the_table_below_it() {
    check(
        "1   WALL - 4 in. thick min.\n\
         \n\
         2   PACKING IN FLUTES                                     density 6 pcf min\n\
         \x20   Flute depth, in     Wool width, in    Pieces\n\
         \x20   ------------------------------------------------\n\
         \x20   1-1/2                5                 1\n\
         \x20   over 1-1/2 to 2      5                 2\n",
        &[
            "wall.thickness: at least 4 in",
            "packing.density: at least 6 pcf",
            "packing.width: nominal 5 in if \"Flute depth, in: 1-1/2\"",
            "packing.layers: exactly 1 count if \"Flute depth, in: 1-1/2\"",
            "packing.width: nominal 5 in if \"Flute depth, in: over 1-1/2 to 2\"",
            "packing.layers: exactly 2 count if \"Flute depth, in: over 1-1/2 to 2\"",
        ],
    );
}

#[test]
fn one_limit_before_two_names_is_of_both_columns() {
    check(
        "1. Packing - Use wool of 4 pcf nominal density. Minimum depth and compression:\n\
         \n\
         \x20  Rating     Depth       Compression\n\
         \x20  --------------------------------------\n\
         \x20  2 hr       4\"          33 %\n\
         \x20  3 hr       5\"          25 %\n",
        &[
            "packing.density: nominal 4 pcf",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.compression: at least 33 percent if joint.rating = 2 hr",
            "packing.depth: at least 5 in if joint.rating = 3 hr",
            "packing.compression: at least 25 percent if joint.rating = 3 hr",
        ],
    );
}

#[test]
fn a_size_beside_a_count_is_no_slope() {
    check(
        "1. Gap - w > 1 in         2 strips.\n\n2. Deck - Slope not more than 1 in 60.\n",
        &[
            "1:gap_strips: exactly 2 count",
            "2:steel_deck_slope: at most 1/60 ratio",
        ],
    );
}

#[test]
fn a_row_for_one_width_alone_is_in_doubt() {
    let text = "1. Packing - Depth as follows:\n\n   Joint Width   Min Depth\n   25 mm         75 mm\n   38 mm         100 mm\n";
    let reading = listing::read_text("schedule.txt", text);
    let depths: Vec<_> = reading
        .clauses
        .iter()
        .filter(|clause| clause.bound().is_some())
        .map(|clause| clause.confidence)
        .collect();
    assert_eq!(depths, [listing::Confidence::WithDoubt; 2]);
}
