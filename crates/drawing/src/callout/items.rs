//! The items of the listing that speak of a part, and what was found of them.

use conformance::{Counts, Explanation, Finding, Verdict};
use listing::Reading;

use crate::known::{Condition, Floor, Kind, Known, is_of};
use crate::section::Component;

/// What was found of a part's clauses.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Standing {
    /// The items that speak of it: "3A", "3.1, 3.2".
    pub items: String,
    /// The gravest verdict: not met before open before judged before met.
    pub verdict: Verdict,
    /// The verdict in words, with what it is about: "not met: packing depth".
    pub words: String,
}

impl Standing {
    /// What was found of a part's clauses; none where no listing speaks of it.
    pub(super) fn of(
        component: Component,
        condition: &Condition,
        known: &Known<'_>,
    ) -> Option<Self> {
        let (reading, result) = known.listing?;
        let applying: Vec<&Finding> = result
            .findings
            .iter()
            .filter(|finding| {
                finding.verdict != Verdict::NotApplicable && !finding.explanation.item.is_empty()
            })
            .collect();
        let speaks =
            |finding: &&&Finding| speaks_of(component, condition, reading, &finding.explanation);
        let paths = outermost(
            applying
                .iter()
                .filter(speaks)
                .map(|finding| finding.explanation.item.as_str()),
        );
        if paths.is_empty() {
            return None;
        }
        // Words that name no property of the vocabulary are about whatever their item is about.
        let is_words = |explanation: &Explanation| {
            paths.contains(&explanation.item.as_str()) && explanation.property.contains(':')
        };
        let mine: Vec<&Finding> = applying
            .iter()
            .filter(|finding| speaks(finding) || is_words(&finding.explanation))
            .copied()
            .collect();
        let verdict = gravest(Counts::of(mine.iter().map(|finding| finding.verdict)));
        Some(Self {
            items: listed(&paths),
            words: words(verdict, &mine),
            verdict,
        })
    }
}

fn speaks_of(
    component: Component,
    condition: &Condition,
    reading: &Reading,
    explanation: &Explanation,
) -> bool {
    let named = component.spoken_of_as();
    if !named.iter().any(|name| is_of(&explanation.property, name)) {
        return false;
    }
    let title = || {
        let item = reading
            .items
            .iter()
            .find(|item| item.path == explanation.item);
        item.map(|item| item.title.to_lowercase())
            .unwrap_or_default()
    };
    let in_flutes = matches!(&condition.floor, Some(Floor::Deck(deck)) if !deck.along);
    match component {
        Component::FlutePacking => title().contains("flute"),
        Component::Packing if in_flutes => !title().contains("flute"),
        Component::Runner => {
            let other = if condition.kind == Kind::BottomOfWall {
                "ceiling"
            } else {
                "floor runner"
            };
            !title().contains(other) && !is_fastening(&explanation.property)
        }
        Component::Fastener => {
            is_of(&explanation.property, "fastener") || is_fastening(&explanation.property)
        }
        Component::Screw => explanation.property.contains("screw"),
        Component::Board => !explanation.property.contains("screw"),
        Component::Bead => explanation.property.ends_with("bead_diameter"),
        Component::Sealant => !explanation.property.ends_with("bead_diameter"),
        _ => true,
    }
}

/// Whether a property of a runner is about how it is fastened.
fn is_fastening(property: &str) -> bool {
    matches!(property, "runner.fastener_spacing" | "runner.end_distance")
}

/// The items that aren't nested in another of them, in listing order.
fn outermost<'a>(paths: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let mut all: Vec<&str> = Vec::new();
    for path in paths {
        if !all.contains(&path) {
            all.push(path);
        }
    }
    let nested = |path: &&str| {
        all.iter().any(|other| {
            path.strip_prefix(other)
                .is_some_and(|rest| rest.starts_with('.') || rest.starts_with('('))
        })
    };
    all.iter().copied().filter(|path| !nested(path)).collect()
}

/// The first few items.
fn listed(paths: &[&str]) -> String {
    let mut listed = paths.iter().take(3).copied().collect::<Vec<_>>().join(", ");
    if paths.len() > 3 {
        listed.push_str(", ...");
    }
    listed
}

const fn gravest(counts: Counts) -> Verdict {
    if counts.not_met > 0 {
        Verdict::NotMet
    } else if counts.open > 0 {
        Verdict::Open
    } else if counts.judged > 0 {
        Verdict::Judged
    } else {
        Verdict::Met
    }
}

/// The gravest verdict, what it is about, and how many there are of the rest.
fn words(verdict: Verdict, findings: &[&Finding]) -> String {
    let of = |verdict: Verdict| {
        findings
            .iter()
            .filter(move |finding| finding.verdict == verdict)
    };
    let met = of(Verdict::Met).count();
    match verdict {
        Verdict::NotMet | Verdict::Open => {
            let mut about: Vec<&str> = of(verdict)
                .map(|finding| topic(&finding.explanation))
                .collect();
            about.dedup();
            let more = about.len().saturating_sub(1);
            let first = about.first().copied().unwrap_or_default();
            let more = if more > 0 {
                format!(" and {more} more")
            } else {
                String::new()
            };
            format!("{}: {first}{more}", verdict.words())
        }
        Verdict::Judged => {
            format!("met: {met}, judged: {}", of(Verdict::Judged).count())
        }
        _ if met == 1 => "met: 1 clause".to_owned(),
        _ => format!("met: all {met} clauses"),
    }
}

/// What a clause is about: its property's title, or that it is words.
fn topic(explanation: &Explanation) -> &str {
    if explanation.property.contains(':') {
        "words of the listing"
    } else {
        &explanation.title
    }
}
