//! A worked calculation on a page: what went in, the formulas, the steps, what came out, and what that means.

use engineering::worked::Finding;
use engineering::{Standing, Worked};
use maud::{Markup, html};

/// A whole calculation, folded away.
pub(super) fn folded(worked: &Worked) -> Markup {
    html! {
        details {
            summary { (super::capital(&worked.name)) }
            @if let Some(serves) = &worked.serves { p.quiet { "For " (serves) } }
            dl.head {
                @for input in &worked.inputs {
                    dt { (input.name) }
                    dd { (input.shown) @if !input.provenance.is_empty() { " " span.quiet { "from " (input.provenance) } } }
                }
            }
            @for formula in &worked.formulas { p { code { (formula.notation) } br; span.quiet { "from: " (formula.source) } } }
            @if !worked.steps.is_empty() { ol { @for step in &worked.steps { li { (step) } } } }
            dl.head { @for result in &worked.results { dt { (result.name) } dd { (result.shown) } } }
            @if !worked.findings.is_empty() { ul.notes { @for one in &worked.findings { li { (finding(one)) } } } }
            @for caution in &worked.cautions { p.quiet { (caution) } }
        }
    }
}

/// What a result means against a limit.
pub(super) fn finding(finding: &Finding) -> Markup {
    let (class, mark) = match finding.standing {
        Standing::Met => ("met", "✓"),
        Standing::NotMet => ("not-met", "✗"),
        Standing::Open => ("open", "?"),
        Standing::Note => ("quiet", "·"),
    };
    html! {
        span.(class) { span aria-hidden="true" { (mark) } " " @if finding.standing != Standing::Note { (finding.standing.words()) ": " } (finding.words) }
    }
}
