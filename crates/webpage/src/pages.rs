//! Where the clauses stand on the pages of a PDF.

use listing::{Reading, Span};
use maud::{Markup, html};
use paper::{PagePlace, Paper};

/// Millimetres to a point, 1/72 in.
const MM_PER_POINT: f64 = 25.4 / 72.0;

/// Where a stretch begins on its page.
pub(crate) fn place(paper: &Paper, span: Span) -> Option<PagePlace> {
    paper.places(span.start(), span.end()).into_iter().next()
}

/// A place on a page: `page 2, 25 mm from the left and 120 mm from the top`.
pub(crate) fn in_words(place: PagePlace) -> String {
    format!(
        "page {}, {:.0} mm from the left and {:.0} mm from the top",
        place.page,
        place.rect.x0 * MM_PER_POINT,
        place.rect.y0 * MM_PER_POINT
    )
}

/// Each page in outline, with the place of every clause on it.
pub(crate) fn outlines(paper: &Paper, reading: &Reading) -> Markup {
    let mut on_page: Vec<Vec<(usize, PagePlace)>> = vec![Vec::new(); paper.pages.len()];
    for (index, clause) in reading.clauses.iter().enumerate() {
        for place in paper.places(clause.span.start(), clause.span.end()) {
            let page = place.page.checked_sub(1);
            if let Some(places) = page.and_then(|page| on_page.get_mut(page)) {
                places.push((index, place));
            }
        }
    }
    html! {
        details.pages {
            summary { "Where the clauses stand on the pages" }
            div.outlines {
                @for (page, (size, places)) in paper.pages.iter().zip(on_page).enumerate() {
                    figure {
                        svg viewBox={ "0 0 " (size.width) " " (size.height) } aria-hidden="true" {
                            rect.leaf width=(size.width) height=(size.height) {}
                            @for (index, PagePlace { rect, .. }) in places {
                                a href={ "#c" (index) } tabindex="-1" {
                                    rect.spot data-lit=(index) x=(rect.x0) y=(rect.y0)
                                        width=(rect.width()) height=(rect.height()) {}
                                }
                            }
                        }
                        figcaption { "page " (page + 1) }
                    }
                }
            }
        }
    }
}
