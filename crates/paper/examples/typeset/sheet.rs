//! Pages written as a PDF.

use pdf_writer::{Content, Finish, Name, Pdf, Rect, Ref, Str};

use crate::face::encoded;
use crate::layout::{Manner, Mark, SHEET};

/// A PDF of pages.
pub(crate) fn pdf(pages: &[Vec<Mark>], manner: Manner) -> Vec<u8> {
    let mut next = 0;
    let mut new = || {
        next += 1;
        Ref::new(next)
    };
    let (catalog, tree, face) = (new(), new(), new());
    let ids: Vec<(Ref, Ref)> = pages.iter().map(|_| (new(), new())).collect();
    let mut pdf = Pdf::new();
    pdf.catalog(catalog).pages(tree);
    pdf.pages(tree)
        .kids(ids.iter().map(|(page, _)| *page))
        .count(i32::try_from(pages.len()).unwrap_or(i32::MAX));
    pdf.type1_font(face)
        .base_font(Name(manner.face().name()))
        .encoding_predefined(Name(b"WinAnsiEncoding"));
    for ((page, content), marks) in ids.into_iter().zip(pages) {
        let (width, height) = (short(SHEET.0), short(SHEET.1));
        let mut written = pdf.page(page);
        written
            .media_box(Rect::new(0.0, 0.0, width, height))
            .parent(tree)
            .contents(content);
        written.resources().fonts().pair(Name(b"F"), face);
        written.finish();
        let drawn = drawn(marks);
        let packed = miniz_oxide::deflate::compress_to_vec_zlib(&drawn, 9);
        pdf.stream(content, &packed)
            .filter(pdf_writer::Filter::FlateDecode);
    }
    pdf.finish()
}

/// A length as the format has it.
#[expect(clippy::cast_possible_truncation, reason = "points on a sheet")]
const fn short(length: f64) -> f32 {
    length as f32
}

fn drawn(marks: &[Mark]) -> Vec<u8> {
    let mut content = Content::new();
    content.set_line_width(0.6);
    let height = SHEET.1;
    for mark in marks {
        match mark {
            Mark::Words { text, x, y, size } => {
                content.begin_text();
                content.set_font(Name(b"F"), short(*size));
                content.next_line(short(*x), short(height - y));
                content.show(Str(&encoded(text)));
                content.end_text();
            }
            Mark::Rule { x0, x1, y } => {
                content.move_to(short(*x0), short(height - y));
                content.line_to(short(*x1), short(height - y));
                content.stroke();
            }
        }
    }
    content.finish().into_vec()
}
