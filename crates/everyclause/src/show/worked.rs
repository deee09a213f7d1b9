//! A worked calculation: what went in, the formulas, the steps, what came out, and what that means.

use engineering::worked::{Finding, STANDING};
use engineering::{Standing, Worked};

use super::page::{heading, labelled, wrapped};
use super::paint::{BAD, GOOD, QUIET, STRONG, UNKNOWN, paint};
use super::words::on_one_line;

/// The whole calculation.
pub(crate) fn worked(worked: &Worked) -> String {
    let mut text = format!("{}\n", paint(STRONG, &on_one_line(&worked.name)));
    if let Some(clause) = &worked.serves {
        text.push_str(&labelled("for", &on_one_line(clause), 2, 9));
    }
    text.push_str(&heading("Given"));
    let inputs = worked.inputs.iter().map(|input| {
        (
            input.name.as_str(),
            with_source(&input.shown, &input.provenance),
        )
    });
    text.push_str(&rows(&inputs.collect::<Vec<_>>()));
    text.push_str(&heading("Formulas"));
    for formula in &worked.formulas {
        text.push_str(&wrapped(&on_one_line(&formula.notation), 2, 2));
        text.push_str(&paint(
            QUIET,
            wrapped(&format!("from: {}", on_one_line(&formula.source)), 4, 2).trim_end(),
        ));
        text.push('\n');
    }
    if !worked.steps.is_empty() {
        text.push_str(&heading("Steps"));
        for step in &worked.steps {
            text.push_str(&wrapped(&on_one_line(step), 2, 2));
        }
    }
    if !worked.results.is_empty() {
        text.push_str(&heading("Results"));
        let results = worked
            .results
            .iter()
            .map(|result| (result.name.as_str(), result.shown.clone()));
        text.push_str(&rows(&results.collect::<Vec<_>>()));
    }
    if !worked.findings.is_empty() {
        text.push_str(&heading("Findings"));
        text.push_str(&worked.findings.iter().map(finding).collect::<String>());
    }
    text.push('\n');
    for caution in worked.cautions.iter().map(String::as_str).chain([STANDING]) {
        text.push_str(&paint(QUIET, wrapped(caution, 0, 0).trim_end()));
        text.push('\n');
    }
    text
}

/// A value and where it comes from.
fn with_source(shown: &str, provenance: &str) -> String {
    let shown = on_one_line(shown);
    if provenance.is_empty() || provenance == "as given" {
        return shown;
    }
    format!("{shown} <- {}", on_one_line(provenance))
}

/// Names with their values, the values under one another.
fn rows(rows: &[(&str, String)]) -> String {
    let room = rows
        .iter()
        .map(|(name, _)| name.chars().count())
        .max()
        .unwrap_or_default()
        .min(62)
        + 2;
    rows.iter()
        .map(|(name, value)| labelled(name, value, 2, room))
        .collect()
}

/// A finding with its mark.
pub(crate) fn finding(finding: &Finding) -> String {
    let (mark, style) = match finding.standing {
        Standing::Met => ("✓", GOOD),
        Standing::NotMet => ("✗", BAD),
        Standing::Open => ("?", UNKNOWN),
        Standing::Note => ("·", QUIET),
    };
    let words = match finding.standing {
        Standing::Note => on_one_line(&finding.words),
        other => format!("{}: {}", other.words(), on_one_line(&finding.words)),
    };
    paint(style, wrapped(&format!("{mark} {words}"), 2, 2).trim_end()) + "\n"
}
