//! Limits that stand in notes: "depth 4 in.*" with "* Minimum." below. The limit is the marked value's; a mark behind a label or a table's heading is that of
//! the values there. Where it isn't sure what a note about a limit says, or of which values, they are left unread: a bare value would lose the limit.
//!
//! What it would misread: a mark that is used twice for different notes on one page; each value goes with the next note below it.

mod columns;
mod notes;
mod tied;

use self::columns::{Stands, line_of, rows, stands};
use self::notes::{Note, Says, figure_behind, mark_behind, notes, numbered_note_limits};
use crate::clauses::{Draft, limit};
use crate::model::{Bound, Requirement, Span, WarningKind};

/// A warning before it has its words.
type Doubt = (WarningKind, Span, String);

/// Gives the values of a document the limits that its notes state.
pub(super) fn limit_marked(text: &str, drafts: &mut [(String, Draft)]) -> Vec<Doubt> {
    let notes = notes(text);
    let mut doubts = Vec::new();
    doubt_raised(text, drafts, &mut doubts);
    tied::tie(text, &notes, drafts);
    let speaks = |note: &Note| note.says != Says::Other || note.shown.is_some();
    if !notes.iter().any(speaks) {
        return doubts;
    }
    let places: Vec<(String, usize)> = drafts
        .iter()
        .map(|(item, draft)| (item.clone(), draft.span.start()))
        .collect();
    let marked: Vec<(String, usize)> = drafts
        .iter()
        .filter_map(|(_, draft)| mark_behind(text, draft_bound(draft)?.at.end()))
        .collect();
    let mut taken = Vec::new();
    for (item, draft) in drafts.iter_mut() {
        let Some(bound) = draft_bound(draft) else {
            continue;
        };
        let Some((mark, end)) = mark_behind(text, bound.at.end()) else {
            continue;
        };
        taken.push(end);
        if let Some(note) = note_of(&notes, &mark, end) {
            let said = said_of(note, draft);
            let sure =
                said == Says::Other || is_of_its_item(&notes, note, end, item, &places, &marked);
            let says = if sure { said } else { Says::Unsure };
            heed(says, item, draft, &mut doubts);
        }
    }
    for note in notes.iter().filter(|note| note.says != Says::Other) {
        for place in marked_words(text, note, &notes, &taken) {
            limit_named(text, place, note.says, drafts, &mut doubts);
        }
    }
    doubts
}

/// What a note says of the value that its mark stands behind. How far one sentence among others is about it, its names tell.
fn said_of(note: &Note, draft: &Draft) -> Says {
    match &note.shown {
        Some(shown) if note.says == Says::Other => {
            let names = format!("{} {}", draft.component, draft.attribute);
            if shown.is_of(&names) {
                Says::Limit(shown.relation)
            } else {
                Says::Unsure
            }
        }
        _ => note.says,
    }
}

fn draft_bound(draft: &Draft) -> Option<&Bound> {
    match &draft.requirement {
        Requirement::Bound(bound) => Some(bound),
        _ => None,
    }
}

/// Whether a note is surely said of the value that its mark stands behind: the only one of its mark, below it or before every value so marked, or one with
/// nothing of another item between. The note of one item says nothing of the next.
fn is_of_its_item(
    notes: &[Note],
    note: &Note,
    end: usize,
    item: &str,
    places: &[(String, usize)],
    marked: &[(String, usize)],
) -> bool {
    let alike = || notes.iter().filter(|other| other.mark == note.mark);
    if note.at < end {
        return !marked
            .iter()
            .any(|(mark, at)| *mark == note.mark && *at < note.at);
    }
    let one_saying = alike().all(|other| other.says == note.says && other.at >= end);
    let parted = places
        .iter()
        .any(|(other, at)| other != item && (end..note.at).contains(at));
    one_saying || !parted
}

/// `min 4 in.` stands by itself, but `4 in.1` over a line "1 Minimum." is limited by it, and how is left to a person: the raised figure has lost its height.
fn doubt_raised(text: &str, drafts: &mut [(String, Draft)], doubts: &mut Vec<Doubt>) {
    for (item, draft) in drafts.iter_mut() {
        let figure = draft_bound(draft).and_then(|bound| figure_behind(text, bound.at.end()));
        if figure.is_some_and(|figure| numbered_note_limits(text, figure)) {
            heed(Says::Unsure, item, draft, doubts);
        }
    }
}

/// The note that a mark leads to: the next one below, else the last above.
fn note_of<'n>(notes: &'n [Note], mark: &str, at: usize) -> Option<&'n Note> {
    let own = || notes.iter().filter(|note| note.mark == mark);
    own()
        .find(|note| note.at >= at)
        .or_else(|| own().next_back())
}

/// Limits a value that has no limit of its own, or leaves it unread.
fn heed(says: Says, item: &str, draft: &mut Draft, doubts: &mut Vec<Doubt>) {
    let Requirement::Bound(bound) = &mut draft.requirement else {
        return;
    };
    if !bound.bare {
        return;
    }
    match says {
        Says::Limit(relation) if bound.hi.is_none() => {
            limit(bound, relation);
            draft.read_by = vec!["limit in a note".to_owned()];
        }
        Says::Limit(_) | Says::Unsure => {
            let at = bound.at;
            draft.leave_as_words(item);
            let message = "a note says something of its limit, and what could not be told";
            doubts.push((WarningKind::UnreadNumber, at, message.to_owned()));
        }
        Says::Other => {}
    }
}

/// Where a note's mark stands behind words, and behind no value: "Depth*".
fn marked_words(text: &str, note: &Note, notes: &[Note], taken: &[usize]) -> Vec<usize> {
    /// How far before a mark no digit may stand: that would be a value, of a condition perhaps.
    const NEAR: usize = 7;
    let cited = note.mark.starts_with("note ");
    let places = text.match_indices(note.mark.as_str()).filter(|(at, mark)| {
        let before = text.get(..*at).unwrap_or_default();
        let behind = text.get(at + mark.len()..).unwrap_or_default();
        let line = before.rsplit('\n').next().unwrap_or_default();
        let own = !note.mark.starts_with('*') || !behind.starts_with('*') && !before.ends_with('*');
        let numbered = line.chars().rev().take(NEAR).any(|c| c.is_ascii_digit());
        let of_words = line.trim_end().ends_with(char::is_alphabetic);
        let leads_here = note_of(notes, &note.mark, *at) == Some(note);
        own && of_words && !numbered && !cited && leads_here && !taken.contains(&(at + mark.len()))
    });
    places.map(|(at, mark)| at + mark.len()).collect()
}

/// Limits what stands behind a marked label, or below a marked heading.
fn limit_named(
    text: &str,
    place: usize,
    says: Says,
    drafts: &mut [(String, Draft)],
    doubts: &mut Vec<Doubt>,
) {
    let line = line_of(text, place);
    let rest = Span::new(place, line.end());
    let behind = drafts
        .iter_mut()
        .find(|(_, draft)| draft_bound(draft).is_some_and(|bound| rest.contains(bound.at.start())));
    if let Some((item, draft)) = behind {
        let to_value = draft_bound(draft).map_or(0, |bound| bound.at.start());
        let labelled = Span::new(place, to_value)
            .of(text)
            .chars()
            .all(|c| matches!(c, ':' | '=' | '-' | '–' | '.' | ' '));
        let says = if labelled { says } else { Says::Unsure };
        heed(says, item, draft, doubts);
        return;
    }
    if rest.of(text).contains(|c: char| c.is_ascii_digit()) {
        return;
    }
    let below = rows(text, line.end());
    for (item, draft) in drafts.iter_mut() {
        let at = draft_bound(draft).map(|bound| bound.at);
        let Some(at) = at.filter(|at| below.contains(at.start())) else {
            continue;
        };
        match stands(text, place, at) {
            Stands::Below => heed(says, item, draft, doubts),
            Stands::Somewhere => heed(Says::Unsure, item, draft, doubts),
            Stands::Elsewhere => {}
        }
    }
}
