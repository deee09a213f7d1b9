//! Pages read to text.

#![allow(missing_docs, reason = "a benchmark")]

use divan::counter::ItemsCount;
use divan::{Bencher, black_box};

fn main() {
    divan::main();
}

const FILES: [(&str, &[u8]); 4] = [
    (
        "table",
        include_bytes!("../../everyclause/demo/pdf/ff-d-1102.pdf"),
    ),
    (
        "head and foot",
        include_bytes!("../../everyclause/demo/pdf/hw-d-0412-ed4.pdf"),
    ),
    (
        "built fractions",
        include_bytes!("../../everyclause/demo/pdf/ww-d-1017.pdf"),
    ),
    ("subset faces", include_bytes!("../tests/sample.pdf")),
];

#[divan::bench(args = FILES.map(|(name, _)| name))]
fn pages(bencher: Bencher<'_, '_>, name: &str) {
    let bytes = FILES
        .iter()
        .find(|(held, _)| *held == name)
        .map_or(&[][..], |(_, bytes)| bytes);
    let count = paper::read(bytes).map_or(0, |paper| paper.pages.len());
    bencher
        .counter(ItemsCount::new(count))
        .bench(|| paper::read(black_box(bytes)));
}
