//! What another product would come to.

use comfy_table::Cell;
use conformance::Verdict;
use selection::substitution::{OfMark, Outcome, Substitution};

use super::find::stands;
use super::page::{heading, wrapped};
use super::paint::{STRONG, cell, paint};
use super::table;
use super::words::{counted, listed, on_one_line, shortened};

/// What it would come to, mark by mark.
pub(crate) fn substitution(made: &Substitution) -> String {
    let mut text = format!("{}\n", paint(STRONG, &on_one_line(&made.product)));
    let count = |outcome| {
        made.marks
            .iter()
            .filter(|mark| mark.outcome == outcome)
            .count()
    };
    text.push_str(&format!(
        "in place of what {} now; {}, {}, {}\n",
        counted(made.marks.len(), "mark has", "marks have"),
        counted(count(Outcome::Holds), "listing holds", "listings hold"),
        counted(
            count(Outcome::AnotherListing),
            "needs another",
            "need another"
        ),
        counted(count(Outcome::NoListing), "has none", "have none"),
    ));
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
        let marks: Vec<&OfMark> = made
            .marks
            .iter()
            .filter(|mark| mark.outcome == outcome)
            .collect();
        if !marks.is_empty() {
            text.push_str(&heading(words));
            text.push_str(&of_outcome(&marks, outcome));
        }
    }
    if !made.untouched.is_empty() {
        text.push('\n');
        let component = made
            .property
            .split_once('.')
            .map_or(made.property.as_str(), |(one, _)| one);
        text.push_str(&wrapped(
            &format!("No {component} is named for {}.", listed(&made.untouched)),
            0,
            2,
        ));
    }
    text.push('\n');
    for line in &made.standing_lines {
        text.push_str(&wrapped(line, 0, 0));
    }
    text
}

fn of_outcome(marks: &[&OfMark], outcome: Outcome) -> String {
    let last = match outcome {
        Outcome::Holds => "",
        Outcome::AnotherListing => "others that would do",
        Outcome::NoListing => "nearest, and what it takes",
    };
    let mut made = table::table(&["mark", "now", "listing", "before", "with it", last]);
    for mark in marks {
        let own = mark.answer.own.clone().unwrap_or_else(|| "–".to_owned());
        made.add_row(vec![
            cell(verdict(outcome), on_one_line(&mark.answer.name)),
            Cell::new(on_one_line(&mark.now)),
            Cell::new(own),
            stands(mark.before),
            stands(mark.answer.own_rank),
            Cell::new(others(mark, outcome)),
        ]);
    }
    table::unwrapped(&mut made, 0);
    table::unwrapped(&mut made, 2);
    table::set(&made)
}

const fn verdict(outcome: Outcome) -> Verdict {
    match outcome {
        Outcome::Holds => Verdict::Met,
        Outcome::AnotherListing => Verdict::Open,
        Outcome::NoListing => Verdict::NotMet,
    }
}

fn others(mark: &OfMark, outcome: Outcome) -> String {
    let answer = &mark.answer;
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
        Outcome::NoListing => answer.near.first().map_or_else(String::new, |near| {
            let words: Vec<&str> = near
                .matched
                .changes
                .iter()
                .map(|one| one.words.as_str())
                .collect();
            shortened(&format!("{}: {}", near.listing, words.join("; ")), 120)
        }),
    }
}
