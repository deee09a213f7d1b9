//! Every mark of a schedule, where its own listing doesn't hold, and the few listings that together serve it.

use comfy_table::Cell;
use conformance::Verdict;
use selection::{Answered, Listed, Rank};
use wording::joints::{OfMark, in_marks};

use super::dotted;
use crate::finding::{Finds, Serving, Together};
use crate::show::page::{heading, labelled, wrapped};
use crate::show::paint::{STRONG, cell, paint};
use crate::show::table;
use crate::show::words::{counted, in_runs, on_one_line, shortened};

/// The most rows that are shown of where listings don't hold.
const MOST_FAILING: usize = 40;

/// Every mark, then where its own listing doesn't hold, then the few listings.
pub(super) fn schedule(finds: &Finds, answers: &[Answered], together: &Together) -> String {
    let mut text = String::new();
    if !finds.building.is_empty() {
        text.push_str(&format!(
            "{}\n",
            paint(STRONG, &on_one_line(&finds.building))
        ));
    }
    let marks: Vec<&[Answered]> = answers
        .chunk_by(|one, other| one.name == other.name)
        .collect();
    let joints: usize = answers.iter().map(|answer| answer.joints.len()).sum();
    text.push_str(&format!(
        "{} of {}, in {}, against {}\n\n",
        counted(joints, "joint", "joints"),
        counted(marks.len(), "mark", "marks"),
        counted(answers.len(), "different condition", "different conditions"),
        counted(finds.listings, "listing", "listings"),
    ));
    text.push_str(&of_marks(&marks));
    text.push_str(&failing(answers, &marks));
    text.push_str(&heading("Together"));
    text.push_str(&self::together(together));
    text
}

/// How many joints of each mark its own listing fits, is open at, or doesn't hold at.
fn of_marks(marks: &[&[Answered]]) -> String {
    let titles = [
        "mark",
        "joints",
        "its own listing",
        "✓",
        "?",
        "✗",
        "others for all",
    ];
    let mut made = table::table(&titles);
    for of_mark in marks {
        let own = of_mark.chunk_by(|one, other| one.own == other.own);
        for answers in own {
            let joints = |is: fn(&Rank) -> bool| {
                let ours = answers
                    .iter()
                    .filter(|one| one.own_rank.as_ref().is_some_and(is));
                ours.map(|one| one.joints.len()).sum::<usize>()
            };
            let all: usize = answers.iter().map(|one| one.joints.len()).sum();
            let own = answers.first().and_then(|one| one.own.clone());
            made.add_row(vec![
                Cell::new(answers.first().map_or("", |one| one.name.as_str())),
                Cell::new(all),
                Cell::new(own.unwrap_or_else(|| "–".to_owned())),
                counted_cell(
                    Verdict::Met,
                    joints(|rank| matches!(rank, Rank::Fits { .. })),
                ),
                counted_cell(
                    Verdict::Open,
                    joints(|rank| matches!(rank, Rank::Open { .. })),
                ),
                counted_cell(
                    Verdict::NotMet,
                    joints(|rank| matches!(rank, Rank::Near { .. } | Rank::Beyond)),
                ),
                Cell::new(dotted(others_for_all(answers))),
            ]);
        }
    }
    for column in [1, 3, 4, 5, 6] {
        table::to_the_right(&mut made, column);
    }
    table::unwrapped(&mut made, 0);
    table::unwrapped(&mut made, 2);
    table::set(&made)
}

fn counted_cell(verdict: Verdict, count: usize) -> Cell {
    match count {
        0 => Cell::new("·"),
        _ => cell(verdict, count.to_string()),
    }
}

/// How many listings other than its own hold at all these joints.
fn others_for_all(answers: &[Answered]) -> usize {
    let holding = |answer: &Answered| -> Vec<String> {
        let all = answer.fits.iter().chain(&answer.open);
        let others = all.filter(|one| answer.own.as_ref() != Some(&one.listing));
        others.map(|one| one.listing.clone()).collect()
    };
    let mut each = answers.iter().map(holding);
    let first = each.next().unwrap_or_default();
    let left = each.fold(first, |left, other| {
        left.into_iter().filter(|one| other.contains(one)).collect()
    });
    left.len()
}

/// Where no listing is named or the one named doesn't hold, and which is nearest there.
fn failing(answers: &[Answered], marks: &[&[Answered]]) -> String {
    let holds =
        |answer: &&Answered| matches!(answer.own_rank, Some(Rank::Fits { .. } | Rank::Open { .. }));
    let failing: Vec<&Answered> = answers.iter().filter(|answer| !holds(answer)).collect();
    if failing.is_empty() {
        return String::new();
    }
    let mut text = heading("Where its own listing doesn't hold");
    let mut made = table::table(&["joints", "its own", "nearest there", "what that takes"]);
    for answer in failing.iter().take(MOST_FAILING) {
        let of_mark = marks.iter().copied().flatten();
        let of_mark = of_mark.filter(|one| one.name == answer.name);
        let joints = OfMark {
            mark: &answer.name,
            joints: &answer.joints,
            is_whole_mark: of_mark.count() == 1,
        };
        let best = best(answer);
        made.add_row(vec![
            Cell::new(shortened(&joints.in_words(), 60)),
            stands(answer.own_rank),
            Cell::new(best.map_or("none", |one| one.listing.as_str())),
            Cell::new(best.map_or_else(String::new, |one| takes(one, 90))),
        ]);
    }
    table::at_most(&mut made, 0, 30);
    table::unwrapped(&mut made, 1);
    table::unwrapped(&mut made, 2);
    text.push_str(&table::set(&made));
    let more = failing.len().saturating_sub(MOST_FAILING);
    if more > 0 {
        text.push_str(&format!(
            "and {}; `--json` has every one\n",
            counted(more, "condition more", "conditions more")
        ));
    }
    text
}

/// The listing that comes first.
fn best(answer: &Answered) -> Option<&Listed> {
    let mut all = answer.fits.iter().chain(&answer.open).chain(&answer.near);
    all.next()
}

/// What it takes for a listing to fit.
pub(in crate::show) fn takes(listed: &Listed, most: usize) -> String {
    match listed.matched.rank {
        Rank::Fits { .. } => "nothing".to_owned(),
        Rank::Open { open, .. } => counted(open, "answer", "answers"),
        _ => {
            let changes = listed.matched.changes.iter();
            let words: Vec<&str> = changes.map(|one| one.words.as_str()).collect();
            shortened(&words.join("; "), most)
        }
    }
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
        return "No listing here serves any joint.\n".to_owned();
    }
    let proof = if together.is_smallest() {
        "fewer won't do".to_owned()
    } else {
        format!("fewer than {} won't do", together.at_least)
    };
    let mut text = wrapped(
        &format!(
            "{} would serve every joint that any serves (✓ fits, ? open); {proof}.",
            counted(together.chosen.len(), "listing", "listings")
        ),
        0,
        2,
    );
    for one in &together.chosen {
        text.push_str(&labelled(&on_one_line(&one.listing), &serves(one), 2, 18));
    }
    if !together.unserved.is_empty() {
        let each = together.unserved.iter().map(|one| OfMark {
            mark: &one.mark,
            joints: &one.joints,
            is_whole_mark: one.is_whole_mark,
        });
        text.push_str(&wrapped(
            &shortened(&format!("No listing here serves {}.", in_marks(each)), 600),
            0,
            2,
        ));
    }
    text
}

/// The marks that a listing serves; of those it serves in part, the joints that it doesn't.
fn serves(serving: &Serving) -> String {
    let whole = |is_open: bool| {
        let ours = serving.marks.iter();
        let ours = ours.filter(|one| one.not.is_empty() && one.open.is_empty() != is_open);
        let marks: Vec<&str> = ours.map(|one| one.mark.as_str()).collect();
        in_runs(&marks)
    };
    let mut parts = Vec::new();
    for (sign, marks) in [("✓", whole(false)), ("?", whole(true))] {
        if !marks.is_empty() {
            parts.push(format!("{sign} {marks}"));
        }
    }
    let in_part: Vec<String> = serving
        .marks
        .iter()
        .filter(|one| !one.not.is_empty())
        .map(|one| {
            let joints: Vec<&str> = one.not.iter().map(String::as_str).collect();
            let sign = if one.open.is_empty() { "✓" } else { "?" };
            format!(
                "{sign} {} but not {}",
                one.mark,
                shortened(&in_runs(&joints), 60)
            )
        })
        .collect();
    parts.extend(in_part);
    on_one_line(&parts.join("; "))
}
