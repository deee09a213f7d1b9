//! What a listing asks, each point by itself: a clause, or one check of the head.
//!
//! Listings of one library ask many of the same things. A point is made so that equal points of two listings are equal values,
//! whatever item or page they stand on, and it is decided by the same code as the clause itself. So a verdict on a
//! point is worth the verdict on every clause that it stands for, but for what only the whole listing can tell: whether the
//! clause's option is chosen, and whether a value is of this very part. [`Slot`] and [`Placed::is_parted`] say where that matters.
//!
//! A point decides nothing for good: [`Checklist::decide`] does.

mod decide;
mod of_clause;
mod of_head;
mod rests_on;

use listing::{Clause, Expr, Header, Test};
use measure::Number;
use serde::{Deserialize, Serialize};
use vocabulary::Trade;

use crate::checklist::{Checklist, Doubt};

pub use decide::Ready;

/// One thing that a listing asks, told apart from its place in the listing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Point(pub(crate) What);

impl Point {
    /// Whether it is a clause on a property, or one whose condition is.
    pub fn is_about(&self, property: &str) -> bool {
        let What::Clause(of) = &self.0 else {
            return false;
        };
        let tests = of.condition.as_ref().map(crate::instances::tested);
        let mut tests = tests.into_iter().flatten();
        of.clause.property == property || tests.any(|tested| tested == property)
    }
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) enum What {
    Clause(Box<OfClause>),
    Head(Topic, Box<Header>),
}

/// What decides a clause, all else left out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct OfClause {
    /// The clause without its condition.
    clause: Clause,
    condition: Option<Expr>,
    doubt: Doubt,
    is_pointer: bool,
    /// The listing's ratings, where the clause's condition is on the rating.
    ratings_hr: Vec<Number>,
    /// The listing's conditions on exact values, where the clause's has one: they tell one case from another.
    exact: Vec<Test>,
}

/// A check of the head.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) enum Topic {
    Kind,
    Rating,
    Width,
    Compression,
    Extension,
    Shear,
    LeakageAmbient,
    LeakageElevated,
}

/// Where in the listing's options a point stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Slot {
    /// It is asked whatever is built.
    Always,
    /// It is asked where this choice of this group is built, and exactly one choice of the group is.
    Choice {
        /// The group's place in the listing.
        group: usize,
        /// The choice's place in the group.
        choice: usize,
    },
    /// It is asked in some cases, which only the whole listing can tell.
    Sometimes,
}

/// Whether what is known of a point's property tells which choice is built: a choice that
/// is told goes before one that isn't, whatever else.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Tells {
    /// It tells nothing.
    Nothing,
    /// That its choice is built, where it is met.
    WhenMet,
    /// That its choice is built, where it is met or not met.
    WhenKnown,
    /// Something, which only the whole listing can tell.
    Something,
}

/// A point in its place in a listing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Placed {
    /// The point.
    pub point: Point,
    /// Where it stands among the options.
    pub slot: Slot,
    /// Whether several parts of the listing have its property, so that a verdict may be reopened for want of knowing of which part a value is.
    pub is_parted: bool,
    /// What it tells of the choice it belongs to.
    pub tells: Tells,
    /// The property that it is about; empty for words that only a person can answer.
    pub property: String,
    /// Who owns the property, where the vocabulary knows.
    pub trade: Option<Trade>,
}

/// Everything that a listing asks, point by point.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Points {
    /// The points, the head's first.
    pub placed: Vec<Placed>,
    /// How many choices each group of options has, in the order of the groups.
    pub choices: Vec<usize>,
    /// Whether a check may fail that no point stands for.
    pub may_ask_more: bool,
}

impl Checklist<'_> {
    /// Everything that the listing asks, point by point.
    pub fn points(&self) -> Points {
        let head = of_head::all(self);
        let mut placed = head.placed;
        placed.extend(of_clause::all(self));
        let groups = self.options.groups.iter();
        Points {
            placed,
            choices: groups.map(|group| group.choices.len()).collect(),
            may_ask_more: head.may_ask_more,
        }
    }

    /// How firm its results are.
    pub const fn standing(&self) -> crate::verdict::Standing {
        self.standing
    }

    /// The reading that it checks against.
    pub const fn reading(&self) -> &listing::Reading {
        self.reading
    }
}
