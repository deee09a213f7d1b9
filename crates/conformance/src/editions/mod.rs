//! What changed between two editions of a listing, clause by clause.
//!
//! The items of the two are matched first, by title or by number, so that renumbering moves clauses instead of removing
//! and adding them (`items`). Clauses are then matched by item, property, option and condition, then by less and less
//! of that, the nearest words first (`pairs`). What a pair of bounds comes to is a matter of which values each allows
//! (`bounds`): a nominal value allows itself alone, so that "nominal 4 pcf" become "min 4 pcf" is loosened.

mod bounds;
mod head;
mod items;
mod pairs;

use listing::{Clause, Presence, ProductName, Reading, Requirement, Span};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::explain::{SubjectMatter, requirement};
use crate::words::normal;
use items::ItemMap;

/// A clause of one edition or both, and what became of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Change {
    /// What became of it.
    pub kind: ChangeKind,
    /// The property.
    pub property: String,
    /// The property's title.
    pub title: String,
    /// Whether it stands in an item of another number.
    pub moved: bool,
    /// As the old edition has it.
    pub old: Option<Side>,
    /// As the new edition has it.
    pub new: Option<Side>,
    /// What changed, in a sentence.
    pub sentence: String,
}

/// What became of a clause.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum ChangeKind {
    /// Word for word the same.
    Unchanged,
    /// The same requirement in other words.
    Reworded,
    /// Less is allowed than before.
    Tightened,
    /// More is allowed than before.
    Loosened,
    /// Something else is asked for.
    Changed,
    /// Only the new edition has it.
    Added,
    /// Only the old edition had it.
    Removed,
}

impl ChangeKind {
    /// The kind in a word.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Unchanged => "unchanged",
            Self::Reworded => "reworded",
            Self::Tightened => "tightened",
            Self::Loosened => "loosened",
            Self::Changed => "changed",
            Self::Added => "added",
            Self::Removed => "removed",
        }
    }
}

/// A clause as one edition has it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Side {
    /// The clause's id; `header/width` and the like for the head.
    pub clause: String,
    /// The item.
    pub item: String,
    /// Where it stands.
    pub span: Option<Span>,
    /// The words.
    pub words: String,
    /// What it asks for, in words.
    pub requirement: String,
    /// When it applies, in the listing's words.
    pub condition: Option<String>,
    /// The option it belongs to.
    pub option: Option<String>,
}

/// What changed from an old edition to a new one: the head first, then every clause in the new edition's order, each
/// removed one after the clause that stood before it.
pub fn compare(old: &Reading, new: &Reading) -> Vec<Change> {
    let items = ItemMap::of(old, new);
    let pairs = pairs::of(old, new, &items);
    let mut changes = head::compare(old, new);
    changes.extend(pairs::in_order(&pairs).into_iter().filter_map(|(was, is)| {
        let was = was.and_then(|at| old.clauses.get(at));
        let is = is.and_then(|at| new.clauses.get(at));
        change(was, is, &items)
    }));
    changes
}

fn change(was: Option<&Clause>, is: Option<&Clause>, items: &ItemMap<'_>) -> Option<Change> {
    let shown = is.or(was)?;
    let property = vocabulary::vocabulary().property(&shown.property);
    let title = SubjectMatter::of_clause(shown, property).title;
    let kind = match (was, is) {
        (Some(was), Some(is)) => kind(was, is, items),
        (None, _) => ChangeKind::Added,
        (_, None) => ChangeKind::Removed,
    };
    let moved = was.zip(is).is_some_and(|(was, is)| was.item != is.item);
    let (old, new) = (was.map(side), is.map(side));
    let sentence = sentence(kind, &title, old.as_ref(), new.as_ref());
    Some(Change {
        kind,
        property: shown.property.clone(),
        title,
        moved,
        old,
        new,
        sentence,
    })
}

fn side(clause: &Clause) -> Side {
    Side {
        clause: clause.id.clone(),
        item: clause.item.clone(),
        span: Some(clause.span),
        words: clause.words.clone(),
        requirement: requirement::of_clause(clause),
        condition: clause
            .condition
            .as_ref()
            .map(|condition| condition.words.clone()),
        option: clause.option.clone(),
    }
}

/// What one clause became.
fn kind(was: &Clause, is: &Clause, items: &ItemMap<'_>) -> ChangeKind {
    let condition = |clause: &Clause| {
        clause
            .condition
            .as_ref()
            .map(|condition| normal(&condition.words))
    };
    let option = |clause: &Clause| clause.option.as_deref().map(normal);
    let old_option = was
        .option
        .as_deref()
        .map(|name| normal(items.new_path(name).unwrap_or(name)));
    if condition(was) != condition(is)
        || was.property != is.property
        || (old_option != option(is) && option(was) != option(is))
    {
        return ChangeKind::Changed;
    }
    let same_words = normal(&was.words) == normal(&is.words);
    match requirement_kind(&was.requirement, &is.requirement, items) {
        ChangeKind::Unchanged if !same_words && was.requirement == Requirement::Prose => {
            ChangeKind::Changed
        }
        ChangeKind::Unchanged if !same_words => ChangeKind::Reworded,
        kind => kind,
    }
}

fn requirement_kind(was: &Requirement, is: &Requirement, items: &ItemMap<'_>) -> ChangeKind {
    match (was, is) {
        (Requirement::Bound(was), Requirement::Bound(is)) => bounds::kind(was, is),
        (Requirement::Named { names: was }, Requirement::Named { names: is }) => {
            names_kind(was, is)
        }
        (Requirement::Presence { presence: was }, Requirement::Presence { presence: is }) => {
            match (was, is) {
                (was, is) if was == is => ChangeKind::Unchanged,
                (Presence::Optional, _) => ChangeKind::Tightened,
                (_, Presence::Optional) => ChangeKind::Loosened,
                _ => ChangeKind::Changed,
            }
        }
        (Requirement::Reference { to: was }, Requirement::Reference { to: is }) => {
            let same = normal(was) == normal(is) || items.new_path(was) == Some(is.as_str());
            if same {
                ChangeKind::Unchanged
            } else {
                ChangeKind::Changed
            }
        }
        (Requirement::Prose, Requirement::Prose) => ChangeKind::Unchanged,
        _ => ChangeKind::Changed,
    }
}

fn names_kind(was: &[ProductName], is: &[ProductName]) -> ChangeKind {
    let key = |name: &ProductName| (normal(&name.maker), normal(&name.product));
    let within = |some: &[ProductName], all: &[ProductName]| {
        some.iter()
            .all(|name| all.iter().any(|other| key(name) == key(other)))
    };
    subset_kind(within(is, was), within(was, is))
}

/// What a change is when the new allows only what the old did, and the other way round.
const fn subset_kind(new_in_old: bool, old_in_new: bool) -> ChangeKind {
    match (new_in_old, old_in_new) {
        (true, true) => ChangeKind::Unchanged,
        (true, false) => ChangeKind::Tightened,
        (false, true) => ChangeKind::Loosened,
        (false, false) => ChangeKind::Changed,
    }
}

fn sentence(kind: ChangeKind, title: &str, old: Option<&Side>, new: Option<&Side>) -> String {
    let asked = |side: &Side| match &side.condition {
        Some(condition) => format!("{} {condition}", side.requirement),
        None => side.requirement.clone(),
    };
    let sentence = match (kind, old, new) {
        (ChangeKind::Unchanged, _, _) => format!("{title}: unchanged"),
        (ChangeKind::Reworded, _, Some(new)) => {
            format!("{title}: still {}, in other words", asked(new))
        }
        (_, Some(old), Some(new))
            if old.requirement == new.requirement && old.condition == new.condition =>
        {
            format!("{title}: the words have changed")
        }
        (_, Some(old), Some(new)) => format!("{title}: {} became {}", asked(old), asked(new)),
        (_, None, Some(new)) => format!("{title}: {} is new", asked(new)),
        (_, Some(old), None) => format!("{title}: {} is gone", asked(old)),
        (_, None, None) => title.to_owned(),
    };
    if let (Some(old), Some(new)) = (old, new)
        && old.item != new.item
    {
        return format!("{sentence}; item {} is now item {}.", old.item, new.item);
    }
    format!("{sentence}.")
}
