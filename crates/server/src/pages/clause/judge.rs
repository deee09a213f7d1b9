//! Judging a clause from the reading desk: where it is open or not met, mark by mark.

use std::sync::Arc;

use axum::extract::{Path, State};
use conformance::Verdict;
use maud::{Markup, html};

use crate::desk::{Desk, Seen};
use crate::pages::{joint, layout, path_of_joint, piece, reading};
use crate::person::{By, Reviewer};
use crate::trouble::Trouble;

/// The most marks that are looked at for one page.
const MOST_MARKS: usize = 24;

pub(crate) async fn page(
    State(desk): State<Arc<Desk>>,
    person: By<Reviewer>,
    Path((file, id)): Path<(String, String)>,
) -> Result<Markup, Trouble> {
    let read = super::read(&desk, &file).await?;
    let mut clauses = read.state.clauses.iter();
    let clause = clauses
        .find(|clause| clause.id == id)
        .ok_or_else(|| Trouble::Unknown(format!("{file} has no clause {id}.")))?;
    let (marks, more) = built_to(&desk, &file);
    let mut found = Vec::new();
    for joint in marks {
        found.push(desk.look(&joint).await?);
    }
    let title = format!("Judge {id}");
    let body = html! {
        h1 { (title) }
        p { a href={ "/listings/" (piece(&file)) "#" (reading::anchor(&id)) } { "Back to the reading of " (file) } }
        blockquote { (clause.words) }
        p { "A judgment is a named person's decision with its ground, where no number settles a clause. It holds for one joint or for every joint of a mark." }
        @if found.is_empty() { p { "No joint of the project is built to this listing." } }
        @for seen in &found { (at_mark(&person, seen, &id)) }
        @if more > 0 { p { "and " (more) " marks more: judge it at their joints." } }
    };
    Ok(layout::page(&person, &title, "/listings", &body))
}

/// The first joint of each mark that is built to a listing, and how many marks more there are.
fn built_to(desk: &Desk, file: &str) -> (Vec<String>, usize) {
    let project = desk.project();
    let mut marks: Vec<&str> = Vec::new();
    let mut first = Vec::new();
    for joint in &project.joints {
        let is_built_to = project
            .listing(joint)
            .and_then(|name| desk.file(name))
            .is_some_and(|held| held == file);
        if is_built_to && !marks.contains(&joint.mark.as_str()) {
            marks.push(&joint.mark);
            first.push(joint.name.clone());
        }
    }
    let more = first.len().saturating_sub(MOST_MARKS);
    first.truncate(MOST_MARKS);
    (first, more)
}

fn at_mark(person: &By<Reviewer>, seen: &Seen, id: &str) -> Markup {
    let finding = seen.result.as_ref().and_then(|result| result.finding(id));
    html! {
        article.finding {
            h2 { "Mark " (seen.joint.mark) }
            p { "As at " a href=(path_of_joint(&seen.joint.name)) { (seen.joint.name) } ":" }
            @match finding {
                None => p { "The clause says nothing of this joint." },
                Some(finding) => {
                    p { (layout::verdict(finding.verdict)) " " (finding.explanation.sentence) }
                    @if let Some(judgment) = &finding.explanation.judgment {
                        p.quiet { "Judged by " (judgment.by) ", " (judgment.when) ": " (judgment.basis) }
                    }
                    @if matches!(finding.verdict, Verdict::Open | Verdict::NotMet | Verdict::Judged) {
                        (joint::judging_form(person, id, seen))
                    } @else { p.quiet { "There is nothing to judge." } }
                },
            }
        }
    }
}
