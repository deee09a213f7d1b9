//! How fast listings are read. `cargo bench -p everyclause-listing`

use divan::counter::BytesCount;

fn main() {
    divan::main();
}

/// A document, and the same many times over.
fn document(repeats: usize) -> String {
    let one = include_str!("../tests/documents/a1-inch-fluted.txt");
    one.repeat(repeats)
}

#[divan::bench(args = [1, 10, 100])]
fn read(bencher: divan::Bencher<'_, '_>, repeats: usize) {
    let text = document(repeats);
    bencher
        .counter(BytesCount::of_str(text.as_str()))
        .bench(|| listing::read_text("bench", divan::black_box(&text)));
}

/// A megabyte without a line break, a stop or a blank: the worst that a broken export gives.
#[divan::bench]
fn one_long_line(bencher: divan::Bencher<'_, '_>) {
    let text = "min 4 in. (102 mm) deep, ".repeat(40_000);
    bencher
        .counter(BytesCount::of_str(text.as_str()))
        .bench(|| listing::read_text("bench", divan::black_box(&text)));
}

/// A megabyte of one thing over and over: rules, boxes, numbers, references. None may take longer than others by more than what it says.
#[divan::bench(args = [
    "-----\n",
    "| 1 in. | 2 hr | min |\n",
    "1. A\n",
    "1 to 2 to 3 to ",
    "for 2 hr rating, ",
    "      1          in.        2 hr\n",
    "Items 1, 2, 3 and 4 and ",
    "((((1 in. ",
])]
fn over_and_over(bencher: divan::Bencher<'_, '_>, piece: &str) {
    let text = piece.repeat(1_000_000 / piece.len());
    bencher
        .counter(BytesCount::of_str(text.as_str()))
        .bench(|| listing::read_text("bench", divan::black_box(&text)));
}
