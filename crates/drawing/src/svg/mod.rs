//! Writing a page as SVG.

mod hatch;
mod ink;
mod write;

pub use ink::{Anchor, Fill, Group, Ink, Page, Pen, Words};
pub use write::svg;
