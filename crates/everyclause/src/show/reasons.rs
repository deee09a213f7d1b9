//! Why joints don't conform or are open: what several joints of a mark share is said once. What isn't met is told in
//! full; what is open in a line, as the questions say what to do about it.

use conformance::{Explanation, Finding, Reason, Verdict};

use super::brief;
use super::page::{labelled, wrapped};
use super::paint::{QUIET, STRONG, mark, paint, style};
use super::words::{counted, in_runs, on_one_line, shortened};
use crate::checking::Checked;

/// Findings that say the same of several joints.
struct Shared<'a> {
    finding: &'a Finding,
    joints: Vec<&'a str>,
    /// Whether the head of the listing asks the same.
    is_in_head: bool,
}

impl Shared<'_> {
    /// Where it is asked for: `3A/2`, or `head, 3/1` where the head asks the same.
    fn place(&self) -> String {
        let place = place(&self.finding.explanation);
        if self.is_in_head {
            format!("head, {place}")
        } else {
            place
        }
    }
}

/// Why the joints with a verdict that stands in the way have it, mark by mark.
pub(crate) fn reasons(
    joints: &[Checked],
    verdict: Verdict,
    joint_is_shown: impl Fn(&Checked) -> bool,
) -> String {
    let mut text = String::new();
    let mut groups: Vec<Vec<&Checked>> = Vec::new();
    for joint in joints.iter().filter(|joint| joint_is_shown(joint)) {
        let same = |group: &&mut Vec<&Checked>| {
            group
                .first()
                .is_some_and(|first| first.mark == joint.mark && first.listing == joint.listing)
        };
        match groups.iter_mut().find(same) {
            Some(group) => group.push(joint),
            None => groups.push(vec![joint]),
        }
    }
    for group in groups {
        text.push_str(&of_one_mark(&group, verdict));
    }
    text
}

fn of_one_mark(joints: &[&Checked], verdict: Verdict) -> String {
    let Some(first) = joints.first() else {
        return String::new();
    };
    let listing = first.listing.as_deref().unwrap_or("no listing");
    let title = on_one_line(&first.title);
    let title = if title.is_empty() {
        title
    } else {
        format!("  {title}")
    };
    let mut text = format!(
        "\n{}{title}  {}\n",
        paint(STRONG, &on_one_line(&first.mark)),
        paint(QUIET, listing)
    );
    let (left, counted_findings): (Vec<Shared<'_>>, Vec<Shared<'_>>) = shared(joints, verdict)
        .into_iter()
        .partition(|shared| !is_for_a_person(&shared.finding.explanation));
    for shared in &left {
        text.push_str(&if verdict == Verdict::Open {
            in_a_line(shared)
        } else {
            in_full(shared)
        });
    }
    text.push_str(&in_words(&counted_findings));
    let without: Vec<&str> = joints
        .iter()
        .filter(|joint| joint.result.is_none())
        .map(|joint| joint.joint.as_str())
        .collect();
    if !without.is_empty() && verdict == Verdict::Open {
        text.push_str(&wrapped(
            &format!(
                "? {}: no listing is named, so there is nothing to check against",
                in_runs(&without)
            ),
            2,
            2,
        ));
    }
    text
}

/// The findings of a verdict, what is said of several joints once, in the order first met.
fn shared<'a>(joints: &[&'a Checked], verdict: Verdict) -> Vec<Shared<'a>> {
    let mut all: Vec<Shared<'a>> = Vec::new();
    for joint in joints {
        for finding in joint.result.iter().flat_map(|result| result.with(verdict)) {
            let same = |shared: &&mut Shared<'a>| {
                let (one, other) = (&shared.finding.explanation, &finding.explanation);
                one.clause == other.clause && one.sentence == other.sentence
            };
            match all.iter_mut().find(same) {
                Some(shared) => shared.joints.push(&joint.joint),
                None => all.push(Shared {
                    finding,
                    joints: vec![&joint.joint],
                    is_in_head: false,
                }),
            }
        }
    }
    without_the_head(all)
}

/// What the head asks of a property at some joints is left out where a clause asks the same of it there: the clause has
/// the words.
fn without_the_head(all: Vec<Shared<'_>>) -> Vec<Shared<'_>> {
    let (heads, mut clauses): (Vec<Shared<'_>>, Vec<Shared<'_>>) = all
        .into_iter()
        .partition(|shared| shared.finding.explanation.clause.starts_with("header/"));
    let mut left = Vec::new();
    for head in heads {
        let same = |clause: &&mut Shared<'_>| {
            clause.finding.explanation.property == head.finding.explanation.property
                && clause.finding.explanation.reason == head.finding.explanation.reason
                && clause.joints == head.joints
        };
        match clauses.iter_mut().find(same) {
            Some(clause) => clause.is_in_head = true,
            None => left.push(head),
        }
    }
    left.extend(clauses);
    left
}

/// Whether only a person's answer is wanting, on words or on how the listing was read.
fn is_for_a_person(explanation: &Explanation) -> bool {
    matches!(
        explanation.reason,
        Reason::NeedsAPerson | Reason::ReadingInDoubt
    )
}

fn in_full(shared: &Shared<'_>) -> String {
    let Finding {
        verdict,
        explanation,
    } = shared.finding;
    let head = format!(
        "{} {}  {}",
        mark(*verdict),
        shared.place(),
        on_one_line(&explanation.title)
    );
    let mut text = format!(
        "  {}  {}\n",
        paint(style(*verdict), &head),
        in_runs(&shared.joints)
    );
    text.push_str(&wrapped(&on_one_line(&explanation.sentence), 4, 0));
    text.push_str(&quoted(explanation));
    if let Some(fact) = &explanation.fact {
        let place = fact
            .place
            .as_ref()
            .map(|place| format!("; {place}"))
            .unwrap_or_default();
        text.push_str(&labelled(
            "known",
            &on_one_line(&format!("{}, {}{place}", fact.value, fact.provenance)),
            4,
            9,
        ));
    }
    if let Some(width) = width(explanation) {
        text.push_str(&labelled("width", &width, 4, 9));
    }
    if let Some(margin) = &explanation.margin {
        text.push_str(&labelled("margin", &margin.words, 4, 9));
    }
    for note in &explanation.notes {
        text.push_str(&labelled("note", &on_one_line(note), 4, 9));
    }
    text
}

fn in_a_line(shared: &Shared<'_>) -> String {
    let Finding {
        verdict,
        explanation,
    } = shared.finding;
    let line = format!(
        "{} {}  {}  ({})",
        mark(*verdict),
        shared.place(),
        brief::reason(explanation),
        in_runs(&shared.joints)
    );
    paint(style(*verdict), wrapped(&line, 2, 2).trim_end()) + "\n"
}

/// The width that a movement stated as a length was held against, and where it is known from.
pub(crate) fn width(explanation: &Explanation) -> Option<String> {
    let share = explanation.share.as_ref()?;
    let how = if share.is_as_found {
        "as found"
    } else {
        "nominal"
    };
    let width = &share.width;
    let readings = width.readings.as_ref();
    let readings = readings.map(|readings| format!(" ({})", readings.words));
    let place = width.place.as_ref().map(|place| format!("; {place}"));
    Some(on_one_line(&format!(
        "{} {how}, {}{}{}",
        width.value,
        width.provenance,
        readings.unwrap_or_default(),
        place.unwrap_or_default()
    )))
}

/// The words of the listing that a finding rests on.
fn quoted(explanation: &Explanation) -> String {
    let words = on_one_line(&explanation.words);
    if words.is_empty() {
        String::new()
    } else {
        labelled("listing", &format!("\"{}\"", shortened(&words, 220)), 4, 9)
    }
}

/// Where a clause stands: `3A`, or `head` for what the listing states at its head.
pub(crate) fn place(explanation: &Explanation) -> String {
    match explanation.clause.split_once('/') {
        Some(("header", _)) => "head".to_owned(),
        Some(("option", _)) => "option".to_owned(),
        _ => on_one_line(&explanation.clause),
    }
}

/// Clauses in words, or read in doubt, in a line for each number of joints.
fn in_words(several: &[Shared<'_>]) -> String {
    let mut text = String::new();
    for (reason, words) in [
        (Reason::NeedsAPerson, "in words that nobody has judged yet"),
        (Reason::ReadingInDoubt, "whose reading nobody has confirmed"),
    ] {
        let of_reason: Vec<&Shared<'_>> = several
            .iter()
            .filter(|shared| shared.finding.explanation.reason == reason)
            .collect();
        let mut done: Vec<&Vec<&str>> = Vec::new();
        for shared in &of_reason {
            if done.contains(&&shared.joints) {
                continue;
            }
            done.push(&shared.joints);
            let mut clauses: Vec<&str> = of_reason
                .iter()
                .filter(|other| other.joints == shared.joints)
                .map(|other| other.finding.explanation.clause.as_str())
                .collect();
            clauses.dedup();
            let line = format!(
                "{} {} {words}: {}  ({})",
                mark(Verdict::Open),
                counted(clauses.len(), "clause", "clauses"),
                in_runs(&clauses),
                in_runs(&shared.joints)
            );
            text.push_str(&paint(QUIET, wrapped(&line, 2, 2).trim_end()));
            text.push('\n');
        }
    }
    text
}
