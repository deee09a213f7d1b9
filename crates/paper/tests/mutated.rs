//! Files with bytes changed or cut off give a text or an error, never a panic, and soon.

#![allow(missing_docs, reason = "a test")]

use proptest::prelude::*;

const FILES: [&[u8]; 4] = [
    include_bytes!("../../everyclause/demo/pdf/ff-d-1102.pdf"),
    include_bytes!("../../everyclause/demo/pdf/hw-d-0412-ed4.pdf"),
    include_bytes!("../../everyclause/demo/pdf/ww-d-1017.pdf"),
    include_bytes!("sample.pdf"),
];

fn holds(bytes: &[u8]) {
    if let Ok(paper) = paper::read(bytes) {
        for note in &paper.notes {
            assert!((1..=paper.pages.len()).contains(&note.place.page));
        }
        assert!(
            paper
                .text
                .chars()
                .all(|c| !c.is_control() || matches!(c, '\n' | '\u{c}'))
        );
        for at in 0..paper.text.len() {
            assert!(paper.place_at(at).is_some());
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: cases(), ..ProptestConfig::default() })]

    #[test]
    fn changed_bytes(file in 0..FILES.len(), changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..40)) {
        let mut bytes = FILES[file].to_vec();
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        holds(&bytes);
    }

    #[test]
    fn cut_short(file in 0..FILES.len(), at in any::<prop::sample::Index>()) {
        let bytes = FILES[file];
        holds(&bytes[..at.index(bytes.len())]);
    }

    #[test]
    fn a_part_repeated(file in 0..FILES.len(), from in any::<prop::sample::Index>(), length in 1..600_usize, to in any::<prop::sample::Index>()) {
        let bytes = FILES[file];
        let from = from.index(bytes.len());
        let part = &bytes[from..(from + length).min(bytes.len())];
        let at = to.index(bytes.len());
        let changed = [&bytes[..at], part, &bytes[at..]].concat();
        holds(&changed);
    }

    /// The operations of a page, unpacked, with words swapped: what packing would hide from changed bytes.
    #[test]
    fn changed_operations(changes in prop::collection::vec((any::<prop::sample::Index>(), prop::sample::select(WORDS)), 1..12)) {
        let mut operations: Vec<&[u8]> = OPERATIONS.split(|byte| *byte == b' ').collect();
        for (at, word) in changes {
            let at = at.index(operations.len());
            operations[at] = word;
        }
        let content = operations.join(&b' ');
        let head = format!("%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 600 800]/Resources<</Font<</F 5 0 R>>>>/Contents 4 0 R>>endobj\n5 0 obj<</Type/Font/Subtype/Type1/BaseFont/Times-Roman>>endobj\n4 0 obj<</Length {}>>stream\n", content.len());
        let file = [head.as_bytes(), &content, b"\nendstream endobj\ntrailer<</Root 1 0 R>>\n"].concat();
        holds(&file);
    }
}

const OPERATIONS: &[u8] = b"q 1 0 0 1 0 0 cm BT /F 12 Tf 60 700 Td (Min 4) Tj 0 -14 Td [(in.) -300 (deep)] TJ T* 2 Ts (3) Tj ET 10 10 m 300 10 l S 20 20 40 60 re f 10 400 m 30 500 90 600 200 430 c S BT 1 0 0 1 60 500 Tm 14 TL (a) ' /Span <</ActualText(b)>> BDC (c) Tj EMC ET Q";
const WORDS: &[&[u8]] = &[
    b"0",
    b"-1",
    b"1e30",
    b"99999999999999999999",
    b"0.0000001",
    b"q",
    b"Q",
    b"cm",
    b"BT",
    b"ET",
    b"Tf",
    b"Td",
    b"Tj",
    b"TJ",
    b"Tm",
    b"(x)",
    b"[]",
    b"<<>>",
    b"<FF00>",
    b"/F",
    b"/G",
    b"BDC",
    b"EMC",
    b"Do",
    b"re",
    b"S",
    b"f",
    b"BI",
    b"ID",
    b"EI",
    b"Tz",
    b"-90",
];

/// As many cases as `PAPER_MUTATIONS` asks for, else a few.
fn cases() -> u32 {
    std::env::var("PAPER_MUTATIONS")
        .ok()
        .and_then(|count| count.parse().ok())
        .unwrap_or(150)
}
