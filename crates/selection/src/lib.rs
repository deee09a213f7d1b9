//! Which listings of a library fit a condition, and what stands in the way of the rest.
//!
//! The answer is complete and exact. Every verdict is [`conformance`]'s; the [`Index`] only tells which listings needn't be
//! looked at, because what they ask for certain already puts them behind the answer.
//!
//! | module | what lives there |
//! |---|---|
//! | [`asking`] | what is asked: the condition of a joint or mark |
//! | [`answer`] | the answer, as tables, pages and JSON show it |
//! | [`index`] | what a library's listings ask, each point once; built once and kept |
//! | [`search`] | the listings in order: those that fit, those with open questions only, those that need a change |
//! | [`rank`] | that order |
//! | [`cost`] | how hard a change is, by the trade that makes it |
//! | [`change`] | a change in words |
//! | [`mod@conditions`] | joints of which the same is known, told once |
//! | [`mod@cover`] | the few listings that together serve every condition |
//! | [`substitute`] | a condition with another product |
//! | [`substitution`] | another product: which listings of the schedule still hold |
//!
//! A match isn't an approval: nothing here says more than that what is known matches what a listing says as read.
//!
//! What is absent: files, clocks, randomness, and any comparison of a value with a bound.

pub mod answer;
pub mod asking;
pub mod change;
pub mod conditions;
pub mod cost;
pub mod cover;
pub mod index;
pub mod rank;
mod sameness;
pub mod search;
pub mod substitute;
pub mod substitution;

pub use answer::{Answered, Listed, Named, Search, Turned};
pub use asking::Asked;
pub use change::Change;
pub use conditions::{Condition, conditions};
pub use cost::Cost;
pub use cover::{Cover, cover};
pub use index::{Entry, Index, IndexError, Library};
pub use rank::Rank;
pub use search::{Finder, Found, Match, OpenAt, Wanted};
