//! Step 1: from bytes to lines, and which lines are page furniture.

mod beginning;
mod decode;
mod flow;
mod furniture;
mod lines;
mod list_signs;
mod plain;

pub(crate) use beginning::beginning;
pub use decode::{DecodeError, Decoded, decode};
pub(crate) use flow::{Flow, UsualUnits};
pub(crate) use furniture::{furniture, is_rule};
pub(crate) use lines::{Line, lines};
pub(crate) use list_signs::LIST_SIGNS;
pub(crate) use plain::{is_disguised, plain};
