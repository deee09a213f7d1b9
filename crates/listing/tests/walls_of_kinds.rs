//! Kinds of walls and floors as cases: two materials with a number each, sentences that open with a kind of wall, and walls of so many layers.

mod common;

use common::check;

#[test]
fn walls_of_two_materials_have_a_number_each() {
    // "Or" with a comma, a sort of block, and a limit in several words.
    check(
        "1. Wall - Concrete, min. 140 mm thick, or concrete block, min. 190 mm nominal thickness with cells filled.\n",
        &[
            "wall.thickness: at least 140 mm if \"Concrete\"",
            "wall.thickness: at least 190 mm if \"block\"",
        ],
    );
    check(
        "1. Wall - Concrete min. 5 in. thick, or block, nominal 8 in. thick.\n",
        &[
            "wall.thickness: at least 5 in if \"Concrete\"",
            "wall.thickness: nominal 8 in if \"block\"",
        ],
    );
    check(
        "1. Wall - Concrete, not less than 6 in. thick, or clay brick (solid units), not less than 8 in. thick.\n",
        &[
            "wall.thickness: at least 6 in if \"Concrete\"",
            "wall.thickness: at least 8 in if \"brick\"",
        ],
    );
}

#[test]
fn what_is_of_both_or_measures_another_thing_is_asked_always() {
    check(
        "1. Wall - Concrete or block, min 8 in. thick.\n",
        &["concrete.thickness: at least 8 in"],
    );
    check(
        "1. Wall - Concrete, min 6 in. thick, or block, min 4 in. wide.\n",
        &[
            "concrete.thickness: at least 6 in",
            "1:concrete_width: at least 4 in",
        ],
    );
    check(
        "1. Wall - Concrete, min 6 in. thick, and block, min 8 in. thick.\n",
        &[
            "concrete.thickness: at least 6 in",
            "concrete.thickness: at least 8 in",
        ],
    );
}

#[test]
fn a_sentence_may_open_with_the_kind_of_wall_or_floor() {
    check(
        "1. Joint width - Not more than 3 in. With block walls, not more than 2 in.\n",
        &[
            "joint.width: at most 3 in",
            "joint.width: at most 2 in if \"With block walls\"",
        ],
    );
    check(
        "1. Coating - Lap min 1/2 in. On hollow core plank go a full 2 in. onto the deck.\n",
        &[
            "coating.overlap: at least 1/2 in",
            "coating.overlap_deck: nominal 2 in if \"On hollow core plank\"",
        ],
    );
    check(
        "1. Joint width - With hollow-core slabs the joint width is limited to 100 mm.\n",
        &["joint.width: at most 100 mm if \"With hollow-core slabs\""],
    );
    check(
        "1. Joint width - With the block wall, max 2 in. wide.\n",
        &["1:block_wall_width: at most 2 in"],
    );
}

#[test]
fn walls_of_so_many_layers() {
    check(
        "1. Board - For two-layer walls the joints in the outer layer are offset at least 300 mm.\n",
        &["board.joint_offset: at least 300 mm if \"For two-layer walls\""],
    );
    check(
        "1. Board - With one to three layers the board is 5/8 in. thick. With four layers it is 1/2 in. thick.\n",
        &[
            "board.thickness: nominal 5/8 in if \"With one to three layers\"",
            "board.thickness: nominal 1/2 in if \"With four layers\"",
        ],
    );
    check(
        "1. Board - Two layers, 5/8 in. thick.\n",
        &[
            "board.layers: exactly 2 count",
            "board.thickness: nominal 5/8 in",
        ],
    );
}

#[test]
fn what_is_not_otherwise_needed() {
    check(
        "1. Wall - Concrete, min 6 in. thick.\n2. Retaining wire (for overhead or battered joints; not otherwise needed): 16 gauge annealed steel, anchored each 6 in.\n",
        &[
            "concrete.thickness: at least 6 in",
            "2:joints_not_otherwise_needed_annealed: nominal 16 gauge if \"for overhead or battered joints\"",
            "2:joints_steel_anchored_each: nominal 6 in if \"for overhead or battered joints\"",
        ],
    );
    check(
        "1. Wall - Concrete, min 6 in. thick.\n2. Retaining wire (for overhead or battered joints; as drawn): 16 gauge annealed steel.\n",
        &[
            "concrete.thickness: at least 6 in",
            "2:retaining_wire_for_overhead_annealed: nominal 16 gauge",
        ],
    );
}
