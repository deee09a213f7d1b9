//! What a listing was tested to in one direction.

use listing::{Movement, Span};
use measure::Number;

use super::super::Context;
use super::Direction;
use crate::words::{item_path, same};

/// What a listing was tested to in one direction.
pub(super) struct Tested<'a> {
    /// For what is chosen of the options, or for all of them.
    pub(super) sure: Vec<&'a Movement>,
    /// For a configuration that no option of the listing goes by.
    unsure: Vec<&'a Movement>,
}

/// How an option that a movement is stated for stands among the listing's.
enum Named {
    Chosen,
    NotChosen,
    Unknown,
}

impl<'a> Tested<'a> {
    pub(super) fn of(context: &Context<'a, '_>, direction: &Direction) -> Self {
        let mut tested = Self {
            sure: Vec::new(),
            unsure: Vec::new(),
        };
        for movement in &context.checklist.reading.header.movement {
            if !(direction.covers)(movement.direction) {
                continue;
            }
            match movement
                .option
                .as_deref()
                .map(|option| named(option, context))
            {
                None | Some(Named::Chosen) => tested.sure.push(movement),
                Some(Named::NotChosen) => {}
                Some(Named::Unknown) => tested.unsure.push(movement),
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

fn named(option: &str, context: &Context<'_, '_>) -> Named {
    let mut found = Named::Unknown;
    for (group, state) in context
        .checklist
        .options
        .groups
        .iter()
        .zip(&context.selection.states)
    {
        for (at, choice) in group.choices.iter().enumerate() {
            if !(same(choice, option) || item_path(choice) == item_path(option)) {
                continue;
            }
            if state.state.choice() == Some(at) {
                return Named::Chosen;
            }
            found = Named::NotChosen;
        }
    }
    found
}
