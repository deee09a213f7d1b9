//! Whether what the tables say of one another holds.

use std::collections::{BTreeMap, BTreeSet};

use super::names::{Mention, Mentioned, Names, unknown};
use super::problem::{Findings, Wrong, quoted};
use crate::model::{Fact, Joint, Mark, Project, Value};

/// Which tables the project has; what a table that isn't there would have named isn't checked.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Given {
    pub marks: bool,
    pub barriers: bool,
}

/// Checks that every joint names a mark, barrier and storey that there is, and says which marks and barriers no joint
/// names. Without a table of marks, the marks are those that the joints name.
pub(crate) fn check(
    project: &mut Project,
    given: Given,
    names: &mut Names,
    findings: &mut Findings,
) {
    mentions(project, given, names, findings);
    contradictions(project, findings);
    if !given.marks {
        name_marks(project, names);
    }
    if !project.joints.is_empty() {
        unused(names, given, findings);
    }
}

fn mentions(project: &Project, given: Given, names: &Names, findings: &mut Findings) {
    let storeys = project.building.storeys.iter();
    let storeys: BTreeSet<&str> = storeys.map(|storey| storey.name.as_str()).collect();
    for Mention { what, name, cell } in &names.mentions {
        match what {
            Mentioned::Mark if given.marks && !names.marks.has(name) => {
                findings
                    .problem_if_listed(cell, name, || unknown("mark", name, names.marks.names()));
            }
            Mentioned::Barrier if given.barriers && !names.barriers.has(name) => {
                findings.problem_if_listed(cell, name, || {
                    unknown("barrier", name, names.barriers.names())
                });
            }
            Mentioned::Storey if !storeys.is_empty() && !storeys.contains(name.as_str()) => {
                findings.problem_if_listed(cell, name, || {
                    unknown("storey", name, storeys.iter().copied())
                });
            }
            _ => {}
        }
    }
}

/// Without a table of marks: a mark for every name that a joint gives, and for a joint that gives none its own.
fn name_marks(project: &mut Project, names: &mut Names) {
    let mut seen = BTreeSet::new();
    for joint in &mut project.joints {
        if joint.mark.is_empty() {
            joint.mark.clone_from(&joint.name);
        }
        if seen.insert(joint.mark.clone()) {
            project.marks.push(Mark {
                name: joint.mark.clone(),
                ..Mark::default()
            });
        }
    }
    for Mention { name, cell, .. } in names
        .mentions
        .iter()
        .filter(|one| one.what == Mentioned::Mark)
    {
        names.marks.note(name, cell);
    }
}

/// A joint may not say otherwise than its barrier what the barrier is.
fn contradictions(project: &Project, findings: &mut Findings) {
    let barriers: BTreeMap<_, _> = project
        .barriers
        .iter()
        .map(|barrier| (barrier.name.as_str(), barrier))
        .collect();
    for joint in &project.joints {
        let barrier = joint.barrier.as_deref().and_then(|name| barriers.get(name));
        for theirs in barrier.iter().flat_map(|barrier| barrier.facts.values()) {
            contradiction(joint, theirs, findings);
        }
    }
}

fn contradiction(joint: &Joint, theirs: &Fact, findings: &mut Findings) {
    let Some(ours) = joint.facts.get(&theirs.property) else {
        return;
    };
    let (Some(our_cell), Some(their_cell)) = (&ours.cell, &theirs.cell) else {
        return;
    };
    if !same(&ours.value, &theirs.value) {
        let message = format!(
            "{} is {} here and {} in {their_cell}",
            ours.property, ours.value, theirs.value
        );
        let wrong = Wrong::new(message, "say it in one place, best with the barrier");
        findings.problem(our_cell.clone(), &ours.value.to_string(), wrong);
    }
}

fn same(ours: &Value, theirs: &Value) -> bool {
    match (ours, theirs) {
        (Value::Quantity(ours), Value::Quantity(theirs)) => {
            ours.compare(*theirs) == Some(core::cmp::Ordering::Equal)
        }
        _ => ours == theirs,
    }
}

/// Says which marks and barriers no joint names.
fn unused(names: &Names, given: Given, findings: &mut Findings) {
    let used = |what: Mentioned| -> BTreeSet<&str> {
        let mentions = names.mentions.iter().filter(|one| one.what == what);
        mentions.map(|one| one.name.as_str()).collect()
    };
    let (marks, barriers) = (used(Mentioned::Mark), used(Mentioned::Barrier));
    let all = [
        ("mark", given.marks, &names.marks, marks),
        ("barrier", given.barriers, &names.barriers, barriers),
    ];
    for (what, _, register, used) in all.iter().filter(|(_, given, ..)| *given) {
        for (name, cell) in register.iter().filter(|(name, _)| !used.contains(name)) {
            findings.notice(
                cell.clone(),
                format!("{what} {} has no joint", quoted(name)),
            );
        }
    }
}
