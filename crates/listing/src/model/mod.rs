//! What a reading is made of.

mod clause;
mod condition;
mod header;
mod item;
mod options;
mod reading;
mod requirement;
mod source;
mod span;
mod warning;

pub use clause::{Clause, Confidence, Status};
pub use condition::{Condition, Expr, Test};
pub use header::{
    Header, HeaderTopic, Leakage, LeakageRelation, LeakageTemperature, Movement, MovementDirection,
    WidthLimit,
};
pub use item::{Item, bare_path};
pub use options::{OptionGroup, OptionGroupKind};
pub use reading::{Accounted, Place, PlaceKind, Reading};
pub use requirement::{Bound, Presence, ProductName, Relation, Requirement, SecondValue};
pub use source::Source;
pub(crate) use source::sha256;
pub use span::Span;
pub use warning::{Warning, WarningKind};
