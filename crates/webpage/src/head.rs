//! What stands above the words: the head, how the words are marked, the choice of what is shown.

use listing::Reading;
use maud::{Markup, html};
use wording::head::{options, standing, stated};
use wording::text::{counted, on_one_line, shortened};

use crate::stretches::{Kind, Stretch};
use crate::{Marked, clauses};

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
    let about = [
        ("edition", on_one_line(&header.edition)),
        (
            "reading",
            standing(reading, marked.is_confirmed, marked.decisions),
        ),
    ]
    .into_iter()
    .chain(stated(header))
    .chain([("options", options(reading))]);
    html! {
        header {
            h1 { (name(reading)) }
            p.title { (shortened(&on_one_line(&header.title), MOST_OF_A_TITLE)) }
            dl {
                @for (label, words) in about.filter(|(_, words)| !words.is_empty()) {
                    div { dt { (label) } dd { (words) } }
                }
            }
            (document(marked))
        }
    }
}

/// What tells this document from another, folded away.
fn document(marked: &Marked<'_>) -> Markup {
    let source = &marked.reading.source;
    html! {
        details {
            summary { "About this document" }
            dl {
                div { dt { "file" } dd { (on_one_line(marked.file)) } }
                div { dt { "size" } dd { (counted(source.pages, "page", "pages")) ", " (source.bytes) " bytes" } }
                div { dt { "SHA-256" } dd { (source.sha256) } }
            }
        }
    }
}

/// How the words of the source are marked, and how much of them is what.
pub(crate) fn legend(marked: &Marked<'_>, stretches: &[Stretch]) -> Markup {
    let letters = |kind: Kind| -> usize {
        stretches
            .iter()
            .filter(|stretch| stretch.kind == kind)
            .map(|stretch| stretch.span.len())
            .sum()
    };
    let all: usize = Kind::MARKED.iter().map(|kind| letters(*kind)).sum();
    let mut from = 0;
    let parts: Vec<(Kind, usize, usize)> = Kind::MARKED
        .iter()
        .map(|kind| {
            let start = from;
            from += letters(*kind);
            (*kind, start, letters(*kind))
        })
        .collect();
    let accounted = marked.reading.accounted;
    html! {
        details.fold open {
            summary { h2 { "How the words are marked" } }
            svg.bar viewBox={ "0 0 " (all.max(1)) " 10" } preserveAspectRatio="none" aria-hidden="true" {
                @for (kind, start, length) in &parts {
                    rect.(kind.class()) x=(start) width=(length) height="10" {}
                }
            }
            ul.key {
                @for (kind, _, length) in &parts {
                    li { span.swatch.(kind.class()) aria-hidden="true" {} span.(kind.class()) { (kind.words()) } " " small { (share(*length, all)) } }
                }
                li { span.number { "number" } " of a clause" }
                li { span.unread { "number" } " nobody read" }
                li { span.condition { "when it applies" } }
            }
            @if marked.reading.clauses.iter().any(|clause| clause.item.is_empty()) {
                p { "What stands before the first item is called head." }
            }
            @if marked.paper.is_some_and(|paper| !paper.pictures().is_empty()) {
                p { "Every word that could be read stands on this page; what the pictures hold does not." }
            } @else if accounted.bytes == accounted.of {
                p { "No word of the document was left out of this page." }
            } @else {
                p { (accounted.of.saturating_sub(accounted.bytes)) " bytes of the document are no part of the reading; their words stand on this page all the same." }
            }
        }
    }
}

/// A share in percent, and never 0 or 100 for what is neither.
fn share(part: usize, whole: usize) -> String {
    match part.saturating_mul(100).checked_div(whole) {
        _ if part == 0 => "none".to_owned(),
        Some(0) => "under 1 %".to_owned(),
        Some(percent) => format!("{percent} %"),
        None => String::new(),
    }
}

/// How the clauses were read, and the choice of which are shown.
pub(crate) fn choice(marked: &Marked<'_>) -> Markup {
    let reading = marked.reading;
    let count = |firmness| {
        let all = reading.clauses.iter();
        all.filter(|clause| clauses::firmness(clause) == firmness)
            .count()
    };
    let all = counted(reading.clauses.len(), "clause", "clauses");
    let unread = clauses::unread(marked).count();
    let (firm, doubtful, left) = (count("firm"), count("doubtful"), count("left"));
    let choices = [
        ("every", reading.clauses.len(), format!("all {all}")),
        ("firm", firm, format!("{firm} read by rule")),
        ("doubtful", doubtful, format!("{doubtful} with a doubt")),
        ("left", left, format!("{left} for a person")),
        (
            "missed",
            unread,
            counted(unread, "unread number", "unread numbers"),
        ),
    ];
    html! {
        fieldset.choice {
            legend { "Show beside the words" }
            @for (name, count, words) in choices {
                label {
                    input type="radio" name="shown" id={ "show-" (name) } checked[name == "every"] disabled[count == 0 && name != "every"];
                    " " (words)
                }
            }
            label.rules { input type="checkbox" id="show-rules"; " by which rule" }
        }
    }
}
