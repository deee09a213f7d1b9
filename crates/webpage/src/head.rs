//! What stands above the words: the head, what the bytes are, what there is to look at.

use listing::{Confidence, Reading};
use maud::{Markup, html};
use wording::head::{options, standing, stated};
use wording::text::{counted, on_one_line, shortened};

use crate::stretches::{Kind, Stretch};
use crate::{Marked, pages};

/// The most of a title that is shown, in characters; what isn't a listing may have no end of it.
const MOST_OF_A_TITLE: usize = 240;

/// What the page's tab and its heading say.
pub(crate) fn name(reading: &Reading) -> String {
    let header = &reading.header;
    let designation = on_one_line(&header.designation);
    let name = if designation.is_empty() {
        on_one_line(&reading.source.name)
    } else {
        designation
    };
    shortened(&name, MOST_OF_A_TITLE)
}

/// What the head of the listing states, and how firm the reading is.
pub(crate) fn head(marked: &Marked<'_>) -> Markup {
    let reading = marked.reading;
    let header = &reading.header;
    let source = format!(
        "{}, {}, {} bytes, SHA-256 {}",
        on_one_line(marked.file),
        counted(reading.source.pages, "page", "pages"),
        reading.source.bytes,
        reading.source.sha256
    );
    let about = [
        ("edition", on_one_line(&header.edition)),
        (
            "reading",
            standing(reading, marked.is_confirmed, marked.decisions),
        ),
    ]
    .into_iter()
    .chain(stated(header))
    .chain([("options", options(reading)), ("source", source)]);
    html! {
        header {
            h1 { (name(reading)) }
            p.title { (shortened(&on_one_line(&header.title), MOST_OF_A_TITLE)) }
            dl {
                @for (label, words) in about.filter(|(_, words)| !words.is_empty()) {
                    div { dt { (label) } dd { (words) } }
                }
            }
        }
    }
}

/// What every byte of the source is.
pub(crate) fn accounted(reading: &Reading, stretches: &[Stretch]) -> Markup {
    let bytes = |kind: Kind| -> usize {
        stretches
            .iter()
            .filter(|stretch| stretch.kind == kind)
            .map(|stretch| stretch.span.len())
            .sum()
    };
    let mut from = 0;
    let parts: Vec<(Kind, usize, usize)> = Kind::ALL
        .iter()
        .map(|kind| {
            let start = from;
            from += bytes(*kind);
            (*kind, start, bytes(*kind))
        })
        .collect();
    let accounted = reading.accounted;
    let words = if accounted.bytes == accounted.of {
        format!(
            "Every byte is accounted for: {} of {}.",
            accounted.bytes, accounted.of
        )
    } else {
        format!(
            "{} of {} bytes are accounted for.",
            accounted.bytes, accounted.of
        )
    };
    html! {
        section aria-labelledby="accounted" {
            h2 id="accounted" { "What the bytes are" }
            p { (words) }
            svg.bar viewBox={ "0 0 " (from.max(1)) " 10" } preserveAspectRatio="none" aria-hidden="true" {
                @for (kind, start, length) in &parts {
                    rect.(kind.class()) x=(start) width=(length) height="10" {}
                }
            }
            ul.key {
                @for (kind, _, length) in &parts {
                    li { span.swatch.(kind.class()) aria-hidden="true" {} span.(kind.class()) { (kind.words()) } " " b { (length) } }
                }
            }
        }
    }
}

/// What a person should look at, each with the way to its place.
pub(crate) fn to_look_at(marked: &Marked<'_>) -> Markup {
    let warnings = &marked.reading.warnings;
    let notes = marked.paper.map_or(&[][..], |paper| &paper.notes);
    html! {
        section aria-labelledby="look" {
            h2 id="look" { "To look at" }
            @if warnings.is_empty() && notes.is_empty() { p { "No warnings." } }
            ul.look {
                @for (index, warning) in warnings.iter().enumerate() {
                    li {
                        @if warning.span.is_empty() { (on_one_line(&warning.message)) }
                        @else { a href={ "#v" (index) } { (on_one_line(&warning.message)) } }
                    }
                }
                @for note in notes { li { (pages::in_words(note.place)) ": " (on_one_line(&note.words)) } }
            }
        }
    }
}

/// How the clauses were read, and the choice of which are shown.
pub(crate) fn choice(reading: &Reading) -> Markup {
    let count = |confidence| {
        reading
            .clauses
            .iter()
            .filter(|clause| clause.confidence == confidence)
            .count()
    };
    let all = counted(reading.clauses.len(), "clause", "clauses");
    let choices = [
        ("every", format!("all {all}")),
        (
            "firm",
            format!("{} read by rule", count(Confidence::ByRule)),
        ),
        (
            "doubtful",
            format!("{} with a doubt", count(Confidence::WithDoubt)),
        ),
        (
            "left",
            format!("{} left as words", count(Confidence::Prose)),
        ),
    ];
    html! {
        fieldset.choice {
            legend { "Show beside the words" }
            @for (name, words) in choices {
                label {
                    input type="radio" name="shown" id={ "show-" (name) } checked[name == "every"];
                    " " (words)
                }
            }
        }
    }
}
