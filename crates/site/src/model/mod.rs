//! What a project is made of: plain data, in the order its files give.

mod building;
mod cell;
mod fact;
mod facts;
mod joint;
mod judgment;
mod project;
mod provenance;
mod said;

pub use building::{Barrier, Building, Storey};
pub use cell::Cell;
pub use fact::{Fact, ProductFact, Value};
pub use facts::{Facts, FactsFor};
pub use joint::{Joint, Mark};
pub use judgment::{Decision, Judgment, Scope};
pub use project::Project;
pub use provenance::{Provenance, ProvenanceKind};
pub use said::{GoesBy, SaidOf, is_of_a_listing, said_of, said_of_listing, without_listing};
