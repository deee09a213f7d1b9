//! What stands at a joint on a property that the listing has for itself, and doesn't count: it was said of another listing, or nobody knows
//! of which. It is told, never left out in silence.

use std::collections::BTreeSet;

use site::Fact;

use crate::checklist::Checklist;
use crate::instances::tested;
use crate::subject::{Subject, goes_by};

/// A sentence for each fact that doesn't count and would be asked for under its name.
pub(crate) fn notes(checklist: &Checklist<'_>, subject: &Subject<'_>) -> Vec<String> {
    let listing = goes_by(checklist.reading);
    let mut left_out = subject.facts.not_for_listing(&listing).peekable();
    if left_out.peek().is_none() {
        return Vec::new();
    }
    let asked = asked_for(checklist);
    left_out
        .filter(|fact| asked.contains(fact.asked_as()))
        .map(|fact| note(fact, listing.file))
        .collect()
}

fn note(fact: &Fact, file: &str) -> String {
    let (name, value) = (fact.asked_as(), &fact.value);
    match fact.said_of() {
        Some(said) => {
            let stem = file.rsplit_once('.').map_or(file, |(stem, _)| stem);
            // The same name, and yet not this listing: its document is another now.
            let which = if said.document.is_some() && said.listing == stem {
                "another document of the same name".to_owned()
            } else {
                said.listing.to_owned()
            };
            format!(
                "`{name}` {value} was said of {which}, not of this listing, where the same item and words may mean something else: it doesn't count here, and is asked anew."
            )
        }
        None => format!(
            "`{name}` {value} doesn't say of which listing it was said, and in another the same item and words may mean something else: it doesn't count, and is asked anew. In a table, name the listing in the heading, as `{name}@{stem}`.",
            stem = file.rsplit_once('.').map_or(file, |(stem, _)| stem)
        ),
    }
}

/// The names of the listing's own properties under which it looks for facts.
fn asked_for(checklist: &Checklist<'_>) -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for entry in &checklist.entries {
        names.insert(entry.clause.property.clone());
        names.extend(entry.part.names.iter().cloned());
        let condition = entry.clause.condition.as_ref();
        let tests = condition.map(|condition| tested(&condition.expr));
        names.extend(tests.into_iter().flatten().map(str::to_owned));
    }
    for group in &checklist.options.groups {
        names.insert(format!("option.{}", group.name()));
        names.insert(format!("option.{}", group.source.id));
    }
    names
}
