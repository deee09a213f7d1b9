//! The section of a joint, to scale.
//!
//! A listing's figure shows one condition that stands for many. This crate draws *this* joint: its own floor, beam, wall, runner,
//! packing and coating, each called out with its item of the listing and what was found of its clauses, as found and at both ends of
//! its movement. Where nothing is known of a part, what the listing asks for is drawn, dashed and named; where the listing is silent
//! too, a usual value, named as such.
//!
//! What is absent: verdicts (they come from `conformance`), files, clocks, and angles that would need more than a square root.
//! Lengths on their way into a drawing become doubles; what is written beside them comes from the exact quantities.
//!
//! | module | what lives there |
//! |---|---|
//! | [`known`] | from facts and clauses to the joint as it is drawn, each length with whence it is known; movement |
//! | [`plane`] | points, outlines, layers that follow a path, what two outlines have in common |
//! | [`section`] | the parts in their places: heads and feet of walls, joints between floors and walls |
//! | [`callout`] | the parts with their items, measures and the state of their clauses |
//! | `layout` | how wide a text is; leaders that don't cross; dimensions that don't collide |
//! | [`mod@sheet`] | views, call-outs, dimensions, chart, key, cautions and title block on one page |
//! | [`mod@svg`] | the page as SVG |
//!
//! # Conventions
//!
//! Lines and sections follow ISO 128-2 and ISO 128-3:2020 (which took the place of ISO 128-50:2001), dimensions ISO 129-1, scales are
//! those of ISO 5455 and of an architect's rule, the sheet is ISO 216's A3 with ISO 5457's margins. Which pattern stands for which
//! material is the usual practice of architectural drafting; see `svg::hatch`.

pub mod callout;
pub mod known;
mod layout;
pub mod plane;
pub mod section;
pub mod sheet;
pub mod svg;

pub use callout::Callout;
pub use known::{Condition, Known, Undrawable};
pub use section::{Moved, Scene, State};
pub use sheet::{Heading, at_one_state, compose, sheet};
pub use svg::{Page, svg};
