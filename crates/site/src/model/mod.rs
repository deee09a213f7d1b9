//! What a project is made of: plain data, in the order its files give.

mod building;
mod cell;
mod fact;
mod joint;
mod judgment;
mod project;
mod provenance;

pub use building::{Barrier, Building, Storey};
pub use cell::Cell;
pub use fact::{Fact, ProductFact, Value};
pub use joint::{Joint, Mark};
pub use judgment::{Decision, Judgment, Scope};
pub use project::{Facts, Project};
pub use provenance::{Provenance, ProvenanceKind};
