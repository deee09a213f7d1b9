//! Tables set in columns of white space, without any rule.

use measure::notation::unit_at;

use crate::layout::{Line, is_rule};

use super::grid::{columns, filled, gaps, split};
use super::ruled::heads_rows;
use super::{Row, Table, Words, around, speaks};

const MOST_HEADING_LINES: usize = 4;

/// The table just below a caption: rows in columns, under headings that hold no number; a blank line may part the two. The first line that
/// is no row ends the table.
pub(super) fn captioned_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let region = lines.get(start..)?;
    let first = block(region);
    let headed = region
        .iter()
        .take(first)
        .take_while(|line| !holds_value(line))
        .count();
    let (headings, rows_start) = if (1..=MOST_HEADING_LINES).contains(&headed) && headed < first {
        (headed, headed)
    } else if headed == first && (1..=MOST_HEADING_LINES).contains(&first) {
        (first, first + 1)
    } else {
        return None;
    };
    let end = rows_start + rows_len(region.get(rows_start..)?);
    let (headings, rows) = (region.get(..headings)?, region.get(rows_start..end)?);
    let rows: Vec<Line<'_>> = rows
        .iter()
        .filter(|line| !line.is_blank())
        .copied()
        .collect();
    let rows = rows.as_slice();
    let plain = rows.len() >= 2 && headings.iter().any(|line| gaps(line.text) >= 1);
    plain
        .then(|| assembled(headings, rows, region.get(..end)?))?
        .map(|table| (table, start + end))
}

/// How many lines the rows take. Blank lines may part one row from the next where all rows are wide, and a line of second values goes on with the
/// row above: `(13 to 25)    (89)`.
fn rows_len(lines: &[Line<'_>]) -> usize {
    const WIDE: usize = 2;
    let is_row = |line: &Line<'_>| is_numbered(line) && gaps(line.text) >= 1;
    let wide = |line: &Line<'_>| is_row(line) && gaps(line.text) >= WIDE && !speaks(line.text);
    let mut len = 0;
    let mut blank = false;
    for (index, line) in lines.iter().enumerate() {
        if line.is_blank() {
            blank = true;
            continue;
        }
        let goes_on = !blank && line.text.trim_start().starts_with('(') && is_numbered(line);
        let row = if blank { wide(line) } else { is_row(line) };
        if !(row || goes_on) || line.after_page_break {
            break;
        }
        blank = false;
        len = index + 1;
    }
    len
}

/// A table without rule or caption: one to four lines of headings, then rows that hold a number or a dash in every column but the first.
/// A blank line may part the two. Three columns at least.
pub(crate) fn plain_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let region = lines.get(start..)?;
    // Most lines are text, and begin no columns.
    let first = region.first().filter(|line| gaps(line.text) >= 1)?;
    if names_requirements(first) {
        return named_columns(region, 1, 1).map(|(table, end)| (table, start + end));
    }
    let headed = region
        .iter()
        .take(MOST_HEADING_LINES + 1)
        .take_while(|line| {
            !line.is_blank() && !is_rule(line.text) && !is_data(line) && !holds_unit(line)
        })
        .count();
    if !(1..=MOST_HEADING_LINES).contains(&headed) {
        return None;
    }
    let blank = region.get(headed).is_some_and(Line::is_blank);
    let rows_start = headed + usize::from(blank);
    let body = region.get(rows_start..)?;
    if names_units(region.get(..headed)?) {
        return named_columns(region, headed, rows_start).map(|(table, end)| (table, start + end));
    }
    let data = body.iter().take_while(|line| is_data(line)).count();
    let rows_len = data + usize::from(ends_in_a_short_row(region.get(..headed)?, body, data));
    let end = rows_start + rows_len;
    let (headings, rows) = (region.get(..headed)?, region.get(rows_start..end)?);
    let heads = headings.iter().all(|line| !speaks(line.text));
    if rows_len < 2 || !heads {
        return None;
    }
    let table = assembled(headings, rows, region.get(..end)?)?;
    let full = table.headings.len() >= 3
        && table
            .headings
            .iter()
            .skip(1)
            .all(|heading| !heading.is_empty())
        && fill_their_columns(&table);
    full.then_some((table, start + end))
}

/// Whether each cell is one piece, and most rows have one in every column: a row may leave columns blank, `over 30 to 50   15   20` under three ratings.
fn fill_their_columns(table: &Table) -> bool {
    const FEWEST_FULL: usize = 2;
    let whole = |row: &&Row| row.cells.iter().all(|cell| cell.len() == 1);
    let full = table.rows.iter().filter(whole).count();
    let single = |row: &Row| row.cells.iter().all(|cell| cell.len() <= 1);
    let labelled = |row: &Row| row.cells.first().is_some_and(|cell| !cell.is_empty());
    full == table.rows.len()
        || full >= FEWEST_FULL
            && full * 2 > table.rows.len()
            && table.rows.iter().all(|row| single(row) && labelled(row))
}

/// Whether the line below rows of values is one with a single value, in one of their columns: `over 30 to 50   15`.
fn ends_in_a_short_row(headings: &[Line<'_>], body: &[Line<'_>], rows: usize) -> bool {
    const ASIDE: usize = 2;
    const MOST_WORDS: usize = 5;
    let Some((above, line)) = body.get(..rows).zip(body.get(rows)) else {
        return false;
    };
    let ended = body
        .get(rows + 1)
        .is_none_or(|next| next.is_blank() || is_rule(next.text));
    let cells = cells(line);
    let [label, value] = cells[..] else {
        return false;
    };
    let flush = above.iter().all(|row| row.indent == line.indent);
    let place = line.text.trim_end().chars().count() - value.chars().count();
    let below = columns(headings, above)
        .iter()
        .skip(1)
        .any(|(from, to)| (from.saturating_sub(ASIDE)..to + ASIDE).contains(&place));
    let short = label.split_whitespace().count() <= MOST_WORDS;
    rows >= 2
        && ended
        && flush
        && below
        && short
        && is_value(value)
        && value.contains(|c: char| c.is_ascii_digit())
}

/// A table whose columns are headed as those of units, or of properties and their values: each row has a value, or heads those below it. One row is
/// enough. Where the headings name properties, a row may hold words alone.
fn named_columns(region: &[Line<'_>], headed: usize, rows_start: usize) -> Option<(Table, usize)> {
    let body = region.get(rows_start..)?;
    let worded = region.first().is_some_and(names_requirements);
    let is_row = |line: &Line<'_>| {
        holds_unit(line)
            || gaps(line.text) >= 2 && is_numbered(line)
            || worded && gaps(line.text) >= 1
    };
    let heads = |at: usize| {
        body.get(at)
            .is_some_and(|line| heads_rows(line, body.get(at + 1)))
    };
    let rows_len = (0..body.len())
        .take_while(|at| {
            body.get(*at)
                .is_some_and(|line| !line.is_blank() && !is_rule(line.text))
                && (body.get(*at).is_some_and(is_row) || heads(*at))
        })
        .count();
    let end = rows_start + rows_len;
    let (headings, rows) = (region.get(..headed)?, region.get(rows_start..end)?);
    let heads = headings.iter().all(|line| !speaks(line.text));
    if rows.is_empty() || !heads {
        return None;
    }
    let filled: Vec<Line<'_>> = rows.iter().filter(|line| is_row(line)).copied().collect();
    let columns = columns(headings, &filled);
    if columns.len() < 3 {
        return None;
    }
    let mut table = if worded {
        row_by_row(headings, rows, &columns)
    } else {
        super::grid::filled(headings, rows, &columns, &[])
    };
    table.span = around(region.get(..end)?)?;
    Some((table, end))
}

/// A table in which each line with two cells or more is a row of its own, whichever cells it leaves blank: `fiber direction      vertical`.
fn row_by_row(headings: &[Line<'_>], rows: &[Line<'_>], columns: &[(usize, usize)]) -> Table {
    let mut table = filled(headings, &[], columns, &[]);
    for line in rows {
        let cells = split(line, columns);
        if cells.iter().filter(|cell| !cell.is_empty()).count() >= 2 {
            table.push_row(&cells, line.content());
        } else {
            table.push(&cells, line.content(), Words { line });
        }
    }
    table
}

/// Whether a column is headed as one of units.
pub(super) fn names_units(headings: &[Line<'_>]) -> bool {
    let named = |cell: &str| {
        matches!(
            cell.trim().to_lowercase().as_str(),
            "unit" | "units" | "uom"
        )
    };
    headings
        .iter()
        .any(|line| gaps(line.text) >= 1 && line.text.split("  ").any(named))
}

/// Whether a line of headings has a column of properties, one of how values are meant, and one of values: `Component  Property  Limit  Value`.
fn names_requirements(line: &Line<'_>) -> bool {
    const PROPERTIES: &[&str] = &["property", "characteristic", "parameter", "attribute"];
    const LIMITS: &[&str] = &[
        "limit",
        "limits",
        "relation",
        "sign",
        "qualifier",
        "min/max",
    ];
    const VALUES: &[&str] = &["value", "values", "requirement", "required", "figure"];
    let cells: Vec<String> = line
        .text
        .split("  ")
        .map(|cell| cell.trim().to_lowercase())
        .collect();
    let has = |names: &[&str]| cells.iter().any(|cell| names.contains(&cell.as_str()));
    [PROPERTIES, LIMITS, VALUES].into_iter().all(has)
}

/// Whether a line is a row with a unit in a cell of its own.
fn holds_unit(line: &Line<'_>) -> bool {
    let is_unit = |cell: &str| {
        let text = format!("1 {}", cell.trim().trim_end_matches('.'));
        !cell.trim().is_empty() && unit_at(&text, 1).is_some_and(|(_, end)| end == text.len())
    };
    gaps(line.text) >= 2 && is_numbered(line) && line.text.split("  ").any(is_unit)
}

pub(super) fn assembled(
    headings: &[Line<'_>],
    rows: &[Line<'_>],
    region: &[Line<'_>],
) -> Option<Table> {
    let columns = columns(headings, rows);
    if columns.len() < 2 {
        return None;
    }
    let mut table = filled(headings, rows, &columns, &[]);
    table.span = around(region)?;
    Some(table)
}

/// How many lines stand together before a blank line or a rule.
fn block(lines: &[Line<'_>]) -> usize {
    lines
        .iter()
        .take_while(|line| !line.is_blank() && !is_rule(line.text))
        .count()
}

/// Whether a cell of a line begins with a number, and not only a unit's: `pcf (kg/m3)`.
fn holds_value(line: &Line<'_>) -> bool {
    let cells: Vec<&str> = line
        .text
        .split("  ")
        .map(str::trim)
        .filter(|cell| !cell.is_empty())
        .collect();
    // `1 hr   2 hr` under `Depth   Depth` heads columns, too; so does `mm (in.)   2 h   3 h`.
    let heads = |cell: &&str| is_rating(&[*cell]) || is_of_units(cell);
    if cells.len() >= 2 && cells.iter().all(heads) {
        return false;
    }
    is_numbered(line)
        && cells
            .iter()
            .any(|cell| cell.starts_with(|c: char| c.is_ascii_digit()))
        || is_numbered(line) && gaps(line.text) == 0
        || is_data(line)
}

fn is_numbered(line: &Line<'_>) -> bool {
    line.text.contains(|c: char| c.is_ascii_digit())
}

/// What blanks part in a line.
fn cells<'l>(line: &Line<'l>) -> Vec<&'l str> {
    let cells = line.text.trim().split("  ").map(str::trim);
    cells.filter(|cell| !cell.is_empty()).collect()
}

/// Whether a line is a row of three cells or more, each but the first a number or a dash.
pub(super) fn is_data(line: &Line<'_>) -> bool {
    let cells = cells(line);
    let (Some(first), Some(rest)) = (cells.first(), cells.get(1..)) else {
        return false;
    };
    rest.len() >= 2
        && (first.split_whitespace().count() <= 8 || is_class_code(first))
        && rest.iter().all(|cell| is_value(cell))
        && rest
            .iter()
            .any(|cell| cell.contains(|c: char| c.is_ascii_digit()))
        && (is_of_time(first) || !is_rating(rest))
}

/// Whether a cell is a European class code, whose parts stand apart: `EI 90 - H - X - F - W 10 to 50`.
fn is_class_code(cell: &str) -> bool {
    const LETTERS: &[&str] = &["E", "EI", "EW", "REI"];
    let mut words = cell.split_whitespace();
    words.next().is_some_and(|word| LETTERS.contains(&word))
        && words
            .next()
            .is_some_and(|word| word.bytes().all(|byte| byte.is_ascii_digit()))
        && words.next() == Some("-")
}

/// Whether the cells are ratings, which head columns: `1 hr   2 hr`, `EI 90   EI 120`.
pub(super) fn is_rating(cells: &[&str]) -> bool {
    cells.iter().all(|cell| {
        let lower = cell.to_lowercase();
        lower.starts_with("ei ") || lower.starts_with("rei ") || is_rated_time(&lower)
    })
}

/// Whether a cell holds units and nothing besides: `mm (in.)`.
fn is_of_units(cell: &str) -> bool {
    let words = cell.split([' ', '(', ')']).filter(|word| !word.is_empty());
    let is_unit = |word: &str| {
        let text = format!("1 {}", word.trim_end_matches('.'));
        unit_at(&text, 1).is_some_and(|(_, end)| end == text.len())
    };
    let mut units = words.peekable();
    units.peek().is_some() && units.all(is_unit)
}

/// Whether a cell is a time that a rating may be: `1-1/2 hr`, `90 min`. Of `2-1/2" min` the word is a limit, and nothing is rated for a day.
fn is_rated_time(lower: &str) -> bool {
    const HOURS: &[&str] = &[" hr", " hrs", " h", " hour", " hours", "-hr", "-hour"];
    const MOST_HOURS: u32 = 4;
    const MINUTES: &[&str] = &["15", "20", "30", "45", "60", "90", "120", "180", "240"];
    let cell = lower.trim_end_matches('.');
    let hours = HOURS.iter().find_map(|unit| cell.strip_suffix(unit));
    let whole = hours.map(|number| number.split(['-', '/', '.']).next().unwrap_or_default());
    let in_hours =
        whole.is_some_and(|whole| whole.parse::<u32>().is_ok_and(|hours| hours <= MOST_HOURS));
    let in_minutes = cell
        .strip_suffix(" min")
        .is_some_and(|number| MINUTES.contains(&number));
    in_hours || in_minutes
}

/// Whether a label ends in a unit of time, so that `30 min.` beside it is no rating: `Trade traffic, h`, `Full cure (days)`.
fn is_of_time(label: &str) -> bool {
    const UNITS: &[&str] = &[
        "h", "hr", "hrs", "hours", "days", "d", "minutes", "weeks", "s", "seconds",
    ];
    let last = label.rsplit([' ', '(']).next().unwrap_or_default();
    let parted = label.contains([',', '(']);
    parted && UNITS.contains(&last.trim_end_matches([')', '.']).to_lowercase().as_str())
}

/// Whether a cell is a number with at most a few words, a count in words, or a dash.
fn is_value(cell: &str) -> bool {
    const WORDS: usize = 5;
    const LEADS: &[&str] = &[
        "up", "over", "above", "to", "and", "min", "max", "min.", "max.", "nom", "not", "less",
        "more", "than", "at", "least", "most", "under",
    ];
    const SIGNS: &[&str] = &["≥", "≤", ">", "<", ">=", "<=", "±"];
    const COUNTS: &[&str] = &[
        "one", "two", "three", "four", "five", "six", "none", "nil", "n/a",
    ];
    let words: Vec<&str> = cell.split_whitespace().collect();
    let dash = !cell.contains(char::is_alphanumeric);
    let counted = words.len() <= 2
        && words
            .first()
            .is_some_and(|word| COUNTS.contains(&word.to_lowercase().as_str()));
    let numeric = words
        .iter()
        .find(|word| !LEADS.contains(&word.to_lowercase().as_str()) && !SIGNS.contains(word))
        .is_some_and(|word| {
            word.trim_start_matches(|c: char| !c.is_alphanumeric())
                .starts_with(|c: char| c.is_numeric())
        });
    dash || counted || (numeric && words.len() <= WORDS)
}
