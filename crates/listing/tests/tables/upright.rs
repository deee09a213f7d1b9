//! Tables that lie on their side, a case in each column.

use crate::check;

#[test]
fn a_table_on_its_side_is_read_by_its_columns() {
    check(
        "1. Packing. As follows:\n\n\
         Hours: | 1 | 2\n\
         Depth, min (in.): | 3 | 5\n\
         Compression (%): | 25 | --\n",
        &[
            "packing.depth: at least 3 in. [Hours: 1]",
            "packing.depth: at least 5 in. [Hours: 2]",
            "packing.compression: nominal 25 % [Hours: 1]",
        ],
    );
    check(
        "1. Packing. As follows:\n\n\
         Joint width, mm | up to 25 | 25 to 50 | over 50\n\
         Depth, mm min | 75 | 100 | 125\n",
        &[
            "packing.depth: at least 75 mm [Joint width, mm: up to 25]",
            "packing.depth: at least 100 mm [Joint width, mm: 25 to 50]",
            "packing.depth: at least 125 mm [Joint width, mm: over 50]",
        ],
    );
}

#[test]
fn a_table_that_stands_is_read_as_it_stands() {
    check(
        "1. Packing. As follows:\n\n\
         Joint width, mm | Depth, mm min | Density, kg/m3 min\n\
         up to 25 | 75 | 60\n\
         25 to 50 | 100 | 80\n",
        &[
            "packing.depth: at least 75 mm [Joint width, mm: up to 25]",
            "packing.density: at least 60 kg/m³ [Joint width, mm: up to 25]",
            "packing.depth: at least 100 mm [Joint width, mm: 25 to 50]",
            "packing.density: at least 80 kg/m³ [Joint width, mm: 25 to 50]",
        ],
    );
}
