//! The building, and what is known of it.
//!
//! A [`Project`] holds the barriers of one [`Building`], the marks (types of joint) that its drawings tag, the joints
//! of each mark, and the judgments that named people have recorded. What is known of a mark or joint are
//! [`Fact`]s: a value of a property, with where it comes from.
//!
//! What is absent: verdicts. Whether a fact is good enough for a clause is for another crate to say.

pub mod import;
pub mod model;

pub use import::{File, Import, ImportError, Notice, Problem};
pub use model::{
    Barrier, Building, Cell, Decision, Fact, Facts, FactsFor, GoesBy, Joint, Judgment, Mark,
    ProductFact, Project, Provenance, ProvenanceKind, SaidOf, Scope, Storey, Value,
    is_of_a_listing, said_of, said_of_listing, without_listing,
};
