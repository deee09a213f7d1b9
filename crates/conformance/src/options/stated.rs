//! What is said of which option is built.

use site::{Fact, Value};

use super::Group;
use super::choose::State;
use super::group::Kind;
use crate::evidence::{Evidence, evidence};
use crate::judgments::Judgments;
use crate::subject::Case;
use crate::words::normal;

/// The fact that says which option is built: `option.2A`, `option.configuration`, `option.4`.
///
/// A drawing may say it, since every clause of what is chosen is checked all the same; a value that nobody stands for
/// may not.
pub(super) fn fact<'a>(group: &Group<'_>, subject: &Case<'a>) -> Option<&'a Fact> {
    let of = |name: &str| match evidence(&format!("option.{name}"), subject) {
        Evidence::Shown(fact) | Evidence::NotSeen(fact) => Some(fact),
        Evidence::None | Evidence::NoSource(_) | Evidence::Unreadable(_) => None,
    };
    of(group.name()).or_else(|| of(&group.source.id))
}

/// What a fact says of a group; none when it names no option of the group.
pub(super) fn by_value(group: &Group<'_>, value: &Value) -> Option<State> {
    let text = match (value, group.kind) {
        (Value::Flag(true), Kind::OrNothing) => return Some(State::Stated(0)),
        (Value::Flag(false), Kind::OrNothing) => return Some(State::StatedAbsent),
        (Value::Text(text), _) => text,
        _ => return None,
    };
    if let Some(choice) = group.choice_as_written(text) {
        return Some(State::Stated(choice));
    }
    match (group.kind, normal(text).as_str()) {
        (Kind::OrNothing, "yes" | "built" | "there") => Some(State::Stated(0)),
        (Kind::OrNothing, "no" | "none" | "not built" | "left out" | "not there") => {
            Some(State::StatedAbsent)
        }
        _ => None,
    }
}

/// What a person has decided of a group.
pub(super) fn by_judgment(group: &Group<'_>, judgments: &mut Judgments<'_>) -> Option<State> {
    if judgments.is_empty() {
        return None;
    }
    let decided: Vec<Option<bool>> = group
        .choices
        .iter()
        .map(|choice| judgments.is_built(choice))
        .collect();
    match (
        group.kind,
        decided.iter().position(|built| *built == Some(true)),
    ) {
        (_, Some(choice)) => Some(State::Stated(choice)),
        (Kind::OrNothing, None) if decided.contains(&Some(false)) => Some(State::StatedAbsent),
        _ => None,
    }
}
