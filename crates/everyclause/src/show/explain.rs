//! One joint, every clause of it.

use conformance::{Chosen, Explanation, Finding, How, JointResult, Standing, Verdict};

use super::check::{outcome, standing};
use super::page::{heading, labelled, wrapped};
use super::paint::{QUIET, STRONG, UNKNOWN, as_verdict, mark, paint, style};
use super::reasons::{place, width};
use super::words::{counted, in_runs, on_one_line, shortened};
use crate::checking::{Checked, STANDING_LINES};
use crate::shelf::Held;

/// Everything found of a joint, in the order of the listing.
pub(crate) fn joint(joint: &Checked, held: Option<&Held>, all: bool) -> String {
    let mut text = head(joint);
    let Some(result) = &joint.result else {
        text.push_str("\nNo listing is named for this joint or its mark, so there is nothing to check it against: it stays open.\n\n");
        text.push_str(&standing(&STANDING_LINES));
        return text;
    };
    text.push_str(&counts(result));
    text.push_str(&choices(result));
    let (of_head, of_clauses): (Vec<&Finding>, Vec<&Finding>) = result
        .findings
        .iter()
        .partition(|finding| finding.explanation.clause.starts_with("header/"));
    text.push_str(&part(
        "What the head of the listing asks",
        &of_head,
        held,
        all,
    ));
    text.push_str(&part(
        "Every clause, in the order of the listing",
        &of_clauses,
        held,
        all,
    ));
    text.push('\n');
    text.push_str(&standing(&STANDING_LINES));
    text
}

fn head(joint: &Checked) -> String {
    let words = outcome(joint);
    let mut text = format!(
        "{}  {}\n",
        paint(STRONG, &on_one_line(&joint.joint)),
        paint(style(as_verdict(joint.overall())), &words)
    );
    let title = if joint.title.is_empty() {
        String::new()
    } else {
        format!(": {}", joint.title)
    };
    let mark = on_one_line(&format!("{}{title}", joint.mark));
    text.push_str(&labelled("mark", &mark, 2, 9));
    let place = on_one_line(&joint.place());
    if !place.is_empty() {
        text.push_str(&labelled("place", &place, 2, 9));
    }
    if let Some(result) = &joint.result {
        let listing = joint.listing.as_deref().unwrap_or_default();
        let edition = if result.edition.is_empty() {
            String::new()
        } else {
            format!(", {}", result.edition)
        };
        let words = on_one_line(&format!("{}{edition} ({listing})", result.listing));
        text.push_str(&labelled("listing", &words, 2, 9));
        if result.standing == Standing::Provisional {
            let words = "provisional: nobody has confirmed all of how the listing was read";
            text.push_str(&paint(
                UNKNOWN,
                labelled("standing", words, 2, 9).trim_end(),
            ));
            text.push('\n');
        }
    }
    text
}

fn counts(result: &JointResult) -> String {
    let counts = result.counts;
    let kinds = [
        (Verdict::Met, counts.met),
        (Verdict::NotMet, counts.not_met),
        (Verdict::Open, counts.open),
        (Verdict::Judged, counts.judged),
        (Verdict::NotApplicable, counts.not_applicable),
    ];
    let words: Vec<String> = kinds
        .iter()
        .map(|(verdict, count)| format!("{} {count} {}", mark(*verdict), verdict.words()))
        .collect();
    labelled("clauses", &words.join(", "), 2, 9)
}

/// What was chosen of the listing's options, and what was taken to be so.
fn choices(result: &JointResult) -> String {
    let mut text = String::new();
    for chosen in &result.chosen {
        text.push_str(&labelled("option", &choice(chosen), 2, 9));
    }
    for assumed in &result.assumed {
        text.push_str(&labelled("assumed", &on_one_line(assumed), 2, 9));
    }
    for note in &result.notes {
        text.push_str(&labelled("note", &on_one_line(note), 2, 9));
    }
    text
}

fn choice(chosen: &Chosen) -> String {
    let how = match chosen.how {
        How::Stated => "as the schedule says",
        How::BestFit => "fits what is known best",
        How::Unknown => "nothing says which is built",
    };
    let others: Vec<String> = chosen
        .considered
        .iter()
        .filter(|other| chosen.choice.as_ref() != Some(&other.choice))
        .map(|other| {
            format!(
                "{} ({} met, {} not, {} open)",
                other.choice, other.counts.met, other.counts.not_met, other.counts.open
            )
        })
        .collect();
    let choice = chosen.choice.as_deref().unwrap_or("left out");
    let others = if others.is_empty() {
        String::new()
    } else {
        format!("; not {}", others.join(", "))
    };
    on_one_line(&format!("{}: {choice}, {how}{others}", chosen.group))
}

fn part(title: &str, findings: &[&Finding], held: Option<&Held>, all: bool) -> String {
    if findings.is_empty() {
        return String::new();
    }
    let mut text = heading(title);
    let mut passed: Vec<&Finding> = Vec::new();
    for finding in findings {
        if finding.verdict == Verdict::NotApplicable && !all {
            passed.push(finding);
            continue;
        }
        text.push_str(&not_applicable(&mut passed));
        text.push_str(&one(finding, held));
    }
    text.push_str(&not_applicable(&mut passed));
    text
}

/// Clauses that don't apply, in a line.
fn not_applicable(passed: &mut Vec<&Finding>) -> String {
    if passed.is_empty() {
        return String::new();
    }
    let is_head = passed
        .iter()
        .all(|finding| finding.explanation.clause.starts_with("header/"));
    let ids: Vec<String> = passed
        .iter()
        .map(|finding| name(&finding.explanation))
        .collect();
    let ids: Vec<&str> = ids.iter().map(String::as_str).collect();
    let what = if is_head {
        String::new()
    } else {
        format!(" {}", counted(ids.len(), "clause", "clauses"))
    };
    let verb = if ids.len() == 1 {
        "does not apply"
    } else {
        "do not apply"
    };
    let line = format!(
        "{}{what} {verb}: {}",
        mark(Verdict::NotApplicable),
        in_runs(&ids)
    );
    passed.clear();
    paint(QUIET, wrapped(&line, 0, 2).trim_end()) + "\n"
}

/// A clause by its id; what the head asks by the id's own words.
fn name(explanation: &Explanation) -> String {
    match explanation.clause.strip_prefix("header/") {
        Some(words) => words.replace('-', " "),
        None => on_one_line(&explanation.clause),
    }
}

fn one(finding: &Finding, held: Option<&Held>) -> String {
    let Finding {
        verdict,
        explanation,
    } = finding;
    let first = format!(
        "{} {}  {}: {}",
        mark(*verdict),
        place(explanation),
        on_one_line(&explanation.title),
        verdict.words()
    );
    let mut text = paint(style(*verdict), &first) + "\n";
    let words = quoted(explanation, held);
    if !words.is_empty() {
        text.push_str(&labelled(
            "listing",
            &format!("\"{}\"", shortened(&words, 400)),
            2,
            9,
        ));
    }
    text.push_str(&labelled(
        "found",
        &on_one_line(&explanation.sentence),
        2,
        9,
    ));
    if let Some(fact) = &explanation.fact {
        let place = fact
            .place
            .as_ref()
            .map(|place| format!("; {place}"))
            .unwrap_or_default();
        let date = fact
            .date
            .map(|date| format!(", {date}"))
            .unwrap_or_default();
        text.push_str(&labelled(
            "known",
            &on_one_line(&format!("{}, {}{date}{place}", fact.value, fact.provenance)),
            2,
            9,
        ));
        if let Some(readings) = &fact.readings {
            text.push_str(&labelled("", &readings.words, 2, 9));
        }
    }
    if let Some(width) = width(explanation) {
        text.push_str(&labelled("width", &width, 2, 9));
    }
    if let Some(margin) = &explanation.margin {
        text.push_str(&labelled("margin", &margin.words, 2, 9));
    }
    if let Some(condition) = &explanation.condition {
        text.push_str(&labelled("applies", &on_one_line(condition), 2, 9));
    }
    if let Some(option) = &explanation.option {
        text.push_str(&labelled("option", &on_one_line(option), 2, 9));
    }
    if let Some(judgment) = &explanation.judgment {
        let decision = if judgment.accepted {
            "accepted"
        } else {
            "rejected"
        };
        let words = format!(
            "{decision} by {} on {}: {}",
            judgment.by, judgment.when, judgment.basis
        );
        text.push_str(&labelled("judged", &on_one_line(&words), 2, 9));
    }
    if let Some(missing) = &explanation.missing {
        text.push_str(&labelled("to do", &on_one_line(&missing.help), 2, 9));
    }
    for note in &explanation.notes {
        text.push_str(&labelled("note", &on_one_line(note), 2, 9));
    }
    text
}

/// The words of the listing; for the head's, what stands there.
fn quoted(explanation: &Explanation, held: Option<&Held>) -> String {
    match (explanation.words.trim(), explanation.span, held) {
        ("", Some(span), Some(held)) => on_one_line(span.of(&held.text)),
        (words, ..) => on_one_line(words),
    }
}
