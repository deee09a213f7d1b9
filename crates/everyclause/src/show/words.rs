//! Numbers and names as the terminal shows them.

pub(crate) use wording::joints::in_runs;
pub(crate) use wording::quantity::{feet_and_inches, to_a_hundredth};
pub(crate) use wording::text::{counted, listed, on_one_line, printable, shortened};
