//! What is drawn, and whence it is known: each dimension a fact of the joint, or what its listing asks for, or, where neither
//! says, a usual value that is named as such.

mod condition;
mod evidence;
mod fill;
mod floor;
mod gather;
pub(crate) mod movement;
mod value;
mod wall;

pub use condition::{
    Beam, Clip, Coating, Condition, Deck, Fibres, Fill, Fireproofing, Floor, Framed, Kind, Packing,
    Run, Runner, RunnerKind, Seal, Sealant, Solid, Stud, Wall,
};
pub use evidence::Known;
pub(crate) use evidence::is_of;
pub use gather::Undrawable;
pub use movement::{Motion, Share};
pub(crate) use value::as_number;
pub use value::{Length, Origin};
