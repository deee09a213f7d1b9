//! A message with its place: the words under a marker.

use annotate_snippets::{Annotation, AnnotationKind, Group, Level, Origin, Renderer, Snippet};

use super::Excerpt;
use super::page;

/// What stands under a message.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Note<'a> {
    /// What would be right.
    Help(&'a str),
    /// What else there is to know.
    Note(&'a str),
}

/// An error, in a file or several, at marked words or as a whole.
pub(crate) fn error(
    problem: &str,
    files: &[String],
    excerpt: Option<&Excerpt>,
    notes: &[Note<'_>],
) -> String {
    let group = Level::ERROR
        .primary_title(problem)
        .elements(Vec::<Origin<'_>>::new());
    let group = match (files, excerpt) {
        ([file], Some(excerpt)) => group.element(snippet(excerpt).path(file.as_str())),
        _ => files.iter().fold(group, |group, file| {
            group.element(Origin::path(file.as_str()))
        }),
    };
    render(with_notes(group, notes))
}

/// An error in a cell of a table.
pub(crate) fn at_cell(
    problem: &str,
    cell: &str,
    excerpt: Option<&Excerpt>,
    notes: &[Note<'_>],
) -> String {
    let group = Level::ERROR
        .primary_title(problem)
        .element(Origin::path(cell));
    let group = match excerpt {
        Some(excerpt) => group.element(snippet(excerpt)),
        None => group,
    };
    // The cell is named already; a second, empty line for the place would say nothing.
    let text = render(with_notes(group, notes));
    text.lines()
        .filter(|line| {
            !anstream::adapter::strip_str(line)
                .to_string()
                .trim()
                .eq(":::")
        })
        .collect::<Vec<_>>()
        .join("\n")
}

/// A warning at words of a file, or of the file as a whole.
pub(crate) fn warning(
    title: &str,
    file: &str,
    excerpt: Option<&Excerpt>,
    notes: &[Note<'_>],
) -> String {
    let group = Level::WARNING
        .primary_title(title)
        .elements(Vec::<Origin<'_>>::new());
    let group = match excerpt {
        Some(excerpt) => group.element(snippet(excerpt).path(file)),
        None => group.element(Origin::path(file)),
    };
    render(with_notes(group, notes))
}

fn snippet(excerpt: &Excerpt) -> Snippet<'_, Annotation<'_>> {
    let marked = AnnotationKind::Primary.span(excerpt.marked.clone());
    Snippet::source(excerpt.text.as_str())
        .line_start(excerpt.line)
        .annotation(marked)
}

fn with_notes<'a>(group: Group<'a>, notes: &[Note<'a>]) -> Group<'a> {
    notes.iter().fold(group, |group, note| match note {
        Note::Help(words) => group.element(Level::HELP.message(*words)),
        Note::Note(words) => group.element(Level::NOTE.message(*words)),
    })
}

fn render(group: Group<'_>) -> String {
    Renderer::styled()
        .term_width(usize::from(page::width()))
        .render(&[group])
}
