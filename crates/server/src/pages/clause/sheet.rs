//! A page of a listing that is a PDF: its text at its places, with a clause marked. Not a picture of the page: what isn't text doesn't
//! stand on it.

use std::sync::Arc;

use axum::extract::{Path, Query, State};
use listing::{Clause, Status};
use maud::{Markup, html};
use paper::{PagePlace, Paper, Rect};
use serde::Deserialize;
use shelf::Document;

use crate::desk::Desk;
use crate::listings::working;
use crate::pages::{layout, piece, reading};
use crate::person::Person;
use crate::trouble::Trouble;

#[derive(Debug, Deserialize)]
pub(crate) struct Asked {
    /// The clause that is marked.
    #[serde(default)]
    clause: String,
}

/// The page on which a clause begins, so that a link needn't know.
pub(crate) async fn of_clause(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Path((file, id)): Path<(String, String)>,
) -> Result<Markup, Trouble> {
    let drawn = Drawn::of(&desk, &file).await?;
    let clause = drawn
        .read
        .state
        .clauses
        .iter()
        .find(|clause| clause.id == id);
    let page = clause
        .and_then(|clause| drawn.places(clause).first().map(|place| place.page))
        .unwrap_or(1);
    Ok(drawn.page(&person, page, &id))
}

pub(crate) async fn page(
    State(desk): State<Arc<Desk>>,
    person: Person,
    Path((file, page)): Path<(String, usize)>,
    Query(asked): Query<Asked>,
) -> Result<Markup, Trouble> {
    let drawn = Drawn::of(&desk, &file).await?;
    if page == 0 || page > drawn.paper.pages.len() {
        return Err(Trouble::Unknown(format!("{file} has no page {page}.")));
    }
    Ok(drawn.page(&person, page, &asked.clause))
}

/// A listing with its pages.
struct Drawn {
    read: Arc<crate::listings::Read>,
    paper: Paper,
}

impl Drawn {
    async fn of(desk: &Desk, file: &str) -> Result<Self, Trouble> {
        let read = super::read(desk, file).await?;
        let bytes = desk
            .store
            .attachment(&read.unconfirmed.source.sha256)
            .await?;
        let name = file.to_owned();
        let document = working(move || Document::read(&name, &bytes)).await?;
        let paper = document.ok().and_then(|document| document.paper);
        let paper = paper.ok_or_else(|| {
            Trouble::Unknown(format!("{file} is plain text: it has no pages to show."))
        })?;
        Ok(Self { read, paper })
    }

    fn places(&self, clause: &Clause) -> Vec<PagePlace> {
        self.paper.places(clause.span.start(), clause.span.end())
    }

    fn page(&self, person: &Person, page: usize, marked: &str) -> Markup {
        let file = &self.read.file;
        let clause = self
            .read
            .state
            .clauses
            .iter()
            .find(|clause| clause.id == marked);
        let title = format!("Page {page} of {file}");
        let at = |page: usize| {
            format!(
                "/listings/{}/pages/{page}?clause={}",
                piece(file),
                piece(marked)
            )
        };
        let body = html! {
            h1 { (title) }
            p { a href={ "/listings/" (piece(file)) @if clause.is_some() { "#" (reading::anchor(marked)) } } { "Back to the reading" } }
            p {
                "This is the page's text, each word where it stands on the page. Pictures, rules and lettering within figures aren't shown: "
                "the document itself is what counts."
            }
            @if let Some(clause) = clause {
                p { "Marked: " strong { (clause.id) } ", " (wording::clause::subject(clause)) ": " (super::asks(clause)) }
            }
            nav.act aria-label="Pages" {
                @for other in 1..=self.paper.pages.len() {
                    @if other == page { strong aria-current="page" { (other) } } @else { a href=(at(other)) { "Page " (other) } }
                    " "
                }
            }
            (self.drawing(page, clause))
        };
        layout::page(person, &title, "/listings", &body)
    }

    fn drawing(&self, page: usize, marked: Option<&Clause>) -> Markup {
        let size = self.paper.pages.get(page.saturating_sub(1));
        let (width, height) = size.map_or((612.0, 792.0), |size| (size.width, size.height));
        let rects = |clause: &Clause| -> Vec<Rect> {
            let places = self.places(clause).into_iter();
            places
                .filter(|place| place.page == page)
                .map(|place| place.rect)
                .collect()
        };
        html! {
            div.sheet tabindex="0" role="region" aria-label={ "Text of page " (page) } {
                svg viewBox={ "0 0 " (width) " " (height) } role="img" aria-label={ "Page " (page) ", its words where they stand" @if let Some(clause) = marked { ", " (clause.id) " marked" } } {
                    @for clause in self.read.state.clauses.iter().filter(|clause| clause.status == Status::Draft) {
                        @for rect in rects(clause) { (frame(rect, "draft")) }
                    }
                    @if let Some(clause) = marked { @for rect in rects(clause) { (frame(rect, "marked")) } }
                    @for (words, rect) in self.words(page) {
                        text x=(rect.x0) y=(rect.y1 - rect.height() * 0.2) font-size=(size_of(rect)) textLength=(rect.width()) lengthAdjust="spacingAndGlyphs" { (words) }
                    }
                }
            }
        }
    }

    /// The words of a page, each with its place.
    fn words(&self, page: usize) -> Vec<(&str, Rect)> {
        let text = &self.paper.text;
        let mut words = Vec::new();
        for word in text.split_whitespace() {
            let start = word.as_ptr() as usize - text.as_ptr() as usize;
            for place in self.paper.places(start, start + word.len()) {
                if place.page == page && place.rect.width() > 0.0 {
                    words.push((word, place.rect));
                }
            }
        }
        words
    }
}

fn frame(rect: Rect, class: &str) -> Markup {
    html! {
        rect.(class) x=(rect.x0 - 1.0) y=(rect.y0 - 1.0) width=(rect.width() + 2.0) height=(rect.height() + 2.0) {}
    }
}

/// A size of letters that fits a rectangle of a line.
fn size_of(rect: Rect) -> f64 {
    (rect.height() * 0.85).max(3.0)
}
