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

/// A list of components, whose texts run over many lines, with a table in one of them.
const COMPONENTS: &str = "Joint Listing Service\n\n\
     COMPONENT                REQUIREMENTS\n\
     ---------                ------------\n\
     Concrete slabs           Min. thickness 5 in. Density 115-150 pcf. A blockout is permitted\n\
     \x20                        at each edge, not deeper than 1 1/2 in. and made while the slab\n\
     \x20                        is cast.\n\n\
     Retainer angle           22 ga. galvanized steel, continuous on both sides. Anchors 1/4\n\
     \x20                        in. diameter, min. 1 1/4 in. embedment, max. 12 in. on center\n\
     \x20                        all along the angle.\n\n\
     Blanket                  Ceramic fiber blanket faced with foil. Nominal density 8 pcf.\n\
     \x20                        Blanket make-up:\n\n\
     \x20                                       Assembly 1 (2 hr)        Assembly 2 (3 hr)\n\
     \x20                        Joint width   Layers    Drape, min.    Layers    Drape, min.\n\
     \x20                        -----------   ------    -----------    ------    -----------\n\
     \x20                        up to 4 in.     1          2 in.          2         2 in.\n\
     \x20                        4 to 8 in.      2          3 in.          3         3 in.\n\n\
     Edge sealant             Bead of min. 3/8 in. diameter on top of the angle leg, both sides.\n";

#[test]
fn a_list_of_components_has_items_and_a_table_within_one_ends_none_of_the_others() {
    check(
        COMPONENTS,
        &[
            "floor.thickness: at least 5 in",
            "Concrete slabs:floor_or_roof_density: between 115 to 150 pcf",
            "Concrete slabs:floor_or_roof_depth: at most 3/2 in",
            "angle.gauge: nominal 22 gauge",
            "fastener.diameter: nominal 1/4 in",
            "fastener.embedment: at least 5/4 in",
            "fastener.spacing: at most 12 in",
            "packing.density: nominal 8 pcf",
            "board.layers: exactly 1 count if joint.width <= 4 in. and (\"Assembly 1\" and joint.rating = 2 hr)",
            "Blanket:blanket_drape_min: at least 2 in if joint.width <= 4 in. and (\"Assembly 1\" and joint.rating = 2 hr)",
            "board.layers: exactly 2 count if joint.width <= 4 in. and (\"Assembly 2\" and joint.rating = 3 hr)",
            "Blanket:blanket_drape_min: at least 2 in if joint.width <= 4 in. and (\"Assembly 2\" and joint.rating = 3 hr)",
            "board.layers: exactly 2 count if joint.width from 4 in. to 8 in. and (\"Assembly 1\" and joint.rating = 2 hr)",
            "Blanket:blanket_drape_min: at least 3 in if joint.width from 4 in. to 8 in. and (\"Assembly 1\" and joint.rating = 2 hr)",
            "board.layers: exactly 3 count if joint.width from 4 in. to 8 in. and (\"Assembly 2\" and joint.rating = 3 hr)",
            "Blanket:blanket_drape_min: at least 3 in if joint.width from 4 in. to 8 in. and (\"Assembly 2\" and joint.rating = 3 hr)",
            "sealant.bead_diameter: at least 3/8 in",
        ],
    );
}
