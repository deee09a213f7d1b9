//! A listing as read: its head, its clauses beside their words, and what a person should look at.

use comfy_table::{Attribute, Cell, Color};
use listing::{Clause, Confidence, WarningKind};

use super::marked::{self, Note};
use super::page::{self, heading, labelled, wrapped};
use super::paint::{GOOD, QUIET, STRONG, UNKNOWN, paint};
use super::words::{counted, on_one_line, shortened};
use super::{Excerpt, table};
use wording::clause;
use wording::head::{options, stated};

use crate::shelf::{Held, State};

/// The most of a title that is shown, in characters; what isn't a listing may have no end of it.
const MOST_OF_A_TITLE: usize = 240;

/// Millimetres to a point, 1/72 in.
const MM_PER_POINT: f64 = 25.4 / 72.0;

/// The whole reading.
pub(crate) fn reading(held: &Held) -> String {
    let mut text = head(held);
    text.push_str(&heading("Clauses"));
    text.push_str(&legend());
    text.push_str(&clauses(held.reading().clauses.iter()));
    text.push('\n');
    text.push_str(&counts(held));
    text.push_str(&accounted(held));
    text.push_str(&doubts(held));
    text.push_str(&of_the_pages(held));
    text.push_str(&warnings(held));
    text
}

/// What the head of the listing states, and how firm the reading is.
fn head(held: &Held) -> String {
    let reading = held.reading();
    let header = &reading.header;
    let designation = if header.designation.is_empty() {
        "no designation found"
    } else {
        &header.designation
    };
    let mut text = paint(
        STRONG,
        &shortened(&on_one_line(designation), MOST_OF_A_TITLE),
    );
    if !header.edition.is_empty() {
        text.push_str(&format!(
            "  {}",
            shortened(&on_one_line(&header.edition), MOST_OF_A_TITLE)
        ));
    }
    text.push('\n');
    if !header.title.is_empty() {
        text.push_str(&wrapped(
            &shortened(&on_one_line(&header.title), MOST_OF_A_TITLE),
            0,
            0,
        ));
    }
    text.push('\n');
    for (label, words) in stated(header).into_iter().chain([
        ("options", options(held.reading())),
        ("source", source(held)),
    ]) {
        if !words.is_empty() {
            text.push_str(&labelled(label, &words, 2, 11));
        }
    }
    let (style, words) = standing(held);
    text.push_str(&labelled("reading", &words, 2, 11).replacen(
        "reading",
        &paint(style, "reading"),
        1,
    ));
    text
}

fn source(held: &Held) -> String {
    let source = &held.reading().source;
    let digest: String = source.sha256.chars().take(12).collect();
    format!(
        "{}, {}, {} bytes, SHA-256 {digest}…",
        held.file,
        counted(source.pages, "page", "pages"),
        source.bytes
    )
}

/// How firm the reading is.
fn standing(held: &Held) -> (anstyle::Style, String) {
    let is_confirmed = matches!(held.state, State::Confirmed(_));
    let words = wording::head::standing(held.reading(), is_confirmed, held.decisions());
    (if is_confirmed { GOOD } else { UNKNOWN }, words)
}

/// Clauses as a table.
pub(crate) fn clauses<'a>(clauses: impl Iterator<Item = &'a Clause>) -> String {
    let is_wide = page::width() >= 118;
    let headings: &[&str] = if is_wide {
        &["clause", "words", "about", "asks for", "applies", "read by"]
    } else {
        &["clause", "words and rule", "about", "asks for"]
    };
    let mut rows = table::table(headings);
    table::unwrapped(&mut rows, 0);
    for clause in clauses {
        let scope = clause::scope(clause);
        let mut asks = clause::requirement(clause);
        let read_by = clause::read_by(clause);
        let words = clause::words(clause);
        let mut cells = vec![
            Cell::new(clause::id(clause)),
            if is_wide || read_by.is_empty() {
                Cell::new(words)
            } else {
                Cell::new(format!("{words}\n– {read_by}"))
            },
            Cell::new(clause::subject(clause)),
        ];
        if is_wide {
            cells.push(tinted(clause, asks));
            cells.push(Cell::new(scope.join("\n")));
            let rules = read_by.strip_prefix("read by ").unwrap_or(&read_by);
            cells.push(tinted(clause, rules.to_owned()));
        } else {
            for line in scope {
                asks.push('\n');
                asks.push_str(&line);
            }
            cells.push(tinted(clause, asks));
        }
        rows.add_row(cells);
    }
    let share = |percent: u16| page::width() * percent / 100;
    if is_wide {
        table::at_most(&mut rows, 2, share(16));
        table::at_most(&mut rows, 4, share(17));
        table::at_most(&mut rows, 5, share(18));
    } else {
        table::at_most(&mut rows, 2, share(18));
        table::at_most(&mut rows, 3, share(36));
    }
    table::set(&rows)
}

fn tinted(clause: &Clause, words: String) -> Cell {
    let cell = Cell::new(words);
    match clause.confidence {
        Confidence::ByRule => cell,
        Confidence::WithDoubt => cell.fg(Color::DarkYellow),
        Confidence::Prose => cell.add_attribute(Attribute::Dim),
    }
}

/// What the signs of the table mean.
pub(crate) fn legend() -> String {
    let words = "‹ › marks the number that was read, ! what was read with a doubt, ¶ words left for a person, ✓ a clause that a person has \
                 confirmed, ✎ one that a person has corrected. `everyclause read --rules NAME` shows a rule.";
    wrapped(words, 0, 0) + "\n"
}

/// How many clauses were read how.
fn counts(held: &Held) -> String {
    let clauses = &held.reading().clauses;
    let count = |confidence| {
        clauses
            .iter()
            .filter(|clause| clause.confidence == confidence)
            .count()
    };
    let words = format!(
        "{}: {} by rule, {} with a doubt (!), {} left as words (¶) for a person.",
        counted(clauses.len(), "clause", "clauses"),
        count(Confidence::ByRule),
        count(Confidence::WithDoubt),
        count(Confidence::Prose),
    );
    wrapped(&words, 0, 0)
}

/// What is doubtful about each clause that was read with a doubt.
fn doubts(held: &Held) -> String {
    let reading = held.reading();
    let doubts: Vec<String> = reading
        .clauses
        .iter()
        .flat_map(|clause| {
            let reasons = wording::doubt::reasons(reading, clause);
            reasons.into_iter().map(move |reason| (clause, reason))
        })
        .map(|(clause, reason)| labelled(&clause::id(clause), &(reason + "."), 2, 9))
        .collect();
    if doubts.is_empty() {
        return String::new();
    }
    heading("What is doubtful (!)") + &doubts.concat() + "\n"
}

/// That no word was left out, and whether every number was read.
fn accounted(held: &Held) -> String {
    let reading = held.reading();
    let left_out = reading.accounted.of.saturating_sub(reading.accounted.bytes);
    let mut text = if left_out == 0 {
        wrapped(
            "No word of the document was left out: each is in a clause, a heading, the head or a page's own lines.",
            0,
            0,
        )
    } else {
        let line = format!("{left_out} bytes of the document are no part of the reading.");
        paint(UNKNOWN, wrapped(&line, 0, 0).trim_end()) + "\n"
    };
    let unread = reading
        .warnings
        .iter()
        .filter(|warning| warning.kind == WarningKind::UnreadNumber)
        .count();
    if unread == 0 {
        text.push_str(&wrapped(
            "Every number with a unit is in a clause, a condition, a name or the head.",
            0,
            0,
        ));
    } else {
        let line = format!(
            "{}; see the warnings below.",
            counted(unread, "number nobody read", "numbers nobody read")
        );
        text.push_str(&paint(UNKNOWN, wrapped(&line, 0, 0).trim_end()));
        text.push('\n');
    }
    text
}

/// What a person should know of the pages of a PDF beside their text.
fn of_the_pages(held: &Held) -> String {
    let notes = held.paper.iter().flat_map(|paper| &paper.notes);
    let mut text = String::new();
    for note in notes {
        let rect = note.place.rect;
        let words = format!(
            "page {}, {:.0} mm from the left and {:.0} mm from the top: {}",
            note.place.page,
            rect.x0 * MM_PER_POINT,
            rect.y0 * MM_PER_POINT,
            on_one_line(&note.words)
        );
        text.push_str(&marked::warning(&words, &held.file, None, &[]));
        text.push('\n');
    }
    if text.is_empty() {
        text
    } else {
        heading("Beside the text of the pages") + &text + "\n"
    }
}

/// What a person should look at, each at its place.
fn warnings(held: &Held) -> String {
    let warnings = &held.reading().warnings;
    if warnings.is_empty() {
        return paint(QUIET, "No warnings.") + "\n";
    }
    let mut text = heading(&format!(
        "{} to look at",
        counted(warnings.len(), "warning", "warnings")
    ));
    for warning in warnings {
        let excerpt = (!warning.span.is_empty()).then(|| Excerpt::of(&held.text, warning.span));
        text.push_str(&marked::warning(
            &wording::warning::message(warning),
            &held.file,
            excerpt.as_ref(),
            advice(warning.kind).as_slice(),
        ));
        text.push_str("\n\n");
    }
    text
}

fn advice(kind: WarningKind) -> Option<Note<'static>> {
    let words = wording::warning::advice(kind)?;
    Some(match kind {
        WarningKind::NotAListing => Note::Help(words),
        _ => Note::Note(words),
    })
}

/// What a person should know of a confirmation: entries that were lost, another source.
pub(crate) fn about_confirmation(held: &Held) -> String {
    let Some(confirmation) = &held.confirmation else {
        return String::new();
    };
    let mut text = String::new();
    if confirmation.other_source {
        let words = "the confirmation was made on another edition of this file; what still has the same words is kept";
        text.push_str(&marked::warning(words, &confirmation.file, None, &[]));
        text.push('\n');
    }
    if !confirmation.lost.is_empty() {
        let words = format!(
            "{} of the confirmation no longer {} the listing's words; until that is settled the reading stays a draft",
            counted(confirmation.lost.len(), "entry", "entries"),
            if confirmation.lost.len() == 1 {
                "fits"
            } else {
                "fit"
            }
        );
        let entries: Vec<String> = confirmation
            .lost
            .iter()
            .take(5)
            .map(|entry| {
                format!(
                    "{}, by {} on {}: \"{}\"",
                    entry.clause,
                    entry.by,
                    entry.when,
                    shortened(&on_one_line(&entry.words), 70)
                )
            })
            .collect();
        let mut notes: Vec<Note<'_>> = entries.iter().map(|entry| Note::Note(entry)).collect();
        notes.push(Note::Help(
            "read those clauses again, confirm them, and drop the old entries with `--drop-lost`",
        ));
        text.push_str(&marked::warning(&words, &confirmation.file, None, &notes));
        text.push('\n');
    }
    text
}
