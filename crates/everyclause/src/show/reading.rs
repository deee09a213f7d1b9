//! A listing as read: its head, its clauses beside their words, and what a person should look at.

use comfy_table::{Attribute, Cell, Color};
use listing::{
    Clause, Confidence, Header, LeakageRelation, LeakageTemperature, Movement, MovementDirection,
    OptionGroupKind, PlaceKind, Status, WarningKind,
};
use measure::{Quantity, print};

use super::marked::{self, Note};
use super::page::{self, heading, labelled, wrapped};
use super::paint::{GOOD, QUIET, STRONG, UNKNOWN, paint};
use super::words::{counted, listed, on_one_line, printable, shortened};
use super::{Excerpt, clause, table};
use crate::shelf::{Held, State};

/// The most of a title that is shown, in characters; what isn't a listing may have no end of it.
const MOST_OF_A_TITLE: usize = 240;

/// Millimetres to a point, 1/72 in.
const MM_PER_POINT: f64 = 25.4 / 72.0;

/// The whole reading.
pub(crate) fn reading(held: &Held) -> String {
    let mut text = head(held);
    text.push_str(&heading("Clauses"));
    text.push_str(&clauses(held.reading().clauses.iter()));
    text.push('\n');
    text.push_str(&legend(held));
    text.push_str(&accounted(held));
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
    for (label, words) in stated(header)
        .into_iter()
        .chain([("options", options(held)), ("source", source(held))])
    {
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

/// What the head states, each with its label.
fn stated(header: &Header) -> Vec<(&'static str, String)> {
    let ratings: Vec<String> = header
        .ratings_hr
        .iter()
        .map(|hours| print::trade(Quantity::new(*hours, measure::Unit::Hour)))
        .collect();
    let ratings: Vec<&str> = ratings
        .iter()
        .map(|rating| rating.trim_end_matches(" hr"))
        .collect();
    let width = header.width.as_ref().map(|width| {
        let quantity = |number| Quantity::new(number, width.unit);
        match (width.lo.map(quantity), width.hi.map(quantity)) {
            (Some(lo), Some(hi)) => format!("{} to {}", print::both(lo), print::both(hi)),
            (Some(one), None) | (None, Some(one)) => {
                format!("{} {}", width.relation.words(), print::both(one))
            }
            (None, None) => String::new(),
        }
    });
    let movement: Vec<String> = header.movement.iter().map(movement).collect();
    let leakage: Vec<String> = header.leakage.iter().map(leakage).collect();
    vec![
        ("standards", header.standards.join(", ")),
        (
            "ratings",
            if ratings.is_empty() {
                String::new()
            } else {
                format!("{} hr", listed(&ratings))
            },
        ),
        ("width", width.unwrap_or_default()),
        ("movement", movement.join("; ")),
        ("leakage", leakage.join("; ")),
    ]
}

fn movement(movement: &Movement) -> String {
    let classes = match movement.classes.as_slice() {
        [] => String::new(),
        [one] => format!("Class {one}, "),
        several => format!("Classes {}, ", listed(several)),
    };
    let direction = match movement.direction {
        MovementDirection::Compression => "compression",
        MovementDirection::Extension => "extension",
        MovementDirection::CompressionOrExtension => "compression or extension",
        MovementDirection::Shear => "shear",
    };
    let percent = print::trade(Quantity::new(movement.percent, measure::Unit::Percent));
    let option = movement
        .option
        .as_ref()
        .map(|option| format!(" ({})", on_one_line(option)));
    format!(
        "{classes}{percent} {direction}{}",
        option.unwrap_or_default()
    )
}

fn leakage(leakage: &listing::Leakage) -> String {
    let at = match leakage.at {
        LeakageTemperature::Ambient => "ambient",
        LeakageTemperature::Elevated => "400 °F (204 °C)",
    };
    let relation = match leakage.relation {
        LeakageRelation::LessThan => "less than ",
        LeakageRelation::Equal => "",
        LeakageRelation::AtMost => "at most ",
    };
    format!(
        "{relation}{} at {at}",
        print::both(Quantity::new(leakage.value, leakage.unit))
    )
}

/// The choices the listing leaves.
fn options(held: &Held) -> String {
    let groups = held.reading().options.iter().map(|group| {
        let choices = group
            .choices
            .iter()
            .map(|choice| printable(choice))
            .collect::<Vec<_>>();
        match group.kind {
            OptionGroupKind::Optional => format!("{} may be left out", listed(&choices)),
            OptionGroupKind::Alternates | OptionGroupKind::Configurations => choices.join(" or "),
        }
    });
    groups.collect::<Vec<_>>().join("; ")
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
    let clauses = &held.reading().clauses;
    let confirmed = clauses
        .iter()
        .filter(|clause| clause.status != Status::Draft)
        .count();
    let all = clauses.len();
    match (&held.state, confirmed) {
        (State::Confirmed(_), _) => (GOOD, format!("confirmed: {}", by_whom(held))),
        (State::Draft(_), 0) => (
            UNKNOWN,
            "a draft: nobody has confirmed it; verdicts on it are provisional".to_owned(),
        ),
        (State::Draft(_), some) => (
            UNKNOWN,
            format!(
                "a draft: {some} of {all} clauses are confirmed; verdicts on it are provisional"
            ),
        ),
    }
}

/// Who has confirmed, and when last.
fn by_whom(held: &Held) -> String {
    let Some(confirmation) = &held.confirmation else {
        return String::new();
    };
    let entries = &confirmation.overlay.entries;
    let mut names: Vec<&str> = entries.iter().map(|entry| entry.by.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    let names: Vec<String> = names.into_iter().map(printable).collect();
    let corrected = entries
        .iter()
        .filter(|entry| entry.correction.is_some())
        .count();
    let last = entries
        .iter()
        .map(|entry| entry.when)
        .max()
        .map(|day| format!(", {day}"))
        .unwrap_or_default();
    let corrected = if corrected == 0 {
        String::new()
    } else {
        format!("; {corrected} corrected")
    };
    format!("every clause, by {}{last}{corrected}", listed(&names))
}

/// Clauses as a table.
pub(crate) fn clauses<'a>(clauses: impl Iterator<Item = &'a Clause>) -> String {
    let is_wide = page::width() >= 118;
    let headings: &[&str] = if is_wide {
        &["clause", "words", "about", "asks for", "applies", "read by"]
    } else {
        &["clause", "words", "about", "asks for"]
    };
    let mut rows = table::table(headings);
    table::unwrapped(&mut rows, 0);
    for clause in clauses {
        let scope = clause::scope(clause);
        let mut asks = clause::requirement(clause);
        let read_by = clause::read_by(clause);
        let mut cells = vec![
            Cell::new(clause::id(clause)),
            Cell::new(clause::words(clause)),
            Cell::new(clause::subject(clause)),
        ];
        if is_wide {
            cells.push(tinted(clause, asks));
            cells.push(Cell::new(scope.join("\n")));
            cells.push(tinted(clause, read_by));
        } else {
            for line in scope.into_iter().chain([read_by]) {
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

fn legend(held: &Held) -> String {
    let clauses = &held.reading().clauses;
    let count = |confidence| {
        clauses
            .iter()
            .filter(|clause| clause.confidence == confidence)
            .count()
    };
    let words = format!(
        "{}: {} by rule, {} with a doubt (!), {} left as words (¶) for a person. ‹ › marks the number that was read, \
         ✓ a clause that a person has confirmed, ✎ one that a person has corrected. `everyclause read --rules NAME` shows a rule.",
        counted(clauses.len(), "clause", "clauses"),
        count(Confidence::ByRule),
        count(Confidence::WithDoubt),
        count(Confidence::Prose),
    );
    wrapped(&words, 0, 0)
}

/// That no word was lost, and what the words are.
fn accounted(held: &Held) -> String {
    let reading = held.reading();
    let bytes = |kind: PlaceKind| -> usize {
        reading
            .places
            .iter()
            .filter(|place| place.kind == kind)
            .map(|place| place.span.len())
            .sum()
    };
    let kinds = format!(
        "clauses {}, headings {}, head {}, page furniture {}, white space {}",
        bytes(PlaceKind::Clause),
        bytes(PlaceKind::Heading),
        bytes(PlaceKind::Header),
        bytes(PlaceKind::Furniture),
        bytes(PlaceKind::Space)
    );
    let accounted = reading.accounted;
    if accounted.bytes == accounted.of {
        let line = format!(
            "✓ Every byte is accounted for: {} of {} ({kinds}).",
            accounted.bytes, accounted.of
        );
        paint(GOOD, wrapped(&line, 0, 0).trim_end()) + "\n"
    } else {
        let line = format!(
            "✗ {} of {} bytes are accounted for ({kinds}).",
            accounted.bytes, accounted.of
        );
        paint(UNKNOWN, wrapped(&line, 0, 0).trim_end()) + "\n"
    }
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
            &on_one_line(&warning.message),
            &held.file,
            excerpt.as_ref(),
            &advice(warning.kind),
        ));
        text.push_str("\n\n");
    }
    text
}

fn advice(kind: WarningKind) -> Vec<Note<'static>> {
    match kind {
        WarningKind::DualUnitsDisagree => vec![Note::Note(
            "the stricter value governs until a person decides",
        )],
        WarningKind::UnreadNumber => vec![Note::Note("the words are left for a person to answer")],
        WarningKind::NotAListing => {
            vec![Note::Help("give one listing: a title, then numbered items")]
        }
        WarningKind::UnknownItem
        | WarningKind::DesignationDisagrees
        | WarningKind::Contradiction
        | WarningKind::Encoding
        | WarningKind::Outline
        | WarningKind::LeakageUnit => Vec::new(),
    }
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
