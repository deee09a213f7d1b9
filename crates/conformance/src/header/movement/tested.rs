//! What a listing was tested to in one direction.

use listing::{Movement, Span};
use measure::Number;

use super::super::Context;
use crate::movement::Direction;
use crate::options::{Kind, State};

/// What a listing was tested to in one direction.
pub(super) struct Tested<'a> {
    /// For what is chosen of the options, or for all of them.
    pub(super) sure: Vec<&'a Movement>,
    /// For a configuration of which nobody can tell whether it is the one built.
    unsure: Vec<&'a Movement>,
}

/// A choice supposed in a group of which nobody knows what is built: none for an optional item left out.
#[derive(Clone, Copy)]
pub(super) struct Supposed {
    group: usize,
    choice: Option<usize>,
}

/// How an option that a movement is stated for stands among the listing's.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Named {
    Chosen,
    NotChosen,
    /// Of a group of which nobody knows what is built.
    Undecided(usize),
    Unknown,
}

impl<'a> Tested<'a> {
    /// What holds for the options chosen; where the movements are stated for options of which nobody knows what is
    /// built, what would hold for each of them.
    pub(super) fn of_each(context: &Context<'a, '_>, direction: &Direction) -> Vec<Self> {
        let undecided = covered(context, direction).find_map(|movement| {
            names(movement).find_map(|name| match named(name, context, None) {
                Named::Undecided(group) => Some(group),
                _ => None,
            })
        });
        let Some(group) = undecided else {
            return vec![Self::of(context, direction, None)];
        };
        let known = context.checklist.options.groups.get(group);
        let mut choices: Vec<Option<usize>> = (0..known.map_or(0, |known| known.choices.len()))
            .map(Some)
            .collect();
        if known.is_some_and(|known| known.kind == Kind::OrNothing) {
            choices.push(None);
        }
        let suppose = |choice| Some(Supposed { group, choice });
        choices
            .into_iter()
            .map(|choice| Self::of(context, direction, suppose(choice)))
            .collect()
    }

    fn of(context: &Context<'a, '_>, direction: &Direction, supposed: Option<Supposed>) -> Self {
        let mut tested = Self {
            sure: Vec::new(),
            unsure: Vec::new(),
        };
        for movement in covered(context, direction) {
            let stands: Vec<Named> = names(movement)
                .map(|name| named(name, context, supposed))
                .collect();
            if stands.is_empty() || stands.contains(&Named::Chosen) {
                tested.sure.push(movement);
            } else if !stands.iter().all(|one| *one == Named::NotChosen) {
                tested.unsure.push(movement);
            }
        }
        tested
    }

    /// Where it stands.
    pub(super) fn span(&self) -> Option<Span> {
        self.sure
            .first()
            .or(self.unsure.first())
            .map(|movement| movement.span)
    }

    /// The most that was tested; none when nothing was.
    pub(super) fn most(&self) -> Option<Number> {
        self.sure.iter().map(|movement| movement.percent).max()
    }

    /// Whether what is stated for an unknown configuration would reach.
    pub(super) fn could_reach(&self, percent: Number) -> bool {
        self.unsure
            .iter()
            .any(|movement| movement.percent >= percent)
    }

    /// Whether what is stated for an unknown configuration would fall short, for a class or for one that couldn't be read.
    pub(super) fn could_fall_short(&self, class: &str, percent: Number) -> bool {
        let may_be = |movement: &Movement| {
            movement.classes.is_empty() || movement.classes.iter().any(|one| one == class)
        };
        let mut unsure = self.unsure.iter();
        unsure.any(|movement| may_be(movement) && movement.percent < percent)
    }

    /// Whether a movement whose classes couldn't be read would reach.
    pub(super) fn classless_reaches(&self, percent: Number) -> bool {
        self.sure
            .iter()
            .any(|movement| movement.classes.is_empty() && movement.percent >= percent)
    }

    /// The least and the most that was tested for a class; none when nothing was.
    pub(super) fn for_class(&self, class: &str) -> Option<(Number, Number)> {
        let of_class = |movement: &&&Movement| movement.classes.iter().any(|one| one == class);
        let percents = || {
            self.sure
                .iter()
                .filter(of_class)
                .map(|movement| movement.percent)
        };
        percents().min().zip(percents().max())
    }
}

/// The movements of a head that a direction covers.
fn covered<'a>(
    context: &Context<'a, '_>,
    direction: &Direction,
) -> impl Iterator<Item = &'a Movement> {
    let covers = direction.covers;
    let stated = context.checklist.reading.header.movement.iter();
    stated.filter(move |movement| covers(movement.direction))
}

/// The configurations that a movement is stated for: none when it is stated for all.
fn names(movement: &Movement) -> impl Iterator<Item = &str> {
    let option = movement.option.as_deref().into_iter();
    option
        .flat_map(|option| option.split(" or "))
        .map(str::trim)
}

fn named(option: &str, context: &Context<'_, '_>, supposed: Option<Supposed>) -> Named {
    let mut found = Named::Unknown;
    let groups = context.checklist.options.groups.iter();
    for (at, (group, chosen)) in groups.zip(&context.selection.states).enumerate() {
        let Some(choice) = group.choice_as_written(option) else {
            continue;
        };
        let built = match (supposed, chosen.state) {
            (Some(supposed), _) if supposed.group == at => supposed.choice,
            (_, State::First(_) | State::Undecided) => {
                found = Named::Undecided(at);
                continue;
            }
            (_, state) => state.choice(),
        };
        if built == Some(choice) {
            return Named::Chosen;
        }
        if found == Named::Unknown {
            found = Named::NotChosen;
        }
    }
    found
}
