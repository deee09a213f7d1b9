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
    let mut content = Content::new();
    draw(&mut content);
    document(vec![content], more)
}

/// A PDF of two pages.
#[allow(dead_code, reason = "each test file uses some of it")]
pub(crate) fn two_pages(first: fn(&mut Content), second: fn(&mut Content)) -> Vec<u8> {
    let contents = [first, second].map(|draw| {
        let mut content = Content::new();
        draw(&mut content);
        content
    });
    document(contents.into(), |_| {})
}

/// A PDF of pages, with something done to the first of them.
fn document(
    contents: Vec<Content>,
    more: impl FnOnce(&mut pdf_writer::writers::Page<'_>),
) -> Vec<u8> {
    let [catalog, tree, face, image, form] = [1, 2, 5, 6, 7].map(Ref::new);
    let mut pdf = Pdf::new();
    pdf.catalog(catalog).pages(tree);
    let pages: Vec<(Ref, Ref, Content)> = (100..)
        .step_by(2)
        .zip(contents)
        .map(|(name, content)| (Ref::new(name), Ref::new(name + 1), content))
        .collect();
    pdf.pages(tree)
        .kids(pages.iter().map(|(page, ..)| *page))
        .count(i32::try_from(pages.len()).unwrap_or_default());
    let mut more = Some(more);
    for (page, stream, content) in pages {
        let mut written = pdf.page(page);
        written
            .media_box(Rect::new(0.0, 0.0, PAGE.0, PAGE.1))
            .parent(tree)
            .contents(stream);
        let mut resources = written.resources();
        resources.fonts().pair(Name(b"F"), face);
        resources
            .x_objects()
            .pair(Name(b"Im"), image)
            .pair(Name(b"Fm"), form);
        resources.finish();
        if let Some(more) = more.take() {
            more(&mut written);
        }
        written.finish();
        pdf.stream(stream, &content.finish());
    }
    pdf.type1_font(face)
        .base_font(Name(b"Helvetica"))
        .encoding_predefined(Name(b"WinAnsiEncoding"));
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
