//! Small PDFs made for one question each.

#![allow(dead_code, reason = "each test file uses some of it")]

use pdf_writer::{Content, Finish, Name, Pdf, Rect, Ref, Str};

/// Width and height of the pages, in points.
pub(crate) const PAGE: (f32, f32) = (600.0, 800.0);

/// Words at a place: left end and base line from the upper left corner, and size.
pub(crate) fn words(content: &mut Content, text: &[u8], x: f32, y: f32, size: f32) {
    content.begin_text();
    content.set_font(Name(b"F"), size);
    content.next_line(x, PAGE.1 - y);
    content.show(Str(text));
    content.end_text();
}

/// A PDF of one page of Helvetica, and what else its makers want of it.
pub(crate) fn page(draw: impl FnOnce(&mut Content)) -> Vec<u8> {
    page_with(draw, |_| {})
}

/// The same with something done to the page: turned, say.
pub(crate) fn page_with(
    draw: impl FnOnce(&mut Content),
    more: impl FnOnce(&mut pdf_writer::writers::Page<'_>),
) -> Vec<u8> {
    let [catalog, tree, page, contents, face, image, form] = [1, 2, 3, 4, 5, 6, 7].map(Ref::new);
    let mut content = Content::new();
    draw(&mut content);
    let mut pdf = Pdf::new();
    pdf.catalog(catalog).pages(tree);
    pdf.pages(tree).kids([page]).count(1);
    let mut written = pdf.page(page);
    written
        .media_box(Rect::new(0.0, 0.0, PAGE.0, PAGE.1))
        .parent(tree)
        .contents(contents);
    let mut resources = written.resources();
    resources.fonts().pair(Name(b"F"), face);
    resources
        .x_objects()
        .pair(Name(b"Im"), image)
        .pair(Name(b"Fm"), form);
    resources.finish();
    more(&mut written);
    written.finish();
    pdf.type1_font(face)
        .base_font(Name(b"Helvetica"))
        .encoding_predefined(Name(b"WinAnsiEncoding"));
    pdf.stream(contents, &content.finish());
    let mut picture = pdf.image_xobject(image, &[0x80]);
    picture.width(1).height(1).bits_per_component(8);
    picture.color_space().device_gray();
    picture.finish();
    let again = b"q /Fm Do Q ".repeat(10);
    // Each draws the next ten times over: 10 to the power of 12 drawings, were there no limit.
    for depth in 7..20 {
        let mut own = pdf.form_xobject(Ref::new(depth), &again);
        own.bbox(Rect::new(0.0, 0.0, PAGE.0, PAGE.1));
        own.resources()
            .x_objects()
            .pair(Name(b"Fm"), Ref::new(depth + 1));
        own.finish();
    }
    pdf.finish()
}

/// Puts the picture over a rectangle of the page.
pub(crate) fn picture(content: &mut Content, x: f32, y: f32, width: f32, height: f32) {
    content.save_state();
    content.transform([width, 0.0, 0.0, height, x, PAGE.1 - y - height]);
    content.x_object(Name(b"Im"));
    content.restore_state();
}
