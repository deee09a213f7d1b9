//! Clause by clause: met, not met, open, and why.
//!
//! A joint is checked against a listing's every clause. A wrong "met" is the worst mistake this crate could make, so that
//! whatever is missing, ambiguous or unreadable leaves a clause open; a condition that can't be decided does the same, but where only
//! words are undecided and what the clause asks for is there either way, and never makes a clause fall away; and a clause whose reading is in
//! doubt isn't met before a person confirms it.
//!
//! What is absent: files, clocks, randomness, and any way to make a final verdict from a draft.
//!
//! | module | what lives there |
//! |---|---|
//! | [`verdict`], [`explanation`], [`result`] | what comes out: plain data |
//! | `evidence` | what a fact is worth, by where it comes from |
//! | `comparison` | bound against value: limits, nominal values, tolerances, dual statements, guard bands |
//! | `condition`, `rating` | whether a clause applies |
//! | `cases` | an item that speaks case by case, and says nothing of this one |
//! | `named`, `presence`, `reference` | what is asked for in words |
//! | `offered` | what the listing offers rather than asks: movement, ratings, leakage |
//! | `movement` | the movement needed, as a percentage and as a length on the width as found |
//! | [`points`] | what listings ask alike, decided once for all of them |
//! | `options` | which alternates and optional items are checked |
//! | `header` | the head of the listing against what the building asks |
//! | `judgments` | what named people have decided |
//! | `explain` | putting it in words |
//! | `cautions` | what must be said before anybody touches anything |
//! | [`mod@questions`] | what to ask whom |
//! | `said_elsewhere` | what was said of another listing, and doesn't count |
//! | `answering` | in what kinds of value a property of a listing's own is answered |
//! | [`editions`] | what changed between two editions of a listing |

mod answering;
mod assessment;
mod cases;
mod cautions;
mod check;
mod checklist;
mod comparison;
mod condition;
mod decide;
pub mod editions;
mod evidence;
mod explain;
pub mod explanation;
mod header;
mod instances;
mod judgments;
mod movement;
mod named;
mod offered;
mod options;
pub mod points;
mod presence;
pub mod questions;
mod rating;
mod reference;
pub mod result;
mod said_elsewhere;
mod subject;
mod unsettled;
pub mod verdict;
mod words;

pub use answering::kinds_of_answer;
pub use cautions::cautions;
pub use check::{Decided, check_confirmed, check_draft};
pub use checklist::Checklist;
pub use editions::{Change, ChangeKind, Side, compare};
pub use explain::requirement::of_clause as asked_for;
pub use explanation::{
    Ask, Explanation, FactUsed, JudgmentUsed, Margin, Missing, Readings, ShareUsed,
};
pub use questions::{Concern, Question, questions};
pub use result::{Chosen, Considered, Final, Finding, How, JointResult, Provisional};
pub use subject::{Case, Subject, goes_by};
pub use unsettled::{Unsettled, is_judged};
pub use verdict::{Counts, Overall, Reason, Standing, Verdict};
