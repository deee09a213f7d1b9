//! A listing as read: its head, its clauses beside their words, and what a person should look at.

use comfy_table::{Attribute, Cell, Color};
use listing::{Clause, Confidence, Status, WarningKind};

use super::marked::{self, Note};
use super::page::{self, heading, labelled, wrapped};
use super::paint::{GOOD, QUIET, STRONG, UNKNOWN, paint};
use super::words::{counted, listed, on_one_line, shortened};
use super::{Excerpt, table};
use wording::choices::Choices;
use wording::clause;
use wording::head::{options, stated};

use crate::shelf::{Held, State};

/// The most of a title that is shown, in characters; what isn't a listing may have no end of it.
const MOST_OF_A_TITLE: usize = 240;

/// Millimetres to a point, 1/72 in.
const MM_PER_POINT: f64 = 25.4 / 72.0;

/// Which clauses are shown, and how much of each.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Shown {
    /// Those read with a doubt, and no others but those left for a person where they are asked for too.
    pub(crate) doubtful: bool,
    /// Those left for a person, and no others but those read with a doubt where they are asked for too.
    pub(crate) left: bool,
    /// By which rules each was read.
    pub(crate) rules: bool,
}

impl Shown {
    /// Whether a clause is shown.
    fn holds(self, clause: &Clause) -> bool {
        match clause.confidence {
            Confidence::WithDoubt => self.doubtful || !self.left,
            Confidence::Prose => self.left || !self.doubtful,
            Confidence::ByRule => !self.is_choice(),
        }
    }

    const fn is_choice(self) -> bool {
        self.doubtful || self.left
    }
}

/// The reading: what to look at, its clauses, and what is doubtful or was warned of.
pub(crate) fn reading(held: &Held, shown: Shown) -> String {
    let mut text = head(held);
    text.push_str(&sums(held));
    let chosen: Vec<&Clause> = held
        .reading()
        .clauses
        .iter()
        .filter(|clause| shown.holds(clause))
        .collect();
    if !chosen.is_empty() {
        text.push_str(&heading("Clauses"));
        text.push_str(&legend(held));
        text.push_str(&clauses(held, chosen.into_iter(), shown.rules));
    } else if shown.is_choice() {
        text.push_str(&heading("Clauses"));
        text.push_str("None of the kind.\n");
    }
    if shown.doubtful || !shown.is_choice() {
        text.push_str(&doubts(held));
    }
    if !shown.is_choice() {
        text.push_str(&of_the_pages(held));
        text.push_str(&warnings(held));
        text.push_str(&alone(held));
    }
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

/// The narrowest page on which clauses are set as a table; on a narrower one they stand one under another.
const NARROWEST_TABLE: u16 = 72;

/// The narrowest page on which the table has a column for when a clause applies.
const WIDE: u16 = 118;

/// Clauses as a table; by which rules they were read where that is asked for.
pub(crate) fn clauses<'a>(
    held: &Held,
    clauses: impl Iterator<Item = &'a Clause>,
    rules: bool,
) -> String {
    let choices = Choices::of(held.reading());
    let lines = clauses.map(|clause| Line::of(held, &choices, clause, rules));
    if page::width() < NARROWEST_TABLE {
        return lines.map(Line::in_paragraphs).collect();
    }
    let is_wide = page::width() >= WIDE;
    let headings: &[&str] = if is_wide {
        &["clause", "words", "about", "asks for", "applies"]
    } else {
        &["clause", "words", "about", "asks for"]
    };
    let mut rows = table::table(headings);
    table::unwrapped(&mut rows, 0);
    for line in lines {
        let mut words = line.words;
        if let Some(read_by) = line.read_by {
            words = format!("{words}\n– {read_by}");
        }
        let mut cells = vec![
            tinted(line.confidence, line.id),
            Cell::new(words),
            Cell::new(line.subject),
        ];
        if is_wide {
            cells.push(tinted(line.confidence, line.asks));
            cells.push(Cell::new(line.scope.join("\n")));
        } else {
            let asks = [vec![line.asks], line.scope].concat();
            cells.push(tinted(line.confidence, asks.join("\n")));
        }
        rows.add_row(cells);
    }
    let share = |percent: u16| page::width() * percent / 100;
    if is_wide {
        table::at_most(&mut rows, 2, share(17));
        table::at_most(&mut rows, 4, share(24));
    } else {
        table::at_most(&mut rows, 2, share(18));
        table::at_most(&mut rows, 3, share(36));
    }
    table::set(&rows)
}

/// A clause as it is shown.
struct Line {
    id: String,
    words: String,
    subject: String,
    asks: String,
    scope: Vec<String>,
    read_by: Option<String>,
    confidence: Confidence,
}

impl Line {
    fn of(held: &Held, choices: &Choices, clause: &Clause, rules: bool) -> Self {
        let when = clause
            .condition
            .as_ref()
            .map(|condition| wording::condition::applies(&condition.expr));
        let of_choice = choices.in_words(clause);
        let is_read = clause.confidence != Confidence::Prose && !clause.read_by.is_empty();
        Self {
            id: clause::id(clause),
            words: words(held, clause),
            subject: clause::subject(clause),
            asks: clause::requirement(clause),
            scope: when.into_iter().chain(of_choice).collect(),
            read_by: (rules && is_read).then(|| format!("read by {}", listed(&clause.read_by))),
            confidence: clause.confidence,
        }
    }

    /// Each part on lines of its own, for a page on which no table fits.
    fn in_paragraphs(self) -> String {
        let title = format!("{} {}: {}", self.id, self.subject, self.asks);
        let title = wrapped(&title, 0, 2);
        let mut text = match self.confidence {
            Confidence::WithDoubt => paint(UNKNOWN, title.trim_end()) + "\n",
            _ => title,
        };
        for line in [self.words]
            .into_iter()
            .chain(self.scope)
            .chain(self.read_by)
        {
            text.push_str(&wrapped(&line, 4, 0));
        }
        text + "\n"
    }
}

/// The words of a clause, those of a table's cell with its row and column.
fn words(held: &Held, clause: &Clause) -> String {
    match wording::cell::Cell::of(&held.text, clause) {
        Some(cell) if !cell.place().is_empty() => format!("{}: ‹{}›", cell.place(), cell.number),
        _ => clause::words(clause),
    }
}

fn tinted(confidence: Confidence, words: String) -> Cell {
    let cell = Cell::new(words);
    match confidence {
        Confidence::ByRule => cell,
        Confidence::WithDoubt => cell.fg(Color::DarkYellow),
        Confidence::Prose => cell.add_attribute(Attribute::Bold),
    }
}

/// What the signs of the table mean.
pub(crate) fn legend(held: &Held) -> String {
    let mut words = "‹ › marks the number that was read, ! what was read with a doubt, ¶ words left for a person, ✓ a clause that a person \
                     has confirmed, ✎ one that a person has corrected."
        .to_owned();
    if held
        .reading()
        .clauses
        .iter()
        .any(|clause| clause.item.is_empty())
    {
        words.push_str(" What stands before the first item is called head.");
    }
    wrapped(&words, 0, 0) + "\n"
}

/// What there is to look at, in short, before all else.
fn sums(held: &Held) -> String {
    let mut text = String::from("\n");
    if let Some(words) = pictures(held) {
        text.push_str(&(paint(UNKNOWN, wrapped(&words, 0, 0).trim_end()) + "\n"));
    }
    if held.reading().clauses.is_empty() {
        let words = "Nothing was read: no clause was found.";
        return text + &paint(UNKNOWN, words) + "\n";
    }
    text.push_str(&counts(held));
    text.push_str(&accounted(held));
    text
}

/// That pages are pictures, of which nothing was read.
fn pictures(held: &Held) -> Option<String> {
    let paper = held.paper.as_ref()?;
    wording::head::pictures(&paper.pictures())
}

/// How many clauses were read how, and how much was warned of.
fn counts(held: &Held) -> String {
    let reading = held.reading();
    let count = |confidence| {
        let of_them = reading.clauses.iter();
        of_them
            .filter(|clause| clause.confidence == confidence)
            .count()
    };
    let is_open =
        |clause: &Clause| clause.confidence == Confidence::Prose && clause.status == Status::Draft;
    let left = count(Confidence::Prose);
    let left = if left > 0 && !reading.clauses.iter().any(is_open) {
        format!("{left} to answer at the joint (¶), confirmed as such")
    } else {
        format!("{left} left as words (¶) for a person")
    };
    let notes = held.paper.as_ref().map_or(0, |paper| paper.notes.len());
    let warnings = match reading.warnings.len() + notes {
        0 => String::new(),
        some => format!("; {}", counted(some, "warning", "warnings")),
    };
    let words = format!(
        "{}: {} by rule, {} with a doubt (!), {left}{warnings}.",
        counted(reading.clauses.len(), "clause", "clauses"),
        count(Confidence::ByRule),
        count(Confidence::WithDoubt),
    );
    wrapped(&words, 0, 0)
}

/// How to see what needs a person without the rest.
fn alone(held: &Held) -> String {
    let has = |confidence| {
        let mut clauses = held.reading().clauses.iter();
        clauses.any(|clause| clause.confidence == confidence)
    };
    let words = match (has(Confidence::WithDoubt), has(Confidence::Prose)) {
        (true, true) => {
            "`--doubtful` lists what was read with a doubt alone, `--left` what is left for a person"
        }
        (true, false) => "`--doubtful` lists what was read with a doubt alone",
        (false, true) => "`--left` lists what is left for a person alone",
        (false, false) => return String::new(),
    };
    paint(
        QUIET,
        wrapped(
            &format!("{words}; `--by-rule` shows by which rule each clause was read."),
            0,
            0,
        )
        .trim_end(),
    ) + "\n"
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
        .map(|(clause, reason)| {
            let about = format!("{}: {reason}.", clause::subject(clause));
            labelled(&clause.id, &about, 2, 9)
        })
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
    let is_part = pictures(held).is_some();
    let mut text = if left_out == 0 && is_part {
        String::new()
    } else if left_out == 0 {
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
    if unread == 0 && is_part {
        return text;
    }
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
        let notes = held.paper.as_ref().map_or(0, |paper| paper.notes.len());
        let words = if notes == 0 {
            "No warnings."
        } else {
            "No warnings of the words themselves."
        };
        return paint(QUIET, words) + "\n";
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
