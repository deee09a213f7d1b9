//! What another product would come to.

use comfy_table::Cell;
use conformance::Verdict;
use selection::Rank;
use selection::substitution::{OfCondition, Outcome, Row, Substitution};
use wording::joints::{OfMark, in_marks};

use super::find::{stands, takes};
use super::page::{heading, wrapped};
use super::paint::{STRONG, cell, paint};
use super::table;
use super::words::{counted, on_one_line, shortened};

/// The most rows that are shown of one outcome.
const MOST_ROWS: usize = 40;

/// What it would come to, mark by mark.
pub(crate) fn substitution(made: &Substitution) -> String {
    let mut text = format!("{}\n", paint(STRONG, &on_one_line(&made.product)));
    let all: usize = made
        .conditions
        .iter()
        .map(|one| one.answer.joints.len())
        .sum();
    text.push_str(&wrapped(
        &format!(
            "in place of what {} now: their listing holds at {}; {} another; {} none",
            counted(all, "joint has", "joints have"),
            made.joints(Outcome::Holds),
            counted(made.joints(Outcome::AnotherListing), "needs", "need"),
            counted(made.joints(Outcome::NoListing), "has", "have"),
        ),
        0,
        2,
    ));
    let failed_before: usize = made
        .conditions
        .iter()
        .filter(|one| one.outcome != Outcome::Holds && !holds(one.before))
        .map(|one| one.answer.joints.len())
        .sum();
    if failed_before > 0 {
        text.push_str(&wrapped(
            &format!(
                "{failed_before} of those at which it doesn't hold failed before too, for other reasons or the same."
            ),
            0,
            2,
        ));
    }
    if !made.with.is_empty() {
        text.push_str(&wrapped(
            &format!("known of it: {}", on_one_line(&made.with.join("; "))),
            0,
            2,
        ));
    }
    for (outcome, words) in [
        (Outcome::NoListing, "No listing here holds"),
        (Outcome::AnotherListing, "Another listing is needed"),
        (Outcome::Holds, "The listing holds"),
    ] {
        let rows = made.rows(outcome, |one| last(one, outcome));
        if !rows.is_empty() {
            text.push_str(&heading(words));
            text.push_str(&of_outcome(&rows, outcome));
        }
    }
    if !made.untouched.is_empty() {
        text.push('\n');
        let component = made
            .property
            .split_once('.')
            .map_or(made.property.as_str(), |(one, _)| one);
        let each = made.untouched.iter().map(|one| OfMark {
            mark: &one.mark,
            joints: &one.joints,
            is_whole_mark: one.is_whole_mark,
        });
        let words = format!("No {component} is named for {}.", in_marks(each));
        text.push_str(&wrapped(&shortened(&words, 600), 0, 2));
    }
    text.push('\n');
    for line in &made.standing_lines {
        text.push_str(&wrapped(line, 0, 0));
    }
    text
}

const fn holds(rank: Option<Rank>) -> bool {
    matches!(rank, Some(Rank::Fits { .. } | Rank::Open { .. }))
}

fn of_outcome(rows: &[Row<'_, String>], outcome: Outcome) -> String {
    let last = match outcome {
        Outcome::Holds => "",
        Outcome::AnotherListing => "others that would do",
        Outcome::NoListing => "nearest, and what it takes",
    };
    let mut table = table::table(&["joints", "now", "listing", "before", "with it", last]);
    for row in rows.iter().take(MOST_ROWS) {
        let answer = &row.first.answer;
        let joints = OfMark {
            mark: &answer.name,
            joints: &row.joints,
            is_whole_mark: row.is_whole_mark,
        };
        table.add_row(vec![
            cell(verdict(outcome), shortened(&joints.in_words(), 60)),
            Cell::new(on_one_line(&row.first.now)),
            Cell::new(answer.own.as_deref().unwrap_or("–")),
            stands(row.first.before),
            stands(answer.own_rank),
            Cell::new(&row.told),
        ]);
    }
    table::at_most(&mut table, 0, 26);
    table::unwrapped(&mut table, 2);
    table::unwrapped(&mut table, 3);
    table::unwrapped(&mut table, 4);
    let mut text = table::set(&table);
    let more = rows.len().saturating_sub(MOST_ROWS);
    if more > 0 {
        text.push_str(&format!(
            "and {}; `--json` has every one\n",
            counted(more, "row more", "rows more")
        ));
    }
    text
}

const fn verdict(outcome: Outcome) -> Verdict {
    match outcome {
        Outcome::Holds => Verdict::Met,
        Outcome::AnotherListing => Verdict::Open,
        Outcome::NoListing => Verdict::NotMet,
    }
}

/// What else would do, or comes nearest.
fn last(one: &OfCondition, outcome: Outcome) -> String {
    let answer = &one.answer;
    match outcome {
        Outcome::Holds => String::new(),
        Outcome::AnotherListing => {
            let names = answer.fits.iter().map(|one| one.listing.clone());
            let open = answer
                .open
                .iter()
                .map(|one| format!("{} ({} open)", one.listing, one.matched.counts.open));
            names.chain(open).collect::<Vec<_>>().join(", ")
        }
        Outcome::NoListing => answer.near.first().map_or_else(
            || "none is for such a joint".to_owned(),
            |near| shortened(&format!("{}: {}", near.listing, takes(near, 120)), 120),
        ),
    }
}
