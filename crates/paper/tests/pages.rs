//! What a page shows, as text: each test a small PDF made for one question.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    missing_docs,
    reason = "in a test a failed expectation is the point"
)]

mod support;

use paper::{NoteKind, Paper, PaperError, read};
use pdf_writer::{Content, Name};
use support::{page, page_with, picture, two_pages, words};

fn of(pdf: &[u8]) -> Paper {
    read(pdf).unwrap()
}

fn kinds(paper: &Paper) -> Vec<NoteKind> {
    paper.notes.iter().map(|note| note.kind).collect()
}

/// Text with some of it raised or lowered: pieces with their rise and size, set one after the other in Helvetica, whose figures are
/// 0.556 of the size wide, as its metrics have it.
fn raised(content: &mut Content, start: f32, pieces: &[(&str, f32, f32, f32)]) {
    let mut x = start;
    for (text, rise, size, width) in pieces {
        words(content, text.as_bytes(), x, 100.0 - rise, *size);
        x += width * size;
    }
}

#[test]
fn a_built_fraction_is_parted_from_its_whole_number() {
    let figure = 0.556;
    let paper = of(&page(|content| {
        raised(
            content,
            60.0,
            &[
                ("min 2", 0.0, 12.0, 2.39),
                ("1", 4.0, 7.0, figure),
                ("/", 0.0, 12.0, 0.278),
                ("2", -1.0, 7.0, figure),
                (" in. deep", 0.0, 12.0, 4.0),
            ],
        );
    }));
    assert_eq!(paper.text, "min 2 1/2 in. deep\n");
}

/// Figures lowered by half their size, as some writers do, come near the line below; they are none of its raised ones.
#[test]
fn a_fraction_above_another_stays_in_its_line() {
    let paper = of(&page(|content| {
        for y in [100.0, 112.0] {
            words(content, b"Min 2", 60.0, y, 10.0);
            words(content, b"1", 60.0 + 29.5, y - 5.0, 6.0);
            words(content, b"/", 60.0 + 33.0, y, 10.0);
            words(content, b"2", 60.0 + 36.0, y + 5.0, 6.0);
            words(content, b"in. deep", 60.0 + 43.0, y, 10.0);
        }
    }));
    assert_eq!(paper.text, "Min 2 1/2 in. deep\nMin 2 1/2 in. deep\n");
}

#[test]
fn powers_and_marks_of_footnotes_are_told_apart() {
    let paper = of(&page(|content| {
        raised(
            content,
            60.0,
            &[("64 kg/m", 0.0, 12.0, 3.726), ("3", 4.0, 7.0, 0.556)],
        );
        raised(
            content,
            200.0,
            &[
                ("board", 0.0, 12.0, 2.557),
                ("1", 4.0, 7.0, 0.556),
                (" thick", 0.0, 12.0, 2.0),
            ],
        );
        raised(
            content,
            400.0,
            &[("4", 0.0, 12.0, 0.556), ("1", 4.0, 7.0, 0.556)],
        );
    }));
    let evened: Vec<&str> = paper.text.split_whitespace().collect();
    // A raised figure never makes 41 of 4.
    assert_eq!(evened, ["64", "kg/m³", "board", "[1]", "thick", "4¹"]);
    assert_eq!(kinds(&paper), [NoteKind::RaisedAfterNumber]);
}

#[test]
fn a_turned_page_reads_as_it_is_seen() {
    // /Rotate 90: what runs up the sheet is level on the screen (ISO 32000-1, table 30).
    let draw = |content: &mut Content| {
        content.begin_text();
        content.set_font(Name(b"F"), 12.0);
        content.set_text_matrix([0.0, 1.0, -1.0, 0.0, 100.0, 60.0]);
        content.show(pdf_writer::Str(b"Min 4 in. deep"));
        content.end_text();
    };
    let turned = of(&page_with(draw, |page| {
        page.rotate(90);
    }));
    assert_eq!(turned.text, "Min 4 in. deep\n");
    assert!(turned.notes.is_empty());
    let place = turned.places(0, 3)[0];
    assert!(place.rect.width() > place.rect.height(), "{place:?}");
    assert!((turned.pages[0].width - 800.0).abs() < 0.01);
    // The same without /Rotate still reads, along its own lines.
    assert_eq!(of(&page(draw)).text, "Min 4 in. deep\n");
}

#[test]
fn text_that_runs_across_the_page_is_read_and_noted() {
    let paper = of(&page(|content| {
        words(content, b"1. Packing - Min 4 in. deep.", 60.0, 100.0, 12.0);
        content.begin_text();
        content.set_font(Name(b"F"), 12.0);
        content.set_text_matrix([0.0, 1.0, -1.0, 0.0, 500.0, 300.0]);
        content.show(pdf_writer::Str(b"Uncontrolled"));
        content.end_text();
    }));
    assert_eq!(paper.text, "1. Packing - Min 4 in. deep.\n\nUncontrolled\n");
    assert_eq!(kinds(&paper), [NoteKind::Turned]);
}

#[test]
fn a_scan_is_said_to_be_one() {
    let whole = |content: &mut Content| picture(content, 0.0, 0.0, 600.0, 800.0);
    assert_eq!(read(&page(whole)), Err(PaperError::NoText { pages: 1 }));
    let stamped = of(&page(|content| {
        whole(content);
        words(content, b"Received", 60.0, 780.0, 10.0);
    }));
    assert_eq!(kinds(&stamped), [NoteKind::Scanned]);
    assert!(
        stamped.text.contains("its text must be supplied"),
        "{}",
        stamped.text
    );
}

/// A scan may leave broad margins: what a page holds nothing beside is the page.
#[test]
fn a_page_of_nothing_but_a_picture_is_one() {
    let text =
        |content: &mut Content| words(content, b"1. Floor - Min 4 in. thick.", 60.0, 100.0, 12.0);
    let second = |content: &mut Content| picture(content, 150.0, 200.0, 300.0, 400.0);
    let paper = of(&two_pages(text, second));
    assert_eq!(kinds(&paper), [NoteKind::Scanned]);
    assert_eq!(paper.pictures(), [2]);
    let both = |content: &mut Content| {
        words(content, b"Figure 1", 60.0, 100.0, 12.0);
        picture(content, 150.0, 200.0, 300.0, 400.0);
    };
    let paper = of(&two_pages(text, both));
    assert_eq!(kinds(&paper), [NoteKind::Figure]);
    assert!(paper.pictures().is_empty());
}

#[test]
fn text_behind_a_scan_is_noted() {
    let paper = of(&page(|content| {
        picture(content, 0.0, 0.0, 600.0, 800.0);
        content.set_text_rendering_mode(pdf_writer::types::TextRenderingMode::Invisible);
        words(content, b"1. Packing - Min 4 in. deep.", 60.0, 100.0, 12.0);
    }));
    assert_eq!(paper.text, "1. Packing - Min 4 in. deep.\n");
    assert_eq!(kinds(&paper), [NoteKind::BehindScan]);
}

#[test]
fn a_figure_has_a_line_and_a_place_and_its_lettering_a_note() {
    let paper = of(&page(|content| {
        words(content, b"1. Packing - Min 4 in. deep.", 60.0, 100.0, 12.0);
        picture(content, 60.0, 150.0, 200.0, 100.0);
        words(content, b"3A", 100.0, 200.0, 8.0);
        words(content, b"2. Coating - Min 1 in. wide.", 60.0, 300.0, 12.0);
    }));
    let lines: Vec<&str> = paper.text.lines().filter(|line| !line.is_empty()).collect();
    assert_eq!(
        lines,
        [
            "1. Packing - Min 4 in. deep.",
            "[Figure: to be looked at on the page.]",
            "2. Coating - Min 1 in. wide."
        ]
    );
    assert_eq!(kinds(&paper), [NoteKind::Figure, NoteKind::Lettering]);
    assert!(paper.notes[1].words.ends_with("3A"));
    let at = paper.text.find("[Figure").unwrap();
    let place = paper.places(at, at + 7)[0];
    assert!((place.rect.y0 - 150.0).abs() < 0.1 && (place.rect.x1 - 260.0).abs() < 0.1);
}

/// A frame with round corners around text is no figure, and its text no lettering.
#[test]
fn text_in_a_round_frame_is_read() {
    let paper = of(&page(|content| {
        content.move_to(50.0, 650.0);
        content.cubic_to(40.0, 650.0, 40.0, 720.0, 50.0, 720.0);
        content.line_to(300.0, 720.0);
        content.cubic_to(310.0, 720.0, 310.0, 650.0, 300.0, 650.0);
        content.close_path();
        content.stroke();
        words(content, b"Min 4 in. deep", 60.0, 100.0, 12.0);
    }));
    assert_eq!(paper.text, "Min 4 in. deep\n");
}

#[test]
fn a_table_keeps_its_columns() {
    let paper = of(&page(|content| {
        for (cells, y) in [
            (["Rating", "Depth", "Layers"], 100.0),
            (["1 h", "min 13 mm (1/2 in.)", "1"], 114.0),
            (["2 h", "min 22 mm", "2"], 128.0),
        ] {
            for (cell, x) in cells.iter().zip([60.0, 150.0, 300.0]) {
                words(content, cell.as_bytes(), x, y, 11.0);
            }
        }
    }));
    let lines: Vec<&str> = paper.text.lines().collect();
    for (line, (second, third)) in
        lines
            .iter()
            .zip([("Depth", "Layers"), ("min 13", "1"), ("min 22", "2")])
    {
        assert_eq!(line.find(second), lines[0].find("Depth"), "{}", paper.text);
        assert_eq!(line.rfind(third), lines[0].find("Layers"), "{}", paper.text);
    }
}

/// Cells between rules, one of two lines, the one beside it set at half their height: written as a typist would.
#[test]
fn a_framed_table_has_uprights_and_cells_from_the_top() {
    let paper = of(&page(|content| {
        for y in [85.0, 105.0, 135.0] {
            content.move_to(60.0, support::PAGE.1 - y);
            content.line_to(300.0, support::PAGE.1 - y);
            content.stroke();
        }
        for x in [60.0, 120.0, 300.0] {
            content.move_to(x, support::PAGE.1 - 85.0);
            content.line_to(x, support::PAGE.1 - 135.0);
            content.stroke();
        }
        words(content, b"Rating", 65.0, 100.0, 10.0);
        words(content, b"Depth", 125.0, 100.0, 10.0);
        words(content, b"1 h", 65.0, 123.0, 10.0);
        words(content, b"min 13 mm", 125.0, 117.0, 10.0);
        words(content, b"of wool", 125.0, 129.0, 10.0);
    }));
    let cells: Vec<Vec<&str>> = paper
        .text
        .lines()
        .filter(|line| !line.contains("--"))
        .map(|line| line.split('|').map(str::trim).collect())
        .collect();
    assert_eq!(
        cells,
        [
            ["", "Rating", "Depth", ""],
            ["", "1 h", "min 13 mm", ""],
            ["", "", "of wool", ""]
        ],
        "{}",
        paper.text
    );
    assert_eq!(paper.text.matches("--\n").count(), 3);
}

#[test]
fn columns_of_running_text_are_read_one_after_the_other() {
    let paper = of(&page(|content| {
        for row in 0..8_u8 {
            let y = 100.0 + 14.0 * f32::from(row);
            words(
                content,
                format!("the packing on the left goes on {row}").as_bytes(),
                60.0,
                y,
                11.0,
            );
            words(
                content,
                format!("the coating on the right goes on {row}").as_bytes(),
                320.0,
                y,
                11.0,
            );
        }
    }));
    assert!(
        paper.text.find("left goes on 7").unwrap() < paper.text.find("right goes on 0").unwrap()
    );
    assert_eq!(kinds(&paper), [NoteKind::Columns]);
}

#[test]
fn what_lies_beyond_the_page_is_noted() {
    let paper = of(&page(|content| {
        words(content, b"Min 4 in. deep.", 60.0, 100.0, 12.0);
        words(content, b"Min 9 in. deep.", 60.0, 900.0, 12.0);
    }));
    assert_eq!(paper.text, "Min 4 in. deep.\n");
    assert_eq!(kinds(&paper), [NoteKind::Hidden]);
}

#[test]
fn drawings_that_draw_others_over_and_over_end() {
    let deep = read(&page(|content| {
        words(content, b"Min 4 in. deep.", 60.0, 100.0, 12.0);
        content.x_object(Name(b"Fm"));
    }));
    assert!(matches!(deep, Err(PaperError::TooMuch { .. })), "{deep:?}");
}

#[test]
fn what_is_no_pdf_is_said_to_be_none() {
    assert_eq!(read(b""), Err(PaperError::NotPdf));
    assert_eq!(read(b"1. Packing"), Err(PaperError::NotPdf));
    assert_eq!(read(b"%PDF-1.7\n"), Err(PaperError::Damaged));
}

/// A page set by a typesetter of another hand: subset faces, ligatures, broken words, a footnote, a table with narrow gaps, a drawing.
#[test]
fn a_typeset_page() {
    let paper = of(include_bytes!("sample.pdf"));
    for words in [
        "2200 to 2500 kg/m³ (137 to 156",
        "contamination. [1]",
        "affiliated\n  fluffy office finish is efficient",
        "[Figure: to be looked at on the page.]",
        "\n Rating  Depth of packing  Layers",
        "Page 1 of 2\u{c}Leskov",
    ] {
        assert!(
            paper.text.contains(words),
            "{words} isn't in\n{}",
            paper.text
        );
    }
    let row = |word: &str| {
        paper
            .text
            .lines()
            .find(|line| line.trim_start().starts_with(word))
            .unwrap()
    };
    assert_eq!(
        row("Rating").find("Depth"),
        row("1 h").find("min"),
        "{}",
        paper.text
    );
    assert_eq!(kinds(&paper), [NoteKind::Figure]);
}

/// Every byte has a page and a rectangle on it, and a word's places join into the word's own.
#[test]
fn every_byte_has_its_place() {
    let paper = of(include_bytes!("sample.pdf"));
    for (at, _) in paper.text.char_indices() {
        let place = paper.place_at(at).unwrap();
        let size = paper.pages[place.page - 1];
        assert!(
            place.rect.x0 <= place.rect.x1 && place.rect.y0 <= place.rect.y1,
            "{at} {place:?}"
        );
        assert!(
            place.rect.x1 <= size.width && place.rect.y1 <= size.height,
            "{at} {place:?}"
        );
    }
    assert_eq!(paper.place_at(paper.text.len()), None);
    let sealant = paper.text.find("Sealant").unwrap();
    assert_eq!(paper.places(sealant, sealant + 7)[0].page, 2);
}
