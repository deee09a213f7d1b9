//! Every mark of a schedule, and the few listings that together serve them.

use comfy_table::Cell;
use conformance::Verdict;
use selection::{Answered, Rank};

use super::dotted;
use crate::finding::{Finds, Together};
use crate::show::page::{heading, labelled, wrapped};
use crate::show::paint::{STRONG, cell, paint};
use crate::show::table;
use crate::show::words::{counted, in_runs, listed, on_one_line, shortened};

/// Every mark, then the few listings.
pub(super) fn schedule(finds: &Finds, answers: &[Answered], together: &Together) -> String {
    let mut text = String::new();
    if !finds.building.is_empty() {
        text.push_str(&format!(
            "{}\n",
            paint(STRONG, &on_one_line(&finds.building))
        ));
    }
    text.push_str(&format!(
        "{} against {}\n\n",
        counted(answers.len(), "mark", "marks"),
        counted(finds.listings, "listing", "listings")
    ));
    let mut made = table::table(&[
        "mark",
        "its own listing",
        "",
        "fit",
        "open",
        "nearest",
        "what it takes",
    ]);
    for answer in answers {
        made.add_row(row(answer));
    }
    table::unwrapped(&mut made, 0);
    table::unwrapped(&mut made, 1);
    text.push_str(&table::set(&made));
    text.push_str(&heading("Together"));
    text.push_str(&self::together(together));
    text
}

fn row(answer: &Answered) -> Vec<Cell> {
    let best = answer
        .fits
        .first()
        .or(answer.open.first())
        .or(answer.near.first());
    let takes = best.map_or_else(String::new, |listed| match listed.matched.rank {
        Rank::Fits { .. } => "nothing".to_owned(),
        Rank::Open { open, .. } => counted(open, "answer", "answers"),
        _ => {
            let words: Vec<&str> = listed
                .matched
                .changes
                .iter()
                .map(|one| one.words.as_str())
                .collect();
            shortened(&words.join("; "), 90)
        }
    });
    vec![
        Cell::new(on_one_line(&answer.name)),
        Cell::new(answer.own.clone().unwrap_or_else(|| "–".to_owned())),
        stands(answer.own_rank),
        Cell::new(dotted(answer.fits.len())),
        Cell::new(dotted(answer.open.len())),
        Cell::new(best.map_or("none", |listed| listed.listing.as_str())),
        Cell::new(takes),
    ]
}

/// Where a listing stands, as a cell.
pub(in crate::show) fn stands(rank: Option<Rank>) -> Cell {
    match rank {
        None => Cell::new("–"),
        Some(Rank::Fits { .. }) => cell(Verdict::Met, "✓ fits".to_owned()),
        Some(Rank::Open { open, .. }) => cell(Verdict::Open, format!("? {open} open")),
        Some(Rank::Near { changes, .. }) => cell(
            Verdict::NotMet,
            format!("✗ {}", counted(changes, "change", "changes")),
        ),
        Some(Rank::Beyond) => cell(Verdict::NotMet, "✗ not for it".to_owned()),
    }
}

fn together(together: &Together) -> String {
    if together.chosen.is_empty() {
        return "No listing here serves any mark.\n".to_owned();
    }
    let proof = if together.is_smallest() {
        "fewer won't do".to_owned()
    } else {
        format!("fewer than {} won't do", together.at_least)
    };
    let mut text = format!(
        "{} would serve every mark that any serves; {proof}.\n",
        counted(together.chosen.len(), "listing", "listings")
    );
    for one in &together.chosen {
        let mut marks = Vec::new();
        let runs =
            |names: &[String]| in_runs(&names.iter().map(String::as_str).collect::<Vec<_>>());
        if !one.fits.is_empty() {
            marks.push(format!("✓ {}", runs(&one.fits)));
        }
        if !one.open.is_empty() {
            marks.push(format!("? {}", runs(&one.open)));
        }
        text.push_str(&labelled(
            &on_one_line(&one.listing),
            &marks.join("  "),
            2,
            18,
        ));
    }
    if !together.unserved.is_empty() {
        text.push_str(&wrapped(
            &format!("No listing here serves {}.", listed(&together.unserved)),
            0,
            2,
        ));
    }
    text
}
